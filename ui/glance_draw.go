package ui

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// Sizes of a band, in design pixels.
const (
	bandTitle = 122 // the column with the name of the place
	bandCell  = 216 // a name at least
	bandRow   = 30
	bandRest  = 26
	bandLeast = 78
)

// bandDrawn is a band with its names put into rows and columns.
type bandDrawn struct {
	Band   bandView
	Cells  []bandCellAt
	Cols   int
	Rows   int
	Rest   []int // names without a cell, those out of service first
	Last   bool
	keys   int // key pieces that are not named
	hidden int // lines that are not named
}

type bandCellAt struct{ Name, Row, Col, Span int }

// flow puts names into so many rows. A long name takes two columns; where
// only one is left, the next name that needs no more goes there.
func flow(b bandView, w float32, rows int) bandDrawn {
	d := bandDrawn{Band: b, Cols: max(1, int(w/look.U(bandCell)))}
	cell := w / float32(d.Cols)
	span := func(i int) int {
		text := look.Measure(b.Names[i].Name, look.SmallBold.Base()+1, look.SmallBold.Style()).Width
		if text > cell-look.U(36) && d.Cols > 1 {
			return 2
		}
		return 1
	}
	todo := make([]int, len(b.Names))
	for i := range todo {
		todo[i] = i
	}
	for d.Rows < rows && len(todo) > 0 {
		for col := 0; col < d.Cols; {
			k := slices.IndexFunc(todo, func(i int) bool { return span(i) <= d.Cols-col })
			if k < 0 {
				break
			}
			i := todo[k]
			d.Cells = append(d.Cells, bandCellAt{i, d.Rows, col, span(i)})
			col += span(i)
			todo = slices.Delete(todo, k, k+1)
		}
		d.Rows++
	}
	slices.SortStableFunc(todo, func(x, y int) int { return btoi(b.Names[y].Tagged) - btoi(b.Names[x].Tagged) })
	d.Rest = todo
	for _, i := range todo {
		d.hidden += b.Names[i].Lines
		if b.Names[i].Key {
			d.keys++
		}
	}
	return d
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

// want is how much the band needs another row: key pieces first, and pieces
// at work before those that wait on the tarp.
func (d *bandDrawn) want() int {
	want := 100*d.keys + d.hidden
	if d.Band.Place == string(model.Tarp) {
		return min(want/3, 99) // a key piece at work comes first, whatever waits
	}
	return want
}

func (d *bandDrawn) height() float32 {
	h := look.U(bandRow)*float32(d.Rows) + look.U(16)
	if d.hidden > 0 {
		h += look.U(bandRest)
	}
	return max(h, look.U(bandLeast))
}

// words is the band as one text.
func (b bandView) words() string {
	var names []string
	for _, n := range b.Names {
		names = append(names, n.Said)
	}
	return fmt.Sprintf("%s, %s: %s", b.Name, words.N("%d line", "%d lines", b.Lines), strings.Join(names, ", "))
}

func paintBand(d *bandDrawn, p *parts.Pen, size fyne.Size) {
	b := &d.Band
	in := look.U(8)
	name := p.Write(b.Name, parts.Ink{Role: look.Place, Lines: 1}, in, look.U(6), look.U(bandTitle)-look.U(14), 0)
	p.Write(words.N("%s line", "%s lines", b.Lines, parts.B(fmt.Sprint(b.Lines))), parts.Ink{Role: look.Body, Lines: 1}, in, look.U(4)+name.H, look.U(bandTitle)-in, 0)
	x := look.U(bandTitle)
	cell := (size.Width - x) / float32(max(d.Cols, 1))
	row := look.U(bandRow)
	mark := look.U(21)
	for _, c := range d.Cells {
		v := b.Names[c.Name]
		cx, cy := x+float32(c.Col)*cell, look.U(9)+float32(c.Row)*row
		mw := p.Mark(v.Mark, cx, cy+(row-mark)/2, mark)
		p.Middle(v.Name, parts.Ink{Role: look.BodyBold, Lines: 1}, cx+mw+look.U(8), cy, cell*float32(c.Span)-mw-look.U(12), row)
	}
	if d.hidden > 0 {
		text := longest(p, len(d.Rest), look.Body, size.Width-x-look.U(8), 1, func(k int) string {
			var names []string
			for _, r := range d.Rest[:k] {
				names = append(names, b.Names[r].Said)
			}
			switch {
			case k == 0:
				return words.N("%s line", "%s lines", d.hidden, parts.B(words.F("%d more", d.hidden)))
			case k < len(d.Rest):
				return words.F("%s such as %s", parts.B(words.F("%d more,", d.hidden)), strings.Join(names, ", "))
			}
			return parts.B(words.F("%d more:", d.hidden)) + " " + strings.Join(names, ", ")
		})
		p.Write(text, parts.Ink{Role: look.Body, Lines: 1}, x, look.U(9)+float32(d.Rows)*row, size.Width-x-look.U(8), 0)
	}
	if !d.Last {
		p.Fill(0, size.Height-look.U(1), size.Width, look.U(1), look.Line)
	}
}

var (
	nothingOut     = words.K("Nothing is out")
	nothingOutMore = words.K("Every piece is in its slot. What is pulled, or taken straight off the rig, shows here place by place.")
	nothingHere    = words.K("Nothing lies on the tarp or at a place of the scene. What is with others or not ready stands below.")
)

// nothingDrawn is what stands in the place of the bands while nothing is out:
// the families that have no room at the foot.
type nothingDrawn struct {
	More string
	Free []freeView
}

// nothingHead is the height of the words above the families, in design pixels
// at text scale 1.
const nothingHead = 112

// freeRows is how the families fall into the room under the words.
func freeRows(size fyne.Size) (cols, rows int) {
	head := look.U(nothingHead) * look.Current().Options().Text
	return max(1, int(size.Width/look.U(freeCell))), max(0, int((size.Height-head)/look.U(glanceFree)))
}

func paintNothingOut(v *nothingDrawn, p *parts.Pen, size fyne.Size) {
	in := look.U(8)
	l := p.Write(words.L(nothingOut), parts.Ink{Role: look.Place, Lines: 1}, in, look.U(6), size.Width-2*in, 0)
	head := look.U(nothingHead) * look.Current().Options().Text
	if len(v.Free) == 0 {
		head = 0
	}
	p.Write(v.More, parts.Ink{Role: look.Body}, in, look.U(8)+l.H, min(size.Width-2*in, look.U(700)), max(0, head-look.U(8)-l.H))
	cols, _ := freeRows(size)
	cell := size.Width / float32(cols)
	for i := 0; i < len(v.Free); i += cols {
		y := head + look.U(glanceFree)*float32(i/cols)
		p.Fill(0, y+look.U(2), size.Width, look.U(1), look.Line)
		for k, f := range v.Free[i:min(i+cols, len(v.Free))] {
			paintFreeCell(f, p, float32(k)*cell, y, cell, look.U(glanceFree), k > 0)
		}
	}
}

func paintGlanceFoot(s *string, p *parts.Pen, size fyne.Size) {
	if *s == "" || size.Height < 2 {
		return
	}
	p.Fill(0, 0, size.Width, look.U(1), look.Line)
	p.Middle(*s, parts.Ink{Role: look.Body, Lines: 2}, look.U(8), look.U(2), size.Width-look.U(16), size.Height)
}

func paintSent(v *[]sentDrawn, p *parts.Pen, size fyne.Size) {
	x := look.U(14)
	w := size.Width - x
	p.Fill(x, 0, w, look.U(1), look.Line)
	p.Fill(0, 0, look.U(1), size.Height-look.U(8), look.Line)
	head := p.Write(words.L("If sent now"), parts.Ink{Role: look.TileName, Lines: 1}, x, look.U(5), w, 0)
	y := max(look.U(34), look.U(5)+head.H)
	if len(*v) == 0 {
		return
	}
	h := (size.Height - y - look.U(2)) / float32(len(*v))
	for _, s := range *v {
		box := h - look.U(6)
		ground, edge := look.Raised, look.Line
		p.Rect(x, y, w, box, ground, edge, look.U(1), look.U(look.RadiusPanel))
		mark := min(look.U(38), box-look.U(12))
		tx := x + look.U(12) + p.Mark(s.Mark, x+look.U(10), y+(box-mark)/2, mark) + look.U(10)
		tw := x + w - tx - look.U(8)
		name := p.Fit(s.View.Name, parts.Ink{Role: look.BodyBold, Lines: 1}, tw, 0)
		lines := max(1, int((box-name.H-look.U(4))/p.Fit("x", parts.Ink{Role: look.Small}, tw, 0).H))
		text := s.View.longest(p, look.Small, tw, lines)
		p.Stack(tx, y, tw, box, name, p.Fit(text, parts.Ink{Role: look.Small}, tw, 0))
		y += h
	}
}

func paintFree(v *[]freeView, p *parts.Pen, size fyne.Size) {
	p.Fill(0, look.U(2), size.Width, look.U(1), look.Line)
	title := look.U(freeTitle)
	p.Middle(words.L("Free\nnow"), parts.Ink{Role: look.Name}, look.U(8), 0, title-look.U(8), size.Height)
	if len(*v) == 0 {
		p.Middle(words.L("No critical families are set in the stores, so nothing can be counted here."), parts.Ink{Role: look.Body}, title, 0, size.Width-title, size.Height)
		return
	}
	cell := (size.Width - title) / float32(len(*v))
	for i, f := range *v {
		paintFreeCell(f, p, title+float32(i)*cell, 0, cell, size.Height, true)
	}
}

// paintFreeCell is one family of which somebody may ask for a free one.
func paintFreeCell(f freeView, p *parts.Pen, x, y, cell, h float32, rule bool) {
	if rule {
		p.Fill(x, y+look.U(14), look.U(1), h-look.U(22), look.Line)
	}
	x += look.U(9)
	w := cell - look.U(13)
	color := look.Text
	if f.Count == 0 {
		color = look.Alarm
	}
	p.Write(fmt.Sprint(f.Count), parts.Ink{Role: look.Hand, Color: color, Lines: 1}, x, y+look.U(6), w, 0)
	p.Write(f.Name, parts.Ink{Role: look.SmallBold, Lines: 2}, x, y+look.U(62), w, look.U(42))
	paintWhose(f, p, x, y+h-look.U(30), w)
}

// paintWhose draws whose the free ones are: the mark, and how many where they
// are of more than one rig.
func paintWhose(f freeView, p *parts.Pen, x, y, w float32) {
	side := look.U(22)
	if f.Count == 0 {
		p.Write(parts.Or(words.L("none free"), words.L("none")), parts.Ink{Role: look.Small, Color: look.Alarm, Lines: 1}, x, y, w, 0)
		return
	}
	var need float32
	num := func(m freeMark) parts.Laid {
		return p.Fit(fmt.Sprint(m.N), parts.Ink{Role: look.Small, Lines: 1}, w, 0)
	}
	for _, m := range f.Whose {
		need += side + look.U(14) + num(m).W
	}
	counts, left := len(f.Whose) > 1 && need-look.U(10) <= w, w
	for _, m := range f.Whose {
		step := p.Mark(m.Mark, x, y, side) + look.U(4)
		if counts && m.N > 1 {
			p.Put(num(m), x+step, y+(side-num(m).H)/2, num(m).W)
			step += num(m).W + look.U(2)
		}
		x, left = x+step+look.U(6), left-step-look.U(6)
	}
	if word := p.Fit(words.L("tarp"), parts.Ink{Role: look.Small, Lines: 1}, w, 0); f.OnTarp && word.W <= left {
		p.Put(word, x, y+(side-word.H)/2, word.W)
	}
}

func (v alertView) words() string {
	if v.More == 0 {
		return v.Text
	}
	return words.F("%s. And %d more", v.Text, v.More)
}

func paintAlert(v *alertView, p *parts.Pen, size fyne.Size) {
	ground, edge, ink := look.Surface, look.Line, look.Text
	if v.Loud {
		ground, edge, ink = look.AlarmGround, look.Alarm, look.Alarm
	}
	over, high := look.U(look.Floor-glanceAlert)/2, look.U(glanceAlert)
	p.Rect(0, over, size.Width, high, ground, edge, look.U(2), look.U(look.RadiusPanel))
	side := look.U(26)
	p.Icon(v.Icon, ink, look.U(12), over+(high-side)/2, side)
	end := size.Width - look.U(14) - side
	p.Icon("go", ink, end, over+(high-side)/2, side)
	end -= look.U(12)
	if v.More > 0 {
		more := p.Fit(words.F("and %d more", v.More), parts.Ink{Role: look.Body, Lines: 1}, size.Width/4, 0)
		p.Put(more, end-more.W, over+(high-more.H)/2, more.W)
		end -= more.W + look.U(16)
	}
	x := look.U(50)
	p.Middle(v.Text, parts.Ink{Role: look.TileName, Lines: 1}, x, over, end-x, high)
}
