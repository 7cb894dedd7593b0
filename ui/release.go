package ui

import "fyne.io/fyne/v2"

type releaseScreen struct{ root *fyne.Container }

func newRelease(sh *Shell, rig string) *releaseScreen {
	return &releaseScreen{root: box(func(fyne.Size) {})}
}
func (r *releaseScreen) body() fyne.CanvasObject { return r.root }
func (r *releaseScreen) show(*now) head          { return head{title: "Release", back: true} }
