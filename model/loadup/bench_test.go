package loadup

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"tarpside/model"
)

// bigProblem is a rig of 500 pieces behind 20 doors, with 60 rules: in one
// compartment, across any two doors, and two through bays.
func bigProblem(seed uint64, across int) Problem {
	r := rand.New(rand.NewPCG(seed, 41))
	const n, doors = 500, 20
	door := make(map[string]Door, n)
	behind := make([][]int, doors)
	kit := map[string]string{}
	p := Problem{
		KitOf:  func(item string) string { return kit[item] },
		Aboard: func(string) bool { return false },
		DoorOf: func(item string) Door { return door[item] },
	}
	for i := range n {
		d := r.IntN(doors)
		behind[d] = append(behind[d], i)
		door[name(i)] = Door{Lap: d, Compartment: fmt.Sprint("C", d)}
		p.Pieces = append(p.Pieces, Piece{
			Item: name(i), Slot: fmt.Sprintf("C%d-%d", d, r.IntN(3)), Door: door[name(i)],
			Depth: r.IntN(3), Order: r.IntN(20),
		})
		if d2 := behind[d]; i%5 == 0 && len(d2) > 1 { // every fifth piece lives in the one before it
			kit[name(d2[len(d2)-2])] = name(i)
		}
	}
	add := func(a, b int, closes, group string) {
		p.Rules = append(p.Rules, model.StowRule{First: name(min(a, b)), Then: name(max(a, b)), Closes: closes, Group: group})
	}
	for bay := range 2 {
		a, b := behind[bay*7+1], behind[bay*7+5]
		for first := range 3 {
			add(first+3*bay, a[len(a)-1], model.BothEnds, fmt.Sprint("G", bay))
			add(first+3*bay, b[len(b)-1], model.BothEnds, fmt.Sprint("G", bay))
		}
	}
	for range across {
		add(r.IntN(n/2), n/2+r.IntN(n/2), model.Alone, "")
	}
	for len(p.Rules) < 60 {
		d := behind[r.IntN(doors)]
		a := r.IntN(len(d) - 1)
		add(d[a], d[a+1+r.IntN(len(d)-a-1)], model.Alone, "")
	}
	return p
}

// BenchmarkPlan500Pieces60Rules has a rig as rigs are: most rules are about
// one compartment, a few about two, and there are two through bays.
func BenchmarkPlan500Pieces60Rules(b *testing.B) {
	p := bigProblem(1, 6)
	for b.Loop() {
		Plan(p)
	}
}

// BenchmarkPlanTangled has no rig that anybody built: every other rule is
// about two doors anywhere. The bound on the search is what it shows.
func BenchmarkPlanTangled(b *testing.B) {
	p := bigProblem(1, 48)
	for b.Loop() {
		Plan(p)
	}
}
