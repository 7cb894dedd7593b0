package parts

import (
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/words"
)

// DigitPad is ten digits, delete and done, for a reading or a count.
type DigitPad struct {
	face
	keys []*Key
}

// NewDigitPad makes a pad. onKey is called with "0" to "9", "delete" or "done".
func NewDigitPad(onKey func(id string)) *DigitPad {
	d := &DigitPad{}
	for _, id := range []string{"1", "2", "3", "4", "5", "6", "7", "8", "9", "delete", "0", "done"} {
		v := KeyView{Kind: KindDigit, ID: id, Title: id, Role: look.Place, Lay: LayCentre}
		switch id {
		case "delete":
			v.Title, v.Icon, v.Lay = "", "delete", LayStack
		case "done":
			v.Title, v.Icon, v.Lay = "", "tick", LayStack
		}
		k := NewKey(v, func() { onKey(id) })
		d.keys = append(d.keys, k)
		d.kids = append(d.kids, k)
	}
	d.init(d, 3*look.Floor+2*look.Gap, 4*look.Floor+3*look.Gap, func(_ *Pen, size fyne.Size) {
		rows(d.kids, 3, size)
	})
	return d
}

// SetDone lights the done key, or shuts it while the number cannot pass.
func (d *DigitPad) SetDone(tone Tone, off bool) {
	k := d.keys[len(d.keys)-1]
	v := k.view
	v.Tone, v.Off = tone, off
	k.Set(v)
}

// rows lays objects out in equal cells, so many to a row.
func rows(objs []fyne.CanvasObject, cols int, size fyne.Size) {
	gap := look.U(look.Gap)
	n := (len(objs) + cols - 1) / cols
	w := (size.Width - gap*float32(cols-1)) / float32(cols)
	h := (size.Height - gap*float32(n-1)) / float32(n)
	for i, o := range objs {
		place(o, float32(i%cols)*(w+gap), float32(i/cols)*(h+gap), w, h)
	}
}

// The rows of the letter pad. Keys of our own, because the toolkit raises no
// keyboard on a desktop.
var (
	letterRows = []string{"qwertyuiop", "asdfghjkl", "zxcvbnm"}
	digitRows  = []string{"1234567890", "-/.,:'()&", "#+%\"?!*"}
)

// LetterPad is a keyboard for names, notes and Find. Its keys are of kind act
// with the letter as id; shift and figures change what they write.
type LetterPad struct {
	face
	// OnText is called with what was typed, a single character.
	OnText func(string)
	// OnDelete takes the last character back.
	OnDelete func()
	// OnDone ends typing.
	OnDone func()

	keys   [][]*Key
	shift  *Key
	switc  *Key
	upper  bool
	digits bool
}

// NewLetterPad makes a letter pad that begins with a capital.
func NewLetterPad(onText func(string), onDelete, onDone func()) *LetterPad {
	l := &LetterPad{OnText: onText, OnDelete: onDelete, OnDone: onDone, upper: true}
	for y, row := range letterRows {
		var keys []*Key
		for x := range row {
			k := NewKey(KeyView{}, func() { l.typed(l.letter(y, x)) })
			keys = append(keys, k)
			l.kids = append(l.kids, k)
		}
		l.keys = append(l.keys, keys)
	}
	add := func(id, title, icon string, tone Tone, do func()) *Key {
		k := NewKey(KeyView{ID: id, Title: title, Icon: icon, Tone: tone, Lay: LayCentre, Role: look.Group}, do)
		l.kids = append(l.kids, k)
		return k
	}
	l.shift = add("shift", "", "shift", Usual, func() { l.upper = !l.upper; l.label() })
	add("delete", "", "delete", Usual, func() { l.OnDelete() })
	l.switc = add("figures", "123", "", Usual, func() { l.digits = !l.digits; l.label() })
	add("space", words.L("space"), "", Usual, func() { l.typed(" ") })
	add("done", words.L("Done"), "tick", Filled, func() { l.OnDone() })
	l.init(l, 10*look.Floor+9*look.Gap, 4*look.Floor+3*look.Gap, l.lay)
	l.label()
	return l
}

func (l *LetterPad) letter(y, x int) string {
	if l.digits {
		return digitRows[y][x : x+1]
	}
	s := letterRows[y][x : x+1]
	if l.upper {
		return strings.ToUpper(s)
	}
	return s
}

func (l *LetterPad) typed(s string) {
	l.OnText(s)
	if l.upper && s != " " && !l.digits {
		l.upper = false
		l.label()
	}
}

// Upper makes the next letter a capital or not, as at the start of a name.
func (l *LetterPad) Upper(on bool) {
	if l.upper != on {
		l.upper = on
		l.label()
	}
}

func (l *LetterPad) label() {
	for y, row := range l.keys {
		for x, k := range row {
			s := l.letter(y, x)
			k.Set(KeyView{Kind: KindAct, ID: strings.ToLower(s), Title: s, Lay: LayCentre, Role: look.Screen})
		}
	}
	v := l.shift.view
	v.Tone, v.Off = Usual, l.digits
	if l.upper && !l.digits {
		v.Tone = Live
	}
	l.shift.Set(v)
	v = l.switc.view
	v.Title = "123"
	if l.digits {
		v.Title = "abc"
	}
	l.switc.Set(v)
}

func (l *LetterPad) lay(_ *Pen, size fyne.Size) {
	gap := look.U(look.Gap)
	w := (size.Width - 9*gap) / 10
	h := (size.Height - 3*gap) / 4
	step := w + gap
	for y, row := range l.keys {
		x := float32(y) * step / 2
		if y == 2 {
			x = step * 1.5
		}
		for _, k := range row {
			place(k, x, float32(y)*(h+gap), w, h)
			x += step
		}
	}
	y := 2 * (h + gap)
	n := len(l.kids)
	place(l.kids[n-5], 0, y, w*1.5, h)
	place(l.kids[n-4], step*8.5, y, size.Width-step*8.5, h)
	y += h + gap
	place(l.kids[n-3], 0, y, w*1.5, h)
	place(l.kids[n-2], step*1.5, y, step*6-gap, h)
	place(l.kids[n-1], step*7.5, y, size.Width-step*7.5, h)
}

// ReadoutView is a number or a word while it is typed.
type ReadoutView struct {
	ID   string
	Text string
	Tone Tone // Live while typing, Alarm when it cannot pass, Hole else
	Role look.Role
}

// Readout shows what is being typed.
type Readout struct {
	face
	view ReadoutView
}

// NewReadout makes a readout.
func NewReadout(view ReadoutView) *Readout {
	r := &Readout{}
	r.init(r, look.Floor, look.Floor, func(p *Pen, size fyne.Size) {
		v := r.view
		t := v.Tone.tint()
		if v.Tone == Live || v.Tone == Usual {
			t.ground = look.Ground
		}
		p.Rect(0, 0, size.Width, size.Height, t.ground, t.edge, look.U(t.width), look.U(look.RadiusPanel))
		role := v.Role
		if role == 0 {
			role = look.Figure
		}
		in := look.U(10)
		p.Middle(v.Text, Ink{Role: role, Align: fyne.TextAlignCenter, Lines: 1}, in, 0, size.Width-2*in, size.Height)
	})
	r.take(view)
	return r
}

// Set shows another text.
func (r *Readout) Set(view ReadoutView) {
	if r.view != view {
		r.take(view)
		r.Refresh()
	}
}

func (r *Readout) take(v ReadoutView) {
	r.view = v
	r.part = Part{Kind: KindText, ID: v.ID, Text: v.Text}
}
