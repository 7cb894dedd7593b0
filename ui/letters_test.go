package ui

import (
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// lettered are the screens on which letters are up, and the key that leads out.
var lettered = []struct {
	name, out string
	open      func(sh *Shell)
}{
	{"Find", "close", func(sh *Shell) { sh.openFind() }},
	{"New place", "close", func(sh *Shell) { sh.tarp().send(placeNew) }},
	{"another rig", "back", func(sh *Shell) { sh.open(newOtherRig(sh)) }},
	{"a name for a line", "back", func(sh *Shell) { sh.open(newWordPad(sh, "Name", "", 20, func(string) {})) }},
	{"Find in the inventory", "back", func(sh *Shell) { sh.open(newStoresFind(sh)) }},
	{"a piece on paper", "back", func(sh *Shell) { sh.open(newPaperPiece(newFromPaper(sh))) }},
}

func TestLettersAreAHandWideOnEveryGlassAndTheRailIsBackWhenTheyAreGone(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		w := demoAt(t, 60, ScreenTarp, size, LookFor(size, false))
		for _, l := range lettered {
			l.open(w.shell)
			for _, id := range []string{"q", "p", "a", "m", "shift", "delete", "space", "done"} {
				if k, ok := w.find(parts.KindAct, id); !ok || k.W < int(look.U(look.Floor)) || k.H < int(look.U(look.Floor)) || k.X+k.W > int(size.Width) {
					t.Errorf("%s, %v: key %q is %+v", l.name, size, id, k)
				}
			}
			if _, rail := w.find(parts.KindScreen, ScreenGlance); rail != (size != glass1024) {
				t.Errorf("%s, %v: the rail is there: %v", l.name, size, rail)
			}
			w.tap(parts.KindAct, l.out)
			if k, ok := w.find(parts.KindScreen, ScreenGlance); !ok || k.W < int(look.U(look.Floor)) {
				t.Errorf("%s, %v: no rail after %s: %+v", l.name, size, l.out, k)
			}
		}
	}
}
