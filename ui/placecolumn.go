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
			g.rows = append(g.rows, newPair(row, c.high))
		}
		g.SetInside(g.rows...)
		c.Scroller.Refresh()
	}
}

// rowsWanted is how many rows of places are made to fit without scrolling.
const rowsWanted = 5

// high is the height of a row: a hand's size; a little less where that spares
// scrolling, more where all the rows wanted have room, so that a place added
// later moves no other.
func (c *placeColumn) high() float32 {
	full := look.U(look.Target + 2)
	if len(c.grid.rows) > rowsWanted {
		return full
	}
	if tall := c.share(rowsWanted); tall > full {
		return min(tall, full*1.4)
	}
	room := c.share(max(len(c.grid.rows), 1))
	if room >= look.U(100) && room < full {
		return room
	}
	return full
}

// share is the height that each of so many rows has.
func (c *placeColumn) share(rows int) float32 {
	n := float32(rows)
	return (c.Size().Height - 2*look.U(parts.Bleed) - look.U(look.Gap)*(n-1)) / n
}

func newPair(keys []fyne.CanvasObject, high func() float32) fyne.CanvasObject {
	c := box(nil, keys...)
	c.Layout = pairLayout{keys, high}
	return c
}

type pairLayout struct {
	keys []fyne.CanvasObject
	high func() float32
}

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
	return fyne.NewSize(2*look.U(look.Floor), p.high())
}
