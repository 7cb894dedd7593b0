package lift

import (
	"fmt"
	"strings"

	"tarpside/model/sum"
)

// TwoPersonLI is the index over which two people are proposed. A line of our
// own: under it are most tools that a fit member lifts every day.
const TwoPersonLI = 2

// Marks are what is proposed for a piece. An officer decides.
type Marks struct {
	sum.Answer      // Value is the load
	TwoPerson  bool // index over 2, or over 51 lb (23 kg)
	HandUp     bool // above 70 in (175 cm): hand it up, never solo
	Unknown    bool // no weight: it may need two, nobody knows
}

// Propose is which marks a piece that is lifted so should have, if one person
// were to lift it: what stands in l.Outside is left out.
func Propose(l Lift) (Marks, error) {
	l.Outside = nil
	r, err := l.Work()
	if err != nil {
		return Marks{}, err
	}
	u := l.units()
	m := Marks{HandUp: l.high(), Unknown: l.Load == 0, Answer: sum.Answer{Name: "lift marks proposed", Unit: u.name, Value: l.Load,
		Formula: fmt.Sprintf("two people: index over %d, or over %s %s; hand it up: above %s %s, where RWL is 0",
			TwoPersonLI, sum.Say(u.constant, 0), u.name, sum.Say(u.high, 0), u.length),
		Source: source + "; the line of 2 is common practice, " + sum.FromMemory,
		Limits: "a proposal for a desk: an officer decides, and the ground, gloves, rain and fatigue can ask for more"}}
	var words []string
	switch {
	case m.Unknown:
		words = append(words, "weight unknown, no two-person mark: weigh it")
	case l.Load > u.constant:
		m.TwoPerson = true
		words = append(words, fmt.Sprintf("two people: over %s %s", sum.Say(u.constant, 0), u.name))
		words = append(words, crowd(l.Load, u)...)
	case r.LI > TwoPersonLI:
		m.TwoPerson = true
		words = append(words, fmt.Sprintf("two people: index %.2f", sum.Round(r.LI, 2)))
	}
	if m.HandUp {
		words = append(words, fmt.Sprintf("hand it up, never solo: above %s %s", sum.Say(u.high, 0), u.length))
	}
	if len(words) == 0 {
		words = append(words, "none")
	}
	switch {
	case len(r.NotApplicable) > 0:
		words = append(words, "the equation does not apply ("+strings.Join(r.NotApplicable, "; ")+"): weight and height only")
	case r.RWL == 0 && !m.HandUp:
		words = append(words, "but "+l.nothing(r)+": the limit is 0, and no mark mends that")
	}
	m.Text = strings.Join(words, "; ")
	return m, nil
}

// crowd says when two are not enough, if each may lift the constant.
func crowd(load float64, u units) []string {
	two, three := share[2]*2*u.constant, share[3]*3*u.constant
	switch {
	case load > three:
		return []string{fmt.Sprintf("over %s %s are more than three should lift: wheels, a winch, or four and more, for whom there is no figure", sum.Say(three, 1), u.name)}
	case load > two:
		return []string{fmt.Sprintf("over %s %s three", sum.Say(two, 1), u.name)}
	}
	return nil
}

// share is the part of the sum of what each could lift that a team can.
var share = map[int]float64{1: 1, 2: 2.0 / 3, 3: 1.0 / 2}

const teamSource = "UK Health and Safety Executive, guidance on the Manual Handling Operations Regulations 1992, team handling, paragraph 120"

// MostTeam is the largest team for which there is a figure.
const MostTeam = 3

// TeamLimit is what a team can lift whose members could each lift so much
// alone, in the same unit. For four and more there is no figure.
func TeamLimit(unit string, each ...float64) (sum.Answer, error) {
	n, total := len(each), 0.0
	if n == 0 {
		return sum.Answer{}, fmt.Errorf("a team needs somebody to lift")
	}
	if n > MostTeam {
		return sum.Answer{}, fmt.Errorf("there is no figure for %d people: plan with wheels, a winch or smaller loads", n)
	}
	for _, x := range each {
		if !(x >= 0 && x <= 2000) {
			return sum.Answer{}, fmt.Errorf("what one person can lift must be a number from 0 to 2000 %s", unit)
		}
		total += x
	}
	a := sum.Answer{Name: "limit of the team", Unit: unit, Value: total * share[n],
		Formula: "one: what that one can lift; two: 2/3 of the sum; three: 1/2 of the sum",
		Source:  teamSource,
		Limits:  "an approximate guide; on steps and slopes those at the lower end bear most; poor holds take more off; for four there is no figure, and more than four are unlikely to work"}
	a.Text = sum.Say(a.Value, 1) + " " + unit
	return a, nil
}
