package modeltest

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"tarpside/model"
)

var movers = slices.Sorted(maps.Keys(model.Table))

// Moving draws an act of the table that mostly fits where pieces are.
func Moving(t *rapid.T, s *model.State) model.Act {
	a := words(t)
	if len(s.Dept.Items) == 0 {
		a.Verb, a.Item = model.PullOff, "GHOST"
		return a
	}
	i := rapid.IntRange(0, len(s.Dept.Items)-1).Draw(t, "line")
	st := rapid.SampledFrom(s.Line(i).Stacks).Draw(t, "stack")
	var fit []model.Verb
	for _, v := range movers {
		if slices.Contains(model.Table[v].From, st.Place.Kind) {
			fit = append(fit, v)
		}
	}
	if len(fit) == 0 || chance(t, 10, "unfit") {
		fit = movers
	}
	a.Item, a.Verb = s.Dept.Items[i].ID, rapid.SampledFrom(fit).Draw(t, "verb")
	to := rapid.SampledFrom(model.Table[a.Verb].To).Draw(t, "to")
	a.From, a.To = written(t, st.Place), place(t, s, to)
	if to == model.InKit && chance(t, 90, "own kit") || to == model.Home {
		a.To = "home"
	}
	if a.Verb == model.Seen && chance(t, 30, "as it is") {
		a.To = a.From
	}
	a.Quantity = rapid.IntRange(1, st.N).Draw(t, "quantity")
	a.Reading = Reading(t, s, i, a.Verb == model.Stow || a.Verb == model.StowTagged)
	return a
}

// Act draws any act, valid or hostile.
func Act(t *rapid.T, s *model.State) model.Act {
	a := Moving(t, s)
	if chance(t, 45, "still") {
		a.Verb = one(t, "still verb", model.Count, model.Count, model.CheckIt, model.CheckIt, model.Tag, model.Repair, model.Override,
			model.Vouch, model.Settle, model.Leave, model.Release, model.Arrive, model.Accept, model.Note, model.Look, model.Relieve,
			model.ClearUp, model.Close)
		a.Rig = one(t, "rig", "R0", "R1", "R2", "MED9", "X9", "")
		if a.Verb == model.Override {
			a.Reading, a.By = one(t, "check", "battery", "clean", "dry", "oxygen", "?"), one(t, "officer", "CHIEF", "NEIGH", "CREW")
		}
		if a.Verb == model.Count {
			a.Quantity = rapid.IntRange(0, 8).Draw(t, "count")
		}
	}
	if chance(t, 15, "hostile") {
		switch rapid.IntRange(0, 5).Draw(t, "hostility") {
		case 0:
			a.Quantity = one(t, "odd quantity", model.Blank, -1, 0, 1, 2, 99, 1<<40)
		case 1:
			a.From = odd(t, s)
		case 2:
			a.To = odd(t, s)
		case 3:
			a.Item = one(t, "odd item", "", "GHOST", "R0")
		case 4:
			a.Reading = rapid.StringMatching(`[a-z_=;0-9. ]{0,12}`).Draw(t, "odd reading")
		case 5:
			a.Verb = model.Verb(one(t, "odd verb", "fly", "", "truth"))
		}
	}
	return a
}

func words(t *rapid.T) model.Act {
	return model.Act{By: one(t, "by", "CHIEF", "CREW", "NEIGH", ""), Holder: one(t, "holder", "", "Crew 1", "Crew 2"),
		Note: one(t, "note", "", "as told"), Rig: one(t, "owner", "", "", "", "R0")}
}

func odd(t *rapid.T, s *model.State) string {
	return place(t, s, rapid.SampledFrom(model.PlaceKinds).Draw(t, "odd kind")) + one(t, "tail", "", "", ":", " ", "x")
}

// place draws a place of a kind as it is typed.
func place(t *rapid.T, s *model.State, kind model.PlaceKind) string {
	switch kind {
	case model.At:
		return one(t, "at", "at:V1", "at:V2", "at:bank")
	case model.With:
		return one(t, "with", "with:MED9", "with:R0", "with:road crew")
	case model.Riding:
		return one(t, "riding", "riding:R0", "riding:R1", "riding:X9")
	case model.InKit:
		return "kit:" + rapid.SampledFrom(s.Dept.Items).Draw(t, "kit").ID
	}
	return string(kind)
}

// written is a place as a window writes it: mostly without its ground.
func written(t *rapid.T, p model.Place) string {
	if chance(t, 80, "plain") {
		return p.String()
	}
	text, err := p.MarshalText()
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// Reading draws answers to checks of a line, some good, some not.
func Reading(t *rapid.T, s *model.State, line int, stow bool) string {
	var parts []string
	for _, ask := range s.Dept.Items[line].Checks {
		c := s.Dept.Check(ask.Check)
		if c == nil || chance(t, 15, "unasked") {
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
		parts = append(parts, c.ID+"="+rapid.SampledFrom(answers).Draw(t, c.ID))
	}
	if stow {
		if chance(t, 20, "unused") {
			parts = []string{model.WordUnused}
		}
		if chance(t, 40, "as is") {
			parts = append(parts, model.WordAsIs)
		}
		if chance(t, 40, "in anyway") {
			parts = append(parts, model.WordInAnyway)
		}
	}
	return strings.Join(parts, ";")
}

// Entry draws the next entry of a log: mostly an act in one of its scenes, now
// and then a scene that opens after the others or beside them, or a change of
// the inventory. With devices it is written by any of them, who had seen as
// much as the draw says.
func Entry(t *rapid.T, l *Log, devices ...string) model.Entry {
	var e model.Entry
	all := l.State.Scenes()
	e.Scene = rapid.SampledFrom(all).Draw(t, "scene").ID
	switch {
	case chance(t, 3, "open"):
		e.Verb, e.Quantity = model.Open, model.Blank
		e.Scene = fmt.Sprintf("%s-%d", l.Device, len(l.Entries))
		for _, sc := range all {
			if rapid.Bool().Draw(t, "follows") {
				e.Takes = append(e.Takes, sc.ID)
			}
		}
	case chance(t, 6, "stores"):
		e.Verb, e.Stores = model.Stores, Patch(t, l.State)
	default:
		e.Act = Act(t, l.State)
	}
	if len(devices) > 0 {
		e.Stamp.Device = rapid.SampledFrom(devices).Draw(t, "device")
		e.Seen = l.State.Seen()
		for _, d := range devices {
			if d != e.Stamp.Device && e.Seen[d] > 0 {
				e.Seen[d] = max(0, e.Seen[d]-rapid.IntRange(0, 5).Draw(t, "behind "+d))
			}
		}
	}
	return e
}
