package board_test

import (
	"database/sql"
	"encoding/json"
	"fmt"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
	"time"

	"github.com/google/uuid"

	"tarpside/board/ledger"
	"tarpside/model"
	"tarpside/model/judge"
)

// The pairs are ours against bare: the same work done with nothing of ours in
// it. The goals: a logged act at 1.25 times a bare insert, a fold at twice a
// bare scan and decode, a start after ten years at 1.2 times that after one
// scene, in time and in memory.

const perScene = 300 // entries

// bareDB is a plain table in a file with the pragmas of the ledger.
func bareDB(b *testing.B) *sql.DB {
	b.Helper()
	db, err := sql.Open("sqlite", filepath.Join(b.TempDir(), "bare")+
		"?_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)&_pragma=foreign_keys(1)&_pragma=secure_delete(1)&_txlock=immediate")
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { db.Close() })
	db.SetMaxOpenConns(1)
	if _, err := db.Exec("CREATE TABLE t (n INTEGER PRIMARY KEY, body TEXT NOT NULL)"); err != nil {
		b.Fatal(err)
	}
	return db
}

// BenchmarkDurableLogOfOneAct bounds what judging, folding, encoding and
// publishing add to a write that is safe on the disk. Acts and bare inserts of
// a text as long take turns, and the medians of the turns are compared: what
// others do with the disk makes a few of them many times longer.
func BenchmarkDurableLogOfOneAct(b *testing.B) {
	d := newTablet(b, "A").withDemo(b)
	d.begin(b, "Bench")
	d.log(b, act(model.PullOff, 1, "R41-003", "home", "tarp"))
	acts := []model.Act{act(model.Hand, 1, "R41-003", "tarp", "at:V1"), act(model.Return, 1, "R41-003", "at:V1", "tarp")}
	body, err := json.Marshal(d.log(b, acts[0]))
	if err != nil {
		b.Fatal(err)
	}
	d.log(b, acts[1])
	insert, err := bareDB(b).Prepare("INSERT INTO t (body) VALUES (?)")
	if err != nil {
		b.Fatal(err)
	}
	var turns [2][]float64 // nanoseconds for one act of ours, and for one bare insert
	for b.Loop() {
		for i, one := range []func(i int){
			func(i int) { d.log(b, acts[i%2]) },
			func(int) {
				if _, err := insert.Exec(string(body)); err != nil {
					b.Fatal(err)
				}
			},
		} {
			start := time.Now()
			for k := range 20 {
				one(k)
			}
			turns[i] = append(turns[i], float64(time.Since(start).Nanoseconds())/20)
		}
	}
	for i := range turns {
		slices.Sort(turns[i])
	}
	ours, bare := turns[0][len(turns[0])/2], turns[1][len(turns[1])/2]
	b.ReportMetric(0, "ns/op") // of a turn of both: no use
	b.ReportMetric(ours, "ns/act")
	b.ReportMetric(bare, "ns/bare")
	b.ReportMetric(ours/bare, "ratio")
}

// aSceneOf judges a scene that leaves all as it was, so that it can follow
// itself as often as one likes.
func aSceneOf(b *testing.B, s *model.State, n int) []model.Entry {
	b.Helper()
	entries := make([]model.Entry, 0, n)
	put := func(a model.Act) {
		e := model.Entry{Act: a, Scene: "s", Seen: s.Seen(), Stamp: model.Stamp{Wall: 1, Device: "A"}, Format: model.Format, Device: "A"}
		s = judge.Judge(s, &e)
		if !e.Taken() {
			b.Fatalf("%+v", e)
		}
		entries = append(entries, e)
	}
	put(word(model.Open))
	for i := 0; len(entries) < n-5; i++ {
		if it := &s.Dept.Items[i%len(s.Dept.Items)]; len(it.Checks) == 0 && it.Kit == "" && it.Kind != model.Kit && len(s.Dept.RulesFirst(it.ID)) == 0 {
			put(act(model.PullOff, 1, it.ID, "home", "tarp"))
			put(act(model.Hand, 1, it.ID, "tarp", "at:V1"))
			put(act(model.Return, 1, it.ID, "at:V1", "tarp"))
			put(act(model.Stow, 1, it.ID, "tarp", "home"))
		}
	}
	for len(entries) < n-1 {
		put(word(model.Note))
	}
	put(word(model.Close))
	return entries
}

// years makes a file of so many scenes, a day apart, with the balance of the
// last close if that is closed.
func years(b *testing.B, scenes int, closed bool) *tablet {
	b.Helper()
	t := newTablet(b, "A").withDemo(b)
	first := aSceneOf(b, t.Picture().State, perScene)
	t.shut(b)
	l, err := ledger.Open(t.path, ledger.Options{})
	if err != nil {
		b.Fatal(err)
	}
	n, before := 1, ""
	var batch []model.Entry
	for sc := range scenes {
		scene := fmt.Sprintf("scene-%d", sc)
		for i, e := range first {
			e.Scene, e.Seen = scene, model.Vector{"A": n}
			e.Stamp.Wall = evening.AddDate(0, 0, sc).UnixMilli() + int64(i+1)*10_000
			e.ID = model.NewID(e.Stamp.Wall, [10]byte{byte(n), byte(n >> 8), byte(n >> 16)})
			if n++; e.Verb == model.Open {
				e.Takes = []string{before}
			}
			if closed || sc < scenes-1 || e.Verb != model.Close {
				batch = append(batch, e)
			}
		}
		if before = scene; len(batch) >= 30_000 || sc == scenes-1 {
			if added, err := l.Append(batch...); err != nil || added != len(batch) {
				b.Fatal(added, err)
			}
			batch = batch[:0]
		}
	}
	if err := l.Close(); err != nil {
		b.Fatal(err)
	}
	t.clock.now = evening.AddDate(0, 0, scenes)
	t.open(b) // folds it whole, and keeps the balance
	if got := t.Picture().State.Folded(); got < scenes*perScene || len(t.Picture().State.Unbalanced()) > 0 {
		b.Fatal(got)
	}
	t.shut(b)
	t.Board = nil
	runtime.GC()
	return t
}

// BenchmarkFoldOf100kEntriesFromTheFile bounds a start without any balance.
func BenchmarkFoldOf100kEntriesFromTheFile(b *testing.B) {
	t := years(b, 100_000/perScene, false)
	want := 100_000 / perScene * perScene // the stores in place of the last close
	b.Run("ours", func(b *testing.B) {
		for b.Loop() {
			t.open(b)
			if got := t.Picture().State.Folded(); got != want {
				b.Fatal(got)
			}
			t.shut(b)
		}
	})
	b.Run("bare", func(b *testing.B) {
		for b.Loop() {
			db, err := sql.Open("sqlite", t.path)
			if err != nil {
				b.Fatal(err)
			}
			rows, err := db.Query("SELECT n, body FROM entry ORDER BY n")
			if err != nil {
				b.Fatal(err)
			}
			var all []model.Entry
			for rows.Next() {
				var n int
				var body sql.RawBytes
				var e model.Entry
				if err := rows.Scan(&n, &body); err != nil {
					b.Fatal(err)
				}
				if err := json.Unmarshal(body, &e); err != nil || e.ID == uuid.Nil {
					b.Fatal(err)
				}
				all = append(all, e)
			}
			if len(all) != want {
				b.Fatal(len(all), rows.Err())
			}
			if err := db.Close(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// BenchmarkOpenAfterTenYears bounds a start with 3650 closed scenes behind it
// against one with a single scene: closed scenes are not read.
func BenchmarkOpenAfterTenYears(b *testing.B) {
	for _, c := range []struct {
		name   string
		scenes int
	}{{"ours", 3650}, {"bare", 1}} {
		b.Run(c.name, func(b *testing.B) {
			made := time.Now()
			t := years(b, c.scenes, true)
			b.Logf("%d scenes made in %s", c.scenes, time.Since(made).Round(time.Second))
			for b.Loop() {
				t.open(b)
				if p := t.Picture(); len(p.Entries) != 0 || p.State.Folded() != c.scenes*perScene+1 {
					b.Fatal(len(p.Entries), p.State.Folded())
				}
				t.shut(b)
			}
		})
	}
}

// BenchmarkOneEntryFromAnotherTablet is what a shared act costs in the middle
// of a scene.
func BenchmarkOneEntryFromAnotherTablet(b *testing.B) {
	d, other := newTablet(b, "A").withDemo(b), newTablet(b, "B")
	d.begin(b, "Bench")
	for range perScene {
		d.log(b, word(model.Note))
	}
	other.add(b, entriesIn(b, d.path)...)
	for b.Loop() {
		b.StopTimer()
		e := other.log(b, word(model.Note))
		b.StartTimer()
		d.add(b, e)
	}
}
