package ui

import (
	"strconv"

	litter "tarpside/model/trail"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// peopleView is who walks, and beside it the pack of the one in hand.
func (t *trailScreen) peopleView() node {
	if t.pad == "limit" || t.pad == "body" {
		return t.limitPad()
	}
	n, v := t.n, &t.v
	var rows []node
	show, at := float32(0), float32(0)
	for _, p := range v.load.Packs {
		r := parts.RowView{Kind: parts.KindMember, ID: p.Member, Title: t.n.walkerName(p.Member), Second: packWords(p), Tone: parts.Quiet, Go: "tick", State: "walks"}
		if m := n.d.Member(p.Member); m != nil {
			r.Mark = n.crewMark(m)
		}
		if p.Over() > 0 {
			r.Tone, r.State, r.Go = parts.Alarm, "over", "warn"
		}
		if p.Member == t.chosen {
			show = at
			if r.Tone != parts.Alarm {
				r.Tone = parts.Live
			}
		}
		rows = append(rows, sized(node{id: p.Member, view: r}, look.Floor))
		at += look.Floor + look.Gap
	}
	rows = append(rows, sized(node{id: "no-name", view: parts.RowView{ID: "no-name", Title: words.L("One more"), Second: words.L("without a name"), Icon: "plus", Tone: parts.Quiet}}, look.Floor))
	for _, m := range n.crew() {
		if t.p.Walks(m.ID) >= 0 {
			continue
		}
		r := parts.RowView{Kind: parts.KindMember, ID: m.ID, Title: m.Name, Second: m.Role, Tone: parts.Hole, State: "stays", Mark: n.crewMark(m)}
		rows = append(rows, sized(node{id: m.ID, view: r}, look.Floor))
	}
	left := node{id: "people", view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap, show: show, upTo: show + look.Floor}, kids: rows}
	for _, p := range v.load.Packs {
		if p.Member == t.chosen {
			return row(0, left, wide(t.packSide(p), 1.2))
		}
	}
	lead := leadView{id: "walkers", title: words.L("Touch who walks"), under: words.L("Who carries what is worked out at once, and again for everybody when one drops out. This finds pieces. It does not account for people.")}
	if k := len(v.load.Packs); k > 0 {
		lead.title = words.F("%d walk", k)
		lead.line = words.F("Together they can take %d lb.", litter.DownLb(v.load.Limit))
	}
	return row(0, left, wide(node{id: "walkers", view: lead}, 1.2))
}

// packWords is what one carries against the limit.
func packWords(p litter.Pack) string {
	said := words.F("%d lb of %d", litter.UpLb(p.Lb), litter.DownLb(p.Limit()))
	if p.Over() > 0 {
		said += words.F(", over by %d lb", litter.UpLb(p.Over()))
	}
	if p.Guessed {
		said += words.L(", usual limit")
	}
	return said
}

// packSide is the pack of one: its pieces, the limit, and dropping out.
func (t *trailScreen) packSide(p litter.Pack) node {
	lead := leadView{id: "pack", title: t.n.walkerName(p.Member), line: packWords(p)}
	if p.Over() > 0 {
		lead.tone, lead.icon, lead.over = parts.Alarm, "warn", words.L("Too heavy for one")
	}
	var rows []node
	for _, x := range p.Parts {
		l := t.v.lines[x.Line]
		v := parts.RowView{ID: "part", Title: t.n.lineWords(l, x.N), Right: lbs(x.Lb), Off: true, Tone: parts.Usual}
		if x.Shared > 1 {
			v.Second = words.F("carried by %s: this is one share", map[int]string{2: words.L("two"), 3: words.L("three"), 4: words.L("four")}[x.Shared])
		}
		rows = append(rows, sized(node{id: "part-" + l.Item, view: v}, 56))
	}
	if len(rows) == 0 {
		rows = append(rows, sized(node{id: "part-none", view: parts.RowView{ID: "part", Title: words.L("Nothing to carry yet"), Off: true, NoRule: true}}, 56))
	}
	limit := parts.KeyView{ID: "limit", Title: words.L("Limit"), Second: words.F("%d lb", litter.DownLb(p.Limit())), Lay: parts.LayLeft, Role: look.Group}
	out := parts.KeyView{ID: "drops-out", Title: words.L("Drops out"), Icon: "cross", Lay: parts.LayLeft, Role: look.Group}
	return col(0, sized(node{id: "pack", view: lead}, packHigh(p)), node{id: "pack-list", view: listOf{panel: parts.PanelView{Snug: true}, gap: 2}, kids: rows},
		row(look.Floor, wide(keyNode(limit), 1), sized(keyNode(howKey("how-limit")), look.Target), wide(keyNode(out), 1.9)))
}

// packHigh is the height of the head of a pack: an alarm has a line more.
func packHigh(p litter.Pack) float32 {
	if p.Over() > 0 {
		return 164
	}
	return 120
}

// limitPad asks what one can take: pounds, or a body's weight that is not
// kept.
func (t *trailScreen) limitPad() node {
	name := t.n.walkerName(t.chosen)
	mode := func(id, title, second string) node {
		v := parts.KeyView{ID: id, Title: title, Second: second, Lay: parts.LayLeft, Role: look.Group}
		if t.pad == id {
			v.Tone, v.State = parts.Live, "chosen"
		}
		return keyNode(v)
	}
	modes := row(98, mode("limit", words.L("Pounds to carry"), name), mode("body", words.L("Weight of the body"), words.L("for the sum alone, not kept")),
		keyNode(parts.KeyView{ID: "usual", Title: words.L("The usual"), Second: words.F("%d lb", litter.DownLb(litter.Carrier{BodyLb: litter.BodyLb, OwnLb: litter.OwnGearLb}.Limit())), Lay: parts.LayLeft, Role: look.Group}))
	says := leadView{id: "verdict", under: words.L("Ask the member. From 1 to 150 lb.")}
	if t.pad == "body" {
		says.under = words.F("30 %% of it, less %d lb of own clothing and gear (from memory).", int(litter.OwnGearLb))
	}
	x, err := strconv.ParseFloat(t.typed, 64)
	lb, ok := typedLimit(t.pad, x)
	ok = ok && err == nil
	switch {
	case t.typed == "":
	case !ok:
		says.tone, says.title = parts.Alarm, words.L("Cannot be")
	default:
		says.under = words.F("%s can take %d lb.", name, litter.DownLb(lb))
	}
	n := t.n.padNode(leadView{id: "amount"}, t.typed, says, ok)
	n.kids[0] = modes
	return n
}
