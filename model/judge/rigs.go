package judge

import (
	"cmp"
	"slices"

	"tarpside/model"
)

// aboutRig judges the rows about a rig or an agency.
func (r *ruling) aboutRig() string {
	rig := r.e.Rig
	known := r.s.KnownRig(rig) || r.s.Dept.Agency(rig) != nil && r.e.Verb != model.Vouch
	if rig == "" || !known && r.e.Verb != model.Arrive {
		r.detail = "no rig or agency is called " + rig
		if rig == "" {
			r.detail = "no rig is named"
		}
		return BadRow
	}
	switch r.e.Verb {
	case model.Accept:
		if m := r.s.Dept.Member(r.e.By); m == nil || !m.Officer {
			return NotOfficer
		}
	case model.Release, model.Leave:
		r.add(Leaving(r.s, rig, r.e.Scene)...)
	case model.Vouch:
		r.vouch()
	}
	return ""
}

// Leaving is what is open about a rig or an agency that wants to go, as the
// reasons of the reply.
func Leaving(s *model.State, rig, scene string) []string {
	var out, diffs, open, others, agency bool
	for i := range s.Dept.Items {
		l := s.Line(i)
		own := s.Dept.Items[i].Rig == rig
		for _, st := range l.Stacks {
			p := s.Real(st.Place)
			switch p.Kind {
			case model.Tarp, model.At:
				out = out || own
			case model.Unexplained:
				diffs = diffs || own
			case model.With, model.Riding, model.Charging, model.Bagged, model.Lost:
				open = open || own
			}
			others = others || p.Kind == model.Riding && p.Name == rig
			agency = agency || p.Kind == model.With && p.Name == rig
		}
		diffs = diffs || own && (l.Contest != nil || s.Extra(i, scene) > 0)
	}
	var reasons []string
	for _, x := range []struct {
		is     bool
		reason string
	}{{out, ItemsOut}, {diffs, OpenDiffs}, {open, OpenItems}, {others, CarriesOthers}, {agency, AgencyHasItems}} {
		if x.is && (x.reason == AgencyHasItems || s.KnownRig(rig)) {
			reasons = append(reasons, x.reason)
		}
	}
	return reasons
}

// closing warns of what a scene leaves open.
func (r *ruling) closing() {
	s := r.s
	sc := s.Scene(r.e.Scene)
	if len(sc.Unknown) > 0 {
		r.add(OpenDiffs)
	}
	for i := range s.Dept.Items {
		l := s.Line(i)
		for _, st := range l.Stacks {
			p := s.Real(st.Place)
			if (p.Kind == model.Tarp || p.Kind == model.At) && p.Ground == sc.Ground {
				r.add(ItemsOut)
			}
			if p.Kind == model.Unexplained {
				r.add(OpenDiffs)
			}
		}
		if l.Contest != nil || s.Extra(i, r.e.Scene) > 0 {
			r.add(OpenDiffs)
		}
	}
}

// vouch works out the moves of a driver's word that all of a rig is aboard:
// kits before what lives in them; a piece whose kit is not home stays.
func (r *ruling) vouch() {
	s, d := r.s, r.s.Dept
	depth := func(i int) (n int) {
		for k := d.Item(d.Items[i].Kit); k != nil && n < len(d.Items); k = d.Item(k.Kit) {
			n++
		}
		return n
	}
	var lines []int
	for i := range d.Items {
		if d.Items[i].Rig == r.e.Rig {
			lines = append(lines, i)
		}
	}
	slices.SortStableFunc(lines, func(a, b int) int { return cmp.Compare(depth(a), depth(b)) })
	moved := map[string]bool{}
	for _, i := range lines {
		home := s.HomeOf(i)
		for _, st := range s.Line(i).Stacks {
			if st.Place.Kind != model.Tarp && st.Place.Kind != model.At {
				continue
			}
			if !r.homeAfter(home, moved) {
				r.add(KitAway)
				continue
			}
			r.e.Moves = append(r.e.Moves, model.Move{Item: d.Items[i].ID, N: st.N, From: st.Place, To: home})
			moved[d.Items[i].ID] = true
			r.add(ByWord)
		}
	}
}

// homeAfter tells whether a place is really home once the moved kits are.
func (r *ruling) homeAfter(p model.Place, moved map[string]bool) bool {
	for range len(r.s.Dept.Items) {
		if p.Kind != model.InKit {
			break
		}
		k := r.s.Dept.ItemIndex(p.Name)
		if moved[p.Name] {
			p = r.s.HomeOf(k)
		} else if len(r.s.Line(k).Stacks) > 0 {
			p = r.s.Line(k).Stacks[0].Place
		}
	}
	return p.Kind == model.Home
}
