package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/parts"
)

type lookforScreen struct{ root *parts.Label }

func newLookFor(*Shell) screen {
	return &lookforScreen{root: parts.NewLines(parts.LabelView{ID: "reply", Text: "LookFor"})}
}

func (g *lookforScreen) body() fyne.CanvasObject { return g.root }

func (g *lookforScreen) show(*now) head { return head{title: "LookFor"} }
