package modeltest

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"

	"tarpside/model"
)

var movers = slices.Sorted(maps.Keys(model.Table))

// Moving draws an act of the table that mostly fits where pieces are.
func Moving(r *rand.Rand, s *model.State) model.Act {
	a := words(r)
	if len(s.Dept.Items) == 0 {
		a.Verb, a.Item = model.PullOff, "GHOST"
		return a
	}
	i := between(r, 0, len(s.Dept.Items)-1)
	if chance(r, 50) { // much about few lines, so that rows meet
		i = min(i, 2)
	}
	st := one(r, s.Line(i).Stacks...)
	var fit []model.Verb
	for _, v := range movers {
		if slices.Contains(model.Table[v].From, st.Place.Kind) {
			fit = append(fit, v)
		}
	}
	if busy := common(fit); len(busy) > 0 && chance(r, 60) {
		fit = busy
	}
	if len(fit) == 0 || chance(r, 10) {
		fit = movers
	}
	a.Item, a.Verb = s.Dept.Items[i].ID, one(r, fit...)
	to := one(r, model.Table[a.Verb].To...)
	a.From, a.To = written(r, st.Place), place(r, s, to)
	if from := one(r, model.Table[a.Verb].From...); chance(r, 15) { // where it was, for who has not seen that it went
		a.From = place(r, s, from)
	}
	if to == model.InKit && chance(r, 90) || to == model.Home {
		a.To = "home"
	}
	if a.Verb == model.Seen && chance(r, 30) {
		a.To = a.From
	}
	a.Quantity = between(r, 1, st.N)
	a.Reading = Reading(r, s, i, a.Verb == model.Stow || a.Verb == model.StowTagged)
	return a
}

// common keeps the verbs of a busy scene.
func common(verbs []model.Verb) (out []model.Verb) {
	for _, v := range verbs {
		switch v {
		case model.PullOff, model.Hand, model.MoveTo, model.Return, model.Stow, model.Direct:
			out = append(out, v)
		}
	}
	return out
}

// Act draws any act, valid or hostile.
func Act(r *rand.Rand, s *model.State) model.Act {
	a := Moving(r, s)
	if chance(r, 35) {
		a.Verb = one(r, model.Count, model.Count, model.CheckIt, model.CheckIt, model.Tag, model.Repair, model.Override, model.Match,
			model.Vouch, model.Settle, model.Leave, model.Release, model.Arrive, model.Accept, model.Note, model.Look, model.Relieve,
			model.ClearUp, model.Close)
		a.Rig = one(r, "R0", "R0", "R1", "R2", "MED9", "X9", "")
		if a.Verb == model.Override {
			a.Reading, a.By = one(r, "battery", "clean", "dry", "oxygen", "?"), one(r, "CHIEF", "NEIGH", "CREW")
		}
		if a.Verb == model.Count {
			a.Quantity = between(r, 0, 8)
		}
	}
	if chance(r, 15) {
		switch between(r, 0, 5) {
		case 0:
			a.Quantity = one(r, model.Blank, -1, 0, 1, 2, 99, 1<<40)
		case 1:
			a.From = odd(r, s)
		case 2:
			a.To = odd(r, s)
		case 3:
			a.Item = one(r, "", "GHOST", "R0")
		case 4:
			a.Reading = oddReading(r)
		case 5:
			a.Verb = model.Verb(one(r, "fly", "", "truth"))
		}
	}
	return a
}

func oddReading(r *rand.Rand) string {
	text := ""
	for range between(r, 1, 12) {
		text += one(r, "yes", "no", "battery", "=", "=", ";", ";", "8", ".", " ", "unused", "as_is", "dry", "flow")
	}
	return text
}

func words(r *rand.Rand) model.Act {
	return model.Act{By: one(r, "CHIEF", "CREW", "NEIGH", ""), Holder: one(r, "", "Crew 1", "Crew 2"),
		Note: one(r, "", "as told"), Rig: one(r, "", "", "", "R0")}
}

func odd(r *rand.Rand, s *model.State) string {
	return place(r, s, one(r, model.PlaceKinds...)) + one(r, "", "", ":", " ", "x")
}

// place draws a place of a kind as it is typed.
func place(r *rand.Rand, s *model.State, kind model.PlaceKind) string {
	switch kind {
	case model.At:
		return one(r, "at:V1", "at:V2", "at:bank")
	case model.With:
		return one(r, "with:MED9", "with:R0", "with:road crew")
	case model.Riding:
		return one(r, "riding:R0", "riding:R1", "riding:X9")
	case model.InKit:
		if len(s.Dept.Items) == 0 {
			return "kit:GHOST"
		}
		return "kit:" + one(r, s.Dept.Items...).ID
	}
	return string(kind)
}

// written is a place as a window writes it: mostly without its ground.
func written(r *rand.Rand, p model.Place) string {
	if chance(r, 80) {
		return p.String()
	}
	text, _ := p.MarshalText() // it never fails
	return string(text)
}

// Reading draws answers to checks of a line, some good, some not.
func Reading(r *rand.Rand, s *model.State, line int, stow bool) string {
	var parts []string
	for _, ask := range s.Dept.Items[line].Checks {
		c := s.Dept.Check(ask.Check)
		if c == nil || chance(r, 15) {
			continue
		}
		answers := []string{"yes", "yes", "yes", "no"}
		if c.Number {
			answers = []string{fmt.Sprint(c.Max), fmt.Sprint(c.Max), fmt.Sprint(c.Min)}
		} else if slices.Contains(c.Words, "short") {
			answers = append(answers, "short")
		} else if c.NeverWord != "" {
			answers = append(answers, c.NeverWord)
		}
		parts = append(parts, c.ID+"="+one(r, answers...))
	}
	if stow {
		if chance(r, 20) {
			parts = []string{model.WordUnused}
		}
		if chance(r, 40) {
			parts = append(parts, model.WordAsIs)
		}
		if chance(r, 40) {
			parts = append(parts, model.WordInAnyway)
		}
	}
	return strings.Join(parts, ";")
}

// Entry draws the next entry of a log: mostly an act in one of its scenes, now
// and then a scene that opens after the others or beside them, or a change of
// the inventory. With devices it is written by any of them, who had seen as
// much as the draw says.
func Entry(r *rand.Rand, l *Log, devices ...string) model.Entry {
	var e model.Entry
	all := l.State.Scenes()
	e.Scene = one(r, all...).ID
	switch {
	case chance(r, 3):
		e.Verb, e.Quantity = model.Open, model.Blank
		e.Scene = fmt.Sprintf("%s-%d", l.Device, len(l.Entries))
		for _, sc := range all {
			if chance(r, 50) {
				e.Takes = append(e.Takes, sc.ID)
			}
		}
	case chance(r, 6):
		e.Verb, e.Stores = model.Stores, Patch(r, l.State)
	default:
		e.Act = Act(r, l.State)
	}
	if len(devices) > 0 {
		e.Stamp.Device = one(r, devices...)
		e.Seen = l.State.Seen()
		for _, d := range devices {
			if d != e.Stamp.Device && e.Seen[d] > 0 {
				e.Seen[d] = max(0, e.Seen[d]-between(r, 0, 5))
			}
		}
	}
	return e
}
