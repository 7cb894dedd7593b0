package look_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model/look"
)

// punch is the spring punch of the table of worked sums.
func punch() []look.Place {
	return []look.Place{
		{ID: "E42", Name: "ask M10 on E42 by radio", Chance: 0.15, Sight: 0.9, Minutes: 1},
		{ID: "tarp", Name: "tarp and under it", Chance: 0.2, Sight: 0.9, Minutes: 2},
		{ID: "V1", Name: "V1 glass pile", Chance: 0.45, Sight: 0.8, Minutes: 4},
		{ID: "R41", Name: "other slots on R41", Chance: 0.1, Sight: 0.8, Minutes: 3},
		{ID: "MED9", Name: "ask Medic 9", Chance: 0.05, Sight: 0.5, Minutes: 1},
		{ID: "bank", Name: "bank path", Chance: 0.05, Sight: 0.4, Minutes: 6},
	}
}

func ids(places []look.Place) string {
	var out []string
	for _, p := range places {
		out = append(out, p.ID)
	}
	return strings.Join(out, " ")
}

// The table of worked sums, row "search order": the tie goes to the shorter look.
func TestTheOrderIsTheWorkedSum(t *testing.T) {
	all := punch()
	all[0], all[2], all[5], all[1] = all[5], all[1], all[0], all[2]
	got := look.Order(all)
	if ids(got) != "E42 tarp V1 R41 MED9 bank" {
		t.Errorf("%s", ids(got))
	}
	for i, want := range []float64{0.135, 0.090, 0.090, 0.027, 0.025, 0.003} {
		if v := got[i].Value(); math.Abs(v-want) > 0.0005 {
			t.Errorf("%s is worth %v, want %v", got[i].ID, v, want)
		}
	}
}

// The table of worked sums, rows "search update" and "repeat search".
func TestAFailedLookShiftsTheOddsAsTheWorkedSumSays(t *testing.T) {
	got, had := look.After(punch(), "E42", "tarp", "V1")
	want := map[string]float64{"E42": 0.046, "tarp": 0.062, "V1": 0.277, "R41": 0.308, "MED9": 0.154, "bank": 0.154}
	for _, p := range got {
		if math.Abs(p.Chance-want[p.ID]) > 0.0005 {
			t.Errorf("%s: %v, want %v", p.ID, p.Chance, want[p.ID])
		}
	}
	if math.Abs(had-0.675) > 1e-9 {
		t.Errorf("the three looks had %v, want 0.675", had)
	}
	if got := look.Twice(0.8, 0.6); math.Abs(got-0.92) > 1e-12 {
		t.Errorf("two looks see %v, want 0.92", got)
	}
}

func places(t *rapid.T, most int) []look.Place {
	out := make([]look.Place, rapid.IntRange(1, most).Draw(t, "places"))
	for i := range out {
		out[i] = look.Place{ID: string(rune('a' + i)), Chance: float64(rapid.IntRange(0, 20).Draw(t, "chance")) / 100,
			Sight: float64(rapid.IntRange(0, 10).Draw(t, "sight")) / 10, Minutes: float64(rapid.IntRange(1, 12).Draw(t, "minutes"))}
	}
	return out
}

// mean is how long a search goes on, on the average, in this order of looks:
// until it is found, or to the end. Chances, sight and looks are independent.
func mean(all []look.Place, order []int) float64 {
	chance := make([]float64, len(all))
	for i, p := range all {
		chance[i] = p.Chance
	}
	on, time := 1.0, 0.0
	for _, i := range order {
		time += on * all[i].Minutes
		seen := chance[i] * all[i].Sight
		chance[i] -= seen
		on -= seen
	}
	return time
}

// best is the least mean over all orders in which each place is looked at so
// many times, by trying them all.
func best(all []look.Place, left []int, order []int) float64 {
	least := math.Inf(1)
	for i, n := range left {
		if n > 0 {
			left[i]--
			least = math.Min(least, best(all, left, append(order, i)))
			left[i]++
		}
	}
	if math.IsInf(least, 1) {
		return mean(all, order)
	}
	return least
}

func TestNoOrderFindsItSoonerThanOurs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := places(t, 6)
		var order, ones []int
		for _, p := range look.Order(all) {
			order, ones = append(order, int(p.ID[0]-'a')), append(ones, 1)
		}
		if got, want := mean(look.Order(all), seq(len(all))), best(level(all), ones, nil); got > want+1e-9 {
			t.Fatalf("%v minutes in the order %v, %v is possible", got, order, want)
		}
	})
}

// With a second look at each place the best next look is chosen by the odds
// after the failed ones.
func TestNoOrderOfTwoLooksEachFindsItSoonerThanTheOddsAfterEachLook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := level(places(t, 4))
		left := make([]int, len(all))
		for i := range left {
			left[i] = 2
		}
		want := best(all, left, nil)
		now := all
		var order []int
		for len(order) < 2*len(all) {
			for _, p := range look.Order(now) {
				if i := int(p.ID[0] - 'a'); left[i] > 0 {
					order, left[i] = append(order, i), left[i]-1
					now, _ = look.Not(now, p.ID)
					break
				}
			}
		}
		if got := mean(all, order); got > want+1e-9 {
			t.Fatalf("%v minutes in the order %v, %v is possible", got, order, want)
		}
	})
}

func seq(n int) (out []int) {
	for i := range n {
		out = append(out, i)
	}
	return out
}

// level brings chances to no more than one, as the order does.
func level(all []look.Place) []look.Place {
	sum := 0.0
	for _, p := range all {
		sum += p.Chance
	}
	out := append([]look.Place(nil), all...)
	for i := range out {
		out[i].Chance /= math.Max(1, sum)
	}
	return out
}

func TestChancesStayChancesAfterEveryFailedLook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := level(places(t, 8))
		else0 := 1.0
		for _, p := range all {
			else0 -= p.Chance
		}
		looks := rapid.SliceOfN(rapid.IntRange(0, len(all)-1), 0, 12).Draw(t, "looks")
		left := 1.0
		for _, i := range looks {
			before := all[i].Chance
			var had float64
			all, had = look.Not(all, all[i].ID)
			left *= 1 - had
			if had < 1 && all[i].Chance > before+1e-12 {
				t.Fatalf("a look that failed raised the chance from %v to %v", before, all[i].Chance)
			}
		}
		rest := 1.0
		for _, p := range all {
			if !(p.Chance >= 0 && p.Chance <= 1) {
				t.Fatalf("%+v", p)
			}
			rest -= p.Chance
		}
		if left > 1e-6 && math.Abs(rest-else0/left) > 1e-6 {
			t.Fatalf("somewhere else is %v, want %v", rest, else0/left)
		}
	})
}

func TestAnUnsafePlaceIsMarkedAndNotSearched(t *testing.T) {
	all := punch()
	all[0].Unsafe = true
	got := look.Order(all)
	if ids(got) != "tarp V1 R41 MED9 bank E42" || !got[5].Unsafe {
		t.Errorf("%s", ids(got))
	}
}

func clues() look.Clues {
	return look.Clues{LastPlaces: []look.Named{{ID: "V1", Name: "vehicle 1"}}, Tarp: true, Holder: &look.Named{ID: "M10", Name: "Quist"},
		OwnRig: &look.Named{ID: "R41"}, Others: []look.Party{{Named: look.Named{ID: "P71"}}, {Named: look.Named{ID: "MED9"}}}}
}

func chance(all []look.Place) map[string]float64 {
	out := map[string]float64{}
	for _, p := range all {
		out[p.ID] = p.Chance
	}
	return out
}

func TestTheOddsStartAsTheDepartmentSays(t *testing.T) {
	c := chance(look.Usual().Places(clues()))
	for id, want := range map[string]float64{"V1": 0.45, "tarp": 0.20, "M10": 0.15, "R41": 0.10, "P71": 0.05, "MED9": 0.05} {
		if math.Abs(c[id]-want) > 1e-9 {
			t.Errorf("%s: %v, want %v", id, c[id], want)
		}
	}
	mine := look.Usual()
	mine.LastPlace, mine.Tarp = 0.20, 0.45
	if c := chance(mine.Places(clues())); math.Abs(c["V1"]-0.20) > 1e-9 || math.Abs(c["tarp"]-0.45) > 1e-9 {
		t.Errorf("a setting does nothing: %v", c)
	}
}

func TestASiblingThatWentToAnAgencyMakesItTheFirstToAsk(t *testing.T) {
	k := clues()
	k.Others[1].Sibling = true
	got := look.Usual().Places(k)
	c := chance(got)
	if math.Abs(c["P71"]-0.05) > 1e-9 || math.Abs(c["MED9"]-0.35) > 1e-9 || math.Abs(c["V1"]-0.30) > 1e-9 {
		t.Errorf("%v: the others do not come to 0.40", c)
	}
	if first := look.Order(got)[0].ID; first != "MED9" {
		t.Errorf("%s is asked first", first)
	}
}

func TestSmallDarkOrNightLowersSightByAThirdWhereEyesLook(t *testing.T) {
	k := clues()
	plain := look.Usual().Places(k)
	k.Dim, k.Unsafe = true, []string{"V1"}
	for i, p := range look.Usual().Places(k) {
		want := plain[i].Sight
		if p.ID == "V1" || p.ID == "tarp" || p.ID == "R41" {
			want *= 2.0 / 3
		}
		if math.Abs(p.Sight-want) > 1e-12 || p.Unsafe != (p.ID == "V1") {
			t.Errorf("%+v, want sight %v", p, want)
		}
	}
}

func TestStartingChancesAlwaysAddUpToOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var k look.Clues
		for range rapid.IntRange(0, 3).Draw(t, "last") {
			k.LastPlaces = append(k.LastPlaces, look.Named{ID: "L"})
		}
		for range rapid.IntRange(0, 3).Draw(t, "others") {
			k.Others = append(k.Others, look.Party{Sibling: rapid.Bool().Draw(t, "sibling")})
		}
		if k.Tarp = rapid.Bool().Draw(t, "tarp"); rapid.Bool().Draw(t, "holder") {
			k.Holder = &look.Named{ID: "H"}
		}
		all := look.Usual().Places(k)
		sum := 0.0
		for _, p := range all {
			sum += p.Chance
			if p.Chance < 0 {
				t.Fatalf("%+v", p)
			}
		}
		if len(all) > 0 && math.Abs(sum-1) > 1e-9 {
			t.Fatalf("%v of %+v", sum, all)
		}
	})
}

func FuzzNoSearchIsTooStrange(f *testing.F) {
	f.Add(0.45, 0.8, 4.0, 0.2)
	f.Add(math.NaN(), math.Inf(1), 0.0, -1.0)
	f.Add(1.0, 1.0, 1e-308, 1e308)
	f.Fuzz(func(t *testing.T, p, d, min, q float64) {
		all := []look.Place{{ID: "a", Chance: p, Sight: d, Minutes: min}, {ID: "b", Chance: q, Sight: p, Minutes: d}}
		order, had := look.After(all, "a", "a", "b", "?")
		for _, x := range append([]float64{had}, order[0].Chance, order[0].Value(), order[1].Chance, order[1].Value(), look.Twice(p, d)) {
			if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
				t.Fatalf("%+v %v", order, had)
			}
		}
		c := look.Usual()
		c.LastPlace, c.Sibling, c.Dim = p, q, d
		k := look.Clues{LastPlaces: []look.Named{{ID: "x"}}, Others: []look.Party{{Sibling: true}, {}}, Dim: true, Tarp: true}
		for _, x := range c.Places(k) {
			if math.IsNaN(x.Chance) || x.Chance < 0 || math.IsNaN(x.Sight) {
				t.Fatalf("%+v", x)
			}
		}
	})
}
