package ui

import (
	"fmt"
	"reflect"
	"slices"
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
	tabs   map[string]*parts.RigTab
	aloud  *parts.Key
	more   *parts.Key // the rigs that have no tab
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
	l := &leavingScreen{sh: sh, seen: map[string]map[string]int64{}, tabs: map[string]*parts.RigTab{}}
	l.aloud = parts.NewKey(parts.KeyView{ID: "read-aloud", Title: words.L("Read\naloud"), Icon: "say", Tone: parts.Header}, func() {
		a := newAloud(sh, words.F("%s leaving", l.view.Name), func(n *now) []aloudPage {
			v := n.leavingOf(sh.rig, l.seen[sh.rig])
			return v.aloud()
		})
		a.paper = "open_" + sh.rig
		sh.open(a)
	})
	l.more = parts.NewKey(parts.KeyView{}, l.otherRigs)
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
		func() { sh.open(newRelease(sh, sh.rig)) })
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
	return words.F("%s open. %s", words.N("%d line", "%d lines", l.view.Lines), l.view.unseenWords())
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
	l.sent.set(sent, "if-sent-now", words.F("If sent now: %s", sent.Sent.words(sent.Sent.count())))
}

func (l *leavingScreen) showSign(n *now, v *leavingView) {
	l.signer.show(n, words.F("For %s, with %s", v.Name, words.N("%d open line", "%d open lines", v.Lines)), n.actingFirst(n.signers(n.rig)))
	h := parts.HoldView{ID: "sign", Title: v.openTitle(), Sure: words.L("Sign"), Tone: parts.Filled}
	who := words.L("Choose who signs.")
	if l.signer.chosen != "" {
		who = n.memberFull(l.signer.chosen) + "."
	}
	h.Second = who + " " + v.unseenForms()
	if v.StillOut > 0 {
		h.Second = words.F("%s %s still out here. %s", who, words.N("%d line", "%d lines", v.StillOut), v.unseenForms())
	}
	l.hold.Set(n.shutHold(h))
	note := parts.StripView{ID: "reply", Tone: parts.StripOK, Title: words.F("Left at %s, signed by %s", v.LeftAt, v.LeftBy), Second: words.F("%s open. They go to Bring back.", words.N("%d line", "%d lines", v.Lines))}
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

func (l *leavingScreen) head(n *now, v *leavingView) head {
	h := head{title: parts.Or(words.F("%s leaving", v.Name), words.F("%s leaving", n.rig)), mark: n.mark(n.rig), gap: look.Gap}
	switch {
	case v.Left:
		h.title = parts.Or(words.F("%s has left", v.Name), words.F("%s has left", n.rig))
		h.sentence = words.F("At %s, signed by %s", v.LeftAt, v.LeftBy)
	case v.Others == 0:
		h.sentence = words.L("The last rig here")
	case v.LastLook != "":
		h.sentence = words.F("%d of 7 looked at, last %s", len(looks)-len(v.Unseen), v.LastLook)
	default:
		h.sentence = words.L("Walk round, touch each word")
	}
	rigs := n.present()
	wide := float32(1280)
	if n.root != nil && n.root.Size().Width > 0 {
		wide = design(n.root.Size().Width)
	}
	title := float32(400)
	if wide < 1100 {
		title = 300 // a smaller title: every rig here has its tab
	}
	room := wide - look.Rail - clockRoom - title
	const aloudW = 112
	rigs, rest := n.tabbed(rigs, max(2, int((room-aloudW)/(look.Floor+look.Gap))))
	count := float32(len(rigs))
	if rest > 0 {
		count++
	}
	tab := min((room-aloudW)/count-look.Gap, 140)
	for _, r := range rigs {
		open := len(n.s.Leaving(r))
		t := parts.RigTabView{ID: r, Mark: n.mark(r), Name: r, Shown: r == n.rig, Count: parts.Or(words.F("%s open", parts.B(fmt.Sprint(open))), parts.B(fmt.Sprint(open)))}
		if tab < 130 || open > 99 {
			t.Count = fmt.Sprint(open)
		}
		if l.tabs[r] == nil {
			l.tabs[r] = parts.NewRigTab(t, func() { l.sh.rig, l.sh.said = r, nil; l.sh.refresh() })
		}
		l.tabs[r].Set(t)
		h.middle, h.widths = append(h.middle, l.tabs[r]), append(h.widths, tab)
	}
	if rest > 0 {
		l.more.Set(parts.KeyView{ID: "other-rigs", Title: words.F("%d\nmore", rest), Lay: parts.LayCentre, Tone: parts.Header})
		h.middle, h.widths = append(h.middle, l.more), append(h.widths, tab)
	}
	h.middle, h.widths = append(h.middle, l.aloud), append(h.widths, aloudW)
	return h
}

// tabbed are the rigs that have a tab where so many have room, the one on
// screen among them, and how many stand behind one more key.
func (n *now) tabbed(rigs []string, most int) (tabs []string, rest int) {
	if len(rigs) <= most {
		return rigs, 0
	}
	tabs = slices.Clone(rigs[:most-1])
	if !slices.Contains(tabs, n.rig) {
		tabs[most-2] = n.rig
	}
	return tabs, len(rigs) - len(tabs)
}

// otherRigs asks which rig, where not all have a tab.
func (l *leavingScreen) otherRigs() {
	n := l.sh.now()
	var list []choice
	for _, r := range n.present() {
		list = append(list, choice{parts.KindRig, r, n.rigName(r), words.N("%d open line", "%d open lines", len(n.s.Leaving(r))), n.mark(r)})
	}
	l.sh.open(newChooser(l.sh, words.L("Which rig?"), words.L("The last look before it leaves"), list, func(rig string) {
		l.sh.rig, l.sh.over, l.sh.said = rig, nil, nil
		l.sh.refresh()
	}))
}
