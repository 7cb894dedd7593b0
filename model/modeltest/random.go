package modeltest

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"tarpside/model"
)

// Rand draws from a seed. A row of seeds is what a property test shrinks.
func Rand(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 1)) }

// one draws one of the choices.
func one[T any](r *rand.Rand, choices ...T) T { return choices[r.IntN(len(choices))] }

// chance is true in n of 100 draws.
func chance(r *rand.Rand, n int) bool { return r.IntN(100) < n }

// between draws a number, both ends included.
func between(r *rand.Rand, low, high int) int { return low + r.IntN(high-low+1) }

// Department draws a department: kits nested up to three deep, every kind of
// line and check, both kinds of stow rule.
func Department(r *rand.Rand) *model.Department {
	d := &model.Department{
		Agencies: []model.Agency{{Code: "QC"}, {Code: "OC"}, {Code: "MED9"}},
		Members: []model.Member{{ID: "CHIEF", Officer: true, Agency: "QC"}, {ID: "NEIGH", Officer: true, Agency: "OC"},
			{ID: "CREW", Agency: "QC"}},
		Checks: Yard().Checks,
		Stock: []model.Stock{{ID: "ST0", Name: "Shelf 0", OnHand: 5, WeeklyMean: 1, WeeklySD: 1, LeadWeeks: 2, Pack: 3},
			{ID: "ST1", Name: "Shelf 1", OnHand: 50, Pack: 1}},
	}
	for k := range between(r, 1, 3) {
		rig := fmt.Sprintf("R%d", k)
		d.Rigs = append(d.Rigs, model.Rig{ID: rig, Name: rig, Agency: one(r, "QC", "OC")})
		for s := range 3 {
			d.Slots = append(d.Slots, model.Slot{ID: fmt.Sprintf("%s-%d", rig, s), Rig: rig,
				Compartment: one(r, "A", "B"), Lap: between(r, 1, 3), Depth: s % 2})
		}
	}
	for range between(r, 3, 14) {
		d.Items = append(d.Items, Item(r, d, fmt.Sprintf("I%02d", len(d.Items))))
	}
	for range between(r, 0, 4) {
		rule(r, d)
	}
	return d.Index()
}

// Item draws a line for a department.
func Item(r *rand.Rand, d *model.Department, id string) model.Item {
	rig := one(r, d.Rigs...).ID
	it := model.Item{ID: id, Name: one(r, "Tool", id), Rig: rig, Slot: fmt.Sprintf("%s-%d", rig, between(r, 0, 2)),
		Kind: one(r, model.Piece, model.Counted, model.Consumable, model.Kit), Quantity: 1,
		WeightLb: float64(between(r, 0, 30)), Family: one(r, "", "f", "g"),
		Critical: chance(r, 50), LeastUsable: model.Blank, Order: len(d.Items), Stock: one(r, "", "ST0", "ST1")}
	if it.Kind == model.Counted || it.Kind == model.Consumable {
		it.Quantity = between(r, 1, 6)
		if chance(r, 50) {
			it.LeastUsable = between(r, 0, it.Quantity)
		}
	}
	var kits []string
	for _, k := range d.Items {
		if k.Kind == model.Kit && k.Rig == rig && depth(d, k) < 3 {
			kits = append(kits, k.ID)
		}
	}
	if len(kits) > 0 && chance(r, 70) {
		it.Kit = one(r, kits...)
	}
	for _, c := range d.Checks {
		if chance(r, 25) {
			a := model.Ask{Check: c.ID}
			if c.Number && chance(r, 80) {
				a.Limit, a.HasLimit = (c.Max+c.Min)/2, true
			}
			it.Checks = append(it.Checks, a)
		}
	}
	return it
}

func depth(d *model.Department, it model.Item) int {
	n := 1
	for it.Kit != "" {
		i := slices.IndexFunc(d.Items, func(x model.Item) bool { return x.ID == it.Kit })
		if n++; i < 0 || n > len(d.Items) {
			break
		}
		it = d.Items[i]
	}
	return n
}

// rule adds a stow rule, or a through bay of two; the first comes before the
// others in the table, so that rules make no loop.
func rule(r *rand.Rand, d *model.Department) {
	i := between(r, 0, len(d.Items)-2)
	j := between(r, i+1, len(d.Items)-1)
	first, then := d.Items[i].ID, d.Items[j].ID
	if chance(r, 50) {
		d.Rules = append(d.Rules, model.StowRule{First: first, Then: then, Closes: model.Alone})
		return
	}
	k := between(r, i+1, len(d.Items)-1)
	for _, x := range []string{then, d.Items[k].ID} {
		d.Rules = append(d.Rules, model.StowRule{First: first, Then: x, Closes: model.BothEnds, Group: first})
	}
}

// Patch draws a change of the inventory as it is wanted: more or fewer of a
// line, another kit, a line more, a line less, another limit.
func Patch(r *rand.Rand, s *model.State) *model.InventoryPatch {
	d := s.Wanted()
	p := &model.InventoryPatch{Put: &model.Department{}, Remove: map[string][]string{}}
	if len(d.Items) == 0 || chance(r, 20) {
		p.Put.Items = []model.Item{Item(r, d, fmt.Sprintf("N%d", between(r, 0, 9)))}
		return p
	}
	it := one(r, d.Items...)
	lives := slices.ContainsFunc(d.Items, func(x model.Item) bool { return x.Kit == it.ID })
	switch {
	case chance(r, 20) && !lives:
		p.Remove[model.TableItems] = []string{it.ID}
		return p
	case chance(r, 40):
		it.Kit = ""
		if k := one(r, d.Items...); k.Kind == model.Kit && k.Rig == it.Rig && !within(d, k, it.ID) {
			it.Kit = k.ID
		}
	case it.Kind == model.Counted || it.Kind == model.Consumable:
		it.Quantity = between(r, 1, 8)
		it.LeastUsable = model.Blank
	default:
		it.Checks = nil
	}
	p.Put.Items = []model.Item{it}
	return p
}

// within tells whether the line is the kit or holds it, to any depth.
func within(d *model.Department, k model.Item, id string) bool {
	for range d.Items {
		if k.ID == id {
			return true
		}
		up := d.Item(k.Kit)
		if up == nil {
			return false
		}
		k = *up
	}
	return true
}
