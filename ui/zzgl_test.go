package ui

import (
	"fmt"
	"image/png"
	"os"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/ui/parts"
)

func (w *window) saveGL(name string) {
	os.MkdirAll("/tmp/ui-gl", 0o755)
	f, _ := os.Create("/tmp/ui-gl/" + name + ".png")
	png.Encode(f, w.picture())
	f.Close()
	if c := parts.Cuts(w.shell.Root()); len(c) > 0 {
		w.t.Errorf("%s cuts: %q", name, c)
	}
}

func TestZZGlance(t *testing.T) {
	for _, s := range []fyne.Size{{Width: 1280, Height: 800}, {Width: 1024, Height: 768}, {Width: 1920, Height: 1200}} {
		for _, m := range []int{-1, 0, 60, 91, 126, 177} {
			for _, day := range []bool{false, true} {
				w := demoAt(t, m, ScreenGlance, s, LookFor(s, day))
				w.saveGL(fmt.Sprintf("glance-%.0f-%d-%v", s.Width, m, day))
			}
		}
	}
}
