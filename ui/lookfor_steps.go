package ui

import (
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// A hunt is a line with pieces that nobody can account for, that two people
// say are in different places, or that an officer gave up.
type hunt struct {
	kind string // hunting, disputed or closed
	line int
	n    int // pieces
}

// The kinds of hunt, in the order they are listed.
const (
	hunting  = "looking"
	disputed = "contested"
	closed   = "closed"
)

func (h hunt) id(d *model.Department) string { return h.kind + " " + d.Items[h.line].ID }

// hunts lists what is to be looked for, then what is disputed, then what was
// given up.
func (n *now) hunts() []hunt {
	var out, dis, lost []hunt
	for i := range n.d.Items {
		l := n.s.Line(i)
		missing := l.N(model.Place{Kind: model.Unexplained})
		if missing > 0 {
			out = append(out, hunt{hunting, i, missing})
		} else if l.Contest != nil {
			dis = append(dis, hunt{disputed, i, max(1, l.N(l.Contest.Place))})
		}
		if k := l.N(model.Place{Kind: model.Lost}); k > 0 {
			lost = append(lost, hunt{closed, i, k})
		}
	}
	return slices.Concat(out, dis, lost)
}

// A clue is one thing the log knows about a piece before it was missed.
type clue struct {
	at    int64 // Unix ms
	words string
}

// A trail is what the log knows of a line that is looked for.
type trail struct {
	clues  []clue
	last   model.Place // the last place beyond the rig and the tarp
	lastAt int64
	holder string // the last who had it
	short  *model.Entry
	from   model.Place // where it was counted short
	closed *model.Entry
	looks  []model.Entry // since it was counted short
}

// trail follows a line, and the kit it lay in, through the log.
func (n *now) trail(line int) trail {
	var t trail
	id := n.d.Items[line].ID
	at := n.s.HomeOf(line)
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if !e.Taken() {
			continue
		}
		if e.Verb == model.Look && e.Item == id && t.short != nil {
			t.looks = append(t.looks, *e)
		}
		for _, m := range e.Moves {
			switch {
			case m.Item == id:
				t.follow(n, e, m, "")
				at = m.To
			case n.holds(at, m.Item):
				t.follow(n, e, m, m.Item)
			}
		}
	}
	return t
}

// holds tells whether a place is in the kit, to any depth.
func (n *now) holds(at model.Place, kit string) bool {
	for range len(n.d.Items) {
		if at.Kind != model.InKit {
			return false
		}
		if at.Name == kit {
			return true
		}
		k := n.d.ItemIndex(at.Name)
		if k < 0 {
			return false
		}
		at = n.s.HomeOf(k)
	}
	return false
}

// follow takes one move of the piece, or of the kit that it was in.
func (t *trail) follow(n *now, e *model.Entry, m model.Move, kit string) {
	switch m.To.Kind {
	case model.Unexplained:
		t.short, t.from, t.looks, t.closed = e, m.From, nil, nil
		if len(t.clues) == 0 {
			t.clues = append(t.clues, clue{0, words.L("never logged off the rig")})
		}
		said := words.F("counted %d short", m.N)
		if e.Verb == model.Count {
			said = words.F("counted %d of %d", e.Quantity, e.Quantity+m.N)
		}
		if e.By != "" {
			said += ", " + n.memberName(e.By)
		}
		t.clues = append(t.clues, clue{e.At(), said})
		return
	case model.Lost:
		t.closed = e
		return
	case model.Used:
		return
	case model.Tarp:
		t.clues = append(t.clues, clue{e.At(), ofKit(kit, words.L("on the tarp"), words.L("kit on the tarp"))})
		return
	case model.Home, model.InKit:
		t.clues = append(t.clues, clue{e.At(), ofKit(kit, words.L("back home"), words.L("kit back home"))})
		return
	}
	t.last, t.lastAt, t.holder = m.To, e.At(), e.Holder
	said := n.placeName(m.To)
	if m.To.Kind == model.With || m.To.Kind == model.Riding {
		said = ofKit(kit, words.F("with %s", said), words.F("kit with %s", said))
	} else if kit != "" {
		said = words.F("kit at %s", said)
	}
	if e.Holder != "" {
		said += words.F(", with %s", n.memberName(e.Holder))
	}
	t.clues = append(t.clues, clue{e.At(), said})
}

// ofKit is what happened to a piece, or to the kit that it was in.
func ofKit(kit, piece, inKit string) string {
	if kit != "" {
		return inKit
	}
	return piece
}

// The state of a step of a search.
const (
	stepOpen   = ""
	stepLooked = "looked at"
	stepUnsafe = "not searched"
)

// A step is one place to look in.
type step struct {
	key    string // as it is logged
	title  string
	why    string
	ask    string // the one party to ask, if it is one
	asks   bool   // somebody is asked; nobody walks
	own    bool   // where it was counted short: found there, it was never missing
	state  string
	unsafe string // why nobody looks there
	at     int64  // when it was last looked at or skipped
	nth    int    // in which order
	rank   int    // how it is placed among the open ones by the odds, best first; 0 is before all
	is     func(logged string) bool
}

// steps are the places to look in, with what was looked at since and the
// order that the odds give. Looks before entry number from no longer close a
// step; the odds still know of them.
func (n *now) steps(h hunt, t trail, from int) []step {
	it := &n.d.Items[h.line]
	rig := n.rigName(it.Rig)
	out := []step{
		{key: "its own place, counted again", title: words.F("Count it again: %s", n.countedAt(h.line, t.from)), why: words.L("where it was counted short. Lift what lies over it"), own: true},
		{key: "other slots of " + it.Rig, title: words.F("Other slots of %s", rig), why: words.L("the shelves beside and behind its own")},
	}
	if t.last.Kind == model.At {
		out = append(out, step{key: n.placeName(t.last), title: n.placeTitle(t.last), why: words.F("last logged place, %s%s", n.clock(t.lastAt), n.lightWords(it)),
			is: func(s string) bool { return !strings.HasPrefix(s, "ask") && hasWord(s, n.placeName(t.last)) }})
	}
	out = append(out, step{key: "the tarp and under it", title: words.L("The tarp, and under it"), why: words.L("lift the edges, and every cover on it")})
	if m := n.d.Member(t.holder); m != nil && n.d.Agency(m.Rig) == nil {
		out = append(out, step{key: "ask the last holder, " + m.Name, title: words.F("Ask %s, %s, by radio", m.Name, m.Rig), why: words.L("last holder. Pockets, belt, cab"), asks: true,
			is: func(s string) bool { return strings.HasPrefix(s, "ask the last holder") }})
	}
	out = append(out, n.asked(it)...)
	out = append(out, step{key: "under vehicles and debris", title: words.L("Under vehicles and debris"), why: words.L("only when an officer says it is safe there")})
	out = n.looked(out, t.looks, from)
	n.byOdds(h, t, out)
	return out
}

// asked are the steps that ask rigs and agencies: those that already have
// pieces of the same rig first.
func (n *now) asked(it *model.Item) []step {
	var out []step
	var rest []string
	var rigs []string
	for _, r := range n.present() {
		if r != it.Rig {
			rigs = append(rigs, n.rigName(r))
		}
	}
	if len(rigs) > 0 {
		out = append(out, step{key: "ask the other rigs", title: words.F("Ask %s", listed(rigs)), why: words.L("other rigs here: let them look in their own slots"), asks: true})
	}
	for _, a := range n.agenciesOfScene() {
		if has := n.siblings(it.Rig, a); len(has) > 0 {
			out = append(out, step{key: "ask " + a, title: words.F("Ask %s", n.partyName(a)), why: words.F("went there: %s", few(has, 3)), ask: a, asks: true,
				is: func(s string) bool { return strings.HasPrefix(s, "ask") && hasWord(s, n.partyName(a)) }})
		} else {
			rest = append(rest, n.partyName(a))
		}
	}
	if len(rest) > 0 {
		out = append(out, step{key: "ask the other agencies", title: words.F("Ask %s", listed(rest)), why: words.L("they were here, and have nothing of this rig in the log"), asks: true})
	}
	return out
}

// agenciesOfScene lists the agencies that were here or have something.
func (n *now) agenciesOfScene() []string {
	var out []string
	for _, a := range n.d.Agencies {
		if slices.Contains(n.scene.Arrived, a.Code) {
			out = append(out, a.Code)
		}
	}
	for _, a := range n.agenciesHere() {
		if !slices.Contains(out, a) {
			out = append(out, a)
		}
	}
	return out
}

// siblings names the pieces of a rig that an agency has.
func (n *now) siblings(rig, agency string) []string {
	var out []string
	for _, r := range n.s.BringBack() {
		if it := &n.d.Items[r.Line]; it.Rig == rig && r.Place == (model.Place{Kind: model.With, Name: agency}) {
			out = append(out, some(it, r.Quantity))
		}
	}
	return out
}

// few joins names, at most so many.
func few(names []string, most int) string {
	if len(names) > most {
		names = append(slices.Clone(names[:most-1]), words.F("%d more", len(names)-most+1))
	}
	return listed(names)
}

// looked marks the steps by what was logged. What was logged in other words
// is a step of its own.
func (n *now) looked(steps []step, looks []model.Entry, from int) []step {
	for k := range looks {
		e := &looks[k]
		if k < from {
			continue
		}
		text, words := lookWords(e.Reading)
		if text == "" {
			continue
		}
		i := slices.IndexFunc(steps, func(s step) bool { return strings.EqualFold(s.key, text) || s.is != nil && s.is(text) })
		if i < 0 {
			steps = append(steps, step{key: text, title: capital(text)})
			i = len(steps) - 1
		}
		s := &steps[i]
		s.at, s.nth = e.At(), k+1
		switch {
		case slices.Contains(words, "wrong_tap"):
			s.state, s.at, s.nth = stepOpen, 0, 0
		case slices.Contains(words, "skipped=unsafe"):
			s.state, s.unsafe = stepUnsafe, whyWord(words)
		case slices.Contains(words, "skipped=later"):
			s.state = stepOpen
		default:
			s.state = stepLooked
		}
	}
	return steps
}

// lookWords splits what was logged of a look: the step, and the rest.
func lookWords(reading string) (text string, words []string) {
	words = model.Words(reading)
	for _, w := range words {
		if k, v, ok := strings.Cut(w, "="); ok && k == "step" {
			text = v
		}
	}
	return text, words
}

// hasWord tells whether a text has the words in it, whole and in any case.
func hasWord(text, words string) bool {
	clean := func(s string) string { return " " + strings.Join(strings.Fields(fold(s)), " ") + " " }
	return strings.Contains(clean(text), clean(words))
}

// countedAt is where a line was counted short, in words: its own place, or
// wherever it was out, by itself or in its kit.
func (n *now) countedAt(line int, from model.Place) string {
	switch real := n.s.Real(from); {
	case real.Kind == "" || real.Kind == model.Home:
		return n.ownPlace(line)
	case from.Kind == model.InKit:
		return low(n.itemName(from.Name)) + ", " + n.placeName(real)
	default:
		return n.placeName(real)
	}
}

// ownPlace is where a line lives, in words.
func (n *now) ownPlace(line int) string {
	it := &n.d.Items[line]
	where := it.Rig
	if sl := n.d.Slot(it.Slot); sl != nil {
		where = it.Rig + " " + sl.Compartment
	}
	if it.Kit != "" {
		return low(n.itemName(it.Kit)) + ", " + where
	}
	return where
}

// placeTitle is a place of the scene with what it is.
func (n *now) placeTitle(p model.Place) string {
	for _, x := range n.d.Places {
		if x.Place == p.Name {
			return n.placeName(p) + ": " + x.Meaning
		}
	}
	return n.placeName(p)
}

// lightWords says how to look for a piece that is hard to see.
func (n *now) lightWords(it *model.Item) string {
	if it.Small || it.Dark {
		return words.L(". Hold the lantern low")
	}
	return ""
}

// looksLike is what to look for: small or dark, and what is painted on it.
func (n *now) looksLike(it *model.Item) string {
	out := ""
	switch {
	case it.Small && it.Dark:
		out = words.L("Small and dark. ")
	case it.Small:
		out = words.L("Small. ")
	case it.Dark:
		out = words.L("Dark. ")
	}
	if r := n.d.Rig(it.Rig); r != nil && r.MarkWords != "" {
		return out + parts.B(capital(r.MarkWords))
	}
	return strings.TrimSpace(out + it.Mark)
}
