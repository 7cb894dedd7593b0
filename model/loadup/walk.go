package loadup

import "slices"

// walk is the list of doors that loads what is left with the fewest visits,
// the first such list in the order of the doors.
//
// Doors fall into knots: doors that some rule or kit ties together. What goes
// in behind one knot changes nothing behind another, so each knot has its
// fewest visits for itself, and the whole is the knots' lists, merged by
// always taking the earlier of the next doors.
func (y *yard) walk(left set) []int {
	var lists [][]int
	total := 0
	for _, k := range y.knots(left) {
		list := k.doors
		if len(list) > 1 {
			list = newSearch(k).best()
		}
		lists = append(lists, list)
		total += len(list)
	}
	merged := make([]int, 0, total)
	for len(merged) < total {
		next := -1
		for i, list := range lists {
			if len(list) > 0 && (next < 0 || list[0] < lists[next][0]) {
				next = i
			}
		}
		merged = append(merged, lists[next][0])
		lists[next] = lists[next][1:]
	}
	return merged
}

// A knot is a part of the yard: some doors, with what decides about the order
// of the visits to them. Of the pieces that all go in at the first visit to
// their door, whenever that is, one stands for all.
type knot struct {
	*yard
	doors []int
	left  set
	bare  bool // no through bay is among it
}

// knots sorts what is left into knots, in the order of their first doors.
func (y *yard) knots(left set) []*knot {
	tied, across := y.ties(left)
	joined := newGroups(len(y.doors))
	some := slices.Repeat([]int{-1}, len(y.pieces)) // group of pieces -> a door of it
	small := *y                                     // serves what decides only
	small.at = make([][]int, len(y.doors))
	for d, list := range y.at {
		plain := false
		for _, i := range list {
			g := tied.of(i)
			switch {
			case !left.has(i):
				continue
			case across[g]:
				small.at[d] = append(small.at[d], i)
			case !plain:
				small.at[d] = append(small.at[d], i)
				plain = true
			}
			if some[g] < 0 {
				some[g] = d
			}
			joined.join(d, some[g])
		}
	}
	var knots []*knot
	of := make(map[int]*knot)
	for d, list := range small.at {
		if len(list) == 0 {
			continue
		}
		k := of[joined.of(d)]
		if k == nil {
			k = &knot{yard: &small, left: newSet(len(y.pieces)), bare: true}
			of[joined.of(d)], knots = k, append(knots, k)
		}
		k.doors = append(k.doors, d)
		for _, i := range list {
			k.left.add(i)
			k.bare = k.bare && y.bay[i] < 0
		}
	}
	return knots
}

// ties groups the pieces that decide about each other, and tells of which
// groups the order of visits must take heed: those with several doors or a bay.
func (y *yard) ties(left set) (tied groups, across []bool) {
	tied = newGroups(len(y.pieces))
	for i := range y.pieces {
		if !left.has(i) {
			continue
		}
		for _, f := range y.after(i) {
			if left.has(f) {
				tied.join(i, f)
			}
		}
	}
	across = make([]bool, len(y.pieces))
	for i, ways := range y.ways {
		if g := tied.of(i); left.has(i) {
			across[g] = across[g] || y.bay[i] >= 0 || ways[0] != y.ways[g][0]
		}
	}
	return tied, across
}

// groups are numbers joined together.
type groups []int

func newGroups(n int) groups {
	g := make(groups, n)
	for i := range g {
		g[i] = i
	}
	return g
}

func (g groups) of(i int) int {
	for g[i] != i {
		g[i] = g[g[i]]
		i = g[i]
	}
	return i
}

func (g groups) join(a, b int) { g[g.of(a)] = g.of(b) }
