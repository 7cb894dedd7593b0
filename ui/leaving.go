package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/parts"
)

type leavingScreen struct{ root *parts.Label }

func newLeaving(*Shell) screen {
	return &leavingScreen{root: parts.NewLines(parts.LabelView{ID: "reply", Text: "Leaving"})}
}

func (g *leavingScreen) body() fyne.CanvasObject { return g.root }

func (g *leavingScreen) show(*now) head { return head{title: "Leaving"} }
