package parts

import (
	"fyne.io/fyne/v2"
)

// Cursor moves over the parts of a canvas with arrow keys, for a tablet with
// a keyboard. It is not the toolkit's focus, so a scanner keeps its way to
// the canvas.
type Cursor struct {
	canvas fyne.Canvas
	at     activates
	here   rect // where it is, or was when its part went away
}

type activates interface {
	fyne.CanvasObject
	Activate()
	mark(bool)
}

// NewCursor makes a cursor for a canvas. It shows nothing until it is moved.
func NewCursor(c fyne.Canvas) *Cursor { return &Cursor{canvas: c} }

// mark shows where the cursor is.
func (t *Touch) mark(on bool) {
	if t.marked != on {
		t.marked = on
		t.Refresh()
	}
}

// Key takes an arrow key, a page key, Return or Escape, and says whether it
// used it. A part that is on screen no more has lost the cursor.
func (c *Cursor) Key(name fyne.KeyName) bool {
	if _, on := c.spots(); !on {
		c.put(nil)
	}
	switch name {
	case fyne.KeyLeft:
		c.move(-1, 0)
	case fyne.KeyRight:
		c.move(1, 0)
	case fyne.KeyUp:
		c.move(0, -1)
	case fyne.KeyDown:
		c.move(0, 1)
	case fyne.KeyEscape:
		return c.Hide()
	case fyne.KeyReturn, fyne.KeyEnter:
		if c.at == nil {
			return false
		}
		c.at.Activate()
	default:
		return false
	}
	return true
}

// Hide takes the cursor away and says whether there was one.
func (c *Cursor) Hide() bool {
	was := c.at != nil
	c.put(nil)
	c.here = rect{}
	return was
}

// Part is the part under the cursor, without its place; its kind is empty
// where there is none.
func (c *Cursor) Part() Part {
	if l, ok := c.at.(lister); ok {
		return l.Part()
	}
	return Part{}
}

// To puts the cursor on the first part that is wanted and says whether there
// is one.
func (c *Cursor) To(want func(Part) bool) bool {
	list, _ := c.spots()
	for _, s := range list {
		if l, ok := s.o.(lister); ok && want(l.Part()) {
			c.put(s.o)
			return true
		}
	}
	return false
}

func (c *Cursor) put(to activates) {
	if c.at != nil && c.at != to {
		c.at.mark(false)
	}
	if c.at = to; to != nil {
		to.mark(true)
	}
}

// spot is a part that can be touched, and what of it is in view.
type spot struct {
	o activates
	r rect
}

// spots are all parts in view; on tells whether the cursor's is one of them.
func (c *Cursor) spots() (list []spot, on bool) {
	showing(c.canvas, func(o fyne.CanvasObject, seen rect) {
		if a, ok := o.(activates); ok {
			if _, back := o.(backdrop); !back {
				list = append(list, spot{a, seen})
				if a == c.at {
					c.here, on = seen, true
				}
			}
		}
	})
	return list, on
}

// move goes to the nearest part in a direction. Where what lies around the
// part scrolls, it scrolls to the end before the cursor leaves it.
func (c *Cursor) move(dx, dy float32) {
	var around Scrolls
	if c.at != nil {
		around = enclosing(c.at)
	}
	best := c.nearest(dx, dy)
	if around != nil && dy != 0 && (best == nil || enclosing(best) != around) {
		if s, ok := around.(interface{ Offset() float32 }); ok {
			before := s.Offset()
			around.ScrollBy(dy * c.at.Size().Height)
			if s.Offset() != before {
				if next := c.nearest(dx, dy); next != nil && enclosing(next) == around {
					best = next
				} else {
					best = c.at
				}
			}
		}
	}
	if best != nil {
		c.put(best)
		c.reveal()
	}
}

// nearest is the nearest part in a direction. Sideways distance counts
// double, so a row is followed before a column is left.
func (c *Cursor) nearest(dx, dy float32) activates {
	list, _ := c.spots()
	hx, hy := (c.here.x0+c.here.x1)/2, (c.here.y0+c.here.y1)/2
	var best activates
	var bestD float32
	for _, s := range list {
		vx, vy := (s.r.x0+s.r.x1)/2-hx, (s.r.y0+s.r.y1)/2-hy
		along, aside := vx*dx+vy*dy, abs(vx*dy)+abs(vy*dx)
		if along <= 1 || s.o == c.at {
			continue
		}
		if d := along + 2*aside; best == nil || d < bestD {
			best, bestD = s.o, d
		}
	}
	return best
}

// reveal scrolls as far as it must for all of the part to be in view.
func (c *Cursor) reveal() {
	around := enclosing(c.at)
	if around == nil {
		return
	}
	d := fyne.CurrentApp().Driver()
	top := d.AbsolutePositionForObject(c.at).Y - d.AbsolutePositionForObject(around).Y
	b := bleedOf(around)
	if top < b {
		around.ScrollBy(top - b)
	} else if over := top + c.at.Size().Height - around.Size().Height + b; over > 0 {
		around.ScrollBy(over)
	}
}

func abs(v float32) float32 { return max(v, -v) }
