package ui

import (
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// rigHead is the rigs of a header that turn a screen to one of them. The rig
// that the screen is about is the widest tab, with its mark and its name in the
// largest letters of the screen; a second touch on the same spot is on it too.
type rigHead struct {
	turn func(rig string)
	tabs map[string]*parts.RigTab
	more *parts.Key
}

// newRigHead makes the tabs; turn is called with the rig that was touched.
func newRigHead(sh *Shell, turn func(rig string)) *rigHead {
	t := &rigHead{turn: turn, tabs: map[string]*parts.RigTab{}}
	t.more = parts.NewKey(parts.KeyView{}, func() {
		n := sh.now()
		var list []choice
		for _, r := range n.present() {
			a := n.account(r)
			list = append(list, choice{kind: parts.KindRig, id: r, title: n.rigName(r), second: words.F("%d off", a.CameOff-a.Home), mark: n.mark(r)})
		}
		sh.open(newChooser(sh, words.L("Which rig leaves?"), "", list, func(rig string) {
			sh.back()
			turn(rig)
		}))
	})
	return t
}

const (
	leadLeast = 300 // the least width of the tab that the screen is about
	leadTab   = 400 // what it has where the others can be as narrow as they may
	otherTab  = 130 // the most of the others
)

// into puts the tabs of the rigs that are here into a header that leaves them
// a width. The rigs keep their order; those without room are behind a key.
func (t *rigHead) into(h *head, n *now, rig string, wide float32, view func(rig string) parts.RigTabView) {
	h.gap, h.inTab = look.Gap, true
	var rigs []string
	here := n.present()
	for _, r := range n.rigs() {
		if r == rig || slices.Contains(here, r) {
			rigs = append(rigs, r)
		}
	}
	room, other := tabRoom(wide-leadLeast, len(rigs)-1, otherTab)
	left := len(rigs) - 1 - room
	other = max(look.Floor, min(other, (wide-leadTab)/float32(max(1, len(rigs)-1))-look.Gap))
	var objs []fyne.CanvasObject
	var widths []float32
	for _, r := range rigs {
		w := other
		switch {
		case r == rig:
			w = 0 // what the others leave
		case room == 0:
			continue
		default:
			room--
		}
		v := view(r)
		v.ID, v.Mark, v.Shown, v.Lead = r, n.mark(r), r == rig, r == rig
		if t.tabs[r] == nil {
			t.tabs[r] = parts.NewRigTab(v, func() { t.turn(r) })
		}
		t.tabs[r].Set(v)
		objs, widths = append(objs, t.tabs[r]), append(widths, w)
	}
	if left > 0 {
		t.more.Set(moreRigs(left))
		objs, widths = append(objs, t.more), append(widths, other)
	}
	for _, w := range widths {
		wide -= w + look.Gap
	}
	widths[slices.Index(widths, 0)] = wide + look.Gap
	h.middle, h.widths = append(objs, h.middle...), append(widths, h.widths...)
}

// moreRigs is the key of the rigs that have no room in a header.
func moreRigs(k int) parts.KeyView {
	return parts.KeyView{ID: "rigs", Title: words.F("%d more", k), Icon: "down", Tone: parts.Header, Lay: parts.LayCentre}
}

// tabRoom is how many of some rigs have a tab in a width, beside a key for the
// rest where not all have, and how wide a tab is.
func tabRoom(wide float32, rigs int, most float32) (room int, tab float32) {
	slots := max(1, int(wide/(look.Floor+look.Gap)))
	if room = rigs; rigs > slots {
		room = slots - 1
	}
	return room, min(most, wide/float32(max(1, min(rigs, slots)))-look.Gap)
}

// headRoom is the width of the header between the rail and the clock, in
// design pixels.
func (n *now) headRoom() float32 {
	wide := float32(1280)
	if n.root != nil && n.root.Size().Width > 0 {
		wide = design(n.root.Size().Width)
	}
	if wide < 1100 {
		return wide - look.Floor - clockRoom
	}
	return wide - look.Rail - clockRoom
}
