package ui

import (
	"tarpside/board"
	"tarpside/model"
	litter "tarpside/model/trail"
)

// trailLine is a line of the load.
type trailLine = litter.Line

const trailMust = litter.Must

// log logs acts of this screen as one touch.
func (t *trailScreen) log(acts ...model.Act) {
	for i := range acts {
		if acts[i].By == "" {
			acts[i].By = t.p.First
		}
	}
	t.sh.log(board.Tap{Scene: t.n.scene.ID, Acts: acts})
}

// walkActs are the moves of what goes along to the party's place: from the
// tarp first, then straight off the rig. What is with the party already stays
// there; of what two people saw too few of, no more than they saw goes.
func (n *now) walkActs(p *litter.Party, v *trailView) []model.Act {
	var acts []model.Act
	walked := map[string]int{} // with what was used since
	for _, x := range v.out {
		if v.away > 0 {
			walked[x.Item] = x.Took
		}
	}
	to := v.at.String()
	tarp := model.Place{Kind: model.Tarp, Ground: n.scene.Ground}
	for i, l := range v.lines {
		if !l.Goes() || l.Line < 0 {
			continue
		}
		left := l.N
		if seen, ok := p.Rig[l.Item]; ok {
			left = min(left, seen)
		}
		left -= walked[l.Item]
		holder := v.soleCarrier(i)
		for _, from := range []model.Place{tarp, n.s.HomeOf(l.Line)} {
			k := min(left, n.s.Line(l.Line).N(from))
			if k <= 0 {
				continue
			}
			verb := model.Direct
			if from == tarp {
				verb = model.Hand
			}
			acts = append(acts, model.Act{Verb: verb, Item: l.Item, Quantity: k, From: from.String(), To: to, Holder: holder})
			left -= k
		}
	}
	return acts
}

// returnActs bring what is with the party back to the tarp, kits with all they
// hold.
func (n *now) returnActs(v *trailView) []model.Act {
	var acts []model.Act
	for i := range n.d.Items {
		if k := n.s.Line(i).N(v.at); k > 0 {
			acts = append(acts, model.Act{Verb: model.Return, Item: n.d.Items[i].ID, Quantity: k, From: v.at.String(), To: string(model.Tarp)})
		}
	}
	return acts
}

// eyesAct is what the log keeps of pieces that were looked at before the walk:
// enough of them are seen where they lie; another number of all that lie there
// is a count. Where pieces lie in two places nothing is sure enough to be logged.
func (n *now) eyesAct(e litter.Eye, seen int) (model.Act, bool) {
	i := n.d.ItemIndex(e.Item)
	if i < 0 {
		return model.Act{}, false
	}
	for _, p := range []model.Place{{Kind: model.Tarp, Ground: n.scene.Ground}, n.s.HomeOf(i)} {
		k := n.s.Line(i).N(p)
		switch {
		case k >= e.N && seen == e.N, k > e.N && seen > e.N:
			return model.Act{Verb: model.Seen, Item: e.Item, Quantity: e.N, From: p.String(), To: p.String()}, true
		case k > 0 && k <= e.N:
			return model.Act{Verb: model.Count, Item: e.Item, Quantity: seen, From: p.String()}, true
		}
	}
	return model.Act{}, false
}

// countAct is a count of what the party has of a line: in the kit it lives in,
// if that walked along, else at the party's place.
func (n *now) countAct(v *trailView, item string, seen int) (model.Act, bool) {
	i := n.d.ItemIndex(item)
	if i < 0 {
		return model.Act{}, false
	}
	home := n.s.HomeOf(i)
	from := v.at
	if home.Kind == model.InKit && n.s.Real(home) == v.at {
		loose := n.s.Line(i).N(v.at)
		if loose > 0 && n.s.Line(i).N(home) > 0 {
			return model.Act{}, false // in the kit and beside it: one figure does not say which
		}
		if loose == 0 {
			from = home
		}
	}
	return model.Act{Verb: model.Count, Item: item, Quantity: seen, From: from.String()}, true
}
