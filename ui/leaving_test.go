package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func TestLeavingCutsNoTextAtAnySizeByDayOrNight(t *testing.T) {
	for _, minute := range demoMinutes {
		w := demoAt(t, minute, ScreenLeaving, glass1280, look.Options{})
		w.inEachLook(func() { w.noCuts("leaving", minute) })
	}
}

// release_R41_at_end.csv: eleven lines. The demo's README: seven lines carried
// for others, five tagged.
func TestLeavingListsTheElevenOpenLinesOfRescue41(t *testing.T) {
	w := demoAt(t, 177, ScreenLeaving, glass1280, look.Options{})
	v := w.shell.now().leavingOf("R41", nil)
	lines := 0
	var titles []string
	for _, g := range v.Groups {
		lines += len(g.Lines)
		titles = append(titles, g.Title)
	}
	if v.Lines != 11 || lines != 11 {
		t.Errorf("%d lines, %d shown; want 11", v.Lines, lines)
	}
	if v.CarriedN != 7 || len(v.Carried) != 2 {
		t.Errorf("%d lines carried for %d rigs; want 7 for 2", v.CarriedN, len(v.Carried))
	}
	if len(v.Tagged) != 5 {
		t.Errorf("%d ride home tagged: %q; want 5", len(v.Tagged), v.Tagged)
	}
	if got, want := strings.Join(titles, "; "), "Medic 9; Highway; On Rescue-Pumper 71; Charging; Bagged; Lost"; got != want {
		t.Errorf("groups %q, want %q", got, want)
	}
	if g := v.Groups[0]; g.Note != "555-0109" || g.Lines[0] != "Long backboard 1" {
		t.Errorf("first group %+v", g)
	}
	if g := v.Groups[3]; g.Lines[0] != "Tool battery 2, at 22 %" || g.Lines[1] != "Tool battery 5, at 58 %" {
		t.Errorf("on the charger: %q", g.Lines)
	}
	if g := v.Groups[5]; parts.Plain(g.Note) != "closed by Capt Valcourt 21:42" || g.Lines[0] != "Spring punch, 1 of 2" {
		t.Errorf("lost: %+v", g)
	}
}

func TestTheLookWordsSayWhatTheLogHasOfChocksConesAndTarp(t *testing.T) {
	w := demoAt(t, 60, ScreenLeaving, glass1280, look.Options{})
	for id, want := range map[string]string{"look-cones": "8 still out", "look-tarp": "still out", "look-chocks": "2 aboard"} {
		if p, _ := w.find(parts.KindAct, id); !strings.HasSuffix(p.Text, want) || p.State != "look" {
			t.Errorf("%s at minute 60: %q, %s; want %q", id, p.Text, p.State, want)
		}
	}
	w = demoAt(t, 177, ScreenLeaving, glass1280, look.Options{})
	for id, want := range map[string]string{"look-cones": "6 on loan", "look-tarp": "aboard", "look-chocks": "4 aboard"} {
		if p, _ := w.find(parts.KindAct, id); !strings.HasSuffix(p.Text, want) {
			t.Errorf("%s at minute 177: %q, want %q", id, p.Text, want)
		}
	}
}

func TestWhatWasNotLookedAtStandsOnTheSignature(t *testing.T) {
	w := demoAt(t, 177, ScreenLeaving, glass1280, look.Options{})
	sign := func() string { p, _ := w.find(parts.KindAct, "sign"); return p.Text }
	if got, want := sign(), "Hold to sign, with 11 open, Choose who signs. Nothing has been looked at."; got != want {
		t.Errorf("at first %q, want %q", got, want)
	}
	for _, id := range []string{"look-doors", "look-tailboard", "look-roof", "look-chocks", "look-cones", "look-tarp"} {
		w.tap(parts.KindAct, id)
	}
	w.tap(parts.KindMember, "M02")
	if got, want := sign(), "Hold to sign, with 11 open, Capt Imre Valcourt. Ground has not been looked at."; got != want {
		t.Errorf("after six words %q, want %q", got, want)
	}
	w.tap(parts.KindAct, "look-tarp")
	if got, want := sign(), "Tarp and ground have not been looked at."; !strings.HasSuffix(got, want) {
		t.Errorf("after one was taken back %q, want %q", got, want)
	}
}

func TestEachRigHasLookWordsOfItsOwn(t *testing.T) {
	w := demoAt(t, 60, ScreenLeaving, glass1280, look.Options{})
	w.tap(parts.KindAct, "look-doors")
	for _, c := range []struct{ rig, state string }{{"E42", "look"}, {"R41", "seen"}} {
		w.tap(parts.KindRig, c.rig)
		if p, _ := w.find(parts.KindAct, "look-doors"); p.State != c.state {
			t.Errorf("doors of %s: %s, want %s", c.rig, p.State, c.state)
		}
	}
}

func TestLeavingIsSignedByNameAndNeverStopped(t *testing.T) {
	w := demoAt(t, 60, ScreenLeaving, glass1280, look.Options{})
	before := w.board.Picture().Gen
	w.sure("sign")
	if w.board.Picture().Gen != before {
		t.Fatal("a rig left without a name")
	}
	w.tap(parts.KindMember, "M03")
	w.sure("sign")
	e := w.newest()
	if e.Verb != model.Leave || e.By != "M03" || e.Rig != "R41" || e.Reply.Word == model.Refused {
		t.Fatalf("signed with 48 lines out: %s by %s for %s, %s", e.Verb, e.By, e.Rig, e.Reply.Word)
	}
	if got := w.text("reply"); !strings.HasPrefix(got, "Left at 19:50, signed by Driver Wendell Askew") {
		t.Errorf("after leaving: %q", got)
	}
	if _, ok := w.find(parts.KindAct, "sign"); ok {
		t.Error("a rig that left can be signed off again")
	}
	w.tap(parts.KindAct, "arrive")
	if w.newest().Verb != model.Arrive {
		t.Error("It is back logs no arrival")
	}
	if _, ok := w.find(parts.KindAct, "sign"); !ok {
		t.Error("a rig that is back cannot be signed off")
	}
}

// Minute 158 of the demo: four blocks short here and four too many on the
// other rig, two wedges the other way round.
func TestLikelySwapsAreNamedAndNotSettled(t *testing.T) {
	w := demoAt(t, 158, ScreenLeaving, glass1280, look.Options{})
	got := w.shell.now().swaps("R41")
	for _, want := range []string{"4 crib blocks 4x4x20 short here, 4 too many on Rescue-Pumper 71", "2 wedges 4x4 too many here, 2 short on Rescue-Pumper 71"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q does not say %q", got, want)
		}
	}
	if k := w.board.Picture().State.LineOf("R41-056").N(model.Place{Kind: model.Unexplained}); k != 4 {
		t.Errorf("%d blocks unexplained, want 4 still", k)
	}
	w = demoAt(t, 177, ScreenLeaving, glass1280, look.Options{})
	if got := w.shell.now().swaps("R41"); got != "" {
		t.Errorf("after the match: %q", got)
	}
}

func TestARigThatMustGoWithPiecesOutIsOfferedTheSplit(t *testing.T) {
	w := demoAt(t, 91, ScreenLeaving, glass1280, look.Options{})
	w.tap(parts.KindRig, "E42")
	w.tap(parts.KindAct, "release")
	if got := w.text("header"); !strings.HasPrefix(got, "Engine 42 leaving now") {
		t.Errorf("header %q", got)
	}
	w = demoAt(t, 177, ScreenLeaving, glass1280, look.Options{})
	if _, ok := w.find(parts.KindAct, "release"); ok {
		t.Error("with nothing out there is nothing to split")
	}
}

func TestALongOpenListScrollsByFinger(t *testing.T) {
	w := demoAt(t, 60, ScreenLeaving, glass1024, look.Options{})
	l := w.shell.screens[ScreenLeaving].(*leavingScreen)
	if l.rows.h <= l.scroll.Size().Height {
		t.Fatalf("48 lines need %v px and have %v: the test is about a longer list", l.rows.h, l.scroll.Size().Height)
	}
	l.scroll.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(0, -200)})
	if l.scroll.Offset() != 200 {
		t.Errorf("a drag of 200 px scrolled %v", l.scroll.Offset())
	}
}

func TestEveryRigThatIsHereCanBeLookedAtBeforeItLeaves(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		w := demoAt(t, 0, ScreenLeaving, size, glassLook(size, 1))
		for _, rig := range w.shell.now().present() {
			w.shell.Go(ScreenLeaving)
			if _, ok := w.find(parts.KindRig, rig); !ok {
				w.tap(parts.KindAct, "rigs")
			}
			w.tap(parts.KindRig, rig)
			if w.shell.rig != rig {
				t.Errorf("%g wide: touched %s, on screen is %s", size.Width, rig, w.shell.rig)
			}
		}
	}
}

func TestTheOpenListOfTheLastRigStandsWholeOnEveryGlass(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		w := demoAt(t, 177, ScreenLeaving, size, glassLook(size, 1))
		l := w.shell.screens[ScreenLeaving].(*leavingScreen)
		if room := l.scroll.Size().Height - 2*look.U(parts.Bleed); l.rows.h > room {
			t.Errorf("%g wide: eleven lines take %.0f px of %.0f", size.Width, l.rows.h, room)
		}
	}
}
