package ui

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// releaseAt opens the release of a rig the way a finger does.
func releaseAt(t *testing.T, minute int, rig string, size fyne.Size, opt look.Options) *window {
	t.Helper()
	w := demoAt(t, minute, ScreenGlance, size, opt)
	w.tap(parts.KindAct, "rig-leaving")
	w.tap(parts.KindRig, rig)
	return w
}

// sure signs without holding: a tap, then the second key.
func (w *window) sure(id string) {
	w.t.Helper()
	w.tap(parts.KindAct, id)
	w.shell.Refresh()
	w.tap(parts.KindAct, id+"-sure")
}

func (w *window) newest() model.Entry {
	all := w.board.Picture().Entries
	return all[len(all)-1]
}

func TestReleaseCutsNoTextAtAnySizeByDayOrNight(t *testing.T) {
	for _, minute := range []int{60, 91, 126} {
		for _, rig := range []string{"R41", "E42"} {
			w := releaseAt(t, minute, rig, glass1280, look.Options{})
			w.inEachLook(func() { w.noCuts("release of "+rig, minute) })
		}
	}
}

// release_E42_at_t91.csv of the demo: seven lines, twelve pieces. What is
// critical goes along by the rule, the rest stays.
func TestReleaseProposesTheCriticalPiecesOfTheSevenLines(t *testing.T) {
	w := releaseAt(t, 91, "E42", glass1280, look.Options{})
	v := w.shell.now().releaseOf("E42", &split{})
	if v.LinesOut != 7 || v.PiecesOut != 12 || v.GrabLines != 4 || v.LeaveLines != 3 {
		t.Errorf("%d lines, %d pieces, %d grab, %d leave; want 7, 12, 4, 3", v.LinesOut, v.PiecesOut, v.GrabLines, v.LeaveLines)
	}
	if v.Stays != "R41" {
		t.Errorf("left with %q, want the rig of the same department", v.Stays)
	}
	if len(v.Elsewhere) != 0 {
		t.Errorf("already elsewhere: %q, want none", v.Elsewhere)
	}
	if want := []string{"Thermal camera: not read"}; !slices.Equal(plain(v.Without), want) {
		t.Errorf("goes without %q, want %q", plain(v.Without), want)
	}
}

func plain(texts []string) (out []string) {
	for _, s := range texts {
		out = append(out, parts.Plain(s))
	}
	return out
}

func TestTouchingRowsRewritesTheRadioSentence(t *testing.T) {
	w := releaseAt(t, 91, "E42", glass1280, look.Options{})
	if got, want := w.text("radio"), "\u201cEngine 42, take the thermal camera, 4 attack lines 50 ft, the fog nozzle 1 and the dry-chem 20 lb. Engine 42 leaves the battery area light, 2 salvage covers and 2 fleece blankets with Rescue 41.\u201d"; got != want {
		t.Errorf("as proposed:\n%s\nwant\n%s", got, want)
	}
	w.tap(parts.KindAct, "fewer")
	w.tap(parts.KindAct, "fewer")
	if got, want := w.text("radio"), "leaves 2 attack lines 50 ft, the dry-chem"; strings.Contains(got, want) {
		t.Errorf("the dry-chem was not touched yet: %s", got)
	}
	w.tapRow("E42-038", "grab")
	if got, want := w.text("radio"), "\u201cEngine 42, take the thermal camera, 2 attack lines 50 ft and the fog nozzle 1. Engine 42 leaves the battery area light, 2 attack lines 50 ft, 2 salvage covers, the dry-chem 20 lb and 2 fleece blankets with Rescue 41.\u201d"; got != want {
		t.Errorf("as the crew did it:\n%s\nwant\n%s", got, want)
	}
	if got := w.text("goes-without"); !strings.Contains(got, "Attack line 50 ft: 2 of 4") || !strings.Contains(got, "Dry-chem 20 lb: none") {
		t.Errorf("goes without: %q", got)
	}
}

// tapRow touches a row on its side; a split line stands on both. A row below
// those in view is brought up by a finger first.
func (w *window) tapRow(item, side string) {
	w.t.Helper()
	for range 8 {
		var last parts.Part
		for i, p := range w.parts {
			if p.Kind != parts.KindPiece || p.State != side {
				continue
			}
			if p.ID == item {
				w.parts = append([]parts.Part{p}, slices.Delete(slices.Clone(w.parts), i, i+1)...)
				w.tap(parts.KindPiece, item)
				return
			}
			last = p
		}
		test.Drag(w.win.Canvas(), fyne.NewPos(float32(last.X+last.W/2), float32(last.Y+last.H/2)), 0, -60)
		w.shell.Refresh()
	}
	w.t.Fatalf("no row of %s under %s", item, side)
}

func TestOneFewerNeverTakesMoreThanThereAre(t *testing.T) {
	w := releaseAt(t, 91, "E42", glass1280, look.Options{})
	for range 9 {
		w.tap(parts.KindAct, "fewer")
	}
	if got := w.text("radio"); !strings.Contains(got, "4 attack lines 50 ft") {
		t.Errorf("after nine times one fewer: %s", got)
	}
	for range 9 {
		w.tap(parts.KindAct, "more")
	}
	if got := w.text("leave"); !strings.Contains(got, "3 lines") {
		t.Errorf("after nine times one more: %s", got)
	}
}

func TestReleaseIsSignedByNameThenAcceptedThenTheRigLeaves(t *testing.T) {
	w := releaseAt(t, 91, "E42", glass1280, look.Options{})
	before := w.board.Picture().Gen
	w.sure("sign")
	if _, ok := w.find(parts.KindMember, "M08"); !ok || w.board.Picture().Gen != before {
		t.Fatal("without a name nothing is logged, and the names are shown")
	}
	w.tap(parts.KindMember, "M08")
	w.sure("sign")
	if e := w.newest(); e.Verb != model.Release || e.By != "M08" || e.Rig != "E42" {
		t.Fatalf("signed: %s by %s for %s", e.Verb, e.By, e.Rig)
	}
	if got := w.text("grab"); !strings.HasPrefix(got, "Load these first") {
		t.Errorf("after the signature the left column says %q", got)
	}
	if n := len(w.board.Picture().State.Leaving("E42")); n != 7 {
		t.Errorf("the release moved pieces: %d lines out, want 7", n)
	}
	w.tap(parts.KindMember, "M02")
	w.sure("accept")
	if e := w.newest(); e.Verb != model.Accept || e.By != "M02" || e.Rig != "E42" || e.Holder != "R41" {
		t.Fatalf("accepted: %s by %s for %s, holder %s", e.Verb, e.By, e.Rig, e.Holder)
	}
	w.tap(parts.KindAct, "leave")
	if e := w.newest(); e.Verb != model.Leave || e.By != "M08" || e.Rig != "E42" {
		t.Fatalf("left: %s by %s for %s", e.Verb, e.By, e.Rig)
	}
	if got := w.text("reply"); !strings.Contains(got, "Left at 20:21, signed by Lt Pruett") || !strings.Contains(got, "Capt Valcourt signed") {
		t.Errorf("after leaving: %q", got)
	}
	if got := w.text("radio"); !strings.Contains(got, "Ask it by radio: is the thermal camera") {
		t.Errorf("what was to go along is not logged as loaded, and the sentence says %q", got)
	}
	w.tap(parts.KindAct, "arrive")
	if e := w.newest(); e.Verb != model.Arrive || slices.Contains(w.board.Picture().State.Scene(e.Scene).Left, "E42") {
		t.Errorf("it is back: %s, left %v", e.Verb, w.board.Picture().State.Scene(e.Scene).Left)
	}
}

func TestChocksThatAreNotHereAreLookedFor(t *testing.T) {
	w := releaseAt(t, 91, "E42", glass1280, look.Options{})
	if got := w.text("chocks"); !strings.Contains(got, "The log has 2 at home, on no list") {
		t.Errorf("the prompt reads %q", got)
	}
	w.tap(parts.KindAnswer, "chocks=no")
	w.tap(parts.KindMember, "M08")
	w.sure("sign")
	if k := w.board.Picture().State.LineOf("E42-059").N(model.Place{Kind: model.Unexplained}); k != 2 {
		t.Errorf("%d wheel chocks unexplained, want 2", k)
	}
}

func TestTheRestCanBeLeftWithAnotherRigThatIsHere(t *testing.T) {
	w := releaseAt(t, 91, "E42", glass1280, look.Options{})
	w.tap(parts.KindAct, "stays")
	if got := w.text("leave"); !strings.HasPrefix(got, "Leave with Rescue-Pumper 71") {
		t.Errorf("after a touch on the rig: %q", got)
	}
	w.tap(parts.KindAct, "stays")
	if got := w.text("leave"); !strings.HasPrefix(got, "Leave with Rescue 41") {
		t.Errorf("after two: %q", got)
	}
}

func TestARigWithNothingOutSaysSo(t *testing.T) {
	w := demoAt(t, 12, ScreenGlance, glass1280, look.Options{})
	w.shell.open(newRelease(w.shell, "E42"))
	if got := w.text("radio"); !strings.Contains(got, "Engine 42 has nothing out here. It leaves nothing.") {
		t.Errorf("radio: %q", got)
	}
	w.noCuts("release", 12)
}
