package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// placeColumn is the places along the edge, two beside each other, scrolled
// by finger where there are more than fit.
type placeColumn struct {
	*parts.Scroller
	grid *placeGrid
	tap  func(id string)
}

func newPlaceColumn(tap func(id string)) *placeColumn {
	c := &placeColumn{tap: tap, grid: &placeGrid{}}
	c.grid.Column = parts.NewColumn(look.Gap)
	c.Scroller = parts.NewScroller(c.grid.Column)
	return c
}

// placeGrid keeps the rows of the column.
type placeGrid struct {
	*parts.Column
	keys []*parts.PlaceKey
	rows []fyne.CanvasObject
}

// set shows the places in their order.
func (c *placeColumn) set(views []parts.PlaceKeyView) {
	g := c.grid
	grown := false
	for i, v := range views {
		if i == len(g.keys) {
			g.keys = append(g.keys, parts.NewPlaceKey(v, nil))
			grown = true
		}
		g.keys[i].OnTap = func() { c.tap(v.ID) }
		g.keys[i].Set(v)
	}
	if grown || len(g.rows) != (len(views)+1)/2 {
		g.rows = nil
		for i := 0; i < len(views); i += 2 {
			row := []fyne.CanvasObject{g.keys[i]}
			if i+1 < len(views) {
				row = append(row, g.keys[i+1])
			}
			g.rows = append(g.rows, newPair(row))
		}
		g.SetInside(g.rows...)
		c.Scroller.Refresh()
	}
}

func newPair(keys []fyne.CanvasObject) fyne.CanvasObject {
	c := box(nil, keys...)
	c.Layout = pairLayout{keys}
	return c
}

type pairLayout struct{ keys []fyne.CanvasObject }

// Layout puts the keys side by side.
func (p pairLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	gap := look.U(look.Gap)
	w := (size.Width - gap) / 2
	for i, k := range p.keys {
		place(k, float32(i)*(w+gap), 0, w, size.Height)
	}
}

// MinSize is the height of a target.
func (p pairLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(2*look.U(look.Floor), look.U(look.Target+2))
}
