package trail

import (
	"cmp"
	"slices"

	"tarpside/model"
)

// An Eye is one thing to see with own eyes at the rig, before the walk: a
// piece of the list, or a line of a kit that is on it.
type Eye struct {
	Item, Name string
	Kit        string // the kit it is in; empty for a piece of the list itself
	N          int    // to be seen
}

// Eyes are what two people look at, at the rig, before the walk: a bag that
// looks full is not a complete bag. A kit's lines are asked in full, whatever
// the log says is in it. An item
// stands there once.
func Eyes(s *model.State, lines []Line) []Eye {
	var out []Eye
	for _, l := range lines {
		if l.Need == Stays || l.N == 0 {
			continue
		}
		out = append(out, Eye{Item: l.Item, Name: l.Name, N: l.N})
		if l.Line >= 0 {
			out = inside(s.Dept, l.Line, len(s.Dept.Items), out)
		}
	}
	return merge(out)
}

func inside(d *model.Department, kit, deep int, out []Eye) []Eye {
	if d.Items[kit].Kind != model.Kit || deep == 0 {
		return out
	}
	for _, c := range d.Inside(kit) {
		it := &d.Items[c]
		out = append(out, Eye{Item: it.ID, Name: it.Short(), Kit: d.Items[kit].ID, N: it.Quantity})
		out = inside(d, c, deep-1, out)
	}
	return out
}

// A Difference is a line that does not come to what it should.
type Difference struct {
	Item, Name string
	Want, Seen int
	Unseen     bool // nobody looked
}

// Short is how many are wanting; below zero there are more than there should be.
func (d Difference) Short() int { return d.Want - d.Seen }

// Verify compares what was seen at the rig with what is to be seen. The load
// is verified when nothing differs, every line was looked at, and two people
// did it. Seen is by item; a line that is not in it was not looked at.
func Verify(eyes []Eye, seen map[string]int, first, second string) (diffs []Difference, verified bool) {
	for _, e := range merge(eyes) {
		if n, ok := seen[e.Item]; !ok || n != e.N {
			diffs = append(diffs, Difference{e.Item, e.Name, e.N, n, !ok})
		}
	}
	return diffs, len(eyes) > 0 && len(diffs) == 0 && first != "" && second != "" && first != second
}

// merge adds up the eyes of one item.
func merge(eyes []Eye) []Eye {
	var out []Eye
	at := map[string]int{}
	for _, e := range eyes {
		if i, ok := at[e.Item]; ok {
			out[i].N += e.N
			continue
		}
		at[e.Item] = len(out)
		out = append(out, e)
	}
	return out
}

// A Tally is where the pieces of one line went that were taken along.
type Tally struct {
	Item, Name string
	Took       int
	Used       int // used up on the way
	Gave       int // handed to an agency
}

// Back is how many must come back: all that was neither used nor handed over.
func (t Tally) Back() int { return max(0, t.Took-max(0, t.Used)-max(0, t.Gave)) }

// CountAt compares what is seen at the patient, or before the walk back, with
// what must be there: everything comes back. A line that nobody looked at is a
// difference too. What lies there and was never taken along is one as well:
// it is somebody else's, or it was never logged.
func CountAt(load []Tally, seen map[string]int) []Difference {
	var out []Difference
	known := map[string]bool{}
	for _, t := range load {
		known[t.Item] = true
		if n, ok := seen[t.Item]; t.Back() != n || !ok && t.Back() > 0 {
			out = append(out, Difference{t.Item, t.Name, t.Back(), n, !ok})
		}
	}
	var strange []Difference
	for item, n := range seen {
		if !known[item] && n != 0 {
			strange = append(strange, Difference{Item: item, Name: item, Seen: n})
		}
	}
	slices.SortFunc(strange, func(a, b Difference) int { return cmp.Compare(a.Item, b.Item) })
	return append(out, strange...)
}

// Compare holds what was loaded against the list: what is wanting of the
// musts, and the pounds that are not needed. Either is a failure: a needless
// thirty pounds as much as a piece left behind. Loaded is pieces by position
// in the list.
func Compare(lines []Line, loaded map[int]int) (wanting []Difference, needlessLb float64) {
	for i, l := range lines {
		n := max(0, loaded[i])
		if l.Need == Must && n < l.N {
			wanting = append(wanting, Difference{Item: l.Item, Name: l.Name, Want: l.N, Seen: n})
		}
		need := l.N
		if l.Need == Stays {
			need = 0
		}
		needlessLb += float64(max(0, n-need)) * l.Lb
	}
	return wanting, needlessLb
}
