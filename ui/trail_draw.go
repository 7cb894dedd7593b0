package ui

import (
	"fyne.io/fyne/v2"

	litter "tarpside/model/trail"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// An ownView is a view of a part that only one screen has.
type ownView interface{ newPart() ownPart }

// An ownPart shows an ownView.
type ownPart interface {
	set(view any)
	canvas() fyne.CanvasObject
}

// weightView is the weight bar of the party.
type weightView struct {
	Lb, Limit           float64
	Must, Should, Maybe float64
	People, Guessed     int
}

func (t *trailScreen) weight() weightView {
	l := &t.v.load
	v := weightView{Lb: l.Lb, Limit: l.Limit, People: len(l.Packs), Guessed: l.Guessed}
	v.Must, v.Should, v.Maybe = litter.ByNeed(t.v.lines)
	return v
}

// over is how many pounds are too much.
func (v weightView) over() int {
	if v.People == 0 {
		return 0
	}
	return litter.UpLb(v.Lb - v.Limit)
}

// words are the figure, against what, and the verdict.
func (v weightView) words() (figure, against, verdict string) {
	figure = words.F("%d lb", litter.UpLb(v.Lb))
	people := words.F("%d people", v.People)
	if v.People == 1 {
		people = words.L("one person")
	}
	against = words.F("of %d lb, %s", litter.DownLb(v.Limit), people)
	switch over := v.over(); {
	case v.People == 0:
		against, verdict = words.L("nobody walks yet"), ""
	case over > 0:
		verdict = words.F("Over by %d lb", over)
	default:
		verdict = words.F("%d lb to spare", litter.DownLb(v.Limit-v.Lb))
	}
	if v.Guessed > 0 {
		against += words.N(", %d weight a guess", ", %d weights a guess", v.Guessed)
	}
	return figure, against, verdict
}

func (weightView) newPart() ownPart {
	w := &weightBar{}
	w.drawn = parts.NewDrawn(parts.Part{}, look.Floor, look.Floor, w.paint)
	return w
}

// weightBar draws a weightView.
type weightBar struct {
	drawn *parts.Drawn
	view  weightView
}

func (w *weightBar) canvas() fyne.CanvasObject { return w.drawn }

func (w *weightBar) set(view any) {
	v := view.(weightView)
	a, b, c := v.words()
	part := parts.Part{Kind: parts.KindText, ID: "weight", Text: join(a, b, c)}
	if v.over() > 0 {
		part.State = string(parts.Alarm)
	}
	w.drawn.SetPart(part)
	if v != w.view {
		w.view = v
		w.drawn.Refresh()
	}
}

// paint draws the figures, and under them the bar: must, should and if from
// the left, a mark where the limit is, and what is over in alarm.
func (w *weightBar) paint(p *parts.Pen, size fyne.Size) {
	v := w.view
	tone, color := parts.Quiet, look.Accent
	if v.over() > 0 {
		tone, color = parts.Alarm, look.Alarm
	}
	panelGround(p, size, tone)
	in := look.U(16)
	figure, against, verdict := v.words()
	head := look.U(54)
	right := size.Width - in
	if verdict != "" {
		l := p.Fit(verdict, parts.Ink{Role: look.Name, Color: color, Lines: 1}, size.Width*0.36, 0)
		p.Put(l, right-l.W, (head-l.H)/2, l.W)
		right -= l.W + look.U(16)
	}
	fig := p.Middle(figure, parts.Ink{Role: look.Place, Lines: 1}, in, 0, size.Width*0.28, head)
	x := in + fig.W + look.U(12)
	p.Middle(against, parts.Ink{Role: look.Body, Lines: 2}, x, look.U(4), right-x, head-look.U(4))
	w.bar(p, in, head+look.U(2), size.Width-2*in, look.U(20), color)
}

func (w *weightBar) bar(p *parts.Pen, x, y, width, h float32, color fyne.ThemeColorName) {
	v := w.view
	p.Rect(x, y, width, h, look.Ground, look.Line, look.U(1), h/2)
	all := max(v.Lb, v.Limit)
	if all <= 0 {
		return
	}
	px := func(lb float64) float32 { return float32(lb/all) * width }
	at := x
	for _, s := range []struct {
		lb    float64
		color fyne.ThemeColorName
	}{{v.Must, look.Balance1}, {v.Should, look.Balance2}, {v.Maybe, look.Balance4}} {
		if wide := px(s.lb); wide > 0 {
			p.Rect(at, y, wide, h, s.color, look.Surface, look.U(1), look.U(3))
			at += wide
		}
	}
	if v.People == 0 {
		return
	}
	mark := look.U(4)
	if v.Lb > v.Limit {
		from := x + px(v.Limit)
		p.Fill(from, y+h-look.U(6), at-from, look.U(6), color)
		p.Fill(from-mark/2, y-look.U(4), mark, h+look.U(8), color)
		return
	}
	p.Fill(x+width-mark, y-look.U(4), mark, h+look.U(8), color)
}
