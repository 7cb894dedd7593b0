package ui

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// trailStates are what Trail load can show, each reached by touches from the
// one before. An id may stand for a part that has no room at a size.
var trailStates = []struct {
	name  string
	touch []string
}{
	{"nothing known", nil},
	{"a winter night", []string{"act winter", "act night", "act wet", "act ice", "act slope", "act raise", "act agency", "act rough", "act off-path"}},
	{"miles", []string{"act miles", "digit 1"}},
	{"too many miles", []string{"digit 9", "digit 9", "digit 9"}},
	{"how far", []string{"act back", "act miles", "digit 1", "digit 5", "digit done", "act feet", "digit 8", "digit 0", "digit 0", "digit done",
		"act hours", "digit 6", "digit 0", "digit done", "act patient", "digit 2", "digit 2", "digit 0", "digit done"}},
	{"the load, nobody walks", []string{"act step-load"}},
	{"two people", []string{"act step-people", "member M02", "member M03"}},
	{"a limit", []string{"act limit", "act body", "digit 1", "digit 6", "digit 5"}},
	{"no limit", []string{"digit 0"}},
	{"the load, too heavy", []string{"act back", "act step-load"}},
	{"a must", []string{"piece S44-001", "act leave"}},
	{"the check", []string{"act step-check"}},
	{"a count", []string{"act here", "digit 4"}},
	{"one short", []string{"digit done"}},
	{"skipped", []string{"act skip"}},
	{"anyway", []string{"act anyway"}},
	{"who decides", []string{"act first"}},
	{"why", []string{"member M02"}},
	{"carry", []string{"act step-carry"}},
	{"how", []string{"act how-people"}},
	{"walked", []string{"act back", "act step-check", "act anyway", "act why-urgent"}},
	{"counting", []string{"act here"}},
}

// touchAll touches parts one after the other, those that are on screen.
func (w *window) touchAll(list []string) {
	for _, s := range list {
		kind, id, _ := strings.Cut(s, " ")
		if _, ok := w.find(kind, id); ok {
			w.tap(kind, id)
		}
	}
}

func TestTrailLoadFitsAtEverySizeOfGlassAndText(t *testing.T) {
	w := demoAt(t, 60, ScreenTrail, glass1280, glassLook(glass1280, 1))
	for _, s := range trailStates {
		w.touchAll(s.touch)
		for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
			for _, text := range []float32{1, 1.3, 1.6} {
				w.win.Resize(size)
				w.shell.opts.Look = glassLook(size, text)
				w.shell.relook()
				w.fits(fmt.Sprintf("%s, %gx%g, text %.1f", s.name, size.Width, size.Height, text))
			}
		}
		w.win.Resize(glass1280)
		w.shell.opts.Look = glassLook(glass1280, 1)
		w.shell.relook()
		w.parts = parts.CollectIn(w.shell.Root(), w.shell.Root().Size())
	}
	n := w.shell.now()
	if v := w.shell.screens[ScreenTrail].(*trailScreen).v; v.away == 0 || n.s.Line(n.d.ItemIndex("S44-001")).N(v.at) != 1 {
		t.Error("the touches did not bring the load to the trail")
	}
}

// fits fails where a text is cut or small, a target small, or two targets lie
// over each other or too near.
func (w *window) fits(where string) {
	w.t.Helper()
	root := w.shell.Root()
	for _, cut := range parts.Cuts(root) {
		w.t.Errorf("%s: %q is cut", where, cut)
	}
	for _, o := range test.LaidOutObjects(root) {
		if c, ok := o.(*canvas.Text); ok && c.Visible() && c.Text != "" && c.TextSize < look.U(16)-0.01 {
			w.t.Errorf("%s: %q is %.1f px", where, c.Text, c.TextSize)
		}
	}
	list := parts.Targets(root, root.Size())
	foot := int(root.Size().Height - look.U(look.Foot))
	for i, a := range list {
		if a.Y+a.H > foot+1 {
			w.t.Errorf("%s: %s %q lies over the proof by %d px", where, a.Kind, a.ID, a.Y+a.H-foot)
		}
		if least := look.U(look.Floor) - 1; a.Whole.Width < least || a.Whole.Height < least {
			w.t.Errorf("%s: %s %q is %.0fx%.0f", where, a.Kind, a.ID, a.Whole.Width, a.Whole.Height)
		}
		if a.Kind == parts.KindPiece && max(a.Whole.Width, a.Whole.Height) < look.U(look.Target)-1 {
			w.t.Errorf("%s: %q is too small for a hand", where, a.ID)
		}
		for _, b := range list[:i] {
			if rail(a.Part) || rail(b.Part) {
				continue
			}
			gap := int(look.U(look.Gap)) - 2
			x := min(a.X+a.W, b.X+b.W) - max(a.X, b.X)
			y := min(a.Y+a.H, b.Y+b.H) - max(a.Y, b.Y)
			if x > -gap && y > -gap {
				w.t.Errorf("%s: %s %q and %s %q are only %d, %d apart", where, a.Kind, a.ID, b.Kind, b.ID, -x, -y)
			}
		}
	}
}

// rail tells whether a part is of the rail or the header, which are one piece.
func rail(p parts.Part) bool { return p.Kind == parts.KindScreen || p.ID == "back" && p.Y == 0 }
