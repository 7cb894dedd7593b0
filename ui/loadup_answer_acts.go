package ui

import (
	"strconv"
	"strings"

	"tarpside/board"
	"tarpside/model"
)

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
			l.countKit(n, p)
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

// countKit begins the count of what is in a kit.
func (l *loadupScreen) countKit(n *now, p piece) {
	l.st.item = p.item.ID
	l.st.count = &blindCount{kit: p.item.ID, lines: n.d.Inside(p.line), got: map[int]int{}, last: n.at}
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
