package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/model/sum"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// howScreen is a worked figure with its formula, its source and its limits.
type howScreen struct {
	name string
	root *fyne.Container
}

func newHow(a sum.Answer) screen {
	h := &howScreen{name: capital(words.Said(a.Name))}
	col := parts.NewColumn(look.Gap)
	var objs []fyne.CanvasObject
	add := func(id, title, text string, role look.Role) {
		if text != "" {
			objs = append(objs, parts.NewPanel(parts.PanelView{Title: title, Rule: true}, parts.NewLines(parts.LabelView{ID: id, Text: capital(words.Said(text)), Role: role})))
		}
	}
	add("figure", h.name, a.Text, look.Title)
	add("formula", words.L("How it is worked out"), a.Formula, look.Lead)
	add("source", words.L("Where that comes from"), a.Source, look.Lead)
	add("limits", words.L("What it does not say"), a.Limits, look.Lead)
	col.SetInside(objs...)
	scroll := parts.NewScroller(col)
	h.root = box(func(size fyne.Size) { place(scroll, 0, 0, min(size.Width, look.U(1000)), size.Height) }, scroll)
	return h
}

func (h *howScreen) body() fyne.CanvasObject { return h.root }

func (h *howScreen) show(*now) head {
	return head{title: h.name, sentence: words.L("An aid. Local rules and your officer come first"), back: true}
}
