package parts

import (
	"fmt"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// DoorMode is where the walk stands with a door.
type DoorMode string

// The modes of a door.
const (
	DoorAhead  DoorMode = ""       // "5 to go"
	DoorHere   DoorMode = "here"   // the walker stands at it
	DoorHome   DoorMode = "home"   // nothing is missing
	DoorPassed DoorMode = "passed" // the walker went by with things to go
)

// DoorView is one door of a rig drawn unrolled, with the ground under it.
type DoorView struct {
	ID    string
	Name  string // L1, T2, "box 1", "cab"
	Count string // "5 to go", "6, passed", "home"
	Mode  DoorMode
	Wheel bool   // a wheel stands under it
	Cab   string // "left" or "right" draws a cab with its nose there
	Side  string // name of the side, over this door
	State string // in the parts file; nothing means the mode
}

// DoorHigh is the height of a door with its side over it and the ground under it.
const DoorHigh float32 = 140

// Door is a door to stand at. The whole column is the target: drawing, wheel
// and label.
type Door struct {
	Touch
	view DoorView
}

// NewDoor makes a door.
func NewDoor(view DoorView, onTap func()) *Door {
	d := &Door{}
	d.OnTap = onTap
	d.touch(d, look.Floor, DoorHigh, d.paintDoor)
	d.radius = look.RadiusTile
	d.take(view)
	return d
}

// Set shows another view.
func (d *Door) Set(view DoorView) {
	if d.view != view {
		d.take(view)
		d.Refresh()
	}
}

func (d *Door) take(v DoorView) {
	d.view = v
	state := v.State
	if state == "" {
		state = string(v.Mode)
	}
	d.part = Part{Kind: KindDoor, ID: v.ID, Text: join(v.Name, v.Count), State: state}
}

func (d *Door) paintDoor(p *Pen, size fyne.Size) {
	v := d.view
	top := look.U(24)
	h := size.Height - top - look.U(34)
	if v.Side != "" {
		p.Write(v.Side, Ink{Role: look.Small, Align: fyne.TextAlignCenter, Lines: 1}, 0, 0, size.Width, 0)
	}
	ground := top + h + look.U(20)
	over := look.U(look.Gap) / 2 // the ground goes on between the doors
	p.Fill(-over, ground, size.Width+2*over, look.U(2), look.Strong)
	t, icon := Usual.tint(), ""
	switch v.Mode {
	case DoorHere:
		t = Filled.tint()
	case DoorHome:
		t, icon = Quiet.tint(), "tick"
	}
	gap := look.U(1)
	if v.Cab != "" {
		d.paintCab(p, t, gap, top, size.Width-2*gap, h)
	} else {
		p.Rect(gap, top, size.Width-2*gap, h, t.ground, t.edge, look.U(t.width), look.U(3))
	}
	in := look.U(4)
	if v.Cab == "" {
		name := p.fit(v.Name, Ink{Role: look.Title, Color: t.text, Align: fyne.TextAlignCenter, Lines: 2}, size.Width-2*in, h-look.U(30))
		count := p.fit(v.Count, Ink{Role: look.Small, Color: t.text, Lines: 2}, size.Width-2*in, h-name.H)
		y := top + (h-name.H-count.H)/2
		p.Put(name, in, y, size.Width-2*in)
		d.countRow(p, count, icon, t, y+name.H, size.Width)
	} else {
		name := p.fit(v.Name, Ink{Role: look.SmallBold, Color: t.text, Align: fyne.TextAlignCenter, Lines: 1}, size.Width-2*in, 0)
		count := p.fit(v.Count, Ink{Role: look.Small, Color: t.text, Lines: 1}, size.Width-2*in, 0)
		y := top + h*0.42 + (h*0.55-name.H-count.H)/2
		if v.Count == "" {
			d.countRow(p, name, icon, t, y, size.Width)
		} else {
			p.Put(name, in, y, size.Width-2*in)
			d.countRow(p, count, icon, t, y+name.H, size.Width)
		}
	}
	foot := size.Width / 2 // the walker stands beside a wheel, not in it
	if v.Wheel {
		r := look.U(15)
		mid := size.Width / 2
		if v.Mode == DoorHere {
			foot, mid = size.Width*0.22, size.Width*0.72
		}
		p.Rect(mid-r, ground-r-look.U(4), 2*r, 2*r, look.Ground, look.Strong, look.U(6), r)
	}
	if v.Mode == DoorHere {
		side := look.U(26)
		p.Fill(foot-side/2, top+h+look.U(2), side, side, look.Ground)
		p.Icon("one", look.Accent, foot-side/2, top+h+look.U(3), side)
	}
}

// countRow draws a count in the middle of a width, with a tick where all is home.
func (d *Door) countRow(p *Pen, l Laid, icon string, t tint, y, width float32) {
	w, side := l.W, look.U(18)
	if icon != "" {
		w += side + look.U(4)
	}
	x := (width - w) / 2
	if icon != "" {
		p.Icon(icon, t.text, x, y+(l.H-side)/2, side)
		x += side + look.U(4)
	}
	p.Put(l, x, y, l.W)
}

// paintCab draws a cab from the side.
func (d *Door) paintCab(p *Pen, t tint, x, y, w, h float32) {
	nx := func(f float32) float32 {
		if d.view.Cab == "right" {
			return (1 - f) * w
		}
		return f * w
	}
	svg := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="%[1]g" height="%[2]g" viewBox="0 0 %[1]g %[2]g">`+
		`<path d="M%[3]g %[7]g L%[4]g 1 L%[5]g 1 L%[5]g %[8]g L%[3]g %[8]g Z" fill="ink1" stroke="ink2" stroke-width="%[15]g"/>`+
		`<path d="M%[9]g %[10]g L%[11]g %[12]g L%[13]g %[12]g L%[13]g %[10]g L%[14]g %[10]g Z" fill="ink3" stroke="ink2" stroke-width="1.5"/></svg>`,
		w, h, nx(0.012), nx(0.24), nx(0.988), 0.0, h*0.5, h-1, nx(0.17), h*0.41, nx(0.31), h*0.1, nx(0.9), nx(0.9), max(t.width, 1.5))
	name := fmt.Sprintf("cab-%s-%gx%g-%g", d.view.Cab, w, h, t.width)
	p.Under(look.Drawing(name, svg, t.ground, t.edge, look.Ground), t.ground, x, y, w, h)
}

// SlotMode is what is known of a slot in a compartment.
type SlotMode string

// The modes of a slot.
const (
	SlotHole  SlotMode = "hole"  // empty, and known to be
	SlotHome  SlotMode = "home"  // its piece is in
	SlotNow   SlotMode = "now"   // this one next
	SlotAlarm SlotMode = "alarm" // in the way, or empty and nobody logged it
)

// SlotLay is how a slot is written.
type SlotLay string

// The ways to write a slot.
const (
	SlotSide   SlotLay = ""       // icon left, words beside it
	SlotCorner SlotLay = "corner" // name and icon on top, second line at the foot: the sweep
	SlotTall   SlotLay = "tall"   // words on top, icon at the foot: crates
	SlotLine   SlotLay = "line"   // one line, word at the right end: struts
	SlotCount  SlotLay = "count"  // word, large figure, word: batteries in a row
)

// SlotView is the slot of a piece in a compartment.
type SlotView struct {
	ID     string
	Name   string // for SlotCount the large figure
	Over   string // over the figure, SlotCount only
	Second string
	Word   string // at the right end, SlotLine only
	Icon   string
	Mode   SlotMode
	Lay    SlotLay
	Strut  bool // round ends: it is a tube
	Off    bool // for looking only
	State  string
}

// RoomySlot is how high a slot must be for its words to be written larger.
const RoomySlot float32 = 112

// SlotBox is a slot as it is in life, a dark hole where it is empty.
type SlotBox struct {
	Touch
	view SlotView
}

// NewSlotBox makes a slot.
func NewSlotBox(view SlotView, onTap func()) *SlotBox {
	s := &SlotBox{}
	s.OnTap = onTap
	s.touch(s, look.Floor/2, look.Floor/3, s.paintSlot)
	s.take(view)
	return s
}

// Set shows another view.
func (s *SlotBox) Set(view SlotView) {
	if s.view != view {
		s.take(view)
		s.Refresh()
	}
}

func (s *SlotBox) take(v SlotView) {
	s.view, s.off = v, v.Off
	s.radius = look.RadiusTile
	if v.Strut {
		s.radius = look.RadiusStrut
	}
	state := v.State
	if state == "" {
		state = string(v.Mode)
	}
	name := v.Name
	if v.Over != "" {
		name = v.Over + " " + v.Name
	}
	s.part = Part{Kind: KindSlot, ID: v.ID, Text: join(name, v.Second, v.Word), State: state}
}

func (m SlotMode) tint() tint {
	switch m {
	case SlotHome:
		return Usual.tint()
	case SlotNow:
		t := Live.tint()
		t.icon = look.Text
		return t
	case SlotAlarm:
		t := Alarm.tint()
		t.icon = look.Text
		return t
	}
	return Hole.tint()
}

func (s *SlotBox) paintSlot(p *Pen, size fyne.Size) {
	v := s.view
	t := v.Mode.tint()
	if v.Mode == SlotHome && !v.Off {
		t.edge = look.Edge
	}
	p.Rect(0, 0, size.Width, size.Height, t.ground, t.edge, look.U(t.width), min(look.U(s.radius), size.Height/2))
	in := look.U(10)
	w := size.Width - 2*in
	switch v.Lay {
	case SlotCorner:
		s.corner(p, t, in, w, size)
	case SlotTall:
		name := p.Write(v.Name, Ink{Role: look.BodyBold}, in, look.U(7), w, size.Height*0.5)
		p.Write(v.Second, Ink{Role: look.Small}, in, look.U(8)+name.H, w, size.Height-name.H-look.U(16))
		if v.Icon != "" {
			side := look.U(34)
			p.Icon(v.Icon, t.icon, in, size.Height-side-look.U(8), side)
		}
	case SlotLine:
		in = look.U(13)
		word := p.fit(v.Word, Ink{Role: look.Small, Lines: 1}, size.Width/2, 0)
		p.Put(word, size.Width-in-word.W, (size.Height-word.H)/2, word.W)
		p.Middle(v.Name, Ink{Role: look.BodyBold, Lines: 1}, in, 0, size.Width-2*in-word.W-look.U(6), size.Height)
	case SlotCount:
		role := look.Small
		if v.Mode == SlotNow {
			role = look.SmallBold
		}
		mid := fyne.TextAlignCenter
		in = look.U(3)
		w = size.Width - 2*in
		p.Stack(in, 0, w, size.Height,
			p.fit(v.Over, Ink{Role: look.Small, Align: mid, Lines: 1}, w, 0),
			p.fit(v.Name, Ink{Role: look.Place, Align: mid, Lines: 1}, w, 0),
			p.fit(v.Second, Ink{Role: role, Align: mid, Lines: 2}, w, 0))
	default:
		x := in
		if v.Icon != "" {
			side := look.U(26)
			p.Icon(v.Icon, t.icon, in, (size.Height-side)/2, side)
			x = in + side + look.U(6)
		}
		w = size.Width - x - look.U(6)
		role, sub := look.BodyBold, look.Small
		if size.Height >= look.U(RoomySlot) {
			role, sub = look.TileName, look.Body
		}
		name, second := p.Pair(v.Name, Ink{Role: role}, v.Second, Ink{Role: sub}, w, size.Height-look.U(4))
		p.Stack(x, 0, w, size.Height, name, second)
	}
}

func (s *SlotBox) corner(p *Pen, t tint, in, w float32, size fyne.Size) {
	v := s.view
	w += look.U(5)
	ink, side, sub := Ink{Role: look.TileName}, look.U(24), look.Small
	if size.Height >= look.U(RoomySlot) {
		ink.Role, sub = look.Group, look.Body
	}
	second := p.fit(v.Second, Ink{Role: sub}, w, size.Height*0.45)
	y := size.Height - second.H - look.U(8)
	if v.Icon != "" {
		ink.First, ink.Deep = side+look.U(8), side
	}
	name := p.fit(v.Name, ink, w, y-look.U(9))
	if name.cut && len(second.lines) > 1 { // the name goes before the words under it
		second = p.fit(v.Second, Ink{Role: sub, Lines: 1}, w, 0)
		y = size.Height - second.H - look.U(8)
		name = p.fit(v.Name, ink, w, y-look.U(9))
	}
	p.Put(second, in, y, w)
	if v.Icon != "" {
		p.Icon(v.Icon, t.icon, size.Width-side-look.U(9), look.U(9), side)
	}
	p.Put(name, in, look.U(9), w)
}
