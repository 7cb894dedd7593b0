package board_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"
	"time"

	"tarpside/board"
	"tarpside/model"
)

// records reads a table of testdata, header first.
func records(t *testing.T, path string) [][]string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(path, err)
	}
	return rows
}

// sameTable compares a table with rows, header first.
func sameTable(t *testing.T, got board.Table, want [][]string) {
	t.Helper()
	rows := append([][]string{got.Columns}, got.Rows...)
	for i := range max(len(rows), len(want)) {
		if i >= len(rows) || i >= len(want) || !reflect.DeepEqual(rows[i], want[i]) {
			t.Errorf("%s: row %d of %d and %d: %q, want %q", got.Name, i+1, len(rows), len(want), rows[min(i, len(rows)-1)], want[min(i, len(want)-1)])
			return
		}
	}
}

// pictures are the board after the last row of each minute of the demo scene.
func pictures(t *testing.T) (at map[int]*board.Picture, end *board.Picture) {
	t.Helper()
	b := newTablet(t, "A").withDemo(t)
	at = map[int]*board.Picture{}
	err := b.Replay(sceneRows(t, demoFiles(t), "scene.csv"), evening, func(tap []board.Replied) error {
		at[tap[0].Row.Minute] = b.Picture()
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return at, b.Picture()
}

func TestTheTablesOfTheDemoSceneAreTheWantedOnes(t *testing.T) {
	at, end := pictures(t)
	sameTable(t, end.Where(), records(t, "../testdata/demo/where_end.csv"))
	sameTable(t, end.BringBack(), records(t, "../testdata/demo/bringback_end.csv"))
	sameTable(t, end.Ready(), records(t, "../testdata/demo/readiness_end.csv"))
	sameTable(t, end.Restock(), records(t, "../testdata/demo/restock.csv"))
	sameTable(t, end.Conservation(), records(t, "../testdata/demo/conservation.csv"))
	sameTable(t, end.EndState(), records(t, "../testdata/demo/end_state.csv"))
	sameTable(t, end.Leaving("R41"), records(t, "../testdata/demo/release_R41_at_end.csv"))
	sameTable(t, at[94].Leaving("E42"), records(t, "../testdata/demo/release_E42_left_at_t94.csv"))
	sameTable(t, at[125].LoadUp("R41"), records(t, "../testdata/demo/load_order_R41_at_t125.csv"))

	want := records(t, "../testdata/demo/checkpoints.csv")
	rows := map[int][][]string{}
	for _, r := range want[1:] {
		minute, err := strconv.Atoi(r[0])
		if err != nil {
			t.Fatal(err)
		}
		rows[minute] = append(rows[minute], r)
	}
	if len(rows) < 5 {
		t.Fatalf("only %d checkpoints are wanted", len(rows))
	}
	for minute, list := range rows {
		p := at[minute]
		for m := minute; p == nil; m-- { // nothing was logged in that very minute
			p = at[m]
		}
		sameTable(t, p.Checkpoints(evening.Add(time.Duration(minute)*time.Minute)), append([][]string{want[0]}, list...))
	}
}

func TestTheProofLineNamesEveryTermThatIsNotNought(t *testing.T) {
	at, end := pictures(t)
	for _, c := range []struct {
		p         *board.Picture
		rig, want string
	}{
		{end, "", "344 came off = 257 home again · 16 carried · 15 with others · 2 charging · 2 bagged · 51 used · 1 lost · 0 unexplained"},
		{end, "S44", "0 came off = 0 home again · 0 unexplained"},
		{at[9], "", "5 came off = 0 home again · 5 on tarp · 0 unexplained"},
	} {
		if got := c.p.ProofLine(c.rig); got != c.want {
			t.Errorf("%s: %s", c.rig, got)
		}
	}
	for minute, p := range at {
		for _, rig := range []string{"", "R41", "E42", "P71"} {
			if !p.State.Account(p.Scene, rig).Adds() {
				t.Errorf("minute %d: %s", minute, p.ProofLine(rig))
			}
		}
	}
}

func TestAPlaceOfAnotherOpenSceneHasItsNameBehindIt(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	first := b.begin(t, "Bridge")
	b.logTo(t, first, act(model.PullOff, 1, "R41-001", "home", "tarp"))
	b.logTo(t, first, act(model.Direct, 1, "R41-002", "home", "at:V1"))
	beside, err := b.OpenScene("M01", "Quarry", nil, time.Time{})
	if err != nil {
		t.Fatal(err)
	}
	b.logTo(t, beside.Scene, act(model.PullOff, 1, "R41-003", "home", "tarp"))
	b.logTo(t, beside.Scene, act(model.Direct, 1, "R41-005", "home", "charging"))
	for scene, want := range map[string]string{
		first:        "tarp|at:V1|tarp (Quarry)",
		beside.Scene: "tarp (Bridge)|at:V1 (Bridge)|tarp",
	} {
		b.Work(scene)
		p := b.Picture()
		for _, c := range []struct {
			t      board.Table
			column int
		}{{p.Where(), 4}, {p.Leaving("R41"), 3}, {p.EndState(), 4}} {
			var got []string
			for _, r := range c.t.Rows {
				got = append(got, r[c.column])
			}
			if strings.Join(got, "|") != want {
				t.Errorf("%s: %q, want %s", c.t.Name, got, want)
			}
		}
		if line := p.ProofLine("R41"); !strings.Contains(line, "at another scene") {
			t.Error(line)
		}
	}
}

func TestATableIsWrittenSoThatOthersReadIt(t *testing.T) {
	in := board.Table{Columns: []string{"a", "b"}, Rows: [][]string{{`1 3/4 in, 50 ft`, `8" bolt`}, {"two\nlines", " blank before"}, {"", "é雪"}}}
	var b bytes.Buffer
	if err := in.WriteCSV(&b); err != nil {
		t.Fatal(err)
	}
	// RFC 4180 section 2, rules 5 to 7.
	want := "a,b\n\"1 3/4 in, 50 ft\",\"8\"\" bolt\"\n\"two\nlines\",\" blank before\"\n,é雪\n"
	if b.String() != want {
		t.Errorf("%q, want %q", b.String(), want)
	}
}

func TestAListMakesNoSpreadsheetCompute(t *testing.T) {
	var b strings.Builder
	table := board.Table{Columns: []string{"n", "words"}, Rows: [][]string{{"-5", "=1+1"}, {"0.5", "-5 of them"}, {"", "'=1"}}}
	if err := table.WriteCSV(&b); err != nil {
		t.Fatal(err)
	}
	if want := "n,words\n-5,'=1+1\n0.5,'-5 of them\n,''=1\n"; b.String() != want {
		t.Errorf("%q, want %q", b.String(), want)
	}
}
