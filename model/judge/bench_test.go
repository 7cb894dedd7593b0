package judge_test

import (
	"testing"

	"tarpside/model"
	"tarpside/model/modeltest"
)

// One tap of a finger: judged and folded. The goal is a millisecond.
func BenchmarkReplyWith2000Lines(b *testing.B) {
	l := modeltest.New("A", modeltest.Big(2000))
	l.Open("S", "")
	b.ReportAllocs()
	k := 0
	for b.Loop() {
		if e := l.Do(model.Entry{Act: modeltest.Round(2000, k)}); !e.Taken() {
			b.Fatal(e.Reply)
		}
		k++
		l.Entries = l.Entries[:0]
	}
}
