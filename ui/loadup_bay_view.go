package ui

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/loadup"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// A shelf is one slot of the rig with the lines that live in it.
type shelf struct {
	slot  *model.Slot
	lines []int
	cols  int // columns it is drawn in
}

// shelves are what stands open behind a door, the highest first; a through
// bay is seen from door to door, because only so it shows what closes it.
func (n *now) shelves(st *luState) (above []shelf, band []shelf) {
	d := *st.at
	var all []shelf
	centre := -1
	for i := range n.d.Slots {
		s := &n.d.Slots[i]
		if s.Rig != st.rig || s.Compartment != d.Compartment {
			continue
		}
		sh := shelf{slot: s}
		for _, line := range n.linesAt(st.rig, doorOf(s)) {
			if n.d.Items[line].Slot == s.ID {
				sh.lines = append(sh.lines, line)
			}
		}
		if len(sh.lines) == 0 {
			continue
		}
		if s.Side == "through" {
			centre = len(all)
		}
		all = append(all, sh)
	}
	if centre < 0 {
		all = slices.DeleteFunc(all, func(s shelf) bool { return doorOf(s.slot) != d })
	} else {
		all, band = bay(all, all[centre].slot, d)
	}
	slices.SortStableFunc(all, func(a, b shelf) int { return int(b.slot.HandHeightIn - a.slot.HandHeightIn) })
	return all, band
}

// bay takes the centre of a through bay out of its shelves, with the tray in
// front of it at either end.
func bay(all []shelf, centre *model.Slot, here loadup.Door) (above, band []shelf) {
	tray := map[loadup.Door]*model.Slot{}
	for _, s := range all {
		if s.slot == centre {
			continue
		}
		d := doorOf(s.slot)
		if t := tray[d]; t == nil || abs(s.slot.HandHeightIn-centre.HandHeightIn) < abs(t.HandHeightIn-centre.HandHeightIn) {
			tray[d] = s.slot
		}
	}
	for _, s := range all {
		switch d := doorOf(s.slot); {
		case s.slot == centre || tray[d] == s.slot:
			band = append(band, s)
		case d == here || centre.Lap == here.Lap:
			above = append(above, s)
		}
	}
	lap := func(s shelf) int {
		if s.slot == centre {
			return 1
		}
		return 2 * boolInt(s.slot.Lap != centre.Lap)
	}
	slices.SortStableFunc(band, func(a, b shelf) int { return lap(a) - lap(b) })
	return above, band
}

func abs(v float64) float64 { return max(v, -v) }

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// bayView is the compartment as it is in life.
func (n *now) bayView(st *luState, cols int) node {
	above, band := n.shelves(st)
	order := map[string]int{}
	for i, l := range n.atDoor(st) {
		order[l.Item] = i + 1
	}
	b := &bayDraw{n: n, st: st, order: order, hand: st.item}
	if p, ok := n.inHand(st); ok {
		b.hand = p.item.ID
		b.shutBy = n.closedBy(p.line)
	}
	v := listOf{panel: parts.PanelView{ID: "bay", Title: parts.Or(words.F("%s as it stands open", upper(st.at.Compartment)), upper(st.at.Compartment)), Right: b.note()}, gap: shelfGap, grow: slotGrow}
	var rows []node
	for len(above) > 0 {
		k := len(above[0].lines)
		above[0].cols = min(b.cells(above[0], cols), cols)
		group := above[:1]
		if len(above) > 1 && k > 0 {
			a, c := b.cells(above[0], cols), b.cells(above[1], cols)
			if a+c <= cols {
				above[0].cols, above[1].cols = a, c
				group = above[:2]
			}
		}
		above = above[len(group):]
		rows = append(rows, b.row(group, cols))
	}
	if len(band) > 0 {
		v.panel.Title = parts.Or(words.F("%s, cut from door to door", st.at.Compartment), st.at.Compartment)
		v.panel.Right = b.doorWords()
		for i := range band {
			band[i].cols = 1
			if band[i].slot.Side == "through" {
				band[i].cols = max(cols-len(band)+1, 1)
			}
		}
		rows = append(rows, b.row(band, cols))
	}
	if len(rows) == 0 {
		v.panel.Title = words.L("Nothing to load here")
		rows = append(rows, row(40, node{id: "none", view: parts.LabelView{Text: words.L("Nothing lives behind this door"), Role: look.Body}}))
	}
	y := float32(0)
	for i := range rows {
		if slices.Contains(b.rowOf, i) {
			v.show, v.upTo = y, y+rows[i].size
			break
		}
		y += rows[i].size + shelfGap
	}
	return node{id: "bay " + n.doorID(st.rig, *st.at), view: v, kids: rows}
}

// bayDraw is one drawing of a compartment.
type bayDraw struct {
	n      *now
	st     *luState
	order  map[string]int
	hand   string   // the piece in hand
	shutBy []string // what closes its slot
	rowOf  []int    // rows that show the piece in hand
	rows   int
}

func (b *bayDraw) note() string {
	if k := len(b.order); k > 0 {
		return words.F("%s to go in here", words.N("%d line", "%d lines", k))
	}
	return ""
}

func (b *bayDraw) doorWords() string {
	if b.n.sideOf(b.st.rig, *b.st.at) == driverSide {
		return words.L("you are at the left door")
	}
	return words.L("you are at the right door")
}

// small tells whether a line is drawn small, to read: it was home when the
// walker came, and nothing is wrong with it now.
func (b *bayDraw) small(line int) bool {
	it, l := &b.n.d.Items[line], b.n.s.Line(line)
	home := l.N(b.n.s.HomeOf(line))+l.N(model.Place{Kind: model.Used}) == it.Quantity && l.TaggedHome == 0
	_, lies := b.n.pieceOf(line)
	return home && !lies && (b.st.still[it.ID] || b.n.d.Slot(it.Slot).Lap != b.st.at.Lap) && !slices.Contains(b.shutBy, it.ID)
}

// smallName is the name of a line that is home, with what of it was used up.
func (b *bayDraw) smallName(line int) string {
	it := &b.n.d.Items[line]
	if used := b.n.s.Line(line).N(model.Place{Kind: model.Used}); used > 0 {
		return words.F("%s, %d used", it.Short(), used)
	}
	return it.Short()
}

// cells is how many cells of a row a shelf takes: two small ones share one.
func (b *bayDraw) cells(s shelf, cols int) int {
	small := 0
	for _, i := range s.lines {
		small += boolInt(b.small(i))
	}
	return len(s.lines) - small + (small+1)/2
}

// The name of a shelf keeps the slots over it and under it apart, so that the
// gap between shelves may be small.
const shelfLabel, shelfGap, smallSlot = 22, 2, 42

// slotGrow is how much higher slots are drawn, at most, where there is room.
const slotGrow = 1.5

// row draws shelves side by side.
func (b *bayDraw) row(group []shelf, cols int) node {
	out := node{view: cellsOf{}}
	used := 0
	label, most := float32(shelfLabel), 17 // letters that one cell has room for
	for _, s := range group {
		if s.cols == 1 && len(shelfName(s.slot)) > most {
			label = 2*shelfLabel - 4
		}
	}
	deep := 0
	for _, s := range group {
		deep = max(deep, (b.cells(s, cols)+s.cols-1)/s.cols)
	}
	for _, s := range group {
		lines := b.column(s, label, deep)
		used += s.cols
		out.size = max(out.size, lines.size)
		lines.size, lines.part = 0, float32(s.cols)
		out.kids = append(out.kids, lines)
		if slices.ContainsFunc(s.lines, func(i int) bool { return b.n.d.Items[i].ID == b.hand }) {
			b.rowOf = append(b.rowOf, b.rows)
		}
	}
	if used < cols {
		out.kids = append(out.kids, node{part: float32(cols - used)})
	}
	b.rows++
	return out
}

// column draws one shelf: its name, then its lines in so many rows of cells.
func (b *bayDraw) column(s shelf, label float32, deep int) node {
	var cells, small []node
	for _, i := range s.lines {
		v := b.slot(i)
		if b.small(i) {
			small = append(small, node{id: v.ID, view: homeView{v.ID, b.smallName(i)}})
		} else {
			cells = append(cells, node{id: v.ID, view: v})
		}
	}
	for len(small) > 0 {
		k := min(2, len(small))
		cells = append(cells, node{view: colOf{4}, kids: append(slices.Clone(small[:k]), node{})[:k+boolInt(k == 1)]})
		small = small[k:]
	}
	name := node{id: "shelf " + s.slot.ID, size: label, view: parts.LabelView{Text: shelfName(s.slot), Role: look.Small, Lines: 2}}
	var kids []node
	for len(cells) > 0 || len(kids) < deep {
		k := min(s.cols, len(cells))
		r := append(slices.Clone(cells[:k]), make([]node, s.cols-k)...)
		kids = append(kids, node{view: cellsOf{}, kids: r})
		cells = cells[k:]
	}
	h := float32(len(kids))*(look.Floor+look.Gap) - look.Gap
	rows := node{view: colOf{look.Gap}, kids: kids}
	return node{view: colOf{2}, size: label + 2 + h, kids: []node{name, rows}}
}

func shelfName(s *model.Slot) string {
	d := s.Description
	if d == "" {
		return s.ID
	}
	return strings.ToUpper(d[:1]) + d[1:]
}

// slot is one line in its slot.
func (b *bayDraw) slot(i int) parts.SlotView {
	n, it := b.n, &b.n.d.Items[i]
	v := parts.SlotView{ID: it.ID, Name: it.Short(), Mode: parts.SlotHole, Strut: it.Kind == model.Piece && strings.Contains(it.Family, "strut")}
	home := n.s.Line(i).N(n.s.HomeOf(i))
	p, lies := n.pieceOf(i)
	disputed := n.s.Line(i).Contest != nil
	switch {
	case slices.Contains(b.shutBy, it.ID):
		v.Mode, v.Icon, v.Second, v.Off = parts.SlotAlarm, "bar", b.endOf(i), true
	case lies && it.ID == b.hand:
		b.now(&v, p)
	case lies:
		b.out(&v, p)
	case home == it.Quantity:
		v.Mode, v.Icon, v.Off, v.State = parts.SlotHome, "tick", true, "home"
		if !b.small(i) {
			v.Second = words.L("home")
		}
		if n.s.Line(i).TaggedHome > 0 {
			v.Icon, v.Second = "tag", parts.Or(words.L("home, tagged"), words.L("tagged"))
		}
	default:
		v.Off = true
		v.Second, v.Icon = n.whereWords(i)
		if away := n.awayFrom(i); away.Kind != "" {
			v.Second = parts.Or(v.Second, n.placeName(away))
		}
		if home > 0 {
			v.Mode, v.Second = parts.SlotHome, words.F("%d of %d home", home, it.Quantity)
		}
	}
	if disputed && v.Mode != parts.SlotAlarm {
		v.Icon, v.Second = "fork", parts.Or(n.claimWords(i), words.L("two claims"))
	}
	if v.Icon != "" && v.Icon != "tick" {
		v.Lay = parts.SlotCorner
	}
	return v
}

// now words the slot of the piece in hand.
func (b *bayDraw) now(v *parts.SlotView, p piece) {
	v.Mode, v.State = parts.SlotNow, "next"
	v.Second = words.L("next in")
	if b.st.item != "" {
		v.Second = words.L("this one")
	}
	if b.n.s.TwoPerson(p.line) {
		v.Icon, v.Second = "two", words.L("two people")
	}
	if p.item.Quantity > 1 {
		v.Second = fmt.Sprintf("%d, %s", p.n, v.Second)
	}
	if p.tagged {
		v.Icon, v.Second = "tag", words.L("out of service")
	}
	if len(b.shutBy) > 0 {
		v.Mode, v.Icon, v.Second, v.State = parts.SlotAlarm, "bar", words.L("blocked"), "blocked"
	}
}

// out words the slot of a piece that can be put back.
func (b *bayDraw) out(v *parts.SlotView, p piece) {
	n := b.n
	weight, rest := pounds(n.s.Weight(p.line), p.item), ""
	v.State = string(p.from.Kind)
	switch by := n.closedBy(p.line); {
	case p.tagged:
		v.Icon, v.Second = "tag", words.L("out of service")
	case len(by) > 0:
		v.Icon, v.Second, v.State = "bar", words.L("blocked"), "blocked"
	case p.from.Kind == model.At:
		v.Icon, v.Second = "go", words.F("at %s", n.placeName(p.from))
	case b.after(p) != "":
		v.Second = words.F("after %s", b.after(p))
	default:
		v.Second, rest = words.F("%s, then", weight), words.L("then")
	}
	if rest == "" {
		rest = v.Second
	}
	if p.item.Quantity > 1 {
		v.Second = words.F("%d to go, %s", p.n, rest)
	}
	if v.Icon == "" && n.s.TwoPerson(p.line) {
		v.Icon, v.Second = "two", words.L("two people")
	}
}

// after names the first piece on the list that must go in before this one.
func (b *bayDraw) after(p piece) string {
	for _, r := range b.n.d.Rules {
		if r.Then == p.item.ID && b.order[r.First] > 0 && (b.order[p.item.ID] == 0 || b.order[r.First] < b.order[p.item.ID]) {
			return inSentence(b.n.itemName(r.First))
		}
	}
	return ""
}

// endOf says what of the bay a piece closes.
func (b *bayDraw) endOf(i int) string {
	s := b.n.d.Slot(b.n.d.Items[i].Slot)
	switch {
	case strings.Contains(s.Side, "left door"):
		return words.L("shuts left end")
	case strings.Contains(s.Side, "right door"):
		return words.L("shuts right end")
	}
	return words.L("in the way")
}
