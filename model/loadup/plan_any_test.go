package loadup

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
)

// drawProblem makes a small problem whose rules have no loop: whatever is
// first, or lives in a kit, has the smaller number.
func drawProblem(t *rapid.T, most int) Problem {
	n := rapid.IntRange(1, most).Draw(t, "pieces")
	doors := []Door{{1, "L1"}, {2, "T2"}, {2, "L2"}, {8, "T2"}, {3, "B1"}}
	doors = doors[:rapid.IntRange(2, len(doors)).Draw(t, "doors")]
	door := map[string]Door{}
	for i := range n {
		door[name(i)] = rapid.SampledFrom(doors).Draw(t, "door")
	}
	var rules []model.StowRule
	pair := func() (first, then int) {
		then = rapid.IntRange(1, n-1).Draw(t, "then")
		return rapid.IntRange(0, then-1).Draw(t, "first"), then
	}
	home := map[string]bool{}
	for range rapid.IntRange(0, 3+n).Draw(t, "rules") {
		if n < 2 {
			break
		}
		a, b := pair()
		rules = append(rules, model.StowRule{First: name(a), Then: name(b), Closes: model.Alone})
	}
	inBay := map[string]bool{}
	for g := range rapid.IntRange(0, 2).Draw(t, "bays") {
		cut := rapid.IntRange(0, n-1).Draw(t, "cut")
		group := fmt.Sprint("G", g)
		a := rapid.IntRange(0, len(doors)-1).Draw(t, "end")
		ends := []Door{doors[a], doors[(a+rapid.IntRange(1, len(doors)-1).Draw(t, "other"))%len(doors)]}
		var firsts, thens []string
		for i := range n {
			switch {
			case i <= cut && !inBay[name(i)] && rapid.Bool().Draw(t, "in"):
				firsts = append(firsts, name(i))
				inBay[name(i)] = true
			case i > cut && slices.Contains(ends, door[name(i)]) && rapid.Bool().Draw(t, "before"):
				thens = append(thens, name(i))
			}
		}
		for e, d := range ends { // somebody is at each end, if only one that is not on the list
			other := fmt.Sprint("o", g, e)
			door[other] = d
			home[other] = rapid.IntRange(0, 3).Draw(t, "other home") == 0
			thens = append(thens, other)
		}
		for _, f := range firsts {
			for _, th := range thens {
				rules = append(rules, model.StowRule{First: f, Then: th, Closes: model.BothEnds, Group: group})
			}
		}
	}
	for i := range n { // counted lines that are partly home
		home[name(i)] = rapid.IntRange(0, 9).Draw(t, "partly") == 0
	}
	kit := map[string]string{}
	for i := range n {
		if i < n-1 && rapid.IntRange(0, 3).Draw(t, "kit") == 0 {
			kit[name(i)] = name(rapid.IntRange(i+1, n-1).Draw(t, "which"))
		}
	}
	if n > 1 && rapid.Bool().Draw(t, "middle") { // a kit between that is not on the list
		kit[name(0)], kit["middle"] = "middle", name(n-1)
	}
	p := Problem{
		Rules:  rules,
		KitOf:  func(item string) string { return kit[item] },
		Aboard: func(item string) bool { return home[item] },
		DoorOf: func(item string) Door { return door[item] },
	}
	for i := range n {
		p.Pieces = append(p.Pieces, Piece{
			Item: name(i), Slot: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "slot"), Door: door[name(i)],
			Depth: rapid.IntRange(0, 2).Draw(t, "depth"), Order: rapid.IntRange(0, 3).Draw(t, "order"),
		})
	}
	return p
}

func name(i int) string { return fmt.Sprintf("i%02d", i) }

func visits(steps []Step) int {
	n := 0
	for i, s := range steps {
		if !s.Blocked && (i == 0 || s.Door != steps[i-1].Door) {
			n++
		}
	}
	return n
}

func TestPlanIsTheFirstOfTheFewestVisits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 7)
		if got, want := Plan(p), newSlow(p).plan(); !slices.Equal(got, want) {
			t.Fatalf("plan\n%v\nwant\n%v\nrules %v", got, want, p.Rules)
		}
	})
}

func TestPlanTakesTheFewestVisitsOnLongerLists(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 16)
		plan := Plan(p)
		s, known := newSlow(p), map[string]int{}
		for len(s.left) > 0 { // and each visit is to the first door that keeps them the fewest
			n := s.fewest(known)
			for _, d := range s.doors() {
				items, undo := s.visit(d)
				if len(items) == 0 || s.fewest(known) != n-1 {
					undo()
					continue
				}
				for _, item := range items {
					if plan[0] != (Step{Item: item, Door: d}) {
						t.Fatalf("got %v, want %s at %v", plan, item, d)
					}
					plan = plan[1:]
				}
				break
			}
		}
	})
}

func TestNoLegalSequenceEverTrapsAPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 5)
		stuck := false
		fewest := newSlow(p).sequences(Door{}, 0, &stuck)
		if stuck {
			t.Fatalf("a sequence gets stuck: %v", p.Rules)
		}
		if got := visits(Plan(p)); got < fewest {
			t.Fatalf("the plan takes %d visits, which no legal sequence does: %d", got, fewest)
		}
	})
}
