package modeltest

import (
	"fmt"
	"slices"

	"pgregory.net/rapid"

	"tarpside/model"
)

// one draws one of the choices.
func one[T any](t *rapid.T, label string, choices ...T) T { return rapid.SampledFrom(choices).Draw(t, label) }

// chance is true in about n of 100 draws.
func chance(t *rapid.T, n int, label string) bool { return rapid.IntRange(0, 99).Draw(t, label) < n }

// Department draws a department: kits nested up to three deep, every kind of
// line and check, both kinds of stow rule.
func Department(t *rapid.T) *model.Department {
	d := &model.Department{
		Agencies: []model.Agency{{Code: "QC"}, {Code: "OC"}, {Code: "MED9"}},
		Members: []model.Member{{ID: "CHIEF", Officer: true, Agency: "QC"}, {ID: "NEIGH", Officer: true, Agency: "OC"},
			{ID: "CREW", Agency: "QC"}},
		Checks: Yard().Checks,
		Stock: []model.Stock{{ID: "ST0", Name: "Shelf 0", OnHand: 5, WeeklyMean: 1, WeeklySD: 1, LeadWeeks: 2, Pack: 3},
			{ID: "ST1", Name: "Shelf 1", OnHand: 50, Pack: 1}},
	}
	for r := range rapid.IntRange(1, 3).Draw(t, "rigs") {
		rig := fmt.Sprintf("R%d", r)
		d.Rigs = append(d.Rigs, model.Rig{ID: rig, Name: rig, Agency: one(t, "agency", "QC", "OC")})
		for s := range 3 {
			d.Slots = append(d.Slots, model.Slot{ID: fmt.Sprintf("%s-%d", rig, s), Rig: rig,
				Compartment: one(t, "compartment", "A", "B"), Lap: rapid.IntRange(1, 3).Draw(t, "lap"), Depth: s % 2})
		}
	}
	for range rapid.IntRange(3, 14).Draw(t, "items") {
		d.Items = append(d.Items, Item(t, d, fmt.Sprintf("I%02d", len(d.Items))))
	}
	for range rapid.IntRange(0, 4).Draw(t, "rules") {
		rule(t, d)
	}
	return d.Index()
}

// Item draws a line for a department.
func Item(t *rapid.T, d *model.Department, id string) model.Item {
	rig := rapid.SampledFrom(d.Rigs).Draw(t, "rig").ID
	it := model.Item{ID: id, Name: one(t, "name", "Tool", id), Rig: rig, Slot: fmt.Sprintf("%s-%d", rig, rapid.IntRange(0, 2).Draw(t, "slot")),
		Kind: one(t, "kind", model.Piece, model.Counted, model.Consumable, model.Kit), Quantity: 1,
		WeightLb: float64(rapid.IntRange(0, 30).Draw(t, "weight")), Family: one(t, "family", "", "f", "g"),
		Critical: rapid.Bool().Draw(t, "critical"), LeastUsable: model.Blank, Order: len(d.Items), Stock: one(t, "stock", "", "ST0", "ST1")}
	if it.Kind == model.Counted || it.Kind == model.Consumable {
		it.Quantity = rapid.IntRange(1, 6).Draw(t, "quantity")
		if rapid.Bool().Draw(t, "least") {
			it.LeastUsable = rapid.IntRange(0, it.Quantity).Draw(t, "least usable")
		}
	}
	var kits []string
	for _, k := range d.Items {
		if k.Kind == model.Kit && k.Rig == rig && depth(d, k) < 3 {
			kits = append(kits, k.ID)
		}
	}
	if len(kits) > 0 && chance(t, 70, "in a kit") {
		it.Kit = rapid.SampledFrom(kits).Draw(t, "kit")
	}
	for _, c := range d.Checks {
		if chance(t, 25, "check "+c.ID) {
			a := model.Ask{Check: c.ID}
			if c.Number && chance(t, 80, "limit") {
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
func rule(t *rapid.T, d *model.Department) {
	i := rapid.IntRange(0, len(d.Items)-2).Draw(t, "first")
	j := rapid.IntRange(i+1, len(d.Items)-1).Draw(t, "then")
	first, then := d.Items[i].ID, d.Items[j].ID
	if rapid.Bool().Draw(t, "alone") {
		d.Rules = append(d.Rules, model.StowRule{First: first, Then: then, Closes: model.Alone})
		return
	}
	k := rapid.IntRange(i+1, len(d.Items)-1).Draw(t, "other end")
	for _, x := range []string{then, d.Items[k].ID} {
		d.Rules = append(d.Rules, model.StowRule{First: first, Then: x, Closes: model.BothEnds, Group: first})
	}
}

// Patch draws a change of the inventory as it is wanted: more or fewer of a
// line, another kit, a line more, a line less, another limit.
func Patch(t *rapid.T, s *model.State) *model.InventoryPatch {
	d := s.Wanted()
	p := &model.InventoryPatch{Put: &model.Department{}, Remove: map[string][]string{}}
	if len(d.Items) == 0 || chance(t, 20, "new line") {
		p.Put.Items = []model.Item{Item(t, d, fmt.Sprintf("N%d", rapid.IntRange(0, 9).Draw(t, "new id")))}
		return p
	}
	it := rapid.SampledFrom(d.Items).Draw(t, "changed")
	lives := slices.ContainsFunc(d.Items, func(x model.Item) bool { return x.Kit == it.ID })
	switch {
	case chance(t, 20, "remove") && !lives:
		p.Remove[model.TableItems] = []string{it.ID}
		return p
	case chance(t, 40, "kit"):
		it.Kit = ""
		if k := rapid.SampledFrom(d.Items).Draw(t, "new kit"); k.Kind == model.Kit && k.Rig == it.Rig && !within(d, k, it.ID) {
			it.Kit = k.ID
		}
	case it.Kind == model.Counted || it.Kind == model.Consumable:
		it.Quantity = rapid.IntRange(1, 8).Draw(t, "new quantity")
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
