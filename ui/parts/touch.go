package parts

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tarpside/ui/look"
)

// Touch is the base of everything that is touched. The toolkit calls a press
// that moves 2 px a drag and then forgets the tap; a wet glove wanders more
// than that. So a Touch takes the drag itself: within 12 px of where it began
// it is still a tap, past that it scrolls what the part lies in.
type Touch struct {
	face
	// OnTap is called for a tap on a part that is not off.
	OnTap func()
	// OnRefused is called for a tap on a part that is off, to say why.
	OnRefused func()

	radius  float32 // of the pressed look, in design pixels
	off     bool
	pressed bool
	marked  bool // by the Cursor
	last    fyne.Position
	start   fyne.Position
	moved   fyne.Delta
	past    bool
	scroll  Scrolls
}

var (
	_ fyne.Tappable     = (*Touch)(nil)
	_ fyne.Draggable    = (*Touch)(nil)
	_ desktop.Mouseable = (*Touch)(nil)
)

// NewTouch makes a part that is touched and is drawn by paint. Least size in
// design pixels; never make it less than look.Floor either way.
func NewTouch(part Part, w, h float32, paint func(p *Pen, size fyne.Size), onTap func()) *Touch {
	t := &Touch{OnTap: onTap}
	t.part = part
	t.touch(t, w, h, paint)
	return t
}

func (t *Touch) touch(self fyne.Widget, w, h float32, paint func(*Pen, fyne.Size)) {
	t.radius = look.RadiusKey
	t.init(self, w, h, func(p *Pen, size fyne.Size) {
		paint(p, size)
		if t.pressed || t.marked {
			p.Rect(0, 0, size.Width, size.Height, look.Clear, look.Accent, look.U(4), look.U(t.radius))
		}
	})
}

// SetPart changes how the part is listed.
func (t *Touch) SetPart(part Part) { t.part = part }

// Off says whether a tap is refused.
func (t *Touch) Off() bool { return t.off }

// Activate does what a tap does.
func (t *Touch) Activate() {
	switch {
	case !t.off && t.OnTap != nil:
		t.OnTap()
	case t.off && t.OnRefused != nil:
		t.OnRefused()
	}
}

// Tapped is called by the toolkit for a press that did not move.
func (t *Touch) Tapped(*fyne.PointEvent) { t.Activate() }

// MouseDown shows the part pressed. It does not yet act.
func (t *Touch) MouseDown(e *desktop.MouseEvent) {
	t.start = e.Position
	t.press(!t.off)
}

// MouseUp ends the pressed look.
func (t *Touch) MouseUp(*desktop.MouseEvent) { t.press(false) }

func (t *Touch) press(on bool) {
	if t.pressed != on {
		t.pressed = on
		t.Refresh()
	}
}

// Dragged follows a finger that wanders or scrolls.
func (t *Touch) Dragged(e *fyne.DragEvent) {
	t.moved.DX += e.Dragged.DX
	t.moved.DY += e.Dragged.DY
	t.last = e.Position
	if t.past {
		t.scrollBy(-e.Dragged.DY)
		return
	}
	if math.Hypot(float64(t.moved.DX), float64(t.moved.DY)) <= float64(look.U(look.Slop)) {
		return
	}
	t.past = true
	if t.scroll = enclosing(t.owner); t.scroll != nil {
		t.press(false)
		t.scrollBy(-t.moved.DY)
	}
}

func (t *Touch) scrollBy(dy float32) {
	if t.scroll != nil {
		t.scroll.ScrollBy(dy)
	}
}

// DragEnd makes a tap of a drag that stayed within the slop. Where there is
// nothing to scroll, a longer one that ends on the part is a tap as well.
func (t *Touch) DragEnd() {
	past, scroll := t.past, t.scroll
	t.past, t.scroll, t.moved = false, nil, fyne.Delta{}
	t.press(false)
	if !past || scroll == nil && t.inside(t.last) {
		t.Activate()
	}
}

func (t *Touch) inside(p fyne.Position) bool {
	size := t.Size()
	return p.X >= 0 && p.Y >= 0 && p.X < size.Width && p.Y < size.Height
}
