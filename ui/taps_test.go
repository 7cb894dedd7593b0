package ui

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// Touches are counted as a finger makes them: each key and tile, each page
// turned, each letter. What is found is counted by the shortest way that the
// screen offers: on the panel, among the pieces asked next or out last, behind
// its door, by Find.

// finger counts what it touches.
type finger struct {
	*window
	n int
}

func (f *finger) touch(p parts.Part) {
	f.n++
	test.TapCanvas(f.win.Canvas(), fyne.NewPos(float32(p.X)+float32(p.W)/2, float32(p.Y)+float32(p.H)/2))
	f.parts = parts.CollectIn(f.shell.Root(), f.shell.Root().Size())
}

func (f *finger) press(kind, id string) {
	f.t.Helper()
	p, ok := f.find(kind, id)
	if !ok {
		f.t.Fatalf("no %s %q on screen", kind, id)
	}
	f.touch(p)
}

// rest brings the Tarp to rest with a place on the panel: where one begins.
func (f *finger) rest(shown model.Place) {
	t := f.shell.tarp()
	t.picks, t.find.on, t.shown, f.shell.said, f.shell.over = nil, false, shown, nil, nil
	t.door, t.doors.from = "", 0
	t.calm()
	t.tiles.FirstPage()
	t.next.FirstPage()
	t.gone.FirstPage()
	f.shell.Go(ScreenTarp)
	f.n = 0
}

// tile is the tile of an item that is in view.
func (f *finger) tile(item string) (parts.Part, bool) {
	for _, p := range f.parts {
		if id, _, _ := strings.Cut(p.ID, "@"); p.Kind == parts.KindPiece && id == item {
			return p, true
		}
	}
	return parts.Part{}, false
}

// paged turns the pages of the first or the second grid on screen until the
// tile is in view, and says how often; -1 if it never is.
func (f *finger) paged(item string, grid int) int {
	for turns := range 3 { // further on there is always a shorter way
		if _, ok := f.tile(item); ok {
			return turns
		}
		var more []parts.Part
		for _, p := range f.parts {
			if p.Kind == parts.KindAct && p.ID == "more" {
				more = append(more, p)
			}
		}
		if grid >= len(more) || strings.Contains(more[grid].Text, "First page") {
			return -1
		}
		f.touch(more[grid])
	}
	return -1
}

// byFind is how many touches Find needs before the tile is in view, with the
// letters and the pages that need the fewest; and what to type.
func (f *finger) byFind(item string, from model.Place) (touches int, letters string) {
	touches = 99
	it := f.shell.now().d.Item(item)
	words := strings.Fields(fold(strings.Join(append([]string{it.Short(), it.Name}, it.OtherNames...), " ")))
	slices.Sort(words)
	for _, w := range slices.Compact(words) {
		if strings.Trim(w, "abcdefghijklmnopqrstuvwxyz") != "" {
			continue // figures are on another page of the pad
		}
		f.rest(from)
		f.press(parts.KindAct, "find")
		for k, r := range w {
			if k+1 >= touches || k >= 5 {
				break
			}
			f.press(parts.KindAct, string(r))
			if turns := f.paged(item, 0); turns >= 0 && 2+k+turns < touches {
				touches, letters = 2+k+turns, w[:k+1]
			}
		}
	}
	return touches, letters
}

// behind touches the door that an item lives behind; false if there is none.
func (f *finger) behind(item string) bool {
	n := f.shell.now()
	it := n.d.Item(item)
	slot := n.d.Slot(it.Slot)
	if slot == nil {
		return false
	}
	id := "door-" + n.doorName(slot)
	if _, ok := f.find(parts.KindAct, id); ok {
		f.press(parts.KindAct, id)
		return true
	}
	if _, ok := f.find(parts.KindAct, "more-doors"); !ok {
		if _, ok := f.find(parts.KindRig, it.Rig); !ok {
			return false
		}
		f.press(parts.KindRig, it.Rig)
	}
	for range 4 {
		if _, ok := f.find(parts.KindAct, id); ok {
			f.press(parts.KindAct, id)
			return true
		}
		if _, ok := f.find(parts.KindAct, "more-doors"); !ok {
			return false
		}
		f.press(parts.KindAct, "more-doors")
	}
	return false
}

// sent sends a piece from the Tarp at rest to a place with the fewest touches
// there are, and returns their number. Each way is gone to its end and taken
// back; the last one stands.
func (f *finger) sent(item, to string) int {
	f.t.Helper()
	tarp := model.Place{Kind: model.Tarp, Ground: f.shell.now().scene.Ground}
	least, best := 99, func() bool { return false }
	letters := ""
	ways := []func() bool{
		func() bool { return f.behind(item) && f.paged(item, 0) >= 0 },
		func() bool { return f.paged(item, 0) >= 0 },
		func() bool { return f.paged(item, 1) >= 0 },
		func() bool { return f.paged(item, 2) >= 0 },
		func() bool {
			from, ok := f.lies(item)
			if ok {
				f.press(parts.KindPlace, from)
			}
			return ok && f.paged(item, 0) >= 0
		},
		func() bool {
			if letters == "" {
				if least <= 4 { // Find needs four at least: Find, a letter, the tile, the place
					return false
				}
				_, letters = f.byFind(item, tarp)
				f.rest(tarp)
			}
			f.press(parts.KindAct, "find")
			for _, r := range letters {
				f.press(parts.KindAct, string(r))
			}
			return f.paged(item, 0) >= 0
		},
	}
	for _, way := range ways {
		if least <= 2 { // a touch on the piece and one on the place: there is nothing shorter
			break
		}
		if n, ok := f.tried(way, item, to); ok {
			if n < least {
				least, best = n, way
			}
			f.press(parts.KindAct, "undo")
			if f.countAt(item, to) != 0 && f.shell.now().d.Item(item).Quantity == 1 {
				f.t.Fatalf("one touch does not take %s back: %s", item, f.text("reply"))
			}
		}
	}
	if n, ok := f.tried(best, item, to); !ok || n != least {
		f.t.Fatalf("%s does not go to %s in %d touches: %s", item, to, least, f.text("reply"))
	}
	return least
}

// lies is the place of the scene that an item lies at, if it is at one.
func (f *finger) lies(item string) (place string, ok bool) {
	for _, st := range f.shell.now().s.LineOf(item).Stacks {
		if st.Place.Kind == model.At {
			return st.Place.String(), true
		}
	}
	return "", false
}

// tried goes one way to a piece and sends it to a place.
func (f *finger) tried(way func() bool, item, to string) (touches int, ok bool) {
	f.rest(model.Place{Kind: model.Tarp, Ground: f.shell.now().scene.Ground})
	before := f.countAt(item, to)
	if !way() {
		return 0, false
	}
	for range 2 { // a contested piece asks first
		if p, ok := f.tile(item); ok && len(f.shell.tarp().picks) == 0 && f.shell.tarp().fresh == nil {
			f.touch(p)
		}
	}
	if f.countAt(item, to) == before {
		if _, ok := f.find(parts.KindPlace, to); !ok {
			return 0, false
		}
		f.press(parts.KindPlace, to)
	}
	return f.n, f.countAt(item, to) > before
}

// home puts all pieces of a line back, not by touch.
func (f *finger) home(item, from string) {
	f.t.Helper()
	if k := f.countAt(item, from); k > 0 {
		f.shell.log(board.Tap{Acts: []model.Act{{Verb: model.Correct, Item: item, Quantity: k, From: from, To: "home"}}})
	}
	if it := f.shell.now().d.Item(item); f.countAt(item, "home") != it.Quantity {
		f.t.Fatalf("%d of %d %s are home", f.countAt(item, "home"), it.Quantity, it.Short())
	}
}

// drawn are some lines drawn at random, the same ones each run.
func drawn(all []string, k int) []string {
	r := rand.New(rand.NewPCG(41, 2026))
	r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	return all[:min(k, len(all))]
}

// within says how the touches are spread, and fails where they are more than
// the most or their median more than the median given.
func within(t *testing.T, what string, n []int, median, most int) {
	t.Helper()
	slices.Sort(n)
	words := ""
	for k := range n[len(n)-1] + 1 {
		if c := len(n) - len(slices.DeleteFunc(slices.Clone(n), func(x int) bool { return x == k })); c > 0 {
			words += fmt.Sprintf(", %d need %d", c, k)
		}
	}
	t.Logf("%s: median %d, most %d%s", what, n[len(n)/2], n[len(n)-1], words)
	if n[len(n)/2] > median || n[len(n)-1] > most {
		t.Errorf("%s: median %d, most %d touches; want at most %d and %d", what, n[len(n)/2], n[len(n)-1], median, most)
	}
}

// askedOf are the lines of Rescue 41 that the demo scene takes off, each as
// often as it does.
func askedOf(t *testing.T) []string {
	w := demoAt(t, 177, ScreenTarp, glass1280, look.Options{})
	var out []string
	for _, e := range w.board.Picture().Entries {
		it := w.shell.now().d.Item(e.Item)
		if it != nil && it.Rig == "R41" && it.Kit == "" && e.Taken() && (e.Verb == model.PullOff || e.Verb == model.Direct) {
			out = append(out, e.Item)
		}
	}
	return out
}

// anyOf are all lines of Rescue 41 that live in a slot.
func anyOf(w *window) []string {
	var out []string
	for _, it := range w.shell.now().d.Items {
		if it.Rig == "R41" && it.Kit == "" {
			out = append(out, it.ID)
		}
	}
	return out
}

// The draws: lines that the demo scene takes off Rescue 41, each as often as
// it does; and any line of the rig at all. Nothing is off it yet.
func TestTouchesFromAFullRigWithFindingThePiece(t *testing.T) {
	scene := drawn(askedOf(t), 25)
	for _, g := range touchGlasses {
		t.Run(fmt.Sprint(g.size.Width), func(t *testing.T) { fromAFullRig(t, scene, g.size, g.any, g.straight) })
	}
}

// touchGlasses are the sizes at which touches are counted.
//
// On the small one the doors of a full rescue have two pages: a line that
// nobody thought of takes one touch more in the median.
var touchGlasses = []struct {
	size     fyne.Size
	any      int // the median from the rig to the tarp, for any line
	straight int // the same, straight off to a place
	full     int // from the rig to a tarp that is full
}{
	{fyne.NewSize(1280, 800), 2, 3, 3},
	{fyne.NewSize(1024, 768), 3, 4, 4},
}

func fromAFullRig(t *testing.T, scene []string, size fyne.Size, anyMedian, straightMedian int) {
	w := demoAt(t, 8, ScreenTarp, size, look.Options{})
	f := &finger{window: w}
	for _, draw := range []struct {
		what            string
		list            []string
		staged, through int // medians
	}{{"a line that the scene takes off", scene, 2, 3}, {"any line of the rig", drawn(anyOf(w), 40), anyMedian, straightMedian}} {
		var stage, issue, back, straight, undo, correct []int
		for _, item := range draw.list {
			stage = append(stage, f.sent(item, "tarp"))
			issue = append(issue, f.sent(item, "at:V1"))
			back = append(back, f.sent(item, "tarp"))
			f.rest(f.shell.tarp().shown)
			f.press(parts.KindAct, "correct")
			f.press(parts.KindPlace, "at:BANK")
			if correct = append(correct, f.n); w.countAt(item, "at:BANK") == 0 {
				t.Fatalf("%s is not put right: %s", item, w.text("reply"))
			}
			f.n = 0
			f.press(parts.KindAct, "undo")
			if undo = append(undo, f.n); w.countAt(item, "tarp") == 0 {
				t.Fatalf("undo does not take the correction of %s back: %s", item, w.text("reply"))
			}
			f.home(item, "tarp")
			straight = append(straight, f.sent(item, "at:V1"))
			f.press(parts.KindAct, "undo")
			if w.countAt(item, "home") < w.shell.now().d.Item(item).Quantity {
				t.Fatalf("one undo does not bring %s home", item)
			}
		}
		all := slices.Concat(stage, issue, back)
		within(t, draw.what+", staged", stage, draw.staged, 4)
		within(t, draw.what+", from the tarp to V1", issue, 2, 4)
		within(t, draw.what+", back from V1", back, 2, 4)
		within(t, draw.what+", these three together", all, 2, 4)
		within(t, draw.what+", straight off", straight, draw.through, 4)
		within(t, draw.what+", corrected", correct, 2, 2)
		within(t, draw.what+", undone", undo, 1, 1)
	}
}

func TestTouchesToHandToTheAmbulanceAndOneASibling(t *testing.T) {
	w := demoAt(t, 8, ScreenTarp, glass1280, look.Options{})
	f := &finger{window: w}
	w.shell.act(model.Act{Verb: model.Arrive, Rig: "MED9"})
	var n []int
	siblings := 0
	for _, item := range drawn(anyOf(w), 15) {
		f.sent(item, "tarp")
		n = append(n, f.sent(item, "with:MED9"))
		for _, p := range f.parts {
			id, at, _ := strings.Cut(p.ID, "@")
			if p.Kind != parts.KindPiece || at == "" || w.shell.tarp().along == nil {
				continue
			}
			before := w.countAt(id, "with:MED9")
			f.n = 0
			f.touch(p)
			if w.countAt(id, "with:MED9") != before+1 || f.n != 1 {
				t.Errorf("one touch does not hand %s over too: %s", id, w.text("reply"))
			}
			siblings++
			break
		}
	}
	within(t, "handed to the ambulance", n, 2, 2)
	if siblings == 0 {
		t.Error("no sibling was asked for")
	}
}

func TestTheReliefOfStagingIsThreeTouchesWithBothNames(t *testing.T) {
	f := &finger{window: demoAt(t, 20, ScreenTarp, glass1280, look.Options{})}
	f.press(parts.KindScreen, ScreenMore)
	f.press(parts.KindAct, "relieve")
	if got := f.text("read-back"); !strings.Contains(got, "Tarp") {
		t.Errorf("what is out is not read back: %q", got)
	}
	was := f.shell.now().scene.Staging
	f.press(parts.KindMember, "M04")
	if e := f.newest(); e.Verb != model.Relieve || e.By != was || e.Holder != "M04" || f.n != 3 {
		t.Errorf("%d touches; logged %s by %q to %q", f.n, e.Verb, e.By, e.Holder)
	}
}
