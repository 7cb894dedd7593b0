package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// layoutFunc lays out a box for its size.
type layoutFunc func(size fyne.Size)

// Layout is called by the toolkit when the box has another size.
func (f layoutFunc) Layout(_ []fyne.CanvasObject, size fyne.Size) { f(size) }

// MinSize is nothing: the window decides how large a screen is.
func (f layoutFunc) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(0, 0) }

// box is a container whose objects are placed by a function of its size.
func box(lay func(size fyne.Size), objs ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: layoutFunc(lay), Objects: objs}
}

// relay lays a box out again after its objects changed.
func relay(c *fyne.Container) {
	if size := c.Size(); size.Width > 0 {
		c.Layout.Layout(c.Objects, size)
	}
	c.Refresh()
}

// flush places what scrolls so that its content, not its bleed, has the room:
// rows then line up with the keys and panels around them. It ends where its
// room ends: what is cut there stays 8 px from what is below.
func flush(o fyne.CanvasObject, x, y, w, h float32) {
	b := look.U(parts.Bleed)
	place(o, x-b, y-b, w+2*b, h+b)
}
