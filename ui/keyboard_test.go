package ui

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// typist is a window with a keyboard whose clock is the test's own.
type typist struct {
	*window
	late []func() // what waits for the gap to pass
}

func keyboardAt(t testing.TB, minute int, screen string) *typist {
	t.Helper()
	y := &typist{window: demoAt(t, minute, screen, glass1280, look.Options{})}
	y.tick = time.Unix(1000, 0)
	y.shell.Listen(y.win.Canvas())
	y.shell.keys.after = func(_ time.Duration, f func()) { y.late = append(y.late, f) }
	return y
}

// rest lets time pass, as between two keys of a person.
func (y *typist) rest() {
	y.tick = y.tick.Add(150 * time.Millisecond)
	for len(y.late) > 0 {
		f := y.late[0]
		y.late = y.late[1:]
		f()
	}
	y.parts = parts.CollectIn(y.shell.Root(), y.shell.Root().Size())
}

// hand types as a person does.
func (y *typist) hand(text string) {
	for _, r := range text {
		y.win.Canvas().OnTypedRune()(r)
		y.rest()
	}
}

func (y *typist) keys(names ...fyne.KeyName) {
	for _, k := range names {
		y.win.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: k})
		y.rest()
	}
}

// scan types as a reader of codes does.
func (y *typist) scan(code string) {
	for _, r := range code {
		y.tick = y.tick.Add(5 * time.Millisecond)
		y.win.Canvas().OnTypedRune()(r)
	}
	y.tick = y.tick.Add(5 * time.Millisecond)
	y.keys(fyne.KeyReturn)
}

// walkTo walks the cursor to a part, by arrows only.
func (y *typist) walkTo(kind, id string) {
	y.t.Helper()
	for range 80 {
		at := y.shell.keys.cursor.Part()
		if at.Kind == kind && at.ID == id {
			return
		}
		to, ok := y.find(kind, id)
		from, on := y.find(at.Kind, at.ID)
		if !ok {
			y.t.Fatalf("no %s %q on screen", kind, id)
		}
		dx, dy := float64(to.X+to.W/2-from.X-from.W/2), float64(to.Y+to.H/2-from.Y-from.H/2)
		key := fyne.KeyRight
		switch {
		case !on && dy > 0:
			key = fyne.KeyDown
		case dy > 60 && float64(to.W) > 2*abs(dx): // a wide part lies under where the cursor is
			key = fyne.KeyDown
		case abs(dy) > abs(dx) && dy > 0:
			key = fyne.KeyDown
		case abs(dy) > abs(dx):
			key = fyne.KeyUp
		case dx < 0:
			key = fyne.KeyLeft
		}
		y.keys(key)
		if y.shell.keys.cursor.Part() == at { // nothing further that way
			y.keys(map[fyne.KeyName]fyne.KeyName{fyne.KeyRight: fyne.KeyDown, fyne.KeyLeft: fyne.KeyUp, fyne.KeyUp: fyne.KeyLeft, fyne.KeyDown: fyne.KeyRight}[key])
		}
	}
	y.t.Fatalf("the cursor does not reach %s %q; it is at %+v", kind, id, y.shell.keys.cursor.Part())
}

func TestByKeyboardAloneAPieceIsFoundPickedHandedOutAndTakenBack(t *testing.T) {
	y := keyboardAt(t, 60, ScreenGlance)
	y.hand("batt")
	if got := y.text("typed"); got != "batt" {
		t.Fatalf("letters from the keyboard did not open Find: %q", got)
	}
	y.keys(fyne.KeyBackspace, fyne.KeyReturn)
	if p := y.shell.keys.cursor.Part(); p.Kind != parts.KindPiece {
		t.Fatalf("Return did not go to the first piece found: %+v", p)
	}
	y.walkTo(parts.KindPiece, "R41-001@tarp")
	y.keys(fyne.KeyReturn)
	if y.text("typed") != "" || len(y.shell.tarp().picks) != 1 {
		t.Fatal("Return did not pick the piece that was found")
	}
	y.walkTo(parts.KindPlace, "at:V1")
	y.keys(fyne.KeyReturn)
	if y.countAt("R41-001", "at:V1") != 1 {
		t.Fatalf("the spreader is not at V1: %s", y.text("reply"))
	}
	y.walkTo(parts.KindAct, "undo")
	y.keys(fyne.KeyReturn)
	if y.countAt("R41-001", "tarp") != 1 {
		t.Fatal("the undo by keyboard did not bring it back")
	}
}

func TestEveryPartOnEveryScreenIsReachedByArrows(t *testing.T) {
	for _, screen := range everyScreen {
		y := keyboardAt(t, 125, screen)
		reached := map[string]bool{}
		var open []parts.Part
		visit := func() bool {
			p := y.shell.keys.cursor.Part()
			k := p.Kind + " " + p.ID
			if p.Kind == "" || reached[k] {
				return false
			}
			reached[k] = true
			open = append(open, p)
			return true
		}
		// Search from each part reached, one arrow in each direction.
		arrows := []fyne.KeyName{fyne.KeyDown, fyne.KeyUp, fyne.KeyLeft, fyne.KeyRight}
		y.keys(fyne.KeyDown)
		visit()
		for len(open) > 0 && len(reached) < 400 {
			from := open[0]
			open = open[1:]
			for _, a := range arrows {
				if !y.shell.keys.cursor.To(func(p parts.Part) bool { return p.Kind == from.Kind && p.ID == from.ID }) {
					break // scrolled away meanwhile
				}
				y.keys(a)
				visit()
			}
		}
		for _, p := range parts.Targets(y.shell.Root(), glass1280) {
			if !reached[p.Kind+" "+p.ID] {
				t.Errorf("%s: the cursor never reaches %s %q", screen, p.Kind, p.ID)
			}
		}
	}
}

func TestEscapeClosesFindDropsWhatIsPickedAndGoesBack(t *testing.T) {
	y := keyboardAt(t, 60, ScreenTarp)
	y.hand("cut")
	y.keys(fyne.KeyEscape)
	if _, open := y.find(parts.KindText, "typed"); open {
		t.Error("Escape did not close Find")
	}
	y.tap(parts.KindPiece, "R41-001")
	y.keys(fyne.KeyEscape)
	if len(y.shell.tarp().picks) != 0 {
		t.Error("Escape did not drop what was picked")
	}
	y.shell.Go(ScreenMore)
	y.tap(parts.KindAct, "who")
	y.keys(fyne.KeyEscape)
	if len(y.shell.over) != 0 {
		t.Error("Escape did not go back")
	}
}

func TestDigitsGoToThePadThatIsOpenAndNowhereElse(t *testing.T) {
	y := keyboardAt(t, 60, ScreenTarp)
	y.hand("12")
	if _, open := y.find(parts.KindText, "typed"); open {
		t.Error("a digit opened Find")
	}
	y = keyboardAt(t, 128, ScreenLoadUp)
	if _, digits := parts.OpenPads(y.win.Canvas()); digits == nil {
		for _, id := range []string{"R41-004", "R41-005", "R41-006", "R41-007", "R41-008"} {
			y.shell.screens[ScreenLoadUp].(*loadupScreen).st.choose(id)
			y.shell.Refresh()
			if _, digits = parts.OpenPads(y.win.Canvas()); digits != nil {
				break
			}
		}
		if digits == nil {
			t.Fatal("no piece asks for a number")
		}
	}
	y.hand("7")
	y.hand("5")
	if got := y.text("typed"); got != "75" {
		t.Errorf("the pad shows %q, want 75", got)
	}
	y.keys(fyne.KeyBackspace)
	if got := y.text("typed"); got != "7" {
		t.Errorf("after Backspace the pad shows %q, want 7", got)
	}
	y.hand("x")
	if y.shell.here != ScreenLoadUp {
		t.Error("a letter left the pad")
	}
}

func TestAHoldByKeyboardIsArmedByReturnAndDoneByReturnOnTheSureKey(t *testing.T) {
	y := keyboardAt(t, 60, ScreenMore)
	y.walkTo(parts.KindAct, "close-scene")
	y.keys(fyne.KeyReturn)
	if p, _ := y.find(parts.KindAct, "close-scene"); p.State != "armed" {
		t.Fatalf("Return did not arm the hold: %+v", p)
	}
	if y.board.Picture().State.Scene(y.board.Picture().Scene).Closed {
		t.Fatal("one Return closed the scene")
	}
	y.walkTo(parts.KindAct, "close-scene-sure")
	y.keys(fyne.KeyReturn)
	if !y.board.Picture().State.Scene(y.shell.pic.Scene).Closed {
		t.Error("Return on the sure key did not close the scene")
	}
}

func TestAScannedCodePicksThePieceWhereItIsFromEveryScreen(t *testing.T) {
	for _, screen := range everyScreen {
		y := keyboardAt(t, 60, screen)
		y.scan("r41-001")
		picks := y.shell.tarp().picks
		if len(picks) != 1 || picks[0].item != "R41-001" || picks[0].from.Kind != model.Tarp {
			t.Fatalf("%s: picked %+v: %s", screen, picks, y.text("reply"))
		}
		y.scan("R41 Step Chock")
		y.scan("R41-001") // read twice
		if picks = y.shell.tarp().picks; len(picks) != 2 {
			t.Fatalf("%s: a second code did not pick both: %+v", screen, picks)
		}
		y.scan("at:V1")
		if y.countAt("R41-001", "at:V1") != 1 {
			t.Errorf("%s: a scanned place did not take what was picked: %s", screen, y.text("reply"))
		}
		y.scan("R41-001")
		if picks = y.shell.tarp().picks; len(picks) != 1 || picks[0].from.Name != "V1" {
			t.Errorf("%s: not picked where it is: %+v", screen, picks)
		}
		y.scan("tarp")
		if y.countAt("R41-001", "tarp") != 1 {
			t.Errorf("%s: a scanned TARP did not bring it back", screen)
		}
	}
}

func TestACodeScannedWhileTypingLeavesNothingTyped(t *testing.T) {
	y := keyboardAt(t, 60, ScreenTarp)
	y.hand("spr")
	y.scan("V1")
	if y.shell.tarp().find.text != "spr" || y.shell.tarp().shown.Name != "V1" {
		t.Errorf("Find has %q, the panel shows %v", y.shell.tarp().find.text, y.shell.tarp().shown)
	}
}

func TestACodeThatNobodyKnowsIsSaidInWordsAndChangesNothing(t *testing.T) {
	y := keyboardAt(t, 60, ScreenTarp)
	y.tap(parts.KindPiece, "R41-001")
	before := len(y.board.Picture().Entries)
	y.scan("4006381333931")
	if got := y.text("reply"); !strings.Contains(got, "4006381333931") {
		t.Errorf("the strip says %q", got)
	}
	if len(y.board.Picture().Entries) != before || len(y.shell.tarp().picks) != 1 {
		t.Error("an unknown code changed something")
	}
	y.scan("USED")
	if got := y.text("reply"); !strings.Contains(got, "comes back") || y.countAt("R41-001", "tarp") != 1 {
		t.Errorf("a place that cannot take it says %q", got)
	}
}

func TestATouchBetweenTwoScansDoesNotTakeTheKeysAway(t *testing.T) {
	y := keyboardAt(t, 60, ScreenTarp)
	for _, p := range y.parts {
		if p.Kind == parts.KindText || p.Kind == parts.KindScreen {
			continue
		}
		test.TapCanvas(y.win.Canvas(), fyne.NewPos(float32(p.X+p.W/2), float32(p.Y+p.H/2)))
		if y.win.Canvas().Focused() != nil {
			t.Fatalf("%s %q took the focus", p.Kind, p.ID)
		}
	}
}
