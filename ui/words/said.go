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

// Made describes, in a table, the formats of model and board.
const Made = "made by the rules"

// Said is a sentence of model or board in the language of the window. They
// know no languages, and a reply stands in the log in English: other devices
// read it. So it is known again here by the formats that made it, which stand
// in the table. It is taken apart into clauses; each, or a run of them, is put
// into the translation of its format, with what was filled in. What no format
// made stays as it is: names, numbers, a department's own words.
func Said(text string) string {
	t := speaks.Load()
	if text == "" || t.change == nil && !abroad {
		return text
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	out, ok := t.told[text]
	if !ok {
		if t.told == nil || len(t.told) >= mostTold {
			t.told = map[string]string{}
		}
		out = t.said(text)
		t.told[text] = out
	}
	return out
}

// mostTold is how many sentences are kept: more than a screen shows.
const mostTold = 1000

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

// A cut is where a text falls apart into clauses: what stands there belongs to
// neither side.
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

// run puts the run of clauses, from the i-th on, that a format is the surest to
// have made into its translation. Clauses after it that nothing made are the end
// of the name before them.
func (t *tongue) run(text string, from, i int, at []cut) (to int, out string) {
	to, out = i, text[from:at[i].from]
	surest, had := 0, 0
	end := min(len(at)-1, i+t.formats().most)
	for k := i; k <= end; k++ {
		for n := k - i; n >= 0; n-- {
			if s, weight := t.one(text[from:at[k].from], n, false); weight > surest {
				to, out, surest, had = k, s, weight, n
			}
		}
	}
	for k := to + 1; surest > 0 && k <= end && !t.known(text, k, at); k++ {
		if s, weight := t.whole(text[from:at[k].from], had, false); weight == surest {
			to, out = k, s
		}
	}
	return to, out
}

// known tells whether a format made the k-th clause, and maybe more.
func (t *tongue) known(text string, k int, at []cut) bool {
	for to := k; to < len(at) && to <= k+t.formats().most; to++ {
		if _, weight := t.one(text[at[k-1].to:at[to].from], to-k, false); weight > 0 {
			return true
		}
	}
	return false
}

// one is what one format of so many cuts made, or two: "5 min by the readings";
// or one after a number: "2 at V2". Without weight it is neither. Of what fills
// a hole only words as they stand inside a sentence are known: all else is a
// name.
func (t *tongue) one(text string, n int, hole bool) (out string, weight int) {
	if out, weight = t.whole(text, n, hole); weight > 0 {
		return out, weight
	}
	at := append(cuts(text), cut{len(text), len(text)})
	for i, r := range text[:at[0].from] {
		if r != ' ' || len(at)-1 != n {
			continue
		}
		first, weight := text[:i], 1
		if !isNumber(first) {
			first, weight = t.whole(first, 0, true)
		}
		if weight > 0 {
			if second, more := t.whole(text[i+1:], n, true); more > 0 {
				return first + " " + second, weight + more
			}
		}
	}
	return "", 0
}

// whole is what one format made. A name may have cuts in it, but no clauses.
func (t *tongue) whole(text string, n int, hole bool) (out string, weight int) {
	text, end := trimmed(text)
	for _, first := range []string{"", text[:min(1, len(text))]} {
		for _, m := range t.formats().by[group{n, first}] {
			if m.weight <= weight {
				break // what is left of the group is lighter
			}
			holes, ok := m.match(text)
			if !ok || hole && !m.inside(holes) || slices.ContainsFunc(holes, t.clauses) {
				continue
			}
			in := make([]any, len(holes))
			for i, h := range holes {
				in[i] = t.filled(h)
			}
			out, weight = fmt.Sprintf(m.stands, in...)+end, m.weight
			break
		}
	}
	return out, weight
}

// clauses tells whether what was filled in are rather clauses: words that
// begin like a sentence, or go on with one. A name may have "low" in it.
func (t *tongue) clauses(text string) bool {
	at := append(cuts(text), cut{len(text), len(text)})
	from := 0
	for i := 0; len(at) > 1 && i < len(at); i++ {
		for k := i; k < len(at); k++ {
			clause := text[from:at[k].from]
			_, weight := t.one(clause, k-i, false)
			_, inside := t.one(clause, k-i, true)
			if i == 0 && weight > inside || i > 0 && weight > 2 && strings.Contains(clause, " ") {
				return true
			}
		}
		from = at[i].to
	}
	return false
}

// filled is what was filled into a hole: such words, or some of them, or a
// name.
func (t *tongue) filled(text string) string {
	list := strings.Split(text, "; ")
	for i, s := range list {
		for n := len(cuts(s)); n >= 0; n-- {
			if out, weight := t.one(s, n, true); weight > 0 {
				list[i] = out
				break
			}
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

// A group of formats has as many cuts, and the same first letter; none where
// they begin with a hole.
type group struct {
	cuts  int
	first string
}

// formats are those of model and board, the heaviest of a group first: the
// surest to be known by.
type formats struct {
	by   map[group][]*made
	most int // clauses of a run
}

// formats reads them when the first sentence is said.
func (t *tongue) formats() *formats {
	t.once.Do(func() {
		t.made.by = map[group][]*made{}
		table, err := English()
		if err != nil {
			return // a test reads the table
		}
		for _, e := range table {
			if e.Description != Made {
				continue
			}
			stands := lang.L(e.Key)
			if t.change != nil {
				stands = t.change(stands)
			}
			m := newMade(e.Key, stands)
			g := group{first: m.pieces[0][:min(1, len(m.pieces[0]))]}
			for _, piece := range m.pieces {
				g.cuts += len(cuts(piece))
			}
			t.made.by[g] = append(t.made.by[g], &m)
			t.made.most = max(t.made.most, g.cuts+4) // names have few cuts
		}
		for _, list := range t.made.by {
			slices.SortFunc(list, func(a, b *made) int {
				return cmp.Or(b.weight-a.weight, slices.Compare(a.pieces, b.pieces), slices.Compare(a.verbs, b.verbs))
			})
		}
	})
	return &t.made
}

// made is a format of model or board.
type made struct {
	pieces []string // what stands before, between and after its holes
	verbs  []byte   // of the holes: d for a number, q for quotes, s
	stands string   // its translation; every verb is s
	weight int      // letters
}

var anyVerb = regexp.MustCompile(`%[-+#0]*(\[\d+\])?[0-9.]*([a-zA-Z%])`)

// newMade reads a format, and what stands for it.
func newMade(format, stands string) (m made) {
	piece, last := "", 0
	for _, at := range anyVerb.FindAllStringSubmatchIndex(format, -1) {
		piece += format[last:at[0]]
		last = at[1]
		verb := format[at[4]]
		switch verb {
		case '%':
			piece += "%"
			continue
		case 'g', 'f':
			verb = 'd'
		case 'd', 'q':
		default:
			verb = 's'
		}
		m.pieces, m.verbs, piece = append(m.pieces, piece), append(m.verbs, verb), ""
	}
	m.pieces = append(m.pieces, piece+format[last:])
	for _, r := range strings.Join(m.pieces, "") {
		if unicode.IsLetter(r) {
			m.weight++
		}
	}
	m.stands = anyVerb.ReplaceAllStringFunc(stands, func(v string) string {
		if strings.HasSuffix(v, "%") {
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
		next, at := m.pieces[k+1], 1
		for ; at <= len(text); at++ {
			i := strings.Index(text[at:], next)
			if i < 0 {
				return nil, false
			}
			if at += i; fits(verb, text[:at]) {
				break
			}
		}
		if at > len(text) {
			return nil, false
		}
		holes, text = append(holes, text[:at]), text[at+len(next):]
	}
	holes = append(holes, text)
	// "%s to %s" is too little to be known by, but between numbers.
	surely := m.weight > 2 || m.pieces[0] != "" || digit(holes[0])
	return holes, surely && fits(m.verbs[n-1], text)
}

// inside tells whether the format, with these holes, stands inside a sentence.
func (m *made) inside(holes []string) bool {
	if m.pieces[0] == "" {
		return digit(holes[0])
	}
	first := []rune(m.pieces[0] + ".")
	return !unicode.IsUpper(first[0]) || !unicode.IsLower(first[1]) // "L/min"
}

// fits tells whether a text can have been filled in for a verb.
func fits(verb byte, text string) bool {
	switch verb {
	case 'd':
		return isNumber(text)
	case 'q':
		return len(text) > 1 && text[0] == '"' && text[len(text)-1] == '"'
	}
	return text != "" && strings.Trim(text, " ") == text && strings.TrimRight(text, ";,") == text
}

// digit tells whether a text begins with a figure: "2 h 40 min".
func digit(text string) bool { return text != "" && text[0] >= '0' && text[0] <= '9' }

func isNumber(text string) bool {
	return strings.ContainsAny(text, "0123456789") && strings.Trim(text, "0123456789.,-+e") == ""
}
