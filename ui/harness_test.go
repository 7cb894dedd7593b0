package ui

import (
	"io/fs"
	"math/rand/v2"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/assets"
	"tarpside/board"
	"tarpside/board/stores"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// window is the whole window over a real file, without a display.
type window struct {
	t     testing.TB
	board *board.Board
	path  string // of its file
	shell *Shell
	win   fyne.Window
	parts []parts.Part
	now   time.Time
	tick  time.Time // a second on at every touch
}

var sceneStart = time.Date(2026, 3, 14, 18, 50, 0, 0, time.UTC)

// The armed keys of a test never time out: the window's event loop, on which
// they would, is not there. That they do is tested with a clock in parts.
func init() {
	parts.Beat = func(func(time.Duration)) func() { return func() {} }
}

// demoAt opens the window on the demo scene, logged up to a minute.
func demoAt(t testing.TB, minute int, screen string, size fyne.Size, opt look.Options) *window {
	t.Helper()
	demo, err := fs.Sub(assets.Demo, "demo")
	if err != nil {
		t.Fatal(err)
	}
	return tablesAt(t, demo, minute, screen, size, opt)
}

// tablesAt is demoAt with other tables of a department and a scene.
func tablesAt(t testing.TB, demo fs.FS, minute int, screen string, size fyne.Size, opt look.Options) *window {
	t.Helper()
	w := &window{t: t, now: sceneStart.Add(time.Duration(minute) * time.Minute), path: filepath.Join(t.TempDir(), "department.db")}
	b, err := board.Open(w.path, board.Options{
		Now: func() time.Time { return w.now }, Random: rand.NewChaCha8([32]byte([]byte("tarpside draws the same each run.")[:32])), Device: "A"})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	w.board = b
	if _, err := b.LoadStores(demo, "", false); err != nil {
		t.Fatal(err)
	}
	if minute >= 0 {
		w.replay(demo, minute)
	}
	test.NewTempApp(t)
	w.shell = New(Options{Board: b, Now: func() time.Time { return w.now }, Post: func(f func()) { f() },
		Tick:     func() time.Time { return w.tick },
		SetTheme: fyne.CurrentApp().Settings().SetTheme, Changed: func() { w.parts = parts.CollectIn(w.shell.Root(), w.shell.Root().Size()) },
		Look: opt, Practice: true, Screen: screen})
	w.win = test.NewTempWindow(t, w.shell.Root())
	w.win.SetPadded(false)
	w.win.Resize(size)
	w.shell.Refresh()
	return w
}

func (w *window) replay(demo fs.FS, minute int) {
	w.t.Helper()
	data, err := fs.ReadFile(demo, "scene.csv")
	if err != nil {
		w.t.Fatal(err)
	}
	rows, problems := stores.ReadScene("scene.csv", data)
	if err := problems.Err(); err != nil {
		w.t.Fatal(err)
	}
	for i, r := range rows {
		if r.Minute > minute {
			rows = rows[:i]
			break
		}
	}
	if err := w.board.Replay(rows, sceneStart, nil); err != nil {
		w.t.Fatal(err)
	}
}

// find is a part on screen, by kind and id.
func (w *window) find(kind, id string) (parts.Part, bool) {
	for _, p := range w.parts {
		if p.Kind == kind && p.ID == id {
			return p, true
		}
	}
	return parts.Part{}, false
}

// tap touches the middle of a part, where a finger would.
func (w *window) tap(kind, id string) {
	w.t.Helper()
	w.tick = w.tick.Add(time.Second)
	w.again(kind, id)
}

// again touches without time going by, as a finger that bounces does.
func (w *window) again(kind, id string) {
	w.t.Helper()
	p, ok := w.find(kind, id)
	if !ok {
		w.t.Fatalf("no %s %q on screen", kind, id)
	}
	test.TapCanvas(w.win.Canvas(), fyne.NewPos(float32(p.X)+float32(p.W)/2, float32(p.Y)+float32(p.H)/2))
	w.parts = parts.CollectIn(w.shell.Root(), w.shell.Root().Size()) // some keys change by themselves
}

// text is what a reading part says.
func (w *window) text(id string) string {
	for _, p := range w.parts {
		if p.Kind == parts.KindText && p.ID == id {
			return p.Text
		}
	}
	return ""
}
