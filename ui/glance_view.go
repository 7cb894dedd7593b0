package ui

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// glanceView is everything on Glance, as values.
type glanceView struct {
	Sentence string
	Bands    []bandView
	Away     string // what is with others, on a charger, bagged: one line
	Gauges   []gaugeView
	Unread   string // pieces at work with a gauge that nobody has read
	Sent     []sentView
	Free     []freeView
	Also     []freeView // while nothing is out: those that have no room at the foot
	Alert    alertView
}

// bandView is one place of the scene and what is there.
type bandView struct {
	Place         string // as in the parts file: "at:V2"
	Name          string
	Lines, Pieces int
	Names         []bandName // key pieces first
}

// bandName is a line at a place, or several numbered ones of a kind.
type bandName struct {
	Mark   parts.MarkView
	Name   string // in a column: "Recip saw 1, P71 crew"
	Said   string // in the sentence of the rest: "20 crib blocks 4x4x20"
	Lines  int
	Key    bool // to be named before the others
	Tagged bool

	stem    string   // of several: their name without the number
	numbers []string // "1", "2"
}

// mostAlso is how many families stand above the foot at most.
const mostAlso = 40

// glance makes the view, with room for so many families at the foot.
func (n *now) glance(cells int) glanceView {
	figures := n.figures()
	v := glanceView{Sentence: n.age(), Bands: n.bands(), Away: n.awayLine(), Alert: n.alert(figures)}
	v.Gauges, v.Unread = n.gaugeViews(figures)
	if len(v.Bands) > 0 {
		v.Free = n.free(cells)
	} else {
		all := n.free(cells + mostAlso)
		v.Free, v.Also = all[:min(cells, len(all))], all[min(cells, len(all)):]
	}
	for _, r := range n.present() {
		v.Sent = append(v.Sent, n.sent(r))
	}
	return v
}

// lastEntry is when the newest entry of the scene happened, Unix
// milliseconds; 0 if there is none.
func (n *now) lastEntry() int64 {
	var last int64
	for i := range n.pic.Entries {
		if e := &n.pic.Entries[i]; e.Scene == n.scene.ID && e.Taken() && e.Verb != model.Stores {
			last = max(last, e.At())
		}
	}
	return last
}

// staleAfter is how old the data may be before the page says so, in minutes.
const staleAfter = 5

// stale tells whether a scene is on and nothing was logged for a while.
func (n *now) stale() bool {
	return n.scene.ID != "" && !n.scene.Closed && n.ageMinutes() > staleAfter
}

func (n *now) ageMinutes() int {
	if last := n.lastEntry(); last > 0 {
		return int((n.at.UnixMilli() - last) / 60000)
	}
	return 0
}

// age says how old the data is.
func (n *now) age() string {
	last := n.lastEntry()
	switch min := n.ageMinutes(); {
	case last == 0:
		return words.L("Nothing is logged yet")
	case min < 1:
		return words.F("Last entry under a minute ago, %s", n.clock(last))
	case min <= staleAfter:
		return words.F("Last entry %d min ago, %s", min, n.clock(last))
	case min < 120:
		return words.F("Data is %d min old. Last entry %s", min, n.clock(last))
	default:
		return words.F("Data is %d hours old. Last entry %s", min/60, n.clock(last))
	}
}

// bands are the places where something is: those where work is done, the
// busiest first, then the tarp, where pieces wait.
func (n *now) bands() []bandView {
	at := map[model.Place]*bandView{}
	lines := map[model.Place][]model.PlaceRow{}
	for _, c := range n.s.Checkpoints() {
		if c.Place.Ground != n.scene.Ground || c.Place.Kind != model.Tarp && c.Place.Kind != model.At {
			continue
		}
		if at[c.Place] == nil {
			at[c.Place] = &bandView{Place: c.Place.String(), Name: n.placeName(c.Place)}
		}
		at[c.Place].Lines += c.Lines
		at[c.Place].Pieces += c.Pieces
	}
	for _, r := range n.books() {
		lines[r.Place] = append(lines[r.Place], r)
	}
	var out []bandView
	for p, b := range at {
		b.Names = n.bandNames(lines[p])
		out = append(out, *b)
	}
	slices.SortFunc(out, func(a, b bandView) int {
		tarp := string(model.Tarp)
		if (a.Place == tarp) != (b.Place == tarp) {
			if a.Place == tarp {
				return 1
			}
			return -1
		}
		return cmp.Or(b.Lines-a.Lines, b.Pieces-a.Pieces, strings.Compare(a.Name, b.Name))
	})
	return out
}

// bandNames orders what is at a place: critical tools, other tools and kits,
// what is counted, what is out of service.
func (n *now) bandNames(rows []model.PlaceRow) []bandName {
	rank := func(r model.PlaceRow) int {
		it := &n.d.Items[r.Line]
		single := it.Kind == model.Piece || it.Kind == model.Kit
		switch {
		case n.s.Line(r.Line).TaggedOut > 0 || stagingTarp(it):
			return 3
		case single && it.Critical:
			return 0
		case single || it.Critical:
			return 1
		}
		return 2
	}
	slices.SortStableFunc(rows, func(a, b model.PlaceRow) int { return cmp.Or(rank(a)-rank(b), a.Line-b.Line) })
	var out []bandName
	for _, r := range rows {
		it := &n.d.Items[r.Line]
		who := n.crewOf(r.Holder, it.Rig)
		b := bandName{Mark: n.mark(it.Rig), Name: it.Short(), Said: some(it, r.Quantity), Lines: 1, Key: rank(r) < 2}
		if it.Quantity > 1 {
			b.Name += fmt.Sprintf(", %d", r.Quantity)
		}
		if t := n.s.Line(r.Line).TaggedOut; t > 0 {
			b.Name, b.Said, b.Tagged = words.F("%s, tagged", b.Name), words.F("%s tagged", b.Said), true
		}
		if who != "" {
			b.Name, b.Said = b.Name+", "+who, words.F("%s with %s", b.Said, who)
		}
		if k := len(out) - 1; k >= 0 && sameSeries(&out[k], b) {
			continue
		}
		out = append(out, b)
	}
	return out
}

// mostSeries is how many numbers stand in one name.
const mostSeries = 4

// sameSeries joins "Medium strut 2" to "Medium strut 1", where both are alike
// but for the number.
func sameSeries(a *bandName, b bandName) bool {
	stem, num := splitNumber(b.Name)
	if num == "" || a.Lines >= mostSeries || a.Mark != b.Mark || a.Key != b.Key {
		return false
	}
	if a.Lines == 1 {
		var first string
		if a.stem, first = splitNumber(a.Name); first != "" {
			a.numbers = []string{first}
		}
	}
	if a.stem != stem || len(a.numbers) == 0 {
		return false
	}
	a.numbers = append(a.numbers, num)
	a.Name = many(stem) + " " + listed(a.numbers)
	a.Said = low(a.Name)
	a.Lines += b.Lines
	return true
}

// splitNumber cuts the number off the end of a name.
func splitNumber(name string) (stem, num string) {
	cut := strings.LastIndexByte(name, ' ')
	if cut < 0 || strings.Trim(name[cut+1:], "0123456789") != "" {
		return name, ""
	}
	return name[:cut], name[cut+1:]
}

// awayLine is what has left the scene, in one line: "3 with Medic 9, 2 bagged".
func (n *now) awayLine() string {
	count := map[string]int{}
	for _, r := range n.books() {
		switch r.Place.Kind {
		case model.With:
			count[words.F("with %s", n.partyName(r.Place.Name))] += r.Quantity
		case model.Riding:
			count[words.F("on %s", n.partyName(r.Place.Name))] += r.Quantity
		case model.Charging:
			count[words.L("charging")] += r.Quantity
		case model.Bagged:
			count[words.L("bagged")] += r.Quantity
		}
	}
	var out []string
	for _, who := range slices.Backward(slices.Sorted(maps.Keys(count))) {
		out = append(out, fmt.Sprintf("%d %s", count[who], who))
	}
	return strings.Join(out, ", ")
}

// freeView is a family of which somebody may ask "have we got a free one".
type freeView struct {
	Family string
	Name   string
	Count  int
	Whose  []freeMark // rigs that have one
	OnTarp bool       // all that are free lie on the tarp
}

type freeMark struct {
	Mark parts.MarkView
	N    int
}

// free counts what can be had at once: ready in its slot on a rig that is
// here, or on the tarp without a tag and without an open check. The families
// with the most acts in the scene are shown, in the order of the table.
func (n *now) free(most int) []freeView {
	acts := n.actsByFamily()
	lines := map[string][]int{}
	var order []string
	for i := range n.d.Items {
		it := &n.d.Items[i]
		if it.Family == "" || it.Kind == model.Consumable || stagingTarp(it) {
			continue
		}
		if it.Critical && !slices.Contains(order, it.Family) {
			order = append(order, it.Family)
		}
		lines[it.Family] = append(lines[it.Family], i)
	}
	slices.SortStableFunc(order, func(a, b string) int { return acts[b] - acts[a] })
	order = order[:min(len(order), most)]
	slices.SortFunc(order, func(a, b string) int { return lines[a][0] - lines[b][0] })
	var out []freeView
	for _, f := range order {
		out = append(out, n.freeOf(f, lines[f]))
	}
	return out
}

func (n *now) freeOf(family string, lines []int) freeView {
	v := freeView{Family: family}
	by := map[string]int{}
	home := 0
	var same []int
	for _, i := range lines {
		it, l := &n.d.Items[i], n.s.Line(i)
		ready := 0
		if n.atScene(it.Rig) {
			ready = n.s.ReadyNow(i)
		}
		tarp := 0
		if len(l.Open) == 0 {
			tarp = max(l.N(model.Place{Kind: model.Tarp, Ground: n.scene.Ground})-l.TaggedOut, 0)
		}
		by[it.Rig] += ready + tarp
		home += ready
		v.Count += ready + tarp
		if it.Rig == n.d.Items[lines[0]].Rig {
			same = append(same, i) // named as the first rig names it
		}
	}
	v.Name = n.familyName(same)
	v.OnTarp = v.Count > 0 && home == 0
	for _, r := range n.rigs() {
		if by[r] > 0 {
			v.Whose = append(v.Whose, freeMark{n.mark(r), by[r]})
		}
	}
	return v
}

// stagingTarp tells whether a line is the tarp that the pieces lie on.
func stagingTarp(it *model.Item) bool {
	return strings.Contains(strings.ToLower(it.Name), "staging tarp")
}

// actsByFamily counts the moves of the scene by family.
func (n *now) actsByFamily() map[string]int {
	out := map[string]int{}
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if e.Scene != n.scene.ID || !e.Taken() {
			continue
		}
		for _, m := range e.Moves {
			if it := n.d.Item(m.Item); it != nil && it.Family != "" {
				out[it.Family]++
			}
		}
	}
	return out
}
