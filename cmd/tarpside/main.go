// Command tarpside is the window: the board for what came off which rig, where
// it is, and how it all gets home.
package main

import (
	"crypto/rand"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"tarpside/board"
	"tarpside/ui"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

func main() {
	// No rubbish is collected until the window is up, unless a long log makes a
	// great heap of it.
	debug.SetGCPercent(-1)
	debug.SetMemoryLimit(startHeap)
	os.Exit(run(os.Args[1:], os.Stderr))
}

const startHeap = 256 << 20 // bytes

// settings are the flags of the window.
type settings struct {
	db, screen, look, size, parts, language string
	demo                                    bool
	minute                                  int
}

func flags(args []string, stderr io.Writer) (settings, error) {
	var s settings
	f := flag.NewFlagSet("tarpside", flag.ContinueOnError)
	f.SetOutput(stderr)
	f.StringVar(&s.db, "db", "", "the department `file`; without it, the one in your data folder")
	f.BoolVar(&s.demo, "demo", false, "look at the demo scene, in a copy that is thrown away")
	f.IntVar(&s.minute, "minute", 60, "with -demo: the scene is logged up to this `minute`")
	f.StringVar(&s.screen, "screen", ui.ScreenTarp, "the first `screen`: "+strings.Join(ui.Screens, ", "))
	f.StringVar(&s.look, "look", "", "day or night; without it, as it was set on this tablet")
	f.StringVar(&s.size, "size", "1280x800", "`width x height` of the window, in pixels")
	f.StringVar(&s.language, "language", "", "the `language` of the words, where it is not the system's: "+words.Pseudo+" shows what a longer one does")
	f.StringVar(&s.parts, "parts", "", "write what is on screen to this `file` after every change, for tests")
	if err := f.Parse(args); err != nil {
		return s, err
	}
	if s.look != "" && s.look != "day" && s.look != "night" {
		return s, fmt.Errorf("-look is day or night, not %q", s.look)
	}
	if !slices.Contains(ui.Screens, s.screen) {
		return s, fmt.Errorf("-screen is one of %s, not %q", strings.Join(ui.Screens, ", "), s.screen)
	}
	if err := words.Use(s.language); err != nil {
		return s, err
	}
	_, err := sizeOf(s.size)
	return s, err
}

func sizeOf(text string) (fyne.Size, error) {
	w, h, ok := strings.Cut(text, "x")
	width, err1 := strconv.Atoi(w)
	height, err2 := strconv.Atoi(h)
	if !ok || err1 != nil || err2 != nil || width < 640 || height < 480 || width > 8000 || height > 8000 {
		return fyne.Size{}, fmt.Errorf("-size is width x height in pixels such as 1280x800, not %q", text)
	}
	return fyne.NewSize(float32(width), float32(height)), nil
}

func run(args []string, stderr io.Writer) int {
	set, err := flags(args, stderr)
	if err == flag.ErrHelp {
		return 0
	}
	if err != nil {
		fmt.Fprintln(stderr, "tarpside:", err)
		return 2
	}
	w := newWindow(set)
	defer w.close()
	if err := w.start(); err != nil {
		fmt.Fprintln(stderr, "tarpside:", err)
		return 1
	}
	w.show()
	return 0
}

// window is the running program.
type window struct {
	set   settings
	app   fyne.App
	win   fyne.Window
	board *board.Board
	shell *ui.Shell
	file  string // of the department
	temp  string // of the practice copy
	now   func() time.Time
	parts *parts.Registry
	up    bool // the window is on the display
}

func newWindow(set settings) *window {
	w := &window{set: set, now: time.Now}
	if set.parts != "" {
		w.parts = &parts.Registry{Path: set.parts, Rename: os.Rename,
			WriteFile: func(name string, data []byte) error { return os.WriteFile(name, data, 0o644) }}
	}
	return w
}

// start opens the board, the letters and the display side by side: each waits
// for the machine more than it works.
func (w *window) start() error {
	opened, read := make(chan error, 1), make(chan bool)
	go func() {
		if w.set.demo {
			opened <- w.openDemo(w.set.minute)
			return
		}
		opened <- w.openReal()
	}()
	w.app = app.NewWithID("county.quillan.tarpside")
	go func() { // the fonts are read while the display is reached
		for _, bold := range []bool{false, true} {
			look.Measure("Tarp", 16, fyne.TextStyle{Bold: bold})
		}
		close(read)
	}()
	w.win = w.app.NewWindow("Tarpside")
	w.win.SetPadded(false)
	w.win.SetMaster()
	size, _ := sizeOf(w.set.size)
	w.win.Resize(size)
	<-read
	return <-opened
}

// openReal opens the department's own log.
func (w *window) openReal() error {
	path := w.set.db
	if path == "" {
		var err error
		if path, err = board.DepartmentFile(runtime.GOOS, os.Getenv); err != nil {
			return err
		}
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
	}
	was := w.now
	w.now = time.Now
	b, err := board.Open(path, w.options())
	if err != nil {
		w.now = was
		return err
	}
	w.set.demo, w.board, w.file = false, b, path
	return nil
}

func (w *window) options() board.Options {
	return board.Options{Now: w.now, Random: rand.Reader}
}

// openDemo opens a practice copy of the demo, whose clock goes on from a
// minute of its scene.
func (w *window) openDemo(minute int) error {
	temp, err := os.MkdirTemp("", "tarpside-practice-")
	if err != nil {
		return err
	}
	begun := time.Now()
	start := board.DemoStart(begun)
	was := w.now
	w.now = func() time.Time { return start.Add(time.Duration(minute)*time.Minute + time.Since(begun)) }
	b, err := board.OpenDemo(filepath.Join(temp, "practice.db"), start, minute, w.options())
	if err != nil {
		w.now = was
		os.RemoveAll(temp)
		return err
	}
	w.temp, w.set.demo, w.board = temp, true, b
	return nil
}

func (w *window) close() {
	if w.board != nil {
		w.board.Close()
	}
	if w.temp != "" {
		os.RemoveAll(w.temp)
	}
}

// show runs the window until it is closed.
func (w *window) show() {
	w.build()
	w.app.Lifecycle().SetOnStarted(w.started)
	go w.tick()
	go newWaker(time.Now(), func() { w.win.Canvas().Refresh(w.win.Content()) }).watch()
	w.win.ShowAndRun()
}

// started stops the screen from going dark while somebody works by it. Parts
// are listed only once the window has had time to come up: what is listed can
// be touched.
func (w *window) started() {
	w.app.Driver().SetDisableScreenBlanking(true)
	time.AfterFunc(500*time.Millisecond, func() {
		fyne.Do(func() {
			w.up = true
			w.publish()
		})
		debug.SetMemoryLimit(math.MaxInt64)
		debug.SetGCPercent(100)
		debug.FreeOSMemory() // what only the start needed
	})
}

// build makes the content over the open board.
func (w *window) build() {
	size, _ := sizeOf(w.set.size)
	look := ui.LookFor(size, w.set.look == "day")
	if w.shell != nil { // to practice or back: the glass stays as it is
		look = w.shell.Look()
	}
	w.shell = ui.New(ui.Options{
		Board: w.board, Now: w.now, Post: fyne.Do, SetTheme: w.app.Settings().SetTheme, Changed: w.publish,
		Look: look, LookGiven: w.set.look != "", Practice: w.set.demo, Screen: w.set.screen,
		Demo: w.toDemo, Real: w.toReal, Folders: folders, LoadFrom: w.loadFrom, Print: w.print,
	})
	w.win.SetContent(w.shell.Root())
	w.shell.Listen(w.win.Canvas())
}

// toReal leaves practice for the department's own log; the copy is thrown away.
func (w *window) toReal() error {
	old, temp := w.board, w.temp
	if err := w.openReal(); err != nil {
		return err
	}
	old.Close()
	if w.temp = ""; temp != "" {
		os.RemoveAll(temp)
	}
	w.build()
	return nil
}

// toDemo leaves the department for a practice copy of the demo.
func (w *window) toDemo() error {
	old := w.board
	if err := w.openDemo(w.set.minute); err != nil {
		return err
	}
	old.Close()
	w.build()
	return nil
}

// publish writes the parts on screen, for those who test with a finger of
// their own.
func (w *window) publish() {
	if w.parts == nil || !w.up || w.win.Content() == nil {
		return
	}
	if err := w.parts.Publish(parts.Collect(w.win.Canvas())); err != nil {
		fmt.Fprintln(os.Stderr, "tarpside:", err)
	}
}

// tick keeps the clock and the ages going, and lists what scrolling changed.
func (w *window) tick() {
	every := 10 * time.Second
	if w.parts != nil {
		every = 100 * time.Millisecond
	}
	last := time.Now()
	for range time.Tick(every) {
		fyne.Do(func() {
			if time.Since(last) >= 10*time.Second {
				last = time.Now()
				w.shell.Refresh()
			}
			w.publish()
		})
	}
}
