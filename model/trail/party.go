package trail

import (
	"fmt"
	"math"
	"strings"

	"tarpside/model"
	"tarpside/model/sum"
)

// Choose is the list as somebody made it by hand: so many pieces of each item
// that is in chosen. What stays and is taken all the same becomes an if; what
// is left keeps its need and asks for none. The list given is not changed.
func Choose(lines []Line, chosen map[string]int) []Line {
	out := make([]Line, len(lines))
	for i, l := range lines {
		n, ok := chosen[l.Item]
		n = min(max(n, 0), most)
		switch {
		case !ok || n == l.N && l.Need != Stays:
		case n == 0 && l.Need != Stays:
			l.N, l.Why = 0, "left by hand; "+l.Why
		case n > 0 && l.Need == Stays:
			l.N, l.Need, l.Why = n, If, "taken by hand; "+l.Why
		case n > 0:
			l.N, l.Why = n, fmt.Sprintf("%d by hand, the list says %d; %s", n, l.N, l.Why)
		}
		out[i] = l
	}
	return out
}

// Goes tells whether pieces of the line are taken along.
func (l Line) Goes() bool { return l.Need != Stays && l.N > 0 }

// ByNeed is what goes along of each need, in pounds. Ask counts as should.
func ByNeed(lines []Line) (must, should, maybe float64) {
	for _, l := range lines {
		switch {
		case !l.Goes():
		case l.Need == Must:
			must += l.Total()
		case l.Need == If:
			maybe += l.Total()
		default:
			should += l.Total()
		}
	}
	return must, should, maybe
}

// onLitter are words of what the bearers carry with the patient. The wheel
// carries itself.
var onLitter = []string{"litter", "tag line", "tagline", "sling", "mattress", "wrap", "blanket"}

// Package is what of the list rides on the litter or is in the bearers' hands
// on the way out, in pounds: the litter with all of it, the lines and slings,
// what the patient lies on and is wrapped in.
func Package(s *model.State, lines []Line) (lb float64) {
	for _, l := range lines {
		words := strings.ToLower(l.Name)
		if l.Line >= 0 {
			words += " " + strings.ToLower(s.Dept.Items[l.Line].Family)
		}
		if !l.Goes() || strings.Contains(words, "wheel") {
			continue
		}
		for _, w := range onLitter {
			if strings.Contains(words, w) {
				lb += l.Total()
				break
			}
		}
	}
	return lb
}

// UpLb is a load in whole pounds, rounded up; a hair over a pound is none.
func UpLb(lb float64) int { return int(math.Ceil(sum.Round(sum.Sane(lb, 0, 1e6), 3))) }

// DownLb is a limit or what is to spare in whole pounds, rounded down.
func DownLb(lb float64) int { return int(math.Floor(sum.Round(sum.Sane(lb, 0, 1e6), 3))) }

const (
	limitFormula = "30 % of the body's weight, less what is worn and carried already"
	limitSource  = "US Army ADP 3-90, as quoted: agility is kept up to about that share; own clothing and gear of 18 lb is " + sum.FromMemory
	limitLimits  = "guidance for planning on foot: local rules, the officer and the member go first; without a body's weight it counts 180 lb; " +
		"only the limit is kept, never the weight of the body"
)

// Answer is the carrier's limit with how it is got.
func (c Carrier) Answer() sum.Answer {
	a := sum.Answer{Name: "limit of one carrier", Value: c.Limit(), Unit: "lb", Text: fmt.Sprintf("%d lb", DownLb(c.Limit())),
		Formula: limitFormula, Source: limitSource, Limits: limitLimits}
	if c.Most > 0 {
		a.Formula, a.Source = "as agreed with the member", "asked of the member; without an answer it is "+limitFormula
	}
	return a
}

// Answer is the weight of the load against what all can take, with how it is
// got: the load rounded up, the rest rounded down.
func (l Load) Answer() sum.Answer {
	a := sum.Answer{Name: "weight to carry", Value: l.Lb, High: l.Limit, Unit: "lb", Text: fmt.Sprintf("%d lb", UpLb(l.Lb)),
		Formula: "pieces x the weight of one, kits with what is in them now; against it the limits of all who walk: " + limitFormula,
		Source:  "weights: the inventory; limit: " + limitSource,
		Limits:  limitLimits + "; water that was drunk and what was used is not taken off"}
	switch {
	case len(l.Packs) == 0:
		a.Text += ", and nobody walks yet"
	case l.Over() > 0:
		a.Text = fmt.Sprintf("%d lb of %d lb: over by %d lb", UpLb(l.Lb), DownLb(l.Limit), UpLb(l.Over()))
	default:
		a.Text = fmt.Sprintf("%d lb of %d lb: %d lb to spare", UpLb(l.Lb), DownLb(l.Limit), DownLb(l.Limit-l.Lb))
	}
	if l.Guessed > 0 {
		a.Limits += fmt.Sprintf("; %d on the list weigh a guess, 5 lb a piece (%s)", l.Guessed, sum.FromMemory)
	}
	return a
}

// Leaving is what the proposal to leave pieces is based on, with its figure:
// the pounds that are saved, rounded down.
func Leaving(drops []Drop, over float64) sum.Answer {
	saved := 0.0
	for _, d := range drops {
		saved += d.Lb
	}
	a := sum.Answer{Name: "what to leave", Value: saved, Unit: "lb", Text: fmt.Sprintf("%d lb less", DownLb(saved)),
		Formula: "what is needed least first (if, then should), in it the heaviest piece; a must is never proposed; nothing is proposed that need not stay",
		Source:  "common practice; the order by need a pound is ours",
		Limits:  "thirty needless pounds are a failure as much as a piece left behind (common practice); the leader of the party decides"}
	if over > 0 {
		a.Text += fmt.Sprintf(", and still %d lb too much: more people, or a second walk", UpLb(over))
	}
	return a
}

// Changes is the changes of bearers on the way out with how it is got; ok is
// false without a distance.
func (t Trip) Changes() (a sum.Answer, ok bool) {
	a = sum.Answer{Name: "changes of bearers", Formula: "one pair changes every 100 to 50 m of the way out, the last stretch without",
		Source: "Medicine for Mountaineering (The Mountaineers): reserves stand in pairs every 50 to 100 m", Limits: "shorter turns where it is rough or steep"}
	least, most, ok := t.Reliefs()
	if !ok {
		a.Text = "no distance, no estimate"
		return a, false
	}
	a.Value, a.Low, a.High = float64(most), float64(least), float64(most)
	a.Text = fmt.Sprintf("%d to %d", least, most)
	if least == most {
		a.Text = fmt.Sprint(least)
	}
	return a, true
}
