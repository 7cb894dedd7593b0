package restock_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/modeltest"
	"tarpside/model/restock"
)

func TestTheReorderPointIsTheTextbooks(t *testing.T) {
	for _, c := range []struct {
		mean, sd, lead, want float64
		source               string
	}{
		{350, 10, 1, 366.5, "Heizer and Render, Operations Management, ch. 12, resuscitation kits: z 1.65, safety stock 16.5 (from memory)"},
		{50, 3, 2, 107, "Stevenson, Operations Management, ch. 13, 50 jars a week, two weeks, with z 1.65 in place of its 1.28 (from memory)"},
		{15, 5, 2, 41.67, "Heizer and Render, ch. 12, 15 a day, two days, with z 1.65 in place of its 1.28 (from memory)"},
		{8, 7, 2, 32.33, "the table of worked sums"},
		{4, 0, 3, 12, "no spread: the use while waiting"},
		{0, 0, 0, 0, "nothing is used"},
		{2, 1, 2, 6.33, "6.3335 is rounded to two decimals"},
	} {
		if got := restock.Point(c.mean, c.sd, c.lead); math.Abs(got-c.want) > 0.005 {
			t.Errorf("%s: %v, want %v", c.source, got, c.want)
		}
	}
	// The same books with their own z: safety stock goes with z.
	for _, c := range []struct{ mean, sd, lead, z, want float64 }{{50, 3, 2, 1.28, 105.43}, {15, 5, 2, 1.28, 39.05}} {
		safety := restock.Point(c.mean, c.sd, c.lead) - c.mean*c.lead
		if got := c.mean*c.lead + safety*c.z/restock.ServiceZ; math.Abs(got-c.want) > 0.01 {
			t.Errorf("%v with z %v: %v, want %v", c.mean, c.z, got, c.want)
		}
	}
}

// Cumulative Poisson tables as any text prints them: F(k) of the whole number
// at or above the point is 95 % or more, so a store that orders above its
// point runs out in fewer than one wait of twenty.
func TestTheReorderPointCoversNineteenWaitsOfTwenty(t *testing.T) {
	for mean, table := range map[float64][]float64{
		0.5: {.6065, .9098, .9856, .9982, .9998},
		1:   {.3679, .7358, .9197, .9810, .9963, .9994},
		2:   {.1353, .4060, .6767, .8571, .9473, .9834, .9955},
		3:   {.0498, .1991, .4232, .6472, .8153, .9161, .9665, .9881},
		5:   {.0067, .0404, .1247, .2650, .4405, .6160, .7622, .8666, .9319, .9682, .9863},
	} {
		k := int(math.Ceil(restock.Point(mean, math.Sqrt(mean), 1)))
		if k >= len(table) || table[k] < 0.95 || table[max(0, k-2)] >= 0.95 {
			t.Errorf("mean %v: %d", mean, k)
		}
	}
}

func TestTheListSaysWhatToIssueAndWhatToOrder(t *testing.T) {
	for name, c := range map[string]struct{ script, want string }{
		"nothing used": {"pull LIGHT home>tarp -> ok", ""},
		"logged, and found at count": {`use TAPE 2 home>used -> ok
			count TAPE 5 -> warned unlogged_use`,
			"Wide tape R1:5 logged 2 found 3 before 6 issue 5 after 1 back 0 point 6.33 order 10"},
		"found at count only": {"count TAPE 9 -> warned unlogged_use",
			"Wide tape R1:1 logged 0 found 1 before 6 issue 1 after 5 back 0 point 6.33 order 5"},
		"more than the store has": {"use TAPE 8 home>used -> ok",
			"Wide tape R1:8 logged 8 found 0 before 6 issue 6 after 0 back 2 point 6.33 order 10"},
		"what was restocked is gone from the shelf": {`use TAPE 8 home>used -> ok
			restock TAPE 5 used>home -> ok`,
			"Wide tape R1:3 logged 3 found 0 before 1 issue 1 after 0 back 2 point 6.33 order 10"},
		"bagged or tagged, the larger": {`bag TAPE 2 home>bagged -> ok
			tag TAPE 3 -> ok
			use TAPE home>used -> ok`,
			"Wide tape R1:4 logged 4 found 0 before 6 issue 4 after 2 back 0 point 6.33 order 5"},
		"no line of the store": {`direct CONE 2 home>at:V1 -> ok straight_off
			count CONE 0 at:V1> -> warned short
			stop_looking CONE 2 by=CHIEF unexplained>lost -> ok
			use NBLOCK home>used -> warned not_consumable
			bag BLOCK home>bagged -> ok`,
			"CONE R1:2 logged 2 found 0 before 0 issue 0 after 0 back 2 point 0 order 0\n" +
				"NBLOCK R2:1 logged 1 found 0 before 0 issue 0 after 0 back 1 point 0 order 0"},
	} {
		l := modeltest.New("A", modeltest.Yard())
		l.Open("S", "")
		if bad := modeltest.Script(l, c.script); bad != "" {
			t.Errorf("%s: %s", name, bad)
		}
		got := ""
		for i, r := range restock.List(l.State) {
			if i > 0 {
				got += "\n"
			}
			got += fmt.Sprintf("%s %s logged %d found %d before %d issue %d after %d back %d point %s order %d", r.Name, r.ByRig(), r.Used,
				r.FoundAtCount, r.Before, r.Issue(), r.After(), r.Backorder(), r.Point(), r.Order)
		}
		if got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", name, got, c.want)
		}
	}
}

func TestTheFewestWholePacksThatLiftTheStoreAboveItsPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := modeltest.Yard()
		st := &d.Stock[0]
		st.OnHand, st.Pack = rapid.IntRange(0, 40).Draw(t, "on hand"), rapid.IntRange(0, 12).Draw(t, "pack")
		st.WeeklyMean, st.WeeklySD = rapid.Float64Range(0, 9).Draw(t, "mean"), rapid.Float64Range(0, 9).Draw(t, "sd")
		l := modeltest.New("A", d)
		l.Open("S", "")
		l.Do(model.Entry{Act: model.Act{Verb: model.Use, Item: "TAPE", Quantity: rapid.IntRange(1, 10).Draw(t, "used"), From: "home", To: "used"}})
		r := restock.List(l.State)[0]
		level, pack := r.After()-r.Backorder(), max(1, st.Pack)
		switch {
		case r.Issue() < 0 || r.Backorder() < 0 || r.After() < 0 || r.Issue()+r.Backorder() != r.Total() || r.After()+r.Issue() != r.Before:
			t.Fatalf("%+v does not add up", r)
		case float64(level) > r.ReorderPoint && r.Order != 0:
			t.Fatalf("orders %d at %d, above %v", r.Order, level, r.ReorderPoint)
		case float64(level) <= r.ReorderPoint && (r.Order%pack != 0 || float64(level+r.Order) <= r.ReorderPoint || float64(level+r.Order-pack) > r.ReorderPoint):
			t.Fatalf("orders %d in packs of %d at %d, point %v", r.Order, pack, level, r.ReorderPoint)
		}
	})
}
