package rundown

import (
	"cmp"
	"fmt"
	"math"

	"tarpside/model"
	"tarpside/model/gauge"
	"tarpside/model/sum"
)

// Refuse says in words why a number cannot be a reading of a piece, and what
// it may have been: "11500 psi is more than a D cylinder holds; did you mean
// 1150?" It is nil for what can be.
func Refuse(d *model.Department, it *model.Item, check string, number float64) error {
	c := d.Check(check)
	if c == nil || !c.Number {
		return fmt.Errorf("%s is not a number", check)
	}
	if check == oxygen {
		if cyl, err := Cylinder(it); err == nil && !(number >= c.Min && number <= min(c.Max, cyl.Most)) {
			_, err = gauge.Oxygen{Cylinder: cyl, Flow: 1, Readings: []gauge.Pressure{{PSI: number}}}.Left()
			if err != nil {
				return err
			}
		}
	}
	switch {
	case math.IsNaN(number) || number < c.Min:
		return fmt.Errorf("it is from %g to %g; look again", c.Min, c.Max)
	case number <= c.Max:
		return nil
	}
	what := map[string]string{oxygen: "%s psi is more than the cylinder holds", air: "%s psi is more than any set holds", battery: "%s %% is more than full",
		fuel: "%s %% is more than a full tank", bars: "%s bars are more than it has"}[check]
	text := fmt.Sprintf(cmp.Or(what, "%s cannot be"), sum.Say(sum.Sane(number, 0, 1e9), 2))
	if tenth := number / 10; tenth >= c.Min && tenth <= c.Max && math.Mod(number, 10) == 0 && tenth > 0 {
		return fmt.Errorf("%s; did you mean %s?", text, sum.Say(tenth, 2))
	}
	return fmt.Errorf("%s: it is from %g to %g; look again", text, c.Min, c.Max)
}
