// Package gauge says what is left in a cylinder, a battery or a tank, from one
// reading by a table, or from several by what the gauge itself shows. Times
// left are rounded down and come as a range. What cannot be is refused in
// words; where no time can be said there is none, never infinity.
//
// It is about pieces, never about people: breathing air is stock here, and no
// timer for a crew.
package gauge

import (
	"fmt"
	"math"
	"strings"

	"tarpside/model/sum"
)

// A Time is how long something lasts. Value, Low and High of the answer are
// minutes, not rounded; the text rounds them down.
type Time struct {
	sum.Answer
	None     bool    // no time can be said; the text says why
	Open     bool    // High is not known: it may last far longer
	Measured bool    // from several readings, and not by a table
	Rate     float64 // what the gauge falls in a minute, in its own unit
}

// longest is a time in minutes beyond which a measured fall is too small to
// mean anything: a week.
const longest = 7 * 24 * 60

// whole is minutes in words, rounded down. What a computer keeps a hair under
// a whole minute is that minute.
func whole(min float64) string { return sum.Minutes(math.Floor(sum.Sane(min, 0, 1e6) + 1e-9)) }

// say writes the text of a time: its figure, how it was got, its range.
func (t *Time) say(by string) {
	t.Unit = "min"
	t.Low, t.Value = max(0, t.Low), max(0, t.Value)
	if t.Open { // then it was divided by nothing
		t.High = t.Value
	}
	t.High = max(t.Value, t.High)
	t.Text = whole(t.Value)
	if t.Value > 0 && t.Value < 1 {
		t.Text = "under 1 min"
	}
	t.Text += " " + by
	if t.Open {
		t.Text += fmt.Sprintf(" (at least %s, perhaps far more)", whole(t.Low))
		return
	}
	low := whole(t.Low)
	if t.High < 120 {
		low = strings.TrimSuffix(low, " min")
	}
	t.Text += fmt.Sprintf(" (%s to %s)", low, whole(t.High))
}

// none makes it an answer without a time.
func (t *Time) none(why string) {
	t.None, t.Open, t.Value, t.Low, t.High, t.Unit = true, false, 0, 0, 0, "min"
	t.Text = "no time can be said: " + why
}

// within refuses what is no number from low to high.
func within(what, unit string, x, low, high float64) error {
	if x >= low && x <= high {
		return nil
	}
	return fmt.Errorf("%s must be a number from %s to %s", what, sum.Say(low, 2), strings.TrimSpace(sum.Say(high, 2)+" "+unit))
}

// after refuses readings that do not follow each other in time.
func after(last, next float64) error {
	if err := within("the minute of a reading", "", next, -longest, longest); err != nil {
		return err
	}
	if next < last+0.05 { // three seconds: less is no second reading
		return fmt.Errorf("the reading of minute %s does not come after the one of minute %s", sum.Say(next, 1), sum.Say(last, 1))
	}
	return nil
}
