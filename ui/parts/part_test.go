package parts

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tarpside/ui/look"
)

func ids(list []Part) string {
	var out []string
	for _, p := range list {
		out = append(out, p.ID)
	}
	return strings.Join(out, " ")
}

func keyAt(id string, x, y, w, h float32) *Key {
	k := NewKey(KeyView{ID: id, Title: id}, nil)
	k.Move(fyne.NewPos(x, y))
	k.Resize(fyne.NewSize(w, h))
	return k
}

func TestPartsAreListedInPixelsOfTheWindow(t *testing.T) {
	inner := container.NewWithoutLayout(keyAt("a", 10, 20, 100, 90))
	inner.Move(fyne.NewPos(200, 50))
	win := open(t, container.NewWithoutLayout(inner), 600, 400)
	got := Collect(win.Canvas())
	want := Part{Kind: KindAct, ID: "a", Text: "a", X: 210, Y: 70, W: 100, H: 90}
	if len(got) != 1 || got[0] != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

func TestWhatIsHiddenOffTheScreenOrUnnamedIsNotListed(t *testing.T) {
	hidden := keyAt("hidden", 0, 0, 90, 90)
	hidden.Hide()
	open(t, container.NewWithoutLayout(), 100, 100)
	root := container.NewWithoutLayout(hidden, keyAt("off", 700, 0, 90, 90), keyAt("sliver", 395, 0, 90, 90),
		keyAt("half", 340, 100, 120, 90), NewLabel(LabelView{Text: "no id"}))
	if got := ids(CollectIn(root, fyne.NewSize(400, 400))); got != "half" {
		t.Errorf("listed %q, want half", got)
	}
}

func TestWhatLiesUnderACoverOrAnotherTargetIsNotListed(t *testing.T) {
	open(t, container.NewWithoutLayout(), 100, 100)
	cover := NewPanel(PanelView{}, nil)
	cover.SetCover(true)
	cover.Resize(fyne.NewSize(200, 400))
	label := NewLabel(LabelView{ID: "proof", Text: "314 came off"})
	label.Resize(fyne.NewSize(100, 30))
	root := container.NewWithoutLayout(label, keyAt("under", 0, 100, 90, 90), cover, keyAt("over", 0, 200, 90, 90),
		keyAt("below", 210, 0, 90, 90), keyAt("above", 210, 10, 90, 90), keyAt("free", 310, 0, 90, 90))
	if got := ids(CollectIn(root, fyne.NewSize(400, 400))); got != "over above free" {
		t.Errorf("listed %q", got)
	}
}

func TestTheWetLockLeavesNothingToTouchButItsOwnKey(t *testing.T) {
	open(t, container.NewWithoutLayout(), 100, 100)
	shield := NewShield(true, nil)
	shield.Resize(fyne.NewSize(400, 400))
	words := NewLabel(LabelView{ID: "words", Text: "still read"})
	words.Move(fyne.NewPos(0, 200))
	words.Resize(fyne.NewSize(200, 40))
	root := container.NewWithoutLayout(keyAt("a", 0, 0, 90, 90), words, shield, keyAt("unlock", 0, 300, 200, 90))
	if got := ids(CollectIn(root, fyne.NewSize(400, 400))); got != "words unlock" {
		t.Errorf("listed %q, want the words and unlock", got)
	}
}

func TestOnlyTheOverlayIsListedWhileThereIsOne(t *testing.T) {
	win := open(t, container.NewWithoutLayout(keyAt("a", 0, 0, 90, 90)), 400, 400)
	win.Canvas().Overlays().Add(container.NewWithoutLayout(keyAt("b", 200, 0, 90, 90)))
	if got := ids(Collect(win.Canvas())); got != "b" {
		t.Errorf("listed %q, want b", got)
	}
}

func TestTilesOutsideTheViewportAreNotListed(t *testing.T) {
	tiles := NewTiles(nil)
	win := open(t, container.NewStack(tiles), 920, 400)
	tiles.Set(manyTiles(2000))
	view := rectOf(fyne.Position{}, win.Canvas().Size())
	for _, off := range []float32{0, 63, 1260, 1e9} {
		tiles.ScrollToOffset(off)
		got := Collect(win.Canvas())
		if len(got) < 12 || len(got) > 24 {
			t.Errorf("at %v: %d parts", off, len(got))
		}
		seen := map[string]bool{}
		for _, p := range got {
			if seen[p.ID] {
				t.Errorf("at %v: %s twice", off, p.ID)
			}
			seen[p.ID] = true
			if float32(p.X) < view.x0 || float32(p.Y) < view.y0 || float32(p.X+p.W) > view.x1 || float32(p.Y+p.H) > view.y1 {
				t.Errorf("at %v: %+v is outside the window", off, p)
			}
		}
	}
	if got := ids(Collect(win.Canvas())); !strings.HasSuffix(got, "1999") {
		t.Errorf("the end of the grid shows %q", got)
	}
}

func TestPartsFileIsReplacedWholeAndOnlyWhenItChanged(t *testing.T) {
	files, writes := map[string][]byte{}, 0
	r := Registry{Path: "parts.json",
		WriteFile: func(name string, data []byte) error {
			writes++
			files[name] = append([]byte(nil), data...)
			return nil
		},
		Rename: func(from, to string) error {
			files[to] = files[from]
			delete(files, from)
			return nil
		}}
	list := []Part{{Kind: KindPiece, ID: "R41-055", Text: "Step \"chock\"", State: "tarp", X: 24, Y: 180, W: 302, H: 118}}
	for range 2 {
		if err := r.Publish(list); err != nil {
			t.Fatal(err)
		}
	}
	if writes != 1 || len(files) != 1 {
		t.Errorf("%d writes, files %v", writes, len(files))
	}
	want := "[\n" + `{"part":"piece","id":"R41-055","text":"Step \"chock\"","state":"tarp","x":24,"y":180,"w":302,"h":118}` + "\n]\n"
	if got := string(files["parts.json"]); got != want {
		t.Errorf("file is %q, want %q", got, want)
	}
	if err := r.Publish(nil); err != nil {
		t.Fatal(err)
	}
	var none []Part
	if err := json.Unmarshal(files["parts.json"], &none); err != nil || len(none) != 0 {
		t.Errorf("no parts read back as %v, %v", none, err)
	}
}

func TestAPartsFileThatCannotBeWrittenIsTriedAgain(t *testing.T) {
	broken := errors.New("disk full")
	fail := true
	r := Registry{Path: "p",
		WriteFile: func(string, []byte) error { return nil },
		Rename: func(string, string) error {
			if fail {
				return broken
			}
			return nil
		}}
	if err := r.Publish(nil); !errors.Is(err, broken) {
		t.Fatalf("got %v", err)
	}
	fail = false
	renamed := false
	r.Rename = func(string, string) error { renamed = true; return nil }
	if err := r.Publish(nil); err != nil || !renamed {
		t.Errorf("after the fault: %v, written %v", err, renamed)
	}
}

func TestAnEqualViewDrawsNothing(t *testing.T) {
	tile := NewTile(tileViews()[0], nil)
	draws := 0
	paint := tile.paint
	tile.paint = func(p *Pen, size fyne.Size) { draws++; paint(p, size) }
	tile.Resize(look.TileSize())
	draws = 0
	tile.Set(tileViews()[0])
	if draws != 0 {
		t.Errorf("drawn %d times for an equal view", draws)
	}
	tile.Set(tileViews()[1])
	if draws != 1 {
		t.Errorf("drawn %d times for another view", draws)
	}
}

func TestPagingShowsEveryPieceOnce(t *testing.T) {
	tiles := NewTiles(nil)
	tiles.More = func(left int) TileView { return TileView{Name: "more", Figure: fmt.Sprint(left)} }
	tiles.Tail = &TileView{ID: "find", Name: "Find", State: TileAct}
	win := open(t, container.NewStack(tiles), 920, 390)
	for _, n := range []int{0, 1, 17, 18, 40, 333} {
		tiles.Set(manyTiles(n))
		tiles.FirstPage()
		seen := map[string]int{}
		for page := 0; ; page++ {
			more := fyne.CanvasObject(nil)
			found := false
			for _, o := range tiles.Inside() {
				v := o.(*Tile).View()
				found = found || v.ID == "find"
				if v.ID == "more" {
					more = o
				} else if v.ID != "find" {
					seen[v.ID]++
				}
			}
			if !found {
				t.Fatalf("%d pieces, page %d: Find is not there", n, page)
			}
			if got := len(Collect(win.Canvas())); got > 18 {
				t.Fatalf("%d parts on a page of 18", got)
			}
			if more == nil || more.(*Tile).View().Figure == "0" || page > n {
				break
			}
			more.(*Tile).Tapped(nil)
		}
		if len(seen) != n {
			t.Errorf("%d pieces: %d were shown", n, len(seen))
		}
		for id, times := range seen {
			if times != 1 {
				t.Errorf("%d pieces: %s was shown %d times", n, id, times)
			}
		}
	}
}
