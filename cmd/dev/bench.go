package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// benched is what go test -bench measures. Only the last needs a display, and
// starts one of its own.
var benched = []string{"./model/...", "./board/...", "./ui/...", "./cmd/tarpside"}

// runBench is "dev bench": it runs the benchmarks and prints their ratios. A
// ratio says more than a time, for the machine cancels out. There are two ways
// for a benchmark to give one:
//
//   - two sub-benchmarks named NAME/ours and NAME/bare, where bare does the
//     same work with nothing of ours in it: the ratio of their ns/op is printed;
//   - b.ReportMetric(x, "ratio"), or "memory-ratio" where it gives several: x
//     is printed as it is.
//
// args go to go test: -count 5 makes each figure the median of five runs.
func runBench(ctx context.Context, args []string) error {
	words := append([]string{"test", "-run", "^$", "-bench", ".", "-benchmem", "-timeout=60m"}, args...)
	words = append(words, benched...)
	set := slices.DeleteFunc(slices.Clone(steady), func(s string) bool { return strings.HasPrefix(s, "CGO_ENABLED") })
	fmt.Println("$", line(set, "go", words))
	cmd := tool(ctx, set, "go", words...)
	var out bytes.Buffer
	cmd.Stdout = io.MultiWriter(os.Stdout, &out)
	err := cmd.Run()
	fmt.Printf("\n%s", ratioTable(parseBench(out.String())))
	if err != nil {
		return fmt.Errorf("a benchmark failed: %w", err)
	}
	return nil
}

// result is one line of benchmark output.
type result struct {
	name  string             // package and benchmark, without the number of processors
	value map[string]float64 // by unit: "ns/op", "B/op", "ratio"
}

// procs is the number of processors at the end of a benchmark's name; go test
// leaves it out when that is one.
var procs = regexp.MustCompile(`-\d+$`)

// parseBench reads the output of go test -bench. A line that is not a whole
// result is passed over: it is what a benchmark printed, or its failure.
func parseBench(out string) []result {
	var results []result
	pkg := ""
	for row := range strings.Lines(out) {
		f := strings.Fields(row)
		if len(f) == 2 && f[0] == "pkg:" {
			pkg = f[1]
			continue
		}
		// Name, runs, then pairs of a value and its unit.
		if len(f) < 4 || len(f)%2 != 0 || !strings.HasPrefix(f[0], "Benchmark") {
			continue
		}
		r := result{name: pkg + " " + procs.ReplaceAllString(strings.TrimPrefix(f[0], "Benchmark"), ""), value: map[string]float64{}}
		whole := true
		for i := 2; i < len(f); i += 2 {
			v, err := strconv.ParseFloat(f[i], 64)
			whole = whole && err == nil
			r.value[f[i+1]] = v
		}
		if whole {
			results = append(results, r)
		}
	}
	return results
}

// ratio is one line of the table; bare and ours are in ns/op and both 0 for a
// ratio that a benchmark reported itself.
type ratio struct {
	name       string
	ours, bare float64
	ratio      float64
}

// ratios makes the table: one line for each pair and each reported ratio, by
// name, and the names of halves whose other half did not run.
func ratios(results []result) (table []ratio, alone []string) {
	times, told := map[string][]float64{}, map[string][]float64{}
	for _, r := range results {
		for unit, v := range r.value {
			if what, ok := strings.CutSuffix(unit, "ratio"); ok {
				name := strings.TrimRight(r.name+" "+what, " -")
				told[name] = append(told[name], v)
			}
		}
		if v, ok := r.value["ns/op"]; ok {
			times[r.name] = append(times[r.name], v)
		}
	}
	for name, values := range told {
		table = append(table, ratio{name: name, ratio: median(values)})
	}
	for name, values := range times {
		if base, ok := strings.CutSuffix(name, "/bare"); ok {
			if times[base+"/ours"] == nil {
				alone = append(alone, name)
			}
			continue
		}
		base, ok := strings.CutSuffix(name, "/ours")
		if !ok {
			continue
		}
		bare := median(times[base+"/bare"])
		if bare == 0 {
			alone = append(alone, name)
			continue
		}
		ours := median(values)
		table = append(table, ratio{name: base, ours: ours, bare: bare, ratio: ours / bare})
	}
	slices.SortFunc(table, func(a, b ratio) int { return strings.Compare(a.name, b.name) })
	slices.Sort(alone)
	return table, alone
}

// median returns the middle value, the lower of two, and 0 for none.
func median(values []float64) float64 {
	if len(values) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(values))
	return sorted[(len(sorted)-1)/2]
}

// ratioTable prints ratios for a person.
func ratioTable(results []result) string {
	table, alone := ratios(results)
	var b strings.Builder
	if len(table) == 0 {
		b.WriteString("No benchmark gave a ratio.\n")
	} else {
		fmt.Fprintf(&b, "%8s  %14s  %14s  %s\n", "ratio", "ours ns/op", "bare ns/op", "benchmark")
	}
	for _, r := range table {
		if r.bare == 0 {
			fmt.Fprintf(&b, "%8.2f  %14s  %14s  %s\n", r.ratio, "", "", r.name)
			continue
		}
		fmt.Fprintf(&b, "%8.2f  %14.1f  %14.1f  %s\n", r.ratio, r.ours, r.bare, r.name)
	}
	for _, name := range alone {
		fmt.Fprintf(&b, "no ratio: the other half of %s did not run\n", name)
	}
	return b.String()
}
