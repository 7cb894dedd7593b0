package ui

import (
	"fmt"
	"io/fs"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"tarpside/assets"
	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// walk shows every screen at every size of glass and of text.
func walk(t *testing.T, each func(w *window, where string)) {
	demo, err := fs.Sub(assets.Demo, "demo")
	if err != nil {
		t.Fatal(err)
	}
	walkOver(t, demo, []float32{1, 1.3, 1.6}, each)
}

// walkOver shows every screen of some tables on four minutes of their scene:
// nothing off, everything out, on the way in, the end.
func walkOver(t *testing.T, tables fs.FS, texts []float32, each func(w *window, where string)) {
	for _, minute := range []int{0, 60, 125, 177} {
		w := tablesAt(t, tables, minute, ScreenTarp, glass1280, glassLook(glass1280, 1))
		for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
			for _, text := range texts {
				w.win.Resize(size)
				w.shell.opts.Look = glassLook(size, text)
				w.shell.relook()
				at := fmt.Sprintf(", minute %d, %gx%g, text %.1f", minute, size.Width, size.Height, text)
				for _, screen := range Screens {
					w.shell.Go(screen)
					each(w, screen+at)
				}
				for _, m := range moments {
					w.shell.Go(m.screen)
					if m.do(w) {
						each(w, m.screen+", "+m.name+at)
					}
					w.shell.over, w.shell.said = nil, nil
					w.shell.tarp().picks, w.shell.tarp().find.on, w.shell.tarp().door = nil, false, ""
					w.shell.tarp().calm()
				}
			}
		}
	}
}

// moments are what a screen shows after some touches; do is false where there
// is no such moment.
var moments = []struct {
	screen, name string
	do           func(w *window) bool
}{
	{ScreenTarp, "a piece picked", func(w *window) bool { return w.pickFirst(func(it *model.Item) bool { return it.Quantity == 1 }) }},
	{ScreenTarp, "a counted line picked", func(w *window) bool { return w.pickFirst(func(it *model.Item) bool { return it.Quantity > 9 }) }},
	{ScreenTarp, "a kit picked", func(w *window) bool { return w.pickFirst(func(it *model.Item) bool { return it.Kind == model.Kit }) }},
	{ScreenTarp, "a held piece sent away", func(w *window) bool {
		if !w.pickFirst(func(it *model.Item) bool { return it.Quantity == 1 }) {
			return false
		}
		t := w.shell.tarp()
		if w.shell.now().heldBy(t.picks[0].item) == nil {
			w.shell.log(board.Tap{Acts: []model.Act{{Verb: model.Note, Item: t.picks[0].item, Quantity: model.Blank, Reading: noteHeld, Note: "41"}}})
		}
		t.send("at:V1")
		return t.ask != nil
	}},
	{ScreenTarp, "a door", func(w *window) bool { w.shell.tarp().openRig("R41"); return true }},
	{ScreenTarp, "a piece staged behind a door", func(w *window) bool {
		t, n := w.shell.tarp(), w.shell.now()
		d := n.doorsOf("R41")[0]
		t.openDoor("R41", d.name)
		for _, v := range n.doorTiles(d, nil) {
			if v.Raised && v.Figure == "" {
				t.touch(v)
				return true
			}
		}
		return false
	}},
	{ScreenTarp, "a line counted behind a door", func(w *window) bool {
		t, n := w.shell.tarp(), w.shell.now()
		for _, d := range n.doorsOf("R41") {
			for _, v := range n.doorTiles(d, nil) {
				if v.Raised && v.Figure != "" && v.Figure != "0" {
					t.openDoor("R41", d.name)
					t.touch(v)
					return len(t.picks) > 0
				}
			}
		}
		return false
	}},
	{ScreenTarp, "Find", func(w *window) bool { w.shell.openFind(); return true }},
	{ScreenTarp, "Find, three letters", func(w *window) bool {
		w.shell.openFind()
		w.shell.tarp().find.typed("str")
		return true
	}},
	{ScreenTarp, "New place", func(w *window) bool { w.shell.tarp().send(placeNew); return true }},
	{ScreenTarp, "an unknown code", func(w *window) bool { w.shell.scanned("4006381333931"); return true }},
	{ScreenTarp, "opening a scene", func(w *window) bool { w.shell.open(newOpening(w.shell)); return true }},
	{ScreenMore, "somebody arrives", func(w *window) bool { w.shell.open(newArrival(w.shell)); return true }},
	{ScreenMore, "hand over", func(w *window) bool { w.shell.open(newRelief(w.shell)); return true }},
	{ScreenMore, "from paper", func(w *window) bool { w.shell.open(newFromPaper(w.shell).list); return true }},
	{ScreenMore, "the time on paper", func(w *window) bool { w.shell.open(newPaperTime(newFromPaper(w.shell))); return true }},
	{ScreenMore, "the piece on paper", func(w *window) bool { w.shell.open(newPaperPiece(newFromPaper(w.shell))); return true }},
	{ScreenStores, "a slot", func(w *window) bool { w.shell.open(newSlotPage(w.shell, "R41-L3-B")); return true }},
	{ScreenLoadUp, "other work", func(w *window) bool { return w.loadUp(luOther) }},
	{ScreenLoadUp, "sweep", func(w *window) bool { return w.loadUp(luSweep) }},
	{ScreenLoadUp, "collect", func(w *window) bool { return w.loadUp(luCollect) }},
	{ScreenLoadUp, "carry", func(w *window) bool { return w.loadUp(luCarry) }},
	{ScreenLoadUp, "at rest", func(w *window) bool { return w.loadUp(luLoad) }},
}

// pickFirst picks the first line of a kind that can be picked.
func (w *window) pickFirst(want func(*model.Item) bool) bool {
	n, t := w.shell.now(), w.shell.tarp()
	for i := range n.d.Items {
		if from, ok := n.reach(i, t.shown); ok && want(&n.d.Items[i]) && n.d.Items[i].Kit == "" {
			t.touch(n.tile(i, from, t.shown, nil, nil))
			return len(t.picks) > 0
		}
	}
	return false
}

func (w *window) loadUp(mode luMode) bool {
	w.shell.screens[ScreenLoadUp].(*loadupScreen).st.mode = mode
	w.shell.Refresh()
	return true
}

func glassLook(size fyne.Size, text float32) look.Options {
	o := LookFor(size, false)
	o.Text = text
	return o
}

func TestNoTextIsUnder16PixelsAndNoneIsCut(t *testing.T) {
	walk(t, func(w *window, where string) {
		for _, cut := range parts.Cuts(w.shell.Root()) {
			t.Errorf("%s: %q is cut", where, cut)
		}
		for _, o := range test.LaidOutObjects(w.shell.Root()) {
			if c, ok := o.(*canvas.Text); ok && c.Visible() && c.Text != "" && c.TextSize < look.U(16)-0.01 {
				t.Errorf("%s: %q is %.1f px", where, c.Text, c.TextSize)
			}
		}
	})
}

func TestEveryTargetIsAsLargeAsAHandInAGlove(t *testing.T) {
	walk(t, func(w *window, where string) {
		size := w.shell.Root().Size()
		for _, p := range parts.Targets(w.shell.Root(), size) {
			least := look.U(look.Floor) - 1
			if p.Whole.Width < least || p.Whole.Height < least {
				t.Errorf("%s: %s %q is %.0fx%.0f", where, p.Kind, p.ID, p.Whole.Width, p.Whole.Height)
			}
			switch p.Kind {
			case parts.KindPiece, parts.KindPlace, parts.KindQuantity:
				if max(p.Whole.Width, p.Whole.Height) < look.U(look.Target)-1 {
					t.Errorf("%s: %s %q is %.0fx%.0f, neither wide nor high enough for a hand", where, p.Kind, p.ID, p.Whole.Width, p.Whole.Height)
				}
			}
		}
	})
}

func TestNoTwoTargetsLieOverEachOther(t *testing.T) {
	walk(t, func(w *window, where string) {
		list := parts.Targets(w.shell.Root(), w.shell.Root().Size())
		for i, a := range list {
			for _, b := range list[:i] {
				x := min(a.X+a.W, b.X+b.W) - max(a.X, b.X)
				y := min(a.Y+a.H, b.Y+b.H) - max(a.Y, b.Y)
				if x > 1 && y > 1 {
					t.Errorf("%s: %s %q and %s %q lie over each other by %dx%d", where, a.Kind, a.ID, b.Kind, b.ID, x, y)
				}
			}
		}
	})
}
