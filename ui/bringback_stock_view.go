package ui

import (
	"fmt"

	"tarpside/model"
	"tarpside/model/restock"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// stockList is what is to be replaced.
func (b *bringbackScreen) stockList(rows []restock.Row) node {
	var kids []node
	for _, r := range rows {
		id := stockID(r)
		v := parts.RowView{ID: id, Figure: fmt.Sprint(r.Total()), Title: r.Name, Second: b.n.whoseWords(r), Right: orderWords(r), Tone: parts.Quiet, Go: "go"}
		switch {
		case id == b.chosen:
			v.Tone = parts.Live
		case r.Backorder() > 0:
			v.Tone = parts.Alarm
		}
		kids = append(kids, sized(node{id: id, view: v}, look.Floor))
	}
	if len(kids) == 0 {
		kids = append(kids, sized(node{id: "empty", view: parts.LabelView{ID: "empty", Role: look.Lead, Text: emptyWords[tabRestock]}}, 56))
	}
	list := node{id: "list " + tabRestock, view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap}, kids: kids}
	order := parts.KeyView{ID: "order-list", Title: "Order list", Second: "by supplier, in packs", Icon: "paper", Lay: parts.LayLeft, Role: look.Group}
	return col(0, list, sized(keyNode(order), 96))
}

// whoseWords is the share of each rig: "2 for Engine 42, 2 for Rescue 41".
func (n *now) whoseWords(r restock.Row) string {
	out := ""
	for _, x := range r.By {
		out = joinWords(out, fmt.Sprintf("%d for %s", x.N, n.rigName(x.Rig)))
	}
	return out
}

// orderWords says what the store leaves to order.
func orderWords(r restock.Row) string {
	switch {
	case r.Stock == nil:
		return "no store line"
	case r.Order > 0:
		return parts.B(fmt.Sprintf("order %d", r.Order))
	case r.Backorder() > 0:
		return fmt.Sprintf("%d wait", r.Backorder())
	}
	return "in store"
}

// stockView is one row of the restock: the figures, and what is taken now.
func (b *bringbackScreen) stockView() node {
	n := b.n
	if reply, said := b.reply(); said {
		return col(0, sized(node{id: "reply", view: reply}, 130), node{})
	}
	r, line, ok := b.refill()
	if !ok {
		v := leadView{id: "hint", title: "Touch a line", under: "It says what the store has, and what to order."}
		return col(0, sized(node{id: "hint", view: v}, 120), node{})
	}
	v := leadView{id: "piece", over: "To replace", title: r.Name, line: n.whoseWords(r)}
	var kids []node
	for i, f := range n.stockFacts(r) {
		kids = append(kids, sized(node{id: fmt.Sprint("stock-fact-", i), view: parts.RowView{ID: "fact", Title: f[0], Right: parts.B(f[1]), Off: true}}, 40))
	}
	lines := n.refills(r)
	for _, i := range lines {
		it := &n.d.Items[i]
		row := parts.RowView{Kind: parts.KindPiece, ID: it.ID, Mark: n.mark(it.Rig), Title: n.rigName(it.Rig), Second: fmt.Sprintf("%d to replace", n.gone(i)), Tone: parts.Quiet}
		if i == line {
			row.Tone, row.State, row.Go = parts.Live, "chosen", "tick"
		}
		if it.Kit != "" {
			row.Second += ", " + low(n.itemName(it.Kit))
		}
		if len(lines) > 1 {
			kids = append(kids, sized(node{id: it.ID, view: row}, look.Floor))
		}
	}
	k := b.many()
	if b.most() > 1 {
		m := parts.RowView{ID: "how-many", Title: fmt.Sprintf("%d of %d", k, n.gone(line)), Second: "touch if it is fewer", Go: "go", Tone: parts.Quiet}
		kids = append(kids, sized(node{id: m.ID, view: m}, look.Floor))
	}
	take := parts.KeyView{ID: "restock", Title: fmt.Sprintf("Take %d from the store", k), Icon: "tick", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}
	switch {
	case line < 0:
		take.Title, take.Off, take.Tone, take.Second = "Nothing to take", true, parts.Usual, "bagged or out of service: wash or repair first"
	case k == 0:
		take.Title, take.Off, take.Tone, take.Second = "The store has none", true, parts.Usual, orderWords(r)
	case r.Stock == nil:
		take.Title, take.Second = fmt.Sprintf("Replace %d", k), "from elsewhere: no store line"
	default:
		take.Second = "for " + n.rigName(n.d.Items[line].Rig)
	}
	return col(0, sized(node{id: "piece", view: v}, 130),
		node{id: "asks " + b.chosen, view: listOf{panel: parts.PanelView{Snug: true}, gap: 6}, kids: kids}, sized(keyNode(take), 96))
}

// stockFacts are the figures of a row, in the order in which they follow from
// one another.
func (n *now) stockFacts(r restock.Row) [][2]string {
	out := [][2]string{{"To replace", fmt.Sprint(r.Total())}}
	if r.FoundAtCount > 0 {
		out = append(out, [2]string{"of these found only by counting", fmt.Sprint(r.FoundAtCount)})
	}
	if k := n.waiting(r); k > 0 {
		out = append(out, [2]string{"of these bagged or out of service", fmt.Sprint(k)})
	}
	if r.Stock == nil {
		return out
	}
	out = append(out, [2]string{"In the store now", fmt.Sprint(r.Before)}, [2]string{"The store can give", fmt.Sprint(r.Issue())}, [2]string{"Left in the store then", fmt.Sprint(r.After())})
	if r.Backorder() > 0 {
		out = append(out, [2]string{"It cannot give", fmt.Sprint(r.Backorder())})
	}
	out = append(out, [2]string{"Order at or below", r.Point()}, [2]string{"Full set", fullWords(r)})
	if l := restock.SlowMover(r.Stock); l.Few {
		out = append(out, [2]string{"Few data", "a hint: set it by hand"})
	}
	order := "nothing"
	if r.Order > 0 {
		order = fmt.Sprintf("%d, in packs of %d", r.Order, max(1, r.Stock.Pack))
	}
	return append(out, [2]string{"To order", order})
}

// fullWords is what the store has when it is full: the point and what is
// enough for 19 of 20 waits, whichever is more, in whole packs.
func fullWords(r restock.Row) string { return fmt.Sprint(r.FullSet()) }

// waiting is how many pieces of a row are neither used nor lost.
func (n *now) waiting(r restock.Row) int {
	k := r.Total()
	for _, i := range n.refills(r) {
		l := n.s.Line(i)
		k -= l.N(model.Place{Kind: model.Used}) + l.N(model.Place{Kind: model.Lost})
	}
	return k
}
