// Package clearup is the rough time that a put-back still takes: from this
// crew's own pace tonight where there is enough of it, else from a table. It is
// always a range, and it promises nothing about a search that is open.
package clearup

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/sum"
)

// The table, in seconds of one person (from memory; a crew's own pace goes
// before it).
const (
	SingleS    = 45.0
	KitS       = 90.0  // a kit and its count
	TwoPersonS = 150.0 // for each of the two
	TenS       = 20.0  // ten blocks, by the armful
	Busy       = 0.8   // the share of the time in which people really load
)

// Work is what is still to be put back.
type Work struct {
	Singles, Kits, TwoPerson int
	Tens                     int // armfuls of ten from counted lines
}

// Plus adds up two works.
func (w Work) Plus(x Work) Work {
	return Work{w.Singles + x.Singles, w.Kits + x.Kits, w.TwoPerson + x.TwoPerson, w.Tens + x.Tens}
}

// seconds are those of one person who does it all.
func (w Work) seconds() float64 {
	n := func(k int) float64 { return sum.Sane(float64(k), 0, 1e6) }
	return n(w.Singles)*SingleS + n(w.Kits)*KitS + n(w.TwoPerson)*2*TwoPersonS + n(w.Tens)*TenS
}

// Minutes is the work by the table for so many people; none counts as one.
func Minutes(w Work, people int) float64 {
	return w.seconds() / (float64(min(max(people, 1), 1000)) * Busy) / 60
}

// Of is the work of putting n pieces of a line back. A kit that two people
// lift is counted as well.
func Of(s *model.State, line, n int) Work {
	it := &s.Dept.Items[line]
	switch {
	case n <= 0:
		return Work{}
	case s.TwoPerson(line) && it.Kind == model.Kit:
		return Work{TwoPerson: n, Kits: n}
	case s.TwoPerson(line):
		return Work{TwoPerson: n}
	case it.Kind == model.Kit:
		return Work{Kits: n}
	case it.Kind == model.Counted || it.Kind == model.Consumable:
		if n > 2 {
			return Work{Tens: (n + 9) / 10}
		}
	}
	return Work{Singles: n}
}

// Left is what of a rig, or with an empty name of all, lies on the tarp or at
// a place of the scene and is to be put back. What is in a kit goes with it.
// Searches are the lines that are still looked for.
func Left(s *model.State, rig string) (w Work, searches []int) {
	for _, i := range s.Dept.ByItem() {
		if rig != "" && s.Dept.Items[i].Rig != rig {
			continue
		}
		n := 0
		for _, st := range s.Line(i).Stacks {
			switch st.Place.Kind {
			case model.Tarp, model.At:
				n += st.N
			case model.Unexplained:
				searches = append(searches, i)
			}
		}
		w = w.Plus(Of(s, i, n))
	}
	return w, searches
}

// A Done is a piece of work that was logged as put back.
type Done struct {
	At int64 // Unix ms
	Work
}

// Stows are the put-backs of a scene among its entries, in their order.
func Stows(s *model.State, entries []model.Entry, scene string) []Done {
	var out []Done
	for i := range entries {
		e := &entries[i]
		line := s.Dept.ItemIndex(e.Item)
		if e.Scene != scene || !e.Taken() || line < 0 || e.Verb != model.Stow && e.Verb != model.StowTagged {
			continue
		}
		n := 0
		for _, m := range e.Moves {
			if m.Item == e.Item {
				n += m.N
			}
		}
		out = append(out, Done{e.At(), Of(s, line, n)})
	}
	return out
}

// How own pace is read.
const (
	block  = 4       // put-backs that are timed together: taps come in bursts
	blocks = 3       // fewer say nothing
	pauseS = 5 * 60. // a longer gap was a pause, not work (common practice)
)

// A Pace is how long this crew takes against the table: 1 is just as long, 2
// is twice. Low and High hold the middle half of what was seen.
type Pace struct {
	Low, Middle, High float64
	N                 int // put-backs that it rests on
}

// PaceOf is the pace of the put-backs with so many people; ok is false while
// there are too few of them.
func PaceOf(done []Done, people int) (p Pace, ok bool) {
	done = slices.Clone(done)
	slices.SortStableFunc(done, func(a, b Done) int {
		switch {
		case a.At < b.At:
			return -1
		case a.At > b.At:
			return 1
		}
		return 0
	})
	var seen []float64
	took, table, k := 0.0, 0.0, 0
	for i := 1; i < len(done); i++ {
		gap := (float64(done[i].At) - float64(done[i-1].At)) / 1000
		if gap > pauseS {
			continue
		}
		took, table, k = took+gap, table+60*Minutes(done[i].Work, people), k+1
		if k%block == 0 && table > 0 {
			seen = append(seen, took/table)
			took, table = 0, 0
		}
	}
	if len(seen) < blocks {
		return Pace{}, false
	}
	slices.Sort(seen)
	p = Pace{quantile(seen, 0.25), quantile(seen, 0.5), quantile(seen, 0.75), k}
	return p, p.Middle > 0
}

// quantile reads a sorted list, straight between its values.
func quantile(sorted []float64, q float64) float64 {
	at := q * float64(len(sorted)-1)
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}

// How wide a range is at the least: the table knows little of this crew.
const (
	tableLow, tableHigh = 0.95, 1.5
	ownLow, ownHigh     = 0.85, 1.15
)

// Time is how long the work still takes so many people, as a range, with the
// open searches by name.
func Time(w Work, people int, done []Done, searches []string) sum.Answer {
	a := sum.Answer{Name: "time left", Unit: "min", Value: Minutes(w, people),
		Formula: "pieces x seconds / (people x 0.8): single 45, kit count 90, two-person 2 x 150, ten blocks 20",
		Source:  "a table " + sum.FromMemory,
		Limits:  "rough; weather, a blocked slot or a wet rope are not in it"}
	a.Low, a.High = tableLow*a.Value, tableHigh*a.Value
	if p, ok := PaceOf(done, people); ok {
		table := a.Value
		a.Value = sum.Sane(p.Middle*table, 0, 1e6)
		a.Low = sum.Sane(math.Min(p.Low, ownLow*p.Middle)*table, 0, 1e6)
		a.High = sum.Sane(math.Max(p.High, ownHigh*p.Middle)*table, 0, 1e6)
		a.Source = fmt.Sprintf("this crew's own pace tonight, from %d put-backs", p.N)
	}
	switch {
	case a.Value == 0:
		a.Text = "nothing left to put back"
	default:
		a.Text = "about " + sum.Span(a.Low, a.High)
	}
	if n := len(searches); n > 0 {
		format := "%s + %d open search: %s"
		if n > 1 {
			format = "%s + %d open searches: %s"
		}
		a.Text = fmt.Sprintf(format, a.Text, n, strings.Join(searches, ", "))
		a.Limits += "; nobody knows how long a search takes"
	}
	return a
}
