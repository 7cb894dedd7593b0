package ui

import (
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// pickedView is what is picked, in words: the piece, how many or where it
// lies, and where it lives.
type pickedView struct {
	mark             parts.MarkView
	name, here, home string
}

// pickedView is the view of what is picked: of the one line, or of several
// with the last by name.
func (n *now) pickedView(picks []pick) pickedView {
	p := &picks[len(picks)-1]
	it := n.d.Item(p.item)
	v := pickedView{mark: n.mark(it.Rig), name: n.whoseName(it)}
	switch {
	case len(picks) > 1:
		v.mark, v.name, v.here = parts.MarkView{}, words.F("%d lines picked", len(picks)), words.F("the last: %s", n.whoseName(it))
		if p.most > 1 {
			v.here += words.F(", %d of %d", p.n, p.most)
		}
		return v
	case p.most == 1:
		v.here = capital(n.sinceWhen(p))
	case p.n == p.most:
		v.here = parts.Or(words.F("%d here, all picked", p.most), words.F("all %d", p.most))
	default:
		v.here = parts.Or(words.F("%d of %d here picked", p.n, p.most), words.F("%d of %d here", p.n, p.most))
	}
	v.home = capital(n.homeWords(p))
	return v
}

// whoseName is the name of a line, with whose it is where a line of another rig
// that is here is called the same.
func (n *now) whoseName(it *model.Item) string {
	for _, r := range n.present() {
		if r != it.Rig && slices.ContainsFunc(n.d.Items, func(o model.Item) bool { return o.Rig == r && o.Short() == it.Short() }) {
			return parts.Or(words.F("%s of %s", it.Short(), n.rigName(it.Rig)), words.F("%s of %s", it.Short(), it.Rig))
		}
	}
	return it.Short()
}

// sinceWhen is where a piece lies since when; nothing while it is home.
func (n *now) sinceWhen(p *pick) string {
	if p.from == n.s.HomeOf(n.d.ItemIndex(p.item)) {
		return ""
	}
	where := n.placeName(p.from)
	for k := len(n.pic.Entries) - 1; k >= 0; k-- {
		e := &n.pic.Entries[k]
		if e.Item == p.item && e.Taken() && slices.ContainsFunc(e.Moves, func(m model.Move) bool { return m.To == p.from }) {
			return words.F("%s since %s", where, n.clock(e.At()))
		}
	}
	return where
}

// homeWords is where a piece lives; of a counted line that is out, how many
// are still there.
func (n *now) homeWords(p *pick) string {
	i := n.d.ItemIndex(p.item)
	at := n.s.HomeOf(i)
	slot := n.d.Slot(n.d.Items[i].Slot)
	switch {
	case slot == nil || at.Kind != model.Home:
		return words.F("lives in %s", n.placeName(at))
	case n.d.Items[i].Quantity > 1 && p.from != at:
		return words.F("%d at home on %s", n.s.Line(i).N(at), n.rigName(slot.Rig))
	}
	return words.F("lives on %s, %s", n.rigName(slot.Rig), slot.Compartment)
}

// paintPicked draws a pickedView: the name large with its mark before it, the
// rest under it; or where it is only a line high, in one line.
func paintPicked(v *pickedView, p *parts.Pen, size fyne.Size) {
	if size.Height < p.Size(look.Title)*2 {
		text := parts.B(v.name) + "   " + v.here
		if v.home != "" {
			text = parts.Or(text+". "+v.home, text)
		}
		p.Middle(text, parts.Ink{Role: look.Body, Lines: 1}, 0, 0, size.Width, size.Height)
		return
	}
	x := float32(0)
	if v.mark != (parts.MarkView{}) {
		x = look.U(30) + look.U(10)
	}
	name := p.Fit(v.name, parts.Ink{Role: look.Title, Lines: 2}, size.Width-x, size.Height*0.5)
	left := size.Height - name.H
	here := p.Fit(v.here, parts.Ink{Role: look.Lead}, size.Width, left)
	home := p.Fit(v.home, parts.Ink{Role: look.Body}, size.Width, max(left-here.H, 1))
	y := max(0, (size.Height-name.H-here.H-home.H)/2)
	if x > 0 {
		side := look.U(30)
		p.Mark(v.mark, 0, y+max(0, (min(name.H, p.Size(look.Title)*1.2)-side)/2), side)
	}
	p.Put(name, x, y, size.Width-x)
	p.Put(here, 0, y+name.H, size.Width)
	p.Put(home, 0, y+name.H+here.H, size.Width)
}
