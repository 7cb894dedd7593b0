// Package match sets what is short on one rig beside what another rig has too
// many of. It proposes a likely swap; it never settles one: eyes do.
package match

import (
	"cmp"
	"slices"
	"strings"

	"tarpside/model"
)

// A Side is so many pieces of a line, short or extra.
type Side struct {
	Line   int // position in Dept.Items, or whatever the caller counts by
	Rig    string
	Family string
	Size   string // "4x4x20"; empty: none is known, and it differs from nothing
	N      int
}

// What is known of a pair: the less it costs, the likelier it is.
const (
	markRead  = 0 // somebody read the owner's mark on the extra pieces
	samePlace = 1 // both were at one place
	sameScene = 2 // both were at this incident
	otherSize = 3 // on top, where the sizes differ
)

// Known is what people have seen of a pair, by positions in the two lists.
// A nil function knows nothing.
type Known struct {
	MarkRead  func(short, extra int) bool
	SamePlace func(short, extra int) bool
}

// cost is what a pair costs; ok is false where it cannot be: another family,
// no family, or the same rig.
func cost(s, x Side, mark, place bool) (c int, ok bool) {
	switch {
	case s.Family == "" || s.Family != x.Family || s.Rig == x.Rig:
		return 0, false
	case mark:
		c = markRead
	case place:
		c = samePlace
	default:
		c = sameScene
	}
	if s.Size != "" && x.Size != "" && s.Size != x.Size {
		c += otherSize
	}
	return c, true
}

// A Pair is a likely swap: pieces of the short line that may be among the
// extra ones.
type Pair struct {
	Short, Extra int // positions in the two lists
	Least, Most  int // pieces, over all the cheapest ways to explain what is short
	Cost         int // of one piece
}

// Clear tells whether every cheapest way has this pair with the same number
// of pieces: then it is proposed. Otherwise it is one of several that fit as
// well, and all of them are shown.
func (p Pair) Clear() bool { return p.Least == p.Most }

// A Match is a family: the pairs that any cheapest way has, the clear ones
// first.
type Match struct {
	Family string
	Pairs  []Pair
	N      int // pieces explained, the most there can be
	Cost   int // of them all, the least there can be
	Short  int // pieces that nobody's extra explains
}

// Find matches each family: as many pieces as there can be, at the least
// cost. Families come in the order of their names. The answer is exact.
func Find(short, extra []Side, k Known) []Match {
	byFamily := map[string]*net{}
	for i, s := range short {
		if s.N > 0 && s.Family != "" {
			family(byFamily, s.Family).short = append(family(byFamily, s.Family).short, i)
		}
	}
	for i, x := range extra {
		if f := byFamily[x.Family]; f != nil && x.N > 0 {
			f.extra = append(f.extra, i)
		}
	}
	var out []Match
	for name, f := range byFamily {
		f.build(short, extra, k)
		if m := f.solve(); len(m.Pairs) > 0 {
			m.Family = name
			for _, i := range f.short {
				m.Short += min(short[i].N, mostN)
			}
			m.Short -= m.N
			out = append(out, m)
		}
	}
	slices.SortFunc(out, func(a, b Match) int { return strings.Compare(a.Family, b.Family) })
	return out
}

func family(all map[string]*net, name string) *net {
	if all[name] == nil {
		all[name] = &net{}
	}
	return all[name]
}

// solve finds the cheapest way, then for each pair the fewest and the most
// pieces that it has in any way as cheap.
func (f *net) solve() Match {
	n, c := f.cheapest(1, -1, 0)
	m := Match{N: n, Cost: c}
	scale := n + 1 // a piece more or less on one pair decides only among ways that are otherwise as cheap
	for e := range f.pairs {
		_, low := f.cheapest(scale, e, 1)
		_, high := f.cheapest(scale, e, -1)
		p := f.pairs[e]
		p.Least, p.Most = low-c*scale, c*scale-high
		if p.Most > 0 {
			m.Pairs = append(m.Pairs, p)
		}
	}
	slices.SortStableFunc(m.Pairs, func(a, b Pair) int {
		if a.Clear() != b.Clear() {
			if a.Clear() {
				return -1
			}
			return 1
		}
		return cmp.Or(cmp.Compare(a.Cost, b.Cost), cmp.Compare(b.Most, a.Most))
	})
	return m
}

// Of matches what the state has: lines with unexplained pieces, and lines of
// which counts saw more than the books have.
func Of(s *model.State, k func(short, extra []Side) Known) (short, extra []Side, all []Match) {
	for _, i := range s.Dept.ByItem() {
		it := &s.Dept.Items[i]
		side := Side{Line: i, Rig: it.Rig, Family: it.Family, Size: Size(it.Name)}
		if side.N = s.Line(i).N(model.Place{Kind: model.Unexplained}); side.N > 0 {
			short = append(short, side)
		}
		if side.N = s.AnyExtra(i); side.N > 0 {
			extra = append(extra, side)
		}
	}
	var known Known
	if k != nil {
		known = k(short, extra)
	}
	return short, extra, Find(short, extra, known)
}

// Size is the word of a name that tells a size, "4x4x20" of "Crib block
// 4x4x20"; empty where there is none.
func Size(name string) string {
	for _, w := range strings.Fields(strings.ToLower(name)) {
		parts := strings.Split(w, "x")
		if len(parts) < 2 {
			continue
		}
		if !slices.ContainsFunc(parts, func(p string) bool { return p == "" || strings.Trim(p, "0123456789.") != "" }) {
			return w
		}
	}
	return ""
}

// How a match is got, for those who ask.
const (
	Formula = "within a family, most pieces first, then least cost: 0 the mark was read, 1 at the same place, 2 at the same incident, 3 more for another size"
	Source  = "least-cost matching, every way counted; the costs are common practice"
	Limits  = "a likely swap, never a settled one: look at the mark before anything is moved"
)
