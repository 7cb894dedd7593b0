package ui

import (
	"fmt"
	"reflect"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// leavingScreen is the last look round a rig, its open list and the
// signature. It never stops a rig.
type leavingScreen struct {
	sh   *Shell
	seen map[string]map[string]int64 // by rig: when each word was looked at

	view   leavingView
	root   *fyne.Container
	tabs   *rigHead
	aloud  *parts.Key
	looks  []*lookKey
	ground *reading[openHead]
	list   [2]*reading[openDrawn]
	rows   *openLayout
	scroll *parts.Scroller
	swap   *reading[string]
	others *reading[carriedDrawn]
	tagged *reading[taggedDrawn]
	sent   *reading[sentOne]
	must   *parts.Key
	hold   *parts.HoldKey
	note   *parts.Strip
	back   *parts.Key
	signer *signerKeys
}

// openHead is the head of the open list.
type openHead struct {
	Lines int
	Name  string
}

// carriedDrawn is what rides on the rig for others.
type carriedDrawn struct {
	Lines int
	List  []carriedView
	Role  look.Role
}

// taggedDrawn is what rides home out of service.
type taggedDrawn struct {
	Names []string
	Role  look.Role
}

// sentOne is what the one rig could not do.
type sentOne struct {
	Sent sentView
	Role look.Role
}

func newLeaving(sh *Shell) screen {
	l := &leavingScreen{sh: sh, seen: map[string]map[string]int64{}}
	l.tabs = newRigHead(sh, l.turn)
	l.aloud = parts.NewKey(parts.KeyView{ID: "read-aloud", Title: words.L("Read\naloud"), Icon: "say", Tone: parts.Header}, func() {
		a := newAloud(sh, words.F("%s leaving", l.view.Name), func(n *now) []aloudPage {
			v := n.leavingOf(sh.rig, l.seen[sh.rig])
			return v.aloud()
		})
		a.paper = "open_" + sh.rig
		sh.open(a)
	})
	for range looks {
		l.looks = append(l.looks, newLookKey(l.look))
	}
	l.ground = newReading(paintOpenHead)
	l.list[0], l.list[1] = newReading(paintOpenList), newReading(paintOpenList)
	l.rows = &openLayout{}
	l.scroll = parts.NewScroller(&fyne.Container{Layout: l.rows, Objects: []fyne.CanvasObject{l.list[0].obj, l.list[1].obj}})
	l.swap = newReading(paintSwap)
	l.others = newReading(paintCarried)
	l.tagged = newReading(paintTagged)
	l.sent = newReading(paintSentOne)
	l.must = parts.NewKey(parts.KeyView{ID: "release", Title: words.L("Called away now?"), Second: words.L("Split it: grab or leave"), Icon: "leave", Lay: parts.LayLeft, Role: look.TileName},
		func() { sh.away = sh.rig; sh.open(newRelease(sh, sh.rig)) })
	l.hold = parts.NewHoldKey(parts.HoldView{}, l.sign)
	l.note = parts.NewStrip(parts.StripView{}, func(string) { sh.said = nil; sh.refresh() })
	l.back = parts.NewKey(parts.KeyView{ID: "arrive", Title: words.L("It is back"), Icon: "in", Lay: parts.LayLeft, Role: look.Name}, l.isBack)
	l.signer = newSignerKeys(sh)
	l.root = box(l.layout)
	return l
}

func (l *leavingScreen) body() fyne.CanvasObject { return l.root }

// look marks a word as looked at, or takes the mark away.
func (l *leavingScreen) look(id string) {
	if l.view.Left {
		return
	}
	if l.seen[l.sh.rig] == nil {
		l.seen[l.sh.rig] = map[string]int64{}
	}
	if l.seen[l.sh.rig][id] > 0 {
		delete(l.seen[l.sh.rig], id)
	} else {
		l.seen[l.sh.rig][id] = l.sh.opts.Now().UnixMilli()
	}
	l.sh.refresh()
}

// sign logs that the rig leaves. Without a name it asks for one.
func (l *leavingScreen) sign() {
	if l.signer.chosen == "" {
		l.signer.all()
		return
	}
	l.sh.log(board.Tap{Acts: []model.Act{{Verb: model.Leave, By: l.signer.chosen, Rig: l.sh.rig, Quantity: model.Blank, Note: l.signedNote()}}})
}

// signedNote is what went with the signature.
func (l *leavingScreen) signedNote() string {
	said := words.F("%s open. %s", words.N("%d line", "%d lines", l.view.Lines), l.view.unseenWords())
	if passed := l.sh.now().unopened(l.sh.rig); len(passed) > 0 {
		said += " " + words.F("Not opened: %s.", and(passed))
	}
	return said
}

// isBack logs that the rig is here again: the next leaving is looked round
// anew.
func (l *leavingScreen) isBack() {
	delete(l.seen, l.sh.rig)
	l.sh.log(board.Tap{Acts: []model.Act{{Verb: model.Arrive, Rig: l.sh.rig, Quantity: model.Blank}}})
}

func (l *leavingScreen) show(n *now) head {
	v := n.leavingOf(n.rig, l.seen[n.rig])
	again := !reflect.DeepEqual(v, l.view)
	l.view = v
	next := true
	for i, k := range v.Looks {
		l.looks[i].set(k, next && !k.Seen && !v.Left, v.Left)
		next = next && k.Seen
	}
	l.ground.set(openHead{v.Lines, v.Name}, "open", words.F("%s of %s", words.N("%d open line", "%d open lines", v.Lines), v.Name))
	l.swap.set(v.Swap, "swap", v.Swap)
	role := l.sent.view.Role
	l.setBeside(carriedDrawn{v.CarriedN, v.Carried, role}, taggedDrawn{v.Tagged, role}, sentOne{v.Sent, role})
	l.showSign(n, &v)
	objs := l.objects(n, &v)
	if again || !reflect.DeepEqual(l.root.Objects, objs) {
		l.root.Objects = objs
		relay(l.root)
	}
	return l.head(n, &v)
}

// setBeside shows what stands beside the open list.
func (l *leavingScreen) setBeside(carried carriedDrawn, tagged taggedDrawn, sent sentOne) {
	var names []string
	for _, c := range carried.List {
		names = append(names, c.Owner+": "+strings.Join(c.Names, ", "))
	}
	l.others.set(carried, "carried", words.F("%d carried for others. %s", carried.Lines, strings.Join(names, ". ")))
	l.tagged.set(tagged, "tagged", words.F("%d ride home tagged. %s", len(tagged.Names), strings.Join(tagged.Names, ", ")))
	l.sent.set(sent, "if-sent-now", words.F("If sent now: %s", sent.Sent.whole()))
}

func (l *leavingScreen) showSign(n *now, v *leavingView) {
	l.signer.show(n, words.F("For %s, with %s", v.Name, words.N("%d open line", "%d open lines", v.Lines)), n.actingFirst(n.signers(n.rig)))
	h := parts.HoldView{ID: "sign", Mark: n.mark(n.rig), Title: v.openTitle(), Sure: words.F("Sign for %s", n.rig), Tone: parts.Filled}
	who := words.L("Choose who signs.")
	if l.signer.chosen != "" {
		who = n.memberFull(l.signer.chosen) + "."
	}
	h.Second = who + " " + v.unseenForms()
	if v.StillOut > 0 {
		h.Second = words.F("%s %s still out here. %s", who, words.N("%d line", "%d lines", v.StillOut), v.unseenForms())
	}
	l.hold.Set(n.shutHold(h))
	note := parts.StripView{ID: "reply", Tone: parts.StripOK, Title: words.F("Left at %s, signed by %s", v.LeftAt, v.LeftBy), Second: words.N("%d line is open. It goes to Bring back.", "%d lines are open. They go to Bring back.", v.Lines)}
	if v.Lines == 0 {
		note.Second = words.L("Nothing is open.")
	}
	if s, ok := l.trouble(n); ok {
		note = s
	}
	l.note.Set(note)
	l.back.Set(n.shutKey(parts.KeyView{ID: "arrive", Title: words.L("It is back"), Icon: "in", Lay: parts.LayLeft, Role: look.Name}))
}

// trouble is a refusal, or what kept an act from the log.
func (l *leavingScreen) trouble(n *now) (parts.StripView, bool) {
	if n.said == nil {
		return parts.StripView{}, false
	}
	s, ok := n.answer(n.said)
	return s, ok && (s.Tone == parts.StripRefused || s.Tone == parts.StripWrong)
}

func (l *leavingScreen) objects(n *now, v *leavingView) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, k := range l.looks {
		out = append(out, k.touch)
	}
	out = append(out, l.ground.obj, l.scroll, l.others.obj, l.tagged.obj, l.sent.obj)
	if v.Swap != "" {
		out = append(out, l.swap.obj)
	}
	if v.StillOut > 0 && !v.Left {
		out = append(out, l.must)
	}
	_, failed := l.trouble(n)
	switch {
	case failed:
		return append(out, l.note)
	case v.Left:
		return append(out, l.note, l.back)
	}
	return append(out, l.hold, l.signer.root)
}

// turn turns the screen to another rig. A signature that was begun for the one
// before is not carried over.
func (l *leavingScreen) turn(rig string) {
	if rig != l.sh.rig {
		l.signer.chosen = ""
		l.hold.Disarm()
	}
	l.sh.rig, l.sh.said = rig, nil
	l.sh.refresh()
}

func (l *leavingScreen) head(n *now, v *leavingView) head {
	h := head{title: words.F("%s leaving", v.Name), mark: n.mark(n.rig), middle: []fyne.CanvasObject{l.aloud}, widths: []float32{aloudWide}}
	switch {
	case v.Left:
		h.title = words.F("%s has left", v.Name)
		h.sentence = words.F("At %s, signed by %s", v.LeftAt, v.LeftBy)
	case v.Others == 0:
		h.sentence = words.L("The last rig here")
	case v.LastLook != "":
		h.sentence = words.F("%d of 7 looked at, last %s", len(looks)-len(v.Unseen), v.LastLook)
	default:
		h.sentence = words.L("Walk round, touch each word")
	}
	says := parts.Or(words.F("leaving: %s", low(h.sentence)), words.L("leaving"))
	if v.Left {
		says = parts.Or(words.F("has left: %s", low(h.sentence)), words.F("left at %s", v.LeftAt), words.L("has left"))
	}
	l.tabs.into(&h, n, n.rig, n.headRoom()-aloudWide-3*look.Gap, func(rig string) parts.RigTabView {
		if rig == n.rig {
			return parts.RigTabView{Name: v.Name, Count: says}
		}
		open := len(n.s.Leaving(rig))
		return parts.RigTabView{Name: rig, Count: parts.Or(words.F("%s open", parts.B(fmt.Sprint(open))), parts.B(fmt.Sprint(open)))}
	})
	return h
}
