package restock_test

import (
	"testing"
	"time"

	"tarpside/model"
	"tarpside/model/restock"
)

// kitOf is a state with a kit of so many keys (usable from least) and tapes.
func kitOf(keys, least int) *model.State {
	d := &model.Department{Items: []model.Item{
		{ID: "K", Name: "Lift key bag", Rig: "R", Kind: model.Kit, Quantity: 1, LeastUsable: 1},
		{ID: "A", Name: "Lift key", Rig: "R", Kind: model.Counted, Quantity: 2, Kit: "K", LeastUsable: least},
		{ID: "B", Name: "Tape", Rig: "R", Kind: model.Consumable, Quantity: 3, Kit: "K", LeastUsable: 0},
	}}
	d.Index()
	s := model.NewState(d)
	_ = keys
	return s
}

func TestAKitThatHoldsAllIsWhole(t *testing.T) {
	for _, k := range restock.Kits(kitOf(2, 1)) {
		if !k.Whole || !k.Usable || len(k.Lacks) != 0 || len(k.Key) != 0 {
			t.Errorf("%+v", k)
		}
	}
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
