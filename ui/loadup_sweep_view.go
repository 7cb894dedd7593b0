package ui

import (
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// doorDone is the right side when nothing more goes in here by the log: now
// the eyes, then the next door.
func (n *now) doorDone(st *luState) node {
	v := leadView{id: "piece", icon: "tick", over: n.doorWords(st.rig, *st.at), title: words.L("Nothing more for here")}
	var away, places []string
	eyes, looked := n.eyes(), true
	for _, i := range n.linesAt(st.rig, *st.at) {
		it := &n.d.Items[i]
		p, lies := n.pieceOf(i)
		switch missing := it.Quantity - n.s.Line(i).N(n.s.HomeOf(i)); {
		case lies && p.from.Kind == model.At:
			places = append(places, words.F("%s at %s", it.Short(), n.placeName(p.from)))
		case missing > 0 && it.Kind != model.Consumable:
			said, _ := n.whereWords(i)
			away = append(away, it.Short()+" "+said)
		}
		looked = looked && (eyes[it.ID] || !n.s.Aboard(i))
	}
	if len(places) > 0 {
		v.title = words.L("No more on the tarp")
		v.under = words.F("Still out: %s. ", fewOf(places, 3))
	}
	if len(away) > 0 {
		v.under += words.F("Away: %s.", fewOf(away, 3))
	}
	if v.under == "" {
		v.under = words.L("What the log has for this door is home. Eyes find what the log does not know.")
	}
	in, all := n.progress(st.rig)
	gone := slices.Contains(n.scene.Left, st.rig)
	_, _, more := n.nextDoor(st)
	switch {
	case more || in < all:
	case gone:
		v.over, v.title = n.doorWords(st.rig, *st.at), words.F("%s has left", n.rigName(st.rig))
	case all == 0:
		v.title = words.L("Nothing is off")
	case len(places) == 0:
		v.title = words.L("All in, by the log")
		if k := n.awayOf(st.rig); k > 0 {
			v.under += " " + words.N("%d line of the rig is away: it is on the open list.", "%d lines of the rig are away: they are on the open list.", k)
		}
	}
	sweep := parts.KeyView{ID: "sweep", Title: words.L("Look at every slot"), Second: words.L("the log may not know all"), Icon: "glance", Tone: parts.Filled, Lay: parts.LayLeft}
	if looked {
		sweep.Tone, sweep.Title, sweep.Second = parts.Usual, words.L("Look again"), words.L("every slot was looked at")
	}
	out := col(0, node{id: "piece", view: v}, row(104, keyNode(sweep)))
	var rest []node
	if next, k, ok := n.nextDoor(st); ok {
		key := parts.KeyView{ID: "next-door", Title: words.F("On to %s", next), Second: words.F("%s to go", words.N("%d line", "%d lines", k)), Icon: "boots", Lay: parts.LayLeft}
		if looked {
			key.Tone = parts.Filled
		}
		rest = append(rest, keyNode(key))
	}
	if k := len(n.lyingOut(st.rig)); k > 0 {
		rest = append(rest, keyNode(parts.KeyView{ID: "collect", Title: words.L("Collect"), Second: words.F("%s still at places", words.N("%d line", "%d lines", k)), Icon: "tarp", Lay: parts.LayLeft}))
	}
	if len(rest) == 0 && all > 0 && !gone {
		last := parts.KeyView{ID: ScreenLeaving, Title: words.L("Last look"), Second: words.L("doors, chocks, what stays open, signature"), Icon: "leave", Lay: parts.LayLeft}
		if looked {
			last.Tone = parts.Filled
		}
		rest = append(rest, keyNode(last))
	}
	if len(rest) > 0 {
		out.kids = append(out.kids, row(104, rest...))
	}
	return out
}

// awayOf counts the lines of a rig that are neither home nor on the ground here.
func (n *now) awayOf(rig string) (k int) {
	for _, d := range n.doors(rig) {
		_, away := n.missingAt(rig, d)
		k += away
	}
	return k
}

// fewOf joins the first words of a list and counts the rest.
func fewOf(said []string, most int) string {
	if len(said) <= most {
		return and(said)
	}
	return words.F("%s and %d more", strings.Join(said[:most], ", "), len(said)-most)
}

// sweepMust tells what of a line eyes still have to settle: a number that was
// not counted.
func (n *now) sweepMust(st *luState, line int) bool {
	it := &n.d.Items[line]
	return it.Quantity > 1 && n.s.Line(line).N(n.s.HomeOf(line)) > 0 && !st.seen[it.ID]
}

// sweepReason says why "All here" is shut; "" where it is open.
func (n *now) sweepReason(st *luState) string {
	if st.empty != "" {
		return words.L("answer the empty slot first")
	}
	var count, togo []string
	for _, i := range n.linesAt(st.rig, *st.at) {
		if n.sweepMust(st, i) {
			count = append(count, n.d.Items[i].Short())
		}
		if _, ok := n.pieceOf(i); ok {
			togo = append(togo, n.d.Items[i].Short())
		}
	}
	switch {
	case len(count) > 0:
		return words.F("count first: %s", fewOf(count, 2))
	case len(togo) > 0:
		return words.F("holes the log knows: %s", fewOf(togo, 2))
	}
	return ""
}

// sweepLines are the lines that "All here" is about: what the log has home
// here and no count has seen yet.
func (n *now) sweepLines(st *luState) []int {
	var out []int
	for _, i := range n.linesAt(st.rig, *st.at) {
		if it := &n.d.Items[i]; it.Kit == "" && n.s.Aboard(i) && !st.seen[it.ID] {
			out = append(out, i)
		}
	}
	return out
}

// sweepBay lists every slot of the door, for eyes.
func (n *now) sweepBay(st *luState, cols int) node {
	v := listOf{panel: parts.PanelView{ID: "bay", Title: words.F("%s, eyes on every slot", n.doorWords(st.rig, *st.at)), Right: words.L("touch every empty slot")}, gap: look.Gap, grow: slotGrow}
	if n.narrow() {
		v.panel.Right = ""
	}
	var rows []node
	lines := n.linesAt(st.rig, *st.at)
	n.slotsOrder(lines)
	y := float32(0)
	for len(lines) > 0 {
		slot := n.d.Slot(n.d.Items[lines[0]].Slot)
		var cells []node
		k := 0
		for ; k < len(lines) && n.d.Items[lines[k]].Slot == slot.ID; k++ {
			s := n.sweepSlot(st, lines[k])
			cells = append(cells, node{id: s.ID, view: s})
			if s.ID == st.empty {
				v.show = y + shelfLabel + look.Gap + float32(k/cols)*(cellHigh+look.Gap)
				v.upTo = v.show + cellHigh
			}
		}
		lines = lines[k:]
		rows = append(rows, node{view: rowOf{}, size: shelfLabel, kids: []node{{id: "shelf " + slot.ID, view: parts.LabelView{Text: shelfName(slot), Role: look.Small, Lines: 1}}}})
		grid := gridRows(cells, cols)
		rows = append(rows, grid...)
		y += shelfLabel + look.Gap + float32(len(grid))*(cellHigh+look.Gap)
	}
	return node{id: "sweep", view: v, kids: rows}
}

func (n *now) sweepSlot(st *luState, line int) parts.SlotView {
	it := &n.d.Items[line]
	v := parts.SlotView{ID: it.ID, Name: it.Short(), Lay: parts.SlotCorner, Mode: parts.SlotHome}
	home := n.s.Line(line).N(n.s.HomeOf(line))
	switch {
	case it.ID == st.empty:
		v.Mode, v.Second, v.Icon, v.State = parts.SlotAlarm, words.L("you say: empty"), "look", "empty"
	case home == 0 || !n.s.Aboard(line):
		v.Mode, v.State, v.Off = parts.SlotHole, "known-out", true
		v.Second, v.Icon = n.whereWords(line)
		if it.Quantity == 1 {
			v.Second = words.F("known: %s", v.Second)
			if p := n.s.Line(line).Stacks; len(p) == 1 && p[0].Place.Kind == model.Tarp {
				v.Second = words.L("known: tarp")
			} else if len(p) == 1 && p[0].Place.Kind == model.Charging {
				v.Second = words.L("known: charger")
			}
		} else {
			v.Second = words.F("%d, all known out", it.Quantity)
		}
	case n.sweepMust(st, line):
		v.Mode, v.Second, v.Icon, v.State = parts.SlotNow, words.L("how many?"), "plus", "to-count"
	case st.seen[it.ID]:
		v.Second, v.Icon, v.State = words.L("counted"), "tick", "seen"
	default:
		v.Second, v.Icon, v.State = words.L("log: home"), "home", "home"
	}
	return v
}

// sweepSide is the right side of the sweep.
func (n *now) sweepSide(st *luState) node {
	if st.empty != "" {
		return n.emptySlot(st)
	}
	reason := n.sweepReason(st)
	v := leadView{id: "piece", icon: "glance", over: words.L("Eyes on every slot"), title: words.L("Touch what is empty"), under: words.L("Count what comes in numbers. What you do not touch, you have seen.")}
	all := parts.KeyView{ID: "all-here", Title: words.L("All here"), Second: words.F("%s, seen by %s", words.N("%d line", "%d lines", len(n.sweepLines(st))), n.memberName(n.loader(st))), Icon: "tick", Tone: parts.Filled, Lay: parts.LayLeft}
	for _, i := range n.linesAt(st.rig, *st.at) {
		if n.d.Items[i].Kit == "" && n.s.Line(i).N(n.s.HomeOf(i)) < n.d.Items[i].Quantity {
			all.Title = words.L("All the rest is here")
		}
	}
	if reason != "" {
		all.Off, all.Second = true, words.F("not yet: %s", reason)
	}
	return col(0, node{id: "piece", view: v}, row(104, keyNode(all)),
		row(104, keyNode(parts.KeyView{ID: "not-opened", Title: words.L("Not opened"), Second: words.L("logged by its name"), Icon: "door", Lay: parts.LayLeft, Role: look.Group}),
			keyNode(parts.KeyView{ID: "load", Title: words.L("Back"), Second: words.L("to loading"), Icon: "back", Lay: parts.LayLeft, Role: look.Group})))
}

// emptySlot: a hole that the log does not know.
func (n *now) emptySlot(st *luState) node {
	i := n.d.ItemIndex(st.empty)
	it := &n.d.Items[i]
	v := leadView{id: "empty", tone: parts.Alarm, icon: "look", over: words.L("Empty, and nobody logged it"), title: it.Short()}
	inside := 0
	n.s.Inside(i, func(k int) { inside += n.s.Line(k).N(model.Place{Kind: model.InKit, Name: n.d.Items[n.kitOf(k)].ID}) })
	if inside > 0 {
		v.under = words.F("With %s in it. ", words.N("%d piece", "%d pieces", inside))
	}
	v.under += words.L("The log has it at home.")
	if who, piece := n.askFirst(st.rig); who != "" {
		v.under += words.F(" Ask first: %s. They have the %s.", who, inSentence(piece))
	}
	second := words.L("1 piece becomes unexplained")
	if inside > 0 {
		second = words.F("1 set, %s, become unexplained", words.N("%d piece", "%d pieces", inside+1))
	}
	return col(0, node{id: "empty", view: v},
		row(104, keyNode(parts.KeyView{ID: "not-here", Title: words.L("Not here: look for it"), Second: second, Icon: "look", Tone: parts.Filled, Lay: parts.LayLeft})),
		row(112, keyNode(parts.KeyView{ID: "here", Title: words.L("It is here after all"), Second: words.F("seen by %s", n.memberName(n.loader(st))), Lay: parts.LayLeft, Role: look.Group}),
			keyNode(parts.KeyView{ID: "all-here", Title: words.L("All the rest is here"), Second: words.L("not yet: answer the hole"), Off: true, Lay: parts.LayLeft, Role: look.Group})))
}

// kitOf is the line of the kit that a line lives in.
func (n *now) kitOf(line int) int { return n.d.ItemIndex(n.d.Items[line].Kit) }

// askFirst is the agency that has the most lines of the rig, and one of them.
func (n *now) askFirst(rig string) (who, piece string) {
	lines := map[string][]string{}
	best := ""
	for _, r := range n.s.BringBack() {
		if it := &n.d.Items[r.Line]; it.Rig == rig && r.Place.Kind == model.With {
			lines[r.Place.Name] = append(lines[r.Place.Name], it.Short())
			if best == "" || len(lines[r.Place.Name]) > len(lines[best]) {
				best = r.Place.Name
			}
		}
	}
	if best == "" {
		return "", ""
	}
	return n.partyName(best), lines[best][0]
}

// nextDoor is the next door of the load order, and what goes in there.
func (n *now) nextDoor(st *luState) (name string, togo int, ok bool) {
	d, k := n.nextStop(st)
	if k == 0 {
		return "", 0, false
	}
	return n.doorWords(st.rig, d), k, true
}

// slotsOrder sorts lines by slot, the highest first, so that eyes go down.
func (n *now) slotsOrder(lines []int) {
	height := func(i int) float64 { return n.d.Slot(n.d.Items[i].Slot).HandHeightIn }
	slices.SortStableFunc(lines, func(a, b int) int { return int(height(b) - height(a)) })
}
