package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// leadView is the head of the right side: which piece, and what of it.
type leadView struct {
	id    string
	tone  parts.Tone // Alarm where it cannot go in
	icon  string
	over  string // "Next in, 1 of 5 at this door", or in an alarm "Blocked"
	title string
	mark  parts.MarkView
	line  string // weight, people
	two   bool   // a pair of people before the line
	under string // one sentence
}

// lineRoom is what stands before the line and needs room beside it, in design
// pixels.
func (v leadView) lineRoom() float32 {
	if v.two || v.mark != (parts.MarkView{}) {
		return 70
	}
	return 0
}

// lead draws a leadView.
type lead struct {
	drawn *parts.Drawn
	view  leadView
}

func newLead(v leadView) *lead {
	l := &lead{}
	l.drawn = parts.NewDrawn(parts.Part{}, look.Floor, 48, l.paint)
	l.take(v)
	return l
}

func (l *lead) set(v leadView) {
	if l.view != v {
		l.take(v)
		l.drawn.Refresh()
	}
}

func (l *lead) take(v leadView) {
	l.view = v
	l.drawn.SetPart(parts.Part{Kind: parts.KindText, ID: v.id, Text: join(v.over, v.title, v.line, v.under), State: string(v.tone)})
}

// leadRoles are the sizes of a head: the line over the title, the title, and
// what stands under it.
type leadRoles struct{ over, title, under look.Role }

// roles are the largest sizes at which all of a head has its room, and half as
// much again: a head that is crowded is read more slowly than a small one.
func (v leadView) roles(p *parts.Pen, w, h float32) leadRoles {
	r := leadRoles{look.Body, look.Place, look.Lead}
	if v.tone == parts.Alarm {
		r.over = look.Group
	}
	large := leadRoles{look.Group, look.Hand, look.Open}
	used := float32(0)
	for _, x := range []struct {
		text string
		role look.Role
		less float32
	}{{v.over, large.over, 44}, {v.title, large.title, 0}, {v.line, large.under, v.lineRoom()}, {v.under, large.under, 0}} {
		if x.text != "" {
			used += p.Fit(x.text, parts.Ink{Role: x.role}, w-look.U(x.less), 0).H
		}
	}
	if w >= look.U(400) && used*1.5 <= h {
		return large
	}
	return r
}

func (l *lead) paint(p *parts.Pen, size fyne.Size) {
	v := l.view
	ground, edge, width, over := look.Surface, look.Line, float32(1), look.Text
	if v.tone == parts.Alarm {
		ground, edge, width, over = look.AlarmGround, look.Alarm, 2, look.Alarm
	}
	p.Rect(0, 0, size.Width, size.Height, ground, edge, look.U(width), look.U(look.RadiusPanel))
	in := look.U(16)
	if size.Width < look.U(160) {
		in = look.U(10)
	}
	x, w, y := in, size.Width-2*in, look.U(5)
	left := size.Height - 2*y
	roles := v.roles(p, w, left)
	if roles.title == look.Hand {
		y += look.U(6)
	}
	if v.over != "" {
		if v.icon != "" {
			side := p.Size(roles.over) * 1.2
			p.Icon(v.icon, over, x, y, side)
			x += side + look.U(10)
		}
		o := p.Write(v.over, parts.Ink{Role: roles.over, Color: over, Lines: 1}, x, y, w-(x-in), 0)
		y, left = y+o.H, left-o.H
	}
	title := roles.title
	if left < look.U(90) {
		title = look.Screen
	}
	line := p.Fit(v.line, parts.Ink{Role: roles.under}, w-look.U(v.lineRoom()), 0)
	under := p.Fit(v.under, parts.Ink{Role: roles.under}, w, 0)
	rest := line.H + under.H
	t := p.Write(v.title, parts.Ink{Role: title}, in, y, w, max(left-rest, look.U(30)))
	y += t.H + look.U(2)
	if v.line != "" {
		x = in
		if v.mark != (parts.MarkView{}) {
			x += p.Mark(v.mark, x, y+(p.Size(roles.under)*1.26-look.U(22))/2, look.U(22)) + look.U(10)
		}
		if v.two {
			p.Icon("two", look.Text, x, y, look.U(26))
			x += look.U(36)
		}
		p.Put(line, x, y, w)
		y += line.H
	}
	if v.under != "" {
		p.Write(v.under, parts.Ink{Role: roles.under}, in, y, w, size.Height-y-look.U(4))
	}
}

// homeView is a slot whose piece is home: small, to read.
type homeView struct{ id, name string }

// homeSlot draws a homeView.
type homeSlot struct {
	drawn *parts.Drawn
	view  homeView
}

func newHomeSlot(v homeView) *homeSlot {
	h := &homeSlot{view: v}
	h.drawn = parts.NewDrawn(parts.Part{}, look.Floor, smallSlot, h.paint)
	h.drawn.SetPart(h.part())
	return h
}

func (h *homeSlot) part() parts.Part {
	return parts.Part{Kind: parts.KindSlot, ID: h.view.id, Text: h.view.name, State: "home"}
}

func (h *homeSlot) set(v homeView) {
	if h.view != v {
		h.view = v
		h.drawn.SetPart(h.part())
		h.drawn.Refresh()
	}
}

func (h *homeSlot) paint(p *parts.Pen, size fyne.Size) {
	p.Rect(0, 0, size.Width, size.Height, look.Raised, look.Line, look.U(1), look.U(look.RadiusTile))
	side := look.U(16)
	x := look.U(5) + side + look.U(4)
	w := size.Width - x - look.U(3)
	ink := parts.Ink{Role: look.Small}
	if large := (parts.Ink{Role: look.Body}); size.Height >= look.U(smallSlot*1.3) && p.Fit(h.view.name, large, w, 0).H <= p.Fit(h.view.name, ink, w, 0).H*1.2 {
		ink = large // and not over one line more for it
	}
	p.Icon("tick", look.Text, look.U(5), (size.Height-side)/2, side)
	p.Middle(h.view.name, ink, x, 0, w, size.Height)
}
