package ui

import (
	"fmt"
	"testing"
	"time"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/modeltest"
	"tarpside/ui/look"
)

// BenchmarkGlanceOfTheDemo makes the whole Glance, its sums and alerts, of the
// demo at the hand-over of staging. The goal is 5 ms.
func BenchmarkGlanceOfTheDemo(b *testing.B) {
	w := demoAt(b, 60, ScreenGlance, glass1280, look.Options{})
	n := w.shell.now()
	n.glance(9)
	b.ReportAllocs()
	for b.Loop() {
		n.glance(9)
	}
}

// BenchmarkGlanceWith2000Lines makes it with 2,000 lines, of which 300 are out
// with two readings each. The goal is 5 ms.
func BenchmarkGlanceWith2000Lines(b *testing.B) {
	w := demoAt(b, 60, ScreenGlance, glass1280, look.Options{})
	d := modeltest.Big(2000)
	d.Checks = append(d.Checks, model.Check{ID: "battery", Number: true, Max: 100})
	for i := range 300 {
		d.Items[i].Kit, d.Items[i].Kind = "", model.Piece
		d.Items[i].Checks = []model.Ask{{Check: "battery", Limit: 80, HasLimit: true}}
	}
	l := modeltest.New("A", d.Index())
	l.Open("S", "")
	for i := range 300 {
		id := d.Items[i].ID
		l.Do(model.Entry{Scene: "S", Act: model.Act{Verb: model.Direct, Item: id, Quantity: 1, From: "home", To: fmt.Sprintf("at:V%d", i%5)}})
		for k := range 2 {
			l.Clock.Wall += 60000
			l.Do(model.Entry{Scene: "S", Act: model.Act{Verb: model.CheckIt, Item: id, Quantity: 1, Reading: fmt.Sprintf("battery=%d", 90-10*k)}})
		}
	}
	n := &now{Shell: w.shell, pic: &board.Picture{State: l.State, Entries: l.Entries, Scene: "S"}, s: l.State, d: l.State.Dept, scene: l.State.Scene("S"),
		at: time.UnixMilli(l.Clock.Wall)}
	if got := len(n.figures()); got != 300 {
		b.Fatalf("%d figures, want 300", got)
	}
	b.ReportAllocs()
	for b.Loop() {
		n.glance(9)
	}
}
