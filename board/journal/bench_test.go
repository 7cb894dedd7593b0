package journal_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"tarpside/model"
	"tarpside/model/modeltest"
)

// aBigLog is 100,000 acts about 400 lines, each of which moves a piece.
func aBigLog(b *testing.B) *modeltest.Log {
	b.Helper()
	l := modeltest.New("A", modeltest.Big(400))
	l.Open("S", "")
	for k := range 100_000 {
		if e := l.Do(model.Entry{Act: modeltest.Round(400, k)}); len(e.Moves) == 0 {
			b.Fatalf("%+v", e)
		}
	}
	return l
}

// BenchmarkFoldAgainstJournalReaders folds 100,000 entries in memory, and has
// the two programs add up the journal of the same entries from a file. The
// ratio is our time as a part of theirs: the goals are 0.04 of hledger's and
// 0.2 of ledger's. We and they take turns, and the fastest turn of each counts:
// what else the machine does can only add to it.
func BenchmarkFoldAgainstJournalReaders(b *testing.B) {
	l := aBigLog(b)
	path := filepath.Join(b.TempDir(), "big.journal")
	if err := os.WriteFile(path, []byte(written(b, l.Entries, time.UTC)), 0o600); err != nil {
		b.Fatal(err)
	}
	for name, args := range map[string][]string{"hledger": {"-f", path, "balance"}, "ledger": {"--args-only", "-f", path, "balance"}} {
		b.Run(name, func(b *testing.B) {
			ours, theirs := time.Hour, time.Hour
			for b.Loop() {
				start := time.Now()
				s := model.Fold(l.Entries)
				ours = min(ours, time.Since(start))
				if s.Folded() != len(l.Entries) {
					b.Fatal(s.Folded())
				}
				cmd := exec.Command(name, args...)
				cmd.Env = append(os.Environ(), "LC_ALL=C.UTF-8")
				start = time.Now()
				if err := cmd.Run(); err != nil {
					b.Fatal(err)
				}
				theirs = min(theirs, time.Since(start))
			}
			b.ReportMetric(0, "ns/op") // of both: no use
			b.ReportMetric(float64(ours.Milliseconds()), "ms/ours")
			b.ReportMetric(float64(theirs.Milliseconds()), "ms/theirs")
			b.ReportMetric(ours.Seconds()/theirs.Seconds(), "ratio")
		})
	}
}

// BenchmarkJournalOf100kEntries is what writing one costs.
func BenchmarkJournalOf100kEntries(b *testing.B) {
	l := aBigLog(b)
	for b.Loop() {
		written(b, l.Entries, time.UTC)
	}
}
