package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// besideTop is where the words of a panel beside the open list begin, in
// design pixels.
const besideTop = 44

// besideWidth is the width that they have, in pixels.
func besideWidth(w float32) float32 { return w - 2*look.U(look.InsetPanel) }

// none are the words of a panel with nothing in it.
func (v *carriedDrawn) none() string {
	return parts.Or(words.L("Nothing of another rig is aboard."), words.L("Nothing of others."))
}

// needs is how high the panel is if all of it is shown in a role.
func (v *carriedDrawn) needs(role look.Role, w float32) float32 {
	var p parts.Pen
	if len(v.List) == 0 {
		return p.Fit(v.none(), parts.Ink{Role: role, Lines: 1}, besideWidth(w), 0).H
	}
	h := float32(0)
	for _, c := range v.List {
		l := p.Fit(someOf(c.Names, len(c.Names)), parts.Ink{Role: role}, besideWidth(w)-look.U(34), 0)
		h += max(l.H, look.U(26)) + look.U(3)
	}
	return h
}

func paintCarried(v *carriedDrawn, p *parts.Pen, size fyne.Size) {
	panelGround(p, size, parts.Quiet)
	paintCount(p, v.Lines, words.L("carried for others"), "carried", size)
	in, y, role := look.U(look.InsetPanel), look.U(besideTop), v.Role
	pitch := p.Fit("x", parts.Ink{Role: role}, size.Width, 0).H
	if len(v.List) == 0 {
		p.Write(v.none(), parts.Ink{Role: role, Lines: 1}, in, y, besideWidth(size.Width), size.Height-y)
		return
	}
	left := max(1, int((size.Height-y-look.U(4))/pitch))
	for i, c := range v.List {
		x := in + p.Mark(c.Mark, in, y, look.U(24)) + look.U(10)
		w := size.Width - x - in
		room := max(1, left-(len(v.List)-i-1))
		text := longest(p, len(c.Names), role, w, room, func(k int) string { return someOf(c.Names, k) })
		l := p.Write(text, parts.Ink{Role: role, Lines: room}, x, y, w, 0)
		y += max(l.H, look.U(26)) + look.U(3)
		left -= max(1, int(l.H/pitch+0.5))
		if left <= 0 {
			return
		}
	}
}

// words are the tagged pieces, so many of them by name.
func (v *taggedDrawn) words(k int) string {
	if len(v.Names) == 0 {
		return parts.Or(words.L("Nothing aboard is out of service."), words.L("All is in service."))
	}
	return capital(someOf(v.Names, k))
}

func (v *taggedDrawn) needs(role look.Role, w float32) float32 {
	var p parts.Pen
	ink := parts.Ink{Role: role}
	if len(v.Names) == 0 {
		ink.Lines = 1
	}
	return p.Fit(v.words(len(v.Names)), ink, besideWidth(w), 0).H
}

func paintTagged(v *taggedDrawn, p *parts.Pen, size fyne.Size) {
	panelGround(p, size, parts.Quiet)
	paintCount(p, len(v.Names), words.L("ride home tagged"), "tag", size)
	if len(v.Names) == 0 {
		p.Write(v.words(0), parts.Ink{Role: v.Role, Lines: 1}, look.U(look.InsetPanel), look.U(besideTop), besideWidth(size.Width), 0)
		return
	}
	paintBeside(p, v.Role, len(v.Names), v.words, size)
}

// paintBeside writes the words of a panel, with as many names as have room.
func paintBeside(p *parts.Pen, role look.Role, most int, say func(k int) string, size fyne.Size) {
	y, w := look.U(besideTop), besideWidth(size.Width)
	lines := besideLines(p, role, size)
	p.Write(longest(p, most, role, w, lines, say), parts.Ink{Role: role, Lines: lines}, look.U(look.InsetPanel), y, w, size.Height-y)
}

// besideLines is how many lines of words a panel has room for.
func besideLines(p *parts.Pen, role look.Role, size fyne.Size) int {
	pitch := p.Fit("x", parts.Ink{Role: role}, size.Width, 0).H
	return max(1, int((size.Height-look.U(besideTop+4))/pitch))
}

func (v *sentOne) needs(role look.Role, w float32) float32 {
	var p parts.Pen
	return p.Fit(v.Sent.whole(), parts.Ink{Role: v.role(role)}, besideWidth(w), 0).H
}

// role is the role of the words: bold where something is wrong.
func (v *sentOne) role(role look.Role) look.Role {
	if bold, ok := map[look.Role]look.Role{look.Body: look.BodyBold, look.Lead: look.TileName}[role]; ok && v.Sent.bad() {
		return bold
	}
	return role
}

func paintSentOne(v *sentOne, p *parts.Pen, size fyne.Size) {
	tone, icon := parts.Quiet, "tick"
	color := look.Accent
	if v.Sent.bad() {
		tone, icon, color = parts.Alarm, "warn", look.Alarm
	}
	panelGround(p, size, tone)
	in := look.U(look.InsetPanel)
	p.Icon(icon, color, in, look.U(9), look.U(26))
	p.Write(words.L("If sent now"), parts.Ink{Role: look.TileName, Lines: 1}, in+look.U(38), look.U(9), size.Width-2*in-look.U(38), 0)
	y, w, role := look.U(besideTop), besideWidth(size.Width), v.role(v.Role)
	lines := besideLines(p, role, size)
	p.Write(v.Sent.longest(p, role, w, lines), parts.Ink{Role: role, Lines: lines}, in, y, w, size.Height-y)
}

// share gives each panel beside the open list what it needs, in the largest
// type that lets all be shown. Where there is more it is shared; where there
// is less the panels that need the most count the names they have no room for.
func (l *leavingScreen) share(w, h float32) (out [3]float32) {
	carried, tagged, sent := l.others.view, l.tagged.view, l.sent.view
	var need [3]float32
	role := look.Lead
	for _, role = range []look.Role{look.Lead, look.Body} {
		for i, k := range []float32{carried.needs(role, w), tagged.needs(role, w), sent.needs(role, w)} {
			need[i] = k + look.U(besideTop+14)
		}
		if need[0]+need[1]+need[2] <= h {
			break
		}
	}
	carried.Role, tagged.Role, sent.Role = role, role, role
	l.setBeside(carried, tagged, sent)
	left, parts := h, float32(3)
	done := [3]bool{}
	for range need { // whoever needs less than an equal share has that first
		for i := range need {
			if !done[i] && need[i] <= left/parts {
				out[i], done[i] = need[i], true
				left, parts = left-need[i], parts-1
			}
		}
	}
	for i := range out {
		switch {
		case parts == 0:
			out[i] += left / 3
		case !done[i]:
			out[i] = left / parts
		}
	}
	return out
}
