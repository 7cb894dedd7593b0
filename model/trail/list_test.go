package trail_test

import (
	"io/fs"
	"math"
	"strings"
	"testing"

	"tarpside/assets"
	"tarpside/board/stores"
	"tarpside/model"
	"tarpside/model/trail"
)

const carryOut = "Trail carry-out"

func demo(t testing.TB) *model.State {
	t.Helper()
	sub, err := fs.Sub(assets.Demo, "demo")
	if err != nil {
		t.Fatal(err)
	}
	d, problems := stores.Read(sub)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return model.NewState(d)
}

func byItem(lines []trail.Line) map[string]trail.Line {
	out := map[string]trail.Line{}
	for _, l := range lines {
		out[l.Item] = l
	}
	return out
}

func TestTheListGoesWithTheTrip(t *testing.T) {
	s := demo(t)
	for name, c := range map[string]struct {
		trip trail.Trip
		want map[string]trail.Need
	}{
		"a short summer walk by day, the ambulance crew along": {trail.Trip{Season: trail.Summer, Km: 1, Agency: true}, map[string]trail.Need{
			"S44-001": trail.Must, "S44-005": trail.Should, "S44-008": trail.Stays, "S44-017": trail.Stays, "S44-013": trail.Stays,
			"S44-027": trail.Stays, "R41-087": trail.Stays, "R41-099": trail.Stays, "S44-023": trail.Must, "S44-025": trail.If}},
		"a summer night, the ambulance crew at the road": {trail.Trip{Season: trail.Summer, Km: 3, Night: true}, map[string]trail.Need{
			"S44-008": trail.Should, "S44-017": trail.Must, "S44-013": trail.Must}},
		"winter on ice, a slope that needs a rope": {trail.Trip{Season: trail.Winter, Km: 1, Ice: true, Snow: true, Slope: true, Raise: true}, map[string]trail.Need{
			"S44-005": trail.Stays, "S44-008": trail.Should, "S44-017": trail.Must, "S44-027": trail.Must, "R41-087": trail.Must, "R41-088": trail.Must,
			"R41-091": trail.Must, "R41-099": trail.If}},
		"nobody said which season": {trail.Trip{Km: 1}, map[string]trail.Need{"S44-017": trail.Ask, "S44-008": trail.Ask, "S44-001": trail.Must}},
	} {
		lines := trail.List(s, carryOut, c.trip, 9)
		got := byItem(lines)
		if len(lines) != 19 {
			t.Errorf("%s: %d lines, want 19", name, len(lines))
		}
		for item, need := range c.want {
			if got[item].Need != need || got[item].Why == "" {
				t.Errorf("%s: %s is %s (%s), want %s", name, item, got[item].Need, got[item].Why, need)
			}
		}
		for i := 1; i < len(lines); i++ {
			if lines[i].Need > lines[i-1].Need {
				t.Errorf("%s: %s stands behind what is needed less", name, lines[i].Name)
			}
		}
	}
}

// The table of worked sums, rows "litter kit weight" and the two packages.
func TestThePackagesWeighWhatTheWorkedSumsSay(t *testing.T) {
	s := demo(t)
	lb := func(items ...string) (sum float64) {
		got := byItem(trail.List(s, carryOut, trail.Trip{Season: trail.Winter, Km: 5}, 0))
		for _, id := range items {
			l, ok := got[id]
			if !ok || l.Guessed {
				t.Fatalf("%s: %+v", id, l)
			}
			sum += l.Total()
		}
		return sum
	}
	for want, items := range map[float64][]string{
		39.4: {"S44-001"},
		53.4: {"S44-001", "S44-011", "S44-012", "S44-010"},
		81.7: {"S44-001", "S44-011", "S44-012", "S44-010", "S44-008", "S44-009", "S44-017"},
	} {
		if got := lb(items...); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v lb, want %v", got, want)
		}
	}
}

func TestWaterIsRaisedToWhatThePeopleDrink(t *testing.T) {
	s := demo(t)
	water := func(trip trail.Trip, people int) trail.Line {
		return byItem(trail.List(s, carryOut, trip, people))["S44-022"]
	}
	hot := trail.Trip{Season: trail.Summer, Heat: trail.Mild, Hours: 5, Km: 2}
	if l := water(hot, 9); l.N != 34 || !strings.Contains(l.Why, "raised to 34") || math.Abs(l.Total()-74.8) > 1e-9 {
		t.Errorf("%+v", l)
	}
	if l := water(trail.Trip{Season: trail.Winter, Hours: 5}, 9); l.N != 12 || !strings.Contains(l.Why, "by the table 34") {
		t.Errorf("in winter: %+v", l)
	}
	if l := water(trail.Trip{Season: trail.Summer}, 0); l.N != 12 || !strings.Contains(l.Why, "not known") {
		t.Errorf("hours not known: %+v", l)
	}
	if l := water(hot, 2); l.N != 12 {
		t.Errorf("water was lowered: %+v", l)
	}
}

// hike is a small department: a list without seasons.
func hike() *model.State {
	item := func(id, name, family string, n int, lb float64) model.Item {
		return model.Item{ID: id, Name: name, Rig: "R", Kind: model.Counted, Quantity: n, WeightLb: lb, Family: family, LeastUsable: model.Blank}
	}
	d := &model.Department{
		Rigs: []model.Rig{{ID: "R"}},
		Items: []model.Item{
			item("B", "Wool blanket", "blanket", 2, 3), item("T", "Ice traction pair", "traction", 8, 0.8),
			item("L", "Headlamp", "headlamp", 8, 0.3), item("Q", "Odd thing", "", 2, 0),
			{ID: "H", Name: "Head block set", Rig: "R", Kind: model.Kit, Quantity: 1, WeightLb: 2.5, LeastUsable: model.Blank},
			{ID: "HS", Name: "Head strap", Rig: "R", Kind: model.Consumable, Quantity: 2, WeightLb: 0.05, Kit: "H", LeastUsable: model.Blank},
			{ID: "HB", Name: "Head block", Rig: "R", Kind: model.Counted, Quantity: 2, Kit: "H", NoWeight: true, LeastUsable: model.Blank},
		},
	}
	d.Items[3].NoWeight = true
	for _, p := range [][4]string{{"B", "Wool blanket", "2", "should"}, {"T", "Ice traction pair", "8", "if"}, {"L", "Headlamp", "8", "should"},
		{"Q", "Odd thing", "2", "if"}, {"H", "Head block set", "1", "should"}, {"X", "Not ours", "x", "perhaps"}} {
		d.Pulls = append(d.Pulls, model.Pull{List: "Walk", Item: p[0], Name: p[1], Quantity: p[2], Need: p[3], Season: "any"})
	}
	return model.NewState(d.Index())
}

// Two wool blankets weigh about six pounds and stay behind on a hot walk
// (common practice).
func TestTwoWoolBlanketsStayBehindOnAHotWalk(t *testing.T) {
	s := hike()
	for _, trip := range []trail.Trip{{Season: trail.Summer}, {Heat: trail.Hot}} {
		got := byItem(trail.List(s, "walk", trip, 0))
		if b := got["B"]; b.Need != trail.Stays || b.Total() != 6 || !strings.Contains(b.Why, "warm things stay") {
			t.Errorf("%+v", b)
		}
		if _, lb := trail.Compare([]trail.Line{got["B"]}, map[int]int{0: 2}); lb != 6 {
			t.Errorf("%v needless pounds, want 6", lb)
		}
	}
	for _, trip := range []trail.Trip{{Season: trail.Winter}, {Season: trail.Summer, Night: true}, {Heat: trail.Hot, Wet: true}} {
		if b := byItem(trail.List(s, "walk", trip, 0))["B"]; b.Need != trail.Must {
			t.Errorf("%+v: %+v", trip, b)
		}
	}
	got := byItem(trail.List(s, "walk", trail.Trip{Season: trail.Winter, Ice: true}, 0))
	if got["T"].Need != trail.Must || got["L"].Need != trail.Must {
		t.Errorf("winter: %+v %+v", got["T"], got["L"])
	}
}

func TestAWeightNobodyKnowsCountsFivePoundsAndIsMarked(t *testing.T) {
	got := byItem(trail.List(hike(), "walk", trail.Trip{Season: trail.Summer}, 0))
	if q := got["Q"]; q.Total() != 10 || !q.Guessed {
		t.Errorf("%+v", q)
	}
	if h := got["H"]; math.Abs(h.Total()-12.6) > 1e-9 || !h.Guessed {
		t.Errorf("%+v", h) // 2.5 + 2 straps of 0.05 + 2 blocks that nobody weighed
	}
	if x := got["X"]; x.Line != -1 || x.N != 1 || x.Need != trail.Ask || !x.Guessed {
		t.Errorf("%+v", x)
	}
}

// A head block set has two straps (common practice): a bag that looks full is
// not a complete bag.
func TestTheLoadIsVerifiedAtTheRigByTwoPeopleLineByLine(t *testing.T) {
	s := hike()
	var set []trail.Line
	for _, l := range trail.List(s, "walk", trail.Trip{}, 0) {
		if l.Item == "H" {
			set = append(set, l)
		}
	}
	eyes := trail.Eyes(s, set)
	if len(eyes) != 3 || eyes[1] != (trail.Eye{Item: "HS", Name: "Head strap", Kit: "H", N: 2}) {
		t.Fatalf("%+v", eyes)
	}
	full := map[string]int{"H": 1, "HS": 2, "HB": 2}
	for _, c := range []struct {
		seen  map[string]int
		a, b  string
		diffs int
		want  bool
	}{
		{full, "M01", "M02", 0, true},
		{full, "M01", "M01", 0, false},
		{full, "M01", "", 0, false},
		{map[string]int{"H": 1, "HS": 1, "HB": 2}, "M01", "M02", 1, false},
		{map[string]int{"H": 1, "HS": 2}, "M01", "M02", 1, false},
		{map[string]int{"H": 1, "HS": 2, "HB": 3}, "M01", "M02", 1, false},
		{nil, "M01", "M02", 3, false},
	} {
		diffs, ok := trail.Verify(eyes, c.seen, c.a, c.b)
		if len(diffs) != c.diffs || ok != c.want {
			t.Errorf("%v by %s and %s: %+v %v", c.seen, c.a, c.b, diffs, ok)
		}
	}
	if _, ok := trail.Verify(nil, nil, "M01", "M02"); ok {
		t.Error("nothing looked at counts as verified")
	}
}
