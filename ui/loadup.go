package ui

import (
	"fmt"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// loadupScreen is the put-back: the rig as a walker meets it, the compartment
// in front of him, and one piece at a time with what is asked of it.
type loadupScreen struct {
	sh    *Shell
	st    luState
	tree  *tree
	other *parts.Key
}

func newLoadUp(sh *Shell) screen {
	l := &loadupScreen{sh: sh}
	l.tree = newTree(l.act)
	l.tree.resized = func() {
		n := l.sh.now()
		l.tree.set(n.loadupView(&l.st, n.bodyWidth()))
	}
	l.other = parts.NewKey(parts.KeyView{ID: "other", Title: words.L("Other work"), Icon: "more", Tone: parts.Header}, func() { l.act("other") })
	return l
}

func (l *loadupScreen) body() fyne.CanvasObject { return l.tree.box }

func (l *loadupScreen) show(n *now) head {
	l.st.settle(n)
	v := parts.KeyView{ID: "other", Title: words.L("Other work"), Second: parts.Or(words.L("rig, driver"), words.L("rig")), Tone: parts.Header}
	if l.st.mode == luOther {
		v.Title, v.Second, v.State = words.L("Back"), words.L("to loading"), "open"
	}
	l.other.Set(v)
	l.tree.set(n.loadupView(&l.st, n.bodyWidth()))
	return n.loadupHead(&l.st, l.other)
}

// bodyWidth is the width of the body in design pixels.
func (n *now) bodyWidth() float32 {
	w := float32(1168)
	if n.root != nil && n.root.Size().Width > 0 {
		w = n.root.Size().Width / look.U(1000) * 1000
		if w < 1100 {
			w -= look.Floor - look.Rail
		}
		w -= look.Rail + 2*look.Gap
	}
	return w
}

func (n *now) loadupHead(st *luState, other *parts.Key) head {
	in, all := n.progress(st.rig)
	h := head{title: words.F("Load up %s", n.rigName(st.rig)), mark: n.mark(st.rig), middle: []fyne.CanvasObject{other}, widths: []float32{124}, gap: 8}
	h.sentence = n.doorWords(st.rig, *st.at)
	if h.sentence == "" {
		h.sentence = words.L("no slots in the table")
	}
	if st.mode == luSweep {
		h.sentence += words.L(", eyes on every slot")
	}
	if by := n.loader(st); by != "" && (st.mode != luSweep || !n.narrow()) {
		h.sentence += words.F(", %s loads", n.memberName(by))
	}
	h.big, h.bigWords, h.bigLine = fmt.Sprint(in), words.F("of %d lines in", all), n.roughly(st.rig, n.narrow())
	switch {
	case all == 0:
		h.big, h.bigWords, h.bigLine = "0", words.L("lines off"), parts.Or(words.L("nothing to put back"), words.L("nothing"))
	case n.narrow():
		h.bigWords = words.F("of %d in", all)
	}
	return h
}

// loadupView is the whole body as plain values.
func (n *now) loadupView(st *luState, width float32) node {
	side := min(max(width*0.445, 436), 620)
	cols := max(int((width-side-40)/142), 2)
	var left, right node
	switch {
	case st.count != nil:
		left, right = n.countView(st)
	case st.mode == luSweep:
		left, right = n.sweepBay(st, cols), n.sweepSide(st)
	case st.mode == luCollect:
		left, right = n.collectList(st), n.collectSide(st)
	case st.mode == luCarry:
		left, right = n.carryList(st), n.carrySide(st)
	case st.mode == luOther:
		left, right = n.otherList(st), n.otherSide(st)
	default:
		left, right = n.bayView(st, cols), n.sideView(st)
	}
	strip := n.loadupStrip(st)
	body := col(0, n.doorViews(st, width), row(0, col(0, left, sized(node{id: "strip", view: strip}, look.Floor)), sized(right, side)))
	return n.onlyReads(body, loadupShows...)
}

// loadupShows are the keys of Load up that log nothing.
var loadupShows = []string{"load", "sweep", "collect", "carry", "time", ScreenLeaving, "next-door", "next-eyes", "paper", "drop", "later", "again", "count-stop", "here", "seen", "rig:*", "member:*"}

// loadupStrip is the answer to the last touch and what comes next.
func (n *now) loadupStrip(st *luState) parts.StripView {
	v := parts.StripView{ID: "last"}
	undo := n.undoKey()
	if n.said != nil && st.said == nil {
		if a, ok := n.carryReply(st); ok {
			a.Keys = [2]parts.StripKey{undo}
			return a
		}
		if a, ok := n.answer(n.said); ok {
			if n.said.trouble == nil {
				a.Keys = [2]parts.StripKey{undo}
			}
			return a
		}
	}
	if n.pic.ReadOnly != "" {
		return parts.StripView{ID: "reply", Tone: parts.StripReadOnly, Title: words.L("This window only reads"), Second: words.Said(n.pic.ReadOnly)}
	}
	v.Title = n.thenWords(st)
	if taps := n.taps(1); len(taps) > 0 {
		v.Second = n.lastLine(taps[0])
	}
	if v.Title == "" {
		v.Title, v.Second = v.Second, ""
	}
	if n.said != nil && len(n.said.entries) > 0 && n.said.entries[0].Reply.Word == model.OK && st.said == nil {
		v.ID, v.Tone = "reply", parts.StripOK
		v.Title, v.Second = v.Second, v.Title
	}
	v.Keys[0] = undo
	return v
}

// undoKey takes the newest touch back. Where that one cannot be taken back
// there is no key: it would take back another one, unseen.
func (n *now) undoKey() parts.StripKey {
	taps := n.taps(1)
	back, left := n.undoFor()
	if left == 0 || len(taps) == 0 {
		return parts.StripKey{}
	}
	e := taps[0][0]
	if e.Verb != model.Correct && e.Tap != back.Mends && e.ID.String() != back.Mends {
		return parts.StripKey{}
	}
	return parts.StripKey{ID: "undo", Title: words.L("Undo")}
}

// thenWords is what comes after the piece in hand.
func (n *now) thenWords(st *luState) string {
	if st.count != nil {
		return words.L("Nothing is logged until the last box is done")
	}
	if st.mode != luLoad {
		return ""
	}
	hand, _ := n.inHand(st)
	var out []string
	for _, l := range n.atDoor(st) {
		if l.Line != hand.line || hand.item == nil {
			name := n.d.Items[l.Line].Short()
			if l.TwoPerson {
				name += words.L(" (two people)")
			}
			out = append(out, name)
		}
	}
	if len(out) == 0 {
		if next, k, ok := n.nextDoor(st); ok {
			return parts.B(words.L("Then")) + " " + next + ", " + words.N("%d line", "%d lines", k)
		}
		return ""
	}
	return parts.B(words.L("Then")) + " " + parts.Or(fewOf(out, 2), fewOf(out, 1), words.N("%d line", "%d lines", len(out)))
}
