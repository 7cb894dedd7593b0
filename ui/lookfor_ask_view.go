package ui

import (
	"strconv"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// amountView asks how many: the box starts empty.
func (l *lookforScreen) amountView(h hunt) node {
	it := &l.n.d.Items[h.line]
	most := l.most(h)
	v := leadView{id: "amount", title: words.L("How many?"), line: it.Name, mark: l.n.mark(it.Rig)}
	switch l.then.Verb {
	case model.Found, model.Count:
		v.title = words.L("How many did you find?")
	case model.Locate:
		v.title = words.F("How many has %s?", l.n.partyName(partyOf(l.then.To)))
	case model.Settle:
		p, _ := model.ParsePlace(l.then.To)
		v.title = words.F("How many do you see at %s?", l.n.placeName(p))
	}
	return l.n.amountNode(v, l.typed, most, words.F("%d missing", most))
}

// amountNode is a number being typed: the question, what is typed with its
// verdict, and the pad.
func (n *now) amountNode(v leadView, typed string, most int, of string) node {
	says := leadView{id: "verdict", under: words.F("From 1 to %d.", most)}
	k, err := strconv.Atoi(typed)
	ok := err == nil && k >= 1 && k <= most
	switch {
	case typed == "":
	case ok:
		says.under = words.F("%d of %s.", k, of)
	default:
		says.tone, says.title = parts.Alarm, words.L("Cannot be")
	}
	return n.padNode(v, typed, says, ok)
}

// padNode is the question, what is typed with its verdict, and the pad.
func (n *now) padNode(v leadView, typed string, says leadView, ok bool) node {
	out := parts.ReadoutView{ID: "typed", Text: typed, Tone: parts.Live}
	if says.tone == parts.Alarm {
		out.Tone, says.icon, says.over, says.title = parts.Alarm, "bar", says.title, ""
	}
	done := padView{done: parts.Usual, shut: !ok}
	if ok && says.tone != parts.Alarm {
		done.done = parts.Filled
	}
	side := col(n.padSide(), sized(node{id: "typed", view: out}, 96), node{id: "verdict", view: says},
		sized(keyNode(parts.KeyView{ID: "back", Title: words.L("Not now"), Icon: "back"}), look.Floor))
	return col(0, sized(node{id: "amount", view: v}, 98), row(0, node{id: "pad", view: done}, side))
}

// partyView asks with whom it is.
func (l *lookforScreen) partyView(h hunt) node {
	n, it := l.n, &l.n.d.Items[h.line]
	v := leadView{id: "party", title: words.L("With whom is it?"), line: it.Name, mark: n.mark(it.Rig), under: words.L("Touch one. It stays open until it is brought back.")}
	var keys []node
	for _, r := range n.present() {
		if r != it.Rig {
			k := parts.KeyView{Kind: parts.KindRig, ID: r, Title: n.rigName(r), Mark: n.mark(r), Lay: parts.LayLeft, Role: look.Group}
			keys = append(keys, keyNode(k))
		}
	}
	for _, a := range n.agenciesOfScene() {
		k := parts.KeyView{Kind: parts.KindRig, ID: a, Title: n.partyName(a), Icon: "with", Lay: parts.LayLeft, Role: look.Group}
		if ag := n.d.Agency(a); ag != nil {
			k.Second = ag.Phone
		}
		keys = append(keys, keyNode(k))
	}
	rows := inCells(keys, 2, 96)
	return col(0, sized(node{id: "party", view: v}, 130), node{id: "parties", view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap}, kids: rows},
		sized(keyNode(parts.KeyView{ID: "back", Title: words.L("Not now"), Icon: "back"}), look.Floor))
}

// inCells puts nodes into rows of so many, each of a height.
func inCells(cells []node, cols int, high float32) []node {
	var rows []node
	for i := 0; i < len(cells); i += cols {
		kids := cells[i:min(i+cols, len(cells))]
		for len(kids) < cols {
			kids = append(kids[:len(kids):len(kids)], node{})
		}
		rows = append(rows, row(high, kids...))
	}
	return rows
}

// stopView lets an officer of the owner give the search up.
func (l *lookforScreen) stopView(h hunt) node {
	n, it := l.n, &l.n.d.Items[h.line]
	agency := n.d.RigAgency(it.Rig)
	var keys []node
	for i := range n.d.Members {
		m := &n.d.Members[i]
		if !m.Officer || m.Agency != agency {
			continue
		}
		k := parts.KeyView{Kind: parts.KindMember, ID: m.ID, Title: n.memberFull(m.ID), Second: n.rigName(m.Rig), Icon: "one", Lay: parts.LayLeft, Role: look.Group}
		if m.ID == l.officer {
			k.Tone, k.State = parts.Live, "chosen"
		}
		keys = append(keys, keyNode(k))
	}
	v := leadView{id: "stop", title: words.L("Stop looking"), under: words.L("It is written off as lost, with the report beside. It can still be found later. First touch the officer who decides.")}
	hold := parts.HoldView{ID: "stop-looking", Title: words.L("Hold 3 seconds to stop"), Second: words.L("no officer is chosen"), Sure: words.L("Stop looking"), Seconds: 3, Off: true}
	if l.officer != "" {
		hold.Off, hold.Second, hold.Tone = false, words.F("%s gives up %s", n.memberFull(l.officer), some(it, h.n)), parts.Alarm
	}
	if len(keys) == 0 {
		v.under = words.F("No officer of %s is in the list of members, so nobody can stop this search here.", n.rigName(it.Rig))
	}
	return col(0, sized(node{id: "stop", view: v}, 130),
		node{id: "officers", view: listOf{panel: parts.PanelView{Title: words.L("Which officer?"), Rule: true}, gap: look.Gap}, kids: inCells(keys, 2, 92)},
		row(96, node{id: "stop-looking", view: hold}, sized(keyNode(parts.KeyView{ID: "back", Title: words.L("Go on looking"), Icon: "look", Lay: parts.LayCentre, Role: look.Group}), 230)))
}

// claimsView shows two claims: whoever looked touches one.
func (l *lookforScreen) claimsView(h hunt, bottom node) node {
	n, it := l.n, &l.n.d.Items[h.line]
	c := n.s.Line(h.line).Contest
	v := leadView{id: "claims", title: n.claimWords(h.line), line: words.L("Two tablets say two things. Go and look."), under: words.L("Then touch where it really is.")}
	var kids []node
	seen := map[model.Place]bool{}
	for _, cl := range c.Claims {
		if seen[cl.Place] {
			continue
		}
		seen[cl.Place] = true
		k := parts.KeyView{Kind: parts.KindPlace, ID: cl.Place.String(), Title: n.placeTitle(cl.Place), Icon: "tick", Lay: parts.LayLeft, Role: look.Title}
		k.Second = words.F("said %s, %s", n.clock(cl.At), n.deviceWord(cl.Device))
		if who := cl.Holder; who != "" {
			k.Second += words.F(", with %s", n.memberName(who))
		}
		kids = append(kids, keyNode(k))
	}
	if p := c.Place; it.Quantity == 1 && p.Kind != model.With && p.Kind != model.Riding {
		kids = append(kids, keyNode(parts.KeyView{ID: "neither", Title: words.L("At neither place"), Second: words.L("opens a search for it"), Icon: "look", Lay: parts.LayLeft}))
	}
	const head = 130
	free := l.room() - 48 - look.Gap - head
	if bottom.view != nil {
		free -= bottom.size + look.Gap
	}
	high := min(free/float32(len(kids))-look.Gap, 170)
	for i := range kids {
		kids[i].size = high
	}
	kids = append([]node{sized(node{id: "claims", view: v}, head)}, kids...)
	if bottom.view != nil {
		kids = append(kids, node{}, bottom)
	}
	return col(0, kids...)
}

// closedView is a search that was given up: the piece may still turn up.
func (l *lookforScreen) closedView(h hunt, t trail, bottom node) node {
	n := l.n
	v := leadView{id: "closed", title: words.L("Given up as lost"), under: words.L("If it turns up after all, say so here. Found brings it to the tarp; it comes off the list of what is to be replaced.")}
	if t.closed != nil {
		v.line = words.F("Closed %s by %s", n.clock(t.closed.At()), n.memberFull(t.closed.By))
	}
	keys := row(104, node{id: "found", view: parts.KeyView{ID: "found", Title: words.L("Found after all"), Icon: "tick", Lay: parts.LayCentre}},
		node{id: "with-someone", view: parts.KeyView{ID: "with-someone", Title: words.L("With someone"), Icon: "with", Lay: parts.LayCentre}})
	if bottom.view == nil {
		return col(0, node{id: "closed", view: v}, keys)
	}
	return col(0, node{id: "closed", view: v}, keys, bottom)
}
