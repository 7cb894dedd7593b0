package main

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"tarpside/ui"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

var glasses = []fyne.Size{{Width: 1280, Height: 800}, {Width: 1024, Height: 768}, {Width: 1920, Height: 1200}}

// Every state of every screen is reached by taps at every size of the glass
// and of the text, and looked at with the eyes of a glove and of an old man.
func TestEveryMomentIsReadAndTouchedAtEverySizeByDayAndNight(t *testing.T) {
	test.NewApp()
	still()
	files, err := newScenes()
	if err != nil {
		t.Fatal(err)
	}
	defer files.remove()
	for _, m := range moments {
		for i, size := range glasses {
			for j, text := range []float32{1, 1.3, 1.6} {
				opt := ui.LookFor(size, (i+j)%2 == 1)
				opt.Text = text
				st, err := files.open(m, size, opt)
				if err != nil {
					t.Fatalf("%s: %v", m.name, err)
				}
				where := fmt.Sprintf("%s, %gx%g, text %.1f", m.name, size.Width, size.Height, text)
				if err := st.touchAll(); err != nil {
					t.Errorf("%s: %v", where, err)
				}
				looked(t, st, where)
				st.close()
			}
		}
	}
}

// looked checks what is on screen: nothing cut, nothing small, nothing faint,
// every target 15 mm and what is common 20 mm, 8 px from the next, none over
// the proof.
func looked(t *testing.T, st *stage, where string) {
	t.Helper()
	root, size := st.shell.Root(), st.shell.Root().Size()
	if st.moment.data != fileLong { // names that long are cut, with an ellipsis
		for _, cut := range parts.Cuts(root) {
			t.Errorf("%s: %q is cut", where, cut)
		}
	}
	for _, o := range test.LaidOutObjects(root) {
		if c, ok := o.(*canvas.Text); ok && c.Visible() && c.Text != "" && c.TextSize < look.U(16)-0.01 {
			t.Errorf("%s: %q is %.1f px", where, c.Text, c.TextSize)
		}
	}
	for _, faint := range parts.Faint(root, size) {
		t.Errorf("%s: does not stand out: %s", where, faint)
	}
	list := parts.Targets(root, size)
	if len(list) < 1 {
		t.Errorf("%s: nothing can be touched", where)
	}
	for i, a := range list {
		if least := look.U(look.Floor) - 1; a.Whole.Width < least || a.Whole.Height < least {
			t.Errorf("%s: %s %q is %.0fx%.0f", where, a.Kind, a.ID, a.Whole.Width, a.Whole.Height)
		}
		if foot := size.Height - look.U(look.Foot); float32(a.Y+a.H) > foot+1 && a.X >= int(look.U(look.Rail)) {
			t.Errorf("%s: %s %q lies over the proof, %d px", where, a.Kind, a.ID, a.Y+a.H-int(foot))
		}
		if common := a.Kind == parts.KindPiece || a.Kind == parts.KindPlace || a.Kind == parts.KindQuantity; common && max(a.Whole.Width, a.Whole.Height) < look.U(look.Target)-1 {
			t.Errorf("%s: %s %q is %.0fx%.0f, neither wide nor high enough for a hand", where, a.Kind, a.ID, a.Whole.Width, a.Whole.Height)
		}
		for _, b := range list[:i] {
			if a.ID == b.ID+"-sure" {
				continue // the second key of a hold key comes up on it
			}
			x := max(a.X, b.X) - min(a.X+a.W, b.X+b.W)
			y := max(a.Y, b.Y) - min(a.Y+a.H, b.Y+b.H)
			if max(x, y) < int(look.U(look.Gap))-1 {
				t.Errorf("%s: %s %q and %s %q are %d px apart", where, b.Kind, b.ID, a.Kind, a.ID, max(x, y))
			}
		}
	}
}
