package judge

import (
	"fmt"
	"slices"

	"tarpside/model"
)

// moving judges a verb that takes pieces of one line from a place to another.
func (r *ruling) moving() string {
	e, row := r.e, model.Table[r.e.Verb]
	if e.Verb == model.Match && e.From == "" {
		return r.hint()
	}
	var ok bool
	if r.from, ok = r.place(e.From, row.From); !ok {
		return BadRow
	}
	if r.to, ok = r.destination(e.To, row.To); !ok {
		return BadRow
	}
	if r.from == r.to && e.Verb != model.Seen {
		r.detail = "it is there already"
		return BadRow
	}
	stowing := e.Verb == model.Stow || e.Verb == model.StowTagged
	if stowing && e.Rig != "" && e.Rig != r.item.Rig {
		return WrongRig
	}
	r.trace = r.s.Trace(e, r.line, r.n, r.from, r.to)
	if r.trace.Missing > 0 {
		return NotThere
	}
	if e.Verb == model.StopLook && !r.officerOf(r.item.Rig) {
		return NotOfficer
	}
	r.moves = r.trace.Sources(r.from, r.to)
	r.two = row.Lifting && r.s.TwoPerson(r.line)
	if stowing && len(r.moves) > 0 {
		return r.stow()
	}
	return r.read()
}

// read takes the reading of a verb that has one.
func (r *ruling) read() string {
	switch r.e.Verb {
	case model.Seen, model.Recharge, model.Clean, model.BringBack, model.CheckIt, model.Stow:
		answers, err := model.ParseReading(r.s.Dept, r.e.Reading, r.e.Verb == model.Stow)
		if err != nil {
			r.detail = err.Error()
			return BadReading
		}
		r.answers = answers
	}
	return ""
}

// hint judges a match without a from: a likely swap, in words only.
func (r *ruling) hint() string {
	other := r.s.Dept.Item(r.e.Reading)
	if other == nil || other.Family != r.item.Family || other.Family == "" || other.Rig == r.item.Rig {
		r.detail = "a swap needs a piece of the same family on another rig"
		return BadRow
	}
	r.add(LikelySwap)
	return ""
}

// notice collects what is to be said of an act that was taken.
func (r *ruling) notice(out model.Outcome) {
	e := r.e
	if out.NewRig {
		r.add(NewRig)
	}
	if out.Undone {
		return
	}
	if out.Already {
		r.add(AlreadyThere)
	}
	if _, moving := model.Table[e.Verb]; moving && r.line >= 0 {
		switch {
		case e.Verb == model.Seen && r.from == r.to:
			r.readingWarnings()
		case len(out.Moves) > 0:
			r.movingWarnings(out)
		}
	}
	if out.NotReady {
		r.add(NotReady)
	}
	if out.UnreadInside {
		r.add(UnreadInside)
	}
}

func (r *ruling) movingWarnings(out model.Outcome) {
	e := r.e
	if e.Verb == model.Direct {
		r.add(StraightOff)
	}
	if r.two {
		r.add(TwoPerson)
	}
	if out.RigBack {
		r.add(RigBack)
	}
	if out.TaggedOut {
		r.add(Tagged)
	}
	switch e.Verb {
	case model.Use:
		if r.item.Kind != model.Consumable {
			r.add(NotConsumable)
		}
	case model.Return:
		if r.after >= 0 && r.next.Line(r.after).N(r.from) > 0 {
			r.add(ShortReturn)
		}
	case model.Seen:
		r.add(LogWasWrong)
	case model.Match:
		if out.NoExtra {
			r.add(NoExtra)
		}
	case model.Stow:
		r.stowed()
	}
}

// readingWarnings says what the answers of a check mean.
func (r *ruling) readingWarnings() {
	_, gauge := r.item.Ask("oxygen")
	flow, flowing := model.Find(r.answers, model.FlowKey)
	if _, read := model.Find(r.answers, "oxygen"); gauge && read && flowing && flow.Number > 0 {
		r.add(RunDown)
	}
	for _, a := range r.answers {
		if _, own := r.item.Ask(a.Check); !own || r.s.Passes(r.line, a) {
			continue
		}
		if r.s.Dept.Check(a.Check).Number {
			r.add(Low)
		} else {
			r.add(Failed)
		}
	}
}

// still judges the verbs that have no from and to of their own.
func (r *ruling) still() string {
	e := r.e
	switch e.Verb {
	case model.Note, model.Relieve, model.ClearUp, model.Look, model.BlankNote:
		return ""
	case model.Stores:
		if e.Stores == nil {
			r.detail = "it changes nothing"
			return BadRow
		}
		return ""
	case model.Open:
		for _, sc := range r.s.Scenes() {
			if sc.Closed && !slices.Contains(e.Takes, sc.ID) {
				e.Takes = append(e.Takes, sc.ID)
			}
		}
		return ""
	case model.Close:
		r.closing()
		return ""
	case model.Arrive, model.Accept, model.Release, model.Leave, model.Vouch:
		return r.aboutRig()
	case model.Count:
		return r.count()
	case model.Settle:
		return r.settle()
	case model.CheckIt:
		return r.check()
	case model.Override:
		return r.override()
	case model.Tag:
		if r.n > r.s.Line(r.line).N(r.s.HomeOf(r.line))+r.s.Out(r.line)-r.s.Line(r.line).Tagged() {
			r.detail = "so many are not in service"
			return NotThere
		}
		return ""
	case model.Repair:
		if r.n > r.s.Line(r.line).Tagged() {
			return NotTagged
		}
		return ""
	}
	r.detail = fmt.Sprintf("no act is called %q", e.Verb)
	return BadRow
}

func (r *ruling) check() string {
	if reason := r.read(); reason != "" {
		return reason
	}
	if len(r.answers) == 0 {
		return Unanswered
	}
	r.readingWarnings()
	return ""
}

func (r *ruling) override() string {
	words := model.Words(r.e.Reading)
	if len(words) != 1 {
		return BadReading
	}
	if _, own := r.item.Ask(words[0]); !own {
		r.detail = r.item.Name + " has no check called " + words[0]
		return BadReading
	}
	if c := r.s.Dept.Check(words[0]); c == nil || c.Never {
		return NoOverride
	}
	if !r.officerOf(r.item.Rig) {
		return NotOfficer
	}
	return ""
}

func (r *ruling) settle() string {
	var ok bool
	if r.to, ok = r.destination(r.e.To, model.PlaceKinds); !ok {
		return BadRow
	}
	if r.s.Line(r.line).Contest == nil {
		return NotContest
	}
	if r.e.Moves, ok = r.s.SettleMoves(r.line, r.n, r.to); !ok {
		return NotThere
	}
	return ""
}

// count compares what eyes see with the books.
func (r *ruling) count() string {
	place := r.e.From
	if place == "" {
		place = string(model.Home)
	}
	kinds := []model.PlaceKind{model.Home, model.InKit, model.Tarp, model.At, model.Riding}
	var ok bool
	if r.from, ok = r.place(place, kinds); !ok {
		return BadRow
	}
	if r.from.Kind == model.InKit && r.from.Name != r.item.Kit {
		r.detail = r.item.Name + " does not live in " + r.from.Name
		return BadRow
	}
	if r.n == model.Blank {
		return Unanswered
	}
	writeOff, found := model.Place{Kind: model.Unexplained}, Short
	back := r.s.Line(r.line).N(writeOff)
	if r.item.Kind == model.Consumable {
		writeOff, found = model.Place{Kind: model.Used}, UnloggedUse
		back = r.s.FoundIn(r.line, r.e.Scene)
	}
	books := r.s.Line(r.line).N(r.from)
	if less := books - r.n; less > 0 {
		r.e.Moves = []model.Move{{Item: r.item.ID, N: less, From: r.from, To: writeOff}}
		r.add(found)
		return ""
	}
	more := r.n - books
	if back = min(back, more); back > 0 {
		r.e.Moves = []model.Move{{Item: r.item.ID, N: back, From: writeOff, To: r.from}}
		r.add(CameBack)
	}
	if r.e.Extra = more - back; r.e.Extra > 0 {
		r.add(Extra)
	}
	return ""
}
