package ui

import (
	"strings"
	"testing"

	"tarpside/model"
	"tarpside/ui/parts"
)

// held holds a piece as evidence, not by touch.
func (w *window) evidence(item string) {
	w.t.Helper()
	w.shell.act(model.Act{Verb: model.Note, Item: item, Reading: noteHeld, Note: "sheriff: photographs first"})
	if w.shell.now().heldBy(item) == nil {
		w.t.Fatalf("%s is not held", item)
	}
}

// asked fails unless the screen asks about the held piece, with the reason.
func (w *window) asked(before int) {
	w.t.Helper()
	reason := false
	for _, p := range w.parts {
		reason = reason || strings.Contains(p.Text, "sheriff: photographs first")
	}
	if _, ok := w.find(parts.KindAct, "freed"); !ok || !reason || w.entries() != before {
		w.t.Fatalf("asked: %v, with the reason: %v; %d entries more", ok, reason, w.entries()-before)
	}
}

func TestOnLoadUpAHeldPieceStaysAndTheRestComesBack(t *testing.T) {
	r := atRig(t, 125)
	r.evidence("R41-061")
	r.touch("act other", "act collect")
	before := r.entries()
	r.touch("act return-BANK")
	r.asked(before)
	r.touch("act leave-it")
	r.want("R41-061", "at:BANK", 1)
	r.want("R41-062", "tarp", 1)
	r.touch("act return-BANK", "act freed")
	r.want("R41-061", "tarp", 1)
	if r.shell.now().heldBy("R41-061") != nil {
		t.Error("it is still held")
	}
}

func TestOnLoadUpAHeldPieceIsNotPutInBeforeSomebodyWasAsked(t *testing.T) {
	for answer, home := range map[string]int{"leave-it": 0, "freed": 1} {
		r := atRig(t, 125)
		r.evidence("R41-028")
		r.touch("door T2@2")
		r.says("piece", "Medium strut 1")
		before := r.entries()
		r.touch("act stow")
		r.asked(before)
		r.touch("act " + answer)
		r.want("R41-028", "home", home)
	}
}

func TestOnBringBackAHeldPieceStaysUntilItIsFreed(t *testing.T) {
	w := station(t)
	w.evidence("R41-052")
	w.tap(parts.KindPiece, "R41-052")
	w.tap("answer", "clean=yes")
	before := w.entries()
	w.tap(parts.KindAct, "bring-back")
	w.asked(before)
	w.tap(parts.KindAct, "leave-it")
	if w.at("R41-052", "home") != 0 || w.entries() != before {
		t.Fatal("left as it lies, it was moved")
	}
	w.tap(parts.KindAct, "bring-back")
	w.tap(parts.KindAct, "freed")
	if w.at("R41-052", "home") != 1 {
		t.Error("freed, it does not come home")
	}
}

func TestADriversWordDoesNotBringAHeldPieceHome(t *testing.T) {
	for answer, home := range map[string]int{"leave-it": 0, "freed": 1} {
		r := atRig(t, 137)
		lying := r.shell.now().onGround(func(rig string, _ model.Place) bool { return rig == "P71" })
		item := r.shell.now().d.Items[lying[0].line].ID
		r.evidence(item)
		r.touch("act other", "act carry")
		before := r.entries()
		r.hold("vouch-P71")
		r.asked(before)
		r.touch("act " + answer)
		r.want("P71-001", "home", home)
		if answer == "leave-it" && r.entries() != before {
			t.Error("a word for the whole rig was logged, though a piece of it is held elsewhere")
		}
	}
}

func TestAHeldPieceDoesNotWalkWithTheTrailLoad(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(3)
	w.evidence("S44-001")
	w.mustTouch("act step-check", "act anyway", "act first", "member M02")
	before := w.entries()
	w.mustTouch("act why-urgent")
	w.asked(before)
	w.mustTouch("act leave-it")
	if w.countAt("S44-001", "at:Trail") != 0 || w.trailView().away == 0 {
		t.Errorf("the held piece walked, or the rest did not: %d lines are away", w.trailView().away)
	}
}
