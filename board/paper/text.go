package paper

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/text/unicode/norm"
)

// missing stands where the print has no shape for a letter.
const missing = '□'

// shapes tells for each letter of the first plane whether both faces draw it:
// the Go fonts have Latin, Greek and Cyrillic as WGL4 does.
var shapes = sync.OnceValue(func() *[0x10000]bool {
	has := new([0x10000]bool)
	var buf sfnt.Buffer
	for n, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			panic(err) // the fonts are part of the program
		}
		for r := range has {
			i, err := f.GlyphIndex(&buf, rune(r))
			has[r] = (n == 0 || has[r]) && err == nil && i != 0 && r >= ' '
		}
	}
	return has
})

func drawn(r rune) bool { return r < 0x10000 && shapes()[r] }

// gaps is what of a page could not be printed as it is.
type gaps struct {
	letters map[rune]bool // a box stands for them
	plainer bool          // some stand without their accents
}

// words say what could not be printed, "" if all could.
func (g gaps) words() string {
	var parts []string
	if len(g.letters) > 0 {
		var names []string
		for _, r := range slices.Sorted(maps.Keys(g.letters)) {
			names = append(names, fmt.Sprintf("%s U+%04X", script(r), r))
		}
		list := strings.Join(names[:min(len(names), 4)], ", ")
		if n := len(names) - 4; n > 0 {
			list += fmt.Sprintf(" and %d more", n)
		}
		parts = append(parts, fmt.Sprintf("%c: a letter this print has no shape for (it has Latin, Greek, Cyrillic): %s", missing, list))
	}
	if g.plainer {
		parts = append(parts, "Some letters stand in a plainer form")
	}
	return strings.Join(parts, ". ")
}

// script names the script of a letter.
func script(r rune) string {
	for _, name := range slices.Sorted(maps.Keys(unicode.Scripts)) {
		if name != "Common" && name != "Inherited" && unicode.Is(unicode.Scripts[name], r) {
			return name
		}
	}
	return "sign"
}

// draw is the text as the print can show it: composed, without what is no
// text, each letter that has no shape as its letter without accents or as a
// box; the foot of the page then says so.
func (p *press) draw(text string) string {
	plainText := true
	for i := range len(text) {
		if c := text[i]; c < ' ' || c > '~' {
			plainText = false
			break
		}
	}
	if plainText {
		return text
	}
	var b strings.Builder
	for _, r := range norm.NFC.String(strings.ToValidUTF8(text, "\uFFFD")) {
		switch {
		case unicode.IsSpace(r):
			b.WriteByte(' ')
		case drawn(r):
			b.WriteRune(r)
		case unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Variation_Selector, r): // nobody sees these
		default:
			b.WriteString(p.instead(r))
		}
	}
	return b.String()
}

// instead is what stands for a letter without a shape: its plainer form, or
// a box.
func (p *press) instead(r rune) string {
	g := &p.gaps[p.PageNo()-1]
	if unicode.Is(unicode.Mn, r) { // an accent that no letter took in
		g.plainer = true
		return ""
	}
	parts := []rune(norm.NFKD.String(string(r)))
	for n := len(parts); n > 0; n-- { // with as many accents as can be
		if n < len(parts) && !unicode.Is(unicode.Mn, parts[n]) {
			break
		}
		plainer := norm.NFC.String(string(parts[:n]))
		if !strings.ContainsFunc(plainer, func(r rune) bool { return !drawn(r) }) {
			g.plainer = true
			return plainer
		}
	}
	if g.letters == nil {
		g.letters = map[rune]bool{}
	}
	g.letters[r] = true
	return string(missing)
}

// wrap breaks drawable text into lines of a width, in the type that is set. A
// word that is wider is broken itself.
func (p *press) wrap(text string, width float64) []string {
	if p.GetStringWidth(text) <= width {
		return []string{text}
	}
	var out []string
	now, used, space := "", 0.0, p.GetStringWidth(" ")
	for _, word := range strings.Fields(text) {
		w := p.GetStringWidth(word)
		if now != "" && used+space+w > width {
			out, now, used = append(out, now), "", 0
		}
		for now == "" && w > width {
			n := p.fits(word, width)
			out, word = append(out, word[:n]), word[n:]
			w = p.GetStringWidth(word)
		}
		if now != "" {
			now, used = now+" ", used+space
		}
		now, used = now+word, used+w
	}
	if now != "" || len(out) == 0 {
		out = append(out, now)
	}
	return out
}

// fits is how many bytes of a word go into a width: one letter at least.
func (p *press) fits(word string, width float64) int {
	n := 0
	for i, r := range word {
		if i > 0 && p.GetStringWidth(word[:i])+p.GetStringWidth(string(r)) > width {
			break
		}
		n = i + len(string(r))
	}
	return n
}

// cut is one line of a width; what does not fit is told by three points.
func (p *press) cut(text string, width float64) string {
	if p.GetStringWidth(text) <= width {
		return text
	}
	return text[:p.fits(text, width-p.GetStringWidth("…"))] + "…"
}

// para prints text from y down and moves y behind it.
func (p *press) para(f face, size, x, width float64, text string) {
	p.lines(f, size, x, width, text, 0)
}

// tall is how much room lines takes.
func (p *press) tall(f face, size, width float64, text string, most int) float64 {
	p.set(f, size)
	n := len(p.wrap(p.draw(text), width))
	if most > 0 {
		n = min(n, most)
	}
	return size * 1.25 * float64(n)
}

// lines prints at most so many lines, 0 for all.
func (p *press) lines(f face, size, x, width float64, text string, most int) {
	p.set(f, size)
	lines := p.wrap(p.draw(text), width)
	if most > 0 && len(lines) > most {
		lines[most-1] = p.cut(lines[most-1]+" …", width)
		if !strings.HasSuffix(lines[most-1], "…") {
			lines[most-1] += "…"
		}
		lines = lines[:most]
	}
	for _, l := range lines {
		p.show(x, p.y+size, l)
		p.y += size * 1.25
	}
}
