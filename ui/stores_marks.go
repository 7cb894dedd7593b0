package ui

import (
	"fmt"
	"maps"
	"strings"

	"tarpside/model"
	"tarpside/model/lift"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// How a piece is taken to be lifted at the desk: from the ground at the feet,
// a forearm ahead of the ankles, with a fair grip in gloves, seldom.
const (
	markReach = 14.0 // inches
	markFrom  = 12.0 // inches, a handle on the ground
)

// handUp is the column of the inventory for what is handed up, never solo.
const handUp = "hand_up"

// liftOf is the lift of a piece into its slot; ok is false where it lives in
// no slot, or in a kit, which is lifted as one.
func (n *now) liftOf(d *model.Department, it *model.Item) (lift.Lift, bool) {
	slot := d.Slot(it.Slot)
	if slot == nil || it.Kit != "" {
		return lift.Lift{}, false
	}
	load := it.WeightLb
	switch {
	case it.NoWeight:
		load = 0 // not known
	case it.Kind == model.Kit:
		load += insideWeight(d, it.ID, 0)
	}
	l := lift.Lift{Load: load, Often: 0.2, Grip: lift.Fair, From: lift.Hold{H: markReach, V: markFrom}, To: lift.Hold{H: markReach, V: slot.HandHeightIn}}
	if slot.HandHeightIn <= 0 {
		l.To.V = markFrom // its height is not known
	}
	return l, true
}

// insideWeight is the weight of all that lives in a kit, in pounds.
func insideWeight(d *model.Department, kit string, deep int) float64 {
	if deep > 8 {
		return 0
	}
	lb := 0.0
	for i := range d.Items {
		if it := &d.Items[i]; it.Kit == kit {
			lb += it.WeightLb*float64(it.Quantity) + insideWeight(d, it.ID, deep+1)
		}
	}
	return lb
}

// proposed are the marks that the equation proposes for a piece, and whether
// one of them is wanting in the inventory.
func (n *now) proposed(d *model.Department, it *model.Item) (m lift.Marks, wanting, ok bool) {
	l, ok := n.liftOf(d, it)
	if !ok {
		return m, false, false
	}
	m, err := lift.Propose(l)
	if err != nil {
		return m, false, false
	}
	return m, m.TwoPerson && !it.TwoPerson || m.HandUp && it.Extra[handUp] == "", true
}

// markKey is the key of a line page that opens the proposal.
func (n *now) markKey(it *model.Item) (parts.KeyView, bool) {
	m, wanting, ok := n.proposed(n.s.Wanted(), it)
	v := parts.KeyView{ID: "marks", Title: words.L("Lift marks"), Second: words.L("as they are")}
	if wanting {
		v.Second = words.F("proposed: %s", markWords(m))
	}
	return v, ok
}

// markWords are the marks in few words.
func markWords(m lift.Marks) string {
	switch {
	case m.TwoPerson && m.HandUp:
		return words.L("two people, hand it up")
	case m.TwoPerson:
		return words.L("two people")
	case m.HandUp:
		return words.L("hand it up")
	}
	return words.L("none")
}

// newMarks is the proposal for one piece: the equation, its source and what it
// leaves out. It is applied by the touch of a name, and never by itself.
func newMarks(sh *Shell, id string) screen {
	rows := func(n *now) []rowDo {
		it := n.s.Wanted().Item(id)
		if it == nil {
			return nil
		}
		_, wanting, _ := n.proposed(n.s.Wanted(), it)
		if !wanting {
			return []rowDo{{view: parts.RowView{ID: "as-proposed", Title: words.L("Nothing to apply"), Second: words.L("the inventory has what is proposed"), Off: true}}}
		}
		return n.crewRows("", func(by string) { sh.applyMarks(id, by) })
	}
	title := id
	if it := sh.now().s.Wanted().Item(id); it != nil {
		title = it.Short()
	}
	return newRowList(words.F("Lift marks of %s", low(title)), words.L("Applied by the touch of a name, never by themselves"), rows, func(n *now) (string, string) {
		return words.L("Proposed by the lifting equation"), n.markText(id)
	})
}

// markText is the proposal with how it was got.
func (n *now) markText(id string) string {
	d := n.s.Wanted()
	it := d.Item(id)
	if it == nil {
		return words.L("This line is no longer in the inventory.")
	}
	l, ok := n.liftOf(d, it)
	if !ok {
		return words.L("It lives in no slot of its own: what it lives in is lifted.")
	}
	m, err := lift.Propose(l)
	if err != nil {
		return capital(words.Said(err.Error())) + "."
	}
	says := capital(words.Said(m.Text))
	if !m.TwoPerson && !m.HandUp {
		says = words.L("No mark is proposed")
	}
	lines := []string{parts.B(says), words.F("%s %s, from %g in to %g in, %g in ahead of the ankles, both hands, a fair grip, seldom", parts.B(words.L("Taken as:")), poundWords(l.Load), l.From.V, l.To.V, l.From.H)}
	if r, err := l.Work(); err == nil && r.Text != "" {
		lines = append(lines, parts.B(words.L("Limit for one:"))+" "+words.Said(r.Text))
	}
	for _, x := range []struct{ word, text string }{{words.L("Formula:"), words.Said(m.Formula)}, {words.L("Source:"), words.Said(m.Source)}, {words.L("Limits:"), words.Said(m.Limits)},
		{words.L("Does not apply:"), words.L("to a team, to one hand, to carrying, on slippery ground, to a load that shifts, where there is no room to stand. Then weight and height only")}} {
		lines = append(lines, parts.B(x.word)+" "+x.text)
	}
	return strings.Join(lines, "\n")
}

func poundWords(lb float64) string {
	if lb == 0 {
		return words.L("weight not known")
	}
	return words.F("%g lb", lb)
}

// applyMarks writes the proposed marks into the inventory in somebody's name.
func (sh *Shell) applyMarks(id, by string) {
	n := sh.now()
	is := n.s.Wanted().Item(id)
	if is == nil {
		return
	}
	it := *is
	m, wanting, ok := n.proposed(n.s.Wanted(), &it)
	if !ok || !wanting {
		return
	}
	it.TwoPerson = it.TwoPerson || m.TwoPerson
	if m.HandUp {
		it.Extra = maps.Clone(it.Extra)
		if it.Extra == nil {
			it.Extra = map[string]string{}
		}
		it.Extra[handUp] = "yes"
	}
	was := sh.by
	sh.by = by
	bad := sh.editItem(it)
	sh.by = was
	if len(bad) > 0 {
		sh.said = &said{trouble: inWords(fmt.Errorf("%s", bad[0]))}
	}
	sh.refresh()
}

// newMarkList lists the pieces for which a mark is proposed that they have
// not.
func newMarkList(sh *Shell) screen {
	rows := func(n *now) []rowDo {
		d := n.s.Wanted()
		var out []rowDo
		for i := range d.Items {
			it := &d.Items[i]
			m, wanting, ok := n.proposed(d, it)
			if !ok || !wanting {
				continue
			}
			out = append(out, rowDo{parts.RowView{Kind: parts.KindPiece, ID: it.ID, Mark: n.mark(it.Rig), Title: it.Short(), Second: n.slotWords(it), Right: markWords(m), Tone: parts.Quiet, Go: "go"},
				func() { sh.open(newMarks(sh, it.ID)) }})
		}
		if len(out) == 0 {
			out = append(out, rowDo{view: parts.RowView{ID: "as-proposed", Title: words.L("Nothing is proposed"), Second: words.L("every piece has its marks"), Off: true}})
		}
		return out
	}
	return newRowList(words.L("Lift marks"), words.L("Proposed at a desk, once a piece. An officer decides"), rows, nil)
}
