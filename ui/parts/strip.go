package parts

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// StripTone is what a message strip has to say.
type StripTone string

// The tones of a strip.
const (
	StripLast      StripTone = ""          // the last entry
	StripNow       StripTone = "now"       // what to do next: "Now touch a place"
	StripOK        StripTone = "ok"        // taken
	StripWarned    StripTone = "warned"    // taken, with a reason to look
	StripRefused   StripTone = "refused"   // not taken; one key does the possible thing
	StripContested StripTone = "contested" // two claims; whoever looked touches one
	StripStale     StripTone = "stale"     // the data is old
	StripPractice  StripTone = "practice"
	StripReadOnly  StripTone = "read-only"
	StripWetLock   StripTone = "wet-lock"
	StripWrong     StripTone = "wrong" // the balance does not add up
	StripLooking   StripTone = "looking"
)

var stripIcon = map[StripTone]string{
	StripNow: "go", StripOK: "tick", StripWarned: "clock", StripRefused: "bar", StripContested: "fork",
	StripStale: "clock", StripPractice: "boots", StripReadOnly: "glance", StripWetLock: "wet-lock",
	StripWrong: "warn", StripLooking: "look",
}

// StripKey is a key at the end of a strip. One without an id is not shown.
type StripKey struct {
	ID, Title string
	Filled    bool
	Hold      bool   // held for two seconds, as for unlocking
	Sure      string // for those who cannot hold
}

// StripView is a message in place of the last entry. There are no pop-ups.
type StripView struct {
	ID     string // of the text part: reply, last, alert
	Tone   StripTone
	Title  string
	Second string
	Icon   string // instead of the tone's own
	Keys   [2]StripKey
}

// Strip is the message strip with up to two keys.
type Strip struct {
	face
	view StripView
	keys [2]*Key
	hold [2]*HoldKey
}

// NewStrip makes a strip; onAct is called with the id of the key touched.
func NewStrip(view StripView, onAct func(id string)) *Strip {
	s := &Strip{}
	for i := range s.keys {
		act := func() {
			if onAct != nil {
				onAct(s.view.Keys[i].ID)
			}
		}
		s.keys[i] = NewKey(KeyView{}, act)
		s.hold[i] = NewHoldKey(HoldView{}, act)
	}
	s.init(s, 3*look.Target, look.Floor, s.lay)
	s.take(view)
	return s
}

// Set shows another message.
func (s *Strip) Set(view StripView) {
	if s.view != view {
		s.take(view)
		s.Refresh()
	}
}

// View is what the strip shows.
func (s *Strip) View() StripView { return s.view }

func (s *Strip) take(v StripView) {
	s.view = v
	s.part = Part{Kind: KindText, ID: v.ID, Text: join(v.Title, v.Second), State: string(v.Tone)}
	s.kids = s.kids[:0]
	for i, k := range v.Keys {
		if k.ID == "" {
			continue
		}
		tone := Usual
		if k.Filled {
			tone = Filled
		}
		if k.Hold {
			s.hold[i].Set(HoldView{ID: k.ID, Title: k.Title, Sure: k.Sure, Tone: tone, Role: look.Group})
			s.kids = append(s.kids, s.hold[i])
			continue
		}
		s.keys[i].Set(KeyView{ID: k.ID, Title: k.Title, Tone: tone, Lay: LayCentre, Role: look.Group})
		s.kids = append(s.kids, s.keys[i])
	}
}

// keyWidth is how wide a key of the strip is drawn.
func (s *Strip) keyWidth(p *Pen, k StripKey, most float32) float32 {
	l := p.fit(k.Title, Ink{Role: look.Group, Lines: 1}, 1e4, 0)
	w := max(l.W+look.U(48), look.U(look.Floor))
	if k.Hold {
		w = max(w*0.6, look.U(2*104+look.Gap))
	}
	return min(w, max(most, look.U(look.Floor)))
}

func (s *Strip) lay(p *Pen, size fyne.Size) {
	v, gap := s.view, look.U(look.Gap)
	w, at := size.Width, len(s.kids)
	for i := len(v.Keys) - 1; i >= 0; i-- {
		if v.Keys[i].ID == "" {
			continue
		}
		kw := s.keyWidth(p, v.Keys[i], size.Width*0.3)
		at--
		place(s.kids[at], w-kw, 0, kw, size.Height)
		w -= kw + gap
	}
	t, icon := Quiet.tint(), look.Text
	switch v.Tone {
	case StripRefused, StripWrong:
		t, icon = Alarm.tint(), look.Alarm
	case StripNow, StripOK, StripWetLock:
		icon = look.Accent
	case StripPractice:
		t = Live.tint()
	}
	p.Rect(0, 0, w, size.Height, t.ground, t.edge, look.U(t.width), look.U(look.RadiusPanel))
	x := look.U(look.InsetPanel)
	name := v.Icon
	if name == "" {
		name = stripIcon[v.Tone]
	}
	if name != "" {
		side := min(look.U(36), size.Height-look.U(16))
		p.Icon(name, icon, x, (size.Height-side)/2, side)
		x += side + look.U(14)
	}
	tw := w - x - look.U(10)
	room := size.Height - look.U(8)
	titleRole, subRole, sub := look.TileName, look.Body, look.Text
	if v.Tone == StripLast {
		titleRole, sub = look.Lead, look.Dim
	}
	title, second := p.Pair(v.Title, Ink{Role: titleRole}, v.Second, Ink{Role: subRole, Color: sub}, tw, room)
	if len(second.lines) > 1 {
		title, second = p.Pair(v.Title, Ink{Role: titleRole}, v.Second, Ink{Role: look.Small, Color: sub}, tw, room)
	}
	if v.Tone == StripLast && size.Height-title.H-second.H > look.U(24) {
		p.Put(title, x, look.U(14), tw)
		p.Put(second, x, size.Height-second.H-look.U(12), tw)
		return
	}
	p.Stack(x, 0, tw, size.Height, title, second)
}
