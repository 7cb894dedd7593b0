package main

import (
	"fmt"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/board"
	"tarpside/ui"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// still stops the clocks of the hold keys: there is no event loop for them.
func still() { parts.Beat = func(func(time.Duration)) func() { return func() {} } }

// stage is the window, without a display, on a moment's file.
type stage struct {
	moment moment
	board  *board.Board
	shell  *ui.Shell
	win    fyne.Window
	clock  time.Time // a second on at every touch
}

// open shows a moment's screen before the first touch.
func (s *scenes) open(m moment, size fyne.Size, opt look.Options) (*stage, error) {
	opts := s.options(m)
	made := opts
	made.Ledger.ReadOnly = false
	path, err := s.fresh(m, made)
	if err != nil {
		return nil, err
	}
	b, err := board.Open(path, opts)
	if err != nil {
		return nil, err
	}
	if m.pin != "" {
		if err := b.SetPIN("", m.pin); err != nil {
			b.Close()
			return nil, err
		}
	}
	st := &stage{moment: m, board: b}
	st.shell = ui.New(ui.Options{Board: b, Now: opts.Now, Tick: func() time.Time { return st.clock }, Post: func(f func()) { f() },
		SetTheme: fyne.CurrentApp().Settings().SetTheme, Look: opt, LookGiven: true, Practice: m.practice, Screen: m.screen,
		Demo: nothing, Real: nothing, Folders: func(string) (ui.Folder, error) { return folder, nil }, Print: printed,
		LoadFrom: func(_, _ string, dry bool) ([]string, error) { return loadDemo(b, dry) }})
	st.win = test.NewWindow(st.shell.Root())
	st.win.SetPadded(false)
	st.win.Resize(size)
	st.shell.Refresh()
	return st, nil
}

func (st *stage) close() {
	st.win.Close()
	st.board.Close()
}

func (st *stage) touchAll() error {
	for _, step := range st.moment.touch {
		if err := st.touch(step); err != nil {
			return err
		}
	}
	return nil
}

// touch taps the middle of a part, named "kind id"; "again kind id" is a finger
// that bounces, no time gone by. What is further down a list
// is dragged into view.
func (st *stage) touch(step string) error {
	step, again := strings.CutPrefix(step, "again ")
	for try := range 17 {
		if p, ok := st.find(step); ok {
			if !again {
				st.clock = st.clock.Add(time.Second)
			}
			test.TapCanvas(st.win.Canvas(), fyne.NewPos(float32(p.X)+float32(p.W)/2, float32(p.Y)+float32(p.H)/2))
			return nil
		}
		x := st.shell.Root().Size().Width * []float32{0.3, 0.7}[try%2]            // the left list or the right one
		y := st.shell.Root().Size().Height * []float32{0.7, 0.7, 0.3, 0.3}[try%4] // where a list stands low, or high
		test.Drag(st.win.Canvas(), fyne.NewPos(x, y), 0, -150)
	}
	return fmt.Errorf("nothing to touch: no %s on screen", step)
}

// find is a part on screen; a piece on a later page of tiles is turned to, as
// a finger would.
func (st *stage) find(step string) (parts.Part, bool) {
	kind, id, _ := strings.Cut(step, " ")
	for range 40 {
		for _, p := range parts.CollectIn(st.shell.Root(), st.shell.Root().Size()) {
			if p.Kind == kind && p.ID == id {
				return p, true
			}
		}
		if kind != parts.KindPiece || !st.turnPage() {
			break
		}
	}
	return parts.Part{}, false
}

func (st *stage) turnPage() bool {
	for _, p := range parts.CollectIn(st.shell.Root(), st.shell.Root().Size()) {
		if p.Kind == parts.KindAct && p.ID == "more" {
			test.TapCanvas(st.win.Canvas(), fyne.NewPos(float32(p.X)+float32(p.W)/2, float32(p.Y)+float32(p.H)/2))
			return true
		}
	}
	return false
}
