package trail

import (
	"fmt"
	"math"

	"tarpside/model/sum"
)

// The numbers of a carry.
const (
	OnLitter   = 6    // bearers on a litter: the optimum, three a side (Medicine for Mountaineering, The Mountaineers)
	SwapIn     = 2    // who walk along a short easy carry to swap in (common practice)
	Staff      = 3    // leader, medic, scout (common practice)
	Uneven     = 1.33 // rough ground: the share of the bearer who has most, against an even one (from memory)
	HeavyLb    = 45   // over this, each: a wheel, slings, more people (from memory)
	NightWalk  = 1.25 // walking by night takes so many times as long (from memory)
	NearM      = 50.0 // reliefs stand in pairs every 50 to 100 m (Medicine for Mountaineering)
	FarM       = 100.0
	farthestKm = 1000
)

// uneven is how far the largest share is above an even one.
func (p Path) uneven() float64 {
	if p == Good {
		return 1
	}
	return Uneven
}

// BearerLoad is the weight on each bearer in pounds: patient and package over
// so many bearers, as an even share and as the largest share on this way, and
// the bearer's own pack on top. Without bearers there is none.
func BearerLoad(patientLb, packageLb float64, bearers int, way Path, packLb float64) sum.Answer {
	a := sum.Answer{Name: "load of each bearer", Unit: "lb",
		Formula: "(patient + litter and package) / bearers x uneven share + own pack; uneven share 1 on a good path, 1.33 on rough ground",
		Source:  "six is the optimum on a litter (Medicine for Mountaineering); the uneven share and the 45 lb line are " + sum.FromMemory,
		Limits:  "an estimate for planning: a step, a turn or one who stumbles puts more on one hand"}
	patient, pack := sum.Sane(patientLb, 0, 2000), sum.Sane(packLb, 0, 500)
	if bearers < 1 {
		a.Text = "nobody to carry"
		return a
	}
	even := (patient + sum.Sane(packageLb, 0, 1e6)) / float64(bearers)
	a.Low, a.High = even+pack, even*way.uneven()+pack
	a.Value = a.High
	a.Text = sum.Say(a.Low, 1) + " lb each"
	if a.High > a.Low {
		a.Text = fmt.Sprintf("%s lb each on level ground, %s lb where it is rough", sum.Say(a.Low, 1), sum.Say(a.High, 1))
	}
	if a.High > HeavyLb {
		a.Text += ". Over 45: a wheel, slings or more people"
	}
	return a
}

// A Crew is the people that a carry needs.
type Crew struct {
	OnLitter int
	Rest     int // turns of rest for one of carrying
	Bearers  int
	All      int // with leader, medic and scout
	Least    int // on a short good path: six, and two who walk along to swap in
}

// crewOf is the staffing of a class of way.
func crewOf(way Path) Crew {
	rest := map[Path]int{Good: 1, Steep: 3}[way]
	if rest == 0 {
		rest = 2
	}
	n := OnLitter * (1 + rest)
	return Crew{OnLitter: OnLitter, Rest: rest, Bearers: n, All: n + Staff, Least: OnLitter + SwapIn}
}

// Crew is the people that the trip needs.
func (t Trip) Crew() Crew { return crewOf(t.class()) }

// Bearers is the crew in words. With fewer people than it takes, it says what
// that means.
func (t Trip) Bearers(people int) sum.Answer {
	c := t.Crew()
	a := sum.Answer{Name: "people for the carry", Value: float64(c.All), Low: float64(c.Bearers), High: float64(c.All), Unit: "people",
		Text:    fmt.Sprintf("%d bearers and %d more: leader, medic, scout = %d", c.Bearers, Staff, c.All),
		Formula: fmt.Sprintf("6 on the litter x (1 + %d turns of rest for one of carrying); 1 on a good path, 2 rough, 3 steep, night, snow or ice", c.Rest),
		Source: "six bearers and reliefs in pairs: Medicine for Mountaineering; a search and rescue guideline asks 18 to 25 for a hard carry " +
			"or a critical patient (Litter Evacuation Guidelines); the turns of rest are " + sum.FromMemory,
		Limits: "a wheel on a good path needs fewer; plan replacements after 6 to 10 hours"}
	if t.class() == Good && !t.long() {
		a.Text += fmt.Sprintf("; on a short good path never fewer than %d: six carry, two walk along to swap in (common practice)", c.Least)
	}
	if people > 0 && people < c.All {
		a.Text += fmt.Sprintf(". You have %d: shorter turns, more stops, or ask for %d more", people, c.All-people)
	}
	return a
}

// Reliefs is how many times the bearers change on the way out, the fewest and
// the most, as pairs stand every 100 to 50 m: the front pair drops out and
// each pair moves one forward. Not known without a distance.
func (t Trip) Reliefs() (least, most int, ok bool) {
	if !known(t.Km) {
		return 0, 0, false
	}
	m := math.Min(t.Km, farthestKm) * 1000
	changes := func(every float64) int { return max(0, int(math.Ceil(sum.Round(m/every, 6)))-1) }
	return changes(FarM), changes(NearM), true
}

// Naismith is the time of a walk in minutes: an hour for 5 km (4 off the
// path) and one for each 600 m of climb.
func Naismith(km, climbM float64, offPath bool) float64 {
	speed := 5.0
	if offPath {
		speed = 4
	}
	return 60 * (sum.Sane(km, 0, farthestKm)/speed + sum.Sane(climbM, 0, 1e5)/600)
}

// Tobler is the time of a walk in minutes by the hiking function,
// 6 exp(-3.5 |slope + 0.05|) km/h, off the path three fifths of that. The
// climb is spread evenly over the way.
func Tobler(km, climbM float64, offPath bool) float64 {
	km = sum.Sane(km, 0, farthestKm)
	if km == 0 {
		return 0
	}
	slope := sum.Sane(climbM, -1e5, 1e5) / (km * 1000)
	speed := 6 * math.Exp(-3.5*math.Abs(slope+0.05))
	if offPath {
		speed *= 0.6
	}
	return sum.Sane(60*km/speed, 0, 1e6)
}

// In is the time to the patient as a range, in minutes; ok is false without a
// distance: then nothing is estimated.
func (t Trip) In() (a sum.Answer, ok bool) {
	a = sum.Answer{Name: "time in", Unit: "min", Formula: "from Tobler's hiking function to Naismith's rule: km / 5 h + climb / 600 m h; by night x 1.25",
		Source: "Naismith 1892 in its metric form; Tobler, NCGIA TR 93-1 (1993); off the path 4 km/h (Aitken) and 3/5; the night factor is " + sum.FromMemory,
		Limits: "rested walkers with light packs on the whole way; your own drill log is better"}
	if !known(t.Km) {
		a.Text = "no distance, no estimate"
		return a, false
	}
	n, tob := Naismith(t.Km, t.ClimbM, t.OffPath), Tobler(t.Km, t.ClimbM, t.OffPath)
	night := 1.0
	if t.Night {
		night = NightWalk
	}
	a.Value, a.Low, a.High = n*night, math.Min(n, tob)*night, math.Max(n, tob)*night
	a.Text = sum.Span(a.Low, a.High)
	return a, true
}

// carryMph is how fast a litter goes (from memory).
var carryMph = map[Path]float64{Good: 1, Rough: 0.5, Steep: 0.3}

// KmPerMile is exact.
const KmPerMile = 1.609344

// CarryOut is the time of a carry of so many miles in minutes, on a class of
// way.
func CarryOut(miles float64, way Path) float64 {
	mph := carryMph[way]
	if mph == 0 {
		mph = carryMph[Rough]
	}
	return 60 * sum.Sane(miles, 0, farthestKm) / mph
}

// Out is the time back with the litter as a range, in minutes: from the pace
// of the way to that of the next harder one, on the hardest half as long
// again. ok is false without a distance.
func (t Trip) Out() (a sum.Answer, ok bool) {
	a = sum.Answer{Name: "time out", Unit: "min", Formula: "miles over 1 mph on a good path with a wheel, 0.5 rough, 0.3 steep, night, snow or ice; up to the next harder way",
		Source: sum.FromMemory, Limits: "with all the bearers it takes; your own drill log is better; over 5 miles a carry by hand should not be tried (common practice)"}
	if !known(t.Km) {
		a.Text = "no distance, no estimate"
		return a, false
	}
	miles := t.Km / KmPerMile
	a.Low = CarryOut(miles, t.class())
	switch t.class() {
	case Good:
		a.High = CarryOut(miles, Rough)
	case Rough:
		a.High = CarryOut(miles, Steep)
	default:
		a.High = 1.5 * a.Low
	}
	a.Value = a.Low
	a.Text = sum.Span(a.Low, a.High)
	if miles > 5 {
		a.Text += ". Over 5 miles: ask for another way out"
	}
	return a, true
}
