package ui

import (
	"strconv"

	litter "tarpside/model/trail"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
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
		return words.L("not looked at")
	case r.short() > 0:
		return words.F("%d of %d: %d short", r.seen, r.want, r.short())
	case r.short() < 0:
		return words.F("%d of %d: %d too many", r.seen, r.want, -r.short())
	}
	return words.F("%d seen", r.seen)
}

// view is the row in the list.
func (r eyeRow) view(now bool) parts.RowView {
	v := parts.RowView{Kind: parts.KindPiece, ID: r.item, Title: r.name, Second: r.word(), Tone: parts.Quiet, State: "open"}
	if r.kit != "" {
		v.Second = words.F("in %s, %s", r.kit, v.Second)
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
	if t.anyway {
		hand = -1
	}
	var kids []node
	show, at := float32(0), float32(0)
	for i, r := range rows {
		size := float32(look.Floor)
		if r.fixed {
			size = 56
		}
		if i == hand || hand < 0 && show == 0 && r.looked && r.short() != 0 {
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
	lead := leadView{id: "ask", over: words.F("%d of %d, %s", i+1, len(rows), where), title: r.name}
	if r.kit != "" {
		lead.line = words.F("In %s", r.kit)
	}
	later := parts.KeyView{ID: "skip", Title: words.L("Skip"), Second: words.L("later"), Icon: "go", Lay: parts.LayLeft, Role: look.Group}
	if _, ok := t.after(rows, i); !ok {
		later.Off, later.Second = true, words.L("the last one")
	}
	skip := keyNode(later)
	if it := t.n.d.Item(r.item); it != nil && r.want == 1 && it.Quantity == 1 {
		lead.under = words.L("Is it here? Touch it, do not guess.")
		return col(0, node{id: "ask", view: lead},
			row(look.Target, keyNode(parts.KeyView{ID: "not-here", Title: words.L("Not here"), Icon: "cross", Lay: parts.LayCentre, Role: look.Title}),
				keyNode(parts.KeyView{ID: "here", Title: words.L("Here"), Icon: "tick", Tone: parts.Filled, Lay: parts.LayCentre, Role: look.Title})), sized(skip, look.Floor))
	}
	says := leadView{id: "verdict", under: words.L("How many do you see? Count them.")}
	k, err := strconv.Atoi(t.typed)
	if err == nil {
		says.under = words.F("%d seen.", k)
	}
	n := t.n.padNode(lead, t.typed, says, err == nil)
	n.kids[1].kids[1].kids[2] = sized(skip, look.Floor)
	return n
}

// skip turns to the next line that nobody looked at.
func (t *trailScreen) skip(rows []eyeRow) {
	if at := t.inHand(rows); at >= 0 {
		if next, ok := t.after(rows, at); ok {
			t.at, t.typed = next, ""
		}
	}
}

// after is the line to look at when one is skipped: nothing, and true, where
// all were looked at and only that one was to be seen again; false where it is
// the last.
func (t *trailScreen) after(rows []eyeRow, at int) (item string, ok bool) {
	for k := 1; k < len(rows); k++ {
		if r := rows[(at+k)%len(rows)]; !r.looked && !r.fixed {
			return r.item, true
		}
	}
	return "", rows[at].looked
}

// checkView is the check at the rig: a bag that looks full is not a complete
// bag.
func (t *trailScreen) checkView() node {
	rows := t.eyeRows()
	if len(rows) == 0 {
		return col(0, sized(node{id: "empty", view: leadView{id: "empty", title: words.L("Nothing to look at"), under: words.L("Nothing goes along yet. See Load.")}}, 130), node{})
	}
	i := t.inHand(rows)
	if i < 0 || t.anyway {
		return row(0, t.eyesList(), wide(t.checkDone(rows), 1.7))
	}
	left := t.eyesList()
	if len(t.n.walkActs(&t.p, &t.v)) > 0 {
		anyway := parts.KeyView{ID: "anyway", Title: words.L("Not checked yet"), Second: words.L("walk all the same?"), Icon: "boots", Lay: parts.LayLeft, Role: look.Group}
		if t.starting() {
			anyway.Title, anyway.Icon, anyway.Tone = words.L("Not verified"), "warn", parts.Alarm
		}
		left = col(0, left, sized(keyNode(anyway), look.Floor))
	}
	return row(0, left, wide(t.askEyes(rows, i, words.L("both look")), 1.7))
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
		lead.title, lead.under = words.L("Verified"), words.F("%d of %d lines seen by two people.", v.seen, len(rows))
	case unseen > 0:
		lead.tone, lead.icon, lead.over = parts.Alarm, "warn", words.L("Not verified")
		lead.title, lead.under = words.N("%d line not looked at", "%d lines not looked at", unseen), words.L("A bag that looks full is not a complete bag.")
	case differ > 0:
		lead.tone, lead.icon, lead.over = parts.Alarm, "warn", words.L("Not verified")
		lead.title, lead.under = differTitle(v.diffs), words.L("Put in what is short, count it again, or walk with it known.")
	default:
		lead.tone, lead.icon, lead.over, lead.title, lead.under = parts.Alarm, "warn", words.L("Not verified"), words.L("Who looked?"), words.L("Two different people, by name.")
	}
	if len(v.left) > 0 {
		lead.under += words.F(" Left of the musts: %s.", differWords(v.left))
	}
	if v.needls > 0 {
		lead.under += words.F(" %s with the party that the list does not ask for.", lbs(v.needls))
	}
	ready := unseen+differ == 0
	who := row(look.Target, t.lookerKey("first", words.L("First pair of eyes"), t.p.First, ready && t.p.First == ""),
		t.lookerKey("second", words.L("Second pair"), t.p.Second, ready && t.p.First != "" && t.p.Second == ""))
	return col(0, append([]node{upTo(node{id: "verified", view: lead}, 190), {}, who}, t.startKeys()...)...)
}

// lookerKey names one who looked; next is the key most likely touched next.
func (t *trailScreen) lookerKey(id, title, who string, next bool) node {
	v := parts.KeyView{ID: id, Title: title, Second: words.L("touch for a name"), Icon: "one", Lay: parts.LayLeft, Role: look.Group}
	if next {
		v.Tone = parts.Filled
	}
	if who != "" {
		v.Title, v.Second, v.Tone, v.State = t.n.walkerName(who), low(title), parts.Live, "chosen"
	}
	return keyNode(v)
}

// whyAnyway are the reasons to walk with a load that is not verified.
var whyAnyway = []struct{ id, title string }{{"why-urgent", words.K("It cannot wait")}, {"why-known", words.K("Known to be short")}}

// startKeys log that the load walks.
func (t *trailScreen) startKeys() []node {
	k := len(t.n.walkActs(&t.p, &t.v))
	where := words.F("to %s", t.n.placeName(t.v.at))
	start := parts.KeyView{ID: "walk", Title: words.L("Walk with it"), Second: words.F("%s %s in the log", words.N("%d line", "%d lines", k), where), Icon: "boots", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Title}
	switch {
	case k == 0 && t.v.away > 0:
		start.Title, start.Second, start.Off, start.Tone = words.L("It has walked"), words.F("the log has it at %s", t.n.placeName(t.v.at)), true, parts.Usual
	case k == 0:
		start.Second, start.Off, start.Tone = words.L("nothing of the list is here to take"), true, parts.Usual
	case t.v.sure:
	case t.anyway && t.p.First == "":
		start.Title, start.Second, start.Off, start.Tone = words.L("Walk unverified"), words.L("who decides? Touch the first name"), true, parts.Usual
	case t.anyway:
		var keys []node
		for _, w := range whyAnyway {
			keys = append(keys, keyNode(parts.KeyView{ID: w.id, Title: words.L(w.title), Second: words.L("walk, and log why"), Icon: "boots", Tone: parts.Alarm, Lay: parts.LayLeft, Role: look.Group}))
		}
		return []node{row(look.Target, keys...), sized(keyNode(parts.KeyView{ID: "back", Title: words.L("Not now"), Icon: "back", Lay: parts.LayLeft, Role: look.Group}), look.Floor)}
	default:
		start = parts.KeyView{ID: "anyway", Title: words.L("Walk unverified"), Second: words.L("with a name and a reason"), Icon: "warn", Tone: parts.Alarm, Lay: parts.LayLeft, Role: look.Title}
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
	title := words.L("First pair of eyes")
	if which == "second" {
		other, title = t.p.First, words.L("Second pair of eyes")
	}
	var list []choice
	for _, m := range n.crew() {
		if m.ID != other {
			list = append(list, choice{kind: parts.KindMember, id: m.ID, title: m.Name, second: m.Role, mark: n.crewMark(m)})
		}
	}
	t.sh.open(newChooser(t.sh, title, words.L("Two different people look at every line"), list, func(id string) {
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
