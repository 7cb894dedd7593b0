package board_test

import (
	"fmt"
	"math/rand"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"tarpside/board/stores"
	"tarpside/model"
)

// small writes the tables of a few lines of the demo department.
func small(t *testing.T) string {
	t.Helper()
	d, problems := stores.Read(demoFiles(t))
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	d.Rules, d.Pulls = nil, nil
	keep := []string{"R41-002", "R41-003", "R41-004", "R41-023", "R41-024", "R41-059", "R41-179", "E42-001", "E42-005", "P71-001"}
	for again := true; again; { // and the kits they live in
		again = false
		for _, it := range d.Items {
			if it.Kit != "" && slices.Contains(keep, it.ID) && !slices.Contains(keep, it.Kit) {
				keep, again = append(keep, it.Kit), true
			}
		}
	}
	d.Items = slices.DeleteFunc(d.Items, func(it model.Item) bool { return !slices.Contains(keep, it.ID) })
	if len(d.Items) < len(keep) {
		t.Fatalf("%d of %d lines are in the demo department", len(d.Items), len(keep))
	}
	dir := t.TempDir()
	if err := stores.Write(dir, d.Index()); err != nil {
		t.Fatal(err)
	}
	return dir
}

// crew opens tablets that all have the inventory of the first.
func crew(t *testing.T, dir string, devices ...string) []*tablet {
	t.Helper()
	var out []*tablet
	for i, d := range devices {
		b := newTablet(t, d)
		if out = append(out, b); i == 0 {
			if _, err := b.LoadStores(os.DirFS(dir), "M01", false); err != nil {
				t.Fatal(err)
			}
			continue
		}
		b.add(t, entriesIn(t, out[0].path)...)
	}
	return out
}

// exchange hands every entry of each tablet to each, one by one in any order,
// and twice.
func exchange(t *testing.T, r *rand.Rand, tablets ...*tablet) {
	t.Helper()
	var all []model.Entry
	for _, b := range tablets {
		all = append(all, entriesIn(t, b.path)...)
	}
	all = append(all, all...)
	for _, b := range tablets {
		r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
		for _, e := range all {
			b.add(t, e)
		}
	}
}

func alike(t *testing.T, tablets ...*tablet) {
	t.Helper()
	for _, b := range tablets {
		if b.Picture().Waiting != 0 {
			t.Errorf("on %s %d entries wait", b.Picture().Device, b.Picture().Waiting)
		}
		if x, y := tablets[0].blob(t), b.blob(t); x != y {
			t.Errorf("%s shows\n%s\nand %s\n%s", tablets[0].Picture().Device, x, b.Picture().Device, y)
		}
		b.sound(t)
	}
}

func TestTabletsThatWereCutOffEndWithOneBoard(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	tablets := crew(t, small(t), "A", "B")
	a, b := tablets[0], tablets[1]
	a.begin(t, "Cut off")
	a.log(t, act(model.PullOff, 1, "R41-003", "home", "tarp"))
	a.log(t, act(model.Hand, 1, "R41-003", "tarp", "at:V1"))
	a.log(t, act(model.PullOff, 6, "R41-059", "home", "tarp"))
	exchange(t, r, a, b)
	if a.Picture().Scene != b.Picture().Scene {
		t.Fatalf("A works on %s and B on %s", a.Picture().Scene, b.Picture().Scene)
	}

	a.clock.passes(time.Minute)
	b.clock.passes(2 * time.Minute)
	for _, e := range []model.Entry{
		a.log(t, act(model.MoveTo, 1, "R41-003", "at:V1", "at:V2")),
		b.log(t, act(model.Return, 1, "R41-003", "at:V1", "tarp")),
		a.log(t, act(model.Hand, 4, "R41-059", "tarp", "at:V1")),
		b.log(t, act(model.Hand, 2, "R41-059", "tarp", "at:V2")), // enough for both
	} {
		if e.Reply.Word == model.Refused || e.Reply.Word == model.Contested {
			t.Fatalf("cut off, %s got %+v", e.Stamp.Device, e.Reply)
		}
	}
	exchange(t, r, a, b)
	alike(t, a, b)
	for _, on := range tablets {
		l := on.Picture().State.LineOf("R41-003")
		if l.Contest == nil || len(l.Contest.Claims) != 2 || l.Contest.Place.Kind != model.Tarp || on.n(t, "R41-003", "tarp") != 1 {
			t.Errorf("on %s the light is %+v, contest %+v", on.Picture().Device, l.Stacks, l.Contest)
		}
		if on.Picture().State.LineOf("R41-059").Contest != nil || on.n(t, "R41-059", "tarp") != 0 {
			t.Errorf("on %s the blocks are contested", on.Picture().Device)
		}
	}

	settle := b.log(t, model.Act{Verb: model.Settle, By: "M06", Item: "R41-003", Quantity: 1, To: "at:V2", Note: "seen there"})
	if settle.Reply.Word != model.OK {
		t.Fatalf("the settle got %+v", settle.Reply)
	}
	exchange(t, r, a, b)
	alike(t, a, b)
	if a.Picture().State.LineOf("R41-003").Contest != nil || a.n(t, "R41-003", "at:V2") != 1 {
		t.Error("who has seen both did not settle it")
	}
}

func TestAnEntryThatIsThereAlreadyChangesNothing(t *testing.T) {
	tablets := crew(t, small(t), "A", "B")
	a, b := tablets[0], tablets[1]
	a.begin(t, "Twice")
	e := a.log(t, act(model.PullOff, 1, "R41-003", "home", "tarp"))
	all := entriesIn(t, a.path)
	if n := b.add(t, all...); n != 2 {
		t.Errorf("%d entries were new, want the opening and the pull", n)
	}
	gen := b.Picture().Gen
	if n := b.add(t, append(all, e, e)...); n != 0 || b.Picture().Gen != gen {
		t.Errorf("%d were new the second time, and a picture %d came after %d", n, b.Picture().Gen, gen)
	}
	alike(t, a, b)
}

func TestAnEntryThatComesBeforeAnEarlierOneOfItsDeviceWaits(t *testing.T) {
	tablets := crew(t, small(t), "A", "B")
	a, b := tablets[0], tablets[1]
	a.begin(t, "Gap")
	first := a.log(t, act(model.PullOff, 1, "R41-003", "home", "tarp"))
	second := a.log(t, act(model.Hand, 1, "R41-003", "tarp", "at:V1"))
	all := entriesIn(t, a.path)
	b.add(t, all[:2]...) // the stores and the opening
	if n := b.add(t, second); n != 1 {
		t.Fatalf("%d were new", n)
	}
	for range 2 { // the second time after a restart
		p := b.Picture()
		if p.Waiting != 1 || p.State.Seen().Covers("A", second.N()) || b.n(t, "R41-003", "home") != 1 {
			t.Errorf("%d wait; seen %v; %d home", p.Waiting, p.State.Seen(), b.n(t, "R41-003", "home"))
		}
		b.reopen(t)
	}
	if mine := b.log(t, act(model.PullOff, 2, "R41-059", "home", "tarp")); mine.Seen.Covers("A", first.N()) {
		t.Errorf("B says it had seen an entry that it does not have: %v", mine.Seen)
	}
	b.sound(t)
	b.add(t, first)
	a.add(t, entriesIn(t, b.path)...)
	alike(t, a, b)
	if b.n(t, "R41-003", "at:V1") != 1 {
		t.Error("the one that waited does not count")
	}
}

func TestAClockFarAheadIsMarkedAndPullsNobodyAlong(t *testing.T) {
	tablets := crew(t, small(t), "A", "B")
	a, b := tablets[0], tablets[1]
	a.begin(t, "Clocks")
	b.add(t, entriesIn(t, a.path)...)
	for _, c := range []struct {
		ahead  time.Duration
		marked bool
	}{{4 * time.Minute, false}, {time.Hour, true}} {
		b.clock.now = a.clock.now.Add(c.ahead)
		theirs := b.log(t, act(model.PullOff, 1, "R41-059", "home", "tarp"))
		a.add(t, theirs)
		for range 2 { // the second time after a restart
			last := a.Picture().Entries[len(a.Picture().Entries)-1]
			if last.ID != theirs.ID || last.Ahead != c.marked {
				t.Errorf("%s ahead: marked %v", c.ahead, last.Ahead)
			}
			if got := a.Picture().Behind; !c.marked && got != c.ahead || c.marked && got > 4*time.Minute {
				t.Errorf("%s ahead: A says that its clock is %s behind", c.ahead, got)
			}
			a.reopen(t)
		}
		mine := a.log(t, act(model.Hand, 1, "R41-059", "tarp", "at:V1"))
		if pulled := mine.Stamp.Wall >= theirs.Stamp.Wall; pulled == c.marked {
			t.Errorf("%s ahead: A's next stamp is %d, theirs was %d", c.ahead, mine.Stamp.Wall, theirs.Stamp.Wall)
		}
		if mine.Reply.Word != model.OK {
			t.Errorf("%s ahead: %+v", c.ahead, mine.Reply)
		}
		b.add(t, mine)
		alike(t, a, b)
	}
}

func TestStampsRiseWhateverTheClockDoes(t *testing.T) {
	b := newTablet(t, "").withDemo(t)
	b.begin(t, "Clock")
	last := b.log(t, word(model.Note)).Stamp
	for i, jump := range []time.Duration{time.Second, 0, -time.Hour, time.Second, -48 * time.Hour, 96 * time.Hour} {
		b.clock.passes(jump)
		for range 2 { // the second time after a restart
			e := b.log(t, word(model.Note))
			if e.Stamp.Compare(last) <= 0 {
				t.Errorf("jump %d: stamp %v after %v", i, e.Stamp, last)
			}
			now := b.clock.now.UnixMilli()
			if back := e.Stamp.Wall - now; back > 60_000 {
				if e.Typed != now || b.Picture().Behind.Milliseconds() != back {
					t.Errorf("jump %d: set back, typed %d, now %d, behind %s", i, e.Typed, now, b.Picture().Behind)
				}
			} else if e.Typed != 0 || b.Picture().Behind != 0 {
				t.Errorf("jump %d: typed %d, behind %s", i, e.Typed, b.Picture().Behind)
			}
			last = e.Stamp
			b.reopen(t)
		}
	}
	b.log(t, word(model.Close)) // the balance has the clock too
	b.clock.passes(-200 * time.Hour)
	b.reopen(t)
	if e := b.log(t, word(model.Note)); e.Stamp.Compare(last) <= 0 {
		t.Errorf("after a balance: stamp %v after %v", e.Stamp, last)
	}
	b.sound(t)
}

func TestATabletThatGetsItsOwnEntriesBackGoesOnBehindThem(t *testing.T) {
	was := newTablet(t, "A").withDemo(t)
	was.clock.passes(time.Hour)
	was.begin(t, "Lost file")
	last := was.log(t, word(model.Note))
	is := newTablet(t, "A") // an hour before, as its clock says
	is.add(t, entriesIn(t, was.path)...)
	for range 2 { // the second time after a restart
		e := is.log(t, word(model.Note))
		if e.Stamp.Compare(last.Stamp) <= 0 || e.N() != last.N()+1 {
			t.Errorf("stamp %v, number %d after %v, %d", e.Stamp, e.N(), last.Stamp, last.N())
		}
		last = e
		is.reopen(t)
	}
	is.sound(t)
}

// acts that make sense often enough, for any line.
func drawAct(r *rapid.T, b *tablet) model.Act {
	d := b.Picture().State.Dept
	a := model.Act{By: "M01", Quantity: rapid.IntRange(1, 2).Draw(r, "n"), Item: d.Items[rapid.IntRange(0, len(d.Items)-1).Draw(r, "item")].ID}
	s := b.Picture().State
	var from []string
	for _, st := range s.LineOf(a.Item).Stacks {
		from = append(from, st.Place.String())
	}
	if len(from) == 0 {
		from = []string{"home"}
	}
	a.From = rapid.SampledFrom(from).Draw(r, "from")
	a.To = rapid.SampledFrom([]string{"tarp", "at:V1", "at:V2", "home", "with:MED9", "riding:P71", "used", "charging"}).Draw(r, "to")
	switch a.Verb = rapid.SampledFrom([]model.Verb{model.Seen, model.Correct, model.Correct, model.Seen, model.Stow, model.Hand,
		model.Return, model.PullOff, model.Count, model.Tag, model.Settle, model.CheckIt}).Draw(r, "verb"); a.Verb {
	case model.Correct: // often one that takes the last move back
		if rapid.Bool().Draw(r, "undo") {
			for _, e := range slices.Backward(b.Picture().Entries) {
				if m := e.Moves; len(m) == 1 {
					a.Item, a.Quantity, a.From, a.To = m[0].Item, m[0].N, m[0].To.String(), m[0].From.String()
					break
				}
			}
		}
	case model.Stow:
		a.To, a.Reading = "home", "as_is"
	case model.Hand:
		a.From, a.To = "tarp", "at:V1"
	case model.Return:
		a.To = "tarp"
	case model.PullOff:
		a.From, a.To = "home", "tarp"
	case model.Tag:
		a.Note = "bent"
	case model.CheckIt:
		a.Reading = "function=yes;clean=no"
	}
	return a
}

// Tablets log, lose each other, are set back, restarted, and exchange what
// they have in any order; scenes open and close. In the end all show the same
// board, which is the fold of the whole set.
func TestAnyHistoryEndsInOneBoard(t *testing.T) {
	dir := small(t)
	rapid.Check(t, func(r *rapid.T) {
		tablets := crew(t, dir, "A", "B", "C")[:rapid.IntRange(1, 3).Draw(r, "tablets")]
		defer func() {
			for _, b := range tablets {
				b.shut(t)
			}
		}()
		one := func() *tablet { return tablets[rapid.IntRange(0, len(tablets)-1).Draw(r, "tablet")] }
		for range rapid.IntRange(5, 40).Draw(r, "steps") {
			b := one()
			b.clock.passes(time.Second)
			switch rapid.IntRange(0, 12).Draw(r, "step") {
			case 0:
				b.begin(t, "Scene")
			case 1:
				b.log(t, word(model.Close))
			case 2:
				was, shown := b.blob(t), b.Picture().Scene
				b.reopen(t)
				if on := b.Picture().Scene; on != shown {
					r.Fatalf("reopened, scene %s is on and %s was", on, shown)
				}
				if is := b.blob(t); is != was {
					r.Fatalf("reopened, %s shows\n%s\nand showed\n%s", b.Picture().Device, is, was)
				}
			case 3:
				b.clock.passes(time.Duration(rapid.IntRange(-120, 120).Draw(r, "minutes")) * time.Minute)
			case 12:
				if scenes := b.Picture().State.Scenes(); len(scenes) > 1 {
					b.Work(scenes[rapid.IntRange(0, len(scenes)-1).Draw(r, "scene")].ID)
				}
			case 4, 5:
				from := rapid.Permutation(entriesIn(t, one().path)).Draw(r, "entries")
				for _, e := range from[:rapid.IntRange(0, len(from)).Draw(r, "some")] {
					b.add(t, e)
				}
			default:
				b.log(t, drawAct(r, b))
			}
		}
		exchange(t, rand.New(rand.NewSource(1)), tablets...)
		want := blob(t, model.Fold(entriesIn(t, tablets[0].path)))
		for _, b := range tablets {
			if got := b.blob(t); got != want {
				r.Fatalf("%s shows\n%s\nand the whole set folds to\n%s", b.Picture().Device, got, want)
			}
			if bad := b.Picture().State.Unbalanced(); len(bad) > 0 {
				r.Fatalf("%s: lines %v do not add up", b.Picture().Device, bad)
			}
			b.reopen(t)
			if got := b.blob(t); got != want {
				r.Fatalf("%s shows, reopened,\n%s\nand before\n%s", b.Picture().Device, got, want)
			}
			findings, err := b.Verify()
			said := fmt.Sprint(findings)
			if err != nil || strings.Contains(said, "{false") {
				r.Fatal(said, err)
			}
		}
	})
}
