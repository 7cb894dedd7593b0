package ui

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// What the right side of Look for it is doing.
const (
	lookSteps  = ""
	lookSkip   = "skip"   // why is it skipped
	lookUnsafe = "unsafe" // why is it not safe there
	lookAmount = "amount" // how many
	lookParty  = "party"  // with whom
	lookStop   = "stop"   // an officer closes the search
)

// lookforScreen leads a search: place after place, until the piece is found,
// is with someone, or an officer gives it up.
type lookforScreen struct {
	sh    *Shell
	tree  *tree
	root  *fyne.Container
	size  fyne.Size
	n     *now
	leave *parts.Key
	stopK *parts.Key

	chosen  string // hunt.id
	mode    string
	typed   string
	then    model.Act // what the amount is for
	officer string
	from    map[string]int // by item: looks before this one no longer count
}

func newLookFor(sh *Shell) screen {
	l := &lookforScreen{sh: sh, from: map[string]int{}}
	l.tree = newTree(l.act)
	l.leave = parts.NewKey(parts.KeyView{ID: "leave-open", Title: words.L("Leave it open"), Icon: "leave-down", Tone: parts.Header}, l.leaveOpen)
	l.stopK = parts.NewKey(parts.KeyView{}, func() { l.act("stop-looking") })
	l.root = box(func(size fyne.Size) {
		if size != l.size {
			l.size = size
			l.draw()
		}
		place(l.tree.box, 0, 0, size.Width, size.Height)
	}, l.tree.box)
	return l
}

func (l *lookforScreen) body() fyne.CanvasObject { return l.root }

// show brings the screen up to date.
func (l *lookforScreen) show(n *now) head {
	l.n = n
	l.draw()
	hunts := n.hunts()
	h := head{title: words.L("Look for it"), sentence: n.lookSentence(hunts)}
	if cur, ok := l.current(hunts); ok && cur.kind != closed {
		h.middle, h.widths, h.gap = []fyne.CanvasObject{l.leave}, []float32{200}, look.Gap
		if cur.kind == hunting && !n.readsOnly() && (l.mode == lookSteps || l.mode == lookSkip || l.mode == lookUnsafe) {
			l.stopK.Set(parts.KeyView{ID: "stop-looking", Title: words.L("Stop looking"), Icon: "lost", Tone: parts.Header})
			h.middle, h.widths = append(h.middle, l.stopK), append(h.widths, 200)
		}
	}
	return h
}

// lookSentence says how much is open.
func (n *now) lookSentence(hunts []hunt) string {
	missing, two, gone := 0, 0, 0
	for _, r := range n.s.Where() { // as the foot counts: what is in kits with them
		switch r.Place.Kind {
		case model.Unexplained:
			missing += r.Quantity
		case model.Lost:
			gone += r.Quantity
		}
	}
	for _, h := range hunts {
		if h.kind == disputed {
			two++
		}
	}
	var said []string
	if missing > 0 {
		said = append(said, words.F("%s unexplained", words.N("%d piece", "%d pieces", missing)))
	}
	if two > 0 {
		said = append(said, words.F("%s said to be in two places", words.N("%d line", "%d lines", two)))
	}
	if gone > 0 {
		said = append(said, words.F("%s given up as lost", words.N("%d piece", "%d pieces", gone)))
	}
	return strings.Join(said, ", ")
}

// current is the hunt that was chosen, else the first one that is open.
func (l *lookforScreen) current(hunts []hunt) (hunt, bool) {
	for _, h := range hunts {
		if h.id(l.n.d) == l.chosen {
			return h, true
		}
	}
	for _, h := range hunts {
		if h.kind != closed {
			return h, true
		}
	}
	return hunt{}, false
}

// choose turns to another piece.
func (l *lookforScreen) choose(id string) {
	l.chosen = id
	l.home()
}

// home leaves any question.
func (l *lookforScreen) home() {
	l.mode, l.typed, l.officer = lookSteps, "", ""
	l.sh.said = nil
	l.sh.refresh()
}

func (l *lookforScreen) ask(mode string) {
	l.mode, l.typed = mode, ""
	l.sh.said = nil
	l.sh.refresh()
}

// act does what was touched.
func (l *lookforScreen) act(id string) {
	h, ok := l.current(l.n.hunts())
	kind, rest, _ := strings.Cut(id, ":")
	switch {
	case id == "seen" || id == "back":
		l.home()
	case id == "to-find":
		l.sh.open(newStoresFind(l.sh))
	case id == "to-slots":
		l.sh.Go(ScreenLoadUp)
		l.sh.screens[ScreenLoadUp].(*loadupScreen).act("sweep")
	case kind == parts.KindPiece:
		l.choose(rest)
	case !ok:
	case kind == parts.KindDigit:
		l.digit(h, rest)
	case kind == parts.KindMember:
		l.officer = rest
		l.sh.refresh()
	case kind == parts.KindRig:
		l.with(h, rest)
	case kind == parts.KindPlace:
		l.settle(h, rest)
	default:
		l.search(h, id)
	}
}

// search does one act of a search.
func (l *lookforScreen) search(h hunt, id string) {
	item := l.n.d.Items[h.line].ID
	t := l.n.trail(h.line)
	all := l.n.steps(h, t, l.from[item])
	done, now, _ := order(all)
	if why, ok := strings.CutPrefix(id, "unsafe-"); ok && now != nil {
		l.look(item, now.key, ";skipped=unsafe;why="+why)
		return
	}
	switch id {
	case "not-here":
		if now != nil {
			l.look(item, now.key, "")
		}
	case "skip":
		l.ask(lookSkip)
	case "unsafe":
		l.ask(lookUnsafe)
	case "later":
		if now != nil {
			l.look(item, now.key, ";skipped="+id)
		}
	case "wrong-tap":
		if k := len(done) - 1; k >= 0 {
			l.look(item, done[k].key, ";wrong_tap")
		}
	case "look-again":
		l.from[item] = len(t.looks)
		l.home()
	case "found":
		l.found(h, t, now)
	case "with-someone":
		if now != nil && now.ask != "" {
			l.with(h, now.ask)
			return
		}
		l.ask(lookParty)
	case "stop-looking":
		if l.mode == lookStop {
			l.stop(h)
			return
		}
		l.ask(lookStop)
	case "neither":
		l.neither(h)
	}
}

// look logs that a place was looked at, or why it was not.
func (l *lookforScreen) look(item, key, rest string) {
	l.mode = lookSteps
	l.log(model.Act{Verb: model.Look, Item: item, Quantity: 1, Reading: "step=" + key + rest})
}

// found brings what was missing to the tarp; what lies where it was counted
// short was only miscounted.
func (l *lookforScreen) found(h hunt, t trail, now *step) {
	it := &l.n.d.Items[h.line]
	a := model.Act{Verb: model.Found, Item: it.ID, From: l.place(h).String(), To: "tarp", Quantity: h.n}
	if h.kind == hunting && now != nil && now.own && t.from.Kind != "" {
		a = model.Act{Verb: model.Count, Item: it.ID, From: t.from.String(), Quantity: h.n}
	}
	l.many(h, a)
}

// with brings what was missing to a party.
func (l *lookforScreen) with(h hunt, party string) {
	to := model.Place{Kind: model.With, Name: party}
	if l.n.s.KnownRig(party) {
		to.Kind = model.Riding
	}
	l.many(h, model.Act{Verb: model.Locate, Item: l.n.d.Items[h.line].ID, From: l.place(h).String(), To: to.String(), Quantity: h.n})
}

// settle ends a contest: eyes have the pieces at a place.
func (l *lookforScreen) settle(h hunt, to string) {
	it := &l.n.d.Items[h.line]
	a := model.Act{Verb: model.Settle, Item: it.ID, To: to, Quantity: 1}
	for _, c := range l.n.s.Line(h.line).Contest.Claims {
		if c.Place.String() == to && c.Holder != "" {
			a.Holder = c.Holder
			break
		}
	}
	if it.Quantity > 1 {
		l.then = a
		l.ask(lookAmount)
		return
	}
	l.mode = lookSteps
	l.log(a)
}

// neither opens a search: the piece is at none of the places claimed.
func (l *lookforScreen) neither(h hunt) {
	it := &l.n.d.Items[h.line]
	l.mode = lookSteps
	l.log(model.Act{Verb: model.Count, Item: it.ID, From: l.n.s.Line(h.line).Contest.Place.String(), Quantity: 0})
}

// stop closes the search, in the officer's name.
func (l *lookforScreen) stop(h hunt) {
	if l.officer == "" {
		return
	}
	a := model.Act{Verb: model.StopLook, By: l.officer, Item: l.n.d.Items[h.line].ID, Quantity: h.n, From: "unexplained", To: "lost"}
	l.sh.asOfficer(words.L("Stop looking"), func() {
		l.mode, l.officer = lookSteps, ""
		l.log(a)
	})
}

// place is where the books have what is looked for.
func (l *lookforScreen) place(h hunt) model.Place {
	if h.kind == closed {
		return model.Place{Kind: model.Lost}
	}
	return model.Place{Kind: model.Unexplained}
}

// many asks how many where it could be more than one.
func (l *lookforScreen) many(h hunt, a model.Act) {
	if h.n > 1 {
		l.then = a
		l.ask(lookAmount)
		return
	}
	l.mode = lookSteps
	l.give(h, a)
}

// give logs the act. A count is of all that lies there, not of what was found.
func (l *lookforScreen) give(h hunt, a model.Act) {
	if a.Verb == model.Count {
		if p, err := l.n.s.Resolve(a.From, h.line, l.n.scene.ID); err == nil {
			a.Quantity += l.n.s.Line(h.line).N(p)
		}
	}
	l.log(a)
}

// most is the largest number that the question can have for an answer.
func (l *lookforScreen) most(h hunt) int {
	if l.then.Verb == model.Settle {
		return l.n.d.Items[h.line].Quantity
	}
	return h.n
}

// digit takes one key of the pad.
func (l *lookforScreen) digit(h hunt, key string) {
	switch key {
	case "done":
		k, err := strconv.Atoi(l.typed)
		if err != nil || k < 1 || k > l.most(h) {
			return
		}
		a := l.then
		a.Quantity = k
		l.mode, l.typed = lookSteps, ""
		l.give(h, a)
		return
	case "delete":
		if k := len(l.typed); k > 0 {
			l.typed = l.typed[:k-1]
		}
	default:
		if len(l.typed) < 4 {
			l.typed += key
		}
	}
	l.sh.refresh()
}

func (l *lookforScreen) log(a model.Act) { l.sh.log(board.Tap{Acts: []model.Act{a}}) }

// leaveOpen goes back to the tarp; the search rides on the open list.
func (l *lookforScreen) leaveOpen() {
	l.mode, l.typed, l.officer = lookSteps, "", ""
	l.sh.Go(ScreenTarp)
}

// reply is the answer to the last act of this screen, in words.
func (l *lookforScreen) reply() (parts.StripView, bool) {
	s := l.sh.said
	if s == nil {
		return parts.StripView{}, false
	}
	if s.trouble == nil && (len(s.entries) == 0 || !lookVerbs[s.entries[0].Verb]) {
		return parts.StripView{}, false
	}
	if v, ok := l.n.answer(s); ok {
		return v, true
	}
	e := &s.entries[0]
	it := l.n.d.Item(e.Item)
	if it == nil || e.Verb == model.Look {
		return parts.StripView{}, false
	}
	what := some(it, e.Quantity)
	v := parts.StripView{ID: "reply", Tone: parts.StripOK, Keys: [2]parts.StripKey{{ID: "seen", Title: words.L("Seen")}}}
	switch e.Verb {
	case model.Found:
		v.Title, v.Second = words.F("Found: %s", what), words.L("It is on the tarp now. Load it with the rest.")
	case model.Locate:
		v.Title = words.F("%s: with %s", capital(what), l.n.partyName(partyOf(e.To)))
		v.Second = words.L("It is on the Bring back list, with the time.")
	case model.StopLook:
		v.Title, v.Second = words.F("Given up as lost: %s", what), words.F("Closed by %s. It can still be found later.", l.n.memberShort(e.By))
	case model.Settle:
		p, _ := model.ParsePlace(e.To)
		v.Title, v.Second = words.F("Settled: %s", capital(what)), words.F("Seen at %s.", l.n.placeName(p))
	default:
		v.Title = l.n.actLine(e)
	}
	return v, true
}

// lookforShows are the keys of this screen that log nothing.
var lookforShows = []string{"back", "seen", "look-again", "to-find", "to-slots", "piece:*"}

// lookVerbs are the acts of this screen.
var lookVerbs = map[model.Verb]bool{model.Look: true, model.Found: true, model.Locate: true, model.StopLook: true, model.Settle: true, model.Count: true}

func partyOf(place string) string {
	_, name, _ := strings.Cut(place, ":")
	return name
}
