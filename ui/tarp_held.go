package ui

import (
	"strings"
	"time"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// What a note about a piece says in its reading.
const (
	noteHeld  = "held"  // evidence: nobody moves it without asking
	noteFreed = "freed" // the hold is over
	noteDue   = "due="  // and when an agency brings it back
)

// heldBy is the note that holds a piece where it lies, nil if none does.
func (n *now) heldBy(item string) *model.Entry {
	return once(n, "held", func() map[string]*model.Entry {
		held := map[string]*model.Entry{}
		for e := range n.history() {
			switch {
			case e.Verb != model.Note || e.Item == "" || !e.Taken():
			case e.Reading == noteHeld:
				held[e.Item] = e
			case e.Reading == noteFreed:
				delete(held, e.Item)
			}
		}
		return held
	})[item]
}

// holdPicked asks why what is picked must stay as it lies, and holds it.
func (t *tarpScreen) holdPicked() {
	picks := t.picks
	if len(picks) == 0 {
		return
	}
	t.sh.open(newWording(t.sh, words.L("Do not move it"), words.L("Evidence, or whatever else must stay as it lies"), words.L("Who says so, and why"),
		words.L("Such as: sheriff, photographs first. Whoever sends it anywhere is asked before. It is not a lock: the log says who did."), func(text string) {
			tap := board.Tap{Scene: t.sh.now().scene.ID}
			for _, p := range picks {
				tap.Acts = append(tap.Acts, model.Act{Verb: model.Note, Item: p.item, Quantity: model.Blank, Reading: noteHeld, Note: text})
			}
			t.sh.over, t.picks = nil, nil
			t.logTap(tap)
		}))
}

// stopped asks before a held piece is moved; false if nothing picked is held.
func (t *tarpScreen) stopped(n *now, picks []pick, send func()) bool {
	for _, p := range picks {
		e := n.heldBy(p.item)
		if e == nil {
			continue
		}
		t.ask = &question{item: p.item,
			view: func(n *now) (parts.StripView, bool) {
				return parts.StripView{ID: "reply", Tone: parts.StripRefused, Title: words.F("%s: ask first", capital(n.itemName(p.item))),
					Second: words.F("Held at %s: %s", n.clock(e.At()), e.Note), Keys: [2]parts.StripKey{{ID: "freed", Title: words.L("Freed")}, {ID: "leave-it", Title: words.L("Leave it"), Filled: true}}}, true
			},
			answer: func(id string) {
				if id != "freed" {
					return
				}
				t.sh.log(board.Tap{Scene: n.scene.ID, Acts: []model.Act{{Verb: model.Note, Item: p.item, Quantity: model.Blank, Reading: noteFreed}}})
				send()
			}}
		t.sh.refresh()
		return true
	}
	return false
}

// goneWith is the newest touch, if it gave pieces to an agency.
func (n *now) goneWith() []model.Entry {
	for _, tap := range n.taps(1) {
		if e := &tap[0]; len(e.Moves) > 0 && e.Moves[0].To.Kind == model.With && n.d.ItemIndex(e.Item) >= 0 {
			return tap
		}
	}
	return nil
}

// goneWords names what a touch gave away.
func (n *now) goneWords(tap []model.Entry) string {
	m := tap[0].Moves[0]
	text := pieces(&n.d.Items[n.d.ItemIndex(tap[0].Item)], m.N)
	if more := len(tap) - 1; more > 0 {
		text += words.F(", and %d more", more)
	}
	return text
}

// askDue asks when an agency brings back what it was just given.
func (t *tarpScreen) askDue() {
	n := t.sh.now()
	tap := n.goneWith()
	if len(tap) == 0 {
		return
	}
	day := func(k int) string { return n.at.AddDate(0, 0, k).Format(words.L("Mon 2 Jan")) }
	list := []choice{
		{kind: parts.KindAct, id: "in an hour, " + n.at.Add(time.Hour).Format("15:04"), title: words.L("In an hour"), second: n.at.Add(time.Hour).Format("15:04")},
		{kind: parts.KindAct, id: "today, " + day(0), title: words.L("Today"), second: day(0)},
		{kind: parts.KindAct, id: "tomorrow, " + day(1), title: words.L("Tomorrow"), second: day(1)},
		{kind: parts.KindAct, id: "in a week, " + day(7), title: words.L("In a week"), second: day(7)},
		{kind: parts.KindAct, id: "when we fetch it", title: words.L("We fetch it"), second: words.L("they call us")},
		{kind: parts.KindAct, id: "do not expect it", title: words.L("Do not expect it"), second: words.L("buried, used, given away")},
	}
	who := n.placeName(tap[0].Moves[0].To)
	t.sh.open(newChooser(t.sh, words.L("When does it come back?"), words.F("%s: ask %s while they are here", n.goneWords(tap), who), list, func(when string) {
		due := board.Tap{Scene: n.scene.ID}
		for _, e := range tap {
			due.Acts = append(due.Acts, model.Act{Verb: model.Note, Item: e.Item, Quantity: model.Blank, To: e.To, Reading: noteDue + when})
		}
		t.sh.over = nil
		t.logTap(n.staged(due))
	}))
}

// dueBack is when an agency promised a piece back, nothing if it was not
// asked since the piece went there.
func (n *now) dueBack(item string) string {
	return once(n, "due", func() map[string]string {
		due := map[string]string{}
		for e := range n.history() {
			when, ok := strings.CutPrefix(e.Reading, noteDue)
			switch {
			case e.Item == "" || !e.Taken():
			case ok && e.Verb == model.Note:
				due[e.Item] = when
			case len(e.Moves) > 0:
				delete(due, e.Item)
			}
		}
		return due
	})[item]
}

// noteLine is a note about a piece in words; nothing for any other note.
func noteLine(e *model.Entry, name string) string {
	when, due := strings.CutPrefix(e.Reading, noteDue)
	switch {
	case e.Verb != model.Note || e.Item == "":
		return ""
	case e.Reading == noteHeld:
		return words.F("%s held, do not move: %s", name, e.Note)
	case e.Reading == noteFreed:
		return words.F("%s no longer held", name)
	case due:
		return words.F("%s due back: %s", name, when)
	}
	return ""
}
