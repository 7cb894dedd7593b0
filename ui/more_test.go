package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func TestStagingIsHandedOverInThreeTouchesWithAReadBack(t *testing.T) {
	w := demoAt(t, 59, ScreenTarp, glass1280, look.Options{})
	w.tap("screen", ScreenMore)
	w.tap("act", "relieve")
	if got := w.text("read-back"); !strings.Contains(got, "18 lines, 121 pieces of Rescue 41") {
		t.Errorf("the read-back says %q", got)
	}
	for _, c := range w.board.Picture().State.Checkpoints() {
		if got := w.text("read-back"); !strings.Contains(got, parts.Plain(w.shell.now().placeName(c.Place))) {
			t.Errorf("%d pieces at %s are not read back", c.Pieces, c.Place)
		}
	}
	w.tap("member", "M04")
	if sc := w.board.Picture().State.Scene(w.board.Picture().Scene); sc.Staging != "M04" {
		t.Errorf("staging is with %q", sc.Staging)
	}
}

func TestTwoScenesEachHaveTheirOwnTarp(t *testing.T) {
	w := demoAt(t, 60, ScreenMore, glass1280, look.Options{})
	first := w.board.Picture().Scene
	w.tap("act", "new-scene")
	w.tap("act", "open-Car extrication")
	if w.board.Picture().Scene == first {
		t.Fatal("no second scene")
	}
	if p, _ := w.find("place", "tarp"); !strings.Contains(p.Text, "0 lines") {
		t.Errorf("the second tarp shows %q", p.Text)
	}
	w.tap("piece", "R41-015") // hard shields, still on the rig
	w.tap("place", "tarp")
	if p, _ := w.find("place", "tarp"); !strings.Contains(p.Text, "1 line") {
		t.Errorf("the second tarp shows %q", p.Text)
	}
}

func TestTheSceneIsClosedByAHoldOrByTwoTouches(t *testing.T) {
	w := demoAt(t, 179, ScreenMore, glass1280, look.Options{})
	w.tap("act", "close-scene")
	if sc := w.board.Picture().State.Scene(w.board.Picture().Scene); sc.Closed {
		t.Fatal("one touch closed the scene")
	}
	w.tap("act", "close-scene-sure")
	if sc := w.board.Picture().State.Scene(w.board.Picture().Scene); !sc.Closed {
		t.Fatal("two touches did not close it")
	}
	w.tap("screen", ScreenTarp)
	if got := w.text("reply"); !strings.HasPrefix(got, "No scene is open") {
		t.Errorf("the strip says %q", got)
	}
}

func TestARigOfAnotherDepartmentArrives(t *testing.T) {
	w := demoAt(t, 8, ScreenMore, glass1280, look.Options{})
	w.tap("act", "arrive")
	w.tap("rig", "P71")
	entries := w.board.Picture().Entries
	if e := entries[len(entries)-1]; e.Verb != model.Arrive || e.Rig != "P71" {
		t.Errorf("logged %s %s", e.Verb, e.Rig)
	}
}

func TestMoreIsWholeAtEverySize(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		for _, minute := range []int{-1, 60, 177} {
			w := demoAt(t, minute, ScreenMore, size, LookFor(size, minute == 60))
			w.listed("more")
			w.tap("act", "day")
			w.listed("more by the other light")
		}
	}
}

func TestAClosedSceneGoesOnWithWhatIsStillOut(t *testing.T) {
	w := demoAt(t, 60, ScreenMore, glass1280, look.Options{})
	name, off := w.board.Picture().State.Scene(w.board.Picture().Scene).Name, w.text("proof")
	w.tap("act", "close-scene")
	w.tap("act", "close-scene-sure")
	w.tap("act", "new-scene")
	w.tap("act", "open-again")
	s := w.board.Picture().State
	if sc := s.Scene(w.board.Picture().Scene); sc.Closed || sc.Name != name {
		t.Fatalf("the scene is %q, closed %v", sc.Name, sc.Closed)
	}
	if w.countAt("R41-001", "tarp") != 1 || w.countAt("R41-055", "at:V2") != 4 {
		t.Error("what was out is not out any more")
	}
	if got := w.text("proof"); !strings.Contains(got, "121 on tarp") || !strings.Contains(got, "Adds up") {
		t.Errorf("the foot says %q, before %q", got, off)
	}
}

func TestAfterTheCloseNobodyArrivesOrTakesOverUnseen(t *testing.T) {
	w := demoAt(t, 60, ScreenMore, glass1280, look.Options{})
	w.shell.act(model.Act{Verb: model.Close})
	if sc := w.board.Picture().State.Scene(w.board.Picture().Scene); !sc.Closed {
		t.Fatalf("the scene is not closed: %s", w.text("reply"))
	}
	for _, id := range []string{"relieve", "arrive"} {
		if p, _ := w.find("act", id); p.State != "off" {
			t.Errorf("%s is %q after the close", id, p.State)
		}
	}
}

func TestACountSaysHowManyOnlyOnce(t *testing.T) {
	w := demoAt(t, 60, ScreenMore, glass1280, look.Options{})
	n := w.shell.now()
	if got := n.actLine(&model.Entry{Act: model.Act{Verb: model.Count, Item: "R41-183", Quantity: 1}}); got != "Counted Street broom: 1" {
		t.Errorf("the line says %q", got)
	}
}
