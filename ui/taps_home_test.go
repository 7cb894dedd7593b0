package ui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// How the way home is counted. "At its slot" is counted as whoever loads does
// it: he stands at the door, and the piece is the next that goes in, or the
// slot is in view. "From the Tarp at rest" begins with the Tarp and nothing
// picked, and counts finding the piece as well.

// off puts pieces onto the tarp, not by touch, and before them what closes
// their slot; used were at a vehicle and came back.
func (f *finger) off(item string, used bool) {
	f.t.Helper()
	if f.countAt(item, "home") == 0 {
		return // it stood before another one
	}
	for _, closer := range f.shell.now().closedBy(f.shell.now().d.ItemIndex(item)) {
		f.off(closer, false)
	}
	k := f.shell.now().d.Item(item).Quantity
	acts := []model.Act{{Verb: model.PullOff, Item: item, Quantity: k, From: "home", To: "tarp"}}
	if used {
		acts = append(acts, model.Act{Verb: model.Hand, Item: item, Quantity: k, From: "tarp", To: "at:V1"}, model.Act{Verb: model.Return, Item: item, Quantity: k, From: "at:V1", To: "tarp"})
	}
	for _, a := range acts {
		f.shell.log(board.Tap{Acts: []model.Act{a}})
	}
	if f.countAt(item, "tarp") != k {
		f.t.Fatalf("%d of %d %s are on the tarp: %s", f.countAt(item, "tarp"), k, item, f.text("reply"))
	}
}

// passing answers what Load up asks of the piece in hand so that it passes, and
// puts it in; it returns the figures that had to be typed.
func (f *finger) passing(item string) (figures int) {
	f.t.Helper()
	it := f.shell.now().d.Item(item)
	for range 6 {
		if f.countAt(item, "home") == it.Quantity {
			return figures
		}
		if _, pad := f.find(parts.KindDigit, "done"); pad {
			n := f.shell.now()
			check := f.shell.screens[ScreenLoadUp].(*loadupScreen).st.pad
			figure := "50"
			if a, ok := it.Ask(check); ok && a.HasLimit {
				figure = strconv.Itoa(int(a.Limit + 0.99))
			}
			if c := n.d.Check(check); c == nil || !c.Number {
				f.t.Fatalf("%s: the pad asks for %q", item, check)
			}
			for _, d := range figure {
				f.press(parts.KindDigit, string(d))
			}
			figures += len(figure)
			f.press(parts.KindDigit, "done")
			continue
		}
		f.press(parts.KindAct, "stow")
	}
	f.t.Fatalf("%s does not go in: %q, %s", item, f.text("piece"), f.text("refused"))
	return 0
}

// allIn puts what else is on the tarp back, not by touch.
func (f *finger) allIn() {
	n := f.shell.now()
	for i := range n.d.Items {
		if id := n.d.Items[i].ID; f.countAt(id, "tarp") > 0 {
			f.home(id, "tarp")
		}
	}
}

// asked is how many checks a line has, and how many of them are numbers.
func asked(w *window, item string) (checks, numbers int) {
	for _, a := range w.shell.now().d.Item(item).Checks {
		checks++
		if c := w.shell.now().d.Check(a.Check); c != nil && c.Number {
			numbers++
		}
	}
	return checks, numbers
}

func TestAPieceThatWasStagedAndNotUsedGoesHomeInTwoTouchesFromTheTarpAtRest(t *testing.T) {
	for _, g := range touchGlasses {
		w := demoAt(t, 8, ScreenTarp, g.size, look.Options{})
		f := &finger{window: w}
		var alone, full []int
		lines := drawn(anyOf(w), 40)
		for _, item := range lines {
			f.off(item, false)
			alone = append(alone, f.sent(item, "home"))
			if e := w.newest(); e.Verb != model.Stow || e.Reading != "" && e.Reading != model.WordUnused {
				t.Errorf("%s goes home as %+v", item, e.Act)
			}
		}
		for _, item := range lines {
			f.off(item, false)
		}
		for _, item := range lines {
			full = append(full, f.sent(item, "home"))
		}
		within(t, fmt.Sprintf("%g, unused, alone on the tarp", g.size.Width), alone, 2, 2)
		within(t, fmt.Sprintf("%g, unused, one of forty on the tarp", g.size.Width), full, 2, 4)
	}
}

func TestAtItsSlotAPieceThatWasNotUsedGoesInWithOneTouchAndTheNextComesUp(t *testing.T) {
	w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
	f := &finger{window: w}
	lines := drawn(anyOf(w), 40)
	for _, item := range lines {
		f.off(item, false)
	}
	w.shell.Go(ScreenLoadUp)
	var n []int
	for range len(lines) {
		f.n = 0
		st := &w.shell.screens[ScreenLoadUp].(*loadupScreen).st
		if _, ok := w.shell.now().inHand(st); !ok {
			f.press(parts.KindAct, "next-door") // a walk, and the key says where to
			f.n = 0
		}
		p, ok := w.shell.now().inHand(st)
		if !ok {
			t.Fatalf("after %d lines nothing comes up: %s", len(n), w.text("piece"))
		}
		item := p.item.ID
		if _, unused := f.find(parts.KindAct, "unused"); unused {
			f.press(parts.KindAct, "unused")
		} else if checks, _ := asked(w, item); checks == 0 {
			f.press(parts.KindAct, "stow")
		}
		if f.countAt(item, "home") != w.shell.now().d.Item(item).Quantity {
			t.Fatalf("%s is not in after %d touches: %s", item, f.n, w.text("piece"))
		}
		n = append(n, f.n)
	}
	within(t, "unused, next at its door", n, 1, 1)
}

func TestAUsedPieceIsLookedAtAndGoesInWithinFourTouches(t *testing.T) {
	for _, g := range touchGlasses {
		t.Run(fmt.Sprint(g.size.Width), func(t *testing.T) { usedGoesIn(t, g.size) })
	}
}

func usedGoesIn(t *testing.T, size fyne.Size) {
	w := demoAt(t, 8, ScreenTarp, size, look.Options{})
	f := &finger{window: w}
	var rest, slot, figure, number []int
	for _, item := range drawn(anyOf(w), 40) {
		checks, numbers := asked(w, item)
		if checks == 0 {
			continue // it goes in at once, used or not
		}
		f.off(item, true)
		f.rest(f.shell.tarp().shown)
		if f.paged(item, 0) < 0 {
			t.Fatalf("%s is not on the tarp", item)
		}
		p, _ := f.tile(item)
		f.touch(p)
		f.press(parts.KindPlace, "home")
		found := f.n
		if got := w.text("piece"); w.shell.here != ScreenLoadUp || !strings.Contains(got, w.shell.now().d.Item(item).Short()) && numbers == 0 {
			t.Fatalf("%s is not in hand on Load up: %q", item, got)
		}
		typed := f.passing(item)
		f.allIn()
		if numbers > 0 {
			figure, number = append(figure, f.n-found-typed), append(number, f.n-found)
			continue
		}
		rest, slot = append(rest, f.n), append(slot, f.n-found)
	}
	within(t, "used, from the Tarp at rest", rest, 3, 3)
	within(t, "used, at its slot", slot, 1, 2)
	within(t, "used, with a number to read, at its slot", number, 3, 4)
	within(t, "used, with a number to read: beside its digits", figure, 2, 2)
	if len(rest) < 10 || len(figure) == 0 {
		t.Errorf("%d lines and %d with a number are too few", len(rest), len(figure))
	}
}

// walkTo goes to a door; those of a side that is drawn small are a touch on the
// side further.
func (f *finger) walkTo(door string) {
	f.t.Helper()
	for _, side := range f.parts {
		if _, ok := f.find(parts.KindDoor, door); !ok && side.Kind == parts.KindDoor && side.State == "side" {
			f.touch(side)
		}
	}
	f.press(parts.KindDoor, door)
}

// inView drags the shelves up until a slot is in view.
func (f *finger) inView(item string) {
	f.t.Helper()
	for range 8 {
		if _, ok := f.find(parts.KindSlot, item); ok {
			return
		}
		i := slices.IndexFunc(f.parts, func(p parts.Part) bool { return p.Kind == parts.KindSlot })
		if i < 0 {
			break
		}
		p := f.parts[i]
		test.Drag(f.win.Canvas(), fyne.NewPos(float32(p.X+p.W/2), float32(p.Y+p.H/2)), 0, -80)
		f.shell.Refresh()
		f.parts = parts.CollectIn(f.shell.Root(), f.shell.Root().Size())
	}
	f.t.Fatalf("no slot of %s", item)
}

func TestACountAtItsSlotIsTheSlotItsFigureAndDone(t *testing.T) {
	w := demoAt(t, 8, ScreenLoadUp, glass1280, look.Options{})
	f := &finger{window: w}
	lines := slices.DeleteFunc(anyOf(w), func(item string) bool { return w.shell.now().d.Item(item).Quantity < 2 })
	var n, rest []int
	for _, item := range drawn(lines, 25) {
		it := w.shell.now().d.Item(item)
		f.rest(f.shell.tarp().shown)
		f.press(parts.KindScreen, ScreenLoadUp)
		f.walkTo(w.shell.now().doorID("R41", doorOf(w.shell.now().d.Slot(it.Slot))))
		f.press(parts.KindAct, "sweep")
		f.inView(item)
		there := f.n
		f.press(parts.KindSlot, item)
		for _, d := range strconv.Itoa(it.Quantity) {
			f.press(parts.KindDigit, string(d))
		}
		f.press(parts.KindDigit, "done")
		if e := w.newest(); e.Verb != model.Count || e.Item != item || e.Quantity != it.Quantity {
			t.Fatalf("%s: logged %+v", item, e.Act)
		}
		n, rest = append(n, f.n-there), append(rest, f.n)
	}
	within(t, "counted, at its slot", n, 3, 4)
	within(t, "counted, with the way from the Tarp at rest to its door", rest, 6, 8)
}
