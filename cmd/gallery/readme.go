package main

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// readmePictures are the six in the README: the name of the moment, by day or
// by night, and the file.
var readmePictures = []struct {
	moment, file string
	day          bool
}{
	{"tarp", "tarp", false},
	{"tarp picked", "tarp-picked", true},
	{"glance", "glance", false},
	{"load up blocked", "load-up", true},
	{"release", "release", false},
	{"leaving looked", "leaving", true},
}

// readme draws the pictures of the README, at 1280x800.
func (g *gallery) readme() error {
	test.NewApp()
	still()
	for _, r := range readmePictures {
		m, ok := momentNamed(r.moment)
		if !ok {
			return fmt.Errorf("there is no moment %q", r.moment)
		}
		if err := g.screen(m, r.file, fyne.NewSize(1280, 800), r.day); err != nil {
			return fmt.Errorf("%s: %w", r.file, err)
		}
	}
	return nil
}

func momentNamed(name string) (moment, bool) {
	for _, m := range moments {
		if m.name == name {
			return m, true
		}
	}
	return moment{}, false
}
