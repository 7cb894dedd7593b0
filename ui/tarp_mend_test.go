package ui

import (
	"strings"
	"testing"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// entryKey is the row of the newest entry about an item.
func (w *window) entryKey(item string, verb model.Verb) string {
	e := w.board.Picture().Entries
	for i := len(e) - 1; i >= 0; i-- {
		if e[i].Item == item && e[i].Verb == verb {
			return "entry-" + e[i].ID.String()
		}
	}
	w.t.Fatalf("nothing is logged about %s", item)
	return ""
}

func TestAWrongPlaceIsPutRightFromTheListAndUndoTakesTheCorrectionBack(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-001")
	w.tap("place", "at:V1")
	w.tap("act", "entries")
	wrong := w.entryKey("R41-001", model.Hand)
	w.tap("act", wrong)
	w.tap("place", "at:BANK")
	e := w.newest()
	if e.Verb != model.Correct || "entry-"+e.Mends != wrong || w.countAt("R41-001", "at:BANK") != 1 {
		t.Fatalf("logged %s, mends %s; %s", e.Verb, e.Mends, w.text("reply"))
	}
	w.tap("act", "undo")
	if w.countAt("R41-001", "at:V1") != 1 {
		t.Error("undo did not take the correction back")
	}
	w.tap("act", "undo")
	if w.countAt("R41-001", "tarp") != 1 {
		t.Error("a second undo did not take the touch itself back")
	}
}

func TestAWrongNumberIsPutRightBothWays(t *testing.T) {
	for typed, atV1 := range map[string]int{"1": 1, "4": 4} {
		w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
		w.tap("piece", "R41-056") // 4 blocks on the tarp
		w.tap("quantity", "3")
		w.tap("place", "at:V1")
		w.tap("act", "entries")
		w.tap("act", w.entryKey("R41-056", model.Hand))
		w.tap("digit", typed)
		w.tap("digit", "done")
		if got := w.countAt("R41-056", "at:V1"); got != atV1 {
			t.Errorf("%s typed: %d at V1, want %d", typed, got, atV1)
		}
	}
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-056")
	w.tap("quantity", "3")
	w.tap("place", "at:V1")
	w.tap("act", "entries")
	w.tap("act", w.entryKey("R41-056", model.Hand))
	before := w.entries()
	w.tap("digit", "9")
	w.tap("digit", "done")
	if w.entries() != before || !strings.Contains(w.text("number"), "only 1 to 4") {
		t.Errorf("9 of 4 was taken, or not said: %q", w.text("number"))
	}
}

func TestUndoSaysWhenPiecesHaveMovedOnAndOffersToCorrect(t *testing.T) {
	w := demoAt(t, 36, ScreenTarp, glass1280, look.Options{})
	before := w.entries()
	w.tap("act", "undo")
	if got := w.text("reply"); w.entries() != before || !strings.Contains(got, "moved on from V1: now V2") {
		t.Fatalf("the strip says %q", got)
	}
	w.tap("act", "correct")
	if got := parts.Plain(w.text("was")); !strings.Contains(got, "is at V2 now") {
		t.Errorf("the screen says %q", got)
	}
	w.tap("place", "at:BANK")
	if w.countAt("R41-070", "at:BANK") != 1 {
		t.Error("the light is not at the bank")
	}
}

func TestUndoSaysOfWhenItIsWhereTheNewestEntryCannotBeTakenBack(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	if p, _ := w.find("act", "undo"); p.Text != "Undo, of 19:48" { // after it a saw was tagged and staging handed over
		t.Errorf("the key says %q", p.Text)
	}
	w.tap("piece", "R41-001")
	w.tap("place", "at:V1")
	if p, _ := w.find("act", "undo"); p.Text != "Undo, last of 5" {
		t.Errorf("the key says %q", p.Text)
	}
}

func TestUndoGoesOnPastATouchThatIsLeftAsItIs(t *testing.T) {
	w := demoAt(t, 36, ScreenTarp, glass1280, look.Options{})
	w.tap("act", "undo")
	w.tap("act", "leave-it")
	before := w.entries()
	w.tap("act", "undo")
	if w.entries() == before || w.newest().Verb != model.Correct || w.newest().Item == "R41-070" {
		t.Errorf("undo did not go on: %s of %s", w.newest().Verb, w.newest().Item)
	}
}
