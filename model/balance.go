package model

import (
	"encoding/json"
	"slices"
)

// balance is the stored form of a State: what a closed scene leaves, so that
// starting does not fold the years before it. It is a cache; the entries give
// the same.
type balance struct {
	Format    int            `json:"format"`
	Dept      *Department    `json:"dept"`
	Want      *Department    `json:"want,omitempty"`
	Lines     []*Line        `json:"lines"`
	Trails    map[int][]walk `json:"trails,omitempty"` // by line, oldest first
	Scenes    []*Scene       `json:"scenes"`
	Heir      string         `json:"heir,omitempty"`
	Held      []string       `json:"held,omitempty"`
	Visitors  []string       `json:"visitors,omitempty"`
	Restocked map[string]int `json:"restocked,omitempty"`
	Seen      Vector         `json:"seen"`
	Folded    int            `json:"folded"`
}

// walk is a step of a line's history in its stored form.
type walk struct {
	N     int   `json:"n"`
	From  Place `json:"f"`
	Num   int   `json:"i"`
	Claim Claim `json:"c"`
}

// balanceFormat changes with the meaning of the stored form; an older balance
// is made anew from the entries.
const balanceFormat = 1

// MarshalBalance writes the board as a balance that RestoreBalance reads. How
// to undo what came before is not in it.
func (s *State) MarshalBalance() ([]byte, error) {
	b := balance{Format: balanceFormat, Dept: s.Dept, Lines: s.lines, Scenes: s.scenes, Heir: s.heir, Held: s.held,
		Visitors: s.visitors, Restocked: s.restocked, Seen: s.seen, Folded: s.folded, Trails: map[int][]walk{}}
	if s.want != s.Dept && len(s.held) > 0 {
		b.Want = s.want
	}
	for i, l := range s.lines {
		if trail := l.trail(); len(trail) > 0 {
			b.Trails[i] = trail
		}
	}
	return json.Marshal(b)
}

// trail is what a settle or a contest may still ask of the line's history,
// when all its moves have been seen by everybody: the last move, and the last
// one to each place where pieces are.
func (l *Line) trail() []walk {
	var out []walk
	met := map[Place]bool{}
	for h := l.hist; h != nil && len(met) < len(l.Stacks); h = h.prev {
		there := l.N(h.to) > 0
		if (there || h == l.hist) && !met[h.to] {
			out = append(out, walk{h.n, h.from, h.num, h.claim})
		}
		if there {
			met[h.to] = true
		}
	}
	slices.Reverse(out)
	return out
}

// RestoreBalance reads what MarshalBalance wrote. It answers false for
// anything else: then the entries are folded instead.
func RestoreBalance(data []byte) (*State, bool) {
	var b balance
	if json.Unmarshal(data, &b) != nil || b.Format != balanceFormat || b.Dept == nil || len(b.Scenes) == 0 ||
		len(b.Lines) != len(b.Dept.Items) {
		return nil, false
	}
	s := &State{Dept: b.Dept.Index(), lines: b.Lines, scenes: b.Scenes, heir: b.Heir, held: b.Held, visitors: b.Visitors,
		restocked: b.Restocked, seen: b.Seen, folded: b.Folded, barrier: b.Folded}
	for _, l := range s.lines {
		if l == nil {
			return nil, false
		}
	}
	if s.want = s.Dept; b.Want != nil {
		s.want = b.Want.Index()
	}
	if s.restocked == nil {
		s.restocked = map[string]int{}
	}
	if s.seen == nil {
		s.seen = Vector{}
	}
	for i, trail := range b.Trails {
		if i < 0 || i >= len(s.lines) {
			return nil, false
		}
		for _, w := range trail {
			s.lines[i].hist = &step{prev: s.lines[i].hist, n: w.N, from: w.From, to: w.Claim.Place, num: w.Num, claim: w.Claim}
		}
	}
	return s, true
}
