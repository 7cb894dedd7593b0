package ui

import (
	"fmt"

	"tarpside/model"
	"tarpside/model/restock"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
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
		kids = append(kids, sized(node{id: "empty", view: parts.LabelView{ID: "empty", Role: look.Lead, Text: words.L(emptyWords[tabRestock])}}, 56))
	}
	list := node{id: "list " + tabRestock, view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap}, kids: kids}
	order := parts.KeyView{ID: "order-list", Title: words.L("Order list"), Second: words.L("by supplier, in packs"), Icon: "paper", Lay: parts.LayLeft, Role: look.Group}
	return col(0, list, sized(keyNode(order), 96))
}

// countShelf asks how many of a line of the store are on its shelf: counted,
// or with what came. It is written into the inventory.
func (sh *Shell) countShelf(stock string) {
	ask := words.L("Count what is on the shelf now, with what has just come. The store gives from that, and orders by it.")
	sh.open(newNumberPad(sh, words.F("%s on the shelf", sh.now().stockName(stock)), ask, false, func(k int) {
		n := sh.now()
		if st := n.s.Wanted().StockLine(stock); st != nil {
			sh.editStock(restock.OnShelf(n.s, *st, k))
		}
		sh.back()
	}))
}

// stockName is a line of the store in words.
func (n *now) stockName(id string) string {
	if st := n.s.Wanted().StockLine(id); st != nil {
		return st.Name
	}
	return id
}

// editStock writes a line of the store into the inventory, by one entry.
func (sh *Shell) editStock(st model.Stock) {
	e, err := sh.opts.Board.EditStores(model.InventoryPatch{Put: &model.Department{Stock: []model.Stock{st}}}, sh.by)
	sh.said = &said{entries: []model.Entry{e}}
	if err != nil {
		sh.said = &said{trouble: inWords(err)}
	}
	sh.catchUp()
}

// whoseWords is the share of each rig: "2 for Engine 42, 2 for Rescue 41".
func (n *now) whoseWords(r restock.Row) string {
	out := ""
	for _, x := range r.By {
		out = joinWords(out, words.F("%d for %s", x.N, n.rigName(x.Rig)))
	}
	return out
}

// orderWords says what the store leaves to order.
func orderWords(r restock.Row) string {
	switch {
	case r.Stock == nil:
		return words.L("no store line")
	case r.Order > 0:
		return parts.B(words.F("order %d", r.Order))
	case r.Backorder() > 0:
		return words.F("%d wait", r.Backorder())
	}
	return words.L("in store")
}

// stockView is one row of the restock: the figures, and what is taken now.
func (b *bringbackScreen) stockView(none bool) node {
	n := b.n
	if reply, said := b.reply(); said {
		return col(0, sized(node{id: "reply", view: reply}, 130), node{})
	}
	r, line, ok := b.refill()
	if !ok {
		v := leadView{id: "hint", title: words.L("Touch a line"), under: words.L("It says what the store has, and what to order.")}
		if none {
			v.title, v.under = words.L("Nothing to replace"), words.L("What is used or lost shows here, with what the store can give and what to order.")
		}
		return node{id: "hint", view: v}
	}
	v := leadView{id: "piece", over: words.L("To replace"), title: r.Name, line: n.whoseWords(r)}
	var kids []node
	for i, f := range n.stockFacts(r) {
		kids = append(kids, sized(node{id: fmt.Sprint("stock-fact-", i), view: parts.RowView{ID: "fact", Title: f[0], Right: parts.B(f[1]), Off: true}}, 36))
	}
	lines := n.refills(r)
	for _, i := range lines {
		it := &n.d.Items[i]
		row := parts.RowView{Kind: parts.KindPiece, ID: it.ID, Mark: n.mark(it.Rig), Title: n.rigName(it.Rig), Second: words.F("%d to replace", n.gone(i)), Tone: parts.Quiet}
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
		m := parts.RowView{ID: "how-many", Title: words.F("%d of %d", k, n.gone(line)), Second: words.L("touch if it is fewer"), Go: "go", Tone: parts.Quiet}
		kids = append(kids, sized(node{id: m.ID, view: m}, look.Floor))
	}
	take := parts.KeyView{ID: "restock", Title: words.F("Take %d from the store", k), Icon: "tick", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}
	switch {
	case line < 0:
		take.Title, take.Off, take.Tone, take.Second = words.L("Nothing to take"), true, parts.Usual, words.L("bagged or out of service: wash or repair first")
	case k == 0:
		take.Title, take.Off, take.Tone, take.Second = words.L("The store has none"), true, parts.Usual, orderWords(r)
	case r.Stock == nil:
		take.Title, take.Second = words.F("Replace %d", k), words.L("from elsewhere: no store line")
	default:
		take.Second = words.F("for %s", n.rigName(n.d.Items[line].Rig))
	}
	keys := []node{keyNode(take)}
	if r.Stock != nil {
		keys[0] = wide(keys[0], 1.3)
		keys = append(keys, keyNode(parts.KeyView{ID: "shelf", Title: words.F("%d on the shelf", r.Before), Second: parts.Or(words.L("came, or counted"), words.L("count it")), Lay: parts.LayCentre, Role: look.Group}))
	}
	return col(0, sized(node{id: "piece", view: v}, 130),
		node{id: "asks " + b.chosen, view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap}, kids: kids}, row(96, keys...))
}

// stockFacts are the figures of a row, in the order in which they follow from
// one another.
func (n *now) stockFacts(r restock.Row) [][2]string {
	out := [][2]string{{words.L("To replace"), fmt.Sprint(r.Total())}}
	if r.FoundAtCount > 0 {
		out = append(out, [2]string{words.L("of these found only by counting"), fmt.Sprint(r.FoundAtCount)})
	}
	if k := n.waiting(r); k > 0 {
		out = append(out, [2]string{words.L("of these bagged or out of service"), fmt.Sprint(k)})
	}
	if r.Stock == nil {
		return out
	}
	out = append(out, [2]string{words.L("In the store now"), fmt.Sprint(r.Before)}, [2]string{words.L("The store can give"), fmt.Sprint(r.Issue())}, [2]string{words.L("Left in the store then"), fmt.Sprint(r.After())})
	if r.Backorder() > 0 {
		out = append(out, [2]string{words.L("It cannot give"), fmt.Sprint(r.Backorder())})
	}
	point := words.F("%d, full set %d", int(r.ReorderPoint), r.FullSet())
	if restock.SlowMover(r.Stock).Few {
		point = words.F("%d (few data), full set %d", int(r.ReorderPoint), r.FullSet())
	}
	out = append(out, [2]string{words.L("Order at or below"), point})
	order := words.L("nothing")
	if r.Order > 0 {
		order = words.F("%d, in packs of %d", r.Order, max(1, r.Stock.Pack))
	}
	return append(out, [2]string{words.L("To order"), order})
}

// waiting is how many pieces of a row are neither used nor lost.
func (n *now) waiting(r restock.Row) int {
	k := r.Total()
	for _, i := range n.refills(r) {
		l := n.s.Line(i)
		k -= l.N(model.Place{Kind: model.Used}) + l.N(model.Place{Kind: model.Lost})
	}
	return k
}
