package ui

import (
	"strings"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/parts"
)

// act is a touch, by the id of the part.
func (l *loadupScreen) act(id string) {
	n, st := l.sh.now(), &l.st
	kind, rest, typed := strings.Cut(id, ":")
	if !typed {
		kind, rest = "", id
	}
	switch kind {
	case "digit":
		l.digit(n, rest)
	case "answer":
		l.answer(n, rest)
	case parts.KindSlot:
		l.slot(n, rest)
	case parts.KindDoor:
		for _, d := range n.doors(st.rig) {
			if n.doorID(st.rig, d) == rest {
				l.sh.said = nil
				st.stand(n, d)
			}
		}
	case parts.KindMember:
		l.member(n, rest)
	case parts.KindRig:
		l.sh.rig = rest
	case parts.KindPiece:
		l.lying(n, rest)
	case parts.KindQuantity:
		l.quantity(n, rest)
	default:
		l.verb(n, rest)
	}
	l.sh.refresh()
}

// take puts a piece that was picked on the Tarp in hand, at its own door.
func (l *loadupScreen) take(n *now, item string) {
	it := n.d.Item(item)
	if it == nil {
		return
	}
	l.sh.rig, l.sh.said = it.Rig, nil
	if l.st.rig != it.Rig {
		l.st = luState{rig: it.Rig, loader: l.st.loader}
	}
	if s := n.d.Slot(it.Slot); s != nil {
		l.st.stand(n, doorOf(s))
	}
	l.st.choose(item)
}

// verb is a touch on a key that does something.
func (l *loadupScreen) verb(n *now, id string) {
	st := &l.st
	if check, ok := strings.CutPrefix(id, "read-"); ok {
		st.pad, st.typed = check, ""
		return
	}
	if place, ok := strings.CutPrefix(id, "return-"); ok {
		l.returnAll(n, place)
		return
	}
	if id == "carry-it" || strings.HasPrefix(id, "swap-") {
		l.carryOrSwap(n, id)
		return
	}
	if id == "vouch" || strings.HasPrefix(id, "vouch-") {
		l.vouch(n, strings.TrimPrefix(strings.TrimPrefix(id, "vouch"), "-"))
		return
	}
	if l.turn(n, id) {
		return
	}
	switch id {
	case "drop-it":
		st.bring = ""
	case "undo":
		if tap, left := n.undoFor(); left > 0 {
			st.choose("")
			l.sh.log(tap)
		}
	case "seen":
		l.sh.said = nil
	case "paper":
		l.sh.onPaper("putback_" + st.rig)
	case "count-stop":
		st.count = nil
	case "later":
		st.pad, st.typed = "", ""
	case "drop":
		st.choose("")
	case "not-here", "here", "all-here", "not-opened":
		l.sweep(n, id)
	default:
		if p, ok := n.inHand(st); ok {
			l.putBack(n, id, p)
		}
	}
}

// turn takes the screen to other work; false where the touch is no such one.
func (l *loadupScreen) turn(n *now, id string) bool {
	st := &l.st
	switch id {
	case "other":
		if st.mode == luOther {
			st.mode = luLoad
		} else {
			st.mode = luOther
		}
		st.count, st.bring, l.sh.said = nil, "", nil
	case "load":
		st.mode, st.empty, st.count, st.bring, l.sh.said = luLoad, "", nil, "", nil
		st.choose("")
	case "sweep":
		st.mode, st.empty, st.count, l.sh.said = luSweep, "", nil, nil
	case "time":
		l.sh.open(newPutBackTime(l.sh, st.rig))
	case "collect":
		st.mode, st.count, l.sh.said = luCollect, nil, nil
		st.choose("")
	case "carry":
		st.mode, st.count, l.sh.said = luCarry, nil, nil
	case ScreenLeaving:
		l.sh.rig, l.sh.said = st.rig, nil
		l.sh.Go(ScreenLeaving)
	case "next-door":
		if d, k := n.nextStop(st); k > 0 {
			l.sh.said = nil
			st.stand(n, d)
		}
	case "next-eyes":
		if d, k := n.unseenDoor(st); k > 0 {
			l.sh.said = nil
			st.stand(n, d)
			st.mode, st.empty, st.count = luSweep, "", nil
		}
	default:
		return false
	}
	return true
}

// putBack is a touch about the piece in hand.
func (l *loadupScreen) putBack(n *now, id string, p piece) {
	st := &l.st
	if check, ok := strings.CutPrefix(id, "never-"); ok {
		if c := n.d.Check(check); c != nil {
			st.given[check] = c.NeverWord
		}
		return
	}
	switch id {
	case "stow":
		l.stow(n, p, "")
	case "unused":
		l.stow(n, p, model.WordUnused)
	case "as-is":
		l.stow(n, p, model.WordAsIs)
	case "in-anyway":
		st.anyway = true
		if p.tagged {
			l.log(l.home(n, p, model.StowTagged, model.WordInAnyway))
		} else if len(p.item.Checks) == 0 {
			l.stow(n, p, "")
		}
	case "stow-tagged":
		l.log(l.home(n, p, model.StowTagged, ""))
	case "tag":
		tag := l.by(n, model.Act{Verb: model.Tag, Item: p.item.ID, Quantity: p.n, Reading: l.failed(n, p)})
		l.log(tag, l.home(n, p, model.StowTagged, l.anyway()))
	case "charge", "bag":
		l.setAside(n, id, p)
	case "count":
		l.countKit(n, p)
	case "override":
		st.judges = true
	case "again":
		failing, _ := n.failing(st, p)
		for _, f := range failing {
			delete(st.given, f)
		}
		st.said, st.judges = nil, false
		st.pad, st.typed = n.firstNumber(p, st), ""
	case "unstow", "unstow-other":
		c := n.cures(st, p)
		items := c.near
		if id == "unstow-other" {
			items = c.other
		}
		st.item = p.item.ID
		var acts []model.Act
		for _, it := range items {
			i := n.d.ItemIndex(it)
			acts = append(acts, l.by(n, model.Act{Verb: model.Unstow, Item: it, Quantity: n.s.Line(i).N(n.s.HomeOf(i)), From: "home", To: "tarp"}))
		}
		l.move(acts...)
	}
}

// move logs acts that are not about the piece in hand.
func (l *loadupScreen) move(acts ...model.Act) {
	l.sh.unlessHeld(acts, func(acts []model.Act) { l.sh.log(board.Tap{Acts: acts}) })
}

// setAside puts the piece on the charger or into a bag, with what was read of
// it: a failing answer stays open until one passes.
func (l *loadupScreen) setAside(n *now, verb string, p piece) {
	to := map[string]model.PlaceKind{"charge": model.Charging, "bag": model.Bagged}[verb]
	l.remember(n)
	var acts []model.Act
	if r := l.reading(n, p, false); r != "" {
		acts = append(acts, l.by(n, model.Act{Verb: model.CheckIt, Item: p.item.ID, Quantity: p.n, Reading: r}))
	}
	acts = append(acts, l.by(n, model.Act{Verb: model.Verb(verb), Item: p.item.ID, Quantity: p.n, From: p.from.String(), To: string(to), Reading: l.failed(n, p)}))
	l.log(acts...)
}

// by puts the loader's name to an act.
func (l *loadupScreen) by(n *now, a model.Act) model.Act {
	if a.By == "" {
		a.By = n.loader(&l.st)
	}
	return a
}

func (l *loadupScreen) home(n *now, p piece, verb model.Verb, reading string) model.Act {
	return l.by(n, model.Act{Verb: verb, Item: p.item.ID, Rig: l.st.rig, Quantity: p.n, From: p.from.String(), To: "home", Reading: reading})
}

func (l *loadupScreen) anyway() string {
	if l.st.anyway {
		return model.WordInAnyway
	}
	return ""
}

// stow puts the piece in with what was answered; yes stands for every word
// check that was not. A number is never made up: the pad comes up for it.
func (l *loadupScreen) stow(n *now, p piece, word string) {
	st := &l.st
	l.remember(n)
	reading := word
	if word != model.WordUnused {
		if word == "" {
			if st.pad = n.missingNumber(st, p); st.pad != "" {
				return
			}
		}
		reading = l.reading(n, p, word == "")
		if word != "" {
			reading = joined(reading, word)
		}
	}
	l.log(l.home(n, p, model.Stow, joined(reading, l.anyway())))
}

// missingNumber is a number check of the piece that was not read.
func (n *now) missingNumber(st *luState, p piece) string {
	for _, a := range p.item.Checks {
		if c := n.d.Check(a.Check); c != nil && c.Number && st.given[a.Check] == "" {
			return a.Check
		}
	}
	return ""
}

// remember keeps what is typed as the answer it is.
func (l *loadupScreen) remember(n *now) {
	if st := &l.st; st.pad != "" && st.typed != "" {
		st.given[st.pad] = st.typed
	}
}

// reading is what was answered, in the words of the log. With rest, a word
// check without an answer is answered yes: the key says so.
func (l *loadupScreen) reading(n *now, p piece, rest bool) string {
	var out []string
	for _, a := range p.item.Checks {
		word := l.st.given[a.Check]
		c := n.d.Check(a.Check)
		if word == "" && rest && c != nil && !c.Number {
			word = "yes"
			if a.Check == model.CountCheck && p.item.Kind == model.Kit && n.s.KitState(p.line) == model.ShortUsable {
				word = "short"
			}
			l.st.given[a.Check] = word
		}
		if word != "" {
			out = append(out, a.Check+"="+word)
		}
	}
	return strings.Join(out, ";")
}

// failed is what does not pass, as words for a tag.
func (l *loadupScreen) failed(n *now, p piece) string {
	failing, _ := n.failing(&l.st, p)
	var out []string
	for _, f := range failing {
		if word := l.st.given[f]; word != "" {
			out = append(out, f+"="+word)
		}
	}
	return strings.Join(out, ";")
}

func joined(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ";" + b
}

// log logs acts about the piece in hand. A refusal of the last is a question;
// else the next piece comes up.
func (l *loadupScreen) log(acts ...model.Act) { l.sh.unlessHeld(acts, l.logFree) }

// logFree is log for pieces that nobody holds.
func (l *loadupScreen) logFree(acts []model.Act) {
	st := &l.st
	entries := l.sh.log(board.Tap{Acts: acts})
	if l.sh.said.trouble != nil {
		return
	}
	st.pad, st.typed, st.judges = "", "", false
	for i := range entries {
		if e := &entries[i]; e.Reply.Word == model.Refused {
			st.said = e
			return
		}
	}
	st.choose("")
}
