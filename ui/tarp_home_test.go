package ui

import (
	"strings"
	"testing"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// homeSays is what a touch on Back home would do now.
func (w *window) homeSays() string {
	w.t.Helper()
	p, ok := w.find(parts.KindPlace, placeHome)
	if !ok {
		w.t.Fatal("no way back home on the screen")
	}
	return p.Text
}

func TestSeveralPiecesThatWereNotUsedGoHomeTogetherAndOneUndoTakesThemBack(t *testing.T) {
	w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
	f := &finger{window: w}
	for _, item := range []string{"R41-001", "R41-055", "R41-179"} {
		f.off(item, false)
	}
	for _, item := range []string{"R41-001", "R41-055", "R41-179"} {
		w.tap(parts.KindPiece, item)
	}
	if got := w.homeSays(); !strings.Contains(got, "unused, in") {
		t.Errorf("the key says %q", got)
	}
	w.tap(parts.KindPlace, placeHome)
	for _, item := range []string{"R41-001", "R41-055", "R41-179"} {
		if f.countAt(item, "tarp") != 0 {
			t.Errorf("%s is still on the tarp: %s", item, w.text("reply"))
		}
	}
	if w.shell.here != ScreenTarp {
		t.Error("the Tarp is gone")
	}
	w.tap(parts.KindAct, "undo")
	for _, item := range []string{"R41-001", "R41-055", "R41-179"} {
		if f.countAt(item, "home") != 0 {
			t.Errorf("one undo does not take %s back", item)
		}
	}
}

func TestAPieceThatMustBeLookedAtComesInHandOnLoadUpAndNothingIsLogged(t *testing.T) {
	for _, c := range []struct {
		what, item string
		before     func(f *finger)
		shows      string // the part of Load up that is about it
	}{
		{"it was at a vehicle", "R41-001", func(f *finger) { f.off("R41-001", true) }, "piece"},
		{"its slot is closed", "R41-028", func(f *finger) {
			f.off("R41-028", false)
			for _, closer := range []string{"R41-034", "R41-041"} {
				f.home(closer, "tarp")
			}
		}, "blocked"},
		{"it is out of service", "R41-001", func(f *finger) {
			f.off("R41-001", false)
			f.shell.log(board.Tap{Acts: []model.Act{{Verb: model.Tag, Item: "R41-001", Quantity: 1, Reading: "tip bent"}}})
		}, "piece"},
		{"a piece of it was at a vehicle", "R41-122", func(f *finger) {
			f.off("R41-122", false)
			f.shell.log(board.Tap{Acts: []model.Act{{Verb: model.TakeOut, Item: "R41-123", Quantity: 1, From: "kit:R41-122", To: "at:V1"}}})
		}, "piece"},
	} {
		w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
		f := &finger{window: w}
		c.before(f)
		w.shell.Go(ScreenTarp)
		w.tap(parts.KindPiece, c.item)
		before := w.board.Picture().Gen
		if got := w.homeSays(); !strings.Contains(got, "Load up") {
			t.Errorf("%s: the key says %q", c.what, got)
		}
		w.tap(parts.KindPlace, placeHome)
		if w.board.Picture().Gen != before {
			t.Errorf("%s: logged %+v", c.what, w.newest().Act)
		}
		if got, want := w.text(c.shows), w.shell.now().d.Item(c.item).Short(); w.shell.here != ScreenLoadUp || !strings.Contains(got, want) {
			t.Errorf("%s: on %s, %q instead of the %s", c.what, w.shell.here, got, want)
		}
	}
}

func TestAPieceOfARigThatHasLeftDoesNotGoHomeUnseen(t *testing.T) {
	w := demoAt(t, 20, ScreenTarp, glass1280, look.Options{})
	w.shell.log(board.Tap{Acts: []model.Act{{Verb: model.PullOff, Item: "E42-021", Quantity: 1, From: "home", To: "tarp"}}})
	for _, here := range []bool{true, false} {
		if !here {
			w.shell.act(model.Act{Verb: model.Leave, By: "M08", Rig: "E42"})
		}
		n := w.shell.now()
		if _, ok := n.goesHome(pick{item: "E42-021", from: model.Place{Kind: model.Tarp, Ground: n.scene.Ground}, n: 1, most: 1}); ok != here {
			t.Errorf("Engine 42 is here: %v, and it goes home: %v", here, ok)
		}
	}
}

func TestAPieceStagedBehindItsDoorByMistakeGoesHomeAgainWithTheNextTouch(t *testing.T) {
	w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
	f := &finger{window: w}
	f.rest(w.shell.tarp().shown)
	if !f.behind("R41-001") {
		t.Fatal("its door is not found")
	}
	w.tap(parts.KindPiece, "R41-001")
	if f.countAt("R41-001", "tarp") != 1 {
		t.Fatal("it is not staged")
	}
	w.tap(parts.KindPlace, placeHome)
	if f.countAt("R41-001", "home") != 1 || w.newest().Reading != model.WordUnused {
		t.Errorf("it is not home: %+v", w.newest().Act)
	}
}

func TestAPieceThatIsHeldIsAskedAboutBeforeItGoesHome(t *testing.T) {
	w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
	f := &finger{window: w}
	f.off("R41-001", false)
	w.shell.log(board.Tap{Acts: []model.Act{{Verb: model.Note, Item: "R41-001", Quantity: model.Blank, Reading: noteHeld, Note: "badge 41"}}})
	w.tap(parts.KindPiece, "R41-001")
	w.tap(parts.KindPlace, placeHome)
	if f.countAt("R41-001", "home") != 0 {
		t.Fatal("a held piece went home unasked")
	}
	w.tap(parts.KindAct, "freed")
	if f.countAt("R41-001", "home") != 1 {
		t.Errorf("freed, it is not home: %s", w.text("reply"))
	}
}
