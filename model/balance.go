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
	Lines     []kept         `json:"lines"`            // those in force, then those that an undo would bring back
	Trails    map[int][]walk `json:"trails,omitempty"` // by line, oldest first
	Scenes    []*Scene       `json:"scenes"`
	Held      []string       `json:"held,omitempty"`
	Visitors  []string       `json:"visitors,omitempty"`
	Restocked map[string]int `json:"restocked,omitempty"`
	Seen      Vector         `json:"seen"`
	Folded    int            `json:"folded"`
}

// kept is a line in its stored form.
type kept struct {
	*Line
	Touched int       `json:"tc,omitempty"`
	Undo    *keptUndo `json:"u,omitempty"`
}

// keptUndo is an undo in its stored form. Each pair of Before is a line and
// where its former value stands in balance.Lines.
type keptUndo struct {
	N      int      `json:"n"`
	From   Place    `json:"f"`
	To     Place    `json:"t"`
	Scene  string   `json:"s,omitempty"`
	Before [][2]int `json:"b"`
}

// walk is a step of a line's history in its stored form.
type walk struct {
	N     int   `json:"n"`
	From  Place `json:"f"`
	Claim Claim `json:"c"`
}

// balanceFormat changes with the meaning of the stored form; an older balance
// is made anew from the entries.
const balanceFormat = 2

// MarshalBalance writes the board as a balance that RestoreBalance reads: all
// that an entry can ask for whose writer had seen what is in it.
func (s *State) MarshalBalance() ([]byte, error) {
	b := balance{Format: balanceFormat, Dept: s.Dept, Scenes: s.scenes, Held: s.held, Visitors: s.visitors,
		Restocked: s.restocked, Seen: s.seen, Folded: s.folded, Trails: map[int][]walk{}}
	if s.want != s.Dept && len(s.held) > 0 {
		b.Want = s.want
	}
	all, at := slices.Clone(s.lines), map[*Line]int{}
	for i, l := range s.lines {
		at[l] = i
		if trail := l.trail(); len(trail) > 0 {
			b.Trails[i] = trail
		}
	}
	for k := 0; k < len(all); k++ { // all grows by what the undos of its lines bring back
		l := all[k]
		line := kept{Line: l, Touched: l.touched}
		if u := l.undo; u != nil && u.entry == l.touched && u.entry > s.barrier {
			line.Undo = &keptUndo{N: u.move.n, From: u.move.from, To: u.move.claim.Place, Scene: u.scene}
			for _, was := range u.before {
				if _, known := at[was.was]; !known {
					at[was.was], all = len(all), append(all, was.was)
				}
				line.Undo.Before = append(line.Undo.Before, [2]int{was.line, at[was.was]})
			}
		}
		b.Lines = append(b.Lines, line)
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
		to := h.claim.Place
		there := l.N(to) > 0
		if (there || h == l.hist) && !met[to] {
			out = append(out, walk{h.n, h.from, h.claim})
		}
		if there {
			met[to] = true
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
		len(b.Lines) < len(b.Dept.Items) || slices.Contains(b.Scenes, nil) {
		return nil, false
	}
	s := &State{Dept: b.Dept.Index(), scenes: b.Scenes, held: b.Held, visitors: b.Visitors,
		restocked: b.Restocked, seen: b.Seen, folded: b.Folded}
	if !s.restoreLines(b.Lines) {
		return nil, false
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
			s.lines[i].hist = &step{prev: s.lines[i].hist, n: w.N, from: w.From, claim: w.Claim}
		}
	}
	return s, true
}

// restoreLines takes the lines in force in, and links the others to them.
func (s *State) restoreLines(all []kept) bool {
	n := len(s.Dept.Items)
	for _, k := range all {
		if k.Line == nil {
			return false
		}
		k.touched = k.Touched
		if k.Undo == nil {
			continue
		}
		k.undo = &undo{move: &step{n: k.Undo.N, from: k.Undo.From, claim: Claim{Place: k.Undo.To}}, scene: k.Undo.Scene, entry: k.Touched}
		for _, b := range k.Undo.Before {
			if b[0] < 0 || b[0] >= n || b[1] < 0 || b[1] >= len(all) || all[b[1]].Line == nil {
				return false
			}
			k.undo.before = append(k.undo.before, saved{b[0], all[b[1]].Line})
		}
	}
	for _, k := range all[:n] {
		s.lines = append(s.lines, k.Line)
	}
	return true
}
