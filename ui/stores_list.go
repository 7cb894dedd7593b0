package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// slotWords says where a line lives: "R41, L1, upper shelf".
func (n *now) slotWords(it *model.Item) string {
	if s := n.d.Slot(it.Slot); s != nil {
		return strings.Join([]string{s.Rig, placeWord(s.Compartment), s.Description}, ", ")
	}
	if k := n.d.Item(it.Kit); k != nil {
		return words.F("%s, in %s", it.Rig, low(k.Short()))
	}
	return words.F("%s, no home yet", it.Rig)
}

// lineView is one line of the inventory as a row of a list.
type lineView struct {
	ID, Name, Figure string
	Mark             parts.MarkView
	Where, About     string
	Icon             string // where it is not whole
}

// realWords says where the pieces of a line really are: what lies in a kit is
// where the kit is. The icon is that of the first place away.
func (n *now) realWords(i int) (said, icon string) {
	var out []string
	one := n.d.Items[i].Quantity == 1
	for _, st := range n.s.Line(i).Stacks {
		w, ic := n.whereWord(n.s.Real(st.Place))
		if st.Place.Kind == model.InKit && n.s.Real(st.Place).Kind != model.Home {
			w += words.F(", in %s", low(n.placeName(st.Place)))
		}
		if n.s.Real(st.Place).Kind != model.Home && icon == "" {
			icon = ic
		}
		if !one {
			w = fmt.Sprintf("%d %s", st.N, w)
		}
		out = append(out, w)
	}
	if icon == "" {
		return words.L("all home"), ""
	}
	return strings.Join(out, "; "), icon
}

// lineOf is a line as the lists of Stores show it.
func (n *now) lineOf(i int) lineView {
	it := &n.d.Items[i]
	v := lineView{ID: it.ID, Name: it.Short(), Figure: fmt.Sprint(it.Quantity), Mark: n.mark(it.Rig)}
	where, icon := n.realWords(i)
	v.Where, v.Icon = capital(where), icon
	var about []string
	if s := n.d.Slot(it.Slot); s != nil && it.Kit == "" {
		about = append(about, s.Description)
	} else if it.Kit != "" {
		about = append(about, words.F("in %s", low(n.itemName(it.Kit))))
	}
	about = append(about, pounds(it.WeightLb, it))
	if it.TwoPerson {
		about = append(about, words.L("two people"))
	}
	if l := n.s.Line(i); l.Tagged() > 0 {
		about = append(about, words.F("%d out of service", l.Tagged()))
	}
	if len(it.Checks) > 0 {
		about = append(about, words.F("asks %s", checkWords(it)))
	}
	if it.Mark != "" {
		about = append(about, words.F("marked %s", it.Mark))
	}
	v.About = strings.Join(about, ", ")
	if w := n.heldWord(it.ID); w != "" {
		v.Where += words.F(". Waits: %s", w)
	}
	return v
}

// checkWords are the checks of an item with its limits: "battery 80, clean".
func checkWords(it *model.Item) string {
	var out []string
	for _, a := range it.Checks {
		if a.HasLimit {
			out = append(out, fmt.Sprintf("%s %g", a.Check, a.Limit))
		} else {
			out = append(out, a.Check)
		}
	}
	return strings.Join(out, " ")
}

// lineCell is a row of a list of Stores.
type lineCell struct {
	*parts.Touch
	view lineView
}

func newLineCell(touched func(id string)) *lineCell {
	c := &lineCell{}
	c.Touch = parts.NewTouch(parts.Part{}, 2*look.Target, look.Target, c.paint, func() { touched(c.view.ID) })
	return c
}

// set shows another line.
func (c *lineCell) set(v lineView) {
	if c.view == v {
		return
	}
	c.view = v
	c.SetPart(parts.Part{Kind: parts.KindPiece, ID: v.ID, Text: join(v.Figure+" "+v.Name, v.Where, v.About)})
	c.Refresh()
}

func (c *lineCell) paint(p *parts.Pen, size fyne.Size) {
	v := c.view
	p.Rect(0, 0, size.Width, size.Height, look.Surface, look.Edge, look.U(1), look.U(look.RadiusPanel))
	in := look.U(12)
	fig := p.Fit(v.Figure, parts.Ink{Role: look.Place, Lines: 1}, look.U(90), 0)
	p.Put(fig, in, (size.Height-fig.H)/2, fig.W)
	x := in + max(fig.W, look.U(44)) + in
	x += p.Mark(v.Mark, x, (size.Height-look.U(40))/2, look.U(40)) + in
	w := size.Width - x - in
	if v.Icon != "" {
		side := look.U(28)
		w -= side + in
		p.Icon(v.Icon, look.Text, size.Width-in-side, (size.Height-side)/2, side)
	}
	name := p.Fit(v.Name, parts.Ink{Role: look.Name, Lines: 1}, w, 0)
	where := p.Fit(v.Where, parts.Ink{Role: look.Body}, w, size.Height-name.H-look.U(8))
	about := p.Fit(v.About, parts.Ink{Role: look.Small, Color: look.Dim}, w, size.Height-name.H-where.H-look.U(8))
	p.Stack(x, 0, w, size.Height, name, where, about)
}

// lineList is a screen of lines; a touch opens one.
type lineList struct {
	title, sentence string
	mark            parts.MarkView
	lines           func(n *now) []int
	views           []lineView
	grid            *parts.Grid
	root            *fyne.Container
	paper           *parts.Key // in the header, nil where there is none
}

func newLineList(sh *Shell, title, sentence string, lines func(n *now) []int) *lineList {
	l := &lineList{title: title, sentence: sentence, lines: lines}
	l.grid = lineGrid(&l.views, 560, look.TileH+20, func(id string) { sh.open(newLinePage(sh, id)) })
	l.root = box(func(size fyne.Size) { flush(l.grid, 0, 0, size.Width, size.Height) }, l.grid)
	return l
}

// lineGrid is a grid of rows for lines, with the least size of a row in design
// pixels.
func lineGrid(views *[]lineView, wide, high float32, touched func(id string)) *parts.Grid {
	cell := func() fyne.Size { return fyne.NewSize(look.U(wide), look.U(high)) }
	made := map[fyne.CanvasObject]*lineCell{} // the grid holds the drawn part, not the row
	return parts.NewGrid(cell, func() fyne.CanvasObject {
		c := newLineCell(touched)
		made[c.Touch] = c
		return c.Touch
	}, func(i int, o fyne.CanvasObject) { made[o].set((*views)[i]) })
}

func (l *lineList) body() fyne.CanvasObject { return l.root }

func (l *lineList) show(n *now) head {
	n.fill(l.grid, &l.views, l.lines(n))
	h := head{title: l.title, sentence: l.sentence, mark: l.mark, back: true}
	if l.paper != nil {
		h.middle, h.widths = []fyne.CanvasObject{l.paper}, []float32{152}
	}
	return h
}

// fill puts lines into a grid, and draws it only if they changed.
func (n *now) fill(grid *parts.Grid, views *[]lineView, lines []int) {
	out := make([]lineView, len(lines))
	same := len(lines) == len(*views)
	for k, i := range lines {
		out[k] = n.lineOf(i)
		same = same && out[k] == (*views)[k]
	}
	if !same {
		*views = out
		grid.SetLen(len(out))
	}
}

// newSlots is one compartment: every line that lives in it, slot by slot.
func newSlots(sh *Shell, rig, compartment string) screen {
	title := capital(compartment)
	if compartment == "" {
		title = words.L("No home yet")
	}
	l := newLineList(sh, title, words.F("%s. Each piece by its slot", sh.now().rigName(rig)), func(n *now) (out []int) {
		for _, s := range n.d.Slots {
			if s.Rig != rig || s.Compartment != compartment {
				continue
			}
			for i := range n.d.Items {
				if it := &n.d.Items[i]; it.Kit == "" && it.Slot == s.ID {
					out = append(append(out, i), n.insideOf(i)...)
				}
			}
		}
		if compartment == "" {
			for i := range n.d.Items {
				if it := &n.d.Items[i]; it.Kit == "" && it.Rig == rig && n.homeCompartment(it) == "" {
					out = append(append(out, i), n.insideOf(i)...)
				}
			}
		}
		return out
	})
	l.mark = sh.now().mark(rig)
	return l
}

// insideOf are the lines that live in a kit, and in the kits in it.
func (n *now) insideOf(kit int) (out []int) {
	for _, i := range n.d.Inside(kit) {
		out = append(append(out, i), n.insideOf(i)...)
	}
	return out
}

// storesFind finds lines by letters, wherever they are.
type storesFind struct {
	sh    *Shell
	text  string
	out   *parts.Readout
	pad   *parts.LetterPad
	none  *parts.Label
	grid  *parts.Grid
	views []lineView
	root  *fyne.Container
}

func newStoresFind(sh *Shell) *storesFind {
	f := &storesFind{sh: sh}
	f.out = parts.NewReadout(parts.ReadoutView{ID: "typed"})
	f.pad = parts.NewLetterPad(func(s string) { f.text += s; sh.refresh() }, func() {
		if r := []rune(f.text); len(r) > 0 {
			f.text = string(r[:len(r)-1])
		}
		sh.refresh()
	}, func() {
		if len(f.views) == 1 {
			sh.open(newLinePage(sh, f.views[0].ID))
		}
	})
	f.none = parts.NewLines(parts.LabelView{ID: "none", Role: look.Lead})
	f.grid = lineGrid(&f.views, 420, look.TileH, func(id string) { sh.open(newLinePage(sh, id)) })
	f.root = box(func(size fyne.Size) {
		gap, row := look.U(look.Gap), look.U(look.Floor)
		padH := 4*row + 3*gap
		place(f.pad, 0, size.Height-padH, size.Width, padH)
		w := size.Width * 0.26
		place(f.out, 0, 0, w, row)
		place(f.none, 0, row+gap, w, size.Height-padH-row-2*gap)
		flush(f.grid, w+gap, 0, size.Width-w-gap, size.Height-padH-gap)
	}, f.out, f.none, f.grid, f.pad)
	return f
}

func (f *storesFind) body() fyne.CanvasObject { return f.root }

func (f *storesFind) show(n *now) head {
	var lines []int
	if want := fold(f.text); want != "" {
		lines = n.ranked(want)
	}
	n.fill(f.grid, &f.views, lines)
	f.out.Set(parts.ReadoutView{ID: "typed", Text: f.text, Tone: parts.Live, Role: look.Place})
	said := words.L("Letters find a piece by any of its names.")
	switch {
	case len(lines) > 0:
		said = words.F("%s found.", words.N("%d line", "%d lines", len(lines)))
	case f.text != "":
		said = words.F("Nothing is called %s. Try fewer letters.", f.text)
	}
	f.none.SetText(said)
	return head{title: words.L("Find in the inventory"), sentence: words.L("Three letters of a piece, of any rig"), back: true, letters: true}
}
