package parts

import (
	"image/png"
	"os"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"tarpside/ui/look"
)

func TestRenderAll(t *testing.T) {
	test.NewApp()
	os.MkdirAll("/tmp/parts-gallery", 0o755)
	for _, s := range Stories() {
		if f := os.Getenv("STORY"); f != "" && !strings.Contains(s.Name, f) {
			continue
		}
		for _, o := range []look.Options{{}, {Day: true}} {
			n := "night"
			if o.Day {
				n = "day"
			}
			if os.Getenv("BIG") != "" {
				o.Text = 1.6
				n += "-big"
			}
			obj := s.Build()
			img := look.Draw(obj, s.Size, look.New(o))
			f, _ := os.Create("/tmp/parts-gallery/" + strings.ReplaceAll(strings.ReplaceAll(s.Name, " ", "-"), ",", "") + "-" + n + ".png")
			png.Encode(f, img)
			f.Close()
			if c := Cuts(obj); len(c) != s.Cuts {
				t.Log(s.Name, n, "cuts:", c)
			}
		}
	}
}
