package loadup

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
)

var (
	l1 = Door{1, "L1"}
	t2 = Door{2, "T2"} // the left end of the through bay
	l3 = Door{3, "L3"}
	t8 = Door{8, "T2"} // its right end
)

// rig is a small rig in words: "item door depth order [kit]" a line; a line
// that starts with "home" is aboard, one with "away" is neither there nor listed.
func rig(rules []model.StowRule, lines ...string) Problem {
	doors := map[string]Door{"L1": l1, "T2": t2, "L3": l3, "T8": t8}
	door, kit, home := map[string]Door{}, map[string]string{}, map[string]bool{}
	p := Problem{
		Rules:  rules,
		KitOf:  func(item string) string { return kit[item] },
		Aboard: func(item string) bool { return home[item] },
		DoorOf: func(item string) Door { return door[item] },
	}
	for _, line := range lines {
		f := strings.Fields(line)
		where := ""
		if f[0] == "home" || f[0] == "away" {
			where, f = f[0], f[1:]
		}
		piece := Piece{Item: f[0], Slot: f[1], Door: doors[f[1]]}
		fmt.Sscan(f[2], &piece.Depth)
		fmt.Sscan(f[3], &piece.Order)
		if len(f) > 4 {
			kit[f[0]] = f[4]
		}
		door[f[0]], home[f[0]] = piece.Door, where == "home"
		if where == "" {
			p.Pieces = append(p.Pieces, piece)
		}
	}
	return p
}

func alone(first, then string) model.StowRule {
	return model.StowRule{First: first, Then: then, Closes: model.Alone}
}

// through makes the rules of one bay.
func through(group string, firsts, thens []string) []model.StowRule {
	var rules []model.StowRule
	for _, f := range firsts {
		for _, th := range thens {
			rules = append(rules, model.StowRule{First: f, Then: th, Closes: model.BothEnds, Group: group})
		}
	}
	return rules
}

// said writes steps as "item@lap", blocked ones as "item!lap".
func said(steps []Step) string {
	var out []string
	for _, s := range steps {
		mark := "@"
		if s.Blocked {
			mark = "!"
		}
		out = append(out, fmt.Sprint(s.Item, mark, s.Door.Lap))
	}
	return strings.Join(out, " ")
}

func TestTheOrderOfTheTable(t *testing.T) {
	struts := through("G", []string{"strut1", "strut2"}, []string{"left", "right"})
	for _, c := range []struct {
		name string
		p    Problem
		want string
	}{
		{"nothing to load", rig(nil), ""},
		{"one lap, deepest first, then slot, order and item",
			rig(nil, "d L3 0 1", "c L1 0 2", "b L1 0 1", "a L1 0 1", "e L1 1 9"), "e@1 a@1 b@1 c@1 d@3"},
		{"struts lie behind two crates: both crates are out, the struts go in first at the first door",
			rig(struts, "left T2 0 1", "right T8 0 1", "strut1 T2 2 1", "strut2 T2 2 2"),
			"strut1@2 strut2@2 left@2 right@8"},
		{"one crate is in already: the struts go in from the other side, and that crate after them",
			rig(struts, "home left T2 0 1", "right T8 0 1", "strut1 T2 2 1", "strut2 T2 2 2"),
			"strut1@8 strut2@8 right@8"},
		{"both crates are in: the struts are blocked and come last",
			rig(struts, "home left T2 0 1", "home right T8 0 1", "strut2 T2 2 2", "strut1 T2 2 1", "z T8 0 1"),
			"z@8 strut1!2 strut2!2"},
		{"both crates are out, a strut waits for what another door has: the left crate may go in, the right one waits",
			rig(append(struts, alone("plate", "strut1")), "left T2 0 1", "right T8 0 1", "strut1 T2 2 1", "plate L3 0 1"),
			"left@2 plate@3 strut1@8 right@8"},
		{"what is in a kit goes in before the kit, to any depth, with the kit between away",
			rig(nil, "box L1 2 1", "away bag L1 0 2 box", "pin L1 0 3 bag"), "pin@1 box@1"},
		{"what closes a space goes in after it, whatever the depth",
			rig([]model.StowRule{alone("bar", "crate")}, "crate L1 2 1", "bar L1 0 1"), "bar@1 crate@1"},
		{"what is blocked holds nothing up",
			rig([]model.StowRule{alone("bar", "crate"), alone("bar", "late")}, "home crate L1 0 1", "bar L1 0 1", "late L1 0 2"),
			"late@1 bar!1"},
		{"a line that is partly home closes at once",
			rig([]model.StowRule{alone("bar", "cones")}, "bar L1 0 1", "cones L1 0 2"), "bar@1 cones@1"},
		{"a door is opened twice only where the rules ask for it",
			rig([]model.StowRule{alone("a", "b"), alone("b", "c")}, "a L1 0 1", "b L3 0 1", "c L1 0 2"), "a@1 b@3 c@1"},
		{"a walk that starts elsewhere is taken where it saves a door",
			rig([]model.StowRule{alone("b", "a")}, "a L1 0 1", "b L3 0 1"), "b@3 a@1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := said(Plan(c.p)); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

func TestALineThatIsPartlyHomeClosesWhatItCloses(t *testing.T) {
	p := rig([]model.StowRule{alone("bar", "cones")}, "bar L1 0 1", "cones L1 0 2")
	p.Aboard = func(item string) bool { return item == "cones" }
	if got, want := said(Plan(p)), "cones@1 bar!1"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestClosedNamesWhatIsInTheWay(t *testing.T) {
	rules := append(through("G", []string{"strut"}, []string{"right", "left", "ring"}), alone("strut", "net"), alone("bar", "left"))
	p := rig(rules, "strut T2 2 1", "right T8 0 1", "left T2 0 1", "ring T2 0 2", "net T2 1 1", "bar T2 0 3")
	for _, c := range []struct{ item, aboard, by, ends string }{
		{"strut", "", "", "2: 8:"},
		{"strut", "left", "", "2:left 8:"},
		{"strut", "right ring left", "left ring right", "2:left+ring 8:right"},
		{"strut", "net", "net", "2: 8:"},
		{"strut", "net right", "net", "2: 8:right"},
		{"bar", "left", "left", ""},
		{"bar", "strut right", "", ""},
		{"nobody", "left right", "", ""},
	} {
		aboard := func(item string) bool { return slices.Contains(strings.Fields(c.aboard), item) }
		got := Closed(c.item, rules, aboard, p.DoorOf)
		var ends []string
		for _, e := range got.Ends {
			ends = append(ends, fmt.Sprint(e.Door.Lap, ":", strings.Join(e.By, "+")))
		}
		if by := strings.Join(got.By(), " "); by != c.by || got.Shut() != (c.by != "") || strings.Join(ends, " ") != c.ends {
			t.Errorf("%s with %q aboard: shut %v by %q, ends %v; want by %q, ends %s", c.item, c.aboard, got.Shut(), by, ends, c.by, c.ends)
		}
	}
}

func TestClosedIsTheRuleWordByWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 7)
		s := newSlow(p)
		for _, piece := range p.Pieces {
			if got := Closed(piece.Item, p.Rules, p.Aboard, p.DoorOf); got.Shut() != s.shut(piece.Item) || got.Shut() != (len(got.By()) > 0) {
				t.Fatalf("%s: %+v, want shut %v", piece.Item, got, s.shut(piece.Item))
			}
		}
	})
}

// after is the problem once the first step is done.
func after(p Problem, s Step) Problem {
	home := p.Aboard
	p.Aboard = func(item string) bool { return item == s.Item || home(item) }
	p.Pieces = slices.DeleteFunc(slices.Clone(p.Pieces), func(x Piece) bool { return x.Item == s.Item })
	p.At = &s.Door
	return p
}

func TestWhatIsLeftKeepsItsOrderWhenAPieceGoesIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 12)
		for plan := Plan(p); len(plan) > 0; plan = plan[1:] {
			p = after(p, plan[0])
			if got := Plan(p); !slices.Equal(got, plan[1:]) {
				t.Fatalf("after %v at %v\ngot  %v\nwant %v", plan[0].Item, plan[0].Door, got, plan[1:])
			}
		}
	})
}

// By the rules alone a plan does not know that somebody stands at a door, and
// once the first piece is in, another list may take fewer visits: the case
// for which At is there.
func TestWithoutADoorToStandAtTheRestMayTurnRound(t *testing.T) {
	p := rig([]model.StowRule{alone("a", "c"), alone("c", "d")}, "a L1 0 1", "b L1 0 2", "c L3 0 1", "d L1 0 3")
	plan := Plan(p)
	if got, want := said(plan), "a@1 b@1 c@3 d@1"; got != want {
		t.Fatalf("got %s, want %s", got, want)
	}
	p = after(p, plan[0])
	if got, want := said(Plan(p)), "b@1 c@3 d@1"; got != want {
		t.Errorf("at the door: got %s, want %s", got, want)
	}
	p.At = nil
	if got, want := said(Plan(p)), "c@3 b@1 d@1"; got != want {
		t.Errorf("at no door: got %s, want %s", got, want)
	}
}

func TestEveryPieceHasOneStepWhateverTheRules(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 9).Draw(t, "pieces")
		item := rapid.Custom(func(t *rapid.T) string { return name(rapid.IntRange(0, n).Draw(t, "item")) })
		kit, lap := map[string]string{}, map[string]int{}
		p := Problem{
			KitOf:  func(i string) string { return kit[i] },
			Aboard: func(i string) bool { return i == name(n) },
			DoorOf: func(i string) Door { return Door{lap[i], "x"} },
		}
		var want []string
		for i := range n {
			lap[name(i)] = rapid.IntRange(0, 3).Draw(t, "lap")
			if rapid.IntRange(0, 2).Draw(t, "inside") == 0 {
				kit[name(i)] = item.Draw(t, "kit") // itself too
			}
			p.Pieces = append(p.Pieces, Piece{Item: name(i), Door: Door{lap[name(i)], "x"}})
			want = append(want, name(i))
		}
		for range rapid.IntRange(0, 12).Draw(t, "rules") {
			p.Rules = append(p.Rules, model.StowRule{
				First: item.Draw(t, "first"), Then: item.Draw(t, "then"),
				Closes: rapid.SampledFrom([]string{model.Alone, model.BothEnds}).Draw(t, "closes"),
				Group:  rapid.SampledFrom([]string{"G", "H"}).Draw(t, "group"),
			})
		}
		var got []string
		for _, s := range Plan(p) {
			got = append(got, s.Item)
		}
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Fatalf("got %v, want %v", got, want)
		}
	})
}

func TestALoopOfRulesComesLastAndHoldsNothingElseUp(t *testing.T) {
	p := rig([]model.StowRule{alone("a", "b"), alone("b", "a"), alone("b", "c")}, "a L1 0 1", "b L1 0 2", "c L1 0 3", "d L3 0 1")
	if got, want := said(Plan(p)), "d@3 a!1 b!1 c!1"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestASearchCutShortStillLoadsEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 12)
		y := newYard(p)
		limit := rapid.IntRange(-1, 12).Draw(t, "limit")
		for _, k := range y.knots(y.all()) {
			whole, cut := newSearch(k), newSearch(k)
			cut.limit = limit
			fewest, list := len(whole.best()), cut.best()
			left := slices.Clone(k.left)
			for _, door := range list {
				if k.visit(left, door, nil) == 0 {
					t.Fatalf("a visit loads nothing: %v", list)
				}
			}
			if !left.empty() || len(list) < fewest {
				t.Fatalf("%v of at least %d visits leaves %v", list, fewest, left)
			}
		}
	})
}

func TestTheBoundNeverPromisesTooMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := newYard(drawProblem(t, 12))
		for _, k := range y.knots(y.all()) {
			s := newSearch(k)
			list := s.best()
			left := slices.Clone(k.left)
			for i, door := range list {
				if n := s.atLeast(left); n > len(list)-i {
					t.Fatalf("at least %d visits, but %d are enough", n, len(list)-i)
				}
				k.visit(left, door, nil)
			}
		}
	})
}
