package loadup

import (
	"encoding/binary"
	"math/bits"
	"slices"
)

// tries bounds the search of one knot, in visits tried. It is a count and not
// a time, so that every tablet shows the same order.
const tries = 8000

// A search finds the fewest visits to the doors of a knot. Doors are numbered
// anew from 0, in the same order. What can follow from rules across doors is
// bounded from below by chains: pieces that must go in one after the other.
type search struct {
	*knot
	chain  []int           // piece -> visits to its door that its longest chain takes
	beyond []uint64        // piece -> other doors of pieces that must follow it
	own    [][]int         // door -> the pieces that have this door only
	known  map[string]span // what is left -> what is known about its visits
	rooms  []set           // scratch, one for each depth
	tried  int
	limit  int // of tried
}

// span says that more than no visits are needed, and that yes are enough.
type span struct{ no, yes int }

const many = 1 << 30

func newSearch(k *knot) *search {
	s := &search{knot: k, known: map[string]span{}, limit: tries}
	n := len(k.pieces)
	s.chain, s.beyond, s.own = make([]int, n), make([]uint64, n), make([][]int, len(k.doors))
	local := slices.Repeat([]int{-1}, len(k.yard.doors))
	for d, door := range s.doors {
		local[door] = d
		for _, i := range s.at[door] {
			if len(s.ways[i]) == 1 {
				s.own[d] = append(s.own[d], i)
			}
		}
	}
	s.chains(local)
	return s
}

// chains fills in chain and beyond, from the last pieces to the first. For
// every door v counts, in halves, the visits that a chain from a piece on
// takes: twice the visits, and one more if what goes in before the piece has
// no part in the first of them.
func (s *search) chains(local []int) {
	v := make([][]int, len(s.pieces))
	var fill func(i int)
	fill = func(i int) {
		if v[i] != nil {
			return
		}
		v[i] = make([]int, len(s.doors))
		for _, f := range s.frees[i] {
			if !s.left.has(f) {
				continue
			}
			fill(f)
			for d := range v[i] {
				v[i][d] = max(v[i][d], v[f][d])
			}
			s.beyond[i] |= s.beyond[f]
			if len(s.ways[f]) == 1 {
				s.beyond[i] |= bit(local[s.ways[f][0]])
			}
		}
		for d, door := range s.doors {
			mine := slices.Contains(s.ways[i], door)
			switch {
			case !mine && v[i][d] > 0:
				v[i][d] |= 1
			case mine && len(s.ways[i]) == 1:
				v[i][d] = max(2, v[i][d]+v[i][d]&1)
				s.chain[i] = v[i][d] / 2
			}
		}
	}
	for i := range s.pieces {
		if s.left.has(i) {
			fill(i)
		}
	}
}

// bit is the bit of a door; doors after the 64th have none and only lose
// sharpness of the bound.
func bit(d int) uint64 {
	if d > 63 {
		return 0
	}
	return 1 << d
}

// best is the answer: the list of doors.
func (s *search) best() []int {
	n := s.atLeast(s.left)
	for ; !s.fits(s.room(0, s.left), n, 1); n++ {
		if s.tried > s.limit {
			return s.greedy()
		}
	}
	var list []int
	for left := slices.Clone(s.left); !left.empty(); n-- {
		for _, door := range s.doors {
			next := s.room(0, left)
			if s.visit(next, door, nil) > 0 && s.fits(s.room(1, next), n-1, 2) {
				list = append(list, door)
				copy(left, next)
				break
			}
			if s.tried > s.limit {
				return s.greedy()
			}
		}
	}
	return list
}

// greedy goes to the door after which the fewest visits seem to be left.
func (s *search) greedy() []int {
	var list []int
	for left := slices.Clone(s.left); !left.empty(); {
		to, least := -1, many
		for _, door := range s.doors {
			next := s.room(0, left)
			if s.visit(next, door, nil) == 0 {
				continue
			}
			if n := s.atLeast(next); n < least {
				to, least = door, n
			}
		}
		s.visit(left, to, nil)
		list = append(list, to)
	}
	return list
}

// room is a copy of left that lasts until the same depth is used again.
func (s *search) room(depth int, left set) set {
	for len(s.rooms) <= depth {
		s.rooms = append(s.rooms, newSet(len(s.pieces)))
	}
	copy(s.rooms[depth], left)
	return s.rooms[depth]
}

// fits tells whether what is left can be loaded with n visits. It uses left
// up, and the rooms from depth on. Beyond the limit it says no.
func (s *search) fits(left set, n, depth int) bool {
	v := s.look(left)
	n -= s.peel(left, &v)
	if left.empty() {
		return n >= 0
	}
	if v.bound() > n {
		return false
	}
	key := make([]byte, 0, 128)
	for _, w := range left {
		key = binary.LittleEndian.AppendUint64(key, w)
	}
	r, met := s.known[string(key)]
	if !met {
		r = span{no: -1, yes: many}
	}
	if n <= r.no || n >= r.yes {
		return n >= r.yes
	}
	for _, door := range s.doors {
		next := s.room(depth, left)
		if s.visit(next, door, nil) == 0 {
			continue
		}
		if s.tried++; s.tried > s.limit {
			return false
		}
		if s.fits(next, n-1, depth+1) {
			r.yes = n
			s.known[string(key)] = r
			return true
		}
	}
	if s.tried > s.limit {
		return false
	}
	r.no = n
	s.known[string(key)] = r
	return false
}

// atLeast is a number of visits that what is left takes at the least.
func (s *search) atLeast(left set) int {
	v := s.look(left)
	return v.bound()
}

// A view is what is left seen from the doors, as bits. What is behind doors
// after the 64th of a knot is only counted, which makes the bound less sharp.
type view struct {
	doors uint64     // those with pieces of their own left
	then  [64]uint64 // door -> other doors with pieces that must follow a piece of it
	need  [64]int    // door -> visits that the chains take
	more  int        // visits that the chains take at doors that have no bit
}

func (s *search) look(left set) view {
	var v view
	for d, own := range s.own {
		need, then := 0, uint64(0)
		for _, i := range own {
			if left.has(i) {
				need = max(need, s.chain[i])
				then |= s.beyond[i]
			}
		}
		switch {
		case need == 0:
		case d > 63:
			v.more += need
		default:
			v.doors |= 1 << d
			v.need[d], v.then[d] = need, then&^(1<<d)
		}
	}
	return v
}

// peel takes doors out of left that need one more visit and nothing else:
// those behind which nothing waits for another door, which can be emptied
// now, and those for which no other door waits, which can be emptied last. It
// returns how many. A through bay can make it costly to be early or late, so
// a knot that has one is left as it is.
func (s *search) peel(left set, v *view) int {
	if !s.bare || len(s.doors) > 64 {
		return 0
	}
	gone := v.doors
	v.doors = core(&v.then, v.doors)
	gone &^= v.doors
	for x := gone; x != 0; x &= x - 1 {
		for _, i := range s.own[bits.TrailingZeros64(x)] {
			left.remove(i)
		}
	}
	return bits.OnesCount64(gone)
}

// bound adds up the visits that the chains take at each door. Doors that
// seem to need one visit each but wait for each other in a ring need one more
// for each such ring, if no two rings share a door.
func (v *view) bound() int {
	n, once := v.more, v.doors
	for x := v.doors; x != 0; x &= x - 1 {
		d := bits.TrailingZeros64(x)
		n += v.need[d]
		if v.need[d] > 1 {
			once &^= 1 << d
		}
	}
	for once = core(&v.then, once); once != 0; once = core(&v.then, once) {
		once &^= shortestRing(&v.then, once)
		n++
	}
	return n
}

// core is the doors that remain when those before or after all others are
// taken away again and again: none if the doors have an order.
func core(then *[64]uint64, doors uint64) uint64 {
	for {
		out := doors
		for rest := doors; rest != 0; rest &= rest - 1 {
			d := bits.TrailingZeros64(rest)
			led := false
			for x := doors &^ (1 << d); x != 0 && !led; x &= x - 1 {
				led = then[bits.TrailingZeros64(x)]>>d&1 == 1
			}
			if !led || then[d]&doors == 0 {
				doors &^= 1 << d
			}
		}
		if doors == out {
			return doors
		}
	}
}

// shortestRing finds the fewest doors that wait for each other in a ring.
// There is one: every door of a core leads on.
func shortestRing(then *[64]uint64, doors uint64) uint64 {
	var best uint64
	for rest := doors; rest != 0; rest &= rest - 1 {
		start := bits.TrailingZeros64(rest)
		var from, queue [65]int
		seen, end := uint64(0), 1
		queue[0] = start
		for k := 0; k < end && seen>>start&1 == 0; k++ {
			for x := then[queue[k]] & doors &^ seen; x != 0; x &= x - 1 {
				d := bits.TrailingZeros64(x)
				seen |= 1 << d
				from[d] = queue[k]
				queue[end] = d
				end++
			}
		}
		if seen>>start&1 == 0 {
			continue
		}
		ring := uint64(1) << start
		for d := from[start]; d != start; d = from[d] {
			ring |= 1 << d
		}
		if best == 0 || bits.OnesCount64(ring) < bits.OnesCount64(best) {
			best = ring
		}
	}
	return best
}
