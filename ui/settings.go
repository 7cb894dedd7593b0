package ui

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// settingsScreen is how this tablet looks and who has it, and what the
// department asks of everybody: limits, the officer's PIN.
type settingsScreen struct {
	sh       *Shell
	root     *fyne.Container
	light    [2]*parts.Key
	text     [3]*parts.Key
	keys     []*parts.Key
	practice *parts.HoldKey
	side     *parts.Scroller
	words    *parts.Label
	strip    *parts.Strip
}

var textScales = [3]float32{1, 1.3, 1.6}

var textWords = [3]string{words.K("As it came"), words.K("Larger"), words.K("Largest")}

func newSettings(sh *Shell) screen {
	s := &settingsScreen{sh: sh}
	for i := range s.light {
		s.light[i] = parts.NewKey(parts.KeyView{}, func() { sh.setDay(i == 1) })
	}
	for i, scale := range textScales {
		s.text[i] = parts.NewKey(parts.KeyView{}, func() { sh.setText(scale) })
	}
	for _, do := range []func(){s.card, s.who, s.limits, s.pin, s.acting, s.stores} {
		s.keys = append(s.keys, parts.NewKey(parts.KeyView{}, do))
	}
	s.practice = parts.NewHoldKey(parts.HoldView{}, s.practise)
	s.words = parts.NewLines(parts.LabelView{ID: "about", Role: look.Lead, Text: words.L(aboutWords)})
	s.side = parts.NewScroller(s.words)
	s.strip = parts.NewStrip(parts.StripView{}, func(string) { sh.said = nil; sh.refresh() })
	panel := parts.NewPanel(parts.PanelView{Title: words.L("Before you rely on it"), Rule: true}, s.side)
	s.root = box(func(size fyne.Size) { s.layout(size, panel) })
	for _, k := range append(append(s.light[:], s.text[:]...), s.keys...) {
		s.root.Add(k)
	}
	s.root.Add(s.practice)
	s.root.Add(panel)
	s.root.Add(s.strip)
	return s
}

func (s *settingsScreen) body() fyne.CanvasObject { return s.root }

func (s *settingsScreen) layout(size fyne.Size, panel *parts.Panel) {
	gap := look.U(look.Gap)
	left := (size.Width - gap) * 0.56
	h := min(look.U(128), (size.Height-5*gap)/6)
	row := func(y int, keys ...*parts.Key) {
		w := (left - gap*float32(len(keys)-1)) / float32(len(keys))
		for i, k := range keys {
			place(k, float32(i)*(w+gap), float32(y)*(h+gap), w, h)
		}
	}
	row(0, s.light[:]...)
	row(1, s.text[:]...)
	for i := 0; i < len(s.keys); i += 2 {
		row(2+i/2, s.keys[i:i+2]...)
	}
	place(s.practice, 0, 5*(h+gap), left, h)
	stripH := look.U(look.Floor)
	place(s.strip, left+gap, size.Height-stripH, size.Width-left-gap, stripH)
	place(panel, left+gap, 0, size.Width-left-gap, size.Height-stripH-gap)
	enlarge(panel, s.side, s.words)
}

// show brings the screen up to date.
func (s *settingsScreen) show(n *now) head {
	o := look.Current().Options()
	for i, v := range []parts.KeyView{
		{ID: "night", Title: words.L("Night"), Second: words.L("for the dark"), Icon: "night"}, {ID: "day", Title: words.L("Day"), Second: words.L("for sun"), Icon: "day"},
	} {
		s.light[i].Set(chosen(v, o.Day == (i == 1)))
	}
	for i, scale := range textScales {
		v := parts.KeyView{ID: fmt.Sprintf("text-%.1f", scale), Title: words.L(textWords[i]), Second: words.F("text %.1f", scale), Lay: parts.LayCentre}
		s.text[i].Set(chosen(v, o.Text > scale-0.05 && o.Text < scale+0.05))
	}
	has, _ := n.opts.Board.HasPIN() // where it cannot be read, an officer is asked and told
	pin := words.L("not set")
	if has {
		pin = words.L("is set")
	}
	for i, v := range []parts.KeyView{
		{ID: "card", Title: words.L("Size by bank card"), Second: words.F("%.0f pixels an inch", o.PerInch), Icon: "paper"},
		{ID: "who", Title: words.L("Who has this tablet"), Second: n.whoWord(n.by), Icon: "one"},
		{ID: "limits", Title: words.L("Limits"), Second: words.L("of charge, pressure, fuel"), Icon: "hourglass"},
		{ID: "pin", Title: words.L("Officer's PIN"), Second: pin, Icon: "settings"},
		{ID: "acting", Title: words.L("Acting officer"), Second: n.whoWord(n.acting), Icon: "two"},
		{ID: ScreenStores, Title: words.L("Stores"), Second: words.L("the inventory"), Icon: "kit"},
	} {
		v.Lay = parts.LayLeft
		if v.ID == "who" || v.ID == "pin" || v.ID == "acting" {
			v = n.shutKey(v)
		}
		s.keys[i].Set(v)
	}
	s.practice.Set(n.practiceView())
	s.strip.Set(n.stripView(nil))
	return head{title: words.L("Settings"), sentence: words.L("Look, size and name are this tablet's. Limits and PIN are everybody's.")}
}

// chosen marks the one of some keys that is in force.
func chosen(v parts.KeyView, on bool) parts.KeyView {
	if v.Lay == parts.LayAuto {
		v.Lay = parts.LayLeft
	}
	if on {
		v.Tone, v.State = parts.Live, "chosen"
	}
	return v
}

// whoWord is a member by name, or that nobody is named.
func (n *now) whoWord(id string) string {
	if id == "" {
		return words.L("not said")
	}
	return n.memberName(id)
}

// practiceView is the key that leads to practice, or out of it. It is held:
// acts of a real call must not end up in a copy, nor the other way round.
func (n *now) practiceView() parts.HoldView {
	if n.opts.Practice {
		return parts.HoldView{ID: "leave-practice", Title: words.L("Hold to leave practice"), Second: words.L("for the department's own log"), Sure: words.L("Leave practice"), Off: n.opts.Real == nil}
	}
	return parts.HoldView{ID: "practice", Title: words.L("Hold to practise"), Second: words.L("on a copy of the demo; nothing of it is kept"), Sure: words.L("Practise"), Off: n.opts.Demo == nil}
}

// practise goes to a practice copy, or back to the department's own log.
func (s *settingsScreen) practise() {
	do := s.sh.opts.Demo
	if s.sh.opts.Practice {
		do = s.sh.opts.Real
	}
	if do == nil {
		return
	}
	if err := do(); err != nil {
		s.sh.said = &said{trouble: inWords(err)}
		s.sh.refresh()
	}
}

func (s *settingsScreen) card() { s.sh.open(newCard(s.sh)) }

func (s *settingsScreen) who() { s.sh.open(newHolder(s.sh)) }

func (s *settingsScreen) limits() { s.sh.open(newLimits(s.sh)) }

func (s *settingsScreen) pin() { s.sh.openPIN() }

func (s *settingsScreen) acting() { s.sh.open(newActing(s.sh)) }

func (s *settingsScreen) stores() { s.sh.Go(ScreenStores) }

// newActing names the acting officer: the first to be offered as a signer.
func newActing(sh *Shell) screen {
	rows := func(n *now) []rowDo {
		set := func(id string) func() {
			return func() {
				sh.acting, sh.over = id, nil
				sh.keep(settingActing, id)
				sh.refresh()
			}
		}
		out := n.crewRows(sh.acting, func(id string) { set(id)() })
		slices.SortStableFunc(out, func(a, b rowDo) int { // officers first, of the rigs that are here before the others
			return boolInt(n.d.Member(b.view.ID).Officer) - boolInt(n.d.Member(a.view.ID).Officer)
		})
		if sh.acting != "" {
			out = append([]rowDo{{parts.RowView{Kind: parts.KindAct, ID: "nobody", Title: words.L("Nobody"), Second: words.L("each rig's own officers sign"), Tone: parts.Quiet, Icon: "cross"}, set("")}}, out...)
		}
		return out
	}
	return newRowList(words.L("Acting officer"), words.L("Is offered first when something is signed. All tablets of this file share it"), rows, nil).folded(340)
}

// actingFirst puts the acting officer in front of those who may sign.
func (n *now) actingFirst(list []string) []string {
	if n.d.Member(n.acting) == nil {
		return list
	}
	out := []string{n.acting}
	for _, id := range list {
		if id != n.acting {
			out = append(out, id)
		}
	}
	return out
}
