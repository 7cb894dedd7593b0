package model

import (
	"cmp"
	"slices"
	"strings"
)

// WhereRow is so many pieces of a line at a real place other than home.
type WhereRow struct {
	Line     int
	Quantity int
	Place    Place
	Holder   string // different holders joined with "+"
}

// Where lists every line and real place but home, what is in kits included,
// sorted by item and place. Real is the place of the outermost kit.
func (s *State) Where() []WhereRow {
	var out []WhereRow
	for i, l := range s.lines {
		rows := map[Place]*WhereRow{}
		holders := map[Place][]string{}
		for _, st := range l.Stacks {
			p := s.Real(st.Place)
			if p.Kind == Home {
				continue
			}
			if rows[p] == nil {
				rows[p] = &WhereRow{Line: i, Place: p}
			}
			rows[p].Quantity += st.N
			if h := s.RealHolder(i, st.Place); h != "" {
				holders[p] = union(holders[p], h)
			}
		}
		for p, r := range rows {
			slices.Sort(holders[p])
			r.Holder = strings.Join(holders[p], "+")
			out = append(out, *r)
		}
	}
	slices.SortFunc(out, func(a, b WhereRow) int {
		return cmp.Or(strings.Compare(s.Dept.Items[a.Line].ID, s.Dept.Items[b.Line].ID),
			strings.Compare(a.Place.String(), b.Place.String()), strings.Compare(a.Place.Ground, b.Place.Ground))
	})
	return out
}

// PlaceRow is so many pieces of a line at a place itself.
type PlaceRow struct {
	Line     int
	Quantity int
	Place    Place
	Holder   string
}

// Leaving lists a rig's lines by place, but for home, kits and what was used.
func (s *State) Leaving(rig string) []PlaceRow {
	return s.places(func(i int, p Place) bool {
		return s.Dept.Items[i].Rig == rig && p.Kind != Home && p.Kind != InKit && p.Kind != Used
	})
}

// BringBack lists every line that an agency has or that rides on another rig.
func (s *State) BringBack() []PlaceRow {
	return s.places(func(_ int, p Place) bool { return p.Kind == With || p.Kind == Riding })
}

// Books lists every line and place itself but home and kits.
func (s *State) Books() []PlaceRow {
	return s.places(func(_ int, p Place) bool { return p.Kind != Home && p.Kind != InKit })
}

// places lists the stacks that are wanted, sorted by item and place.
func (s *State) places(want func(line int, p Place) bool) []PlaceRow {
	var out []PlaceRow
	for i, l := range s.lines {
		for _, st := range l.Stacks {
			if want(i, st.Place) {
				out = append(out, PlaceRow{i, st.N, st.Place, st.Holder})
			}
		}
	}
	slices.SortFunc(out, func(a, b PlaceRow) int {
		return cmp.Or(strings.Compare(s.Dept.Items[a.Line].ID, s.Dept.Items[b.Line].ID),
			strings.Compare(a.Place.String(), b.Place.String()), strings.Compare(a.Place.Ground, b.Place.Ground))
	})
	return out
}

// ByItem lists the positions of all lines in the order of their ids.
func (d *Department) ByItem() []int {
	out := make([]int, len(d.Items))
	for i := range out {
		out[i] = i
	}
	slices.SortFunc(out, func(a, b int) int { return strings.Compare(d.Items[a].ID, d.Items[b].ID) })
	return out
}

// A ReadyRow is a family of a rig with a critical line and fewer pieces ready
// than its full set.
type ReadyRow struct {
	Rig, Family            string
	Full, LeastUsable, Now int
	Enough                 bool // the least usable or more are ready
	Lines                  []int
}

// Ready lists what each rig could not do, or only just, if it were sent now.
func (s *State) Ready() []ReadyRow {
	type key struct{ rig, family string }
	rows := map[key]*ReadyRow{}
	critical := map[key]bool{}
	for i := range s.Dept.Items {
		it := &s.Dept.Items[i]
		if it.Family == "" {
			continue
		}
		k := key{it.Rig, it.Family}
		if rows[k] == nil {
			rows[k] = &ReadyRow{Rig: it.Rig, Family: it.Family}
		}
		r := rows[k]
		r.Full += it.Quantity
		r.Now += s.ReadyNow(i)
		r.Lines = append(r.Lines, i)
		if it.Critical {
			critical[k] = true
			r.LeastUsable += it.Least()
		}
	}
	var out []ReadyRow
	for k, r := range rows {
		if r.Enough = r.Now >= r.LeastUsable; critical[k] && r.Now < r.Full {
			out = append(out, *r)
		}
	}
	slices.SortFunc(out, func(a, b ReadyRow) int {
		return cmp.Or(strings.Compare(a.Rig, b.Rig), strings.Compare(a.Family, b.Family))
	})
	return out
}

// ReadyNow counts the pieces of a line whose home place is really home, less
// those tagged there and those in doubt.
func (s *State) ReadyNow(i int) int {
	if !s.Aboard(i) {
		return 0
	}
	l := s.lines[i]
	return l.N(s.HomeOf(i)) - l.TaggedHome - l.Doubt
}

// A Checkpoint is what of a rig lies at a real place.
type Checkpoint struct {
	Rig      string
	Place    Place
	Lines    int // not in a kit
	Pieces   int
	WeightLb float64
}

// Checkpoints adds up by rig and real place but home, sorted by both.
func (s *State) Checkpoints() []Checkpoint {
	type key struct {
		rig   string
		place Place
	}
	sum := map[key]*Checkpoint{}
	for i, l := range s.lines {
		it := &s.Dept.Items[i]
		outside := map[Place]bool{}
		for _, st := range l.Stacks {
			p := s.Real(st.Place)
			if p.Kind == Home {
				continue
			}
			k := key{it.Rig, p}
			if sum[k] == nil {
				sum[k] = &Checkpoint{Rig: it.Rig, Place: p}
			}
			sum[k].Pieces += st.N
			sum[k].WeightLb += float64(st.N) * it.WeightLb
			if st.Place.Kind != InKit && !outside[p] {
				outside[p] = true
				sum[k].Lines++
			}
		}
	}
	var out []Checkpoint
	for _, c := range sum {
		out = append(out, *c)
	}
	slices.SortFunc(out, func(a, b Checkpoint) int {
		return cmp.Or(strings.Compare(a.Rig, b.Rig), strings.Compare(a.Place.String(), b.Place.String()),
			strings.Compare(a.Place.Ground, b.Place.Ground))
	})
	return out
}
