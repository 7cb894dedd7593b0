package ui

import (
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/loadup"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// doorFacts is what is known of a door where nothing more goes in by the log.
type doorFacts struct {
	away, places []string // in words: what is elsewhere, what lies at a place
	looked       bool     // eyes were on all that is in it
	shut         bool     // it was named as not opened
}

func (n *now) doorFacts(st *luState) doorFacts {
	eyes, f := n.eyes(), doorFacts{looked: true}
	for _, i := range n.linesAt(st.rig, *st.at) {
		it := &n.d.Items[i]
		p, lies := n.pieceOf(i)
		switch missing := it.Quantity - n.s.Line(i).N(n.s.HomeOf(i)); {
		case lies && p.from.Kind == model.At:
			f.places = append(f.places, words.F("%s at %s", it.Short(), n.placeName(p.from)))
		case missing > 0 && it.Kind != model.Consumable:
			said, _ := n.whereWords(i)
			f.away = append(f.away, it.Short()+" "+said)
		}
		f.looked = f.looked && (eyes[it.ID] || !n.s.Aboard(i))
	}
	f.shut = eyes[notOpened(st.rig, *st.at)] && !f.looked
	return f
}

// doorDone is the right side when nothing more goes in here by the log: now
// the eyes, then the next door.
func (n *now) doorDone(st *luState) node {
	f := n.doorFacts(st)
	next, hasNext := n.nextKey(st, f.looked || f.shut)
	lap := !hasNext && (f.looked || f.shut) && len(f.places) == 0
	sweep := parts.KeyView{ID: "sweep", Title: words.L("Look at every slot"), Second: words.L("the log may not know all"), Icon: "glance", Tone: parts.Filled, Lay: parts.LayLeft}
	switch {
	case f.looked:
		sweep.Tone, sweep.Title, sweep.Second = parts.Usual, words.L("Look again"), words.L("every slot was looked at")
	case f.shut:
		sweep.Tone, sweep.Second = parts.Usual, words.L("not opened so far, as logged")
	}
	out := col(0, node{id: "piece", view: n.doneLead(st, f, lap)}, row(104, keyNode(sweep)))
	var rest []node
	if hasNext {
		rest = append(rest, keyNode(next))
	}
	if k := len(n.lyingOut(st.rig)); k > 0 {
		rest = append(rest, keyNode(parts.KeyView{ID: "collect", Title: words.L("Collect"), Second: words.F("%s still at places", words.N("%d line", "%d lines", k)), Icon: "tarp", Lay: parts.LayLeft}))
	}
	if in, all := n.progress(st.rig); in >= all && all > 0 && !n.hasLeft(st.rig) && len(rest) < 2 {
		key := parts.KeyView{ID: ScreenLeaving, Title: words.L("Last look"), Second: parts.Or(words.L("doors, chocks, what stays open, signature"), words.L("walk round, sign")), Icon: "leave", Lay: parts.LayLeft}
		if lap {
			key.Tone = parts.Filled
		}
		rest = append(rest, keyNode(key))
	}
	if len(rest) > 0 {
		out.kids = append(out.kids, row(104, rest...))
	}
	return out
}

// hasLeft tells whether a rig is off the scene.
func (n *now) hasLeft(rig string) bool { return slices.Contains(n.scene.Left, rig) }

// doneLead says how far the put-back is where nothing more goes in.
func (n *now) doneLead(st *luState, f doorFacts, lap bool) leadView {
	v := leadView{id: "piece", icon: "tick", over: n.doorWords(st.rig, *st.at), title: words.L("Nothing more for here")}
	if len(f.places) > 0 {
		v.title = words.L("No more on the tarp")
		v.under = words.F("Still out: %s. ", fewOf(f.places, 3))
	}
	if len(f.away) > 0 {
		v.under += words.F("Away: %s.", fewOf(f.away, 3))
	}
	if lap {
		v.title = words.L("The whole lap is done")
		if passed := n.unopened(st.rig); len(passed) > 0 {
			v.under += " " + words.F("Not opened: %s.", fewOf(passed, 3))
		}
		v.under = strings.TrimSpace(v.under + " " + words.L("Next is Leaving: the walk round, what is open, the signature."))
	}
	if v.under == "" {
		v.under = words.L("What the log has for this door is home. Eyes find what the log does not know.")
	}
	in, all := n.progress(st.rig)
	_, _, more := n.nextDoor(st)
	switch {
	case more || in < all || lap && !n.hasLeft(st.rig):
	case n.hasLeft(st.rig):
		v.title = words.F("%s has left", n.rigName(st.rig))
	case all == 0:
		v.title = words.L("Nothing is off")
	case len(f.places) == 0:
		v.title = words.L("All in, by the log")
		if k := n.awayOf(st.rig); k > 0 {
			v.under += " " + words.N("%d line of the rig is away: it is on the open list.", "%d lines of the rig are away: they are on the open list.", k)
		}
	}
	return v
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
	said := words.F("%s, seen by %s", words.N("%d line", "%d lines", len(n.sweepLines(st))), n.memberName(n.loader(st)))
	if len(n.sweepLines(st)) == 0 {
		said = words.L("all of it was counted")
	}
	all := parts.KeyView{ID: "all-here", Title: words.L("All here"), Second: said, Icon: "tick", Tone: parts.Filled, Lay: parts.LayLeft}
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

// nextKey goes on: to the next door of the load order, else, once this one is
// done, to the next that nobody looked into.
func (n *now) nextKey(st *luState, done bool) (key parts.KeyView, ok bool) {
	key = parts.KeyView{Icon: "boots", Lay: parts.LayLeft}
	if done {
		key.Tone = parts.Filled
	}
	if next, k, ok := n.nextDoor(st); ok {
		key.ID, key.Title, key.Second = "next-door", words.F("On to %s", next), words.F("%s to go", words.N("%d line", "%d lines", k))
		return key, true
	}
	d, k := n.unseenDoor(st)
	key.ID, key.Title, key.Second = "next-eyes", words.F("On to %s", n.doorWords(st.rig, d)), words.F("%s to look at", words.N("%d line", "%d lines", k))
	return key, k > 0 && done
}

// unseenDoor is the next door of the walk, after the one where he stands, that
// has lines which nobody looked at, and how many. A door that was named as not
// opened is passed by.
func (n *now) unseenDoor(st *luState) (loadup.Door, int) {
	doors, eyes := n.doors(st.rig), n.eyes()
	at := slices.Index(doors, *st.at)
	for k := 1; k < len(doors); k++ {
		d := doors[(at+k)%len(doors)]
		if eyes[notOpened(st.rig, d)] {
			continue
		}
		unseen := 0
		for _, i := range n.linesAt(st.rig, d) {
			if n.s.Aboard(i) && !eyes[n.d.Items[i].ID] {
				unseen++
			}
		}
		if unseen > 0 {
			return d, unseen
		}
	}
	return loadup.Door{}, 0
}

// unopened are the doors that were named as not opened and have lines which
// nobody looked at, in words.
func (n *now) unopened(rig string) []string {
	var out []string
	eyes := n.eyes()
	for _, d := range n.doors(rig) {
		if eyes[notOpened(rig, d)] && slices.ContainsFunc(n.linesAt(rig, d), func(i int) bool { return n.s.Aboard(i) && !eyes[n.d.Items[i].ID] }) {
			out = append(out, n.doorWords(rig, d))
		}
	}
	return out
}

// slotsOrder sorts lines by slot, the highest first, so that eyes go down.
func (n *now) slotsOrder(lines []int) {
	height := func(i int) float64 { return n.d.Slot(n.d.Items[i].Slot).HandHeightIn }
	slices.SortStableFunc(lines, func(a, b int) int { return int(height(b) - height(a)) })
}
