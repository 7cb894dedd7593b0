package look

import (
	"math"

	"tarpside/model/sum"
)

// Chances are the starting chances and looks, a setting of the department.
type Chances struct {
	LastPlace, Tarp, Holder, WrongSlot, Others float64
	Sibling                                    float64 // Others, once a sibling went there
	Dim                                        float64 // by how much small, dark or night lowers sight
	Looks                                      Looks
}

// Looks are how well and how long each kind of look is.
type Looks struct{ LastPlace, Tarp, Holder, WrongSlot, Others Effort }

// Effort is the sight of a look and its minutes.
type Effort struct{ Sight, Minutes float64 }

// Usual are the chances with which a department starts. They are from memory
// and habit; its own record of what was found where is better.
func Usual() Chances {
	return Chances{LastPlace: 0.45, Tarp: 0.20, Holder: 0.15, WrongSlot: 0.10, Others: 0.10, Sibling: 0.40, Dim: 1.0 / 3,
		Looks: Looks{LastPlace: Effort{0.8, 4}, Tarp: Effort{0.9, 2}, Holder: Effort{0.9, 1}, WrongSlot: Effort{0.8, 3}, Others: Effort{0.5, 1}}}
}

// A Named is a place or a party by its id and in words.
type Named struct{ ID, Name string }

// Clues are what the log knows of a piece that is short.
type Clues struct {
	LastPlaces []Named // where it was last, the latest first; empty: never logged off the rig
	Tarp       bool    // there is a tarp to look under
	Holder     *Named  // the last who had it, to be asked
	OwnRig     *Named  // whose other slots may have it
	Others     []Party // companies and agencies that were there
	Dim        bool    // it is small or dark, or it is night
	Unsafe     []string
}

// A Party may have the piece. Sibling: a piece that goes with it went there.
type Party struct {
	Named
	Sibling bool
}

// Places are where to look, with their starting chances. A kind of place that
// this search does not have leaves its chance to the others; several of a kind
// share it, and parties with a sibling piece take the whole of theirs.
func (c Chances) Places(k Clues) []Place {
	sibling := false
	for _, p := range k.Others {
		sibling = sibling || p.Sibling
	}
	others := c.Others
	if sibling {
		others = c.Sibling
	}
	var out []Place
	// the chance of the rest when the others' share has grown
	rest := 1.0
	if base := c.LastPlace + c.Tarp + c.Holder + c.WrongSlot; sibling && base > 0 {
		rest = math.Max(0, 1-others) / base
	}
	add := func(x Named, agency string, chance float64, e Effort, eyes bool) {
		sight := sum.Sane(e.Sight, 0, 1)
		if k.Dim && eyes {
			sight *= 1 - sum.Sane(c.Dim, 0, 1)
		}
		p := Place{ID: x.ID, Name: x.Name, Agency: agency, Chance: sum.Sane(chance, 0, 1), Sight: sight, Minutes: e.Minutes}
		for _, id := range k.Unsafe {
			p.Unsafe = p.Unsafe || id == x.ID
		}
		out = append(out, p)
	}
	share := c.LastPlace * rest
	for i, x := range k.LastPlaces { // each earlier one half as likely as the next
		part := share / 2
		if i == len(k.LastPlaces)-1 {
			part = share
		}
		share -= part
		add(x, "", part, c.Looks.LastPlace, true)
	}
	if k.Tarp {
		add(Named{"tarp", "tarp and under it"}, "", c.Tarp*rest, c.Looks.Tarp, true)
	}
	if k.Holder != nil {
		add(*k.Holder, "", c.Holder*rest, c.Looks.Holder, false)
	}
	if k.OwnRig != nil {
		add(*k.OwnRig, "", c.WrongSlot*rest, c.Looks.WrongSlot, true)
	}
	for _, p := range k.Others {
		add(p.Named, p.ID, shareOf(k.Others, p, others, c.Others, sibling), c.Looks.Others, false)
	}
	return full(out)
}

// shareOf is the part of a party in the others' chance. Where a sibling went,
// parties with one share what it adds, and all share what there was before.
func shareOf(all []Party, p Party, others, usual float64, sibling bool) float64 {
	if !sibling {
		return others / float64(len(all))
	}
	with := 0
	for _, x := range all {
		if x.Sibling {
			with++
		}
	}
	if with == len(all) {
		return others / float64(with)
	}
	few := math.Min(usual, others) / float64(len(all))
	if p.Sibling {
		return (others - few*float64(len(all)-with)) / float64(with)
	}
	return few
}

// full makes the chances add up to one.
func full(places []Place) []Place {
	all := 0.0
	for _, p := range places {
		all += p.Chance
	}
	if all > 0 {
		for i := range places {
			places[i].Chance /= all
		}
	}
	return places
}
