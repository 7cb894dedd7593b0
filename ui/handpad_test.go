package ui

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// The crib blocks: 36 of them live behind L3.
const manyBlocks = "R41-056"

// manyPicked opens the demo with the crib blocks picked behind their door.
func manyPicked(t *testing.T, size fyne.Size, text float32) *finger {
	t.Helper()
	opt := LookFor(size, true)
	opt.Text = text
	f := &finger{window: demoAt(t, 8, ScreenTarp, size, opt)}
	f.press(parts.KindRig, "R41")
	f.press(parts.KindAct, "door-L3")
	f.press(parts.KindPiece, manyBlocks)
	f.n = 0
	return f
}

// Each number there is, at each size of the glass and of the text: set and
// sent, with the handfuls still there.
func TestAnyNumberOfACountedLineIsSetInTwoToFourTouches(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 1024, Height: 768}, glass1280, {Width: 1920, Height: 1200}} {
		for _, text := range []float32{1, 1.3, 1.6} {
			f := manyPicked(t, size, text)
			for _, k := range []int{2, 4, 8, 12, 36} {
				p, ok := f.find(parts.KindQuantity, fmt.Sprint(k))
				if least := int(look.U(look.Floor)) - 1; !ok || p.W < least || p.H < least {
					t.Errorf("%v, text %.1f: the key for %d is %dx%d", size, text, k, p.W, p.H)
				}
			}
			for _, k := range []int{1, 3, 15, 35} {
				f.n = 0
				f.press(parts.KindQuantity, "number")
				for _, d := range fmt.Sprint(k) {
					f.press(parts.KindDigit, string(d))
				}
				f.press(parts.KindDigit, "done")
				p, _ := f.find(parts.KindQuantity, "number")
				if f.n < 2 || f.n > 4 || p.State != "set" || !strings.HasPrefix(p.Text, fmt.Sprint(k)) {
					t.Errorf("%v, text %.1f: %d is set in %d touches, and its key says %q, %s", size, text, k, f.n, p.Text, p.State)
				}
			}
			f.press(parts.KindPlace, "at:V1")
			if e := f.newest(); e.Verb != model.Direct || e.Quantity != 35 || f.countAt(manyBlocks, "at:V1") != 35 {
				t.Errorf("%v, text %.1f: logged %s of %d", size, text, e.Verb, e.Quantity)
			}
		}
	}
}

func TestANumberThatIsTypedGoesWithTheTouchOnThePlace(t *testing.T) {
	f := manyPicked(t, glass1280, 1)
	f.press(parts.KindQuantity, "number")
	f.press(parts.KindDigit, "7")
	f.press(parts.KindPlace, "tarp")
	if f.countAt(manyBlocks, "tarp") != 7 || f.n != 3 {
		t.Errorf("%d are on the tarp after %d touches", f.countAt(manyBlocks, "tarp"), f.n)
	}
	if _, ok := f.find(parts.KindDigit, "7"); ok {
		t.Error("the pad stays")
	}
}

func TestMoreThanAreHereCannotBeSent(t *testing.T) {
	for _, typed := range []string{"37", "99", "0", "360"} {
		f := manyPicked(t, glass1280, 1)
		before := f.entries()
		f.press(parts.KindQuantity, "number")
		for _, d := range typed {
			f.press(parts.KindDigit, string(d))
		}
		if got := f.text("number-words"); !strings.Contains(got, "36 are here") {
			t.Errorf("%s: the pad says %q", typed, got)
		}
		for _, to := range []string{"tarp", "at:V1"} {
			if p, _ := f.find(parts.KindPlace, to); p.State != string(parts.PlaceShut) {
				t.Errorf("%s: %s is %q", typed, to, p.State)
			}
			f.press(parts.KindPlace, to)
		}
		f.press(parts.KindDigit, "done")
		if f.entries() != before || f.text("number") != typed {
			t.Errorf("%s: something was logged, or the pad is gone", typed)
		}
		for range typed {
			f.press(parts.KindDigit, "delete")
		}
		f.press(parts.KindDigit, "6")
		f.press(parts.KindPlace, "tarp")
		if f.countAt(manyBlocks, "tarp") != 6 {
			t.Errorf("put right, %d are on the tarp", f.countAt(manyBlocks, "tarp"))
		}
	}
}

func TestTheKeyboardTypesTheNumber(t *testing.T) {
	f := manyPicked(t, glass1280, 1)
	f.press(parts.KindQuantity, "number")
	f.shell.Listen(f.win.Canvas())
	f.shell.keys.write("11")
	f.parts = parts.CollectIn(f.shell.Root(), f.shell.Root().Size())
	if got := f.text("number"); got != "11" {
		t.Errorf("typed: %q", got)
	}
}

func TestWhatIsPickedSaysWhoseItIsWhereAnotherRigHasOneOfThatName(t *testing.T) {
	padded := 0
	for i, size := range []fyne.Size{glass1024, glass1280} {
		w := demoAt(t, 60, ScreenTarp, size, LookFor(size, false))
		pick := func(item, rig string) string {
			w.shell.openFind()
			for _, r := range strings.ToLower(w.shell.now().d.Item(item).Short()) {
				w.shell.tarp().find.typed(string(r))
			}
			w.tap(parts.KindPiece, w.tileOf(item))
			said := w.text("picked")
			if cut := parts.Cuts(w.shell.Root()); len(cut) > 0 {
				t.Errorf("%v: cut %q", size, cut)
			}
			if _, ok := w.find(parts.KindQuantity, "number"); ok {
				w.tap(parts.KindQuantity, "number")
				padded++
				if got := w.text("number-words"); !strings.Contains(got, "of "+rig) {
					t.Errorf("%v: the pad says %q", size, got)
				}
			}
			w.tap(parts.KindAct, "drop")
			return said
		}
		for item, rig := range map[string]string{"R41-123": "Rescue 41", "E42-045": "Engine 42"} {
			if said := pick(item, rig); !strings.Contains(said, "Tourniquet of "+rig) {
				t.Errorf("%v: %s picked says %q", size, item, said)
			}
		}
		if pick(manyBlocks, "Rescue 41"); padded != i+1 {
			t.Errorf("%v: no number could be typed for the crib blocks", size)
		}
		if said := pick("R41-001", ""); strings.Contains(said, "of Rescue") {
			t.Errorf("%v: the only battery spreader here is named with its rig: %q", size, said)
		}
	}
}

// tileOf is the id of the tile of an item that is on screen.
func (w *window) tileOf(item string) string {
	for _, p := range w.parts {
		if p.Kind == parts.KindPiece && (p.ID == item || strings.HasPrefix(p.ID, item+"@")) {
			return p.ID
		}
	}
	w.t.Fatalf("no tile of %s", item)
	return ""
}
