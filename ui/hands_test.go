package ui

import (
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// walkedTrail is a summer load, verified by two, on its way with three people.
func walkedTrail(t *testing.T) *window {
	t.Helper()
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(3)
	w.mustTouch("act step-check")
	w.lookAtAll(nil)
	w.mustTouch("act first", "member M02", "act second", "member M03", "act walk")
	return w
}

func TestASceneOpenedAsAKindOfCallAsksForThatList(t *testing.T) {
	w := demoAt(t, 60, ScreenMore, glass1280, look.Options{})
	w.mustTouch("act new-scene", "act open-Trail carry-out")
	if got := w.text("asked"); !strings.Contains(got, "trail carry-out") {
		t.Errorf("a trail carry-out is opened, and asked next is %q", got)
	}
}

func TestAPartyThatSetsOutIsTakenBackByOneUndo(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(3)
	w.mustTouch("act step-check")
	w.lookAtAll(nil)
	w.mustTouch("act first", "member M02", "act second", "member M03")
	before, lines := w.text("proof"), len(w.shell.now().walkActs(&w.trail().p, w.trailView()))
	w.mustTouch("act walk", "screen tarp")
	tap := w.shell.now().taps(1)[0]
	if got, moved := w.text("last"), w.countMoves(tap); !strings.Contains(got, "and "+strconv.Itoa(moved-1)+" more") || moved > lines {
		t.Errorf("%d lines walked, and the last entry says %q", moved, got)
	}
	w.mustTouch("act undo")
	if got := w.text("proof"); got != before {
		t.Errorf("undone, the foot says %q, want %q", got, before)
	}
}

func TestSkipAlwaysGoesOnOrSaysThatItIsTheLast(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(3)
	w.mustTouch("act step-check")
	w.lookAtAll(nil)
	w.mustTouch("piece S44-001") // to be seen again
	if p, ok := w.find("act", "skip"); !ok || p.State == "off" {
		t.Fatalf("it cannot be left as it was: %+v", p)
	}
	w.mustTouch("act skip")
	if _, ok := w.find("act", "first"); !ok {
		t.Error("all is looked at, and who looked is not asked for")
	}
	item := w.trail().eyeRows()[0].item
	delete(w.trail().p.Rig, item)
	w.shell.Refresh()
	if p, _ := w.find("act", "skip"); p.State != "off" || !strings.Contains(p.Text, "the last one") {
		t.Errorf("nothing else is open, and skip says %q, %s", p.Text, p.State)
	}
}

func TestALineUsedUpOnTheWayIsNotToBeCountedAnyMore(t *testing.T) {
	w := walkedTrail(t)
	w.lookAtAll(map[string]int{"S44-022": 0}) // all the water is drunk
	all := 0
	for _, x := range w.trailView().out {
		if x.Back() > 0 {
			all++
		}
	}
	if p, _ := w.find("act", "at-patient"); !strings.Contains(p.Text, strconv.Itoa(all)+" of "+strconv.Itoa(all)+" lines") {
		t.Errorf("%d lines come back, all counted, and the count says %q", all, p.Text)
	}
}

func TestAPieceCountedShortOutOnTheTrailIsCountedAgainThere(t *testing.T) {
	w := walkedTrail(t)
	w.lookAtAll(map[string]int{"S44-011": 0, "S44-004": 0}) // a bag, and the helmet of the litter
	w.mustTouch("act look-for-it")
	for item, want := range map[string]string{"S44-011": "Count it again: Trail", "S44-004": "Count it again: trail litter, Trail"} {
		w.mustTouch("piece " + item)
		w.textHas("step", want)
	}
}

func TestWithoutADepartmentNobodyIsListedAndItSaysWhy(t *testing.T) {
	w, _ := emptyWindow(t, glass1280, look.Options{})
	w.mustTouch("screen more", "act who")
	if p, ok := w.find(parts.KindText, "nobody"); !ok || !strings.Contains(p.Text, "Load tables") {
		t.Errorf("nobody is listed, and the screen says %v", w.parts)
	}
}

func TestWhoIsWithNoListedRigHasNoMarkOverTheName(t *testing.T) {
	w := trailAt(t)
	n := w.shell.now()
	some := false
	for i := range n.d.Members {
		m := &n.d.Members[i]
		if n.d.Rig(m.Rig) != nil {
			continue
		}
		some = true
		if got := n.crewMark(m); got != (parts.MarkView{}) {
			t.Errorf("%s of %s is marked %+v", m.Name, m.Rig, got)
		}
	}
	if !some {
		t.Error("every member of the demo has a rig")
	}
}

func (w *window) trail() *trailScreen { return w.shell.screens[ScreenTrail].(*trailScreen) }

// countMoves is how many acts of a touch moved a line.
func (w *window) countMoves(tap []model.Entry) int {
	k := 0
	for _, e := range tap {
		if len(e.Moves) > 0 {
			k++
		}
	}
	return k
}

func TestTheLastTouchesAreShownWholeHoweverFewAreShown(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.mustTouch("piece R41-001", "place at:V1", "act undo")
	n := w.shell.now()
	all := n.taps(12)
	for most := 1; most < len(all); most++ {
		for k, tap := range n.taps(most) {
			if len(tap) != len(all[k]) {
				t.Errorf("of %d touches shown, number %d has %d acts, not %d", most, k+1, len(tap), len(all[k]))
			}
		}
	}
}

func TestAWindowThatGetsAnotherWidthChoosesItsWordsAtOnce(t *testing.T) {
	w := demoAt(t, 176, ScreenTarp, glass1024, look.Options{})
	foot := func() string { return strings.Join(drawnIn(w.shell.frame.foot), " ") }
	if got := foot(); !strings.Contains(got, "elsewhere") || strings.Contains(got, "lost") {
		t.Fatalf("at 1024 the foot has room for all: %q", got)
	}
	w.win.Resize(glass1280) // and nobody touches anything
	if got := foot(); strings.Contains(got, "elsewhere") || !strings.Contains(got, "lost") {
		t.Errorf("at 1280 the foot still says %q", got)
	}
}

// drawnIn is every word that a part draws.
func drawnIn(o fyne.CanvasObject) (out []string) {
	for _, o := range test.LaidOutObjects(o) {
		if c, ok := o.(*canvas.Text); ok && c.Visible() {
			out = append(out, c.Text)
		}
	}
	return out
}

func TestWhatWasTakenFromTheStoreIsStillOrderedAndGoodsThatComeAreCountedIn(t *testing.T) {
	w := demoAt(t, 179, ScreenBringBack, glass1280, look.Options{})
	w.mustTouch("act restock-list", "act stock-ST12", "act order-list")
	if _, ok := w.find("act", "order-ST12"); !ok {
		t.Fatal("absorbent bags are not to be ordered at all")
	}
	w.mustTouch("act back", "act restock", "act seen", "act order-list")
	if _, ok := w.find("act", "order-ST12"); !ok {
		t.Fatal("three bags went to the rig, four are left, and the order is gone")
	}
	w.mustTouch("act order-ST12", "digit 1", "digit 4", "digit done")
	if _, ok := w.find("act", "order-ST12"); ok {
		t.Error("ten came, fourteen are counted, and they are ordered again")
	}
	w.mustTouch("act back", "act stock-ST13")
	has := func(want string) bool {
		for _, p := range w.parts {
			if strings.Contains(p.Text, want) {
				return true
			}
		}
		return false
	}
	if !has("60 on the shelf") || !has("32, full set 100") {
		t.Errorf("the store's figures are not there, or no whole pieces: %v", w.parts)
	}
	w.mustTouch("act shelf", "digit 9", "digit done")
	if !has("9 on the shelf") || !has("Take 9 from the store") {
		t.Errorf("nine pads were counted, and the screen says %v", w.parts)
	}
}

func TestTheLapLeadsFromDoorToDoorUntilEveryOneIsSeenOrNamed(t *testing.T) {
	w := demoAt(t, 176, ScreenLoadUp, glass1280, look.Options{})
	sc := w.shell.screens[ScreenLoadUp].(*loadupScreen)
	n := w.shell.now()
	sc.st.stand(n, n.doors("R41")[0])
	w.shell.Refresh()
	w.mustTouch("act sweep", "act not-opened")
	if p, _ := w.find("act", "next-eyes"); p.State != "next" || !strings.Contains(p.Text, "On to L1") {
		t.Fatalf("after the cab the lap does not go on: %v", w.parts)
	}
	for k := 0; ; k++ {
		if k > 200 {
			t.Fatal("the lap never ends")
		}
		if _, ok := w.find("act", "next-eyes"); ok {
			w.mustTouch("act next-eyes")
			continue
		}
		if p, ok := w.find("act", "all-here"); ok && p.State != "off" {
			if strings.HasPrefix(strings.SplitN(p.Text, ", ", 2)[1], "0 lines") {
				t.Errorf("%s: all here says %q", n.doorWords("R41", *sc.st.at), p.Text)
			}
			w.mustTouch("act all-here")
			continue
		} else if !ok {
			break
		}
		for _, i := range w.shell.now().linesAt("R41", *sc.st.at) {
			if w.shell.now().sweepMust(&sc.st, i) {
				sc.slot(w.shell.now(), n.d.Items[i].ID)
				w.shell.Refresh()
				for _, r := range strconv.Itoa(w.shell.now().s.Line(i).N(model.Place{Kind: model.Home})) {
					w.mustTouch("digit " + string(r))
				}
				w.mustTouch("digit done")
				break
			}
		}
	}
	if got := w.text("piece"); !strings.Contains(got, "The whole lap is done") || !strings.Contains(got, "Not opened: Cab front") || !strings.Contains(got, "Leaving") {
		t.Errorf("at the end of the lap it says %q", got)
	}
	w.mustTouch("screen leaving")
	if got := w.text("open-list") + w.text("open-list-2"); !strings.Contains(got, "Not opened") || !strings.Contains(got, "Cab front") {
		t.Errorf("what was not opened is not on the list that is signed: %q", got)
	}
}

func TestPaperKeepsAPlaceAndAPieceInTheWordsThatWereWritten(t *testing.T) {
	w := demoAt(t, 60, ScreenMore, glass1280, look.Options{})
	w.mustTouch("act papers", "act from-paper", "act next-line", "digit 1", "digit 9", "digit 4", "digit 0", "digit done", "act done")
	if got := w.text("header"); !strings.Contains(got, "Type some letters") {
		t.Errorf("Done over no letters says %q", got)
	}
	write := func(text string) {
		for _, r := range text {
			if _, shifted := w.find("act", "shift"); shifted && r == ' ' {
				w.mustTouch("act space")
				continue
			}
			w.mustTouch("act " + string(r))
		}
	}
	write("bl")
	w.mustTouch("act done")
	if got := w.text("header"); !strings.Contains(got, "touch the one") {
		t.Errorf("Done over several pieces says %q", got)
	}
	w.mustTouch("act delete", "act delete")
	write("tow cable red")
	if _, ok := w.find("act", "in-words"); !ok {
		t.Fatal("a piece that nobody listed cannot be kept in words")
	}
	w.mustTouch("act done", "act "+placeNew, "act done")
	if got := w.text("header"); !strings.Contains(got, "Where to") {
		t.Errorf("a place without a letter: %q", got)
	}
	w.mustTouch("act " + placeNew)
	write("old mill")
	w.mustTouch("act done", "member nobody", "act log-paper")
	var e model.Entry
	for _, x := range w.board.Picture().Entries {
		if x.Entered != 0 {
			e = x
		}
	}
	if e.Item != "tow cable red" || e.To != "at:Old mill" || !e.Reply.Has("unknown_item") || e.Entered == 0 {
		t.Errorf("logged %+v, %+v", e.Act, e.Reply)
	}
}

func TestDoneInFindTakesTheOneOrKeepsTheWordsAndHiddenRigsAreFound(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.shell.tarp().hidden["R41"] = true
	w.mustTouch("act find", "act r", "act a", "act m", "act space", "act s")
	if p, ok := w.find("piece", "R41-004"); !ok {
		t.Fatalf("the ram support plate of a hidden rig is not found: %v", w.parts)
	} else if p.State == "picked" {
		t.Fatal("it is picked before it is touched")
	}
	before := len(w.board.Picture().Entries)
	w.mustTouch("act done")
	if got := w.shell.tarp().picks; len(got) != 1 || got[0].item != "R41-004" || len(w.board.Picture().Entries) != before {
		t.Errorf("done over the one that was found: %+v is picked", got)
	}
	w.mustTouch("act drop", "act find")
	for _, r := range "tow cable" {
		if r == ' ' {
			w.mustTouch("act space")
			continue
		}
		w.mustTouch("act " + string(r))
	}
	w.mustTouch("act done")
	if e := w.last(); e.Item != "tow cable" || !e.Reply.Has("unknown_item") {
		t.Errorf("what nobody listed was typed and done, and the last entry is %+v", e.Act)
	}
}

func TestWhatPutsAnEntryRightIsInTheNameOfWhoStages(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	staging := w.shell.now().scene.Staging
	w.mustTouch("piece R41-001", "place at:V1")
	w.mustTouch("act correct", "place at:V2")
	if e := w.last(); e.Verb != model.Correct || e.By != staging {
		t.Errorf("corrected by %q, staging is %q: %+v", e.By, staging, e.Act)
	}
	w.mustTouch("act undo")
	if e := w.last(); e.Verb != model.Correct || e.By != staging || staging == "" {
		t.Errorf("taken back by %q, staging is %q: %+v", e.By, staging, e.Act)
	}
	if got := w.countAt("R41-001", "at:V1"); got != 1 {
		t.Errorf("undo left %d at V1", got)
	}
}

func TestAPieceInWordsIsReadBackAtARelief(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.mustTouch("act find", "act q", "act q", "act q", "act done", "screen more", "act relieve")
	if got := w.text("read-back"); !strings.Contains(strings.ToLower(got), "qqq") {
		t.Errorf("the read-back says %q", got)
	}
}

func TestWhatIsMovedAfterTheCloseIsSaidToBeLogged(t *testing.T) {
	w := demoAt(t, 60, ScreenMore, glass1280, look.Options{})
	w.mustTouch("act close-scene", "act close-scene-sure", "act seen", "screen tarp")
	if got := w.text("reply"); !strings.HasPrefix(got, "No scene is open") {
		t.Fatalf("closed, the strip says %q", got)
	}
	w.mustTouch("piece R41-001", "place at:V1")
	if got := w.text("reply"); !strings.Contains(got, "Battery spreader, Tarp to V1") || !strings.Contains(got, "closed") {
		t.Errorf("a piece was handed out, and the strip says %q", got)
	}
	if _, ok := w.find("act", "open-scene"); !ok {
		t.Error("no key opens a scene")
	}
	w.mustTouch("act undo")
	if got := w.text("reply"); !strings.Contains(got, "V1 to Tarp") {
		t.Errorf("taken back, the strip says %q", got)
	}
}

func TestTheWordOfAVisitingDriverIsTakenWhereHisRigIsCollected(t *testing.T) {
	w := demoAt(t, 60, ScreenLoadUp, glass1280, look.Options{})
	w.mustTouch("act other", "rig P71", "act other", "rig R41", "act other", "act collect")
	if _, ok := w.find("act", "vouch-R41"); ok {
		t.Error("our own rig is loaded by word")
	}
	w.mustTouch("act other", "rig P71", "act other", "act collect")
	w.mustTouch("act vouch-P71", "act vouch-P71-sure")
	if e := w.last(); e.Verb != model.Vouch || e.Rig != "P71" {
		t.Fatalf("logged %+v", e.Act)
	}
	for _, i := range w.shell.now().linesAll("P71") {
		if w.shell.now().s.Line(i).Peak > 0 && !w.shell.now().s.Aboard(i) {
			t.Errorf("%s is still out", w.shell.now().d.Items[i].Name)
		}
	}
	if _, ok := w.find("act", "vouch-P71"); ok {
		t.Error("nothing of it is out, and its driver is asked again")
	}
}

// linesAll are the lines of a rig.
func (n *now) linesAll(rig string) (out []int) {
	for i := range n.d.Items {
		if n.d.Items[i].Rig == rig {
			out = append(out, i)
		}
	}
	return out
}
