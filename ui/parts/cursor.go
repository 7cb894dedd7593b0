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

// Key takes an arrow key, Return or Escape and says whether it used it.
func (c *Cursor) Key(name fyne.KeyName) bool {
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
		c.put(nil)
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

func (c *Cursor) put(to activates) {
	if c.at != nil {
		c.at.mark(false)
	}
	if c.at = to; to != nil {
		to.mark(true)
	}
}

// move goes to the nearest part in a direction. Sideways distance counts
// double, so a row is followed before a column is left.
func (c *Cursor) move(dx, dy float32) {
	root := c.canvas.Content()
	if top := c.canvas.Overlays().Top(); top != nil {
		root = top
	}
	here := rect{}
	type spot struct {
		o activates
		r rect
	}
	var spots []spot
	walk(root, fyne.Position{}, rectOf(fyne.Position{}, c.canvas.Size()), func(o fyne.CanvasObject, seen rect) {
		a, ok := o.(activates)
		if _, back := o.(backdrop); !ok || back || seen.empty() {
			return
		}
		if c.at == a {
			here = seen
			return
		}
		spots = append(spots, spot{a, seen})
	})
	hx, hy := (here.x0+here.x1)/2, (here.y0+here.y1)/2
	var best activates
	var bestD float32
	for _, s := range spots {
		vx, vy := (s.r.x0+s.r.x1)/2-hx, (s.r.y0+s.r.y1)/2-hy
		along, aside := vx*dx+vy*dy, abs(vx*dy)+abs(vy*dx)
		if along <= 1 {
			continue
		}
		if d := along + 2*aside; best == nil || d < bestD {
			best, bestD = s.o, d
		}
	}
	if best != nil {
		c.put(best)
	}
}

func abs(v float32) float32 { return max(v, -v) }
