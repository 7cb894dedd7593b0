package ui

import (
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// head is what the header shows for a screen.
type head struct {
	title    string
	sentence string
	stale    bool                // the sentence says that the data is old: a state, with a clock
	mark     parts.MarkView      // before the title, if it has a shape or letters
	middle   []fyne.CanvasObject // rig tabs or at most two keys, right-aligned
	widths   []float32           // of the middle, in design pixels
	gap      float32             // between them
	big      string              // a figure in the middle instead: "0"
	bigWords string              // "of 38 lines in"
	bigLine  string              // under it
	back     bool                // a key that leads back
	letters  bool                // letters are up: on a small glass they take the room of the rail
	inTab    bool                // the title and the sentence stand in a tab of the middle
}

// frame is the rail, the header and the foot: the same on every screen.
type frame struct {
	sh     *Shell
	rail   []*parts.RailKey
	banner *parts.Drawn
	backK  *parts.Key
	foot   *parts.Foot
	lock   *lock
	header head
	shown  screen
	clock  string
	notes  string // under the clock
	icon   string // before it, where it is more than the usual
}

var railScreens = []parts.RailKeyView{
	{ID: ScreenTarp, Word: words.K("Tarp"), Icon: "tarp"}, {ID: ScreenGlance, Word: words.K("Glance"), Icon: "glance"},
	{ID: ScreenLoadUp, Word: words.K("Load up"), Icon: "load"}, {ID: ScreenLeaving, Word: words.K("Leaving"), Icon: "leave"},
	{ID: ScreenLookFor, Word: words.K("Look for it"), Icon: "look"}, {ID: ScreenMore, Word: words.K("More"), Icon: "more"},
	{ID: wetLock, Word: words.K("Wet lock"), Icon: "wet-lock"},
}

// underMore are the screens that More leads to.
var underMore = []string{ScreenBringBack, ScreenSettings, ScreenStores, ScreenTrail}

func newFrame(sh *Shell) *frame {
	f := &frame{sh: sh}
	for _, v := range railScreens {
		v.Word = words.L(v.Word)
		f.rail = append(f.rail, parts.NewRailKey(v, func() { sh.touchRail(v.ID) }))
	}
	f.banner = parts.NewDrawn(parts.Part{Kind: parts.KindText, ID: "header"}, look.Floor, look.Header, f.paint)
	f.backK = parts.NewKey(parts.KeyView{ID: "back", Title: words.L("Back"), Icon: "back", Tone: parts.Header}, sh.back)
	f.foot = parts.NewFoot(parts.FootView{})
	f.lock = newLock(sh)
	return f
}

// objects is everything in the window, the screen's own last but for the rail.
func (f *frame) objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{f.banner, f.foot}
	for _, k := range f.rail {
		out = append(out, k)
	}
	if f.header.back {
		out = append(out, f.backK)
	}
	out = append(out, f.header.middle...)
	if f.shown != nil {
		out = append(out, f.shown.body())
	}
	if f.sh.opts.Look.Locked {
		out = append(out, f.lock.shield, f.lock.under, f.lock.strip)
	}
	return out
}

// layout gives every object its room for a window of a size.
func (f *frame) layout(size fyne.Size) {
	headH, footH := look.U(look.Header), look.U(look.Foot)
	railW := f.railWide(size)
	bodyH := size.Height - footH
	step := (bodyH + look.U(look.Gap)) / float32(len(f.rail))
	for i, k := range f.rail {
		k.Hidden = railW == 0
		place(k, 0, float32(i)*step, railW, step-look.U(look.Gap))
	}
	place(f.foot, 0, bodyH, size.Width, footH)
	place(f.banner, railW, 0, size.Width-railW, headH)
	if f.header.back {
		place(f.backK, railW+look.U(look.Gap), 0, look.U(112), headH)
	}
	x := size.Width - look.U(clockRoom)
	for i := len(f.header.middle) - 1; i >= 0; i-- {
		w := look.U(f.header.widths[i])
		x -= w
		place(f.header.middle[i], x, 0, w, headH)
		x -= look.U(f.header.gap)
	}
	if f.shown != nil {
		gap := look.U(look.Gap)
		place(f.shown.body(), railW+gap, headH+gap, size.Width-railW-2*gap, bodyH-headH-2*gap)
	}
	place(f.lock.shield, 0, 0, size.Width, size.Height)
	place(f.lock.under, railW, 0, size.Width-railW-look.U(clockRoom), headH-look.U(1))
	place(f.lock.strip, railW, 0, size.Width-railW-look.U(clockRoom), headH)
	f.sh.publish()
}

// railWide is the width of the rail. Ten letters of a hand's size and the rail
// have no room beside each other on a small glass: the rail gives way then, and
// the key that ends typing leads out.
func (f *frame) railWide(size fyne.Size) float32 {
	switch small := size.Width < look.U(1100); {
	case small && f.header.letters:
		return 0
	case small:
		return look.U(look.Floor)
	}
	return look.U(look.Rail)
}

// clockRoom is the width kept for the clock and what is under it.
const clockRoom = 216

func place(o fyne.CanvasObject, x, y, w, h float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(w, h))
}

// show brings the frame up to date for the screen that is on top.
func (f *frame) show(n *now, sc screen, h head) {
	for i, k := range f.rail {
		v := railScreens[i]
		v.Word = words.L(v.Word)
		v.Here = v.ID == n.Shell.here || v.ID == ScreenMore && slices.Contains(underMore, n.Shell.here)
		k.Set(v)
	}
	clock, notes := n.at.Format("15:04"), f.note(n)
	changed := f.shown != sc || !sameRoom(f.header, h)
	if changed || !sameWords(f.header, h) || clock != f.clock || notes != f.notes {
		f.header, f.shown, f.clock, f.notes, f.icon = h, sc, clock, notes, noteIcon(n)
		f.banner.SetPart(parts.Part{Kind: parts.KindText, ID: "header", Text: join(h.title, h.sentence, h.big, h.bigWords, notes)})
		f.banner.Refresh()
	}
	f.foot.Set(footView(n))
	changed = f.lock.show(h, n.opts.Look.Locked) || changed
	if changed && n.root != nil {
		n.root.Objects = f.objects()
		relay(n.root)
	}
	if was, ok := f.sh.drawn[sc]; ok && was != n.opts.Look {
		redraw(sc.body()) // it was not on screen when the look changed
	}
	f.sh.drawn[sc] = n.opts.Look
}

// sameWords tells whether a header reads as before: a minute that has gone by
// is drawn, and nothing else on the screen with it.
func sameWords(a, b head) bool {
	return a.title == b.title && a.sentence == b.sentence && a.stale == b.stale && a.mark == b.mark && a.big == b.big && a.bigWords == b.bigWords && a.bigLine == b.bigLine
}

// sameRoom tells whether what can be touched in a header is as before.
func sameRoom(a, b head) bool {
	if len(a.middle) != len(b.middle) || a.back != b.back || a.letters != b.letters {
		return false
	}
	for i := range a.middle {
		if a.middle[i] != b.middle[i] || a.widths[i] != b.widths[i] {
			return false
		}
	}
	return true
}

// note is the line under the clock: practice, read-only, a clock that is
// behind the last entry, or data that is old. Nothing else deserves the place.
func (f *frame) note(n *now) string {
	switch {
	case n.opts.Practice:
		return words.L("Practice")
	case n.pic.ReadOnly != "":
		return words.L("Read only")
	case n.pic.Behind > 0:
		return words.L("Clock is behind")
	case n.stale() && n.ageMinutes() < 120:
		return words.F("Data %d min old", n.ageMinutes())
	case n.stale():
		return words.F("Data %d h old", n.ageMinutes()/60)
	}
	return words.L("This tablet")
}

// noteIcon is the shape of the line under the clock, where it warns.
func noteIcon(n *now) string {
	switch {
	case n.pic.ReadOnly != "":
		return "glance"
	case n.pic.Behind > 0 || n.stale():
		return "clock"
	}
	return ""
}

// paint draws the header: where I am, one sentence, the clock.
func (f *frame) paint(p *parts.Pen, size fyne.Size) {
	h := f.header
	p.Fill(0, 0, size.Width, size.Height, look.Ground)
	x := look.U(20)
	if h.back {
		x += look.U(120)
	}
	if h.mark.Shape != "" || h.mark.Letters != "" {
		x += p.Mark(h.mark, x-look.U(4), look.U(16), look.U(56)) + look.U(12)
	}
	right := size.Width - look.U(clockRoom)
	for i, w := range h.widths {
		if i < len(h.middle) {
			right -= look.U(w) + look.U(h.gap)
		}
	}
	if h.big != "" {
		bx := max(x+look.U(300), size.Width*0.46)
		fig := p.Write(h.big, parts.Ink{Role: look.Hand, Lines: 1}, bx, look.U(2), right-bx, 0)
		p.Write(h.bigWords, parts.Ink{Role: look.Sentence, Lines: 1}, bx+fig.W+look.U(12), look.U(18), right-bx-fig.W, 0)
		p.Write(h.bigLine, parts.Ink{Role: look.Body, Color: look.Dim, Lines: 1}, bx, look.U(56), right-bx, 0)
		right = bx - look.U(8)
	}
	if !h.inTab {
		f.paintTitle(p, x, right)
	}
	cx := size.Width - look.U(clockRoom) + look.U(8)
	cw := look.U(clockRoom) - look.U(24)
	p.Write(f.clock, parts.Ink{Role: look.Place, Align: fyne.TextAlignTrailing, Lines: 1}, cx, look.U(4), cw, 0)
	f.paintNote(p, cx, cw)
	p.Fill(0, size.Height-look.U(1), size.Width, look.U(1), look.Line)
	if f.sh.opts.Practice {
		p.Fill(0, size.Height-look.U(5), size.Width, look.U(2), look.Line)
	}
}

// paintTitle draws where I am and the sentence under it.
func (f *frame) paintTitle(p *parts.Pen, x, right float32) {
	h := f.header
	p.Write(h.title, parts.Ink{Role: look.Screen, Lines: 1}, x, look.U(8), right-x, 0)
	ink := look.Dim
	if h.stale {
		ink = look.Text
		side := look.U(24)
		p.Icon("clock", look.Text, x, look.U(50), side)
		x += side + look.U(8)
	}
	line := p.Fit(h.sentence, parts.Ink{Role: look.Body, Color: ink, Lines: 1}, right-x, 0)
	if p.Fit(h.sentence, parts.Ink{Role: look.Body, Color: ink, Lines: 2}, right-x, look.U(42)).H > line.H {
		line = p.Fit(h.sentence, parts.Ink{Role: look.Small, Color: ink, Lines: 2}, right-x, look.U(42))
	}
	p.Put(line, x, look.U(48)-(line.H-look.U(24))/3, right-x)
}

// paintNote draws the line under the clock; of practice on a badge, so that
// nobody takes it for a real call.
func (f *frame) paintNote(p *parts.Pen, x, w float32) {
	ink := parts.Ink{Role: look.SmallBold, Align: fyne.TextAlignTrailing, Lines: 1}
	y := look.U(54)
	if !f.sh.opts.Practice {
		note := p.Fit(f.notes, ink, w-look.U(32), 0)
		p.Put(note, x, y, w)
		if f.icon != "" {
			side := p.Size(look.Small) * 1.3
			p.Icon(f.icon, look.Text, x+w-note.W-side-look.U(8), y+(note.H-side)/2, side)
		}
		return
	}
	in, side := look.U(8), p.Size(look.Small)*1.3
	ink.Color, ink.Align = look.OnFill, fyne.TextAlignLeading
	note := p.Fit(f.notes, ink, w-2*in-side-look.U(6), 0)
	wide := note.W + side + 2*in + look.U(6)
	left := x + w - wide + look.U(4)
	p.Rect(left, y-look.U(2), wide, note.H+look.U(4), look.Fill, look.Clear, 0, look.U(4))
	p.Icon("boots", look.OnFill, left+in, y+(note.H-side)/2, side)
	p.Put(note, left+in+side+look.U(6), y, note.W)
}

func join(words ...string) string {
	out := ""
	for _, w := range words {
		if w == "" {
			continue
		}
		if out != "" {
			out += " · "
		}
		out += w
	}
	return out
}
