package board_test

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"tarpside/board"
	"tarpside/board/ledger"
	"tarpside/model"
)

func TestAWatcherGetsEachPictureOnceAndInOrder(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	var got, other []uint64
	stop := b.Watch(func(p *board.Picture) { got = append(got, p.Gen) })
	stopOther := b.Watch(func(p *board.Picture) {
		if other = append(other, p.Gen); b.Picture() != p {
			t.Error("the board shows another picture than it tells of")
		}
	})
	first := b.Picture().Gen
	scene := b.begin(t, "Watched")
	b.log(t, act(model.PullOff, 1, "R41-003", "home", "tarp"))
	b.log(t, act(model.PullOff, 1, "R41-003", "home", "tarp")) // refused: it is in the log all the same
	b.Work(scene)
	if _, err := b.Log(board.Tap{Acts: []model.Act{word(model.Note), word(model.Note)}}); err != nil { // one tap
		t.Fatal(err)
	}
	stop()
	b.log(t, word(model.Close))
	stopOther()
	b.log(t, word(model.Note))
	for i := range 5 {
		if len(got) != 5 || got[i] != first+uint64(i)+1 {
			t.Fatalf("from %d on it got %v", first, got)
		}
	}
	if len(other) != 6 {
		t.Errorf("the other got %v", other)
	}
}

// The race detector looks on.
func TestPicturesNeverChange(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	rows := sceneRows(t, demoFiles(t), "scene.csv")
	type shown struct {
		p    *board.Picture
		blob string
		n    int
	}
	var pictures []shown
	stop := b.Watch(func(p *board.Picture) { pictures = append(pictures, shown{p, blob(t, p.State), len(p.Entries)}) })
	var readers sync.WaitGroup
	done := make(chan struct{})
	for range 2 {
		readers.Go(func() {
			last := uint64(0)
			for {
				p := b.Picture()
				if p.Gen < last {
					t.Errorf("picture %d after %d", p.Gen, last)
				}
				last = p.Gen
				p.State.EndState()
				p.State.Where()
				for i := range p.Entries {
					_ = p.Entries[i].Reply.Word
				}
				select {
				case <-done:
					return
				default:
				}
			}
		})
	}
	b.replay(t, rows[:120])
	b.begin(t, "beside")
	b.log(t, word(model.Close))
	b.replay(t, rows[120:])
	b.begin(t, "next")
	close(done)
	readers.Wait()
	stop()
	for i, was := range pictures {
		if i > 0 && was.p.Gen != pictures[i-1].p.Gen+1 {
			t.Errorf("picture %d after %d", was.p.Gen, pictures[i-1].p.Gen)
		}
		if len(was.p.Entries) != was.n || blob(t, was.p.State) != was.blob {
			t.Errorf("picture %d has changed", was.p.Gen)
		}
	}
}

// trouble checks that the error says what happened, what is safe and what to do.
func trouble(t *testing.T, err error, what string) {
	t.Helper()
	var tr *ledger.Trouble
	if !errors.As(err, &tr) {
		t.Fatalf("want words for a person, got %T %v", err, err)
	}
	if !strings.Contains(tr.What, what) || !strings.Contains(tr.Safe, "Everything logged before is safe") || tr.Do == "" {
		t.Errorf("%+v", tr)
	}
}

func TestAFullDiskLeavesTheBoardAsItWas(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	b.begin(t, "Full")
	b.log(t, act(model.PullOff, 4, "R41-059", "home", "tarp"))
	b.shut(t)
	st, err := os.Stat(b.path)
	if err != nil {
		t.Fatal(err)
	}
	b.opts.Ledger.MaxPages = int(st.Size()/4096) + 3
	b.open(t)
	tap := board.Tap{Acts: []model.Act{act(model.Hand, 1, "R41-059", "tarp", "at:V1"), act(model.Return, 1, "R41-059", "at:V1", "tarp"), word(model.Note)}}
	tap.Acts[2].Note = strings.Repeat("long ", 100)
	var was *board.Picture
	for range 200 {
		was = b.Picture()
		if _, err = b.Log(tap); err != nil {
			break
		}
	}
	trouble(t, err, "The disk is full")
	if b.Picture() != was {
		t.Error("a picture came of an act that was not logged")
	}
	n := len(entriesIn(t, b.path))
	if n != was.State.Folded() {
		t.Errorf("%d entries are on the disk, %d on the board", n, was.State.Folded())
	}
	tap.Acts[2].Note = strings.Repeat("much longer ", 2000)
	if _, err := b.Log(tap); err == nil {
		t.Fatal("there was room after all")
	}
	if _, err := b.OpenScene("M01", strings.Repeat("much longer ", 2000), nil, time.Time{}); err == nil || b.Picture() != was {
		t.Error("a scene was opened on a full disk: ", err)
	}
	b.opts.Ledger.MaxPages = 0 // room again
	b.clock.passes(-time.Hour)
	b.reopen(t)
	if got := blob(t, b.Picture().State); got != blob(t, was.State) {
		t.Errorf("after reopening it is\n%s\nand was\n%s", got, blob(t, was.State))
	}
	last := was.Entries[len(was.Entries)-1].Stamp
	if e := b.log(t, word(model.Note)); e.Stamp.Wall != last.Wall || e.Stamp.Count != last.Count+1 {
		t.Errorf("the clock ran on in acts that were not logged: %v after %v", e.Stamp, last)
	}
	b.sound(t)
}

func TestAFullDiskTakesAllThatCameInOrNothing(t *testing.T) {
	tablets := crew(t, small(t), "A", "B")
	a, b := tablets[0], tablets[1]
	a.begin(t, "Long")
	for range 300 {
		a.log(t, act(model.Seen, 1, "R41-003", "home", "home"))
	}
	b.shut(t)
	b.opts.Ledger.MaxPages = 1 // as large as it is
	b.open(t)
	was := b.Picture()
	n, err := b.Add(entriesIn(t, a.path))
	trouble(t, err, "The disk is full")
	if n != 0 || b.Picture() != was || len(entriesIn(t, b.path)) != was.State.Folded() {
		t.Errorf("%d came in", n)
	}
}

func TestABoardForReadingOnlySaysWhyAndTakesNothing(t *testing.T) {
	b := newTablet(t, "").withDemo(t)
	b.begin(t, "Shared")
	b.log(t, act(model.PullOff, 4, "R41-059", "home", "tarp"))
	second := &tablet{path: b.path, clock: b.clock, opts: b.opts}
	second.open(t) // while the first has it
	p := second.Picture()
	if !strings.Contains(p.ReadOnly, "Another program") || second.blob(t) != b.blob(t) || p.Device != b.Picture().Device {
		t.Errorf("it says %q; device %q and %q", p.ReadOnly, p.Device, b.Picture().Device)
	}
	_, err := second.Log(board.Tap{Acts: []model.Act{word(model.Note)}})
	trouble(t, err, "reading only")
	if _, err := second.Add(b.Picture().Entries); err == nil {
		t.Error("entries were taken in")
	}
	if err := second.SetSetting("look", "night"); err == nil {
		t.Error("a setting was kept")
	}
	if second.Picture() != p {
		t.Error("the picture changed")
	}
	second.sound(t)
	second.shut(t)
	b.log(t, word(model.Note))
	b.shut(t)
	second.opts.Ledger.ReadOnly = true
	second.open(t)
	_, err = second.Log(board.Tap{Acts: []model.Act{word(model.Note)}})
	trouble(t, err, "reading only")
}

func TestABoardForReadingOnlyDoesNotNeedABalance(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	aScene(t, b, "one")
	was := b.blob(t)
	b.shut(t)
	spoil(t, b.path, "UPDATE balance SET blob = x'00'")
	b.opts.Ledger.ReadOnly = true
	b.open(t)
	if b.blob(t) != was {
		t.Errorf("it shows\n%s\nand showed\n%s", b.blob(t), was)
	}
}

// A dry source of randomness gives nothing once its n bytes are used up.
type dry struct{ n int }

func (d *dry) Read(p []byte) (int, error) {
	if d.n -= len(p); d.n < 0 {
		return 0, errors.New("no randomness")
	}
	return len(p), nil
}

func TestWithoutRandomnessNothingIsLoggedAndTheClockStandsStill(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	b.begin(t, "Ids")
	b.shut(t)
	d := &dry{}
	b.opts.Random = d
	b.open(t)
	was := b.Picture()
	two := board.Tap{Acts: []model.Act{word(model.Note), word(model.Note)}}
	for d.n = range 20 { // enough for one id of two, at most
		if _, err := b.Log(two); err == nil || b.Picture() != was {
			t.Error("an act without an id was logged: ", err)
		}
	}
	d.n = 0
	if _, err := b.OpenScene("M01", "x", nil, time.Time{}); err == nil || b.Picture() != was {
		t.Error("a scene without an id was opened: ", err)
	}
	last := was.Entries[len(was.Entries)-1].Stamp
	d.n = 10
	if e := b.log(t, word(model.Note)); e.Stamp.Wall != last.Wall || e.Stamp.Count != last.Count+1 {
		t.Errorf("stamp %v after %v", e.Stamp, last)
	}
}

func TestAFileKeepsTheTabletsName(t *testing.T) {
	b := newTablet(t, "")
	name := b.Picture().Device
	if len(name) != 6 || !strings.HasPrefix(name, "t-") {
		t.Errorf("it is called %q", name)
	}
	b.reopen(t)
	if got := b.Picture().Device; got != name {
		t.Errorf("it is called %q and was %q", got, name)
	}
	if err := b.SetSetting("device", "other"); err == nil {
		t.Error("its name was changed")
	}
	if err := b.SetSetting("look", "night"); err != nil {
		t.Fatal(err)
	}
	b.reopen(t)
	if got, err := b.Setting("look"); got != "night" || err != nil {
		t.Error(got, err)
	}
}

func TestTwoScenesAtOnceHaveTarpsOfTheirOwn(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	one := b.begin(t, "Bridge")
	b.log(t, act(model.PullOff, 4, "R41-059", "home", "tarp"))
	two := b.begin(t, "Barn")
	if b.Picture().Scene != two || len(b.Picture().State.Scenes()) != 2 {
		t.Fatalf("%d scenes, on %s", len(b.Picture().State.Scenes()), b.Picture().Scene)
	}
	b.log(t, act(model.PullOff, 2, "R41-059", "home", "tarp"))
	tarps := func(want ...int) {
		t.Helper()
		for i, scene := range []string{one, two} {
			b.Work(scene)
			if got := b.n(t, "R41-059", "tarp"); got != want[i] {
				t.Errorf("scene %d has %d on its tarp, want %d", i+1, got, want[i])
			}
			if a := b.Picture().State.Account(scene, ""); !a.Adds() || a.Tarp != want[i] || a.Elsewhere != 2+2*i {
				t.Errorf("scene %d: %+v", i+1, a)
			}
		}
	}
	tarps(4, 2)
	if e := b.logTo(t, two, act(model.Hand, 3, "R41-059", "tarp", "at:V1")); e.Reply.Word != model.Refused {
		t.Errorf("3 were handed from a tarp with 2: %+v", e.Reply)
	}
	if e := b.logTo(t, one, act(model.Hand, 3, "R41-059", "tarp", "at:V1")); e.Reply.Word != model.OK {
		t.Errorf("%+v", e.Reply)
	}
	reopensTheSame(t, b)
	tarps(1, 2)

	b.logTo(t, two, word(model.Close))
	if b.Picture().Scene != one {
		t.Error("after the close the work does not go on in the open scene")
	}
	if balance, ok := kept(t, b.path); ok && balance.Covers == b.Picture().State.Folded() {
		t.Error("a balance was kept while a scene is open")
	}
	b.log(t, act(model.Lend, 1, "R41-059", "tarp", "with:RDCREW"))
	b.log(t, word(model.Close))
	reopensTheSame(t, b)

	// What lay there lies there still, on the one tarp of the scene that follows.
	three, err := b.OpenScene("M01", "Next day", nil, time.Time{})
	if err != nil {
		t.Fatal(err)
	}
	if got := b.Picture(); got.Scene != three.Scene || len(got.State.Scenes()) != 1 {
		t.Fatalf("%d scenes", len(got.State.Scenes()))
	}
	for place, want := range map[string]int{"tarp": 2, "at:V1": 3, "with:RDCREW": 1} {
		if got := b.n(t, "R41-059", place); got != want {
			t.Errorf("%s has %d, want %d", place, got, want)
		}
	}
	reopensTheSame(t, b)
}

func TestATapIsOneOrNothing(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	b.begin(t, "Tap")
	gen := b.Picture().Gen
	at := evening.Add(-10 * time.Minute)
	entries, err := b.Log(board.Tap{Typed: at, Acts: []model.Act{
		act(model.PullOff, 4, "R41-059", "home", "tarp"), act(model.Hand, 4, "R41-059", "tarp", "at:V1"), act(model.Hand, 1, "R41-059", "tarp", "at:V2")}})
	if err != nil {
		t.Fatal(err)
	}
	words := ""
	for i, e := range entries {
		words += fmt.Sprint(e.Reply.Word, " ")
		if e.Tap != entries[0].ID.String() || e.At() != at.UnixMilli() || e.N() != entries[0].N()+i {
			t.Errorf("%+v", e)
		}
	}
	if words != "ok ok refused " || b.Picture().Gen != gen+1 {
		t.Errorf("%s, %d pictures", words, b.Picture().Gen-gen)
	}
	if none, err := b.Log(board.Tap{}); len(none) != 0 || err != nil || b.Picture().Gen != gen+1 {
		t.Error("a tap without acts did something: ", err)
	}
}
