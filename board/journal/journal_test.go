package journal_test

import (
	"fmt"
	"io/fs"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"tarpside/assets"
	"tarpside/board"
	"tarpside/board/journal"
	"tarpside/board/stores"
	"tarpside/model"
	"tarpside/model/modeltest"
)

// evening is minute 0 of the scenes here.
var evening = time.Date(2026, 11, 14, 18, 50, 0, 0, time.UTC)

// played is the demo department after the scene of a folder, up to a minute:
// the board that people see, and all its entries.
func played(t *testing.T, scene fs.FS, minute int) (*board.Picture, []model.Entry) {
	t.Helper()
	b, err := board.Open(filepath.Join(t.TempDir(), "dept.db"), board.Options{Now: func() time.Time { return evening }, Random: rand.New(rand.NewSource(41))})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	tables, err := board.DemoTables()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.LoadStores(tables, "M01", false); err != nil {
		t.Fatal(err)
	}
	data, err := fs.ReadFile(scene, "scene.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, problems := stores.ReadScene("scene.csv", data)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	rows = slices.DeleteFunc(rows, func(r stores.SceneRow) bool { return r.Minute > minute })
	if err := b.Replay(rows, evening, nil); err != nil {
		t.Fatal(err)
	}
	entries, err := b.Entries()
	if err != nil {
		t.Fatal(err)
	}
	return b.Picture(), entries
}

func TestBothProgramsFindTheProofOfTheDemoAndTheWildScenes(t *testing.T) {
	demo, err := fs.Sub(assets.Demo, "demo")
	if err != nil {
		t.Fatal(err)
	}
	scenes := map[string]fs.FS{"demo": demo}
	folders, err := filepath.Glob(source("testdata", "scenes", "*"))
	if err != nil || len(folders) < 6 {
		t.Fatal(len(folders), err)
	}
	for _, dir := range folders {
		scenes[filepath.Base(dir)] = os.DirFS(dir)
	}
	for name, scene := range scenes {
		t.Run(name, func(t *testing.T) {
			p, entries := played(t, scene, math.MaxInt)
			if len(proof(p.State)) < 600 {
				t.Fatalf("the proof has only %d cells", len(proof(p.State)))
			}
			text := written(t, entries, time.UTC)
			for program, read := range readers {
				wantBook(t, program, read(t, text, true), proof(p.State))
				wantBook(t, program, read(t, text, false), fold(p.State))
			}
		})
	}
}

// The entries are those of devices that had not seen each other's, so that
// what the judge thought of many of them is not what the fold did.
func TestBothProgramsFindTheFoldOfRandomLogsThatMet(t *testing.T) {
	differ := 0
	rapid.Check(t, func(t *rapid.T) {
		l := modeltest.New("A", modeltest.Department(modeltest.Rand(rapid.Uint64().Draw(t, "department"))))
		l.Open("S", "")
		for _, seed := range rapid.SliceOfN(rapid.Uint64(), 0, 60).Draw(t, "shared") {
			l.Do(modeltest.Entry(modeltest.Rand(seed), l, "A", "B", "C"))
		}
		o := l.Fork("D")
		for i, seed := range rapid.SliceOfN(rapid.Uint64(), 0, 40).Draw(t, "apart") {
			log := []*modeltest.Log{l, o}[i%2]
			log.Do(modeltest.Entry(modeltest.Rand(seed), log))
		}
		l.Hear(o)
		if !byReplies(l.Entries, l.State) {
			differ++
		}
		agree(t, rapid.Permutation(l.Entries).Draw(t, "arrival"), l.State)
	})
	if differ == 0 {
		t.Error("in no log the fold differed from the moves of the replies: the logs are too tame")
	}
}

// byReplies tells whether the moves that the replies spoke of lead to the
// board as it is.
func byReplies(entries []model.Entry, s *model.State) bool {
	sum := map[string]map[model.Place]int{}
	for i := range entries {
		for _, m := range entries[i].Moves {
			if sum[m.Item] == nil {
				sum[m.Item] = map[model.Place]int{}
			}
			sum[m.Item][m.From] -= m.N
			sum[m.Item][m.To] += m.N
		}
	}
	for i := range s.Dept.Items {
		home := s.HomeOf(i)
		for p, n := range sum[s.Dept.Items[i].ID] {
			if p != home && s.Line(i).N(p) != n {
				return false
			}
		}
	}
	return true
}

// nasty are letters that mean something in one of the two formats, or are odd.
var nasty = rapid.StringOfN(rapid.SampledFrom([]rune("ab1 %;:\"'\\|@{}[]()<>=*!#~^&,.-_/+$€\t\n\u00a0\u2028\u200b\ufeffÅ日🚒é\x00\x7f")), 1, 12, -1)

func TestOddNamesReachBothProgramsAsTheyAre(t *testing.T) {
	moved := 0
	rapid.Check(t, func(t *rapid.T) {
		ids := rapid.SliceOfNDistinct(nasty, 3, 3, rapid.ID).Draw(t, "ids")
		if rapid.Bool().Draw(t, "short") {
			ids[0] = rapid.SampledFrom([]string{"s", "m", "h", "%73", "\xff", "%", "\ufffd", "$", strings.Repeat("x", 255)}).Draw(t, "id")
		}
		rig, name := nasty.Draw(t, "rig"), nasty.Draw(t, "name")
		if rapid.Bool().Draw(t, "long") {
			name += strings.Repeat(" to and fro", 1000)
		}
		l := modeltest.New("A", (&model.Department{
			Rigs: []model.Rig{{ID: rig}}, Slots: []model.Slot{{ID: "S", Rig: rig}}, Members: []model.Member{{ID: "CREW", Name: name}},
			Items: []model.Item{
				{ID: ids[0], Name: name, Rig: rig, Slot: "S", Kind: model.Consumable, Quantity: 120},
				{ID: ids[1], Name: name, Rig: rig, Slot: "S", Kind: model.Kit, Quantity: 1},
				{ID: ids[2], Name: name, Rig: rig, Kit: ids[1], Kind: model.Counted, Quantity: 7}}}).Index())
		l.Open("S", "")
		l.Open("T") // beside it
		for _, a := range []model.Act{
			{Verb: model.PullOff, Item: ids[0], From: "home", To: "tarp", Quantity: 100},
			{Verb: model.Hand, Item: ids[0], From: "tarp", To: "at:" + nasty.Draw(t, "place"), Quantity: 90, Holder: nasty.Draw(t, "holder")},
			{Verb: model.Direct, Item: ids[1], From: "home", To: "at:" + nasty.Draw(t, "place"), Quantity: 1, By: "CREW"},
			{Verb: model.Handover, Item: ids[0], From: "tarp", To: "with:" + nasty.Draw(t, "agency"), Quantity: 3, By: nasty.Draw(t, "by")},
		} {
			when := rapid.SampledFrom([]int64{0, 1, math.MinInt64, math.MaxInt64, -62135596800000, 253402300799999}).Draw(t, "when")
			moved += len(l.Do(model.Entry{Act: a, Typed: when, Scene: rapid.SampledFrom([]string{"S", "T"}).Draw(t, "scene")}).Moves)
		}
		agree(t, l.Entries, l.State)
	})
	if moved == 0 {
		t.Error("nothing moved to a place with an odd name")
	}
}

func TestTheJournalSaysWhoDidWhatWhen(t *testing.T) {
	l := modeltest.New("A", modeltest.Yard())
	l.Open("S", "")
	at := evening.UnixMilli()
	l.Do(model.Entry{Typed: at, Act: model.Act{Verb: model.PullOff, Item: "TAPE", From: "home", To: "tarp", Quantity: 4, By: "Kit; date:2020-01-01", Note: "secret"}})
	l.Do(model.Entry{Typed: at, Act: model.Act{Verb: model.PullOff, Item: "TAPE", From: "home", To: "tarp", Quantity: 99, By: "CREW"}}) // refused
	l.Do(model.Entry{Typed: at, Act: model.Act{Verb: model.Note, Note: "secret", Quantity: model.Blank}})
	it := l.State.Dept.Item("TAPE")
	want := fmt.Sprintf("\n2026-11-14 * (13:50:00) pull TAPE %s, by Kit, date:2020-01-01\n    home                    -4 \"TAPE\"\n    tarp                    4 \"TAPE\"\n", it.Name)
	text := written(t, l.Entries, time.FixedZone("", -5*60*60))
	if !strings.HasSuffix(text, want) || strings.Contains(text, "secret") {
		t.Errorf("the end is\n%s\nwant\n%s", text[max(0, len(text)-2*len(want)):], want)
	}
}

// Ledger shows 120 of a commodity s as 2.0m: it reckons in seconds, minutes
// and hours.
func TestItemsNamedLikeUnitsOfTimeAreNotReckonedInHours(t *testing.T) {
	d := &model.Department{Rigs: []model.Rig{{ID: "R1"}}}
	for _, id := range []string{"s", "m", "h", "S", "ss"} {
		d.Items = append(d.Items, model.Item{ID: id, Name: id, Rig: "R1", Kind: model.Consumable, Quantity: 7200})
	}
	l := modeltest.New("A", d.Index())
	text := written(t, l.Entries, time.UTC)
	for program, read := range readers {
		wantBook(t, program, read(t, text, true), proof(l.State))
	}
}

func TestAContestedEntryIsMarked(t *testing.T) {
	l := modeltest.New("A", modeltest.Yard())
	l.Open("S", "")
	l.Do(model.Entry{Act: model.Act{Verb: model.PullOff, Item: "DRILL", From: "home", To: "tarp", Quantity: 1}})
	o := l.Fork("B")
	l.Do(model.Entry{Act: model.Act{Verb: model.Hand, Item: "DRILL", From: "tarp", To: "at:V1", Quantity: 1}})
	o.Do(model.Entry{Act: model.Act{Verb: model.Hand, Item: "DRILL", From: "tarp", To: "at:V2", Quantity: 1}})
	l.Hear(o)
	text := written(t, l.Entries, time.UTC)
	if strings.Count(text, " ! (") != 1 || !strings.Contains(text, "    at:V1                   -1 \"DRILL\"\n    at:V2                   1 \"DRILL\"\n") {
		t.Errorf("the second hand should move the drill from V1 and be marked:\n%s", text)
	}
	agree(t, l.Entries, l.State)
}

func TestAnEmptyLogIsAJournal(t *testing.T) {
	agree(t, nil, model.Fold(nil))
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, os.ErrClosed }

func TestAFullDiskIsAnError(t *testing.T) {
	l := modeltest.New("A", modeltest.Yard())
	if err := journal.Write(full{}, l.Entries, time.UTC); err == nil {
		t.Error("no error")
	}
}
