package parts

import (
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// backdrop is what takes taps but is no target of its own.
type backdrop interface{ backdrop() }

// tall is content whose height follows from its width.
type tall interface{ HeightFor(width float32) float32 }

// heightFor is the height an object wants at a width, in pixels.
func heightFor(o fyne.CanvasObject, width float32) float32 {
	if t, ok := o.(tall); ok {
		return t.HeightFor(width)
	}
	return o.MinSize().Height
}

// Scroller shows content that is higher than its room. A finger scrolls it by
// dragging anywhere on it: on a part inside, or between them. The wheel works
// as well.
type Scroller struct {
	face
	// OnScrolled is called with the new offset in pixels.
	OnScrolled func(offset float32)

	content fyne.CanvasObject
	offset  float32
	height  float32 // of the content
}

// NewScroller makes a scroller around one object, often a [Column].
func NewScroller(content fyne.CanvasObject) *Scroller {
	s := &Scroller{content: content}
	s.kids = []fyne.CanvasObject{content}
	s.init(s, look.Floor, look.Floor, s.layout)
	return s
}

const barW, barRoom float32 = 6, 16

// Bleed is how far a [Scroller] and a [Grid] reach past their content on all
// sides, in design pixels: without it a border at the edge of the viewport
// would lose its outer half. A [Panel] makes up for it by itself.
const Bleed float32 = 4

type bleeds interface{ bleeds() }

func bleedOf(o fyne.CanvasObject) float32 {
	if _, ok := o.(bleeds); ok {
		return look.U(Bleed)
	}
	return 0
}

func (s *Scroller) bleeds() {}

func (s *Scroller) layout(p *Pen, size fyne.Size) {
	b := look.U(Bleed)
	size = fyne.NewSize(max(size.Width-2*b, 0), max(size.Height-2*b, 0))
	w := size.Width
	s.height = heightFor(s.content, w)
	if s.height > size.Height {
		w -= look.U(barRoom)
		s.height = heightFor(s.content, w)
	}
	s.offset = clampTo(s.offset, s.height-size.Height)
	place(s.content, b, b-s.offset, w, max(s.height, size.Height))
	scrollBar(p, size, s.offset, s.height)
}

func scrollBar(p *Pen, size fyne.Size, offset, height float32) {
	if height <= size.Height {
		return
	}
	w := look.U(barW)
	h := max(size.Height*size.Height/height, look.U(48))
	y := offset / (height - size.Height) * (size.Height - h)
	b := look.U(Bleed)
	p.Rect(b+size.Width-w, b+y, w, h, look.Strong, look.Clear, 0, w/2)
}

func clampTo(v, most float32) float32 { return max(0, min(v, most)) }

// Settle lays the content out again if it wants another height than it has,
// after words in it changed.
func (s *Scroller) Settle() {
	w := s.content.Size().Width
	if w < 1 {
		return
	}
	c, ok := s.content.(*Column)
	if heightFor(s.content, w) != s.height || ok && !c.settled() {
		s.Refresh()
	}
	if ok && !c.settled() {
		c.Refresh()
	}
}

// Offset is how far the content is scrolled, in pixels.
func (s *Scroller) Offset() float32 { return s.offset }

// ScrollToOffset scrolls to an offset in pixels, or as near as there is.
func (s *Scroller) ScrollToOffset(offset float32) {
	offset = clampTo(offset, s.height-s.Size().Height+2*look.U(Bleed))
	if offset == s.offset {
		return
	}
	s.offset = offset
	s.Refresh()
	if s.OnScrolled != nil {
		s.OnScrolled(offset)
	}
}

// ScrollBy moves the content up by so many pixels.
func (s *Scroller) ScrollBy(dy float32) { s.ScrollToOffset(s.offset + dy) }

// Scrolled takes the wheel.
func (s *Scroller) Scrolled(e *fyne.ScrollEvent) { s.ScrollBy(-e.Scrolled.DY) }

// Dragged scrolls for a drag between the parts.
func (s *Scroller) Dragged(e *fyne.DragEvent) { s.ScrollBy(-e.Dragged.DY) }

// DragEnd ends a drag.
func (s *Scroller) DragEnd() {}

// Column stacks objects at the full width, each as high as it wants to be. It
// can be folded: several stand beside each other then, read row by row.
type Column struct {
	face
	gap  float32
	cols int
}

// NewColumn makes a column with a gap in design pixels.
func NewColumn(gap float32, objs ...fyne.CanvasObject) *Column {
	c := &Column{gap: gap, cols: 1}
	c.kids = objs
	c.init(c, look.Floor, 0, func(_ *Pen, size fyne.Size) {
		c.rows(size.Width, func(o fyne.CanvasObject, x, y, w, h float32) { place(o, x, y, w, h) })
	})
	return c
}

// rows goes over the places of what is stacked, at a width in pixels, and
// gives the height of all.
func (c *Column) rows(width float32, each func(o fyne.CanvasObject, x, y, w, h float32)) float32 {
	gap := look.U(c.gap)
	w := float32(int((width - gap*float32(c.cols-1)) / float32(c.cols)))
	if c.cols == 1 {
		w = width
	}
	var shown []fyne.CanvasObject
	for _, o := range c.kids {
		if o.Visible() {
			shown = append(shown, o)
		}
	}
	var y float32
	for row := range slices.Chunk(shown, c.cols) {
		var h float32
		for _, o := range row {
			h = max(h, heightFor(o, w))
		}
		for i, o := range row {
			each(o, float32(i)*(w+gap), y, w, h)
		}
		y += h + gap
	}
	return max(y-gap, 0)
}

// Fold puts so many beside each other as it takes to show all in a room, no
// more than have the width they need: both in pixels.
func (c *Column) Fold(room fyne.Size, least float32) {
	was := c.cols
	for c.cols = 1; c.HeightFor(room.Width) > room.Height; c.cols++ {
		if wide := float32(c.cols + 1); (room.Width+look.U(c.gap))/wide < least+look.U(c.gap) {
			break
		}
	}
	if c.cols != was {
		c.Refresh()
	}
}

// SetInside replaces what is stacked.
func (c *Column) SetInside(objs ...fyne.CanvasObject) {
	if slices.Equal(c.kids, objs) && c.settled() {
		return
	}
	c.kids = objs
	c.Refresh()
}

// settled tells whether everything in the column is as high as it wants to be.
func (c *Column) settled() bool {
	if c.Size().Width < 1 {
		return true
	}
	is := true
	c.rows(c.Size().Width, func(o fyne.CanvasObject, _, _, _, h float32) { is = is && o.Size().Height == h })
	return is
}

// HeightFor is the height of the column at a width, in pixels.
func (c *Column) HeightFor(width float32) float32 {
	return c.rows(width, func(fyne.CanvasObject, float32, float32, float32, float32) {})
}

// Shield lies over a screen and takes every touch that is meant for it. A
// clear one leaves the screen readable, as under the wet lock: texts under it
// are still listed as parts, what can be touched is not.
type Shield struct {
	Touch
	clear bool
}

// NewShield makes a shield; onTap may be nil.
func NewShield(clear bool, onTap func()) *Shield {
	s := &Shield{clear: clear}
	s.OnTap = onTap
	s.covers = !clear
	s.init(s, 0, 0, func(p *Pen, size fyne.Size) {
		if !s.clear {
			p.Fill(0, 0, size.Width, size.Height, look.Ground)
		}
	})
	return s
}

func (s *Shield) backdrop() {}
