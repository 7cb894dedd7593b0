package ui

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// fresh is the piece that a touch behind a door has just staged. A place that
// is touched next takes it there instead: it went straight off the rig.
type fresh struct {
	item string
	log  string // the touch that staged it
}

// doorRow is the doors of one rig, a key each, in one row.
type doorRow struct {
	*fyne.Container
	t     *tarpScreen
	keys  []*parts.Key
	views []parts.KeyView
	from  int // the first one shown
	rig   string
}

func newDoorRow(t *tarpScreen) *doorRow {
	r := &doorRow{t: t}
	r.Container = box(r.layout)
	return r
}

// show brings the row up to date.
func (r *doorRow) show(n *now, rig, open string) {
	if rig != r.rig {
		r.rig, r.from = rig, 0
	}
	r.views = r.views[:0]
	for _, d := range n.doorsOf(rig) {
		r.views = append(r.views, n.doorKey(d, d.name == open))
	}
	grown := false
	for len(r.keys) < len(r.views)+1 {
		k := parts.NewKey(parts.KeyView{}, nil)
		k.OnTap = func() { r.touch(k.View().ID) }
		r.keys, grown = append(r.keys, k), true
		r.Add(k)
	}
	if grown {
		relay(r.Container)
		return
	}
	r.layout(r.Size())
}

// room is how many keys stand in a row of a width.
func (r *doorRow) room(wide float32) int {
	gap := look.U(look.Gap)
	return max(2, int((wide+gap)/(look.U(look.Floor)*r.grown()+gap)))
}

// grown is how much wider than usual the keys are, so that a larger text has
// the same words.
func (r *doorRow) grown() float32 { return max(1, look.Current().Options().Text) }

func (r *doorRow) layout(size fyne.Size) {
	if size.Width == 0 {
		return
	}
	shown := r.views
	if room := r.room(size.Width); len(shown) > room {
		if r.from >= len(shown) {
			r.from = 0
		}
		to := min(r.from+room-1, len(shown))
		more := parts.KeyView{ID: "more-doors", Title: fmt.Sprint(len(r.views) - to), Second: words.L("more"), Lay: parts.LayStack}
		if to == len(r.views) {
			more.Title, more.Second = words.L("First"), words.L("doors")
		}
		shown = append(slices.Clone(shown[r.from:to]), more)
	}
	gap := look.U(look.Gap)
	cols := max(len(shown), min(r.room(size.Width), minDoors))
	w := float32(int((size.Width - gap*float32(cols-1)) / float32(cols)))
	for i, k := range r.keys {
		k.Hidden = i >= len(shown)
		if i < len(shown) {
			k.Set(shown[i])
			place(k, float32(i)*(w+gap), 0, w, size.Height)
		}
	}
}

// minDoors is how many keys share the row at least: a door of a small rig is
// no wider than a hand needs.
const minDoors = 6

func (r *doorRow) touch(id string) {
	if id == "more-doors" {
		r.from += r.room(r.Size().Width) - 1
		r.layout(r.Size())
		r.t.sh.publish()
		return
	}
	for _, d := range r.t.sh.now().doorsOf(r.rig) {
		if "door-"+d.name == id {
			r.t.openDoor(d.rig, d.name)
			return
		}
	}
}

// openDoor shows what lives behind a door. What is picked stays picked.
func (t *tarpScreen) openDoor(rig, name string) {
	t.calm()
	t.rig, t.door, t.sh.said = rig, name, nil
	t.tiles.FirstPage()
	t.sh.refresh()
}

// openRig is a touch on a rig's tab: what lives on it, door by door. Touched
// once more it asks whose pieces are to be shown.
func (t *tarpScreen) openRig(rig string) {
	doors := t.sh.now().doorsOf(rig)
	if t.door != "" && t.rig == rig || len(doors) == 0 {
		t.sh.open(newRigTabs(t))
		return
	}
	t.openDoor(rig, doors[0].name)
}

// doorNow is the door that is open; false if none is.
func (t *tarpScreen) doorNow(n *now) (door, bool) {
	if t.door == "" {
		return door{}, false
	}
	for _, d := range n.doorsOf(t.rig) {
		if d.name == t.door {
			return d, true
		}
	}
	return door{}, false
}

// showDoor puts what lives behind the open door on the panel.
func (t *tarpScreen) showDoor(n *now, d door) {
	v := parts.PanelView{ID: "place", Snug: true, Title: words.F("%s, %s", n.rigName(d.rig), d.name),
		Note: words.F("%d of %d home", n.aboard(d), len(d.lines)), Right: words.L("One touch puts it on the tarp")}
	picks := t.picks
	if f := t.fresh; f != nil {
		picks = append(slices.Clone(picks), n.freshPick(f))
		v.Right = words.L("Went straight there? Touch the place")
	} else if len(t.picks) > 0 {
		v.Right = words.L("More can be picked")
	}
	if n.readsOnly() {
		v.Right = ""
	}
	if n.narrow() {
		v.Note = "" // each key says how many are in
	}
	t.panel.Set(v)
	views := n.doorTiles(d, picks)
	for i := range views {
		if f := t.fresh; f != nil && views[i].Picked {
			views[i].Second = words.L("staged")
		}
	}
	t.tiles.Set(views)
}

// stage takes a piece off its rig to the tarp by one touch. Where more than
// one could be meant the number is asked first: it is picked like any other.
func (t *tarpScreen) stage(n *now, i int) {
	it := &n.d.Items[i]
	entries := t.logTap(board.Tap{Scene: n.scene.ID, Acts: []model.Act{{Verb: model.PullOff, Item: it.ID, Quantity: 1,
		From: n.s.HomeOf(i).String(), To: string(model.Tarp), By: n.scene.Staging}}})
	if len(entries) == 1 && entries[0].Taken() {
		t.fresh = &fresh{item: it.ID, log: entries[0].ID.String()}
		t.sh.refresh()
	}
}

// instead takes a piece that was only just staged from the rig to a place
// after all: the staging is corrected and the act logged as it was.
func (t *tarpScreen) instead(n *now, f *fresh, to model.Place) {
	i := n.d.ItemIndex(f.item)
	home := n.s.HomeOf(i)
	verb, _ := n.verbFor(pick{item: f.item, from: home}, to)
	if verb == "" {
		return
	}
	holder := n.holderFor(to, t.named)
	t.last, t.lastAt = to.String(), false
	t.along, t.alongHolder = &along{item: f.item, from: home, to: to}, holder
	if to.Kind == model.With {
		t.door = "" // what goes along is asked beside the tarp
	}
	t.logTap(board.Tap{Scene: n.scene.ID, Mends: f.log, Acts: []model.Act{
		{Verb: model.Correct, Item: f.item, Quantity: 1, From: string(model.Tarp), To: home.String(), By: n.scene.Staging},
		{Verb: verb, Item: f.item, Quantity: 1, From: home.String(), To: to.String(), By: n.scene.Staging, Holder: holder},
	}})
}

// freshKeys are the places while a piece was only just staged.
func (n *now) freshKeys(f *fresh, shown model.Place, last string) []parts.PlaceKeyView {
	i := n.d.ItemIndex(f.item)
	keys := n.placeKeys(shown, []pick{{item: f.item, from: n.s.HomeOf(i), n: 1, most: 1}}, last, false)
	for k := range keys {
		if keys[k].Mode == parts.PlaceLikeliest {
			keys[k].Mode = parts.PlaceTarget
		}
		switch keys[k].ID {
		case string(model.Tarp):
			keys[k].Mode, keys[k].Verb = parts.PlaceOpen, words.L("it is here")
		case placeHome:
			keys[k] = n.homeKey([]pick{n.freshPick(f)})
		}
	}
	return keys
}
