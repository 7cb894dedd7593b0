package ui

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/restock"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// sentence says how much is still to do.
func (b *bringbackScreen) sentence() string {
	all := len(b.n.chores()) + len(restock.List(b.n.s))
	if all == 0 {
		return words.L("Everything is home, in service and refilled")
	}
	return words.F("%s still to do before all rigs are ready again", words.N("%d line", "%d lines", all))
}

// draw shows the tabs, the list, and what is to be done with the one chosen.
func (b *bringbackScreen) draw() {
	n := b.n
	chores, stock := n.chores(), restock.List(n.s)
	body := []node{b.tabs(chores, len(stock))}
	c, ok := b.current()
	switch {
	case b.pad != "" && b.pad != padMany && ok:
		body = append(body, b.readView(c))
	case b.pad == padMany:
		body = append(body, b.manyView())
	case b.tab == tabRestock:
		body = append(body, row(0, b.stockList(stock), b.stockView(len(stock) == 0)))
	default:
		body = append(body, row(0, b.choreList(chores), b.choreView(c, ok, !slices.ContainsFunc(chores, func(c chore) bool { return c.tab == b.tab }))))
	}
	b.tree.set(n.onlyReads(col(0, body...), tabOthers, tabOut, tabToDo, tabRestock, "stock-*", "piece:*", "how-many", "order-list", "read-*", "back", "later"))
}

func (b *bringbackScreen) tabs(chores []chore, stock int) node {
	count := map[string]int{tabRestock: stock}
	for _, c := range chores {
		count[c.tab]++
	}
	var keys []node
	for _, t := range []struct{ id, title, icon string }{
		{tabOthers, words.L("With others"), "with"}, {tabOut, words.L("Out of service"), "tag"}, {tabToDo, words.L("Charge, dry, look"), "plug"}, {tabRestock, words.L("Restock"), "used"},
	} {
		v := parts.KeyView{ID: t.id, Title: t.title, Second: words.N("%d line", "%d lines", count[t.id]), Icon: t.icon, Lay: parts.LayLeft, Role: look.Group}
		if count[t.id] == 0 {
			v.Second = words.L("nothing")
		}
		if t.id == b.tab {
			v.Tone, v.State = parts.Live, "here"
		}
		keys = append(keys, keyNode(v))
	}
	return row(look.Floor, keys...)
}

// choreList is what is to do under its headings.
func (b *bringbackScreen) choreList(chores []chore) node {
	n := b.n
	var kids []node
	group := ""
	for _, c := range chores {
		if c.tab != b.tab {
			continue
		}
		if c.group != group {
			group = c.group
			v := parts.RowView{ID: "group", Title: c.group, Right: c.note, Icon: c.icon, Off: true, NoRule: true}
			kids = append(kids, sized(node{id: "group " + c.group, view: v}, 48))
		}
		v := n.choreRow(c, c.id(n.d) == b.chosen)
		v.Off = c.verb == ""
		kids = append(kids, sized(node{id: c.id(n.d), view: v}, look.Floor))
	}
	if len(kids) == 0 {
		kids = append(kids, sized(node{id: "empty", view: parts.LabelView{ID: "empty", Role: look.Lead, Text: words.L(emptyWords[b.tab])}}, 56))
	}
	return node{id: "list " + b.tab, view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap}, kids: kids}
}

var emptyWords = map[string]string{
	tabOthers:  words.K("Nobody else has anything of ours, and nothing rides on another rig."),
	tabOut:     words.K("Nothing is out of service."),
	tabToDo:    words.K("Nothing is to be charged, dried or looked at."),
	tabRestock: words.K("Nothing was used up or lost."),
}

// choreView is what is to be done with the piece that was chosen.
func (b *bringbackScreen) choreView(c chore, ok, none bool) node {
	n := b.n
	if reply, said := b.reply(); said {
		return col(0, sized(node{id: "reply", view: reply}, 130), b.overview())
	}
	if !ok {
		v := leadView{id: "hint", title: words.L("Touch a line"), under: words.L("Then answer what is asked, and it is done.")}
		if none {
			v.title, v.under = words.L("Nothing to do here"), words.L("What still has to be done with a piece stands here, question by question.")
			return node{id: "hint", view: v}
		}
		return col(0, sized(node{id: "hint", view: v}, 96), b.overview())
	}
	it := &n.d.Items[c.line]
	v := leadView{id: "piece", over: c.group, title: it.Short(), mark: n.mark(it.Rig), line: c.words}
	kids := []node{sized(node{id: "piece", view: v}, 136)}
	asks := []node{}
	if c.n > 1 {
		m := parts.RowView{ID: "how-many", Title: words.F("%d of %d", b.many(), c.n), Second: words.L("touch if it is fewer"), Go: "go", Tone: parts.Quiet}
		asks = append(asks, sized(node{id: m.ID, view: m}, look.Floor))
	}
	st := &luState{given: b.given}
	for _, a := range c.asks {
		asks = append(asks, sized(n.ask(st, piece{line: c.line, item: it}, a), look.Floor))
	}
	if c.verb == model.Repair {
		asks = append(asks, b.repairers(c)...)
	}
	if len(asks) == 0 {
		asks = append(asks, sized(node{id: "none", view: parts.LabelView{Text: words.L("Nothing is asked of it."), Role: look.Lead}}, 40))
	}
	kids = append(kids, node{id: "asks " + b.chosen, view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap}, kids: asks}, b.choreKeys(c))
	return col(0, kids...)
}

// overview is the list heading by heading, while no line is chosen: whom to
// call and how much they have, or what there is to do.
func (b *bringbackScreen) overview() node {
	var rows []parts.RowView
	var lines []int
	var since []string
	var first []int64
	for _, c := range b.n.chores() {
		if c.tab != b.tab {
			continue
		}
		if k := len(rows) - 1; k < 0 || rows[k].Title != c.group {
			rows = append(rows, parts.RowView{ID: "group-of", Title: c.group, Icon: c.icon, Right: parts.B(c.note), Off: true})
			lines, since, first = append(lines, 0), append(since, ""), append(first, 0)
		}
		k := len(rows) - 1
		lines[k]++
		if c.at != 0 && (first[k] == 0 || c.at < first[k]) {
			since[k], first[k] = c.since, c.at
		}
	}
	var kids []node
	for k, v := range rows {
		v.Second = words.N("%d line", "%d lines", lines[k])
		switch {
		case since[k] != "" && lines[k] == 1:
			v.Second += words.F(", since %s", since[k])
		case since[k] != "":
			v.Second += words.F(", the longest since %s", since[k])
		}
		kids = append(kids, sized(node{id: "group-of " + v.Title, view: v}, 72))
	}
	title := words.L("What there is to do")
	if b.tab == tabOthers {
		title = words.L("Whom to ask")
	}
	return node{id: "overview " + b.tab, view: listOf{panel: parts.PanelView{Title: title, Rule: true}}, kids: kids}
}

// repairers are the members who may say that it is in service again.
func (b *bringbackScreen) repairers(c chore) []node {
	n, it := b.n, &b.n.d.Items[c.line]
	warn := words.L("Who puts it back in service?")
	for _, a := range it.Checks {
		if ch := n.d.Check(a.Check); ch != nil && ch.Never && !ch.Number && strings.Contains(n.s.Line(c.line).TagWords, a.Check) {
			warn = words.F("%s. Who was it?", capital(ch.IfItFails))
		}
	}
	out := []node{sized(node{id: "who", view: parts.LabelView{ID: "who", Text: parts.B(warn), Role: look.Body, Mid: true}}, 52)}
	for _, id := range n.signers(it.Rig) {
		v := parts.RowView{Kind: parts.KindMember, ID: id, Title: n.memberName(id), Second: n.d.Member(id).Role, Icon: "one", Tone: parts.Quiet}
		if id == b.member {
			v.Tone, v.State, v.Go = parts.Live, "chosen", "tick"
		}
		out = append(out, sized(node{id: id, view: v}, look.Floor))
	}
	return out
}

// choreKeys are the keys that end it.
func (b *bringbackScreen) choreKeys(c chore) node {
	_, open, failing := b.reading(c)
	id, title := choreDone(c, b.many())
	done := parts.KeyView{ID: id, Title: title, Icon: "tick", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}
	switch {
	case open > 0:
		done.Off, done.Second = true, words.F("%s open", words.N("%d question", "%d questions", open))
	case c.verb == model.Repair && failing > 0:
		done.Off, done.Second = true, words.L("it does not pass yet")
	case c.verb == model.Repair && b.member == "":
		done.Off, done.Second = true, words.L("touch who did it")
	case failing > 0:
		done.Second = words.L("does not pass: not ready")
	case c.verb == model.Repair:
		done.Second = b.n.memberShort(b.member)
	}
	if c.verb == model.Repair || c.verb == model.CheckIt {
		return row(96, keyNode(done))
	}
	rest := parts.KeyView{ID: "not-looked-at", Title: words.L("Not looked at"), Second: words.L("home, not ready"), Lay: parts.LayCentre, Role: look.Group}
	return row(96, wide(keyNode(done), 1.3), keyNode(rest))
}

// readView is the pad for a reading.
func (b *bringbackScreen) readView(c chore) node {
	n, it := b.n, &b.n.d.Items[c.line]
	ask, _ := it.Ask(b.pad)
	p := piece{line: c.line, item: it}
	tone, title, words, ok := n.verdict(p, ask, b.typed)
	v := leadView{id: "amount", title: n.d.Check(b.pad).Question, line: it.Name, mark: n.mark(it.Rig)}
	return n.padNode(v, b.typed, leadView{id: "verdict", tone: tone, title: title, under: words}, ok)
}

// manyView is the pad for how many.
func (b *bringbackScreen) manyView() node {
	v := leadView{id: "amount", title: words.L("How many?")}
	if c, ok := b.current(); ok {
		v.line, v.mark = b.n.d.Items[c.line].Name, b.n.mark(b.n.d.Items[c.line].Rig)
	} else if _, line, ok := b.refill(); ok && line >= 0 {
		v.line, v.mark = b.n.d.Items[line].Name, b.n.mark(b.n.d.Items[line].Rig)
	}
	most := b.most()
	return b.n.amountNode(v, b.typed, most, fmt.Sprint(most))
}

// reply is the answer to the last act of this screen, where it needs reading.
func (b *bringbackScreen) reply() (parts.StripView, bool) {
	s := b.sh.said
	if s == nil {
		return parts.StripView{}, false
	}
	if s.trouble == nil && (len(s.entries) == 0 || stationVerbs[s.entries[0].Verb] == "") {
		return parts.StripView{}, false
	}
	if v, ok := b.n.answer(s); ok {
		return v, true
	}
	e := &s.entries[len(s.entries)-1]
	k := 0
	for _, e := range s.entries {
		k += max(e.Quantity, 1)
	}
	if len(s.entries) > 1 && e.Verb == model.Repair {
		k = e.Quantity // the reading before it was of the same pieces
	}
	v := parts.StripView{ID: "reply", Tone: parts.StripOK, Title: words.L(stationVerbs[e.Verb]) + ": " + e.Item, Keys: [2]parts.StripKey{{ID: "seen", Title: words.L("Seen")}}}
	if undo := b.n.undoKey(); undo.ID != "" && e.Verb != model.Correct {
		v.Keys = [2]parts.StripKey{undo, v.Keys[0]}
	}
	if it := b.n.d.Item(e.Item); it != nil {
		v.Title = words.L(stationVerbs[e.Verb]) + ": " + some(it, k)
	}
	v.Second = b.n.clock(e.At())
	if e.By != "" {
		v.Second += ", " + b.n.memberFull(e.By)
	}
	return v, true
}

// stationVerbs are the acts of this screen, and what is said once they are
// done.
var stationVerbs = map[model.Verb]string{
	model.BringBack: words.K("Back home"), model.Recharge: words.K("Charged and home"), model.Clean: words.K("Washed and home"),
	model.Repair: words.K("Back in service"), model.CheckIt: words.K("Looked at, ready"), model.Restock: words.K("Restocked"),
	model.Correct: words.K("Taken back"),
}
