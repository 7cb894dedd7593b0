package clearup_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model/clearup"
	"tarpside/model/modeltest"
)

// worked is the row "clear-up time" of the table of worked sums.
var worked = clearup.Work{Singles: 30, Kits: 6, TwoPerson: 4, Tens: 4}

func TestTheTableGivesTheWorkedSum(t *testing.T) {
	if got := clearup.Minutes(worked, 4); math.Abs(got-16.5) > 0.05 {
		t.Errorf("%v min, want 16.5", got)
	}
	a := clearup.Time(worked, 4, nil, []string{"spring punch"})
	if a.Text != "about 15 to 25 min + 1 open search: spring punch" || !strings.Contains(a.Source, "from memory") {
		t.Errorf("%+v", a)
	}
	if a := clearup.Time(worked, 4, nil, nil); strings.Contains(a.Text, "search") {
		t.Errorf("%q names a search that is not open", a.Text)
	}
	if a := clearup.Time(clearup.Work{}, 0, nil, []string{"a", "b"}); a.Text != "nothing left to put back + 2 open searches: a, b" {
		t.Errorf("%q", a.Text)
	}
}

// stows are single pieces put back by 4 people at these gaps, in seconds.
func stows(gaps ...float64) []clearup.Done {
	out := []clearup.Done{{At: 1e12, Work: clearup.Work{Singles: 1}}}
	for _, g := range gaps {
		out = append(out, clearup.Done{At: out[len(out)-1].At + int64(g*1000), Work: clearup.Work{Singles: 1}})
	}
	return out
}

func steady(gap float64, n int) (out []float64) {
	for range n {
		out = append(out, gap)
	}
	return out
}

func TestACrewsOwnPaceGoesBeforeTheTable(t *testing.T) {
	table := 60 * clearup.Minutes(clearup.Work{Singles: 1}, 4) // seconds a piece
	slow := stows(steady(2*table, 16)...)
	p, ok := clearup.PaceOf(slow, 4)
	if !ok || math.Abs(p.Middle-2) > 0.01 || p.N != 16 {
		t.Errorf("twice as long as the table: %+v", p)
	}
	a := clearup.Time(worked, 4, slow, nil)
	if math.Abs(a.Value-33) > 0.3 || a.Low > 0.86*a.Value || a.High < 1.14*a.Value || !strings.Contains(a.Source, "16 put-backs") {
		t.Errorf("%+v", a)
	}
	for name, gaps := range map[string][]float64{"too few": steady(9, 11), "none": nil, "only pauses": steady(301, 40)} {
		if _, ok := clearup.PaceOf(stows(gaps...), 4); ok {
			t.Errorf("%s, and yet a pace", name)
		}
	}
	paused := stows(append(append(steady(2*table, 8), 3000), steady(2*table, 8)...)...)
	if p, ok := clearup.PaceOf(paused, 4); !ok || math.Abs(p.Middle-2) > 0.01 {
		t.Errorf("a pause of 50 minutes counts as work: %+v", p)
	}
	var bursts []float64
	for range 8 {
		bursts = append(bursts, 0, 0, 0, 4*table)
	}
	if p, ok := clearup.PaceOf(stows(bursts...), 4); !ok || math.Abs(p.Middle-1) > 0.01 {
		t.Errorf("taps in bursts of four: %+v", p)
	}
}

func TestMoreWorkNeverTakesLessAndMorePeopleNeverLonger(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 60)
		w := clearup.Work{Singles: n.Draw(t, "singles"), Kits: n.Draw(t, "kits"), TwoPerson: n.Draw(t, "two"), Tens: n.Draw(t, "tens")}
		people := rapid.IntRange(1, 20).Draw(t, "people")
		a := clearup.Time(w, people, nil, nil)
		if !(a.Low <= a.Value && a.Value <= a.High) {
			t.Fatalf("%+v", a)
		}
		if clearup.Minutes(w.Plus(clearup.Work{Kits: 1}), people) <= a.Value || clearup.Minutes(w, people+1) > a.Value {
			t.Fatalf("%+v with %d people: %v", w, people, a.Value)
		}
	})
}

func TestWhatIsLeftIsReadOffTheBoard(t *testing.T) {
	l := modeltest.New("A", modeltest.Yard())
	l.Open("S", "")
	bad := modeltest.Script(l, `pull LIGHT home>tarp -> ok
		direct CONE 6 home>at:V1 -> ok straight_off
		count CONE 4 at:V1> -> warned short
		pull TAPE 2 home>tarp -> ok
		pull BOX home>tarp -> ok two_person`)
	if bad != "" {
		t.Fatal(bad)
	}
	got, searches := clearup.Left(l.State, "R1")
	if want := (clearup.Work{Singles: 3, Kits: 1, TwoPerson: 1, Tens: 1}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	if len(searches) != 1 || l.State.Dept.Items[searches[0]].ID != "CONE" {
		t.Errorf("open searches %v, want the cones", searches)
	}
	if w, open := clearup.Left(l.State, "R2"); w != (clearup.Work{}) || open != nil {
		t.Errorf("R2 has %+v to put back", w)
	}
	if all, _ := clearup.Left(l.State, ""); all != got {
		t.Errorf("all: %+v, want %+v", all, got)
	}
}

func FuzzNoClearUpIsTooStrange(f *testing.F) {
	f.Add(30, 6, 4, 4, int64(1000))
	f.Add(1<<62, -1, 1<<62, 0, int64(-1<<62))
	f.Fuzz(func(t *testing.T, singles, kits, two, people int, gap int64) {
		w := clearup.Work{Singles: singles, Kits: kits, TwoPerson: two}
		var done []clearup.Done
		for i := range int64(20) {
			done = append(done, clearup.Done{At: i * gap, Work: w})
		}
		a := clearup.Time(w, people, done, nil)
		for _, x := range []float64{a.Low, a.Value, a.High} {
			if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
				t.Fatalf("%+v", a)
			}
		}
	})
}
