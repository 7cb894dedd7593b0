package trail

import (
	"fmt"
	"math"

	"tarpside/model/sum"
)

// The numbers of water.
const (
	MostQtHour = 1.5  // never more for one person in an hour (TB MED 507, as quoted)
	MostQtDay  = 12.0 // nor in a day (TB MED 507, from memory)
	QuartLb    = 2.2  // a quart bottle, full
)

// Rate is how much one person drinks in an hour, in quarts: half a quart on a
// cool day, one on a hot one. Not known is the middle; ok is false then.
func (h Heat) Rate() (qt float64, ok bool) {
	switch h {
	case Cool:
		return 0.5, true
	case Mild:
		return 0.75, true
	case Hot:
		return 1, true
	}
	return 0.75, false
}

// Water is what people drink in so many hours, in whole quarts. The rate is
// in quarts for one person and hour and is held at what a body can take.
func Water(people int, hours, rate float64) sum.Answer {
	a := sum.Answer{Name: "water to carry", Unit: "qt", Formula: "people x hours x quarts an hour, up to whole quarts; a quart bottle is 2.2 lb",
		Source: "US Army fluid table: half a quart to one an hour by heat and work, never over 1.5 an hour nor (" + sum.FromMemory + ") 12 a day (TB MED 507)",
		Limits: "the patient drinks only what the medic says; more than 1.5 quarts an hour harms"}
	n, h := sum.Sane(float64(people), 0, 1e6), sum.Sane(hours, 0, 1000)
	r := sum.Sane(rate, 0, MostQtHour)
	each := r * h
	if most := MostQtDay * math.Max(1, math.Ceil(h/24)); each > most {
		each = most
		a.Limits += "; held at 12 quarts a day for each"
	}
	if rate > MostQtHour {
		a.Limits += "; the rate was held at 1.5"
	}
	a.Value = math.Ceil(sum.Round(n*each, 6))
	a.Low, a.High = math.Ceil(sum.Round(n*math.Min(each, h*0.5), 6)), math.Floor(sum.Round(n*h*MostQtHour, 6))
	a.Text = fmt.Sprintf("%s qt, %s lb (do not exceed 1.5 qt/h each)", sum.Say(a.Value, 0), sum.Say(a.Value*QuartLb, 1))
	return a
}

// Water is what the party drinks on the trip; ok is false where people or
// hours are not known. Heat that is not known is the middle, and is marked.
func (t Trip) Water(people int) (a sum.Answer, ok bool) {
	rate, sure := t.Heat.Rate()
	a = Water(people, t.Hours, rate)
	if !sure {
		a.Limits += "; heat not known: the middle value, three quarters of a quart an hour"
	}
	if people < 1 || !known(t.Hours) {
		a.Text = "people or hours are not known: no estimate"
		return a, false
	}
	return a, true
}
