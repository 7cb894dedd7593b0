package ui

import (
	"strings"
	"testing"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func TestABatteryThatGoesOutAsksForTheOneThatComesBack(t *testing.T) {
	w := demoAt(t, 44, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-009")
	w.tap("place", "at:V2")
	if got := parts.Plain(w.text("asked")); !strings.HasPrefix(got, "In exchange?") {
		t.Fatalf("the row says %q", got)
	}
	w.tap("piece", "R41-006@at:V2")
	if e := w.newest(); e.Verb != model.Return || w.countAt("R41-006", "tarp") != 1 || w.countAt("R41-009", "at:V2") != 1 {
		t.Errorf("logged %s of %s: %s", e.Verb, e.Item, w.text("reply"))
	}
	w.tap("act", "undo")
	if w.countAt("R41-006", "at:V2") != 1 || w.countAt("R41-009", "at:V2") != 1 {
		t.Error("undo takes back more or less than the exchange")
	}
}

func TestWhatIsWavedOffTwiceIsNotAskedAgain(t *testing.T) {
	w := demoAt(t, 44, ScreenTarp, glass1280, look.Options{})
	for k, asked := range []bool{true, true, false} {
		w.tap("piece", "R41-009")
		w.tap("place", "at:V2")
		if got := strings.HasPrefix(parts.Plain(w.text("asked")), "In exchange?"); got != asked {
			t.Errorf("time %d: asked %v", k+1, got)
		}
		w.tap("act", "undo")
	}
}

func TestAPieceStagedByOneTouchGoesStraightToThePlaceTouchedNext(t *testing.T) {
	w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
	w.tap("act", "door-L1")
	w.tap("piece", "R41-001")
	if e := w.newest(); e.Verb != model.PullOff || w.countAt("R41-001", "tarp") != 1 {
		t.Fatalf("logged %s: %s", e.Verb, w.text("reply"))
	}
	w.tap("piece", "R41-002")
	w.tap("place", "at:V1")
	e := w.newest()
	if e.Verb != model.Direct || !e.Reply.Has("straight_off") || w.countAt("R41-002", "at:V1") != 1 || w.countAt("R41-001", "tarp") != 1 {
		t.Fatalf("logged %s %v", e.Verb, e.Reply.Reasons)
	}
	if got := parts.Plain(w.text("last")); !strings.Contains(got, "Battery cutter, home to V1") {
		t.Errorf("the strip says %q", got)
	}
	w.tap("act", "undo")
	if w.countAt("R41-002", "home") != 1 {
		t.Error("one undo leaves the cutter off the rig")
	}
	w.tap("act", "undo")
	if w.countAt("R41-001", "home") != 1 {
		t.Error("the next undo does not take the spreader back")
	}
}

func TestACountedLineBehindADoorIsPickedAndAsksHowMany(t *testing.T) {
	w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
	before := w.entries()
	w.tap("act", "door-L3")
	w.tap("piece", "R41-056")
	if w.entries() != before {
		t.Fatal("blocks were staged before anybody said how many")
	}
	w.tap("quantity", "4")
	w.tap("place", "tarp")
	if w.countAt("R41-056", "tarp") != 4 {
		t.Errorf("%d on the tarp", w.countAt("R41-056", "tarp"))
	}
}

func TestAnyTouchButAPlaceLeavesAStagedPieceOnTheTarp(t *testing.T) {
	w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
	w.tap("act", "door-L1")
	w.tap("piece", "R41-001")
	w.tap("act", "door-T2")
	before := w.entries()
	w.tap("place", "at:V1") // shows what is there
	if w.entries() != before || w.countAt("R41-001", "tarp") != 1 {
		t.Error("a place that was only looked at took the spreader")
	}
}

func TestAPieceHandedOverStraightFromItsDoorAsksForItsSiblings(t *testing.T) {
	w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
	w.shell.act(model.Act{Verb: model.Arrive, Rig: "MED9"})
	w.tap("act", "door-T2")
	w.tap("piece", "R41-052")
	w.tap("place", "with:MED9")
	if got := parts.Plain(w.text("asked")); !strings.HasPrefix(got, "Goes along?") {
		t.Errorf("the row says %q", got)
	}
}

func TestTheTabOfARigOpensItsDoorsAndOnceMoreAsksWhatIsShown(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("rig", "P71")
	if got := w.text("place"); !strings.Contains(got, "71") {
		t.Fatalf("the panel says %q", got)
	}
	w.tap("rig", "P71")
	w.tap("rig", "P71") // the row of the list
	w.tap("act", "back")
	w.tap("place", "tarp")
	for _, p := range w.parts {
		if p.Kind == parts.KindPiece && strings.HasPrefix(p.ID, "P71") {
			t.Errorf("%s of a hidden rig is shown", p.ID)
		}
	}
}

func TestAListStagedAtOnceDoesNotSayThatAllOfItGoesTogether(t *testing.T) {
	w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
	w.tap("act", "pull-list")
	w.tap("act", "stage-list")
	w.tap("piece", "R41-003")
	w.tap("place", "at:V1")
	if w.countAt("R41-003", "at:V1") != 1 {
		t.Fatalf("the ram was not handed out: %s", w.text("reply"))
	}
	if got := parts.Plain(w.text("asked")); strings.HasPrefix(got, "Goes along?") {
		t.Errorf("after a whole list the row says %q", got)
	}
}
