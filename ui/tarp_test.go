package ui

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

var glass1024, glass1280, glass1920 = fyne.NewSize(1024, 768), fyne.NewSize(1280, 800), fyne.NewSize(1920, 1200)

// countAt is how many pieces of an item are at a place.
func (w *window) countAt(item, place string) int {
	p, err := model.ParsePlace(place)
	if err != nil {
		w.t.Fatal(err)
	}
	return w.board.Picture().State.LineOf(item).N(p)
}

func TestTwoTouchesStageIssueAndReturn(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-001") // the spreader on the tarp
	w.tap("place", "at:V1")
	if w.countAt("R41-001", "at:V1") != 1 {
		t.Fatalf("the spreader is not at V1: %s", w.text("reply"))
	}
	w.tap("place", "at:V1")
	w.tap("piece", "R41-001")
	w.tap("place", "tarp")
	if w.countAt("R41-001", "tarp") != 1 {
		t.Fatal("the spreader did not come back to the tarp")
	}
	w.tap("place", "tarp")
	w.tap("piece", "R41-015") // asked next, still on the rig
	w.tap("place", "tarp")
	if w.countAt("R41-015", "tarp") != 2 {
		t.Fatal("the shields are not staged")
	}
}

func TestAPieceAskedNextSentToAPlaceGoesStraightOff(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-015")
	w.tap("place", "at:V2")
	entries := w.board.Picture().Entries
	if last := entries[len(entries)-1]; last.Verb != model.Direct || !last.Reply.Has("straight_off") {
		t.Errorf("logged as %s %v, want direct, straight off", last.Verb, last.Reply.Reasons)
	}
}

func TestSeveralPiecesGoTogetherAsOneTouchAndComeBackWithOneUndo(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-001")
	w.tap("piece", "R41-052")
	w.tap("place", "at:BANK")
	if w.countAt("R41-001", "at:BANK") != 1 || w.countAt("R41-052", "at:BANK") != 1 {
		t.Fatal("the two did not go together")
	}
	w.tap("act", "undo")
	if w.countAt("R41-001", "tarp") != 1 || w.countAt("R41-052", "tarp") != 1 {
		t.Fatal("one undo did not bring both back")
	}
}

func TestUndoGoesBackFiveTouchesAndNoFurther(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	places := []string{"at:V1", "at:V2", "at:BANK", "at:ROAD", "at:V1", "at:V2"}
	w.tap("piece", "R41-001")
	w.tap("place", places[0])
	for k := 1; k < len(places); k++ {
		w.tap("place", places[k-1])
		w.tap("piece", "R41-001")
		w.tap("place", places[k])
	}
	for k := len(places) - 2; k >= 1; k-- {
		w.tap("act", "undo")
		if w.countAt("R41-001", places[k]) != 1 {
			t.Fatalf("after an undo it is not back at %s", places[k])
		}
	}
}

func TestAHandfulOfBlocksIsOneTouchMore(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-056") // 4 blocks on the tarp
	for _, key := range []string{"1", "2", "3", "4"} {
		if _, ok := w.find("quantity", key); !ok {
			t.Errorf("no key for %s", key)
		}
	}
	w.tap("quantity", "3")
	w.tap("place", "at:V1")
	if w.countAt("R41-056", "at:V1") != 3 || w.countAt("R41-056", "tarp") != 1 {
		t.Errorf("3 of 4 did not go: %d there", w.countAt("R41-056", "at:V1"))
	}
}

func TestAThingThatComesBackCannotBeUsedUp(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-001")
	p, _ := w.find("place", "used")
	if p.State != string(parts.PlaceShut) {
		t.Errorf("Used up is %q, want shut", p.State)
	}
	w.tap("place", "used")
	if w.countAt("R41-001", "used") != 0 {
		t.Error("the spreader was used up")
	}
}

func TestThreeLettersFindAPieceByAnyOfItsNamesWhereverItIs(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("act", "find")
	for _, letter := range []string{"h", "e", "a", "d"} {
		w.tap("act", letter)
	}
	w.tap("piece", "R41-133") // head block set, home on the rig
	w.tap("place", "with:MED9")
	if w.countAt("R41-133", "with:MED9") != 1 {
		t.Errorf("the head block set did not go with Medic 9: %s", w.text("reply"))
	}
}

func TestANewPlaceIsNamedInTwoTouches(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("place", "new")
	w.tap("act", "place-Rehab")
	p, ok := w.find("place", "at:Rehab")
	if !ok || p.Text != "Rehab, 0 lines" {
		t.Fatalf("the new place is %+v", p)
	}
	w.tap("piece", "R41-138")
	w.tap("place", "at:Rehab")
	if w.countAt("R41-138", "at:Rehab") != 1 {
		t.Error("the blanket is not at rehab")
	}
}

func TestAPieceComesOutOfAKit(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	w.tap("piece", "R41-112") // first-aid pack on the tarp
	w.tap("act", "open-kit")
	w.tap("piece", "R41-115")
	w.tap("place", "used")
	if got := w.countAt("R41-115", "used"); got == 0 {
		t.Errorf("no dressing was used: %s", w.text("reply"))
	}
}

func TestOnANewDepartmentASceneOpensAndRunsByTouch(t *testing.T) {
	w := demoAt(t, -1, ScreenTarp, glass1280, look.Options{})
	if got := w.text("reply"); got == "" || got[:2] != "No" {
		t.Fatalf("the strip says %q, want that no scene is open", got)
	}
	w.tap("act", "open-scene")
	w.tap("act", "open-Car extrication")
	w.tap("piece", "R41-001")
	w.tap("place", "tarp")
	if w.countAt("R41-001", "tarp") != 1 {
		t.Fatalf("the spreader is not on the tarp: %s", w.text("reply"))
	}
	if got := w.text("proof"); got != "1 came off = 0 home again + 1 on tarp + 0 unexplained. Adds up" {
		t.Errorf("the foot says %q", got)
	}
}

func TestAGloveThatWandersStillTouchesAndALongDragScrolls(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	p, _ := w.find("piece", "R41-001")
	from := fyne.NewPos(float32(p.X)+40, float32(p.Y)+40)
	test.Drag(w.win.Canvas(), from, 6, 6)
	if got, _ := w.find("piece", "R41-001"); got.State != "picked" {
		t.Errorf("a touch that wandered 8 px did not pick: %q", got.State)
	}
}

func TestNothingOnTheTarpScreenIsCutOrTooSmallToTouch(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		for _, minute := range []int{-1, 0, 36, 60, 125, 177} {
			opt := LookFor(size, minute%2 == 0)
			w := demoAt(t, minute, ScreenTarp, size, opt)
			for _, step := range []string{"", "place at:V2", "piece R41-055", "place new"} {
				if step != "" {
					var kind, id string
					fmt.Sscan(step, &kind, &id)
					if _, ok := w.find(kind, id); !ok {
						continue
					}
					w.tap(kind, id)
				}
				w.sound(fmt.Sprintf("%v minute %d after %q", size, minute, step))
			}
		}
	}
}

// sound checks what is true of every screen: no text is cut, and what is
// touched is large enough and lies apart.
func (w *window) sound(what string) {
	w.t.Helper()
	for _, cut := range parts.Cuts(w.shell.Root()) {
		w.t.Errorf("%s: cut: %s", what, cut)
	}
	floor := float32(84) // of the design's 88: on the smallest glass ten letters stand in a row
	for _, p := range w.parts {
		if p.Kind == parts.KindText || p.Kind == parts.KindDoor || p.Kind == parts.KindSlot {
			continue
		}
		if unit := look.U(1); float32(p.W) < floor*unit || float32(p.H) < floor*unit {
			w.t.Errorf("%s: %s %s is %dx%d, too small to touch", what, p.Kind, p.ID, p.W, p.H)
		}
	}
}

func TestWhatIsPickedStaysInSightAmongAsManyRowsAsHaveRoom(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		w := demoAt(t, 60, ScreenTarp, size, LookFor(size, false))
		w.tap(parts.KindPlace, "at:V2")
		if _, ok := w.find(parts.KindPiece, "R41-055"); !ok {
			w.tap(parts.KindAct, "more")
		}
		w.tap(parts.KindPiece, "R41-055")
		if p, ok := w.find(parts.KindPiece, "R41-055"); !ok || p.State != "picked" {
			t.Errorf("%v: the step chock that was picked is not to be seen", size)
		}
		low, _ := w.find(parts.KindQuantity, "1")
		last := 0
		for _, p := range w.parts {
			if p.Kind == parts.KindPiece && p.Y < low.Y {
				last = max(last, p.Y+p.H)
			}
		}
		if _, more := w.find(parts.KindAct, "more"); more && low.Y-last >= int(look.U(look.Target)) {
			t.Errorf("%v: %d px are empty over the handfuls while pieces wait on another page", size, low.Y-last)
		}
	}
}
