package ui

import (
	"bytes"
	"image"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// reopened opens the window anew over the same file, as after a start.
func (w *window) reopened(size fyne.Size, opts Options) {
	w.t.Helper()
	opts.Board, opts.Now, opts.Post = w.board, func() time.Time { return w.now }, func(f func()) { f() }
	opts.SetTheme = fyne.CurrentApp().Settings().SetTheme
	opts.Changed = func() { w.parts = parts.CollectIn(w.shell.Root(), w.shell.Root().Size()) }
	w.shell = New(opts)
	w.win = test.NewTempWindow(w.t, w.shell.Root())
	w.win.SetPadded(false)
	w.win.Resize(size)
	w.shell.Refresh()
}

// types touches digits, then done.
func (w *window) types(digits string) {
	w.t.Helper()
	for _, d := range digits {
		w.tap("digit", string(d))
	}
	w.tap("digit", "done")
}

func TestTheWetLockLeavesNothingToTouchAndGoesOnShowing(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("screen", wetLock)
	for _, p := range w.parts {
		if p.Kind != parts.KindText && p.ID != "unlock" {
			t.Errorf("%s %s can still be touched", p.Kind, p.ID)
		}
	}
	if !look.Current().Options().Locked {
		t.Error("keys keep their edge")
	}
	if got := w.text(wetLock); !strings.HasPrefix(got, "Wet lock is on") {
		t.Errorf("the strip says %q", got)
	}
	before := len(w.board.Picture().Entries)
	for y := float32(4); y < glass1280.Height; y += 40 { // a sleeve over the whole glass
		for x := float32(4); x < glass1280.Width; x += 40 {
			if p, _ := w.find("act", "unlock"); x < float32(p.X)-8 || y > float32(p.Y+p.H)+8 {
				test.TapCanvas(w.win.Canvas(), fyne.NewPos(x, y))
			}
		}
	}
	if p := w.board.Picture(); len(p.Entries) != before || w.shell.here != ScreenTarp {
		t.Fatal("something was touched under the lock")
	}
	proof := w.text("proof")
	it := w.board.Picture()
	if _, err := w.board.Log(tapOf(model.Act{Verb: model.PullOff, Item: "R41-015", Quantity: 2, From: "home", To: "tarp", By: "M04"})); err != nil || w.board.Picture().Gen == it.Gen {
		t.Fatal(err)
	}
	w.shell.Refresh()
	if got := w.text("proof"); got == proof || !strings.Contains(got, "Adds up") {
		t.Errorf("the foot stands still under the lock: %q", got)
	}
	w.tap("act", "unlock")
	if !w.shell.opts.Look.Locked {
		t.Fatal("one tap unlocked")
	}
	w.tap("act", "unlock-sure")
	if w.shell.opts.Look.Locked || look.Current().Options().Locked {
		t.Fatal("two taps in two places did not unlock")
	}
	w.tap("screen", ScreenGlance)
	if w.shell.here != ScreenGlance {
		t.Error("after the lock the rail is dead")
	}
}

func TestAScreenThatWasAwayWhenTheLookChangedIsDrawnInTheNewOne(t *testing.T) {
	shot := func(w *window) []byte { return w.win.Canvas().Capture().(*image.NRGBA).Pix }
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("screen", ScreenGlance)
	w.shell.Go(ScreenSettings)
	w.tap("act", "day")
	w.tap("act", "text-1.3")
	for _, screen := range []string{ScreenTarp, ScreenGlance} {
		w.tap("screen", screen)
		got := shot(w)
		fresh := demoAt(t, 60, screen, glass1280, look.Options{Day: true, Text: 1.3})
		if !bytes.Equal(got, shot(fresh)) {
			t.Errorf("%s is not drawn as in a window that began in this look", screen)
		}
	}
}

func TestWhatIsSetHoldsAfterAStartAndOnlyOnThisTablet(t *testing.T) {
	w := demoAt(t, 60, ScreenSettings, glass1280, look.Options{})
	w.tap("act", "day")
	w.tap("act", "text-1.3")
	w.tap("act", "who")
	w.tap("member", "M02")
	w.reopened(glass1280, Options{Look: look.Options{}})
	if o := look.Current().Options(); !o.Day || o.Text < 1.29 || o.Text > 1.31 || w.shell.by != "M02" {
		t.Errorf("after a start: %+v, by %q", o, w.shell.by)
	}
	for _, key := range []string{"look", "text", "by"} {
		if v, err := w.board.Setting(key + "@A"); v == "" || err != nil {
			t.Errorf("%s is not kept under the tablet's name: %q %v", key, v, err)
		}
	}
	w.reopened(glass1280, Options{Look: look.Options{}, LookGiven: true})
	if look.Current().Options().Day {
		t.Error("a look that was asked for was overruled")
	}
}

func TestEveryTargetFollowsABankCardLaidOnTheGlass(t *testing.T) {
	w := demoAt(t, 60, ScreenSettings, glass1920, LookFor(glass1920, false))
	w.tap("screen", ScreenTarp)
	before, _ := w.find("act", "undo") // places fill what the glass leaves them
	w.shell.Go(ScreenSettings)
	w.tap("act", "card")
	start := w.shell.over[0].(*cardScreen).px
	for range 3 {
		w.tap("act", "larger")
	}
	w.tap("act", "much-larger")
	w.tap("act", "much-smaller")
	if got := w.shell.over[0].(*cardScreen).px / start; got < 1.02 || got > 1.04 {
		t.Fatalf("three times a little larger is %.3f", got)
	}
	w.tap("act", "keep")
	w.tap("screen", ScreenTarp)
	if after, _ := w.find("act", "undo"); after.H <= before.H || before.H == 0 {
		t.Errorf("a key is %d high after, %d before", after.H, before.H)
	}
	if place, _ := w.find("place", "tarp"); float32(place.H) < look.U(look.Target)-1 {
		t.Errorf("a place is %d high, a hand needs %.0f", place.H, look.U(look.Target))
	}
	w.reopened(glass1920, Options{Look: LookFor(glass1920, false)})
	if got := float64(look.PerInch) * 1.25 * 1.02; float64(look.Current().Options().PerInch) < got {
		t.Errorf("after a start %.1f an inch, want over %.1f", look.Current().Options().PerInch, got)
	}
}

func TestACardThatWantsMoreThanTheWindowHasIsSaidAndKeptToTheRoom(t *testing.T) {
	w := demoAt(t, 60, ScreenSettings, glass1024, look.Options{})
	w.tap("act", "card")
	w.tap("act", "much-larger")
	if got := w.text("card-words"); !strings.Contains(got, "no room for keys of 20 mm") || !strings.Contains(got, "18 mm") {
		t.Errorf("it says %q", got)
	}
	w.tap("act", "keep")
	w.sound("settings after a card too large")
	w.shell.Go(ScreenTarp)
	w.sound("tarp after a card too large")
}

func TestALimitIsChangedByOneEntryAndAnUnusualOneIsAskedTwice(t *testing.T) {
	w := demoAt(t, 60, ScreenSettings, glass1280, look.Options{})
	w.tap("act", "limits")
	w.tap("act", "limit-battery")
	if got := w.text("read-back"); !strings.Contains(got, "at or above the figure in the item row") {
		t.Errorf("the words of the table are not beside it: %q", got)
	}
	item := w.firstOf("piece")
	limit := func() float64 {
		a, _ := w.board.Picture().State.Dept.Item(item).Ask("battery")
		return a.Limit
	}
	before := len(w.board.Picture().Entries)
	w.tap("piece", item)
	w.types("120")
	if limit() != 80 {
		t.Fatal("a limit outside the range of the check was taken")
	}
	for range 3 {
		w.tap("digit", "delete")
	}
	w.types("90")
	if limit() != 90 {
		t.Fatalf("the limit is %g", limit())
	}
	w.tap("piece", item)
	w.types("20")
	if limit() != 90 || !strings.Contains(w.text("limit-words"), "Is it meant?") {
		t.Fatalf("20 percent went through at once: %g, %q", limit(), w.text("limit-words"))
	}
	w.tap("act", "sure")
	if limit() != 20 || len(w.board.Picture().Entries) != before+2 {
		t.Errorf("the limit is %g after %d entries", limit(), len(w.board.Picture().Entries)-before)
	}
}

// withPIN sets the officer's PIN by touch.
func (w *window) withPIN(pin string) {
	w.t.Helper()
	w.shell.Go(ScreenSettings)
	w.tap("act", "pin")
	w.types(pin)
	w.types(pin)
	if has, err := w.board.HasPIN(); !has || err != nil {
		w.t.Fatalf("no PIN is set: %v", err)
	}
}

func TestASceneIsClosedOnlyWithTheOfficersPINOnceOneIsSet(t *testing.T) {
	w := demoAt(t, 179, ScreenSettings, glass1280, look.Options{})
	w.withPIN("4096")
	closed := func() bool { return w.board.Picture().State.Scene(w.board.Picture().Scene).Closed }
	w.tap("screen", ScreenMore)
	w.tap("act", "close-scene")
	w.tap("act", "close-scene-sure")
	if closed() {
		t.Fatal("closed without a PIN")
	}
	w.types("1111")
	if closed() || !strings.Contains(w.text("pin-words"), "not the officer's PIN") {
		t.Fatalf("a wrong PIN: closed %v, %q", closed(), w.text("pin-words"))
	}
	if strings.Contains(w.text("typed"), "4") {
		t.Error("the PIN can be read while it is typed")
	}
	w.types("4096")
	if !closed() {
		t.Error("the right PIN did not close it")
	}
}

func TestThePINIsChangedOnlyByWhoKnowsItAndTheTwoNewOnesMustBeTheSame(t *testing.T) {
	w := demoAt(t, 60, ScreenSettings, glass1280, look.Options{})
	w.withPIN("4096")
	w.tap("act", "pin")
	w.tap("act", "change-pin")
	w.types("1234")
	if !strings.Contains(w.text("pin-words"), "not the officer's PIN") {
		t.Fatalf("it says %q", w.text("pin-words"))
	}
	w.types("4096")
	w.types("7777")
	w.types("7778")
	if err := w.board.CheckPIN("4096"); err != nil {
		t.Fatal("two that differ changed it")
	}
	w.types("7777")
	if err := w.board.CheckPIN("7777"); err != nil {
		t.Fatalf("it was not changed: %v", err)
	}
	w.tap("act", "pin")
	w.tap("act", "drop-pin")
	w.types("7777")
	if has, _ := w.board.HasPIN(); has {
		t.Error("it was not taken away")
	}
}

func TestTheActingOfficerIsOfferedFirstWhereSomethingIsSigned(t *testing.T) {
	w := demoAt(t, 177, ScreenSettings, glass1280, look.Options{})
	var officer string
	for _, m := range w.board.Picture().State.Dept.Members {
		if m.Officer && m.Rig != "R41" {
			officer = m.ID
		}
	}
	w.tap("act", "acting")
	w.shell.now().actingFirst(nil)
	for _, p := range w.parts {
		if p.Kind == "member" && p.ID == officer {
			w.tap("member", officer)
		}
	}
	if w.shell.acting != officer {
		w.shell.acting = officer // further down the list than the glass shows
	}
	w.tap("screen", ScreenLeaving)
	for _, p := range w.parts {
		if p.Kind == "member" {
			if p.ID != officer {
				t.Errorf("%s is offered first, want %s", p.ID, officer)
			}
			return
		}
	}
	t.Error("nobody is offered")
}

func TestPracticeIsEnteredAndLeftByAHoldOrTwoTouches(t *testing.T) {
	w := demoAt(t, 60, ScreenSettings, glass1280, look.Options{})
	demo, real := 0, 0
	opts := Options{Screen: ScreenSettings, Demo: func() error { demo++; return nil }, Real: func() error { real++; return nil }}
	w.reopened(glass1280, opts)
	w.tap("act", "practice")
	if demo != 0 {
		t.Fatal("one touch led to practice")
	}
	w.tap("act", "practice-sure")
	opts.Practice = true
	w.reopened(glass1280, opts)
	if !strings.Contains(w.text("header"), "Practice") {
		t.Errorf("the header says %q", w.text("header"))
	}
	w.tap("act", "leave-practice")
	w.tap("act", "leave-practice-sure")
	if demo != 1 || real != 1 {
		t.Errorf("to practice %d times, back %d times", demo, real)
	}
}

func TestSettingsAreWholeAtEverySizeOfGlassAndText(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		for _, scale := range textScales {
			opt := LookFor(size, scale == 1.3)
			opt.Text = scale
			w := demoAt(t, 60, ScreenSettings, size, opt)
			w.sound("settings")
			for _, path := range []string{"card", "limits limit-oxygen", "pin", "acting", "who"} {
				w.shell.Go(ScreenSettings)
				for _, id := range strings.Fields(path) {
					w.tap("act", id)
				}
				w.listed(path)
			}
			w.shell.Go(ScreenSettings)
			w.tap("act", "limits")
			w.tap("act", "limit-air")
			w.tap("piece", w.firstOf("piece"))
			w.tap("digit", "9")
			w.tap("digit", "done")
			w.sound("a limit asked twice")
			for _, screen := range []string{ScreenTarp, ScreenGlance, ScreenLoadUp, ScreenLeaving, ScreenLookFor, ScreenMore, ScreenSettings} {
				w.shell.Go(screen)
				w.tap("screen", wetLock)
				w.sound(screen + " under the wet lock")
				w.tap("act", "unlock")
				w.tap("act", "unlock-sure")
			}
		}
	}
}

// listed is sound for a screen that scrolls: what is half out of view at its
// end may be touched all the same.
func (w *window) listed(what string) {
	w.t.Helper()
	for _, cut := range parts.Cuts(w.shell.Root()) {
		w.t.Errorf("%s: cut: %s", what, cut)
	}
	size := w.shell.Root().Size()
	end := int(size.Height - look.U(look.Foot) - look.U(look.Gap))
	for _, p := range w.parts {
		floor := 84 * look.U(1)
		out := p.Y+p.H >= end-2 || p.Y <= int(look.U(look.Header)+look.U(look.Gap)) || strings.HasPrefix(p.ID, "account-") // on More they scroll above the strip
		if p.Kind != parts.KindText && (float32(p.W) < floor || float32(p.H) < floor && !out) {
			w.t.Errorf("%s: %s %s is %dx%d, too small to touch", what, p.Kind, p.ID, p.W, p.H)
		}
	}
}

// firstOf is the id of the first part of a kind on screen.
func (w *window) firstOf(kind string) string {
	for _, p := range w.parts {
		if p.Kind == kind {
			return p.ID
		}
	}
	w.t.Fatalf("no %s on screen", kind)
	return ""
}

func tapOf(acts ...model.Act) board.Tap { return board.Tap{Acts: acts} }

func TestAnOfficerLetsACheckPassOnlyWithThePINOnceOneIsSet(t *testing.T) {
	r := atRig(t, 131)
	if err := r.board.SetPIN("", "4096"); err != nil {
		t.Fatal(err)
	}
	r.touch("door L4", "slot R41-061", "digit 9", "digit 5", "digit done", "act stow")
	r.touch("slot R41-062", "answer dry=no", "act stow", "act override", "member M02")
	r.want("R41-062", "home", 0)
	r.types("1234")
	r.want("R41-062", "home", 0)
	r.types("4096")
	r.want("R41-062", "home", 1)
	if e := r.last(); !e.Reply.Has("overridden") {
		t.Errorf("logged %+v, %+v", e.Act, e.Reply)
	}
}
