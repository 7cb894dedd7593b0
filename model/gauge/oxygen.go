package gauge

import (
	"fmt"
	"math"
	"strings"

	"tarpside/model/sum"
)

// The figures of oxygen.
const (
	Residual  = 200.0 // psi kept back, the safe residual of the EMT texts
	ReadyFlow = 10.0  // L/min that a cylinder must give to be ready,
	ReadyFor  = 15.0  // for so many minutes (Virginia, 12VAC5-31-860)
	Step      = 50.0  // psi between two marks of a regulator's gauge (from memory)

	flowError = 0.10  // of a flowmeter (from memory)
	leastFlow = 0.05  // L/min, less than any flowmeter shows (from memory)
	mostFlow  = 100.0 // L/min, more than any outlet of a regulator gives (from memory)
)

// A Cylinder is a size of cylinder.
type Cylinder struct {
	Name   string
	Litres float64 // of gas at atmospheric pressure, when full
	Factor float64 // litres for each psi of its gauge
	Most   float64 // psi; a gauge that shows more is misread
}

// Sizes are the oxygen cylinders of the table: factors D .16, E .28, M 1.56, G
// 2.41, H and K 3.14 L/psi (EMT texts); D 350, E 625, M 3000, H and K 6900 L
// (Virginia's cylinder guidance), G 5300 L (an examination's answer). That no
// gauge of theirs shows over 3000 psi is from memory.
func Sizes() []Cylinder {
	return []Cylinder{
		{"D", 350, 0.16, 3000}, {"E", 625, 0.28, 3000}, {"M", 3000, 1.56, 3000}, {"G", 5300, 2.41, 3000},
		{"H", 6900, 3.14, 3000}, {"K", 6900, 3.14, 3000},
	}
}

// Named is the cylinder of the table with this letter; H/K is H.
func Named(letter string) (Cylinder, error) {
	s := strings.ToUpper(strings.TrimSpace(letter))
	if s == "H/K" {
		s = "H"
	}
	for _, c := range Sizes() {
		if c.Name == s {
			return c, nil
		}
	}
	return Cylinder{}, fmt.Errorf("the table has D, E, M, G, H and K, not %q: for another size give its litres and its full pressure", letter)
}

// Sized is any cylinder by what it holds in litres at its full pressure in
// psi. A gauge may show a quarter more (from memory): filled warm, or over its
// mark as some are allowed.
func Sized(litres, fullPSI float64) (Cylinder, error) {
	if err := within("what the cylinder holds", "litres", litres, 1, 20000); err != nil {
		return Cylinder{}, err
	}
	if err := within("the full pressure", "psi", fullPSI, 100, 6000); err != nil {
		return Cylinder{}, err
	}
	return Cylinder{Name: sum.Say(litres, 0) + " L", Litres: litres, Factor: litres / fullPSI, Most: fullPSI * 1.25}, nil
}

// Full is the pressure in psi at which it holds its litres.
func (c Cylinder) Full() float64 {
	if c.Factor > 0 {
		return c.Litres / c.Factor
	}
	return 0
}

// a is the cylinder with its article: "a D cylinder", "an E cylinder".
func (c Cylinder) a() string {
	if c.Name != "" && strings.Contains("EMH", c.Name[:1]) || strings.HasPrefix(c.Name, "8") {
		return "an " + c.Name + " cylinder"
	}
	return "a " + c.Name + " cylinder"
}

// read refuses what this cylinder's gauge cannot show.
func (c Cylinder) read(psi float64) error {
	if !(c.Factor > 0 && c.Factor <= 200 && c.Most > 0 && c.Most <= 10000 && c.Litres >= 0 && c.Litres <= 20000) {
		return fmt.Errorf("which cylinder? Give its letter, or its litres and its full pressure")
	}
	switch {
	case psi >= 0 && psi <= c.Most:
		return nil
	case !(psi >= 0): // NaN too
		return fmt.Errorf("a pressure is a number of psi, 0 or more")
	case psi > 5500 && psi/10 <= c.Most && math.Mod(psi, 10) == 0: // beyond air cylinders too: a finger too many
		return fmt.Errorf("%s psi is more than %s holds; did you mean %s?", sum.Say(psi, 0), c.a(), sum.Say(psi/10, 0))
	case psi > 1e6:
		return fmt.Errorf("that is more than %s holds; look at the gauge again", c.a())
	}
	return fmt.Errorf("%s psi is more than %s holds; look at the gauge again", sum.Say(psi, 0), c.a())
}

// A Pressure is a gauge at a minute; from when minutes count does not matter.
type Pressure struct{ Min, PSI float64 }

// Oxygen is a cylinder that flows.
type Oxygen struct {
	Cylinder Cylinder
	Flow     float64 // L/min as set; 0 is nothing, or with two readings not known
	Keep     float64 // psi kept back; Residual is the usual
	Readings []Pressure
}

const oxygenLimits = "an estimate: look at the gauge, and change the cylinder early; not medical advice"

// Left is the time until the gauge shows what is kept back: by the table from
// one reading, by the fall of the gauge between the last two from several.
func (o Oxygen) Left() (Time, error) {
	if err := o.check(); err != nil {
		return Time{}, err
	}
	last := o.Readings[len(o.Readings)-1]
	t := Time{Answer: sum.Answer{Name: "oxygen left"}}
	if len(o.Readings) > 1 {
		o.measured(&t)
	} else {
		o.byTable(&t, last.PSI)
	}
	if last.PSI <= o.Keep && !t.None {
		t.Text = fmt.Sprintf("0 min: %s psi is not above the %s psi kept back; change the cylinder now", sum.Say(last.PSI, 0), sum.Say(o.Keep, 0))
	}
	if o.Keep < Residual {
		t.Limits += fmt.Sprintf("; keeps %s psi back, where %s is usual", sum.Say(o.Keep, 0), sum.Say(Residual, 0))
	}
	if full := o.Cylinder.Full(); full > 0 && last.PSI > full*1.1 {
		t.Limits += fmt.Sprintf("; %s psi is over its usual full, about %s: a high-pressure cylinder holds other litres", sum.Say(last.PSI, 0), sum.Say(full, 0))
	}
	return t, nil
}

// check refuses what no cylinder can be.
func (o Oxygen) check() error {
	if len(o.Readings) == 0 {
		return fmt.Errorf("what does the gauge show?")
	}
	for i, r := range o.Readings {
		if err := o.Cylinder.read(r.PSI); err != nil {
			return err
		}
		if i == 0 {
			if err := after(-longest-1, r.Min); err != nil {
				return err
			}
			continue
		}
		before := o.Readings[i-1]
		if err := after(before.Min, r.Min); err != nil {
			return err
		}
		if r.PSI > before.PSI+Step {
			return fmt.Errorf("the gauge went up from %s to %s psi: if that is another cylinder, start with its first reading",
				sum.Say(before.PSI, 0), sum.Say(r.PSI, 0))
		}
	}
	if err := within("the flow", "L/min", o.Flow, 0, mostFlow); err != nil {
		return err
	}
	if o.Flow > 0 && o.Flow < leastFlow {
		return fmt.Errorf("a flow of %v L/min is less than any flowmeter shows", o.Flow)
	}
	return within("what is kept back", "psi", o.Keep, 0, o.Cylinder.Most)
}

func (o Oxygen) byTable(t *Time, psi float64) {
	k := o.Cylinder.Factor
	t.Formula = fmt.Sprintf("(psi - %s kept back) x %s L/psi / flow", sum.Say(o.Keep, 0), sum.Say(k, 3))
	t.Source = "the usual oxygen formula and its factors, as EMT texts give them"
	if o.Cylinder.Name == "" || strings.HasSuffix(o.Cylinder.Name, " L") {
		t.Source = "the usual oxygen formula; litres and full pressure as you gave them"
	}
	t.Limits = oxygenLimits + "; one reading, by table: the range is a mark of the gauge (50 psi) and 10% of the flowmeter, both " +
		sum.FromMemory + "; a second reading is better"
	if o.Flow == 0 {
		t.none("nothing flows")
		return
	}
	left := func(psi, flow float64) float64 { return max(0, psi-o.Keep) * k / flow }
	t.Rate = o.Flow / k
	t.Value, t.Low, t.High = left(psi, o.Flow), left(psi-Step, o.Flow*(1+flowError)), left(psi+Step, o.Flow/(1+flowError))
	if psi <= o.Keep {
		t.High = 0
	}
	t.say("by table")
}

// measured takes the fall between the last two readings; a gauge is read to
// half a mark.
func (o Oxygen) measured(t *Time) {
	a, b := o.Readings[len(o.Readings)-2], o.Readings[len(o.Readings)-1]
	t.Measured = true
	t.Formula = fmt.Sprintf("(last psi - %s kept back) / psi lost a minute between the last two readings", sum.Say(o.Keep, 0))
	t.Source = "your own readings"
	t.Limits = oxygenLimits + "; holds while the flow stays as it was; the range is half a mark of the gauge (25 psi) at each reading, " + sum.FromMemory
	if b.PSI <= o.Keep {
		t.say("")
		return
	}
	t.Rate = max(0, a.PSI-b.PSI) / (b.Min - a.Min)
	if t.Rate <= 0 || (b.PSI-o.Keep)/t.Rate > longest {
		t.Rate = 0
		t.none("the gauge has not fallen: the valve may be shut, or it is too early to see; read again later")
		return
	}
	over := b.Min - a.Min
	t.Value = (b.PSI - o.Keep) / t.Rate
	t.Low = max(0, b.PSI-Step/2-o.Keep) / (t.Rate + Step/over)
	slow := t.Rate - Step/over
	t.High = (b.PSI + Step/2 - o.Keep) / slow
	t.Open = slow <= 0 || t.High > longest
	t.say("by the readings")
	if shown := t.Rate * o.Cylinder.Factor; o.Flow > 0 && (shown > o.Flow*1.5 || shown < o.Flow/1.5) {
		t.Limits += fmt.Sprintf("; the gauge falls as at %s L/min and %s is set: trust the gauge, and look for a leak, a changed flow or another cylinder",
			sum.Say(shown, 1), sum.Say(o.Flow, 1))
	}
}

// Ready is the pressure that a cylinder must show to give a flow in L/min for
// so many minutes and still hold what is kept back. Value is exact; the text
// is the next mark of the gauge.
func Ready(c Cylinder, flow, minutes, keep float64) (sum.Answer, error) {
	if err := c.read(0); err != nil {
		return sum.Answer{}, err
	}
	if err := within("the flow", "L/min", flow, leastFlow, mostFlow); err != nil {
		return sum.Answer{}, err
	}
	if err := within("how long it must last", "min", minutes, 1, longest); err != nil {
		return sum.Answer{}, err
	}
	if err := within("what is kept back", "psi", keep, 0, c.Most); err != nil {
		return sum.Answer{}, err
	}
	a := sum.Answer{Name: "ready from", Unit: "psi", Value: flow*minutes/c.Factor + keep,
		Formula: fmt.Sprintf("%s L/min x %s min / %s L/psi + %s kept back, up to the next mark of 50 psi",
			sum.Say(flow, 1), sum.Say(minutes, 0), sum.Say(c.Factor, 3), sum.Say(keep, 0)),
		Source: "10 L/min for 15 min: Virginia, 12VAC5-31-860 B, as an EMS agency works it; the marks of the gauge are " + sum.FromMemory,
		Limits: "your own rules come first: another flow or time asks for another pressure"}
	if full := c.Full(); a.Value > full {
		can, _ := Oxygen{Cylinder: c, Flow: flow, Keep: keep, Readings: []Pressure{{PSI: min(full, c.Most)}}}.Left()
		return sum.Answer{}, fmt.Errorf("%s cannot do that: full, at about %s psi, it gives %s at %s L/min",
			c.a(), sum.Say(full, 0), whole(can.Value), sum.Say(flow, 1))
	}
	a.Low, a.High = a.Value, math.Ceil(sum.Round(a.Value, 6)/Step)*Step
	a.Text = sum.Say(a.High, 0) + " psi"
	return a, nil
}
