package model

import "slices"

// Outcome is what the fold saw while it applied an entry. The judge makes the
// reply of it.
type Outcome struct {
	Moves        []Move // what really moved
	NotReady     bool   // pieces came home without passing their own checks
	UnreadInside bool   // a kit came home with a cylinder nobody read
	TaggedOut    bool   // a piece out of service was lifted from its place
	Already      bool   // another device had moved the pieces there
	Contested    bool   // two claims about one line
	Undone       bool   // a correct took the last move back
	NoExtra      bool   // a match found fewer extras than pieces
	NewRig       bool   // the rig or agency is in no table
	RigBack      bool   // a rig that had left is here again
}

// Fold makes the board of a set of entries, whatever their order and however
// often they came.
func Fold(entries []Entry) *State {
	s := NewState(new(Department).Index())
	for _, e := range Sorted(entries) {
		s.Apply(e)
	}
	return s
}

// Apply takes one entry into the board. It refuses nothing: an entry that no
// longer fits moves what it finds, and the line is contested.
func (s *State) Apply(e *Entry) Outcome {
	s.epoch++
	s.folded++
	if n := e.N(); n > s.seen[e.Stamp.Device] {
		s.seen[e.Stamp.Device] = n
	}
	if !e.Taken() {
		return Outcome{}
	}
	line, about := -1, e.Verb.AboutItem()
	if e.Item != "" && (about || e.Verb == Note || e.Verb == Look) {
		line = s.Dept.ItemIndex(e.Item)
	}
	switch {
	case !about:
	case line < 0:
		s.unknown(e)
		return Outcome{}
	case e.Reply.Has(unknownItem): // its writer did not know the line: nothing moves
		return Outcome{}
	}
	a := act{s: s, e: e, scene: s.Scene(e.Scene).ID, line: line}
	if _, ok := Table[e.Verb]; ok && line >= 0 && !(e.Verb == Match && e.From == "") {
		a.moving()
	} else {
		a.still()
	}
	echo := a.out.Already && len(a.out.Moves) == 0 // another device had said the same: nothing new about the line
	if line >= 0 && !a.out.Undone && !echo {
		s.touch(line)
	}
	if len(s.held) > 0 {
		s.release()
	}
	return a.out
}

// unknown remembers a piece that is in no table until a settle says what it was.
func (s *State) unknown(e *Entry) {
	sc := s.editScene(e.Scene)
	if e.Verb == Settle && e.Reply.Word == OK {
		sc.Unknown = without(sc.Unknown, e.Item)
		return
	}
	sc.Unknown = union(sc.Unknown, e.Item)
}

// unknownItem is the reason of an act about a piece that is in no table.
const unknownItem = "unknown_item"

// touch marks that a taken entry was about the line: the moves before it can
// no longer be undone by a correct.
func (s *State) touch(line int) { s.edit(line).touched = s.folded }

// act is one entry being applied.
type act struct {
	s        *State
	e        *Entry
	scene    string
	line     int
	out      Outcome
	answers  []Answer
	arrivals []arrival
}

// arrival is so many pieces of a line that came to their home place.
type arrival struct {
	line, n, tagged int
}

// still applies the verbs that have no from and to of their own.
func (a *act) still() {
	s, e := a.s, a.e
	switch e.Verb {
	case Open:
		s.open(e)
	case Close:
		s.editScene(e.Scene).Closed = true
	case ClearUp:
		s.editScene(e.Scene).ClearUp = true
	case Relieve:
		sc := s.editScene(e.Scene)
		sc.Staging, sc.Since = e.Holder, e.At()
	case Accept:
		sc := s.editScene(e.Scene)
		sc.Accepted = union(sc.Accepted, e.Rig)
	case Arrive:
		a.arrive()
	case Leave:
		sc := s.editScene(e.Scene)
		sc.Left = union(sc.Left, e.Rig)
	case Override:
		sc := s.editScene(e.Scene)
		check := firstWord(e.Reading)
		sc.Overrides = append(slices.Clone(sc.Overrides), Overrule{e.Item, check, e.By})
	case CheckIt:
		a.check()
	case Tag:
		a.tag()
	case Repair:
		a.repair()
	case Count, Vouch, Settle:
		a.worked()
	case Stores:
		s.edited(e.Stores)
	}
}

func firstWord(reading string) string {
	if w := Words(reading); len(w) > 0 {
		return w[0]
	}
	return ""
}

// open starts a scene. It takes over the ground of the scenes it follows and
// forgets what they kept; a scene opened beside another gets ground of its own.
func (s *State) open(e *Entry) {
	sc := &Scene{ID: e.Scene, Name: e.Note, Opened: e.At(), Ground: e.Scene}
	var rest []*Scene
	taken := false
	for _, old := range s.scenes {
		if !slices.Contains(e.Takes, old.ID) {
			rest = append(rest, old)
			continue
		}
		sc.Took = append(append(sc.Took, old.ID), old.Took...)
		if !taken {
			sc.Ground, taken = old.Ground, true
		} else {
			s.reground(old.Ground, sc.Ground)
		}
	}
	s.scenes = append(rest, sc)
	if !taken {
		return
	}
	sc.Took = sc.Took[:min(len(sc.Took), tookKept)]
	s.barrier = s.folded
	alone := !slices.ContainsFunc(rest, func(o *Scene) bool { return !o.Closed })
	for i, l := range s.lines {
		keep := slices.DeleteFunc(slices.Clone(l.Scenes), func(v lineScene) bool { return slices.Contains(e.Takes, v.Scene) })
		peak := l.Peak
		if alone {
			peak = s.away(i)
		}
		if len(keep) != len(l.Scenes) || peak != l.Peak || l.undo != nil {
			l = s.edit(i)
			l.Scenes, l.Peak, l.undo = keep, peak, nil
		}
	}
}

// tookKept is how many scenes back an act of a device that was cut off still
// finds the scene that followed its own.
const tookKept = 32

// reground lays what lies on one scene's ground on another's.
func (s *State) reground(from, to string) {
	if from == to {
		return
	}
	move := func(p *Place) {
		if p.onScene() && p.Ground == from {
			p.Ground = to
		}
	}
	for i, l := range s.lines {
		for _, st := range slices.Clone(l.Stacks) {
			was := st.Place
			if move(&st.Place); st.Place != was {
				l = s.edit(i)
				l.take(was, st.N)
				l.put(st.Place, st.N, st.Holder)
			}
		}
		if l.Contest != nil {
			c := *l.Contest
			c.Claims = slices.Clone(c.Claims)
			move(&c.Place)
			for k := range c.Claims {
				move(&c.Claims[k].Place)
			}
			s.edit(i).Contest = &c
		}
		if l.hist != nil {
			s.edit(i).hist = l.hist.mapped(move)
		}
	}
}

// mapped is the history with its places changed.
func (h *step) mapped(move func(*Place)) *step {
	var all []step
	for ; h != nil; h = h.prev {
		all = append(all, *h)
	}
	var out *step
	for _, c := range slices.Backward(all) {
		move(&c.from)
		move(&c.claim.Place)
		c.prev = out
		out = &c
	}
	return out
}

func (a *act) arrive() {
	s, rig := a.s, a.e.Rig
	sc := s.editScene(a.e.Scene)
	sc.Left = without(sc.Left, rig)
	sc.Arrived = union(sc.Arrived, rig)
	if s.Dept.Rig(rig) == nil && s.Dept.Agency(rig) == nil && !slices.Contains(s.visitors, rig) {
		s.visitors = union(s.visitors, rig)
		a.out.NewRig = true
	}
}

// back notes that a rig which had left is here again.
func (a *act) back(rig string) {
	if sc := a.s.Scene(a.e.Scene); slices.Contains(sc.Left, rig) {
		sc = a.s.editScene(a.e.Scene)
		sc.Left = without(sc.Left, rig)
		sc.Arrived = union(sc.Arrived, rig)
		a.out.RigBack = true
	}
}

// tag takes pieces out of service: those out first, then those in doubt.
func (a *act) tag() {
	l := a.s.edit(a.line)
	home := a.s.HomeOf(a.line)
	n := a.quantity()
	outside := min(n, l.out(home)-l.TaggedOut)
	inside := min(n-outside, l.N(home)-l.TaggedHome)
	l.TaggedOut += outside
	l.TaggedHome += inside
	l.Doubt -= min(inside, l.Doubt)
	l.TagWords = a.e.Reading
	if l.TagWords == "" {
		l.TagWords = a.e.Note
	}
}

// repair takes tags off, those in the home place first.
func (a *act) repair() {
	l := a.s.edit(a.line)
	n := a.quantity()
	inside := min(n, l.TaggedHome)
	l.TaggedHome -= inside
	l.TaggedOut -= min(n-inside, l.TaggedOut)
	l.Open = nil
}

func (a *act) quantity() int {
	if a.e.Quantity == Blank {
		return 1
	}
	return a.e.Quantity
}

// check looks at pieces: those out first, then untagged ones in the home place.
func (a *act) check() {
	l := a.s.lines[a.line]
	n := a.quantity() - a.s.Out(a.line)
	a.read()
	a.looked(min(max(0, n), l.N(a.s.HomeOf(a.line))-l.TaggedHome))
}

// read takes the answers of the entry in: a failing one opens its check, a
// passing one closes it.
func (a *act) read() {
	a.answers, _ = ParseReading(a.s.Dept, a.e.Reading, a.e.Verb == Stow)
	for _, ans := range a.answers {
		if _, own := a.s.Dept.Items[a.line].Ask(ans.Check); !own {
			continue
		}
		pass := a.s.Passes(a.line, ans)
		l := a.s.edit(a.line)
		l.setOpen(ans.Check, !pass)
		v := l.scene(a.scene)
		if pass {
			v.Passed = union(v.Passed, ans.Check)
		} else {
			v.Passed = without(v.Passed, ans.Check)
		}
		l.setScene(v)
	}
}

// looked puts at least k pieces in the home place in doubt where an answer
// failed, and takes k out of doubt where none of the checks is open any more.
func (a *act) looked(k int) {
	var failing []string
	own := false
	for _, ans := range a.answers {
		if _, ok := a.s.Dept.Items[a.line].Ask(ans.Check); ok {
			own = true
			if !a.s.Passes(a.line, ans) {
				failing = append(failing, ans.Check+"="+ans.Word)
			}
		}
	}
	if !own || k <= 0 {
		return
	}
	l := a.s.edit(a.line)
	switch {
	case len(failing) > 0 && l.Doubt < k:
		l.addDoubt(k-l.Doubt, false, failing)
	case len(failing) > 0:
		l.Waved = false
		l.DoubtWords = union(l.DoubtWords, failing...)
	case len(l.Open) == 0:
		l.Doubt -= min(k, l.Doubt)
	}
}
