package parts

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// RailKeyView is a key of the rail.
type RailKeyView struct {
	ID   string
	Word string
	Icon string
	Here bool   // this screen is the one shown
	Off  bool   // cannot be gone to now
	Note string // one short word at the icon, such as a number of open searches
}

// RailKey goes to a screen.
type RailKey struct {
	Touch
	view RailKeyView
}

// NewRailKey makes a key of the rail.
func NewRailKey(view RailKeyView, onTap func()) *RailKey {
	k := &RailKey{}
	k.OnTap = onTap
	k.touch(k, look.Floor, look.Floor, k.paintRail)
	k.radius = 0
	k.take(view)
	return k
}

// Set shows another view.
func (k *RailKey) Set(view RailKeyView) {
	if k.view != view {
		k.take(view)
		k.Refresh()
	}
}

func (k *RailKey) take(v RailKeyView) {
	k.view, k.off = v, v.Off
	k.part = Part{Kind: KindScreen, ID: v.ID, Text: v.Word}
	if v.Here {
		k.part.State = "here"
	} else if v.Off {
		k.part.State = "off"
	}
}

func (k *RailKey) paintRail(p *Pen, size fyne.Size) {
	v := k.view
	ground, icon, role := look.Ground, look.Text, look.Small
	if v.Here {
		ground, icon, role = look.Surface, look.Accent, look.SmallBold
	}
	p.Fill(0, 0, size.Width, size.Height, ground)
	if v.Here {
		p.Fill(0, 0, look.U(6), size.Height, look.Accent)
	}
	in := look.U(5)
	side := look.U(36)
	word := p.fit(v.Word, Ink{Role: role, Align: fyne.TextAlignCenter, Lines: 2}, size.Width-2*in, size.Height-side)
	gap := look.U(6)
	y := (size.Height - side - gap - word.H) / 2
	p.Icon(v.Icon, icon, (size.Width-side)/2, y, side)
	p.Put(word, in, y+side+gap, size.Width-2*in)
	if v.Note != "" {
		p.Write(v.Note, Ink{Role: look.SmallBold, Lines: 1}, size.Width/2+side/2+look.U(2), y-look.U(4), size.Width/2-side/2, 0)
	}
}

// RigTabView is a rig in the header.
type RigTabView struct {
	ID    string
	Mark  MarkView
	Name  string // R41
	Count string // "286 off", the figure in bold with B
	Icon  string // before the count
	Shown bool   // its pieces are shown
	Lead  bool   // it is what the screen is about: the largest thing on it
	Off   bool
	State string // in the parts file; nothing means shown or hidden
}

// RigTab is a rig in the header: it shows or hides its pieces, or turns the
// screen to it.
type RigTab struct {
	Touch
	view RigTabView
}

// NewRigTab makes a tab.
func NewRigTab(view RigTabView, onTap func()) *RigTab {
	t := &RigTab{}
	t.OnTap = onTap
	t.touch(t, look.Floor, look.Header, t.paintTab)
	t.radius = 0
	t.take(view)
	return t
}

// Set shows another view.
func (t *RigTab) Set(view RigTabView) {
	if t.view != view {
		t.take(view)
		t.Refresh()
	}
}

func (t *RigTab) take(v RigTabView) {
	t.view, t.off = v, v.Off
	state := v.State
	if state == "" {
		state = "hidden"
		if v.Shown {
			state = "shown"
		}
	}
	t.part = Part{Kind: KindRig, ID: v.ID, Text: join(v.Name, v.Count), State: state}
}

func (t *RigTab) paintTab(p *Pen, size fyne.Size) {
	v := t.view
	ground := look.Ground
	if v.Shown {
		ground = look.Surface
	}
	p.Fill(0, 0, size.Width, size.Height, ground)
	bar := look.U(5)
	if v.Shown {
		p.Fill(0, size.Height-bar, size.Width, bar, look.Accent)
	} else {
		p.Fill(0, size.Height-look.U(1), size.Width, look.U(1), look.Line)
	}
	in, mark, role := look.U(12), look.U(44), look.TileName
	switch {
	case v.Lead:
		mark, role = look.U(62), look.Hand
	case size.Width < look.U(130):
		in, mark = look.U(4), look.U(28)
	}
	h := size.Height - bar
	x := in + p.Mark(v.Mark, in, (h-mark)/2, mark) + in
	w := size.Width - x - look.U(4)
	if v.Lead {
		name, count := p.Pair(v.Name, Ink{Role: role, Lines: 2}, v.Count, Ink{Role: look.Body, Color: look.Dim}, w, h)
		p.Stack(x, 0, w, h, name, count)
		return
	}
	name := p.fit(v.Name, Ink{Role: role, Lines: 1}, w, 0)
	if v.Icon == "" {
		p.Stack(x, 0, w, h, name, p.fit(v.Count, Ink{Role: look.Small, Lines: 1}, w, 0))
		return
	}
	side, gap := look.U(22), look.U(4)
	count := p.fit(v.Count, Ink{Role: look.Small, Lines: 1}, w-side-gap, 0)
	y := (h - name.H - side) / 2
	p.Put(name, x, y, w)
	p.Icon(v.Icon, look.Text, x, y+name.H, side)
	p.Put(count, x+side+gap, y+name.H+(side-count.H)/2, w-side-gap)
}

// PlaceMode is what a touch on a place would do now.
type PlaceMode string

// The modes of a place key.
const (
	PlaceRest      PlaceMode = ""       // nothing picked: a touch shows what is there
	PlaceOpen      PlaceMode = "open"   // it is shown, or was the last place
	PlaceTarget    PlaceMode = "target" // what is picked can go there
	PlaceLikeliest PlaceMode = "likeliest"
	PlaceShut      PlaceMode = "shut" // it cannot go there; Verb says why
)

// PlaceKeyView is a place.
type PlaceKeyView struct {
	ID    string
	Name  string
	Count string // lines there, nothing where an icon stands instead
	Unit  string // "lines"
	Verb  string // what a touch does, or where it is: "bring back", "down bank"
	Icon  string
	Mode  PlaceMode
	State string // in the parts file; nothing means the mode
}

// PlaceKey is a place to send pieces to or to look into.
type PlaceKey struct {
	Touch
	view PlaceKeyView
}

// NewPlaceKey makes a place key.
func NewPlaceKey(view PlaceKeyView, onTap func()) *PlaceKey {
	k := &PlaceKey{}
	k.OnTap = onTap
	k.touch(k, look.Floor, look.Target, k.paintPlace)
	k.take(view)
	return k
}

// Set shows another view.
func (k *PlaceKey) Set(view PlaceKeyView) {
	if k.view != view {
		k.take(view)
		k.Refresh()
	}
}

// View is what the key shows.
func (k *PlaceKey) View() PlaceKeyView { return k.view }

func (k *PlaceKey) take(v PlaceKeyView) {
	k.view, k.off = v, v.Mode == PlaceShut
	state := v.State
	if state == "" {
		state = string(v.Mode)
	}
	count := v.Count
	if count != "" {
		count += " " + v.Unit
	}
	k.part = Part{Kind: KindPlace, ID: v.ID, Text: join(v.Name, count, v.Verb), State: state}
}

func (k *PlaceKey) paintPlace(p *Pen, size fyne.Size) {
	v := k.view
	t, verb, verbRole := Usual.tint(), look.Text, look.Small
	switch v.Mode {
	case PlaceOpen:
		t = Live.tint()
	case PlaceTarget:
		t = Live.tint()
		verb, verbRole = look.Accent, look.SmallBold
	case PlaceLikeliest:
		t = Filled.tint()
		verb, verbRole = look.OnFill, look.SmallBold
	case PlaceShut:
		t = tint{look.Ground, look.Line, look.Text, look.Text, look.Text, 1}
		verbRole = look.SmallBold
	}
	p.Rect(0, 0, size.Width, size.Height, t.ground, t.edge, look.U(t.width), look.U(look.RadiusKey))
	in := look.U(11)
	w := size.Width - in - look.U(6)
	foot := p.fit(v.Verb, Ink{Role: verbRole, Color: verb, Lines: 2}, w, 0)
	footY := size.Height - foot.H - look.U(7)
	p.Put(foot, in, footY, w)
	top := look.U(8)
	if v.Count != "" {
		unit := p.fit(v.Unit, Ink{Role: look.Small, Color: t.text, Lines: 1}, w, 0)
		fig := p.fit(v.Count, Ink{Role: look.Place, Color: t.text, Lines: 1}, w-unit.W-look.U(6), 0)
		name := p.Write(v.Name, Ink{Role: look.Name, Color: t.text}, in, top, w, footY-top-fig.H)
		y := top + name.H
		fy := y + (footY-y-fig.H)/2
		p.Put(fig, in, fy, fig.W)
		p.Put(unit, in+fig.W+look.U(6), fy+fig.H-unit.H-look.U(4), unit.W)
	} else if v.Icon != "" {
		ink := Ink{Role: look.Group, Color: t.text, Lines: 2}
		name := p.fit(v.Name, ink, w, footY-top)
		side := look.U(28)
		x, y := size.Width-side-look.U(12), footY-side-look.U(3)
		if in+name.lastWidth() > x && top+name.H > y+side*0.2 { // then the icon stands at the end of the first line
			side = look.U(20)
			ink.First = side + look.U(2)
			name, x, y = p.fit(v.Name, ink, w, footY-top), size.Width-side-look.U(6), top
		}
		p.Put(name, in, top, w)
		p.Icon(v.Icon, t.text, x, y, side)
	} else {
		p.Write(v.Name, Ink{Role: look.Group, Color: t.text, Lines: 3}, in, top, w, footY-top)
	}
}
