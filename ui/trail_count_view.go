package ui

import (
	"strings"

	"tarpside/model"
	litter "tarpside/model/trail"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// counted is a count on the way: its rows, and where they differ.
type counted struct {
	rows  []eyeRow
	diffs []litter.Difference
}

// counted is the present count of what walked.
func (t *trailScreen) counted() counted {
	seen := t.p.Patient
	if t.back {
		seen = t.p.Back
	}
	known := map[string]int{}
	var out counted
	for _, x := range t.v.out {
		r := eyeRow{item: x.Item, name: x.Name, want: x.Back(), fixed: x.Back() == 0}
		if it := t.n.d.Item(x.Item); it != nil && t.n.s.Real(model.Place{Kind: model.InKit, Name: it.Kit}) == t.v.at {
			r.kit = t.kitName(it.Kit)
		}
		if r.fixed {
			r.words = goneWords(x)
		}
		if k, ok := seen[x.Item]; ok {
			r.seen, r.looked, known[x.Item] = k, true, k
		}
		out.rows = append(out.rows, r)
	}
	out.diffs = litter.CountAt(t.v.out, known)
	return out
}

// goneWords is where pieces went of which none comes back.
func goneWords(x litter.Tally) string {
	used, gave := "", ""
	if x.Used > 0 {
		used = words.F("%d used", x.Used)
	}
	if x.Gave > 0 {
		gave = words.F("%d handed over", x.Gave)
	}
	return joinWords(used, gave)
}

func (t *trailScreen) tallyList() node { return t.eyesNodes("tallies", t.counted().rows) }

// countView is the counts on the way: everything that went in comes back out
// beside a patient.
func (t *trailScreen) countView() node {
	if t.v.away == 0 {
		if t.p.Home > 0 {
			lead := leadView{id: "empty", title: words.L("Back on the tarp"), under: words.F("What the party had went to the tarp at %s. Load up asks each piece what it needs.", t.n.clock(t.p.Home))}
			return col(0, sized(node{id: "empty", view: lead}, 130), node{}, sized(keyNode(parts.KeyView{ID: "load-up", Title: words.L("Load up"), Icon: "load", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Title}), look.Target))
		}
		lead := leadView{id: "empty", title: words.L("Nothing is with the party yet"), under: words.L("The walk starts on 4 Check: two people look at every line, then one touches Walk with it. From then on the load is counted here, at the patient and once more before the walk back.")}
		return col(0, sized(node{id: "empty", view: lead}, 190), node{}, sized(keyNode(t.beforeWalk()), look.Target))
	}
	tab := func(id, title string, on bool, seen map[string]int) node {
		v := parts.KeyView{ID: id, Title: title, Second: words.L("not begun"), Lay: parts.LayLeft, Role: look.Group}
		if len(seen) > 0 {
			v.Second = words.F("%d of %d lines", t.toCount(seen), t.toCount(nil))
		}
		if on {
			v.Tone, v.State = parts.Live, "here"
		}
		return keyNode(v)
	}
	tabs := row(look.Floor, tab("at-patient", words.L("At the patient"), !t.back, t.p.Patient), tab("before-back", words.L("Before the walk back"), t.back, t.p.Back))
	c := t.counted()
	side := t.countDone(c)
	if i := t.inHand(c.rows); i >= 0 {
		where := words.L("at the patient")
		if t.back {
			where = words.L("before the walk back")
		}
		side = t.askEyes(c.rows, i, where)
	}
	return row(0, col(0, tabs, t.eyesNodes("tallies", c.rows)), wide(side, 1.5))
}

// beforeWalk is the key to the step that the walk waits for.
func (t *trailScreen) beforeWalk() parts.KeyView {
	v := parts.KeyView{ID: "to-" + string(trailCheck), Title: words.L("Next: 4 Check"), Second: words.L("two look at every line"), Icon: "go", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Title}
	switch {
	case t.p.Trip.Season == "":
		v.ID, v.Title, v.Second = "to-"+string(trailTrip), words.L("Next: 1 Trip"), words.L("say the season; the list follows")
	case len(t.p.People) == 0:
		v.ID, v.Title, v.Second = "to-"+string(trailPeople), words.L("Next: 3 People"), words.L("say who walks")
	case t.v.sure:
		v.Second = words.L("verified: touch Walk with it")
	}
	return v
}

// toCount is how many lines there are to count: of those that were seen, or of
// all. A line that was used up meanwhile is neither.
func (t *trailScreen) toCount(seen map[string]int) int {
	k := 0
	for _, x := range t.v.out {
		if x.Back() > 0 && (seen == nil || has(seen, x.Item)) {
			k++
		}
	}
	return k
}

// countDone is what a finished count comes to.
func (t *trailScreen) countDone(c counted) node {
	lead := leadView{id: "counted", title: words.L("Everything is here"), under: words.L("Count once more before the walk back: a thing put down beside a patient stays there.")}
	next := parts.KeyView{ID: "count-again", Title: words.L("Before the walk back"), Icon: "go", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}
	if t.back {
		lead.under = words.L("Everything that walked in walks out. At the rig it goes to the tarp, and Load up asks each piece.")
		next = parts.KeyView{ID: "all-back", Title: words.L("All back on the tarp"), Second: words.N("%d line", "%d lines", len(t.n.returnActs(&t.v))), Icon: "tarp", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}
	}
	keys := []node{sized(keyNode(next), look.Target)}
	if len(c.diffs) > 0 {
		lead.tone, lead.icon, lead.over = parts.Alarm, "warn", words.L("Not everything")
		lead.title, lead.under = differTitle(c.diffs), words.L("Look for it here and now, not at the road. Touch a line to count it again.")
		next.Tone = parts.Usual
		keys = []node{sized(keyNode(parts.KeyView{ID: "look-for-it", Title: words.L("Look for it"), Icon: "look", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}), look.Target), sized(keyNode(next), look.Floor)}
	}
	return col(0, append([]node{sized(node{id: "counted", view: lead}, 200), {}}, keys...)...)
}

// differTitle names the one line that differs, or says how many do.
func differTitle(diffs []litter.Difference) string {
	if len(diffs) != 1 {
		return words.F("%s differ", words.N("%d line", "%d lines", len(diffs)))
	}
	d := diffs[0]
	if d.Short() < 0 {
		return words.F("%s: %d too many", d.Name, -d.Short())
	}
	return words.F("%s: %d short", d.Name, d.Short())
}

// actCount does an act of the counts on the way.
func (t *trailScreen) actCount(kind, rest, id string) {
	step, to := strings.CutPrefix(id, "to-")
	switch {
	case to:
		t.step = trailStep(step)
	case kind == parts.KindPiece:
		t.at, t.typed = rest, ""
	case id == "here":
		t.answerCount(1)
	case id == "not-here":
		t.answerCount(0)
	case id == "skip":
		t.skip(t.counted().rows)
	case id == "at-patient" || id == "before-back" || id == "count-again":
		t.back = id != "at-patient"
		t.at, t.typed = "", ""
	case id == "look-for-it":
		t.sh.Go(ScreenLookFor)
	case id == "load-up":
		t.sh.Go(ScreenLoadUp)
	case id == "all-back":
		acts := t.n.returnActs(&t.v)
		t.p.Rig, t.p.Patient, t.p.Back, t.p.First, t.p.Second, t.p.Walked = nil, nil, nil, "", "", 0
		t.p.Home = t.n.at.UnixMilli()
		t.back = false
		t.keep()
		t.log(acts...)
	}
}

// answerCount keeps what was seen of the line in hand on the way, and logs the
// count.
func (t *trailScreen) answerCount(seen int) {
	rows := t.counted().rows
	i := t.inHand(rows)
	if i < 0 {
		return
	}
	item := rows[i].item
	if t.back {
		t.p.Back = withOne(t.p.Back, item, seen)
	} else {
		t.p.Patient = withOne(t.p.Patient, item, seen)
	}
	t.at, t.typed = "", ""
	t.keep()
	if a, ok := t.n.countAct(&t.v, item, seen); ok {
		t.log(a)
	}
}
