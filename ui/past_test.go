package ui

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
)

func TestAWindowOpenedAfterTheSceneWasClosedKnowsSinceWhenAndWhatWasPromised(t *testing.T) {
	w := demoAt(t, 177, ScreenBringBack, glass1280, look.Options{})
	scene := w.shell.now().scene.ID
	if _, err := w.board.Log(board.Tap{Scene: scene, Acts: []model.Act{
		{Verb: model.Note, Item: "R41-177", Quantity: model.Blank, To: "with:HWY", Reading: noteDue + "tomorrow"},
		{Verb: model.Close, Quantity: model.Blank, By: "M02"}}}); err != nil {
		t.Fatal(err)
	}
	w.shell.catchUp()
	before := w.shell.now().chores()
	if err := w.board.Close(); err != nil {
		t.Fatal(err)
	}
	again, err := board.Open(w.path, board.Options{Now: func() time.Time { return w.now }, Random: rand.NewChaCha8([32]byte{9}), Device: "A"})
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if n := len(again.Picture().Entries); n != 0 {
		t.Fatalf("the picture still has %d entries: nothing is proved", n)
	}
	sh := New(Options{Board: again, Now: w.shell.opts.Now, Post: func(f func()) { f() }, SetTheme: func(fyne.Theme) {}})
	after := sh.now().chores()
	if !slices.EqualFunc(before, after, func(a, b chore) bool { return a.words == b.words && a.line == b.line }) {
		t.Errorf("before\n%v\nafter\n%v", before, after)
	}
	k := slices.IndexFunc(after, func(c chore) bool { return c.id(sh.now().d) == "R41-177 bring_back with:HWY" })
	if k < 0 || !strings.Contains(after[k].words, "since 21:06") || !strings.Contains(after[k].words, "due tomorrow") {
		t.Errorf("of the cones nothing is known: %+v", after)
	}
}

func TestALoanAndAHoldOutlastTheSceneTheyWereMadeIn(t *testing.T) {
	w := demoAt(t, 177, ScreenBringBack, glass1280, look.Options{})
	note := func(item, reading string) model.Act {
		return model.Act{Verb: model.Note, Item: item, Quantity: model.Blank, Reading: reading}
	}
	for _, acts := range [][]model.Act{
		{note("R41-177", noteDue+"tomorrow"), note("R41-052", noteHeld), {Verb: model.Close, Quantity: model.Blank, By: "M02"}},
		{{Verb: model.Open, Quantity: model.Blank, Note: "the next call"}},
	} {
		if _, err := w.board.Log(board.Tap{Acts: acts}); err != nil {
			t.Fatal(err)
		}
		w.now = w.now.Add(48 * time.Hour)
	}
	w.shell.catchUp()
	n := w.shell.now()
	if n.scene.Closed || len(n.scene.Took) == 0 {
		t.Fatalf("the scene on screen is %+v", n.scene)
	}
	for i := range n.pic.Entries {
		if n.pic.Entries[i].Scene != n.scene.ID {
			t.Fatal("the picture still has entries of the old scene: nothing is proved")
		}
	}
	list := n.chores()
	k := slices.IndexFunc(list, func(c chore) bool { return c.id(n.d) == "R41-177 bring_back with:HWY" })
	if k < 0 || !strings.Contains(list[k].words, "since Sat 14 Mar") || !strings.Contains(list[k].words, "due tomorrow") {
		t.Errorf("of the cones nothing is known: %+v", list)
	}
	if n.heldBy("R41-052") == nil {
		t.Error("the held piece may be moved without a question")
	}
}
