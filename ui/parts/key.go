package parts

import (
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// Tone is the ground of a key, a panel or a row.
type Tone string

// The tones. There is one filled key on a screen: the one most likely next.
const (
	Usual  Tone = ""       // raised, strong edge
	Filled Tone = "filled" // the key most likely to be touched next
	Alarm  Tone = "alarm"
	Quiet  Tone = "quiet"  // surface, thin border
	Live   Tone = "live"   // soft ground, live edge: picked, open, the present step
	Hole   Tone = "hole"   // page ground, thin border
	Header Tone = "header" // square, the full height of the header
)

// tint is what a tone draws with.
type tint struct {
	ground, edge, text, second, icon fyne.ThemeColorName
	width                            float32
}

func (t Tone) tint() tint {
	switch t {
	case Filled:
		return tint{look.Fill, look.Accent, look.OnFill, look.OnFill, look.OnFill, 2}
	case Alarm:
		return tint{look.AlarmGround, look.Alarm, look.Text, look.Text, look.Alarm, 2}
	case Quiet:
		return tint{look.Surface, look.Line, look.Text, look.Text, look.Text, 1}
	case Live:
		return tint{look.Soft, look.Accent, look.Text, look.Text, look.Accent, 2}
	case Hole:
		return tint{look.Ground, look.Line, look.Text, look.Text, look.Text, 1}
	case Header:
		return tint{look.Raised, look.Line, look.Text, look.Text, look.Text, 1}
	}
	return tint{look.Raised, look.KeyEdge, look.Text, look.Text, look.Text, 1}
}

// Lay is how the words of a key stand.
type Lay string

// The ways to lay out a key.
const (
	LayAuto   Lay = ""
	LayLeft   Lay = "left"   // icon left, words from the left
	LayCentre Lay = "centre" // icon and words together in the middle
	LayStack  Lay = "stack"  // icon over title over second line
)

// KeyView is a key.
type KeyView struct {
	Kind   string // of part; nothing means act
	ID     string
	Title  string
	Second string
	Icon   string
	Mark   MarkView
	Tone   Tone
	Lay    Lay
	Role   look.Role // of the title; nought chooses by size
	Off    bool      // a tap is refused; say why in Second
	State  string    // in the parts file
}

// Key does one thing when it is touched.
type Key struct {
	Touch
	view KeyView
}

// NewKey makes a key; onTap may be nil.
func NewKey(view KeyView, onTap func()) *Key {
	k := &Key{}
	k.OnTap = onTap
	k.touch(k, look.Floor, look.Floor, func(p *Pen, size fyne.Size) { p.key(k.view, size) })
	k.take(view)
	return k
}

// Set shows another view.
func (k *Key) Set(view KeyView) {
	if k.view != view {
		k.take(view)
		k.Refresh()
	}
}

// View is what the key shows.
func (k *Key) View() KeyView { return k.view }

func (k *Key) take(v KeyView) {
	k.view, k.off = v, v.Off
	k.radius = look.RadiusKey
	if v.Tone == Header {
		k.radius = 0
	}
	k.part = v.part()
}

func (v KeyView) part() Part {
	kind, state := v.Kind, v.State
	if kind == "" {
		kind = KindAct
	}
	switch {
	case state == "" && v.Off:
		state = "off"
	case state == "" && v.Tone == Filled:
		state = "next"
	}
	return Part{Kind: kind, ID: v.ID, Text: join(v.Title, v.Second), State: state}
}

// join makes one text of those that are not empty.
func join(texts ...string) string {
	out := ""
	for _, t := range texts {
		if t == "" {
			continue
		}
		if out != "" {
			out += ", "
		}
		out += t
	}
	return out
}

// key draws a key into a size.
func (p *Pen) key(v KeyView, size fyne.Size) {
	t := v.Tone.tint()
	if v.Off {
		t = Hole.tint()
	}
	radius := look.U(look.RadiusKey)
	if v.Tone == Header {
		radius = 0
	}
	p.Rect(0, 0, size.Width, size.Height, t.ground, t.edge, look.U(t.width), radius)
	if v.Tone == Alarm {
		t.icon = look.Alarm
	}
	lay := v.Lay
	if lay == LayAuto {
		lay = autoLay(v, size)
	}
	role := v.Role
	if role == 0 {
		role = look.Name
		switch {
		case v.Tone == Header:
			role = look.BodyBold
		case v.Tone == Filled && size.Width >= look.U(360):
			role = look.Screen
		case size.Width < look.U(200):
			role = look.Group
		}
	}
	if v.Tone == Header && v.Icon != "" && p.longestWord(v.Title)+look.U(16+20*1.45) > size.Width {
		lay = LayStack
	}
	if lay == LayStack {
		p.keyStack(v, t, role, size)
	} else {
		p.keyRow(v, t, role, lay, size)
	}
}

func autoLay(v KeyView, size fyne.Size) Lay {
	switch {
	case v.Icon != "" && size.Height > size.Width*0.7 && v.Tone != Header:
		return LayStack
	case v.Second != "" && size.Width >= look.U(230):
		return LayLeft
	}
	return LayCentre
}

func (p *Pen) keyStack(v KeyView, t tint, role look.Role, size fyne.Size) {
	in := look.U(8)
	w := size.Width - 2*in
	side := float32(0)
	if v.Icon != "" {
		side = min(look.U(48), size.Height*0.3)
		if v.Title == "" && v.Second == "" {
			side = min(look.U(48), size.Height*0.42)
		}
	}
	mid := Ink{Role: role, Color: t.text, Align: fyne.TextAlignCenter}
	room := size.Height - side - 2*in
	under := Ink{Role: look.Small, Color: t.second, Align: fyne.TextAlignCenter}
	title, second := p.Pair(v.Title, mid, v.Second, under, w, room)
	gap := float32(0)
	if side > 0 && title.H+second.H > 0 {
		gap = look.U(6)
	}
	y := (size.Height - side - gap - title.H - second.H) / 2
	if v.Icon != "" {
		p.Icon(v.Icon, t.icon, (size.Width-side)/2, y, side)
		y += side + gap
	}
	p.Put(title, in, y, w)
	p.Put(second, in, y+title.H, w)
}

// longestWord is the width of the longest word of a title in the smallest type.
func (p *Pen) longestWord(title string) (w float32) {
	measure := rulerOf(look.Small.Base() + 1) // it goes down by whole pixels
	for _, word := range strings.Fields(Plain(title)) {
		w = max(w, measure(word, true))
	}
	return w
}

func (p *Pen) keyRow(v KeyView, t tint, role look.Role, lay Lay, size fyne.Size) {
	in := look.U(16)
	if size.Width < look.U(200) {
		in = look.U(8)
	}
	side, gap := float32(0), float32(0)
	if v.Icon != "" || v.Mark != (MarkView{}) {
		side = min(p.Size(role)*1.2, size.Height*0.5)
		if v.Second != "" || v.Tone == Header {
			side = min(p.Size(role)*1.5, size.Height*0.5)
		}
		if lay == LayLeft {
			side = min(p.Size(role)*1.5, size.Height*0.5)
			in = look.U(22)
		}
		if lay != LayLeft { // a word is not broken for the sake of its icon
			side = max(min(side, (size.Width-2*in-p.longestWord(v.Title))/1.45), look.U(20))
		}
		gap = side * 0.45
	}
	w := size.Width - 2*in - side - gap
	room := size.Height - look.U(12)
	align := fyne.TextAlignLeading
	if lay == LayCentre && side == 0 {
		align = fyne.TextAlignCenter
	}
	sub := look.Body
	if size.Width < look.U(230) {
		sub = look.Small
	}
	title, second := p.Pair(v.Title, Ink{Role: role, Color: t.text, Align: align},
		v.Second, Ink{Role: sub, Color: t.second, Align: align}, w, room)
	x := in
	if lay == LayCentre && side > 0 {
		x = (size.Width - side - gap - max(title.W, second.W)) / 2
	}
	if v.Icon != "" {
		p.Icon(v.Icon, t.icon, x, (size.Height-side)/2, side)
	} else if side > 0 {
		p.Mark(v.Mark, x, (size.Height-side)/2, side)
	}
	p.Stack(x+side+gap, 0, w, size.Height, title, second)
}

// QuantityKey is one key of the handful strip: a number, or All.
type QuantityKey struct{ Key }

// NewQuantityKey makes a handful key. The id is the quantity or "all".
func NewQuantityKey(id, title string, filled bool, onTap func()) *QuantityKey {
	q := &QuantityKey{}
	q.OnTap = onTap
	q.touch(q, look.Target, look.Target, func(p *Pen, size fyne.Size) { p.key(q.view, size) })
	q.Set(id, title, filled)
	return q
}

// Set shows another quantity.
func (q *QuantityKey) Set(id, title string, filled bool) { q.SetUnder(id, title, "", filled) }

// SetUnder shows another quantity with a word under it.
func (q *QuantityKey) SetUnder(id, title, second string, filled bool) {
	v := KeyView{Kind: KindQuantity, ID: id, Title: title, Second: second, Role: look.Hand, Lay: LayCentre}
	if second != "" {
		v.Lay, v.Role = LayStack, look.Place
	}
	if filled {
		v.Tone = Filled
		v.State = "set"
	}
	q.Key.Set(v)
}
