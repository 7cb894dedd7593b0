package ui

import (
	"slices"
	"strings"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/parts"
)

// touch picks a piece or lets it go; the tail of the panel opens Find.
func (t *tarpScreen) touch(v parts.TileView) {
	asked := t.ask
	t.calm()
	switch {
	case v.State == parts.TileAct && v.ID == listTileID:
		t.sh.open(newPullList(t))
		return
	case v.State == parts.TileAct:
		t.find.open(findPiece)
		t.sh.refresh()
		return
	case v.State == parts.TileUnknown:
		t.sh.open(newWhatWasIt(t, strings.TrimPrefix(v.ID, unknownID)))
		return
	}
	n := t.sh.now()
	item, at, elsewhere := strings.Cut(v.ID, "@")
	i := n.d.ItemIndex(item)
	if i < 0 {
		return
	}
	if v.State == parts.TileContested && !v.Picked && (asked == nil || asked.item != item) {
		t.ask, t.find.on, t.sh.said = t.contested(item), false, nil // touched once more it is picked all the same
		t.sh.refresh()
		return
	}
	from := t.shown
	if elsewhere {
		from, _ = n.s.Resolve(at, i, n.scene.ID)
	} else if v.Raised || n.s.Line(i).N(from) == 0 {
		from = n.s.HomeOf(i)
	}
	t.sh.said, t.find.on = nil, false
	if t.door != "" && from.Kind == model.Home && n.d.Items[i].Quantity == 1 && len(t.picks) == 0 && !n.readsOnly() {
		t.stage(n, i)
		return
	}
	for k, p := range t.picks {
		if p.item == item && p.from == from {
			t.picks = append(t.picks[:k:k], t.picks[k+1:]...)
			t.sh.refresh()
			return
		}
	}
	most := n.s.Line(i).N(from)
	t.picks = append(t.picks, pick{item: item, from: from, n: most, most: most})
	t.sh.refresh()
}

// send is a touch on a place: it takes what is picked there, or shows what is
// there.
func (t *tarpScreen) send(id string) {
	if t.number.wrong() {
		return // the pad says how many are here
	}
	f := t.fresh
	if f == nil && len(t.picks) == 0 && t.bounced(id) {
		return
	}
	t.calm()
	n := t.sh.now()
	switch id {
	case placeNew:
		t.find.open(findPlace)
		t.sh.refresh()
		return
	case placeHome:
		t.goHome(n, f)
		return
	}
	to, err := n.s.Resolve(id, -1, n.scene.ID)
	if err != nil {
		return
	}
	if f != nil && to.Kind != model.Tarp {
		t.instead(n, f, to)
		return
	}
	if len(t.picks) == 0 {
		t.shown, t.door, t.sh.said, t.find.on = to, "", nil, false
		t.tiles.FirstPage()
		t.sh.refresh()
		return
	}
	if t.stopped(n, t.picks, func() { t.send(id) }) {
		return
	}
	tap := board.Tap{Scene: n.scene.ID}
	holder := n.holderFor(to, t.named)
	for _, p := range t.picks {
		verb, _ := n.verbFor(p, to)
		if verb == "" {
			return
		}
		tap.Acts = append(tap.Acts, model.Act{Verb: verb, Item: p.item, Quantity: p.n, From: p.from.String(), To: to.String(), By: n.scene.Staging, Holder: holder})
	}
	first := t.picks[0]
	if to.Kind != model.Used {
		t.last, t.lastAt = id, first.from.Kind == model.At
		if len(t.picks) == 1 {
			t.along, t.alongHolder = &along{item: first.item, from: first.from, to: to}, holder
		}
	}
	t.picks, t.find.on = nil, false
	t.logTap(tap)
}

// logOffer logs a touch; a refused act comes with what could be done instead.
func (sh *Shell) logOffer(tap board.Tap) []model.Entry {
	tap.Acts = slices.Clone(tap.Acts)
	entries := sh.log(tap)
	n := sh.now()
	for i := range entries {
		if entries[i].Reply.Word == model.Refused {
			sh.said.retry, sh.said.key = n.offer(&entries[i])
			sh.refresh()
		}
	}
	return entries
}

// act is a touch on a key of the strip.
func (t *tarpScreen) act(id string) {
	s, q := t.sh.said, t.ask
	t.sh.said = nil
	t.calm()
	switch {
	case q != nil:
		q.answer(id)
		t.sh.refresh()
		return
	case id == "due":
		t.askDue()
		return
	case id == "correct":
		if tap := t.sh.now().lastToCorrect(); len(tap) > 0 {
			last := newMending(t.sh, tap[len(tap)-1]).(*mending)
			last.also = tap[:len(tap)-1]
			t.sh.open(last)
		}
		return
	case id == "entries":
		t.sh.open(newLastEntries(t.sh))
		return
	case id == "open-scene":
		t.sh.open(newOpening(t.sh))
		return
	case id == "demo" && t.sh.opts.Demo != nil:
		if err := t.sh.opts.Demo(); err != nil {
			t.sh.said = &said{trouble: inWords(err)}
			t.sh.refresh()
		}
		return
	}
	if id == "retry" && s != nil && s.retry != nil {
		t.logTap(*s.retry)
		return
	}
	t.sh.refresh()
}
