package parts

import (
	"fmt"
	"math"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tarpside/ui/look"
)

// HoldView is a key that is held until its ring is full.
type HoldView struct {
	ID      string
	Title   string   // "Hold to sign"
	Second  string   // who, and what has not been looked at
	Sure    string   // word of the second key, for those who cannot hold: "Sign"
	Mark    MarkView // of the rig that it is about
	Seconds float32  // nought means 2
	Tone    Tone
	Role    look.Role // of the title; nought chooses by size
	Off     bool
}

// HoldKey signs, closes a search, unlocks. It is held while a ring fills, and
// letting go stops it. Whoever cannot hold still taps it once and then taps
// the second key, which comes up at the other end of it; that one goes away
// by itself.
type HoldKey struct {
	Touch
	// OnDone is called once, when the ring is full or the second key touched.
	OnDone func()
	// Clock calls tick with the time since the call until stop is called. It
	// is there to be replaced in tests; tick must come on the window's thread.
	Clock func(tick func(since time.Duration)) (stop func())

	view    HoldView
	sure    *Key
	stop    func()
	held    time.Duration
	armed   bool
	atRight bool // where the second key comes up
	spent   bool // this press is over: done, or let go too late for a tap
}

const (
	armedFor = 8 * time.Second
	longTap  = 600 * time.Millisecond // a longer press was a hold that was let go
	ringStep = 40                     // pictures of the ring between empty and full
)

// NewHoldKey makes a hold key.
func NewHoldKey(view HoldView, onDone func()) *HoldKey {
	h := &HoldKey{OnDone: onDone, Clock: Beat}
	h.OnTap = h.tapped
	h.sure = NewKey(KeyView{}, h.done)
	h.touch(h, look.Floor, look.Floor, h.paintHold)
	h.take(view)
	return h
}

// Set shows another view. A hold that has begun goes on.
func (h *HoldKey) Set(view HoldView) {
	if h.view != view {
		h.take(view)
		h.Refresh()
	}
}

func (h *HoldKey) take(v HoldView) {
	h.view, h.off = v, v.Off
	h.part = Part{Kind: KindAct, ID: v.ID, Text: join(v.Title, v.Second)}
	h.tell()
}

// tell lists the state of the key and of its second key.
func (h *HoldKey) tell() {
	h.part.State, h.kids = "hold", nil
	const sureRole = look.Group
	if h.off {
		h.part.State = "off"
	}
	if h.armed {
		h.part.State = "armed"
		h.kids = []fyne.CanvasObject{h.sure}
		h.sure.Set(KeyView{ID: h.view.ID + "-sure", Title: h.view.Sure, Icon: "tick", Tone: Filled, Role: sureRole})
	}
}

// Disarm takes the second key away, and stops a hold: what the key is about
// has become another thing.
func (h *HoldKey) Disarm() {
	h.spent = h.spent || h.stop != nil && !h.armed
	h.arm(false)
}

// Armed says whether the second key is up.
func (h *HoldKey) Armed() bool { return h.armed }

// Activate does what a tap does, for whoever has no finger to hold with: it
// brings the second key up.
func (h *HoldKey) Activate() {
	h.spent = false
	h.Touch.Activate()
}

// MouseDown begins to fill the ring.
func (h *HoldKey) MouseDown(e *desktop.MouseEvent) {
	h.Touch.MouseDown(e)
	h.spent, h.held = false, 0
	if h.off {
		return
	}
	h.run(func(since time.Duration) {
		h.held = since
		if since >= h.needs() {
			h.spent = true
			h.done()
			return
		}
		h.Refresh()
	})
}

// MouseUp lets go.
func (h *HoldKey) MouseUp(e *desktop.MouseEvent) {
	h.Touch.MouseUp(e)
	h.spent = h.spent || h.held > longTap
	h.letGo()
}

// Dragged lets go when the finger leaves for good.
func (h *HoldKey) Dragged(e *fyne.DragEvent) {
	h.Touch.Dragged(e)
	if h.past {
		h.spent = true
		h.letGo()
	}
}

func (h *HoldKey) needs() time.Duration {
	s := h.view.Seconds
	if s == 0 {
		s = 2
	}
	return time.Duration(s * float32(time.Second))
}

func (h *HoldKey) run(tick func(time.Duration)) {
	h.halt()
	h.stop = h.Clock(tick)
}

func (h *HoldKey) halt() {
	if h.stop != nil {
		h.stop()
		h.stop = nil
	}
}

// letGo empties the ring. The second key, if it is up, has its seconds again.
func (h *HoldKey) letGo() {
	h.halt()
	if h.armed {
		h.arm(true)
		return
	}
	if h.held != 0 {
		h.held = 0
		h.Refresh()
	}
}

// tapped brings the second key up, or takes it away again.
func (h *HoldKey) tapped() {
	if h.spent || h.view.Sure == "" {
		return
	}
	h.atRight = h.start.X < h.Size().Width/2
	h.arm(!h.armed)
}

func (h *HoldKey) arm(on bool) {
	h.halt()
	h.armed, h.held = on, 0
	if on {
		h.run(func(since time.Duration) {
			if since >= armedFor {
				h.arm(false)
			}
		})
	}
	h.tell()
	h.Refresh()
}

func (h *HoldKey) done() {
	h.halt()
	h.armed, h.held = false, 0
	h.tell()
	h.press(false)
	h.Refresh()
	if h.OnDone != nil {
		h.OnDone()
	}
}

func (h *HoldKey) paintHold(p *Pen, size fyne.Size) {
	v := h.view
	x, w := float32(0), size.Width
	t := v.Tone.tint()
	if v.Off {
		t = Hole.tint()
	}
	if h.armed {
		t = Live.tint()
		x, w = h.placeSure(size)
	}
	radius := look.U(look.RadiusKey)
	p.Rect(x, 0, w, size.Height, t.ground, t.edge, look.U(t.width), radius)
	side := min(look.U(48), size.Height*0.5)
	in := look.U(24)
	if w < look.U(320) {
		in = look.U(12)
	}
	text := x + in + side + in
	if w < look.U(220) {
		text = x + in
		side = 0
	}
	if side > 0 {
		ring(p, float32(h.held)/float32(h.needs()), t.icon, x+in, (size.Height-side)/2, side)
	} else if h.held > 0 {
		done := float32(h.held) / float32(h.needs())
		p.Fill(look.U(10), size.Height-look.U(12), (size.Width-look.U(20))*done, look.U(8), look.Accent)
	}
	role := v.Role
	if role == 0 {
		role = look.Title
		if w < look.U(320) {
			role = look.Group
		}
	}
	if side > 0 && v.Mark != (MarkView{}) {
		text += p.Mark(v.Mark, text-in/2, (size.Height-side)/2, side)
	}
	tw := x + w - text - look.U(12)
	align := fyne.TextAlignLeading
	if side == 0 {
		align = fyne.TextAlignCenter
	}
	sub := look.Body
	if w < look.U(320) {
		sub = look.Small
	}
	title, second := p.Pair(v.Title, Ink{Role: role, Color: t.text, Align: align},
		v.Second, Ink{Role: sub, Color: t.second, Align: align}, tw, size.Height-look.U(12))
	if h.armed && second.cut { // the second key says what matters now
		title, second = p.Pair(v.Title, Ink{Role: role, Color: t.text, Align: align}, "", Ink{}, tw, size.Height-look.U(12))
	}
	p.Stack(text, 0, tw, size.Height, title, second)
}

// placeSure puts the second key at the end away from where the finger was and
// returns what is left for the key itself.
func (h *HoldKey) placeSure(size fyne.Size) (x, w float32) {
	gap := look.U(look.Gap)
	sure := max(min(size.Width*0.4, look.U(300)), look.U(look.Floor))
	w = size.Width - sure - gap
	if h.atRight {
		place(h.sure, w+gap, 0, sure, size.Height)
		return 0, w
	}
	place(h.sure, 0, 0, sure, size.Height)
	return sure + gap, w
}

// ring draws the hold ring, filled by a part between 0 and 1.
func ring(p *Pen, part float32, token fyne.ThemeColorName, x, y, side float32) {
	step := int(part*ringStep + 0.5)
	if step <= 0 {
		p.Icon("hold", token, x, y, side)
		return
	}
	step = min(step, ringStep-1)
	a := float64(step) / ringStep * 2 * math.Pi
	large := 0
	if step > ringStep/2 {
		large = 1
	}
	svg := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24">`+
		`<path d="M12 2.5 A9.5 9.5 0 %d 1 %.3f %.3f" fill="none" stroke="ink1" stroke-width="4"/>`+
		`<circle cx="12" cy="12" r="3.5" fill="ink1"/></svg>`, large, 12+9.5*math.Sin(a), 12-9.5*math.Cos(a))
	p.Image(look.Drawing(fmt.Sprintf("ring-%d", step), svg, token), x, y, side, side)
}

// Beat is the clock of every new hold key. Tests of whole screens stand in for
// it: without an event loop its ticks would come on a goroutine of their own.
var Beat = wallClock

// wallClock ticks some 25 times a second.
func wallClock(tick func(since time.Duration)) (stop func()) {
	quit := make(chan struct{})
	over := false // read and written on the window's thread only
	start := time.Now()
	go func() {
		beat := time.NewTicker(40 * time.Millisecond)
		defer beat.Stop()
		for {
			select {
			case <-quit:
				return
			case now := <-beat.C:
				fyne.Do(func() {
					if !over {
						tick(now.Sub(start))
					}
				})
			}
		}
	}()
	return func() {
		if !over {
			over = true
			close(quit)
		}
	}
}
