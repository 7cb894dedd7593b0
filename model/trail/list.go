package trail

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tarpside/model"
)

// A Need is how much a party needs a line. More is needed more.
type Need int

// The needs. Stays is left on the rig; Ask is a line whose condition nobody
// here understands: a person decides, and it counts as Should until then.
const (
	Stays Need = iota
	If
	Ask
	Should
	Must
)

// String is the word for lists.
func (n Need) String() string { return [...]string{"stays", "if", "ask", "should", "must"}[n] }

// UnknownLb is what a piece counts whose weight nobody knows.
const UnknownLb = 5

// A Line is so many pieces of an item, with what is in them now.
type Line struct {
	Item      string
	Line      int // position in Dept.Items, or -1
	Name, Rig string
	N         int // asked for
	There     int // really home and ready now
	Need      Need
	Why       string  // the reason for the need
	Lb        float64 // one piece with what is in it
	Guessed   bool    // some of that weight is not known and counts 5 lb
	TwoPerson bool
}

// Total is the weight of the line in pounds.
func (l Line) Total() float64 { return float64(l.N) * l.Lb }

// most is the largest number of pieces that a line may ask for.
const most = 9999

// List is what the department's pull list of a name takes along on a trip and
// what it leaves, most needed first. Water is raised to what the people drink
// in the hours, where both are known. A line that is not in the inventory is
// listed with Line -1.
func List(s *model.State, name string, t Trip, people int) []Line {
	var out []Line
	for i := range s.Dept.Pulls {
		p := &s.Dept.Pulls[i]
		if !strings.EqualFold(p.List, name) {
			continue
		}
		l := Line{Item: p.Item, Name: p.Name, Line: s.Dept.ItemIndex(p.Item)}
		n, err := strconv.Atoi(strings.TrimSpace(p.Quantity))
		if err != nil {
			n = 1
		}
		l.N = min(max(n, 0), most)
		family := ""
		if l.Line >= 0 {
			it := &s.Dept.Items[l.Line]
			family, l.Rig = it.Family, it.Rig
			l.There, l.TwoPerson = s.ReadyNow(l.Line), s.TwoPerson(l.Line)
			l.Lb, l.Guessed = Weight(s, l.Line)
		} else {
			l.Lb, l.Guessed = UnknownLb, true
		}
		l.Need, l.Why = t.need(p, family)
		if strings.Contains(strings.ToLower(p.Season), byHours) {
			l.raise(t, people, p.Season)
		}
		out = append(out, l)
	}
	slices.SortStableFunc(out, func(a, b Line) int { return cmp.Compare(b.Need, a.Need) })
	return out
}

// byHours marks a line whose number goes with the people and the hours.
const byHours = "people x hours"

// raise brings water up to what the party drinks; it is never lowered.
func (l *Line) raise(t Trip, people int, season string) {
	a, ok := t.Water(people)
	before, _, _ := strings.Cut(strings.ToLower(season), byHours)
	switch {
	case !ok:
		l.Why += "; people or hours are not known, so the listed number"
	case strings.Contains(before, "summer") && t.Season == Winter && t.Heat != Hot:
		l.Why += fmt.Sprintf("; the listed number, as it is winter: by the table %.0f", a.Value)
	case int(a.Value) > l.N:
		l.N = min(int(a.Value), most)
		l.Why += fmt.Sprintf("; raised to %d for %d people in %g hours", l.N, people, t.Hours)
	}
}

// Weight is one piece with what is in it now, in pounds. What nobody knows
// counts 5 lb a piece, and guessed says so.
func Weight(s *model.State, i int) (lb float64, guessed bool) {
	it := &s.Dept.Items[i]
	if lb = it.WeightLb; it.NoWeight || !(lb >= 0 && lb < 1e5) {
		lb, guessed = UnknownLb, true
	}
	if it.Kind != model.Kit {
		return lb, guessed
	}
	in := model.Place{Kind: model.InKit, Name: it.ID}
	for _, c := range s.Dept.Inside(i) {
		if n := s.Line(c).N(in); n > 0 {
			w, g := Weight(s, c)
			lb, guessed = lb+float64(n)*w, guessed || g
		}
	}
	return lb, guessed
}

// Sum adds up the lines that go along, in pounds. Guessed is how many lines
// have a weight that is not wholly known.
func Sum(lines []Line) (lb float64, guessed int) {
	for _, l := range lines {
		if l.Need == Stays {
			continue
		}
		lb += l.Total()
		if l.Guessed && l.N > 0 {
			guessed++
		}
	}
	return lb, guessed
}
