package board_test

import (
	"bytes"
	"encoding/csv"
	"io/fs"
	"math/rand"
	"os"
	"path/filepath"
	"testing"
	"time"

	"tarpside/assets"
	"tarpside/board"
	"tarpside/board/ledger"
	"tarpside/board/stores"
	"tarpside/model"
)

// evening is minute 0 of the scenes here.
var evening = time.Date(2026, 11, 14, 18, 50, 0, 0, time.UTC)

// A watch is a clock that the test sets.
type watch struct{ now time.Time }

func (w *watch) Now() time.Time { return w.now }

// passes moves the clock on.
func (w *watch) passes(d time.Duration) { w.now = w.now.Add(d) }

// A tablet is a board, its file and its clock.
type tablet struct {
	*board.Board
	path  string
	clock *watch
	opts  board.Options
}

// newTablet opens a new file under the name of a device, "" for one of its own.
func newTablet(tb testing.TB, device string) *tablet {
	tb.Helper()
	w := &watch{evening}
	t := &tablet{path: filepath.Join(tb.TempDir(), "dept.db"), clock: w}
	var seed int64
	for _, c := range device {
		seed = seed*256 + int64(c)
	}
	t.opts = board.Options{Now: w.Now, Random: rand.New(rand.NewSource(seed)), Device: device}
	t.open(tb)
	return t
}

func (t *tablet) open(tb testing.TB) {
	tb.Helper()
	b, err := board.Open(t.path, t.opts)
	if err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(func() { b.Close() })
	t.Board = b
}

func (t *tablet) shut(tb testing.TB) {
	tb.Helper()
	if err := t.Close(); err != nil {
		tb.Fatal(err)
	}
}

func (t *tablet) reopen(tb testing.TB) {
	tb.Helper()
	t.shut(tb)
	t.open(tb)
}

// withDemo has the demo department loaded.
func (t *tablet) withDemo(tb testing.TB) *tablet {
	tb.Helper()
	if _, err := t.LoadStores(demoFiles(tb), "M01", false); err != nil {
		tb.Fatal(err)
	}
	return t
}

func demoFiles(tb testing.TB) fs.FS {
	tb.Helper()
	sub, err := fs.Sub(assets.Demo, "demo")
	if err != nil {
		tb.Fatal(err)
	}
	return sub
}

func sceneRows(tb testing.TB, fsys fs.FS, name string) []stores.SceneRow {
	tb.Helper()
	data, err := fs.ReadFile(fsys, name)
	if err != nil {
		tb.Fatal(err)
	}
	rows, problems := stores.ReadScene(name, data)
	if err := problems.Err(); err != nil {
		tb.Fatal(err)
	}
	return rows
}

func (t *tablet) replay(tb testing.TB, rows []stores.SceneRow) (out []board.Replied) {
	tb.Helper()
	err := t.Replay(rows, evening, func(done []board.Replied) error {
		out = append(out, done...)
		return nil
	})
	if err != nil {
		tb.Fatal(err)
	}
	return out
}

// csvRows reads a table of testdata: a map a row, by column.
func csvRows(tb testing.TB, path string) []map[string]string {
	tb.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		tb.Fatal(err)
	}
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		tb.Fatal(path, err)
	}
	var out []map[string]string
	for _, rec := range records[1:] {
		row := map[string]string{}
		for i, c := range rec {
			row[records[0][i]] = c
		}
		out = append(out, row)
	}
	return out
}

// blob is a fold in bytes: two that are alike have the same.
func blob(tb testing.TB, s *model.State) string {
	tb.Helper()
	b, err := s.MarshalBalance()
	if err != nil {
		tb.Fatal(err)
	}
	return string(b)
}

func (t *tablet) blob(tb testing.TB) string {
	tb.Helper()
	return blob(tb, t.Picture().State)
}

// sound fails the test where Verify finds anything.
func (t *tablet) sound(tb testing.TB) {
	tb.Helper()
	findings, err := t.Verify()
	if err != nil {
		tb.Fatal(err)
	}
	if len(findings) < 3 {
		tb.Errorf("only %d things were checked", len(findings))
	}
	for _, f := range findings {
		if !f.OK {
			tb.Errorf("verify: %s", f.Words)
		}
	}
}

// log makes one act and returns its entry.
func (t *tablet) log(tb testing.TB, a model.Act) model.Entry {
	tb.Helper()
	return t.logTo(tb, "", a)
}

func (t *tablet) logTo(tb testing.TB, scene string, a model.Act) model.Entry {
	tb.Helper()
	entries, err := t.Log(board.Tap{Scene: scene, Acts: []model.Act{a}})
	if err != nil {
		tb.Fatal(err)
	}
	return entries[0]
}

// begin opens a scene beside the open ones.
func (t *tablet) begin(tb testing.TB, name string) string {
	tb.Helper()
	e, err := t.OpenScene("M01", name, nil, time.Time{})
	if err != nil {
		tb.Fatal(err)
	}
	return e.Scene
}

func (t *tablet) add(tb testing.TB, entries ...model.Entry) int {
	tb.Helper()
	n, err := t.Add(entries)
	if err != nil {
		tb.Fatal(err)
	}
	return n
}

// n is how many pieces of a line are at a place, as typed.
func (t *tablet) n(tb testing.TB, item, place string) int {
	tb.Helper()
	s := t.Picture().State
	p, err := s.Resolve(place, s.Dept.ItemIndex(item), t.Picture().Scene)
	if err != nil {
		tb.Fatal(err)
	}
	return s.LineOf(item).N(p)
}

// entries are all that a closed or open file holds, in the order of arrival.
func entriesIn(tb testing.TB, path string) []model.Entry {
	tb.Helper()
	l, err := ledger.Open(path, ledger.Options{ReadOnly: true})
	if err != nil {
		tb.Fatal(err)
	}
	defer l.Close()
	var out []model.Entry
	for e, err := range l.Entries(0) {
		if err != nil {
			tb.Fatal(err)
		}
		out = append(out, e)
	}
	return out
}

// kept is the latest balance of a file that is open elsewhere.
func kept(tb testing.TB, path string) (ledger.Balance, bool) {
	tb.Helper()
	l, err := ledger.Open(path, ledger.Options{ReadOnly: true})
	if err != nil {
		tb.Fatal(err)
	}
	defer l.Close()
	b, ok, err := l.LatestBalance()
	if err != nil {
		tb.Fatal(err)
	}
	return b, ok
}

// act is a moving act with its parts in the order of a sentence.
func act(verb model.Verb, n int, item, from, to string) model.Act {
	return model.Act{Verb: verb, By: "M06", Quantity: n, Item: item, From: from, To: to}
}

// word is an act without an item.
func word(verb model.Verb) model.Act { return model.Act{Verb: verb, By: "M01", Quantity: model.Blank} }
