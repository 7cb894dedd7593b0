package ui

import (
	"fmt"
	"reflect"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// A node is a part of a screen as plain values: a view of ui/parts, or a row,
// a column or a list of other nodes. Two nodes that are equal look the same.
type node struct {
	id   string
	view any
	size float32 // along the parent, in design pixels; nought shares what is left
	part float32 // share of what is left; nought is 1
	most float32 // without a size: so much of what is left, before the others share it
	kids []node
}

type (
	rowOf   struct{ gap float32 } // kids side by side
	cellsOf struct{}              // as rowOf, each kid as wide as its part in cells
	colOf   struct{ gap float32 } // kids under one another
	listOf  struct {              // kids under one another on a panel, scrolled; each has a size
		panel parts.PanelView
		gap   float32
		show  float32 // how far down what matters begins, in design pixels
		upTo  float32 // and ends; nought where nothing matters more than the rest
		grow  float32 // rows may grow so many times where all of them have room; nought is not at all
	}
	padView struct { // ten digits, delete and done
		done parts.Tone
		shut bool
	}
)

func row(size float32, kids ...node) node {
	return node{view: rowOf{look.Gap}, size: size, kids: kids}
}

func col(size float32, kids ...node) node {
	return node{view: colOf{look.Gap}, size: size, kids: kids}
}

// sized is a node with another size.
func sized(n node, size float32) node {
	n.size = size
	return n
}

// wide is a node with a share of what is left.
func wide(n node, part float32) node {
	n.part = part
	return n
}

// upTo is a node that takes so much of what is left and no more. One of a row
// or column can.
func upTo(n node, most float32) node {
	n.most = most
	return n
}

func keyNode(v parts.KeyView) node { return node{id: v.ID, view: v} }

// A tree shows nodes: it makes the parts, keeps those that stay, and tells
// what was touched. An act has its plain id; any other kind of part has the
// kind before it: "slot:R41-028".
type tree struct {
	box *fyne.Container
	top node
	act func(id string)
	// resized is called where the width is another, if it is
	// not nil; it may set other nodes.
	resized func()
	width   float32
	made    map[string]any // by kind and id
	used    map[string]bool
}

func newTree(act func(id string)) *tree {
	t := &tree{act: act, made: map[string]any{}}
	t.box = box(func(size fyne.Size) {
		if size.Width != t.width && t.top.view != nil && t.resized != nil {
			t.width = size.Width
			t.resized()
		}
		t.lay(t.top, 0, 0, size.Width, size.Height)
	})
	return t
}

// set shows other nodes.
func (t *tree) set(top node) {
	if reflect.DeepEqual(top, t.top) {
		return
	}
	t.top = top
	t.used = map[string]bool{}
	t.box.Objects = t.leaves(top, nil)
	for k := range t.made {
		if !t.used[k] {
			delete(t.made, k)
		}
	}
	relay(t.box)
}

// leaves makes the parts of a node, in the order they are drawn.
func (t *tree) leaves(n node, out []fyne.CanvasObject) []fyne.CanvasObject {
	switch n.view.(type) {
	case rowOf, colOf, cellsOf:
		for _, k := range n.kids {
			out = t.leaves(k, out)
		}
		return out
	case nil:
		return out
	}
	return append(out, t.leaf(n))
}

func leafKey(n node) string { return fmt.Sprintf("%T %s", n.view, n.id) }

// leaf is the part of a node, up to date.
func (t *tree) leaf(n node) fyne.CanvasObject {
	k := leafKey(n)
	if t.used != nil {
		t.used[k] = true
	}
	o := t.made[k]
	if o == nil {
		o = t.make(n)
		t.made[k] = o
	}
	switch v := n.view.(type) {
	case parts.KeyView:
		o.(*parts.Key).Set(v)
	case parts.HoldView:
		o.(*parts.HoldKey).Set(v)
	case parts.AnswerView:
		o.(*parts.YesNo).Set(v)
	case parts.LabelView:
		o.(*parts.Label).Set(v)
	case parts.RowView:
		o.(*parts.Row).Set(v)
	case parts.ReadoutView:
		o.(*parts.Readout).Set(v)
	case parts.DoorView:
		o.(*parts.Door).Set(v)
	case parts.SlotView:
		o.(*parts.SlotBox).Set(v)
	case parts.StripView:
		o.(*parts.Strip).Set(v)
	case padView:
		o.(*parts.DigitPad).SetDone(v.done, v.shut)
	case leadView:
		o.(*lead).set(v)
	case homeView:
		o.(*homeSlot).set(v)
	case listOf:
		o.(*list).set(t, v, n.kids)
	case ownView:
		o.(ownPart).set(v)
	}
	return object(o)
}

// object is what the toolkit shows of a part.
func object(o any) fyne.CanvasObject {
	switch o := o.(type) {
	case *list:
		return o.panel
	case *lead:
		return o.drawn
	case *homeSlot:
		return o.drawn
	case ownPart:
		return o.canvas()
	}
	return o.(fyne.CanvasObject)
}

func (t *tree) make(n node) any {
	touched := func(kind, id string) func() {
		if kind != "" && kind != parts.KindAct {
			id = kind + ":" + id
		}
		return func() { t.act(id) }
	}
	switch v := n.view.(type) {
	case parts.KeyView:
		return parts.NewKey(v, touched(v.Kind, n.id))
	case parts.HoldView:
		return parts.NewHoldKey(v, touched("", n.id))
	case parts.AnswerView:
		return parts.NewYesNo(v, func(yes bool) {
			t.act("answer:" + n.id + map[bool]string{true: "=yes", false: "=no"}[yes])
		})
	case parts.LabelView:
		return parts.NewLines(v)
	case parts.RowView:
		return parts.NewRow(v, touched(v.Kind, n.id))
	case parts.ReadoutView:
		return parts.NewReadout(v)
	case parts.DoorView:
		return parts.NewDoor(v, touched(parts.KindDoor, n.id))
	case parts.SlotView:
		return parts.NewSlotBox(v, touched(parts.KindSlot, n.id))
	case parts.StripView:
		return parts.NewStrip(v, t.act)
	case padView:
		return parts.NewDigitPad(func(id string) { t.act("digit:" + id) })
	case leadView:
		return newLead(v)
	case homeView:
		return newHomeSlot(v)
	case listOf:
		return newList(v)
	case ownView:
		return v.newPart()
	}
	panic(fmt.Sprintf("ui: no part shows a %T", n.view))
}

// lay gives a node and all in it their room.
func (t *tree) lay(n node, x, y, w, h float32) {
	switch v := n.view.(type) {
	case rowOf:
		for i, k := range n.kids {
			off, size := share(n.kids, i, w, look.U(v.gap))
			t.lay(k, x+off, y, size, h)
		}
	case cellsOf:
		t.layCells(n, x, y, w, h)
	case colOf:
		for i, k := range n.kids {
			off, size := share(n.kids, i, h, look.U(v.gap))
			t.lay(k, x, y+off, w, size)
		}
	case nil:
	default:
		if o := t.made[leafKey(n)]; o != nil {
			place(object(o), x, y, w, h)
			if l, ok := o.(*list); ok {
				l.fill()
				l.reveal()
			}
		}
	}
}

// layCells lays kids out in cells of one width, so that rows of the same width
// line up under one another.
func (t *tree) layCells(n node, x, y, w, h float32) {
	gap, cells := look.U(look.Gap), float32(0)
	for _, k := range n.kids {
		cells += max(k.part, 1)
	}
	cell := (w - gap*(cells-1)) / cells
	for _, k := range n.kids {
		part := max(k.part, 1)
		t.lay(k, x, y, part*cell+(part-1)*gap, h)
		x += part * (cell + gap)
	}
}

// share is where the i-th of some nodes begins and how much room it gets.
func share(kids []node, i int, room, gap float32) (off, size float32) {
	free, weights, most := room-gap*float32(len(kids)-1), float32(0), float32(0)
	for _, k := range kids {
		switch {
		case k.size > 0:
			free -= look.U(k.size)
		case k.most > 0:
			most = look.U(k.most)
		default:
			weights += max(k.part, 1)
		}
	}
	most = min(most, max(free, 0))
	free -= most
	own := func(k node) float32 {
		switch {
		case k.size > 0:
			return look.U(k.size)
		case k.most > 0:
			return most
		}
		return max(free, 0) * max(k.part, 1) / weights
	}
	for _, k := range kids[:i] {
		off += own(k) + gap
	}
	return off, own(kids[i])
}

// list is a panel with rows that scroll.
type list struct {
	panel  *parts.Panel
	scroll *parts.Scroller
	column *parts.Column
	kids   []node
	show   [2]float32 // what is to be seen, from and to
	shown  [2]float32
	most   float32 // times that rows may grow
	times  float32 // that they have grown
}

func newList(v listOf) *list {
	l := &list{column: parts.NewColumn(v.gap), times: 1}
	l.scroll = parts.NewScroller(l.column)
	l.panel = parts.NewPanel(v.panel, l.scroll)
	return l
}

// set shows other rows. Where what matters has moved, the list scrolls to it.
func (l *list) set(t *tree, v listOf, kids []node) {
	l.panel.Set(v.panel)
	objs := make([]fyne.CanvasObject, len(kids))
	for i, k := range kids {
		inner := t.leaves(k, nil)
		objs[i] = &fyne.Container{Objects: inner, Layout: rowLayout{t, l, k}}
	}
	if !reflect.DeepEqual(kids, l.kids) {
		l.kids = kids
		l.column.SetInside(objs...)
		l.scroll.Refresh()
	}
	l.show = [2]float32{look.U(v.show), look.U(v.upTo)}
	l.most = v.grow
	l.fill()
	l.reveal()
}

// fill makes the rows higher where there is room for all of them and more.
func (l *list) fill() {
	room := l.scroll.Size().Height - look.U(2*parts.Bleed)
	if l.most == 0 || room <= 0 {
		return
	}
	l.times = 1
	if all := l.column.HeightFor(l.column.Size().Width); all > 0 {
		l.times = max(min(l.most, room/(all+1)), 1)
	}
	l.scroll.Settle()
}

// reveal scrolls as far as it must, once, for what matters to be seen.
func (l *list) reveal() {
	room := l.scroll.Size().Height
	if l.show == l.shown || room <= 0 {
		return
	}
	l.shown = l.show
	l.scroll.ScrollToOffset(min(max(l.show[1]-room, 0), l.show[0]))
}

// rowLayout lays out one row of a list.
type rowLayout struct {
	t *tree
	l *list
	n node
}

// Layout gives the row its room.
func (r rowLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	r.t.lay(r.n, 0, 0, size.Width, size.Height)
}

// MinSize is the height of the row.
func (r rowLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(0, look.U(r.n.size*r.l.times))
}
