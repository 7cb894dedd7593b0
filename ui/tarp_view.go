package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// pick is so many pieces of a line at a place that a finger chose.
type pick struct {
	item string
	from model.Place
	n    int // chosen
	most int // there
}

// tileID names a tile: the item, and where it is if that is not the place shown.
func tileID(item string, from, shown model.Place) string {
	if from == shown || from.Kind == model.Home || from.Kind == model.InKit {
		return item
	}
	return item + "@" + from.String()
}

// tilesAt are the lines that have pieces at a place, named tools first, then
// counted lines, then kits.
func (n *now) tilesAt(at model.Place, hidden map[string]bool, picks []pick) []parts.TileView {
	var lines []int
	for i := range n.d.Items {
		if n.s.Line(i).N(at) > 0 && !hidden[n.d.Items[i].Rig] {
			lines = append(lines, i)
		}
	}
	rank := func(i int) int {
		switch n.d.Items[i].Kind {
		case model.Piece:
			return 0
		case model.Kit:
			return 2
		}
		return 1
	}
	slices.SortStableFunc(lines, func(a, b int) int { return cmp.Compare(rank(a), rank(b)) })
	readings := n.readings()
	var out []parts.TileView
	for _, i := range lines {
		out = append(out, n.tile(i, at, at, picks, readings))
	}
	return out
}

// tile is one line at a place.
func (n *now) tile(i int, from, shown model.Place, picks []pick, readings map[string]string) parts.TileView {
	it, l := &n.d.Items[i], n.s.Line(i)
	v := parts.TileView{ID: tileID(it.ID, from, shown), Name: it.Short(), Mark: n.mark(it.Rig), Listed: from.String()}
	count := l.N(from)
	if it.Quantity > 1 {
		v.Figure = fmt.Sprint(count)
	}
	for _, p := range picks {
		if p.item == it.ID && p.from == from {
			v.Picked, v.Listed = true, "picked"
			if it.Quantity > 1 {
				v.Figure = fmt.Sprint(p.n)
			}
		}
	}
	home := n.s.HomeOf(i)
	switch {
	case from.Kind == model.Home:
		v.Raised = true
		if slot := n.d.Slot(it.Slot); slot != nil {
			v.Word = n.slotWord(slot)
		}
	case from != shown && from != home:
		v.Word = n.placeName(from)
	}
	n.tileState(&v, i, from, readings[it.ID])
	return v
}

// tileState puts the one thing that is to be known about a piece on its tile.
func (n *now) tileState(v *parts.TileView, i int, from model.Place, reading string) {
	it, l := &n.d.Items[i], n.s.Line(i)
	say := func(state parts.TileState, word string) {
		v.State = state
		if v.Word == "" || v.Raised {
			v.Word = word
		}
	}
	out := from != n.s.HomeOf(i)
	if out && n.heldBy(it.ID) != nil {
		v.Icon, v.Word = "hold", words.L("held")
		return
	}
	switch {
	case l.Contest != nil && len(l.Contest.Claims) > 1:
		v.State, v.Word = parts.TileContested, n.placeName(l.Contest.Claims[0].Place)+"? "+n.placeName(l.Contest.Claims[1].Place)+"?"
	case out && l.TaggedOut > 0 || !out && l.TaggedHome > 0 && l.N(from) == l.TaggedHome:
		say(parts.TileTagged, words.L("tagged"))
	case reading != "":
		say(parts.TileRunning, reading)
	case it.Kind == model.Kit && n.kitOpen(i):
		say(parts.TileKitOpen, words.L("open"))
	case l.N(model.Place{Kind: model.Unexplained}) > 0:
		say(parts.TileShort, words.F("%d of %d", it.Quantity-l.N(model.Place{Kind: model.Unexplained}), it.Quantity))
	case from.Kind != model.Home && n.s.TwoPerson(i):
		say(parts.TileTwo, words.L("two"))
	case it.Kind == model.Kit && v.Word == "":
		say(parts.TileKit, words.L("kit"))
	case from.Kind == model.At && v.Word == "" && l.Holder(from) != "":
		v.Word = n.holderWord(l.Holder(from), it.Rig)
	}
}

// holderWord names a holder only if he is not of the owner's crew.
func (n *now) holderWord(holder, rig string) string {
	m := n.d.Member(holder)
	if m == nil {
		return holder
	}
	if m.Rig == rig || m.Rig == "" {
		return ""
	}
	return words.F("by %s", m.Rig)
}

// kitOpen tells whether a piece that comes back is out of the kit.
func (n *now) kitOpen(kit int) bool {
	in := model.Place{Kind: model.InKit, Name: n.d.Items[kit].ID}
	for _, c := range n.d.Inside(kit) {
		it := &n.d.Items[c]
		if it.Kind != model.Consumable && n.s.Line(c).N(in) < it.Quantity {
			return true
		}
	}
	return false
}

// notInKit names what belongs into a kit and is not in it, but for what is used
// up; nothing if all is there.
func (n *now) notInKit(kit string) string {
	in := model.Place{Kind: model.InKit, Name: kit}
	var out []string
	for _, c := range n.d.Inside(n.d.ItemIndex(kit)) {
		it := &n.d.Items[c]
		if gone := it.Quantity - n.s.Line(c).N(in); gone > 0 && it.Kind != model.Consumable {
			out = append(out, pieces(it, gone))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return words.F("Not in it: %s", few(out, 2))
}

// readings are the last gauges read in this scene that are under the item's
// limit: "22 %", "600 psi".
func (n *now) readings() map[string]string { return once(n, "readings", n.lastReadings) }

func (n *now) lastReadings() map[string]string {
	out := map[string]string{}
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if e.Scene != n.scene.ID || e.Reading == "" || e.Item == "" {
			continue
		}
		line := n.d.ItemIndex(e.Item)
		if line < 0 {
			continue
		}
		answers, err := model.ParseReading(n.d, e.Reading, e.Verb == model.Stow)
		if err != nil {
			continue
		}
		for _, a := range answers {
			ask, own := n.d.Items[line].Ask(a.Check)
			c := n.d.Check(a.Check)
			switch {
			case !own || c == nil || !c.Number:
			case ask.HasLimit && a.Number < ask.Limit:
				out[e.Item] = gaugeWord(a)
			default:
				delete(out, e.Item)
			}
		}
	}
	return out
}

// gaugeWord is a reading with its unit.
func gaugeWord(a model.Answer) string { return a.Word + " " + gaugeUnit(a.Check) }

func gaugeUnit(check string) string {
	switch check {
	case "oxygen", "air":
		return words.L("psi")
	case "bars":
		return words.L("bars")
	}
	return "%"
}

// found are the pieces that three letters find, wherever they are.
func (n *now) found(letters string, picks []pick) []parts.TileView {
	want := fold(letters)
	if want == "" {
		return nil
	}
	readings := n.readings()
	var out []parts.TileView
	for _, i := range n.ranked(want) { // on every rig, those whose pieces are hidden too
		for _, st := range n.s.Line(i).Stacks {
			if st.Place.Kind != model.Used && st.Place.Kind != model.Lost {
				out = append(out, n.tile(i, st.Place, model.Place{}, picks, readings))
			}
		}
	}
	return out
}

// ranked are the lines that answer to letters, the best first.
func (n *now) ranked(want string) []int {
	type hit struct{ rank, line int }
	var hits []hit
	for i := range n.d.Items {
		if r := matchRank(&n.d.Items[i], want); r >= 0 {
			hits = append(hits, hit{r, i})
		}
	}
	slices.SortStableFunc(hits, func(a, b hit) int { return cmp.Compare(a.rank, b.rank) })
	out := make([]int, len(hits))
	for k, h := range hits {
		out[k] = h.line
	}
	return out
}

// matchRank is how well an item answers to letters: a word of its names that
// begins with them, best the first; -1 if none does.
func matchRank(it *model.Item, want string) int {
	names := append([]string{it.Short(), it.Name}, it.OtherNames...)
	for k, name := range names {
		for w, word := range strings.Fields(fold(name)) {
			if strings.HasPrefix(word, want) {
				return min(w, 3) + 4*min(k, 2)
			}
		}
	}
	if strings.Contains(fold(strings.Join(names, " ")), want) || strings.Contains(fold(it.Mark), want) || strings.Contains(fold(it.ID), want) {
		return 20
	}
	return -1
}

// fold makes letters comparable: lower case, only letters, digits and blanks.
func fold(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'A' && r <= 'Z':
			return r + 32
		case r == '-' || r == '/' || r == ',' || r == '(' || r == ')' || r == '.':
			return ' '
		}
		return r
	}, strings.TrimSpace(s))
}

// handful are the keys for so many pieces: each by one, or by handfuls.
func handful(most int) []int {
	var keys []int
	if most <= 4 {
		for k := 1; k < most; k++ {
			keys = append(keys, k)
		}
		return keys
	}
	for _, k := range []int{2, 4, 8, 12} {
		if k < most {
			keys = append(keys, k)
		}
	}
	return keys
}
