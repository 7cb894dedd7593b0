package model

import "slices"

// shift moves pieces that are there, with everything that rides on it: tags,
// doubts, the holder, what was past the tarp, and what is in a kit.
func (a *act) shift(line, n int, from, to Place) {
	s := a.s
	if n <= 0 {
		return
	}
	realFrom := s.Real(from)
	l := s.edit(line)
	home := s.HomeOf(line)
	tagged := a.leave(l, n, from, to, home)
	if from.Kind == Used {
		a.leaveUsed(l, n)
	}
	l.take(from, n)
	l.put(to, n, a.e.Holder)
	switch {
	case to == home:
		l.TaggedHome += tagged
	case !to.gone():
		l.TaggedOut += tagged
	}
	if to.Kind == Used && a.e.Verb == Count {
		v := l.scene(a.scene)
		v.Found += n
		l.setScene(v)
	}
	l.hist = &step{prev: l.hist, n: n, from: from, claim: a.claim(to, a.e.Holder)}
	a.travel(line, realFrom, s.Real(to))
	if to == home {
		a.arrivals = append(a.arrivals, arrival{line, n, tagged})
	}
	a.out.Moves = append(a.out.Moves, Move{s.Dept.Items[line].ID, n, from, to})
}

// leave decides which pieces go: from the home place the sound ones first,
// then those in doubt, then tagged ones; elsewhere the untagged first, but a
// stow_tagged brings the tagged. It returns how many of them are tagged.
func (a *act) leave(l *Line, n int, from, to, home Place) int {
	switch {
	case from == home:
		untagged := l.N(from) - l.TaggedHome
		tagged := max(0, n-untagged)
		l.Doubt -= min(l.Doubt, max(0, min(n, untagged)-(untagged-l.Doubt)))
		l.TaggedHome -= tagged
		if tagged > 0 && (Table[a.e.Verb].Lifting || a.e.Verb == Use) {
			a.out.TaggedOut = true
		}
		return tagged
	case from.gone():
		return 0
	case a.e.Verb == StowTagged && to == home:
		tagged := min(n, l.TaggedOut)
		l.TaggedOut -= tagged
		return tagged
	default:
		tagged := max(0, n-(l.out(home)-l.TaggedOut))
		l.TaggedOut -= tagged
		return tagged
	}
}

// leaveUsed takes off logged use first, then what was found at a count. A
// count takes back what counts wrote off.
func (a *act) leaveUsed(l *Line, n int) {
	found := 0
	for _, v := range l.Scenes {
		found += v.Found
	}
	if a.e.Verb != Count {
		n = max(0, n-(l.N(Place{Kind: Used})-found))
	}
	own := l.scene(a.scene)
	k := min(n, own.Found)
	own.Found -= k
	n -= k
	if k > 0 {
		l.setScene(own)
	}
	for _, v := range l.Scenes {
		if k := min(n, v.Found); k > 0 {
			v.Found -= k
			n -= k
			l.setScene(v)
		}
	}
}

// travel notes where a line has been, and all that is in it.
func (a *act) travel(line int, from, to Place) {
	a.been(line, from, to)
	if a.s.Dept.Items[line].Kind == Kit {
		a.s.Inside(line, func(in int) { a.been(in, from, to) })
	}
}

func (a *act) been(line int, from, to Place) {
	s := a.s
	l := s.edit(line)
	past := a.e.Verb != Count && a.e.Verb != Restock && (!from.near() || !to.near())
	wentOut := from.near() && !to.near()
	if v := l.scene(a.scene); past && !v.Past || wentOut && len(v.Passed) > 0 {
		v.Past = v.Past || past
		if wentOut {
			v.Passed = nil
		}
		l.setScene(v)
	}
	l.Peak = max(l.Peak, s.away(line))
}

// verdict keeps how a stow was judged: waved through, as it is, or passed.
func (a *act) verdict() {
	v := a.e.Verdict
	if v == nil || a.e.Verb != Stow || len(a.arrivals) == 0 {
		return
	}
	l := a.s.edit(a.line)
	n := 0
	for _, arr := range a.arrivals {
		n += arr.n - arr.tagged
	}
	for _, c := range v.Open {
		l.setOpen(c, true)
	}
	words := union(v.Waved, v.Failed...)
	if v.Tagged {
		l.TaggedHome += n
		l.TagWords = join(v.Failed)
		return
	}
	l.addDoubt(n, len(v.Failed) == 0, words)
}

// home looks at what came to its home place in this entry. Not passed, not
// ready: the pieces of a line that was past the tarp are in doubt unless the
// entry's own answers pass all its checks, and so is a cylinder in a kit that
// nobody read.
func (a *act) home() {
	if a.e.Verb == Restock {
		return
	}
	arrivals := a.arrivals
	a.arrivals = nil
	for _, arr := range arrivals {
		if !a.s.lines[arr.line].scene(a.scene).Past {
			continue
		}
		if a.e.Verb != Stow && a.e.Verb != StowTagged {
			a.unasked(arr)
		}
		if a.s.Dept.Items[arr.line].Kind == Kit {
			a.s.Inside(arr.line, a.unread)
		}
	}
}

func (a *act) unasked(arr arrival) {
	var answers []Answer
	if arr.line == a.line {
		answers = a.answers
	}
	checks, words := a.s.Failing(arr.line, answers)
	if len(checks) == 0 {
		return
	}
	l := a.s.edit(arr.line)
	if arr.n > arr.tagged {
		a.out.NotReady = true
		l.addDoubt(arr.n-arr.tagged, false, words)
		for _, c := range checks {
			l.setOpen(c, true)
		}
	}
}

// unread puts a line in doubt that has a gauge, or a check nobody may wave
// through, and no passing answer since it went out.
func (a *act) unread(line int) {
	s := a.s
	passed := s.lines[line].scene(a.scene).Passed
	var open, words []string
	for _, ask := range s.Dept.Items[line].Checks {
		c := s.Dept.Check(ask.Check)
		if c != nil && (c.Number || c.Never) && !slices.Contains(passed, ask.Check) {
			open, words = append(open, ask.Check), append(words, ask.Check+" unanswered")
		}
	}
	there := s.lines[line].N(s.HomeOf(line)) - s.lines[line].TaggedHome
	if len(open) == 0 || there <= 0 {
		return
	}
	l := s.edit(line)
	l.addDoubt(there-l.Doubt, false, words)
	l.Waved, l.DoubtWords = false, union(l.DoubtWords, words...)
	for _, c := range open {
		l.setOpen(c, true)
	}
	a.out.UnreadInside = true
}

// worked applies the moves that the judging worked out.
func (a *act) worked() {
	s, e := a.s, a.e
	if e.Verb == Count {
		l := s.edit(a.line)
		v := l.scene(a.scene)
		v.Extra = e.Extra
		l.setScene(v)
	}
	if e.Verb == Settle {
		if c := s.lines[a.line].Contest; c != nil && a.knew(c) {
			s.edit(a.line).Contest = nil
		}
	}
	for _, m := range e.Moves {
		line := s.Dept.ItemIndex(m.Item)
		if line < 0 {
			continue
		}
		if e.Verb == Vouch {
			s.touch(line)
		}
		a.transfer(line, m.N, m.From, m.To)
		a.home()
	}
	if e.Verb == Settle && len(e.Moves) == 0 && e.Holder != "" {
		to, err := s.Resolve(e.To, a.line, e.Scene)
		l := s.edit(a.line)
		if n := l.N(to); err == nil && n > 0 {
			l.put(to, 0, e.Holder)
		}
	}
}
