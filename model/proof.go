package model

// A ProofRow is a line's quantity over the kinds of place, in the order of
// PlaceKinds. Pieces in a kit count under the kit, wherever that is.
type ProofRow struct {
	Line     int
	Quantity int
	By       [11]int
}

// Proof is the trial balance of every line, sorted by item. In each row the
// places add up to the quantity that the rig owns.
func (s *State) Proof() []ProofRow {
	out := make([]ProofRow, 0, len(s.lines))
	for _, i := range s.Dept.ByItem() {
		r := ProofRow{Line: i, Quantity: s.Dept.Items[i].Quantity}
		for _, st := range s.lines[i].Stacks {
			r.By[kindAt[st.Place.Kind]] += st.N
		}
		out = append(out, r)
	}
	return out
}

var kindAt = func() map[PlaceKind]int {
	m := map[PlaceKind]int{}
	for i, k := range PlaceKinds {
		m[k] = i
	}
	return m
}()

// Unbalanced lists the lines whose places do not add up to what the rig owns,
// or hold fewer than no pieces. It is empty, always; the board shows it if
// ever it is not.
func (s *State) Unbalanced() []int {
	var bad []int
	for i, l := range s.lines {
		n, ok := 0, true
		for _, st := range l.Stacks {
			n += st.N
			ok = ok && st.N > 0
		}
		if !ok || n != s.Dept.Items[i].Quantity {
			bad = append(bad, i)
		}
	}
	return bad
}

// An Account is the trial balance of the scene in the words of the foot:
// CameOff pieces were away from their home place at some time in the scene,
// a line's most pieces away at once; the other terms say where they are now.
// They are real places: what is in a kit is where the kit is.
type Account struct {
	CameOff                      int
	Home, Tarp, Out              int
	Elsewhere                    int // on the ground of another scene that is open
	Carried, With                int
	Charging, Bagged, Used, Lost int
	Unexplained                  int
}

// Adds tells whether the terms add up to what came off.
func (a Account) Adds() bool {
	return a.CameOff == a.Home+a.Tarp+a.Out+a.Elsewhere+a.Carried+a.With+a.Charging+a.Bagged+a.Used+a.Lost+a.Unexplained
}

// Account makes the trial balance of a scene, for one rig or, with "", for all.
func (s *State) Account(scene, rig string) Account {
	var a Account
	ground := s.Scene(scene).Ground
	for i := range s.lines {
		if rig == "" || s.Dept.Items[i].Rig == rig {
			s.post(&a, i, ground)
		}
	}
	return a
}

// AccountOf is what one line adds to the trial balance of a scene.
func (s *State) AccountOf(scene string, line int) Account {
	var a Account
	s.post(&a, line, s.Scene(scene).Ground)
	return a
}

// post adds a line to an account.
func (s *State) post(a *Account, line int, ground string) {
	l := s.lines[line]
	if l.Peak == 0 {
		return
	}
	a.CameOff += l.Peak
	a.Home += l.Peak
	for _, st := range l.Stacks {
		if t := a.term(s.Real(st.Place), ground); t != nil {
			*t += st.N
			a.Home -= st.N
		}
	}
}

// term is the term of the account for a real place; nil for home.
func (a *Account) term(p Place, ground string) *int {
	if p.onScene() && p.Ground != ground {
		return &a.Elsewhere
	}
	switch p.Kind {
	case Tarp:
		return &a.Tarp
	case At:
		return &a.Out
	case Riding:
		return &a.Carried
	case With:
		return &a.With
	case Charging:
		return &a.Charging
	case Bagged:
		return &a.Bagged
	case Used:
		return &a.Used
	case Lost:
		return &a.Lost
	case Unexplained:
		return &a.Unexplained
	}
	return nil
}
