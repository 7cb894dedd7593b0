package ledger

import (
	"database/sql"
	"fmt"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// BenchmarkDurableAppendVsBareInsert appends entries of one move, each safe
// on the disk, in turn with bare inserts of a text of the same size into a
// plain table with the same pragmas. It reports the medians of the turns, as
// other programs' use of the disk makes a few of them many times longer, and
// bare time over ours.
func BenchmarkDurableAppendVsBareInsert(b *testing.B) {
	l := mustOpen(b, filepath.Join(b.TempDir(), "dept"))
	bare, err := sql.Open("sqlite", writeDSN(filepath.Join(b.TempDir(), "bare")))
	if err != nil {
		b.Fatal(err)
	}
	defer bare.Close()
	bare.SetMaxOpenConns(1)
	if _, err := bare.Exec("CREATE TABLE t (n INTEGER PRIMARY KEY, body TEXT NOT NULL)"); err != nil {
		b.Fatal(err)
	}
	insert, err := bare.Prepare("INSERT INTO t (body) VALUES (?)")
	if err != nil {
		b.Fatal(err)
	}
	const turn = 5
	var ours, theirs []float64 // nanoseconds for a turn
	n, turns := 0, 0
	for b.Loop() {
		entries := entriesOf("A", "S1", n+1, n+turn)
		bodies := make([]string, turn)
		for i := range entries {
			if bodies[i], err = encode(&entries[i]); err != nil {
				b.Fatal(err)
			}
		}
		n += turn
		entered := func() {
			for i := range entries {
				if added, err := l.Append(entries[i]); err != nil || added != 1 {
					b.Fatal(added, err)
				}
			}
		}
		plain := func() {
			for _, body := range bodies {
				if _, err := insert.Exec(body); err != nil {
					b.Fatal(err)
				}
			}
		}
		if turns++; turns%2 == 0 { // neither is always the first
			theirs = took(theirs, plain)
			ours = took(ours, entered)
		} else {
			ours = took(ours, entered)
			theirs = took(theirs, plain)
		}
	}
	slices.Sort(ours)
	slices.Sort(theirs)
	mine, plain := ours[len(ours)/2]/turn, theirs[len(theirs)/2]/turn
	b.ReportMetric(0, "ns/op") // of a turn of both: no use
	b.ReportMetric(mine, "ns/append")
	b.ReportMetric(plain, "ns/bare")
	b.ReportMetric(plain/mine, "of-bare-speed")
	b.ReportMetric(mine/plain, "ratio")
}

// took adds the time that f took.
func took(times []float64, f func()) []float64 {
	start := time.Now()
	f()
	return append(times, float64(time.Since(start).Nanoseconds()))
}

// fill makes a file of scenes of 300 entries each, of two devices.
func fill(b *testing.B, scenes int) string {
	path := filepath.Join(b.TempDir(), "dept")
	l := mustOpen(b, path)
	if _, err := l.write.Exec("PRAGMA synchronous = OFF"); err != nil { // this is not what is measured
		b.Fatal(err)
	}
	n := 0
	for s := range scenes {
		scene := fmt.Sprint("scene-", s)
		mustAppend(b, l, entriesOf("A", scene, n+1, n+150)...)
		mustAppend(b, l, entriesOf("B", scene, n+1, n+150)...)
		n += 150
		end := entry("B", scene, n).Stamp
		if err := l.PutBalance(Balance{scene, 2 * n, end, nil, make([]byte, 8000)}); err != nil {
			b.Fatal(err)
		}
	}
	mustClose(b, l)
	return path
}

func BenchmarkScanDecode100k(b *testing.B) {
	l := mustOpen(b, fill(b, 334))
	for b.Loop() {
		n := 0
		for _, err := range l.Entries(0) {
			if err != nil {
				b.Fatal(err)
			}
			n++
		}
		if n != 334*300 {
			b.Fatal(n)
		}
	}
}

// BenchmarkStart opens a file and reads what a start reads, after one scene
// and after ten years of one a day, and then one scene of them: both should
// cost the same after any time.
func BenchmarkStart(b *testing.B) {
	for _, scenes := range []int{1, 3650} {
		path := fill(b, scenes)
		b.Run(fmt.Sprint("start-after-", scenes), func(b *testing.B) {
			for b.Loop() {
				l, err := Open(path, Options{})
				if err != nil {
					b.Fatal(err)
				}
				latest, ok, err := l.LatestBalance()
				if err != nil || !ok || latest.Covers != scenes*300 {
					b.Fatal(latest.Covers, ok, err)
				}
				for _, err := range l.Entries(latest.Covers) {
					b.Fatal("an entry after the last", err)
				}
				if n, err := l.Count(); n != scenes*300 || err != nil {
					b.Fatal(n, err)
				}
				if v, err := l.Vector(); v["A"] != scenes*150 || err != nil {
					b.Fatal(v, err)
				}
				if err := l.Close(); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(fmt.Sprint("one-of-", scenes), func(b *testing.B) {
			l := mustOpen(b, path)
			for b.Loop() {
				if list, err := l.ByScene("scene-0"); len(list) != 300 || err != nil {
					b.Fatal(len(list), err)
				}
			}
			mustClose(b, l)
		})
	}
}
