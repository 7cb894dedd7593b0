package ui

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/rundown"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// runningScreen is what runs down, every piece of it, and what is out long:
// each figure with its formula, its source and its limits. A reading can be
// typed; it moves nothing.
type runningScreen struct {
	sh     *Shell
	tree   *tree
	root   *fyne.Container
	n      *now
	chosen string // the item

	pad   bool // a reading is typed
	typed string
	flow  bool // the flow is asked
	wave  bool // why is it in order that it is out so long
}

func newRunning(sh *Shell, item string) *runningScreen {
	r := &runningScreen{sh: sh, chosen: item}
	r.tree = newTree(r.act)
	r.root = box(func(size fyne.Size) { place(r.tree.box, 0, 0, size.Width, size.Height) }, r.tree.box)
	return r
}

func (r *runningScreen) body() fyne.CanvasObject { return r.root }

// runningRow is one piece of the screen: with a gauge, or out long, or both.
type runningRow struct {
	line   int
	place  model.Place
	figure *rundown.Figure
	long   *rundown.Long
}

// running lists the pieces of the screen: what warns, what runs, what was not
// read, what is out long.
func (n *now) running() []runningRow {
	figures := n.figures()
	longs := n.longs(figures)
	var out []runningRow
	at := map[int]int{}
	for k := range figures {
		f := &figures[k]
		if !f.Read && !f.Working {
			continue
		}
		at[f.Line] = len(out)
		out = append(out, runningRow{line: f.Line, place: f.Place, figure: f})
	}
	for k := range longs {
		o := &longs[k]
		if i, ok := at[o.Line]; ok {
			out[i].long = o
			continue
		}
		out = append(out, runningRow{line: o.Line, place: o.Place, long: o})
	}
	rank := func(x runningRow) int {
		f := x.figure
		switch {
		case f != nil && f.Working && n.gaugeView(f).Low:
			return 0
		case f != nil && f.Working && !f.Read && (f.Stock() || f.Check == "oxygen"):
			return 1
		case x.long != nil:
			return 2
		case f.Working && f.Read:
			return 3
		case f.Read:
			return 4
		}
		return 5
	}
	slices.SortStableFunc(out, func(a, b runningRow) int { return rank(a) - rank(b) })
	return out
}

// show brings the screen up to date.
func (r *runningScreen) show(n *now) head {
	r.n = n
	rows := n.running()
	r.draw(rows)
	return head{title: words.L("Running down"), sentence: words.L("Touch a piece: how its time was got, from what, and what it leaves out"), back: true}
}

// current is the row that is chosen, else the first.
func (r *runningScreen) current(rows []runningRow) *runningRow {
	for k := range rows {
		if r.n.d.Items[rows[k].line].ID == r.chosen {
			return &rows[k]
		}
	}
	if len(rows) > 0 {
		return &rows[0]
	}
	return nil
}

func (r *runningScreen) draw(rows []runningRow) {
	n, c := r.n, r.current(rows)
	if c == nil {
		v := leadView{id: "empty", title: words.L("Nothing with a gauge is out"), under: words.L("Breathing air is stock here, and no timer for anybody.")}
		r.tree.set(col(0, sized(node{id: "empty", view: v}, 120), node{}))
		return
	}
	var kids []node
	for k := range rows {
		v := n.runningRow(&rows[k])
		if v.ID == n.d.Items[c.line].ID {
			v.State = "chosen"
			if v.Tone != parts.Alarm {
				v.Tone = parts.Live
			}
		}
		kids = append(kids, sized(node{id: v.ID, view: v}, look.Floor))
	}
	left := node{id: "list running", view: listOf{panel: parts.PanelView{Snug: true}, gap: look.Gap}, kids: kids}
	right := r.detail(c)
	switch {
	case r.pad && c.figure != nil:
		right = r.padSide(c.figure)
	case r.flow:
		right = r.flowSide(c)
	case r.wave:
		right = r.waveSide(c)
	}
	r.tree.set(n.onlyReads(row(0, left, right), "piece:*", "wave", "why-*", "back", "later"))
}

// runningRow is a piece as a row. How its figure was got stands beside it.
func (n *now) runningRow(x *runningRow) parts.RowView {
	it, place := &n.d.Items[x.line], n.placeName(x.place)
	v := parts.RowView{Kind: parts.KindPiece, ID: it.ID, Mark: n.mark(it.Rig), Title: it.Short(), Second: place, Tone: parts.Quiet, Go: "go"}
	if f := x.figure; f != nil {
		g := n.gaugeView(f)
		switch {
		case !f.Read && f.Since > 0:
			v.Second = words.F("%s since %s", place, n.clock(f.Since))
		case f.Read && f.Timed && f.Working:
			v.Second = words.F("%s. %s, %s", place, capital(g.reading()), n.agoWords(f.At))
		case f.Read && g.Under != "":
			v.Second = words.F("%s, %s. %s", place, n.agoWords(f.At), capital(g.Under))
		case f.Read:
			v.Second = words.F("%s, read %s", place, n.agoWords(f.At))
		}
		v.Right = g.figure()
		switch {
		case f.Stock() && f.Read:
			v.Right = words.F("%s, stock", g.reading())
		case f.Timed && !f.Working:
			v.Right = g.reading()
		}
		if g.Low {
			v.Tone = parts.Alarm
		}
		if f.Read {
			v.Right = parts.B(v.Right)
		}
	}
	if o := x.long; o != nil {
		if x.figure == nil {
			v.Second, v.Right = words.F("%s, nothing logged since %s", place, n.clock(o.Since)), parts.B(words.F("out %d min", int(o.Minutes)))
		} else {
			v.Second += words.L(". Out long")
		}
	}
	return v
}

// detail is how the figure of a piece was got, and what can be done.
func (r *runningScreen) detail(c *runningRow) node {
	n := r.n
	it := &n.d.Items[c.line]
	v := leadView{id: "piece", over: parts.B(it.Short()), mark: n.mark(it.Rig), line: n.placeName(c.place)}
	var told []string
	say := func(what, text string) {
		if text != "" {
			told = append(told, parts.B(what+":")+" "+text)
		}
	}
	if f := c.figure; f != nil {
		g := n.gaugeView(f)
		v.title, v.under = capital(g.figure()), words.L("What is in it nobody knows")
		if f.Read {
			v.under = words.F("%s, read %s", g.reading(), g.At)
		}
		if g.Low {
			v.tone, v.icon = parts.Alarm, "hourglass"
		}
		if f.Timed && f.Working {
			v.line += words.F(", till %s", g.Till)
		}
		if f.Read {
			say(words.L("At the reading"), words.Said(f.Sum.Text))
		} else {
			told = append(told, words.L("Read the gauge and type it: one reading gives a time by table, two by its own fall."))
		}
		say(words.L("Formula"), words.Said(f.Sum.Formula))
		say(words.L("Source"), words.Said(f.Sum.Source))
		say(words.L("Limits"), words.Said(f.Sum.Limits))
		if f.Timed {
			say(words.L("Now"), map[bool]string{true: words.L("taken to have run since it was read"), false: words.L("on the tarp: taken to stand still since it was read")}[f.Working])
			say(words.L("Warns"), words.F("at work, with %g min left or less. Settings, Limits", n.sumSettings().run.WarnAt(f.Check)))
		}
		if f.HasLimit {
			say(words.L("Goes in as ready"), words.F("from %g %s, its limit in the inventory", f.Limit, gaugeUnit(f.Check)))
		}
	}
	if o := c.long; o != nil {
		if c.figure == nil {
			v.title, v.under = words.F("Out %d min", int(o.Minutes)), words.F("Nothing logged since %s", n.clock(o.Since))
		}
		say(words.L("Out long"), words.F("%s: %g min without an entry. Settings, Limits. %s", words.Said(o.Class.Name), o.Limit, capital(words.Said(o.Class.Why))))
	}
	if s, ok := n.snoozed[it.ID]; ok && s.until > n.at.UnixMilli() {
		say(words.L("Said to be in order"), words.F("%s, till %s", s.why, n.clock(s.until)))
	}
	role := look.Body
	if n.root != nil && r.textHeight(told, look.Lead) <= design(n.root.Size().Height)-500 {
		role = look.Lead // on a large glass
	}
	text := node{id: "how", view: listOf{panel: parts.PanelView{Title: words.L("How it was got"), Rule: true}}, kids: []node{
		sized(node{id: "how-words", view: parts.LabelView{ID: "how", Role: role, Text: strings.Join(told, "\n")}}, r.textHeight(told, role))}}
	kids := []node{sized(node{id: "piece", view: v}, 150), text}
	if reply, said := r.reply(); said {
		kids = append(kids, sized(node{id: "reply", view: reply}, look.Floor))
	}
	return col(0, append(kids, r.keys(c))...)
}

// keys are what can be done with a piece.
func (r *runningScreen) keys(c *runningRow) node {
	var keys []node
	if c.figure != nil {
		keys = append(keys, keyNode(parts.KeyView{ID: "read", Title: words.L("Type a reading"), Second: words.L("it moves nothing"), Icon: "hourglass", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Group, Off: r.n.pic.ReadOnly != ""}))
	}
	if c.long != nil {
		keys = append(keys, keyNode(parts.KeyView{ID: "wave", Title: words.L("It is in order"), Second: words.L("says why, for a while"), Icon: "tick", Lay: parts.LayLeft, Role: look.Group}))
	}
	return row(96, keys...)
}

// textHeight is the room that lines of a list take, in design pixels.
func (r *runningScreen) textHeight(lines []string, role look.Role) float32 {
	w := (r.root.Size().Width-look.U(look.Gap))/2 - look.U(40)
	if w < look.U(100) {
		w = look.U(540)
	}
	l := parts.NewLines(parts.LabelView{Role: role, Text: strings.Join(lines, "\n")})
	return design(l.HeightFor(w)) + 16
}

// act does what was touched.
func (r *runningScreen) act(id string) {
	c := r.current(r.n.running())
	kind, rest, _ := strings.Cut(id, ":")
	switch {
	case id == "seen":
		r.sh.said = nil
	case kind == parts.KindPiece:
		r.left()
		r.chosen, r.pad, r.flow, r.wave, r.typed = rest, false, false, false, ""
		r.sh.said = nil
	case c == nil:
	case id == "read":
		r.chosen, r.pad, r.typed = r.n.d.Items[c.line].ID, true, ""
	case id == "later" || id == "back":
		r.pad, r.flow, r.wave, r.typed = false, false, false, ""
	case id == "wave":
		r.chosen, r.wave = r.n.d.Items[c.line].ID, true
	case strings.HasPrefix(id, "flow-"):
		r.log(c, "flow="+strings.TrimPrefix(id, "flow-"))
	case id == "no-flow":
		r.log(c, "")
	case strings.HasPrefix(id, "why-"):
		r.snooze(c, strings.TrimPrefix(id, "why-"))
	case kind == parts.KindDigit:
		r.digit(c, rest)
	}
	r.sh.refresh()
}

// log logs the reading. Nothing is moved by it.
func (r *runningScreen) log(c *runningRow, more string) {
	it := &r.n.d.Items[c.line]
	reading := c.figure.Check + "=" + r.typed
	if more != "" {
		reading += ";" + more
	}
	r.pad, r.flow, r.typed = false, false, ""
	r.sh.log(board.Tap{Acts: []model.Act{{Verb: model.CheckIt, Item: it.ID, Quantity: 1, Reading: reading}}})
}

// left logs the pressure alone where only its flow was still asked: it was
// typed and found possible, so it counts.
func (r *runningScreen) left() {
	if c := r.current(r.n.running()); r.flow && c != nil && c.figure != nil {
		r.log(c, "")
	}
}

// reply is the answer to a reading that was not taken as it is.
func (r *runningScreen) reply() (parts.StripView, bool) {
	s := r.sh.said
	if s == nil || s.trouble == nil && (len(s.entries) == 0 || s.entries[0].Verb != model.CheckIt || s.entries[0].Reply.Word == model.OK) {
		return parts.StripView{}, false
	}
	return r.n.answer(s)
}
