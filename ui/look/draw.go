package look

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/software"
)

// Draw paints an object at a size, in a theme, without a window or a display.
// The theme stays set on the current app. There must be a current app: the
// window has one; a program without a display makes one with test.NewApp.
func Draw(obj fyne.CanvasObject, size fyne.Size, th fyne.Theme) image.Image {
	fyne.CurrentApp().Settings().SetTheme(th)
	c := software.NewCanvas()
	c.SetPadded(false)
	c.SetContent(obj)
	c.Resize(size)
	return software.RenderCanvas(c, th)
}
