package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/parts"
)

type tarpScreen struct{ root *parts.Label }

func newTarp(*Shell) screen { return &tarpScreen{root: parts.NewLines(parts.LabelView{Text: "tarp"})} }

func (g *tarpScreen) body() fyne.CanvasObject { return g.root }

func (g *tarpScreen) show(*now) head { return head{title: "Tarp"} }
