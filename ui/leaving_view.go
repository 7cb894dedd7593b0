package ui

import (
	"cmp"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/rundown"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// leavingView is the last look of a rig and its open list, as values.
type leavingView struct {
	Rig, Name string
	Looks     []lookView
	Groups    []openGroup
	Lines     int // open
	StillOut  int // of them on the tarp or at places
	Carried   []carriedView
	CarriedN  int // lines carried for others
	Tagged    []string
	Sent      sentView
	Swap      string // likely swaps and pieces too many, in one line
	Unseen    []string
	LastLook  string // when something was looked at last
	Left      bool
	LeftAt    string
	LeftBy    string
	Others    int // rigs that are still here
}

// lookView is one word of the walk round the rig.
type lookView struct {
	ID, Title string // "look-doors", "Doors"
	Says      string // what should be seen
	Wrong     bool   // the log says that it is not so
	Seen      bool
}

// openGroup is open lines by with whom or where they are.
type openGroup struct {
	Icon, Title, Note string
	Lines             []string
	Alarm             bool
}

// carriedView is what rides on the rig for another one.
type carriedView struct {
	Mark  parts.MarkView
	Owner string
	Names []string
}

// looks are the words of the walk round, in their order.
var looks = []struct{ id, title, says string }{
	{"look-doors", words.K("Doors"), words.K("latched")}, {"look-tailboard", words.K("Tailboard"), words.K("bare")}, {"look-roof", words.K("Roof"), words.K("boxes shut")},
	{"look-chocks", words.K("Chocks"), ""}, {"look-cones", words.K("Cones"), ""}, {"look-tarp", words.K("Tarp"), ""}, {"look-ground", words.K("Ground"), words.K("under it")},
}

// leavingOf makes the view of a rig; seen says when each word was looked at.
func (n *now) leavingOf(rig string, seen map[string]int64) leavingView {
	v := leavingView{Rig: rig, Name: n.rigName(rig), Sent: n.sent(rig), Swap: n.swaps(rig)}
	n.lookViews(&v, seen)
	n.openGroups(&v)
	n.carried(&v)
	for i := range n.d.Items {
		it, l := &n.d.Items[i], n.s.Line(i)
		if it.Rig == rig && l.TaggedHome > 0 && n.s.Aboard(i) {
			v.Tagged = append(v.Tagged, some(it, l.TaggedHome)+tagWords(l.TagWords))
		}
	}
	for _, r := range n.present() {
		if r != rig && n.atScene(r) {
			v.Others++
		}
	}
	v.Left = slices.Contains(n.scene.Left, rig)
	for i := range n.pic.Entries {
		if e := &n.pic.Entries[i]; e.Verb == model.Leave && e.Rig == rig && e.Scene == n.scene.ID && e.Taken() {
			v.LeftAt, v.LeftBy = n.clock(e.At()), n.memberFull(e.By)
		}
	}
	return v
}

// tagWords is the fault of a tag where it is a figure: " 600 psi".
func tagWords(words string) string {
	check, word, ok := strings.Cut(words, "=")
	if !ok || strings.Trim(word, "0123456789.") != "" {
		return ""
	}
	return " " + gaugeWord(model.Answer{Check: check, Word: word})
}

func (n *now) lookViews(v *leavingView, seen map[string]int64) {
	var last int64
	for _, w := range looks {
		k := lookView{ID: w.id, Title: words.L(w.title), Says: words.L(w.says), Seen: seen[w.id] > 0}
		switch w.id {
		case "look-chocks":
			k.Says, k.Wrong = n.lookLines(v.Rig, wheelChock)
		case "look-cones":
			k.Says, k.Wrong = n.lookLines(v.Rig, func(it *model.Item) bool { return strings.Contains(strings.ToLower(it.Name), "cone") })
		case "look-roof":
			k.Says = parts.Or(k.Says, words.L("shut"))
		case "look-tarp":
			k.Says, k.Wrong = n.lookLines(v.Rig, stagingTarp)
		}
		if !k.Seen {
			v.Unseen = append(v.Unseen, low(k.Title))
		}
		last = max(last, seen[w.id])
		v.Looks = append(v.Looks, k)
	}
	if last > 0 {
		v.LastLook = n.clock(last)
	}
}

// lookLines says in two words what the log has of some lines of a rig, with
// what rides on it for others.
func (n *now) lookLines(rig string, want func(*model.Item) bool) (says string, wrong bool) {
	total, home, riding, lent, out := 0, 0, 0, 0, 0
	for i := range n.d.Items {
		it, l := &n.d.Items[i], n.s.Line(i)
		if !want(it) {
			continue
		}
		riding += l.N(model.Place{Kind: model.Riding, Name: rig})
		if it.Rig != rig {
			continue
		}
		total += it.Quantity
		for _, st := range l.Stacks {
			switch n.s.Real(st.Place).Kind {
			case model.Home:
				home += st.N
			case model.With, model.Riding:
				lent += st.N
			case model.Used, model.Lost:
			default:
				out += st.N
			}
		}
	}
	switch {
	case out > 0 && total == 1:
		return words.L("still out"), true
	case out > 0:
		return words.F("%d still out", out), true
	case lent > 0:
		return words.F("%d on loan", lent), false
	case home+riding == 0:
		return parts.Or(words.L("none listed"), words.L("none")), false
	case total == 1:
		return words.L("aboard"), false
	}
	return words.F("%d aboard", home+riding), false
}

// openGroups puts the open lines into groups: what nobody can explain, what
// is still out, with whom the rest is, what is not ready, what is lost.
func (n *now) openGroups(v *leavingView) {
	type key struct {
		kind model.PlaceKind
		name string
	}
	groups := map[key]*openGroup{}
	var order []key
	for _, r := range n.s.Leaving(v.Rig) {
		k := key{r.Place.Kind, r.Place.Name}
		if groups[k] == nil {
			groups[k] = n.openGroup(r.Place, v.Rig)
			order = append(order, k)
		}
		groups[k].Lines = append(groups[k].Lines, n.openLine(r))
		v.Lines++
		if r.Place.Kind == model.Tarp || r.Place.Kind == model.At {
			v.StillOut++
		}
	}
	rank := []model.PlaceKind{model.Unexplained, model.Tarp, model.At, model.With, model.Riding, model.Charging, model.Bagged, model.Lost}
	slices.SortStableFunc(order, func(a, b key) int {
		return cmp.Or(slices.Index(rank, a.kind)-slices.Index(rank, b.kind), len(groups[b].Lines)-len(groups[a].Lines))
	})
	for _, k := range order {
		v.Groups = append(v.Groups, *groups[k])
	}
	if passed := n.unopened(v.Rig); len(passed) > 0 { // no line of it is known to be away
		v.Groups = append(v.Groups, openGroup{Icon: "door", Title: words.L("Not opened"), Note: words.L("nobody looked in"), Lines: passed})
	}
}

func (n *now) openGroup(p model.Place, own string) *openGroup {
	switch p.Kind {
	case model.Unexplained:
		return &openGroup{Icon: "look", Title: words.L("Unexplained"), Note: words.L("nobody knows where"), Alarm: true}
	case model.Tarp:
		return &openGroup{Icon: "tarp", Title: words.L("Still on the tarp"), Alarm: true}
	case model.At:
		return &openGroup{Icon: "leave-down", Title: words.F("Still at %s", n.placeName(p)), Note: n.meaning(p.Name), Alarm: true}
	case model.With:
		g := &openGroup{Icon: "with", Title: n.partyName(p.Name)}
		if a := n.d.Agency(p.Name); a != nil {
			g.Note = a.Phone
		}
		return g
	case model.Riding:
		return &openGroup{Icon: "carried", Title: words.F("On %s", n.partyName(p.Name)), Note: n.rigPhone(p.Name, own)}
	case model.Charging:
		return &openGroup{Icon: "plug", Title: words.L("Charging"), Note: words.L("at quarters")}
	case model.Bagged:
		return &openGroup{Icon: "bag", Title: words.L("Bagged"), Note: words.L("out of service")}
	case model.Lost:
		return &openGroup{Icon: "lost", Title: words.L("Lost"), Note: n.searchClosed(own)}
	}
	return &openGroup{Icon: "unknown", Title: n.placeName(p)}
}

// searchClosed says which officer closed the last search for a piece of a rig.
func (n *now) searchClosed(rig string) string {
	for i := len(n.pic.Entries) - 1; i >= 0; i-- {
		e := &n.pic.Entries[i]
		if it := n.d.Item(e.Item); e.Verb == model.StopLook && e.Taken() && it != nil && it.Rig == rig {
			by, at := n.memberShort(e.By), n.clock(e.At())
			return parts.Or(words.F("closed by %s %s", by, at), by+" "+at)
		}
	}
	return words.L("search closed by an officer")
}

// rigPhone is the phone of a rig's department, if that is not our own.
func (n *now) rigPhone(rig, own string) string {
	a := n.d.Agency(n.d.RigAgency(rig))
	if a == nil || a.Code == n.d.RigAgency(own) {
		return ""
	}
	return a.Phone
}

// openLine is one open line: what, how many of how many, its last gauge.
func (n *now) openLine(r model.PlaceRow) string {
	it := &n.d.Items[r.Line]
	text := capital(some(it, r.Quantity))
	switch r.Place.Kind {
	case model.Unexplained, model.Lost:
		if it.Quantity > 1 {
			text = words.F("%s, %d of %d", it.Short(), r.Quantity, it.Quantity)
		}
	case model.Charging:
		if a, ok := rundown.Newest(n.d, n.pic.Entries, n.scene.ID, r.Line); ok {
			text += words.F(", at %s", gaugeWord(a))
		}
	case model.At:
		if who := n.crewOf(r.Holder, it.Rig); who != "" {
			text += ", " + who
		}
	}
	if n.s.Line(r.Line).TaggedOut > 0 {
		text += words.L(", tagged")
	}
	return text
}

func (n *now) carried(v *leavingView) {
	for _, r := range n.s.BringBack() {
		if r.Place.Kind != model.Riding || r.Place.Name != v.Rig {
			continue
		}
		it := &n.d.Items[r.Line]
		k := slices.IndexFunc(v.Carried, func(c carriedView) bool { return c.Owner == it.Rig })
		if k < 0 {
			k = len(v.Carried)
			v.Carried = append(v.Carried, carriedView{Mark: n.mark(it.Rig), Owner: it.Rig})
		}
		v.Carried[k].Names = append(v.Carried[k].Names, some(it, r.Quantity))
		v.CarriedN++
	}
}

// unseenWords says what has not been looked at, in its own words.
func (v *leavingView) unseenWords() string {
	switch k := len(v.Unseen); {
	case k == 0:
		return words.L("All seven were looked at.")
	case k == len(looks):
		return words.L("Nothing has been looked at.")
	case k == 1:
		return words.F("%s has not been looked at.", capital(v.Unseen[0]))
	default:
		return words.F("%s have not been looked at.", capital(listed(v.Unseen)))
	}
}

// unseenForms are the same for a key, that may have no room for the names.
func (v *leavingView) unseenForms() string {
	if k := len(v.Unseen); k > 0 && k < len(looks) {
		return parts.Or(v.unseenWords(), words.F("%d of 7 have not been looked at.", k), words.F("%d of 7 not looked at.", k))
	}
	return v.unseenWords()
}

// openTitle is the key's first line.
func (v *leavingView) openTitle() string {
	if v.Lines == 0 {
		return words.L("Hold to sign, nothing open")
	}
	return words.F("Hold to sign, with %d open", v.Lines)
}

// aloud is the open list to be read to the officer.
func (v *leavingView) aloud() []aloudPage {
	var lines []aloudLine
	for _, g := range v.Groups {
		lines = append(lines, aloudLine{Text: join(g.Title, g.Note), Strong: true})
		for _, l := range g.Lines {
			lines = append(lines, aloudLine{Text: l})
		}
	}
	if len(lines) == 0 {
		lines = []aloudLine{{Text: words.F("Nothing of %s is open.", v.Name)}}
	}
	out := []aloudPage{{v.Name, words.N("%d open line", "%d open lines", v.Lines), lines}}
	var rest []aloudLine
	for _, c := range v.Carried {
		rest = append(rest, aloudLine{Mark: c.Mark, Text: listed(c.Names)})
	}
	if len(rest) > 0 {
		out = append(out, aloudPage{words.L("Carried for others"), words.N("%d line", "%d lines", v.CarriedN), rest})
	}
	sent := []aloudLine{{Text: v.Sent.whole()}}
	if len(v.Tagged) > 0 {
		sent = append(sent, aloudLine{Text: words.F("Tagged: %s", listed(v.Tagged))})
	}
	return append(out, aloudPage{words.L("If sent now"), "", sent})
}
