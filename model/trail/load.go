package trail

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"tarpside/model"
)

// The numbers of a pack.
const (
	Share     = 0.30  // of the body's weight, clothing and gear included (US Army ADP 3-90, as quoted)
	BodyLb    = 180.0 // a member of whom nothing is known (the worked example)
	OwnGearLb = 18.0  // own clothing and gear (the worked example, from memory)
	handsLb   = 0.005 // pounds below which a difference is none
)

// A Carrier is one who walks along. Guessed: the body's weight or the gear's
// is the usual one, not this member's.
type Carrier struct {
	Member, Name  string
	BodyLb, OwnLb float64
	Most          float64 // the limit that was agreed with the carrier; nought where it is worked out
	Guessed       bool
}

// The columns of the members' table that hold them, if a department keeps
// them. They are the member's own business: no table of ours asks for them.
const (
	bodyColumn = "body_lb"
	gearColumn = "own_gear_lb"
)

// CarrierOf is a member as a carrier.
func CarrierOf(m *model.Member) Carrier {
	c := Carrier{Member: m.ID, Name: m.Name, BodyLb: BodyLb, OwnLb: OwnGearLb}
	body, ok := pounds(m.Extra[bodyColumn], 70, 500)
	gear, also := pounds(m.Extra[gearColumn], 0, 100)
	if ok {
		c.BodyLb = body
	}
	if also {
		c.OwnLb = gear
	}
	c.Guessed = !ok || !also
	return c
}

// pounds reads a weight; ok is false where there is none or it cannot be one.
func pounds(text string, low, high float64) (float64, bool) {
	x, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	return x, err == nil && x >= low && x <= high
}

// Limit is what the carrier can take of the team's gear, in pounds: what was
// agreed, else 30 % of the body's weight less what is worn.
func (c Carrier) Limit() float64 {
	if c.Most > 0 && c.Most < 1000 {
		return c.Most
	}
	if x := Share*c.BodyLb - c.OwnLb; x > 0 && x < 1000 {
		return x
	}
	return 0
}

// A Part is what of a line one carrier has: pieces, or a share of one piece
// that several carry.
type Part struct {
	Line   int // position in the list
	N      int
	Shared int // so many carry one piece together; 0 or 1: alone
	Lb     float64
}

// A Pack is what one carrier carries.
type Pack struct {
	Carrier
	Parts []Part
	Lb    float64
}

// Over is how far the pack is above the carrier's limit, in pounds.
func (p Pack) Over() float64 { return math.Max(0, sumUp(p.Lb-p.Limit())) }

// A Load is a list shared out.
type Load struct {
	Packs   []Pack
	Lb      float64 // of the list
	Limit   float64 // what all can take together
	Guessed int     // lines with a weight that is not wholly known
	Left    []int   // lines that nobody carries, as there is nobody
}

// Over is how far the list is above what all can take, in pounds.
func (l Load) Over() float64 { return math.Max(0, sumUp(l.Lb-l.Limit)) }

// Packs shares the lines that go along out: the heaviest piece first, each to
// whoever has most room left. What is for two, or is heavier than any one may
// take, goes to as many as it needs. One who drops out is left off the list
// of people, and the rest is shared anew.
func Packs(lines []Line, people []Carrier) Load {
	out := Load{Packs: make([]Pack, len(people))}
	room := make([]float64, len(people))
	biggest := 0.0
	for i, c := range people {
		out.Packs[i].Carrier = c
		room[i] = c.Limit()
		out.Limit += room[i]
		biggest = math.Max(biggest, room[i])
	}
	out.Lb, out.Guessed = Sum(lines)
	for _, i := range heaviestFirst(lines) {
		if len(people) == 0 {
			out.Left = append(out.Left, i)
			continue
		}
		share(&out, room, lines[i], i, biggest)
	}
	return out
}

// heaviestFirst are the lines that go along, by the weight of one piece.
func heaviestFirst(lines []Line) []int {
	var order []int
	for i, l := range lines {
		if l.Need != Stays && l.N > 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(lines[b].Lb, lines[a].Lb) })
	return order
}

// fewPieces is how many handfuls a line is handed out in at most: a list of
// nine thousand cups is not shared cup by cup.
const fewPieces = 200

// share gives the pieces of one line to those with most room.
func share(out *Load, room []float64, l Line, at int, biggest float64) {
	hands := 1
	if l.TwoPerson {
		hands = 2
	}
	if biggest > 0 && l.Lb > biggest {
		hands = max(hands, int(math.Min(4, math.Ceil(l.Lb/biggest))))
	}
	hands = min(hands, len(room))
	step := (l.N + fewPieces - 1) / fewPieces
	for left := l.N; left > 0; left -= step {
		n := min(step, left)
		for _, p := range widest(room, hands) {
			lb := float64(n) * l.Lb / float64(hands)
			room[p] -= lb
			out.Packs[p].take(Part{Line: at, N: n, Shared: hands, Lb: lb})
		}
	}
}

// widest are the k people with most room, the first of equals.
func widest(room []float64, k int) []int {
	var out [4]int
	got := 0
	for got < k {
		best := -1
		for i := range room {
			if !slices.Contains(out[:got], i) && (best < 0 || room[i] > room[best]) {
				best = i
			}
		}
		out[got] = best
		got++
	}
	return slices.Clone(out[:got])
}

// take puts a part into the pack, together with what is there of its line.
func (p *Pack) take(x Part) {
	p.Lb += x.Lb
	if k := len(p.Parts) - 1; k >= 0 && p.Parts[k].Line == x.Line && p.Parts[k].Shared == x.Shared {
		p.Parts[k].N += x.N
		p.Parts[k].Lb += x.Lb
		return
	}
	p.Parts = append(p.Parts, x)
}

// sumUp is a difference of weights without the hair that adding up leaves.
func sumUp(lb float64) float64 {
	if math.Abs(lb) < handsLb {
		return 0
	}
	return lb
}

// A Drop is a proposal to leave pieces of a line on the rig.
type Drop struct {
	Line, N int // position in the list, pieces
	Lb      float64
	Why     string
}

// Drops is what to leave so that the list weighs no more than the limit: the
// lowest need first, and within a need the heaviest piece, as it is needed
// least by the pound. A must is never among them, and none of them is needless:
// without any one of them the list would still be too heavy. Over is how much
// remains too much: more people, or a second walk.
func Drops(lines []Line, limitLb float64) (drops []Drop, over float64) {
	lb, _ := Sum(lines)
	if math.IsNaN(limitLb) || limitLb < 0 {
		limitLb = 0
	}
	over = sumUp(lb - limitLb)
	var order []int
	for i, l := range lines {
		if l.N > 0 && l.Lb > 0 && l.Need != Stays && l.Need != Must {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(lines[a].Need, lines[b].Need), cmp.Compare(lines[b].Lb, lines[a].Lb))
	})
	for _, i := range order {
		if over <= 0 {
			break
		}
		l := lines[i]
		n := int(math.Min(float64(l.N), math.Ceil((over-handsLb)/l.Lb)))
		drops = append(drops, Drop{Line: i, N: n, Why: [...]string{If: "an if", Ask: "a line to ask about", Should: "a should"}[l.Need] + ", least needed by the pound"})
		over -= float64(n) * l.Lb
	}
	drops, over = putBack(drops, lines, over)
	for i := range drops {
		drops[i].Lb = float64(drops[i].N) * lines[drops[i].Line].Lb
	}
	return drops, math.Max(0, sumUp(over))
}

// putBack takes pieces off the proposal that need not stay after all, those
// needed most first.
func putBack(drops []Drop, lines []Line, over float64) ([]Drop, float64) {
	for k := len(drops) - 1; k >= 0 && over < 0; k-- {
		each := lines[drops[k].Line].Lb
		n := int(math.Min(float64(drops[k].N), math.Floor((handsLb-over)/each)))
		drops[k].N -= n
		over += float64(n) * each
	}
	return slices.DeleteFunc(drops, func(d Drop) bool { return d.N == 0 }), over
}
