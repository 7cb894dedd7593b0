package ui

import (
	"cmp"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// rowList is a screen of rows to touch one of, opened over another; beside
// them may stand something to read aloud.
type rowList struct {
	title string
	line  string
	rows  func(n *now) []rowDo
	list  *parts.Column
	count int     // of the rows
	least float32 // width that a row needs beside another, in design pixels
	keep  map[string]*parts.Row
	root  *fyne.Container
	side  *parts.Panel
	reads *parts.Scroller
	words *parts.Label
	aside func(n *now) (title, text string)
	large bool        // what stands beside the rows is read aloud
	wrong func() bool // what stands beside is a refusal; may be nil
}

// rowDo is one row, and what a touch on it does.
type rowDo struct {
	view parts.RowView
	do   func()
}

func newRowList(title, line string, rows func(*now) []rowDo, aside func(*now) (string, string)) *rowList {
	c := &rowList{title: title, line: line, rows: rows, least: leastRow, aside: aside, keep: map[string]*parts.Row{}}
	c.list = parts.NewColumn(look.Gap)
	scroll := parts.NewScroller(c.list)
	c.words = parts.NewLines(parts.LabelView{ID: "read-back", Role: look.Lead})
	c.reads = parts.NewScroller(c.words)
	c.side = parts.NewPanel(parts.PanelView{}, c.reads)
	c.root = box(func(size fyne.Size) {
		w := size.Width
		if c.aside != nil {
			left := size.Width * 0.5
			if c.overflows(size.Height) && size.Width > look.U(1300) {
				left = size.Width * 0.63
			}
			place(c.side, left, 0, size.Width-left, size.Height)
			c.enlarge()
			w = left - look.U(look.Gap)
		}
		c.list.Fold(fyne.NewSize(w, size.Height), look.U(c.least)*look.Current().Options().Text)
		flush(scroll, 0, 0, w, size.Height)
	}, scroll)
	if aside != nil {
		c.root.Add(c.side)
	}
	return c
}

// leastRow is the width that a row of some words needs beside another.
const leastRow float32 = 420

// folded is the same list, of rows that need less width.
func (c *rowList) folded(least float32) *rowList {
	c.least = least
	return c
}

// overflows tells that the rows, one under the other, are higher than a room.
func (c *rowList) overflows(room float32) bool {
	return float32(c.count)*look.U(look.Floor+look.Gap) > room+look.U(look.Gap)
}

func (c *rowList) enlarge() {
	if c.large {
		enlarge(c.side, c.reads, c.words, look.OpenLarge)
		return
	}
	enlarge(c.side, c.reads, c.words)
}

// enlarge writes the words on a panel as large as all of them fit.
func enlarge(side *parts.Panel, reads *parts.Scroller, words *parts.Label, larger ...look.Role) {
	size := side.Size()
	if size.Height <= 0 {
		return
	}
	v := words.View()
	for _, role := range append(larger, look.Open, look.Lead) {
		v.Role = role
		if parts.NewLines(v).HeightFor(size.Width-look.U(56)) <= size.Height-look.U(80) {
			break
		}
	}
	words.Set(v)
	reads.Settle()
}

func (c *rowList) body() fyne.CanvasObject { return c.root }

// show brings the rows up to date.
func (c *rowList) show(n *now) head {
	var objs []fyne.CanvasObject
	for _, r := range c.rows(n) {
		row := c.keep[r.view.ID]
		if row == nil {
			v := r.view
			v.Off = v.Off && r.do == nil // a key that is shut is as high as an open one
			row = parts.NewRow(v, nil)
			c.keep[r.view.ID] = row
		}
		row.OnTap = r.do
		row.Set(r.view)
		objs = append(objs, row)
	}
	c.list.SetInside(objs...)
	if c.count != len(objs) {
		c.count = len(objs)
		relay(c.root)
	}
	if c.aside != nil {
		title, text := c.aside(n)
		v := parts.PanelView{Title: title, Rule: true}
		if c.wrong != nil && c.wrong() {
			v.Tone = parts.Alarm
		}
		c.side.Set(v)
		c.words.SetText(text)
		c.enlarge()
	}
	return head{title: c.title, sentence: c.line, back: true}
}

// newRelief hands staging over: what is out is read back, then the member who
// takes over is touched.
func newRelief(sh *Shell) screen {
	rows := func(n *now) []rowDo {
		return n.crewRows(n.scene.Staging, func(id string) {
			sh.over = nil
			sh.act(model.Act{Verb: model.Relieve, By: n.scene.Staging, Holder: id})
		})
	}
	c := newRowList(words.L("Hand over staging"), words.L("Read the list aloud, walk the tarp, then touch who takes over"), rows,
		func(n *now) (string, string) { return words.L("To read back"), n.readBack() }).folded(272)
	c.large = true
	return c
}

// crewRows are rows of members to touch one of, but for one of them.
func (n *now) crewRows(but string, do func(id string)) []rowDo {
	var out []rowDo
	for _, m := range n.crew() {
		if m.ID == but {
			continue
		}
		v := parts.RowView{Kind: parts.KindMember, ID: m.ID, Title: m.Name, Second: m.Role, Tone: parts.Quiet, Mark: n.crewMark(m)}
		out = append(out, rowDo{v, func() { do(m.ID) }})
	}
	if len(n.d.Members) == 0 {
		out = append(out, rowDo{parts.RowView{ID: "nobody", Title: words.L("Nobody is listed yet"), Second: words.L("Names come with the tables of a department: More, Stores, Load tables."), Tone: parts.Quiet, Off: true}, nil})
	}
	return out
}

// newHolder names who has this tablet: what it logs is in that name.
func newHolder(sh *Shell) screen {
	rows := func(n *now) []rowDo {
		return n.crewRows(sh.by, func(id string) {
			sh.by, sh.over = id, nil
			sh.setPref(settingBy, id)
			sh.refresh()
		})
	}
	return newRowList(words.L("Who has this tablet"), words.L("What this tablet logs is in that name"), rows, nil).folded(340)
}

// crew are the members, those of rigs that are here first.
func (n *now) crew() []*model.Member {
	here := n.present()
	var out []*model.Member
	for i := range n.d.Members {
		out = append(out, &n.d.Members[i])
	}
	rank := func(m *model.Member) int {
		if k := slices.Index(here, m.Rig); k >= 0 {
			return k
		}
		return len(here)
	}
	slices.SortStableFunc(out, func(a, b *model.Member) int { return rank(a) - rank(b) })
	return out
}

// readBack is all that came off and where it is, as it is read aloud at a
// relief: the tarp and the places first, then what is with others or is gone.
func (n *now) readBack() string {
	text, last := "", ""
	all := n.s.Checkpoints()
	rank, rigs := func(c model.Checkpoint) int { return slices.Index(model.PlaceKinds, c.Place.Kind) }, n.rigs()
	slices.SortStableFunc(all, func(a, b model.Checkpoint) int {
		return cmp.Or(rank(a)-rank(b), strings.Compare(a.Place.String(), b.Place.String()), slices.Index(rigs, a.Rig)-slices.Index(rigs, b.Rig))
	})
	for _, c := range all {
		if name := n.placeName(c.Place); name != last {
			text, last = text+parts.B(name)+"\n", name
		}
		text += words.F("%s, %s of %s\n", words.N("%d line", "%d lines", c.Lines), words.N("%d piece", "%d pieces", c.Pieces), n.rigName(c.Rig))
	}
	if len(n.scene.Unknown) > 0 { // no table has them, and somebody looks for them all the same
		var said []string
		for _, u := range n.scene.Unknown {
			said = append(said, quoted(u))
		}
		text += parts.B(words.L("In words")) + "\n" + strings.Join(said, ", ") + "\n"
	}
	if text == "" {
		return words.L("Nothing is out.")
	}
	return text
}

// newArrival logs that a rig or an agency is here.
func newArrival(sh *Shell) screen {
	rows := func(n *now) []rowDo {
		var out []rowDo
		add := func(v parts.RowView) {
			if slices.Contains(n.scene.Arrived, v.ID) && !slices.Contains(n.scene.Left, v.ID) {
				return
			}
			v.Kind, v.Tone = parts.KindRig, parts.Quiet
			out = append(out, rowDo{v, func() {
				sh.over = nil
				sh.act(model.Act{Verb: model.Arrive, Rig: v.ID})
			}})
		}
		for _, r := range n.rigs() {
			add(parts.RowView{ID: r, Mark: n.mark(r), Title: n.rigName(r)})
		}
		here := n.present()
		for _, a := range n.d.Agencies {
			if slices.ContainsFunc(here, func(r string) bool { return n.d.RigAgency(r) == a.Code }) {
				continue // it came with its rig
			}
			add(parts.RowView{ID: a.Code, Title: n.partyName(a.Code), Second: a.Kind})
		}
		other := parts.RowView{ID: "another-rig", Title: words.L("Another rig"), Second: words.L("one that nobody listed"), Icon: "plus", Tone: parts.Quiet, Go: "go"}
		return append(out, rowDo{other, func() { sh.open(newOtherRig(sh)) }})
	}
	return newRowList(words.L("Who is here"), words.L("Touch the rig or the agency that has arrived"), rows, nil).folded(340)
}

// newRigTabs shows or hides the pieces of each rig, where the header has no
// room for all.
func newRigTabs(t *tarpScreen) screen {
	rows := func(n *now) []rowDo {
		var out []rowDo
		for _, r := range n.present() {
			a := n.account(r)
			v := parts.RowView{Kind: parts.KindRig, ID: r, Mark: n.mark(r), Title: n.rigName(r), Second: words.F("%d off", a.CameOff-a.Home),
				Tone: parts.Live, State: "shown", Right: words.L("shown"), Go: "tick"}
			if t.hidden[r] {
				v.Tone, v.State, v.Right, v.Go = parts.Quiet, "hidden", words.L("hidden"), ""
			}
			out = append(out, rowDo{v, func() { t.hidden[r] = !t.hidden[r]; t.sh.refresh() }})
		}
		return out
	}
	return newRowList(words.L("Rigs"), words.L("Touch a rig to hide its pieces, or to show them again"), rows, nil).folded(340)
}

// newOpening opens a scene.
func newOpening(sh *Shell) screen {
	rows := func(n *now) []rowDo {
		var out []rowDo
		add := func(name string) {
			for _, r := range out {
				if r.view.ID == "open-"+name {
					return
				}
			}
			out = append(out, rowDo{parts.RowView{ID: "open-" + name, Title: name, Tone: parts.Quiet, Go: "go"}, func() {
				sh.over = nil
				sh.openScene(name)
			}})
		}
		if n.scene.Closed && n.scene.Name != "" {
			name := n.scene.Name
			out = append(out, rowDo{parts.RowView{ID: "open-again", Title: words.L("Go on with the last scene"), Second: n.lastSceneName(), Tone: parts.Quiet, Icon: "undo", Go: "go"}, func() {
				sh.over = nil
				sh.openScene(name)
			}})
		}
		for _, p := range n.d.Pulls {
			add(p.List)
		}
		add(words.L("Something else"))
		return out
	}
	return newRowList(words.L("New scene"), words.L("What kind of call is it? Touch one"), rows, nil).folded(340)
}

// openScene starts a scene and goes to its tarp.
func (sh *Shell) openScene(name string) {
	e, err := sh.opts.Board.OpenScene(sh.by, name, nil, sh.typed(sh.opts.Now()))
	sh.said = &said{entries: []model.Entry{e}}
	if err != nil {
		sh.said = &said{trouble: inWords(err)}
	}
	sh.catchUp()
	sh.Go(ScreenTarp)
}
