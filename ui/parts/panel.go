package parts

import (
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// PanelView is a surface that things lie on.
type PanelView struct {
	ID     string // of the text part; nothing leaves the panel unlisted
	Tone   Tone   // Usual here means surface with a thin border
	Hem    bool   // the tarp itself: a hem with grommets
	Icon   string
	Figure string // a number before the title, large
	Title  string
	Note   string // after the title
	Right  string // at the right end
	Rule   bool   // a rule under the head
	Large  bool   // the title in 26 with the note under it
	Tight  bool   // the content takes the whole panel up to the border
	Snug   bool   // as close to the border as the hem, without it
}

// Panel is a surface with a head and one object on it.
type Panel struct {
	face
	view    PanelView
	content fyne.CanvasObject
}

// NewPanel makes a panel; content may be nil.
func NewPanel(view PanelView, content fyne.CanvasObject) *Panel {
	q := &Panel{}
	q.init(q, look.Floor, look.Floor/2, q.paintPanel)
	q.SetInside(content)
	q.take(view)
	return q
}

// Set shows another view.
func (q *Panel) Set(view PanelView) {
	if q.view != view {
		q.take(view)
		q.Refresh()
	}
}

// SetInside puts another object on the panel.
func (q *Panel) SetInside(content fyne.CanvasObject) {
	q.content, q.kids = content, nil
	if content != nil {
		q.kids = []fyne.CanvasObject{content}
	}
	if q.Size().Width > 0 {
		q.Refresh()
	}
}

// SetCover makes the panel hide and shield all that is drawn before it.
func (q *Panel) SetCover(on bool) { q.covers = on }

func (q *Panel) take(v PanelView) {
	q.view = v
	q.part = Part{}
	if v.ID != "" {
		q.part = Part{Kind: KindText, ID: v.ID, Text: join(strings.TrimSpace(v.Figure+" "+v.Title), v.Note, v.Right), State: string(v.Tone)}
	}
}

// HeightFor is the height of the panel at a width, in pixels.
func (q *Panel) HeightFor(width float32) float32 {
	in := q.inset()
	h := q.headHeight() + 2*in.y
	if q.content != nil {
		h += heightFor(q.content, width-2*in.x)
	}
	return max(h, look.U(look.Floor/2))
}

type insets struct{ x, y float32 }

func (q *Panel) inset() insets {
	if q.view.Tight {
		return insets{look.U(2), look.U(2)}
	}
	if q.view.Hem || q.view.Snug {
		return insets{look.U(14), look.U(5)}
	}
	return insets{look.U(look.InsetPanel), look.U(10)}
}

func (q *Panel) headHeight() float32 {
	var p Pen
	v := q.view
	switch {
	case v.Title == "" && v.Right == "" && v.Figure == "":
		return 0
	case v.Figure != "":
		return round(p.Size(look.Screen)*1.3) + look.U(4)
	case v.Large:
		h := round(p.Size(look.Title)*1.2) + look.U(4)
		if v.Note != "" {
			h += round(p.Size(look.Small) * 1.26)
		}
		return h + look.U(6)
	}
	return round(p.Size(look.TileName)*1.3) + look.U(6)
}

func (q *Panel) paintPanel(p *Pen, size fyne.Size) {
	v := q.view
	t := v.Tone.tint()
	if v.Tone == Usual {
		t = Quiet.tint()
	}
	p.Rect(0, 0, size.Width, size.Height, t.ground, t.edge, look.U(t.width), look.U(look.RadiusPanel))
	in := q.inset()
	if v.Hem {
		q.paintHem(p, size)
	}
	head := q.headHeight()
	top := look.U(4)
	if v.Tight || v.Hem {
		in.y = look.U(4)
	}
	if head > 0 {
		q.paintHead(p, size, max(in.x, look.U(look.InsetPanel)), top)
	}
	if v.Rule {
		p.Fill(look.U(12), top+head, size.Width-look.U(24), look.U(1), t.edge)
	}
	if q.content != nil {
		y := in.y
		if head > 0 {
			y = top + head
		}
		b := bleedOf(q.content)
		place(q.content, in.x-b, y-b, size.Width-2*in.x+2*b, size.Height-y-in.y+2*b)
	}
}

// paintHem draws the grommets of the tarp.
func (q *Panel) paintHem(p *Pen, size fyne.Size) {
	d, in := look.U(10), look.U(3)
	for _, x := range []float32{in, size.Width - in - d} {
		for _, y := range []float32{in, size.Height - in - d} {
			p.Rect(x, y, d, d, look.Ground, look.Strong, look.U(2), d/2)
		}
	}
}

func (q *Panel) paintHead(p *Pen, size fyne.Size, in, top float32) {
	v := q.view
	role, color := look.TileName, look.Text
	if v.Large {
		role = look.Title
	}
	if v.Tone == Live {
		color = look.Accent
	}
	if v.Tone == Alarm {
		color = look.Alarm
	}
	x, pitch := in+look.U(8), round(p.Size(role)*1.3)
	if v.Figure != "" {
		pitch = round(p.Size(look.Screen) * 1.3)
	}
	if !v.Hem {
		x = in
	}
	end := size.Width - in
	if v.Right != "" {
		r := p.fit(v.Right, Ink{Role: look.Body, Lines: 1}, (end-x)*0.6, 0)
		p.Put(r, end-r.W, top+(pitch-r.H)/2, r.W)
		end -= r.W + look.U(12)
	}
	if v.Icon != "" {
		side := p.Size(role) * 1.2
		p.Icon(v.Icon, color, x, top+(pitch-side)/2, side)
		x += side + look.U(10)
	}
	if v.Figure != "" {
		f := p.fit(v.Figure, Ink{Role: look.Screen, Color: color, Lines: 1}, end-x, 0)
		p.Put(f, x, top+(pitch-f.H)/2, f.W)
		x += f.W + look.U(10)
	}
	title := p.fit(v.Title, Ink{Role: role, Color: color, Lines: 1}, end-x, 0)
	p.Put(title, x, top+(pitch-title.H)/2, title.W)
	if v.Note == "" {
		return
	}
	if v.Large {
		p.Write(v.Note, Ink{Role: look.Small, Lines: 1}, x, top+pitch, size.Width-in-x, 0)
		return
	}
	x += title.W + look.U(14)
	note := p.fit(v.Note, Ink{Role: look.Body, Lines: 1}, end-x, 0)
	p.Put(note, x, top+(pitch-note.H)/2, note.W)
}
