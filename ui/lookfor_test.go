package ui

import (
	"os"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func TestTmpLook(t *testing.T) {
	os.MkdirAll("/tmp/ui-lb", 0o755)
	for _, m := range []int{153, 169, 180} {
		w := demoAt(t, m, ScreenLookFor, fyne.NewSize(1280, 800), look.Options{Day: m == 153})
		savePNG(w, "/tmp/ui-lb/look-"+string(rune('a'+m-150))+".png")
		t.Log(m, parts.Cuts(w.shell.Root()))
		for _, p := range w.parts {
			t.Log(p.Kind, p.ID, p.State, p.Text, p.H)
		}
	}
}
