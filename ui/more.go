package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/parts"
)

type moreScreen struct{ root *parts.Label }

func newMore(*Shell) screen {
	return &moreScreen{root: parts.NewLines(parts.LabelView{ID: "reply", Text: "More"})}
}

func (g *moreScreen) body() fyne.CanvasObject { return g.root }

func (g *moreScreen) show(*now) head { return head{title: "More"} }
