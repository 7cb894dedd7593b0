package gauge_test

import (
	"encoding/csv"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model/gauge"
)

// rows are the worked sums of one area, input and expected; there are so many.
func rows(t *testing.T, area string, n int) (out [][2]string) {
	t.Helper()
	f, err := os.Open("../../testdata/demo/worked_sums.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range all {
		if r[0] == area {
			out = append(out, [2]string{r[1], r[2]})
		}
	}
	if len(out) != n {
		t.Fatalf("%d rows of %s, want %d", len(out), area, n)
	}
	return out
}

func numbers(t *testing.T, re *regexp.Regexp, text string) (out []float64) {
	t.Helper()
	m := re.FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("%q is not understood", text)
	}
	for _, x := range m[1:] {
		f, err := strconv.ParseFloat(x, 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, f)
	}
	return out
}

// sane checks what holds of every time.
func sane(t rapid.TB, a gauge.Time) {
	for _, x := range []float64{a.Value, a.Low, a.High, a.Rate} {
		if !(x >= 0) || math.IsInf(x, 0) {
			t.Fatalf("%+v", a)
		}
	}
	if a.Low > a.Value || a.Value > a.High || a.None && a.High > 0 {
		t.Fatalf("the range does not hold the figure: %+v", a)
	}
	for _, text := range []string{a.Text, a.Formula, a.Limits, a.Source} {
		if text == "" || strings.Contains(text, "NaN") || strings.Contains(text, "Inf") || strings.Contains(text, "--") {
			t.Fatalf("%q in %+v", text, a)
		}
	}
	if strings.Contains(a.Text, " -") || strings.HasPrefix(a.Text, "-") {
		t.Fatalf("a time below nothing: %s", a.Text)
	}
}

func ran(t testing.TB, r gauge.Run) gauge.Time {
	t.Helper()
	a, err := r.Left()
	if err != nil {
		t.Fatalf("%+v: %v", r, err)
	}
	sane(t, a)
	return a
}

func TestTheWorkedBatteryAndFuelSumsComeOut(t *testing.T) {
	row := rows(t, "battery", 1)[0]
	in := numbers(t, regexp.MustCompile(`^two readings: (\d+)% at t=(\d+), (\d+)% at t=(\d+); stop at (\d+)%; warm$`), row[0])
	want := numbers(t, regexp.MustCompile(`^rate ([\d.]+) %/min; (\d+) min left$`), row[1])
	a := ran(t, gauge.Run{Levels: []gauge.Level{gauge.Percent(in[1], in[0]), gauge.Percent(in[3], in[2])}, Floor: in[4]})
	if a.Rate != want[0] || a.Value != want[1] || a.Text != "23 min by 2 readings, falling 2 points a minute (21 to 24 min)" {
		t.Errorf("%+v", a)
	}
	row = rows(t, "battery cold", 1)[0]
	in = numbers(t, regexp.MustCompile(`^nameplate plan (\d+) min at 68 F, now (\d+) F, derate (\d+)%$`), row[0])
	cold, err := gauge.ColdAt(in[1])
	if err != nil || (cold.Low+cold.High)/2 != in[2] {
		t.Errorf("%+v %v", cold, err)
	}
	a = ran(t, gauge.Run{Levels: []gauge.Level{gauge.Percent(0, 100)}, Table: gauge.Figure(in[0]), Cold: cold})
	if w := numbers(t, minutes, row[1])[0]; math.Abs(a.Value-w) > 1e-9 || !strings.Contains(a.Text, "28 min by table (17 to 40 min)") {
		t.Errorf("%+v, want %v", a, w)
	}
	row = rows(t, "fuel", 1)[0]
	in = numbers(t, regexp.MustCompile(`^generator tank (\d+)%, full tank ([\d.]+) h at this load, leave (\d+)%$`), row[0])
	a = ran(t, gauge.Run{Kind: gauge.Fuel, Levels: []gauge.Level{gauge.Percent(0, in[0])}, Floor: in[2], Table: gauge.Figure(in[1] * 60)})
	if w := numbers(t, minutes, row[1])[0]; math.Abs(a.Value-w) > 1e-9 || !strings.HasPrefix(a.Text, "2 h 16 min by table (") {
		t.Errorf("%+v, want %v", a, w)
	}
}

func TestTheWorkedAirSumsComeOut(t *testing.T) {
	sums := rows(t, "breathing air", 2)
	for i, re := range []string{`^cylinder (1240) L at (4500) psi, now (3000) psi, (40) L/min, alarm at (33)%$`, `^same cylinder, (3000) psi, (80) L/min$`} {
		in := numbers(t, regexp.MustCompile(re), sums[i][0])
		if i == 1 {
			in = []float64{1240, 4500, in[0], in[1], 33}
		}
		want := numbers(t, regexp.MustCompile(`^to alarm ([\d.]+) min; to empty ([\d.]+) min$`), sums[i][1])
		s, err := gauge.Air{Litres: in[0], FullPSI: in[1], PSI: in[2], Rate: in[3], Alarm: in[4] / 100}.Stock()
		if err != nil || math.Abs(s.ToAlarm-want[0]) > 0.05 || math.Abs(s.ToEmpty-want[1]) > 0.05 {
			t.Errorf("%s: %v %v %v, want %v", sums[i][0], s.ToAlarm, s.ToEmpty, err, want)
		}
	}
}

// 29 CFR 1910.134(h)(3)(iii): recharged when the pressure falls to 90% of the
// maker's recommended pressure. OSHA, interpretation of 19 August 2005: 75% is
// not allowed.
func TestAirIsRechargedAt90PercentOfFull(t *testing.T) {
	for _, c := range []struct{ full, line float64 }{{2216, 1994.4}, {3000, 2700}, {4500, 4050}, {5500, 4950}} {
		for _, at := range []struct {
			psi      float64
			recharge bool
		}{{c.full, false}, {math.Floor(c.line) + 1, false}, {c.line, true}, {c.full * 0.75, true}, {0, true}} {
			s, err := gauge.Air{Litres: 1240, FullPSI: c.full, PSI: at.psi}.Stock()
			if err != nil || s.Recharge != at.recharge || math.Abs(s.RechargePSI-c.line) > 1e-9 || strings.Contains(s.Text, "no recharge") == at.recharge {
				t.Errorf("%v of %v: %+v %v", at.psi, c.full, s, err)
			}
			if s.ToAlarm != 0 || s.ToEmpty != 0 || strings.Contains(s.Text, " min") {
				t.Errorf("minutes that nobody asked for: %s", s.Text)
			}
		}
	}
}

func TestAirIsStockAndNeverATimer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := gauge.Air{Litres: rapid.Float64Range(100, 3000).Draw(t, "litres"), FullPSI: rapid.Float64Range(2000, 5500).Draw(t, "full"),
			Rate: rapid.SampledFrom([]float64{0, 40, 80, 100}).Draw(t, "rate"), Alarm: rapid.SampledFrom([]float64{0, 0.25, 0.33}).Draw(t, "alarm")}
		a.PSI = a.FullPSI * rapid.Float64Range(0, 1.2).Draw(t, "part")
		s, err := a.Stock()
		if err != nil || !strings.Contains(s.Limits, "never a timer") || s.ToAlarm > s.ToEmpty || !(s.ToAlarm >= 0) {
			t.Fatalf("%+v %v", s, err)
		}
		more := a
		more.PSI += 10
		if b, err := more.Stock(); err != nil || b.Value < s.Value || b.ToAlarm < s.ToAlarm || b.Recharge && !s.Recharge {
			t.Fatalf("more pressure: %+v, then %+v %v", s, b, err)
		}
	})
	nan := math.NaN()
	for _, bad := range []gauge.Air{{}, {Litres: 1240}, {Litres: 1240, FullPSI: 4500, PSI: 45000}, {Litres: 1240, FullPSI: 4500, PSI: -1}, {Litres: nan, FullPSI: 4500},
		{Litres: 1240, FullPSI: nan}, {Litres: 1240, FullPSI: 4500, PSI: nan}, {Litres: 1240, FullPSI: 4500, PSI: 1, Rate: nan},
		{Litres: 1240, FullPSI: 4500, PSI: 1, Rate: -1}, {Litres: 1240, FullPSI: 4500, PSI: 1, Rate: 0.5}, {Litres: 1240, FullPSI: 4500, PSI: 1, Alarm: 33}} {
		if s, err := bad.Stock(); err == nil {
			t.Errorf("%+v: %s", bad, s.Text)
		}
	}
}

func TestBarsAreARangeOfCharge(t *testing.T) {
	for _, c := range []struct {
		lit, of       int
		percent, give float64
	}{{4, 4, 87.5, 12.5}, {3, 4, 62.5, 12.5}, {1, 4, 12.5, 12.5}, {0, 4, 0, 0}, {2, 5, 30, 10}} {
		l, err := gauge.Bars(7, c.lit, c.of)
		if err != nil || l.Percent != c.percent || l.Give != c.give || l.Min != 7 {
			t.Errorf("%d of %d: %+v %v", c.lit, c.of, l, err)
		}
	}
	for _, bad := range [][2]int{{5, 4}, {-1, 4}, {0, 0}, {1, 1}, {3, 100}} {
		if l, err := gauge.Bars(0, bad[0], bad[1]); err == nil {
			t.Errorf("%v: %+v", bad, l)
		}
	}
	three, _ := gauge.Bars(0, 3, 4)
	a := ran(t, gauge.Run{Levels: []gauge.Level{three}, Floor: 20, Table: gauge.Table{Low: 100, High: 100.001, Source: "a trial"}})
	if math.Abs(a.Low-30) > 0.1 || math.Abs(a.High-55) > 0.1 {
		t.Errorf("three of four are from 50 to 75 percent: %+v", a)
	}
}

// By hand: levels 90, 81, 68, 61 at 0, 5, 10, 15 have slope -2 and mean 75, so
// 60 at the end; (60 - 20) / 2 = 20. The rest is 0, 1, -2, 1: sum of squares 6,
// sigma sqrt 3, sum of (t - 7.5)^2 = 125.
func TestSeveralReadingsAreFittedByLeastSquares(t *testing.T) {
	var levels []gauge.Level
	for i, p := range []float64{90, 81, 68, 61} {
		levels = append(levels, gauge.Percent(float64(5*i), p))
	}
	a := ran(t, gauge.Run{Levels: levels, Floor: 20})
	sigma := math.Sqrt(3)
	slopeErr, nowErr := 2*sigma/math.Sqrt(125), 2*sigma*math.Sqrt(0.25+7.5*7.5/125)
	if math.Abs(a.Value-20) > 1e-9 || math.Abs(a.Rate-2) > 1e-9 || math.Abs(a.Low-(40-nowErr)/(2+slopeErr)) > 1e-9 || math.Abs(a.High-(40+nowErr)/(2-slopeErr)) > 1e-9 {
		t.Errorf("%+v", a)
	}
}

func TestWhatDoesNotFallHasNoTime(t *testing.T) {
	two := func(a, b float64) gauge.Run {
		return gauge.Run{Levels: []gauge.Level{gauge.Percent(0, a), gauge.Percent(10, b)}, Floor: 20}
	}
	for _, r := range []gauge.Run{two(80, 80), two(80, 81), two(80, 79.999)} {
		if a := ran(t, r); !a.None || !strings.Contains(a.Text, "not fallen") {
			t.Errorf("%+v: %+v", r, a)
		}
	}
	if a := ran(t, two(80, 79.5)); a.None || !a.Open || !strings.Contains(a.Text, "at least") {
		t.Errorf("%+v", a)
	}
	for _, r := range []gauge.Run{two(20, 20), two(60, 15), {Levels: []gauge.Level{gauge.Percent(0, 12)}, Floor: 20, Table: gauge.Figure(60)}} {
		if a := ran(t, r); a.None || a.High != 0 || !strings.HasPrefix(a.Text, "0 min: ") {
			t.Errorf("%+v: %+v", r, a)
		}
	}
}

func TestTypicalTimesAreMarkedFromMemory(t *testing.T) {
	for _, tool := range append(gauge.Tools(), "Chain saw") {
		tab, err := gauge.Typical(tool)
		if err != nil {
			t.Fatal(err)
		}
		a := ran(t, gauge.Run{Kind: gauge.Fuel, Levels: []gauge.Level{{Percent: 100}}, Floor: 0, Table: tab})
		if a.Low != tab.Low || a.High != tab.High || !strings.Contains(a.Source, "from memory") {
			t.Errorf("%s: %+v", tool, a)
		}
	}
	if _, err := gauge.Typical("kettle"); err == nil {
		t.Error("a kettle")
	}
}

func TestRunNonsenseIsRefusedInWords(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	one := func(p float64) gauge.Run {
		return gauge.Run{Levels: []gauge.Level{gauge.Percent(0, p)}, Floor: 20, Table: gauge.Figure(40)}
	}
	with := func(f func(*gauge.Run)) gauge.Run { r := one(80); f(&r); return r }
	for _, c := range []struct {
		r    gauge.Run
		says string
	}{
		{gauge.Run{}, "what does the gauge show"}, {one(140), "from 0 to 100"}, {one(-1), "level"}, {one(nan), "level"},
		{with(func(r *gauge.Run) { r.Table = gauge.Table{} }), "second reading"},
		{with(func(r *gauge.Run) { r.Table = gauge.Figure(nan) }), "full to empty"}, {with(func(r *gauge.Run) { r.Table = gauge.Figure(inf) }), "full to empty"},
		{with(func(r *gauge.Run) { r.Table = gauge.Table{Low: 40, High: 30} }), "full to empty"}, {with(func(r *gauge.Run) { r.Table = gauge.Figure(-5) }), "full to empty"},
		{with(func(r *gauge.Run) { r.Floor = nan }), "floor"}, {with(func(r *gauge.Run) { r.Floor = 100 }), "floor"},
		{with(func(r *gauge.Run) { r.Cold = gauge.Derate{Low: nan} }), "cold"}, {with(func(r *gauge.Run) { r.Cold = gauge.Derate{Low: 40, High: 20} }), "cold"},
		{with(func(r *gauge.Run) { r.Kind, r.Cold = gauge.Fuel, gauge.Derate{Low: 20, High: 40} }), "no figure for fuel"},
		{with(func(r *gauge.Run) { r.Levels = append(r.Levels, gauge.Percent(10, 95)) }), "went up from 80 to 95%"},
		{with(func(r *gauge.Run) { r.Levels = append(r.Levels, gauge.Percent(0, 70)) }), "does not come after"},
		{with(func(r *gauge.Run) { r.Levels = append(r.Levels, gauge.Percent(1e-200, 70)) }), "does not come after"},
		{with(func(r *gauge.Run) { r.Levels = append(r.Levels, gauge.Percent(nan, 70)) }), "minute"},
		{with(func(r *gauge.Run) { r.Levels[0].Give = nan }), "give"},
	} {
		if a, err := c.r.Left(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: %q %v, want %q", c.r, a.Text, err, c.says)
		}
	}
	for _, f := range []float64{nan, inf, -500, 500} {
		if d, err := gauge.ColdAt(f); err == nil {
			t.Errorf("%v F: %+v", f, d)
		}
	}
}

func TestMoreChargeNeverLastsLessAndColdNeverLonger(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := gauge.Run{Levels: []gauge.Level{gauge.Percent(0, rapid.Float64Range(0, 100).Draw(t, "percent"))},
			Floor: rapid.Float64Range(0, 90).Draw(t, "floor"), Table: gauge.Figure(rapid.Float64Range(5, 600).Draw(t, "full"))}
		a, err := r.Left()
		if err != nil {
			t.Fatal(err)
		}
		sane(t, a)
		better := r
		better.Levels = []gauge.Level{gauge.Percent(0, min(100, r.Levels[0].Percent+rapid.Float64Range(0, 20).Draw(t, "more")))}
		if b, err := better.Left(); err != nil || b.Value < a.Value || b.Low < a.Low || b.High < a.High {
			t.Fatalf("more charge: %+v, then %+v %v", a, b, err)
		}
		r.Cold = gauge.Derate{Low: 20, High: 40}
		if b, err := r.Left(); err != nil || b.Value > a.Value || b.Low > a.Low || b.High > a.High {
			t.Fatalf("cold: %+v, then %+v %v", a, b, err)
		}
	})
}

func TestAnyFallingReadingsGiveASaneTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := gauge.Run{Floor: rapid.Float64Range(0, 50).Draw(t, "floor")}
		minute, percent := 0.0, rapid.Float64Range(0, 100).Draw(t, "start")
		for range rapid.IntRange(2, 7).Draw(t, "readings") {
			l := gauge.Percent(minute, percent)
			l.Give = rapid.SampledFrom([]float64{0, 1, 12.5}).Draw(t, "give")
			r.Levels = append(r.Levels, l)
			minute += rapid.Float64Range(0.05, 60).Draw(t, "later")
			percent *= rapid.Float64Range(0, 1).Draw(t, "keeps")
		}
		a, err := r.Left()
		if err != nil {
			t.Fatal(err)
		}
		sane(t, a)
	})
}
