// Package loadup works out the order in which the pieces on the tarp go back
// into their rig: as few doors opened as the stow rules allow, one lap round
// the rig where they allow that, deep before shallow, and never a piece in
// the way of one that is still to come.
package loadup

import (
	"cmp"
	"slices"

	"tarpside/model"
)

// A Door is a compartment and the number of its door on the walk round the
// rig. A through bay has a door on either side, with different numbers.
type Door struct {
	Lap         int
	Compartment string
}

// Compare puts doors in the order of the walk.
func (d Door) Compare(e Door) int {
	return cmp.Or(cmp.Compare(d.Lap, e.Lap), cmp.Compare(d.Compartment, e.Compartment))
}

// A Piece is a line with pieces to load. Door, Slot and Depth are those of
// its slot; depth 0 is in front.
type Piece struct {
	Item, Slot   string
	Door         Door
	Depth, Order int
}

// A Problem is what Plan needs to know. The three functions are asked about
// any line that is on the list or named in a rule, and must not be nil.
type Problem struct {
	Pieces []Piece             // what is to be loaded, each line once, in any order
	Rules  []model.StowRule    // rules about other rigs do no harm
	KitOf  func(string) string // the kit that a line lives in, "" if none
	Aboard func(string) bool   // a piece of the line is really home now
	DoorOf func(string) Door   // the door of the line's slot

	// At is the door where somebody is loading now, nil if nobody is. What
	// still goes in there goes in first, so that what is left keeps its
	// order when a piece goes in.
	At *Door
}

// A Step loads one line through a door. Blocked: its slot is closed by what
// is aboard already, or it stands in a loop of rules, and the door is that of
// its slot.
type Step struct {
	Item    string
	Door    Door
	Blocked bool
}

// An End is one door of a through bay and what closes it: pieces aboard
// behind that door. It is open while there are none.
type End struct {
	Door Door
	By   []string
}

// A Closure is how a slot stands. Any piece of Alone closes it; a through bay
// is closed while all its Ends are. The zero value is an open slot.
type Closure struct {
	Alone []string
	Ends  []End
	group string // of the bay; an item is in one at most
}

// Shut tells whether the slot is closed.
func (c Closure) Shut() bool {
	open := func(e End) bool { return len(e.By) == 0 }
	return len(c.Alone) > 0 || len(c.Ends) > 0 && !slices.ContainsFunc(c.Ends, open)
}

// By names each piece that keeps the slot closed once, none if it is open.
// All that are in Alone must come out, and those behind one of the Ends.
func (c Closure) By() []string {
	if !c.Shut() {
		return nil
	}
	by := slices.Clone(c.Alone)
	if alone := (Closure{Ends: c.Ends}); alone.Shut() {
		for _, e := range c.Ends {
			for _, item := range e.By {
				by = once(by, item)
			}
		}
	}
	return by
}

// Closed tells what closes the slot of an item, by the rules that name it as
// first. Pieces are in the order of the rules, ends in the order of the walk.
func Closed(item string, rules []model.StowRule, aboard func(string) bool, doorOf func(string) Door) Closure {
	var c Closure
	through := false
	for _, r := range rules {
		switch {
		case r.First != item:
		case r.Closes == model.BothEnds:
			if !through {
				c.group, through = r.Group, true
			}
		case aboard(r.Then):
			c.Alone = once(c.Alone, r.Then)
		}
	}
	for _, r := range rules {
		if !through || r.Closes != model.BothEnds || r.Group != c.group {
			continue
		}
		door := doorOf(r.Then)
		i, found := slices.BinarySearchFunc(c.Ends, door, func(e End, d Door) int { return e.Door.Compare(d) })
		if !found {
			c.Ends = slices.Insert(c.Ends, i, End{Door: door})
		}
		if aboard(r.Then) {
			c.Ends[i].By = once(c.Ends[i].By, r.Then)
		}
	}
	return c
}

func once(list []string, s string) []string {
	if slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}

// Plan gives every piece of the problem one step. The steps that are not
// Blocked never close the slot of a piece to come; they take the fewest
// visits to doors, and of such plans the one whose doors come first, visit by
// visit. Where rules across many doors are so tangled that proving the fewest
// takes more than a bounded search (see tries), the visits may be more.
func Plan(p Problem) []Step {
	y := newYard(p)
	left := y.all()
	steps := make([]Step, 0, len(p.Pieces))
	visit := func(door int) {
		y.visit(left, door, func(piece int) {
			steps = append(steps, Step{Item: y.pieces[piece].Item, Door: y.doors[door]})
		})
	}
	if p.At != nil {
		if door, ok := slices.BinarySearchFunc(y.doors, *p.At, Door.Compare); ok {
			visit(door)
		}
	}
	for _, door := range y.walk(left) {
		visit(door)
	}
	slices.SortFunc(y.last, func(a, b Piece) int {
		return cmp.Or(cmp.Compare(a.Door.Lap, b.Door.Lap), inVisit(a, b))
	})
	for _, piece := range y.last {
		steps = append(steps, Step{Item: piece.Item, Door: piece.Door, Blocked: true})
	}
	return steps
}

// inVisit is the order of pieces at one door: the deepest first.
func inVisit(a, b Piece) int {
	return cmp.Or(cmp.Compare(b.Depth, a.Depth), cmp.Compare(a.Slot, b.Slot),
		cmp.Compare(a.Order, b.Order), cmp.Compare(a.Item, b.Item))
}
