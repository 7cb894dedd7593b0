package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// answered checks the replies of a scene: each row's word and all of its
// reasons, in any order.
func answered(t *testing.T, name string, got, want [][]string) {
	t.Helper()
	if strings.Join(got[0], ",") != "seq,reply,reasons,text" {
		t.Errorf("%s: the columns are %q", name, got[0])
	}
	key := func(row []string) string {
		reasons := strings.Split(row[2], ";")
		slices.Sort(reasons)
		return row[0] + " " + row[1] + " " + strings.Join(reasons, ";")
	}
	if len(got) != len(want) {
		t.Fatalf("%s: %d rows, want %d", name, len(got), len(want))
	}
	for i := range want[1:] {
		if g, w := key(got[i+1]), key(want[i+1]); g != w {
			t.Errorf("%s: %s, want %s", name, g, w)
		}
	}
}

// playedDesk is a desk with a scene logged up to a minute ("" for all of it), and
// the replies.
func playedDesk(t *testing.T, scene, until string) (*desk, [][]string) {
	t.Helper()
	d := loadedDesk(t)
	out := filepath.Join(t.TempDir(), "replies.csv")
	args := []string{"replay", scene, "-replies", out}
	if until != "" {
		args = append(args, "-until", until)
	}
	d.must(args...)
	data, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return d, table(t, string(data))
}

// asCommand turns the name of a table into the command that prints it.
func asCommand(name string) []string {
	if cmd, rig, ok := strings.Cut(name, "_"); ok {
		return []string{cmd, "-rig", rig}
	}
	return []string{name}
}

func (d *desk) csv(args ...string) [][]string {
	d.t.Helper()
	return table(d.t, d.must(append([]string{"-csv"}, args...)...))
}

func TestTheDemoSceneEndsWithTheWantedTables(t *testing.T) {
	d, replies := playedDesk(t, demoScene, "")
	answered(t, "replies", replies, tableFile(t, "demo", "replies.csv"))
	for name, file := range map[string]string{"where": "where_end", "ready": "readiness_end", "restock": "restock",
		"bringback": "bringback_end", "leaving_R41": "release_R41_at_end"} {
		same(t, name, d.csv(asCommand(name)...), tableFile(t, "demo", file+".csv"))
	}
	proof := d.csv("proof")
	if got := strings.Join(proof[0], ","); got != "item,name,quantity,home,tarp,at,kit,with,riding,charging,bagged,used,unexplained,lost" {
		t.Errorf("the columns of proof are %s", got)
	}
	if len(proof) != 326 {
		t.Errorf("proof has %d lines, want 325", len(proof)-1)
	}
}

func TestTheDemoSceneHasTheWantedTablesOnTheWay(t *testing.T) {
	for _, c := range []struct{ until, name, file string }{
		{"91", "leaving_E42", "release_E42_at_t91"},
		{"94", "leaving_E42", "release_E42_left_at_t94"},
		{"125", "loadup_R41", "load_order_R41_at_t125"},
	} {
		d, _ := playedDesk(t, demoScene, c.until)
		same(t, c.file, d.csv(asCommand(c.name)...), tableFile(t, "demo", c.file+".csv"))
	}
}

func TestSixWildScenesHaveTheWantedRepliesAndTables(t *testing.T) {
	scenes, err := filepath.Glob(filepath.Join(wanted, "scenes", "*"))
	if err != nil || len(scenes) != 6 {
		t.Fatal(scenes, err)
	}
	for _, dir := range scenes {
		t.Run(filepath.Base(dir), func(t *testing.T) {
			minute, err := os.ReadFile(filepath.Join(dir, "mid.txt"))
			if err != nil {
				t.Fatal(err)
			}
			scene := filepath.Join(dir, "scene.csv")
			end, replies := playedDesk(t, scene, "")
			mid, _ := playedDesk(t, scene, strings.TrimSpace(string(minute)))
			files, err := filepath.Glob(filepath.Join(dir, "*.csv"))
			if err != nil || len(files) < 20 {
				t.Fatal(files, err)
			}
			for _, file := range files {
				name := strings.TrimSuffix(filepath.Base(file), ".csv")
				want := tableFile(t, "scenes", filepath.Base(dir), name+".csv")
				switch rest, half := strings.CutPrefix(name, "mid_"); {
				case name == "scene":
				case name == "replies":
					answered(t, name, replies, want)
				case half:
					same(t, name, mid.csv(asCommand(rest)...), want)
				default:
					same(t, name, end.csv(asCommand(name)...), want)
				}
			}
		})
	}
}

func TestTheGlanceTableCountsEachPlaceOnce(t *testing.T) {
	d, _ := playedDesk(t, demoScene, "60")
	rows := d.csv("glance")
	if got := strings.Join(rows[0], ","); got != "place,lines,pieces,rig,item,name,quantity,holder" {
		t.Fatalf("the columns are %s", got)
	}
	lines, said := map[string]int{}, map[string]string{}
	for _, r := range rows[1:] {
		lines[r[3]+" "+r[0]]++
		said[r[0]] = r[1] + " " + r[2]
	}
	// The hand-over of staging at minute 60, by rig and place; lines and
	// pieces of a place are those of the wanted checkpoint, added up.
	for place, want := range map[string]int{"R41 tarp": 18, "R41 at:V1": 6, "R41 at:V2": 14, "R41 at:BANK": 8, "R41 at:ROAD": 2,
		"E42 at:V1": 2, "E42 at:V2": 3, "P71 at:V2": 4, "P71 at:BANK": 2} {
		if lines[place] != want {
			t.Errorf("%s: %d lines, want %d", place, lines[place], want)
		}
	}
	for place, want := range map[string]string{"tarp": "18 121", "at:BANK": "10 40", "at:V2": "21 75"} {
		if said[place] != want {
			t.Errorf("%s: lines and pieces are %s, want %s", place, said[place], want)
		}
	}
}
