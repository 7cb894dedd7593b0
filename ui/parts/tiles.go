package parts

import (
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// Tiles is a grid of tiles.
type Tiles struct {
	Grid
	// OnPick is called with the tile that was touched.
	OnPick func(TileView)
	// Tail is always the last tile shown, such as Find. A nil one is left out.
	Tail *TileView
	// More, where set, shows whole pages instead of scrolling: it gives the
	// tile that stands last on a page and turns it, with how many follow.
	More func(left int) TileView

	views []TileView
	shown []TileView
	spare []TileView // what was shown before, for comparing
	from  int        // first view of the page
	to    int        // first view of the next
	fitN  int        // for which capacity shown was made
	held  string     // what was picked last
}

// NewTiles makes a grid of tiles, scrolled by finger unless More is set.
func NewTiles(onPick func(TileView)) *Tiles {
	t := &Tiles{OnPick: onPick}
	t.setup(t, look.TileSize,
		func() fyne.CanvasObject { return NewTile(TileView{}, t.pick) },
		func(i int, c fyne.CanvasObject) { c.(*Tile).Set(t.shown[i]) })
	grid := t.paint
	t.paint = func(p *Pen, size fyne.Size) {
		if t.More != nil && t.PerPage() != t.fitN {
			t.keep()
			t.turn()
		}
		grid(p, size)
	}
	return t
}

// SetCell gives the tiles of the grid another size at least, in pixels, such
// as lower ones in a single row under a heading.
func (t *Tiles) SetCell(cell func() fyne.Size) { t.cell = cell }

// SetLeast lets the tiles be as low as that, in pixels, where another row of
// them fits so.
func (t *Tiles) SetLeast(least func() float32) { t.least = least }

// Set shows other pieces. Tiles that stay as they were are not drawn again.
func (t *Tiles) Set(views []TileView) {
	fresh := slices.IndexFunc(views, func(v TileView) bool {
		return v.Picked && !slices.ContainsFunc(t.views, func(was TileView) bool { return was.Picked && was.ID == v.ID })
	})
	t.views = append(t.views[:0], views...)
	if fresh >= 0 {
		t.held = views[fresh].ID
		t.turnTo(fresh)
	}
	if t.turn() {
		t.Refresh()
	}
}

// keep turns to the page of what was picked last, or else of what the page
// began with, after another number of tiles has room.
func (t *Tiles) keep() {
	at := slices.IndexFunc(t.views, func(v TileView) bool { return v.Picked && v.ID == t.held })
	if at < 0 {
		at = t.from
	}
	t.turnTo(at)
}

// turnTo turns to the page of a view.
func (t *Tiles) turnTo(i int) { t.from = i / t.perTurn() * t.perTurn() }

// perTurn is how many pieces stand on a page of several.
func (t *Tiles) perTurn() int {
	room := t.PerPage() - 1
	if t.Tail != nil {
		room--
	}
	return max(room, 1)
}

// FirstPage goes back to the first page.
func (t *Tiles) FirstPage() {
	t.from = 0
	if t.turn() {
		t.Refresh()
	}
}

// turn works out what stands on the page, and tells whether it is something
// else than before.
func (t *Tiles) turn() bool {
	t.shown, t.spare = t.spare[:0], t.shown
	tail := 0
	if t.Tail != nil {
		tail = 1
	}
	t.fitN = t.PerPage()
	all := t.views
	if t.More == nil || len(all)+tail <= t.fitN {
		t.from, t.to = 0, 0
		t.shown = append(t.shown, all...)
	} else {
		if t.from >= len(all) {
			t.from = 0
		}
		to := min(t.from+t.perTurn(), len(all))
		t.shown = append(t.shown, all[t.from:to]...)
		t.to = to
		more := t.More(len(all) - to)
		more.State, more.Kind, more.ID = TileAct, KindAct, "more"
		t.shown = append(t.shown, more)
	}
	if t.Tail != nil {
		t.shown = append(t.shown, *t.Tail)
	}
	if slices.Equal(t.shown, t.spare) {
		return false
	}
	t.n = len(t.shown)
	t.unbind()
	return true
}

func (t *Tiles) pick(v TileView) {
	if t.More != nil && v.State == TileAct && v.ID == "more" {
		t.from = t.to
		if t.turn() {
			t.Refresh()
		}
		return
	}
	if t.OnPick != nil {
		t.OnPick(v)
	}
}
