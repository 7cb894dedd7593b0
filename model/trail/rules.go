package trail

import (
	"strconv"
	"strings"

	"tarpside/model"
)

// needs are the words of a pull list.
var needs = map[string]Need{"must": Must, "should": Should, "if": If}

// need is how much a line of a pull list is needed on the trip, and why. What
// the department wrote decides; where it wrote nothing, the season does.
func (t Trip) need(p *model.Pull, family string) (Need, string) {
	word, when, _ := strings.Cut(strings.TrimSpace(p.Need), " if ")
	listed, ok := needs[strings.ToLower(strings.TrimSpace(word))]
	if !ok {
		return Ask, "the list says " + strconv.Quote(p.Need) + ": ask"
	}
	said := ""
	for _, cond := range []string{when, p.Season} {
		cond = strings.TrimSpace(cond)
		switch t.holds(cond) {
		case nothing:
		case unsure:
			return Ask, "only with " + strconv.Quote(cond) + ", and that is not known: ask"
		case no:
			return Stays, "only with " + strconv.Quote(cond)
		case yes:
			said = cond
		}
	}
	if said != "" {
		return listed, said
	}
	return t.season(listed, strings.ToLower(p.Name+" "+family))
}

// verdict is what a condition comes to.
type verdict int

const (
	nothing verdict = iota // no condition
	no
	unsure
	yes
)

// holds reads a condition of a pull list, "winter, wet, or night": one of its
// parts is enough. "no" before a part turns it round.
func (t Trip) holds(cond string) verdict {
	cond = strings.ToLower(strings.TrimSpace(cond))
	if cond == "" || cond == "any" || strings.Contains(cond, byHours) {
		return nothing
	}
	out := no
	for _, part := range strings.Split(strings.ReplaceAll(cond, " or ", ","), ",") {
		part = strings.TrimSpace(part)
		if part == "" {
			continue
		}
		rest, turned := strings.CutPrefix(part, "no ")
		v := t.fact(rest)
		if turned && v != unsure {
			v = no + yes - v
		}
		out = max(out, v)
	}
	return out
}

// facts are the words of conditions; the first that is in a part decides.
var facts = []struct {
	word string
	of   func(Trip) verdict
}{
	{"winter", func(t Trip) verdict { return t.is(Winter) }},
	{"summer", func(t Trip) verdict { return t.is(Summer) }},
	{"wet", func(t Trip) verdict { return sure(t.Wet) }},
	{"night", func(t Trip) verdict { return sure(t.Night) }},
	{"packed snow", func(t Trip) verdict { return sure(t.Ice || t.Snow) }},
	{"snow", func(t Trip) verdict { return sure(t.Snow) }},
	{"ice", func(t Trip) verdict { return sure(t.Ice || t.Snow) }},
	{"slope", func(t Trip) verdict { return sure(t.Slope) }},
	{"raise", func(t Trip) verdict { return sure(t.Raise) }},
	{"lower", func(t Trip) verdict { return sure(t.Raise) }},
	{"long", func(t Trip) verdict { return sure(t.long()) }},
	{"hot", func(t Trip) verdict {
		if t.Heat == "" {
			return unsure
		}
		return sure(t.Heat == Hot)
	}},
	{"ems stays", func(t Trip) verdict { return sure(!t.Agency) }},
	{"ems along", func(t Trip) verdict { return sure(t.Agency) }},
}

func (t Trip) fact(part string) verdict {
	for _, f := range facts {
		if strings.Contains(" "+part, " "+f.word) {
			return f.of(t)
		}
	}
	return unsure
}

func (t Trip) is(s Season) verdict {
	if t.Season == "" {
		return unsure
	}
	return sure(t.Season == s)
}

func sure(b bool) verdict {
	if b {
		return yes
	}
	return no
}

// seasons are the rules for lines of which the department wrote no season.
// They are common practice: a department's own list goes before them.
var seasons = []struct {
	words []string
	when  func(Trip) bool
	need  Need
	why   string
}{
	{warm, Trip.cold, Must, "winter, wet or night: somebody who lies still grows cold"},
	{warm, Trip.warm, Stays, "warm things stay on a dry summer walk by day"},
	{[]string{"traction"}, func(t Trip) bool { return t.Ice || t.Snow || t.Season == Winter }, Must, "ice, snow or winter"},
	{[]string{"traction"}, Trip.warm, Stays, "no ice in summer"},
	{[]string{"headlamp"}, Trip.cold, Must, "winter, wet or night: a light for everybody"},
	{[]string{"mattress"}, func(t Trip) bool { return t.warm() && !t.long() }, Stays, "a short summer carry goes without"},
	{[]string{"litterwheel", "litter wheel"}, func(t Trip) bool { return t.Snow }, Stays, "a wheel does not run in snow"},
}

var warm = []string{"blanket", "fleece", "wool", "wrap", "sleeping bag", "heat pack", "closed-cell pad"}

func (t Trip) cold() bool { return t.Season == Winter || t.Wet || t.Night }
func (t Trip) warm() bool { return !t.cold() && (t.Season == Summer || t.Heat == Hot) }

// season is the need by the season rules. A must of the department stays one.
func (t Trip) season(listed Need, words string) (Need, string) {
	for _, r := range seasons {
		if !r.when(t) || r.need == Stays && listed == Must {
			continue
		}
		for _, w := range r.words {
			if strings.Contains(words, w) {
				return r.need, r.why
			}
		}
	}
	return listed, "on the list for any trip"
}
