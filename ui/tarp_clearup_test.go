package ui

import (
	"strings"
	"testing"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func TestOnceTheClearUpHasStartedWhatIsStillOutStandsWhereTheNextPiecesWere(t *testing.T) {
	for minute, want := range map[int]string{108: "Asked next", 153: "Still out"} {
		w := demoAt(t, minute, ScreenTarp, glass1280, look.Options{})
		if got := parts.Plain(w.text("asked")); !strings.HasPrefix(got, want) {
			t.Errorf("minute %d: the row says %q, want %q", minute, got, want)
		}
	}
	w := demoAt(t, 153, ScreenTarp, glass1280, look.Options{})
	for _, p := range w.parts {
		item, at, out := strings.Cut(p.ID, "@")
		if p.Kind != parts.KindPiece || !out {
			continue
		}
		w.tap(p.Kind, p.ID)
		w.tap("place", "tarp")
		if got := w.countAt(item, at); got != 0 {
			t.Errorf("%d of %s are still at %s", got, item, at)
		}
		return
	}
	t.Error("nothing is still out: nothing to test")
}

func TestAnOpenKitSaysWhatIsNotInIt(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("place", "at:V2")
	w.tap("act", "more")
	w.tap("piece", "R41-104")
	w.tap("act", "open-kit")
	if got := w.text("place"); !strings.Contains(got, "Not in it: Oxygen D, in case") {
		t.Errorf("the panel says %q", got)
	}
}
