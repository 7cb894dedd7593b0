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

// lookKey is one word of the walk round: lens and "look", then tick and
// "seen".
type lookKey struct {
	touch *parts.Touch
	view  lookView
	next  bool
}

func newLookKey(onTap func(id string)) *lookKey {
	k := &lookKey{}
	k.touch = parts.NewTouch(parts.Part{Kind: parts.KindAct}, look.Floor, look.Target, k.paint, func() { onTap(k.view.ID) })
	return k
}

func (k *lookKey) set(v lookView, next bool) {
	if k.view == v && k.next == next {
		return
	}
	k.view, k.next = v, next
	state := "look"
	if v.Seen {
		state = "seen"
	}
	k.touch.SetPart(parts.Part{Kind: parts.KindAct, ID: v.ID, Text: v.Title + ", " + v.Says, State: state})
	k.touch.Refresh()
}

func (k *lookKey) paint(p *parts.Pen, size fyne.Size) {
	v := k.view
	ground, edge, width, icon, word, color := look.Raised, look.KeyEdge, look.U(1), "look", words.L("look"), look.Text
	switch {
	case v.Seen:
		ground, edge, icon, word, color = look.Surface, look.Line, "tick", words.L("seen"), look.Accent
	case k.next:
		ground, edge, width, color = look.Soft, look.Accent, look.U(2), look.Accent
	}
	p.Rect(0, 0, size.Width, size.Height, ground, edge, width, look.U(look.RadiusKey))
	in := look.U(13)
	w := size.Width - 2*in
	side := look.U(30)
	if p.Fit(v.Title, parts.Ink{Role: look.Name, Lines: 1}, w, 0).Cut() || p.Fit(v.Says, parts.Ink{Role: look.Body, Lines: 1}, w, 0).Cut() {
		in, w = look.U(6), size.Width-look.U(12)
	}
	p.Icon(icon, color, in, look.U(11), side)
	p.Write(word, parts.Ink{Role: look.SmallBold, Align: fyne.TextAlignTrailing, Lines: 1}, in+side, look.U(14), w-side, 0)
	p.Write(v.Title, parts.Ink{Role: look.Name, Lines: 1}, in, look.U(50), w, 0)
	says := parts.Ink{Role: look.Body, Lines: 1}
	if v.Wrong {
		says.Role, says.Color = look.BodyBold, look.Alarm
	}
	p.Write(v.Says, says, in, look.U(82), w, 0)
}

// openLayout lays the two halves of the open list out side by side, as high
// as they need to be.
type openLayout struct{ w, h float32 }

// Layout is called by the toolkit.
func (o *openLayout) Layout(objs []fyne.CanvasObject, size fyne.Size) {
	gap := look.U(24)
	w := (size.Width - gap) / 2
	for i, obj := range objs {
		place(obj, float32(i)*(w+gap), 0, w, size.Height)
	}
}

// MinSize is the height that the longer half needs.
func (o *openLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(0, o.h) }

// Sizes of the open list, in design pixels.
const (
	openGroupH = 36
	openLineH  = 32
	openGap    = 10
	openIndent = 38
)

// openWraps tells whether an open line needs two lines of a column.
func openWraps(text string, w float32) bool {
	return look.Measure(text, look.Body.Base()+1, look.Body.Style()).Width > w-look.U(openIndent)
}

// openNoteUnder tells whether the note of a group, often a phone number, has
// no room beside the title and stands under it.
func openNoteUnder(g openGroup, w float32) bool {
	title := look.Measure(g.Title, look.TileName.Base(), look.TileName.Style()).Width
	note := look.Measure(parts.Plain(g.Note), look.Small.Base()+1, look.Small.Style()).Width
	return g.Note != "" && title+note+look.U(openIndent+12) > w
}

func openHeight(groups []openGroup, w float32) float32 {
	h := float32(0)
	for _, g := range groups {
		h += look.U(openGroupH) + look.U(openGap)
		if openNoteUnder(g, w) {
			h += look.U(24)
		}
		for _, l := range g.Lines {
			h += look.U(openLineH)
			if openWraps(l, w) {
				h += look.U(20)
			}
		}
	}
	return h
}

// splitGroups shares groups between two columns, in their order, so that the
// longer one is as short as it can be.
func splitGroups(groups []openGroup) (left, right []openGroup) {
	size := func(gs []openGroup) int {
		n := 0
		for _, g := range gs {
			n += 3 + 2*len(g.Lines)
		}
		return n
	}
	cut := len(groups)
	for k := range groups {
		if max(size(groups[:k]), size(groups[k:])) < max(size(groups[:cut]), size(groups[cut:])) {
			cut = k
		}
	}
	return halved(groups[:cut:cut], groups[cut:])
}

// halved splits one long group that stands alone on its side.
func halved(left, right []openGroup) (_, _ []openGroup) {
	if len(right) > 0 || len(left) != 1 || len(left[0].Lines) < 8 {
		return left, right
	}
	g := left[0]
	k := (len(g.Lines) + 1) / 2
	a, b := g, g
	a.Lines, b.Lines, b.Note = g.Lines[:k], g.Lines[k:], words.L("the rest")
	return []openGroup{a}, []openGroup{b}
}

// openWords is a half of the open list as one text.
func openWords(groups []openGroup) string {
	var out []string
	for _, g := range groups {
		out = append(out, join(g.Title, g.Note)+": "+strings.Join(g.Lines, ", "))
	}
	return strings.Join(out, ". ")
}

func paintOpenHead(v *openHead, p *parts.Pen, size fyne.Size) {
	panelGround(p, size, parts.Quiet)
	in := look.U(18)
	if v.Lines == 0 {
		p.Icon("tick", look.Accent, in, look.U(16), look.U(40))
		p.Write(words.L("Nothing is open"), parts.Ink{Role: look.Place, Lines: 1}, in+look.U(56), look.U(12), size.Width-2*in-look.U(56), 0)
		p.Write(words.F("Every line of %s is in its slot, or used and on the restock list.", v.Name), parts.Ink{Role: look.Sentence}, in+look.U(56), look.U(62), size.Width-2*in-look.U(56), size.Height-look.U(64))
		return
	}
	fig := p.Write(fmt.Sprint(v.Lines), parts.Ink{Role: look.Place, Lines: 1}, in, look.U(4), size.Width/3, 0)
	said := p.Fit(words.N("open line", "open lines", v.Lines), parts.Ink{Role: look.Name, Lines: 1}, size.Width/2, 0)
	p.Put(said, in+fig.W+look.U(10), look.U(13), said.W)
	x := in + fig.W + said.W + look.U(26)
	p.Write(parts.Or(words.F("of %s, by whom they are with", v.Name), words.F("of %s", v.Name)), parts.Ink{Role: look.Body, Lines: 1}, x, look.U(17), size.Width-x-in, 0)
}

func paintOpenList(v *[]openGroup, p *parts.Pen, size fyne.Size) {
	y := float32(0)
	for _, g := range *v {
		side, head := look.U(27), look.U(openGroupH)
		color := look.Text
		if g.Alarm {
			color = look.Alarm
		}
		p.Icon(g.Icon, color, 0, y+(head-side)/2, side)
		x := look.U(openIndent)
		room := size.Width - x
		note := p.Fit(g.Note, parts.Ink{Role: look.Body, Lines: 1}, room, 0)
		under := openNoteUnder(g, size.Width)
		if g.Note != "" && !under {
			room -= min(note.W, room*0.6) + look.U(10)
		}
		title := p.Middle(g.Title, parts.Ink{Role: look.Group, Color: color, Lines: 1}, x, y, room, head)
		if under {
			p.Put(note, x, y+head-look.U(2), note.W)
			y += look.U(24)
		} else if g.Note != "" {
			tx := x + title.W + look.U(10)
			p.Middle(g.Note, parts.Ink{Role: look.Body, Lines: 1}, tx, y+look.U(2), size.Width-tx, head)
		}
		y += head
		for _, l := range g.Lines {
			h, lines := look.U(openLineH), 1
			if openWraps(l, size.Width) {
				h, lines = h+look.U(20), 2
			}
			p.Middle(l, parts.Ink{Role: look.Open, Lines: lines}, x, y, size.Width-x, h)
			y += h
		}
		y += look.U(openGap)
	}
}

func paintSwap(v *string, p *parts.Pen, size fyne.Size) {
	p.Rect(0, 0, size.Width, size.Height, look.AlarmGround, look.Alarm, look.U(2), look.U(look.RadiusPanel))
	side := look.U(26)
	p.Icon("fork", look.Alarm, look.U(12), (size.Height-side)/2, side)
	x := look.U(50)
	p.Middle(*v, parts.Ink{Role: look.BodyBold, Lines: 3}, x, 0, size.Width-x-look.U(10), size.Height)
}

// paintCount draws a large figure with its words, the head of a panel.
func paintCount(p *parts.Pen, n int, words, icon string, size fyne.Size) {
	in := look.U(16)
	fig := p.Write(fmt.Sprint(n), parts.Ink{Role: look.Screen, Lines: 1}, in, look.U(3), size.Width/3, 0)
	p.Write(words, parts.Ink{Role: look.TileName, Lines: 1}, in+fig.W+look.U(10), look.U(9), size.Width-fig.W-2*in-look.U(44), 0)
	p.Icon(icon, look.Text, size.Width-in-look.U(26), look.U(9), look.U(26))
}

// smallIn is the size of the text in a low panel.
func smallIn(size fyne.Size) look.Role {
	if size.Height < look.U(104) {
		return look.Small
	}
	return look.Body
}

func paintCarried(v *carriedDrawn, p *parts.Pen, size fyne.Size) {
	panelGround(p, size, parts.Quiet)
	paintCount(p, v.Lines, words.L("carried for others"), "carried", size)
	in, y, role := look.U(16), look.U(44), smallIn(size)
	pitch := p.Fit("x", parts.Ink{Role: role}, size.Width, 0).H
	if len(v.List) == 0 {
		p.Write(words.L("Nothing of another rig is aboard."), parts.Ink{Role: role}, in, y, size.Width-2*in, size.Height-y)
		return
	}
	left := max(1, int((size.Height-y-look.U(4))/pitch))
	for i, c := range v.List {
		x := in + p.Mark(c.Mark, in, y, look.U(24)) + look.U(10)
		w := size.Width - x - look.U(10)
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

func paintTagged(v *[]string, p *parts.Pen, size fyne.Size) {
	panelGround(p, size, parts.Quiet)
	paintCount(p, len(*v), words.L("ride home tagged"), "tag", size)
	in, y, role := look.U(16), look.U(44), smallIn(size)
	text := words.L("Nothing aboard is out of service.")
	if len(*v) > 0 {
		pitch := p.Fit("x", parts.Ink{Role: role}, size.Width, 0).H
		text = longest(p, len(*v), role, size.Width-2*in, max(1, int((size.Height-y-look.U(4))/pitch)), func(k int) string { return capital(someOf(*v, k)) })
	}
	p.Write(text, parts.Ink{Role: role}, in, y, size.Width-2*in, size.Height-y)
}

func paintSentOne(v *sentView, p *parts.Pen, size fyne.Size) {
	tone, icon := parts.Quiet, "tick"
	color := look.Accent
	if v.bad() {
		tone, icon, color = parts.Alarm, "warn", look.Alarm
	}
	panelGround(p, size, tone)
	in := look.U(16)
	p.Icon(icon, color, in, look.U(9), look.U(26))
	p.Write(words.L("If sent now"), parts.Ink{Role: look.TileName, Lines: 1}, in+look.U(38), look.U(9), size.Width-2*in-look.U(38), 0)
	y := look.U(42)
	role := look.BodyBold
	if !v.bad() {
		role = look.Body
	}
	pitch := p.Fit("x", parts.Ink{Role: role}, size.Width, 0).H
	text := v.longest(p, role, size.Width-2*in, max(1, int((size.Height-y-look.U(4))/pitch)))
	p.Write(text, parts.Ink{Role: role}, in, y, size.Width-2*in, size.Height-y)
}

// layout: the words, the open list with what stands beside it, the signature.
func (l *leavingScreen) layout(size fyne.Size) {
	gap := look.U(look.Gap)
	lookH, signH := look.U(look.Target), look.U(92)
	kw := (size.Width - gap*float32(len(l.looks)-1)) / float32(len(l.looks))
	for i, k := range l.looks {
		place(k.touch, float32(i)*(kw+gap), 0, kw, lookH)
	}
	right := look.U(400)
	if size.Width < look.U(1000) {
		right = look.U(300)
	}
	left := size.Width - right - gap
	y := size.Height - signH
	has := func(o fyne.CanvasObject) bool { return slices.Contains(l.root.Objects, o) }
	people := max(right, look.U(360))
	place(l.hold, 0, y, size.Width-people-gap, signH)
	place(l.signer.root, size.Width-people, y, people, signH)
	place(l.note, 0, y, size.Width-people-gap, signH)
	place(l.back, size.Width-people, y, people, signH)
	top := lookH + gap
	h := y - gap - top
	l.layoutRight(left+gap, top, right, h, has(l.must))
	if has(l.swap.obj) {
		sh := look.U(56)
		if left < look.Measure(l.swap.view, look.SmallBold.Base()+2, look.SmallBold.Style()).Width/1.8 {
			sh = look.U(80)
		}
		h -= sh + gap
		place(l.swap.obj, 0, top+h+gap, left, sh)
	}
	place(l.ground.obj, 0, top, left, h)
	in, head := look.U(18), look.U(54)
	l.rows.w = left - 2*in
	col := (l.rows.w - look.U(16) - look.U(24)) / 2
	l.rows.h = max(openHeight(l.list[0].view, col), openHeight(l.list[1].view, col))
	place(l.scroll, in, top+head, left-in-look.U(8), h-head-look.U(6))
	l.scroll.Refresh()
}

func (l *leavingScreen) layoutRight(x, y, w, h float32, must bool) {
	gap := look.U(look.Gap)
	if must {
		kh := look.U(look.Floor)
		h -= kh + gap
		place(l.must, x, y+h+gap, w, kh)
	}
	share := (h - 2*gap) / 3
	place(l.others.obj, x, y, w, share)
	place(l.tagged.obj, x, y+share+gap, w, share)
	place(l.sent.obj, x, y+2*(share+gap), w, h-2*(share+gap))
}
