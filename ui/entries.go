package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// entriesShown is how many of the last entries the list holds.
const entriesShown = 40

// lastEntries are the newest entries of the scene that were taken.
func (n *now) lastEntries(most int) []*model.Entry {
	var out []*model.Entry
	for i := len(n.pic.Entries) - 1; i >= 0 && len(out) < most; i-- {
		if e := &n.pic.Entries[i]; e.Scene == n.scene.ID && e.Taken() && e.Verb != model.Stores {
			out = append(out, e)
		}
	}
	return out
}

// correctable tells whether place or number of an entry can be put right: it
// moved pieces of one line from one place to another.
func (n *now) correctable(e *model.Entry) bool {
	_, moving := model.Table[e.Verb]
	return moving && len(e.Moves) == 1 && e.Moves[0].From != e.Moves[0].To && n.d.ItemIndex(e.Item) >= 0
}

// newLastEntries lists the last entries; a touch on one puts it right.
func newLastEntries(sh *Shell) screen {
	return newRowList(words.L("Last entries"), words.L("Touch one to put its place or number right. Nothing is ever erased"), func(n *now) []rowDo {
		var out []rowDo
		for _, e := range n.lastEntries(entriesShown) {
			v := parts.RowView{ID: "entry-" + e.ID.String(), Title: parts.Plain(n.actLine(e)), Second: n.clock(e.At()), Tone: parts.Quiet, Off: !n.correctable(e)}
			if e.By != "" {
				v.Second += ", " + n.memberName(e.By)
			}
			if e.Device != "" && e.Entered == 0 {
				v.Second += words.F(", tablet %s", e.Device)
			}
			if e.Entered != 0 {
				v.Second += words.F(", from paper, entered at %s", n.clock(e.Entered))
			} else if e.Typed != 0 && e.Stamp.Wall-e.Typed >= 60_000 && !n.opts.Practice {
				v.Second += words.F(", logged at %s", n.clock(e.Stamp.Wall))
			}
			if !v.Off {
				v.Right, v.Go = words.L("Correct"), "go"
			}
			entry := *e
			out = append(out, rowDo{v, func() { sh.open(newMending(sh, entry)) }})
		}
		return out
	}, nil)
}

// lastToCorrect is the newest touch, if all that it did can be put right as
// one: it sent pieces from places to one place.
func (n *now) lastToCorrect() []model.Entry {
	taps := n.taps(1)
	if len(taps) == 0 {
		return nil
	}
	tap := taps[0]
	if instead(tap) {
		tap = tap[:len(tap)-1]
	}
	for i := range tap {
		if !n.correctable(&tap[i]) || tap[i].Moves[0].To != tap[0].Moves[0].To {
			return nil
		}
	}
	return tap
}

// mending puts right where an entry said that pieces went, or how many.
type mending struct {
	sh    *Shell
	e     model.Entry
	also  []model.Entry // what the same touch did besides: it all goes to the right place
	root  *fyne.Container
	words *parts.Label
	grid  *parts.Grid
	keys  []parts.KeyView
	out   *parts.Readout
	pad   *parts.DigitPad
	typed string
}

func newMending(sh *Shell, e model.Entry) screen {
	c := &mending{sh: sh, e: e}
	c.words = parts.NewLines(parts.LabelView{ID: "was", Role: look.Lead})
	cell := func() fyne.Size { return fyne.NewSize(look.U(210), look.U(96)) }
	c.grid = parts.NewGrid(cell, func() fyne.CanvasObject {
		var k *parts.Key
		k = parts.NewKey(parts.KeyView{}, func() { c.place(k.View().ID) })
		return k
	}, func(i int, cell fyne.CanvasObject) { cell.(*parts.Key).Set(c.keys[i]) })
	c.grid.Even = true
	c.out = parts.NewReadout(parts.ReadoutView{ID: "number"})
	c.pad = parts.NewDigitPad(c.digit)
	c.root = box(c.layout)
	return c
}

func (c *mending) body() fyne.CanvasObject { return c.root }

// counted tells whether the number can be wrong: the line has several pieces.
func (c *mending) counted(n *now) bool {
	it := n.d.Item(c.e.Item)
	return it != nil && it.Quantity > 1
}

func (c *mending) layout(size fyne.Size) {
	gap, wordsH := look.U(look.Gap), look.U(112)*look.Current().Options().Text
	w := size.Width
	if len(c.root.Objects) > 2 {
		padW := 3*look.U(104) + 2*gap
		w -= padW + 2*gap
		padH := min(4*look.U(look.Target)+3*gap, size.Height-look.U(look.Floor)-gap)
		place(c.out, w+2*gap, 0, padW, look.U(look.Floor))
		place(c.pad, w+2*gap, look.U(look.Floor)+gap, padW, padH)
	}
	place(c.words, gap, 0, w-2*gap, wordsH-gap)
	flush(c.grid, 0, wordsH, w, size.Height-wordsH)
}

// where is where the pieces of the entry are now: where it put them, or where
// later entries took them from there; and how many of them are there.
func (c *mending) where(n *now) (model.Place, int) {
	m := c.e.Moves[0]
	l := n.s.LineOf(m.Item)
	at, past := m.To, false
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if e.ID == c.e.ID {
			past = true
			continue
		}
		if !past || !e.Taken() || l.N(at) >= m.N {
			continue
		}
		for _, o := range e.Moves {
			if o.Item == m.Item && o.From == at && l.N(o.To) > 0 {
				at = o.To
			}
		}
	}
	return at, min(m.N, l.N(at))
}

// show says what was logged and where the pieces are, and has a key for each
// place that may be the right one.
func (c *mending) show(n *now) head {
	m := c.e.Moves[0]
	at, k := c.where(n)
	text := parts.B(n.clock(c.e.At())) + "  " + n.actLine(&c.e)
	if len(c.also) > 0 {
		text += words.F(", and %d more", len(c.also))
	}
	ask := words.L("Touch the right place.")
	if c.counted(n) && len(c.also) == 0 {
		ask = words.L("Touch the right place, or type the right number.")
	}
	switch {
	case k == 0:
		text += words.F("\nNow: %s. That cannot be put right from here.", n.whereNow(n.d.ItemIndex(m.Item)))
	case at != m.To && m.N == 1:
		text += words.F("\nIt moved on and is at %s now. Touch where it really is.", n.placeName(at))
	case at != m.To:
		text += words.F("\nThey moved on and are at %s now. Touch where they really are.", n.placeName(at))
	default:
		text += "\n" + ask
	}
	c.words.Set(parts.LabelView{ID: "was", Role: look.Lead, Text: text})
	was := c.keys
	c.keys = nil
	for _, p := range n.mendPlaces(m.Item) {
		v := parts.KeyView{Kind: parts.KindPlace, ID: grounded(p, n.scene.Ground), Title: n.placeName(p), Lay: parts.LayCentre, Role: look.Group}
		switch {
		case p.Kind == model.Home || p.Kind == model.InKit:
			v.Title, v.Second = words.L("Its own slot"), words.L("on the rig")
			if p.Kind == model.InKit {
				v.Title, v.Second = words.L("Its kit"), n.placeName(p)
			}
			v.ID = string(model.Home)
		case p.Kind == model.Used:
			v.Title = words.L("Used up")
		}
		if p == at {
			v.Off, v.Second = true, words.L("there now")
		}
		v.Off = v.Off || k == 0
		c.keys = append(c.keys, v)
	}
	if !sameKeys(was, c.keys) {
		c.grid.SetLen(len(c.keys))
	}
	objs := []fyne.CanvasObject{c.words, c.grid}
	if c.counted(n) && at == m.To && k > 0 && len(c.also) == 0 {
		objs = append(objs, c.out, c.pad)
		c.showNumber(n)
	}
	if !sameObjects(c.root.Objects, objs) {
		c.root.Objects = objs
		relay(c.root)
	}
	return head{title: words.L("Correct"), sentence: words.L("Both entries are kept"), back: true}
}

// mendPlaces are the places that pieces may really have gone to.
func (n *now) mendPlaces(item string) []model.Place {
	i := n.d.ItemIndex(item)
	out := []model.Place{{Kind: model.Tarp, Ground: n.scene.Ground}}
	for _, name := range n.scenePlaces() {
		out = append(out, model.Place{Kind: model.At, Name: name, Ground: n.scene.Ground})
	}
	for _, code := range n.agenciesHere() {
		out = append(out, model.Place{Kind: model.With, Name: code})
	}
	out = append(out, n.s.HomeOf(i))
	if n.d.Items[i].Kind == model.Consumable {
		out = append(out, model.Place{Kind: model.Used})
	}
	return out
}

// most is the highest number that can have gone: what went, and what is still
// where it came from.
func (c *mending) most(n *now) int {
	m := c.e.Moves[0]
	return m.N + n.s.LineOf(m.Item).N(m.From)
}

func (c *mending) number() int {
	k := 0
	for _, r := range c.typed {
		k = k*10 + int(r-'0')
	}
	return k
}

func (c *mending) showNumber(n *now) {
	m := c.e.Moves[0]
	v := parts.ReadoutView{ID: "number", Text: c.typed, Tone: parts.Live}
	k, tone, off := c.number(), parts.Filled, false
	switch {
	case c.typed == "":
		v.Text, v.Tone, v.Role = words.F("%d was logged", m.N), parts.Hole, look.Lead
		tone, off = parts.Usual, true
	case k > c.most(n) || k < 1:
		v.Text, v.Tone, v.Role = words.F("%d: only 1 to %d", k, c.most(n)), parts.Alarm, look.Lead
		tone, off = parts.Usual, true
	case k == m.N:
		tone, off = parts.Usual, true
	}
	c.out.Set(v)
	c.pad.SetDone(tone, off)
}

func (c *mending) digit(id string) {
	switch id {
	case "done":
		c.mendNumber()
		return
	case "delete":
		c.typed = c.typed[:max(0, len(c.typed)-1)]
	default:
		if c.typed += id; len(c.typed) > 3 {
			c.typed = id
		}
	}
	c.sh.refresh()
}

// mendNumber sends back what did not go, or sends the rest after.
func (c *mending) mendNumber() {
	n := c.sh.now()
	m := c.e.Moves[0]
	k := c.number()
	switch {
	case k == m.N || k < 1 || k > c.most(n):
		return
	case k < m.N:
		c.log(m.To, m.From, m.N-k)
	default:
		c.log(m.From, m.To, k-m.N)
	}
}

// place sends the pieces where they really went.
func (c *mending) place(id string) {
	n := c.sh.now()
	at, k := c.where(n)
	to, err := n.s.Resolve(id, n.d.ItemIndex(c.e.Item), n.scene.ID)
	if err != nil || k == 0 || to == at {
		return
	}
	if len(c.also) == 0 {
		c.log(at, to, k)
		return
	}
	tap := board.Tap{Scene: c.e.Scene, Mends: tapKey([]model.Entry{c.e})}
	for _, e := range append([]model.Entry{c.e}, c.also...) {
		one := mending{e: e}
		from, k := one.where(n)
		if k > 0 && from != to {
			tap.Acts = append(tap.Acts, model.Act{Verb: model.Correct, Item: e.Item, Quantity: k,
				From: grounded(from, n.scene.Ground), To: grounded(to, n.scene.Ground), Holder: e.Holder})
		}
	}
	c.sh.over = nil
	c.sh.log(n.staged(tap))
}

// log writes the correct beside the entry that it mends.
func (c *mending) log(from, to model.Place, k int) {
	n := c.sh.now()
	c.sh.over = nil
	c.sh.log(n.staged(board.Tap{Scene: c.e.Scene, Mends: c.e.ID.String(), Acts: []model.Act{{Verb: model.Correct, Item: c.e.Item, Quantity: k,
		From: grounded(from, n.scene.Ground), To: grounded(to, n.scene.Ground), Holder: c.e.Holder}}}))
}
