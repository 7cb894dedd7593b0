package main

import (
	"crypto/rand"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"tarpside/board"
	"tarpside/board/stores"
	"tarpside/model"
)

const (
	doubleTap   = 25 // the spreader pulled once more
	otherTablet = 72 // the light that tablet B sent to V2
)

// together are the rows from the first on that one touch on a place makes.
func together(rows []stores.SceneRow) int {
	n := 1
	for n < len(rows) && rows[n].Tap == rows[0].Tap && rows[n].Act.Verb == rows[0].Act.Verb &&
		rows[n].Act.From == rows[0].Act.From && rows[n].Act.To == rows[0].Act.To && moved(rows[n]) {
		n++
	}
	return n
}

func TestInARealWindowTheFirstHourByTapsAloneLeavesWhatTheScriptLeaves(t *testing.T) {
	dir := t.TempDir()
	line := filepath.Join(dir, "tarpline")
	do := func(name string, args ...string) {
		t.Helper()
		if out, err := exec.Command(name, args...).CombinedOutput(); err != nil {
			t.Fatalf("%s %v: %v %s", name, args, err, out)
		}
	}
	do("go", "build", "-o", line, "../tarpline")
	file := func(name string) string { return filepath.Join(dir, name) }
	do(line, "-db", file("script.db"), "stores", "load", "../../assets/demo")
	do(line, "-db", file("script.db"), "replay", "../../assets/demo/scene.csv", "-until", "60")
	do(line, "-db", file("a.db"), "stores", "load", "../../assets/demo")

	all, err := board.DemoScene()
	if err != nil {
		t.Fatal(err)
	}
	h := &hour{running: start(t, "-db", file("a.db"), "-size", "1920x1200"), names: map[string]string{}, at: map[string]string{}}
	d := demoDepartment(t, file("script.db"))
	for i := range d.Items {
		h.names[d.Items[i].ID] = d.Items[i].Short()
	}
	for _, m := range d.Members {
		h.names[m.ID] = m.Name
	}
	stick := func(from, to string) {
		t.Helper()
		do(line, "-db", file(from), "stick", "save", file(from+".tarpside"))
		do(line, "-db", file(to), "stick", "load", file(from+".tarpside"))
	}
	for rows := all; rows[0].Minute <= 60; {
		n := 1
		switch {
		case rows[0].Seq == otherTablet-1:
			stick("a.db", "b.db") // what B knows before it is out of touch
			h.act(rows[:1])
		case rows[0].Seq == otherTablet:
			do(line, "-db", file("b.db"), "replay", oneRow(t, rows[0].Seq))
			h.end()
			stick("b.db", "a.db")
			h.running = start(t, "-db", file("a.db"), "-size", "1920x1200")
		case moved(rows[0]):
			n = together(rows)
			h.act(rows[:n])
		}
		rows = rows[n:]
	}
	h.end()
	want, got := movesOf(t, file("script.db")), movesOf(t, file("a.db"))
	// Tablet B wrote that the light went from the tarp, for all it knew; in
	// the script's one log it is known at once that it came from V1.
	if was, is := "M03: hand R41-070 at:V1 to at:V2", "M03: hand R41-070 tarp to at:V2"; want[was] == 1 {
		delete(want, was)
		want[is] = 1
	}
	for k := range want {
		if got[k] != want[k] {
			t.Errorf("%s: %d pieces in the window, %d by the script", k, got[k], want[k])
		}
	}
	for k := range got {
		if want[k] == 0 {
			t.Errorf("%s: %d pieces in the window, none by the script", k, got[k])
		}
	}
	if by, here := whereOf(t, line, file("script.db")), whereOf(t, line, file("a.db")); !slices.Equal(by, here) {
		t.Errorf("only the script leaves %q, only the window leaves %q", less(by, here), less(here, by))
	}
}

// oneRow is a scene file of one row of the demo.
func oneRow(t *testing.T, seq int) string {
	t.Helper()
	data, err := os.ReadFile("../../assets/demo/scene.csv")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for line := range strings.Lines(string(data)) {
		if len(out) == 0 || strings.HasPrefix(line, fmt.Sprintf("%d,", seq)) {
			out = append(out, line)
		}
	}
	fields := strings.Split(out[1], ",")
	fields[13] = "" // seen: all that came by the stick
	path := filepath.Join(t.TempDir(), "row.csv")
	if err := os.WriteFile(path, []byte(out[0]+strings.Join(fields, ",")), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func openFile(t testing.TB, path string) *board.Board {
	t.Helper()
	b, err := board.Open(path, board.Options{Now: time.Now, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func demoDepartment(t testing.TB, path string) *model.Department {
	t.Helper()
	b := openFile(t, path)
	defer b.Close()
	return b.Picture().State.Dept
}

// movesOf adds up what moved in a log: who logged it, the verb, the item, from
// where, to where.
func movesOf(t testing.TB, path string) map[string]int {
	t.Helper()
	b := openFile(t, path)
	defer b.Close()
	out := map[string]int{}
	for _, e := range b.Picture().Entries {
		for _, m := range e.Moves {
			if m.From != m.To {
				out[fmt.Sprintf("%s: %s %s %s to %s", e.By, e.Verb, m.Item, m.From, m.To)] += m.N
			}
		}
	}
	return out
}

// whereOf is what of each line is where, whoever holds it.
func whereOf(t *testing.T, line, path string) []string {
	t.Helper()
	out, err := exec.Command(line, "-db", path, "where", "-csv").Output()
	if err != nil {
		t.Fatal(err)
	}
	var rows []string
	for row := range strings.Lines(string(out)) {
		rows = append(rows, row[:strings.LastIndex(strings.TrimSpace(row), ",")])
	}
	return rows
}

// less is what stands in one list and not in the other.
func less(a, b []string) (out []string) {
	for _, s := range a {
		if !slices.Contains(b, s) {
			out = append(out, s)
		}
	}
	return out
}
