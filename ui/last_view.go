package ui

import (
	"slices"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/judge"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// taps groups the entries of the scene by touch, the newest first, at most so
// many. Refused acts and notes of a desk are left out.
func (n *now) taps(most int) [][]model.Entry {
	var out [][]model.Entry
	for i := len(n.pic.Entries) - 1; i >= 0; i-- {
		e := n.pic.Entries[i]
		if e.Scene != n.scene.ID || !e.Taken() || e.Verb == model.Stores {
			continue
		}
		if k := len(out) - 1; k >= 0 && e.Tap != "" && out[k][0].Tap == e.Tap {
			out[k] = append(out[k], e)
			continue
		}
		if len(out) == most { // the one before it is whole
			break
		}
		out = append(out, []model.Entry{e})
	}
	return out
}

// lastLine is one touch in words: when, what, from where to where.
func (n *now) lastLine(tap []model.Entry) string {
	if instead(tap) {
		tap = tap[:len(tap)-1] // what was only just logged is put right by the same touch
	}
	e := tap[len(tap)-1] // taps run from the newest: the first act of the touch
	text := n.actLine(&e)
	more := 0
	for _, also := range tap[:len(tap)-1] {
		if also.Verb != model.Note { // a note beside moves is no further piece
			more++
		}
	}
	if more > 0 {
		text += words.F(", and %d more", more)
	}
	return parts.B(n.clock(e.At())) + "  " + text
}

// actLine is one act in words.
func (n *now) actLine(e *model.Entry) string {
	name := e.Item
	if it := n.d.Item(e.Item); it != nil {
		k := e.Quantity
		if k == model.Blank {
			k = 1
		}
		name = pieces(it, k)
	}
	switch e.Verb {
	case model.Open:
		return words.L("Scene opened")
	case model.Arrive:
		return words.F("%s is here", n.partyName(e.Rig))
	case model.Leave:
		return words.F("%s left", n.partyName(e.Rig))
	case model.Release:
		return words.F("%s is let go", n.partyName(e.Rig))
	case model.Accept:
		return words.F("%s signs for what %s leaves", n.memberName(e.By), n.partyName(e.Rig))
	case model.Vouch:
		return words.F("By word, all of %s is aboard", n.partyName(e.Rig))
	case model.Relieve:
		return words.F("Staging handed to %s", n.memberName(e.Holder))
	case model.Close:
		return words.L("Scene closed")
	case model.ClearUp:
		return words.L("Clear-up starts")
	case model.Note:
		if text := noteLine(e, name); text != "" {
			return text
		}
		return words.F("Note: %s", e.Note)
	case model.Tag:
		if e.Note != "" {
			return words.F("%s tagged: %s", name, e.Note)
		}
		return words.F("%s tagged: %s", name, low(n.faultWords(e.Reading)))
	case model.CheckIt:
		return words.F("%s read: %s", name, low(n.faultWords(e.Reading)))
	case model.Override:
		return words.F("%s lets it pass. %s: %s", n.memberName(e.By), name, low(n.faultWords(e.Reading)))
	case model.Look:
		return words.F("Looked for %s", name)
	case model.Count:
		if it := n.d.Item(e.Item); it != nil {
			name = it.Short() // how many is what the count says
		}
		return words.F("Counted %s: %d", name, e.Quantity)
	case model.Repair:
		return words.F("%s back in service", name)
	}
	if text := n.wordsOf(e, name); text != "" {
		return text
	}
	if len(e.Moves) == 0 {
		return name + ": " + verbName(e.Verb)
	}
	m := e.Moves[0]
	text := words.F("%s, %s to %s", name, n.placeName(m.From), parts.B(n.placeName(m.To)))
	if e.Holder != "" && (m.To.Kind == model.At || m.To.Kind == model.With) {
		text += ", " + n.holderName(e.Holder)
	}
	if e.Verb == model.Correct {
		text += words.L(", corrected")
	}
	return text
}

// wordsOf is a settle, or an act about a piece that is in no table, in words;
// nothing for any other act.
func (n *now) wordsOf(e *model.Entry, name string) string {
	switch unlisted := e.Item != "" && n.d.ItemIndex(e.Item) < 0; {
	case unlisted && e.Verb == model.Settle:
		return words.F("Unknown piece %s was: %s", quoted(name), e.Note)
	case unlisted:
		return words.F("Unknown piece %s", quoted(name))
	case e.Verb != model.Settle:
		return ""
	}
	place := e.To
	if p, err := model.ParsePlace(e.To); err == nil {
		place = n.placeName(p)
	}
	return words.F("%s is at %s, both claims looked at", name, place)
}

// undoFor is the tap that takes the newest touch back that can be, as new
// entries: the reverse moves, newest first. Only acts of this tablet count,
// and at most five touches back.
func (n *now) undoFor() (board.Tap, int) { return n.undoPast(nil) }

// undoPast is undoFor, but for touches that are to be left as they are.
func (n *now) undoPast(leave map[string]bool) (board.Tap, int) {
	taps := n.taps(12)
	undone := map[string]bool{}
	left := 0
	var first board.Tap
	for i, tap := range taps {
		if tap[0].Mends != "" && tap[0].Verb == model.Correct && !mended(taps[i+1:], tap) {
			undone[tap[0].Mends] = true
			continue
		}
		key := tapKey(tap)
		if instead(tap) {
			undone[tap[0].Mends] = true
		}
		if undone[key] || leave[key] || tap[0].Device != n.pic.Device && !n.opts.Practice {
			continue
		}
		back, ok := reversed(tap)
		if !ok {
			continue
		}
		back.Mends = key
		if left == 0 {
			first = back
		}
		if left++; left == 5 {
			break
		}
	}
	return first, left
}

// instead tells whether a touch, newest act first, corrects one before it and
// then does something else with the piece. Undone, it leaves the piece where
// it was before both.
func instead(tap []model.Entry) bool {
	return len(tap) > 1 && tap[0].Mends != "" && tap[0].Verb != model.Correct && tap[len(tap)-1].Verb == model.Correct
}

// tapKey names a touch.
func tapKey(tap []model.Entry) string {
	if tap[0].Tap != "" {
		return tap[0].Tap
	}
	return tap[0].ID.String()
}

// mended tells whether a correct put another place or number for what a touch
// before it said. One that takes the whole touch back is an undo.
func mended(before [][]model.Entry, tap []model.Entry) bool {
	for _, was := range before {
		if tapKey(was) != tap[0].Mends && !slices.ContainsFunc(was, func(e model.Entry) bool { return e.ID.String() == tap[0].Mends }) {
			continue
		}
		back, ok := reversed(was)
		if !ok || len(back.Acts) != len(tap) {
			return true
		}
		for k, a := range back.Acts {
			e := tap[len(tap)-1-k]
			if a.Item != e.Item || a.Quantity != e.Quantity || a.From != e.From || a.To != e.To {
				return true
			}
		}
	}
	return false
}

// reversed are the corrects that take a touch back; false if it moved nothing
// that a hand could move back.
func reversed(tap []model.Entry) (board.Tap, bool) {
	var t board.Tap
	if instead(tap) {
		tap = tap[:len(tap)-1]
	}
	for _, e := range tap { // newest first
		switch e.Verb {
		case model.CheckIt, model.Tag, model.Override, model.Note:
			continue // what was seen of a piece stays true when the piece goes back, and so does a note
		}
		if _, moving := model.Table[e.Verb]; !moving || e.Verb == model.Match || e.Verb == model.Restock || e.Reply.Word == model.Contested {
			return t, false
		}
		for k := len(e.Moves) - 1; k >= 0; k-- {
			m := e.Moves[k]
			if m.From == m.To {
				continue // eyes on a piece where the log has it
			}
			t.Acts = append(t.Acts, model.Act{Verb: model.Correct, Item: m.Item, Quantity: m.N, From: m.To.String(), To: m.From.String()})
		}
		t.Scene = e.Scene
	}
	return t, len(t.Acts) > 0
}

// stripView is what the strip says: the answer to the last touch, or the last
// two entries.
func (n *now) stripView(picks []pick) parts.StripView {
	if s := n.said; s != nil {
		if v, ok := n.answer(s); ok {
			return v
		}
	}
	if len(picks) > 0 && !n.readsOnly() {
		return parts.StripView{ID: "reply", Tone: parts.StripNow, Title: words.L("Now touch a place"), Second: parts.Or(words.L("More pieces can be picked first. They all go together."), words.L("More can be picked."))}
	}
	if n.pic.ReadOnly != "" {
		return parts.StripView{ID: "reply", Tone: parts.StripReadOnly, Title: words.L("This window only reads"), Second: words.Said(n.pic.ReadOnly)}
	}
	if len(n.d.Items) == 0 {
		return parts.StripView{ID: "reply", Tone: parts.StripNow, Title: words.L("No department is loaded"), Second: words.L("On the Tarp screen: load one, or look at the demo.")}
	}
	if n.scene.ID == "" || n.scene.Closed {
		v := parts.StripView{ID: "reply", Tone: parts.StripNow, Title: words.L("No scene is open"), Second: words.L("Open one when the call comes. What is still out stays in the log."),
			Keys: [2]parts.StripKey{{ID: "open-scene", Title: words.L("Open a scene"), Filled: true}}}
		moved := func(e model.Entry) bool { return len(e.Moves) > 0 }
		if taps := n.taps(1); len(taps) > 0 && n.said != nil && slices.ContainsFunc(n.said.entries, moved) { // logged all the same
			v.Tone, v.Title, v.Second = parts.StripOK, n.lastLine(taps[0]), words.L("Logged, with the scene that is closed.")
		}
		return v
	}
	taps := n.taps(2)
	v := parts.StripView{ID: "last", Title: words.L("Nothing logged yet"), Second: words.L("Touch a piece, then where it goes.")}
	if len(taps) > 0 {
		v.Title, v.Second = n.lastLine(taps[0]), ""
	}
	if len(taps) > 1 {
		v.Second = n.lastLine(taps[1])
	}
	return v
}

// answer is the reply to the last touch, where it needs reading.
func (n *now) answer(s *said) (parts.StripView, bool) {
	if s.trouble != nil {
		return parts.StripView{ID: "reply", Tone: parts.StripWrong, Title: s.trouble.What, Second: s.trouble.Safe + ". " + s.trouble.Do,
			Keys: [2]parts.StripKey{{ID: "seen", Title: words.L("Seen")}}}, true
	}
	var refused, warned *model.Entry
	for i := range s.entries {
		switch e := &s.entries[i]; e.Reply.Word {
		case model.Refused:
			refused = e
		case model.Contested, model.Warned:
			warned = e
		}
	}
	switch {
	case refused != nil:
		v := parts.StripView{ID: "reply", Tone: parts.StripRefused, Title: n.actName(refused), Second: words.Said(refused.Reply.Text)}
		if s.retry != nil {
			v.Keys[0] = parts.StripKey{ID: "retry", Title: s.key, Filled: true}
			v.Keys[1] = parts.StripKey{ID: "seen", Title: words.L("Seen")}
		} else {
			v.Keys[0] = parts.StripKey{ID: "seen", Title: words.L("Seen")}
		}
		return v, true
	case warned != nil && warned.Reply.Word == model.Contested:
		return parts.StripView{ID: "reply", Tone: parts.StripContested, Title: n.actName(warned), Second: words.Said(warned.Reply.Text),
			Keys: [2]parts.StripKey{{ID: "seen", Title: words.L("Seen")}}}, true
	case warned != nil:
		return parts.StripView{ID: "reply", Tone: parts.StripWarned, Title: n.actLine(warned), Second: words.Said(warned.Reply.Text),
			Keys: [2]parts.StripKey{{ID: "seen", Title: words.L("Seen")}}}, true
	}
	return parts.StripView{}, false
}

func (n *now) actName(e *model.Entry) string {
	if it := n.d.Item(e.Item); it != nil {
		return words.F("%s: nothing changed", it.Short())
	}
	return words.L("Nothing changed")
}

// offer is what could be done instead of a refused act: take what is there.
func (n *now) offer(e *model.Entry) (*board.Tap, string) {
	if !e.Reply.Has(judge.NotThere) || e.Item == "" {
		return nil, ""
	}
	i := n.d.ItemIndex(e.Item)
	from, err := n.s.Resolve(e.From, i, e.Scene)
	if i < 0 || err != nil {
		return nil, ""
	}
	here := n.s.Line(i).N(from)
	if here == 0 || here >= e.Quantity {
		return nil, ""
	}
	act := e.Act
	act.Quantity = here
	return &board.Tap{Acts: []model.Act{act}, Scene: e.Scene}, words.F("Take %d", here)
}
