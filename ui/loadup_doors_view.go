package ui

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/loadup"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// doorOf is the door of a slot.
func doorOf(s *model.Slot) loadup.Door { return loadup.Door{Lap: s.Lap, Compartment: s.Compartment} }

// doors lists the doors of a rig in the order of the walk.
func (n *now) doors(rig string) []loadup.Door {
	var out []loadup.Door
	for i := range n.d.Slots {
		if s := &n.d.Slots[i]; s.Rig == rig {
			if d := doorOf(s); !slices.Contains(out, d) {
				out = append(out, d)
			}
		}
	}
	slices.SortFunc(out, loadup.Door.Compare)
	return out
}

// doorID is a door in the parts file: its compartment, with the lap where the
// compartment has two doors.
func (n *now) doorID(rig string, d loadup.Door) string {
	for _, o := range n.doors(rig) {
		if o.Compartment == d.Compartment && o != d {
			return fmt.Sprintf("%s@%d", d.Compartment, d.Lap)
		}
	}
	return d.Compartment
}

// The sides of a rig, as its crew says them.
var (
	driverSide  = words.K("driver side")
	officerSide = words.K("officer side")
)

// sideOf is the side of the rig that a door is on, in words that are yet to be
// translated.
func (n *now) sideOf(rig string, d loadup.Door) string {
	word := ""
	for i := range n.d.Slots {
		s := &n.d.Slots[i]
		if s.Rig != rig || doorOf(s) != d {
			continue
		}
		switch {
		case strings.Contains(s.Side, "left"):
			return driverSide
		case strings.Contains(s.Side, "right"):
			return officerSide
		case strings.Contains(s.Side, "rear"):
			word = words.K("rear")
		case strings.Contains(s.Side, "top"):
			word = words.K("roof")
		case strings.Contains(s.Side, "cab"):
			word = words.K("cab")
		case word == "":
			word = s.Side
		}
	}
	return word
}

// sideWord is a side over its first door.
func sideWord(side string) string {
	switch side {
	case driverSide:
		return parts.Or(words.L(side), words.L("driver"))
	case officerSide:
		return parts.Or(words.L(side), words.L("officer"))
	}
	return words.L(side)
}

// doorName is a door in two words at most; the side stands over it.
func doorName(d loadup.Door, side string) string {
	first, rest, many := strings.Cut(d.Compartment, " ")
	if many && (first == side || strings.HasPrefix(side, first)) {
		return rest
	}
	return d.Compartment
}

// doorWords is where he stands, in a sentence.
func (n *now) doorWords(rig string, d loadup.Door) string {
	if !strings.Contains(n.doorID(rig, d), "@") {
		return upper(d.Compartment)
	}
	if n.sideOf(rig, d) == driverSide {
		return words.F("%s, left door", d.Compartment)
	}
	return words.F("%s, right door", d.Compartment)
}

// linesAt are the lines that live behind a door, not those inside kits, in the
// order of their slots; pieces of kits that lie out alone come after them.
func (n *now) linesAt(rig string, d loadup.Door) []int {
	var out, loose []int
	for i := range n.d.Items {
		it := &n.d.Items[i]
		s := n.d.Slot(it.Slot)
		if it.Rig != rig || s == nil || doorOf(s) != d {
			continue
		}
		if it.Kit == "" {
			out = append(out, i)
		} else if _, ok := n.pieceOf(i); ok {
			loose = append(loose, i)
		}
	}
	return append(out, loose...)
}

// sideGroup is the doors of one side, in the order of the walk.
type sideGroup struct {
	side   string
	doors  []loadup.Door
	folded bool
}

func (n *now) sideGroups(rig string) []sideGroup {
	var out []sideGroup
	for _, d := range n.doors(rig) {
		side := n.sideOf(rig, d)
		if k := len(out); k == 0 || out[k-1].side != side {
			out = append(out, sideGroup{side: side})
		}
		g := &out[len(out)-1]
		g.doors = append(g.doors, d)
	}
	return out
}

// foldSides puts whole sides into the room of one door, the shortest first and
// never the one where he stands, until no door is narrower than a hand.
func foldSides(groups []sideGroup, at loadup.Door, width float32) {
	for {
		n, least := 0, -1
		for i, g := range groups {
			switch {
			case g.folded:
				n++
				continue
			case len(g.doors) > 1 && !slices.Contains(g.doors, at) && (least < 0 || len(g.doors) < len(groups[least].doors)):
				least = i
			}
			n += len(g.doors)
		}
		if float32(n)*(look.Floor+look.Gap)-look.Gap <= width || least < 0 {
			return
		}
		groups[least].folded = true
	}
}

// doorViews is the rig unrolled: a door or, where there is no room for all, a
// whole side in the room of one.
func (n *now) doorViews(st *luState, width float32) node {
	togo := map[loadup.Door]int{}
	for _, l := range n.loads(st.rig, st.at) {
		togo[l.Door]++
	}
	eyes := n.eyes()
	groups := n.sideGroups(st.rig)
	foldSides(groups, *st.at, width)
	var doors []node
	for _, g := range groups {
		if g.folded {
			doors = append(doors, n.foldedSide(st, g.doors, g.side, togo))
			continue
		}
		for j, d := range g.doors {
			v := n.doorView(st, d, g.side, togo[d], eyes)
			if j == (len(g.doors)-1)/2 {
				v.Side = sideWord(g.side)
			}
			if g.side == "cab" { // its nose points away from the boxes
				if v.Cab = "right"; len(doors) == 0 {
					v.Cab = "left"
				}
			}
			doors = append(doors, node{id: v.ID, view: v})
		}
	}
	return node{view: rowOf{look.Gap}, size: parts.DoorHigh, kids: doors}
}

func (n *now) foldedSide(st *luState, group []loadup.Door, side string, togo map[loadup.Door]int) node {
	v := parts.DoorView{Side: sideWord(side), Name: words.F("%d doors", len(group))}
	a, b := doorName(group[0], side), doorName(group[len(group)-1], side)
	first, x, _ := strings.Cut(a, " ")
	second, y, two := strings.Cut(b, " ")
	switch {
	case len(a) <= 2 && len(b) <= 2:
		v.Name = a + "-" + b
	case two && first == second && len(group) == 2:
		v.Name = first + " " + x + "-" + y
	}
	to := group[0]
	sum := 0
	for i := len(group) - 1; i >= 0; i-- {
		if k := togo[group[i]]; k > 0 {
			sum, to = sum+k, group[i]
		}
	}
	v.ID, v.State = n.doorID(st.rig, to), "side"
	if v.Count = words.F("%d to go", sum); sum == 0 {
		v.Count, v.Mode = n.restOf(st.rig, group)
	}
	return node{id: v.ID, view: v}
}

// restOf says what of doors is not home where nothing goes in there any more.
func (n *now) restOf(rig string, group []loadup.Door) (string, parts.DoorMode) {
	out, away := 0, 0
	for _, d := range group {
		o, a := n.missingAt(rig, d)
		out, away = out+o, away+a
	}
	switch {
	case out > 0:
		return words.F("%d out", out), parts.DoorAhead
	case away > 0:
		return words.F("%d away", away), parts.DoorAhead
	}
	return words.L("home"), parts.DoorHome
}

// missingAt counts the lines of a door that lie out, and those that are away.
func (n *now) missingAt(rig string, d loadup.Door) (out, away int) {
	for _, i := range n.linesAt(rig, d) {
		it := &n.d.Items[i]
		_, lies := n.pieceOf(i)
		switch missing := it.Quantity - n.s.Line(i).N(n.s.HomeOf(i)); {
		case lies:
			out++
		case missing > 0 && it.Kind != model.Consumable:
			away++
		}
	}
	return out, away
}

func (n *now) doorView(st *luState, d loadup.Door, side string, togo int, eyes map[string]bool) parts.DoorView {
	v := parts.DoorView{ID: n.doorID(st.rig, d), Name: doorName(d, side)}
	looked := true
	lines := n.linesAt(st.rig, d)
	for _, i := range lines {
		looked = looked && (eyes[n.d.Items[i].ID] || !n.s.Aboard(i))
	}
	out, away := n.missingAt(st.rig, d)
	switch {
	case togo > 0:
		v.Count = words.F("%d to go", togo)
		if slices.Contains(st.been, d) && d != *st.at {
			v.Count, v.Mode = words.F("%d, passed", togo), parts.DoorPassed
		}
	case out > 0:
		v.Count = words.F("%d out", out)
	case eyes[notOpened(st.rig, d)]:
		v.Count = words.L("not opened")
	case away > 0:
		v.Count = words.F("%d away", away)
	case looked && len(lines) > 0:
		v.Count, v.Mode = words.L("seen"), parts.DoorHome
	default:
		v.Count, v.Mode = words.L("home"), parts.DoorHome
	}
	if st.at != nil && *st.at == d {
		v.Mode = parts.DoorHere
	}
	v.Wheel = slices.Contains(n.wheels(st.rig), d)
	return v
}

// wheels are the doors over a wheel: the cab, as far as the walker meets it,
// and the one that the table of slots has over a wheel, with the one across
// from it. Where the table names none, it is the last door before the rear.
func (n *now) wheels(rig string) []loadup.Door {
	var out, rear []loadup.Door
	sides := map[string][]loadup.Door{}
	for _, d := range n.doors(rig) {
		side := n.sideOf(rig, d)
		sides[side] = append(sides[side], d)
		if side == "cab" {
			out = append(out, d)
		}
	}
	for i := range n.d.Slots {
		if s := &n.d.Slots[i]; s.Rig == rig && strings.Contains(s.Description, "wheel") {
			rear = append(rear, doorOf(s))
		}
	}
	driver, officer := sides[driverSide], sides[officerSide]
	if len(rear) == 0 && len(driver) > 0 {
		rear = append(rear, driver[len(driver)-1])
	}
	for _, d := range rear {
		out = append(out, d)
		if k := slices.Index(driver, d); k >= 0 { // the officer side is walked the other way
			if k = len(driver) - 1 - k; k < len(officer) {
				out = append(out, officer[k])
			}
		}
	}
	return out
}

// notOpened is the reading of the note that a door was not opened.
func notOpened(rig string, d loadup.Door) string {
	return fmt.Sprintf("not opened: %s %s %d", rig, d.Compartment, d.Lap)
}

// eyes tells which lines somebody had eyes on in their slots since they last
// moved in this scene, and which doors are noted as not opened.
func (n *now) eyes() map[string]bool {
	out := map[string]bool{}
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if !e.Taken() || e.Scene != n.scene.ID {
			continue
		}
		for _, m := range e.Moves {
			delete(out, m.Item)
		}
		switch {
		case e.Verb == model.Seen && e.From == e.To && e.From == string(model.Home):
			out[e.Item] = true
		case e.Verb == model.Count && (e.From == "" || e.From == string(model.Home)):
			out[e.Item] = true
		case e.Verb == model.Note && strings.HasPrefix(e.Reading, "not opened: "):
			out[e.Reading] = true
		}
	}
	return out
}

// progress counts the rig's lines that came off: those that are in, and all
// that can come in: what is with others, charging or lost cannot.
func (n *now) progress(rig string) (in, all int) {
	for i := range n.d.Items {
		it := &n.d.Items[i]
		if it.Rig != rig || n.s.Line(i).Peak == 0 {
			continue
		}
		_, lies := n.pieceOf(i)
		if lies {
			all++
		} else if it.Kit == "" && n.s.Aboard(i) && n.s.Line(i).Peak > it.Quantity-n.s.Line(i).N(n.s.HomeOf(i)) {
			in, all = in+1, all+1
		}
	}
	return in, all
}
