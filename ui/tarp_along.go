package ui

import (
	"slices"
	"strings"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// along is what may have gone with a piece that was sent: until another touch,
// each goes by one.
type along struct {
	item     string
	from, to model.Place

	asked, used bool // shown; answered with a touch
}

// followers is how many lines after a piece in a pull list may belong to it: a
// list is written in the order in which things are taken, the main piece first.
const followers = 3

// together is how many lines of one touch may belong together. A whole pull
// list staged at once says nothing of what goes with what.
const together = 6

// goesAlong are the lines that may have gone along with a piece, the surest
// first. The tables and the log say which:
//   - what came to the place in the same touch and still lies beside it, one
//     marked piece each: so a tool goes with the battery that is in it;
//   - to an agency also: what its own people hold at that place;
//   - what shares another name with the piece but is of another family, as
//     the straps of a spine board;
//   - what follows it in a pull list with the same need.
func (n *now) goesAlong(a *along) []int {
	var out []int
	first := n.d.ItemIndex(a.item)
	add := func(i int) {
		if i >= 0 && i != first && !slices.Contains(out, i) {
			out = append(out, i)
		}
	}
	for _, e := range n.cameWith(a.item, a.from) {
		i := n.d.ItemIndex(e)
		if i >= 0 && n.d.Items[i].Quantity == 1 && n.s.Line(i).N(a.from) > 0 {
			add(i)
		}
	}
	if a.to.Kind != model.With || first < 0 {
		return out
	}
	for i := range n.d.Items {
		if m := n.d.Member(n.s.Line(i).Holder(a.from)); m != nil && m.Agency == a.to.Name && n.s.Line(i).N(a.from) > 0 {
			add(i)
		}
	}
	it := &n.d.Items[first]
	for i := range n.d.Items {
		o := &n.d.Items[i]
		if o.Family != it.Family && o.Rig == it.Rig && slices.ContainsFunc(o.OtherNames, func(w string) bool { return slices.Contains(it.OtherNames, w) }) {
			add(i)
		}
	}
	for k, p := range n.d.Pulls {
		if p.Item != a.item {
			continue
		}
		for j := k + 1; j < len(n.d.Pulls) && j <= k+followers && n.d.Pulls[j].List == p.List && n.d.Pulls[j].Need == p.Need; j++ {
			add(n.d.ItemIndex(n.d.Pulls[j].Item))
		}
	}
	return out
}

// cameWith lists what one touch brought to a place together with an item, the
// last time that the item came there; none if it was a whole list.
func (n *now) cameWith(item string, to model.Place) []string {
	there := func(e *model.Entry) bool {
		return slices.ContainsFunc(e.Moves, func(m model.Move) bool { return m.To == to })
	}
	tap := ""
	for k := len(n.pic.Entries) - 1; k >= 0; k-- {
		if e := &n.pic.Entries[k]; e.Item == item && e.Scene == n.scene.ID && e.Taken() && there(e) {
			tap = e.Tap
			break
		}
	}
	var out []string
	for k := range n.pic.Entries {
		if e := &n.pic.Entries[k]; tap != "" && e.Tap == tap && there(e) {
			out = append(out, e.Item)
		}
	}
	if len(out) > together {
		return nil
	}
	return out
}

// stackFor is where a sibling is taken from: beside the piece first, then the
// tarp, then a rig that is here.
func (n *now) stackFor(i int, from model.Place) (model.Place, bool) {
	tarp := model.Place{Kind: model.Tarp, Ground: n.scene.Ground}
	home := n.s.HomeOf(i)
	l := n.s.Line(i)
	switch {
	case from.Kind != model.Home && from.Kind != model.InKit && l.N(from) > 0:
		return from, true
	case l.N(tarp) > 0:
		return tarp, true
	case n.s.Aboard(i) && home.Kind == model.Home && slices.Contains(n.present(), n.d.Items[i].Rig):
		return home, true
	}
	return home, false
}

// alongTiles are the tiles of what may have gone along.
func (n *now) alongTiles(a *along, hidden map[string]bool) []parts.TileView {
	readings := n.readings()
	var out []parts.TileView
	for _, i := range n.goesAlong(a) {
		from, ok := n.stackFor(i, a.from)
		if !ok || hidden[n.d.Items[i].Rig] {
			continue
		}
		v := n.tile(i, from, model.Place{}, nil, readings)
		v.ID = n.d.Items[i].ID + "@" + from.String()
		out = append(out, v)
	}
	return out
}

// showAlong puts what may have gone along where the next pieces are; false if
// nothing might.
func (t *tarpScreen) showAlong(n *now) bool {
	if t.along == nil {
		return false
	}
	views := n.alongTiles(t.along, t.hidden)
	swaps := n.swapTiles(t.along, t.hidden)
	if t.waved[t.along.item] >= wavedMost || len(views)+len(swaps) == 0 {
		t.along = nil
		return false
	}
	t.along.asked = true
	if len(views) == 0 {
		t.asked.Set(parts.LabelView{ID: "asked", Role: look.Body, Text: words.F("%s   touch the one that comes back from %s", parts.B(words.L("In exchange?")), n.placeName(t.along.to))})
		t.next.Tail = nil
		t.next.Set(swaps)
		t.nexts = len(swaps)
		return true
	}
	views = append(views, swaps...)
	t.asked.Set(parts.LabelView{ID: "asked", Role: look.Body, Text: words.F("%s   touch each that went to %s too", parts.B(words.L("Goes along?")), n.placeName(t.along.to))})
	t.next.Tail = nil
	t.next.Set(views)
	t.nexts = len(views)
	return true
}

// showStillOut puts what is still out where the next pieces were: once the
// clear-up has started nobody asks for more.
func (t *tarpScreen) showStillOut(n *now) {
	views := n.stillOut(t.hidden, t.picks)
	note := words.L("touch to bring it back or to send it on")
	if len(views) == 0 {
		note = words.L("nothing is at a place or with others any more")
	}
	t.asked.Set(parts.LabelView{ID: "asked", Role: look.Body, Text: parts.B(words.L("Still out")) + "   " + note})
	t.next.Set(views)
	t.nexts = len(views) + 1
}

// touchNext is a touch on a piece of the row below the tarp.
func (t *tarpScreen) touchNext(v parts.TileView) {
	a := t.along
	if a == nil {
		t.touch(v)
		return
	}
	n := t.sh.now()
	item, at, _ := strings.Cut(v.ID, "@")
	i := n.d.ItemIndex(item)
	from, err := n.s.Resolve(at, i, n.scene.ID)
	if i < 0 || err != nil {
		return
	}
	if t.stopped(n, []pick{{item: item}}, func() { t.touchNext(v) }) {
		return
	}
	a.used = true
	to, holder := a.to, t.alongHolder
	if from == a.to { // in exchange
		to, holder = model.Place{Kind: model.Tarp, Ground: n.scene.Ground}, ""
		t.along = nil
	}
	verb, _ := n.verbFor(pick{item: item, from: from}, to)
	if verb == "" {
		return
	}
	t.ask, t.sh.said = nil, nil
	t.logTap(board.Tap{Scene: n.scene.ID, Acts: []model.Act{{Verb: verb, Item: item, Quantity: 1, From: from.String(),
		To: to.String(), By: n.scene.Staging, Holder: holder}}})
}
