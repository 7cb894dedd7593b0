package ui

import (
	"fmt"
	"image/png"
	"os"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func savePNG(w *window, name string) {
	f, _ := os.Create("/tmp/ui-lb/" + name + ".png")
	png.Encode(f, w.picture())
	f.Close()
	if c := parts.Cuts(w.shell.Root()); len(c) > 0 {
		w.t.Log(name, "CUT", c)
	}
}

func TestTmpLB(t *testing.T) {
	os.MkdirAll("/tmp/ui-lb", 0o755)
	for i, s := range []fyne.Size{{Width: 1280, Height: 800}, {Width: 1024, Height: 768}, {Width: 1920, Height: 1200}} {
		o := LookFor(s, i == 1)
		n := fmt.Sprint(s.Width, "-")
		w := demoAt(t, 153, ScreenLookFor, s, o)
		savePNG(w, n+"look-153")
		w.tap("piece", "R41-133")
		savePNG(w, n+"look-headblock")
		for range 3 {
			w.tap("act", "not-here")
		}
		w.tap("act", "skip")
		savePNG(w, n+"look-skip")
		w.tap("act", "back")
		w.tap("act", "with-someone")
		savePNG(w, n+"look-party")
		w = demoAt(t, 172, ScreenLookFor, s, o)
		w = demoAt(t, 170, ScreenLookFor, s, o)
		savePNG(w, n+"look-170")
		w.tap("act", "stop-looking")
		savePNG(w, n+"look-stop")
		w.tap("member", "M02")
		savePNG(w, n+"look-stop2")
		w = demoAt(t, 150, ScreenLookFor, s, o)
		w = demoAt(t, 180, ScreenLookFor, s, o)
		savePNG(w, n+"look-180")
		w.tap("piece", "R41-023")
		savePNG(w, n+"look-closed")
		w = demoAt(t, 34, ScreenLookFor, s, o)
		savePNG(w, n+"look-contest")
		w = demoAt(t, 30, ScreenLookFor, s, o)
		savePNG(w, n+"look-empty")
		w = demoAt(t, 180, ScreenBringBack, s, o)
		savePNG(w, n+"bb-others")
		w.tap("piece", "R41-052")
		savePNG(w, n+"bb-others2")
		w.tap("act", "out-of-service")
		savePNG(w, n+"bb-out")
		w.tap("piece", "R41-105")
		savePNG(w, n+"bb-oxygen")
		w.tap("act", "read-oxygen")
		w.tap("digit", "9")
		savePNG(w, n+"bb-pad")
		w.tap("act", "to-do")
		savePNG(w, n+"bb-todo")
		w.tap("act", "restock-list")
		savePNG(w, n+"bb-restock")
		w.tap("act", "stock-ST12")
		savePNG(w, n+"bb-restock2")
	}
	_ = look.Gap
}
