// Package judge gives the reply to an act, where it is made.
//
// A row is judged once, by the log that takes it, with what it then knows.
// While the scene works an act is refused only when it names what is not
// there; everything else is taken and marked. A refusal at the put-back is a
// question, and what the person then says is so is logged as so.
package judge

import (
	"fmt"
	"slices"

	"tarpside/model"
)

// The reasons of a reply. Marks warn of nothing; every other reason of a row
// that is not refused is a warning.
const (
	BadRow     = "bad_row"
	BadReading = "bad_reading"
	Unanswered = "unanswered"
	NotThere   = "not_there"
	NotOfficer = "not_officer"
	NoOverride = "no_override"
	WrongRig   = "wrong_rig"
	KitAway    = "kit_away"
	Tagged     = "tagged"
	NotTagged  = "not_tagged"
	Blocked    = "blocked"
	WasIssued  = "was_issued"
	Gate       = "gate"
	NotContest = "not_contested"

	StraightOff = "straight_off" // mark
	TwoPerson   = "two_person"   // mark
	Overridden  = "overridden"   // mark
	ShortUsable = "short_usable" // mark

	UnknownItem    = "unknown_item"
	NewRig         = "new_rig"
	RigBack        = "rig_back"
	NotConsumable  = "not_consumable"
	ShortReturn    = "short_return"
	LogWasWrong    = "log_was_wrong"
	AlreadyThere   = "already_there"
	NotReady       = "not_ready"
	OutOfService   = "out_of_service"
	UnreadInside   = "unread_inside"
	NotFit         = "not_fit"
	Short          = "short"
	UnloggedUse    = "unlogged_use"
	CameBack       = "came_back"
	Extra          = "extra"
	NoExtra        = "no_extra"
	LikelySwap     = "likely_swap"
	RunDown        = "rundown"
	Low            = "low"
	Failed         = "failed"
	ByWord         = "by_word"
	ItemsOut       = "items_out"
	OpenItems      = "open_items"
	OpenDiffs      = "open_differences"
	CarriesOthers  = "carries_others"
	AgencyHasItems = "agency_has_items"
)

var marks = []string{StraightOff, TwoPerson, Overridden, ShortUsable}

// Judge gives the entry its reply, works out its moves, and returns the board
// with the entry taken in. The board s stays as it is. The entry comes with
// the act, its stamp, scene and what its writer had seen.
func Judge(s *model.State, e *model.Entry) *model.State {
	r := &ruling{s: s, e: e, line: -1}
	e.Reply, e.Moves, e.Verdict, e.Extra = model.Reply{Word: model.OK}, nil, nil, 0
	if reason := r.judge(); reason != "" {
		e.Reply = model.Reply{Word: model.Refused, Reasons: []string{reason}}
		e.Moves, e.Verdict, e.Extra, e.Takes = nil, nil, 0, nil
		e.Reply.Text = r.refusal(reason)
		next := s.Clone()
		next.Apply(e)
		return next
	}
	next := s.Clone()
	out := next.Apply(e)
	if out.Contested { // again, so that the board knows what the reply says
		e.Reply.Word = model.Contested
		next = s.Clone()
		out = next.Apply(e)
	}
	if _, moving := model.Table[e.Verb]; moving {
		e.Moves = out.Moves
	}
	r.next = next
	if r.item != nil {
		r.after = next.Dept.ItemIndex(r.item.ID)
	}
	r.notice(out)
	e.Reply.Word = r.word(out)
	e.Reply.Reasons = r.reasons
	e.Reply.Text = r.taken(out)
	return next
}

// ruling is one act being judged.
type ruling struct {
	s, next *model.State
	e       *model.Entry
	item    *model.Item
	line    int
	after   int // the line on the next board: a waiting change of the inventory may have moved or removed it
	n       int // pieces asked for
	from    model.Place
	to      model.Place
	trace   model.Trace
	moves   []model.Stack // what will move, by place
	answers []model.Answer
	reasons []string
	detail  string // what a refusal is about, in words
	two     bool   // it takes two people to lift
}

func (r *ruling) add(reasons ...string) {
	for _, x := range reasons {
		if !slices.Contains(r.reasons, x) {
			r.reasons = append(r.reasons, x)
		}
	}
}

// word is the first word of the reply to an act that was taken.
func (r *ruling) word(out model.Outcome) model.Word {
	if out.Contested {
		return model.Contested
	}
	for _, x := range r.reasons {
		if !slices.Contains(marks, x) {
			return model.Warned
		}
	}
	return model.OK
}

// judge tries the reasons for a refusal in their order; "" takes the act.
func (r *ruling) judge() string {
	if r.e.Verb.AboutItem() {
		if r.e.Item == "" {
			r.detail = "no item is named"
			return BadRow
		}
		r.line = r.s.Dept.ItemIndex(r.e.Item)
		if r.line < 0 {
			r.unknown()
			return ""
		}
		r.item = &r.s.Dept.Items[r.line]
		if reason := r.quantity(); reason != "" {
			return reason
		}
		if _, moving := model.Table[r.e.Verb]; moving {
			return r.moving()
		}
	}
	return r.still()
}

// unknown takes a piece that is in no table as words, to be settled later.
func (r *ruling) unknown() {
	if r.e.Verb == model.Settle && r.e.Note != "" {
		return
	}
	r.e.Reply.Word = model.Warned
	r.add(UnknownItem)
}

func (r *ruling) quantity() string {
	r.n = r.e.Quantity
	if r.n == model.Blank && r.e.Verb != model.Count {
		r.n = 1
	}
	if r.n <= 0 && r.n != model.Blank && !(r.n == 0 && r.e.Verb == model.Count) {
		r.detail = "the number of pieces must be 1 or more"
		return BadRow
	}
	return ""
}

// officerOf tells whether the person may decide for an item's owner.
func (r *ruling) officerOf(rig string) bool {
	m := r.s.Dept.Member(r.e.By)
	return m != nil && m.Officer && m.Agency == r.s.Dept.RigAgency(rig)
}

// place reads a place of the act and holds it against what may be there.
func (r *ruling) place(text string, kinds []model.PlaceKind) (model.Place, bool) {
	p, err := r.s.Resolve(text, r.line, r.e.Scene)
	if err != nil {
		r.detail = err.Error()
		return p, false
	}
	if !slices.Contains(kinds, p.Kind) {
		r.detail = fmt.Sprintf("%q does not go with the place %q", r.e.Verb, p.String())
		return p, false
	}
	switch p.Kind {
	case model.InKit:
		if k := r.s.Dept.Item(p.Name); k == nil || k.Kind != model.Kit {
			r.detail = p.Name + " is no kit"
			return p, false
		}
	case model.Riding:
		if !r.s.KnownRig(p.Name) {
			r.detail = "no rig is called " + p.Name
			return p, false
		}
	}
	return p, true
}

// destination adds what a place must be to receive the line.
func (r *ruling) destination(text string, kinds []model.PlaceKind) (model.Place, bool) {
	p, ok := r.place(text, kinds)
	switch {
	case !ok:
		return p, false
	case p.Kind == model.InKit && p.Name != r.item.Kit:
		r.detail = r.item.Name + " does not live in " + p.Name
		return p, false
	case p.Kind == model.Riding && p.Name == r.item.Rig:
		r.detail = "that is its own rig"
		return p, false
	}
	return p, true
}
