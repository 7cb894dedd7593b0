package ui

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

var sizes = []fyne.Size{{Width: 1280, Height: 800}, {Width: 1024, Height: 768}, {Width: 1920, Height: 1200}}

// at is how many pieces of an item the board has at a place.
func (w *window) at(item, place string) int {
	w.t.Helper()
	s := w.board.Picture().State
	p, err := s.Resolve(place, s.Dept.ItemIndex(item), w.board.Picture().Scene)
	if err != nil {
		w.t.Fatal(err)
	}
	return s.LineOf(item).N(p)
}

// last is the newest entry.
func (w *window) last() model.Entry {
	all := w.board.Picture().Entries
	return all[len(all)-1]
}

// held holds a key of Look for it for some time and lets go.
func (w *window) held(id string, d time.Duration) {
	w.t.Helper()
	k, ok := w.shell.screens[ScreenLookFor].(*lookforScreen).tree.made[leafKey(node{id: id, view: parts.HoldView{}})].(*parts.HoldKey)
	if !ok {
		w.t.Fatalf("no key %q to hold", id)
	}
	var tick func(time.Duration)
	k.Clock = func(f func(time.Duration)) func() { tick = f; return func() {} }
	k.MouseDown(&desktop.MouseEvent{Button: desktop.MouseButtonPrimary})
	if tick != nil {
		tick(d)
	}
	k.MouseUp(&desktop.MouseEvent{Button: desktop.MouseButtonPrimary})
}

func (w *window) textHas(id, want string) {
	w.t.Helper()
	for _, p := range w.parts {
		if p.Kind == parts.KindText && p.ID == id && strings.Contains(p.Text, want) {
			return
		}
	}
	w.t.Errorf("no %s on screen says %q", id, want)
}

func lookAt(t *testing.T, minute int) *window {
	return demoAt(t, minute, ScreenLookFor, sizes[0], look.Options{Day: true})
}

func TestAShortageOpensASearchByItself(t *testing.T) {
	w := lookAt(t, 153)
	for _, id := range []string{"R41-023", "R41-133"} {
		if p, ok := w.find(parts.KindPiece, id); !ok || p.State != hunting {
			t.Errorf("%s is not listed as looked for: %+v", id, p)
		}
	}
	w.textHas("header", "8 pieces unexplained") // as the foot counts: the set has 4 straps in it
	w.textHas("proof", "8 unexplained")
	w.textHas("fact", "19:05  Kit at V1, with Rosalind Quist")
	w.tap(parts.KindPiece, "R41-133")
	if p, ok := w.find(parts.KindPiece, "R41-133"); !ok || p.H < int(look.Floor) {
		t.Errorf("the chosen piece does not show whole in the list: %+v", p)
	}
	w.textHas("fact", "Never logged off the rig")
	w.textHas("fact", "21:23  Counted 0 of 1, Wendell Askew")
}

func TestPlacesThatWereLookedAtStandAboveAndTheNextOneIsAsked(t *testing.T) {
	w := lookAt(t, 170)
	for _, want := range []string{"Ask Rosalind Quist", "The tarp, and under it", "V1: car on its side"} {
		w.textHas("looked", want)
	}
	w.textHas("step", "Count it again")
	w.tap(parts.KindAct, "not-here")
	if e := w.last(); e.Verb != model.Look || e.Reading != "step=its own place, counted again" || e.Item != "R41-023" {
		t.Errorf("logged %s %s %q", e.Verb, e.Item, e.Reading)
	}
	w.textHas("step", "Other slots of Rescue 41")
	w.tap(parts.KindAct, "skip")
	w.tap(parts.KindAct, "wrong-tap")
	w.textHas("step", "Count it again")
}

func TestAPlaceThatIsNotSafeCountsAsNotSearched(t *testing.T) {
	w := lookAt(t, 170)
	w.tap(parts.KindAct, "skip")
	w.tap(parts.KindAct, "unsafe")
	w.tap(parts.KindAct, "unsafe-traffic")
	w.textHas("looked", "not searched: traffic")
	if e := w.last(); !strings.HasSuffix(e.Reading, ";skipped=unsafe;why=traffic") {
		t.Errorf("logged %q", e.Reading)
	}
	w.tap(parts.KindAct, "stop-looking")
	w.textHas("fact", "Not searched Count it again: glass kit bag, Tarp, not safe: traffic")
	w.tap(parts.KindAct, "back")
	first, _ := w.find(parts.KindText, "step")
	w.tap(parts.KindAct, "skip")
	w.tap(parts.KindAct, "later")
	for range 8 { // all the others come before the one that was put off
		p, _ := w.find(parts.KindText, "step")
		if _, rest, _ := strings.Cut(first.Text, ","); strings.Contains(p.Text, rest) {
			return
		}
		w.tap(parts.KindAct, "not-here")
	}
	t.Error("the place put off did not come again")
}

func TestAPieceFoundWhereItWasCountedShortWasNeverMissing(t *testing.T) {
	w := lookAt(t, 153)
	w.tap(parts.KindAct, "found")
	if e := w.last(); e.Verb != model.Count || w.at("R41-023", "unexplained") != 0 || w.at("R41-023", "home") != 2 {
		t.Errorf("%s: %d unexplained, %d in the kit", e.Verb, w.at("R41-023", "unexplained"), w.at("R41-023", "home"))
	}
}

func TestAPieceFoundElsewhereIsOnTheTarp(t *testing.T) {
	w := lookAt(t, 169)
	w.tap(parts.KindAct, "not-here")
	w.tap(parts.KindAct, "found")
	if w.at("R41-023", "unexplained") != 0 || w.at("R41-023", "tarp") != 1 {
		t.Errorf("%d unexplained, %d on the tarp", w.at("R41-023", "unexplained"), w.at("R41-023", "tarp"))
	}
	w.textHas("reply", "Found: 1 spring punch")
	w.textHas("empty", "Nothing is being looked for")
}

func TestTheAgencyThatHasItsSiblingsIsAskedByName(t *testing.T) {
	w := lookAt(t, 153)
	w.tap(parts.KindPiece, "R41-133")
	w.tap(parts.KindAct, "not-here") // counted again; then the odds: what goes along with it went to Medic 9
	w.textHas("step", "Ask Medic 9")
	w.textHas("step", "long backboard 1")
	w.tap(parts.KindAct, "with-someone")
	if e := w.last(); e.Verb != model.Locate || w.at("R41-133", "with:MED9") != 1 {
		t.Errorf("%s to %s, %d there", e.Verb, e.To, w.at("R41-133", "with:MED9"))
	}
}

func TestWithSomeoneAsksWithWhom(t *testing.T) {
	w := lookAt(t, 153)
	w.tap(parts.KindAct, "with-someone")
	if _, ok := w.find(parts.KindRig, "R41"); ok {
		t.Error("its own rig is offered")
	}
	w.tap(parts.KindRig, "E42")
	if w.at("R41-023", "riding:E42") != 1 {
		t.Errorf("%+v", w.last().Reply)
	}
}

func TestHowManyAreFoundIsTypedAndNeverMoreThanAreMissing(t *testing.T) {
	w := lookAt(t, 153)
	w.shell.screens[ScreenLookFor].(*lookforScreen).choose(hunting + " P71-007") // below the fold of the list
	w.tap(parts.KindAct, "not-here")
	w.tap(parts.KindAct, "found")
	before := len(w.board.Picture().Entries)
	w.tap(parts.KindDigit, "done")
	w.tap(parts.KindDigit, "3")
	w.tap(parts.KindDigit, "done")
	if len(w.board.Picture().Entries) != before {
		t.Fatal("a blank or too large a number was logged")
	}
	w.tap(parts.KindDigit, "delete")
	w.tap(parts.KindDigit, "1")
	w.tap(parts.KindDigit, "done")
	if w.at("P71-007", "unexplained") != 1 || w.at("P71-007", "tarp") != 1 {
		t.Errorf("%d unexplained, %d on the tarp", w.at("P71-007", "unexplained"), w.at("P71-007", "tarp"))
	}
}

func TestASearchIsClosedByAnOfficerOfTheOwnerWhoHolds(t *testing.T) {
	w := lookAt(t, 170)
	w.tap(parts.KindAct, "stop-looking")
	w.held("stop-looking", 3*time.Second)
	if w.at("R41-023", "lost") != 0 {
		t.Fatal("closed by nobody")
	}
	for _, p := range w.parts {
		if m := w.board.Picture().State.Dept.Member(p.ID); p.Kind == parts.KindMember && (!m.Officer || m.Agency != "MBFR") {
			t.Errorf("%s is offered", m.Name)
		}
	}
	w.textHas("fact", "Last with Rosalind Quist")
	w.textHas("fact", "Missed 20:45, Hanneke Doyle")
	w.tap(parts.KindMember, "M02")
	w.held("stop-looking", 2900*time.Millisecond)
	if w.at("R41-023", "lost") != 0 {
		t.Fatal("closed before three seconds were over")
	}
	w.held("stop-looking", 3*time.Second)
	if e := w.last(); e.Verb != model.StopLook || e.By != "M02" || w.at("R41-023", "lost") != 1 {
		t.Errorf("%s by %s: %+v", e.Verb, e.By, e.Reply)
	}
	w.textHas("reply", "Given up as lost: 1 spring punch")
}

func TestALostPieceCanStillBeFound(t *testing.T) {
	w := lookAt(t, 180)
	w.tap(parts.KindPiece, "R41-023")
	w.textHas("closed", "Closed 21:42 by Capt Imre Valcourt")
	w.tap(parts.KindAct, "found")
	if w.at("R41-023", "lost") != 0 || w.at("R41-023", "tarp") != 1 {
		t.Errorf("%d lost, %d on the tarp", w.at("R41-023", "lost"), w.at("R41-023", "tarp"))
	}
}

func TestWhoeverLookedSettlesTwoClaims(t *testing.T) {
	w := lookAt(t, 34)
	w.textHas("claims", "V2 or V1?")
	w.tap(parts.KindPlace, "at:V1")
	if w.at("R41-070", "at:V1") != 1 || w.board.Picture().State.LineOf("R41-070").Contest != nil {
		t.Errorf("%+v", w.last().Reply)
	}
	w = lookAt(t, 34)
	w.tap(parts.KindAct, "neither")
	if w.at("R41-070", "unexplained") != 1 {
		t.Errorf("no search was opened: %+v", w.last().Reply)
	}
}

func TestAQuestionAboutAPieceThatIsGoneIsDropped(t *testing.T) {
	w := lookAt(t, 153)
	w.shell.screens[ScreenLookFor].(*lookforScreen).choose(hunting + " P71-007")
	w.tap(parts.KindAct, "with-someone")
	w.tap(parts.KindRig, "R41")
	w.tap(parts.KindDigit, "1")
	if _, err := w.board.Log(board.Tap{Acts: []model.Act{{Verb: model.Found, Item: "P71-007", Quantity: 2, From: "unexplained", To: "tarp"}}}); err != nil {
		t.Fatal(err)
	}
	if _, still := w.find(parts.KindDigit, "done"); still {
		t.Error("still asks how many of a piece that was found")
	}
	w.textHas("piece", "Spring punch")
}

func TestLeaveItOpenChangesNothing(t *testing.T) {
	w := lookAt(t, 169)
	before := len(w.board.Picture().Entries)
	w.tap(parts.KindAct, "leave-open")
	if p, _ := w.find(parts.KindScreen, ScreenTarp); p.State != "here" || len(w.board.Picture().Entries) != before || w.at("R41-023", "unexplained") != 1 {
		t.Error("it was closed, or the screen stayed")
	}
}

// wander touches whatever is there, by chance, and looks at the screen each time.
func wander(t *testing.T, screen string, minute, touches int, check func(w *window)) {
	for i, size := range sizes {
		opt := LookFor(size, i%2 == 0)
		opt.Text = []float32{1, 1.3, 1.6}[i]
		w := demoAt(t, minute, screen, size, opt)
		by := rand.New(rand.NewPCG(7, uint64(i)))
		for k := range touches {
			var can []parts.Part
			for _, p := range w.parts {
				if p.Kind == parts.KindScreen || p.Kind == parts.KindText || p.ID == "leave-open" || p.ID == "to-find" || p.ID == "to-slots" || p.State == "hold" || p.State == "armed" {
					continue
				}
				can = append(can, p)
			}
			if len(can) == 0 {
				w.shell.Go(screen)
				continue
			}
			p := can[by.IntN(len(can))]
			w.tap(p.Kind, p.ID)
			if cuts := parts.Cuts(w.shell.Root()); len(cuts) > 0 {
				t.Fatalf("%v, touch %d of %s %s: cut %q", size, k, p.Kind, p.ID, cuts)
			}
			if bad := w.board.Picture().State.Unbalanced(); len(bad) > 0 {
				t.Fatalf("%v, touch %d of %s %s: the books do not add up", size, k, p.Kind, p.ID)
			}
			for _, q := range w.parts {
				if clipped := q.Kind == parts.KindPiece || q.Kind == parts.KindMember || strings.HasPrefix(q.ID, "stock-") ||
					slices.Contains([]string{"how-many", parts.KindAnswer}, q.ID) || q.Kind == parts.KindAnswer || strings.HasPrefix(q.ID, "read-"); clipped || q.Kind == parts.KindText {
					continue // what scrolls is listed by what of it shows
				}
				if least := int(look.U(look.Floor)) - 1; q.H < least || q.W < least {
					t.Fatalf("%v: %s %s is %dx%d", size, q.Kind, q.ID, q.W, q.H)
				}
			}
			check(w)
		}
	}
}

func TestNoTouchOfLookForItUnbalancesTheBooksOrHidesTheHazard(t *testing.T) {
	for _, minute := range []int{34, 153} {
		t.Run(fmt.Sprint(minute), func(t *testing.T) {
			wander(t, ScreenLookFor, minute, 150, func(w *window) {
				if !strings.Contains(w.text("alert"), "power lines") {
					t.Fatal("the hazard line is not on screen")
				}
			})
		})
	}
}
