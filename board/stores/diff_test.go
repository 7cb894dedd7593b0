package stores_test

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/board/stores"
	"tarpside/model"
)

func TestADryRunSaysInWordsWhatWouldChange(t *testing.T) {
	old := mustRead(t, demoFS(t))
	files := spoil(t, [][3]string{
		{"items", "rescue spreader,R41,R41-L1-T,piece,1,ea,46,", "rescue spreader,R41,,piece,1,ea,,"},
		{"stock", "ST22,Spring punch,1,0.05,0.2,3,2\r\n", "ST23,\"Tape, wide\",4,0.5,0,1,1\r\n"},
		{"items", "1,3,ST22,R41 SPRING PUNCH", "1,3,,R41 SPRING PUNCH"},
		{"places", "V1,car on its side on the road\r\nV2,car down the bank\r\n", "V2,car down the bank\r\nV1,car on its side on the road\r\n"},
		{"stow_rules", "hoses hang on", "hoses rest on"},
	})
	now := mustRead(t, files)
	patch, changes := stores.Diff(old, now)
	var got []string
	for _, c := range changes {
		got = append(got, c.String())
	}
	want := []string{
		`items: R41-001 changes: slot "R41-L1-T" becomes blank, weight_lb "46" becomes blank`,
		`items: R41-023 changes: stock "ST22" becomes blank`,
		`stow_rules: P71-003 before P71-004 changes: why "hoses hang on the power unit" becomes "hoses rest on the power unit"`,
		`places: the rows stand in another order`,
		`stock: ST22 goes`,
		`stock: ST23 is new: stock "ST23", name "Tape, wide", on_hand "4", weekly_mean "0.5", lead_weeks "1", pack "1"`,
	}
	if !slices.Equal(got, want) {
		t.Errorf("got:\n%s", strings.Join(got, "\n"))
	}
	if len(patch.Put.Items) != 2 || len(patch.Put.Stock) != 1 || len(patch.Put.Rules) != 33 || !slices.Equal(patch.Whole, []string{"stow_rules"}) ||
		!reflect.DeepEqual(patch.Remove, map[string][]string{"stock": {"ST22"}}) ||
		!reflect.DeepEqual(patch.Order, map[string][]string{"places": {"V2", "V1", "BANK", "ROAD"}}) {
		t.Errorf("patch: %+v", patch)
	}
	if got := old.Patched(&patch); !reflect.DeepEqual(got, now) {
		t.Error("the patch does not make the new inventory")
	}
}

func TestTablesThatWereOnlySavedAndLoadedChangeNothing(t *testing.T) {
	d := mustRead(t, demoFS(t))
	patch, changes := stores.Diff(d, mustRead(t, demoFS(t)))
	if len(changes) > 0 || !reflect.DeepEqual(patch, model.InventoryPatch{}) {
		t.Errorf("%v %+v", changes, patch)
	}
}

// drawRows draws rows with keys of their own, in any order.
func drawRows[T any](t *rapid.T, name string, row func(id string) T) []T {
	ids := rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"a", "b", "c", "d", "e"}), 0, 5, rapid.ID).Draw(t, name)
	var rows []T
	for _, id := range ids {
		rows = append(rows, row(id))
	}
	return rows
}

func drawDepartment(t *rapid.T, name string) *model.Department {
	word := rapid.SampledFrom([]string{"", "x", "y"})
	n := rapid.IntRange(0, 2)
	extra := func(id string) map[string]string {
		if w := word.Draw(t, name+" extra "+id); w != "" {
			return map[string]string{"own " + w: w}
		}
		return nil
	}
	w := func() string { return word.Draw(t, name) }
	d := &model.Department{
		Rigs:  drawRows(t, name, func(id string) model.Rig { return model.Rig{ID: id, Name: w(), Extra: extra(id)} }),
		Slots: drawRows(t, name, func(id string) model.Slot { return model.Slot{ID: id, Rig: w(), Lap: n.Draw(t, name)} }),
		Items: drawRows(t, name, func(id string) model.Item {
			it := model.Item{ID: id, Name: w(), Kit: w(), Quantity: n.Draw(t, name), LeastUsable: model.Blank, Extra: extra(id)}
			if c := w(); c != "" {
				it.Checks = []model.Ask{{Check: c, Limit: 80, HasLimit: c == "x"}}
				it.OtherNames = []string{c, c}
			}
			return it
		}),
		Checks:   drawRows(t, name, func(id string) model.Check { return model.Check{ID: id, Answer: w()} }),
		Members:  drawRows(t, name, func(id string) model.Member { return model.Member{ID: id, Officer: w() == "x"} }),
		Agencies: drawRows(t, name, func(id string) model.Agency { return model.Agency{Code: id, Phone: w()} }),
		Places:   drawRows(t, name, func(id string) model.PlaceName { return model.PlaceName{Place: id, Meaning: w()} }),
		Stock:    drawRows(t, name, func(id string) model.Stock { return model.Stock{ID: id, WeeklySD: 0.5 * float64(n.Draw(t, name))} }),
	}
	for range rapid.IntRange(0, 3).Draw(t, name+" rules") {
		d.Rules = append(d.Rules, model.StowRule{First: w(), Then: w(), Why: w(), Extra: extra("rule")})
	}
	for range rapid.IntRange(0, 3).Draw(t, name+" pulls") {
		d.Pulls = append(d.Pulls, model.Pull{List: w(), Item: w(), Quantity: w()})
	}
	return d.Index()
}

func TestDiffAndItsPatchMakeTheNewInventory(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old, now := drawDepartment(t, "old"), drawDepartment(t, "new")
		before := fmt.Sprintf("%+v", *old)
		patch, changes := stores.Diff(old, now)
		if got := old.Patched(&patch); !reflect.DeepEqual(got, now) {
			t.Fatalf("got  %+v\nwant %+v\npatch %+v", got, now, patch)
		}
		if fmt.Sprintf("%+v", *old) != before {
			t.Fatal("the old inventory changed")
		}
		stored, err := json.Marshal(patch)
		if err != nil {
			t.Fatal(err)
		}
		var back model.InventoryPatch
		if err := json.Unmarshal(stored, &back); err != nil {
			t.Fatal(err)
		}
		if got := old.Patched(&back); !reflect.DeepEqual(got, now) {
			t.Fatalf("after storing: got %+v\nwant %+v", got, now)
		}
		if same := reflect.DeepEqual(old, now); same != (len(changes) == 0) {
			t.Fatalf("same is %v, changes %v", same, changes)
		}
		if again, more := stores.Diff(now, old.Patched(&patch)); len(more) > 0 || !reflect.DeepEqual(again, model.InventoryPatch{}) {
			t.Fatalf("a second patch: %v", more)
		}
	})
}

func TestPatchesMadeApartBothHold(t *testing.T) {
	d := mustRead(t, demoFS(t))
	a, b := d.Clone(), d.Clone()
	a.Items = slices.Insert(a.Items, 4, model.Item{ID: "R41-A", Name: "Lamp", Rig: "R41", Kind: model.Piece, Quantity: 1})
	b.Items[0].Name = "Spreader, battery"
	b.Items = append(b.Items, model.Item{ID: "R41-B", Name: "Rope", Rig: "R41", Kind: model.Piece, Quantity: 1})
	pa, _ := stores.Diff(d, a.Index())
	pb, _ := stores.Diff(d, b.Index())
	for _, got := range []*model.Department{d.Patched(&pa).Patched(&pb), d.Patched(&pb).Patched(&pa)} {
		if got.Items[4].ID != "R41-A" || got.Items[0].Name != "Spreader, battery" || got.Items[326].ID != "R41-B" || len(got.Items) != 327 {
			t.Errorf("%d lines, the fifth %s, the first %q", len(got.Items), got.Items[4].ID, got.Items[0].Name)
		}
	}
}
