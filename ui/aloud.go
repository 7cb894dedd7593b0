package ui

import (
	"fmt"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// aloudPage is one page of large text, to be read over the radio.
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

// aloudLines is how many lines a page has at most.
const aloudLines = 7

// paged splits what is too long for a page. A heading stays with what it
// heads, and is said again where its group goes on.
func paged(title, note string, lines []aloudLine) []aloudPage {
	var out []aloudPage
	for len(lines) > aloudLines {
		cut := aloudLines
		if lines[cut-1].Strong {
			cut--
		}
		out = append(out, aloudPage{title, note, lines[:cut:cut]})
		rest := lines[cut:]
		for k := cut - 1; k >= 0 && !rest[0].Strong; k-- {
			if lines[k].Strong {
				rest = append([]aloudLine{lines[k]}, rest...)
			}
		}
		lines = rest
	}
	return append(out, aloudPage{title, note, lines})
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
		out = append(out, paged(b.Name, words.N("%d line", "%d lines", b.Lines), lines)...)
	}
	if away := n.awayLine(); away != "" {
		out = append(out, aloudPage{words.L("Elsewhere"), "", []aloudLine{{Text: away}}})
	}
	var run []aloudLine
	read, unread := n.gauges()
	for _, g := range read {
		run = append(run, aloudLine{Text: fmt.Sprintf("%s, %s: %s. %s", g.Name, g.Place, g.figure(), g.when())})
	}
	if unread != "" {
		run = append(run, aloudLine{Text: words.F("Not read: %s", unread)})
	}
	if len(run) > 0 {
		out = append(out, paged(words.L("Running down"), words.L("as last read"), run)...)
	}
	var sent []aloudLine
	for _, r := range n.present() {
		v := n.sent(r)
		sent = append(sent, aloudLine{Mark: n.mark(r), Text: v.Name + ". " + v.words(6, longWhy)})
	}
	out = append(out, paged(words.L("If sent now"), "", sent)...)
	return out
}

// aloudScreen shows pages of large text over a screen.
type aloudScreen struct {
	sh    *Shell
	title string
	pages func(*now) []aloudPage
	at    int
	root  *fyne.Container
	page  *reading[aloudPage]
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
	}, a.page.obj, a.last, a.count, a.next)
	return a
}

func (a *aloudScreen) body() fyne.CanvasObject { return a.root }

func (a *aloudScreen) show(n *now) head {
	pages := a.pages(n)
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
	h := head{title: words.L("Read aloud"), sentence: a.title + ". " + n.age(), back: true}
	if a.paper != "" {
		h.middle, h.widths = []fyne.CanvasObject{a.print}, []float32{152}
	}
	return h
}

func (p aloudPage) words() string {
	texts := []string{p.Title, p.Note}
	for _, l := range p.Lines {
		texts = append(texts, l.Text)
	}
	return sentences(texts...)
}

func paintAloud(v *aloudPage, p *parts.Pen, size fyne.Size) {
	in := look.U(20)
	w := size.Width - 2*in
	title := p.Write(v.Title, parts.Ink{Role: look.Hand, Lines: 1}, in, 0, w*0.8, 0)
	p.Write(v.Note, parts.Ink{Role: look.Sentence, Lines: 1}, in+title.W+look.U(20), title.H*0.45, w-title.W-look.U(20), 0)
	y := title.H + look.U(10)
	p.Fill(in, y, w, look.U(2), look.Line)
	y += look.U(10)
	role := look.Screen
	room := size.Height - y
	left := float32(len(v.Lines))
	for _, l := range v.Lines {
		side := look.U(34)
		h := room / left
		x := in + look.U(52)
		if l.Strong || l.Mark == (parts.MarkView{}) {
			x = in
		} else {
			p.Mark(l.Mark, in, y+look.U(3), side)
		}
		ink := parts.Ink{Role: role}
		if l.Strong {
			ink.Role, ink.Color = look.Name, look.Accent
		}
		laid := p.Write(l.Text, ink, x, y, in+w-x, h)
		used := min(max(laid.H, side)+look.U(12), h)
		y += used
		room -= used
		left--
	}
}
