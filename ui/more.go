package ui

import (
	"fmt"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// moreScreen is what is needed seldom: who is here, who stages, the scene
// itself, the look, and the balance of each rig.
type moreScreen struct {
	sh    *Shell
	root  *fyne.Container
	keys  []*parts.Key
	close *parts.HoldKey
	rows  *parts.Column
	panel *parts.Panel
	about *parts.Panel
	side  *parts.Scroller
	rigs  map[string]*parts.Row // the balance of each; a touch shows what makes it up
	none  *parts.Label          // in place of the balances
	strip *parts.Strip
}

func newMore(sh *Shell) screen {
	m := &moreScreen{sh: sh, rigs: map[string]*parts.Row{}}
	for _, do := range []func(){m.relieve, m.arrive, m.newScene, m.bringBack, m.stores, m.settings, m.day, m.who, m.trail, m.papers} {
		m.keys = append(m.keys, parts.NewKey(parts.KeyView{}, do))
	}
	m.close = parts.NewHoldKey(parts.HoldView{}, m.closeScene)
	m.rows = parts.NewColumn(look.Gap)
	m.panel = parts.NewPanel(parts.PanelView{Title: words.L("Each rig's balance"), Note: parts.Or(words.L("touch one: what makes it up"), words.L("touch one")), Rule: true}, m.rows)
	m.about = parts.NewPanel(parts.PanelView{Title: words.L("Before you rely on it"), Rule: true}, parts.NewLines(parts.LabelView{ID: "about", Role: look.Body, Text: words.L(aboutWords)}))
	m.side = parts.NewScroller(parts.NewColumn(look.Gap, m.panel, m.about))
	m.none = parts.NewLines(parts.LabelView{Text: words.L("Nothing has come off a rig in this scene."), Role: look.Body})
	m.strip = parts.NewStrip(parts.StripView{}, func(string) { sh.said = nil; sh.refresh() })
	m.root = box(m.layout)
	return m
}

// aboutWords are the cautions that the program must show.
var aboutWords = words.K("Local procedures, makers' instructions and your officer come first. This is no patient record: never write a patient's name or " +
	"condition. It does not account for people. Weights and lift marks are guidance. Strut, block and bag ratings are not given here. " +
	"Life-safety rope goes back into service only by a qualified person.")

func (m *moreScreen) body() fyne.CanvasObject { return m.root }

func (m *moreScreen) layout(size fyne.Size) {
	gap, stripH := look.U(look.Gap), look.U(look.Floor)*1.4 // narrow, so that its words take more lines
	left := size.Width * 0.46
	w := (left - gap) / 2
	rows := float32(len(m.keys)/2 + 1)
	keyH := (size.Height+gap)/rows - gap
	for i, k := range m.keys {
		place(k, float32(i%2)*(w+gap), float32(i/2)*(keyH+gap), w, keyH)
	}
	last := len(m.keys)
	closeW := w
	if last%2 == 0 {
		closeW = left
	}
	place(m.close, float32(last%2)*(w+gap), float32(last/2)*(keyH+gap), closeW, keyH)
	place(m.strip, left+gap, size.Height-stripH, size.Width-left-gap, stripH)
	flush(m.side, left+gap, 0, size.Width-left-gap, size.Height-stripH-gap)
}

// show brings the screen up to date.
func (m *moreScreen) show(n *now) head {
	open := n.scene.ID != "" && !n.scene.Closed
	staging := parts.Or(words.L("nobody is named"), words.L("Nobody"))
	if n.scene.Staging != "" {
		staging = parts.Or(words.F("now %s", n.memberName(n.scene.Staging)), n.memberShort(n.scene.Staging))
	}
	day, light := words.L("Day look"), "day"
	if n.opts.Look.Day {
		day, light = words.L("Night look"), "night"
	}
	fresh := parts.Or(words.L("a second one, beside this"), words.L("a second one"))
	if !open {
		fresh = words.L("keeps what is still out")
	}
	for i, v := range []parts.KeyView{
		{ID: "relieve", Title: words.L("Hand over staging"), Second: staging, Icon: "two"},
		{ID: "arrive", Title: words.L("Somebody arrives"), Second: words.L("a rig or an agency"), Icon: "in"},
		{ID: "new-scene", Title: words.L("New scene"), Second: fresh, Icon: "plus"},
		{ID: ScreenBringBack, Title: words.L("Bring back"), Second: parts.Or(words.L("and charge, restock"), words.L("restock")), Icon: "back"},
		{ID: ScreenStores, Title: words.L("Stores"), Second: parts.Or(words.L("what is where, the inventory"), words.L("the inventory")), Icon: "kit"},
		{ID: ScreenSettings, Title: words.L("Settings"), Second: words.L("size, limits, practice"), Icon: "settings"},
		{ID: "day", Title: day, Second: words.L("for sun, or for the dark"), Icon: light},
		{ID: "who", Title: words.L("Who has this tablet"), Second: n.whoWord(n.by), Icon: "one"},
		{ID: ScreenTrail, Title: words.L("Trail load"), Second: words.L("a litter party, off the road"), Icon: "trail"},
		{ID: "papers", Title: words.L("Paper and stick"), Second: parts.Or(words.L("print, enter, exchange"), words.L("print")), Icon: "paper"},
	} {
		v.Lay = parts.LayLeft
		switch v.ID {
		case "relieve", "arrive":
			if !open { // it would go to the scene that was closed, and nobody would see it
				v.Off, v.Second = true, words.L("no scene is open")
			}
			v = n.shutKey(v)
		case "new-scene", "who":
			v = n.shutKey(v)
		}
		m.keys[i].Set(v)
	}
	m.close.Set(n.shutHold(parts.HoldView{ID: "close-scene", Title: parts.Or(words.L("Hold to close the scene"), words.L("Hold to close")), Second: parts.Or(n.sceneName(), ""), Sure: words.L("Close"), Off: !open}))
	m.showRigs(n)
	v := n.stripView(nil)
	m.strip.Set(v)
	if len(m.root.Objects) == 0 {
		for _, k := range m.keys {
			m.root.Objects = append(m.root.Objects, k)
		}
		m.root.Objects = append(m.root.Objects, m.close, m.side, m.strip)
		relay(m.root)
	}
	return head{title: words.L("More"), sentence: n.sceneName()}
}

// showRigs writes the balance of each rig that has pieces off.
func (m *moreScreen) showRigs(n *now) {
	var rows []fyne.CanvasObject
	for _, r := range n.rigs() {
		a := n.account(r)
		if a.CameOff == 0 {
			continue
		}
		v := parts.RowView{ID: "account-" + r, Mark: n.mark(r), Title: words.F("%s: %d came off", n.rigName(r), a.CameOff), Tone: parts.Quiet, Go: "go", Tall: true,
			Second: parts.Or(balanceWords(a), words.F("%d home again, %d elsewhere, %d unexplained", a.Home, a.CameOff-a.Home, a.Unexplained))}
		if m.rigs[r] == nil {
			m.rigs[r] = parts.NewRow(v, func() { m.sh.open(newAccount(m.sh, r)) })
		}
		m.rigs[r].Set(v)
		rows = append(rows, m.rigs[r])
	}
	if len(rows) == 0 {
		rows = append(rows, m.none)
	}
	m.rows.SetInside(rows...)
	m.side.Settle()
}

// balanceWords are the terms of an account that are not nought.
func balanceWords(a model.Account) string {
	c := footCounts(a)
	out := ""
	for i, k := range c {
		if k == 0 && i != int(parts.FootUnexplained) {
			continue
		}
		if out != "" {
			out += ", "
		}
		out += fmt.Sprintf("%d %s", k, words.L(parts.FootWords[i]))
	}
	return out
}

func (m *moreScreen) relieve() { m.sh.open(newRelief(m.sh)) }

func (m *moreScreen) who() { m.sh.open(newHolder(m.sh)) }

func (m *moreScreen) arrive() { m.sh.open(newArrival(m.sh)) }

func (m *moreScreen) newScene() { m.sh.open(newOpening(m.sh)) }

func (m *moreScreen) bringBack() { m.sh.Go(ScreenBringBack) }

func (m *moreScreen) trail() { m.sh.Go(ScreenTrail) }

func (m *moreScreen) stores() { m.sh.Go(ScreenStores) }

func (m *moreScreen) papers() { m.sh.open(newPapers(m.sh).list) }

func (m *moreScreen) settings() { m.sh.Go(ScreenSettings) }

func (m *moreScreen) closeScene() {
	m.sh.asOfficer(words.L("Close the scene"), func() { m.sh.act(model.Act{Verb: model.Close}) })
}

func (m *moreScreen) day() {
	m.sh.setDay(!m.sh.opts.Look.Day)
}
