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
