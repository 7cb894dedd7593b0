// Package paper writes what the log knows in forms that other programs and
// people read without Tarpside.
package paper

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"tarpside/model"
)

// Journal writes a log as a plain-text double-entry journal that hledger and
// ledger read. An account is a place, its first part the kind of place; the
// commodity is the item's id in double quotes; what a rig owns comes from
// owner:RIG. Each entry is posted as the fold took it, so the balances are
// those of the board, also where two devices contradicted each other.
func Journal(w io.Writer, entries []model.Entry, in *time.Location) error {
	j := journal{out: bufio.NewWriter(w), s: model.NewState(new(model.Department).Index()), in: in}
	fmt.Fprintln(j.out, "; Tarpside: every piece is somewhere. Accounts are places, commodities are items.")
	for _, e := range model.Sorted(entries) {
		j.entry(e)
	}
	return j.out.Flush()
}

type journal struct {
	out *bufio.Writer
	s   *model.State
	in  *time.Location
}

// posting is so many pieces of an item that came to an account.
type posting struct {
	account, item string
	n             int
}

func (j *journal) entry(e *model.Entry) {
	before := j.s
	j.s = before.Clone()
	j.s.Apply(e)
	var all []posting
	for _, i := range j.s.Dept.ByItem() {
		it := &j.s.Dept.Items[i]
		was := before.LineOf(it.ID)
		if was != j.s.Line(i) {
			all = append(all, moved(it, was, j.s.Line(i))...)
		}
	}
	for _, i := range before.Dept.ByItem() {
		if it := &before.Dept.Items[i]; j.s.Dept.ItemIndex(it.ID) < 0 {
			all = append(all, moved(it, before.Line(i), nil)...)
		}
	}
	if len(all) == 0 {
		return
	}
	fmt.Fprintf(j.out, "\n%s %s\n", time.UnixMilli(e.At()).In(j.in).Format("2006-01-02"), j.words(e))
	for _, p := range all {
		fmt.Fprintf(j.out, "    %s  %d \"%s\"\n", p.account, p.n, p.item)
	}
}

// words describe an entry in one line that no journal reads as more.
func (j *journal) words(e *model.Entry) string {
	parts := []string{time.UnixMilli(e.At()).In(j.in).Format("15:04"), strings.ReplaceAll(string(e.Verb), "_", " ")}
	if it := j.s.Dept.Item(e.Item); it != nil {
		parts = append(parts, it.Name)
	}
	if e.By != "" {
		parts = append(parts, "by "+e.By)
	}
	return plain(strings.Join(parts, " "))
}

// moved is the difference that an entry made to the books of a line. What the
// rig owns more or less than before is taken from its owner account.
func moved(it *model.Item, was, is *model.Line) []posting {
	change := map[string]int{}
	add := func(l *model.Line, sign int) {
		if l != nil {
			for _, st := range l.Stacks {
				change[account(st.Place)] += sign * st.N
			}
		}
	}
	add(was, -1)
	add(is, 1)
	owned := 0
	for _, n := range change {
		owned += n
	}
	change["owner:"+plain(it.Rig)] -= owned
	var out []posting
	for a, n := range change {
		if n != 0 {
			out = append(out, posting{a, it.ID, n})
		}
	}
	slices.SortFunc(out, func(a, b posting) int { return strings.Compare(a.account, b.account) })
	return out
}

// account is the place as an account name: the kind first. The grounds of two
// scenes that are open at once are accounts of their own.
func account(p model.Place) string {
	name := string(p.Kind)
	for _, part := range []string{p.Name, p.Ground} {
		if part != "" {
			name += ":" + plain(part)
		}
	}
	return name
}

// plain makes a text safe in an account or a description: no comment begins
// in it, and no two blanks end it early.
func plain(text string) string {
	text = strings.Map(func(r rune) rune {
		switch {
		case r < ' ' || r == ';' || r == '|' || r == '"' || r == '\u00a0':
			return ' '
		case r == '=':
			return '-'
		case strings.ContainsRune("()[]{}<>*!@", r):
			return '_'
		}
		return r
	}, text)
	if text = strings.Join(strings.Fields(text), " "); text == "" {
		return "blank"
	}
	return text
}
