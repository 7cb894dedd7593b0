package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/parts"
)

type loadupScreen struct{ root *parts.Label }

func newLoadUp(*Shell) screen {
	return &loadupScreen{root: parts.NewLines(parts.LabelView{ID: "reply", Text: "LoadUp"})}
}

func (g *loadupScreen) body() fyne.CanvasObject { return g.root }

func (g *loadupScreen) show(*now) head { return head{title: "LoadUp"} }
