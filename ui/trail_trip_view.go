package ui

import (
	"math"
	"strconv"

	"tarpside/model/sum"
	litter "tarpside/model/trail"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// tripFacts are the keys of the trip: what each stands for, and how a touch
// turns it.
var tripFacts = []struct {
	group string
	keys  []tripFact
}{
	{words.K("When"), []tripFact{
		{"summer", words.K("Summer"), func(t *litter.Trip) bool { return t.Season == litter.Summer }, func(t *litter.Trip) { oneOf(&t.Season, litter.Summer) }},
		{"winter", words.K("Winter"), func(t *litter.Trip) bool { return t.Season == litter.Winter }, func(t *litter.Trip) { oneOf(&t.Season, litter.Winter) }},
		{"cool", words.K("Cool"), func(t *litter.Trip) bool { return t.Heat == litter.Cool }, func(t *litter.Trip) { oneOf(&t.Heat, litter.Cool) }},
		{"mild", words.K("Mild"), func(t *litter.Trip) bool { return t.Heat == litter.Mild }, func(t *litter.Trip) { oneOf(&t.Heat, litter.Mild) }},
		{"hot", words.K("Hot"), func(t *litter.Trip) bool { return t.Heat == litter.Hot }, func(t *litter.Trip) { oneOf(&t.Heat, litter.Hot) }},
	}},
	{words.K("The way"), []tripFact{
		{"good", words.K("Good path"), func(t *litter.Trip) bool { return t.Path == litter.Good }, func(t *litter.Trip) { oneOf(&t.Path, litter.Good) }},
		{"rough", words.K("Rough"), func(t *litter.Trip) bool { return t.Path == litter.Rough }, func(t *litter.Trip) { oneOf(&t.Path, litter.Rough) }},
		{"steep", words.K("Steep"), func(t *litter.Trip) bool { return t.Path == litter.Steep }, func(t *litter.Trip) { oneOf(&t.Path, litter.Steep) }},
		{"off-path", words.K("No path"), func(t *litter.Trip) bool { return t.OffPath }, func(t *litter.Trip) { t.OffPath = !t.OffPath }},
	}},
	{words.K("Now"), []tripFact{
		{"night", words.K("Night"), func(t *litter.Trip) bool { return t.Night }, func(t *litter.Trip) { t.Night = !t.Night }},
		{"wet", words.K("Wet"), func(t *litter.Trip) bool { return t.Wet }, func(t *litter.Trip) { t.Wet = !t.Wet }},
		{"snow", words.K("Snow"), func(t *litter.Trip) bool { return t.Snow }, func(t *litter.Trip) { t.Snow = !t.Snow }},
		{"ice", words.K("Ice"), func(t *litter.Trip) bool { return t.Ice }, func(t *litter.Trip) { t.Ice = !t.Ice }},
	}},
	{words.K("Also"), []tripFact{
		{"slope", words.K("Rope on a slope"), func(t *litter.Trip) bool { return t.Slope }, func(t *litter.Trip) { t.Slope = !t.Slope }},
		{"raise", words.K("Raise or lower"), func(t *litter.Trip) bool { return t.Raise }, func(t *litter.Trip) { t.Raise = !t.Raise }},
		{"agency", words.K("Ambulance crew along"), func(t *litter.Trip) bool { return t.Agency }, func(t *litter.Trip) { t.Agency = !t.Agency }},
	}},
}

// tripFact is one key of the trip.
type tripFact struct {
	id, title string
	on        func(*litter.Trip) bool
	turn      func(*litter.Trip)
}

// oneOf takes one word of several, or lets it go again.
func oneOf[T ~string](have *T, word T) {
	if *have == word {
		word = ""
	}
	*have = word
}

// metresInFoot is exact.
const metresInFoot = 0.3048

// tripNumber is a number of the trip that is typed: tenths are typed as the
// last digit.
type tripNumber struct {
	id, title, question, unit string
	tenths                    bool
	most                      float64
	get                       func(*litter.Trip) float64
	set                       func(*litter.Trip, float64)
}

var tripNumbers = []tripNumber{
	{"miles", words.K("Distance in"), words.K("How many miles in, one way? The last digit is tenths: 15 is 1.5"), words.K("mi"), true, 30,
		func(t *litter.Trip) float64 { return t.Km / litter.KmPerMile }, func(t *litter.Trip, x float64) { t.Km = x * litter.KmPerMile }},
	{"feet", words.K("Climb"), words.K("How many feet up on the way in?"), words.K("ft"), false, 9000,
		func(t *litter.Trip) float64 { return t.ClimbM / metresInFoot }, func(t *litter.Trip, x float64) { t.ClimbM = x * metresInFoot }},
	{"hours", words.K("Hours out"), words.K("How many hours out on the trail, in and back? The last digit is tenths: 45 is 4.5"), words.K("h"), true, 48,
		func(t *litter.Trip) float64 { return t.Hours }, func(t *litter.Trip, x float64) { t.Hours = x }},
	{"patient", words.K("Patient"), words.K("About how heavy is the patient, in pounds? For the sum alone: it is not kept"), words.K("lb"), false, 700,
		func(t *litter.Trip) float64 { return t.PatientLb }, func(t *litter.Trip, x float64) { t.PatientLb = x }},
}

// value is a number as it was typed.
func (k tripNumber) value(typed string) (float64, bool) {
	x, err := strconv.ParseFloat(typed, 64)
	if k.tenths {
		x /= 10
	}
	return x, err == nil && x <= k.most
}

// words is the number with its unit.
func (k tripNumber) words(x float64) string {
	decimals := 0
	if k.tenths {
		decimals = 1
	}
	return sum.Say(x, decimals) + " " + words.L(k.unit)
}

func (t *trailScreen) actTrip(id string) {
	for _, g := range tripFacts {
		for _, k := range g.keys {
			if k.id == id {
				k.turn(&t.p.Trip)
				t.keep()
				return
			}
		}
	}
	for _, k := range tripNumbers {
		if k.id == id {
			t.pad, t.typed = id, ""
		}
	}
}

// tripView is what is known of the trip, as keys in lines of five.
func (t *trailScreen) tripView() node {
	for _, k := range tripNumbers {
		if k.id == t.pad {
			return t.tripPad(k)
		}
	}
	var rows []node
	for _, g := range tripFacts {
		kids := []node{groupName(words.L(g.group))}
		for _, k := range g.keys {
			v := parts.KeyView{ID: k.id, Title: words.L(k.title), Lay: parts.LayCentre, Role: look.TileName}
			if k.on(&t.p.Trip) {
				v.Tone, v.Icon, v.State, v.Lay = parts.Live, "tick", "chosen", parts.LayStack
			}
			kids = append(kids, keyNode(v))
		}
		rows = append(rows, row(0, kids...))
	}
	kids := []node{groupName(words.L("How far"))}
	for _, k := range tripNumbers {
		v := parts.KeyView{ID: k.id, Title: words.L(k.title), Second: words.L("not known"), Lay: parts.LayLeft, Role: look.TileName}
		if x := k.get(&t.p.Trip); x > 0 {
			v.Second, v.State = k.words(x), "chosen"
		}
		kids = append(kids, keyNode(v))
	}
	return col(0, append(rows, row(0, kids...))...)
}

func groupName(word string) node {
	return sized(node{id: "group-" + word, view: parts.LabelView{Text: word, Role: look.BodyBold, Mid: true}}, 92)
}

// tripPad asks for a number of the trip.
func (t *trailScreen) tripPad(k tripNumber) node {
	v := leadView{id: "amount", title: words.L(k.title), under: words.L(k.question)}
	says := leadView{id: "verdict", under: words.F("At most %s. Nought: not known.", k.words(k.most))}
	x, ok := k.value(t.typed)
	text := ""
	switch {
	case t.typed == "":
	case !ok:
		says.tone, says.title = parts.Alarm, words.L("Cannot be")
		text = k.words(x)
	default:
		text = k.words(x)
		switch k.unit {
		case "mi":
			says.under = words.F("%s km, one way.", sum.Say(x*litter.KmPerMile, 1))
		case "ft":
			says.under = words.F("%s m up.", sum.Say(x*metresInFoot, 0))
		}
	}
	n := t.n.padNode(v, text, says, ok)
	return shrinkTyped(n)
}

// shrinkTyped sets what is typed a size smaller: it has a unit.
func shrinkTyped(n node) node {
	side := &n.kids[1].kids[1].kids[0]
	out := side.view.(parts.ReadoutView)
	out.Role = look.Place
	side.view = out
	return n
}

// digit takes one key of the pad.
func (t *trailScreen) digit(key string) {
	switch key {
	case "delete":
		if k := len(t.typed); k > 0 {
			t.typed = t.typed[:k-1]
		}
	case "done":
		t.typedDone()
	default:
		if len(t.typed) < 4 {
			t.typed += key
		}
	}
}

// typedDone takes what was typed, if it can be.
func (t *trailScreen) typedDone() {
	x, err := strconv.ParseFloat(t.typed, 64)
	for _, k := range tripNumbers {
		if v, ok := k.value(t.typed); k.id == t.pad && ok {
			k.set(&t.p.Trip, v)
			t.pad, t.typed = "", ""
			t.keep()
			return
		}
	}
	switch {
	case err != nil:
	case t.pad == "limit" || t.pad == "body":
		if lb, ok := typedLimit(t.pad, x); ok {
			t.setLimit(lb)
			t.keep()
		}
	case t.step == trailCheck:
		t.answerRig(int(x))
	case t.step == trailCount:
		t.answerCount(int(x))
	}
}

// typedLimit is the limit that a number comes to: pounds as they are, or those
// of a body's weight, which is then forgotten.
func typedLimit(pad string, x float64) (lb float64, ok bool) {
	if pad == "limit" {
		return x, x >= 1 && x <= 150
	}
	c := litter.Carrier{BodyLb: x, OwnLb: litter.OwnGearLb}
	return math.Floor(sum.Round(c.Limit(), 3)), x >= 70 && x <= 500 && c.Limit() >= 1
}
