package rundown_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/modeltest"
	"tarpside/model/rundown"
)

// scene is a yard with the saw's oxygen named as a D cylinder, and checks and
// lines for fuel, bars and air.
func scene() *modeltest.Log {
	d := modeltest.Yard()
	d.Checks = append(d.Checks, model.Check{ID: "fuel", Number: true, Max: 100}, model.Check{ID: "bars", Number: true, Max: 4}, model.Check{ID: "air", Number: true, Max: 5500})
	add := func(id, name, family, check string, limit float64) {
		d.Items = append(d.Items, model.Item{ID: id, Name: name, Rig: "R1", Slot: "A", Kind: model.Piece, Quantity: 1, Family: family, LeastUsable: model.Blank,
			Checks: []model.Ask{{Check: check, Limit: limit, HasLimit: limit > 0}}, Order: 100 + len(d.Items)})
	}
	add("D1", "Oxygen cylinder D", "o2", "oxygen", 1150)
	add("C1", "Oxygen cylinder C, carry", "o2c", "oxygen", 1150)
	add("GEN", "Generator", "generator", "fuel", 75)
	add("LAMP", "Hand lantern", "lantern", "bars", 3)
	add("AIR1", "Air cylinder", "scba", "air", 4050)
	add("CUT", "Cutter", "cutter", "battery", 80)
	l := modeltest.New("A", d.Index())
	l.Open("S", "")
	return l
}

// at does an act at a minute.
func at(l *modeltest.Log, min float64, a model.Act) *model.Entry {
	l.Clock.Wall = int64(1e9 + min*60000)
	if a.Quantity == 0 {
		a.Quantity = 1
	}
	return l.Do(model.Entry{Act: a, Scene: "S"})
}

func out(l *modeltest.Log, items ...string) {
	for _, id := range items {
		at(l, 0, model.Act{Verb: model.Direct, Item: id, From: "home", To: "at:V1"})
	}
}

func read(l *modeltest.Log, min float64, item, reading string) {
	at(l, min, model.Act{Verb: model.CheckIt, Item: item, Reading: reading})
}

func figure(t *testing.T, l *modeltest.Log, min float64, item string, lim rundown.Limits) rundown.Figure {
	t.Helper()
	for _, f := range rundown.Figures(l.State, l.Entries, "S", int64(1e9+min*60000), lim) {
		if l.State.Dept.Items[f.Line].ID == item {
			return f
		}
	}
	t.Fatalf("%s is not among the figures", item)
	return rundown.Figure{}
}

// The rows of the table of worked sums that a log can have.
func TestReadingsOfTheLogGiveTheWorkedSums(t *testing.T) {
	cold := rundown.Usual()
	cold.Fulls["drill"], cold.Fulls["cutter"], cold.Cold = 40, 40, true
	for _, c := range []struct {
		name, item string
		reads      map[float64]string
		want       float64 // minutes at the last reading, exact
		lim        rundown.Limits
	}{
		{"D, 1950 psi, 15 L/min (EMS formula)", "D1", map[float64]string{1: "oxygen=1950;flow=15"}, 18.667, rundown.Usual()},
		{"D, 600 psi, 15 L/min", "D1", map[float64]string{1: "oxygen=600;flow=15"}, 4.267, rundown.Usual()},
		{"D, 2000 psi, 10 L/min", "D1", map[float64]string{1: "oxygen=2000;flow=10"}, 28.8, rundown.Usual()},
		{"D, 1150 psi, 10 L/min", "D1", map[float64]string{1: "oxygen=1150;flow=10"}, 15.2, rundown.Usual()},
		{"D, 200 psi, 10 L/min", "D1", map[float64]string{1: "oxygen=200;flow=10"}, 0, rundown.Usual()},
		{"D, 150 psi, 10 L/min", "D1", map[float64]string{1: "oxygen=150;flow=10"}, 0, rundown.Usual()},
		{"battery 90 % then 66 % after 12 min, stop at 20 %", "CUT", map[float64]string{10: "battery=90", 22: "battery=66"}, 23, rundown.Usual()},
		{"battery, 40 min full, cold, full: 80 points of it less 30 %", "CUT", map[float64]string{1: "battery=100"}, 22.4, cold},
		{"a size that the table has not, by two readings", "C1", map[float64]string{1: "oxygen=1000", 11: "oxygen=800"}, 30, rundown.Usual()},
	} {
		l := scene()
		out(l, c.item)
		last := 0.0
		for _, m := range []float64{1, 10, 11, 22} {
			if r := c.reads[m]; r != "" {
				read(l, m, c.item, r)
				last = m
			}
		}
		f := figure(t, l, last, c.item, c.lim)
		if !f.Timed || math.Abs(f.Sum.Value-c.want) > 0.005 || f.Left != math.Floor(c.want+1e-6) {
			t.Errorf("%s: %v min (left %v), want %v: %s", c.name, f.Sum.Value, f.Left, c.want, f.Sum.Text)
		}
		if f.Measured != (len(c.reads) > 1) || f.Sum.Formula == "" || f.Sum.Source == "" || f.Sum.Limits == "" {
			t.Errorf("%s: %+v", c.name, f.Sum)
		}
	}
}

// generator tank 75 %, 3.5 h full, leave 10 %: 136.5 min.
func TestFuelByTheDepartmentsOwnTime(t *testing.T) {
	l := scene()
	out(l, "GEN")
	read(l, 1, "GEN", "fuel=75")
	lim := rundown.Usual()
	lim.Fulls["generator"] = 210
	if f := figure(t, l, 1, "GEN", lim); math.Abs(f.Sum.Value-136.5) > 0.01 {
		t.Errorf("%+v", f)
	}
	if f := figure(t, l, 1, "GEN", rundown.Usual()); f.Sum.Value < 117 || f.Sum.Value > 195 || !strings.Contains(f.Sum.Source, "from memory") {
		t.Errorf("by the typical 3 to 5 hours: %+v", f)
	}
}

func TestWhereNoTimeCanBeSaidThereIsNoNumber(t *testing.T) {
	for _, c := range []struct{ item, reading, why string }{
		{"D1", "oxygen=1500", "flow"},
		{"D1", "oxygen=1500;flow=0", "nothing flows"},
		{"C1", "oxygen=1500;flow=10", "litres"},
		{"CUT", "battery=66", "time of a full one"},
		{"LAMP", "bars=3", "time of a full one"},
	} {
		l := scene()
		out(l, c.item)
		if c.reading != "" {
			read(l, 1, c.item, c.reading)
		}
		f := figure(t, l, 2, c.item, rundown.Usual())
		if f.Timed || f.Warn || f.Left != 0 || !f.Read || !strings.Contains(f.Sum.Text, "no time can be said") || !strings.Contains(f.Sum.Text, c.why) {
			t.Errorf("%s %s: %+v", c.item, c.reading, f)
		}
	}
	l := scene() // one that flowed and was shut off
	out(l, "D1")
	read(l, 1, "D1", "oxygen=1500;flow=15")
	read(l, 11, "D1", "oxygen=600;flow=0")
	if f := figure(t, l, 30, "D1", rundown.Usual()); f.Timed || f.Warn || !strings.Contains(f.Sum.Text, "nothing flows") {
		t.Errorf("shut off: %+v", f)
	}
	l = scene()
	out(l, "D1")
	if f := figure(t, l, 5, "D1", rundown.Usual()); f.Read || f.Timed || f.Sum.Text != "" {
		t.Errorf("nobody has read it: %+v", f)
	}
}

func TestBreathingAirIsStockAndNeverATime(t *testing.T) {
	l := scene()
	out(l, "AIR1")
	read(l, 1, "AIR1", "air=4500")
	read(l, 20, "AIR1", "air=3000")
	f := figure(t, l, 20, "AIR1", rundown.Usual())
	if f.Timed || f.Warn || !f.Stock() || !strings.Contains(f.Sum.Text, "recharge") || !strings.Contains(f.Sum.Limits, "never a timer") || strings.Contains(f.Sum.Text, "min") {
		t.Errorf("%+v", f)
	}
	i := l.State.Dept.ItemIndex("AIR1")
	l.State.Dept.Items[i].Extra = map[string]string{"litres": "1240", "full_psi": "4500"}
	if f := figure(t, l, 20, "AIR1", rundown.Usual()); f.Timed || !strings.HasPrefix(f.Sum.Text, "826 L, 66% of full: recharge") {
		t.Errorf("%+v", f.Sum)
	}
}

func TestAnotherFillBeginsAnew(t *testing.T) {
	l := scene()
	out(l, "D1")
	read(l, 1, "D1", "oxygen=800;flow=10")
	read(l, 5, "D1", "oxygen=2000;flow=10")
	if f := figure(t, l, 5, "D1", rundown.Usual()); f.Measured || math.Abs(f.Sum.Value-28.8) > 0.01 {
		t.Errorf("a gauge that went up: %+v", f)
	}
	l = scene()
	out(l, "CUT")
	read(l, 1, "CUT", "battery=60")
	at(l, 2, model.Act{Verb: model.Charge, Item: "CUT", From: "at:V1", To: "charging"})
	at(l, 30, model.Act{Verb: model.Recharge, Item: "CUT", From: "charging", To: "home", Reading: "battery=58"})
	at(l, 31, model.Act{Verb: model.Direct, Item: "CUT", From: "home", To: "at:V1"})
	for _, f := range rundown.Figures(l.State, l.Entries, "S", int64(1e9+31*60000), rundown.Usual()) {
		if l.State.Dept.Items[f.Line].ID == "CUT" && f.Measured {
			t.Errorf("readings of before the charger: %+v", f)
		}
	}
}

func TestNothingRunsDownOnTheTarp(t *testing.T) {
	l := scene()
	at(l, 0, model.Act{Verb: model.PullOff, Item: "D1", From: "home", To: "tarp"})
	read(l, 1, "D1", "oxygen=600;flow=15")
	if f := figure(t, l, 90, "D1", rundown.Usual()); f.Left != 4 || f.Warn {
		t.Errorf("%+v", f)
	}
}

func TestMorePressureIsNeverFewerMinutes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.IntRange(0, 3000).Draw(t, "psi")
		b := rapid.IntRange(a, 3000).Draw(t, "more")
		flow := rapid.SampledFrom([]int{1, 2, 6, 10, 15, 25}).Draw(t, "flow")
		later := rapid.Float64Range(0, 200).Draw(t, "later")
		left := func(psi int) float64 {
			l := scene()
			out(l, "D1")
			read(l, 1, "D1", fmt.Sprintf("oxygen=%d;flow=%d", psi, flow))
			for _, f := range rundown.Figures(l.State, l.Entries, "S", int64(1e9+(1+later)*60000), rundown.Usual()) {
				if l.State.Dept.Items[f.Line].ID == "D1" {
					return f.Left
				}
			}
			return math.NaN()
		}
		if x, y := left(a), left(b); !(x <= y) || x < 0 {
			t.Fatalf("%d psi last %v min, %d psi %v", a, x, b, y)
		}
	})
}

func TestAPieceIsOutLongAfterTheLimitOfItsClassAndNeverBefore(t *testing.T) {
	l := scene()
	out(l, "LAMP", "CUT", "GEN")
	for _, c := range []struct {
		min  float64
		want string
	}{{29.9, ""}, {30.1, "CUT"}, {59.9, "CUT"}, {60.1, "CUT LAMP"}} {
		var got []string
		now := int64(1e9 + c.min*60000)
		for _, o := range rundown.Longs(l.State, l.Entries, "S", now, rundown.Usual(), nil) {
			got = append(got, l.State.Dept.Items[o.Line].ID)
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("after %v min %q, want %q", c.min, s, c.want)
		}
	}
	read(l, 62, "CUT", "battery=70") // what is logged of it begins the time anew
	if all := rundown.Longs(l.State, l.Entries, "S", int64(1e9+63*60000), rundown.Usual(), nil); len(all) != 1 {
		t.Errorf("%+v", all)
	}
	never := rundown.Usual()
	never.Outs["rescue"], never.Outs["lights"] = 0, 0
	if all := rundown.Longs(l.State, l.Entries, "S", int64(1e9+900*60000), never, nil); len(all) != 0 {
		t.Errorf("with no limit %+v", all)
	}
}

// FuzzReadingsNeverGiveANumberThatIsNone feeds any readings at any minutes.
func FuzzReadingsNeverGiveANumberThatIsNone(f *testing.F) {
	f.Add("D1", "oxygen=600;flow=15", "oxygen=300", 10.0, 99.0)
	f.Add("CUT", "battery=0", "battery=100", -5.0, 0.0)
	f.Add("LAMP", "bars=4", "bars=0", 0.0001, 1e9)
	f.Add("GEN", "fuel=1e9", "fuel=..", math.Inf(1), math.NaN())
	f.Fuzz(func(t *testing.T, item, first, second string, gap, later float64) {
		l := scene()
		if l.State.Dept.ItemIndex(item) < 0 {
			return
		}
		out(l, item)
		for i, r := range []string{first, second} {
			e := *at(l, 1, model.Act{Verb: model.CheckIt, Item: item, Reading: r})
			if i == 1 && gap > -1e6 && gap < 1e6 {
				l.Entries[len(l.Entries)-1].Typed = e.Stamp.Wall + int64(gap*60000)
			}
		}
		now := int64(1e9)
		if later > -1e6 && later < 1e6 {
			now += int64(later * 60000)
		}
		for _, x := range rundown.Figures(l.State, l.Entries, "S", now, rundown.Usual()) {
			for _, v := range []float64{x.Left, x.Least, x.Sum.Value, x.Sum.Low, x.Sum.High} {
				if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
					t.Fatalf("%s %q %q: %+v", item, first, second, x)
				}
			}
			if strings.Contains(x.Sum.Text, "NaN") || strings.Contains(x.Sum.Text, "Inf") || strings.Contains(x.Sum.Text, "-") && x.Timed && strings.HasPrefix(x.Sum.Text, "-") {
				t.Fatalf("%q", x.Sum.Text)
			}
		}
	})
}
