package loadup

import (
	"fmt"
	"slices"

	"tarpside/model"
)

// The rules of the load order once more, word by word and as slowly as they
// come, to hold the search against: nothing here shares code with Plan.

type slow struct {
	Problem
	aboard map[string]bool // loaded by an earlier step
	left   []Piece         // still on the list, what is closed at the start left out
}

func (s *slow) isAboard(item string) bool { return s.aboard[item] || s.Aboard(item) }

// endsOf is the doors of an item's group with "is it closed", nil if it has none.
func (s *slow) endsOf(item string) map[Door]bool {
	var ends map[Door]bool
	for _, r := range s.Rules {
		if r.First != item || r.Closes != model.BothEnds {
			continue
		}
		for _, o := range s.Rules {
			if o.Closes == model.BothEnds && o.Group == r.Group {
				if ends == nil {
					ends = map[Door]bool{}
				}
				ends[s.DoorOf(o.Then)] = ends[s.DoorOf(o.Then)] || s.isAboard(o.Then)
			}
		}
	}
	return ends
}

func (s *slow) alone(item string) bool {
	for _, r := range s.Rules {
		if r.First == item && r.Closes == model.Alone && s.isAboard(r.Then) {
			return true
		}
	}
	return false
}

func (s *slow) shut(item string) bool {
	ends := s.endsOf(item)
	all := len(ends) > 0
	for _, closed := range ends {
		all = all && closed
	}
	return all || s.alone(item)
}

func (s *slow) livesIn(item, kit string) bool {
	for k := s.KitOf(item); k != ""; k = s.KitOf(k) {
		if k == kit {
			return true
		}
	}
	return false
}

func (s *slow) may(p Piece, door Door) bool {
	if ends := s.endsOf(p.Item); ends != nil {
		if closed, mine := ends[door]; !mine || closed {
			return false
		}
	} else if door != p.Door {
		return false
	}
	if s.alone(p.Item) {
		return false
	}
	for _, o := range s.left {
		if o.Item != p.Item && s.livesIn(o.Item, p.Item) {
			return false
		}
	}
	was := s.aboard[p.Item]
	defer func() { s.aboard[p.Item] = was }()
	s.aboard[p.Item] = true
	for _, o := range s.left {
		if o.Item != p.Item && s.shut(o.Item) {
			return false
		}
	}
	return true
}

func (s *slow) load(i int) (undo func()) {
	p, was := s.left[i], s.left
	s.left = slices.Delete(slices.Clone(was), i, i+1)
	s.aboard[p.Item] = true
	return func() { s.left = was; delete(s.aboard, p.Item) }
}

// visit loads what one visit loads and names it.
func (s *slow) visit(door Door) (items []string, undo func()) {
	var undos []func()
	for {
		next := -1
		for i, p := range s.left {
			if s.may(p, door) && (next < 0 || before(p, s.left[next])) {
				next = i
			}
		}
		if next < 0 {
			return items, func() {
				for _, u := range slices.Backward(undos) {
					u()
				}
			}
		}
		items = append(items, s.left[next].Item)
		undos = append(undos, s.load(next))
	}
}

func before(a, b Piece) bool {
	switch {
	case a.Depth != b.Depth:
		return a.Depth > b.Depth
	case a.Slot != b.Slot:
		return a.Slot < b.Slot
	case a.Order != b.Order:
		return a.Order < b.Order
	}
	return a.Item < b.Item
}

func newSlow(p Problem) *slow {
	s := &slow{Problem: p, aboard: map[string]bool{}}
	for _, piece := range p.Pieces {
		if !s.shut(piece.Item) {
			s.left = append(s.left, piece)
		}
	}
	return s
}

func (s *slow) doors() []Door {
	var doors []Door
	for _, p := range s.left {
		if ends := s.endsOf(p.Item); ends != nil {
			for d := range ends {
				doors = append(doors, d)
			}
		} else {
			doors = append(doors, p.Door)
		}
	}
	slices.SortFunc(doors, func(a, b Door) int {
		if a.Lap != b.Lap {
			return a.Lap - b.Lap
		}
		return slices.Compare([]byte(a.Compartment), []byte(b.Compartment))
	})
	return slices.Compact(doors)
}

// plans tries every list of doors of exactly n visits in their order and
// returns the steps of the first that loads everything.
func (s *slow) plans(n int) ([]Step, bool) {
	if len(s.left) == 0 {
		return nil, n == 0
	}
	if n == 0 {
		return nil, false
	}
	for _, d := range s.doors() {
		items, undo := s.visit(d)
		rest, ok := []Step(nil), false
		if len(items) > 0 {
			rest, ok = s.plans(n - 1)
		}
		undo()
		if ok {
			var steps []Step
			for _, item := range items {
				steps = append(steps, Step{Item: item, Door: d})
			}
			return append(steps, rest...), true
		}
	}
	return nil, false
}

// fewest is the number of visits that what is left takes, without any bound
// to cut the search short.
func (s *slow) fewest(known map[string]int) int {
	if len(s.left) == 0 {
		return 0
	}
	key := fmt.Sprint(s.left)
	if n, ok := known[key]; ok {
		return n
	}
	best := 1 << 30
	for _, d := range s.doors() {
		items, undo := s.visit(d)
		if len(items) > 0 {
			best = min(best, 1+s.fewest(known))
		}
		undo()
	}
	known[key] = best
	return best
}

// sequences walks through every legal sequence of (piece, door) and returns
// the fewest door changes of any, counting the first door; stuck is set where
// something is left and nothing may go in.
func (s *slow) sequences(last Door, opened int, stuck *bool) int {
	if len(s.left) == 0 {
		return opened
	}
	fewest, moved := 1<<30, false
	for i, p := range s.left {
		for _, d := range s.doors() {
			if !s.may(p, d) {
				continue
			}
			moved = true
			n := opened
			if opened == 0 || d != last {
				n++
			}
			undo := s.load(i)
			fewest = min(fewest, s.sequences(d, n, stuck))
			undo()
		}
	}
	if !moved {
		*stuck = true
	}
	return fewest
}

func (s *slow) plan() []Step {
	var steps []Step
	for n := 0; ; n++ {
		found, ok := s.plans(n)
		if ok {
			steps = found
			break
		}
	}
	var last []Piece
	for _, p := range s.Pieces {
		if s.shut(p.Item) && !slices.ContainsFunc(steps, func(st Step) bool { return st.Item == p.Item }) {
			last = append(last, p)
		}
	}
	slices.SortFunc(last, func(a, b Piece) int {
		if a.Door.Lap != b.Door.Lap {
			return a.Door.Lap - b.Door.Lap
		}
		if before(a, b) {
			return -1
		}
		return 1
	})
	for _, p := range last {
		steps = append(steps, Step{Item: p.Item, Door: p.Door, Blocked: true})
	}
	return steps
}
