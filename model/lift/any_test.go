package lift_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model/lift"
)

func anyLift(t *rapid.T) lift.Lift {
	l := lift.Lift{Metric: rapid.Bool().Draw(t, "metric"), Load: rapid.Float64Range(0, 200).Draw(t, "load"),
		Often: rapid.Float64Range(0, 20).Draw(t, "often"), Hours: rapid.Float64Range(0, 8).Draw(t, "hours"),
		Grip: lift.Grip(rapid.IntRange(0, 2).Draw(t, "grip"))}
	cm := 1.0
	if l.Metric {
		cm = 2.5
	}
	hold := func(name string) lift.Hold {
		return lift.Hold{H: rapid.Float64Range(0, 28).Draw(t, name+" reach") * cm, V: rapid.Float64Range(0, 80).Draw(t, name+" height") * cm,
			A: rapid.Float64Range(0, 150).Draw(t, name+" turn")}
	}
	l.From, l.To = hold("start"), hold("end")
	return l
}

func TestNoLiftIsOverTheConstantAndTheIndexIsANumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLift(t)
		r, err := l.Work()
		if err != nil {
			t.Fatal(err)
		}
		most := 51.0
		if l.Metric {
			most = 23
		}
		if !(r.RWL >= 0 && r.RWL <= most && r.Start.RWL <= most && r.Finish.RWL <= most) {
			t.Fatalf("%+v: %v", l, r.RWL)
		}
		if math.IsNaN(r.LI) || math.IsInf(r.LI, 0) || r.LI < 0 || strings.Contains(r.Text, "NaN") || strings.Contains(r.Text, "Inf") || strings.Contains(r.Text, "-") {
			t.Fatalf("%+v: %s", l, r.Text)
		}
	})
}

func TestALiftMadeHarderIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLift(t)
		harder, what := l, rapid.SampledFrom([]string{"load", "reach", "turn", "often", "hours", "grip"}).Draw(t, "harder")
		more := rapid.Float64Range(0, 10).Draw(t, "more")
		switch what {
		case "load":
			harder.Load += more
		case "reach":
			harder.From.H += more
		case "turn":
			harder.To.A += more
		case "often":
			harder.Often += more
		case "hours":
			harder.Hours = min(8, max(1, l.Hours)+more)
		case "grip":
			harder.Grip = lift.Poor
		}
		a, err := l.Work()
		b, err2 := harder.Work()
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		if b.RWL > a.RWL+1e-9 || b.RWL > 0 && b.LI < a.LI-1e-9 {
			t.Fatalf("%s: %v index %v, then %v index %v", what, a.RWL, a.LI, b.RWL, b.LI)
		}
		m, err := lift.Propose(l)
		n, err2 := lift.Propose(harder)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		if b.RWL > 0 && l.Load > 0 && m.TwoPerson && !n.TwoPerson || m.HandUp && !n.HandUp {
			t.Fatalf("%s took a mark away: %s, then %s", what, m.Text, n.Text)
		}
	})
}

func TestTheMarksAreProposedFromWeightHeightAndIndex(t *testing.T) {
	at := func(load, from, to float64) lift.Lift {
		return lift.Lift{Load: load, From: lift.Hold{H: 14, V: from}, To: lift.Hold{H: 14, V: to}, Grip: lift.Fair}
	}
	far := at(10, 20, 30)
	far.To.H = 26
	for _, c := range []struct {
		name             string
		l                lift.Lift
		two, up, unknown bool
		says             string
	}{
		{"spreader, index 1.6", at(46, 12, 24), false, false, false, "none"},
		{"51 lb is not over 51", at(51, 30, 30), false, false, false, "none"},
		{"52 lb", at(52, 30, 30), true, false, false, "over 51 lb"},
		{"69 lb is over 2/3 of 102", at(69, 30, 30), true, false, false, "over 68 lb three"},
		{"generator", at(78, 12, 22), true, false, false, "over 76.5 lb are more than three"},
		{"a cone to the roof", at(7, 12, 112), false, true, false, "hand it up, never solo"},
		{"70 in is not above 70", at(7, 20, 70), false, false, false, "none"},
		{"heavy and high", at(60, 12, 90), true, true, false, "hand it up, never solo"},
		{"weight unknown", at(0, 12, 24), false, false, true, "weight unknown"},
		{"out of reach", far, false, false, false, "no mark mends that"},
	} {
		m, err := lift.Propose(c.l)
		if err != nil || m.TwoPerson != c.two || m.HandUp != c.up || m.Unknown != c.unknown || !strings.Contains(m.Text, c.says) {
			t.Errorf("%s: %+v %v", c.name, m, err)
		}
	}
	often := at(40, 12, 24)
	often.Often, often.Hours = 5, 2
	if m, err := lift.Propose(often); err != nil || !m.TwoPerson || !strings.Contains(m.Text, "index") {
		t.Errorf("index over 2: %+v %v", m, err)
	}
	out := at(60, 12, 24)
	out.Outside = []lift.Outside{lift.Slippery}
	if m, err := lift.Propose(out); err != nil || !m.TwoPerson {
		t.Errorf("a wet floor takes the mark away: %+v %v", m, err)
	}
	out = at(40, 12, 24)
	out.Hours = 9
	if m, err := lift.Propose(out); err != nil || m.TwoPerson || !strings.Contains(m.Text, "weight and height only") {
		t.Errorf("a long day: %+v %v", m, err)
	}
}
