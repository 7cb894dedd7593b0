package judge

import (
	"strings"

	"tarpside/model"
	"tarpside/model/loadup"
)

// stow asks the questions of the put-back. Each refusal is a question that
// the next act may answer: as it is, in anyway, or with the answers.
func (r *ruling) stow() string {
	n, line := 0, r.s.Line(r.line)
	for _, m := range r.moves {
		n += m.N
	}
	if r.kitAway() {
		return KitAway
	}
	if tagged := r.e.Verb == model.StowTagged; tagged && n > line.TaggedOut {
		return NotTagged
	} else if !tagged && n > r.s.Out(r.line)-line.TaggedOut {
		return Tagged
	}
	if r.to.Kind == model.Home {
		if by := loadup.ClosedBy(r.s, r.line); len(by) > 0 {
			r.detail = r.names(by)
			if !model.HasWord(r.e.Reading, model.WordInAnyway) {
				return Blocked
			}
			r.add(Blocked)
		}
	}
	if r.e.Verb == model.StowTagged {
		return ""
	}
	return r.questions()
}

// kitAway tells whether the piece goes into a kit that is elsewhere.
func (r *ruling) kitAway() bool {
	if r.to.Kind != model.InKit {
		return false
	}
	kit := r.s.Real(r.to)
	for _, m := range r.moves {
		if kit.Kind != model.Home && kit.Kind != model.Tarp && kit != m.Place {
			return true
		}
	}
	return false
}

// questions asks every check of the item, or none of a piece that never left
// the tarp.
func (r *ruling) questions() string {
	asIs := model.HasWord(r.e.Reading, model.WordAsIs)
	unused := model.HasWord(r.e.Reading, model.WordUnused)
	issued := unused && r.issued()
	if issued && !asIs {
		return WasIssued
	}
	if reason := r.read(); reason != "" {
		return reason
	}
	if unused && !issued {
		return ""
	}
	v := &model.Verdict{}
	missing, never := false, false
	checks, words := r.s.Failing(r.line, r.answers)
	for i, id := range checks {
		answer, answered := model.Find(r.answers, id)
		c := r.s.Dept.Check(id)
		hard := c == nil || c.Never || answered && c.NeverWord != "" && answer.Word == c.NeverWord
		v.Open = append(v.Open, id)
		if answered && !hard && r.s.Overridden(r.e.Scene, r.item.ID, id) {
			v.Waved = append(v.Waved, words[i])
			continue
		}
		v.Failed = append(v.Failed, words[i])
		missing, never = missing || !answered, never || hard
	}
	if len(v.Failed) > 0 && !asIs {
		r.detail = strings.Join(v.Failed, ", ")
		if missing {
			return Unanswered
		}
		return Gate
	}
	if len(v.Open) > 0 {
		v.Tagged = never
		r.e.Verdict = v
	}
	return ""
}

// issued tells whether a piece that is said to be unused was in use.
func (r *ruling) issued() bool {
	for _, m := range r.moves {
		if m.Place.Kind != model.Tarp {
			return true
		}
	}
	return r.s.PastInside(r.line, r.e.Scene) || len(r.s.Line(r.line).Open) > 0
}

// stowed says how the piece went home.
func (r *ruling) stowed() {
	if v := r.e.Verdict; v != nil {
		if len(v.Waved) > 0 {
			r.add(Overridden)
		}
		if len(v.Failed) > 0 {
			r.add(NotReady)
		}
		if v.Tagged {
			r.add(OutOfService)
		}
	}
	if r.item.Kind != model.Kit || r.after < 0 {
		return
	}
	if _, counted := r.item.Ask(model.CountCheck); counted && r.next.KitState(r.after) == model.ShortUsable {
		r.add(ShortUsable)
	}
	fit := true
	r.next.Inside(r.after, func(i int) { fit = fit && r.next.Line(i).TaggedHome == 0 })
	if !fit {
		r.add(NotFit)
	}
}
