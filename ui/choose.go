package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// choice is one thing to choose: a rig, a member.
type choice struct {
	kind, id, title, second string
	mark                    parts.MarkView
}

// chooser asks one question over a screen; a touch answers it.
type chooser struct {
	title, sentence string
	grid            *parts.Grid
	root            *fyne.Container
}

// newChooser makes a chooser. onPick is called with the id; it says what is
// shown then.
func newChooser(sh *Shell, title, sentence string, list []choice, onPick func(id string)) *chooser {
	c := &chooser{title: title, sentence: sentence}
	cell := func() fyne.Size { return cellFor(c.grid, len(list), 300, look.Target) }
	c.grid = parts.NewGrid(cell, func() fyne.CanvasObject {
		var k *parts.Key
		k = parts.NewKey(parts.KeyView{}, func() { onPick(k.View().ID) })
		return k
	}, func(i int, cell fyne.CanvasObject) {
		v := list[i]
		cell.(*parts.Key).Set(parts.KeyView{Kind: v.kind, ID: v.id, Title: v.title, Second: v.second, Mark: v.mark, Lay: parts.LayLeft})
	})
	c.grid.Even = true
	c.grid.SetLen(len(list))
	c.root = box(func(size fyne.Size) { flush(c.grid, 0, 0, size.Width, size.Height) }, c.grid)
	return c
}

func (c *chooser) body() fyne.CanvasObject { return c.root }

func (c *chooser) show(*now) head { return head{title: c.title, sentence: c.sentence, back: true} }
