package paper_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"tarpside/board"
	"tarpside/board/paper"
	"tarpside/board/stores"
	"tarpside/model"
	"tarpside/model/modeltest"
)

// The outside check of the fold: two bookkeeping programs that know nothing of
// Tarpside read the journal, and their balances are held against our proof,
// cell by cell. hledger and ledger are Debian packages; go run ./cmd/dev test
// installs them.

// balance is item and kind of place to pieces, as a program adds them up.
type balance map[string]map[string]int

func (b balance) add(item, account string, n int) {
	kind, _, _ := strings.Cut(account, ":")
	if b[item] == nil {
		b[item] = map[string]int{}
	}
	b[item][kind] += n
}

func program(t testing.TB, name string, args ...string) []byte {
	t.Helper()
	cmd := exec.Command(name, args...)
	cmd.Env = append(os.Environ(), "LANG=C.UTF-8", "LC_ALL=C.UTF-8", "HOME="+t.TempDir())
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s: %v: %s (it is a Debian package; go run ./cmd/dev test installs it)", name, err, errs.String())
	}
	return out
}

func hledger(t testing.TB, path string) balance {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(program(t, "hledger", "-f", path, "balance", "--flat", "--no-total", "--layout=bare", "-O", "csv"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	b := balance{}
	for _, r := range rows[1:] { // account, commodity, balance
		n, err := strconv.Atoi(r[2])
		if err != nil {
			t.Fatalf("hledger says %v", r)
		}
		b.add(r[1], r[0], n)
	}
	return b
}

var amount = regexp.MustCompile(`^\s*(-?\d+) "?([^"]+?)"?(?:  (.*))?$`)

func ledger(t testing.TB, path string) balance {
	t.Helper()
	b := balance{}
	var waiting []string // amounts before the line that names their account
	for _, line := range strings.Split(string(program(t, "ledger", "-f", path, "balance", "--flat", "--no-total", "--no-color")), "\n") {
		m := amount.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		waiting = append(waiting, m[1]+" "+m[2])
		if m[3] == "" {
			continue
		}
		for _, w := range waiting {
			n, item, _ := strings.Cut(w, " ")
			k, err := strconv.Atoi(n)
			if err != nil {
				t.Fatalf("ledger says %q", line)
			}
			b.add(item, m[3], k)
		}
		waiting = nil
	}
	return b
}

// hold compares a program's balances with the proof, cell by cell.
func hold(t *testing.T, who string, b balance, s *model.State) {
	t.Helper()
	cells := 0
	for _, row := range s.Proof() {
		item := s.Dept.Items[row.Line].ID
		owned := 0
		for k, kind := range model.PlaceKinds {
			if got := b[item][string(kind)]; got != row.By[k] {
				t.Errorf("%s: %s %s is %d, the proof says %d", who, item, kind, got, row.By[k])
			}
			owned += row.By[k]
			cells++
		}
		if got := b[item]["owner"]; got != -owned {
			t.Errorf("%s: owner of %s is %d, want %d", who, item, got, -owned)
		}
	}
	if cells == 0 {
		t.Errorf("%s: no cell was compared", who)
	}
}

func write(t testing.TB, entries []model.Entry) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "log.journal")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := paper.Journal(f, entries, time.UTC); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestTwoBookkeepingProgramsAgreeWithTheProofOfEveryScene(t *testing.T) {
	scenes := []string{"../../assets/demo/scene.csv"}
	wild, err := filepath.Glob("../../testdata/scenes/*/scene.csv")
	if err != nil || len(wild) != 6 {
		t.Fatalf("six wild scenes, not %v %v", wild, err)
	}
	for _, scene := range append(scenes, wild...) {
		data, err := os.ReadFile(scene)
		if err != nil {
			t.Fatal(err)
		}
		rows, problems := stores.ReadScene(scene, data)
		if err := problems.Err(); err != nil {
			t.Fatal(err)
		}
		start := time.Date(2026, 3, 14, 18, 50, 0, 0, time.UTC)
		b, err := board.OpenDemo(filepath.Join(t.TempDir(), "d.db"), start, -1, board.Options{
			Now: func() time.Time { return start }, Random: rand.NewChaCha8([32]byte{1}), Device: "A"})
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Replay(rows, start, nil); err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), "scene.journal")
		f, err := os.Create(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Journal(f, time.UTC); err != nil {
			t.Fatal(err)
		}
		f.Close()
		hold(t, "hledger, "+scene, hledger(t, path), b.Picture().State)
		hold(t, "ledger, "+scene, ledger(t, path), b.Picture().State)
		b.Close()
	}
}

func TestPlacesWithOddNamesBreakNoJournal(t *testing.T) {
	d := modeltest.Yard()
	var entries []model.Entry
	patch, _ := stores.Diff(new(model.Department).Index(), d)
	add := func(e model.Entry) {
		e.Stamp = model.Stamp{Wall: int64(1700000000000 + len(entries)), Device: "A"}
		e.ID = model.NewID(e.Stamp.Wall, [10]byte{byte(len(entries))})
		e.Seen = model.Vector{"A": len(entries)}
		e.Reply.Word = model.OK
		entries = append(entries, e)
	}
	add(model.Entry{Act: model.Act{Verb: model.Stores, Quantity: model.Blank}, Stores: &patch})
	item := d.Items[0].ID
	from := "home"
	for i, name := range []string{"side  A; wet", "(virtual)", "[b]", "a:b", "50 \"X\"", "Straße 3", "* star", "=1"} {
		to := "at:" + name
		add(model.Entry{Act: model.Act{Verb: model.Seen, Item: item, Quantity: 1, From: from, To: to, By: "M;1  two"}, Tap: fmt.Sprint(i)})
		from = to
	}
	s := model.Fold(entries)
	path := write(t, entries)
	hold(t, "hledger", hledger(t, path), s)
	hold(t, "ledger", ledger(t, path), s)
}
