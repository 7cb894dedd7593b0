package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// hazardWords stand over every search.
var hazardWords = words.K("Do not look in traffic, under unstable loads or near power lines. Ask first.")

// order splits steps into those looked at, the present one, and the rest:
// those skipped for later come last.
func order(all []step) (done []step, now *step, later []step) {
	var put []step
	for _, s := range all {
		switch {
		case s.state != stepOpen:
			done = append(done, s)
		case s.nth != 0:
			put = append(put, s)
		default:
			later = append(later, s)
		}
	}
	byTime := func(a, b step) int { return cmp.Compare(a.nth, b.nth) }
	slices.SortStableFunc(done, byTime)
	slices.SortStableFunc(put, byTime)
	slices.SortStableFunc(later, func(a, b step) int { return cmp.Compare(a.rank, b.rank) })
	if later = append(later, put...); len(later) > 0 {
		now, later = &later[0], later[1:]
	}
	return done, now, later
}

// draw shows what is to be seen now.
func (l *lookforScreen) draw() {
	n := l.n
	if n == nil {
		return
	}
	hazard := sized(node{id: "alert", view: hazardView()}, 48)
	hunts := n.hunts()
	h, ok := l.current(hunts)
	reply, said := l.reply()
	if !ok {
		l.tree.set(l.n.onlyReads(col(0, append([]node{hazard}, l.nothing(hunts, reply, said)...)...), lookforShows...))
		return
	}
	if id := h.id(n.d); id != l.chosen { // what was asked is about a piece that is gone from the list
		l.chosen, l.mode, l.typed, l.officer = id, lookSteps, "", ""
	}
	bottom := node{}
	if said {
		bottom = sized(node{id: "reply", view: reply}, look.Floor)
	}
	t := n.trail(h.line)
	body := row(0, l.left(hunts, h, t), wide(l.right(h, t, bottom), lookRight))
	l.tree.set(l.n.onlyReads(col(0, hazard, body), lookforShows...))
}

// lookRight is how much wider the right side is than the left.
const lookRight = 2.2

func hazardView() parts.StripView {
	return parts.StripView{ID: "alert", Tone: parts.StripWrong, Title: words.L(hazardWords)}
}

// left is the list of pieces, the chosen one, and what is known of it.
func (l *lookforScreen) left(hunts []hunt, h hunt, t trail) node {
	n, it := l.n, &l.n.d.Items[h.line]
	var kids []node
	if k := len(hunts); k > 1 {
		kids = append(kids, l.list(hunts, h))
	}
	v := leadView{id: "piece", title: it.Short(), mark: n.mark(it.Rig), line: n.looksLike(it)}
	switch h.kind {
	case hunting:
		v.over = words.F("%d of %d missing", h.n, it.Quantity)
		if it.Quantity == 1 {
			v.over = words.L("missing") + n.withInside(h.line)
		}
		v.under = n.kitWords(it)
	case disputed:
		v.over = words.L("Said to be in two places")
	case closed:
		v.over = words.F("%d of %d given up as lost", h.n, it.Quantity)
		if it.Quantity == 1 {
			v.over = words.L("given up as lost")
		}
	}
	high := 44 + 46*l.linesOf(v.title, look.Place, -26) + 27*(l.linesOf(v.line, look.Lead, 44)+l.linesOf(v.under, look.Lead, -26))
	facts := l.facts(h, t, l.room()-48-high-2*look.Gap-factsHead)
	if len(kids) > 0 { // as many pieces as the facts leave room for; the next one still shows that it is there
		free := l.room() - 48 - high - 3*look.Gap - factsHead
		for _, k := range facts.kids {
			free -= k.size + factsGap
		}
		least := 2*look.Floor + 28
		if l.size.Width < look.U(1000) {
			least = 1.4*look.Floor + 28
		}
		kids[0].size = max(least, min(free, float32(len(hunts))*(look.Floor+look.Gap)+24))
	}
	return col(0, append(kids, sized(node{id: "piece", view: v}, high), facts)...)
}

// factsHead is the height of the head of the facts, and factsGap what stands
// between two of them.
const factsHead, factsGap float32 = 52, 6

// kitWords says whether the kit can go home without the piece.
func (n *now) kitWords(it *model.Item) string {
	k := n.d.ItemIndex(it.Kit)
	if k < 0 {
		return ""
	}
	name := low(n.d.Items[k].Short())
	switch n.s.KitState(k) {
	case model.ShortUsable:
		return words.F("The %s goes home short, but usable.", name)
	case model.NotUsable:
		return words.F("The %s is not usable without it.", name)
	}
	return ""
}

// withInside says how many pieces are in a kit.
func (n *now) withInside(line int) string {
	k := 0
	n.s.Inside(line, func(i int) {
		k += n.s.Line(i).N(n.s.HomeOf(i))
	})
	if k == 0 {
		return ""
	}
	return words.F(", with %d inside", k)
}

// list is the pieces to look for.
func (l *lookforScreen) list(hunts []hunt, now hunt) node {
	n := l.n
	var kids []node
	show := float32(0)
	for i, h := range hunts {
		it := &n.d.Items[h.line]
		v := parts.RowView{Kind: parts.KindPiece, ID: it.ID, Mark: n.mark(it.Rig), Title: it.Short(), State: h.kind, Tone: parts.Quiet}
		switch h.kind {
		case hunting:
			v.Second = words.F("%d of %d missing", h.n, it.Quantity)
			if it.Quantity == 1 {
				v.Second = words.L("missing") + n.withInside(h.line)
			}
		case disputed:
			v.Second = n.claimWords(h.line)
		case closed:
			v.Second = words.L("closed: lost")
			if h.n > 1 {
				v.Second = words.F("closed: %d lost", h.n)
			}
		}
		if h == now {
			v.Tone, show = parts.Live, float32(i)*(look.Floor+look.Gap)
		}
		kids = append(kids, sized(node{id: h.id(n.d), view: v}, look.Floor))
	}
	return node{id: "hunts", view: listOf{panel: parts.PanelView{ID: "hunts", Snug: true}, gap: look.Gap, show: show, upTo: show + look.Floor}, kids: kids}
}

// claimWords are the places that two people say: "V1 or V2?".
func (n *now) claimWords(line int) string {
	var out []string
	for _, c := range n.s.Line(line).Contest.Claims {
		if w := n.placeName(c.Place); !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return strings.Join(out, words.L(" or ")) + "?"
}

// facts are what the log knows, or the report that goes with a loss.
// They are in room, in design pixels, or scroll.
func (l *lookforScreen) facts(h hunt, t trail, room float32) node {
	n := l.n
	title := words.L("Last known")
	var lines []string
	if h.kind == closed || l.mode == lookStop {
		title, lines = words.L("Lost report"), n.lostReport(h, t)
	} else {
		for _, c := range t.clues[max(0, len(t.clues)-5):] {
			at := "     "
			if c.at != 0 {
				at = parts.B(n.clock(c.at))
			}
			lines = append(lines, at+"  "+capital(c.words))
		}
		if len(lines) == 0 {
			lines = append(lines, words.L("The log has nothing about it."))
		}
	}
	var kids []node
	less, high := float32(-24), float32(0)
	for _, text := range lines {
		high += 24*l.linesOf(text, look.Body, less) + factsGap
	}
	if high > room {
		less += 18 // the bar takes its room
	}
	for i, text := range lines {
		size := 24 * l.linesOf(text, look.Body, less)
		kids = append(kids, sized(node{id: fmt.Sprint("fact-", i), view: parts.LabelView{ID: "fact", Text: text, Role: look.Body, Mid: true}}, size))
	}
	return node{id: "facts", view: listOf{panel: parts.PanelView{ID: "facts", Title: title, Rule: true}, gap: factsGap}, kids: kids}
}

// linesOf is how many lines a text takes on the left side, less some design
// pixels of its width.
func (l *lookforScreen) linesOf(text string, role look.Role, less float32) float32 {
	if text == "" {
		return 0
	}
	w := l.size.Width/(1+lookRight) - look.U(60+less)
	one := parts.NewLines(parts.LabelView{Text: "x", Role: role}).HeightFor(1e4)
	if w < look.U(100) {
		return 1
	}
	return float32(int(parts.NewLines(parts.LabelView{Text: text, Role: role}).HeightFor(w)/one + 0.5))
}

// lostReport is what the log can fill in of the report of a loss.
func (n *now) lostReport(h hunt, t trail) []string {
	it := &n.d.Items[h.line]
	line := func(what, value string) string { return parts.B(what) + " " + value }
	out := []string{line(words.L("What"), it.Name), line(words.L("How many"), words.F("%d of %d", h.n, it.Quantity)), line(words.L("Owner"), n.rigName(it.Rig))}
	if it.Mark != "" {
		out = append(out, line(words.L("Marked"), it.Mark))
	}
	if t.last.Kind != "" {
		out = append(out, line(words.L("Last place"), n.placeName(t.last)+", "+n.clock(t.lastAt)))
	} else {
		out = append(out, line(words.L("Last place"), words.L("never logged off the rig")))
	}
	if t.holder != "" {
		out = append(out, line(words.L("Last with"), n.memberName(t.holder)))
	}
	if t.short != nil {
		by := ""
		if t.short.By != "" {
			by = ", " + n.memberName(t.short.By)
		}
		out = append(out, line(words.L("Missed"), n.clock(t.short.At())+by))
	}
	done, _, _ := order(n.steps(h, t, 0))
	for _, s := range done {
		switch s.state {
		case stepLooked:
			out = append(out, line(n.clock(s.at), s.title))
		case stepUnsafe:
			not := words.F("%s, not safe", s.title)
			if s.unsafe != "" {
				not = words.F("%s, not safe: %s", s.title, s.unsafe)
			}
			out = append(out, line(words.L("Not searched"), not))
		}
	}
	if t.closed != nil && h.kind == closed {
		out = append(out, line(words.L("Closed"), n.clock(t.closed.At())+", "+n.memberFull(t.closed.By)))
	}
	return out
}

// right is what to do about the piece.
func (l *lookforScreen) right(h hunt, t trail, bottom node) node {
	switch l.mode {
	case lookAmount:
		return l.amountView(h)
	case lookParty:
		return l.partyView(h)
	case lookStop:
		return l.stopView(h)
	}
	switch h.kind {
	case disputed:
		return l.claimsView(h, bottom)
	case closed:
		return l.closedView(h, t, bottom)
	}
	return l.stepsView(h, t, bottom)
}

// stepsView is the search: looked at above, the present place large, the rest
// below.
func (l *lookforScreen) stepsView(h hunt, t trail, bottom node) node {
	done, now, later := order(l.n.steps(h, t, l.from[l.n.d.Items[h.line].ID]))
	// What is left over a row of 48 goes to the rows; what one place more would
	// need may come off them, to 44.
	free := l.room() - 48 - 96 - 92 - 2*look.Gap
	if bottom.view != nil {
		free -= bottom.size + 2*look.Gap
	}
	room := max(2, int(free/(44+look.Gap)))
	high := min(max(free/float32(min(room, len(done)+len(later)))-look.Gap, 44), 64)
	below := min(len(later), max(room-len(done), room/2))
	above := min(len(done), room-below)
	var kids []node
	for i := len(done) - above; i < len(done); i++ {
		s := done[i]
		v := parts.RowView{ID: "looked", Number: fmt.Sprint(i + 1), Title: s.title, Tone: parts.Hole, Off: true, State: s.state, Go: "cross", Right: words.F("not here, %s", l.n.clock(s.at))}
		switch {
		case i == len(done)-above && i > 0:
			v = parts.RowView{ID: "looked", Title: words.N("%d place done before", "%d places done before", i+1), Tone: parts.Hole, Off: true}
		case s.state == stepUnsafe:
			v.Right, v.Go = words.L("not searched: not safe"), "warn"
			if s.unsafe != "" {
				v.Right = words.F("not searched: %s", s.unsafe)
			}
		case s.asks:
			v.Right = words.F("no, %s", l.n.clock(s.at))
		}
		kids = append(kids, sized(node{id: fmt.Sprint("looked-", i), view: v}, high))
	}
	kids = append(kids, l.presentView(len(done), now)...)
	for i := range below {
		v := parts.RowView{ID: "later", Number: fmt.Sprint(len(done) + 2 + i), Title: later[i].title, Tone: parts.Quiet, Off: true}
		if later[i].nth != 0 {
			v.Right = words.L("skipped, comes again")
		}
		if rest := len(later) - i; i == below-1 && rest > 1 {
			v.Number, v.Title, v.Right = fmt.Sprintf("+%d", rest), words.L("more places"), ""
		}
		kids = append(kids, sized(node{id: fmt.Sprint("later-", i), view: v}, high))
	}
	if bottom.view != nil {
		kids = append(kids, node{}, bottom)
	}
	return col(0, kids...)
}

// room is the height of this screen, in design pixels.
func (l *lookforScreen) room() float32 {
	if l.size.Height <= 0 {
		return 640
	}
	return l.size.Height / look.U(1000) * 1000
}

// presentView is the place to look in now, and its keys.
func (l *lookforScreen) presentView(done int, now *step) []node {
	v := parts.RowView{ID: "step", Number: fmt.Sprint(done + 1), Tone: parts.Live, Off: true, State: "now"}
	not := parts.KeyView{ID: "not-here", Title: words.L("Not here"), Icon: "cross", Lay: parts.LayCentre}
	found := parts.KeyView{ID: "found", Title: words.L("Found"), Icon: "tick", Tone: parts.Filled, Lay: parts.LayCentre, Role: look.Name}
	with := parts.KeyView{ID: "with-someone", Title: words.L("With someone"), Lay: parts.LayCentre, Role: look.Group}
	skip := parts.KeyView{ID: "skip", Title: words.L("Skip"), Lay: parts.LayCentre}
	switch {
	case now == nil:
		v.Number, v.Title, v.Second = "", words.L("Every place is done"), words.L("Look again, leave it open, or let an officer stop the search")
		not = parts.KeyView{ID: "look-again", Title: words.L("Look again"), Icon: "undo", Lay: parts.LayCentre}
		skip.Off = true
	default:
		v.Title, v.Second = now.title, now.why
		if now.asks {
			not.Title = words.L("They say no")
		}
		if now.ask != "" {
			with.Title, with.Tone, found.Tone = words.F("With %s", l.n.partyName(now.ask)), parts.Filled, parts.Usual
		}
	}
	keys := row(92, wide(keyNode(not), 1.5), wide(keyNode(found), 1.5), wide(keyNode(with), 1.2), sized(keyNode(skip), 104))
	if l.mode == lookUnsafe {
		keys = hazardKeys()
	}
	if l.mode == lookSkip {
		wrong := parts.KeyView{ID: "wrong-tap", Title: words.L("Wrong tap"), Second: words.L("undo the last answer"), Lay: parts.LayCentre, Role: look.TileName}
		if done == 0 {
			wrong.Second, wrong.Off = words.L("nothing to take back"), true
		}
		keys = row(92, keyNode(parts.KeyView{ID: "unsafe", Title: words.L("Not safe"), Second: words.L("not searched"), Icon: "warn", Lay: parts.LayLeft, Role: look.TileName}),
			keyNode(parts.KeyView{ID: "later", Title: words.L("Later"), Second: words.L("comes again"), Icon: "clock", Lay: parts.LayLeft, Role: look.TileName}),
			keyNode(wrong), sized(keyNode(parts.KeyView{ID: "back", Title: words.L("Back"), Lay: parts.LayCentre}), 104))
	}
	return []node{sized(node{id: "step", view: v}, 96), keys}
}
