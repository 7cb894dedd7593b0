package ui

import (
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/ui/parts"
)

func TestTheSideWhereHeStandsKeepsItsDoorsAndEveryTargetIsAHandHigh(t *testing.T) {
	size := fyne.NewSize(1024, 768)
	w := demoAt(t, 125, ScreenLoadUp, size, LookFor(size, false))
	doors := 0
	for _, p := range w.parts {
		if p.Kind == parts.KindDoor {
			if doors++; p.W < 88 || p.H < 88 {
				t.Errorf("door %s is %d by %d", p.ID, p.W, p.H)
			}
		}
	}
	if doors != 9 {
		t.Errorf("%d doors, want the four of the driver side and five others", doors)
	}
	w.shell.screens[ScreenLoadUp].(*loadupScreen).act("slot:R41-006")
	for _, p := range w.parts {
		if (p.Kind == parts.KindDigit || p.Kind == parts.KindAct) && (p.W < 88 || p.H < 88) {
			t.Errorf("%s %s is %d by %d", p.Kind, p.ID, p.W, p.H)
		}
	}
}

func TestNoTextOfLoadUpIsCut(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 1280, Height: 800}, {Width: 1024, Height: 768}, {Width: 1920, Height: 1200}} {
		for i, minute := range []int{0, 125, 126, 128, 153, 177} {
			w := demoAt(t, minute, ScreenLoadUp, size, LookFor(size, i%2 == 0))
			l := w.shell.screens[ScreenLoadUp].(*loadupScreen)
			for _, d := range w.shell.now().doors("R41") {
				l.act("door:" + w.shell.now().doorID("R41", d))
				noCuts(t, w, minute, size, d.Compartment)
				l.act("sweep")
				noCuts(t, w, minute, size, d.Compartment+" sweep")
			}
			for _, mode := range []string{"collect", "carry", "other"} {
				l.act(mode)
				noCuts(t, w, minute, size, mode)
			}
		}
	}
}

func noCuts(t *testing.T, w *window, minute int, size fyne.Size, where string) {
	t.Helper()
	if cuts := parts.Cuts(w.shell.Root()); len(cuts) > 0 {
		t.Errorf("minute %d, %v, %s: cut %q", minute, size, where, cuts)
	}
}
