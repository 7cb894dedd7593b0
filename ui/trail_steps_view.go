package ui

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/sum"
	litter "tarpside/model/trail"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// leaveAnswer is the proposal of what to leave, as a figure.
func leaveAnswer(v *trailView) sum.Answer { return litter.Leaving(v.drops, v.over) }

// view is the whole screen: the steps, the weight, the present step.
func (t *trailScreen) view() node {
	how := sized(keyNode(howKey("how-weight")), look.Target)
	kids := []node{row(look.Floor, node{id: "weight", view: t.weight()}, how)}
	if s, ok := t.reply(); ok {
		kids = append(kids, sized(node{id: "reply", view: s}, look.Floor), t.list())
	} else {
		kids = append(kids, t.stepView())
	}
	return row(0, t.stepKeys(), col(0, kids...))
}

// reply is a refusal, or what kept an act from the log.
func (t *trailScreen) reply() (parts.StripView, bool) {
	s := t.sh.said
	if s == nil {
		return parts.StripView{}, false
	}
	v, ok := t.n.answer(s)
	if !ok || v.Tone != parts.StripRefused && v.Tone != parts.StripWrong {
		return parts.StripView{}, false
	}
	v.Keys = [2]parts.StripKey{{ID: "seen", Title: words.L("Seen")}}
	return v, true
}

// stepView is the present step.
func (t *trailScreen) stepView() node {
	switch t.step {
	case trailLoad:
		return t.loadView()
	case trailPeople:
		return t.peopleView()
	case trailCheck:
		return t.checkView()
	case trailCarry:
		return t.carryView()
	case trailCount:
		return t.countView()
	}
	return t.tripView()
}

// list is what stands beside a refusal.
func (t *trailScreen) list() node {
	switch t.step {
	case trailCheck:
		return t.eyesList()
	case trailCount:
		return t.tallyList()
	}
	return node{}
}

// stepKeys are the steps, each with how far it is.
func (t *trailScreen) stepKeys() node {
	var kids []node
	for _, s := range []struct {
		step  trailStep
		title string
	}{{trailTrip, words.L("1 Trip")}, {trailLoad, words.L("2 Load")}, {trailPeople, words.L("3 People")}, {trailCheck, words.L("4 Check")}, {trailCarry, words.L("5 Carry")}, {trailCount, words.L("6 Count")}} {
		said, alarm := t.stepWords(s.step)
		v := parts.KeyView{ID: "step-" + string(s.step), Title: s.title, Second: said, Lay: parts.LayLeft, Role: look.Group}
		if alarm {
			v.Tone, v.State = parts.Alarm, "alarm"
		}
		if s.step == t.step {
			v.Tone, v.State = parts.Live, "here"
		}
		kids = append(kids, keyNode(v))
	}
	return col(156, kids...)
}

// stepWords is how far a step is, and whether that is an alarm.
func (t *trailScreen) stepWords(s trailStep) (said string, alarm bool) {
	v := &t.v
	switch s {
	case trailTrip:
		if t.p.Trip.Season == "" {
			return words.L("season?"), true
		}
		return string(t.p.Trip.Season), false
	case trailLoad:
		k := 0
		for _, l := range v.lines {
			if l.Goes() {
				k++
			}
		}
		return words.N("%d line", "%d lines", k), v.load.Over() > 0 && len(t.p.People) > 0
	case trailPeople:
		if len(t.p.People) == 0 {
			return words.L("nobody yet"), false
		}
		return words.F("%d walk", len(t.p.People)), false
	case trailCheck:
		switch {
		case v.sure:
			return words.L("verified"), false
		case v.seen == 0 && !t.starting():
			return words.L("not checked yet"), false
		case v.seen == 0:
			return words.L("not done"), true
		}
		return words.F("%d of %d", v.seen, len(v.eyes)), true
	case trailCarry:
		return words.F("%d people", t.p.Trip.Crew().All), false
	}
	if v.away == 0 {
		return words.L("nothing out"), false
	}
	c := t.counted()
	left := 0
	for _, r := range c.rows {
		if !r.fixed && !r.looked {
			left++
		}
	}
	switch {
	case left > 0:
		return words.F("%d to count", left), true
	case len(c.diffs) > 0:
		return words.F("%d not right", len(c.diffs)), true
	}
	return words.L("all here"), false
}

// starting tells whether a load is really being started: somebody walks, a line
// was looked at, or pieces are with the party. Before that an open check is no
// alarm.
func (t *trailScreen) starting() bool {
	return t.v.away > 0 || t.v.seen > 0 || len(t.p.People) > 0 && t.p.Home == 0
}

// carryView is the figures of the walk; a touch on one shows how it is got.
func (t *trailScreen) carryView() node {
	var keys []node
	role := look.Place
	if t.n.narrow() {
		role = look.Screen
	}
	for _, f := range t.n.carryFigures(&t.p, &t.v) {
		v := parts.KeyView{ID: f.id, Title: f.title, Second: f.words, Icon: "unknown", Lay: parts.LayLeft, Role: role}
		if m := fromMemory(f.a); m != "" {
			v.Second = sentences(v.Second, capital(m))
		}
		keys = append(keys, keyNode(v))
	}
	return col(0, inCells(keys, 2, 0)...)
}

// needWords are the headings of the list.
var needWords = map[litter.Need]string{litter.Must: words.K("Must"), litter.Should: words.K("Should"), litter.Ask: words.K("Ask first"), litter.If: words.K("If needed"), litter.Stays: words.K("Stays on the rig")}

// loadView is the list by need, and beside it the line in hand or what could
// stay.
func (t *trailScreen) loadView() node {
	n, v := t.n, &t.v
	if v.list == "" || len(v.lines) == 0 {
		return t.chooseList()
	}
	var rows []node
	last, show, at := litter.Need(-1), float32(0), float32(0)
	add := func(r node) { rows, at = append(rows, r), at+r.size+look.Gap }
	for _, i := range byNeed(v.lines) {
		l := v.lines[i]
		need := l.Need
		if l.N == 0 {
			need = litter.Stays
		}
		if need != last {
			last = need
			id := "need-" + need.String()
			add(sized(node{id: id, view: parts.RowView{ID: id, Title: words.L(needWords[need]), Right: needWeight(v.lines, need), Off: true, Tone: parts.Usual}}, 48))
		}
		r := n.loadRow(l, v.at)
		if l.Item == t.chosen {
			r.Tone, show = parts.Live, at
		}
		high := float32(look.Floor)
		if len(r.Second) > 56 {
			high = look.Target
		}
		add(sized(node{id: l.Item, view: r}, high))
	}
	left := node{id: "load", view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap, show: show, upTo: show + look.Floor}, kids: rows}
	right := t.leaveSide()
	if i := slices.IndexFunc(v.lines, func(l trailLine) bool { return l.Item == t.chosen }); i >= 0 {
		right = t.lineSide(v.lines[i], v.asked[i])
	}
	return row(0, wide(left, 1.5), wide(right, 1))
}

// byNeed is the order of the list: what goes by need, then what stays.
func byNeed(lines []trailLine) []int {
	var goes, stays []int
	for i, l := range lines {
		if l.Goes() {
			goes = append(goes, i)
		} else {
			stays = append(stays, i)
		}
	}
	slices.SortStableFunc(goes, func(a, b int) int { return int(lines[b].Need) - int(lines[a].Need) })
	return append(goes, stays...)
}

// needWeight is what goes along of a need.
func needWeight(lines []trailLine, need litter.Need) string {
	lb, k := 0.0, 0
	for _, l := range lines {
		if l.Goes() && l.Need == need {
			lb, k = lb+l.Total(), k+1
		}
		if !l.Goes() && need == litter.Stays {
			k++
		}
	}
	if need == litter.Stays {
		return words.N("%d line", "%d lines", k)
	}
	return words.N("%d line", "%d lines", k) + ", " + lbs(lb)
}

// loadRow is a line of the list; at is the place of the party.
func (n *now) loadRow(l trailLine, at model.Place) parts.RowView {
	first, _, _ := strings.Cut(l.Why, "; ")
	why := parts.Or(words.Said(l.Why), words.Said(first))
	v := parts.RowView{Kind: parts.KindPiece, ID: l.Item, Mark: n.mark(l.Rig), Title: n.lineWords(l, l.N), Second: why, Right: lbs(l.Total()), Tone: parts.Quiet, Go: "tick", State: l.Need.String()}
	if l.Guessed {
		v.Right = words.F("about %s", v.Right)
	}
	switch {
	case !l.Goes():
		v.Tone, v.Go, v.Right, v.Title, v.State = parts.Hole, "", "", l.Name, "stays"
		if l.Line >= 0 {
			v.Title = n.d.Items[l.Line].Short()
		}
	case l.Line < 0:
		v.Second = words.F("not in the inventory: %s", why)
	case l.There < l.N && n.s.Line(l.Line).N(at) < l.N:
		v.Second = words.F("only %d ready: %s", l.There, why)
	}
	return v
}

// leaveSide says whether the load fits, and what to leave where it does not.
func (t *trailScreen) leaveSide() node {
	v := &t.v
	lead := leadView{id: "fits"}
	var kids, keys []node
	switch {
	case t.p.Trip.Season == "":
		lead.tone, lead.icon, lead.over, lead.title = parts.Alarm, "warn", words.L("Ask"), words.L("Which season?")
		lead.under = words.L("Touch it under Trip: some lines go with it.")
	case len(t.p.People) == 0:
		lead.title, lead.under = words.L("Nobody walks yet"), words.L("Touch who walks under People. Without them there is no limit.")
	case v.load.Over() > 0:
		lead.tone, lead.icon, lead.over = parts.Alarm, "warn", words.L("Too heavy")
		lead.title = words.F("Over by %d lb", litter.UpLb(v.load.Over()))
		lead.under = words.L("What is needed least could stay:")
		if v.over > 0 {
			lead.under = words.F("Leaving all this is still %d lb too much: more people, or a second walk.", litter.UpLb(v.over))
		}
		kids, keys = t.dropRows()
	default:
		lead.title = words.F("It fits: %d lb to spare", litter.DownLb(v.load.Limit-v.load.Lb))
		lead.under = words.L("Thirty needless pounds are a failure as much as a piece left behind (common practice).")
	}
	if len(t.p.Chosen) > 0 {
		keys = append(keys, sized(keyNode(parts.KeyView{ID: "as-listed", Title: words.L("As listed"), Second: words.L("forget what was changed by hand"), Icon: "undo", Lay: parts.LayLeft, Role: look.Group}), look.Floor))
	}
	if len(v.left) > 0 {
		lead.tone, lead.icon, lead.over = parts.Alarm, "warn", words.L("A must is left")
		lead.under = words.F("%s left of the musts.", capital(differWords(v.left)))
	} else if v.extra > 0 {
		lead.under = words.F("%s of it the list does not ask for. %s", lbs(v.extra), lead.under)
	}
	lead.line = t.n.notHere(v.lines, v.at)
	if kids == nil {
		kids = t.barRows()
	}
	out := []node{sized(node{id: "fits", view: lead}, 190), {id: "drops", view: listOf{panel: parts.PanelView{Snug: true}, gap: 2}, kids: kids}}
	return col(0, append(out, keys...)...)
}

// notHere names the rigs that lines would come from and that nobody logged as
// here.
func (n *now) notHere(lines []trailLine, at model.Place) string {
	here := n.present()
	var away []string
	for _, l := range lines {
		if l.Goes() && l.Line >= 0 && n.s.Line(l.Line).N(at) == 0 && !slices.Contains(here, l.Rig) && !slices.Contains(away, n.rigName(l.Rig)) {
			away = append(away, n.rigName(l.Rig))
		}
	}
	if len(away) == 0 {
		return ""
	}
	return words.F("Not logged as here: %s.", listed(away))
}

// differWords are lines of which pieces are wanting.
func differWords(diffs []litter.Difference) string {
	var out []string
	for _, d := range diffs {
		out = append(out, fmt.Sprintf("%d %s", d.Short(), low(d.Name)))
	}
	return few(out, 3)
}

// barRows say what the weight bar is made of.
func (t *trailScreen) barRows() []node {
	v := t.weight()
	var out []node
	for _, r := range []struct {
		id, title string
		lb        float64
	}{{"must", words.L("Must"), v.Must}, {"should", words.L("Should"), v.Should}, {"if", words.L("If needed"), v.Maybe}} {
		out = append(out, sized(node{id: "bar-" + r.id, view: parts.RowView{ID: "bar-" + r.id, Title: r.title, Right: lbs(r.lb), Off: true, Tone: parts.Usual}}, 52))
	}
	return out
}

// dropRows are the pieces that could stay, and the keys that leave them.
func (t *trailScreen) dropRows() (rows, keys []node) {
	for _, d := range t.v.drops {
		l := t.v.lines[d.Line]
		v := parts.RowView{ID: "drop", Title: t.n.lineWords(l, d.N), Second: low(words.L(needWords[l.Need])), Right: lbs(d.Lb), Off: true, Tone: parts.Usual}
		rows = append(rows, sized(node{id: "drop-" + l.Item, view: v}, 64))
	}
	if len(rows) == 0 {
		return nil, nil
	}
	leave := parts.KeyView{ID: "leave-these", Title: words.L("Leave these"), Second: words.F("%d lb less", litter.DownLb(leaveAnswer(&t.v).Value)), Icon: "leave-down", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}
	return rows, []node{row(look.Floor, keyNode(leave), sized(keyNode(howKey("how-leave")), look.Target))}
}

// lineSide is the line in hand: why, what it weighs, where it is, and how many
// go.
func (t *trailScreen) lineSide(l, asked trailLine) node {
	lead := leadView{id: "line", over: words.L(needWords[l.Need]), title: l.Name, line: words.F("%s each", lbs(l.Lb)), under: capital(words.Said(l.Why))}
	if l.N > 1 || l.N == 0 && asked.N > 1 {
		lead.line = words.F("%d x %s", l.N, lbs(l.Lb))
	}
	if l.Guessed {
		lead.line += words.L(", a guess")
	}
	if l.Line >= 0 {
		where, _ := t.n.realWords(l.Line)
		lead.title = t.n.d.Items[l.Line].Short()
		lead.line += ". " + capital(where)
	}
	var keys []node
	switch {
	case t.sure == l.Item:
		lead.tone, lead.icon, lead.over = parts.Alarm, "warn", words.L("It is a must")
		all := words.L("Leave it all the same")
		if t.sureN > 0 {
			all = words.F("Only %d all the same", t.sureN)
		}
		keep := parts.KeyView{ID: "keep", Title: words.L("Keep it"), Second: words.L("as the list says"), Icon: "back", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}
		if l.N > 1 {
			keep.Title = words.F("Keep all %d", l.N)
		}
		keys = append(keys, node{}, sized(keyNode(keep), look.Target),
			sized(keyNode(parts.KeyView{ID: "all-same", Title: all, Icon: "warn", Tone: parts.Alarm, Lay: parts.LayLeft, Role: look.Group}), look.Target))
	case l.Goes():
		keys = append(keys, sized(keyNode(parts.KeyView{ID: "leave", Title: words.L("Leave it"), Second: words.L("it stays on the rig"), Icon: "leave-down", Lay: parts.LayLeft, Role: look.Group}), look.Target))
	default:
		keys = append(keys, sized(keyNode(parts.KeyView{ID: "take", Title: words.L("Take it"), Icon: "plus", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}), look.Target))
	}
	if l.Line >= 0 && t.n.d.Items[l.Line].Quantity > 1 && l.Goes() && t.sure != l.Item {
		keys = append(keys, row(look.Target, keyNode(parts.KeyView{ID: "fewer", Title: words.L("One fewer"), Icon: "minus", Lay: parts.LayStack, Role: look.Group}),
			keyNode(parts.KeyView{ID: "more", Title: words.L("One more"), Icon: "plus", Lay: parts.LayStack, Role: look.Group})))
	}
	head := node{id: "line", view: lead}
	if t.sure == l.Item { // no more alarm than its words need
		head = upTo(head, 240)
	}
	return col(0, append([]node{head}, keys...)...)
}
