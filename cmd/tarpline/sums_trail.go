package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"tarpside/model/clearup"
	"tarpside/model/look"
	"tarpside/model/match"
	"tarpside/model/sum"
	"tarpside/model/trail"
)

// A trailSum is one sum of the off-road carry, the search, the clear-up or the
// store.
type trailSum struct {
	name, words, short, example string
	run                         func(args []string, out io.Writer) error
}

// trailSums are the sums in the order of the help.
var trailSums = []trailSum{
	{"trail", "package=LB [patient=LB] [bearers=N] [path=good|rough|steep] [own=LB] [people=N] [night=yes] [snow=yes] [km=N]",
		"the load of each bearer, and how many people a carry needs", "tarpline sums trail package=53.4 bearers=6 path=rough", sumTrail},
	{"water", "people=N hours=N [heat=cool|mild|hot | rate=QT]",
		"the water to carry", "tarpline sums water people=9 hours=5 heat=mild", sumWater},
	{"walk", "km=N [climb=M] [path=good|rough|steep] [night=yes] [snow=yes] [off=yes]",
		"the time in and out, and the changes of bearers", "tarpline sums walk km=2.4 climb=240 path=rough night=yes", sumWalk},
	{"search", "NAME:CHANCE:SIGHT:MINUTES[:unsafe] ... [not=NAME ...]",
		"the order in which to look, after looks that found nothing", "tarpline sums search tarp:0.2:0.9:2 V1:0.45:0.8:4 not=tarp", sumSearch},
	{"match", "short=RIG:FAMILY:N[:SIZE] ... extra=RIG:FAMILY:N[:SIZE][:read|:near] ...",
		"what is short here beside what is extra there", "tarpline sums match short=R41:crib:4 extra=P71:crib:4", sumMatch},
	{"clearup", "[singles=N] [kits=N] [two=N] [tens=N] [people=N] [open=NAME ...]",
		"how long the put-back still takes, by the table", "tarpline sums clearup singles=30 kits=6 two=4 tens=4 people=4", sumClearup},
	{"restock", "mean=A_WEEK lead=WEEKS [sd=A_WEEK] [need=N] [have=N] [pack=N]",
		"what the store gives, the reorder point, what to order", "tarpline sums restock mean=8 sd=7 lead=2 need=16 have=60 pack=100", sumRestock},
	{"sets", "NAME:NEED:HAVE ...",
		"how many sets can be used, and the missing key", "tarpline sums sets strut:1:4 foot:1:5 strap:1:6 pin:2:7", sumSets},
}

// sayAll writes figures with their formula, source and limits.
func sayAll(out io.Writer, all ...sum.Answer) error {
	for _, a := range all {
		for _, text := range a.Lines() {
			for i, l := range wrap(text, width-8) {
				if strings.HasPrefix(text, "    ") || i > 0 {
					l = "    " + strings.TrimSpace(l)
				}
				if _, err := fmt.Fprintln(out, l); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// notes are the lines under a list that say how it was got.
func notes(name, text, formula, source, limits string) sum.Answer {
	return sum.Answer{Name: name, Text: text, Formula: formula, Source: source, Limits: limits}
}

func sumTrail(args []string, out io.Writer) error {
	g := readSum("trail", args, "package patient bearers path own people night snow km", "")
	load := g.must("package", 0, 1e5)
	patient := g.number("patient", trail.PatientLb, 0, 2000)
	bearers := g.whole("bearers", trail.OnLitter, 1, 1000)
	people := g.whole("people", 0, 0, 1000)
	own := g.number("own", 0, 0, 300)
	t := g.trip()
	if g.err != nil {
		return g.err
	}
	a := trail.BearerLoad(patient, load, bearers, t.Path, own)
	if len(g.named["patient"]) == 0 {
		a.Limits += fmt.Sprintf("; the patient's weight was not given: %d lb", trail.PatientLb)
	}
	return sayAll(out, a, t.Bearers(people))
}

func sumWater(args []string, out io.Writer) error {
	g := readSum("water", args, "people hours heat rate", "")
	people := g.whole("people", 0, 1, 1000)
	g.need("people")
	hours := g.must("hours", 0, 1000)
	heat := trail.Heat(g.word("heat", "", "cool", "mild", "hot"))
	rate := g.number("rate", 0, 0, 10)
	if g.err != nil {
		return g.err
	}
	if len(g.named["rate"]) > 0 {
		return sayAll(out, trail.Water(people, hours, rate))
	}
	a, _ := trail.Trip{Hours: hours, Heat: heat}.Water(people)
	return sayAll(out, a)
}

func sumWalk(args []string, out io.Writer) error {
	g := readSum("walk", args, "km climb path night snow off", "")
	g.need("km")
	t := g.trip()
	t.ClimbM = g.number("climb", 0, 0, 9000)
	t.OffPath = g.yes("off")
	if g.err != nil {
		return g.err
	}
	in, _ := t.In()
	back, ok := t.Out()
	all := []sum.Answer{in, back}
	if least, most, known := t.Reliefs(); ok && known {
		all = append(all, notes("changes of bearers", fmt.Sprintf("%d to %d on the way out", least, most),
			"one pair changes every 100 to 50 m", "Medicine for Mountaineering", "shorter turns where it is rough"))
	}
	return sayAll(out, all...)
}

func sumSearch(args []string, out io.Writer) error {
	g := readSum("search", args, "", "not")
	var places []look.Place
	for _, text := range g.plain {
		places = append(places, g.place(text))
	}
	if g.err == nil && len(places) == 0 {
		g.wrong("there is no place to look")
	}
	for i, p := range places {
		if g.err == nil && slices.ContainsFunc(places[:i], func(x look.Place) bool { return x.ID == p.ID }) {
			g.wrong("%s stands there twice", p.ID)
		}
	}
	for _, id := range g.named["not"] {
		if g.err == nil && !slices.ContainsFunc(places, func(p look.Place) bool { return p.ID == id }) {
			g.wrong("not=%s is none of the places", id)
		}
	}
	if g.err != nil {
		return g.err
	}
	order, _ := look.After(places, g.named["not"]...)
	var text []string
	n := 0
	for _, p := range order {
		times := 0
		for _, id := range g.named["not"] {
			if id == p.ID {
				times++
			}
		}
		switch {
		case p.Unsafe:
			text = append(text, p.Name+" (not safe: not searched)")
			continue
		case times > 0:
			p.Name += " (again)"
		}
		n++
		text = append(text, fmt.Sprintf("%d. %s", n, p.Name))
	}
	return sayAll(out, notes("look", strings.Join(text, ", "), look.Formula, look.Source, look.Limits))
}

func sumMatch(args []string, out io.Writer) error {
	g := readSum("match", args, "", "short extra")
	g.need("short")
	g.need("extra")
	g.noPlain()
	var short, extra []match.Side
	words := make([][]string, len(g.named["extra"]))
	for _, text := range g.named["short"] {
		s, rest := g.side(text)
		if len(rest) > 0 && g.err == nil {
			g.wrong("%q has a word too many", text)
		}
		short = append(short, s)
	}
	for i, text := range g.named["extra"] {
		var s match.Side
		s, words[i] = g.side(text)
		extra = append(extra, s)
	}
	if g.err != nil {
		return g.err
	}
	said := func(word string) func(int, int) bool {
		return func(_, x int) bool { return slices.Contains(words[x], word) }
	}
	found := match.Find(short, extra, match.Known{MarkRead: said("read"), SamePlace: said("near")})
	text := "nothing fits: no rig has extra of what another is short of"
	if len(found) > 0 {
		text = strings.Join(swaps(found, short, extra), "; ")
	}
	return sayAll(out, notes("match", text, match.Formula, match.Source, match.Limits))
}

// swaps says each pair: a clear one is proposed, several that fit are shown.
func swaps(found []match.Match, short, extra []match.Side) (out []string) {
	for _, m := range found {
		for _, p := range m.Pairs {
			s, x := short[p.Short], extra[p.Extra]
			if p.Clear() {
				out = append(out, fmt.Sprintf("likely swap: %d %s of %s may be on %s", p.Most, m.Family, s.Rig, x.Rig))
			} else {
				out = append(out, fmt.Sprintf("fits as well: %d to %d %s of %s may be on %s", p.Least, p.Most, m.Family, s.Rig, x.Rig))
			}
		}
		if m.Short > 0 {
			out = append(out, fmt.Sprintf("%d %s still not explained", m.Short, m.Family))
		}
	}
	return out
}

func sumClearup(args []string, out io.Writer) error {
	g := readSum("clearup", args, "singles kits two tens people", "open")
	w := clearup.Work{Singles: g.whole("singles", 0, 0, 100000), Kits: g.whole("kits", 0, 0, 100000),
		TwoPerson: g.whole("two", 0, 0, 100000), Tens: g.whole("tens", 0, 0, 100000)}
	people := g.whole("people", 1, 1, 1000)
	g.noPlain()
	if g.err != nil {
		return g.err
	}
	a := clearup.Time(w, people, nil, g.named["open"])
	if len(g.named["people"]) == 0 {
		a.Limits += "; people not given: one"
	}
	return sayAll(out, a)
}
