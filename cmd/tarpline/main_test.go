package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
)

// program is the built program, for the tests that need one of its own.
var program string

func TestMain(m *testing.M) { os.Exit(built(m)) }

func built(m *testing.M) int {
	dir, err := os.MkdirTemp("", "tarpline-test-*")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer os.RemoveAll(dir)
	program = filepath.Join(dir, "tarpline")
	if runtime.GOOS == "windows" {
		program += ".exe"
	}
	build := exec.Command("go", "build", "-o", program, ".")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "the program could not be built: %v\n%s", err, out)
		return 1
	}
	return m.Run()
}

const (
	demoTables = "../../assets/demo"
	demoScene  = "../../assets/demo/scene.csv"
	wanted     = "../../testdata"
)

// A desk is somebody at a terminal, with a department file.
type desk struct {
	t        testing.TB
	db       string
	now      time.Time
	env      map[string]string
	terminal bool
	stdin    string
	random   *rand.Rand
}

// newDesk has no department file yet.
func newDesk(t testing.TB) *desk {
	t.Helper()
	return &desk{t: t, db: filepath.Join(t.TempDir(), "department.db"), now: time.Date(2026, 11, 26, 7, 0, 0, 0, time.UTC),
		env: map[string]string{}, random: rand.New(rand.NewSource(41))}
}

// loadedDesk has the demo department.
func loadedDesk(t testing.TB) *desk {
	t.Helper()
	d := newDesk(t)
	d.must("stores", "load", demoTables)
	return d
}

// run does a command on the desk's file.
func (d *desk) run(args ...string) (code int, stdout, stderr string) {
	return d.bare(append([]string{"-db", d.db}, args...)...)
}

// bare does a command as it stands.
func (d *desk) bare(args ...string) (code int, stdout, stderr string) {
	d.t.Helper()
	var out, errs bytes.Buffer
	code = run(args, Env{Stdin: strings.NewReader(d.stdin), Stdout: &out, Stderr: &errs, Now: func() time.Time { return d.now },
		Random: d.random, OS: "linux", Getenv: func(k string) string { return d.env[k] }, Terminal: d.terminal})
	return code, out.String(), errs.String()
}

// must does a command that goes well and says nothing to the side.
func (d *desk) must(args ...string) string {
	d.t.Helper()
	code, out, errs := d.run(args...)
	if code != 0 || errs != "" {
		d.t.Fatalf("%s: exit %d: %s", strings.Join(args, " "), code, errs)
	}
	return out
}

// fails does a command that goes wrong, and returns what it said.
func (d *desk) fails(want int, args ...string) string {
	d.t.Helper()
	code, out, errs := d.run(args...)
	if code != want || !strings.HasPrefix(errs, "tarpline: ") || !strings.HasSuffix(errs, "\n") {
		d.t.Fatalf("%s: exit %d, want %d: %q, %q", strings.Join(args, " "), code, want, out, errs)
	}
	return errs
}

// table reads CSV as RFC 4180 says.
func table(t testing.TB, text string) [][]string {
	t.Helper()
	if strings.HasPrefix(text, "\ufeff") {
		t.Fatal("a byte order mark")
	}
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil || len(rows) == 0 {
		t.Fatalf("no table: %v\n%s", err, text)
	}
	return rows
}

// tableFile reads a table of the wanted ones.
func tableFile(t testing.TB, path ...string) [][]string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(append([]string{wanted}, path...)...))
	if err != nil {
		t.Fatal(err)
	}
	return table(t, string(data))
}

// same compares tables: the header, the order of the rows, every cell.
func same(t testing.TB, name string, got, want [][]string) {
	t.Helper()
	for i := range max(len(got), len(want)) {
		switch {
		case i >= len(got):
			t.Errorf("%s: row %d is missing: %q", name, i+1, want[i])
		case i >= len(want):
			t.Errorf("%s: row %d is too many: %q", name, i+1, got[i])
		case strings.Join(got[i], "|") != strings.Join(want[i], "|"):
			t.Errorf("%s: row %d is %q, want %q", name, i+1, got[i], want[i])
		default:
			continue
		}
		return
	}
}

// sceneText makes a scene file of rows "verb,by,item,rig,quantity,from,to,holder,reading",
// and a note where there is one more cell.
func sceneText(rows ...string) string {
	var b strings.Builder
	b.WriteString("seq,act,minute,device,verb,by,item,rig,quantity,from,to,holder,reading,note\n")
	for i, r := range rows {
		if strings.Count(r, ",") == 8 {
			r += ","
		}
		fmt.Fprintf(&b, "%d,%d,%d,A,%s\n", i+1, i+1, i, r)
	}
	return b.String()
}

// replies logs rows and returns what was answered: seq, reply, reasons, text.
func (d *desk) replies(rows ...string) [][]string {
	d.t.Helper()
	d.stdin = sceneText(rows...)
	code, out, errs := d.run("replay", "-", "-replies", "-")
	if code != 0 {
		d.t.Fatalf("exit %d: %s", code, errs)
	}
	return table(d.t, out)[1:]
}

func TestAFileThatIsNotThereIsSaidWithWhatIsSafeAndWhatToDo(t *testing.T) {
	d := loadedDesk(t)
	before := d.must("proof")
	gone := filepath.Join(t.TempDir(), "gone")
	for _, args := range [][]string{
		{"restore", gone + ".db"}, {"restore", "-replace", gone + ".db"}, {"replay", gone + ".csv"}, {"enter", gone + ".csv"},
		{"stick", "load", gone + ".tarpside"}, {"stores", "load", gone}, {"stores", "load", gone + ".xlsx"},
	} {
		said := d.fails(1, args...)
		if !strings.Contains(said, "gone") || !strings.Contains(said, "othing") || !strings.Contains(said, "heck") && !strings.Contains(said, "name the folder") {
			t.Errorf("%s: it does not say what is missing, what is safe and what to do: %s", strings.Join(args[:len(args)-1], " "), said)
		}
		if strings.Contains(said, "for writing") || strings.Contains(said, "reading only") {
			t.Errorf("%s: it tells of opening files: %s", strings.Join(args[:len(args)-1], " "), said)
		}
	}
	if d.must("proof") != before {
		t.Error("something was changed")
	}
	for _, command := range []string{"glance", "verify", "journal"} {
		_, _, said := d.bare(command, "-db", gone+".db")
		if !strings.Contains(said, "there is no department file") || !strings.Contains(said, "Nothing was made") || !strings.Contains(said, "tarpline stores load") {
			t.Errorf("%s of no file: %s", command, said)
		}
	}
}
