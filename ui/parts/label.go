package parts

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// LabelView is a text for reading. Set bold words in it with [B].
type LabelView struct {
	ID    string // of the text part; nothing leaves it unlisted
	Text  string
	Role  look.Role
	Color fyne.ThemeColorName // nothing means look.Text
	Align fyne.TextAlign
	Icon  string // before the text
	Lines int    // at most so many lines; nought for as many as there is room for
	Mid   bool   // in the vertical middle of its room
	State string
}

// Label is a text of one line or more, wrapped between words.
type Label struct {
	face
	view LabelView
}

// NewLabel makes a text of one line.
func NewLabel(view LabelView) *Label {
	view.Lines = 1
	return NewLines(view)
}

// NewLines makes a text of as many lines as its view allows.
func NewLines(view LabelView) *Label {
	l := &Label{}
	l.init(l, 8, 20, l.paintLabel)
	l.take(view)
	return l
}

// Set shows another text.
func (l *Label) Set(view LabelView) {
	if l.view != view {
		l.take(view)
		l.Refresh()
	}
}

// SetText changes the text alone.
func (l *Label) SetText(text string) {
	v := l.view
	v.Text = text
	l.Set(v)
}

// View is what the label shows.
func (l *Label) View() LabelView { return l.view }

func (l *Label) take(v LabelView) {
	l.view = v
	l.part = Part{}
	if v.ID != "" {
		l.part = Part{Kind: KindText, ID: v.ID, Text: v.Text, State: v.State}
	}
}

func (v LabelView) ink() Ink {
	return Ink{Role: v.Role, Color: v.Color, Align: v.Align, Lines: v.Lines}
}

// iconRoom is what the icon before a text takes, gap included.
func (v LabelView) iconRoom(p *Pen) (side, room float32) {
	if v.Icon == "" {
		return 0, 0
	}
	side = round(p.Size(v.Role) * 1.25)
	return side, side + look.U(8)
}

// HeightFor is the height of the text at a width, in pixels.
func (l *Label) HeightFor(width float32) float32 {
	var p Pen
	_, room := l.view.iconRoom(&p)
	return max(p.fit(l.view.Text, l.view.ink(), width-room, 0).H, 1)
}

func (l *Label) paintLabel(p *Pen, size fyne.Size) {
	v := l.view
	side, room := v.iconRoom(p)
	laid := p.fit(v.Text, v.ink(), size.Width-room, size.Height)
	y := float32(0)
	if v.Mid || v.Lines == 1 {
		y = (size.Height - laid.H) / 2
	}
	x := float32(0)
	if v.Icon != "" {
		color := v.Color
		if color == "" {
			color = look.Text
		}
		if v.Align == fyne.TextAlignTrailing {
			x = size.Width - room - laid.W
			p.Icon(v.Icon, color, x, y+(laid.pitch-side)/2, side)
			p.Put(laid, x+room, y, laid.W)
			return
		}
		p.Icon(v.Icon, color, 0, y+(laid.pitch-side)/2, side)
	}
	p.Put(laid, x+room, y, size.Width-room)
}

// RowView is a row of a list.
type RowView struct {
	Kind   string // of part; nothing means act, and text where Off
	ID     string
	Figure string // how many, large, in the first column
	Number string // its place in an order, in the first column
	When   string // a time of day, in the first column
	Mark   MarkView
	Icon   string // in the first column
	Title  string
	Second string
	Right  string // at the right end
	Strong bool   // the right end is what the row is about
	Go     string // icon at the right end: go, back, cross
	Tone   Tone   // "" lies on its panel with a rule under it; Live, Quiet, Hole, Alarm are boxes
	Open   bool   // the title in regular 24, as in the open list
	Dim    bool   // the second line and the right end in the quiet colour
	NoRule bool
	Off    bool // for reading
	Tall   bool // a hand high, for words of several lines
	State  string
}

// Row is a row of a list: 88 high where it is touched, 56 to read.
type Row struct {
	Touch
	view RowView
}

// NewRow makes a row.
func NewRow(view RowView, onTap func()) *Row {
	r := &Row{}
	r.OnTap = onTap
	h := look.Floor
	if view.Tall {
		h = look.Target
	}
	if view.Off {
		h = 48
		if view.Second != "" {
			h = 64
		}
	}
	r.touch(r, 2*look.Target, h, r.paintRow)
	r.radius = look.RadiusPanel
	r.take(view)
	return r
}

// Set shows another view.
func (r *Row) Set(view RowView) {
	if r.view != view {
		r.take(view)
		r.Refresh()
	}
}

// View is what the row shows.
func (r *Row) View() RowView { return r.view }

func (r *Row) take(v RowView) {
	r.view, r.off = v, v.Off
	kind := v.Kind
	if kind == "" {
		kind = KindAct
		if v.Off {
			kind = KindText
		}
	}
	figure := v.Figure
	if figure == "" {
		figure = v.Number
	}
	if figure == "" {
		figure = v.When
	}
	title := v.Title
	if figure != "" {
		title = figure + " " + title
	}
	r.part = Part{Kind: kind, ID: v.ID, Text: join(title, v.Second, v.Right), State: v.State}
}

func (r *Row) paintRow(p *Pen, size fyne.Size) {
	v := r.view
	in := look.U(12)
	t := v.Tone.tint()
	if v.Tone == Usual {
		if !v.NoRule {
			p.Fill(0, size.Height-look.U(1), size.Width, look.U(1), look.Line)
		}
	} else {
		p.Rect(0, 0, size.Width, size.Height, t.ground, t.edge, look.U(t.width), look.U(look.RadiusPanel))
	}
	x := in + r.paintFirst(p, in, size.Height)
	end := size.Width - in
	quiet := look.Text
	if v.Dim {
		quiet = look.Dim
	}
	if v.Go != "" {
		side := look.U(28)
		p.Icon(v.Go, look.Text, end-side, (size.Height-side)/2, side)
		end -= side + look.U(10)
	}
	if v.Right != "" {
		ink := Ink{Role: look.Body, Color: quiet, Align: fyne.TextAlignTrailing, Lines: 2}
		if v.Strong {
			ink.Role, ink.Color = look.Group, look.Text
		}
		l := p.fit(v.Right, ink, (end-x)*0.45, size.Height)
		p.Put(l, end-l.W, (size.Height-l.H)/2, l.W)
		end -= l.W + look.U(12)
	}
	role := look.Name
	switch {
	case v.Open:
		role = look.Open
	case size.Height < look.U(64):
		role = look.Group
	}
	sub := look.Lead
	if size.Height < look.U(72) {
		sub = look.Small
	}
	room := size.Height - look.U(4)
	title, second := p.Pair(v.Title, Ink{Role: role}, v.Second, Ink{Role: sub, Color: quiet}, end-x, room)
	p.Stack(x, 0, end-x, size.Height, title, second)
}

// paintFirst draws the first column and returns its width.
func (r *Row) paintFirst(p *Pen, x, h float32) float32 {
	v := r.view
	mid := fyne.TextAlignCenter
	switch {
	case v.Figure != "":
		l := p.fit(v.Figure, Ink{Role: look.Hand, Lines: 1}, look.U(140), h)
		p.Put(l, x, (h-l.H)/2, l.W)
		return max(look.U(54), l.W+look.U(14))
	case v.When != "":
		l := p.fit(v.When, Ink{Role: look.Name, Lines: 1}, look.U(140), h)
		p.Put(l, x, (h-l.H)/2, l.W)
		return l.W + look.U(18)
	case v.Number != "":
		w := look.U(42)
		role, color := look.Title, look.Text
		if v.Tone == Live {
			role, color = look.Hand, look.Accent
		}
		if v.Tone == Hole {
			color = look.Dim
		}
		p.Middle(v.Number, Ink{Role: role, Color: color, Align: mid, Lines: 1}, x, 0, w, h)
		return w + look.U(10)
	case v.Mark != (MarkView{}):
		side := look.U(24)
		if h >= look.U(72) {
			side = look.U(40)
		}
		return p.Mark(v.Mark, x, (h-side)/2, side) + look.U(12)
	case v.Icon != "":
		side := look.U(28)
		p.Icon(v.Icon, v.Tone.tint().icon, x, (h-side)/2, side)
		return side + look.U(12)
	}
	return 0
}
