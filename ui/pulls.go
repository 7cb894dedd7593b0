package ui

import (
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// pullsScreen chooses the pull list of the scene, and stages the whole list at
// once, but for the lines that somebody unticks.
type pullsScreen struct {
	t     *tarpScreen
	root  *fyne.Container
	left  *parts.Column
	right *parts.Column
	lists *parts.Scroller
	lines *parts.Scroller
	keep  map[string]*parts.Row
	none  *parts.Label
	stage *parts.Key
	turn  map[int]bool // lines whose tick was turned
}

func newPullList(t *tarpScreen) screen {
	c := &pullsScreen{t: t, keep: map[string]*parts.Row{}, turn: map[int]bool{}}
	c.left, c.right = parts.NewColumn(look.Gap), parts.NewColumn(look.Gap)
	c.none = parts.NewLines(parts.LabelView{ID: "none", Role: look.Lead})
	c.stage = parts.NewKey(parts.KeyView{}, c.send)
	c.lists, c.lines = parts.NewScroller(c.left), parts.NewScroller(c.right)
	c.root = box(func(size fyne.Size) {
		gap, keyH := look.U(look.Gap), look.U(look.Floor)
		w := size.Width * 0.42
		flush(c.lists, 0, 0, w-gap, size.Height)
		flush(c.lines, w, 0, size.Width-w, size.Height-keyH-gap)
		c.fold()
		place(c.stage, w, size.Height-keyH, size.Width-w, keyH)
	}, c.lists, c.lines, c.stage)
	return c
}

// lineWide is the least width of a line of the list beside another one.
const lineWide = 360

// fold puts two lines beside each other where not all have room.
func (c *pullsScreen) fold() {
	b := 2 * look.U(parts.Bleed+12) // the scroll bar takes some of it
	c.right.Fold(fyne.NewSize(c.lines.Size().Width-b, c.lines.Size().Height-b), look.U(lineWide)*look.Current().Options().Text)
}

func (c *pullsScreen) body() fyne.CanvasObject { return c.root }

func (c *pullsScreen) row(v parts.RowView, do func()) fyne.CanvasObject {
	r := c.keep[v.ID]
	if r == nil {
		r = parts.NewRow(v, nil)
		c.keep[v.ID] = r
	}
	r.OnTap = do
	r.Set(v)
	return r
}

// show brings the lists and the lines up to date.
func (c *pullsScreen) show(n *now) head {
	list, chosen := n.pullList(), n.chosenPulls()
	var left, right []fyne.CanvasObject
	for _, name := range n.pullLists() {
		v := parts.RowView{ID: "list-" + name, Title: name, Second: words.F("%s still on the rigs", words.N("%d line", "%d lines", len(n.wantedFrom(name)))), Tone: parts.Quiet}
		if name == list {
			v.Tone, v.State = parts.Live, "chosen"
		}
		left = append(left, c.row(v, func() { c.choose(pullChoice{List: name}) }))
		if name != list {
			continue
		}
		for _, when := range conditions(n.wantedFrom(list)) {
			v := parts.RowView{ID: "if-" + when, Icon: "plus", Title: capital(when), Second: words.L("touch if so"), Tone: parts.Quiet}
			if slices.Contains(chosen.Holds, when) {
				v.Tone, v.Icon, v.Second, v.State = parts.Live, "tick", words.L("it is so"), "holds"
			}
			left = append(left, c.row(v, func() { c.toggle(list, when) }))
		}
	}
	on := 0
	for _, w := range n.wantedFrom(list) {
		ticked := c.ticked(w, chosen)
		if ticked {
			on++
		}
		right = append(right, c.row(n.pullRow(w, ticked), func() {
			c.turn[w.line] = !c.turn[w.line]
			c.t.sh.refresh()
		}))
	}
	if len(right) == 0 {
		c.none.SetText(words.L("Nothing of this list is still on a rig that is here. Who comes is said under More, Somebody arrives."))
		right = append(right, c.none)
	}
	c.left.SetInside(left...)
	c.right.SetInside(right...)
	c.fold()
	c.lists.Settle()
	c.lines.Settle()
	v := parts.KeyView{ID: "stage-list", Title: words.F("Stage %s", words.N("%d line", "%d lines", on)), Second: words.L("on the tarp, all at once"), Icon: "tarp", Tone: parts.Filled, Lay: parts.LayCentre, Role: look.Title}
	if on == 0 {
		v.Off, v.Tone, v.Second = true, parts.Usual, words.L("nothing is ticked")
	}
	c.stage.Set(n.shutKey(v))
	return head{title: words.L("Pull list"), sentence: words.L("It only suggests. Untick what stays on the rig"), back: true}
}

// ticked tells whether a line goes with the rest: what must or should come,
// where its condition holds; or the other way about, if its tick was turned.
func (c *pullsScreen) ticked(w wanted, chosen pullChoice) bool {
	usual := w.need != "if" && (w.when == "" || slices.Contains(chosen.Holds, w.when))
	return usual != c.turn[w.line]
}

func (c *pullsScreen) choose(p pullChoice) {
	c.turn = map[int]bool{}
	if err := c.t.sh.now().keepPulls(p); err != nil {
		c.t.sh.said = &said{trouble: inWords(err)}
	}
	c.t.sh.refresh()
}

func (c *pullsScreen) toggle(list, when string) {
	p := c.t.sh.now().chosenPulls()
	p.List = list
	if i := slices.Index(p.Holds, when); i >= 0 {
		p.Holds = slices.Delete(p.Holds, i, i+1)
	} else {
		p.Holds = append(p.Holds, when)
	}
	c.choose(p)
}

// send stages what is ticked, as one touch.
func (c *pullsScreen) send() {
	n := c.t.sh.now()
	list, chosen := n.pullList(), n.chosenPulls()
	tap := board.Tap{Scene: n.scene.ID}
	for _, w := range n.wantedFrom(list) {
		if c.ticked(w, chosen) {
			tap.Acts = append(tap.Acts, model.Act{Verb: model.PullOff, Item: n.d.Items[w.line].ID, Quantity: w.n,
				From: string(model.Home), To: string(model.Tarp), By: n.scene.Staging})
		}
	}
	c.t.sh.over = nil
	c.t.logTap(tap)
}
