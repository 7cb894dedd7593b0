package ui

import (
	"fmt"
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
	sh    *Shell
	root  *fyne.Container
	tabs  map[string]*parts.RigTab
	panel *parts.Panel
	tiles *parts.Tiles
	asked *parts.Label
	next  *parts.Tiles
	hand  *handStrip
	strip *parts.Strip
	undo  *parts.Key
	keys  *placeColumn
	find  *typing

	shown  model.Place // the place whose pieces are on the panel
	picks  []pick
	hidden map[string]bool // rigs whose pieces are not shown
	last   string          // the place that pieces were sent to last
	lastAt bool            // they came from another place of the scene

	others      *parts.Key   // rigs that have no room in the header
	aids        []*parts.Key // beside the strip while pieces are picked
	ask         *question
	disputes    map[string]bool // lines that were contested when last shown
	along       *along
	alongHolder string
	named       *string         // who takes what is picked, if somebody was named
	earlier     int             // minutes that the next act is set back
	left        map[string]bool // touches that Undo leaves as they are
	logged      board.Tap
	loggedAt    time.Time
}

func newTarp(sh *Shell) screen {
	t := &tarpScreen{sh: sh, tabs: map[string]*parts.RigTab{}, hidden: map[string]bool{}, left: map[string]bool{}}
	t.tiles = parts.NewTiles(t.touch)
	t.tiles.More, t.next = moreTile, parts.NewTiles(t.touchNext)
	t.tiles.Tail = &parts.TileView{State: parts.TileAct, ID: "find", Name: words.L("Find"), Second: words.L("three letters"), Icon: "find"}
	t.panel = parts.NewPanel(parts.PanelView{}, t.tiles)
	t.next.More = moreTile
	t.next.SetHeight(nextHigh)
	t.asked = parts.NewLabel(parts.LabelView{ID: "asked"})
	t.hand = newHandStrip(t)
	t.strip = parts.NewStrip(parts.StripView{}, t.act)
	t.undo = parts.NewKey(parts.KeyView{ID: "undo", Title: words.L("Undo"), Icon: "undo"}, t.takeBack)
	t.aids = t.aidKeys()
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

// nextHigh is the height of the pieces asked next, in design pixels.
const nextHigh = 104

// placesWide is the room of the places along the edge, in design pixels.
const placesWide = 240

func (t *tarpScreen) layout(size fyne.Size) {
	gap := look.U(look.Gap)
	if t.find.on {
		t.find.layout(size.Width, size.Height)
		return
	}
	wide := look.U(placesWide)
	place(t.keys, size.Width-wide, 0, wide, size.Height)
	w := size.Width - wide - gap
	stripH, nextH, labelH := look.U(look.Floor), look.U(nextHigh*look.Current().Options().Text), look.Body.Size()*1.36
	undoW, aidW := look.U(168), look.U(112)
	if w < look.U(800) {
		undoW, aidW = look.U(124), look.U(96)
	}
	y := size.Height - stripH
	stripW := w - undoW - gap
	if len(t.picks) > 0 {
		stripW -= (aidW + gap) * float32(len(t.aids))
		for i, k := range t.aids {
			place(k, stripW+gap+float32(i)*(aidW+gap), y, aidW, stripH)
		}
	}
	place(t.strip, 0, y, stripW, stripH)
	place(t.undo, w-undoW, y, undoW, stripH)
	y -= nextH + gap
	inset := look.U(14)
	place(t.next, inset-gap/2, y-gap/2, w-2*inset+gap, nextH+gap) // half a gap of a grid's own lies round it
	place(t.asked, inset+look.U(10), y-labelH, w-2*inset, labelH)
	place(t.hand.Container, 0, y-labelH+look.U(2), w, nextH+labelH-look.U(2))
	place(t.panel, 0, 0, w, y-labelH-look.U(2))
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
		t.keys.set(n.placeKeys(t.shown, t.picks, t.last, t.lastAt))
		objs = append(objs, t.keys, t.panel, t.strip, t.undo)
		t.showPanel(n)
		if len(t.picks) > 0 {
			t.hand.show(n)
			t.showAids(n)
			objs = append(objs, t.hand.Container)
			for _, k := range t.aids {
				objs = append(objs, k)
			}
		} else {
			t.showNext(n)
			objs = append(objs, t.asked, t.next)
		}
		t.strip.Set(t.stripNow(n))
		t.undo.Set(t.undoView(n))
	}
	if !sameObjects(t.root.Objects, objs) {
		t.root.Objects = objs
		relay(t.root)
	}
	return t.head(n)
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
	default:
		v.Title, v.Note = words.F("At %s", n.placeName(t.shown)), n.byRig(views)
		if t.shown.Kind == model.With {
			v.Title = words.F("With %s", n.placeName(t.shown))
		}
	}
	if len(views) == 0 {
		views = []parts.TileView{{State: parts.TileEmpty, ID: "empty", Name: words.F("Nothing %s%s", strings.ToLower(v.Title[:1]), v.Title[1:])}}
	}
	t.panel.Set(v)
	t.tiles.Set(views)
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
}

func (t *tarpScreen) head(n *now) head {
	h := head{title: words.L("Tarp"), sentence: n.sceneName(), gap: 8}
	if n.scene.ID != "" && !n.scene.Closed {
		h.sentence += words.F(", minute %d", n.minute())
	}
	rigs := n.present()
	room := n.tabRoom()
	if len(rigs) > room {
		rigs = rigs[:room-1]
	}
	for _, r := range rigs {
		v := parts.RigTabView{ID: r, Mark: n.mark(r), Name: r, Shown: !t.hidden[r]}
		a := n.account(r)
		v.Count = words.F("%s off", parts.B(fmt.Sprint(a.CameOff-a.Home)))
		if t.tabs[r] == nil {
			t.tabs[r] = parts.NewRigTab(v, func() { t.hidden[r] = !t.hidden[r]; t.sh.refresh() })
		}
		t.tabs[r].Set(v)
		h.middle = append(h.middle, t.tabs[r])
		h.widths = append(h.widths, n.tabWidth())
	}
	if all := n.present(); len(all) > len(rigs) {
		t.others.Set(parts.KeyView{ID: "rigs", Title: words.F("%d more", len(all)-len(rigs)), Icon: "down", Tone: parts.Header, Lay: parts.LayCentre})
		h.middle = append(h.middle, t.others)
		h.widths = append(h.widths, n.tabWidth())
	}
	return h
}

// tabRoom is how many rig tabs the header holds.
func (n *now) tabRoom() int {
	if n.root == nil {
		return 3
	}
	return max(2, int((design(n.root.Size().Width)-clockRoom-300)/(n.tabWidth()+8)))
}

// tabWidth is how wide a rig tab is, in design pixels.
func (n *now) tabWidth() float32 {
	if n.root != nil && n.root.Size().Width < look.U(1100) {
		return 122
	}
	return 150
}
