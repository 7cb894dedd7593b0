package ui

import (
	"slices"
	"strconv"
	"strings"

	"tarpside/model"
	"tarpside/model/loadup"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// padPanel is the number pad for a reading: the figure at once has its
// verdict beside it, in words.
func (n *now) padPanel(st *luState, p piece) node {
	c := n.d.Check(st.pad)
	ask, _ := p.item.Ask(st.pad)
	v := n.leadOf(st, p)
	v.over = c.Question
	tone, title, said, ok := n.verdict(p, ask, st.typed)
	out := parts.ReadoutView{ID: "typed", Text: st.typed, Tone: parts.Live}
	if tone == parts.Alarm {
		out.Tone = parts.Alarm
	}
	says := leadView{id: "verdict", tone: tone, title: title, under: said}
	if tone == parts.Alarm {
		says.icon, says.over, says.title = "bar", title, ""
	}
	side := col(n.padSide(), sized(node{id: "typed", view: out}, 96), node{id: "verdict", view: says})
	switch {
	case tone == parts.Alarm && st.pad != "" && (st.pad == "battery" || st.pad == "bars") && ok:
		side.kids = append(side.kids, sized(keyNode(parts.KeyView{ID: "charge", Title: words.L("To the charger"), Icon: "plug", Tone: parts.Filled, Lay: parts.LayStack}), 120))
	case st.given[st.pad] != "" || len(p.item.Checks) > 1:
		side.kids = append(side.kids, sized(keyNode(parts.KeyView{ID: "later", Title: words.L("Not now"), Icon: "back"}), look.Floor))
	}
	done := padView{done: parts.Usual, shut: !ok}
	if ok && tone != parts.Alarm {
		done.done = parts.Filled
	}
	return n.padBody(v, done, side)
}

// narrow tells that the window is a small one, 1024 wide.
func (n *now) narrow() bool { return n.bodyWidth() < 1100 }

// padSide is the width beside the pad. Where the window is small it gives way:
// no digit is ever narrower than a thumb.
func (n *now) padSide() float32 {
	if n.narrow() {
		return 148
	}
	return 184
}

// padBody puts the pad under its head.
func (n *now) padBody(v leadView, pad padView, side node) node {
	h := float32(98)
	if n.narrow() {
		h, v.line = 66, ""
		if v.two {
			v.icon = "two"
		}
		if v.title != "" {
			v.under = ""
		}
	}
	return col(0, sized(node{id: "piece", view: v}, h), row(0, node{id: "pad", view: pad}, side))
}

// verdict judges what is typed so far; ok where it can be given as an answer.
func (n *now) verdict(p piece, ask model.Ask, typed string) (tone parts.Tone, title, said string, ok bool) {
	c := n.d.Check(ask.Check)
	if typed == "" {
		return parts.Quiet, words.L("Blank"), words.F("A blank never passes. %s.", limitWords(ask)), false
	}
	f, err := strconv.ParseFloat(typed, 64)
	switch {
	case err != nil:
		return parts.Alarm, words.L("Cannot be"), words.F("It is from %g to %g. Look again.", c.Min, c.Max), false
	case n.refuse(p.item, ask.Check, f) != "":
		return parts.Alarm, words.L("Cannot be"), n.refuse(p.item, ask.Check, f), false
	case !n.passes(p, ask.Check, typed):
		said = words.F("Under %g. It cannot go in as ready.", ask.Limit)
		if c.Never {
			said += words.L(" Nobody may wave it past.")
		}
		return parts.Alarm, words.L("Not ready"), said, true
	}
	return parts.Quiet, words.L("Passes"), limitWords(ask) + ".", true
}

// cure is how a blocked slot is opened: by taking out what is nearest, or the
// other end of the bay.
type cure struct {
	near, other []string
	words       string
}

// cures works out the ways to open the slot of a piece, the nearest first.
func (n *now) cures(st *luState, p piece) cure {
	aboard := func(id string) bool { i := n.d.ItemIndex(id); return i >= 0 && n.s.Aboard(i) }
	door := func(id string) loadup.Door {
		if it := n.d.Item(id); it != nil {
			if s := n.d.Slot(it.Slot); s != nil {
				return doorOf(s)
			}
		}
		return loadup.Door{}
	}
	c := loadup.Closed(p.item.ID, n.d.Rules, aboard, door)
	out := cure{near: slices.Clone(c.Alone)}
	if (loadup.Closure{Ends: c.Ends}).Shut() {
		ends := slices.Clone(c.Ends)
		slices.SortStableFunc(ends, func(a, b loadup.End) int { return boolInt(a.Door != *st.at) - boolInt(b.Door != *st.at) })
		var closed []string
		for _, e := range c.Ends {
			closed = append(closed, words.F("%s closed by the %s", n.endName(st.rig, e.Door), n.names(e.By)))
		}
		out.words = upper(strings.Join(closed, ", ")) + ". "
		out.near = append(out.near, ends[0].By...)
		if len(ends) > 1 {
			out.other = append(slices.Clone(c.Alone), ends[1].By...)
			out.words += words.F("Take out one of the two. The %s is nearer to you.", n.names(ends[0].By))
		}
		return out
	}
	out.words = words.F("Its way is closed by the %s.", n.names(c.Alone))
	return out
}

func (n *now) endName(rig string, d loadup.Door) string {
	if n.sideOf(rig, d) == driverSide {
		return words.L("left end")
	}
	return words.L("right end")
}

func upper(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// countedWords says that what is in a kit was counted since it last moved, or
// offers the count.
func (n *now) countedWords(st *luState, p piece) string {
	if _, asked := p.item.Ask(model.CountCheck); !asked || p.item.Kind != model.Kit {
		return ""
	}
	counted, at, by := map[string]bool{}, int64(0), ""
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if !e.Taken() {
			continue
		}
		for _, m := range e.Moves {
			if m.Item == p.item.ID {
				clear(counted)
			}
		}
		if e.Verb == model.Count && e.From == "kit:"+p.item.ID {
			counted[e.Item], at, by = true, e.At(), e.By
		}
	}
	inside := n.d.Inside(p.line)
	if len(counted) < len(inside) || len(inside) == 0 {
		return ""
	}
	said := words.F("Counted %s", n.clock(at))
	if by != "" {
		said += parts.Or(words.F(" by %s", n.memberName(by)), "")
	}
	if n.s.KitState(p.line) == model.ShortUsable {
		said += words.L(": short, but usable")
	}
	return said
}

// countView is a blind count: the lines on the left, each an empty box, and
// the pad on the right.
func (n *now) countView(st *luState) (left, right node) {
	c := st.count
	v := listOf{panel: parts.PanelView{ID: "bay", Title: words.L("How many do you see?"), Right: words.L("the log says nothing yet")}, gap: look.Gap, grow: slotGrow}
	if c.kit != "" {
		v.panel.Title = words.L("How many are in it?")
	}
	var cells []node
	for k, line := range c.lines {
		it := &n.d.Items[line]
		s := parts.SlotView{ID: it.ID, Name: it.Short(), Lay: parts.SlotCorner, Mode: parts.SlotHole, Second: words.L("not counted"), State: "empty"}
		if got, ok := c.got[line]; ok {
			s.Mode, s.Second, s.Icon, s.State = parts.SlotHome, words.F("you counted %d", got), "tick", "counted"
		}
		if k == c.at {
			s.Mode, s.Second, s.State = parts.SlotNow, words.L("now"), "now"
		}
		cells = append(cells, node{id: s.ID, view: s})
	}
	rows := gridRows(cells, 3)
	if c.at < len(c.lines) {
		v.show = float32(c.at/3) * (96 + look.Gap)
		v.upTo = v.show + 96
	}
	head := leadView{id: "piece", over: words.L("Count what is there, one by one"), under: words.L("An empty box is no answer.")}
	if c.at < len(c.lines) {
		head.title = n.d.Items[c.lines[c.at]].Short()
	}
	if c.kit != "" {
		head.over = words.F("In the %s, %d of %d", n.itemName(c.kit), c.at+1, len(c.lines))
	}
	if c.again {
		head.tone, head.icon, head.over, head.under = parts.Alarm, "clock", words.L("Begin again"), words.L("The count was left for more than a minute.")
	}
	side := col(n.padSide(), sized(node{id: "typed", view: parts.ReadoutView{ID: "typed", Text: c.typed, Tone: parts.Live}}, 96),
		node{id: "verdict", view: leadView{id: "verdict", under: words.L("None there: type 0.")}},
		sized(keyNode(parts.KeyView{ID: "count-stop", Title: words.L("Not now"), Icon: "back"}), look.Floor))
	pad := padView{done: parts.Filled, shut: c.typed == ""}
	if pad.shut {
		pad.done = parts.Usual
	}
	right = n.padBody(head, pad, side)
	return node{id: "count " + c.kit, view: v, kids: rows}, right
}

// cellHigh holds a name of two lines, an icon and a second line of two.
const cellHigh = 104

// gridRows puts cells into rows of so many.
func gridRows(cells []node, cols int) []node {
	var rows []node
	for len(cells) > 0 {
		k := min(cols, len(cells))
		r := append(slices.Clone(cells[:k]), make([]node, cols-k)...)
		rows = append(rows, node{view: cellsOf{}, size: cellHigh, kids: r})
		cells = cells[k:]
	}
	return rows
}

// tagWords says a tag in words: what does not pass, and what to do about it.
func (n *now) tagWords(tag string) string {
	var out []string
	for _, w := range strings.Split(tag, ";") {
		check, word, ok := strings.Cut(strings.TrimSpace(w), "=")
		c := n.d.Check(check)
		if !ok || c == nil {
			out = append(out, upper(strings.TrimSpace(w))+".")
			continue
		}
		short, _ := askWords(c)
		out = append(out, strings.TrimSuffix(short, "?")+": "+answerWord(word)+". "+upper(c.IfItFails)+".")
	}
	return strings.Join(out, " ")
}
