package ui

import (
	"image/png"
	"os"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func (w *window) save(name string) {
	f, _ := os.Create(name)
	png.Encode(f, w.picture())
	f.Close()
}

func TestTmpTarp(t *testing.T) {
	os.MkdirAll("/tmp/ui-tarp", 0o755)
	for _, day := range []bool{true, false} {
		n := map[bool]string{true: "day", false: "night"}[day]
		w := demoAt(t, 60, ScreenTarp, fyne.NewSize(1280, 800), look.Options{Day: day})
		w.save("/tmp/ui-tarp/tarp-" + n + ".png")
		w.tap("place", "at:V2")
		w.save("/tmp/ui-tarp/v2-" + n + ".png")
		w.tap("piece", "P71-001")
		w.tap("act", "more")
		w.tap("piece", "R41-055")
		w.save("/tmp/ui-tarp/picked-" + n + ".png")
		t.Log(parts.Cuts(w.shell.Root()))
	}
	w := demoAt(t, 60, ScreenTarp, fyne.NewSize(1024, 768), look.Options{Day: true})
	w.save("/tmp/ui-tarp/tarp-1024.png")
	t.Log(parts.Cuts(w.shell.Root()))
	w.tap("act", "find")
	t.Log(w.parts)
	w.tap("act", "R")
	w.tap("act", "e")
	w.save("/tmp/ui-tarp/find-1024.png")
}
