package ui

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// tabOf is the tab of a rig in the header.
func (w *window) tabOf(rig string) parts.Part {
	w.t.Helper()
	p, ok := w.find(parts.KindRig, rig)
	if !ok {
		w.t.Fatalf("%s has no tab", rig)
	}
	return p
}

func TestTheReleaseOpensOnTheRigThatIsCalledAwayMostLikely(t *testing.T) {
	for _, c := range []struct {
		what   string
		minute int
		before func(w *window)
		want   string
	}{
		{"the one that the least keeps here", 60, nil, "E42"},
		{"not the rig of whoever has the tablet, though it is the freest", 60, func(w *window) { w.shell.by = "M08" }, "P71"},
		{"a rig with nothing out needs no split", 12, nil, "R41"},
		{"the one that is signed for, wherever it was signed", 60, func(w *window) {
			w.shell.act(model.Act{Verb: model.Release, By: "M02", Rig: "P71"})
		}, "P71"},
		{"the one that was spoken of last", 60, func(w *window) {
			w.tap(parts.KindAct, "rig-leaving")
			w.tap(parts.KindRig, "R41")
			w.tap(parts.KindAct, "back")
		}, "R41"},
		{"not one that has left since", 60, func(w *window) {
			w.tap(parts.KindAct, "rig-leaving")
			w.shell.act(model.Act{Verb: model.Leave, By: "M08", Rig: "E42"})
			w.tap(parts.KindAct, "back")
		}, "P71"},
	} {
		w := demoAt(t, c.minute, ScreenTarp, glass1280, look.Options{})
		if c.before != nil {
			c.before(w)
			w.shell.Refresh()
		}
		w.tap(parts.KindAct, "rig-leaving")
		if p := w.tabOf(c.want); p.State != "shown" {
			t.Errorf("%s: it opens on another rig than %s: %s", c.what, c.want, w.text("header"))
		}
	}
}

// One rig here, two, three; on every glass. Another rig than the one it opens on
// is one touch more.
func TestTheReleaseIsOneTouchFromTheTarpAtRestHoweverManyRigsAreHere(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		for minute, rigs := range map[int]int{8: 1, 20: 2, 60: 3, 91: 3} {
			w := demoAt(t, minute, ScreenTarp, size, glassLook(size, 1))
			here := w.shell.now().present()
			if len(here) != rigs {
				t.Fatalf("minute %d: %v are here", minute, here)
			}
			for _, screen := range []string{ScreenTarp, ScreenGlance} {
				f := &finger{window: w}
				f.rest(model.Place{Kind: model.Tarp, Ground: w.shell.now().scene.Ground})
				w.shell.Go(screen)
				f.press(parts.KindAct, "rig-leaving")
				if _, ok := f.find(parts.KindAct, "sign"); !ok || f.n != 1 {
					t.Errorf("%g, minute %d, %s: %d touches, and the release shows: %v", size.Width, minute, screen, f.n, ok)
				}
				for _, rig := range here {
					f.n = 0
					f.press(parts.KindRig, rig)
					if p, _ := f.find(parts.KindAct, "sign"); !strings.Contains(p.Text, w.shell.now().rigName(rig)) || f.n != 1 {
						t.Errorf("%g, minute %d: one touch on %s leads to %q", size.Width, minute, rig, p.Text)
					}
				}
			}
		}
	}
}

func TestEveryRigThatIsHereIsATabAndItsOwnNameIsTheLargest(t *testing.T) {
	for _, g := range touchGlasses {
		w := demoAt(t, 91, ScreenTarp, g.size, look.Options{})
		w.tap(parts.KindAct, "rig-leaving")
		for _, rig := range []string{"P71", "R41", "E42"} {
			w.tap(parts.KindRig, rig)
			w.tap(parts.KindRig, rig) // a finger that bounces stays on it
			name := w.shell.now().rigName(rig)
			if got := w.text("header"); !strings.HasPrefix(got, name+" leaving now") {
				t.Errorf("%g: after a touch on %s the header says %q", g.size.Width, rig, got)
			}
			if got := w.text("radio"); !strings.Contains(got, name) {
				t.Errorf("%g: the sentence for the radio is not about %s: %s", g.size.Width, rig, got)
			}
			if p, _ := w.find(parts.KindAct, "sign"); !strings.Contains(p.Text, name) {
				t.Errorf("%g: the signature does not say %s: %q", g.size.Width, name, p.Text)
			}
			own := w.tabOf(rig)
			for _, other := range w.shell.now().present() {
				if p := w.tabOf(other); other != rig && (p.W*2 > own.W || p.State == "shown") {
					t.Errorf("%g: on %s the tab of %s is %d px of %d, %s", g.size.Width, rig, other, p.W, own.W, p.State)
				}
			}
			w.largest(name)
		}
	}
}

// largest fails if a word on the screen is larger than the name of a rig,
// the figures of the lists aside.
func (w *window) largest(name string) {
	w.t.Helper()
	size, most, word := float32(0), float32(0), ""
	for _, o := range test.LaidOutObjects(w.shell.Root()) {
		x, ok := o.(*canvas.Text)
		switch {
		case !ok || !x.Visible() || x.Text == "":
		case strings.Contains(name, x.Text) && x.TextSize > size:
			size = x.TextSize
		case strings.Trim(x.Text, "0123456789:") != "" && !strings.Contains(name, x.Text) && x.TextSize > most:
			most, word = x.TextSize, x.Text
		}
	}
	if size <= most || size < look.Screen.Size() {
		w.t.Errorf("%s is written in %g px, and %q in %g", name, size, word, most)
	}
}

func TestEachRigKeepsItsOwnSplitWhileAnotherIsLookedAt(t *testing.T) {
	w := releaseAt(t, 91, "E42", glass1280, look.Options{})
	w.tapRow("E42-038", "grab")
	w.tap(parts.KindAct, "fewer")
	w.tap(parts.KindAnswer, "chocks=yes")
	w.tap(parts.KindAct, "stays")
	e42 := w.text("radio") + w.text("grab") + w.text("leave") + w.text("chocks")
	w.tap(parts.KindRig, "P71")
	if got := w.text("chocks"); strings.Contains(got, "Aboard") {
		t.Errorf("the chocks of Engine 42 answer for Rescue-Pumper 71: %q", got)
	}
	w.tap(parts.KindAnswer, "chocks=no")
	p71 := w.text("radio") + w.text("chocks")
	w.tap(parts.KindRig, "E42")
	if got := w.text("radio") + w.text("grab") + w.text("leave") + w.text("chocks"); got != e42 {
		t.Errorf("back on Engine 42:\n%s\nwant\n%s", got, e42)
	}
	w.tap(parts.KindScreen, ScreenTarp)
	w.tap(parts.KindAct, "rig-leaving")
	if got := w.text("radio") + w.text("grab") + w.text("leave") + w.text("chocks"); got != e42 {
		t.Errorf("after a look at the tarp:\n%s\nwant\n%s", got, e42)
	}
	w.tap(parts.KindRig, "P71")
	if got := w.text("radio") + w.text("chocks"); got != p71 {
		t.Errorf("back on Rescue-Pumper 71:\n%s\nwant\n%s", got, p71)
	}
}

func TestASplitIsForgottenOnceTheRigHasComeBack(t *testing.T) {
	w := releaseAt(t, 91, "E42", glass1280, look.Options{})
	proposed := w.text("radio")
	w.tapRow("E42-038", "grab")
	w.tap(parts.KindMember, "M08")
	w.sure("sign")
	w.tap(parts.KindAct, "leave")
	w.tap(parts.KindAct, "arrive")
	if got := w.text("radio"); got != proposed {
		t.Errorf("when it is back: %s\nwant %s", got, proposed)
	}
}

func TestNobodySignsForAnotherRigThanTheOneHeWasChosenFor(t *testing.T) {
	w := releaseAt(t, 91, "E42", glass1280, look.Options{})
	w.tap(parts.KindAct, "other-member")
	w.tap(parts.KindMember, "M01") // an officer who may sign for any rig
	w.tap(parts.KindAct, "sign")
	if _, ok := w.find(parts.KindAct, "sign-sure"); !ok {
		t.Fatal("the signature for Engine 42 is not armed")
	}
	before := w.board.Picture().Gen
	w.tap(parts.KindRig, "P71")
	if _, ok := w.find(parts.KindAct, "sign-sure"); ok {
		t.Fatal("the signature that was begun for Engine 42 is armed for Rescue-Pumper 71")
	}
	for _, p := range w.parts {
		if p.Kind == parts.KindMember && p.State == "chosen" {
			t.Errorf("%s is chosen for a rig that nobody chose him for", p.Text)
		}
	}
	w.sure("sign")
	if w.board.Picture().Gen != before {
		t.Fatalf("logged without a name: %+v", w.newest().Act)
	}
	w.tap(parts.KindMember, "M01")
	w.sure("sign")
	if e := w.newest(); e.Verb != model.Release || e.Rig != "P71" || e.By != "M01" {
		t.Errorf("signed: %+v", e.Act)
	}
}

func TestATabSaysThatItsRigIsSignedForOrHasLeft(t *testing.T) {
	w := releaseAt(t, 91, "E42", glass1280, look.Options{})
	w.tap(parts.KindMember, "M08")
	w.sure("sign")
	w.tap(parts.KindRig, "R41")
	if p := w.tabOf("E42"); p.State != "signed" || !strings.Contains(p.Text, "signed") {
		t.Errorf("signed for: %s, %q", p.State, p.Text)
	}
	w.tap(parts.KindRig, "E42")
	w.tap(parts.KindAct, "leave")
	w.tap(parts.KindRig, "R41")
	if p := w.tabOf("E42"); p.State != "left" || !strings.Contains(p.Text, "has left") {
		t.Errorf("left: %s, %q", p.State, p.Text)
	}
	w.tap(parts.KindRig, "E42")
	if got := w.text("header"); !strings.HasPrefix(got, "Engine 42 has left") {
		t.Errorf("header: %q", got)
	}
}

func TestRigsWithoutRoomForATabAreOneTouchFurtherByTheirNames(t *testing.T) {
	w := demoAt(t, 91, ScreenTarp, glass1024, look.Options{})
	for i := range 4 {
		w.shell.act(model.Act{Verb: model.Arrive, Rig: fmt.Sprintf("T%d", i+1)})
	}
	for _, screen := range []string{ScreenTarp, ScreenLeaving} {
		for _, rig := range w.shell.now().present() {
			w.shell.Go(screen)
			if screen == ScreenTarp {
				w.tap(parts.KindAct, "rig-leaving")
			}
			if _, ok := w.find(parts.KindRig, rig); !ok {
				w.tap(parts.KindAct, "rigs")
			}
			w.tap(parts.KindRig, rig)
			if got, want := w.text("header"), w.shell.now().rigName(rig)+" leaving"; !strings.HasPrefix(got, want) {
				t.Errorf("%s, %s: the header says %q", screen, rig, got)
			}
		}
	}
}
