package ui

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// storesScreen is the inventory: a rig, one of its compartments, and there
// every piece by its slot. Three letters find one without the way.
type storesScreen struct {
	sh   *Shell
	root *fyne.Container
	rigs []*parts.Key
	find *parts.Key
	lift *parts.Key
	kits *parts.Key
	load *parts.Key
	held *parts.Label
	side *parts.Panel
	line *parts.Scroller
}

func newStores(sh *Shell) screen {
	s := &storesScreen{sh: sh}
	s.find = parts.NewKey(parts.KeyView{ID: "find", Title: words.L("Find"), Second: words.L("three letters"), Icon: "find", Lay: parts.LayLeft}, func() { sh.open(newStoresFind(sh)) })
	s.lift = parts.NewKey(parts.KeyView{ID: "lift-marks", Title: words.L("Lift marks"), Second: words.L("by weight"), Icon: "two", Lay: parts.LayLeft}, func() { sh.open(newMarkList(sh)) })
	s.kits = parts.NewKey(parts.KeyView{ID: "sets-dates", Title: words.L("Sets and dates"), Second: parts.Or(words.L("whole? expired?"), words.L("expired?"), ""), Icon: "kit", Lay: parts.LayLeft}, func() { sh.open(newSets(sh)) })
	s.load = parts.NewKey(parts.KeyView{}, func() {
		if sh.opts.Folders != nil && sh.opts.LoadFrom != nil {
			sh.open(newLoading(sh))
		}
	})
	s.held = parts.NewLines(parts.LabelView{ID: "held", Role: look.Lead})
	s.line = parts.NewScroller(s.held)
	s.side = parts.NewPanel(parts.PanelView{}, s.line)
	s.root = box(s.layout)
	return s
}

func (s *storesScreen) body() fyne.CanvasObject { return s.root }

func (s *storesScreen) layout(size fyne.Size) {
	gap, h := look.U(look.Gap), look.U(96)
	left := (size.Width - gap) * 0.56
	w := (left - gap) / 2
	third := (left - 2*gap) / 3
	place(s.find, 0, 0, third, h)
	place(s.lift, third+gap, 0, third, h)
	place(s.kits, 2*(third+gap), 0, third, h)
	for i, k := range s.rigs {
		place(k, float32(i%2)*(w+gap), float32(i/2+1)*(h+gap), w, h)
	}
	place(s.load, 0, size.Height-h, left, h)
	place(s.side, left+gap, 0, size.Width-left-gap, size.Height)
}

// mostRigs is how many rigs there is room for; the rest is found by letters.
const mostRigs = 6

// show brings the screen up to date.
func (s *storesScreen) show(n *now) head {
	var with []string
	for _, r := range n.rigs() {
		if len(with) < mostRigs && slices.ContainsFunc(n.d.Items, func(it model.Item) bool { return it.Rig == r }) {
			with = append(with, r)
		}
	}
	for len(s.rigs) < len(with) {
		var k *parts.Key
		k = parts.NewKey(parts.KeyView{}, func() { s.sh.open(newCompartments(s.sh, k.View().ID)) })
		s.rigs = append(s.rigs, k)
	}
	s.rigs = s.rigs[:len(with)]
	for i, r := range with {
		lines, away := 0, 0
		for j := range n.d.Items {
			if n.d.Items[j].Rig == r {
				lines++
				away += n.s.Out(j)
			}
		}
		s.rigs[i].Set(parts.KeyView{Kind: parts.KindRig, ID: r, Title: n.rigName(r), Second: words.F("%s, %s out", words.N("%d line", "%d lines", lines), words.N("%d piece", "%d pieces", away)), Mark: n.mark(r), Lay: parts.LayLeft})
	}
	s.load.Set(parts.KeyView{ID: "load-tables", Title: words.L("Load tables"), Second: words.L("from a folder; first it shows what would change"), Icon: "in", Lay: parts.LayLeft, Off: n.opts.Folders == nil || n.opts.LoadFrom == nil})
	s.side.Set(parts.PanelView{Title: words.L("Waits until the pieces are home"), Rule: true})
	s.held.SetText(n.heldWords())
	s.line.Settle()
	objs := []fyne.CanvasObject{s.find, s.lift, s.kits, s.load, s.side}
	for _, k := range s.rigs {
		objs = append(objs, k)
	}
	if !sameObjects(s.root.Objects, objs) {
		s.root.Objects = objs
		relay(s.root)
	}
	return head{title: words.L("Stores"), sentence: words.L("Touch a rig, a door, a piece. Nothing here moves a piece")}
}

// heldWords says which changes of the inventory wait for their pieces.
func (n *now) heldWords() string {
	var out []string
	for _, id := range n.s.Held() {
		if w := n.heldWord(id); w != "" {
			out = append(out, parts.B(n.itemName(id))+"\n"+w)
		}
	}
	if len(out) == 0 {
		return words.L("Nothing waits. When a quantity or a kit is changed while pieces are out, the change stands here and counts once they are home.")
	}
	return strings.Join(out, "\n")
}

// heldWord is how a line will be once its pieces are home, "" if nothing waits.
func (n *now) heldWord(id string) string {
	is, want := n.d.Item(id), n.s.Wanted().Item(id)
	switch {
	case !slices.Contains(n.s.Held(), id) || is == nil:
		return ""
	case want == nil:
		return words.L("Taken out of the inventory once it is home.")
	case want.Quantity != is.Quantity:
		return words.F("%d now, %d once all are home.", is.Quantity, want.Quantity)
	}
	return words.L("Another kit or rig once it is home.")
}

// compartments of a rig, in the order of the slots; "" for no home yet.
func (n *now) compartments(rig string) []string {
	var out []string
	add := func(c string) {
		if !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	for _, s := range n.d.Slots {
		if s.Rig == rig {
			add(s.Compartment)
		}
	}
	for i := range n.d.Items {
		if it := &n.d.Items[i]; it.Rig == rig && n.homeCompartment(it) == "" {
			add("")
		}
	}
	return out
}

// homeCompartment is where a line lives: its own slot, or that of its kit.
func (n *now) homeCompartment(it *model.Item) string {
	for kit := n.d.Item(it.Kit); kit != nil; kit = n.d.Item(it.Kit) { // no kit is ever in itself
		it = kit
	}
	if s := n.d.Slot(it.Slot); s != nil {
		return s.Compartment
	}
	return ""
}

// newCompartments is one rig: its doors and compartments.
func newCompartments(sh *Shell, rig string) screen {
	g := &keyGrid{title: sh.now().rigName(rig), sentence: words.L("Touch a door or a compartment"), mark: sh.now().mark(rig)}
	g.keys = func(n *now) (out []parts.KeyView) {
		for _, c := range n.compartments(rig) {
			lines, away := 0, 0
			for i := range n.d.Items {
				if it := &n.d.Items[i]; it.Rig == rig && n.homeCompartment(it) == c {
					lines++
					away += n.s.Out(i)
				}
			}
			v := parts.KeyView{Kind: parts.KindDoor, ID: "store-" + c, Title: capital(c), Second: words.N("%d line", "%d lines", lines), Lay: parts.LayLeft, Icon: "door"}
			if c == "" {
				v.Title = words.L("No home yet")
			}
			if away > 0 {
				v.Second += words.F(", %s out", words.N("%d piece", "%d pieces", away))
			}
			if side := n.compartmentSide(rig, c); side != "" {
				v.Second += "\n" + side
			}
			out = append(out, v)
		}
		return out
	}
	g.touched = func(id string) { sh.open(newSlots(sh, rig, strings.TrimPrefix(id, "store-"))) }
	return g.made()
}

// compartmentSide is the side of the rig that a compartment is on, in words.
func (n *now) compartmentSide(rig, compartment string) string {
	var sides []string
	for _, s := range n.d.Slots {
		if s.Rig == rig && s.Compartment == compartment && s.Side != "" && !slices.Contains(sides, s.Side) {
			sides = append(sides, s.Side)
		}
	}
	if len(sides) > 1 {
		return words.L("from both sides")
	}
	return sideName(strings.Join(sides, ""))
}

// sideName is a side of a rig as the table of slots has it: "left", "top/rear".
func sideName(side string) string {
	all := strings.Split(side, "/")
	for i, s := range all {
		if slices.Contains(slotSides, s) {
			all[i] = words.L(s)
		}
	}
	return strings.Join(all, "/")
}

// slotSides are the sides that a table of slots may name.
var slotSides = []string{words.K("left"), words.K("right"), words.K("rear"), words.K("top"), words.K("cab"), words.K("through")}

// keyGrid is a screen of keys to touch one of, made from what is so now.
type keyGrid struct {
	title, sentence string
	mark            parts.MarkView
	keys            func(n *now) []parts.KeyView
	touched         func(id string)
	views           []parts.KeyView
	grid            *parts.Grid
	root            *fyne.Container
}

func (g *keyGrid) made() *keyGrid {
	cell := func() fyne.Size { return fyne.NewSize(look.U(260), look.U(look.Target)) }
	g.grid = parts.NewGrid(cell, func() fyne.CanvasObject {
		var k *parts.Key
		k = parts.NewKey(parts.KeyView{}, func() { g.touched(k.View().ID) })
		return k
	}, func(i int, o fyne.CanvasObject) { o.(*parts.Key).Set(g.views[i]) })
	g.root = box(func(size fyne.Size) { flush(g.grid, 0, 0, size.Width, size.Height) }, g.grid)
	return g
}

func (g *keyGrid) body() fyne.CanvasObject { return g.root }

func (g *keyGrid) show(n *now) head {
	if views := g.keys(n); !slices.Equal(views, g.views) {
		g.views = views
		g.grid.SetLen(len(views))
	}
	return head{title: g.title, sentence: g.sentence, mark: g.mark, back: true}
}
