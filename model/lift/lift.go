// Package lift works the revised lifting equation of NIOSH for one lift by
// one person, says where it does not apply, and proposes the lift marks of a
// piece. It is for a desk, once a piece: nearly every rescue tool is over an
// index of 1, so that a live index would cry wolf.
package lift

import (
	"fmt"
	"math"
	"strings"

	"tarpside/model/sum"
)

// A Grip is how well the hands hold, table 6 of the manual.
type Grip int

// The grips. Gloves make one worse than it is.
const (
	Good Grip = iota
	Fair
	Poor
)

// A Hold is where the hands are at one end of a lift: H ahead of the ankles, V
// above the floor (both in inches, or centimetres if the lift is metric), and
// A the degrees that the load stands aside.
type Hold struct{ H, V, A float64 }

// An Outside is a way of lifting that the equation does not cover.
type Outside int

// The ways of lifting that the equation does not cover.
const (
	Team Outside = iota
	OneHand
	Carrying
	Pushing
	Slippery
	Kneeling
	Cramped
	Unstable
	HotOrCold
)

var outside = map[Outside]string{
	Team:      "more than one lifts: see the limit of a team",
	OneHand:   "lifted with one hand",
	Carrying:  "carried, not only lifted",
	Pushing:   "pushed, pulled, wheeled or shovelled",
	Slippery:  "on slippery ground",
	Kneeling:  "kneeling or seated",
	Cramped:   "where there is no room to stand up",
	Unstable:  "a load that shifts",
	HotOrCold: "in great heat or cold",
}

// A Lift is one lift of one load from one hold to another.
type Lift struct {
	Metric   bool
	Load     float64 // lb, or kg; 0 is not known
	From, To Hold
	Often    float64 // lifts a minute, averaged over 15 minutes
	Hours    float64 // for how long, with light work after; 0 is up to one
	Grip     Grip
	Coupling float64 // in place of table 7, at both ends; 0 is none
	Outside  []Outside
}

// An End is the equation at one end of the lift.
type End struct {
	HM, VM, DM, AM, FM, CM float64
	RWL                    float64 // recommended weight limit, in the lift's unit of weight
}

// A Result is the equation for both ends. The lower limit is the one to use.
// Value of the answer is RWL; if the equation does not apply nothing is
// worked out, and NotApplicable says why.
type Result struct {
	sum.Answer
	Start, Finish End
	RWL           float64
	LI            float64 // load over RWL, 0 if there is none: no load or no limit
	NotApplicable []string
}

const (
	formula = "RWL = constant x HM x VM x DM x AM x FM x CM at each end, the lower one counts; index = load / RWL"
	source  = "Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) 94-110 (1994, revised 9/2021), pages 7 to 15, tables 1 to 7"
	limits  = "one person, both hands, standing, dry firm ground, a load that holds still, the load set down under control; " +
		"over 1 is more risk for some, over 3 for nearly all (page 20); nearly every rescue tool is over 1; the list of what it leaves out is " +
		sum.FromMemory + " of page 6"
)

// Constant is the most that the equation ever allows one person: 51 lb, 23 kg.
func Constant(inMetric bool) float64 { return Lift{Metric: inMetric}.units().constant }

func (l Lift) units() units {
	if l.Metric {
		return metric
	}
	return american
}

// Work is the equation at both ends. The error says in words what cannot be.
func (l Lift) Work() (Result, error) {
	if err := l.check(); err != nil {
		return Result{}, err
	}
	u := l.units()
	r := Result{NotApplicable: l.notApplicable(),
		Answer: sum.Answer{Name: "recommended weight limit", Unit: u.name, Formula: formula, Source: source, Limits: limits}}
	if l.Often > printed {
		r.Limits += "; frequencies over 10 a minute are " + sum.FromMemory
	}
	if len(r.NotApplicable) > 0 {
		r.Text = "not applicable: " + strings.Join(r.NotApplicable, "; ")
		return r, nil
	}
	r.Start, r.Finish = l.end(l.From), l.end(l.To)
	r.RWL = min(r.Start.RWL, r.Finish.RWL)
	r.Value, r.Low, r.High = r.RWL, r.RWL, max(r.Start.RWL, r.Finish.RWL)
	if r.RWL > 0 {
		r.LI = l.Load / r.RWL
	}
	r.Text = fmt.Sprintf("start %.1f, end %.1f: use %.1f %s", sum.Round(r.Start.RWL, 1), sum.Round(r.Finish.RWL, 1), sum.Round(r.RWL, 1), u.name) + "; " + l.index(r)
	return r, nil
}

// end is the equation with the hands at h.
func (l Lift) end(h Hold) End {
	u := l.units()
	e := End{HM: u.hm(h.H), VM: u.vm(h.V), DM: u.dm(math.Abs(l.To.V - l.From.V)), AM: am(h.A),
		FM: u.fm(l.Often, l.hours(), l.From.V), CM: u.cm(l.Grip, h.V)}
	if l.Coupling != 0 {
		e.CM = l.Coupling
	}
	e.RWL = u.constant * e.HM * e.VM * e.DM * e.AM * e.FM * e.CM
	return e
}

func (l Lift) hours() float64 {
	if l.Hours == 0 {
		return 1
	}
	return l.Hours
}

// index is the lifting index in words.
func (l Lift) index(r Result) string {
	switch {
	case r.RWL == 0:
		return "index none: " + l.nothing(r)
	case l.Load == 0:
		return "index none: the weight is not known"
	}
	return fmt.Sprintf("index %.2f", sum.Round(r.LI, 2))
}

// nothing says why nothing at all should be lifted so.
func (l Lift) nothing(r Result) string {
	u := l.units()
	switch {
	case l.high():
		return fmt.Sprintf("above %s %s, never solo", sum.Say(u.high, 0), u.length)
	case r.Start.HM == 0 || r.Finish.HM == 0:
		return fmt.Sprintf("the reach is over %s %s, bring it closer", sum.Say(u.far, 0), u.length)
	case r.Start.AM == 0 || r.Finish.AM == 0:
		return "it is turned over 135 degrees, move the feet"
	}
	return "too often for so long"
}

// high tells whether an end is above the height for one person.
func (l Lift) high() bool { return max(l.From.V, l.To.V) > l.units().high }

// notApplicable are the reasons why the equation does not cover the lift.
func (l Lift) notApplicable() (why []string) {
	for _, o := range l.Outside {
		why = append(why, outside[o])
	}
	if l.Hours > 8 {
		why = append(why, "for more than 8 hours")
	}
	return why
}

// check refuses what no lift can be.
func (l Lift) check() error {
	u, in := l.units(), 1.0
	if l.Metric {
		in = 2.5
	}
	for _, c := range []struct {
		what, unit string
		x, most    float64
	}{
		{"the load", u.name, l.Load, 2000},
		{"the reach at the start", u.length, l.From.H, 100 * in}, {"the reach at the end", u.length, l.To.H, 100 * in},
		{"the height at the start", u.length, l.From.V, 240 * in}, {"the height at the end", u.length, l.To.V, 240 * in},
		{"the turn at the start", "degrees", l.From.A, 180}, {"the turn at the end", "degrees", l.To.A, 180},
		{"how often", "lifts a minute", l.Often, 60}, {"how long", "hours", l.Hours, 24}, {"the grip's multiplier", "", l.Coupling, 1},
	} {
		if !(c.x >= 0 && c.x <= c.most) {
			return fmt.Errorf("%s must be a number from 0 to %s", c.what, strings.TrimSpace(sum.Say(c.most, 0)+" "+c.unit))
		}
	}
	if l.Grip < Good || l.Grip > Poor {
		return fmt.Errorf("the grip is good, fair or poor")
	}
	for _, o := range l.Outside {
		if outside[o] == "" {
			return fmt.Errorf("no way of lifting has the number %d", o)
		}
	}
	return nil
}
