package loadup

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

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

// drawProblem makes a small problem whose rules have no loop: whatever is
// first, or lives in a kit, has the smaller number.
func drawProblem(t *rapid.T, most int) Problem {
	n := rapid.IntRange(1, most).Draw(t, "pieces")
	doors := []Door{{1, "L1"}, {2, "T2"}, {2, "L2"}, {8, "T2"}, {3, "B1"}}
	doors = doors[:rapid.IntRange(2, len(doors)).Draw(t, "doors")]
	door := map[string]Door{}
	for i := range n {
		door[name(i)] = rapid.SampledFrom(doors).Draw(t, "door")
	}
	var rules []model.StowRule
	pair := func() (first, then int) {
		then = rapid.IntRange(1, n-1).Draw(t, "then")
		return rapid.IntRange(0, then-1).Draw(t, "first"), then
	}
	home := map[string]bool{}
	for range rapid.IntRange(0, 3+n).Draw(t, "rules") {
		if n < 2 {
			break
		}
		a, b := pair()
		rules = append(rules, model.StowRule{First: name(a), Then: name(b), Closes: model.Alone})
	}
	inBay := map[string]bool{}
	for g := range rapid.IntRange(0, 2).Draw(t, "bays") {
		cut := rapid.IntRange(0, n-1).Draw(t, "cut")
		group := fmt.Sprint("G", g)
		a := rapid.IntRange(0, len(doors)-1).Draw(t, "end")
		ends := []Door{doors[a], doors[(a+rapid.IntRange(1, len(doors)-1).Draw(t, "other"))%len(doors)]}
		var firsts, thens []string
		for i := range n {
			switch {
			case i <= cut && !inBay[name(i)] && rapid.Bool().Draw(t, "in"):
				firsts = append(firsts, name(i))
				inBay[name(i)] = true
			case i > cut && slices.Contains(ends, door[name(i)]) && rapid.Bool().Draw(t, "before"):
				thens = append(thens, name(i))
			}
		}
		for e, d := range ends { // somebody is at each end, if only one that is not on the list
			other := fmt.Sprint("o", g, e)
			door[other] = d
			home[other] = rapid.IntRange(0, 3).Draw(t, "other home") == 0
			thens = append(thens, other)
		}
		for _, f := range firsts {
			for _, th := range thens {
				rules = append(rules, model.StowRule{First: f, Then: th, Closes: model.BothEnds, Group: group})
			}
		}
	}
	for i := range n { // counted lines that are partly home
		home[name(i)] = rapid.IntRange(0, 9).Draw(t, "partly") == 0
	}
	kit := map[string]string{}
	for i := range n {
		if i < n-1 && rapid.IntRange(0, 3).Draw(t, "kit") == 0 {
			kit[name(i)] = name(rapid.IntRange(i+1, n-1).Draw(t, "which"))
		}
	}
	if n > 1 && rapid.Bool().Draw(t, "middle") { // a kit between that is not on the list
		kit[name(0)], kit["middle"] = "middle", name(n-1)
	}
	p := Problem{
		Rules:  rules,
		KitOf:  func(item string) string { return kit[item] },
		Aboard: func(item string) bool { return home[item] },
		DoorOf: func(item string) Door { return door[item] },
	}
	for i := range n {
		p.Pieces = append(p.Pieces, Piece{
			Item: name(i), Slot: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "slot"), Door: door[name(i)],
			Depth: rapid.IntRange(0, 2).Draw(t, "depth"), Order: rapid.IntRange(0, 3).Draw(t, "order"),
		})
	}
	return p
}

func name(i int) string { return fmt.Sprintf("i%02d", i) }

func visits(steps []Step) int {
	n := 0
	for i, s := range steps {
		if !s.Blocked && (i == 0 || s.Door != steps[i-1].Door) {
			n++
		}
	}
	return n
}

func TestPlanIsTheFirstOfTheFewestVisits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 7)
		if got, want := Plan(p), newSlow(p).plan(); !slices.Equal(got, want) {
			t.Fatalf("plan\n%v\nwant\n%v\nrules %v", got, want, p.Rules)
		}
	})
}

func TestPlanTakesTheFewestVisitsOnLongerLists(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 16)
		plan := Plan(p)
		s, known := newSlow(p), map[string]int{}
		for len(s.left) > 0 { // and each visit is to the first door that keeps them the fewest
			n := s.fewest(known)
			for _, d := range s.doors() {
				items, undo := s.visit(d)
				if len(items) == 0 || s.fewest(known) != n-1 {
					undo()
					continue
				}
				for _, item := range items {
					if plan[0] != (Step{Item: item, Door: d}) {
						t.Fatalf("got %v, want %s at %v", plan, item, d)
					}
					plan = plan[1:]
				}
				break
			}
		}
	})
}

func TestNoLegalSequenceEverTrapsAPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 5)
		stuck := false
		fewest := newSlow(p).sequences(Door{}, 0, &stuck)
		if stuck {
			t.Fatalf("a sequence gets stuck: %v", p.Rules)
		}
		if got := visits(Plan(p)); got < fewest {
			t.Fatalf("the plan takes %d visits, which no legal sequence does: %d", got, fewest)
		}
	})
}
