package ui

import (
	"fmt"
	"strconv"

	"tarpside/model"
	litter "tarpside/model/trail"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// eyeRow is one line that eyes count, at the rig or on the way.
type eyeRow struct {
	item, name, kit string
	want            int
	seen            int
	looked          bool
	fixed           bool // nothing of it must be there: only told
	words           string
}

// short is how many are wanting; below nought there are too many.
func (r eyeRow) short() int { return r.want - r.seen }

// word is how the count of a line stands. The figure that is asked for is not
// told before somebody looked.
func (r eyeRow) word() string {
	switch {
	case r.fixed:
		return r.words
	case !r.looked:
		return "not looked at"
	case r.short() > 0:
		return fmt.Sprintf("%d of %d: %d short", r.seen, r.want, r.short())
	case r.short() < 0:
		return fmt.Sprintf("%d of %d: %d too many", r.seen, r.want, -r.short())
	}
	return fmt.Sprintf("%d seen", r.seen)
}

// view is the row in the list.
func (r eyeRow) view(now bool) parts.RowView {
	v := parts.RowView{Kind: parts.KindPiece, ID: r.item, Title: r.name, Second: r.word(), Tone: parts.Quiet, State: "open"}
	if r.kit != "" {
		v.Second = "in " + r.kit + ", " + v.Second
	}
	switch {
	case r.fixed:
		v.Off, v.Tone = true, parts.Hole
	case r.looked && r.short() == 0:
		v.Go, v.State = "tick", "seen"
	case r.looked:
		v.Go, v.State, v.Tone = "warn", "short", parts.Alarm
	}
	if now {
		v.Tone = parts.Live
	}
	return v
}

// inHand is the line that is asked now: the one touched, else the first that
// nobody looked at; -1 if all are done.
func (t *trailScreen) inHand(rows []eyeRow) int {
	next := -1
	for i, r := range rows {
		switch {
		case r.fixed:
		case r.item == t.at:
			return i
		case !r.looked && next < 0:
			next = i
		}
	}
	return next
}

// eyeRows are the lines to look at before the walk.
func (t *trailScreen) eyeRows() []eyeRow {
	var out []eyeRow
	for _, e := range t.v.eyes {
		r := eyeRow{item: e.Item, name: e.Name, kit: t.kitName(e.Kit), want: e.N}
		if it := t.n.d.Item(e.Item); it != nil {
			r.name = it.Short()
		}
		r.seen, r.looked = t.p.Rig[e.Item], has(t.p.Rig, e.Item)
		out = append(out, r)
	}
	return out
}

func (t *trailScreen) kitName(kit string) string {
	if it := t.n.d.Item(kit); it != nil {
		return low(it.Short())
	}
	return ""
}

func has(m map[string]int, k string) bool {
	_, ok := m[k]
	return ok
}

// eyesNodes is the list of lines that eyes count.
func (t *trailScreen) eyesNodes(id string, rows []eyeRow) node {
	hand := t.inHand(rows)
	var kids []node
	show, at := float32(0), float32(0)
	for i, r := range rows {
		size := float32(look.Floor)
		if r.fixed {
			size = 56
		}
		if i == hand {
			show = at
		}
		kids = append(kids, sized(node{id: r.item, view: r.view(i == hand)}, size))
		at += size + look.Gap
	}
	return node{id: id, view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap, show: show, upTo: show + look.Floor}, kids: kids}
}

func (t *trailScreen) eyesList() node { return t.eyesNodes("eyes", t.eyeRows()) }

// askEyes asks for one line: here or not for a single piece, else how many,
// from an empty box.
func (t *trailScreen) askEyes(rows []eyeRow, i int, where string) node {
	r := rows[i]
	lead := leadView{id: "ask", over: fmt.Sprintf("%d of %d, %s", i+1, len(rows), where), title: r.name}
	if r.kit != "" {
		lead.line = "In " + r.kit
	}
	skip := keyNode(parts.KeyView{ID: "skip", Title: "Skip", Second: "later", Icon: "go", Lay: parts.LayLeft, Role: look.Group})
	if it := t.n.d.Item(r.item); it != nil && r.want == 1 && it.Quantity == 1 {
		lead.under = "Is it here? Touch it, do not guess."
		return col(0, node{id: "ask", view: lead},
			row(look.Target, keyNode(parts.KeyView{ID: "not-here", Title: "Not here", Icon: "cross", Lay: parts.LayCentre, Role: look.Title}),
				keyNode(parts.KeyView{ID: "here", Title: "Here", Icon: "tick", Tone: parts.Filled, Lay: parts.LayCentre, Role: look.Title})), sized(skip, look.Floor))
	}
	says := leadView{id: "verdict", under: "How many do you see? Count them."}
	k, err := strconv.Atoi(t.typed)
	if err == nil {
		says.under = fmt.Sprintf("%d seen.", k)
	}
	n := padNode(lead, t.typed, says, err == nil)
	n.kids[1].kids[1].kids[2] = sized(skip, look.Floor)
	return n
}

// skip turns to the next line that nobody looked at.
func (t *trailScreen) skip(rows []eyeRow) {
	at := t.inHand(rows)
	for k := 1; at >= 0 && k < len(rows); k++ {
		if r := rows[(at+k)%len(rows)]; !r.looked && !r.fixed {
			t.at, t.typed = r.item, ""
			return
		}
	}
}

// checkView is the check at the rig: a bag that looks full is not a complete
// bag.
func (t *trailScreen) checkView() node {
	rows := t.eyeRows()
	if len(rows) == 0 {
		return col(0, sized(node{id: "empty", view: leadView{id: "empty", title: "Nothing to look at", under: "Nothing goes along yet. See Load."}}, 130), node{})
	}
	i := t.inHand(rows)
	if i < 0 || t.anyway {
		return row(0, t.eyesList(), wide(t.checkDone(rows), 1.7))
	}
	left := t.eyesList()
	if len(t.n.walkActs(&t.p, &t.v)) > 0 {
		left = col(0, left, sized(keyNode(parts.KeyView{ID: "anyway", Title: "Not verified", Second: "walk all the same?", Icon: "warn", Tone: parts.Alarm, Lay: parts.LayLeft, Role: look.Group}), look.Floor))
	}
	return row(0, left, wide(t.askEyes(rows, i, "both look"), 1.7))
}

// checkDone is who looked, and the key that starts the walk.
func (t *trailScreen) checkDone(rows []eyeRow) node {
	v := &t.v
	lead := leadView{id: "verified"}
	differ, unseen := 0, 0
	for _, r := range rows {
		switch {
		case !r.looked:
			unseen++
		case r.short() != 0:
			differ++
		}
	}
	switch {
	case v.sure:
		lead.title, lead.under = "Verified", fmt.Sprintf("%d of %d lines seen by two people.", v.seen, len(rows))
	case unseen > 0:
		lead.tone, lead.icon, lead.over = parts.Alarm, "warn", "Not verified"
		lead.title, lead.under = plural(unseen, "line")+" not looked at", "A bag that looks full is not a complete bag."
	case differ > 0:
		lead.tone, lead.icon, lead.over = parts.Alarm, "warn", "Not verified"
		lead.title, lead.under = plural(differ, "line")+" differ", "Put in what is short, count it again, or walk with it known."
		if differ == 1 {
			lead.title = "1 line differs"
		}
	default:
		lead.tone, lead.icon, lead.over, lead.title, lead.under = parts.Alarm, "warn", "Not verified", "Who looked?", "Two different people, by name."
	}
	if len(v.left) > 0 {
		lead.under += " Left of the musts: " + differWords(v.left) + "."
	}
	if v.needls > 0 {
		lead.under += fmt.Sprintf(" %s with the party that the list does not ask for.", lbs(v.needls))
	}
	who := row(look.Target, t.lookerKey("first", "First pair of eyes", t.p.First), t.lookerKey("second", "Second pair", t.p.Second))
	return col(0, append([]node{{id: "verified", view: lead}, who}, t.startKeys()...)...)
}

func (t *trailScreen) lookerKey(id, title, who string) node {
	v := parts.KeyView{ID: id, Title: title, Second: "touch for a name", Icon: "one", Lay: parts.LayLeft, Role: look.Group}
	if who != "" {
		v.Title, v.Second, v.Tone, v.State = t.n.walkerName(who), low(title), parts.Live, "chosen"
	}
	return keyNode(v)
}

// whyAnyway are the reasons to walk with a load that is not verified.
var whyAnyway = []struct{ id, title string }{{"why-urgent", "It cannot wait"}, {"why-known", "Known to be short"}}

// startKeys log that the load walks.
func (t *trailScreen) startKeys() []node {
	k := len(t.n.walkActs(&t.p, &t.v))
	where := "to " + t.n.placeName(t.v.at)
	start := parts.KeyView{ID: "walk", Title: "Walk with it", Second: plural(k, "line") + " " + where + " in the log", Icon: "boots", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Title}
	switch {
	case k == 0 && t.v.away > 0:
		start.Title, start.Second, start.Off, start.Tone = "It has walked", "the log has it "+where, true, parts.Usual
	case k == 0:
		start.Second, start.Off, start.Tone = "nothing of the list is here to take", true, parts.Usual
	case t.v.sure:
	case t.anyway && t.p.First == "":
		start.Title, start.Second, start.Off, start.Tone = "Walk unverified", "who decides? Touch the first name", true, parts.Usual
	case t.anyway:
		var keys []node
		for _, w := range whyAnyway {
			keys = append(keys, keyNode(parts.KeyView{ID: w.id, Title: w.title, Second: "walk, and log why", Icon: "boots", Tone: parts.Alarm, Lay: parts.LayLeft, Role: look.Group}))
		}
		return []node{row(look.Target, keys...), sized(keyNode(parts.KeyView{ID: "back", Title: "Not now", Icon: "back", Lay: parts.LayLeft, Role: look.Group}), look.Floor)}
	default:
		start = parts.KeyView{ID: "anyway", Title: "Walk unverified", Second: "with a name and a reason", Icon: "warn", Tone: parts.Alarm, Lay: parts.LayLeft, Role: look.Title}
	}
	return []node{sized(keyNode(start), look.Target)}
}

// actCheck does an act of the check at the rig.
func (t *trailScreen) actCheck(kind, rest, id string) {
	switch {
	case kind == parts.KindPiece:
		t.at, t.typed, t.anyway = rest, "", false
	case id == "here":
		t.answerRig(1)
	case id == "not-here":
		t.answerRig(0)
	case id == "first" || id == "second":
		t.chooseLooker(id)
	case id == "skip":
		t.skip(t.eyeRows())
	case id == "walk" && t.v.sure:
		t.p.Anyway = ""
		t.walk()
	case id == "anyway":
		t.anyway, t.at = true, ""
	default:
		for _, w := range whyAnyway {
			if w.id == id && t.p.First != "" {
				t.p.Anyway = w.title
				t.walk()
			}
		}
	}
}

// chooseLooker asks who looked. The other one cannot be both.
func (t *trailScreen) chooseLooker(which string) {
	n := t.n
	other := t.p.Second
	title := "First pair of eyes"
	if which == "second" {
		other, title = t.p.First, "Second pair of eyes"
	}
	var list []choice
	for _, m := range n.crew() {
		if m.ID != other {
			list = append(list, choice{kind: parts.KindMember, id: m.ID, title: m.Name, second: m.Role, mark: n.mark(m.Rig)})
		}
	}
	t.sh.open(newChooser(t.sh, title, "Two different people look at every line", list, func(id string) {
		if which == "second" {
			t.p.Second = id
		} else {
			t.p.First = id
		}
		t.keep()
		t.sh.back()
	}))
}

// answerRig keeps what was seen of the line in hand before the walk, and logs
// it.
func (t *trailScreen) answerRig(seen int) {
	rows := t.eyeRows()
	i := t.inHand(rows)
	if i < 0 {
		return
	}
	e := litter.Eye{Item: rows[i].item, Name: rows[i].name, N: rows[i].want}
	t.p.Rig = withOne(t.p.Rig, e.Item, seen)
	t.at, t.typed = "", ""
	t.keep()
	if a, ok := t.n.eyesAct(e, seen); ok {
		t.log(a)
	}
}

// withOne is a map with one more figure; the one given is not changed.
func withOne(m map[string]int, k string, x int) map[string]int {
	out := map[string]int{k: x}
	for i, v := range m {
		if i != k {
			out[i] = v
		}
	}
	return out
}

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
		used = fmt.Sprintf("%d used", x.Used)
	}
	if x.Gave > 0 {
		gave = fmt.Sprintf("%d handed over", x.Gave)
	}
	return joinWords(used, gave)
}

func (t *trailScreen) tallyList() node { return t.eyesNodes("tallies", t.counted().rows) }

// countView is the counts on the way: everything that went in comes back out
// beside a patient.
func (t *trailScreen) countView() node {
	if t.v.away == 0 {
		lead := leadView{id: "empty", title: "Nothing is with the party", under: "When the load walks, it is counted here: at the patient, and once more before the walk back."}
		return col(0, sized(node{id: "empty", view: lead}, 130), node{})
	}
	tab := func(id, title string, on bool, seen map[string]int) node {
		v := parts.KeyView{ID: id, Title: title, Second: "not begun", Lay: parts.LayLeft, Role: look.Group}
		if len(seen) > 0 {
			v.Second = fmt.Sprintf("%d of %d lines", len(seen), t.toCount())
		}
		if on {
			v.Tone, v.State = parts.Live, "here"
		}
		return keyNode(v)
	}
	tabs := row(look.Floor, tab("at-patient", "At the patient", !t.back, t.p.Patient), tab("before-back", "Before the walk back", t.back, t.p.Back))
	c := t.counted()
	side := t.countDone(c)
	if i := t.inHand(c.rows); i >= 0 {
		where := "at the patient"
		if t.back {
			where = "before the walk back"
		}
		side = t.askEyes(c.rows, i, where)
	}
	return row(0, col(0, tabs, t.eyesNodes("tallies", c.rows)), wide(side, 1.3))
}

// toCount is how many lines a count has.
func (t *trailScreen) toCount() int {
	k := 0
	for _, x := range t.v.out {
		if x.Back() > 0 {
			k++
		}
	}
	return k
}

// countDone is what a finished count comes to.
func (t *trailScreen) countDone(c counted) node {
	lead := leadView{id: "counted", title: "Everything is here", under: "Count once more before the walk back: a thing put down beside a patient stays there."}
	next := parts.KeyView{ID: "before-back", Title: "Before the walk back", Icon: "go", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}
	if t.back {
		lead.under = "Everything that walked in walks out. At the rig it goes to the tarp, and Load up asks each piece."
		next = parts.KeyView{ID: "all-back", Title: "All back on the tarp", Second: plural(len(t.n.returnActs(&t.v)), "line"), Icon: "tarp", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}
	}
	keys := []node{sized(keyNode(next), look.Target)}
	if k := len(c.diffs); k > 0 {
		lead.tone, lead.icon, lead.over = parts.Alarm, "warn", "Not everything"
		lead.title, lead.under = plural(k, "line")+" differ", "Look for it here and now, not at the road. Touch a line to count it again."
		if k == 1 {
			d := c.diffs[0]
			lead.title = fmt.Sprintf("%s: %d short", d.Name, d.Short())
			if d.Short() < 0 {
				lead.title = fmt.Sprintf("%s: %d too many", d.Name, -d.Short())
			}
		}
		next.Tone = parts.Usual
		keys = []node{sized(keyNode(parts.KeyView{ID: "look-for-it", Title: "Look for it", Icon: "look", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group}), look.Target), sized(keyNode(next), look.Floor)}
	}
	return col(0, append([]node{{id: "counted", view: lead}}, keys...)...)
}

// actCount does an act of the counts on the way.
func (t *trailScreen) actCount(kind, rest, id string) {
	switch {
	case kind == parts.KindPiece:
		t.at, t.typed = rest, ""
	case id == "here":
		t.answerCount(1)
	case id == "not-here":
		t.answerCount(0)
	case id == "skip":
		t.skip(t.counted().rows)
	case id == "at-patient" || id == "before-back":
		t.back = id == "before-back"
		t.at, t.typed = "", ""
	case id == "look-for-it":
		t.sh.Go(ScreenLookFor)
	case id == "all-back":
		acts := t.n.returnActs(&t.v)
		t.p.Rig, t.p.Patient, t.p.Back, t.p.First, t.p.Second, t.p.Walked = nil, nil, nil, "", "", 0
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
