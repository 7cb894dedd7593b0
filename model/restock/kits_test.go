package restock_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"tarpside/model"
	"tarpside/model/modeltest"
	"tarpside/model/restock"
)

// The box of the yard holds two saws, usable with one, and a bag with a
// cylinder in it.
func TestAKitIsASetAndItsMissingKeyIsNamed(t *testing.T) {
	for name, c := range map[string]struct{ script, want string }{
		"whole":            {"", "BAG usable whole [] []; BOX usable whole [] []"},
		"usable while one": {"count SAW 1 -> warned short", "BOX usable short [] [1 SAW]; BAG usable whole [] []"},
		"the key is gone":  {"count SAW 0 -> warned short", "BOX unusable short [1 SAW] [2 SAW]; BAG usable whole [] []"},
		"what is used up":  {"use MASK 5 home>used -> ok", "BAG usable whole [] []; BOX usable whole [] []"},
		"another at work":  {"take_out O2 home>at:V1 -> ok", "BAG unusable short [1 O2] [1 O2]; BOX usable whole [] []"},
	} {
		l := modeltest.New("A", modeltest.Yard())
		l.Open("S", "")
		if c.script != "" {
			if bad := modeltest.Script(l, c.script); bad != "" {
				t.Errorf("%s: %s", name, bad)
				continue
			}
		}
		var got []string
		for _, k := range restock.Kits(l.State) {
			usable, whole := "unusable", "short"
			if k.Usable {
				usable = "usable"
			}
			if k.Whole {
				whole = "whole"
			}
			say := func(all []restock.Lack) (out []string) {
				for _, x := range all {
					out = append(out, fmt.Sprintf("%d %s", x.N, x.Name))
				}
				return out
			}
			if id := l.State.Dept.Items[k.Line].ID; id == "BOX" || id == "BAG" {
				got = append(got, fmt.Sprintf("%s %s %s %v %v", id, usable, whole, say(k.Key), say(k.Lacks)))
			}
		}
		want := strings.Split(c.want, "; ")
		slices.Sort(want)
		if !alike(got, want) {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}

// alike compares without regard to order.
func alike(got, want []string) bool {
	got = slices.Clone(got)
	slices.Sort(got)
	return slices.Equal(got, want)
}

func TestDatesComeSoonestFirstAndUnreadOnesBeforeAll(t *testing.T) {
	d := &model.Department{
		Items: []model.Item{
			{ID: "A", Name: "Flare", Quantity: 12, Extra: map[string]string{"expires": "6 2028-01; 6 2027-03"}},
			{ID: "B", Name: "Pads", Quantity: 2, Checks: []model.Ask{{Check: "expiry"}}},
			{ID: "C", Name: "Gauze", Quantity: 4, Extra: map[string]string{"expires": "03/04/27"}},
			{ID: "D", Name: "Bar", Quantity: 1},
		},
		Stock: []model.Stock{{ID: "S", Name: "Stick", OnHand: 20, Extra: map[string]string{"expires": "2026-12-31"}}},
	}
	var got []string
	for _, l := range restock.Dates(d) {
		got = append(got, l.Item+l.Stock+" "+l.Text)
	}
	want := []string{"C 03/04/27", "B ", "S 2026-12-31", "A 2027-03", "A 2028-01"}
	if len(got) != len(want) {
		t.Fatalf("%q, want %q", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%q, want %q", got, want)
			break
		}
	}
	all := restock.Dates(d)
	if all[3].N != 6 || all[2].N != 20 || all[1].N != 2 {
		t.Errorf("lots %+v", all)
	}
	if days := all[2].DaysTo(time.Date(2026, 12, 1, 23, 0, 0, 0, time.UTC)); days != 30 {
		t.Errorf("%d days to the last of December, want 30", days)
	}
}

// Stevenson, Operations Management, 14th edition, chapter 12, example 15, page
// 537, for the Poisson table; the full set is in whole packs and over the point.
func TestAFullSetIsOverTheReorderPointInWholePacks(t *testing.T) {
	for _, c := range []struct {
		mean, sd, lead float64
		pack, want     int
	}{
		{8, 7, 2, 100, 100}, // the point of the worked sums, 32.33
		{8, 7, 2, 10, 40},
		{0.2, 0.4, 4, 5, 5},
		{0, 0, 0, 0, 1},
	} {
		st := &model.Stock{ID: "S", WeeklyMean: c.mean, WeeklySD: c.sd, LeadWeeks: c.lead, Pack: c.pack}
		r := restock.Row{Stock: st, ReorderPoint: restock.Point(c.mean, c.sd, c.lead)}
		if got := r.FullSet(); got != c.want || float64(got) <= r.ReorderPoint {
			t.Errorf("mean %v, sd %v, lead %v, packs of %d: %d, want %d over %v", c.mean, c.sd, c.lead, c.pack, got, c.want, r.ReorderPoint)
		}
	}
	if got := (restock.Row{}).FullSet(); got != 0 {
		t.Errorf("without a line of the store %d", got)
	}
}
