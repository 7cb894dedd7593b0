package judge

import (
	"cmp"
	"fmt"
	"strings"

	"tarpside/model"
)

// refusal says in words why an act was refused: what is there, where the rest
// is, and what can be done.
func (r *ruling) refusal(reason string) string {
	name := ""
	if r.item != nil {
		name = r.item.Name
	}
	switch reason {
	case BadRow, BadReading:
		return sentence("Not logged", r.detail)
	case Unanswered:
		if r.detail == "" {
			return "Not logged: no answer was given. Blank is never a pass"
		}
		return sentence("Still to answer for "+name, r.detail)
	case NotThere:
		return r.notThere()
	case NotOfficer:
		return "Only an officer of the agency that owns it may do that"
	case NoOverride:
		return "Nobody may wave that check through. Tag it out of service, or take it home as it is"
	case WrongRig:
		return fmt.Sprintf("%s belongs to %s. Carry it home for them", name, r.rigName(r.item.Rig))
	case KitAway:
		return fmt.Sprintf("It lives in %s, which is %s", r.itemName(r.item.Kit), r.where(r.s.Real(r.to)))
	case Tagged:
		return name + " is out of service. It can ride home tagged"
	case NotTagged:
		return fmt.Sprintf("Only %d of %s out of service", r.s.Line(r.line).Tagged(), name)
	case Blocked:
		return fmt.Sprintf("%s cannot go in: %s in the way", name, r.detail)
	case WasIssued:
		return name + " was in use: answer its questions"
	case Gate:
		return sentence(name+" does not pass", r.detail)
	case NotContest:
		return "There is nothing to settle: nobody disputes where " + name + " is"
	}
	return reason
}

// notThere says how many are there and where the rest is.
func (r *ruling) notThere() string {
	l := r.s.Line(r.line)
	if r.detail != "" {
		return sentence("Not logged", r.detail)
	}
	here := l.N(r.from)
	asked := r.n
	var rest []string
	for _, st := range l.Stacks {
		if st.Place != r.from {
			rest = append(rest, fmt.Sprintf("%d %s", st.N, r.where(st.Place)))
		}
	}
	text := fmt.Sprintf("%d asked, %d here", asked, here)
	if r.to.Kind != "" && l.N(r.to) >= asked && here == 0 {
		return fmt.Sprintf("Already %s. Nothing changed", r.where(r.to))
	}
	if len(rest) > 0 {
		text += ". The rest: " + strings.Join(rest, ", ")
	}
	return text
}

// taken says in words what was logged, and what to know about it.
func (r *ruling) taken(out model.Outcome) string {
	e := r.e
	var parts []string
	add := func(format string, args ...any) { parts = append(parts, fmt.Sprintf(format, args...)) }
	if r.item == nil && e.Verb.AboutItem() {
		if e.Reply.Word == model.OK {
			return e.Item + ": settled"
		}
		return fmt.Sprintf("%s is in no table. Kept in words; before the scene closes, say what it was", e.Item)
	}
	for _, m := range out.Moves {
		if it := r.s.Dept.Item(m.Item); it != nil && len(parts) < 6 {
			add("%s now %s", counted(it, m.N), r.where(m.To))
		}
	}
	if n := len(out.Moves); n > 6 {
		add("and %d lines more", n-6)
	}
	if out.Undone {
		add("taken back")
	}
	if out.Contested && r.after >= 0 {
		if c := r.next.Line(r.after).Contest; c != nil && len(c.Claims) > 1 {
			add("two claims: %s or %s. Go and look", r.where(c.Claims[0].Place), r.where(c.Claims[1].Place))
		}
	}
	for _, reason := range e.Reply.Reasons {
		if w, ok := said[reason]; ok {
			add("%s", w)
		}
	}
	switch {
	case r.has(Blocked):
		add("its way is closed by %s", r.detail)
	case r.has(ShortReturn):
		add("%d still %s", r.next.Line(r.after).N(r.from), r.where(r.from))
	case r.has(Extra):
		add("%d more than the books. Whose are they?", e.Extra)
	case r.has(AgencyHasItems):
		add("%s", r.carries(e.Rig))
	}
	return strings.Join(parts, "; ")
}

func (r *ruling) has(reason string) bool { return r.e.Reply.Has(reason) }

// said are the words for reasons that need no figures.
var said = map[string]string{
	StraightOff: "straight off the rig", TwoPerson: "two people lift it", Overridden: "an officer let it pass",
	ShortUsable: "short, but usable", NewRig: "a rig or agency that is in no table",
	RigBack: "it had left: its rig is here again", Tagged: "it is out of service",
	NotConsumable: "it is not used up: it should come back", LogWasWrong: "the log had it elsewhere",
	AlreadyThere: "another tablet had put it there already", NotReady: "not ready until it passes its checks",
	OutOfService: "home out of service", UnreadInside: "a gauge in it was not read", NotFit: "complete, but something in it is out of service: not fit",
	Short: "short: to be looked for", UnloggedUse: "used without a record", CameBack: "some that were short came back",
	NoExtra: "that rig counted no extra", LikelySwap: "a likely swap: look at both", RunDown: "running down",
	Low: "low", Failed: "does not pass", ByWord: "by the driver's word", KitAway: "some stay out: their kit is not home",
	ItemsOut: "pieces are still out", OpenItems: "pieces are with others or not ready", OpenDiffs: "differences are open",
	CarriesOthers: "it carries pieces of others",
}

func counted(it *model.Item, n int) string {
	if it.Quantity == 1 {
		return it.Name
	}
	return fmt.Sprintf("%d %s", n, it.Name)
}

// carries lists what an agency takes along, in words.
func (r *ruling) carries(party string) string {
	var list []string
	for i := range r.s.Dept.Items {
		for _, st := range r.s.Line(i).Stacks {
			if st.Place.Kind == model.With && st.Place.Name == party {
				list = append(list, counted(&r.s.Dept.Items[i], st.N))
			}
		}
	}
	return fmt.Sprintf("%s has %s", r.rigName(party), strings.Join(list, ", "))
}

// where is a place in words.
func (r *ruling) where(p model.Place) string { return Where(r.s.Dept, p) }

// Where is a place in words, as it stands in a sentence.
func Where(d *model.Department, p model.Place) string {
	switch p.Kind {
	case model.Home:
		return "home"
	case model.Tarp:
		return "on the tarp"
	case model.At:
		return "at " + p.Name
	case model.InKit:
		if k := d.Item(p.Name); k != nil {
			return "in " + k.Name
		}
	case model.With:
		return "with " + party(d, p.Name)
	case model.Riding:
		return "on " + party(d, p.Name)
	case model.Charging:
		return "on the charger"
	}
	return string(p.Kind)
}

func party(d *model.Department, id string) string {
	if rig := d.Rig(id); rig != nil {
		return cmp.Or(rig.Name, id)
	}
	if a := d.Agency(id); a != nil {
		return cmp.Or(a.Name, id)
	}
	return id
}

func (r *ruling) rigName(id string) string { return party(r.s.Dept, id) }

func (r *ruling) itemName(id string) string {
	if it := r.s.Dept.Item(id); it != nil {
		return it.Name
	}
	return id
}

func (r *ruling) names(ids []string) string {
	var out []string
	for _, id := range ids {
		out = append(out, r.itemName(id))
	}
	return strings.Join(out, ", ")
}

func sentence(head, detail string) string {
	if detail == "" {
		return head
	}
	return head + ": " + detail
}
