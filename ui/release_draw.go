package ui

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// releaseColumn is one side: grab now, or leave.
type releaseColumn struct {
	panel  *parts.Panel
	scroll *parts.Scroller
	rows   map[string]*parts.Row
	empty  *parts.Label
	col    *parts.Column
	shown  []fyne.CanvasObject
	touch  func(key, side string)
	side   string
	more   *reading[string] // what follows below
	at     fyne.Position
	size   fyne.Size
}

func newReleaseColumn(touch func(key, side string), side string) *releaseColumn {
	c := &releaseColumn{rows: map[string]*parts.Row{}, touch: touch, side: side}
	c.empty = parts.NewLines(parts.LabelView{Role: look.Lead})
	c.col = parts.NewColumn(look.Gap)
	c.scroll = parts.NewScroller(c.col)
	c.panel = parts.NewPanel(parts.PanelView{Rule: true}, c.scroll)
	c.more = newReading(paintFollows)
	c.scroll.OnScrolled = func(float32) { c.follows() }
	return c
}

// show brings the rows up to date. A row that stays where it is is not drawn
// again.
func (c *releaseColumn) show(rows []releaseRow, take func(releaseRow) int, head parts.PanelView, none string) {
	head.ID, head.Rule = c.side, true
	c.panel.Set(head)
	arrow := "go"
	if c.side == "leave" {
		arrow = "back"
	}
	var objs []fyne.CanvasObject
	for _, r := range rows {
		k := take(r)
		if k == 0 {
			continue
		}
		v := parts.RowView{Kind: parts.KindPiece, ID: r.Item, Figure: fmt.Sprint(k), Title: r.Name, Second: r.Where, Go: arrow, State: c.side}
		if k < r.N {
			v.Second += words.F(", %d of %d", k, r.N)
		}
		if c.rows[r.Key] == nil {
			c.rows[r.Key] = parts.NewRow(v, func() { c.touch(r.Key, c.side) })
		}
		c.rows[r.Key].Set(v)
		objs = append(objs, c.rows[r.Key])
	}
	if len(objs) == 0 {
		c.empty.SetText(none)
		objs = append(objs, c.empty)
	}
	if !slices.Equal(objs, c.shown) {
		c.shown = objs
		c.col.SetInside(objs...)
		c.scroll.Refresh()
		c.lay(c.at.X, c.at.Y, c.size.Width, c.size.Height)
	}
}

// followsHigh is the height of the line that says what follows.
const followsHigh = 36

// lay gives the column its room. Rows without room are never half in view:
// the line below says how many follow, and the first of them by name.
func (c *releaseColumn) lay(x, y, w, h float32) {
	c.at, c.size = fyne.NewPos(x, y), fyne.NewSize(w, h)
	place(c.panel, x, y, w, h)
	c.more.obj.Hide()
	view := c.scroll.Size().Height - 2*look.U(parts.Bleed)
	if len(c.shown) < 2 || c.shown[0].Size().Height < 1 {
		return
	}
	pitch := c.shown[0].Size().Height + look.U(look.Gap)
	if pitch*float32(len(c.shown))-look.U(look.Gap) <= view+1 {
		return
	}
	cue := look.U(followsHigh)
	room := view - cue
	fit := max(1, int((room+look.U(look.Gap))/pitch))
	spare := max(cue, view-(float32(fit)*pitch-look.U(look.Gap)))
	place(c.panel, x, y, w, h-spare)
	place(c.more.obj, x, y+h-spare, w, spare)
	c.more.obj.Show()
	c.follows()
}

// follows says what is below the rows that are in view, or above them.
func (c *releaseColumn) follows() {
	if len(c.shown) == 0 {
		return
	}
	pitch := c.shown[0].Size().Height + look.U(look.Gap)
	view := c.scroll.Size().Height - 2*look.U(parts.Bleed)
	from := int((c.scroll.Offset() + pitch/2) / pitch)
	last := int((c.scroll.Offset() + view + look.U(look.Gap) + pitch/2) / pitch)
	text := words.F("%d more above", from)
	if k := len(c.shown) - last; k > 0 {
		text = parts.B(words.F("%d more below", k))
		if r, ok := c.shown[last].(*parts.Row); ok {
			text = parts.Or(text+": "+r.View().Title, text)
		}
	}
	c.more.set(text, c.side+"-follows", text)
}

func paintFollows(s *string, p *parts.Pen, size fyne.Size) {
	side := look.U(24)
	p.Icon("leave-down", look.Text, look.U(12), (size.Height-side)/2, side)
	p.Middle(*s, parts.Ink{Role: look.Body, Lines: 1}, look.U(48), 0, size.Width-look.U(56), size.Height)
}

// layout gives the three columns, the sentence and the signature their room.
func (r *releaseScreen) layout(size fyne.Size) {
	gap := look.U(look.Gap)
	signH := look.U(92)
	y := size.Height - signH
	r.layoutSign(y, size.Width, signH)
	radioW := size.Width - look.U(8)
	aloud := slices.Contains(r.root.Objects, fyne.CanvasObject(r.aloud))
	if aloud {
		radioW -= look.U(aloudWide) + gap
	}
	radioH := max(look.U(58), min(r.radio.HeightFor(radioW)+look.U(6), look.U(84)))
	if aloud {
		radioH = look.U(look.Floor)
		place(r.aloud, size.Width-look.U(aloudWide), y-gap-radioH, look.U(aloudWide), radioH)
	}
	y -= gap + radioH
	place(r.radio, look.U(8), y, radioW, radioH)
	y -= gap
	right := look.U(304)
	if size.Width < look.U(1000) {
		right = look.U(272)
	}
	w := (size.Width - right - 2*gap) / 2
	grabH, leaveH := y, y
	if slices.Contains(r.root.Objects, fyne.CanvasObject(r.fewer)) {
		kh := look.U(look.Floor)
		grabH -= kh + gap
		kw := (w - gap) / 2
		place(r.fewer, 0, y-kh, kw, kh)
		place(r.more, kw+gap, y-kh, kw, kh)
	}
	r.grab.lay(0, 0, w, grabH)
	if slices.Contains(r.root.Objects, fyne.CanvasObject(r.stays)) {
		leaveH -= look.U(look.Floor) + gap
		place(r.stays, w+gap, y-look.U(look.Floor), w, look.U(look.Floor))
	}
	r.leave.lay(w+gap, 0, w, leaveH)
	r.layoutRight(2*(w+gap), right, y)
}

func (r *releaseScreen) layoutRight(x, w, h float32) {
	gap, keyH, in := look.U(look.Gap), look.U(look.Floor), look.U(12)
	y := look.U(80)
	place(r.away.obj, x, 0, w, y)
	y += gap
	chocks := look.U(84) + keyH + in
	place(r.chocks.obj, x, y, w, chocks)
	kw := (w - 2*in - gap) / 2
	place(r.yes, x+in, y+chocks-in-keyH, kw, keyH)
	place(r.no, x+in+kw+gap, y+chocks-in-keyH, kw, keyH)
	y += chocks + gap
	place(r.lacks.obj, x, y, w, h-y)
}

func (r *releaseScreen) layoutSign(y, w, h float32) {
	gap, people := look.U(look.Gap), look.U(404)
	has := func(o fyne.CanvasObject) bool { return slices.Contains(r.root.Objects, o) }
	left := w
	if has(r.signer.root) || has(r.accept.root) {
		left -= people + gap
		place(r.signer.root, left+gap, y, people, h)
		place(r.accept.root, left+gap, y, people, h)
	}
	if has(r.act) {
		aw := min(look.U(300), left*0.36)
		left -= aw + gap
		place(r.act, left+gap, y, aw, h)
	}
	place(r.hold, 0, y, left, h)
	place(r.note, 0, y, left, h)
}

func paintElsewhere(v *[]string, p *parts.Pen, size fyne.Size) {
	panelGround(p, size, parts.Quiet)
	in := look.U(14)
	w := size.Width - 2*in
	p.Write(words.L("Already elsewhere"), parts.Ink{Role: look.TileName, Lines: 1}, in, look.U(4), w, 0)
	text := parts.Or(words.L("No agency and no other rig has a piece of it."), words.L("nothing"))
	if len(*v) > 0 {
		text = longest(p, len(*v), look.Small, w, 2, func(k int) string { return capital(someOf(*v, k)) })
	}
	p.Write(text, parts.Ink{Role: look.Small}, in, look.U(32), w, size.Height-look.U(34))
}

// someOf lists the first k and says how many follow.
func someOf(list []string, k int) string {
	if k == len(list) {
		return strings.Join(list, ", ")
	}
	if k == 0 {
		return words.N("%d line", "%d lines", len(list))
	}
	return words.F("%s, %d more", strings.Join(list[:k], ", "), len(list)-k)
}

// panelGround draws the ground of a panel in a tone.
func panelGround(p *parts.Pen, size fyne.Size, tone parts.Tone) {
	ground, edge, width := look.Surface, look.Line, look.U(1)
	if tone == parts.Alarm {
		ground, edge, width = look.AlarmGround, look.Alarm, look.U(2)
	}
	p.Rect(0, 0, size.Width, size.Height, ground, edge, width, look.U(look.RadiusPanel))
}

func paintChocks(v *chocksView, p *parts.Pen, size fyne.Size) {
	tone := parts.Alarm
	if v.Answer == "yes" {
		tone = parts.Quiet
	}
	panelGround(p, size, tone)
	in := look.U(14)
	w := size.Width - 2*in
	p.Write(words.L("Wheel chocks?"), parts.Ink{Role: look.Name, Lines: 1}, in, look.U(4), w, 0)
	p.Write(v.Says, parts.Ink{Role: look.Small}, in, look.U(36), w, look.U(46))
}

func paintWithout(v *[]string, p *parts.Pen, size fyne.Size) {
	panelGround(p, size, parts.Quiet)
	in := look.U(14)
	w := size.Width - 2*in
	p.Write(words.L("Goes without"), parts.Ink{Role: look.TileName, Lines: 1}, in, look.U(4), w, 0)
	y := look.U(32)
	if len(*v) == 0 {
		p.Write(words.L("Nothing that is critical."), parts.Ink{Role: look.Body}, in, y, w, size.Height-y)
		return
	}
	pitch := p.Fit("x", parts.Ink{Role: look.Body}, w, 0).H
	room := max(1, int((size.Height-y-look.U(6))/pitch))
	for i, line := range *v {
		if i == room-1 && len(*v) > room {
			p.Write(words.F("and %d more", len(*v)-i), parts.Ink{Role: look.Body, Lines: 1}, in, y, w, 0)
			return
		}
		p.Write(line, parts.Ink{Role: look.Body, Lines: 1}, in, y, w, 0)
		y += pitch
	}
}
