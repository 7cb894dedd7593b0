package restock_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/restock"
)

// The table of worked sums, row "sets".
func TestTheUsableSetsAreTheWorkedSumAndTheMissingKeyIsNamed(t *testing.T) {
	struts := []restock.Need{{"strut", 1, 4}, {"foot", 1, 5}, {"strap", 1, 6}, {"pin", 2, 7}}
	n, lacks := restock.Sets(struts)
	if n != 3 || !slices.Equal(lacks, []restock.Lack{{"pin", 1}}) {
		t.Errorf("%d sets, %v", n, lacks)
	}
	n, lacks = restock.Sets([]restock.Need{{"pump", 1, 1}, {"key", 1, 0}, {"hose", 2, 0}, {"rag", 0, 0}})
	if n != 0 || !slices.Equal(lacks, []restock.Lack{{"key", 1}, {"hose", 2}}) {
		t.Errorf("%d sets, %v", n, lacks)
	}
	if n, lacks := restock.Sets(nil); n != 0 || lacks != nil {
		t.Errorf("no kinds: %d sets, %v", n, lacks)
	}
}

func TestWithWhatIsLackingThereIsExactlyOneSetMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var needs []restock.Need
		for i := range rapid.IntRange(1, 6).Draw(t, "kinds") {
			needs = append(needs, restock.Need{Name: fmt.Sprint(i), Need: rapid.IntRange(1, 4).Draw(t, "need"), Have: rapid.IntRange(-1, 20).Draw(t, "have")})
		}
		n, lacks := restock.Sets(needs)
		for _, k := range needs {
			if n*k.Need > max(0, k.Have) {
				t.Fatalf("%d sets of %v", n, needs)
			}
		}
		for i, k := range needs {
			for _, l := range lacks {
				if l.Name == k.Name {
					needs[i].Have = max(0, k.Have) + l.N
				}
			}
		}
		if more, _ := restock.Sets(needs); len(lacks) == 0 || more != n+1 {
			t.Fatalf("%d sets, and %d with %v", n, more, lacks)
		}
	})
}

func TestWhatExpiresSoonestComesFirstAndAnUnreadableDateBeforeAll(t *testing.T) {
	lots := []restock.Lot{restock.NewLot("pads", 2, "2027-03"), restock.NewLot("heat pack", 6, "2026-12-01"), restock.NewLot("gel", 1, "smudged"),
		restock.NewLot("mask", 4, "31 Mar 2027"), restock.NewLot("old", 1, "11/2026"), restock.NewLot("blank", 1, "")}
	var names []string
	for _, l := range restock.ByExpiry(lots) {
		names = append(names, l.Name)
	}
	if got := strings.Join(names, " "); got != "blank gel old heat pack mask pads" {
		t.Errorf("%s", got)
	}
	for day, want := range map[string]string{"2026-11-30": "", "2026-12-01": "old", "2026-12-02": "heat pack old", "2027-04-01": "heat pack mask old pads"} {
		today, err := time.Parse(time.DateOnly, day)
		if err != nil {
			t.Fatal(err)
		}
		var gone []string
		for _, l := range lots {
			if l.Expired(today.Add(20 * time.Hour)) {
				gone = append(gone, l.Name)
			}
		}
		slices.Sort(gone)
		if got := strings.Join(gone, " "); got != want {
			t.Errorf("on %s expired: %q, want %q", day, got, want)
		}
	}
	for _, bad := range []string{"2026-02-30", "03/04/2026", "2026-13", "never"} {
		if l := restock.NewLot("x", 1, bad); l.Known {
			t.Errorf("%q was read as %v", bad, l.Last)
		}
	}
}

func TestOrdersAreBySupplierInWholePacks(t *testing.T) {
	row := func(id, name, supplier string, pack, order int) restock.Row {
		return restock.Row{Name: name, Order: order, Stock: &model.Stock{ID: id, Name: name, Pack: pack, Extra: map[string]string{"supplier": supplier}}}
	}
	got := restock.Orders([]restock.Row{row("1", "Tape", "B", 1, 3), row("2", "Mask", "A", 20, 40), row("3", "Gauze", "B", 10, 10),
		row("4", "Flare", "A", 36, 0), row("5", "Pad", "", 0, 2), {Name: "no store line", Order: 4}})
	want := []restock.Order{{"", []restock.OrderLine{{"5", "Pad", 2, 1}}}, {"A", []restock.OrderLine{{"2", "Mask", 2, 20}}},
		{"B", []restock.OrderLine{{"3", "Gauze", 1, 10}, {"1", "Tape", 3, 1}}}}
	if fmt.Sprint(got) != fmt.Sprint(want) || got[1].Lines[0].Pieces() != 40 {
		t.Errorf("%+v, want %+v", got, want)
	}
}

// Cachon and Terwiesch, Matching Supply with Demand, Statistics Tutorial,
// p. 431: mean 1.25. The cumulative tables are those of any text.
func TestPoissonIsTheTextbooks(t *testing.T) {
	for mean, table := range map[float64][]float64{
		1.25: {.286505, .644636, .868468, .961731, .990876, .998162},
		0.5:  {.6065, .9098, .9856, .9982, .9998},
		1:    {.3679, .7358, .9197, .9810, .9963, .9994},
		2:    {.1353, .4060, .6767, .8571, .9473, .9834, .9955},
		3:    {.0498, .1991, .4232, .6472, .8153, .9161, .9665, .9881},
		// Stevenson, Operations Management, 14th ed., ch. 12, example 15
		4: {.018, .092, .238, .433, .629, .785},
		5: {.0067, .0404, .1247, .2650, .4405, .6160, .7622, .8666, .9319, .9682, .9863},
	} {
		off := 0.00006
		switch mean {
		case 1.25:
			off = 0.0000006
		case 4:
			off = 0.0006
		}
		for k, want := range table {
			if got := restock.Poisson(k, mean); math.Abs(got-want) > off {
				t.Errorf("mean %v, F(%d) = %v, want %v", mean, k, got, want)
			}
		}
	}
	for k, want := range map[int]float64{10: .5830, 12: .7916} {
		if got := restock.Poisson(k, 10); math.Abs(got-want) > 0.00006 {
			t.Errorf("mean 10, F(%d) = %v, want %v", k, got, want)
		}
	}
	for k, want := range []float64{1.25000, .53650, .18114, .04961, .01134} {
		if got := restock.Loss(k, 1.25); math.Abs(got-want) > 0.000006 {
			t.Errorf("mean 1.25, L(%d) = %v, want %v", k, got, want)
		}
	}
}

func TestTheFewestThatCoverAreTheTextbooks(t *testing.T) {
	// Stevenson, example 15: short 3 dollars, left over 2, so 60 %: stock 4.
	if got := restock.Cover(4, 3.0/(3+2)); got != 4 {
		t.Errorf("%d, want 4", got)
	}
	// The shirts of Cachon and Terwiesch: 1.5 a day over three days and the day
	// itself, mean 6; the answers are worked out from the Poisson table.
	if got := restock.Cover(6, 6/(6+0.01)); got != 14 {
		t.Errorf("%d, want 14", got)
	}
	for want, got := range map[float64]float64{.1528: 1 - restock.Poisson(8, 6), .8925: 1 - restock.Loss(9, 6)/1.5, .9484: 1 - restock.Loss(10, 6)/1.5} {
		if math.Abs(got-want) > 0.00006 {
			t.Errorf("%v, want %v", got, want)
		}
	}
}

func TestTheLevelOfASlowMoverCoversNineteenWaitsOfTwentyAndNoMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		st := &model.Stock{WeeklyMean: rapid.Float64Range(0, 9).Draw(t, "mean"), LeadWeeks: rapid.Float64Range(0, 9).Draw(t, "lead")}
		l := restock.SlowMover(st)
		mean := st.WeeklyMean * st.LeadWeeks
		if restock.Poisson(l.Point, mean) < 0.95 || l.Point > 0 && restock.Poisson(l.Point-1, mean) >= 0.95 {
			t.Fatalf("%+v at a mean of %v", l, mean)
		}
		if l.Few != (st.WeeklyMean*52 < 10) || l.Why == "" {
			t.Fatalf("%+v for %v a week", l, st.WeeklyMean)
		}
	})
	if l := restock.SlowMover(&model.Stock{WeeklyMean: 0.05, LeadWeeks: 4}); !l.Few || l.Point != 1 || !strings.Contains(l.Why, "by hand") {
		t.Errorf("%+v", l)
	}
}

func FuzzNoStoreIsTooStrange(f *testing.F) {
	f.Add(0.5, 2.0, 3, "2026-11")
	f.Add(math.NaN(), math.Inf(1), -1, "99999999-99-99")
	f.Fuzz(func(t *testing.T, mean, lead float64, k int, date string) {
		l := restock.SlowMover(&model.Stock{WeeklyMean: mean, LeadWeeks: lead})
		for _, x := range []float64{restock.Poisson(k, mean), restock.Loss(k%50, mean), float64(l.Point)} {
			if math.IsNaN(x) || x < 0 || math.IsInf(x, 0) {
				t.Fatalf("%v", x)
			}
		}
		restock.ByExpiry([]restock.Lot{restock.NewLot("a", k, date), restock.NewLot("b", k, "2026-01")})
		restock.Sets([]restock.Need{{date, k, k}, {"b", 1, k}})
	})
}
