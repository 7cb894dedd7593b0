// Package journal writes the log for programs that add up accounts and are not
// ours.
package journal

import (
	"bufio"
	"cmp"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"tarpside/model"
)

// Write gives a log as a plain-text double-entry journal that hledger and
// ledger read. Equipment is kept as money is: an account is a place ("tarp",
// "at:V1", "kit:R41-021"), so its first part is a column of the proof; the
// commodity is the item's id in double quotes; all pieces come from the
// account of the rig that owns them ("owner:R41"). So the balances are the
// proof, and can be had from a program that is not ours.
//
// An entry becomes what it changed in the books: the fold before it against
// the fold after it. It is not what its writer thought it moved, which two
// logs that meet may have made untrue. An entry that moved nothing is left
// out, and so are all notes: a note may be blanked later. An entry that the
// fold contests is marked "!", any other "*".
//
// The entries may come in any order; dates and times are told in loc. A tarp
// or a place of a scene opened beside another has that scene's id as last part.
func Write(w io.Writer, entries []model.Entry, loc *time.Location) error {
	j := journal{w: bufio.NewWriter(w), loc: loc, state: model.NewState(new(model.Department).Index())}
	j.dept = j.state.Dept
	j.w.WriteString("; Where every piece is, as double entry.\n; Read it with: hledger -f FILE balance, or: ledger -f FILE balance\n")
	for _, e := range model.Sorted(entries) {
		j.entry(e)
	}
	return j.w.Flush() // the writer keeps its first error
}

type journal struct {
	w     *bufio.Writer
	loc   *time.Location
	state *model.State
	dept  *model.Department // as the entry before left it
	lines []*model.Line     // as dept.Items
}

// A posting is so many pieces of an item coming to an account, or with a minus
// leaving it.
type posting struct {
	account, item string
	n             int
}

// entry applies an entry and writes what it changed.
func (j *journal) entry(e *model.Entry) {
	out := j.state.Apply(e)
	var posts []posting
	if d := j.state.Dept; d == j.dept {
		for i, was := range j.lines {
			if is := j.state.Line(i); is != was { // a line in a state is never changed
				posts = append(posts, difference(d.Items[i].ID, books(d, i, was), books(d, i, is))...)
				j.lines[i] = is
			}
		}
	} else {
		posts = j.refitted(d)
	}
	if len(posts) == 0 {
		return
	}
	mark := '*'
	if out.Contested {
		mark = '!'
	}
	at := day(e.At()).In(j.loc)
	fmt.Fprintf(j.w, "\n%s %c (%s) %s\n", at.Format(time.DateOnly), mark, at.Format("15:04:05"), brief(words(j.dept, e)))
	for _, p := range posts {
		fmt.Fprintf(j.w, "    %-22s  %d \"%s\"\n", p.account, p.n, commodity(p.item))
	}
}

// refitted compares the books before and after a change of the inventory.
func (j *journal) refitted(d *model.Department) (posts []posting) {
	lines := make([]*model.Line, len(d.Items))
	for i := range d.Items {
		lines[i] = j.state.Line(i)
		id := d.Items[i].ID
		var before map[string]int
		if k := j.dept.ItemIndex(id); k >= 0 {
			before = books(j.dept, k, j.lines[k])
		}
		posts = append(posts, difference(id, before, books(d, i, lines[i]))...)
	}
	for k := range j.dept.Items {
		if id := j.dept.Items[k].ID; d.ItemIndex(id) < 0 {
			posts = append(posts, difference(id, books(j.dept, k, j.lines[k]), nil)...)
		}
	}
	j.dept, j.lines = d, lines
	return posts
}

// books are the accounts of a line: its pieces by place, and what its owner
// gave for them.
func books(d *model.Department, i int, l *model.Line) map[string]int {
	b := map[string]int{owner(d.Items[i].Rig): -d.Items[i].Quantity}
	for _, s := range l.Stacks {
		b[account(s.Place)] += s.N
	}
	return b
}

// difference is what leads from one state of the books of an item to another:
// first what leaves, then what comes.
func difference(item string, before, after map[string]int) (posts []posting) {
	change := maps.Clone(after)
	if change == nil {
		change = map[string]int{}
	}
	for a, n := range before {
		change[a] -= n
	}
	for a, n := range change {
		if n != 0 {
			posts = append(posts, posting{a, item, n})
		}
	}
	slices.SortFunc(posts, func(a, b posting) int {
		return cmp.Or(cmp.Compare(min(0, a.n), min(0, b.n)), strings.Compare(a.account, b.account))
	})
	return posts
}

func owner(rig string) string {
	if rig == "" {
		return "owner"
	}
	return "owner:" + part(rig)
}

func account(p model.Place) string {
	a := string(p.Kind)
	if p.Name != "" {
		a += ":" + part(p.Name)
	}
	if p.Ground != "" {
		a += ":" + part(p.Ground)
	}
	return a
}

// part is a name as one part of an account. Two spaces would end the account
// and a colon its part.
func part(name string) string { return escaped(name, ":") }

// commodity is an item's id as it stands in double quotes. Ledger reckons in
// seconds, minutes and hours by the names s, m and h.
func commodity(id string) string {
	if id == "s" || id == "m" || id == "h" {
		return fmt.Sprintf("%%%X", id)
	}
	return escaped(id, "")
}

// escaped writes as %XX, byte by byte as in an address (RFC 3986, 2.1), what
// one of the two programs does not take in a name: so no two names become one.
func escaped(name, more string) string {
	var b strings.Builder
	for i, r := range name {
		size := utf8.RuneLen(r)
		bad := r == utf8.RuneError && !strings.HasPrefix(name[i:], string(r)) // a byte that is no text
		if bad {
			size = 1
		}
		edge := i == 0 || i+size == len(name) || name[i-1] == ' '
		if bad || strings.ContainsRune(`%"\;`+more, r) || !unicode.IsPrint(r) || r == ' ' && edge {
			for _, c := range []byte(name[i : i+size]) {
				fmt.Fprintf(&b, "%%%02X", c)
			}
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

// brief is text for the line of an entry: there a semicolon begins a comment,
// and a comment may hold tags that change the date. Ledger reads lines of up
// to 4095 bytes, so a text that is too long is cut.
func brief(text string) string {
	text = plain(strings.ReplaceAll(text, ";", ","))
	if cut := []rune(text); len(cut) > longest {
		text = string(cut[:longest])
	}
	return text
}

// plain is text on one line, without letters that print nothing.
func plain(text string) string {
	text = strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return ' '
		}
		return r
	}, text)
	return strings.Join(strings.Fields(text), " ")
}

const longest = 300 // letters

// day keeps a moment within the years that both programs know: ledger's
// calendar is that of Boost, which has the years 1400 to 9999. A day less at
// both ends leaves room for every zone.
func day(ms int64) time.Time {
	first := time.Date(1400, 1, 2, 0, 0, 0, 0, time.UTC).UnixMilli()
	last := time.Date(9999, 12, 30, 0, 0, 0, 0, time.UTC).UnixMilli()
	return time.UnixMilli(min(max(ms, first), last))
}

// words says the act and who did it.
func words(d *model.Department, e *model.Entry) string {
	text := strings.ReplaceAll(string(e.Verb), "_", " ")
	if e.Verb == model.Stores {
		text = "the inventory changes"
	}
	if e.Item != "" {
		text += " " + e.Item
		if it := d.Item(e.Item); it != nil {
			text += " " + it.Name
		}
	}
	if e.Rig != "" {
		text += ", " + e.Rig
	}
	if e.Holder != "" {
		text += ", to " + people(d, e.Holder)
	}
	if e.By != "" {
		text += ", by " + people(d, e.By)
	}
	return text
}

// people names members; several are joined with "+".
func people(d *model.Department, ids string) string {
	names := strings.Split(ids, "+")
	for i, id := range names {
		if m := d.Member(id); m != nil && m.Name != "" {
			names[i] = m.Name
		}
	}
	return strings.Join(names, ", ")
}
