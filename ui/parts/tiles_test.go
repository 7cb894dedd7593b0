package parts

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tarpside/ui/look"
)

// paged is a grid of pages with Find at the end of each, at a height.
func paged(t *testing.T, n int, high float32) (*Tiles, fyne.Window) {
	t.Helper()
	tiles := NewTiles(nil)
	tiles.More = func(left int) TileView { return TileView{Name: "more", Figure: fmt.Sprint(left)} }
	tiles.Tail = &TileView{ID: "find", Name: "Find", State: TileAct}
	tiles.SetLeast(func() float32 { return look.U(96) })
	win := open(t, container.NewStack(tiles), 920, high)
	tiles.Set(manyTiles(n))
	return tiles, win
}

func onPage(tiles *Tiles, id string) bool {
	for _, o := range tiles.Inside() {
		if o.(*Tile).View().ID == id {
			return true
		}
	}
	return false
}

func TestTilesAreAsLowAsAnotherRowOfThemNeedsAndNoLower(t *testing.T) {
	for _, c := range []struct {
		n          int
		high       float32
		tiles, row int
	}{
		{30, 370, 18, 118}, // three rows as they wish to be
		{30, 369, 18, 117}, // a pixel short of it
		{30, 304, 18, 96},
		{30, 303, 12, 118}, // a third row would be too low
		{11, 340, 12, 118}, // two rows hold them all: nobody gives way
		{12, 340, 13, 108},
	} {
		tiles, _ := paged(t, c.n, c.high+2*Bleed)
		kids := tiles.Inside()
		if len(kids) != c.tiles {
			t.Errorf("%d pieces in %g px: %d tiles on the page, want %d", c.n, c.high, len(kids), c.tiles)
		}
		for _, o := range kids {
			if got := int(o.Size().Height); got != c.row {
				t.Fatalf("%d pieces in %g px: %d px high, want %d", c.n, c.high, got, c.row)
			}
		}
	}
}

func TestThePageOfWhatIsPickedStaysWhenOthersHaveLessRoom(t *testing.T) {
	tiles, win := paged(t, 40, 400)
	views := manyTiles(40)
	picked := views[14].ID
	views[14].Picked = true
	tiles.Set(views)
	if !onPage(tiles, picked) {
		t.Fatal("it was touched on this page")
	}
	win.Resize(fyne.NewSize(920, 260))
	if !onPage(tiles, picked) {
		t.Error("what is picked is on another page once there is less room")
	}
	win.Resize(fyne.NewSize(920, 400))
	if !onPage(tiles, picked) || !onPage(tiles, views[0].ID) {
		t.Error("the pages are not those of before when there is room again")
	}
	for _, o := range tiles.Inside() {
		if k := o.(*Tile); k.View().ID == "more" {
			k.Tapped(nil)
			break
		}
	}
	tiles.Set(views)
	if onPage(tiles, picked) {
		t.Error("another page cannot be looked at while something is picked")
	}
	views[3].Picked = true
	tiles.Set(views)
	if !onPage(tiles, views[3].ID) {
		t.Error("what was picked elsewhere is not shown")
	}
}
