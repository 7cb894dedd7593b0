package ui

import (
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/modeltest"
	"tarpside/ui/parts"
)

// The county's great night: 2,000 lines of many rigs, 10,000 entries in the
// scene. The goal is that a touch is on the screen within 100 ms, 99 times in
// 100, painting in software included.

const (
	manyLines   = 2000
	manyEntries = 10_000
)

// greatNight opens the window on it.
func greatNight(b *testing.B, screen string) *window {
	b.Helper()
	w := demoAt(b, 60, ScreenTarp, glass1280, glassLook(glass1280, 1))
	patch := model.InventoryPatch{Put: modeltest.MoreRigs(w.board.Picture().State.Dept, manyLines)}
	if _, err := w.board.EditStores(patch, ""); err != nil {
		b.Fatal(err)
	}
	p := w.board.Picture()
	for acts := range slices.Chunk(modeltest.Trips(p.State.Dept, manyEntries-len(p.Entries)), 300) {
		if _, err := w.board.Log(board.Tap{Acts: acts}); err != nil {
			b.Fatal(err)
		}
	}
	w.shell.Go(screen)
	return w
}

// tell reports how long the middle one took, and the one of which only one in
// a hundred took longer.
func tell(b *testing.B, took []time.Duration) {
	slices.Sort(took)
	ms := func(share float64) float64 {
		return float64(took[int(share*float64(len(took)-1))].Microseconds()) / 1000
	}
	b.ReportMetric(ms(0.5), "p50-ms")
	b.ReportMetric(ms(0.99), "p99-ms")
}

// BenchmarkATouchToTheScreen is one touch after the other: a piece on the
// tarp, then the place that it goes to, and back again.
func BenchmarkATouchToTheScreen(b *testing.B) {
	for _, paint := range []bool{false, true} {
		name := map[bool]string{false: "laid out", true: "painted"}[paint]
		b.Run(name, func(b *testing.B) {
			w := greatNight(b, ScreenTarp)
			var took []time.Duration
			touch := func(kind, id string) {
				p, ok := w.find(kind, id)
				if !ok {
					b.Fatalf("no %s %q on screen", kind, id)
				}
				w.tick = w.tick.Add(time.Second)
				w.now = w.now.Add(time.Second)
				start := time.Now()
				test.TapCanvas(w.win.Canvas(), fyne.NewPos(float32(p.X)+float32(p.W)/2, float32(p.Y)+float32(p.H)/2))
				if paint {
					w.win.Canvas().Capture()
				}
				took = append(took, time.Since(start))
				w.parts = parts.CollectIn(w.shell.Root(), w.shell.Root().Size())
			}
			for b.Loop() {
				for range 50 {
					touch(parts.KindPiece, w.firstPiece(b))
					touch(parts.KindPlace, "at:V1")
				}
			}
			tell(b, took)
		})
	}
}

// firstPiece is the first tile of a piece.
func (w *window) firstPiece(b *testing.B) string {
	for _, p := range w.parts {
		if p.Kind == parts.KindPiece {
			return p.ID
		}
	}
	b.Fatal("no piece on screen")
	return ""
}

// BenchmarkARefresh is a screen brought up to date, as after every touch and
// every tenth second.
func BenchmarkARefresh(b *testing.B) {
	for _, screen := range Screens {
		b.Run(screen, func(b *testing.B) {
			w := greatNight(b, screen)
			for b.Loop() {
				w.shell.Refresh()
			}
		})
	}
}
