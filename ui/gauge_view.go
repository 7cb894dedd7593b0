package ui

import (
	"cmp"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/ui/words"
)

// gaugeView is the newest reading of a line that is out.
type gaugeView struct {
	Item   string
	Name   string
	Place  string
	Figure string // "600"
	Unit   string // "psi"
	At     string // when it was read, or since when it is there: "19:31, 19 min ago"
	Low    bool   // under the item's limit
	Limit  string // "under 1150"
}

// figure is the reading with its unit.
func (g gaugeView) figure() string {
	if g.Figure == "" {
		return words.L("No reading")
	}
	return g.Figure + " " + g.Unit
}

// when says how old the reading is, and that it is low.
func (g gaugeView) when() string {
	switch {
	case g.Figure == "":
		return words.F("There since %s", g.At)
	case g.Low:
		return words.F("%s. Read %s", capital(g.Limit), g.At)
	}
	return words.F("Read %s", g.At)
}

// gauges are the readings as they were taken, of pieces that are out: those
// at work before those on the tarp, the low ones first, the oldest reading
// last. Oxygen and air at work that nobody has read stand among them; other
// pieces at work that were never read are named in one sentence.
func (n *now) gauges() (read []gaugeView, unread string) {
	type row struct {
		v    gaugeView
		rank int
		at   int64
	}
	last, since := n.gaugeEntries()
	var rows []row
	var names []string
	for i := range n.d.Items {
		it := &n.d.Items[i]
		ask, ok := n.gaugeOf(it)
		p := n.s.Real(n.whereOut(i))
		if !ok || p.Kind != model.Tarp && p.Kind != model.At {
			continue
		}
		e, seen := last[it.ID]
		gas := ask.Check == "oxygen" || ask.Check == "air"
		v := gaugeView{Item: it.ID, Name: it.Short(), Place: n.placeName(p)}
		switch {
		case !seen && p.Kind == model.At && gas:
			e.at = since[it.ID]
		case !seen:
			if p.Kind == model.At && it.Critical {
				names = append(names, low(it.Short())+" ("+n.placeName(p)+n.sinceWords(since[it.ID])+")")
			}
			continue
		default:
			v.Figure, v.Unit = e.answer.Word, gaugeUnit(e.answer.Check)
			v.Low = ask.HasLimit && e.answer.Number < ask.Limit
		}
		v.At = words.F("%s, %d min ago", n.clock(e.at), (n.at.UnixMilli()-e.at)/60000)
		if v.Low {
			v.Limit = words.F("under %g", ask.Limit)
		}
		r := row{v: v, at: e.at}
		if p.Kind == model.Tarp {
			r.rank += 2
		}
		if !v.Low {
			r.rank++
		}
		rows = append(rows, r)
	}
	slices.SortStableFunc(rows, func(a, b row) int { return cmp.Or(a.rank-b.rank, cmp.Compare(b.at, a.at)) })
	for _, r := range rows {
		read = append(read, r.v)
	}
	return read, strings.Join(names, ", ")
}

func (n *now) sinceWords(at int64) string {
	if at == 0 {
		return ""
	}
	return words.F(" since %s", n.clock(at))
}

// gaugeOf is the check of an item that is a number.
func (n *now) gaugeOf(it *model.Item) (model.Ask, bool) {
	for _, a := range it.Checks {
		if c := n.d.Check(a.Check); c != nil && c.Number {
			return a, true
		}
	}
	return model.Ask{}, false
}

// whereOut is a place of the line other than its home, or the home place if
// there is none.
func (n *now) whereOut(i int) model.Place {
	home := n.s.HomeOf(i)
	for _, st := range n.s.Line(i).Stacks {
		if st.Place != home {
			return st.Place
		}
	}
	return home
}

type gaugeEntry struct {
	answer model.Answer
	at     int64
}

// gaugeEntries finds the newest reading of each item and since when it, or
// the kit that it is in, is where it is.
func (n *now) gaugeEntries() (last map[string]gaugeEntry, since map[string]int64) {
	last, since = map[string]gaugeEntry{}, map[string]int64{}
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if e.Scene != n.scene.ID {
			continue
		}
		if e.Taken() {
			for _, m := range e.Moves {
				n.movedAt(m.Item, e.At(), since)
			}
		} // what was refused was read all the same
		it := n.d.Item(e.Item)
		if it == nil || e.Reading == "" {
			continue
		}
		answers, err := model.ParseReading(n.d, e.Reading, e.Verb == model.Stow)
		if err != nil {
			continue
		}
		for _, a := range answers {
			if c := n.d.Check(a.Check); c != nil && c.Number {
				if _, own := it.Ask(a.Check); own {
					last[it.ID] = gaugeEntry{a, e.At()}
				}
			}
		}
	}
	return last, since
}

func (n *now) movedAt(item string, at int64, since map[string]int64) {
	since[item] = at
	if k := n.d.ItemIndex(item); k >= 0 {
		for _, c := range n.d.Inside(k) {
			n.movedAt(n.d.Items[c].ID, at, since)
		}
	}
}

// alertView is the one line of what is wrong, the worst first.
type alertView struct {
	Text string
	Icon string
	More int  // how many more there are
	Loud bool // it takes the alarm
}

// alert finds the worst that is open. Nothing pops up: it is one line.
func (n *now) alert() alertView {
	all := n.alerts()
	if len(all) == 0 {
		return alertView{}
	}
	v := all[0]
	v.More = len(all) - 1
	return v
}

// alerts lists what is open, the worst first: old data, two claims, pieces
// that nobody can explain, low gauges at work, pieces left without a
// signature, pieces that counts saw too many, unknown pieces.
func (n *now) alerts() []alertView {
	var out []alertView
	add := func(icon string, loud bool, text string) {
		out = append(out, alertView{Text: text, Icon: icon, Loud: loud})
	}
	if n.ageMinutes() > staleAfter {
		add("clock", false, n.age())
	}
	for i := range n.d.Items {
		it, l := &n.d.Items[i], n.s.Line(i)
		if c := l.Contest; c != nil {
			var at []string
			for _, k := range c.Claims {
				if p := n.placeName(k.Place); !slices.Contains(at, p) {
					at = append(at, p)
				}
			}
			add("fork", true, words.F("%s: %s? Go and look", it.Short(), strings.Join(at, words.L(" or "))))
		}
	}
	for i := range n.d.Items {
		if k := n.s.Line(i).N(model.Place{Kind: model.Unexplained}); k > 0 {
			it := &n.d.Items[i]
			add("look", true, words.F("%d unexplained: %s, %s", k, low(it.Short()), n.rigName(it.Rig)))
		}
	}
	gauges, _ := n.gauges()
	for _, g := range gauges {
		if g.Low && g.Place != n.placeName(model.Place{Kind: model.Tarp}) {
			add("hourglass", true, words.F("%s at %s: %s %s, read %s", g.Name, g.Place, g.Figure, g.Unit, g.At))
		}
	}
	for _, rig := range n.scene.Left {
		if k := n.leftBy(rig); k > 0 && !slices.Contains(n.scene.Accepted, rig) {
			add("leave", true, words.F("%s left %s here. Nobody signed for them", n.rigName(rig), words.N("%d line", "%d lines", k)))
		}
	}
	for i := range n.d.Items {
		if x := n.s.Extra(i, n.scene.ID); x > 0 {
			add("plus", true, words.F("%d too many on %s: %s", x, n.rigName(n.d.Items[i].Rig), low(many(n.d.Items[i].Short()))))
		}
	}
	for _, u := range n.scene.Unknown {
		add("unknown", false, words.F("Whose is it? %s", u))
	}
	return out
}

// leftBy counts the lines of a rig on the tarp or at places of the scene.
func (n *now) leftBy(rig string) int {
	k := 0
	for _, r := range n.s.Leaving(rig) {
		if (r.Place.Kind == model.Tarp || r.Place.Kind == model.At) && r.Place.Ground == n.scene.Ground {
			k++
		}
	}
	return k
}
