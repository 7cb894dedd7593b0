package gauge

import (
	"fmt"
	"math"
	"strings"

	"tarpside/model/sum"
)

// A Kind is what runs down.
type Kind int

// What runs down.
const (
	Battery Kind = iota
	Fuel
)

// Floor is the percent at which it is changed or refilled, if nobody says
// otherwise (common practice).
func (k Kind) Floor() float64 {
	if k == Fuel {
		return 10
	}
	return 20
}

// A Level is a reading in percent of full at a minute, give or take so many
// points.
type Level struct{ Min, Percent, Give float64 }

// Percent is a reading of a gauge in percent.
func Percent(min, percent float64) Level { return Level{Min: min, Percent: percent, Give: 1} }

// Bars is a reading of lit bars: 3 of 4 is from 50 to 75 percent (the middle,
// give or take half a bar). None lit is empty.
func Bars(min float64, lit, of int) (Level, error) {
	if of < 2 || of > 20 || lit < 0 || lit > of {
		return Level{}, fmt.Errorf("%d of %d bars lit cannot be: give the lit ones and how many there are, as 3/4", lit, of)
	}
	bar := 100 / float64(of)
	if lit == 0 {
		return Level{Min: min}, nil
	}
	return Level{Min: min, Percent: (float64(lit) - 0.5) * bar, Give: bar / 2}, nil
}

// A Table is how long it runs from full to empty at this work, in minutes.
type Table struct {
	Low, High float64 // the same for one figure
	Source    string
}

// TableError is the margin of one figure of a table (from memory).
const TableError = 0.25

// Figure is a table of one figure, from the maker or from your own log.
func Figure(minutes float64) Table {
	return Table{minutes, minutes, "the maker's figure or your own log, as you gave it; its margin of 25% is " + sum.FromMemory}
}

// typical are times of a full tank, all from memory.
var typical = []struct {
	tool      string
	low, high float64
}{
	{"chainsaw", 30, 45},    // of cutting
	{"rotarysaw", 15, 25},   // of cutting
	{"powerunit", 45, 90},   // a small hydraulic power unit
	{"generator", 180, 300}, // 3 kW at half load
}

// Tools are the names that Typical knows.
func Tools() (names []string) {
	for _, t := range typical {
		names = append(names, t.tool)
	}
	return names
}

// joined writes "chain saw" and "chain-saw" as one word.
var joined = strings.NewReplacer(" ", "", "-", "")

// Typical is the table for the full tank of a tool.
func Typical(tool string) (Table, error) {
	name := joined.Replace(tool)
	for _, t := range typical {
		if strings.EqualFold(t.tool, name) {
			return Table{t.low, t.high, "typical time of a full tank, " + sum.FromMemory}, nil
		}
	}
	return Table{}, fmt.Errorf("%q is not in the table (%s): give the time of a full one instead", tool, strings.Join(Tools(), ", "))
}

// A Derate is what cold takes off a battery, in percent, from the least to the
// most.
type Derate struct{ Low, High float64 }

// ColdAt is what cold takes off at so many degrees Fahrenheit: 20 to 40% below
// freezing (makers' guidance on cold batteries).
func ColdAt(fahrenheit float64) (Derate, error) {
	if err := within("the temperature", "F", fahrenheit, -80, 150); err != nil {
		return Derate{}, err
	}
	if fahrenheit < 32 {
		return Derate{20, 40}, nil
	}
	return Derate{}, nil
}

// A Run is a battery or a tank that runs down.
type Run struct {
	Kind   Kind
	Levels []Level
	Floor  float64 // percent at which it is changed or refilled
	Table  Table   // for one reading
	Cold   Derate  // for one reading of a battery
}

// Left is the time until the floor: by the table from one reading, by the
// straight line that fits best from several.
func (r Run) Left() (Time, error) {
	if err := r.check(); err != nil {
		return Time{}, err
	}
	last := r.Levels[len(r.Levels)-1]
	t := Time{Answer: sum.Answer{Name: "battery left", Limits: "an estimate: other work, other draw"}}
	if r.Kind == Fuel {
		t.Name, t.Limits = "fuel left", "an estimate: other work, other draw; refuel a cooled engine, away from heat and from evidence"
	}
	if len(r.Levels) == 1 {
		r.byTable(&t, last)
	} else {
		r.fitted(&t)
	}
	if last.Percent <= r.Floor {
		t.None, t.Open, t.Value, t.Low, t.High = false, false, 0, 0, 0
		t.Text = fmt.Sprintf("0 min: %s%% is not above the %s%% at which to stop; change or refill now", sum.Say(last.Percent, 0), sum.Say(r.Floor, 0))
	}
	if r.Cold.High > 0 {
		t.Limits += "; do not charge below 32 F; warm it before it goes on the charger"
	}
	return t, nil
}

// check refuses what no gauge can show.
func (r Run) check() error {
	if len(r.Levels) == 0 {
		return fmt.Errorf("what does the gauge show?")
	}
	if err := within("the floor", "percent", r.Floor, 0, 95); err != nil {
		return err
	}
	for i, l := range r.Levels {
		if err := within("a level", "percent", l.Percent, 0, 100); err != nil {
			return err
		}
		if err := within("the give of a level", "percent", l.Give, 0, 50); err != nil {
			return err
		}
		if i == 0 {
			if err := after(-longest-1, l.Min); err != nil {
				return err
			}
			continue
		}
		before := r.Levels[i-1]
		if err := after(before.Min, l.Min); err != nil {
			return err
		}
		if l.Percent > before.Percent+before.Give+l.Give {
			return fmt.Errorf("it went up from %s to %s%%: if it was changed, charged or refilled, start with the first reading after that",
				sum.Say(before.Percent, 0), sum.Say(l.Percent, 0))
		}
	}
	if err := within("what cold takes off", "percent", r.Cold.Low, 0, 90); err != nil {
		return err
	}
	if err := within("what cold takes off", "percent", r.Cold.High, r.Cold.Low, 90); err != nil {
		return err
	}
	if r.Kind == Fuel && r.Cold.High > 0 {
		return fmt.Errorf("cold takes off a battery's time; there is no figure for fuel")
	}
	if len(r.Levels) > 1 {
		return nil
	}
	if r.Table.Low == 0 && r.Table.High == 0 {
		return fmt.Errorf("one reading needs a time from full to empty, the maker's or your own; or take a second reading")
	}
	if err := within("the time from full to empty", "min", r.Table.Low, 1, longest); err != nil {
		return err
	}
	return within("the time from full to empty", "min", r.Table.High, r.Table.Low, longest)
}

func (r Run) byTable(t *Time, l Level) {
	low, high := r.Table.Low, r.Table.High
	mid := (low + high) / 2
	if low == high {
		low, high = low*(1-TableError), high*(1+TableError)
	}
	left := func(percent, full, off float64) float64 { return max(0, percent-r.Floor) / 100 * full * (1 - off/100) }
	off := (r.Cold.Low + r.Cold.High) / 2
	t.Value = left(l.Percent, mid, off)
	t.Low, t.High = left(l.Percent-l.Give, low, r.Cold.High), left(min(100, l.Percent+l.Give), high, r.Cold.Low)
	if t.Value > 0 {
		t.Rate = max(0, l.Percent-r.Floor) / t.Value
	}
	t.Formula = fmt.Sprintf("(percent - %s) / 100 x minutes from full to empty", sum.Say(r.Floor, 0))
	t.Source = r.Table.Source
	t.Limits += "; one reading, by table: a wide margin; a second reading is better"
	if r.Cold.High > 0 {
		t.Formula = fmt.Sprintf("%s x (1 - %s%% for the cold)", t.Formula, sum.Say(off, 0))
		t.Limits += fmt.Sprintf("; cold takes off %s to %s%% (makers' guidance, 20 to 40%% below freezing)", sum.Say(r.Cold.Low, 0), sum.Say(r.Cold.High, 0))
	}
	t.say("by table")
}

// fitted puts a straight line through the levels by least squares. The range
// is two standard errors of its slope and of its height at the last reading;
// a reading is never taken for better than half its give.
func (r Run) fitted(t *Time) {
	n := float64(len(r.Levels))
	var meanT, meanL, give float64
	for _, l := range r.Levels {
		meanT, meanL, give = meanT+l.Min/n, meanL+l.Percent/n, max(give, l.Give)
	}
	var xx, xy, left float64
	for _, l := range r.Levels {
		xx, xy = xx+(l.Min-meanT)*(l.Min-meanT), xy+(l.Min-meanT)*(l.Percent-meanL)
	}
	slope := xy / xx // the minutes differ, so xx is not 0
	for _, l := range r.Levels {
		d := l.Percent - meanL - slope*(l.Min-meanT)
		left += d * d
	}
	sigma := give / 2
	if n > 2 {
		sigma = max(sigma, math.Sqrt(left/(n-2)))
	}
	last := r.Levels[len(r.Levels)-1].Min - meanT
	now, fall := min(100, max(0, meanL+slope*last)), -slope
	fallErr, nowErr := 2*sigma/math.Sqrt(xx), 2*sigma*math.Sqrt(1/n+last*last/xx)
	t.Measured = true
	t.Formula = fmt.Sprintf("(level now - %s) / points lost a minute, on the straight line that fits the readings best", sum.Say(r.Floor, 0))
	t.Source = "your own readings"
	t.Limits += fmt.Sprintf("; holds while the work stays as it was; the range is two standard errors of the line, at least %s point(s) a reading", sum.Say(give, 1))
	if !(fall > 0) || (now-r.Floor)/fall > longest {
		t.none("it has not fallen: too early to see; read again later")
		return
	}
	t.Rate = fall
	t.Value = (now - r.Floor) / fall
	t.Low = max(0, now-nowErr-r.Floor) / (fall + fallErr)
	slow := fall - fallErr
	t.High = (now + nowErr - r.Floor) / slow
	t.Open = slow <= 0 || t.High > longest
	t.say(fmt.Sprintf("by %d readings, falling %s points a minute", len(r.Levels), sum.Say(fall, 2)))
}
