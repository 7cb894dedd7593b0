package ui

import (
	"strconv"
	"strings"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// sideView is the right side while loading: the piece in hand and what is
// asked of it.
func (n *now) sideView(st *luState) node {
	p, ok := n.inHand(st)
	switch {
	case !ok:
		return n.doorDone(st)
	case st.judges:
		return n.officersView(st, p)
	case p.tagged:
		return n.taggedView(st, p)
	case n.kitAway(p):
		return n.kitAwayView(p)
	case len(n.closedBy(p.line)) > 0 && !st.anyway:
		return n.blockedView(st, p)
	case st.said != nil:
		return n.refusedView(st, p)
	case st.pad != "":
		return n.padPanel(st, p)
	}
	return n.questions(st, p)
}

// firstNumber is the number asked first: the pad opens by itself, unless the
// piece may go in unused.
func (n *now) firstNumber(p piece, st *luState) string {
	if p.tagged || n.couldBeUnused(p) {
		return ""
	}
	for _, a := range p.item.Checks {
		if c := n.d.Check(a.Check); c != nil && c.Number && st.given[a.Check] == "" {
			return a.Check
		}
	}
	return ""
}

// couldBeUnused tells whether "unused" would be taken: the piece lies on the
// tarp, and neither it nor anything that lives in it was past the tarp.
func (n *now) couldBeUnused(p piece) bool {
	return p.from.Kind == model.Tarp && !n.s.PastInside(p.line, n.scene.ID) && len(n.s.Line(p.line).Open) == 0 && len(p.item.Checks) > 0
}

func (n *now) kitAway(p piece) bool {
	home := n.s.HomeOf(p.line)
	if home.Kind != model.InKit {
		return false
	}
	kit := n.s.Real(home)
	return kit.Kind != model.Home && kit.Kind != model.Tarp && kit != p.from
}

// leadOf is the head of the right side for a piece.
func (n *now) leadOf(st *luState, p piece) leadView {
	v := leadView{id: "piece", over: words.L("This one"), title: p.item.Short(), mark: n.mark(p.item.Rig), two: n.s.TwoPerson(p.line)}
	if st.item == "" {
		if left := len(n.atDoor(st)); left > 0 {
			v.over = words.F("Next in, %s to go at this door", words.N("%d line", "%d lines", left))
		}
	}
	if p.item.Quantity > 1 {
		v.title = pieces(p.item, p.n)
	}
	v.line = pounds(n.s.Weight(p.line), p.item)
	if p.n > 1 {
		v.line += words.L(" each")
	}
	if v.two {
		v.line += words.L(", two people")
	}
	if p.item.Extra[handUp] != "" {
		v.line += words.L(", hand it up")
	}
	if s := n.d.Slot(p.item.Slot); s != nil && p.item.Kit == "" {
		v.line += ", " + s.Description
	}
	if p.item.Kit != "" {
		v.line += words.F(", into %s", n.itemName(p.item.Kit))
	}
	if n.s.Line(p.line).Contest != nil {
		v.icon, v.over = "fork", words.F("Said to be in two places: %s", n.claimWords(p.line))
	} else if p.from.Kind == model.At {
		v.over = words.F("Still at %s, straight in from there", n.placeName(p.from))
	}
	return v
}

// questions asks all that the piece is asked before it goes in.
func (n *now) questions(st *luState, p piece) node {
	v := n.leadOf(st, p)
	if st.anyway {
		v.over, v.icon = words.L("In although its way is closed"), "bar"
	}
	if c := n.countedWords(st, p); c != "" {
		v.under = c
	}
	asks := []node{}
	h := look.Floor
	if len(p.item.Checks) < 3 {
		h = 104
	}
	if len(p.item.Checks) >= 3 && n.narrow() {
		v.over, v.line = v.line, "" // the head has room for two lines
		if v.two {
			v.icon = "two"
		}
	}
	for _, a := range p.item.Checks {
		q := n.ask(st, p, a)
		if v, ok := q.view.(parts.AnswerView); ok && h == look.Floor && n.narrow() && len(v.Second) > 34 {
			v.Second = "" // three lines have no room, and the question says enough
			q.view = v
		}
		asks = append(asks, sized(q, h))
	}
	keys := n.inKeys(st, p)
	last := row(0, keys...)
	if len(asks) > 3 {
		asks = append(asks, sized(last, 112))
		return col(0, node{id: "piece", view: v, size: 106}, node{id: "asks", view: listOf{gap: look.Gap, panel: parts.PanelView{Tight: true}}, kids: inRows(asks)})
	}
	last.size = 104
	if len(asks) == 3 {
		last.size = look.Floor
	}
	out := col(0, node{id: "piece", view: v, part: 1})
	out.kids = append(out.kids, asks...)
	out.kids = append(out.kids, last)
	return out
}

// inRows puts each node in a row of its own, as a list wants them.
func inRows(kids []node) []node {
	out := make([]node, len(kids))
	for i, k := range kids {
		out[i] = row(k.size, sized(k, 0))
	}
	return out
}

// ask is one question with its keys.
func (n *now) ask(st *luState, p piece, a model.Ask) node {
	c := n.d.Check(a.Check)
	if c == nil {
		return node{id: a.Check, view: parts.AnswerView{Check: a.Check, Question: a.Check, Yes: words.L("Yes"), No: words.L("No")}}
	}
	if c.Number {
		v := parts.RowView{ID: "read-" + a.Check, Title: c.Question, Second: limitWords(a), Right: st.given[a.Check], Go: "go", Tone: parts.Quiet}
		if v.Right == "" {
			v.Right = words.L("not read yet")
		} else if !n.passes(p, a.Check, v.Right) {
			v.Tone = parts.Alarm
		}
		return node{id: v.ID, view: v}
	}
	v := parts.AnswerView{Check: a.Check, Answer: st.given[a.Check], Yes: words.L("Yes"), No: words.L("No")}
	v.Question, v.Second = askWords(c)
	if a.Check == model.CountCheck && p.item.Kind == model.Kit {
		n.askCount(&v, p)
	}
	return node{id: a.Check, view: v}
}

// askCount words the question of a kit by what its counts have shown.
func (n *now) askCount(v *parts.AnswerView, p piece) {
	v.Question, v.Second = words.L("All in it?"), words.L("No: count what is there")
	switch n.s.KitState(p.line) {
	case model.ShortUsable:
		v.Question, v.Second = words.L("The rest in it?"), words.L("short, but usable: it goes in short")
	case model.NotUsable:
		v.Question, v.Second = words.L("Short: not usable"), words.L("too few to work with")
	}
	if v.Answer == "short" {
		v.Answer = "yes"
	}
}

// askWords makes a short question of a check: "Clean; no blood, fuel" is
// "Clean?" with what to look at under it.
func askWords(c *model.Check) (short, look string) {
	question := c.Question
	at := strings.IndexAny(question, ";,")
	if at < 0 {
		return question + "?", ""
	}
	if question[at] == ';' {
		return question[:at] + "?", strings.TrimSpace(question[at+1:])
	}
	rest := strings.TrimSpace(question[at+1:])
	switch {
	case strings.HasPrefix(question, "Runs"):
		return words.L("Works?"), strings.ToLower(question)
	case strings.HasPrefix(question, "No "), strings.HasPrefix(question, "Not "):
		return words.F("%s sound?", upper(c.ID)), strings.ToLower(question[:1]) + question[1:]
	}
	return question[:at] + "?", rest
}

func limitWords(a model.Ask) string {
	if !a.HasLimit {
		return words.L("any figure, but read it")
	}
	return words.F("%g or more passes", a.Limit)
}

func (n *now) passes(p piece, check, word string) bool {
	c := n.d.Check(check)
	answer := model.Answer{Check: check, Word: word}
	if c != nil && c.Number {
		f, err := strconv.ParseFloat(word, 64)
		if err != nil {
			return false
		}
		answer.Number = f
	}
	return n.s.Passes(p.line, answer)
}

// inKeys are the keys that put the piece in: as answered with yes for the
// rest, and "unused" where it could be.
func (n *now) inKeys(st *luState, p piece) []node {
	in := parts.KeyView{ID: "stow", Title: words.L("In"), Icon: "in", Tone: parts.Filled, Second: words.L("one touch, if you looked at it")}
	if n.s.TwoPerson(p.line) {
		in.Icon = "two"
	}
	yes, no := 0, 0
	number := ""
	for _, a := range p.item.Checks {
		c := n.d.Check(a.Check)
		switch word := st.given[a.Check]; {
		case word == "" && c != nil && c.Number:
			if number == "" {
				number = a.Check
			}
		case word != "" && !n.passes(p, a.Check, word):
			no++
		default:
			yes++
		}
	}
	switch {
	case number != "":
		in.Title, in.Second, in.Icon = words.L("Read it first"), n.d.Check(number).Question, "go"
	case no > 0:
		in.Title, in.Second, in.Icon = words.L("It does not pass"), words.L("go on: what then?"), "bar"
		in.Tone = parts.Alarm
	case yes == 0:
		in.Second = words.L("nothing is asked of it")
	case yes == 1:
		in.Title = words.L("In, yes")
	case yes == 2:
		in.Title = words.L("In, both yes")
	default:
		in.Title = words.F("In, all %d yes", yes)
	}
	if !n.couldBeUnused(p) || no > 0 || st.anyway {
		keys := []node{keyNode(in)}
		if _, asked := p.item.Ask(model.CountCheck); asked && len(n.d.Inside(p.line)) > 0 {
			keys = []node{wide(keys[0], 2), keyNode(parts.KeyView{ID: "count", Title: words.L("Count it"), Icon: "kit", Lay: parts.LayLeft, Role: look.Group})}
		}
		return keys
	}
	if in.Second != "" && number == "" {
		in.Second = words.L("it was used, and looked at")
	}
	in.Tone = parts.Usual
	if number != "" {
		in.Icon = ""
	}
	unused := parts.KeyView{ID: "unused", Title: words.L("Unused, in"), Second: words.L("never left the tarp"), Icon: in.Icon, Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Name}
	in.Lay = parts.LayLeft
	return []node{keyNode(unused), keyNode(in)}
}
