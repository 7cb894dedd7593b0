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

// howTwo is the least width, in design pixels, at which what the figure does
// not say stands beside it: no line is then longer than an eye follows.
const howTwo = 1000

func newHow(a sum.Answer) screen {
	h := &howScreen{name: capital(words.Said(a.Name))}
	panel := func(id, title, text string, role look.Role) []fyne.CanvasObject {
		if text == "" {
			return nil
		}
		return []fyne.CanvasObject{parts.NewPanel(parts.PanelView{Title: title, Rule: true}, parts.NewLines(parts.LabelView{ID: id, Text: capital(words.Said(text)), Role: role}))}
	}
	figure := panel("figure", h.name, a.Text, look.Screen)
	figure = append(figure, panel("formula", words.L("How it is worked out"), a.Formula, look.Open)...)
	rest := append(panel("limits", words.L("What it does not say"), a.Limits, look.Open), panel("source", words.L("Where that comes from"), a.Source, look.Open)...)
	left, right := parts.NewColumn(look.Gap, figure...), parts.NewColumn(look.Gap, rest...)
	one, two := parts.NewScroller(left), parts.NewScroller(right)
	h.root = box(func(size fyne.Size) {
		if size.Width < look.U(howTwo) {
			left.SetInside(append(figure[:len(figure):len(figure)], rest...)...)
			two.Hide()
			place(one, 0, 0, size.Width, size.Height)
			return
		}
		w := (size.Width - look.U(look.Gap)) / 2
		left.SetInside(figure...)
		two.Show()
		place(one, 0, 0, w, size.Height)
		place(two, size.Width-w, 0, w, size.Height)
	}, one, two)
	return h
}

func (h *howScreen) body() fyne.CanvasObject { return h.root }

func (h *howScreen) show(*now) head {
	return head{title: h.name, sentence: words.L("An aid. Local rules and your officer come first"), back: true}
}

// howKey opens how a figure is worked out.
func howKey(id string) parts.KeyView {
	return parts.KeyView{ID: id, Title: words.L("How?"), Icon: "unknown", Lay: parts.LayCentre, Role: look.BodyBold}
}
