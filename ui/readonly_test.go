package ui

import (
	"slices"
	"strings"
	"testing"

	"tarpside/model"
	"tarpside/ui/parts"
)

// onlyReading makes the window one that only reads. The file behind it can be
// written, so that an act which gets through is seen.
func (w *window) onlyReading() {
	p := *w.shell.pic
	p.ReadOnly = "It was opened for reading only."
	w.shell.pic = &p
	w.shell.Refresh()
}

// atRest shows the Tarp as it is before the first touch.
func (w *window) atRest() {
	t := w.shell.tarp()
	t.calm()
	t.picks, t.shown, t.door, t.find.on = nil, model.Place{}, "", false
	t.tiles.FirstPage()
	w.shell.Refresh()
}

func TestAWindowThatOnlyReadsOffersNoActThatCannotHappen(t *testing.T) {
	for _, at := range []struct {
		minute int
		screen string
		show   func(w *window)
	}{
		{125, ScreenLoadUp, func(w *window) { w.loadUp(luLoad) }},
		{125, ScreenLoadUp, func(w *window) { w.loadUp(luSweep) }},
		{125, ScreenLoadUp, func(w *window) { w.loadUp(luCollect) }},
		{125, ScreenLoadUp, func(w *window) { w.loadUp(luCarry) }},
		{169, ScreenLookFor, func(*window) {}},
		{180, ScreenBringBack, func(*window) {}},
		{180, ScreenBringBack, func(w *window) { w.tap(parts.KindAct, tabOut) }},
		{180, ScreenBringBack, func(w *window) { w.tap(parts.KindAct, tabToDo) }},
		{177, ScreenLeaving, func(w *window) { w.shell.rig = "R41"; w.shell.Refresh() }},
		{91, ScreenGlance, func(w *window) { w.shell.open(newRelease(w.shell, "E42")) }},
		{177, ScreenMore, func(*window) {}},
		{60, ScreenTarp, func(w *window) { w.atRest() }},
		{60, ScreenTarp, func(w *window) { w.atRest(); w.tap(parts.KindPiece, "R41-001") }},
		{60, ScreenTarp, func(w *window) { w.atRest(); w.tap(parts.KindRig, "R41") }},
		{60, ScreenTarp, func(w *window) { w.atRest(); w.tap(parts.KindAct, listTileID) }},
		{60, ScreenTrail, func(w *window) { w.tap(parts.KindAct, "step-check") }},
	} {
		w := demoAt(t, at.minute, at.screen, glass1280, glassLook(glass1280, 1))
		w.onlyReading()
		was := len(w.board.Picture().Entries)
		at.show(w)
		touched := 0
		for _, p := range parts.Targets(w.shell.Root(), w.shell.Root().Size()) {
			w.shell.Go(at.screen)
			at.show(w)
			for _, id := range []string{p.ID, p.ID + "-sure"} {
				if _, on := w.find(p.Kind, id); on && p.Kind != parts.KindScreen {
					w.tap(p.Kind, id)
					touched++
				}
			}
			if k := len(w.board.Picture().Entries); k != was {
				t.Fatalf("%s at %d: %s %q was logged", at.screen, at.minute, p.Kind, p.ID)
			}
		}
		if touched < 4 {
			t.Errorf("%s at %d: only %d parts to touch", at.screen, at.minute, touched)
		}
	}
}

func TestAKeyThatIsShutForReadingSaysWhy(t *testing.T) {
	w := demoAt(t, 125, ScreenLoadUp, glass1280, glassLook(glass1280, 1))
	w.onlyReading()
	if p, _ := w.find(parts.KindAct, "stow"); !strings.Contains(p.Text, "only reads") {
		t.Errorf("the key says %q", p.Text)
	}
}

func TestASearchIsStoppedOnlyWithTheOfficersPINWhereOneIsSet(t *testing.T) {
	w := lookAt(t, 170)
	if err := w.board.SetPIN("", "4096"); err != nil {
		t.Fatal(err)
	}
	w.tap(parts.KindAct, "stop-looking")
	w.tap(parts.KindMember, "M02")
	w.held("stop-looking", 3e9)
	if w.at("R41-023", "lost") != 0 {
		t.Fatal("stopped without a PIN")
	}
	for _, d := range []string{"4", "0", "9", "6", "done"} {
		w.tap(parts.KindDigit, d)
	}
	if e := w.last(); e.Verb != model.StopLook || e.By != "M02" || w.at("R41-023", "lost") != 1 {
		t.Errorf("%s by %s: %+v", e.Verb, e.By, e.Reply)
	}
}

func TestATagIsTakenOffOnlyWithTheOfficersPINWhereOneIsSet(t *testing.T) {
	w := station(t)
	if err := w.board.SetPIN("", "4096"); err != nil {
		t.Fatal(err)
	}
	w.pick(tabOut, "R41-141", model.Repair, "home")
	w.tap(parts.KindMember, "M02")
	w.tap(parts.KindAct, "repair")
	tagged := func() int { return w.board.Picture().State.LineOf("R41-141").Tagged() }
	if tagged() != 1 {
		t.Fatal("in service without a PIN")
	}
	for _, d := range []string{"4", "0", "9", "6", "done"} {
		w.tap(parts.KindDigit, d)
	}
	if tagged() != 0 {
		t.Errorf("still tagged: %+v", w.last().Reply)
	}
}

func TestATouchOnTheAlertLeadsToWhatItIsAbout(t *testing.T) {
	for _, c := range []struct {
		minute int
		says   string
	}{{41, "Running down"}, {169, "Look for it"}} {
		w := demoAt(t, c.minute, ScreenGlance, glass1280, glassLook(glass1280, 1))
		w.tap(parts.KindAct, "alert")
		if head := w.text("header"); !strings.Contains(head, c.says) {
			t.Errorf("minute %d: %q is on screen", c.minute, head)
		}
	}
}

func TestAPieceOfAnotherRigIsCarriedOrSaidToBeSwappedNeverPutIn(t *testing.T) {
	w := demoAt(t, 169, ScreenLoadUp, glass1280, glassLook(glass1280, 1))
	n := w.shell.now()
	theirs := slices.IndexFunc(n.d.Items, func(it model.Item) bool {
		i := n.d.ItemIndex(it.ID)
		return it.Rig != "R41" && it.Kit == "" && it.Quantity == 1 && n.s.Line(i).N(n.s.HomeOf(i)) == 1 && len(n.ownShort("R41", i)) > 0
	})
	if theirs < 0 {
		t.Fatal("Rescue 41 misses nothing that another rig has")
	}
	own := n.d.Items[n.ownShort("R41", theirs)[0]].ID
	item := n.d.Items[theirs].ID
	w.shell.act(model.Act{Verb: model.PullOff, Item: item, From: "home", To: "tarp"})
	if w.at(item, "tarp") != 1 {
		t.Fatalf("not on the tarp: %+v", w.last().Reply)
	}
	w.shell.rig = "R41"
	w.loadUp(luCarry)
	row := parts.KindPiece + ":" + lyingID(n, lying{line: theirs, place: w.board.Picture().State.Line(theirs).Stacks[0].Place})
	l := w.shell.screens[ScreenLoadUp].(*loadupScreen)
	l.act(row) // it lies further down the list
	w.tap(parts.KindAct, "swap-"+own)
	if e := w.last(); e.Verb != model.Match || e.Reading != item || w.at(item, "tarp") != 1 {
		t.Errorf("%s %s: %+v", e.Verb, e.Reading, e.Reply)
	}
	w.textHas("reply", "a likely swap")
	l.act(row)
	w.tap(parts.KindAct, "carry-it")
	if w.at(item, "riding:R41") != 1 {
		t.Errorf("it does not ride: %+v", w.last().Reply)
	}
	if !strings.Contains(w.text("reply"), w.last().Reply.Text) {
		t.Errorf("%q is said, the log says %q", w.text("reply"), w.last().Reply.Text)
	}
}
