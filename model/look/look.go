// Package look is the order in which to look for a piece that is short: the
// best chance for the minutes first, worked out anew after every place where
// it was not. It never says that a piece is lost; an officer does.
package look

import (
	"cmp"
	"math"
	"slices"

	"tarpside/model/sum"
)

// A Place is somewhere to look, or somebody to ask.
type Place struct {
	ID, Name string
	Chance   float64 // that the piece is there, 0 to 1
	Sight    float64 // that it is seen there if it is there, 0 to 1
	Minutes  float64 // that the look takes
	Unsafe   bool    // traffic, a load that may fall, power lines: nobody looks there
	Agency   string  // whom it asks; empty for a place
}

// Value is what a minute there is worth: chance x sight / minutes. It sorts;
// it is not for showing.
func (p Place) Value() float64 {
	if p.Minutes <= 0 {
		return p.worth() / soonest
	}
	return p.worth() / math.Max(p.Minutes, soonest)
}

// soonest is the shortest look, in minutes: none takes no time.
const soonest = 0.1

// worth is the chance to find it there with one look.
func (p Place) worth() float64 { return p.Chance * p.Sight }

// level makes the places' numbers sane: chances that add up to no more than
// one, what is no number is none. What is left to one is "somewhere else".
func level(places []Place) []Place {
	out := slices.Clone(places)
	all := 0.0
	for i := range out {
		p := &out[i]
		p.Chance, p.Sight, p.Minutes = sum.Sane(p.Chance, 0, 1), sum.Sane(p.Sight, 0, 1), sum.Sane(p.Minutes, soonest, 1e6)
		all += p.Chance
	}
	if all > 1 {
		for i := range out {
			out[i].Chance /= all
		}
	}
	return out
}

// better tells which of two places is looked at first: more for the minute,
// then the shorter look. A hair of a difference is none.
func better(a, b Place) int {
	va, vb := a.Value(), b.Value()
	if math.Abs(va-vb) > 1e-12*math.Max(va, vb) {
		return cmp.Compare(vb, va)
	}
	return cmp.Compare(a.Minutes, b.Minutes)
}

// Order is the places best first; equal ones keep their order. Those that are
// unsafe stand last and are not searched.
func Order(places []Place) []Place {
	out := level(places)
	slices.SortStableFunc(out, func(a, b Place) int {
		if a.Unsafe != b.Unsafe {
			if a.Unsafe {
				return 1
			}
			return -1
		}
		return better(a, b)
	})
	return out
}

// Not is the places after a look at one found nothing: there the chance falls
// to p(1-d)/(1-p d), and everywhere else it rises in the same measure. Found
// so far is the chance that the look had to find it.
func Not(places []Place, id string) (after []Place, had float64) {
	after = level(places)
	i := slices.IndexFunc(after, func(p Place) bool { return p.ID == id })
	if i < 0 {
		return after, 0
	}
	had = after[i].worth()
	if had >= 1 { // it was surely there and surely seen, and it was not: then nothing is known of it
		after[i].Chance = 0
		return after, 1
	}
	after[i].Chance *= 1 - after[i].Sight
	for k := range after {
		after[k].Chance = math.Min(1, after[k].Chance/(1-had))
	}
	return after, had
}

// After is the places in their order after looks that found nothing, and the
// chance that all those looks together had to find it.
func After(places []Place, looked ...string) (order []Place, had float64) {
	left := 1.0
	for _, id := range looked {
		var d float64
		places, d = Not(places, id)
		left *= 1 - d
	}
	return Order(places), 1 - left
}

// Twice is the chance to see what is there with two looks, 1-(1-a)(1-b).
func Twice(a, b float64) float64 {
	a, b = sum.Sane(a, 0, 1), sum.Sane(b, 0, 1)
	return 1 - (1-a)*(1-b)
}

// How the order is got, for those who ask.
const (
	Formula = "chance x sight / minutes, best first; after a failed look p(1-d)/(1-p d), elsewhere p/(1-p d)"
	Source  = "search theory: chance of area x chance of detection, Bayes after a failed look (sarinfo.bc.ca, re-search.org.uk); the starting chances are " + sum.FromMemory
	Limits  = "an order to look in, not a promise; never in traffic, under unstable loads or near power lines"
)
