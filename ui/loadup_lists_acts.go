package ui

import (
	"fmt"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/words"
)

// sweep is a touch on a key of the sweep.
func (l *loadupScreen) sweep(n *now, id string) {
	st := &l.st
	switch id {
	case "here":
		st.empty = ""
	case "not-here":
		act := l.by(n, model.Act{Verb: model.Count, Item: st.empty, Quantity: 0, From: "home"})
		st.empty = ""
		l.sh.log(board.Tap{Acts: []model.Act{act}})
	case "not-opened":
		name := n.doorWords(st.rig, *st.at)
		st.mode = luLoad
		l.sh.log(board.Tap{Acts: []model.Act{l.by(n, model.Act{Verb: model.Note, Rig: st.rig, Quantity: model.Blank,
			Reading: notOpened(st.rig, *st.at), Note: name + " of " + n.rigName(st.rig) + " not opened"})}})
	case "all-here":
		if n.sweepReason(st) != "" {
			return
		}
		var acts []model.Act
		for _, i := range n.sweepLines(st) {
			acts = append(acts, l.by(n, model.Act{Verb: model.Seen, Item: n.d.Items[i].ID, Quantity: n.s.Line(i).N(n.s.HomeOf(i)), From: "home", To: "home"}))
		}
		st.mode = luLoad
		if len(acts) > 0 {
			l.sh.log(board.Tap{Acts: acts})
		}
	}
}

// member chooses who loads, or the officer who lets a piece pass.
func (l *loadupScreen) member(n *now, id string) {
	st := &l.st
	if !st.judges {
		if st.loader == nil {
			st.loader = map[string]string{}
		}
		st.loader[st.rig] = id
		return
	}
	p, ok := n.inHand(st)
	if !ok {
		return
	}
	failing, _ := n.failing(st, p)
	var acts []model.Act
	for _, f := range failing {
		acts = append(acts, model.Act{Verb: model.Override, By: id, Item: p.item.ID, Quantity: model.Blank, Reading: f})
	}
	acts = append(acts, l.home(n, p, model.Stow, joined(l.reading(n, p, false), l.anyway())))
	l.sh.asOfficer(words.L("Officer lets it pass"), func() { l.log(acts...) })
}

// lying is a touch on a piece at a place: back to the tarp, or carried.
func (l *loadupScreen) lying(n *now, id string) {
	st := &l.st
	if st.mode == luCarry {
		for _, x := range n.others(st.rig) {
			switch {
			case lyingID(n, x) != id:
			case len(n.ownShort(st.rig, x.line)) > 0:
				st.bring, l.sh.said = id, nil
			default:
				l.carry(n, x)
			}
		}
		return
	}
	for _, x := range n.lyingOut(st.rig) {
		if lyingID(n, x) != id {
			continue
		}
		if st.bring = id; x.n == 1 {
			l.quantity(n, "all")
		}
	}
}

// quantity says how many of a line are back.
func (l *loadupScreen) quantity(n *now, id string) {
	for _, x := range n.lyingOut(l.st.rig) {
		if lyingID(n, x) != l.st.bring {
			continue
		}
		k := x.n
		if id != "all" {
			fmt.Sscan(id, &k)
		}
		l.st.bring = ""
		l.move(l.back(n, x, k))
	}
}

func (l *loadupScreen) back(n *now, x lying, k int) model.Act {
	return l.by(n, model.Act{Verb: model.Return, Item: n.d.Items[x.line].ID, Quantity: k, From: x.place.String(), To: "tarp"})
}

// returnAll brings all of the rig from one place to the tarp.
func (l *loadupScreen) returnAll(n *now, place string) {
	var acts []model.Act
	for _, x := range n.lyingOut(l.st.rig) {
		if x.place.Name == place {
			acts = append(acts, l.back(n, x, x.n))
		}
	}
	if len(acts) > 0 {
		l.st.bring = ""
		l.move(acts...)
	}
}

// vouch takes a driver's word that all of a rig is aboard. A piece of it that
// is held as evidence lies where it lay: it is asked about first.
func (l *loadupScreen) vouch(n *now, rig string) {
	if rig == "" {
		for _, x := range n.others(l.st.rig) {
			rig = n.d.Items[x.line].Rig
		}
	}
	var held []model.Act
	for _, x := range n.onGround(func(r string, _ model.Place) bool { return r == rig }) {
		held = append(held, model.Act{Item: n.d.Items[x.line].ID, From: x.place.String(), To: "home"})
	}
	whole := len(held)
	l.sh.unlessHeld(held, func(held []model.Act) {
		if len(held) == whole {
			l.sh.log(board.Tap{Acts: []model.Act{l.by(n, model.Act{Verb: model.Vouch, Rig: rig, Quantity: model.Blank})}})
		}
	})
}
