package gauge_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model/gauge"
)

func named(t testing.TB, letter string) gauge.Cylinder {
	t.Helper()
	c, err := gauge.Named(letter)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func sized(t testing.TB, litres, full float64) gauge.Cylinder {
	t.Helper()
	c, err := gauge.Sized(litres, full)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// once is one reading.
func once(c gauge.Cylinder, psi, flow, keep float64) gauge.Oxygen {
	return gauge.Oxygen{Cylinder: c, Flow: flow, Keep: keep, Readings: []gauge.Pressure{{PSI: psi}}}
}

func left(t rapid.TB, o gauge.Oxygen) gauge.Time {
	t.Helper()
	a, err := o.Left()
	if err != nil {
		t.Fatalf("%+v: %v", o, err)
	}
	return a
}

func TestOxygenMinutesAreThePublishedOnes(t *testing.T) {
	for _, c := range []struct {
		cylinder              gauge.Cylinder
		psi, keep, flow, want float64
		text                  string
		source                string
	}{
		{named(t, "D"), 2000, 200, 0.5, 576, "9 h 36 min by table", "265health, oxygen cylinders, after the AAOS EMT text: 288 L / 0.5"},
		{named(t, "E"), 1200, 200, 4, 70, "70 min by table", "calculator.city, oxygen tank: 280 L / 4"},
		{named(t, "E"), 2200, 0, 2, 308, "5 h 8 min by table", "ehow 7166423, how to calculate cylinder duration; no residual"},
		{gauge.Cylinder{Name: "H", Litres: 6600, Factor: 3, Most: 3000}, 1100, 0, 5, 660, "11 h by table", "the same page, which takes a factor of 3 for H; no residual"},
		{named(t, "M"), 500, 0, 6, 130, "2 h 10 min by table", "pamedic.org node 6970, a table; no residual"},
		{sized(t, 660, 1900), 500, 0, 6, 28.947, "28 min by table", "Nagelhout, Nurse Anesthesia, 2nd edition (2001): 28, rounded down"},
		{named(t, "D"), 2000, 200, 10, 28.8, "28 min by table", "by the formula"},
		{named(t, "E"), 2000, 200, 10, 50.4, "50 min by table", "by the formula"},
		{named(t, "M"), 2000, 200, 15, 187.2, "3 h 7 min by table", "by the formula"},
		{named(t, "H/K"), 2000, 200, 15, 376.8, "6 h 16 min by table", "by the formula"},
		{named(t, "g"), 2000, 200, 15, 289.2, "4 h 49 min by table", "by the formula"},
	} {
		a := left(t, once(c.cylinder, c.psi, c.flow, c.keep))
		if math.Abs(a.Value-c.want) > 0.001 || !strings.HasPrefix(a.Text, c.text+" (") {
			t.Errorf("%s %v psi, %v L/min: %v %q, want %v (%s)", c.cylinder.Name, c.psi, c.flow, a.Value, a.Text, c.want, c.source)
		}
	}
}

// Virginia, cylinder guidance to 12VAC5-31-860 B: D 1150 and E 750 psi for 10
// L/min over 15 minutes, rounded up; H/K 300 for 30 minutes. M is printed 392,
// rounded to the nearest psi; a gauge has no such mark.
func TestThePressureToBeReadyIsWorkedOutAndMeetsThePublishedOne(t *testing.T) {
	for _, c := range []struct {
		cylinder      string
		minutes       float64
		exact, toMark float64
	}{{"D", gauge.ReadyFor, 1137.5, 1150}, {"E", gauge.ReadyFor, 735.7, 750}, {"M", 30, 392.3, 400}, {"H/K", 30, 295.5, 300}} {
		a, err := gauge.Ready(named(t, c.cylinder), gauge.ReadyFlow, c.minutes, gauge.Residual)
		if err != nil || math.Abs(a.Value-c.exact) > 0.05 || a.High != c.toMark || a.Text != strings.TrimSpace(a.Text) || !strings.HasSuffix(a.Text, " psi") {
			t.Errorf("%s: %+v %v, want %v, %v", c.cylinder, a, err, c.exact, c.toMark)
		}
		if got := left(t, once(named(t, c.cylinder), a.High, gauge.ReadyFlow, gauge.Residual)); got.Value < c.minutes {
			t.Errorf("%s at %v psi gives %v min", c.cylinder, a.High, got.Value)
		}
	}
	if a, err := gauge.Ready(named(t, "D"), 10, 60, 200); err == nil || !strings.Contains(err.Error(), "a D cylinder cannot do that: full, at about 2188 psi, it gives 31 min") {
		t.Errorf("%v %v", a.Text, err)
	}
	for _, bad := range [][3]float64{{0, 15, 200}, {10, 0, 200}, {10, -5, 200}, {math.NaN(), 15, 200}, {10, math.Inf(1), 200}, {10, 15, -1}, {10, 15, 9000}} {
		if a, err := gauge.Ready(named(t, "D"), bad[0], bad[1], bad[2]); err == nil {
			t.Errorf("%v: %s", bad, a.Text)
		}
	}
	if a, err := gauge.Ready(gauge.Cylinder{}, 10, 15, 200); err == nil {
		t.Error(a.Text)
	}
}

var (
	oxygenIn = regexp.MustCompile(`^D cylinder, ([\d.]+) psi, ([\d.]+) L/min, reserve ([\d.]+), k=0.16$`)
	minutes  = regexp.MustCompile(`^([\d.]+) min`)
)

func TestTheWorkedOxygenSumsComeOut(t *testing.T) {
	sums := rows(t, "oxygen", 6)
	for _, r := range sums {
		in := numbers(t, oxygenIn, r[0])
		want := numbers(t, minutes, r[1])[0]
		a := left(t, once(named(t, "D"), in[0], in[1], in[2]))
		if math.Abs(a.Value-want) > 0.05 || want == 0 && (a.High != 0 || !strings.Contains(a.Text, "change the cylinder now")) {
			t.Errorf("%s: %v %s, want %v", r[0], a.Value, a.Text, want)
		}
	}
	for _, r := range rows(t, "oxygen threshold", 1) {
		in := numbers(t, regexp.MustCompile(`^D cylinder must give ([\d.]+) L/min for ([\d.]+) min above ([\d.]+) psi$`), r[0])
		want := numbers(t, regexp.MustCompile(`^([\d.]+) psi, round up to ([\d.]+)$`), r[1])
		a, err := gauge.Ready(named(t, "D"), in[0], in[1], in[2])
		if err != nil || a.Value != want[0] || a.High != want[1] {
			t.Errorf("%s: %+v %v", r[0], a, err)
		}
	}
}

func TestASecondReadingReplacesTheTable(t *testing.T) {
	o := once(named(t, "D"), 1950, 15, 200)
	o.Readings = append(o.Readings, gauge.Pressure{Min: 20, PSI: 600})
	a := left(t, o)
	if !a.Measured || a.Rate != 67.5 || math.Abs(a.Value-400/67.5) > 1e-9 || a.Text != "5 min by the readings (5 to 6 min)" {
		t.Errorf("%+v", a)
	}
	if strings.Contains(a.Formula, "0.16") || strings.Contains(a.Limits, "trust the gauge") { // 67.5 x .16 = 10.8 L/min: within half of 15
		t.Errorf("%s; %s", a.Formula, a.Limits)
	}
	o.Readings = append(o.Readings, gauge.Pressure{Min: 25, PSI: 500}) // the flow was turned down
	if a = left(t, o); a.Rate != 20 || a.Value != 15 || !strings.Contains(a.Limits, "trust the gauge") {
		t.Errorf("the last two count: %+v", a)
	}
	o.Flow = 0 // not known: the gauge tells
	if b := left(t, o); b.Value != a.Value || strings.Contains(b.Limits, "trust the gauge") {
		t.Errorf("%+v", b)
	}
	slow := gauge.Oxygen{Cylinder: named(t, "H"), Flow: 2, Keep: 200, Readings: []gauge.Pressure{{0, 2000}, {10, 1990}}}
	if a = left(t, slow); !a.Open || !strings.Contains(a.Text, "at least") || a.High != a.Value {
		t.Errorf("a fall smaller than a mark has no upper end: %+v", a)
	}
	slow.Readings[1].PSI = 2000
	if a = left(t, slow); !a.None || a.Value != 0 || !strings.Contains(a.Text, "has not fallen") {
		t.Errorf("%+v", a)
	}
	slow.Readings[1].PSI = 150
	if a = left(t, slow); a.None || a.Value != 0 || a.High != 0 || !strings.HasPrefix(a.Text, "0 min") {
		t.Errorf("%+v", a)
	}
}

func TestNoFlowHasNoTime(t *testing.T) {
	a := left(t, once(named(t, "D"), 1950, 0, 200))
	if !a.None || a.Value != 0 || a.High != 0 || a.Text != "no time can be said: nothing flows" {
		t.Errorf("%+v", a)
	}
}

func TestOxygenNonsenseIsRefusedInWords(t *testing.T) {
	d, nan, inf := named(t, "D"), math.NaN(), math.Inf(1)
	two := func(a, b gauge.Pressure) gauge.Oxygen {
		return gauge.Oxygen{Cylinder: d, Flow: 10, Keep: 200, Readings: []gauge.Pressure{a, b}}
	}
	for _, c := range []struct {
		o    gauge.Oxygen
		says string
	}{
		{once(d, 11500, 10, 200), "11500 psi is more than a D cylinder holds; did you mean 1150?"},
		{once(d, 11505, 10, 200), "11505 psi is more than a D cylinder holds; look at the gauge again"},
		{once(d, 4500, 10, 200), "4500 psi is more than a D cylinder holds; look at the gauge again"},
		{once(named(t, "E"), 19500, 10, 200), "an E cylinder holds; did you mean 1950?"},
		{once(sized(t, 660, 1900), 2400, 10, 200), "2400 psi is more than a 660 L cylinder holds"},
		{once(d, 1e300, 10, 200), "more than a D cylinder holds"},
		{once(d, -1, 10, 200), "0 or more"}, {once(d, nan, 10, 200), "0 or more"}, {once(d, inf, 10, 200), "more than a D"},
		{once(d, 1000, -1, 200), "the flow"}, {once(d, 1000, nan, 200), "the flow"}, {once(d, 1000, inf, 200), "the flow"}, {once(d, 1000, 500, 200), "the flow"},
		{once(d, 1000, 0.001, 200), "less than any flowmeter"}, {once(d, 1000, 10, -5), "kept back"}, {once(d, 1000, 10, nan), "kept back"},
		{once(gauge.Cylinder{}, 1000, 10, 200), "which cylinder"}, {once(gauge.Cylinder{Factor: nan, Most: 9}, 1, 10, 0), "which cylinder"},
		{gauge.Oxygen{Cylinder: d, Flow: 10}, "what does the gauge show"},
		{two(gauge.Pressure{0, 600}, gauge.Pressure{10, 1900}), "went up from 600 to 1900"},
		{two(gauge.Pressure{10, 1900}, gauge.Pressure{10, 600}), "does not come after"},
		{two(gauge.Pressure{10, 1900}, gauge.Pressure{5, 600}), "does not come after"},
		{two(gauge.Pressure{nan, 1900}, gauge.Pressure{5, 600}), "minute"}, {two(gauge.Pressure{0, 1900}, gauge.Pressure{inf, 600}), "minute"},
	} {
		if a, err := c.o.Left(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: %q %v, want %q", c.o, a.Text, err, c.says)
		}
	}
	for _, bad := range [][2]float64{{0, 2000}, {-1, 2000}, {nan, 2000}, {400, 0}, {400, inf}, {400, 1e9}} {
		if c, err := gauge.Sized(bad[0], bad[1]); err == nil {
			t.Errorf("%v: %+v", bad, c)
		}
	}
	if c, err := gauge.Named("Q"); err == nil || !strings.Contains(err.Error(), "D, E, M, G, H and K") {
		t.Errorf("%+v %v", c, err)
	}
}

// The capacities and the factors of the table were published apart; together
// they give a full pressure that is that of no freak.
func TestCapacityAndFactorOfTheTableAgree(t *testing.T) {
	for _, c := range gauge.Sizes() {
		if full := c.Full(); full < 1900 || full > 2300 {
			t.Errorf("%s: full at %v psi", c.Name, full)
		}
	}
}

func TestMoreInTheCylinderNeverLastsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(gauge.Sizes()).Draw(t, "size")
		psi, flow, keep := rapid.Float64Range(0, 2900).Draw(t, "psi"), rapid.Float64Range(0.05, 60).Draw(t, "flow"), rapid.Float64Range(0, 400).Draw(t, "keep")
		more := rapid.Float64Range(0, 100).Draw(t, "more")
		a := left(t, once(c, psi, flow, keep))
		sane(t, a)
		for name, b := range map[string]gauge.Time{"pressure": left(t, once(c, psi+more, flow, keep)), "flow": left(t, once(c, psi, max(0.05, flow-more), keep)),
			"kept back": left(t, once(c, psi, flow, max(0, keep-more)))} {
			if b.Value < a.Value-1e-9 || b.Low < a.Low-1e-9 || b.High < a.High-1e-9 {
				t.Fatalf("%s: %+v, then %+v", name, a, b)
			}
		}
		shown := psi * rapid.Float64Range(0, 1).Draw(t, "part")
		m := left(t, gauge.Oxygen{Cylinder: c, Keep: keep, Flow: flow, Readings: []gauge.Pressure{{0, psi}, {rapid.Float64Range(0.1, 200).Draw(t, "later"), shown}}})
		sane(t, m)
	})
}

// A gauge that falls as the formula says gives by two readings what the table
// gives by one.
func TestTableAndReadingsAgreeWhenTheFlowIsTrue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(gauge.Sizes()).Draw(t, "size")
		psi, flow := rapid.Float64Range(1000, 2900).Draw(t, "psi"), rapid.Float64Range(1, 25).Draw(t, "flow")
		after := rapid.Float64Range(0.1, 0.5).Draw(t, "part") * 700 * c.Factor / flow
		then := psi - after*flow/c.Factor
		two := left(t, gauge.Oxygen{Cylinder: c, Flow: flow, Keep: 200, Readings: []gauge.Pressure{{0, psi}, {after, then}}})
		one := left(t, once(c, then, flow, 200))
		if two.None && one.Value > 7*24*60 {
			return
		}
		if math.Abs(two.Value-one.Value) > 1e-6*one.Value || strings.Contains(two.Limits, "trust the gauge") {
			t.Fatalf("%v by table, %v by the readings: %s", one.Value, two.Value, two.Limits)
		}
	})
}
