package ui

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// Touches are counted as a finger makes them: each key and tile, each page
// turned, each letter. What is found is counted by the shortest way that the
// screen offers: on the panel, among the pieces asked next, by Find.

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
	for turns := range 8 {
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

// pick picks a piece with the fewest touches there are from the Tarp at rest,
// and returns their number.
func (f *finger) pick(item string, panel model.Place) int {
	best, way := 99, func() {}
	for grid := range 2 {
		f.rest(panel)
		if turns := f.paged(item, grid); turns >= 0 && turns+1 < best {
			best, way = turns+1, func() { f.paged(item, grid) }
		}
	}
	if best > 3 { // Find needs three at least: Find, a letter, the tile
		if touches, letters := f.byFind(item, panel); touches+1 < best {
			best, way = touches+1, func() {
				f.press(parts.KindAct, "find")
				for _, r := range letters {
					f.press(parts.KindAct, string(r))
				}
				f.paged(item, 0)
			}
		}
	}
	f.rest(panel)
	way()
	for range 2 { // a contested piece asks first
		if p, ok := f.tile(item); ok && len(f.shell.tarp().picks) == 0 {
			f.touch(p)
		}
	}
	if len(f.shell.tarp().picks) != 1 {
		f.t.Fatalf("%s is not picked: %s", item, f.text("reply"))
	}
	return f.n
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

func TestTouchesToTakeAPieceOffAFullRig(t *testing.T) {
	scene := drawn(askedOf(t), 40)
	w := demoAt(t, 0, ScreenTarp, glass1280, look.Options{})
	f := &finger{window: w}
	tarp := model.Place{Kind: model.Tarp, Ground: w.shell.now().scene.Ground}
	var all []string
	for _, it := range w.shell.now().d.Items {
		if it.Rig == "R41" && it.Kit == "" {
			all = append(all, it.ID)
		}
	}
	for _, c := range []struct {
		what         string
		list         []string
		place        string
		median, most int
	}{
		{"what the scene takes off, to the tarp", scene, "tarp", 4, 6},
		{"any line of the rig, to the tarp", drawn(all, 60), "tarp", 5, 6},
		{"what the scene takes off, straight to V1", scene, "at:V1", 4, 6},
	} {
		var n []int
		for _, item := range c.list {
			f.pick(item, tarp)
			f.press(parts.KindPlace, c.place)
			n = append(n, f.n)
			if w.countAt(item, c.place) == 0 {
				t.Fatalf("%s is not at %s: %s", item, c.place, w.text("reply"))
			}
			f.n = 0
			f.press(parts.KindAct, "undo")
			if f.n != 1 || w.countAt(item, c.place) != 0 {
				t.Fatalf("one touch does not take %s back: %s", item, w.text("reply"))
			}
		}
		within(t, c.what, n, c.median, c.most)
	}
}

func TestTouchesToHandOutAndToBringBack(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, look.Options{})
	f := &finger{window: w}
	n := w.shell.now()
	tarp := model.Place{Kind: model.Tarp, Ground: n.scene.Ground}
	var out, back []int
	for i := range n.d.Items {
		id := n.d.Items[i].ID
		for _, st := range n.s.Line(i).Stacks {
			switch {
			case st.Place == tarp:
				f.pick(id, tarp)
				f.press(parts.KindPlace, "at:V1")
				out = append(out, f.n)
			case st.Place.Kind == model.At:
				f.pick(id, st.Place)
				f.press(parts.KindPlace, "tarp")
				back = append(back, f.n+1) // and the place, touched first to see it
			default:
				continue
			}
			f.press(parts.KindAct, "undo")
		}
	}
	within(t, "from the tarp to V1", out, 2, 3)
	within(t, "from a place to the tarp", back, 3, 4)
}

func TestTheReleaseIsOneTouchFromGlanceAndOneMoreWhereSeveralRigsAreHere(t *testing.T) {
	f := &finger{window: demoAt(t, 91, ScreenGlance, glass1280, look.Options{})}
	f.press(parts.KindAct, "rig-leaving")
	if len(f.shell.now().present()) > 1 {
		f.press(parts.KindRig, "E42")
	}
	if _, ok := f.find(parts.KindAct, "sign"); !ok || f.n > 2 {
		t.Errorf("%d touches, and the release shows %v", f.n, ok)
	}
}
