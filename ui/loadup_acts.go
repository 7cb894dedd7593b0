package ui

import (
	"fmt"
	"strconv"
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
	if id == "vouch" || strings.HasPrefix(id, "vouch-") {
		l.vouch(n, strings.TrimPrefix(strings.TrimPrefix(id, "vouch"), "-"))
		return
	}
	switch id {
	case "undo":
		if tap, left := n.undoFor(); left > 0 {
			st.choose("")
			l.sh.log(tap)
		}
	case "seen":
		l.sh.said = nil
	case "other":
		if st.mode == luOther {
			st.mode = luLoad
		} else {
			st.mode = luOther
		}
		st.count = nil
	case "load":
		st.mode, st.empty, st.count = luLoad, "", nil
		st.choose("")
	case "sweep":
		st.mode, st.empty, st.count = luSweep, "", nil
	case "collect":
		st.mode, st.count = luCollect, nil
		st.choose("")
	case "carry-others":
		st.mode, st.count = luCarry, nil
	case "next-door":
		if d, k := n.nextStop(st); k > 0 {
			l.sh.said = nil
			st.stand(n, d)
		}
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

// putBack is a touch about the piece in hand.
func (l *loadupScreen) putBack(n *now, id string, p piece) {
	st := &l.st
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
		to := map[string]model.PlaceKind{"charge": model.Charging, "bag": model.Bagged}[id]
		l.remember(n)
		var acts []model.Act
		if r := l.reading(n, p, false); r != "" {
			acts = append(acts, l.by(n, model.Act{Verb: model.CheckIt, Item: p.item.ID, Quantity: p.n, Reading: r}))
		}
		acts = append(acts, l.by(n, model.Act{Verb: model.Verb(id), Item: p.item.ID, Quantity: p.n, From: p.from.String(), To: string(to), Reading: l.failed(n, p)}))
		l.log(acts...)
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
		l.sh.log(board.Tap{Acts: acts})
	}
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
func (l *loadupScreen) log(acts ...model.Act) {
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

// answer takes yes or no to a question. No to "all in it?" is a count.
func (l *loadupScreen) answer(n *now, id string) {
	st := &l.st
	check, word, _ := strings.Cut(id, "=")
	p, ok := n.inHand(st)
	if !ok {
		return
	}
	if check == model.CountCheck && p.item.Kind == model.Kit {
		if word == "no" && len(n.d.Inside(p.line)) > 0 {
			st.item = p.item.ID
			st.count = &blindCount{kit: p.item.ID, lines: n.d.Inside(p.line), got: map[int]int{}, last: n.at}
			return
		}
		if n.s.KitState(p.line) == model.ShortUsable && word == "yes" {
			word = "short"
		}
	}
	if st.given[check] == word {
		word = ""
	}
	st.given[check] = word
}

// digit is a touch on the pad.
func (l *loadupScreen) digit(n *now, d string) {
	st := &l.st
	typed := &st.typed
	if c := st.count; c != nil {
		c.rest(n.at)
		c.last = n.at
		typed = &c.typed
		if d != "done" {
			c.again = false
		}
	}
	switch {
	case d == "delete":
		*typed = (*typed)[:max(len(*typed)-1, 0)]
	case d != "done":
		if len(*typed) < 5 {
			*typed = strings.TrimPrefix(*typed, "0") + d
		}
	case *typed == "":
	case st.count != nil:
		l.counted(n)
	default:
		l.read(n)
	}
}

// read takes a reading. Where nothing else is asked it goes in at once.
func (l *loadupScreen) read(n *now) {
	st := &l.st
	p, ok := n.inHand(st)
	if !ok {
		return
	}
	l.remember(n)
	st.pad, st.typed = n.missingNumber(st, p), ""
	if st.pad == "" && len(p.item.Checks) == 1 {
		l.stow(n, p, "")
	}
}

// counted takes the figure of one box; the last one logs them all.
func (l *loadupScreen) counted(n *now) {
	st, c := &l.st, l.st.count
	k, err := strconv.Atoi(c.typed)
	if err != nil {
		return
	}
	c.got[c.lines[c.at]], c.typed = k, ""
	for c.at = 0; c.at < len(c.lines); c.at++ {
		if _, ok := c.got[c.lines[c.at]]; !ok {
			return
		}
	}
	from := "home"
	if c.kit != "" {
		from = "kit:" + c.kit
	}
	var acts []model.Act
	for _, line := range c.lines {
		acts = append(acts, l.by(n, model.Act{Verb: model.Count, Item: n.d.Items[line].ID, Quantity: c.got[line], From: from}))
		if c.kit == "" {
			st.seen[n.d.Items[line].ID] = true
		}
	}
	st.count = nil
	l.sh.log(board.Tap{Acts: acts})
}

// slot is a touch on a slot: a piece to load, an empty slot, a line to count.
func (l *loadupScreen) slot(n *now, item string) {
	st := &l.st
	line := n.d.ItemIndex(item)
	if line < 0 {
		return
	}
	if c := st.count; c != nil {
		for k, i := range c.lines {
			if i == line {
				c.at, c.typed, c.last = k, "", n.at
			}
		}
		return
	}
	if st.mode != luSweep {
		l.sh.said = nil
		st.choose(item)
		return
	}
	if n.d.Items[line].Quantity > 1 {
		st.count = &blindCount{lines: []int{line}, got: map[int]int{}, last: n.at}
		st.empty = ""
		return
	}
	if st.empty == item {
		item = ""
	}
	st.empty = item
}

// sweep is a touch on a key of the sweep.
func (l *loadupScreen) sweep(n *now, id string) {
	st := &l.st
	switch id {
	case "here":
		st.empty = ""
	case "not-here":
		act := l.by(n, model.Act{Verb: model.Count, Item: st.empty, Quantity: 0, From: "home"})
		st.empty = ""
		l.sh.log(board.Tap{Acts: []model.Act{act}})
	case "not-opened":
		name := n.doorWords(st.rig, *st.at)
		st.mode = luLoad
		l.sh.log(board.Tap{Acts: []model.Act{l.by(n, model.Act{Verb: model.Note, Rig: st.rig, Quantity: model.Blank,
			Reading: notOpened(st.rig, *st.at), Note: name + " of " + n.rigName(st.rig) + " not opened"})}})
	case "all-here":
		if n.sweepReason(st) != "" {
			return
		}
		var acts []model.Act
		for _, i := range n.sweepLines(st) {
			acts = append(acts, l.by(n, model.Act{Verb: model.Seen, Item: n.d.Items[i].ID, Quantity: n.s.Line(i).N(n.s.HomeOf(i)), From: "home", To: "home"}))
		}
		st.mode = luLoad
		if len(acts) > 0 {
			l.sh.log(board.Tap{Acts: acts})
		}
	}
}

// member chooses who loads, or the officer who lets a piece pass.
func (l *loadupScreen) member(n *now, id string) {
	st := &l.st
	if !st.judges {
		if st.loader == nil {
			st.loader = map[string]string{}
		}
		st.loader[st.rig] = id
		return
	}
	p, ok := n.inHand(st)
	if !ok {
		return
	}
	failing, _ := n.failing(st, p)
	var acts []model.Act
	for _, f := range failing {
		acts = append(acts, model.Act{Verb: model.Override, By: id, Item: p.item.ID, Quantity: model.Blank, Reading: f})
	}
	l.log(append(acts, l.home(n, p, model.Stow, joined(l.reading(n, p, false), l.anyway())))...)
}

// lying is a touch on a piece at a place: back to the tarp, or carried.
func (l *loadupScreen) lying(n *now, id string) {
	st := &l.st
	if st.mode == luCarry {
		for _, x := range n.others(st.rig) {
			if lyingID(n, x) == id {
				l.sh.log(board.Tap{Acts: []model.Act{l.by(n, model.Act{Verb: model.Carry, Item: n.d.Items[x.line].ID, Quantity: x.n, From: x.place.String(), To: "riding:" + st.rig})}})
			}
		}
		return
	}
	for _, x := range n.lyingOut(st.rig) {
		if lyingID(n, x) != id {
			continue
		}
		if st.item = id; x.n == 1 {
			l.quantity(n, "all")
		}
	}
}

// quantity says how many of a line are back.
func (l *loadupScreen) quantity(n *now, id string) {
	for _, x := range n.lyingOut(l.st.rig) {
		if lyingID(n, x) != l.st.item {
			continue
		}
		k := x.n
		if id != "all" {
			fmt.Sscan(id, &k)
		}
		l.st.item = ""
		l.sh.log(board.Tap{Acts: []model.Act{l.back(n, x, k)}})
	}
}

func (l *loadupScreen) back(n *now, x lying, k int) model.Act {
	return l.by(n, model.Act{Verb: model.Return, Item: n.d.Items[x.line].ID, Quantity: k, From: x.place.String(), To: "tarp"})
}

// returnAll brings all of the rig from one place to the tarp.
func (l *loadupScreen) returnAll(n *now, place string) {
	var acts []model.Act
	for _, x := range n.lyingOut(l.st.rig) {
		if x.place.Name == place {
			acts = append(acts, l.back(n, x, x.n))
		}
	}
	if len(acts) > 0 {
		l.st.item = ""
		l.sh.log(board.Tap{Acts: acts})
	}
}

// vouch takes a driver's word that all of a rig is aboard.
func (l *loadupScreen) vouch(n *now, rig string) {
	if rig == "" {
		for _, x := range n.others(l.st.rig) {
			rig = n.d.Items[x.line].Rig
		}
	}
	l.sh.log(board.Tap{Acts: []model.Act{l.by(n, model.Act{Verb: model.Vouch, Rig: rig, Quantity: model.Blank})}})
}
