package sum_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model/sum"
)

func TestNumbersAreRoundedAsPeopleRound(t *testing.T) {
	for _, c := range []struct {
		x    float64
		n    int
		want string
	}{{0.15, 1, "0.2"}, {40.5667, 1, "40.6"}, {34, 1, "34"}, {16.5104, 0, "17"}, {1.005, 2, "1.01"}} {
		if got := sum.Say(c.x, c.n); got != c.want {
			t.Errorf("Say(%v, %d) = %s, want %s", c.x, c.n, got, c.want)
		}
	}
	for min, want := range map[float64]string{0: "0 min", 52.8: "53 min", 119.4: "119 min", 120: "2 h", 160: "2 h 40 min", math.NaN(): "0 min"} {
		if got := sum.Minutes(min); got != want {
			t.Errorf("Minutes(%v) = %s, want %s", min, got, want)
		}
	}
	for _, c := range []struct {
		low, high float64
		want      string
	}{{15, 25, "15 to 25 min"}, {16.5, 22, "15 to 25 min"}, {4.2, 8.1, "4 to 9 min"}, {7, 7, "7 min"}, {92, 178, "90 min to 3 h"}} {
		if got := sum.Span(c.low, c.high); got != c.want {
			t.Errorf("Span(%v, %v) = %s, want %s", c.low, c.high, got, c.want)
		}
	}
}

func TestASaneNumberIsNeverOutsideItsBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64().Draw(t, "x")
		if got := sum.Sane(x, -3, 8); !(got >= -3 && got <= 8) {
			t.Fatalf("Sane(%v) = %v", x, got)
		}
	})
	for _, x := range []float64{math.NaN(), math.Inf(-1)} {
		if got := sum.Sane(x, 1, 2); got != 1 {
			t.Errorf("Sane(%v) = %v, want the lower bound", x, got)
		}
	}
	if got := sum.Sane(math.Inf(1), 1, 2); got != 2 {
		t.Errorf("Sane(+Inf) = %v, want the upper bound", got)
	}
}

func TestAnAnswerSaysHowItWasGot(t *testing.T) {
	a := sum.Answer{Name: "water to carry", Text: "34 qt", Formula: "people x hours x rate", Source: "a table"}
	got := strings.Join(a.Lines(), "\n")
	if want := "water to carry: 34 qt\n    formula: people x hours x rate\n    source: a table"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
