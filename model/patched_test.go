package model_test

import (
	"slices"
	"testing"

	"tarpside/model"
)

func TestAPatchChangesOnlyWhatItNames(t *testing.T) {
	rigs := func(ids ...string) (out []model.Rig) {
		for _, id := range ids {
			out = append(out, model.Rig{ID: id, Name: "was"})
		}
		return out
	}
	d := (&model.Department{
		Rigs:  rigs("A", "B", "C"),
		Rules: []model.StowRule{{First: "x", Then: "y"}, {First: "y", Then: "z"}},
	}).Index()
	put := &model.Department{Rigs: []model.Rig{{ID: "B", Name: "new"}, {ID: "D", Name: "new"}}}
	for _, c := range []struct {
		name  string
		patch model.InventoryPatch
		rigs  string
		rules int
	}{
		{"nothing", model.InventoryPatch{}, "A was,B was,C was", 2},
		{"put replaces in place and adds at the end", model.InventoryPatch{Put: put}, "A was,B new,C was,D new", 2},
		{"remove goes first", model.InventoryPatch{Put: put, Remove: map[string][]string{"rigs": {"B", "Z"}}}, "A was,C was,B new,D new", 2},
		{"order puts what it does not list behind", model.InventoryPatch{Put: put, Order: map[string][]string{"rigs": {"D", "Z", "C"}}}, "D new,C was,A was,B new", 2},
		{"whole replaces the table", model.InventoryPatch{Put: put, Whole: []string{"rigs"}}, "B new,D new", 2},
		{"whole with nothing empties it", model.InventoryPatch{Whole: []string{"stow_rules"}}, "A was,B was,C was", 0},
		{"rules without whole do not count", model.InventoryPatch{Put: &model.Department{Rules: []model.StowRule{{First: "q"}}}}, "A was,B was,C was", 2},
	} {
		got := d.Patched(&c.patch)
		text := ""
		for i, r := range got.Rigs {
			if i > 0 {
				text += ","
			}
			text += r.ID + " " + r.Name
			if got.Rig(r.ID) != &got.Rigs[i] {
				t.Errorf("%s: %s is not indexed", c.name, r.ID)
			}
		}
		if text != c.rigs || len(got.Rules) != c.rules {
			t.Errorf("%s: %s and %d rules", c.name, text, len(got.Rules))
		}
		if !slices.EqualFunc(d.Rigs, rigs("A", "B", "C"), func(a, b model.Rig) bool { return a.ID == b.ID && a.Name == b.Name }) {
			t.Fatalf("%s: the old department changed: %v", c.name, d.Rigs)
		}
	}
}
