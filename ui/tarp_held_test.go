package ui

import (
	"strings"
	"testing"

	"tarpside/model"
	"tarpside/ui/look"
)

func TestAHeldPieceIsNotMovedBeforeSomebodyWasAsked(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-001")
	w.tap("act", "holder")
	w.tap("act", holdChoice)
	w.tap("act", "done") // a reason is needed
	before := w.entries()
	w.write("sheriff")
	w.tap("act", "done")
	if e := w.newest(); e.Verb != model.Note || e.Reading != noteHeld || !strings.EqualFold(e.Note, "sheriff") || w.entries() != before+1 {
		t.Fatalf("logged %s %q %q", e.Verb, e.Reading, e.Note)
	}
	w.tap("piece", "R41-001")
	w.tap("place", "at:V1")
	if got := w.text("reply"); !strings.Contains(got, "ask first") || !strings.Contains(strings.ToLower(got), "sheriff") {
		t.Fatalf("the strip says %q", got)
	}
	w.tap("act", "leave-it")
	if w.countAt("R41-001", "tarp") != 1 {
		t.Fatal("it was moved")
	}
	w.tap("place", "at:V1")
	w.tap("act", "freed")
	if w.countAt("R41-001", "at:V1") != 1 || w.shell.now().heldBy("R41-001") != nil {
		t.Errorf("freed, it is not at V1: %s", w.text("reply"))
	}
}

func TestAnAgencyThatNobodyListedTakesPiecesInItsOwnWords(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("place", "new")
	if p, _ := w.find("act", "agency"); p.State != "off" {
		t.Errorf("without a name the key is %q", p.State)
	}
	w.write("gas co")
	w.tap("act", "agency")
	with := ""
	for _, name := range w.shell.now().addedTo(settingAgencies) {
		with = "with:" + name
	}
	w.tap("piece", "R41-001")
	w.tap("place", with)
	if e := w.newest(); e.Verb != model.Lend || w.countAt("R41-001", with) != 1 {
		t.Fatalf("logged %s to %s: %s", e.Verb, e.To, w.text("reply"))
	}
	rows := w.board.Picture().State.BringBack()
	found := false
	for _, r := range rows {
		found = found || r.Place.String() == with
	}
	if !found {
		t.Error("it is not on the bring-back list")
	}
}

func TestAHandOverAsksWhenItComesBackAndTheAnswerIsKept(t *testing.T) {
	w := demoAt(t, 81, ScreenTarp, glass1280, look.Options{})
	w.tap("place", "at:V2")
	w.tap("piece", "R41-052")
	w.tap("place", "with:MED9")
	w.tap("act", "due")
	w.tap("act", "tomorrow, Sun 15 Mar")
	if got := w.shell.now().dueBack("R41-052"); got != "tomorrow, Sun 15 Mar" {
		t.Errorf("promised for %q", got)
	}
	if got := w.text("last"); !strings.Contains(got, "due back: tomorrow") {
		t.Errorf("the strip says %q", got)
	}
	w.shell.Go(ScreenBringBack)
	said := false
	for _, p := range w.parts {
		said = said || strings.Contains(p.Text, "due tomorrow, Sun 15 Mar")
	}
	if !said {
		t.Error("Bring back does not say when it is promised for")
	}
}
