package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/parts"
)

type bringbackScreen struct{ root *parts.Label }

func newBringBack(*Shell) screen {
	return &bringbackScreen{root: parts.NewLines(parts.LabelView{Text: "Bring back"})}
}

func (b *bringbackScreen) body() fyne.CanvasObject { return b.root }

func (b *bringbackScreen) show(*now) head { return head{title: "Bring back"} }
