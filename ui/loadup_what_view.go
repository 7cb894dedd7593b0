package ui

import (
	"strings"

	"tarpside/model/judge"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// blockedView says what closes the way and what can be done.
func (n *now) blockedView(st *luState, p piece) node {
	cure := n.cures(st, p)
	v := leadView{id: "blocked", tone: parts.Alarm, icon: "bar", over: words.L("Blocked"), title: p.item.Short(), under: cure.words}
	keys := []node{keyNode(n.cureKey("unstow", cure.near, parts.Filled, ""))}
	second := []node{}
	if len(cure.other) > 0 {
		second = append(second, keyNode(n.cureKey("unstow-other", cure.other, parts.Usual, words.K("%s out instead"))))
	}
	second = append(second, node{id: "in-anyway", view: parts.HoldView{ID: "in-anyway", Title: words.L("It is in anyway"), Second: words.L("hold: logged as your eyes saw it"), Sure: words.L("It is in")}})
	out := col(0, node{id: "blocked", view: v}, row(104, keys...), row(142, second...))
	return out
}

// cureKey takes out what is in the way; instead is the title of the second of
// two ways.
func (n *now) cureKey(id string, items []string, tone parts.Tone, instead string) parts.KeyView {
	two, weight := false, []string{}
	for _, it := range items {
		i := n.d.ItemIndex(it)
		two = two || n.s.TwoPerson(i)
		weight = append(weight, pounds(n.s.Weight(i), &n.d.Items[i]))
	}
	v := parts.KeyView{ID: id, Title: words.F("Take the %s out", n.names(items)), Icon: "one", Tone: tone, Lay: parts.LayLeft, Second: strings.Join(weight, words.L(" and "))}
	if instead != "" {
		v.Title, v.Icon = words.F(instead, upper(n.names(items))), ""
	}
	if two {
		v.Second += words.L(", two people")
		if v.Icon != "" {
			v.Icon = "two"
		}
	}
	v.Second += words.L(". Back in after it")
	return v
}

// taggedView: out of service, it can only ride home tagged.
func (n *now) taggedView(st *luState, p piece) node {
	v := n.leadOf(st, p)
	v.over, v.icon = words.L("Out of service"), "tag"
	if w := n.s.Line(p.line).TagWords; w != "" {
		v.under = n.tagWords(w)
	}
	key := parts.KeyView{ID: "stow-tagged", Title: words.L("In, tagged"), Second: words.L("rides home out of service"), Icon: "tag", Tone: parts.Filled}
	if by := n.closedBy(p.line); len(by) > 0 {
		v.under = words.F("Its way is closed by %s", n.names(by))
		return col(0, node{id: "piece", view: v}, row(104, keyNode(n.cureKey("unstow", n.cures(st, p).near, parts.Filled, ""))),
			row(104, node{id: "in-anyway", view: parts.HoldView{ID: "in-anyway", Title: words.L("In anyway, tagged"), Second: words.L("hold: logged as seen"), Sure: words.L("It is in")}}))
	}
	return col(0, node{id: "piece", view: v}, row(112, keyNode(key)))
}

// kitAwayView: it lives in a kit that is elsewhere.
func (n *now) kitAwayView(p piece) node {
	where, _ := n.whereWord(n.s.Real(n.s.HomeOf(p.line)))
	v := leadView{id: "kit-away", tone: parts.Alarm, icon: "kit", over: words.L("Its kit is not here"), title: p.item.Short(),
		under: words.F("It lives in %s, which is %s. Leave it on the tarp until the kit is back.", n.itemName(p.item.Kit), where)}
	return col(0, node{id: "kit-away", view: v}, row(112, keyNode(parts.KeyView{ID: "drop", Title: words.L("Leave it for now"), Icon: "go"})))
}

// refusedView is a refusal as a question: what now?
func (n *now) refusedView(st *luState, p piece) node {
	e := st.said
	failing, hard := n.failing(st, p)
	v := leadView{id: "refused", tone: parts.Alarm, icon: "bar", over: words.L("It does not pass"), title: p.item.Short(), under: n.failWords(st, failing)}
	var keys []node
	add := func(k parts.KeyView) {
		k.Lay, k.Role = parts.LayLeft, look.Group
		keys = append(keys, keyNode(k))
	}
	switch {
	case e.Reply.Has(judge.Gate):
		for _, f := range failing {
			switch f {
			case "battery", "bars":
				add(parts.KeyView{ID: "charge", Title: words.L("To the charger"), Icon: "plug", Tone: parts.Filled})
			case "clean":
				add(parts.KeyView{ID: "bag", Title: words.L("Bag it, sealed"), Icon: "bag"})
			}
			if c := n.d.Check(f); c != nil && c.NeverWord != "" && st.given[f] != c.NeverWord {
				add(parts.KeyView{ID: "never-" + f, Title: words.F("It is %s", c.NeverWord), Second: words.L("nobody waves it past"), Icon: "warn"})
			}
		}
		add(parts.KeyView{ID: "tag", Title: words.L("Tag it, home tagged"), Second: words.L("out of service"), Icon: "tag"})
		if hard == "" {
			add(parts.KeyView{ID: "override", Title: words.L("Officer lets it pass"), Second: words.L("stays not ready"), Icon: "say"})
		} else {
			v.under += words.F(" Nobody may wave %s past.", hard)
		}
	default:
		v.over, v.under = words.L("Not taken"), words.Said(e.Reply.Text)
	}
	add(parts.KeyView{ID: "again", Title: words.L("Answer again"), Icon: "back"})
	keys = append(keys, node{id: "as-is", view: parts.HoldView{ID: "as-is", Title: words.L("Home as it is"), Second: words.L("hold: not ready"), Sure: words.L("As it is")}})
	if len(keys) > 0 {
		if k, ok := keys[0].view.(parts.KeyView); ok {
			k.Tone = parts.Filled
			keys[0].view = k
		}
	}
	out := col(0, node{id: "refused", view: v})
	for len(keys) > 0 {
		k := min(2, len(keys))
		out.kids = append(out.kids, row(look.Floor+4, keys[:k]...))
		keys = keys[k:]
	}
	return out
}

// failing lists the checks of the piece that fail by what was answered, and
// names the first that nobody may wave past.
func (n *now) failing(st *luState, p piece) (failing []string, hard string) {
	for _, a := range p.item.Checks {
		word := st.given[a.Check]
		if word != "" && n.passes(p, a.Check, word) {
			continue
		}
		failing = append(failing, a.Check)
		c := n.d.Check(a.Check)
		if hard == "" && (c == nil || c.Never || c.NeverWord != "" && word == c.NeverWord) {
			hard = a.Check
		}
	}
	return failing, hard
}

// failWords says what to do about each check that fails.
func (n *now) failWords(st *luState, failing []string) string {
	var out []string
	for _, f := range failing {
		if c := n.d.Check(f); c != nil {
			short, _ := askWords(c)
			said := strings.TrimSuffix(short, "?") + ": " + answerWord(st.given[f])
			if st.given[f] == "" {
				said += words.L("no answer")
			}
			out = append(out, said+". "+upper(c.IfItFails)+".")
		}
	}
	return strings.Join(out, " ")
}

// officersView asks which officer lets it pass.
func (n *now) officersView(st *luState, p piece) node {
	failing, _ := n.failing(st, p)
	v := leadView{id: "officers", over: words.L("Which officer lets it pass?"), title: p.item.Short(), under: words.F("Not passed: %s. It stays not ready until it is checked again.", and(failing))}
	out := col(0, node{id: "officers", view: v})
	var keys []node
	for _, own := range []bool{true, false} {
		for _, m := range n.d.Members {
			if m.Officer && m.Agency == n.d.RigAgency(p.item.Rig) && (m.Rig == p.item.Rig) == own && len(keys) < 5 {
				keys = append(keys, keyNode(parts.KeyView{Kind: parts.KindMember, ID: m.ID, Title: m.Name, Second: m.Role, Lay: parts.LayLeft, Role: look.Group}))
			}
		}
	}
	keys = append(keys, keyNode(parts.KeyView{ID: "again", Title: words.L("Nobody does"), Icon: "back", Lay: parts.LayLeft, Role: look.Group}))
	for len(keys) > 0 {
		k := min(2, len(keys))
		out.kids = append(out.kids, row(look.Floor+4, keys[:k]...))
		keys = keys[k:]
	}
	return out
}
