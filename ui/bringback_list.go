package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// A chore is what one line leaves to do at the station.
type chore struct {
	tab   string
	group string // its heading
	note  string // after the heading: a phone
	icon  string // of the heading
	line  int
	n     int
	from  model.Place // where the pieces are
	verb  model.Verb  // what ends it; nothing where it is only told
	words string      // what of it, under its name
	since string      // when it came there, in words
	at    int64       // the same, Unix milliseconds; nought is not known
	asks  []model.Ask // what is asked before it ends
}

func (c chore) id(d *model.Department) string {
	return d.Items[c.line].ID + " " + string(c.verb) + " " + c.from.String()
}

// The tabs of Bring back.
const (
	tabOthers  = "with-others"
	tabOut     = "out-of-service"
	tabToDo    = "to-do"
	tabRestock = "restock-list"
)

// chores lists all that is still to do but for the restock, in the order that
// it is shown: tab by tab, heading by heading.
func (n *now) chores() []chore {
	since := n.arrivals()
	var out []chore
	for _, r := range n.books() {
		it := &n.d.Items[r.Line]
		c := chore{line: r.Line, n: r.Quantity, from: r.Place, asks: it.Checks}
		if at := since[it.ID+" "+r.Place.String()]; at != 0 {
			c.at, c.since = at, n.sinceWord(at)
			c.words = words.F("since %s", c.since)
		}
		switch r.Place.Kind {
		case model.With, model.Riding:
			c.tab, c.verb, c.icon, c.group = tabOthers, model.BringBack, "with", n.partyName(r.Place.Name)
			if r.Place.Kind == model.Riding {
				c.icon, c.group = "carried", words.F("On %s", c.group)
			}
			if a := n.d.Agency(r.Place.Name); a != nil {
				c.note = a.Phone
			}
			if r.Holder != "" {
				c.words = joinWords(c.words, n.memberName(r.Holder))
			}
			if due := n.dueBack(it.ID); due != "" {
				c.words = joinWords(c.words, words.F("due %s", due))
			}
		case model.Charging:
			c.tab, c.verb, c.icon, c.group = tabToDo, model.Recharge, "plug", words.L("On the charger")
			c.words = joinWords(c.words, n.readings()[it.ID])
		case model.Bagged:
			c.tab, c.verb, c.icon, c.group = tabOut, model.Clean, "bag", words.L("To wash")
			c.words = joinWords(words.L("bagged"), c.words)
		default:
			continue
		}
		out = append(out, c)
	}
	out = append(out, n.unfit()...)
	rank := map[string]int{}
	for _, g := range []string{words.L("To wash"), words.L("To refill"), words.L("To repair"), words.L("On the charger"), words.L("To charge"), words.L("To dry"), words.L("To refill tanks"), words.L("To look at"), words.L("Kits that are short")} {
		rank[g] = len(rank) + 1
	}
	slices.SortStableFunc(out, func(a, b chore) int {
		return cmp.Or(strings.Compare(a.tab, b.tab), cmp.Compare(rank[a.group], rank[b.group]), strings.Compare(a.group, b.group))
	})
	return out
}

// arrivals is when pieces last came to each place, by item and place.
func (n *now) arrivals() map[string]int64 {
	out := map[string]int64{}
	for e := range n.history() {
		if e.Taken() {
			for _, m := range e.Moves {
				out[m.Item+" "+m.To.String()] = e.At()
			}
		}
	}
	return out
}

// sinceWord is a time of the clock, or the day where it is not of this one.
func (n *now) sinceWord(ms int64) string {
	at := time.UnixMilli(ms).In(n.at.Location())
	if n.at.Sub(at) < 18*time.Hour {
		return n.clock(ms)
	}
	return at.Format(words.L("Mon 2 Jan"))
}

// unfit lists what is out of service, what is home but not known to pass, and
// kits that are short.
func (n *now) unfit() []chore {
	var out []chore
	for i := range n.d.Items {
		l, it := n.s.Line(i), &n.d.Items[i]
		home := n.s.HomeOf(i)
		if k := l.Tagged(); k > 0 {
			c := chore{tab: tabOut, group: words.L("To repair"), icon: "tag", line: i, n: k, from: home, verb: model.Repair, words: n.faultWords(l.TagWords)}
			for _, a := range it.Checks {
				if ch := n.d.Check(a.Check); ch != nil && ch.Number && strings.Contains(l.TagWords, a.Check+"=") {
					c.asks = append(c.asks, a)
				}
			}
			if strings.Contains(l.TagWords, "oxygen=") || strings.Contains(l.TagWords, "air=") {
				c.group, c.icon = words.L("To refill"), "hourglass"
			}
			out = append(out, c)
		}
		if !n.s.Aboard(i) {
			continue
		}
		if l.Doubt > 0 {
			out = append(out, n.doubtful(i, home))
		}
		if said := n.shortWords(i); said != "" {
			out = append(out, chore{tab: tabToDo, group: words.L("Kits that are short"), icon: "kit", line: i, n: 1, from: home, words: said})
		}
	}
	return out
}

// doubtful is a line that is home but not known to pass.
func (n *now) doubtful(i int, home model.Place) chore {
	l, it := n.s.Line(i), &n.d.Items[i]
	c := chore{tab: tabToDo, group: words.L("To look at"), icon: "look", line: i, n: l.Doubt, from: home, verb: model.CheckIt,
		words: n.faultWords(strings.Join(l.DoubtWords, ";"))}
	for _, a := range it.Checks {
		if l.IsOpen(a.Check) {
			c.asks = append(c.asks, a)
		}
	}
	if len(c.asks) == 0 {
		c.asks = it.Checks
	}
	for _, g := range []struct{ check, group, icon string }{
		{"battery", words.L("To charge"), "plug"}, {"bars", words.L("To charge"), "plug"}, {"dry", words.L("To dry"), "clock"},
		{"fuel", words.L("To refill tanks"), "hourglass"}, {"oxygen", words.L("To refill tanks"), "hourglass"}, {"air", words.L("To refill tanks"), "hourglass"},
	} {
		if l.IsOpen(g.check) {
			c.group, c.icon = g.group, g.icon
			break
		}
	}
	if l.Waved {
		c.words += words.L(". An officer let it pass")
	}
	return c
}

// shortWords says what a kit that is home has too few of.
func (n *now) shortWords(kit int) string {
	if n.d.Items[kit].Kind != model.Kit {
		return ""
	}
	state := n.s.KitState(kit)
	if state != model.ShortUsable && state != model.NotUsable {
		return ""
	}
	var missing []string
	for _, i := range n.d.Inside(kit) {
		it := &n.d.Items[i]
		if k := it.Quantity - n.s.Line(i).N(n.s.HomeOf(i)); k > 0 && it.Kind != model.Consumable {
			missing = append(missing, some(it, k))
		}
	}
	said := words.F("missing: %s", few(missing, 3))
	if state == model.NotUsable {
		return words.F("%s. Not usable so", said)
	}
	return words.F("%s. Usable so", said)
}

// faultWords is a reading in words: "chain=no" is "Chain sharp: no".
func (n *now) faultWords(said string) string {
	var out []string
	for _, w := range strings.Split(said, ";") {
		w = strings.TrimSpace(w)
		key, answer, eq := strings.Cut(w, "=")
		if !eq {
			key, answer, _ = strings.Cut(w, " ")
		}
		c := n.d.Check(key)
		switch {
		case key == model.FlowKey && eq:
			out = append(out, words.F("%s L/min", answer))
			continue
		case c == nil:
			out = append(out, w)
			continue
		}
		name, _ := askWords(c)
		name = strings.TrimSuffix(name, "?")
		switch {
		case answer == "":
			out = append(out, name)
		case answer == "unanswered":
			out = append(out, words.F("%s: not looked at", name))
		case c.Number:
			out = append(out, name+": "+gaugeWord(model.Answer{Check: c.ID, Word: answer}))
		default:
			out = append(out, name+": "+answerWord(answer))
		}
	}
	return strings.Join(out, ". ")
}

// joinWords joins what is not empty with commas.
func joinWords(words ...string) string {
	return strings.Join(slices.DeleteFunc(words, func(w string) bool { return w == "" }), ", ")
}

// choreRow is a chore in the list.
func (n *now) choreRow(c chore, chosen bool) parts.RowView {
	it := &n.d.Items[c.line]
	v := parts.RowView{Kind: parts.KindPiece, ID: it.ID, Mark: n.mark(it.Rig), Title: capital(some(it, c.n)), Second: c.words, Tone: parts.Quiet, Go: "go", State: c.from.String()}
	if chosen {
		v.Tone = parts.Live
	}
	if c.verb == "" {
		v.Go = ""
	}
	return v
}

// choreDone are the words of the key that ends a chore.
func choreDone(c chore, k int) (id, title string) {
	switch c.verb {
	case model.BringBack:
		id, title = "bring-back", words.L("Back home")
	case model.Recharge:
		id, title = "recharge", words.L("Charged, home")
	case model.Clean:
		id, title = "clean", words.L("Washed, home")
	case model.Repair:
		id, title = "repair", words.L("Back in service")
	default:
		id, title = "check", words.L("Checked")
	}
	if c.n > 1 {
		title = fmt.Sprintf("%d %s", k, low(title))
	}
	return id, title
}
