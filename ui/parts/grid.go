package parts

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// Grid shows up to some thousands of equal cells in fluid columns and makes
// only those that are in view. The columns take the whole width; the gaps
// belong to the nearest cell, so no touch falls between two.
type Grid struct {
	face
	// OnScrolled is called with the new offset in pixels.
	OnScrolled func(offset float32)
	// Even makes cells that are all in view as many in each row, as wide as
	// the rows are and up to half as high again.
	Even bool

	create func() fyne.CanvasObject
	fill   func(i int, cell fyne.CanvasObject)
	cell   func() fyne.Size
	least  func() float32 // how low a cell may be for another row; nil for no lower
	n      int
	offset float32
	pool   []fyne.CanvasObject
	bound  []int // which item each cell of the pool shows, -1 for none
}

// NewGrid makes a grid. The cell size is in pixels, at least; fill must be
// cheap where a cell already shows what it should.
func NewGrid(cell func() fyne.Size, create func() fyne.CanvasObject, fill func(i int, cell fyne.CanvasObject)) *Grid {
	g := &Grid{}
	g.setup(g, cell, create, fill)
	return g
}

func (g *Grid) setup(self fyne.Widget, cell func() fyne.Size, create func() fyne.CanvasObject, fill func(int, fyne.CanvasObject)) {
	g.cell, g.create, g.fill = cell, create, fill
	g.init(self, look.TileW, look.TileH, g.layout)
}

// SetLen says how many cells there are and draws those in view again.
func (g *Grid) SetLen(n int) {
	g.n = n
	g.unbind()
	g.Refresh()
}

// Renew draws the cells in view again after their matter changed.
func (g *Grid) Renew() {
	g.unbind()
	g.Refresh()
}

func (g *Grid) unbind() {
	for i := range g.bound {
		g.bound[i] = -1
	}
}

// shape is how the cells fall into the size of the grid, in pixels.
type shape struct {
	cols, rows   int // rows that fit whole
	cellW, cellH float32
	gap          float32
	height       float32 // of all rows
}

func (g *Grid) shape(size fyne.Size) shape {
	s := shapeOf(size, g.cell(), g.lowest(), look.U(look.Gap), g.n)
	if s.height > size.Height {
		return shapeOf(fyne.NewSize(size.Width-look.U(barRoom), size.Height), g.cell(), g.lowest(), s.gap, g.n)
	}
	if g.Even && g.n > 0 {
		return s.even(size, g.n)
	}
	return s
}

// even spreads n cells over the room.
func (s shape) even(size fyne.Size, n int) shape {
	rows := (n + s.cols - 1) / s.cols
	s.cols = (n + rows - 1) / rows
	s.cellW = float32(int((size.Width - s.gap*float32(s.cols-1)) / float32(s.cols)))
	high := float32(int((size.Height+s.gap)/float32(rows) - s.gap))
	s.cellH = max(s.cellH, min(high, s.cellH*1.5))
	s.height = float32(rows)*(s.cellH+s.gap) - s.gap
	return s
}

// lowest is the least height of a cell.
func (g *Grid) lowest() float32 {
	if g.least == nil {
		return g.cell().Height
	}
	return min(g.least(), g.cell().Height)
}

// room is the size of the viewport without its bleed.
func (g *Grid) room() fyne.Size {
	b := 2 * look.U(Bleed)
	return fyne.NewSize(max(g.Size().Width-b, 0), max(g.Size().Height-b, 0))
}

func (g *Grid) bleeds() {}

// shapeOf fits n cells into a size. They are as high as they wish to be; where
// that hides some, they are as much lower as another row needs.
func shapeOf(size, cell fyne.Size, least, gap float32, n int) shape {
	s := shape{gap: gap, cellH: cell.Height}
	fit := func(high float32) int { return max(1, int((size.Height+gap)/(high+gap))) }
	s.cols = max(1, int((size.Width+gap)/(cell.Width+gap)))
	s.cellW = float32(int((size.Width - gap*float32(s.cols-1)) / float32(s.cols)))
	rows := (n + s.cols - 1) / s.cols
	s.rows = fit(cell.Height)
	if more := min(rows, fit(least)); more > s.rows {
		s.rows, s.cellH = more, float32(int((size.Height+gap)/float32(more)-gap))
	}
	s.height = max(float32(rows)*(s.cellH+gap)-gap, 0)
	return s
}

func (g *Grid) layout(p *Pen, _ fyne.Size) {
	size, b := g.room(), look.U(Bleed)
	s := g.shape(size)
	g.offset = clampTo(g.offset, s.height-size.Height)
	pitch := s.cellH + s.gap
	first := int(g.offset/pitch) * s.cols
	last := min(g.n, (int((g.offset+size.Height-1)/pitch)+1)*s.cols)
	need := (int(size.Height/pitch) + 2) * s.cols
	for len(g.pool) < min(need, g.n) {
		g.pool = append(g.pool, g.create())
		g.bound = append(g.bound, -1)
	}
	g.kids = g.kids[:0]
	for i := first; i < last; i++ {
		slot := i % len(g.pool)
		c := g.pool[slot]
		if g.bound[slot] != i {
			g.bound[slot] = i
			g.fill(i, c)
		}
		x := float32(i%s.cols) * (s.cellW + s.gap)
		y := float32(i/s.cols)*pitch - g.offset
		place(c, b+x, b+y, s.cellW, s.cellH)
		g.kids = append(g.kids, c)
	}
	scrollBar(p, size, g.offset, s.height)
}

// PerPage is how many cells fit whole in the present size.
func (g *Grid) PerPage() int {
	cell := g.cell()
	cell.Height = g.lowest()
	s := shapeOf(g.room(), cell, cell.Height, look.U(look.Gap), g.n)
	return s.cols * s.rows
}

// Offset is how far the grid is scrolled, in pixels.
func (g *Grid) Offset() float32 { return g.offset }

// ScrollToOffset scrolls to an offset in pixels, or as near as there is.
func (g *Grid) ScrollToOffset(offset float32) {
	offset = clampTo(offset, g.shape(g.room()).height-g.room().Height)
	if offset == g.offset {
		return
	}
	g.offset = offset
	g.Refresh()
	if g.OnScrolled != nil {
		g.OnScrolled(offset)
	}
}

// ScrollBy moves the cells up by so many pixels.
func (g *Grid) ScrollBy(dy float32) { g.ScrollToOffset(g.offset + dy) }

// PageBy moves by so many whole pages of rows, back for less than nought.
func (g *Grid) PageBy(pages int) {
	s := g.shape(g.room())
	g.ScrollBy(float32(pages*s.rows) * (s.cellH + s.gap))
}

// Scrolled takes the wheel.
func (g *Grid) Scrolled(e *fyne.ScrollEvent) { g.ScrollBy(-e.Scrolled.DY) }

// Dragged scrolls for a drag between the cells.
func (g *Grid) Dragged(e *fyne.DragEvent) { g.ScrollBy(-e.Dragged.DY) }

// DragEnd ends a drag.
func (g *Grid) DragEnd() {}

// Tapped gives a touch in a gap to the nearest cell.
func (g *Grid) Tapped(e *fyne.PointEvent) {
	reach := look.U(look.Gap)
	for _, c := range g.kids {
		r := rectOf(c.Position(), c.Size())
		near := rect{r.x0 - reach/2, r.y0 - reach/2, r.x1 + reach/2, r.y1 + reach/2}
		if t, ok := c.(interface{ Activate() }); ok && near.has(e.Position.X, e.Position.Y) {
			t.Activate()
			return
		}
	}
}

func (g *Grid) backdrop() {}
