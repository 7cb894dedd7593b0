package ui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// At the busiest minute of the demo the tarp is full: what is at a place is
// found by touching the place.
func TestTouchesAtTheBusiestMinute(t *testing.T) {
	for _, g := range touchGlasses {
		t.Run(fmt.Sprint(g.size.Width), func(t *testing.T) { atTheBusiestMinute(t, g.size, g.full) })
	}
}

func atTheBusiestMinute(t *testing.T, size fyne.Size, offMedian int) {
	w := demoAt(t, 60, ScreenTarp, size, look.Options{})
	f := &finger{window: w}
	n := w.shell.now()
	tarp := model.Place{Kind: model.Tarp, Ground: n.scene.Ground}
	var out, back, off []int
	for i := range n.d.Items {
		id := n.d.Items[i].ID
		for _, st := range n.s.Line(i).Stacks {
			switch {
			case st.Place == tarp:
				out = append(out, f.sent(id, "at:V1"))
				f.press(parts.KindAct, "undo")
			case st.Place.Kind == model.At && len(n.s.Line(i).Stacks) == 1:
				back = append(back, f.sent(id, "tarp"))
				f.press(parts.KindAct, "undo")
			}
		}
	}
	for _, id := range drawn(anyOf(w), 20) {
		if w.countAt(id, "home") == w.shell.now().d.Item(id).Quantity {
			off = append(off, f.sent(id, "tarp"))
			f.press(parts.KindAct, "undo")
		}
	}
	within(t, "minute 60, from the tarp to V1", out, 2, 3)
	within(t, "minute 60, from a place to the tarp", back, 3, 4)
	within(t, "minute 60, off the rig to the tarp", off, offMedian, 4)
}

// Who takes a vehicle's pieces back takes several: the place stays open, so
// the first takes a touch more than those after it.
func TestPiecesOfAPlaceThatComeBackOneAfterAnotherAreTwoTouchesEach(t *testing.T) {
	for _, g := range touchGlasses {
		w := demoAt(t, 60, ScreenTarp, g.size, look.Options{})
		f := &finger{window: w}
		tarp := model.Place{Kind: model.Tarp, Ground: w.shell.now().scene.Ground}
		f.rest(tarp)
		f.press(parts.KindPlace, "at:V2")
		var n []int
		for {
			p := slices.IndexFunc(f.parts, func(p parts.Part) bool {
				return p.Kind == parts.KindPiece && !strings.Contains(p.ID, "@") && f.countAt(p.ID, "at:V2") > 0
			})
			if p < 0 || len(n) == 21 {
				break
			}
			item := f.parts[p].ID
			was := f.countAt(item, "at:V2")
			f.touch(f.parts[p])
			if len(f.shell.tarp().picks) == 0 { // contested: touched once more
				f.touch(f.parts[p])
			}
			f.press(parts.KindPlace, "tarp")
			if was == 0 || f.countAt(item, "at:V2") != 0 {
				t.Fatalf("%s does not come back: %s", item, f.text("reply"))
			}
			n, f.n = append(n, f.n), 0
		}
		within(t, fmt.Sprintf("%g, all of V2 brought back", g.size.Width), n, 2, 3)
		if len(n) != 21 {
			t.Errorf("%d lines came back from V2", len(n))
		}
	}
}
