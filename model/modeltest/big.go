package modeltest

import (
	"fmt"

	"tarpside/model"
)

// Big is a department of so many lines on four rigs, for the benchmarks: one
// in ten is a kit that holds the nine after it.
func Big(lines int) *model.Department {
	d := &model.Department{Checks: Yard().Checks, Members: Yard().Members}
	for r := range 4 {
		rig := fmt.Sprintf("R%d", r)
		d.Rigs = append(d.Rigs, model.Rig{ID: rig, Name: rig, Agency: "QC"})
		d.Slots = append(d.Slots, model.Slot{ID: rig, Rig: rig, Compartment: "A", Lap: 1})
	}
	for i := range lines {
		rig := fmt.Sprintf("R%d", i*4/lines)
		it := model.Item{ID: fmt.Sprintf("I%04d", i), Name: "Tool", Rig: rig, Slot: rig, Kind: model.Counted, Quantity: 4, WeightLb: 3,
			LeastUsable: model.Blank, Order: i}
		switch {
		case i%20 == 0:
			it.Kind, it.Quantity = model.Kit, 1
		case i%20 < 10 && d.Items[i-i%20].Rig == rig:
			it.Kit = d.Items[i-i%20].ID
		}
		d.Items = append(d.Items, it)
	}
	return d.Index()
}

// Round is the k-th act of a round trip of one line after the other: off the
// rig, to a place, back, and home.
func Round(lines, k int) model.Act {
	a := model.Act{By: "CREW", Item: fmt.Sprintf("I%04d", (k/4*7)%lines), Quantity: 1}
	switch k % 4 {
	case 0:
		a.Verb, a.From, a.To = model.PullOff, "home", "tarp"
	case 1:
		a.Verb, a.From, a.To, a.Holder = model.Hand, "tarp", "at:V1", "Crew 1"
	case 2:
		a.Verb, a.From, a.To = model.Return, "at:V1", "tarp"
	case 3:
		a.Verb, a.From, a.To = model.Stow, "tarp", "home"
	}
	return a
}
