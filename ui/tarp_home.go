package ui

import (
	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// goesHome tells whether a pick goes into its own slot with one touch on Back
// home, and with which word: it never left the tarp, or nothing is asked of it.
// Everything else is looked at first, at the rig.
func (n *now) goesHome(k pick) (reading string, ok bool) {
	i := n.d.ItemIndex(k.item)
	if i < 0 || n.readsOnly() || k.from.Kind != model.Tarp || n.s.Line(i).Contest != nil {
		return "", false
	}
	p, ok := n.pieceOf(i)
	switch {
	case !ok, p.from != k.from, p.tagged, k.n > p.n:
		return "", false
	case !n.atScene(p.item.Rig), n.kitAway(p), len(n.closedBy(i)) > 0:
		return "", false
	case n.couldBeUnused(p):
		return model.WordUnused, true
	}
	return "", len(p.item.Checks) == 0
}

// homeKey is the key that leads back to the rig: what is picked goes in, or is
// looked at on Load up.
func (n *now) homeKey(picks []pick) parts.PlaceKeyView {
	v := parts.PlaceKeyView{ID: placeHome, Name: words.L("Back home"), Icon: "home", Verb: words.L("own slot")}
	if len(picks) == 0 {
		return v
	}
	v.Mode, v.Verb = parts.PlaceTarget, words.L("goes in")
	for _, k := range picks {
		reading, ok := n.goesHome(k)
		if !ok {
			v.Mode, v.Verb = parts.PlaceRest, words.L("Load up")
			return v
		}
		if reading == model.WordUnused {
			v.Verb = words.L("unused, in")
		}
	}
	return v
}

// goHome is a touch on Back home. What went straight back without being used
// goes in; else Load up comes with the first of what is picked in hand.
func (t *tarpScreen) goHome(n *now, f *fresh) {
	if f != nil {
		t.picks = []pick{n.freshPick(f)}
	}
	picks := t.picks
	tap := board.Tap{Scene: n.scene.ID}
	for _, k := range picks {
		reading, ok := n.goesHome(k)
		if !ok {
			tap.Acts = nil
			break
		}
		tap.Acts = append(tap.Acts, model.Act{Verb: model.Stow, Item: k.item, Rig: n.d.Item(k.item).Rig, Quantity: k.n, From: k.from.String(), To: placeHome, Reading: reading, By: n.scene.Staging})
	}
	if len(tap.Acts) > 0 {
		if !t.stopped(n, picks, func() { t.send(placeHome) }) {
			t.picks = nil
			t.logTap(tap)
		}
		return
	}
	t.picks = nil
	if len(picks) > 0 {
		t.sh.screens[ScreenLoadUp].(*loadupScreen).take(n, picks[0].item)
	}
	t.sh.Go(ScreenLoadUp)
}

// freshPick is what a touch behind a door has just staged, as a pick.
func (n *now) freshPick(f *fresh) pick {
	return pick{item: f.item, from: model.Place{Kind: model.Tarp, Ground: n.scene.Ground}, n: 1, most: 1}
}
