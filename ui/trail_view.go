package ui

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/sum"
	litter "tarpside/model/trail"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// trailView is the party's load as values: what the list says, what was made
// of it, who carries it, what could stay.
type trailView struct {
	list   string
	asked  []litter.Line // as the list says
	lines  []litter.Line // as somebody made it
	load   litter.Load
	drops  []litter.Drop
	over   float64 // pounds that leaving does not help with
	eyes   []litter.Eye
	diffs  []litter.Difference // at the rig
	seen   int                 // eyes that looked
	sure   bool                // verified by two
	at     model.Place         // the party's place
	out    []litter.Tally      // what walked
	away   int                 // pieces with the party now
	needls float64             // pounds with the party that the list does not ask for
	extra  float64             // pounds of the load that it does not ask for
	left   []litter.Difference // musts of which fewer go
}

// trailOf works the party's load out.
func (n *now) trailOf(p *litter.Party) trailView {
	v := trailView{list: p.ListIn(n.d)}
	people := p.Carriers(n.d)
	v.asked, v.lines = p.Lines(n.s)
	v.load = litter.Packs(v.lines, people)
	if len(people) > 0 {
		v.drops, v.over = litter.Drops(v.lines, v.load.Limit)
	}
	v.eyes = litter.Eyes(n.s, v.lines)
	v.diffs, v.sure = litter.Verify(v.eyes, p.Rig, p.First, p.Second)
	for _, e := range v.eyes {
		if _, ok := p.Rig[e.Item]; ok {
			v.seen++
		}
	}
	v.at = n.partyAt()
	v.out = litter.Tallies(n.s, v.at, n.scene.ID, n.pic.Entries)
	taken := map[int]int{}
	for i, l := range v.lines {
		if l.Goes() {
			taken[i] = l.N
		}
	}
	v.left, v.extra = litter.Compare(v.asked, taken)
	n.withParty(&v)
	return v
}

// withParty counts what is with the party now, and what of it nobody asked for.
func (n *now) withParty(v *trailView) {
	loaded, listed := map[int]int{}, map[int]int{}
	for i, l := range v.asked {
		if l.Line >= 0 {
			listed[l.Line] = i
		}
	}
	asked := v.asked
	for i := range n.d.Items {
		k := n.s.Line(i).N(v.at)
		if k == 0 {
			continue
		}
		v.away += k
		at, ok := listed[i]
		if !ok {
			lb, _ := litter.Weight(n.s, i)
			at = len(asked)
			asked = append(asked[:at:at], litter.Line{Item: n.d.Items[i].ID, Line: i, Need: litter.Stays, N: k, Lb: lb})
		}
		loaded[at] = k
	}
	_, v.needls = litter.Compare(asked, loaded)
}

// partyAt is the place of the party: the scene's own word for it, if it has
// one.
func (n *now) partyAt() model.Place {
	at := model.Place{Kind: model.At, Name: partyPlace, Ground: n.scene.Ground}
	for _, name := range n.scenePlaces() {
		if strings.EqualFold(name, partyPlace) {
			at.Name = name
			break
		}
	}
	return at
}

// lbs is a weight to a tenth of a pound.
func lbs(lb float64) string { return words.F("%s lb", sum.Say(lb, 1)) }

// lineWords is so many pieces of a line of the list.
func (n *now) lineWords(l litter.Line, k int) string {
	name := l.Name
	if l.Line >= 0 {
		it := &n.d.Items[l.Line]
		if name = it.Short(); it.Quantity == 1 && k == 1 {
			return name
		}
	}
	if k != 1 {
		name = many(name)
	}
	return fmt.Sprintf("%d %s", k, name)
}

// soleCarrier is the member who has all of a line in the pack; nothing if
// several share it.
func (v *trailView) soleCarrier(line int) string {
	who := ""
	for _, p := range v.load.Packs {
		if slices.ContainsFunc(p.Parts, func(x litter.Part) bool { return x.Line == line }) {
			if _, nameless := litter.NoName(p.Member); who != "" || nameless {
				return ""
			}
			who = p.Member
		}
	}
	return who
}

// tripWords is the trip in a few words: "summer, by night, wet, 1.5 miles in".
func tripWords(t litter.Trip) string {
	if t == (litter.Trip{}) {
		return words.L("say what the trip is like; the list follows")
	}
	first := words.L("by day")
	if t.Night {
		first = words.L("by night")
	}
	if t.Season != "" {
		first = words.L(seasonWords[t.Season]) + ", " + first
	}
	said := []string{first}
	for _, x := range []struct {
		on   bool
		word string
	}{{t.Wet, words.L("wet")}, {t.Snow, words.L("snow")}, {t.Ice, words.L("ice")}, {t.Heat == litter.Hot, words.L("hot")}} {
		if x.on {
			said = append(said, x.word)
		}
	}
	if t.Km > 0 {
		said = append(said, words.F("%s in", milesWord(t.Km)))
	}
	return strings.Join(said, ", ")
}

var seasonWords = map[litter.Season]string{litter.Summer: words.K("summer"), litter.Winter: words.K("winter")}

func milesWord(km float64) string {
	m := sum.Say(km/litter.KmPerMile, 1)
	if m == "1" {
		return words.L("1 mile")
	}
	return words.F("%s miles", m)
}

// A figure is one worked answer of the carry: the id of its key, the figure as
// it is read at a glance, and what it is.
type figure struct {
	id, title, words string
	a                sum.Answer
}

// carryFigures are the answers for the walk, in the order in which a leader
// asks.
func (n *now) carryFigures(p *litter.Party, v *trailView) []figure {
	t, people := p.Trip, len(p.People)
	crew, bearer := t.Bearers(people), n.bearerLoad(p, v)
	first, rest, _ := strings.Cut(crew.Text, ". ")
	out := []figure{{"how-people", words.F("%.0f people", crew.Value), sentences(words.F("For the carry: %s", words.Said(first)), words.Said(rest)), crew},
		{"how-bearer", words.F("%d lb each", litter.UpLb(bearer.Low)), words.L("On each bearer, own pack and all"), bearer}}
	if bearer.High > bearer.Low {
		out[1].title = words.F("%d to %d lb each", litter.UpLb(bearer.Low), litter.UpLb(bearer.High))
		out[1].words = parts.Or(words.L("On each bearer, own pack and all, level to rough"), words.L("On each, own pack and all, level to rough"), words.L("On each, all told"))
	}
	if _, heavy, ok := strings.Cut(bearer.Text, ". "); ok {
		out[1].words = sentences(out[1].words, words.Said(heavy))
	}
	add := func(id, what string, a sum.Answer, ok bool) {
		f := figure{id, words.Said(a.Text), what, a}
		if first, rest, cut := strings.Cut(a.Text, ". "); cut {
			f.title, f.words = words.Said(first), sentences(what, words.Said(rest))
		}
		if !ok {
			f.title, f.words = words.L("No estimate"), what+": "+words.Said(a.Text)
		}
		out = append(out, f)
	}
	in, known := t.In()
	add("how-in", words.L("Time in"), in, known)
	back, known := t.Out()
	add("how-out", words.L("Time out with the litter"), back, known)
	changes, known := t.Changes()
	add("how-changes", words.L("Changes of bearers on the way out"), changes, known)
	water, known := t.Water(people)
	add("how-water", words.L("Water to carry"), water, known)
	if known {
		f := &out[len(out)-1]
		f.title = words.F("%.0f qt, %d lb", water.Value, litter.UpLb(water.Value*litter.QuartLb))
		f.words = words.F("Water to carry. Never more than %.0f qt in these hours: 1.5 an hour each", water.High)
	}
	return out
}

// bearerLoad is the load of each bearer on the way out.
func (n *now) bearerLoad(p *litter.Party, v *trailView) sum.Answer {
	patient, guess := p.Trip.PatientLb, ""
	if patient == 0 {
		patient, guess = litter.PatientLb, words.F("; the patient's weight is not known and counts %d lb", litter.PatientLb)
	}
	bearers, people := litter.OnLitter, len(p.People)
	if people > 0 {
		bearers = min(bearers, people)
	}
	pack := litter.Package(n.s, v.lines)
	own := 0.0
	if people > 0 {
		own = (v.load.Lb - pack) / float64(people)
	}
	a := litter.BearerLoad(patient, pack, bearers, p.Trip.Path, own)
	a.Limits = words.Said(a.Limits) + guess + words.F("; %d bearers, %s with the litter, the rest of the load shared by all who walk: %s each", bearers, lbs(pack), lbs(own))
	return a
}

// fromMemory marks on screen what no document was at hand for.
func fromMemory(a sum.Answer) string {
	if strings.Contains(a.Source, sum.FromMemory) || strings.Contains(a.Formula, sum.FromMemory) {
		return words.L("partly from memory")
	}
	return ""
}
