package ui

import (
	"math"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/model/restock"
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
	gap := look.U(look.Gap)
	rows := float32(2 + (len(s.rigs)+1)/2)
	h := min((size.Height+gap)/rows-gap, look.U(210))
	left := (size.Width - gap) * 0.56
	w := (left - gap) / 2
	place(s.find, 0, 0, w, h)
	place(s.kits, w+gap, 0, w, h)
	for i, k := range s.rigs {
		place(k, float32(i%2)*(w+gap), float32(i/2+1)*(h+gap), w, h)
	}
	last := (rows - 1) * (h + gap)
	place(s.lift, 0, last, w, h)
	place(s.load, w+gap, last, w, h)
	place(s.side, left+gap, 0, size.Width-left-gap, size.Height)
	enlarge(s.side, s.line, s.held)
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
	tone := parts.Usual
	if len(n.d.Items) == 0 {
		tone = parts.Filled
	}
	s.load.Set(parts.KeyView{ID: "load-tables", Tone: tone, Title: words.L("Load tables"), Second: parts.Or(words.L("from a folder; first it shows what would change"), words.L("from a folder")), Icon: "in", Lay: parts.LayLeft, Off: n.opts.Folders == nil || n.opts.LoadFrom == nil})
	s.side.Set(parts.PanelView{Title: words.L("What asks for a look"), Rule: true})
	s.held.SetText(n.storesWords())
	enlarge(s.side, s.line, s.held)
	s.line.Settle()
	objs := []fyne.CanvasObject{s.find, s.kits, s.lift, s.load, s.side}
	for _, k := range s.rigs {
		objs = append(objs, k)
	}
	if !sameObjects(s.root.Objects, objs) {
		s.root.Objects = objs
		relay(s.root)
	}
	return head{title: words.L("Stores"), sentence: words.L("Touch a rig, a door, a piece. Nothing here moves a piece")}
}

// storesWords says what of the inventory asks for somebody: sets that are not
// whole, what is out of service, dates, and the changes that wait.
func (n *now) storesWords() string {
	var out []string
	add := func(title string, lines []string) {
		if len(lines) > 0 {
			out = append(out, parts.B(title)+"\n"+strings.Join(lines, "\n"))
		}
	}
	var broken, short, tagged []string
	for _, k := range restock.Kits(n.s) {
		it := &n.d.Items[k.Line]
		switch name := join2(it.Short(), it.Rig); {
		case !k.Usable:
			broken = append(broken, words.F("%s: needs %s", name, lackWords(k.Key)))
		case !k.Whole:
			short = append(short, words.F("%s: short of %s", name, lackWords(k.Lacks)))
		}
	}
	for i := range n.d.Items {
		if k := n.s.Line(i).Tagged(); k > 0 {
			it := &n.d.Items[i]
			tagged = append(tagged, join2(capital(some(it, k)), it.Rig))
		}
	}
	add(words.L("Sets that are not usable"), broken)
	add(words.L("Sets that are short, but usable"), short)
	add(words.L("Out of service"), tagged)
	add(words.L("Dates"), n.datesWords())
	if len(n.d.Items) == 0 {
		return words.L("The inventory is empty. Load tables brings it in from a folder: what would change is shown first.")
	}
	return strings.Join(append(out, parts.B(words.L("Waits until the pieces are home"))+"\n"+n.heldWords()), "\n\n")
}

// datesWords count what has run out, what soon will, and what has no date yet.
func (n *now) datesWords() (out []string) {
	gone, soon, unread := 0, 0, 0
	for _, l := range restock.Dates(n.s.Wanted()) {
		switch {
		case !l.Known:
			unread++
		case l.Expired(n.at):
			gone++
		case l.DaysTo(n.at) < soonDays:
			soon++
		}
	}
	if gone > 0 {
		out = append(out, words.N("%d lot has expired", "%d lots have expired", gone))
	}
	if soon > 0 {
		out = append(out, words.N("%d lot expires within 60 days", "%d lots expire within 60 days", soon))
	}
	if unread > 0 {
		out = append(out, words.N("%d lot has no date that was read", "%d lots have no date that was read", unread))
	}
	return out
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
		return words.L("Nothing. When a quantity or a kit is changed while pieces are out, the change stands here and counts once they are home.")
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
			var gone []string
			for i := range n.d.Items {
				if it := &n.d.Items[i]; it.Rig == rig && n.homeCompartment(it) == c {
					lines++
					if k := n.s.Out(i); k > 0 {
						away += k
						gone = append(gone, low(it.Short()))
					}
				}
			}
			v := parts.KeyView{Kind: parts.KindDoor, ID: "store-" + c, Title: capital(c), Second: words.N("%d line", "%d lines", lines), Lay: parts.LayLeft, Icon: "door"}
			if c == "" {
				v.Title = words.L("No home yet")
			}
			v.Second = join2(v.Second, n.compartmentSide(rig, c))
			if away > 0 {
				out := words.N("%d piece out", "%d pieces out", away)
				v.Second += "\n" + parts.Or(out+": "+fewOf(gone, 2), out+": "+fewOf(gone, 1), out)
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
	for _, d := range n.doors(rig) {
		if side := n.sideOf(rig, d); d.Compartment == compartment && side != "" && !slices.Contains(sides, words.L(side)) {
			sides = append(sides, words.L(side))
		}
	}
	if len(sides) > 1 {
		return words.L("from both sides")
	}
	return strings.Join(sides, "")
}

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
	cell := func() fyne.Size { return cellFor(g.grid, len(g.views), 260, look.Target) }
	g.grid = parts.NewGrid(cell, func() fyne.CanvasObject {
		var k *parts.Key
		k = parts.NewKey(parts.KeyView{}, func() { g.touched(k.View().ID) })
		return k
	}, func(i int, o fyne.CanvasObject) { o.(*parts.Key).Set(g.views[i]) })
	g.root = box(func(size fyne.Size) { flush(g.grid, 0, 0, size.Width, size.Height) }, g.grid)
	return g
}

// cellFor is the size of the cells of a grid, at least so wide and so high: all
// of them fill its room where they have any over, in as few columns as that
// allows, but no wider than a name is long.
func cellFor(grid *parts.Grid, n int, wide, high float32) fyne.Size {
	size := grid.Size().SubtractWidthHeight(look.U(2*parts.Bleed), look.U(2*parts.Bleed))
	gap, cell := look.U(look.Gap), fyne.NewSize(look.U(wide), look.U(high))
	most := max(1, int((size.Width+gap)/(cell.Width+gap)))
	for cols := max(1, int(math.Ceil(float64((size.Width+gap)/(look.U(widestCell)+gap))))); cols <= most; cols++ {
		rows := float32((n + cols - 1) / cols)
		if h := (size.Height+gap)/rows - gap; h >= cell.Height {
			return fyne.NewSize((size.Width+gap)/float32(cols)-gap-1, min(h, cell.Height*1.8))
		}
	}
	return cell
}

// widestCell is how wide a key of a grid is, at most, as long as there are others.
const widestCell float32 = 500

func (g *keyGrid) body() fyne.CanvasObject { return g.root }

func (g *keyGrid) show(n *now) head {
	if views := g.keys(n); !slices.Equal(views, g.views) {
		g.views = views
		g.grid.SetLen(len(views))
	}
	return head{title: g.title, sentence: g.sentence, mark: g.mark, back: true}
}
