package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// relook puts the look that the tablet asks for in force and draws everything
// again in it.
func (sh *Shell) relook() {
	sh.opts.SetTheme(look.New(sh.opts.Look))
	relay(sh.root)
	redraw(sh.root)
	sh.refresh()
}

// redraw draws every part again, whatever it showed.
func redraw(o fyne.CanvasObject) {
	o.Refresh()
	switch c := o.(type) {
	case *fyne.Container:
		for _, k := range c.Objects {
			redraw(k)
		}
	case interface{ Inside() []fyne.CanvasObject }:
		for _, k := range c.Inside() {
			redraw(k)
		}
	}
}
