package modeltest

import (
	"fmt"

	"tarpside/model"
)

// MoreRigs are rigs like those of a department, with all they carry, until
// there are so many lines in all.
func MoreRigs(d *model.Department, lines int) *model.Department {
	out := &model.Department{}
	for k := 1; len(d.Items)+len(out.Items) < lines; k++ {
		other := func(id string) string {
			if id == "" {
				return ""
			}
			return fmt.Sprintf("K%d%s", k, id)
		}
		for _, r := range d.Rigs {
			r.ID, r.Name = other(r.ID), fmt.Sprintf("%s of %d", r.Name, k)
			out.Rigs = append(out.Rigs, r)
		}
		for _, s := range d.Slots {
			s.ID, s.Rig = other(s.ID), other(s.Rig)
			out.Slots = append(out.Slots, s)
		}
		for _, it := range d.Items {
			it.ID, it.Rig, it.Slot, it.Kit, it.Stock = other(it.ID), other(it.Rig), other(it.Slot), other(it.Kit), ""
			out.Items = append(out.Items, it)
		}
	}
	return out
}

// Trips are n acts: single pieces go to the tarp, to V1 and back to the tarp,
// one line after the other.
func Trips(d *model.Department, n int) []model.Act {
	var out []model.Act
	for k := 0; len(out) < n; k++ {
		it := &d.Items[k*7%len(d.Items)]
		if it.Kit != "" || it.Kind == model.Kit || it.Kind == model.Consumable {
			continue
		}
		way := []string{"home", "tarp", "at:V1", "tarp"}
		for i, verb := range []model.Verb{model.PullOff, model.Hand, model.Return} {
			out = append(out, model.Act{Verb: verb, Item: it.ID, Quantity: 1, From: way[i], To: way[i+1]})
		}
	}
	return out[:n]
}
