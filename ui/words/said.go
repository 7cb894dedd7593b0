package words

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"fyne.io/fyne/v2/lang"
)

// Model and board know no languages: a reply stands in the log in English, and
// other devices read it. So a sentence of theirs is known again here, by the
// formats it was made from: they stand in the table, described as [Made].

// Made describes, in a table, the formats of model and board.
const Made = "made by the rules"

// Said is a sentence of model or board in the language of the window. It is
// taken apart into clauses; runs of them that a format made are put into that
// format's translation, with what was filled in. What no format made, such as
// a name or a department's own word, stays as it is.
func Said(text string) string {
	t := speaks.Load()
	if text == "" || t.change == nil && !abroad {
		return text
	}
	return t.said(text)
}

// made is a format of model or board.
type made struct {
	pieces []string // what stands before, between and after its holes
	verbs  []byte   // of the holes: d for a number, q for quotes, s
	goes   string   // its translation, each verb one of a text
	weight int      // its letters; the heavier of two formats is the surer
}

var anyVerb = regexp.MustCompile(`%[-+# 0]*(\[\d+\])?[0-9.]*([a-zA-Z%])`)

// newMade reads a format, and what stands for it.
func newMade(format, stands string) made {
	format, stands = strings.TrimSuffix(format, "."), strings.TrimSuffix(stands, ".")
	var m made
	piece, last := "", 0
	for _, at := range anyVerb.FindAllStringSubmatchIndex(format, -1) {
		piece += format[last:at[0]]
		last = at[1]
		switch verb := format[at[4]]; verb {
		case '%':
			piece += "%"
			continue
		case 'd', 'g', 'f':
			m.verbs = append(m.verbs, 'd')
		case 'q':
			m.verbs = append(m.verbs, 'q')
		default:
			m.verbs = append(m.verbs, 's')
		}
		m.pieces, piece = append(m.pieces, piece), ""
	}
	m.pieces = append(m.pieces, piece+format[last:])
	for _, r := range strings.Join(m.pieces, "") {
		if unicode.IsLetter(r) {
			m.weight++
		}
	}
	m.goes = anyVerb.ReplaceAllStringFunc(stands, func(v string) string {
		if v == "%%" {
			return v
		}
		return "%" + anyVerb.FindStringSubmatch(v)[1] + "s"
	})
	return m
}

// match is what was filled into the format, if the text was made from it. Each
// hole ends where what stands after it first comes.
func (m *made) match(text string) (holes []string, ok bool) {
	n := len(m.verbs)
	text, ok = strings.CutPrefix(text, m.pieces[0])
	if !ok || n == 0 {
		return nil, ok && text == ""
	}
	if text, ok = strings.CutSuffix(text, m.pieces[n]); !ok {
		return nil, false
	}
	for k, verb := range m.verbs[:n-1] {
		next, at := m.pieces[k+1], 0
		for {
			i := strings.Index(text[at:], next)
			if i < 0 {
				return nil, false
			}
			if at += i; fits(verb, text[:at]) {
				break
			}
			if at++; at > len(text) {
				return nil, false
			}
		}
		holes, text = append(holes, text[:at]), text[at+len(next):]
	}
	holes = append(holes, text)
	// Too little to be known by: "%s to %s" is of numbers only.
	surely := m.weight > 2 || digit(holes[0]) || m.pieces[0] != ""
	return holes, surely && fits(m.verbs[n-1], text)
}

// fits tells whether a text can have been filled in for a verb.
func fits(verb byte, text string) bool {
	switch verb {
	case 'd':
		return isNumber(text)
	case 'q':
		return len(text) > 1 && text[0] == '"' && text[len(text)-1] == '"'
	}
	return text != "" && text[0] != ' ' && text[len(text)-1] != ' '
}

// digit tells whether a text begins with a figure: "2 h 40 min".
func digit(text string) bool { return text[0] >= '0' && text[0] <= '9' }

func isNumber(text string) bool {
	return text != "" && strings.Trim(text, "0123456789.,-+e") == "" && strings.ContainsAny(text, "0123456789")
}

// formats are those of model and board by how many cuts are in them, the
// heaviest first.
type formats map[int][]made

func (t *tongue) formats() formats {
	t.once.Do(func() {
		t.made = formats{}
		table, err := English()
		if err != nil {
			return // a test reads the table
		}
		for _, e := range table {
			if e.Description == Made {
				stands := lang.L(e.Key)
				if t.change != nil {
					stands = t.change(stands)
				}
				m := newMade(e.Key, stands)
				n := 0
				for _, piece := range m.pieces {
					n += len(cuts(piece))
				}
				t.made[n] = append(t.made[n], m)
			}
		}
		for _, list := range t.made {
			slices.SortFunc(list, func(a, b made) int {
				return cmp.Or(b.weight-a.weight, strings.Compare(strings.Join(a.pieces, "%"), strings.Join(b.pieces, "%")))
			})
		}
	})
	return t.made
}

// cut is where a text falls apart: what stands there belongs to neither side.
type cut struct{ from, to int }

func cuts(text string) (out []cut) {
	for i := 0; i+1 < len(text); i++ {
		if text[i+1] == ' ' && strings.IndexByte(";.:,?", text[i]) >= 0 || text[i] == ' ' && text[i+1] == '(' {
			out = append(out, cut{i, i + 2})
			i++
		}
	}
	return out
}

// said translates clause by clause: first the longest run of clauses that one
// format made.
func (t *tongue) said(text string) string {
	at := append(cuts(text), cut{len(text), len(text)})
	var b strings.Builder
	from := 0
	for i := 0; i < len(at); i++ {
		to, out := t.run(text, from, i, at)
		b.WriteString(out)
		b.WriteString(text[at[to].from:at[to].to])
		from, i = at[to].to, to
	}
	return b.String()
}

// run is the longest run of clauses from the i-th on that one format made, put
// into its translation. A name may have a cut in it: where no run without one
// in its holes is found, it is the shortest with one.
func (t *tongue) run(text string, from, i int, at []cut) (to int, out string) {
	for to := len(at) - 1; to >= i; to-- {
		run := text[from:at[to].from]
		out, ok := t.whole(run, to-i, false)
		if !ok {
			out, ok = t.pair(run, to-i)
		}
		if ok {
			return to, out
		}
	}
	for to := i + 1; to < len(at); to++ {
		for n := to - i - 1; n >= 0; n-- {
			if out, ok := t.whole(text[from:at[to].from], n, false); ok {
				return to, out
			}
		}
	}
	return i, text[from:at[i].from]
}

// pair is what two formats made, "5 min by the readings", or one after a
// number, "2 at V2".
func (t *tongue) pair(text string, n int) (string, bool) {
	for i, r := range text {
		if r != ' ' {
			continue
		}
		first, ok := text[:i], isNumber(text[:i])
		if !ok {
			first, ok = t.whole(first, 0, true)
		}
		if ok {
			if second, ok := t.whole(text[i+1:], n, true); ok {
				return first + " " + second, true
			}
		}
	}
	return "", false
}

// whole is a text that a format of so many cuts made. In a hole only words as
// they stand inside a sentence are known: "at V2", "40 min". All else there is
// a name.
func (t *tongue) whole(text string, n int, hole bool) (string, bool) {
	text, end := trimmed(text)
	list := t.formats()[n]
	for k := range list {
		m := &list[k]
		holes, ok := m.match(text)
		if !ok || hole && !inside(m, holes) {
			continue
		}
		in := make([]any, len(holes))
		for i, h := range holes {
			in[i] = t.hole(h)
		}
		return fmt.Sprintf(m.goes, in...) + end, true
	}
	return "", false
}

// inside tells whether a format with these holes stands inside a sentence.
func inside(m *made, holes []string) bool {
	if m.pieces[0] == "" {
		return digit(holes[0])
	}
	first := []rune(m.pieces[0] + ".")
	return !unicode.IsUpper(first[0]) || !unicode.IsLower(first[1]) // "L/min"
}

// hole is what was filled in: some such words, else a name.
func (t *tongue) hole(text string) string {
	list := strings.Split(text, "; ")
	for i, s := range list {
		n := len(cuts(s))
		out, ok := t.whole(s, n, true)
		if !ok {
			out, ok = t.pair(s, n)
		}
		if ok {
			list[i] = out
		}
	}
	return strings.Join(list, "; ")
}

// trimmed takes off the end of a sentence, and of what was opened before it.
func trimmed(text string) (inner, end string) {
	inner = strings.TrimSuffix(text, ".")
	if strings.Count(inner, ")") > strings.Count(inner, "(") {
		inner = strings.TrimSuffix(inner, ")")
	}
	return inner, text[len(inner):]
}
