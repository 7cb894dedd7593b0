// Package modeltest has departments, scripts of acts and a full picture of a
// board, for the tests of model and of the rooms beside it.
package modeltest

import "tarpside/model"

// Yard is a small hand-made department. R1 is ours: loose pieces, a kit BOX
// with a kit BAG in it, a through bay with STRUT between CRATE1 and CRATE2,
// and DEEP behind FRONT. R2 is a neighbour's.
func Yard() *model.Department {
	d := equipped()
	d.Items = lines()
	return d.Index()
}

// equipped is the yard without its lines.
func equipped() *model.Department {
	yes := []string{"yes", "no"}
	return &model.Department{
		Rigs:     []model.Rig{{ID: "R1", Name: "Rescue 1", Agency: "QC"}, {ID: "R2", Name: "Rescue 2", Agency: "OC"}},
		Agencies: []model.Agency{{Code: "QC", Name: "Quillan County"}, {Code: "OC", Name: "Ostler Creek"}, {Code: "MED9", Name: "Medic 9"}},
		Members: []model.Member{
			{ID: "CHIEF", Officer: true, Agency: "QC"}, {ID: "CREW", Agency: "QC"}, {ID: "NEIGH", Officer: true, Agency: "OC"},
		},
		Slots: []model.Slot{
			{ID: "A", Rig: "R1", Compartment: "A", Lap: 1}, {ID: "BAY", Rig: "R1", Compartment: "T", Lap: 1},
			{ID: "L", Rig: "R1", Compartment: "T-left", Lap: 1}, {ID: "R", Rig: "R1", Compartment: "T-right", Lap: 3},
			{ID: "B-BACK", Rig: "R1", Compartment: "B", Lap: 2, Depth: 1}, {ID: "B-FRONT", Rig: "R1", Compartment: "B", Lap: 2},
			{ID: "N", Rig: "R2", Compartment: "N", Lap: 1},
		},
		Checks: []model.Check{
			{ID: "battery", Number: true, Max: 100}, {ID: "oxygen", Number: true, Max: 3000, Never: true},
			{ID: "clean", Words: yes, NeverWord: "blood"}, {ID: "dry", Words: yes}, {ID: "rope", Words: yes, Never: true},
			{ID: "count", Words: []string{"yes", "short", "no"}}, {ID: "Seal", Words: yes},
		},
		Rules: []model.StowRule{
			{First: "DEEP", Then: "FRONT", Closes: model.Alone},
			{First: "STRUT", Then: "CRATE1", Closes: model.BothEnds, Group: "bay"},
			{First: "STRUT", Then: "CRATE2", Closes: model.BothEnds, Group: "bay"},
		},
		Stock: []model.Stock{{ID: "ST1", Name: "Wide tape", OnHand: 6, WeeklyMean: 2, WeeklySD: 1, LeadWeeks: 2, Pack: 5}},
	}
}

func lines() (out []model.Item) {
	item := func(id string, n int, kind model.Kind, more func(*model.Item)) {
		it := model.Item{ID: id, Name: id, Rig: "R1", Slot: "A", Kind: kind, Quantity: n, WeightLb: 5, LeastUsable: model.Blank, Order: len(out)}
		if more != nil {
			more(&it)
		}
		out = append(out, it)
	}
	family := func(f string, checks ...model.Ask) func(*model.Item) {
		return func(it *model.Item) { it.Family, it.Critical, it.Checks = f, f != "", checks }
	}
	in := func(kit string, checks ...model.Ask) func(*model.Item) {
		return func(it *model.Item) { it.Kit, it.Checks = kit, checks }
	}
	slot := func(s string) func(*model.Item) { return func(it *model.Item) { it.Slot = s } }
	ask := func(check string) model.Ask { return model.Ask{Check: check} }
	least := func(check string, limit float64) model.Ask {
		return model.Ask{Check: check, Limit: limit, HasLimit: true}
	}

	item("LIGHT", 1, model.Piece, family("light"))
	item("CONE", 6, model.Counted, func(it *model.Item) { it.Family, it.Critical, it.LeastUsable = "cone", true, 4 })
	item("TAPE", 10, model.Consumable, func(it *model.Item) { it.Stock = "ST1" })
	item("BLOCK", 4, model.Counted, family("block"))
	item("DRILL", 1, model.Piece, family("drill", least("battery", 80), ask("clean")))
	item("METER", 1, model.Piece, family("", ask("battery")))
	item("ROPE", 1, model.Piece, family("", ask("rope")))
	item("BLANKET", 3, model.Counted, family("", ask("clean"), ask("dry")))
	item("CAN", 1, model.Piece, family("", ask("Seal"), ask("count")))
	item("HEAVY", 1, model.Piece, func(it *model.Item) { it.WeightLb = 51.01 })
	item("LIMIT", 1, model.Piece, func(it *model.Item) { it.WeightLb = 51 })
	item("PAIR", 1, model.Piece, func(it *model.Item) { it.TwoPerson = true })
	item("BOX", 1, model.Kit, func(it *model.Item) { it.WeightLb, it.Checks = 26, []model.Ask{ask("count")} })
	item("SAW", 2, model.Counted, func(it *model.Item) { it.Kit, it.LeastUsable = "BOX", 1 })
	item("PUNCH", 1, model.Piece, in("BOX", ask("clean")))
	item("MASK", 5, model.Consumable, func(it *model.Item) { it.Kit, it.WeightLb = "BOX", 0.1 })
	item("BAG", 1, model.Kit, in("BOX"))
	item("O2", 1, model.Piece, in("BAG", least("oxygen", 1150)))
	item("STRUT", 1, model.Piece, slot("BAY"))
	item("CRATE1", 1, model.Piece, slot("L"))
	item("CRATE2", 1, model.Piece, slot("R"))
	item("DEEP", 1, model.Piece, slot("B-BACK"))
	item("FRONT", 1, model.Piece, slot("B-FRONT"))
	theirs := func(f string) func(*model.Item) {
		return func(it *model.Item) { it.Rig, it.Slot, it.Family = "R2", "N", f }
	}
	item("NLIGHT", 1, model.Piece, theirs("light"))
	item("NBLOCK", 4, model.Counted, theirs("block"))
	item("NBLOCK2", 2, model.Counted, theirs("block"))
	return out
}
