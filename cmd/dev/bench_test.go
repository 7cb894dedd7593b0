package main

import (
	"reflect"
	"slices"
	"strings"
	"testing"
)

// sample is go test -bench output with what surrounds the results: build facts,
// a line a benchmark logged, one result with GOMAXPROCS=1 (no suffix), a
// repeated pair, a reported ratio, a name that ends in digits, and a failure.
const sample = `goos: linux
pkg: tarpside/board/ledger
cpu: some cpu
BenchmarkAppend/ours-2         	     100	    300 ns/op	  48 B/op	       2 allocs/op
BenchmarkAppend/bare-2         	     200	    100 ns/op	   0 B/op	       0 allocs/op
BenchmarkAppend/ours-2         	     100	    500 ns/op	  48 B/op	       2 allocs/op
BenchmarkAppend/bare-2         	     200	    200.5 ns/op	   0 B/op	       0 allocs/op
BenchmarkAppend/ours-2         	     100	    400 ns/op	  48 B/op	       2 allocs/op
BenchmarkAppend/bare-2         	     200	    250 ns/op	   0 B/op	       0 allocs/op
    bench_test.go:12: a note of the benchmark
PASS
ok  	tarpside/board/ledger	2.1s
pkg: tarpside/model
BenchmarkFold/n=1000           	      50	   9000 ns/op	         1.250 ratio
BenchmarkUp-2                  	       1	   7000 ns/op	         1.100 memory-ratio	         1.200 start-ratio
BenchmarkLap/ours              	      50	     80 ns/op
BenchmarkGone/bare-16          	      50	     80 ns/op
--- FAIL: BenchmarkBad
BenchmarkBad-2
FAIL
`

func TestBenchmarkLinesAreReadAndOtherLinesPassedOver(t *testing.T) {
	got := parseBench(sample)
	if len(got) != 10 {
		t.Fatalf("%d results, want 10: %v", len(got), got)
	}
	want := result{"tarpside/board/ledger Append/ours", map[string]float64{"ns/op": 300, "B/op": 48, "allocs/op": 2}}
	if !reflect.DeepEqual(got[0], want) {
		t.Errorf("first result %v, want %v", got[0], want)
	}
	for _, row := range []string{"BenchmarkX-2 100 fast ns/op", "BenchmarkX-2 100 5", "Benchmark", ""} {
		if got := parseBench(row); len(got) != 0 {
			t.Errorf("%q gave %v", row, got)
		}
	}
}

func TestAPairGivesTheRatioOfItsMedians(t *testing.T) {
	table, alone := ratios(parseBench(sample))
	want := []ratio{
		{name: "tarpside/board/ledger Append", ours: 400, bare: 200.5, ratio: 400 / 200.5},
		{name: "tarpside/model Fold/n=1000", ratio: 1.25},
		{name: "tarpside/model Up memory", ratio: 1.1},
		{name: "tarpside/model Up start", ratio: 1.2},
	}
	if !slices.Equal(table, want) {
		t.Errorf("ratios %v, want %v", table, want)
	}
	if want := []string{"tarpside/model Gone/bare", "tarpside/model Lap/ours"}; !slices.Equal(alone, want) {
		t.Errorf("halves alone %v, want %v", alone, want)
	}
}

func TestPairsOfTwoPackagesAreNotMixed(t *testing.T) {
	table, alone := ratios(parseBench("pkg: a\nBenchmarkX/ours-2 1 10 ns/op\npkg: b\nBenchmarkX/bare-2 1 5 ns/op\n"))
	if len(table) != 0 || len(alone) != 2 {
		t.Errorf("ratios %v, alone %v; want none and both", table, alone)
	}
}

func TestTheRatioTableSaysWhenThereIsNothing(t *testing.T) {
	if got := ratioTable(nil); !strings.Contains(got, "No benchmark gave a ratio") {
		t.Errorf("table of nothing: %q", got)
	}
	got := ratioTable(parseBench(sample))
	for _, want := range []string{"2.00", "1.25", "tarpside/board/ledger Append", "the other half of tarpside/model Lap/ours"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in the table:\n%s", want, got)
		}
	}
}
