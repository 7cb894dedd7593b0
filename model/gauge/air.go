package gauge

import (
	"fmt"
	"math"

	"tarpside/model/sum"
)

// The figures of breathing air.
const (
	RechargeAt = 0.90  // of the full pressure: 29 CFR 1910.134(h)(3)(iii)
	AlarmAt    = 0.33  // of the full pressure; older sets 0.25 (commentary on NFPA 1981)
	RatedAir   = 40.0  // L/min at which sets are rated
	HardAir    = 60.0  // to
	HardestAir = 100.0 // L/min, hard work (commentary on NFPA 1404)
)

// Air is a cylinder of breathing air on the shelf.
type Air struct {
	Litres  float64 // when full
	FullPSI float64 // the maker's recommended pressure
	PSI     float64 // what the gauge shows
	Rate    float64 // L/min for the minutes; 0 is none wanted
	Alarm   float64 // part of the full pressure at which it sounds; 0 is AlarmAt
}

// A Stock is what a cylinder of breathing air holds. Value of the answer is
// litres. It is stock and no timer: whoever breathes it reads the gauge, and
// the entry-control officer keeps the time.
type Stock struct {
	sum.Answer
	Percent          float64 // of full pressure
	Recharge         bool    // at or under 90% of full
	RechargePSI      float64
	ToAlarm, ToEmpty float64 // minutes at Rate, not rounded; 0 if Rate is 0
}

// Stock is what the cylinder holds, and whether it has to be recharged.
func (a Air) Stock() (Stock, error) {
	c, err := Sized(a.Litres, a.FullPSI)
	if err != nil {
		return Stock{}, err
	}
	if err := c.read(a.PSI); err != nil {
		return Stock{}, err
	}
	if a.Alarm == 0 {
		a.Alarm = AlarmAt
	}
	if err := within("the alarm", "of full", a.Alarm, 0.05, 0.95); err != nil {
		return Stock{}, err
	}
	if err := within("the rate", "L/min", a.Rate, 0, 500); err != nil {
		return Stock{}, err
	}
	if a.Rate > 0 && a.Rate < 1 {
		return Stock{}, fmt.Errorf("nobody breathes as little as %v L/min", a.Rate)
	}
	s := Stock{Percent: 100 * a.PSI / a.FullPSI, RechargePSI: RechargeAt * a.FullPSI, Answer: sum.Answer{Name: "breathing air in stock", Unit: "L",
		Value:   c.Factor * a.PSI,
		Formula: "litres when full x psi / full psi; recharge at 90% of the full pressure or less",
		Source:  "recharge: 29 CFR 1910.134(h)(3)(iii); the alarm and 60 to 100 L/min at hard work: commentary on NFPA 1981 and 1404",
		Limits: "stock only, never a timer for anybody who breathes it: that is their gauge and the entry-control officer; by pressure alone: at " +
			"high pressure air holds a few percent less (" + sum.FromMemory + ")"}}
	s.Low, s.High = s.Value, s.Value
	s.Recharge = a.PSI <= s.RechargePSI*(1+1e-12)
	need := "no recharge"
	if s.Recharge {
		need = "recharge"
	}
	s.Text = fmt.Sprintf("%s L, %s%% of full: %s (the line is %s psi)", floored(s.Value), floored(s.Percent), need, sum.Say(s.RechargePSI, 1))
	if a.Rate > 0 {
		a.minutes(&s)
	}
	return s, nil
}

// minutes adds what the stock is worth at a rate.
func (a Air) minutes(s *Stock) {
	usable := max(0, s.Value-a.Alarm*a.Litres)
	s.ToAlarm, s.ToEmpty = usable/a.Rate, s.Value/a.Rate
	s.Formula += "; minutes: litres / rate, to the alarm without the litres under it"
	s.Text += fmt.Sprintf("; worth at %s L/min: %s to the alarm at %s%%, %s to empty", sum.Say(a.Rate, 1), whole(s.ToAlarm), sum.Say(100*a.Alarm, 0), whole(s.ToEmpty))
	s.Limits += fmt.Sprintf("; hard work takes 60 to 100 L/min: then %s to %s to the alarm", whole(usable/HardestAir), whole(usable/HardAir))
}

// floored is a number rounded down, in words.
func floored(x float64) string { return sum.Say(math.Floor(x+1e-9), 0) }
