package trail

import "tarpside/model"

// Tallies are what a party has had at its place in a scene, line by line in
// the order of the inventory: what is there now with all that kits hold, what
// was used up and handed over from there, and what a count found missing. At
// is the place of the party; the entries are those of the log, in order.
func Tallies(s *model.State, at model.Place, scene string, entries []model.Entry) []Tally {
	w := wayOf{at: at, kits: map[string]model.Place{}, used: map[string]int{}, gave: map[string]int{}, short: map[string]int{}}
	for i := range entries {
		if e := &entries[i]; e.Taken() {
			for _, m := range e.Moves {
				w.follow(m, e.Scene == scene)
			}
		}
	}
	var out []Tally
	for i := range s.Dept.Items {
		it := &s.Dept.Items[i]
		now := 0
		for _, st := range s.Line(i).Stacks {
			if s.Real(st.Place) == at {
				now += st.N
			}
		}
		t := Tally{Item: it.ID, Name: it.Short(), Used: max(0, w.used[it.ID]), Gave: max(0, w.gave[it.ID])}
		t.Took = now + t.Used + t.Gave + max(0, w.short[it.ID])
		if t.Took > 0 {
			out = append(out, t)
		}
	}
	return out
}

// wayOf follows what leaves the party's place.
type wayOf struct {
	at                model.Place
	kits              map[string]model.Place // where each kit that moved was put last
	used, gave, short map[string]int
}

// real is the place of the outermost kit.
func (w *wayOf) real(p model.Place) model.Place {
	for range 32 { // kits nest, but never in a ring
		to, moved := w.kits[p.Name]
		if p.Kind != model.InKit || !moved {
			return p
		}
		p = to
	}
	return p
}

func (w *wayOf) follow(m model.Move, here bool) {
	from, to := w.real(m.From), w.real(m.To)
	w.kits[m.Item] = m.To
	if !here {
		return
	}
	for kind, n := range map[model.PlaceKind]map[string]int{model.Used: w.used, model.With: w.gave, model.Unexplained: w.short} {
		if from == w.at && to.Kind == kind {
			n[m.Item] += m.N
		}
		if m.From.Kind == kind && n[m.Item] > 0 {
			n[m.Item] = max(0, n[m.Item]-m.N)
		}
	}
}
