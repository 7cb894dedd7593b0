package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// door is one door of a rig, with the lines that live behind it. What a kit
// holds goes with the kit and is not among them.
type door struct {
	rig, name string
	lines     []int
}

// noSlot is where the lines of a rig are that nobody gave a slot.
const noSlot = "?"

// doors are the doors of a rig in the order of one lap round it, what is
// reached from within last. Compartments that begin with the same word, such
// as the two boxes on a roof, are one.
func (n *now) doorsOf(rig string) []door {
	return once(n, "doors of "+rig, func() []door { return n.workDoors(rig) })
}

func (n *now) workDoors(rig string) []door {
	var out []door
	lap := map[string]int{}
	for i := range n.d.Items {
		it := &n.d.Items[i]
		if it.Rig != rig || it.Kit != "" {
			continue
		}
		name, at := noSlot, 99
		if s := n.d.Slot(it.Slot); s != nil {
			if name, at = n.doorName(s), s.Lap; at == 0 {
				at = 98
			}
		}
		k := slices.IndexFunc(out, func(d door) bool { return d.name == name })
		if k < 0 {
			k, out, lap[name] = len(out), append(out, door{rig: rig, name: name}), at
		}
		out[k].lines = append(out[k].lines, i)
		lap[name] = min(lap[name], at)
	}
	slices.SortStableFunc(out, func(a, b door) int { return cmp.Compare(lap[a.name], lap[b.name]) })
	return out
}

// doorName is the name of the door that a slot is behind.
func (n *now) doorName(s *model.Slot) string {
	first, _, long := strings.Cut(s.Compartment, " ")
	if !long {
		return s.Compartment
	}
	for i := range n.d.Slots {
		o := &n.d.Slots[i]
		if o.Rig == s.Rig && o.Compartment != s.Compartment && strings.HasPrefix(o.Compartment, first+" ") {
			return first
		}
	}
	return s.Compartment
}

// slotWord is where a piece lives, for its tile: the compartment, or where that
// is too long the door that it is behind.
func (n *now) slotWord(s *model.Slot) string {
	switch {
	case s == nil:
		return ""
	case n.doorName(s) == s.Compartment:
		return s.Compartment
	}
	return parts.Or(s.Compartment, n.doorName(s))
}

// aboard is how many lines of a door have pieces in their slots.
func (n *now) aboard(d door) int {
	k := 0
	for _, i := range d.lines {
		if n.s.Line(i).N(n.s.HomeOf(i)) > 0 {
			k++
		}
	}
	return k
}

// doorKey is the key of a door.
func (n *now) doorKey(d door, open bool) parts.KeyView {
	v := parts.KeyView{ID: "door-" + d.name, Title: doorTitle(d.name), Second: parts.Or(words.F("%d home", n.aboard(d)), fmt.Sprint(n.aboard(d))), Lay: parts.LayStack}
	if open {
		v.Tone, v.State = parts.Live, "open"
	}
	return v
}

// doorTitle is the name of a door as its key shows it.
func doorTitle(name string) string {
	if name == noSlot {
		return words.L("No slot")
	}
	return capital(name)
}

// doorTiles are the lines behind a door, each where the walker is used to see
// it: what is gone says where it is.
func (n *now) doorTiles(d door, picks []pick) []parts.TileView {
	readings := n.readings()
	var out []parts.TileView
	for _, i := range d.lines {
		at, there := n.s.HomeOf(i), false
		for _, st := range n.s.Line(i).Stacks {
			if there = st.Place == at; there {
				break
			}
		}
		if stacks := n.s.Line(i).Stacks; !there && len(stacks) > 0 {
			at = stacks[0].Place
		}
		v := n.tile(i, at, model.Place{}, picks, readings)
		switch s := n.d.Slot(n.d.Items[i].Slot); {
		case s != nil && v.Raised && v.Word == n.slotWord(s):
			v.Word = strings.TrimSpace(strings.TrimPrefix(s.Compartment, d.name)) // the door itself goes without saying
		case at.Kind == model.Used || at.Kind == model.Lost:
			v.Off = true
		}
		out = append(out, v)
	}
	return out
}

// lay is a line at a place.
type lay struct {
	line int
	at   model.Place
}

// outLast are the pieces that went to places last and are there still, the
// newest first: who took a thing is who brings it back.
func (n *now) outLast(hidden map[string]bool, picks []pick) []parts.TileView {
	readings := n.readings()
	var out []parts.TileView
	for _, o := range once(n, "out last", n.wentLast) {
		if !hidden[n.d.Items[o.line].Rig] {
			out = append(out, n.tile(o.line, o.at, model.Place{}, picks, readings))
		}
	}
	return out
}

// stillOut are the pieces at the places of the scene, and then those with
// others.
func (n *now) stillOut(hidden map[string]bool, picks []pick) []parts.TileView {
	readings := n.readings()
	var out, with []parts.TileView
	for i := range n.d.Items {
		if hidden[n.d.Items[i].Rig] {
			continue
		}
		for _, st := range n.s.Line(i).Stacks {
			switch st.Place.Kind {
			case model.At:
				out = append(out, n.tile(i, st.Place, model.Place{}, picks, readings))
			case model.With:
				with = append(with, n.tile(i, st.Place, model.Place{}, picks, readings))
			}
		}
	}
	return append(out, with...)
}

// outMost is how many of the pieces that went out last are kept in the row.
const outMost = 24

func (n *now) wentLast() []lay {
	var out []lay
	for k := len(n.pic.Entries) - 1; k >= 0 && len(out) < outMost; k-- {
		e := &n.pic.Entries[k]
		if e.Scene != n.scene.ID || !e.Taken() {
			continue
		}
		for m := len(e.Moves) - 1; m >= 0; m-- {
			o := lay{n.d.ItemIndex(e.Moves[m].Item), e.Moves[m].To}
			if o.at.Kind == model.At && o.line >= 0 && n.s.Line(o.line).N(o.at) > 0 && !slices.Contains(out, o) {
				out = append(out, o)
			}
		}
	}
	return out
}
