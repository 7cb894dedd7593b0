package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
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
}

func newTarp(sh *Shell) screen {
	t := &tarpScreen{sh: sh, tabs: map[string]*parts.RigTab{}, hidden: map[string]bool{}}
	t.tiles = parts.NewTiles(t.touch)
	t.tiles.More, t.next = moreTile, parts.NewTiles(t.touch)
	t.tiles.Tail = &parts.TileView{State: parts.TileAct, ID: "find", Name: "Find", Second: "three letters", Icon: "find"}
	t.panel = parts.NewPanel(parts.PanelView{}, t.tiles)
	t.next.More = moreTile
	t.next.SetHeight(nextHigh)
	t.asked = parts.NewLabel(parts.LabelView{ID: "asked"})
	t.hand = newHandStrip(t)
	t.strip = parts.NewStrip(parts.StripView{}, t.act)
	t.undo = parts.NewKey(parts.KeyView{ID: "undo", Title: "Undo", Icon: "undo"}, t.takeBack)
	t.keys = newPlaceColumn(t.send)
	t.find = newTyping(sh, t)
	t.root = box(t.layout)
	return t
}

// moreTile turns the page of a grid, from the last one back to the first.
func moreTile(left int) parts.TileView {
	if left <= 0 {
		return parts.TileView{Name: "First page", Icon: "undo"}
	}
	return parts.TileView{Name: "more", Figure: fmt.Sprint(left), Icon: "down"}
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
	undoW := look.U(168)
	y := size.Height - stripH
	place(t.strip, 0, y, w-undoW-gap, stripH)
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
	var objs []fyne.CanvasObject
	if t.find.on {
		t.find.show(n)
		objs = t.find.objects()
	} else {
		t.keys.set(n.placeKeys(t.shown, t.picks, t.last))
		objs = append(objs, t.keys, t.panel, t.strip, t.undo)
		t.showPanel(n)
		if len(t.picks) > 0 {
			t.hand.show(n)
			objs = append(objs, t.hand.Container)
		} else {
			t.showNext(n)
			objs = append(objs, t.asked, t.next)
		}
		t.strip.Set(n.stripView(t.picks))
		_, left := n.undoFor()
		v := parts.KeyView{ID: "undo", Title: "Undo", Icon: "undo", Second: fmt.Sprintf("last of %d", left)}
		if left == 0 {
			v.Second, v.Off = "nothing to undo", true
		}
		t.undo.Set(v)
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
		v.Title, v.Note = "On the tarp", plural(len(views), "line")
		if n.scene.Staging != "" {
			v.Right = "Staging: " + n.memberName(n.scene.Staging) + " since " + n.clock(n.scene.Since)
		}
	case t.shown.Kind == model.InKit:
		v.Title, v.Note = "In the "+n.placeName(t.shown), plural(len(views), "line")
	default:
		v.Title, v.Note = "At "+n.placeName(t.shown), n.byRig(views)
		if t.shown.Kind == model.With {
			v.Title = "With " + n.placeName(t.shown)
		}
	}
	if len(views) == 0 {
		views = []parts.TileView{{State: parts.TileEmpty, ID: "empty", Name: "Nothing " + strings.ToLower(v.Title[:1]) + v.Title[1:]}}
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
	var words []string
	for _, r := range n.rigs() {
		if count[r] > 0 {
			words = append(words, fmt.Sprintf("%d of %s", count[r], n.rigName(r)))
		}
	}
	return plural(len(views), "line") + ": " + strings.Join(words, ", ")
}

func (t *tarpScreen) showNext(n *now) {
	list, views := n.askedNext(t.hidden, t.picks)
	note := "still on the rig, from the list: " + strings.ToLower(list)
	if len(views) == 0 {
		note = "nothing more on the list"
		if list == "" {
			note = "no pull list is loaded"
		}
	}
	t.asked.Set(parts.LabelView{ID: "asked", Role: look.Body, Text: parts.B("Asked next") + "   " + note})
	t.next.Set(views)
}

func (t *tarpScreen) head(n *now) head {
	h := head{title: "Tarp", sentence: n.sceneName(), gap: 8}
	if n.scene.ID != "" && !n.scene.Closed {
		h.sentence += fmt.Sprintf(", minute %d", n.minute())
	}
	rigs := n.present()
	for _, r := range rigs[:min(len(rigs), n.tabRoom())] {
		v := parts.RigTabView{ID: r, Mark: n.mark(r), Name: r, Shown: !t.hidden[r]}
		a := n.s.Account(n.scene.ID, r)
		v.Count = parts.B(fmt.Sprint(a.CameOff-a.Home)) + " off"
		if t.tabs[r] == nil {
			t.tabs[r] = parts.NewRigTab(v, func() { t.hidden[r] = !t.hidden[r]; t.sh.refresh() })
		}
		t.tabs[r].Set(v)
		h.middle = append(h.middle, t.tabs[r])
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

// touch picks a piece or lets it go; the tail of the panel opens Find.
func (t *tarpScreen) touch(v parts.TileView) {
	if v.State == parts.TileAct {
		t.find.open(findPiece)
		t.sh.refresh()
		return
	}
	n := t.sh.now()
	item, at, elsewhere := strings.Cut(v.ID, "@")
	i := n.d.ItemIndex(item)
	if i < 0 {
		return
	}
	from := t.shown
	if elsewhere {
		from, _ = n.s.Resolve(at, i, n.scene.ID)
	} else if v.Raised || n.s.Line(i).N(from) == 0 {
		from = n.s.HomeOf(i)
	}
	t.sh.said, t.find.on = nil, false
	for k, p := range t.picks {
		if p.item == item && p.from == from {
			t.picks = append(t.picks[:k:k], t.picks[k+1:]...)
			t.sh.refresh()
			return
		}
	}
	most := n.s.Line(i).N(from)
	t.picks = append(t.picks, pick{item: item, from: from, n: most, most: most})
	t.sh.refresh()
}

// send is a touch on a place: it takes what is picked there, or shows what is
// there.
func (t *tarpScreen) send(id string) {
	n := t.sh.now()
	switch id {
	case placeNew:
		t.find.open(findPlace)
		t.sh.refresh()
		return
	case placeHome:
		if len(t.picks) > 0 {
			if i := n.d.ItemIndex(t.picks[0].item); i >= 0 {
				t.sh.rig = n.d.Items[i].Rig
			}
		}
		t.picks = nil
		t.sh.Go(ScreenLoadUp)
		return
	}
	to, err := n.s.Resolve(id, -1, n.scene.ID)
	if err != nil {
		return
	}
	if len(t.picks) == 0 {
		t.shown, t.sh.said, t.find.on = to, nil, false
		t.tiles.FirstPage()
		t.sh.refresh()
		return
	}
	tap := board.Tap{Scene: n.scene.ID}
	for _, p := range t.picks {
		verb, _ := n.verbFor(p, to)
		if verb == "" {
			return
		}
		tap.Acts = append(tap.Acts, model.Act{Verb: verb, Item: p.item, Quantity: p.n, From: p.from.String(), To: to.String(), By: n.scene.Staging})
	}
	t.picks, t.last, t.find.on = nil, id, false
	t.sh.logOffer(tap)
}

// logOffer logs a touch; a refused act comes with what could be done instead.
func (sh *Shell) logOffer(tap board.Tap) {
	entries := sh.log(tap)
	n := sh.now()
	for i := range entries {
		if entries[i].Reply.Word == model.Refused {
			sh.said.retry, sh.said.key = n.offer(&entries[i])
		}
	}
	sh.refresh()
}

// act is a touch on a key of the strip.
func (t *tarpScreen) act(id string) {
	s := t.sh.said
	t.sh.said = nil
	switch {
	case id == "open-scene":
		t.sh.open(newOpening(t.sh))
		return
	}
	if id == "retry" && s != nil && s.retry != nil {
		t.sh.logOffer(*s.retry)
		return
	}
	t.sh.refresh()
}

// takeBack undoes the newest touch.
func (t *tarpScreen) takeBack() {
	if tap, left := t.sh.now().undoFor(); left > 0 {
		t.picks = nil
		t.sh.log(tap)
	}
}
