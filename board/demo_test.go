package board_test

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tarpside/board"
	"tarpside/board/stores"
	"tarpside/model"
)

// wantReplies holds every reply, and all of its reasons, against a table.
func wantReplies(t *testing.T, got []board.Replied, path string) {
	t.Helper()
	want := csvRows(t, path)
	if len(got) != len(want) {
		t.Fatalf("%d rows, want %d", len(got), len(want))
	}
	for i, w := range want {
		e := got[i].Entry
		reasons := slices.Sorted(slices.Values(e.Reply.Reasons))
		wanted := strings.FieldsFunc(w["reasons"], func(r rune) bool { return r == ';' })
		slices.Sort(wanted)
		if strconv.Itoa(got[i].Row.Seq) != w["seq"] || string(e.Reply.Word) != w["reply"] || !slices.Equal(reasons, wanted) {
			t.Errorf("row %s: %s %v, want %s %v", w["seq"], e.Reply.Word, reasons, w["reply"], wanted)
		}
	}
}

func TestEveryRowOfTheDemoSceneGetsItsReply(t *testing.T) {
	b := newTablet(t, "").withDemo(t)
	wantReplies(t, b.replay(t, sceneRows(t, demoFiles(t), "scene.csv")), "../testdata/demo/replies.csv")
	b.sound(t)
	reopensTheSame(t, b)
}

func TestEveryRowOfTheWildScenesGetsItsReply(t *testing.T) {
	folders, err := filepath.Glob("../testdata/scenes/*")
	if err != nil || len(folders) < 6 {
		t.Fatal(len(folders), err)
	}
	for _, dir := range folders {
		t.Run(filepath.Base(dir), func(t *testing.T) {
			b := newTablet(t, "").withDemo(t)
			wantReplies(t, b.replay(t, sceneRows(t, os.DirFS(dir), "scene.csv")), filepath.Join(dir, "replies.csv"))
			b.sound(t)
			reopensTheSame(t, b)
		})
	}
}

// reopensTheSame closes the file and opens it again: nobody may see that.
func reopensTheSame(t *testing.T, b *tablet) {
	t.Helper()
	was := b.Picture()
	b.reopen(t)
	is := b.Picture()
	for name, f := range map[string]func(*model.State) any{
		"proof":     func(s *model.State) any { return s.Proof() },
		"end state": func(s *model.State) any { return s.EndState() },
		"where":     func(s *model.State) any { return s.Where() },
		"ready":     func(s *model.State) any { return s.Ready() },
		"fold":      func(s *model.State) any { return blob(t, s) },
	} {
		if x, y := f(was.State), f(is.State); !reflect.DeepEqual(x, y) {
			t.Errorf("%s after reopening is\n%v\nand was\n%v", name, y, x)
		}
	}
	if is.Scene != was.Scene || is.Device != was.Device || is.State.Folded() != was.State.Folded() {
		t.Errorf("scene %q, device %q, %d entries; was %q, %q, %d", is.Scene, is.Device, is.State.Folded(),
			was.Scene, was.Device, was.State.Folded())
	}
	b.sound(t)
}

// untilMinute cuts the rows after the last of a minute.
func untilMinute(rows []stores.SceneRow, m int) (before, rest []stores.SceneRow) {
	i := slices.IndexFunc(rows, func(r stores.SceneRow) bool { return r.Minute > m })
	if i < 0 {
		return rows, nil
	}
	return rows[:i], rows[i:]
}

func TestReopeningAtEveryCheckpointChangesNothing(t *testing.T) {
	whole := newTablet(t, "A").withDemo(t)
	rows := sceneRows(t, demoFiles(t), "scene.csv")
	whole.replay(t, rows)
	want := csvRows(t, "../testdata/demo/checkpoints.csv")
	var minutes []int
	for _, w := range want {
		m, err := strconv.Atoi(w["minute"])
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Contains(minutes, m) {
			minutes = append(minutes, m)
		}
	}
	for _, m := range minutes {
		b := newTablet(t, "A").withDemo(t)
		first, _ := untilMinute(rows, m)
		b.replay(t, first)
		reopensTheSame(t, b)
		i := 0
		want := slices.DeleteFunc(slices.Clone(want), func(w map[string]string) bool { return w["minute"] != strconv.Itoa(m) })
		for _, c := range b.Picture().State.Checkpoints() {
			got := fmt.Sprintln(c.Rig, c.Place, c.Lines, c.Pieces, strconv.FormatFloat(c.WeightLb, 'f', 2, 64))
			if i >= len(want) {
				t.Errorf("minute %d: %s is not in the table", m, got)
				continue
			}
			w := want[i]
			lb, err := strconv.ParseFloat(w["weight_lb"], 64)
			if err != nil {
				t.Fatal(err)
			}
			if line := fmt.Sprintln(w["rig"], w["place"], w["lines"], w["pieces"], strconv.FormatFloat(lb, 'f', 2, 64)); line != got {
				t.Errorf("minute %d: %swant %s", m, got, line)
			}
			i++
		}
		if i < len(want) {
			t.Errorf("minute %d: %d rows of the table are missing", m, len(want)-i)
		}
	}
}

// The figures are those of the drawn screens of the demo scene, where they
// follow the rule of the account: came off counts every piece, contents of
// kits included, that was away from its home place at some time in the scene,
// a line's most pieces away at once.
func TestTheAccountOfTheDemoScene(t *testing.T) {
	b := newTablet(t, "").withDemo(t)
	rows := sceneRows(t, demoFiles(t), "scene.csv")
	for _, c := range []struct {
		minute int
		want   model.Account
	}{
		{60, model.Account{CameOff: 314, Tarp: 121, Out: 180, Used: 13}},
		{125, model.Account{CameOff: 333, Home: 4, Tarp: 233, Out: 44, With: 4, Bagged: 2, Used: 45, Unexplained: 1}},
		{177, model.Account{CameOff: 344, Home: 257, Carried: 16, With: 15, Charging: 2, Bagged: 2, Used: 51, Lost: 1}},
	} {
		var now []stores.SceneRow
		now, rows = untilMinute(rows, c.minute)
		b.replay(t, now)
		p := b.Picture()
		if got := p.State.Account(p.Scene, ""); got != c.want || !got.Adds() {
			t.Errorf("minute %d:\n%+v, want\n%+v", c.minute, got, c.want)
		}
		var sum model.Account
		for _, rig := range p.State.Dept.Rigs {
			a := p.State.Account(p.Scene, rig.ID)
			x, y := reflect.ValueOf(&sum).Elem(), reflect.ValueOf(a)
			for i := range x.NumField() {
				x.Field(i).SetInt(x.Field(i).Int() + y.Field(i).Int())
			}
		}
		if sum != p.State.Account(p.Scene, "") {
			t.Errorf("minute %d: the rigs add up to %+v", c.minute, sum)
		}
	}
}

func TestARowIsOnTheDiskWhenItIsReported(t *testing.T) {
	b := newTablet(t, "").withDemo(t)
	rows := sceneRows(t, demoFiles(t), "scene.csv")[:40]
	n := len(entriesIn(t, b.path))
	err := b.Replay(rows, evening, func(done []board.Replied) error {
		n += len(done)
		there := entriesIn(t, b.path)
		if len(there) != n || there[n-1].ID != done[len(done)-1].Entry.ID {
			return fmt.Errorf("%d entries on the disk, %d reported", len(there), n)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	stop := fs.ErrInvalid
	if err := b.Replay(rows[:5], evening, func([]board.Replied) error { return stop }); err != stop {
		t.Errorf("the caller's error came back as %v", err)
	}
}
