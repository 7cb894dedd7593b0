package board_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"tarpside/board"
	"tarpside/board/ledger"
	"tarpside/model"
)

// handed writes a stick on one tablet and takes it in on another.
func handed(tb testing.TB, from, to *tablet) board.StickTaken {
	tb.Helper()
	path := filepath.Join(tb.TempDir(), "a.tarpside")
	if _, err := from.WriteStick(path); err != nil {
		tb.Fatal(err)
	}
	got, err := to.TakeStick(path)
	if err != nil {
		tb.Fatal(err)
	}
	return got
}

func TestTabletsThatExchangeSticksAgree(t *testing.T) {
	dir := small(t)
	rapid.Check(t, func(r *rapid.T) {
		tablets := crew(t, dir, "A", "B")
		a, b := tablets[0], tablets[1]
		defer a.shut(t)
		defer b.shut(t)
		for range rapid.IntRange(3, 25).Draw(r, "steps") {
			on := tablets[rapid.IntRange(0, 1).Draw(r, "tablet")]
			on.clock.passes(time.Second)
			switch rapid.IntRange(0, 9).Draw(r, "step") {
			case 0:
				on.begin(t, "Scene")
			case 1:
				on.log(t, word(model.Close))
			case 2:
				handed(t, a, b)
			case 3:
				handed(t, b, a)
			default:
				on.log(t, drawAct(r, on))
			}
		}
		handed(t, a, b)
		handed(t, b, a)
		alike(t, a, b)
		gen := a.Picture().Gen
		if again := handed(t, b, a); again.New != 0 || a.Picture().Gen != gen {
			r.Fatalf("the same file again brought %d", again.New)
		}
	})
}

func TestANewTabletGetsADepartmentByStick(t *testing.T) {
	old, fresh := newTablet(t, "A").withDemo(t), newTablet(t, "B")
	old.begin(t, "Bridge")
	old.log(t, act(model.PullOff, 1, "R41-003", "home", "tarp"))
	got := handed(t, old, fresh)
	if got.From != "A" || got.New != got.Entries || got.New != 3 || got.Waiting != 0 {
		t.Errorf("%+v", got)
	}
	alike(t, old, fresh)
	if fresh.Picture().Scene != old.Picture().Scene {
		t.Error("it works on another scene")
	}
}

func TestANoteThatWasBlankedDoesNotComeBackByStick(t *testing.T) {
	a, b := newTablet(t, "A").withDemo(t), newTablet(t, "B")
	a.begin(t, "Bridge")
	note := a.log(t, model.Act{Verb: model.Note, By: "M01", Note: "a name", Quantity: model.Blank})
	before := filepath.Join(t.TempDir(), "before.tarpside")
	if _, err := a.WriteStick(before); err != nil {
		t.Fatal(err)
	}
	handed(t, a, b)
	if _, err := a.Log(board.Tap{Acts: []model.Act{{Verb: model.BlankNote, By: "M01", Quantity: model.Blank}}, Mends: note.ID.String()}); err != nil {
		t.Fatal(err)
	}
	if _, err := a.TakeStick(before); err != nil {
		t.Fatal(err)
	}
	handed(t, a, b)
	for _, on := range []*tablet{a, b} {
		for _, e := range entriesIn(t, on.path) {
			if e.Note == "a name" {
				t.Errorf("on %s the name is there", on.Picture().Device)
			}
		}
	}
	alike(t, a, b)
}

func TestAStickThatDoesNotFitIsRefusedWholeInWords(t *testing.T) {
	ours, theirs := newTablet(t, "A").withDemo(t), newTablet(t, "C").withDemo(t)
	ours.begin(t, "Bridge")
	dir := t.TempDir()
	foreign := filepath.Join(dir, "theirs.tarpside")
	if _, err := theirs.WriteStick(foreign); err != nil {
		t.Fatal(err)
	}
	good, err := os.ReadFile(foreign)
	if err != nil {
		t.Fatal(err)
	}
	damaged, other := filepath.Join(dir, "damaged.tarpside"), filepath.Join(dir, "other.tarpside")
	good[len(good)/2] ^= 1
	if err := errors.Join(os.WriteFile(damaged, good, 0o600), os.WriteFile(other, []byte("rig,name\n"), 0o600)); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{foreign: "another department", damaged: "is not taken in", other: "no log of this program", filepath.Join(dir, "none.tarpside"): "cannot be opened"} {
		gen, was := ours.Picture().Gen, len(entriesIn(t, ours.path))
		_, err := ours.TakeStick(path)
		var trouble *ledger.Trouble
		if !errors.As(err, &trouble) || !strings.Contains(err.Error(), want) || !strings.Contains(trouble.Safe, "Nothing of it was taken in") || trouble.Do == "" {
			t.Errorf("%s: %v", filepath.Base(path), err)
		}
		if ours.Picture().Gen != gen || len(entriesIn(t, ours.path)) != was {
			t.Errorf("%s changed something", filepath.Base(path))
		}
	}
	ours.sound(t)
}

func TestTwoTabletsOfOneNameAreNotMixed(t *testing.T) {
	a := newTablet(t, "A").withDemo(t)
	copied := newTablet(t, "A")
	copied.add(t, entriesIn(t, a.path)...)
	a.begin(t, "One")
	copied.clock.passes(time.Minute)
	copied.begin(t, "Other")
	path := filepath.Join(t.TempDir(), "copy.tarpside")
	if _, err := copied.WriteStick(path); err != nil {
		t.Fatal(err)
	}
	if _, err := a.TakeStick(path); err == nil || !strings.Contains(err.Error(), "two tablets have written under the name A") {
		t.Errorf("%v", err)
	}
}
