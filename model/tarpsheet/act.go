package tarpsheet

import (
	"slices"
	"strings"

	"tarpside/model"
)

// Act is the act of a line, by the person who enters it. known is the board
// as the line's writer knew it: what was logged before the paper was begun,
// and the lines above. Where it does not say from where, the pieces are taken
// from the tarp if there are enough, else from their own slot, else from where
// most of them are.
func (w Written) Act(known *model.State, scene, by string) model.Act {
	a := w.act
	a.By = by
	line := known.Dept.ItemIndex(a.Item)
	to := model.Place{Kind: w.to}
	var from model.Place
	if line >= 0 {
		if p, err := known.Resolve(a.To, line, scene); err == nil {
			to = p
		}
		if p, err := known.Resolve(a.From, line, scene); a.From != "" && err == nil {
			from = p
		} else {
			from = source(known, line, scene, max(a.Quantity, 1), to)
		}
	} else { // it stands in no table: from the rig or from the tarp, nothing moves
		from = model.Place{Kind: model.Home}
		if to.Kind == model.Home {
			from.Kind = model.Tarp
		}
	}
	a.From = from.String()
	a.Verb = verb(known, from, to)
	if a.Verb == model.Stow {
		a.Reading = "as_is"
		a.To = to.String()
	}
	if to.Kind != model.At && to.Kind != model.With {
		a.Holder = ""
	}
	return a
}

// source is where n pieces that went to a place came from.
func source(s *model.State, line int, scene string, n int, to model.Place) model.Place {
	tarp, home := model.Place{Kind: model.Tarp, Ground: s.Scene(scene).Ground}, s.HomeOf(line)
	best, most := home, 0
	for _, st := range s.Line(line).Stacks {
		if st.N > most && st.Place != to && st.Place.Kind != model.Used {
			best, most = st.Place, st.N
		}
	}
	l := s.Line(line)
	switch {
	case to != tarp && l.N(tarp) >= n:
		return tarp
	case to != home && l.N(home) >= n && best.Kind != model.At:
		return home
	case most == 0: // all of them are there already
		return to
	}
	return best
}

// verb is the word for going from one place to another. Where there is none,
// eyes saw the pieces there.
func verb(s *model.State, from, to model.Place) model.Verb {
	for _, v := range []model.Verb{model.PullOff, model.Direct, model.Hand, model.MoveTo, model.Return, model.TakeOut, model.Use,
		model.Charge, model.Bag, model.Carry, handVerb(s.Dept, to.Name), model.TakeBack, model.Found, model.Stow} {
		row := model.Table[v]
		outOfKit := from.Kind == model.InKit && s.Real(from).Kind != model.Home
		if from != to && slices.Contains(row.From, from.Kind) && slices.Contains(row.To, to.Kind) && !(outOfKit && (v == model.PullOff || v == model.Direct)) {
			return v
		}
	}
	return model.Seen
}

// handVerb is how pieces go to an agency: handed over with a patient, or lent.
func handVerb(d *model.Department, agency string) model.Verb {
	if a := d.Agency(agency); a != nil {
		kind := strings.ToLower(a.Kind)
		if strings.Contains(kind, "ems") || strings.Contains(kind, "ambulance") || strings.Contains(kind, "hospital") {
			return model.Handover
		}
	}
	return model.Lend
}
