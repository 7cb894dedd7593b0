package trail_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/trail"
)

// The table of worked sums, row "pack limit".
func TestAMembersLimitIsThirtyPercentLessTheirOwnGear(t *testing.T) {
	if got := (trail.Carrier{BodyLb: 180, OwnLb: 18}).Limit(); math.Abs(got-36) > 1e-9 {
		t.Errorf("%v lb, want 36", got)
	}
	for name, c := range map[string]struct {
		extra   map[string]string
		limit   float64
		guessed bool
	}{
		"nothing known":     {nil, 36, true},
		"both known":        {map[string]string{"body_lb": "200", "own_gear_lb": " 20 "}, 40, false},
		"only the body":     {map[string]string{"body_lb": "200"}, 42, true},
		"no number":         {map[string]string{"body_lb": "NaN", "own_gear_lb": "Inf"}, 36, true},
		"cannot be a body":  {map[string]string{"body_lb": "20000", "own_gear_lb": "18"}, 36, true},
		"more gear than 30": {map[string]string{"body_lb": "100", "own_gear_lb": "40"}, 0, false},
	} {
		got := trail.CarrierOf(&model.Member{ID: "M", Extra: c.extra})
		if math.Abs(got.Limit()-c.limit) > 1e-9 || got.Guessed != c.guessed {
			t.Errorf("%s: %v %v, want %v %v", name, got.Limit(), got.Guessed, c.limit, c.guessed)
		}
	}
}

func lines(t *rapid.T, count int) []trail.Line {
	out := make([]trail.Line, rapid.IntRange(0, count).Draw(t, "lines"))
	for i := range out {
		out[i] = trail.Line{Item: fmt.Sprint(i), N: rapid.IntRange(0, 12).Draw(t, "n"), Lb: float64(rapid.IntRange(0, 800).Draw(t, "tenths")) / 10,
			Need: trail.Need(rapid.IntRange(0, 4).Draw(t, "need")), TwoPerson: rapid.Bool().Draw(t, "two")}
	}
	return out
}

func crew(t *rapid.T, least int) []trail.Carrier {
	out := make([]trail.Carrier, rapid.IntRange(least, 12).Draw(t, "people"))
	for i := range out {
		out[i] = trail.Carrier{Member: fmt.Sprint(i), BodyLb: float64(rapid.IntRange(90, 300).Draw(t, "body")), OwnLb: 18}
	}
	return out
}

func TestEveryPieceIsCarriedByAsManyAsItTakesAndWeightsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := lines(t, 20)
		load := trail.Packs(list, crew(t, 1))
		pieces := make([]float64, len(list))
		all := 0.0
		for _, p := range load.Packs {
			own := 0.0
			for _, x := range p.Parts {
				own += x.Lb
				pieces[x.Line] += float64(x.N) / float64(max(1, x.Shared))
				if list[x.Line].TwoPerson && x.Shared < min(2, len(load.Packs)) {
					t.Fatalf("one carries %+v alone", list[x.Line])
				}
			}
			if math.Abs(own-p.Lb) > 1e-6 {
				t.Fatalf("a pack of %v says %v", own, p.Lb)
			}
			all += p.Lb
		}
		want := 0.0
		for i, l := range list {
			n := l.N
			if l.Need == trail.Stays {
				n = 0
			}
			if math.Abs(pieces[i]-float64(n)) > 1e-6 {
				t.Fatalf("%v pieces of %+v carried", pieces[i], l)
			}
			want += float64(n) * l.Lb
		}
		if math.Abs(all-want) > 1e-6 || math.Abs(load.Lb-want) > 1e-6 {
			t.Fatalf("packs %v, load %v, want %v", all, load.Lb, want)
		}
	})
}

func TestOneMoreInThePartyNeverMakesTheTeamsLoadWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list, people := lines(t, 20), crew(t, 1)
		more := append(people[:len(people):len(people)], trail.Carrier{Member: "more", BodyLb: float64(rapid.IntRange(40, 300).Draw(t, "body")), OwnLb: 18})
		a, b := trail.Packs(list, people), trail.Packs(list, more)
		if b.Over() > a.Over() || b.Lb != a.Lb || b.Lb/float64(len(b.Packs)) > a.Lb/float64(len(a.Packs)) {
			t.Fatalf("%d people: %v over; %d people: %v over", len(people), a.Over(), len(more), b.Over())
		}
	})
}

func TestWithoutPeopleNothingIsCarriedAndItIsSaid(t *testing.T) {
	list := []trail.Line{{N: 1, Lb: 10, Need: trail.Must}, {N: 2, Lb: 3, Need: trail.Stays}}
	load := trail.Packs(list, nil)
	if len(load.Packs) != 0 || len(load.Left) != 1 || load.Lb != 10 || load.Over() != 10 {
		t.Errorf("%+v", load)
	}
}

func TestWhatIsProposedToStayIsNeverAMustAndNeverNeedless(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := lines(t, 20)
		limit := float64(rapid.IntRange(0, 3000).Draw(t, "limit"))
		lb, _ := trail.Sum(list)
		drops, over := trail.Drops(list, limit)
		left := lb
		least := trail.Need(0)
		stays := map[int]int{}
		for _, d := range drops {
			l := list[d.Line]
			if l.Need == trail.Must || l.Need == trail.Stays || l.Need < least || d.N < 1 || d.N > l.N || d.Why == "" {
				t.Fatalf("%+v of %+v", d, l)
			}
			least = l.Need
			stays[d.Line] = d.N
			left -= d.Lb
		}
		if math.Abs(max(0, left-limit)-over) > 0.02 {
			t.Fatalf("%v lb left at a limit of %v, said to be %v over", left, limit, over)
		}
		for _, d := range drops {
			if one := list[d.Line].Lb; over == 0 && left+one <= limit {
				t.Fatalf("one of %+v stays without need: %v lb at a limit of %v", d, left, limit)
			}
		}
		if over > 0 {
			for i, l := range list {
				if (l.Need == trail.If || l.Need == trail.Ask || l.Need == trail.Should) && l.Lb > 0.01 && stays[i] < l.N {
					t.Fatalf("too heavy by %v, and %+v goes along", over, l)
				}
			}
		}
	})
}

func TestTheHeaviestOfTheLeastNeededStaysFirst(t *testing.T) {
	list := []trail.Line{
		{Item: "litter", N: 1, Lb: 39.4, Need: trail.Must}, {Item: "mattress", N: 1, Lb: 14, Need: trail.Should},
		{Item: "pole", N: 4, Lb: 1.2, Need: trail.If}, {Item: "bridle", N: 1, Lb: 12, Need: trail.If},
	}
	drops, over := trail.Drops(list, 60)
	if len(drops) != 1 || drops[0].Line != 3 || drops[0].Lb != 12 || over != 0 {
		t.Errorf("over by 10.2: %+v %v", drops, over)
	}
	drops, over = trail.Drops(list, 68)
	if len(drops) != 1 || drops[0].Line != 3 {
		t.Errorf("over by 2.2: %+v %v", drops, over)
	}
	drops, over = trail.Drops(list, 30)
	if len(drops) != 3 || math.Abs(over-9.4) > 1e-9 {
		t.Errorf("the litter alone is too heavy: %+v %v", drops, over)
	}
}

func TestWhatGoesInComesOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var load []trail.Tally
		seen := map[string]int{}
		for i := range rapid.IntRange(0, 8).Draw(t, "lines") {
			took := rapid.IntRange(0, 20).Draw(t, "took")
			used := rapid.IntRange(0, took).Draw(t, "used")
			gave := rapid.IntRange(0, took-used).Draw(t, "gave")
			x := trail.Tally{Item: fmt.Sprint(i), Took: took, Used: used, Gave: gave}
			if x.Back()+x.Used+x.Gave != x.Took {
				t.Fatalf("%+v brings %d back", x, x.Back())
			}
			load, seen[x.Item] = append(load, x), x.Back()
		}
		if d := trail.CountAt(load, seen); len(d) != 0 {
			t.Fatalf("all there, and yet %+v", d)
		}
		if len(load) == 0 {
			return
		}
		k := rapid.IntRange(0, len(load)-1).Draw(t, "changed")
		off := rapid.SampledFrom([]int{-1, 1, 3}).Draw(t, "off")
		seen[load[k].Item] += off
		if d := trail.CountAt(load, seen); len(d) != 1 || d[0].Item != load[k].Item || d[0].Short() != -off {
			t.Fatalf("%d more of %s: %+v", off, load[k].Item, d)
		}
	})
	load := []trail.Tally{{Item: "sling", Took: 8}, {Item: "water", Took: 4, Used: 4}}
	d := trail.CountAt(load, map[string]int{"rope": 1})
	if len(d) != 2 || !d[0].Unseen || d[0].Short() != 8 || d[1].Item != "rope" || d[1].Short() != -1 {
		t.Errorf("%+v", d)
	}
}

// Thirty needless pounds are a failure as much as a piece left behind.
func TestNeedlessPoundsAndMissingMustsAreBothSaid(t *testing.T) {
	list := []trail.Line{{Item: "litter", N: 1, Lb: 39.4, Need: trail.Must}, {Item: "blankets", N: 2, Lb: 3, Need: trail.Stays}, {Item: "water", N: 12, Lb: 2, Need: trail.Must}}
	wanting, needless := trail.Compare(list, map[int]int{1: 2, 2: 24})
	if len(wanting) != 1 || wanting[0].Item != "litter" || needless != 30 {
		t.Errorf("%+v, %v lb", wanting, needless)
	}
}

func FuzzNoLoadIsTooStrange(f *testing.F) {
	f.Add("12", "must", "winter, wet, or night", 3.0, 180.0, 4)
	f.Add("1000000000", "should if EMS stays at the road", "no , or no", math.Inf(1), math.NaN(), 0)
	f.Fuzz(func(t *testing.T, n, need, season string, lb, body float64, people int) {
		d := &model.Department{Items: []model.Item{{ID: "A", Kind: model.Counted, Quantity: 3, WeightLb: lb}},
			Pulls: []model.Pull{{List: "L", Item: "A", Quantity: n, Need: need, Season: season}}}
		list := trail.List(model.NewState(d.Index()), "L", trail.Trip{Season: trail.Summer, Hours: body}, people)
		load := trail.Packs(list, make([]trail.Carrier, min(max(people, 0), 40)))
		load = trail.Packs(list, append([]trail.Carrier{{BodyLb: body, OwnLb: lb}}, make([]trail.Carrier, len(load.Packs))...))
		drops, over := trail.Drops(list, body)
		for _, x := range []float64{load.Lb, load.Limit, load.Over(), over} {
			if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
				t.Fatalf("%+v %+v %v", load, drops, over)
			}
		}
	})
}

func BenchmarkSixtyPeopleAndThreeHundredLines(b *testing.B) {
	list := make([]trail.Line, 300)
	for i := range list {
		list[i] = trail.Line{Item: fmt.Sprint(i), N: 1 + i%8, Lb: float64(1+i*7%90) / 3, Need: trail.Need(1 + i%4), TwoPerson: i%40 == 0}
	}
	people := make([]trail.Carrier, 60)
	for i := range people {
		people[i] = trail.Carrier{BodyLb: float64(120 + i*3), OwnLb: 18}
	}
	for b.Loop() {
		load := trail.Packs(list, people)
		trail.Drops(list, load.Limit)
	}
}
