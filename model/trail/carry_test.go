package trail_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model/trail"
)

func near(a, b, off float64) bool { return math.Abs(a-b) <= off }

// The table of worked sums, rows "bearer load".
func TestTheLoadOfABearerIsTheWorkedSum(t *testing.T) {
	for _, c := range []struct {
		pack        float64
		n           int
		level, hard float64
	}{{53.4, 6, 40.6, 54.0}, {53.4, 8, 30.4, 40.5}, {81.7, 6, 45.3, 60.2}, {81.7, 8, 34.0, 45.2}} {
		a := trail.BearerLoad(190, c.pack, c.n, trail.Rough, 0)
		if !near(a.Low, c.level, 0.06) || !near(a.High, c.hard, 0.06) {
			t.Errorf("%v lb, %d bearers: %v and %v, want %v and %v", c.pack, c.n, a.Low, a.High, c.level, c.hard)
		}
	}
	// A 180 lb patient in a 30 lb litter: 52.5 lb for four, 35 for six (worked by hand).
	for n, want := range map[int]float64{4: 52.5, 6: 35} {
		if a := trail.BearerLoad(180, 30, n, trail.Good, 0); a.Value != want || a.Low != a.High {
			t.Errorf("%d bearers: %v, want %v", n, a.Value, want)
		}
	}
	if a := trail.BearerLoad(190, 53.4, 6, trail.Rough, 0); !strings.Contains(a.Text, "54 lb") || !strings.Contains(a.Text, "wheel") {
		t.Errorf("%q does not say that it is too heavy", a.Text)
	}
	if a := trail.BearerLoad(190, 50, 0, trail.Good, 0); a.Value != 0 || a.Text != "nobody to carry" {
		t.Errorf("no bearers: %+v", a)
	}
}

func TestMoreBearersNeverMeansMoreForEach(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, k := rapid.Float64().Draw(t, "patient"), rapid.Float64().Draw(t, "package")
		n := rapid.IntRange(1, 100).Draw(t, "bearers")
		way := rapid.SampledFrom([]trail.Path{trail.Good, trail.Rough, trail.Steep, "?"}).Draw(t, "way")
		a, b := trail.BearerLoad(p, k, n, way, 10), trail.BearerLoad(p, k, n+1, way, 10)
		if !(b.Value <= a.Value) || math.IsInf(a.Value, 0) || b.Low < 10 {
			t.Fatalf("%d bearers %v, %d bearers %v", n, a.Value, n+1, b.Value)
		}
	})
}

// The table of worked sums, rows "bearers needed".
func TestThePeopleForACarryAreTheWorkedSum(t *testing.T) {
	for _, c := range []struct {
		trip         trail.Trip
		bearers, all int
	}{
		{trail.Trip{Path: trail.Good}, 12, 15},
		{trail.Trip{Path: trail.Rough}, 18, 21},
		{trail.Trip{}, 18, 21},
		{trail.Trip{Path: trail.Steep}, 24, 27},
		{trail.Trip{Path: trail.Good, Night: true}, 24, 27},
		{trail.Trip{Path: trail.Rough, Snow: true}, 24, 27},
	} {
		got := c.trip.Crew()
		if got.Bearers != c.bearers || got.All != c.all || got.OnLitter != 6 {
			t.Errorf("%+v: %+v, want %d and %d", c.trip, got, c.bearers, c.all)
		}
	}
	// Six carry and two walk along to swap in: common practice on a short easy carry.
	short := trail.Trip{Path: trail.Good, Km: 0.4}
	if c := short.Crew(); c.Least != 8 || !strings.Contains(short.Bearers(0).Text, "never fewer than 8") {
		t.Errorf("%+v %q", c, short.Bearers(0).Text)
	}
	if a := (trail.Trip{Path: trail.Rough}).Bearers(15); !strings.Contains(a.Text, "ask for 6 more") {
		t.Errorf("%q does not say how many are wanting", a.Text)
	}
}

// 1.6 km is 32 stretches of 50 m, 31 changes, or 16 of 100 m, 15 changes.
func TestReliefsStandEveryFiftyToAHundredMetres(t *testing.T) {
	if least, most, ok := (trail.Trip{Km: 1.6}).Reliefs(); least != 15 || most != 31 || !ok {
		t.Errorf("%d to %d, want 15 to 31", least, most)
	}
	if _, _, ok := (trail.Trip{}).Reliefs(); ok {
		t.Error("reliefs without a distance")
	}
}

func TestNaismithIsThePublishedRule(t *testing.T) {
	for _, c := range []struct {
		km, climb, want float64
		off             bool
		source          string
	}{
		{2.4, 240, 52.8, false, "worked sums: 53 min"},
		{0, 3000, 300, false, "a straight climb of 3 km is 5 h (published example)"},
		{20, 1000, 340, false, "20 km with 1 km of climb: 5 h 40 by the rule that is not rounded to 1:8"},
		{4, 0, 60, true, "4 km/h off the path (Aitken)"},
	} {
		if got := trail.Naismith(c.km, c.climb, c.off); !near(got, c.want, 1e-9) {
			t.Errorf("%s: %v, want %v", c.source, got, c.want)
		}
	}
}

// Tobler's function: 5.0367 km/h on the level, 6 at its best slope of -0.05,
// 3.5493 at +0.10, 2.0996 at +0.25, off the path 3.0220.
func TestToblerIsThePublishedFunction(t *testing.T) {
	for _, c := range []struct {
		slope, kmh float64
		off        bool
	}{{0, 5.0367, false}, {-0.05, 6, false}, {0.10, 3.5493, false}, {-0.10, 5.0367, false}, {0.25, 2.0996, false}, {0.50, 0.8753, false}, {0, 3.0220, true}} {
		min := trail.Tobler(1, c.slope*1000, c.off)
		if got := 60 / min; !near(got, c.kmh, 5e-5) {
			t.Errorf("slope %v: %v km/h, want %v", c.slope, got, c.kmh)
		}
	}
}

// The table of worked sums, rows "walk in time" and "carry out time".
func TestTheTimesAreTheWorkedSums(t *testing.T) {
	day := trail.Trip{Km: 2.4, ClimbM: 240}
	in, _ := day.In()
	if math.Round(in.Value) != 53 || !(in.Low < in.Value && in.High == in.Value) {
		t.Errorf("in by day %+v", in)
	}
	night := day
	night.Night = true
	if in, _ := night.In(); math.Round(in.Value) != 66 {
		t.Errorf("in by night %v, want 66", in.Value)
	}
	for way, want := range map[trail.Path]float64{trail.Good: 90, trail.Rough: 180, trail.Steep: 300} {
		if got := trail.CarryOut(1.5, way); !near(got, want, 1e-9) {
			t.Errorf("%s: %v min, want %v", way, got, want)
		}
		out, _ := trail.Trip{Km: 1.5 * trail.KmPerMile, Path: way}.Out()
		if !near(out.Low, want, 1e-6) || out.High <= out.Low {
			t.Errorf("%s: from %v to %v", way, out.Low, out.High)
		}
	}
	if a, ok := (trail.Trip{}).In(); ok || a.Text != "no distance, no estimate" {
		t.Errorf("time in without a distance: %+v", a)
	}
	if a, ok := (trail.Trip{}).Out(); ok || a.Value != 0 {
		t.Errorf("time out without a distance: %+v", a)
	}
}

// The table of worked sums, row "water".
func TestWaterIsTheWorkedSum(t *testing.T) {
	a := trail.Water(9, 5, 0.75)
	if a.Value != 34 || a.Text != "34 qt, 74.8 lb (do not exceed 1.5 qt/h each)" {
		t.Errorf("%+v", a)
	}
	b, ok := trail.Trip{Hours: 5}.Water(9)
	if !ok || b.Value != 34 || !strings.Contains(b.Limits, "heat not known") {
		t.Errorf("heat not known: %+v", b)
	}
	if c, ok := (trail.Trip{Hours: 5, Heat: trail.Hot}).Water(9); !ok || c.Value != 45 || strings.Contains(c.Limits, "not known") {
		t.Errorf("hot: %+v", c)
	}
	if _, ok := (trail.Trip{}).Water(9); ok {
		t.Error("water without hours")
	}
}

func TestNobodyIsGivenMoreWaterThanABodyTakes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, h := rapid.IntRange(-2, 60).Draw(t, "people"), rapid.Float64().Draw(t, "hours")
		a := trail.Water(n, h, rapid.Float64().Draw(t, "rate"))
		h = min(max(h, 0), 1000)
		if !(a.Value >= 0) || a.Value > math.Ceil(float64(max(n, 0))*h*trail.MostQtHour) {
			t.Fatalf("%v qt for %d people in %v h", a.Value, n, h)
		}
	})
	if a := trail.Water(1, 20, 1.5); a.Value != 12 {
		t.Errorf("%v qt in a day, want 12", a.Value)
	}
}

func FuzzNoTripIsTooStrange(f *testing.F) {
	f.Add(2.4, 240.0, 5.0, 9, "good", "hot", true)
	f.Add(math.NaN(), math.Inf(1), math.Inf(-1), -1, "", "", false)
	f.Add(1e308, -1e308, 1e308, 1<<62, "steep", "cool", true)
	f.Fuzz(func(t *testing.T, km, climb, hours float64, people int, path, heat string, night bool) {
		trip := trail.Trip{Km: km, ClimbM: climb, Hours: hours, Path: trail.Path(path), Heat: trail.Heat(heat), Night: night, OffPath: night}
		in, _ := trip.In()
		out, _ := trip.Out()
		water, _ := trip.Water(people)
		load := trail.BearerLoad(km, climb, people, trip.Path, hours)
		trip.Reliefs()
		for _, a := range append([]float64{in.Low, in.High, out.Low, out.High, water.Value, load.Low, load.High}, trip.Bearers(people).Value) {
			if math.IsNaN(a) || math.IsInf(a, 0) || a < 0 {
				t.Fatalf("%+v: %v", trip, a)
			}
		}
	})
}
