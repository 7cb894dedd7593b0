package model

import (
	"maps"
	"slices"
	"strings"
)

// Row is one line of the table of moving verbs: the kinds of place that a
// verb takes from and brings to. Lifting verbs are marked where two people
// are needed.
type Row struct {
	From, To []PlaceKind
	Lifting  bool
}

var (
	ground   = []PlaceKind{Home, InKit, Tarp, At}
	anywhere = PlaceKinds
	stowed   = []PlaceKind{Home, InKit}
)

// Table says, for every moving verb, from where to where it may move.
var Table = map[Verb]Row{
	PullOff:    {stowed, []PlaceKind{Tarp}, true},
	Direct:     {stowed, []PlaceKind{At}, true},
	Hand:       {[]PlaceKind{Tarp}, []PlaceKind{At}, true},
	MoveTo:     {[]PlaceKind{At}, []PlaceKind{At}, true},
	Return:     {[]PlaceKind{At}, []PlaceKind{Tarp}, true},
	TakeOut:    {[]PlaceKind{InKit}, []PlaceKind{Tarp, At}, true},
	Use:        {ground, []PlaceKind{Used}, false},
	Handover:   {ground, []PlaceKind{With}, true},
	Lend:       {ground, []PlaceKind{With}, true},
	Bag:        {append([]PlaceKind{Riding}, ground...), []PlaceKind{Bagged}, true},
	Charge:     {ground, []PlaceKind{Charging}, true},
	Stow:       {[]PlaceKind{Tarp, At}, stowed, true},
	StowTagged: {[]PlaceKind{Tarp, At}, stowed, true},
	Unstow:     {stowed, []PlaceKind{Tarp}, true},
	Carry:      {[]PlaceKind{Tarp, At}, []PlaceKind{Riding}, true},
	TakeBack:   {[]PlaceKind{Riding, With}, []PlaceKind{Tarp}, true},
	Found:      {[]PlaceKind{Unexplained, Lost, At}, []PlaceKind{Tarp, At}, false},
	Locate:     {[]PlaceKind{Unexplained, Lost}, []PlaceKind{Tarp, At, With, Riding}, false},
	StopLook:   {[]PlaceKind{Unexplained}, []PlaceKind{Lost}, false},
	Match:      {[]PlaceKind{Unexplained}, []PlaceKind{Riding}, false},
	Seen:       {anywhere, anywhere, false},
	Correct:    {anywhere, anywhere, false},
	Restock:    {[]PlaceKind{Used, Lost}, stowed, false},
	Recharge:   {[]PlaceKind{Charging}, stowed, false},
	Clean:      {[]PlaceKind{Bagged}, stowed, false},
	BringBack:  {[]PlaceKind{With, Riding}, stowed, false},
}

// Trace is where the pieces for a move are: at the place itself, or where
// devices that the writer had not heard of put them.
type Trace struct {
	Here    int        // at the place itself
	Gone    []Followed // taken from there by others, newest first
	Missing int        // found nowhere
	Already bool       // the others put them where this move puts them
	All     bool       // what was followed is still where it was put
}

// Followed is a move of another device that took pieces away.
type Followed struct {
	N     int
	Claim Claim
}

// Trace looks for n pieces of a line at a place, following unseen moves of
// other devices. Verbs that report what eyes see do not follow.
func (s *State) Trace(e *Entry, line, n int, from, to Place) Trace {
	l := s.lines[line]
	t := Trace{Here: min(n, l.N(from))}
	t.Missing = n - t.Here
	if t.Missing == 0 || e.Verb == Seen || e.Verb == Correct || e.Verb == Settle {
		return t
	}
	for h := l.hist; h != nil && t.Missing > 0; h = h.prev {
		if h.from == from && h.claim.Device != e.Stamp.Device && !e.Seen.Covers(h.claim.Device, h.claim.N) {
			k := min(h.n, t.Missing)
			t.Gone = append(t.Gone, Followed{k, h.claim})
			t.Missing -= k
		}
	}
	t.Already, t.All = true, true
	for p, k := range t.perPlace() {
		t.Already = t.Already && p == to
		t.All = t.All && l.N(p) >= k
	}
	t.Already = t.Already && t.All
	return t
}

// perPlace adds up what was followed by where it was put.
func (t *Trace) perPlace() map[Place]int {
	m := map[Place]int{}
	for _, g := range t.Gone {
		m[g.Claim.Place] += g.N
	}
	return m
}

// Sources is what moves, place by place, when a move is applied as traced.
func (t *Trace) Sources(from, to Place) []Stack {
	var out []Stack
	if t.Here > 0 {
		out = append(out, Stack{Place: from, N: t.Here})
	}
	if t.Already || t.Missing > 0 || !t.All {
		if !t.Already && t.Missing == 0 && len(t.Gone) > 0 {
			return nil // moved on and not all found: nothing moves, the claim is kept
		}
		return out
	}
	sum := t.perPlace()
	for _, g := range t.Gone {
		if n := sum[g.Claim.Place]; n > 0 && g.Claim.Place != to {
			out = append(out, Stack{Place: g.Claim.Place, N: n})
			delete(sum, g.Claim.Place)
		}
	}
	return out
}

// moving applies a verb of the table: one line from one place to another.
func (a *act) moving() {
	s, e := a.s, a.e
	from, errFrom := s.Resolve(e.From, a.line, e.Scene)
	to, errTo := s.Resolve(e.To, a.line, e.Scene)
	if errFrom != nil || errTo != nil {
		return
	}
	n := a.quantity()
	if e.Verb == Correct && a.undo(n, from, to) {
		return
	}
	if from == to { // eyes on pieces where the log has them
		if s.lines[a.line].N(from) >= n {
			a.ended(a.line, from, to)
		}
		a.read()
		k := 0
		if from == s.HomeOf(a.line) {
			k = min(n, s.lines[a.line].N(from)-s.lines[a.line].TaggedHome)
		}
		a.looked(k)
		return
	}
	before := s.snapshot(a.line)
	plain := a.transfer(a.line, n, from, to)
	if len(a.out.Moves) > 0 {
		a.rigBack(from, to)
	}
	if e.Verb.reads() {
		a.read()
	}
	a.verdict()
	a.home()
	switch e.Verb {
	case Match:
		a.takeExtras(to.Name)
	case Restock:
		a.takeStock()
	}
	if plain && len(a.out.Moves) == 1 && e.Verb != Match && e.Verb != Restock {
		l := s.edit(a.line)
		l.undo = &undo{move: l.hist, scene: a.scene, entry: s.folded, before: before}
	}
}

// transfer moves pieces as they are traced and keeps the contest of the line.
// It tells whether the move was a plain one.
func (a *act) transfer(line, n int, from, to Place) bool {
	s, e := a.s, a.e
	t := s.Trace(e, line, n, from, to)
	switch {
	case t.Missing == 0 && len(t.Gone) == 0:
		a.ended(line, from, to)
		a.shift(line, n, from, to)
		return true
	case t.Missing == 0 && t.Already:
		a.out.Already = true
		for _, st := range t.Sources(from, to) {
			a.shift(line, st.N, st.Place, to)
		}
		return true
	}
	a.out.Contested = true
	claims := []Claim{a.claim(to, e.Holder)}
	for _, g := range t.Gone {
		claims = append(claims, g.Claim)
	}
	place := to
	if sources := t.Sources(from, to); t.Missing == 0 && (len(sources) > 0 || t.All) {
		for _, st := range sources {
			a.shift(line, st.N, st.Place, to)
		}
	} else if t.Missing == 0 {
		place = t.Gone[0].Claim.Place
	} else { // it no longer fits at the merge: it moves what it finds
		if h := s.lines[line].hist; h != nil {
			place = h.claim.Place
			claims = append(claims, h.claim)
		} else {
			place = from
		}
		for _, st := range t.Sources(from, to) {
			a.shift(line, st.N, st.Place, to)
		}
	}
	s.edit(line).Contest = &Contest{Place: place, Device: e.Stamp.Device, N: e.N(), Claims: claims,
		Told: e.Reply.Word == Contested}
	return false
}

// ended ends a contest: a moving entry or a driver's word that finds enough,
// and whose writer knew of it. A count only compares. Where the writer did not
// know, the pieces that it moves are disputed where they are now.
func (a *act) ended(line int, from, to Place) {
	c := a.s.lines[line].Contest
	switch {
	case c == nil || a.e.Verb == Count:
	case a.e.Seen.Covers(c.Device, c.N) && a.knew(c):
		a.s.edit(line).Contest = nil
	case !c.Told && c.Place == from:
		moved := *c
		moved.Place = to
		a.s.edit(line).Contest = &moved
	}
}

// knew tells whether the writer could know of the contest. One that came to
// light only when two logs met is known to who had seen all of its claims:
// the device that wrote the later one did not know of the other.
func (a *act) knew(c *Contest) bool {
	return c.Told || !slices.ContainsFunc(c.Claims, func(x Claim) bool { return !a.e.Seen.Covers(x.Device, x.N) })
}

// claim is what the entry says of where pieces went.
func (a *act) claim(to Place, holder string) Claim {
	e := a.e
	return Claim{Place: to, Device: e.Stamp.Device, N: e.N(), By: e.By, Holder: holder, At: e.At()}
}

// rigBack notes a rig that had left and whose pieces show that it is here.
func (a *act) rigBack(from, to Place) {
	s, owner := a.s, a.s.Dept.Items[a.line].Rig
	switch a.e.Verb {
	case PullOff, Direct, Use, TakeOut, Handover, Lend, Unstow, Charge, Bag:
		if s.Real(from).Kind == Home {
			a.back(owner)
		}
	case Stow, StowTagged:
		if s.Real(to).Kind == Home {
			a.back(owner)
		}
	case Carry:
		a.back(to.Name)
	}
}

// takeExtras settles the other rig's extras against the pieces found there.
func (a *act) takeExtras(rig string) {
	s, n := a.s, 0
	for _, m := range a.out.Moves {
		n += m.N
	}
	family := s.Dept.Items[a.line].Family
	var lines []int
	for i := range s.Dept.Items {
		if it := &s.Dept.Items[i]; it.Rig == rig && it.Family == family && family != "" {
			lines = append(lines, i)
		}
	}
	slices.SortFunc(lines, func(x, y int) int { return strings.Compare(s.Dept.Items[x].ID, s.Dept.Items[y].ID) })
	for _, i := range lines {
		v := s.lines[i].scene(a.scene)
		if k := min(n, v.Extra); k > 0 {
			v.Extra -= k
			n -= k
			s.edit(i).setScene(v)
			s.touch(i)
		}
	}
	a.out.NoExtra = n > 0
}

// takeStock takes as many from the line's stock as were brought home.
func (a *act) takeStock() {
	stock := a.s.Dept.Items[a.line].Stock
	if stock == "" {
		return
	}
	taken := maps.Clone(a.s.restocked)
	for _, m := range a.out.Moves {
		taken[stock] += m.N
	}
	a.s.restocked = taken
}

// SettleMoves works out what must come so that n pieces of a contested line
// are at a place where eyes have them: from where the winning claim put them,
// then from where the line's moves did, newest first. It answers false if
// that is too few.
func (s *State) SettleMoves(line, n int, to Place) ([]Move, bool) {
	l := s.lines[line]
	win := l.Contest.Place
	if to == win {
		n -= l.N(to)
	}
	var moves []Move
	var asked []Place
	from := func(p Place) {
		if k := min(n, l.N(p)); k > 0 && p != to && !slices.Contains(asked, p) {
			moves = append(moves, Move{s.Dept.Items[line].ID, k, p, to})
			n -= k
		}
		asked = append(asked, p)
	}
	from(win)
	for h := l.hist; h != nil && n > 0; h = h.prev {
		from(h.claim.Place)
	}
	return moves, n <= 0
}
