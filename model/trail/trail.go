// Package trail is the party that walks off the road to carry somebody out:
// what it takes along and leaves behind, who carries what, how many bearers
// it needs, how long it takes, and the count at the patient and before the
// walk back. Everything that goes in comes back out beside a patient.
package trail

import "math"

// A Season is summer or winter; empty is not known.
type Season string

// The seasons that change a load.
const (
	Summer Season = "summer"
	Winter Season = "winter"
)

// A Path is how hard the way is for people with a litter.
type Path string

// The three kinds of way. An unknown one counts as Rough.
const (
	Good  Path = "good"
	Rough Path = "rough"
	Steep Path = "steep"
)

// A Heat is how much the day asks of people; empty is not known.
type Heat string

// The three kinds of day.
const (
	Cool Heat = "cool"
	Mild Heat = "mild"
	Hot  Heat = "hot"
)

// A Trip is what is known before the walk. What is zero is not known.
type Trip struct {
	Season     Season
	Heat       Heat
	Path       Path
	Night, Wet bool
	Snow, Ice  bool
	Slope      bool // it needs a rope
	Raise      bool // the litter is raised or lowered
	OffPath    bool // no path at all
	Agency     bool // an ambulance crew walks along with its own pack
	Km         float64
	ClimbM     float64
	Hours      float64 // out on the trail in all
	PatientLb  float64
}

// PatientLb is the weight of a patient of whom nothing is known, the one of
// the worked example (from memory).
const PatientLb = 190

// LongKm is the way in from which a carry is long, one way. It is a common
// habit (from memory); the department decides.
const LongKm = 2.0

// known is a number that can be worked with: finite and above zero.
func known(x float64) bool { return x > 0 && !math.IsInf(x, 0) }

// long tells whether the carry is long; a distance that is not known is.
func (t Trip) long() bool { return !known(t.Km) || t.Km >= LongKm }

// class is the way as it is tonight: a night, snow or ice makes it the
// hardest; what is not known is rough.
func (t Trip) class() Path {
	switch {
	case t.Night || t.Snow || t.Ice || t.Path == Steep:
		return Steep
	case t.Path == Good:
		return Good
	}
	return Rough
}
