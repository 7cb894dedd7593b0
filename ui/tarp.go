package ui

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// tarpScreen is where pieces are staged, handed out and brought back.
type tarpScreen struct {
	sh     *Shell
	root   *fyne.Container
	tabs   map[string]*parts.RigTab
	panel  *parts.Panel
	tiles  *parts.Tiles
	asked  *parts.Label
	next   *parts.Tiles
	went   *parts.Label
	gone   *parts.Tiles // what went out last
	doors  *doorRow
	hand   *handStrip
	number *handPad
	empty  *parts.Label // says that nothing is on the panel
	strip  *parts.Strip
	undo   *parts.Key
	keys   *placeColumn
	find   *typing

	shown  model.Place // the place whose pieces are on the panel
	picks  []pick
	rig    string // whose doors are shown
	door   string // the door that is open, nothing while a place is shown
	fresh  *fresh
	hidden map[string]bool // rigs whose pieces are not shown
	last   string          // the place that pieces were sent to last
	lastAt bool            // they came from another place of the scene

	away        *parts.Key   // a rig is called away
	others      *parts.Key   // rigs that have no room in the header
	aids        []*parts.Key // beside the strip while pieces are picked
	ask         *question
	disputes    map[string]bool // lines that were contested when last shown
	along       *along
	alongHolder string
	waved       map[string]int // how often what goes along with a piece was waved off
	named       *string        // who takes what is picked, if somebody was named
	earlier     int            // minutes that the next act is set back
	bare        bool           // nothing is at the place shown
	onPanel     int            // tiles of the panel, with Find
	out         int            // pieces that went out last
	nexts       int            // tiles of what is asked next, with the list
	planned     plan
	left        map[string]bool // touches that Undo leaves as they are
	logged      board.Tap
	loggedAt    time.Time
}

func newTarp(sh *Shell) screen {
	t := &tarpScreen{sh: sh, tabs: map[string]*parts.RigTab{}, hidden: map[string]bool{}, left: map[string]bool{}, waved: map[string]int{}}
	t.tiles = parts.NewTiles(t.touch)
	t.tiles.More, t.next = moreTile, parts.NewTiles(t.touchNext)
	t.tiles.Tail = &parts.TileView{State: parts.TileAct, ID: "find", Name: words.L("Find"), Second: words.L("three letters"), Icon: "find"}
	t.panel = parts.NewPanel(parts.PanelView{}, t.tiles)
	t.next.More = moreTile
	t.tiles.SetCell(tileOf(t.tileHigh))
	t.tiles.SetLeast(leastHigh)
	t.next.SetCell(tileOf(t.rowHigh))
	t.asked = parts.NewLabel(parts.LabelView{ID: "asked"})
	t.went = parts.NewLabel(parts.LabelView{ID: "went"})
	t.gone = parts.NewTiles(t.touch)
	t.gone.More = moreTile
	t.gone.SetCell(tileOf(t.rowHigh))
	t.doors = newDoorRow(t)
	t.hand = newHandStrip(t)
	t.number = newHandPad(t)
	t.empty = parts.NewLines(parts.LabelView{ID: "empty", Role: look.Lead, Mid: true})
	t.strip = parts.NewStrip(parts.StripView{}, t.act)
	t.undo = parts.NewKey(parts.KeyView{ID: "undo", Title: words.L("Undo"), Icon: "undo"}, t.takeBack)
	t.aids = t.aidKeys()
	t.away = parts.NewKey(parts.KeyView{ID: "rig-leaving", Title: words.L("Rig\nleaving"), Icon: "leave", Tone: parts.Header}, sh.rigLeaving)
	t.others = parts.NewKey(parts.KeyView{}, func() { sh.open(newRigTabs(t)) })
	t.keys = newPlaceColumn(t.send)
	t.find = newTyping(sh, t)
	t.root = box(t.layout)
	return t
}

// moreTile turns the page of a grid, from the last one back to the first.
func moreTile(left int) parts.TileView {
	if left <= 0 {
		return parts.TileView{Name: words.L("First page"), Icon: "undo"}
	}
	return parts.TileView{Name: words.L("more"), Figure: fmt.Sprint(left), Icon: "down"}
}

func (t *tarpScreen) body() fyne.CanvasObject { return t.root }

// placesWide is the room of the places along the edge, in pixels. Where five
// rows of them are not as high as a hand, they are as wide as one.
func (t *tarpScreen) placesWide(high float32) float32 {
	if high < rowsWanted*look.U(look.Target)+(rowsWanted-1)*look.U(look.Gap) {
		return 2*look.U(look.Target) + look.U(look.Gap)
	}
	return look.U(240)
}

// show brings the screen up to date.
func (t *tarpScreen) show(n *now) head {
	t.settle(n)
	t.noticed(n)
	var objs []fyne.CanvasObject
	if t.find.on {
		t.find.show(n)
		objs = t.find.objects()
	} else {
		objs = t.showBody(n)
		t.strip.Set(t.stripNow(n))
		t.undo.Set(t.undoView(n))
	}
	p := t.planFor(t.root.Size(), t.onPanel)
	if p != t.planned || !sameObjects(t.root.Objects, objs) {
		t.planned, t.root.Objects = p, objs
		relay(t.root)
	}
	return t.head(n)
}

// showBody brings the places, the panel and the rows below it up to date, and
// returns what is to be drawn.
func (t *tarpScreen) showBody(n *now) []fyne.CanvasObject {
	shown := t.shown
	d, open := t.doorNow(n)
	if open {
		shown = model.Place{}
	}
	objs := []fyne.CanvasObject{t.keys, t.panel, t.strip, t.undo}
	t.number.on = t.number.on && len(t.picks) > 0
	switch {
	case t.fresh != nil:
		t.keys.set(n.freshKeys(t.fresh, shown, t.last))
	case t.number.wrong():
		t.keys.set(shutPlaces(n.placeKeys(shown, t.picks, t.last, t.lastAt), t.number.most()))
	default:
		t.keys.set(n.placeKeys(shown, t.picks, t.last, t.lastAt))
	}
	if t.number.on {
		t.number.show(n)
		t.showAids(n)
		objs = []fyne.CanvasObject{t.keys, t.number.Container, t.strip, t.undo}
		if t.aided() {
			for _, k := range t.aids {
				objs = append(objs, k)
			}
		}
		return objs
	}
	t.doors.show(n, t.rig, t.door)
	if open {
		t.showDoor(n, d)
	} else {
		t.showPanel(n)
		t.showNext(n)
		t.showGone(n)
	}
	if len(t.picks) > 0 {
		t.hand.show(n)
		t.showAids(n)
		objs = append(objs, t.hand.Container)
	}
	if t.aided() {
		for _, k := range t.aids {
			objs = append(objs, k)
		}
	}
	switch {
	case open && len(t.picks) > 0:
		return objs
	case open:
		return append(objs, t.doors.Container)
	case len(t.picks) > 0 && !t.planFor(t.root.Size(), t.onPanel).twice:
		if t.bare {
			objs = append(objs, t.empty)
		}
		return append(objs, t.doors.Container)
	}
	if t.bare {
		objs = append(objs, t.empty)
	}
	return append(objs, t.asked, t.next, t.went, t.gone, t.doors.Container)
}

func sameObjects(a, b []fyne.CanvasObject) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// settle forgets picks that are no longer there, and a place that is gone.
func (t *tarpScreen) settle(n *now) {
	if t.shown.Kind == "" || t.shown.Kind == model.At && t.shown.Ground != n.scene.Ground {
		t.shown = model.Place{Kind: model.Tarp, Ground: n.scene.Ground}
	}
	if t.shown.Kind == model.Tarp {
		t.shown.Ground = n.scene.Ground
	}
	kept := t.picks[:0]
	for _, p := range t.picks {
		if i := n.d.ItemIndex(p.item); i >= 0 {
			if p.most = n.s.Line(i).N(p.from); p.most > 0 {
				p.n = min(p.n, p.most)
				kept = append(kept, p)
			}
		}
	}
	t.picks = kept
	if _, open := t.doorNow(n); !open {
		t.door = ""
	}
	if here := n.present(); !slices.Contains(here, t.rig) && t.door == "" && len(here) > 0 {
		t.rig = here[0]
	}
	if f := t.fresh; f != nil && (t.door == "" || n.s.LineOf(f.item).N(model.Place{Kind: model.Tarp, Ground: n.scene.Ground}) == 0) {
		t.fresh = nil
	}
}

func (t *tarpScreen) showPanel(n *now) {
	views := n.tilesAt(t.shown, t.hidden, t.picks)
	v := parts.PanelView{ID: "place", Hem: t.shown.Kind == model.Tarp, Snug: true}
	switch {
	case t.shown.Kind == model.Tarp:
		v.Title, v.Note = words.L("On the tarp"), words.N("%d line", "%d lines", len(views))
		if k := len(n.scene.Unknown); k > 0 {
			v.Note += words.F(", %d in words", k)
			views = append(n.unknownTiles(), views...)
		}
		if n.scene.Staging != "" {
			v.Right = words.F("Staging: %s since %s", n.memberName(n.scene.Staging), n.clock(n.scene.Since))
		}
	case t.shown.Kind == model.InKit:
		v.Title, v.Note = words.F("In the %s", n.placeName(t.shown)), words.N("%d line", "%d lines", len(views))
		v.Right = n.notInKit(t.shown.Name)
	default:
		v.Title, v.Note = words.F("At %s", n.placeName(t.shown)), n.byRig(views)
		if t.shown.Kind == model.With {
			v.Title = words.F("With %s", n.placeName(t.shown))
		}
	}
	if len(views) == 0 {
		v.Note = ""
		t.empty.SetText(n.emptyWords(t.shown))
	}
	t.panel.Set(v)
	t.bare = len(views) == 0
	t.onPanel = len(views) + 1
	t.tiles.Set(views)
}

// emptyWords say that nothing is at a place, and how pieces come there.
func (n *now) emptyWords(at model.Place) string {
	switch {
	case at.Kind == model.Tarp && n.scene.ClearUp:
		return parts.B(words.L("Nothing is on the tarp")) + "\n" + words.L("What comes back lies here until Load up takes it home.")
	case at.Kind == model.Tarp:
		return parts.B(words.L("Nothing is on the tarp")) + "\n" + words.L("Touch what is asked for, or a door of the rig.")
	case at.Kind == model.InKit:
		return parts.B(words.L("Nothing is left in it"))
	}
	return parts.B(words.F("Nothing is at %s", n.placeName(at))) + "\n" + words.L("Touch a piece, then this place: it goes there.")
}

// byRig says whose the lines at a place are.
func (n *now) byRig(views []parts.TileView) string {
	count := map[string]int{}
	for _, v := range views {
		count[v.Mark.Letters]++
	}
	var said []string
	for _, r := range n.rigs() {
		if count[r] > 0 {
			said = append(said, words.F("%d of %s", count[r], n.rigName(r)))
		}
	}
	return words.N("%d line", "%d lines", len(views)) + ": " + strings.Join(said, ", ")
}

func (t *tarpScreen) showNext(n *now) {
	if t.showAlong(n) {
		return
	}
	t.next.Tail = listTile(n)
	if n.scene.ClearUp {
		t.showStillOut(n)
		return
	}
	list, views := n.askedNext(t.hidden, t.picks)
	note := words.F("still on the rig, from the list: %s", strings.ToLower(list))
	if len(views) == 0 {
		note = words.L("nothing more on the list")
		if list == "" {
			note = words.L("no pull list is loaded")
		}
	}
	t.asked.Set(parts.LabelView{ID: "asked", Role: look.Body, Text: parts.B(words.L("Asked next")) + "   " + note})
	t.next.Set(views)
	t.nexts = len(views) + 1
}

// showGone shows what went to the places last.
func (t *tarpScreen) showGone(n *now) {
	views := n.outLast(t.hidden, t.picks)
	if t.out = len(views); n.scene.ClearUp {
		t.out = 0 // they stand where the next pieces were
	}
	t.went.Set(parts.LabelView{ID: "went", Role: look.Body, Text: words.F("%s   touch to bring it back or to send it on", parts.B(words.L("Out last")))})
	t.gone.Set(views)
}

func (t *tarpScreen) head(n *now) head {
	h := head{title: words.L("Tarp"), sentence: n.sceneName(), gap: 8, letters: t.find.on}
	if n.scene.ID != "" && !n.scene.Closed {
		h.sentence += words.F(", minute %d", n.minute())
	}
	const leaveW = 132
	title := float32(300)
	if n.narrow() {
		title = 250
	}
	all := n.present()
	room, wide := tabRoom(n.headRoom()-title-leaveW-look.Gap, len(all), 150)
	rigs := all[:room]
	for _, r := range rigs {
		v := parts.RigTabView{ID: r, Mark: n.mark(r), Name: r, Shown: !t.hidden[r]}
		a := n.account(r)
		off := parts.B(fmt.Sprint(a.CameOff - a.Home))
		v.Count = parts.Or(words.F("%s off", off), off)
		if t.hidden[r] {
			v.Count = words.L("hidden")
		}
		if t.tabs[r] == nil {
			t.tabs[r] = parts.NewRigTab(v, func() { t.openRig(r) })
		}
		t.tabs[r].Set(v)
		h.middle = append(h.middle, t.tabs[r])
		h.widths = append(h.widths, wide)
	}
	if left := len(all) - room; left > 0 {
		t.others.Set(moreRigs(left))
		h.middle, h.widths = append(h.middle, t.others), append(h.widths, wide)
	}
	h.middle, h.widths = append(h.middle, t.away), append(h.widths, leaveW)
	return h
}
