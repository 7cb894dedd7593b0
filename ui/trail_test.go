package ui

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"tarpside/model"
	litter "tarpside/model/trail"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// summerTrip are the touches of a dry walk of a mile and a half.
var summerTrip = []string{"act summer", "act mild", "act rough", "act miles", "digit 1", "digit 5", "digit done", "act hours", "digit 4", "digit 0", "digit done"}

func trailAt(t testing.TB) *window { return demoAt(t, 60, ScreenTrail, glass1280, look.Options{}) }

func (w *window) trailView() *trailView { return &w.shell.screens[ScreenTrail].(*trailScreen).v }

// mustTouch touches parts that have to be on screen, one after the other.
func (w *window) mustTouch(list ...string) {
	w.t.Helper()
	for _, s := range list {
		kind, id, _ := strings.Cut(s, " ")
		w.tap(kind, id)
	}
}

// walkers adds three members and so many more without a name.
func (w *window) walkers(more int) {
	w.t.Helper()
	w.mustTouch("act step-people", "member M02", "member M03", "member M04")
	for range more {
		w.mustTouch("act no-name")
	}
}

// lookAtAll answers every question of a check or a count with what is there,
// but for those of some items, and says how many it answered.
func (w *window) lookAtAll(but map[string]int) int {
	w.t.Helper()
	sc := w.shell.screens[ScreenTrail].(*trailScreen)
	for k := 0; k < 200; k++ {
		rows := sc.eyeRows()
		if sc.step == trailCount {
			rows = sc.counted().rows
		}
		i := sc.inHand(rows)
		if i < 0 {
			return k
		}
		n := rows[i].want
		if x, ok := but[rows[i].item]; ok {
			n = x
		}
		if p, ok := w.find(parts.KindText, "ask"); !ok || !strings.Contains(p.Text, rows[i].name) {
			if p, ok = w.find(parts.KindText, "ask"); !ok {
				w.t.Fatalf("nothing asks for %s", rows[i].name)
			}
			w.t.Fatalf("the screen asks %q, not for %s", p.Text, rows[i].name)
		}
		if _, single := w.find("act", "here"); single {
			w.mustTouch(map[bool]string{true: "act here", false: "act not-here"}[n > 0])
			continue
		}
		for _, r := range fmt.Sprint(n) {
			w.mustTouch("digit " + string(r))
		}
		w.mustTouch("digit done")
	}
	w.t.Fatal("the questions never end")
	return 0
}

func TestTrailLoadIsTwoTouchesFromAnyScreen(t *testing.T) {
	f := &finger{window: demoAt(t, 60, ScreenTarp, glass1280, look.Options{})}
	f.press(parts.KindScreen, ScreenMore)
	f.press(parts.KindAct, ScreenTrail)
	if got := f.text("weight"); f.n != 2 || !strings.Contains(got, "nobody walks yet") {
		t.Errorf("%d touches, and the weight bar says %q", f.n, got)
	}
}

func TestTheWeightIsInViewInEveryStepAndFollowsEachTouch(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(3)
	before := w.text("weight")
	if !strings.Contains(before, "of 216 lb, 6 people") || !strings.Contains(before, "lb to spare") {
		t.Errorf("six people: %q", before)
	}
	for _, s := range []string{"trip", "load", "people", "check", "carry", "count"} {
		w.mustTouch("act step-" + s)
		if got := w.text("weight"); got != before {
			t.Errorf("in the step %s the bar says %q, want %q", s, got, before)
		}
	}
	w.mustTouch("act step-load", "piece S44-011", "act leave") // a must asks first
	if got := w.text("weight"); got != before {
		t.Errorf("one touch left a must: %q", got)
	}
	w.mustTouch("act keep")
	if p, ok := w.find("act", "all-same"); ok || w.text("weight") != before {
		t.Errorf("kept, and still asked %+v: %q", p, w.text("weight"))
	}
	w.mustTouch("act leave", "act all-same")
	if got := w.text("weight"); got == before || !strings.Contains(w.text("line"), "left by hand") && !strings.Contains(strings.ToLower(w.text("line")), "left by hand") {
		t.Errorf("two touches: %q, %q", got, w.text("line"))
	}
	w.mustTouch("piece S44-011")
	if got := w.text("fits"); !strings.Contains(got, "A must is left") {
		t.Errorf("nothing says that a must is left: %q", got)
	}
	w.mustTouch("act as-listed")
	if got := w.text("weight"); got != before {
		t.Errorf("as listed: %q, want %q", got, before)
	}
}

func TestWhatIsTooMuchIsProposedToStayAndNeverAMust(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(1)
	w.mustTouch("act step-load")
	v := w.trailView()
	if v.load.Over() <= 0 || len(v.drops) == 0 {
		t.Fatalf("four people carry %v of %v lb: nothing to test", v.load.Lb, v.load.Limit)
	}
	for _, d := range v.drops {
		if v.lines[d.Line].Need == trailMust {
			t.Errorf("%s is a must and proposed to stay", v.lines[d.Line].Name)
		}
	}
	if p, _ := w.find(parts.KindText, "weight"); p.State != string(parts.Alarm) || !strings.Contains(p.Text, "Over by") {
		t.Errorf("the bar says %q, %s", p.Text, p.State)
	}
	w.mustTouch("act leave-these")
	if v := w.trailView(); v.load.Over() > v.over+0.01 {
		t.Errorf("after that it is still %v lb over, said to be %v", v.load.Over(), v.over)
	}
}

func TestEachLimitIsAskedForAndNoBodyWeightIsKept(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(0)
	w.mustTouch("act limit", "act body", "digit 1", "digit 6", "digit 5", "digit done")
	if got := w.text("pack"); !strings.Contains(got, "of 31") { // 30 % of 165 less 18 is 31.5
		t.Errorf("165 lb: %q", got)
	}
	w.mustTouch("act limit", "digit 2", "digit 0", "digit done")
	if got := w.text("pack"); !strings.Contains(got, "of 20") {
		t.Errorf("20 lb agreed: %q", got)
	}
	for _, wrong := range []string{"0", "999"} {
		w.mustTouch("act limit")
		for _, r := range wrong {
			w.mustTouch("digit " + string(r))
		}
		w.mustTouch("digit done")
		if got := w.text("verdict"); !strings.Contains(got, "Cannot be") {
			t.Errorf("%s lb is taken: %q", wrong, got)
		}
		w.mustTouch("act back")
	}
	w.mustTouch("act step-trip", "act patient", "digit 2", "digit 2", "digit 3", "digit done")
	text, err := w.board.Setting("party:" + w.shell.now().scene.ID)
	if err != nil || !strings.Contains(text, `"limit":20`) || strings.Contains(text, "165") || strings.Contains(text, "223") {
		t.Errorf("kept: %s, %v", text, err)
	}
}

func TestWhoDropsOutLeavesTheirPackToTheRest(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(3)
	all := w.trailView().load.Lb
	w.mustTouch("act drops-out")
	v := w.trailView()
	got := 0.0
	for _, p := range v.load.Packs {
		got += p.Lb
	}
	if len(v.load.Packs) != 5 || got > v.load.Lb+0.01 || got < v.load.Lb-0.01 || v.load.Lb > all {
		t.Errorf("%d packs of %v lb, the load is %v, before %v", len(v.load.Packs), got, v.load.Lb, all)
	}
}

func TestEveryFigureSaysHowItIsGotInOneTouch(t *testing.T) {
	w := trailAt(t)
	w.mustTouch(summerTrip...)
	w.walkers(3)
	for _, c := range []struct{ step, id, source string }{
		{"carry", "how-people", "Medicine for Mountaineering"}, {"carry", "how-bearer", "from memory"}, {"carry", "how-changes", "Mountaineers"},
		{"carry", "how-in", "Naismith"}, {"carry", "how-out", "From memory"}, {"carry", "how-water", "TB MED 507"},
		{"load", "how-weight", "ADP 3-90"},
	} {
		w.mustTouch("act step-"+c.step, "act "+c.id)
		for _, id := range []string{"figure", "formula", "source", "limits"} {
			if w.text(id) == "" {
				t.Errorf("%s has no %s", c.id, id)
			}
		}
		if got := w.text("source"); !strings.Contains(got, c.source) {
			t.Errorf("%s comes from %q, want %q", c.id, got, c.source)
		}
		w.mustTouch("act back")
	}
	w.mustTouch("act step-people", "member M02", "act how-limit")
	if got := w.text("source"); !strings.Contains(got, "ADP 3-90") || !strings.Contains(w.text("limits"), "never the weight of the body") {
		t.Errorf("a limit comes from %q", got)
	}
	w.mustTouch("act back", "act drops-out", "member M03", "act drops-out", "member M04", "act drops-out", "act step-load", "act how-leave")
	if got := w.text("formula"); !strings.Contains(got, "a must is never proposed") {
		t.Errorf("what to leave is worked out by %q", got)
	}
	w.mustTouch("act back", "act step-people")
	for range 3 {
		w.mustTouch("act no-name")
	}
	w.mustTouch("act step-carry")
	for _, p := range w.parts {
		if p.ID == "how-out" && !strings.Contains(p.Text, "from memory") {
			t.Errorf("the screen does not say that it is from memory: %q", p.Text)
		}
		if p.ID == "how-water" && !strings.Contains(p.Text, "Never more than 36 qt") { // 6 people, 4 hours, 1.5
			t.Errorf("no upper bound for water: %q", p.Text)
		}
	}
}

func TestWithoutADistanceThereIsNoEstimate(t *testing.T) {
	w := trailAt(t)
	w.mustTouch("act step-carry")
	for _, id := range []string{"how-in", "how-out", "how-changes", "how-water"} {
		if p, _ := w.find("act", id); !strings.HasPrefix(p.Text, "No estimate") {
			t.Errorf("%s: %q", id, p.Text)
		}
	}
}

// Two summer blankets weigh about 6 lb and stay on the rig on a hot walk
// (common practice). A list is the department's own, so it is put into one.
func TestWoolBlanketsStayOnAHotWalk(t *testing.T) {
	w := trailAt(t)
	d := w.shell.now().d
	var blanket *model.Item
	for i := range d.Items {
		if strings.Contains(strings.ToLower(d.Items[i].Name), "blanket") && d.Items[i].Kit == "" {
			blanket = &d.Items[i]
			break
		}
	}
	if blanket == nil {
		t.Fatal("no blanket in the demo")
	}
	saved := d.Pulls
	d.Pulls = append(saved[:len(saved):len(saved)], model.Pull{List: "Trail carry-out", Item: blanket.ID, Name: blanket.Name, Quantity: "2", Need: "should", Season: "any"})
	defer func() { d.Pulls = saved }()
	w.mustTouch("act summer", "act hot", "act step-load")
	for _, l := range w.trailView().lines {
		if l.Item == blanket.ID && (l.Goes() || !strings.Contains(l.Why, "dry summer walk")) {
			t.Errorf("a hot walk takes %+v", l)
		}
	}
	w.mustTouch("act step-trip", "act winter", "act step-load")
	for _, l := range w.trailView().lines {
		if l.Item == blanket.ID && l.Need != trailMust {
			t.Errorf("a winter walk leaves %+v", l)
		}
	}
}

// Whatever is touched, nothing is lost, the bar is in view, and no figure is
// nonsense.
func TestNoTouchesOnTrailLoadLoseAPiece(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 2026))
	for run := range 4 {
		w := trailAt(t)
		w.mustTouch(summerTrip...)
		w.walkers(r.IntN(4))
		if run%2 == 0 {
			w.mustTouch("act step-check", "act anyway", "act first", "member M02", "act why-urgent")
		}
		for range 200 {
			var can []parts.Target
			for _, p := range parts.Targets(w.shell.Root(), w.shell.Root().Size()) {
				if !rail(p.Part) && p.State != "off" && p.ID != "look-for-it" && p.W > 20 && p.H > 20 {
					can = append(can, p)
				}
			}
			if len(can) == 0 {
				w.mustTouch("act back")
				continue
			}
			p := can[r.IntN(len(can))]
			w.tap(p.Kind, p.ID)
			if _, how := w.find(parts.KindText, "formula"); how {
				w.mustTouch("act back")
			}
			if bad := w.board.Picture().State.Unbalanced(); len(bad) > 0 {
				t.Fatalf("after %s %s lines %v do not add up", p.Kind, p.ID, bad)
			}
			for _, p := range w.parts {
				if strings.Contains(p.Text, "NaN") || strings.Contains(p.Text, "Inf") || strings.Contains(p.Text, "-1 ") {
					t.Fatalf("%s says %q", p.ID, p.Text)
				}
			}
		}
	}
}

func TestWithoutASceneOrAListTheScreenSaysWhatToDo(t *testing.T) {
	w := demoAt(t, -1, ScreenTrail, glass1280, look.Options{})
	if got := w.text("weight"); !strings.Contains(got, "nobody walks yet") {
		t.Errorf("before a scene: %q", got)
	}
	w.mustTouch("act step-check", "act anyway", "act first", "member M02", "act why-urgent")
	if got := w.text("reply"); w.trailView().away > 0 == (got != "") {
		t.Errorf("%d pieces walked, and the strip says %q", w.trailView().away, got)
	}
	w = trailAt(t)
	d := w.shell.now().d
	saved := d.Pulls
	defer func() { d.Pulls = saved }()
	d.Pulls = saved[:1:1] // a car extrication
	w.mustTouch("act step-load")
	if got := w.text("empty"); !strings.Contains(got, "Which list?") {
		t.Errorf("no list for a trail: %q", got)
	}
	w.mustTouch("act list-" + saved[0].List)
	if len(w.trailView().lines) != 1 {
		t.Errorf("%d lines of the list that was chosen", len(w.trailView().lines))
	}
	d.Pulls = nil
	w.shell.Refresh()
	if got := w.text("empty"); !strings.Contains(got, "No pull list") {
		t.Errorf("no list at all: %q", got)
	}
}

func TestTouchesOfATrailLoad(t *testing.T) {
	f := &finger{window: trailAt(t)}
	press := func(list ...string) int {
		f.n = 0
		for _, s := range list {
			kind, id, _ := strings.Cut(s, " ")
			f.press(kind, id)
		}
		return f.n
	}
	for _, c := range []struct {
		what  string
		touch []string
		most  int
	}{
		{"a summer day on rough ground, a mile and a half", []string{"act summer", "act rough", "act miles", "digit 1", "digit 5", "digit done"}, 6},
		{"the list, with reasons", []string{"act step-load"}, 1},
		{"three who walk", []string{"act step-people", "member M02", "member M03", "member M04"}, 4},
		{"one more without a name", []string{"act no-name"}, 1},
		{"leave what is too much", []string{"act step-load", "act leave-these"}, 2},
		{"one line seen", []string{"act step-check", "act here"}, 2},
		{"five straps counted", []string{"digit 5", "digit done"}, 2},
		{"how a figure is got", []string{"act how-weight"}, 1},
	} {
		if n := press(c.touch...); n > c.most {
			t.Errorf("%s: %d touches, want at most %d", c.what, n, c.most)
		}
	}
}

// The whole of what a touch works out: the list, the packs, what could stay,
// and the nodes of the screen.
func BenchmarkTrailLoadOfSixtyPeopleAndThreeHundredLines(b *testing.B) {
	w := trailAt(b)
	n := w.shell.now()
	d := *n.d
	d.Pulls = nil
	for i := range 300 {
		it := &d.Items[i]
		d.Pulls = append(d.Pulls, model.Pull{List: "Trail carry-out", Item: it.ID, Name: it.Name, Quantity: fmt.Sprint(it.Quantity), Need: []string{"must", "should", "if"}[i%3], Season: "any"})
	}
	saved := n.d.Pulls
	n.d.Pulls = d.Pulls
	defer func() { n.d.Pulls = saved }()
	t := w.shell.screens[ScreenTrail].(*trailScreen)
	t.step, t.p = trailLoad, litter.Party{}
	for range 60 {
		t.p.AddNoName()
	}
	w.shell.Refresh()
	k := 0
	for b.Loop() { // each touch changes a line
		t.choose(d.Items[k%300].ID, 1+k%2)
		t.show(n)
		k++
	}
}
