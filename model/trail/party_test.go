package trail_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/trail"
)

func TestWhatIsChosenByHandGoesAndTheListStaysAsItWas(t *testing.T) {
	list := []trail.Line{{Item: "a", N: 8, Need: trail.Must, Lb: 1}, {Item: "b", N: 2, Need: trail.Stays, Lb: 18}, {Item: "c", N: 1, Need: trail.Should, Lb: 2}, {Item: "d", N: 3, Need: trail.If, Lb: 1}}
	got := trail.Choose(list, map[string]int{"a": 0, "b": 2, "c": 1, "d": 5})
	for i, want := range []struct {
		n    int
		need trail.Need
		goes bool
		why  string
	}{{0, trail.Must, false, "left by hand"}, {2, trail.If, true, "taken by hand"}, {1, trail.Should, true, ""}, {5, trail.If, true, "5 by hand, the list says 3"}} {
		if l := got[i]; l.N != want.n || l.Need != want.need || l.Goes() != want.goes || !strings.HasPrefix(l.Why, want.why) {
			t.Errorf("%s: %+v, want %+v", l.Item, l, want)
		}
	}
	if list[0].N != 8 || list[1].Need != trail.Stays {
		t.Error("the list itself was changed")
	}
	// Needless pounds are a failure as much as a must that is left.
	loaded := map[int]int{}
	for i, l := range got {
		if l.Goes() {
			loaded[i] = l.N
		}
	}
	if wanting, needless := trail.Compare(list, loaded); len(wanting) != 1 || wanting[0].Short() != 8 || needless != 2*18+2 {
		t.Errorf("wanting %v, needless %v lb", wanting, needless)
	}
}

func TestTheBarAddsUpWhateverIsChosen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := lines(t, 20)
		chosen := map[string]int{}
		for _, l := range list {
			if rapid.Bool().Draw(t, "by hand") {
				chosen[l.Item] = rapid.IntRange(-3, 20).Draw(t, "n")
			}
		}
		got := trail.Choose(list, chosen)
		must, should, maybe := trail.ByNeed(got)
		want := 0.0
		for _, l := range got {
			if n, ok := chosen[l.Item]; ok && l.Goes() != (n > 0) {
				t.Fatalf("%+v with %d chosen", l, n)
			}
			if l.Goes() {
				want += float64(l.N) * l.Lb
			}
		}
		lb, _ := trail.Sum(got)
		if math.Abs(must+should+maybe-want) > 1e-6 || math.Abs(lb-want) > 1e-6 {
			t.Fatalf("%v + %v + %v, sum %v, want %v", must, should, maybe, lb, want)
		}
	})
}

func TestLoadsAreRoundedUpAndLimitsDown(t *testing.T) {
	for _, c := range []struct {
		lb       float64
		up, down int
	}{{36, 36, 36}, {36.01, 37, 36}, {0.1 + 0.2 + 35.7, 36, 36}, {-4, 0, 0}, {math.NaN(), 0, 0}, {math.Inf(1), 1e6, 1e6}} {
		if up, down := trail.UpLb(c.lb), trail.DownLb(c.lb); up != c.up || down != c.down {
			t.Errorf("%v: %d and %d, want %d and %d", c.lb, up, down, c.up, c.down)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		load := trail.Load{Lb: float64(rapid.IntRange(0, 99999).Draw(t, "lb")) / 100, Limit: float64(rapid.IntRange(0, 99999).Draw(t, "limit")) / 100, Packs: make([]trail.Pack, 2)}
		a := load.Answer()
		if a.Formula == "" || a.Source == "" || a.Limits == "" || !strings.Contains(a.Text, fmt.Sprintf("%d lb", trail.UpLb(load.Lb))) {
			t.Fatalf("%+v", a)
		}
		if over := strings.Contains(a.Text, "over by"); over != (load.Over() > 0) {
			t.Fatalf("%v of %v: %q", load.Lb, load.Limit, a.Text)
		}
	})
}

// The table of worked sums: 53.4 lb in summer, 81.7 in winter.
func TestThePackageIsWhatRidesWithThePatient(t *testing.T) {
	s := demo(t)
	for _, c := range []struct {
		trip trail.Trip
		want float64
	}{{trail.Trip{Season: trail.Summer, Heat: trail.Mild, Km: 1}, 53.4}, {trail.Trip{Season: trail.Winter, Km: 3}, 81.7}} {
		if got := trail.Package(s, trail.List(s, carryOut, c.trip, 6)); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%s: %v lb, want %v", c.trip.Season, got, c.want)
		}
	}
}

func TestAnAgreedLimitIsTheLimit(t *testing.T) {
	if c := (trail.Carrier{BodyLb: 180, OwnLb: 18, Most: 25}); c.Limit() != 25 || !strings.Contains(c.Answer().Formula, "agreed") {
		t.Errorf("%v lb, %q", c.Limit(), c.Answer().Formula)
	}
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1)} {
		if c := (trail.Carrier{BodyLb: 180, OwnLb: 18, Most: bad}); c.Limit() != 36 {
			t.Errorf("a limit of %v gives %v", bad, c.Limit())
		}
	}
}

// The caterpillar of references: 1.6 km are 15 changes every 100 m, 31 every 50.
func TestTheChangesOfBearersAreARange(t *testing.T) {
	a, ok := trail.Trip{Km: 1.6}.Changes()
	if !ok || a.Text != "15 to 31" {
		t.Errorf("%q %v", a.Text, ok)
	}
	if a, ok := (trail.Trip{}).Changes(); ok || a.Text != "no distance, no estimate" {
		t.Errorf("without a distance: %q %v", a.Text, ok)
	}
}

// What walked in came back, was used, handed over or is missing: by the books
// and by the moves of any log.
func TestWhatWentInIsWhatCameOutAndWhatDidNot(t *testing.T) {
	d := demo(t).Dept
	rapid.Check(t, func(t *rapid.T) {
		acts := rapid.SliceOfN(rapid.IntRange(0, 1<<20), 0, 60).Draw(t, "acts")
		s := model.NewState(d)
		at := model.Place{Kind: model.At, Name: "Trail"}
		var log []model.Entry
		in := map[string]int{}
		for k, x := range acts {
			i := x % len(d.Items)
			it := &d.Items[i]
			if it.Kit != "" && it.Kind == model.Kit {
				continue
			}
			from, to := at, model.Place{Kind: []model.PlaceKind{model.Tarp, model.Used, model.With, model.Unexplained}[x/7%4]}
			if to.Kind == model.With {
				to.Name = "MED9"
			}
			if x%3 == 0 || s.Line(i).N(at) == 0 {
				from, to = s.HomeOf(i), at
				if s.Real(from) == at {
					continue // it walks in its kit
				}
			}
			n := min(1+x/31%3, s.Line(i).N(from))
			if n == 0 {
				continue
			}
			e := model.Entry{Scene: "s", Act: model.Act{Verb: model.Correct, Item: it.ID, Quantity: n, From: from.String(), To: to.String()},
				Reply: model.Reply{Word: model.OK}, Moves: []model.Move{{Item: it.ID, N: n, From: from, To: to}}}
			e.Stamp.Wall, e.Stamp.Device = int64(k+1), "A"
			s.Apply(&e)
			log = append(log, e)
			switch {
			case to == at:
				in[it.ID] += n
			case to.Kind == model.Tarp:
				in[it.ID] -= n
			}
		}
		for _, x := range trail.Tallies(s, at, "s", log) {
			if x.Took != x.Back()+x.Used+x.Gave || x.Back() < 0 {
				t.Fatalf("%+v does not add up", x)
			}
			if it := d.Item(x.Item); it.Kit == "" && x.Took != in[x.Item] {
				t.Fatalf("%s: took %d by the tally, %d went in", x.Item, x.Took, in[x.Item])
			}
		}
	})
}
