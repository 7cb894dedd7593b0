package ui

import (
	"fmt"
	"slices"

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
	shut  bool // the rig has left
}

func newLookKey(onTap func(id string)) *lookKey {
	k := &lookKey{}
	k.touch = parts.NewTouch(parts.Part{Kind: parts.KindAct}, look.Floor, look.Target, k.paint, func() { onTap(k.view.ID) })
	return k
}

func (k *lookKey) set(v lookView, next, shut bool) {
	if k.view == v && k.next == next && k.shut == shut {
		return
	}
	k.view, k.next, k.shut = v, next, shut
	state := "look"
	switch {
	case shut:
		state = "off"
	case v.Seen:
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
	case k.shut:
		ground, edge, icon, word = look.Ground, look.Line, "look", parts.Or(words.L("unseen"), words.L("look"))
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
	one, two := stepFor(l.view.Groups, col, h-head-look.U(6+2*parts.Bleed))
	l.list[0].set(one, "open-list", openWords(one.Groups))
	l.list[1].set(two, "open-list-2", openWords(two.Groups))
	l.rows.h = max(one.Step.height(one.Groups, col), one.Step.height(two.Groups, col))
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
	heights := l.share(w, h-2*gap)
	for i, o := range []fyne.CanvasObject{l.others.obj, l.tagged.obj, l.sent.obj} {
		place(o, x, y, w, heights[i])
		y += heights[i] + gap
	}
}
