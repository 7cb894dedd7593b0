package parts

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// AnswerView is one question about a piece before it goes in.
type AnswerView struct {
	Check    string // id of the question: the keys are CHECK=yes and CHECK=no
	Question string // "Works?"
	Second   string // what to look at
	Answer   string // "", "yes" or "no"
	Yes, No  string // words of the keys
	Off      bool
}

// YesNo is a question with its two keys.
type YesNo struct {
	face
	view    AnswerView
	yes, no *Key
}

// NewYesNo makes a question; onAnswer is called with yes or not.
func NewYesNo(view AnswerView, onAnswer func(yes bool)) *YesNo {
	q := &YesNo{}
	q.yes = NewKey(KeyView{}, func() { onAnswer(true) })
	q.no = NewKey(KeyView{}, func() { onAnswer(false) })
	q.kids = []fyne.CanvasObject{q.yes, q.no}
	q.init(q, 3*look.Target+2*look.Gap, look.Floor, q.lay)
	q.take(view)
	return q
}

// Set shows another question or answer.
func (q *YesNo) Set(view AnswerView) {
	if q.view != view {
		q.take(view)
		q.Refresh()
	}
}

func (q *YesNo) take(v AnswerView) {
	q.view = v
	q.part = Part{Kind: KindText, ID: v.Check, Text: join(v.Question, v.Second), State: v.Answer}
	key := func(answer, title, icon string) KeyView {
		k := KeyView{Kind: KindAnswer, ID: v.Check + "=" + answer, Title: title, Icon: icon, Lay: LayCentre, Role: look.Title, Off: v.Off}
		if v.Answer == answer {
			k.Tone, k.State = Live, "given"
		}
		return k
	}
	q.yes.Set(key("yes", v.Yes, "tick"))
	q.no.Set(key("no", v.No, "cross"))
}

func (q *YesNo) lay(p *Pen, size fyne.Size) {
	gap := look.U(look.Gap)
	key := max(look.U(look.Floor), min(look.U(130), size.Width/4))
	w := size.Width - 2*(key+gap)
	edge := look.Line
	if q.view.Answer == "no" {
		edge = look.Alarm
	}
	p.Rect(0, 0, w, size.Height, look.Surface, edge, look.U(1), look.U(look.RadiusPanel))
	in := look.U(look.InsetPanel)
	room := size.Height - look.U(12)
	title, second := p.Pair(q.view.Question, Ink{Role: look.Title}, q.view.Second, Ink{Role: look.Small}, w-2*in, room)
	p.Stack(in, 0, w-2*in, size.Height, title, second)
	place(q.yes, w+gap, 0, key, size.Height)
	place(q.no, w+key+2*gap, 0, key, size.Height)
}
