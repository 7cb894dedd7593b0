// Package sum is how a worked figure is given to people: never without its
// unit, its formula, where that comes from, and what it does not say.
package sum

import (
	"fmt"
	"math"
	"strconv"
)

// FromMemory marks a value for which no document was at hand.
const FromMemory = "from memory"

// An Answer is one worked figure.
type Answer struct {
	Name    string  // what it is, "water to carry"
	Value   float64 // as worked out, in Unit; Low and High are its range where it has one
	Low     float64
	High    float64
	Unit    string
	Text    string // the figure as it is said, rounded, with its unit
	Formula string
	Source  string
	Limits  string // what it leaves out; what was guessed
}

// Lines are the answer for a terminal: the figure, then how it was got.
func (a Answer) Lines() []string {
	out := []string{a.Name + ": " + a.Text}
	for _, x := range []struct{ word, text string }{{"formula", a.Formula}, {"source", a.Source}, {"limits", a.Limits}} {
		if x.text != "" {
			out = append(out, "    "+x.word+": "+x.text)
		}
	}
	return out
}

// Sane is the number within its bounds; what is no number is the lower bound.
func Sane(x, low, high float64) float64 {
	if !(x > low) {
		return low
	}
	return min(x, high)
}

// Round is x to so many decimals, halves away from zero. A hair is added, so
// that 0.15, which a computer keeps a little small, becomes 0.2.
func Round(x float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	return math.Round(x*p*(1+1e-12)) / p
}

// Say is a number to so many decimals, without needless zeros.
func Say(x float64, decimals int) string {
	return strconv.FormatFloat(Round(x, decimals), 'f', -1, 64)
}

// Minutes is a time in words: "53 min", "3 h", "2 h 40 min".
func Minutes(min float64) string {
	m := int(math.Round(Sane(min, 0, 1e6)))
	switch {
	case m < 120:
		return fmt.Sprintf("%d min", m)
	case m%60 == 0:
		return fmt.Sprintf("%d h", m/60)
	}
	return fmt.Sprintf("%d h %d min", m/60, m%60)
}

// Span is a range of minutes, rounded outward to whole fives from ten minutes
// on, so that it promises no more than it knows: "15 to 25 min".
func Span(low, high float64) string {
	l, h := Outward(low, high)
	if h < 120 {
		if l == h {
			return fmt.Sprintf("%d min", int(h))
		}
		return fmt.Sprintf("%d to %d min", int(l), int(h))
	}
	return Minutes(l) + " to " + Minutes(h)
}

// Outward is a range of minutes as Span gives it: the ends in whole minutes.
func Outward(low, high float64) (l, h float64) {
	return fives(low, math.Floor), fives(high, math.Ceil)
}

// fives rounds to whole minutes below ten and to fives above. A hair over a
// step counts as the step.
func fives(min float64, round func(float64) float64) float64 {
	step := 5.0
	if min < 10 {
		step = 1
	}
	x := Sane(min, 0, 1e6) / step
	if near := math.Round(x); math.Abs(x-near) < 1e-9 {
		return near * step
	}
	return round(x) * step
}
