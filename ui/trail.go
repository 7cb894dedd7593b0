package ui

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/model/sum"
	litter "tarpside/model/trail"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// trailStep is one of the steps of the litter party, in their order.
type trailStep string

const (
	trailTrip   trailStep = "trip"   // what is known of the way and the day
	trailLoad   trailStep = "load"   // what goes along and what stays
	trailPeople trailStep = "people" // who walks, who carries what
	trailCheck  trailStep = "check"  // eyes on every line, by two
	trailCarry  trailStep = "carry"  // bearers, times, water
	trailCount  trailStep = "count"  // at the patient, and before the walk back
)

// trailScreen is the litter party: what it takes, who carries it, the check at
// the rig and the counts on the way.
type trailScreen struct {
	sh   *Shell
	tree *tree
	n    *now
	v    trailView

	scene *string // of which p was chosen
	p     litter.Party

	step   trailStep
	chosen string // load: an item; people: who walks
	sure   string // a must of which fewer were asked for once
	sureN  int    // so many
	at     string // check and count: the line in hand, nothing for the next
	back   bool   // count: before the walk back
	pad    string // what is being typed
	typed  string
	anyway bool // why do they walk unverified?
}

func newTrail(sh *Shell) screen {
	t := &trailScreen{sh: sh, step: trailTrip}
	t.tree = newTree(t.act)
	return t
}

func (t *trailScreen) body() fyne.CanvasObject { return t.tree.box }

// show brings the screen up to date.
func (t *trailScreen) show(n *now) head {
	t.n = n
	t.load(n)
	t.v = n.trailOf(&t.p)
	t.tree.set(n.onlyReads(t.view(), "step-*", "how-*", "piece:*", "skip", "back"))
	return head{title: words.L("Trail load"), sentence: capital(tripWords(t.p.Trip))}
}

// rest leaves any question.
func (t *trailScreen) rest() {
	t.chosen, t.sure, t.at, t.pad, t.typed, t.anyway = "", "", "", "", "", false
}

// act does what was touched.
func (t *trailScreen) act(id string) {
	t.sh.said = nil
	kind, rest, _ := strings.Cut(id, ":")
	switch {
	case strings.HasPrefix(id, "step-"):
		t.rest()
		t.step = trailStep(strings.TrimPrefix(id, "step-"))
	case strings.HasPrefix(id, "how-"):
		t.explain(id)
		return
	case id == "seen":
	case id == "back":
		t.pad, t.typed, t.anyway, t.at = "", "", false, ""
	case kind == parts.KindDigit:
		t.digit(rest)
	case t.step == trailTrip:
		t.actTrip(id)
	case t.step == trailLoad:
		t.actLoad(kind, rest, id)
	case t.step == trailPeople:
		t.actPeople(kind, rest, id)
	case t.step == trailCheck:
		t.actCheck(kind, rest, id)
	case t.step == trailCount:
		t.actCount(kind, rest, id)
	}
	t.sh.refresh()
}

// explain opens the formula, the source and the limits of a figure.
func (t *trailScreen) explain(id string) {
	var a sum.Answer
	switch id {
	case "how-weight":
		a = t.v.load.Answer()
	case "how-leave":
		a = leaveAnswer(&t.v)
	case "how-limit":
		for _, p := range t.v.load.Packs {
			if p.Member == t.chosen {
				a = p.Carrier.Answer()
			}
		}
	}
	for _, f := range t.n.carryFigures(&t.p, &t.v) {
		if f.id == id {
			a = f.a
		}
	}
	if a.Name != "" {
		t.sh.open(newHow(a))
	}
}

// actLoad does an act on the list.
func (t *trailScreen) actLoad(kind, rest, id string) {
	if list, ok := strings.CutPrefix(id, "list-"); ok {
		t.p.List, t.p.Chosen = list, nil
		t.keep()
		return
	}
	if kind == parts.KindPiece {
		if t.chosen == rest {
			rest = ""
		}
		t.chosen, t.sure = rest, ""
		return
	}
	i := slices.IndexFunc(t.v.lines, func(l trailLine) bool { return l.Item == t.chosen })
	switch id {
	case "leave-these":
		for _, d := range t.v.drops {
			l := t.v.lines[d.Line]
			t.choose(l.Item, l.N-d.N)
		}
	case "as-listed":
		t.p.Chosen = nil
	case "keep":
		t.sure = ""
		return
	case "take", "leave", "fewer", "more", "all-same":
		if i < 0 {
			return
		}
		t.change(t.v.lines[i], t.v.asked[i].N, id)
	default:
		return
	}
	t.keep()
}

// change takes more or fewer pieces of a line. A must is left only by a second
// touch.
func (t *trailScreen) change(l trailLine, listed int, id string) {
	n := l.N
	if !l.Goes() {
		n = 0
	}
	switch id {
	case "take":
		n = max(1, listed)
	case "more":
		n++
	case "fewer":
		n--
	case "leave":
		n = 0
	}
	if id == "all-same" {
		n = t.sureN
	} else if l.Need == trailMust && n < listed && n < l.N {
		t.sure, t.sureN = l.Item, max(0, n)
		return
	}
	t.sure = ""
	t.choose(l.Item, max(0, n))
}

func (t *trailScreen) choose(item string, n int) {
	chosen := map[string]int{}
	for k, v := range t.p.Chosen {
		chosen[k] = v
	}
	chosen[item] = n
	t.p.Chosen = chosen
}

// actPeople does an act on those who walk.
func (t *trailScreen) actPeople(kind, rest, id string) {
	switch {
	case kind == parts.KindMember && t.p.Walks(rest) < 0:
		t.p.People = append(slices.Clone(t.p.People), litter.Walker{ID: rest})
		t.chosen = rest
	case kind == parts.KindMember:
		if t.chosen == rest {
			rest = ""
		}
		t.chosen = rest
		return
	case id == "no-name":
		t.chosen = t.p.AddNoName()
	case id == "drops-out":
		t.p.People = slices.DeleteFunc(slices.Clone(t.p.People), func(c litter.Walker) bool { return c.ID == t.chosen })
		t.chosen = ""
	case id == "limit", id == "body":
		t.pad, t.typed = id, ""
		return
	case id == "usual":
		t.setLimit(0)
	default:
		return
	}
	t.keep()
}

// setLimit keeps what the chosen one can take, in pounds; nought is the usual.
func (t *trailScreen) setLimit(lb float64) {
	if k := t.p.Walks(t.chosen); k >= 0 {
		t.p.People = slices.Clone(t.p.People)
		t.p.People[k].Limit = lb
	}
	t.pad, t.typed = "", ""
}

// walk logs what goes along: it is at the place of the party from now on, with
// whoever has all of a line in the pack. A piece held as evidence is asked
// about first.
func (t *trailScreen) walk() {
	if acts := t.n.walkActs(&t.p, &t.v); len(acts) > 0 {
		t.sh.unlessHeld(acts, t.walkFree)
	}
}

func (t *trailScreen) walkFree(acts []model.Act) {
	t.p.Walked, t.p.Home, t.p.Patient, t.p.Back = t.n.at.UnixMilli(), 0, nil, nil
	note := words.F("Trail load seen at the rig by %s and %s", t.n.walkerName(t.p.First), t.n.walkerName(t.p.Second))
	if !t.v.sure {
		note = words.F("Trail load not verified at the rig: %s", t.p.Anyway)
	}
	acts = append(acts, model.Act{Verb: model.Note, By: t.p.First, Holder: t.p.Second, Quantity: model.Blank, Note: note})
	t.keep()
	t.log(acts...)
	t.rest()
	t.step = trailCount
	t.sh.refresh()
}
