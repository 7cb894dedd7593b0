package model_test

import (
	"sync"
	"testing"

	"tarpside/model"
	"tarpside/model/modeltest"
)

// long is a log of 100 000 entries over the lines of a usual department.
var long = sync.OnceValue(func() []model.Entry {
	const lines, n = 330, 100_000
	l := modeltest.New("A", modeltest.Big(lines))
	l.Entries = append(make([]model.Entry, 0, n), l.Entries...)
	l.Open("S", "")
	for k := 0; len(l.Entries) < n; k++ {
		if k%400 == 399 {
			l.Open("S"+string(rune('0'+k/400)), l.Scene)
		}
		l.Do(model.Entry{Act: modeltest.Round(lines, k)})
	}
	return l.Entries
})

func BenchmarkFold100k(b *testing.B) {
	entries := long()
	b.ReportAllocs()
	b.ResetTimer()
	for range b.N {
		if s := model.Fold(entries); s.Folded() != len(entries) {
			b.Fatal(s.Folded())
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(entries)), "ns/entry")
}

func BenchmarkBalance(b *testing.B) {
	s := model.Fold(long())
	b.ReportAllocs()
	b.ResetTimer()
	for range b.N {
		data, err := s.MarshalBalance()
		if err != nil {
			b.Fatal(err)
		}
		if _, ok := model.RestoreBalance(data); !ok {
			b.Fatal("not read")
		}
	}
}
