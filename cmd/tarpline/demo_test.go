package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestTheDemoTellsTheNightAndTouchesNoFile(t *testing.T) {
	d := newDesk(t)
	temp := t.TempDir()
	for _, name := range []string{"TMPDIR", "TMP", "TEMP"} { // Unix, Windows
		t.Setenv(name, temp)
	}
	out := d.must("demo")
	if left, err := os.ReadDir(temp); err != nil || len(left) > 0 {
		t.Errorf("left behind: %v, %v", left, err)
	}
	fits(t, "demo", out)
	at := 0
	for _, w := range []string{
		"Everything in it is invented", "The call", "Two-car crash, Sawpit Bridge Road", "8  18:58  Askew         Rescue 41 arrives",
		"> refused: Already on the tarp. Nothing changed", "> contested: two claims: at V2 or at V1", "The put-back",
		"in the way", "> refused: Tool battery 2 does not pass: battery=22", "search closed, lost: 1 Spring punch", "the scene is closed",
		"At a glance, minute 60 (19:50)", "on the tarp: 18 lines, 121 pieces",
		"Load order of Rescue 41, minute 125 (20:55)", "Strut foot and strap crate",
		"Leaving list of Rescue 41", "Carries for others", "To bring back", "Head block set", "To restock", "Absorbent pad",
		"344 came off = 257 home again · 16 carried · 15 with others · 2 charging · 2 bagged · 51 used",
	} {
		i := strings.Index(out[at:], w)
		if i < 0 {
			t.Fatalf("%q does not come in its turn", w)
		}
		at += i
	}
	if strings.Contains(out, "\x1b") {
		t.Error("colours on what is no terminal")
	}
	if _, err := os.Stat(d.db); err == nil {
		t.Error("the demo made the department file")
	}
}

func TestColourIsForTerminalsWhoseOwnersWantIt(t *testing.T) {
	plain := newDesk(t).must("demo")
	for _, c := range []struct {
		env    map[string]string
		colour bool
	}{
		{nil, true}, {map[string]string{"NO_COLOR": "1"}, false}, {map[string]string{"NO_COLOR": ""}, true}, {map[string]string{"TERM": "dumb"}, false},
	} {
		d := newDesk(t)
		d.terminal, d.env = true, c.env
		out := d.must("demo")
		if got := strings.Contains(out, "\x1b["); got != c.colour {
			t.Errorf("%v: coloured is %v", c.env, got)
		}
		for _, ink := range []string{bold, faint, red, amber} {
			out = strings.ReplaceAll(out, "\x1b["+ink+"m", "")
		}
		if strings.ReplaceAll(out, "\x1b[0m", "") != plain {
			t.Errorf("%v: colour changes the words", c.env)
		}
	}
}

func TestTheDemoWritesItsTables(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	out := newDesk(t).must("demo", "-out", dir)
	fits(t, "demo", out)
	for file, want := range map[string]string{"loadup_R41_t125": "load_order_R41_at_t125", "leaving_R41": "release_R41_at_end",
		"where": "where_end", "bringback": "bringback_end", "restock": "restock", "ready": "readiness_end",
		"conservation": "conservation", "end_state": "end_state"} {
		data, err := os.ReadFile(filepath.Join(dir, file+".csv"))
		if err != nil {
			t.Fatal(err)
		}
		same(t, file, table(t, string(data)), tableFile(t, "demo", want+".csv"))
		if !strings.Contains(out, file+".csv") {
			t.Errorf("it does not say that it wrote %s", file)
		}
	}
	data, err := os.ReadFile(filepath.Join(dir, "replies.csv"))
	if err != nil {
		t.Fatal(err)
	}
	answered(t, "replies", table(t, string(data)), tableFile(t, "demo", "replies.csv"))
	file := filepath.Join(t.TempDir(), "a file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if errs := newDesk(t).fails(failed, "demo", "-out", file); !strings.Contains(errs, "the tables could not be written") {
		t.Error(errs)
	}
}
