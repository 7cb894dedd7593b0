package loadup

import (
	"slices"

	"tarpside/model"
)

// A yard is a problem with names turned into numbers: pieces in the order of
// a visit, doors in the order of the walk. It holds only pieces that can go
// in; last are the others.
type yard struct {
	pieces []Piece
	last   []Piece
	doors  []Door
	ways   [][]int // piece -> its doors: one, or the ends of its bay
	at     [][]int // door -> the pieces that it serves
	waits  [][]int // piece -> the pieces that must be in before it
	frees  [][]int // piece -> the pieces that wait for it
	back   []int   // piece -> the first piece in order that its going in may free
	bay    []int   // piece -> the bay it lies in, or -1
	plugs  [][]plug
	bays   []bay
}

// A bay is one group of both_ends rules with pieces still to load.
type bay struct {
	firsts []int
	ends   []bayEnd
}

type bayEnd struct {
	door  int
	shut  bool  // closed before the first step
	thens []int // pieces to load that close it
}

// A plug is an end that a piece closes.
type plug struct{ bay, end int }

// newYard sets apart what is closed already or stands in a loop of rules,
// and numbers the rest.
func newYard(p Problem) *yard {
	y := &yard{}
	closures := map[string]Closure{}
	for _, r := range p.Rules {
		if _, known := closures[r.First]; !known {
			closures[r.First] = Closed(r.First, p.Rules, p.Aboard, p.DoorOf)
		}
	}
	for _, piece := range p.Pieces {
		if closures[piece.Item].Shut() {
			y.last = append(y.last, piece)
		} else {
			y.pieces = append(y.pieces, piece)
		}
	}
	for {
		slices.SortFunc(y.pieces, inVisit)
		y.link(p, closures)
		loop := y.looped()
		if len(loop) == 0 {
			return y
		}
		var rest []Piece
		for i, piece := range y.pieces {
			if slices.Contains(loop, i) {
				y.last = append(y.last, piece)
			} else {
				rest = append(rest, piece)
			}
		}
		y.pieces = rest
	}
}

// link fills in everything about the pieces that are in y.pieces.
func (y *yard) link(p Problem, closures map[string]Closure) {
	n := len(y.pieces)
	number := make(map[string]int, n)
	for i, piece := range y.pieces {
		number[piece.Item] = i
	}
	y.ways, y.waits, y.plugs = make([][]int, n), make([][]int, n), make([][]plug, n)
	y.bay, y.bays = slices.Repeat([]int{-1}, n), nil
	y.numberDoors(closures)
	for i, piece := range y.pieces {
		for seen := []string{piece.Item}; ; {
			kit := p.KitOf(seen[len(seen)-1])
			if kit == "" || slices.Contains(seen, kit) {
				break
			}
			if k, listed := number[kit]; listed {
				y.waits[k] = append(y.waits[k], i)
			}
			seen = append(seen, kit)
		}
	}
	groups := map[string]int{}
	for _, r := range p.Rules {
		first, listed := number[r.First]
		switch {
		case !listed:
		case r.Closes == model.BothEnds:
			if c := closures[r.First]; c.group == r.Group {
				y.bay[first] = y.bayOf(r.Group, groups, c)
			}
		default:
			if then, ok := number[r.Then]; ok && !slices.Contains(y.waits[then], first) {
				y.waits[then] = append(y.waits[then], first)
			}
		}
	}
	for _, r := range p.Rules {
		then, listed := number[r.Then]
		b, known := groups[r.Group]
		if !listed || !known || r.Closes != model.BothEnds {
			continue
		}
		e := slices.IndexFunc(y.bays[b].ends, func(e bayEnd) bool { return y.doors[e.door] == p.DoorOf(r.Then) })
		if pl := (plug{b, e}); !slices.Contains(y.plugs[then], pl) {
			y.plugs[then] = append(y.plugs[then], pl)
			y.bays[b].ends[e].thens = append(y.bays[b].ends[e].thens, then)
		}
	}
	y.turn()
}

// numberDoors numbers the doors of the pieces, and gives each piece its ways.
func (y *yard) numberDoors(closures map[string]Closure) {
	y.doors = nil
	for _, piece := range y.pieces {
		ends := closures[piece.Item].Ends
		if len(ends) == 0 {
			y.doors = append(y.doors, piece.Door)
		}
		for _, e := range ends {
			y.doors = append(y.doors, e.Door)
		}
	}
	slices.SortFunc(y.doors, Door.Compare)
	y.doors = slices.Compact(y.doors)
	y.at = make([][]int, len(y.doors))
	way := func(i int, d Door) {
		door, _ := slices.BinarySearchFunc(y.doors, d, Door.Compare)
		y.ways[i] = append(y.ways[i], door)
		y.at[door] = append(y.at[door], i)
	}
	for i, piece := range y.pieces {
		ends := closures[piece.Item].Ends
		if len(ends) == 0 {
			way(i, piece.Door)
		}
		for _, e := range ends {
			way(i, e.Door)
		}
	}
}

// bayOf finds or makes the bay of a group; c is how it stands at the start.
func (y *yard) bayOf(group string, groups map[string]int, c Closure) int {
	b, known := groups[group]
	if !known {
		b = len(y.bays)
		groups[group] = b
		y.bays = append(y.bays, bay{})
		for _, e := range c.Ends {
			door, _ := slices.BinarySearchFunc(y.doors, e.Door, Door.Compare)
			y.bays[b].ends = append(y.bays[b].ends, bayEnd{door: door, shut: len(e.By) > 0})
		}
	}
	return b
}

// turn fills in what follows from waits, bay and plugs the other way round.
func (y *yard) turn() {
	for i, b := range y.bay {
		if b >= 0 {
			y.bays[b].firsts = append(y.bays[b].firsts, i)
		}
	}
	y.frees, y.back = make([][]int, len(y.pieces)), make([]int, len(y.pieces))
	for i, waits := range y.waits {
		for _, w := range waits {
			y.frees[w] = append(y.frees[w], i)
		}
	}
	for i := range y.pieces {
		y.back[i] = i + 1
		for _, f := range y.after(i) {
			y.back[i] = min(y.back[i], f)
		}
	}
}

// after lists the pieces that are to follow piece i by any rule. What closes
// a bay need not follow what lies in it, but it never has to be before.
func (y *yard) after(i int) []int {
	b := y.bay[i]
	if b < 0 {
		return y.frees[i]
	}
	list := slices.Clone(y.frees[i])
	for _, e := range y.bays[b].ends {
		list = append(list, e.thens...)
	}
	return list
}

// looped lists the pieces that stand in a loop or wait for one. Imports
// refuse loops. Without one, the plan can never get stuck: a piece that
// follows none of those still out may go in.
func (y *yard) looped() []int {
	before := make([]int, len(y.pieces))
	for i := range y.pieces {
		for _, f := range y.after(i) {
			before[f]++
		}
	}
	var free []int
	for i, n := range before {
		if n == 0 {
			free = append(free, i)
		}
	}
	for k := 0; k < len(free); k++ {
		for _, f := range y.after(free[k]) {
			if before[f]--; before[f] == 0 {
				free = append(free, f)
			}
		}
	}
	var loop []int
	for i, n := range before {
		if n > 0 {
			loop = append(loop, i)
		}
	}
	return loop
}

// all is the set of all pieces.
func (y *yard) all() set {
	s := newSet(len(y.pieces))
	for i := range y.pieces {
		s.add(i)
	}
	return s
}

// visit takes out of left all that goes in at a door, one after the other,
// always the first that may, and tells each. It returns how many went in.
func (y *yard) visit(left set, door int, tell func(piece int)) int {
	n, list := 0, y.at[door]
	for i := 0; i < len(list); {
		piece := list[i]
		if !left.has(piece) || !y.may(left, piece, door) {
			i++
			continue
		}
		left.remove(piece)
		n++
		if tell != nil {
			tell(piece)
		}
		i++
		if y.back[piece] <= piece {
			i, _ = slices.BinarySearch(list, y.back[piece])
		}
	}
	return n
}

// may tells whether a piece may go in through a door now. That no piece
// aboard closes its slot by itself needs no asking: such a piece waits for it.
func (y *yard) may(left set, piece, door int) bool {
	for _, w := range y.waits[piece] {
		if left.has(w) {
			return false
		}
	}
	if b := y.bay[piece]; b >= 0 {
		for e := range y.bays[b].ends {
			if y.bays[b].ends[e].door == door && y.bays[b].closed(left, e) {
				return false
			}
		}
	}
	for _, pl := range y.plugs[piece] {
		if y.bays[pl.bay].needs(left, pl.end) {
			return false
		}
	}
	return true
}

// closed tells whether an end of the bay is closed.
func (b *bay) closed(left set, end int) bool {
	return b.ends[end].shut || slices.ContainsFunc(b.ends[end].thens, func(t int) bool { return !left.has(t) })
}

// needs tells whether the end is the last one open of a bay with pieces
// still to go in.
func (b *bay) needs(left set, end int) bool {
	for e := range b.ends {
		if e != end && !b.closed(left, e) {
			return false
		}
	}
	return slices.ContainsFunc(b.firsts, left.has)
}
