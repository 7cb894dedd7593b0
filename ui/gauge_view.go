package ui

import (
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/rundown"
	"tarpside/ui/words"
)

// gaugeView is what a piece with a gauge that is out has left.
type gaugeView struct {
	Item   string
	Name   string
	Place  string
	Work   bool   // at a place of the scene, not on the tarp
	Figure string // as read: "600"
	Unit   string // "psi"
	At     string // when it was read, or since when it is there: "19:31, 19 min ago"
	Low    bool   // it takes the alarm
	Under  string // "under 1150": the reading is under the item's limit
	Timed  bool   // the minutes can be said
	Left   int    // minutes left now
	Till   string // until when, at work
	By     string // "by 2 readings", "by table"
}

// reading is what was read, with its unit.
func (g gaugeView) reading() string {
	if g.Figure == "" {
		return words.L("No reading")
	}
	return g.Figure + " " + g.Unit
}

// figure is the time left, where one can be said; else the reading.
func (g gaugeView) figure() string {
	switch {
	case !g.Timed || g.Till == "":
		return g.reading()
	case g.Left == 0:
		return words.L("no minute left")
	}
	return words.F("%d min left", g.Left)
}

// when says what was read and how old it is, and that it is low.
func (g gaugeView) when() string {
	switch {
	case g.Figure == "":
		return words.F("There since %s", g.At)
	case g.Timed && g.Till != "":
		return words.F("%s at %s, %s", capital(g.reading()), g.At, g.By)
	case g.Under != "":
		return words.F("%s. Read %s", capital(g.Under), g.At)
	}
	return words.F("Read %s", g.At)
}

// gauges are the pieces with a gauge that are out, what warns first: those at
// work before those on the tarp. Oxygen and air at work that nobody has read
// stand among them; other pieces at work that were never read are named in
// one sentence.
func (n *now) gauges() (read []gaugeView, unread string) {
	return n.gaugeViews(n.figures())
}

// figures are the sums of what runs down.
func (n *now) figures() []rundown.Figure {
	return rundown.Figures(n.s, n.pic.Entries, n.scene.ID, n.at.UnixMilli(), n.sumSettings().run)
}

func (n *now) gaugeViews(figures []rundown.Figure) (read []gaugeView, unread string) {
	var names []string
	var blank []gaugeView
	for k := range figures {
		f := &figures[k]
		it := &n.d.Items[f.Line]
		v := n.gaugeView(f)
		switch gas := f.Check == "oxygen" || f.Stock(); {
		case f.Read:
			read = append(read, v)
		case f.Working && gas:
			blank = append(blank, v)
		case f.Working && it.Critical:
			names = append(names, low(it.Short())+" ("+v.Place+n.sinceWords(f.Since)+")")
		}
	}
	k := slices.IndexFunc(read, func(v gaugeView) bool { return !v.Low || !v.Work })
	if k < 0 {
		k = len(read)
	}
	return slices.Insert(read, k, blank...), strings.Join(names, ", ")
}

func (n *now) gaugeView(f *rundown.Figure) gaugeView {
	it := &n.d.Items[f.Line]
	v := gaugeView{Item: it.ID, Name: it.Short(), Place: n.placeName(f.Place), Work: f.Working}
	at := f.Since
	if f.Read {
		at = f.At
		v.Figure, v.Unit = f.Answer.Word, gaugeUnit(f.Answer.Check)
		v.Low = f.Warn || f.Under && !(f.Timed && f.Working)
		v.Timed, v.Left = f.Timed, int(f.Left)
	}
	v.At = n.ago(at)
	if f.Under {
		v.Under = words.F("under %g %s", f.Limit, gaugeUnit(f.Check))
	}
	if f.Timed {
		v.By = words.L("by table")
		if f.Measured {
			v.By = words.F("by %d readings", f.Readings)
		}
		if f.Working {
			v.Till = n.clock(f.Until)
		}
	}
	return v
}

// ago is a time and how long ago it was.
func (n *now) ago(at int64) string { return words.F("%s, %s", n.clock(at), n.agoWords(at)) }

func (n *now) agoWords(at int64) string {
	if n.at.UnixMilli()-at < 60_000 {
		return words.L("just now")
	}
	return words.F("%d min ago", (n.at.UnixMilli()-at)/60000)
}

func (n *now) sinceWords(at int64) string {
	if at == 0 {
		return ""
	}
	return words.F(" since %s", n.clock(at))
}

// alertView is the one line of what is wrong, the worst first.
type alertView struct {
	Text string
	Icon string
	More int  // how many more there are
	Loud bool // it takes the alarm

	Opens string // the screen that it is about: "" is Running down
	Rig   string // the rig that the screen is opened for, if any
}

// alert finds the worst that is open: an alarm, else the first. Nothing pops
// up: it is one line.
func (n *now) alert(figures []rundown.Figure) alertView {
	all := n.alerts(figures)
	if len(all) == 0 {
		return alertView{}
	}
	v := all[max(0, slices.IndexFunc(all, func(a alertView) bool { return a.Loud }))]
	v.More = len(all) - 1
	return v
}

// alerts lists what is open, the worst first: old data, two claims, pieces
// that nobody can explain, low gauges at work, pieces left without a
// signature, pieces that counts saw too many, pieces out long, unknown pieces.
func (n *now) alerts(figures []rundown.Figure) []alertView {
	var out []alertView
	about, of := "", ""
	add := func(icon string, loud bool, text string) {
		out = append(out, alertView{Text: text, Icon: icon, Loud: loud, Opens: about, Rig: of})
	}
	if n.ageMinutes() > staleAfter {
		about = alertEntries
		add("clock", false, n.age())
	}
	about = ScreenLookFor
	for i := range n.d.Items {
		it, l := &n.d.Items[i], n.s.Line(i)
		if c := l.Contest; c != nil {
			var at []string
			for _, k := range c.Claims {
				if p := n.placeName(k.Place); !slices.Contains(at, p) {
					at = append(at, p)
				}
			}
			add("fork", true, words.F("%s: %s? Go and look", it.Short(), strings.Join(at, words.L(" or "))))
		}
	}
	for i := range n.d.Items {
		if k := n.s.Line(i).N(model.Place{Kind: model.Unexplained}); k > 0 {
			it := &n.d.Items[i]
			add("look", true, words.F("%d unexplained: %s, %s", k, low(it.Short()), n.rigName(it.Rig)))
		}
	}
	about = ""
	for k := range figures {
		f := &figures[k]
		switch g := n.gaugeView(f); {
		case !f.Working || !g.Low:
		case g.Timed:
			add("hourglass", true, words.F("%s at %s: %s. %s at %s", g.Name, g.Place, g.figure(), g.reading(), g.At))
		default:
			add("hourglass", true, words.F("%s at %s: %s, read %s", g.Name, g.Place, g.reading(), g.At))
		}
	}
	for _, rig := range n.scene.Left {
		if k := n.leftBy(rig); k > 0 && !slices.Contains(n.scene.Accepted, rig) {
			about, of = alertRelease, rig
			add("leave", true, words.F("%s left %s here. Nobody signed for them", n.rigName(rig), words.N("%d line", "%d lines", k)))
		}
	}
	about = ScreenLeaving
	for i := range n.d.Items {
		of = n.d.Items[i].Rig
		if x := n.s.Extra(i, n.scene.ID); x > 0 {
			add("plus", true, words.F("%d too many on %s: %s", x, n.rigName(n.d.Items[i].Rig), low(many(n.d.Items[i].Short()))))
		}
	}
	about, of = "", ""
	if text := n.longWords(figures); text != "" {
		add("clock", false, text)
	}
	about = ScreenTarp
	for _, u := range n.scene.Unknown {
		add("unknown", false, words.F("Whose is it? %s", u))
	}
	return out
}

// leftBy counts the lines of a rig on the tarp or at places of the scene.
func (n *now) leftBy(rig string) int {
	k := 0
	for _, r := range n.s.Leaving(rig) {
		if (r.Place.Kind == model.Tarp || r.Place.Kind == model.At) && r.Place.Ground == n.scene.Ground {
			k++
		}
	}
	return k
}
