package parts

import (
	"strings"

	"tarpside/ui/look"
)

// Two control runes mark bold inside a text, so that no name typed by a
// person can be taken for markup.
const (
	boldOn  = '\x0e'
	boldOff = '\x0f'
)

// Three more enclose a text that has shorter forms, and part them.
const (
	formsOn  = '\x10'
	formsOr  = '\x11'
	formsOff = '\x12'
)

const (
	softHyphen = '\u00ad' // a name may carry these where a word may break
	ellipsis   = "\u2026"
)

// B sets s in bold inside the text of a view.
func B(s string) string { return string(boldOn) + s + string(boldOff) }

// Or is a text that has shorter forms: where the first is cut, the next is
// shown, and so on. It may be a part of a longer text.
func Or(texts ...string) string {
	var all []string
	for _, t := range texts {
		all = append(all, forms(t)...)
	}
	return string(formsOn) + strings.Join(all, string(formsOr)) + string(formsOff)
}

// forms are the whole texts that a text with shorter forms can be, the
// longest first.
func forms(s string) []string {
	if !strings.ContainsRune(s, formsOn) {
		return []string{s}
	}
	most := 1
	for part := range strings.SplitSeq(s, string(formsOn)) {
		in, _, _ := strings.Cut(part, string(formsOff))
		most = max(most, 1+strings.Count(in, string(formsOr)))
	}
	out := make([]string, most)
	for i := range out {
		out[i] = form(s, i)
	}
	return out
}

// Shortest is a text in its shortest form.
func Shortest(s string) string {
	f := forms(s)
	return f[len(f)-1]
}

// form is a text with the i-th form of each part that has several, or its
// last one.
func form(s string, i int) string {
	var b strings.Builder
	for {
		before, rest, ok := strings.Cut(s, string(formsOn))
		b.WriteString(before)
		if !ok {
			return b.String()
		}
		in, after, _ := strings.Cut(rest, string(formsOff))
		all := strings.Split(in, string(formsOr))
		b.WriteString(all[min(i, len(all)-1)])
		s = after
	}
}

// Plain is a text in its longest form, without the marks for bold and the soft
// hyphens.
func Plain(s string) string {
	return strings.Map(func(r rune) rune {
		switch r {
		case boldOn, boldOff, softHyphen:
			return -1
		}
		return r
	}, form(s, 0))
}

// run is a stretch of one line in one weight.
type run struct {
	text string
	bold bool
}

type line []run

func (l line) String() string {
	var b strings.Builder
	for _, r := range l {
		b.WriteString(r.text)
	}
	return b.String()
}

// piece is what a line is filled with: letters that stay together.
type piece struct {
	text  string
	bold  bool
	space bool // a space stands before it
	soft  bool // a hyphen must be drawn if the line ends after it
}

// pieces splits a text at spaces, after hyphens and at soft hyphens. A line
// feed is a piece of its own and ends the line.
func pieces(s string, bold bool) []piece {
	var out []piece
	var b strings.Builder
	space, on := false, bold
	flush := func(soft bool) {
		if b.Len() > 0 {
			out = append(out, piece{b.String(), on, space, soft})
			b.Reset()
			space = false
		}
	}
	rs := []rune(s)
	for i, r := range rs {
		switch {
		case r == boldOn || r == boldOff:
			flush(false)
			on = bold || r == boldOn
		case r == softHyphen:
			flush(true)
		case r == '\n':
			flush(false)
			out = append(out, piece{text: "\n"})
		case r == ' ':
			flush(false)
			space = true
		case r == '-' && b.Len() > 0 && i+1 < len(rs) && letter(rs[i+1]):
			b.WriteRune(r)
			flush(false)
		default:
			b.WriteRune(r)
		}
	}
	flush(false)
	return out
}

func letter(r rune) bool { return r != ' ' && r != '-' && (r < '0' || r > '9') }

// ruler measures a text of one weight, in pixels.
type ruler func(text string, bold bool) float32

// wrap fills lines of the given widths. It reports whether a word had to be
// broken between its letters because no line holds it. No letter is lost.
func wrap(ps []piece, width func(line int) float32, measure ruler) (lines []line, broke bool) {
	f := filler{width: width, measure: measure}
	for i, p := range ps {
		if p.text == "\n" {
			f.soft = false
			f.end()
			continue
		}
		f.put(p, f.tail(ps, i))
		f.soft = p.soft
	}
	f.soft = false
	if len(f.cur) > 0 {
		f.end()
	}
	return f.lines, f.broke
}

// filler fills one line after the other.
type filler struct {
	width   func(line int) float32
	measure ruler
	lines   []line
	cur     line
	used    float32
	soft    bool // the line so far may end here only with a hyphen
	broke   bool
}

// tail is what must stand on the same line after a piece: a hyphen, or the
// rest of a word in another weight.
func (f *filler) tail(ps []piece, i int) float32 {
	var w float32
	if ps[i].soft {
		w = f.measure("-", ps[i].bold)
	}
	for ; glued(ps, i); i++ {
		w += f.measure(ps[i+1].text, ps[i+1].bold)
	}
	return w
}

func (f *filler) room() float32 { return f.width(len(f.lines)) - f.used }

func (f *filler) end() {
	if f.soft && len(f.cur) > 0 {
		f.cur[len(f.cur)-1].text += "-"
	}
	f.lines = append(f.lines, f.cur)
	f.cur, f.used, f.soft = nil, 0, false
}

func (f *filler) add(text string, bold bool, w float32) {
	if n := len(f.cur); n > 0 && f.cur[n-1].bold == bold {
		f.cur[n-1].text += text
	} else {
		f.cur = append(f.cur, run{text, bold})
	}
	f.used += w
}

// put sets one piece, on the next line where this one has no room for it and
// its tail, and broken between letters where no line has.
func (f *filler) put(p piece, tail float32) {
	text := p.text
	if p.space && len(f.cur) > 0 {
		text = " " + text
		f.soft = false
	}
	w := f.measure(text, p.bold)
	if w+tail > f.room() && len(f.cur) > 0 {
		f.end()
		text, w = p.text, f.measure(p.text, p.bold)
	}
	for rest := []rune(text); ; {
		limit := f.room()
		if w <= limit || len(rest) == 1 {
			f.add(string(rest), p.bold, w)
			return
		}
		n := 1
		for n < len(rest)-1 && f.measure(string(rest[:n+1]), p.bold) <= limit {
			n++
		}
		f.broke = true
		f.add(string(rest[:n]), p.bold, f.measure(string(rest[:n]), p.bold))
		f.soft = false
		f.end()
		rest = rest[n:]
		w = f.measure(string(rest), p.bold)
	}
}

// glued says whether no line may end after piece i: the next one is the same
// word in another weight, or the comma after it.
func glued(ps []piece, i int) bool {
	if i+1 >= len(ps) || ps[i].soft || strings.HasSuffix(ps[i].text, "-") {
		return false
	}
	return !ps[i+1].space && ps[i+1].text != "\n"
}

// together brings a word down to a last line that is only one or two letters,
// such as a number or a unit, where there is room.
func together(lines []line, width func(int) float32, measure ruler) {
	n := len(lines) - 1
	if n < 1 || len(lines[n]) != 1 || len([]rune(lines[n][0].text)) > 2 {
		return
	}
	last, before := lines[n][0], lines[n-1]
	end := before[len(before)-1]
	head, word, ok := lastWord(end.text)
	text := word + " " + last.text
	if !ok || end.bold != last.bold || measure(text, last.bold) > width(n) {
		return
	}
	lines[n-1] = append(append(line(nil), before[:len(before)-1]...), run{head, end.bold})
	lines[n] = line{{text, last.bold}}
}

// lastWord parts a text before its last word; false if it is one word.
func lastWord(s string) (head, word string, ok bool) {
	i := strings.LastIndexByte(s, ' ')
	if i <= 0 {
		return s, "", false
	}
	return s[:i], s[i+1:], true
}

// cutTo keeps the first n lines and ends the last with an ellipsis.
func cutTo(lines []line, n int, width func(int) float32, measure ruler) []line {
	if n <= 0 || len(lines) <= n {
		return lines
	}
	lines = lines[:n]
	last := append(line(nil), lines[n-1]...)
	for len(last) > 0 {
		r := &last[len(last)-1]
		var w float32
		for _, q := range last {
			w += measure(q.text, q.bold)
		}
		if w+measure(ellipsis, r.bold) <= width(n-1) || (len(last) == 1 && len(r.text) <= 1) {
			r.text = strings.TrimRight(r.text, " ") + ellipsis
			break
		}
		rs := []rune(r.text)
		r.text = string(rs[:len(rs)-1])
		if r.text == "" {
			last = last[:len(last)-1]
		}
	}
	lines[n-1] = last
	return lines
}

// leading is the pitch of lines as a multiple of the size: tight for names,
// open for sentences.
func leading(r look.Role) float32 {
	if r.Bold() {
		return 1.16
	}
	return 1.26
}
