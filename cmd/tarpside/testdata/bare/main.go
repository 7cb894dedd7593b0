// Command bare is a window of the toolkit with one line of text in it: what
// the start and the memory of the board are measured against.
package main

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/widget"
)

func main() {
	win := app.NewWithID("county.quillan.bare").NewWindow("Bare")
	win.SetMaster()
	win.SetContent(widget.NewLabel("Nothing"))
	win.Resize(fyne.NewSize(1280, 800))
	win.ShowAndRun()
}
