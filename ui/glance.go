package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/parts"
)

type glanceScreen struct{ root *parts.Label }

func newGlance(*Shell) screen {
	return &glanceScreen{root: parts.NewLines(parts.LabelView{ID: "reply", Text: "Glance"})}
}

func (g *glanceScreen) body() fyne.CanvasObject { return g.root }

func (g *glanceScreen) show(*now) head { return head{title: "Glance"} }
