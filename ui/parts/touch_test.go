package parts

import (
	"fmt"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"tarpside/ui/look"
)

// open shows an object in a window without a display, in our theme.
func open(t testing.TB, o fyne.CanvasObject, w, h float32) fyne.Window {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(func() { test.NewApp() })
	app.Settings().SetTheme(look.New(look.Options{}))
	win := app.NewWindow("")
	win.SetPadded(false)
	win.SetContent(o)
	win.Resize(fyne.NewSize(w, h))
	return win
}

// finger does what the window does for a press that moves: the draggable
// under the press gets each step, and then the end.
func finger(c fyne.Canvas, at fyne.Position, dx, dy float32) {
	if dx == 0 && dy == 0 {
		test.TapCanvas(c, at)
		return
	}
	const step = 4
	var o fyne.CanvasObject
	walk(c.Content(), fyne.Position{}, rectOf(fyne.Position{}, c.Size()), func(found fyne.CanvasObject, seen rect) {
		if _, ok := found.(fyne.Draggable); ok && seen.has(at.X, at.Y) {
			o = found
		}
	})
	if o == nil {
		return
	}
	m, pressed := o.(desktop.Mouseable)
	if pressed {
		m.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at.Subtract(o.Position())}})
	}
	d := o.(fyne.Draggable)
	for done := float32(0); done < 1; {
		part := min(1-done, step/max(abs(dx), abs(dy)))
		done += part
		d.Dragged(&fyne.DragEvent{
			PointEvent: fyne.PointEvent{Position: at.Subtract(o.Position()).AddXY(dx*done, dy*done)},
			Dragged:    fyne.NewDelta(dx*part, dy*part),
		})
	}
	if pressed {
		m.MouseUp(&desktop.MouseEvent{})
	}
	d.DragEnd()
}

func TestAWanderingFingerTapsUpToTwelvePixelsAndScrollsBeyond(t *testing.T) {
	for _, c := range []struct {
		dx, dy float32
		taps   int
	}{
		{0, 0, 1}, {3, 0, 1}, {0, -3, 1}, {8, 0, 1}, {0, 8, 1}, {0, -12, 1}, {12, 0, 1}, {8, 8, 1},
		{0, -13, 0}, {9, -9, 0}, {0, -40, 0}, {3, -120, 0},
	} {
		t.Run(fmt.Sprintf("%v,%v", c.dx, c.dy), func(t *testing.T) {
			taps := 0
			var keys []fyne.CanvasObject
			for i := range 20 {
				keys = append(keys, NewKey(KeyView{ID: fmt.Sprint(i), Title: fmt.Sprint(i)}, func() { taps++ }))
			}
			s := NewScroller(NewColumn(look.Gap, keys...))
			win := open(t, container.NewStack(s), 300, 400)
			finger(win.Canvas(), fyne.NewPos(150, 150), c.dx, c.dy)
			if taps != c.taps {
				t.Errorf("%d taps, want %d", taps, c.taps)
			}
			if moved := s.Offset() != 0; moved != (c.taps == 0) {
				t.Errorf("scrolled to %v", s.Offset())
			}
			if c.taps == 0 && abs(s.Offset()+c.dy) > 1 {
				t.Errorf("scrolled %v for a drag of %v", s.Offset(), c.dy)
			}
		})
	}
}

func TestADragBetweenTilesScrollsThem(t *testing.T) {
	tiles := NewTiles(nil)
	win := open(t, container.NewStack(tiles), 920, 400)
	tiles.Set(manyTiles(300))
	finger(win.Canvas(), fyne.NewPos(look.U(Bleed)+look.U(look.TileW)+30, 130), 0, -200)
	finger(win.Canvas(), fyne.NewPos(910, 300), 0, -100)
	if tiles.Offset() < 250 {
		t.Errorf("two drags of 300 px scrolled %v", tiles.Offset())
	}
}

func TestADragThatHasNothingToScrollIsATapIfItEndsOnThePart(t *testing.T) {
	taps := 0
	k := NewKey(KeyView{ID: "a", Title: "a"}, func() { taps++ })
	k.Resize(fyne.NewSize(118, 118))
	win := open(t, container.NewWithoutLayout(k), 400, 400)
	finger(win.Canvas(), fyne.NewPos(50, 50), 30, 10)
	if taps != 1 {
		t.Errorf("%d taps for a finger that slid 32 px on a key of 118", taps)
	}
	finger(win.Canvas(), fyne.NewPos(50, 50), 200, 0)
	if taps != 1 {
		t.Error("a finger that slid off the key pressed it")
	}
}

func TestATapInTheGapGoesToTheNearestTile(t *testing.T) {
	var got []string
	tiles := NewTiles(func(v TileView) { got = append(got, v.ID) })
	win := open(t, container.NewStack(tiles), 920, 400)
	tiles.Set(manyTiles(40))
	second := tiles.Inside()[1]
	x := second.Position().X
	test.TapCanvas(win.Canvas(), fyne.NewPos(x-2, 50))
	test.TapCanvas(win.Canvas(), fyne.NewPos(x-6, 50))
	if fmt.Sprint(got) != "[1 0]" {
		t.Errorf("taps in the gap went to %v, want [1 0]", got)
	}
}

func TestAPartThatIsOffRefusesAndSaysSo(t *testing.T) {
	taps, refused := 0, 0
	k := NewKey(KeyView{ID: "a", Title: "All the rest is here", Off: true}, func() { taps++ })
	k.OnRefused = func() { refused++ }
	k.Tapped(nil)
	if taps != 0 || refused != 1 || k.Part().State != "off" {
		t.Errorf("taps %d, refused %d, state %q", taps, refused, k.Part().State)
	}
	k.Set(KeyView{ID: "a", Title: "All the rest is here"})
	k.Tapped(nil)
	if taps != 1 {
		t.Error("a key that is on again must act")
	}
}

func TestNoPartTakesTheKeyboardFocusOrWaitsForASecondTap(t *testing.T) {
	open(t, container.NewWithoutLayout(), 100, 100)
	for _, s := range Stories() {
		walk(s.Build(), fyne.Position{}, rectOf(fyne.Position{}, s.Size), func(o fyne.CanvasObject, _ rect) {
			if _, ok := o.(fyne.Focusable); ok {
				t.Errorf("%s: %T can be focused", s.Name, o)
			}
			if _, ok := o.(fyne.DoubleTappable); ok {
				t.Errorf("%s: %T delays every tap", s.Name, o)
			}
		})
	}
}

// beats is a clock that a test moves on by hand.
type beats struct {
	ticks []func(time.Duration)
	since []time.Duration
}

func (b *beats) clock(tick func(time.Duration)) func() {
	i := len(b.ticks)
	b.ticks, b.since = append(b.ticks, tick), append(b.since, 0)
	return func() { b.ticks[i] = nil }
}

func (b *beats) pass(d time.Duration) {
	const step = 40 * time.Millisecond
	for ; d > 0; d -= step {
		for i := range b.ticks {
			if tick := b.ticks[i]; tick != nil {
				b.since[i] += step
				tick(b.since[i])
			}
		}
	}
}

func holding(t *testing.T, v HoldView) (h *HoldKey, b *beats, done *int) {
	t.Helper()
	b, done = &beats{}, new(int)
	h = NewHoldKey(v, func() { *done++ })
	h.Clock = b.clock
	h.Resize(fyne.NewSize(760, 92))
	win := open(t, container.NewWithoutLayout(h), 800, 100)
	_ = win
	return h, b, done
}

var press = &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(100, 40)}}

func TestAHoldSignsAfterItsSecondsAndNotBefore(t *testing.T) {
	h, b, done := holding(t, HoldView{ID: "sign", Title: "Hold", Sure: "Sign"})
	h.MouseDown(press)
	b.pass(1900 * time.Millisecond)
	if *done != 0 {
		t.Fatal("signed early")
	}
	b.pass(200 * time.Millisecond)
	if *done != 1 {
		t.Fatal("not signed after two seconds")
	}
	h.MouseUp(press)
	h.Tapped(nil)
	b.pass(10 * time.Second)
	if *done != 1 || h.Armed() {
		t.Errorf("signed %d times, armed %v after letting go", *done, h.Armed())
	}
}

func TestLettingGoOfAHoldStopsIt(t *testing.T) {
	h, b, done := holding(t, HoldView{ID: "sign", Title: "Hold", Sure: "Sign"})
	h.MouseDown(press)
	b.pass(1500 * time.Millisecond)
	h.MouseUp(press)
	h.Tapped(nil)
	b.pass(5 * time.Second)
	if *done != 0 || h.Armed() {
		t.Errorf("signed %d, armed %v after a hold that was let go", *done, h.Armed())
	}
}

func TestASlidingFingerLetsGoOfAHold(t *testing.T) {
	h, b, done := holding(t, HoldView{ID: "sign", Title: "Hold", Sure: "Sign"})
	h.MouseDown(press)
	b.pass(time.Second)
	h.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(30, 0)})
	b.pass(3 * time.Second)
	h.MouseUp(press)
	h.DragEnd()
	if *done != 0 || h.Armed() {
		t.Errorf("signed %d, armed %v", *done, h.Armed())
	}
}

func TestTwoTapsInTwoPlacesSignAsWell(t *testing.T) {
	h, b, done := holding(t, HoldView{ID: "sign", Title: "Hold", Sure: "Sign"})
	h.MouseDown(press)
	b.pass(80 * time.Millisecond)
	h.MouseUp(press)
	h.Tapped(nil)
	if *done != 0 || !h.Armed() {
		t.Fatalf("after one tap: signed %d, armed %v", *done, h.Armed())
	}
	sure := h.Inside()[0]
	if rectOf(sure.Position(), sure.Size()).has(100, 40) {
		t.Error("the second key came up under the finger")
	}
	if w := sure.Size().Width; w < look.Floor {
		t.Errorf("the second key is %v px wide", w)
	}
	sure.(*Key).Tapped(nil)
	if *done != 1 || h.Armed() {
		t.Errorf("after the second tap: signed %d, armed %v", *done, h.Armed())
	}
}

func TestTheSecondKeyOfAHoldGoesAwayByItself(t *testing.T) {
	h, b, done := holding(t, HoldView{ID: "sign", Title: "Hold", Sure: "Sign"})
	h.MouseDown(press)
	h.MouseUp(press)
	h.Tapped(nil)
	b.pass(9 * time.Second)
	if h.Armed() || len(h.Inside()) != 0 || *done != 0 {
		t.Errorf("armed %v, signed %d after nine seconds", h.Armed(), *done)
	}
}

func TestAHoldThatWasBegunDoesNotSignForAnotherThing(t *testing.T) {
	h, b, done := holding(t, HoldView{ID: "sign", Title: "Hold to sign for Engine 42", Sure: "Sign"})
	h.MouseDown(press)
	b.pass(1900 * time.Millisecond)
	h.Disarm()
	h.Set(HoldView{ID: "sign", Title: "Hold to sign for Rescue 41", Sure: "Sign"})
	b.pass(5 * time.Second)
	h.MouseUp(press)
	h.Tapped(nil)
	if *done != 0 || h.Armed() {
		t.Fatalf("signed %d, armed %v by the hold for the other", *done, h.Armed())
	}
	h.MouseDown(press)
	h.MouseUp(press)
	h.Tapped(nil)
	if !h.Armed() {
		t.Fatal("the key is dead afterwards")
	}
	h.Disarm()
	if h.Armed() || len(h.Inside()) != 0 || *done != 0 {
		t.Errorf("armed %v, signed %d after the second key was taken away", h.Armed(), *done)
	}
}

func TestAHoldKeyThatIsOffDoesNothing(t *testing.T) {
	h, b, done := holding(t, HoldView{ID: "sign", Title: "Hold", Sure: "Sign", Off: true})
	h.MouseDown(press)
	b.pass(5 * time.Second)
	h.MouseUp(press)
	h.Tapped(nil)
	if *done != 0 || h.Armed() {
		t.Errorf("signed %d, armed %v", *done, h.Armed())
	}
}

func TestTheCursorWalksTheKeysAndReturnPressesOne(t *testing.T) {
	var got []string
	d := NewDigitPad(func(id string) { got = append(got, id) })
	win := open(t, container.NewStack(d), 300, 400)
	c := NewCursor(win.Canvas())
	if c.Key(fyne.KeyReturn) {
		t.Error("Return was used before the cursor was anywhere")
	}
	for _, k := range []fyne.KeyName{fyne.KeyDown, fyne.KeyReturn, fyne.KeyRight, fyne.KeyReturn, fyne.KeyDown, fyne.KeyReturn, fyne.KeyLeft, fyne.KeyReturn} {
		if !c.Key(k) {
			t.Errorf("%s was not used", k)
		}
	}
	if fmt.Sprint(got) != "[1 2 5 4]" {
		t.Errorf("pressed %v, want [1 2 5 4]", got)
	}
}

func TestTheKeyIsHeldStillWhileItsSecondKeyIsUp(t *testing.T) {
	h, b, done := holding(t, HoldView{ID: "unlock", Title: "Hold to unlock", Sure: "Unlock"})
	tap := func() {
		h.MouseDown(press)
		b.pass(100 * time.Millisecond)
		h.MouseUp(press)
		h.Tapped(nil)
	}
	tap()
	if !h.Armed() {
		t.Fatal("a tap did not bring the second key up")
	}
	h.MouseDown(press)
	b.pass(1500 * time.Millisecond)
	h.MouseUp(press)
	h.Tapped(nil)
	if *done != 0 || !h.Armed() {
		t.Fatalf("let go too soon: done %d, armed %v", *done, h.Armed())
	}
	h.MouseDown(press)
	b.pass(2100 * time.Millisecond)
	h.MouseUp(press)
	h.Tapped(nil)
	if *done != 1 || h.Armed() {
		t.Fatalf("held for two seconds: done %d, armed %v", *done, h.Armed())
	}
	tap()
	tap()
	if h.Armed() || *done != 1 {
		t.Errorf("a second tap does not put the second key away: done %d, armed %v", *done, h.Armed())
	}
}
