package ui

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// aloudPage is what is read aloud under one title, over the radio: as many
// pages of the screen as it takes.
type aloudPage struct {
	Title string
	Note  string
	Lines []aloudLine
}

// aloudLine is one thing to say. Strong begins a group.
type aloudLine struct {
	Mark   parts.MarkView
	Text   string
	Strong bool
}

// aloudDrawn is one page of the screen: its lines in a column or two, as
// large as all of them fit.
type aloudDrawn struct {
	Title, Note string
	Role        look.Role
	Cols        [][]aloudLine
}

// onPages breaks what is read under one title into pages of a size: one page
// in large type where it has room, else as few as there can be. Only lines
// that stand whole beside each other come in two columns.
func (s aloudPage) onPages(size fyne.Size) []aloudDrawn {
	room := size.Height - aloudTop()
	role, cols := look.Screen, 1
	for _, t := range []struct {
		role look.Role
		cols int
	}{{look.Place, 1}, {look.Screen, 1}, {look.Place, 2}, {look.Screen, 2}} {
		w := aloudWidth(size.Width, t.cols)
		if t.cols == 2 && slices.ContainsFunc(s.Lines, func(l aloudLine) bool { return l.wraps(t.role, w) }) {
			continue
		}
		role, cols = t.role, t.cols
		if got := inColumns(s.Lines, role, w, room); len(got) <= cols {
			return []aloudDrawn{{s.Title, s.Note, role, got}}
		}
	}
	if cols == 1 {
		role = look.Screen
	}
	var out []aloudDrawn
	for page := range slices.Chunk(inColumns(s.Lines, role, aloudWidth(size.Width, cols), room), cols) {
		out = append(out, aloudDrawn{s.Title, s.Note, role, page})
	}
	return out
}

// inColumns breaks lines into columns of a height. A short group stays
// together; the heading of a long one stays with its first line, and is said
// again where the group goes on.
func inColumns(lines []aloudLine, role look.Role, w, room float32) (out [][]aloudLine) {
	var col []aloudLine
	var y float32
	for i := 0; i < len(lines); i++ {
		l := lines[i]
		need := l.height(role, w)
		if l.Strong && i+1 < len(lines) {
			whole := need
			for k := i + 1; k < len(lines) && !lines[k].Strong; k++ {
				whole += lines[k].height(role, w)
			}
			if need += lines[i+1].height(role, w); whole < room/2 {
				need = whole
			}
		}
		if y+need > room && len(col) > 0 && !(len(col) == 1 && col[0].Strong) {
			out, col, y = append(out, col), nil, 0
			for k := i - 1; k >= 0 && !l.Strong; k-- {
				if lines[k].Strong {
					col, y = append(col, lines[k]), lines[k].height(role, w)
					break
				}
			}
		}
		col, y = append(col, l), y+l.height(role, w)
	}
	return append(out, col)
}

// Sizes of a page that is read aloud, in design pixels.
const (
	aloudInset   = 20
	aloudGap     = 48 // between two columns
	aloudMark    = 52 // a mark and the room after it
	aloudLineGap = 12
)

func aloudTop() float32 {
	var p parts.Pen
	return p.Fit("x", parts.Ink{Role: look.Hand}, 1e5, 0).H + look.U(22)
}

func aloudWidth(w float32, cols int) float32 {
	return (w - 2*look.U(aloudInset) - look.U(aloudGap)*float32(cols-1)) / float32(cols)
}

func (l aloudLine) ink(role look.Role) parts.Ink {
	if l.Strong {
		return parts.Ink{Role: look.Name, Color: look.Accent}
	}
	return parts.Ink{Role: role}
}

// indent is the room that the mark of a line takes.
func (l aloudLine) indent() float32 {
	if l.Strong || l.Mark == (parts.MarkView{}) {
		return 0
	}
	return look.U(aloudMark)
}

func (l aloudLine) laid(role look.Role, w float32) float32 {
	var p parts.Pen
	ink := l.ink(role)
	ink.Keep = true
	return p.Fit(l.Text, ink, w-l.indent(), 0).H
}

func (l aloudLine) height(role look.Role, w float32) float32 {
	return l.laid(role, w) + look.U(aloudLineGap)
}

func (l aloudLine) wraps(role look.Role, w float32) bool {
	return l.laid(role, w) > l.laid(role, 1e5)
}

// aloudGlance is Glance to be read aloud: place by place, then what runs
// down, then what each rig could not do.
func (n *now) aloudGlance() []aloudPage {
	var out []aloudPage
	for _, b := range n.bands() {
		var lines []aloudLine
		for _, m := range b.Names {
			lines = append(lines, aloudLine{Mark: m.Mark, Text: capital(m.Said)})
		}
		out = append(out, aloudPage{b.Name, words.N("%d line", "%d lines", b.Lines), lines})
	}
	if away := n.awayLine(); away != "" {
		out = append(out, aloudPage{words.L("Elsewhere"), "", []aloudLine{{Text: away}}})
	}
	var run []aloudLine
	read, unread := n.gauges()
	for _, g := range read {
		run = append(run, aloudLine{Text: fmt.Sprintf("%s, %s: %s. %s", g.Name, g.Place, low(g.figure()), g.when())})
	}
	if unread != "" {
		run = append(run, aloudLine{Text: words.F("Not read: %s", unread)})
	}
	if len(run) > 0 {
		out = append(out, aloudPage{words.L("Running down"), words.L("as last read"), run})
	}
	var sent []aloudLine
	for _, r := range n.present() {
		v := n.sent(r)
		sent = append(sent, aloudLine{Mark: n.mark(r), Text: v.Name + ". " + v.words(6, longWhy)})
	}
	return append(out, aloudPage{words.L("If sent now"), "", sent})
}

// aloudScreen shows pages of large text over a screen.
type aloudScreen struct {
	sh    *Shell
	title string
	pages func(*now) []aloudPage
	said  []aloudPage
	at    int
	root  *fyne.Container
	page  *reading[aloudDrawn]
	last  *parts.Key
	next  *parts.Key
	count *parts.Label
	paper string     // the file of the same list on paper, "" if there is none
	print *parts.Key // opens it
}

func newAloud(sh *Shell, title string, pages func(*now) []aloudPage) *aloudScreen {
	a := &aloudScreen{sh: sh, title: title, pages: pages}
	a.page = newReading(paintAloud)
	a.last = parts.NewKey(parts.KeyView{}, func() { a.at--; sh.refresh() })
	a.next = parts.NewKey(parts.KeyView{}, func() { a.at++; sh.refresh() })
	a.count = parts.NewLabel(parts.LabelView{Role: look.Name, Align: fyne.TextAlignCenter})
	a.print = parts.NewKey(parts.KeyView{ID: "paper", Title: words.L("Paper"), Icon: "paper", Tone: parts.Header}, func() { sh.onPaper(a.paper) })
	a.root = box(func(size fyne.Size) {
		gap, h := look.U(look.Gap), look.U(96)
		w := look.U(280)
		y := size.Height - h
		place(a.page.obj, 0, 0, size.Width, y-gap)
		place(a.last, 0, y, w, h)
		place(a.count, w+gap, y, size.Width-2*(w+gap), h)
		place(a.next, size.Width-w, y, w, h)
		a.draw()
	}, a.page.obj, a.last, a.count, a.next)
	return a
}

func (a *aloudScreen) body() fyne.CanvasObject { return a.root }

func (a *aloudScreen) show(n *now) head {
	a.said = a.pages(n)
	a.draw()
	h := head{title: words.L("Read aloud"), sentence: a.title + ". " + n.age(), back: true}
	if a.paper != "" {
		h.middle, h.widths = []fyne.CanvasObject{a.print}, []float32{152}
	}
	return h
}

// draw breaks what is said into pages that have room, and shows one.
func (a *aloudScreen) draw() {
	size := a.page.obj.Size()
	if size.Width < 1 {
		return
	}
	var pages []aloudDrawn
	for _, s := range a.said {
		pages = append(pages, s.onPages(size)...)
	}
	if len(pages) == 0 {
		return
	}
	a.at = max(0, min(a.at, len(pages)-1))
	pg := pages[a.at]
	a.page.set(pg, "page", pg.words())
	back := parts.KeyView{ID: "page-back", Title: words.L("Page before"), Icon: "back", Lay: parts.LayCentre, Off: a.at == 0}
	next := parts.KeyView{ID: "page-on", Title: words.L("Next page"), Icon: "go", Lay: parts.LayCentre, Tone: parts.Filled, Role: look.Name}
	if a.at == len(pages)-1 {
		next.Off, next.Title = true, words.L("Last page")
	}
	a.last.Set(back)
	a.next.Set(next)
	a.count.SetText(words.F("Page %d of %d", a.at+1, len(pages)))
}

func (p aloudDrawn) words() string {
	texts := []string{p.Title, p.Note}
	for _, c := range p.Cols {
		for _, l := range c {
			texts = append(texts, l.Text)
		}
	}
	return sentences(texts...)
}

func paintAloud(v *aloudDrawn, p *parts.Pen, size fyne.Size) {
	in := look.U(aloudInset)
	w := size.Width - 2*in
	title := p.Write(v.Title, parts.Ink{Role: look.Hand, Lines: 1}, in, 0, w*0.8, 0)
	p.Write(v.Note, parts.Ink{Role: look.Sentence, Lines: 1}, in+title.W+look.U(20), title.H*0.45, w-title.W-look.U(20), 0)
	top := aloudTop()
	p.Fill(in, top-look.U(12), w, look.U(2), look.Line)
	cw := aloudWidth(size.Width, len(v.Cols))
	for i, col := range v.Cols {
		x, y := in+float32(i)*(cw+look.U(aloudGap)), top
		if i > 0 {
			p.Fill(x-look.U(aloudGap)/2, top, look.U(1), size.Height-top, look.Line)
		}
		for _, l := range col {
			h := l.height(v.Role, cw)
			if l.indent() > 0 {
				side := look.U(34)
				p.Mark(l.Mark, x, y+(l.laid(v.Role, 1e5)-side)/2, side)
			}
			p.Write(l.Text, l.ink(v.Role), x+l.indent(), y, cw-l.indent(), min(h, size.Height-y))
			y += h
		}
	}
}
