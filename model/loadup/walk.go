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
// of the visits to them. Pieces that all go in at the first visit to their
// door, whenever that is, are left out, but for one where a door has no other.
type knot struct {
	*yard
	doors []int
	left  set
	bare  bool // no through bay is among it
}

// knots sorts what is left into knots.
func (y *yard) knots(left set) []knot {
	tied := newGroups(len(y.pieces)) // pieces that decide about each other
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
	across := make([]bool, len(y.pieces)) // by group: it has several doors
	door := slices.Repeat([]int{-1}, len(y.pieces))
	each := func(do func(i, group, door int)) {
		for i, ways := range y.ways {
			if !left.has(i) {
				continue
			}
			for _, d := range ways {
				do(i, tied.of(i), d)
			}
		}
	}
	each(func(_, g, d int) {
		across[g] = across[g] || door[g] >= 0 && door[g] != d
		door[g] = d
	})
	joined := newGroups(len(y.doors))
	each(func(_, g, d int) { joined.join(d, door[g]) })

	small := *y // serves what decides only
	small.at = make([][]int, len(y.doors))
	plain := slices.Repeat([]int{-1}, len(y.doors))
	each(func(i, g, d int) {
		if across[g] {
			small.at[d] = append(small.at[d], i)
		} else if plain[d] < 0 && !slices.ContainsFunc(y.waits[i], left.has) {
			plain[d] = i
		}
	})
	knots := map[int]*knot{}
	var order []*knot
	for d := range y.doors {
		if plain[d] >= 0 {
			small.at[d] = append(small.at[d], plain[d])
			slices.Sort(small.at[d])
		}
		if len(small.at[d]) == 0 {
			continue
		}
		k := knots[joined.of(d)]
		if k == nil {
			k = &knot{yard: &small, left: newSet(len(y.pieces)), bare: true}
			knots[joined.of(d)], order = k, append(order, k)
		}
		k.doors = append(k.doors, d)
		for _, i := range small.at[d] {
			k.left.add(i)
			k.bare = k.bare && y.bay[i] < 0
		}
	}
	out := make([]knot, len(order))
	for i, k := range order {
		out[i] = *k
	}
	return out
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
