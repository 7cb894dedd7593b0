package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"
)

// stderr keeps what the window wrote to its error stream.
type stderr struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (s *stderr) Write(b []byte) (int, error) {
	s.keep(b)
	return os.Stderr.Write(b)
}

func (s *stderr) keep(b []byte) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.text.Write(b)
}

// faults are the lines in which the toolkit says that a thing of the window
// was touched from outside its goroutine, or went wrong.
func (s *stderr) faults() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out []string
	for _, line := range strings.Split(s.text.String(), "\n") {
		if strings.Contains(line, "Error in Fyne call thread") || strings.Contains(line, "panic:") {
			out = append(out, line)
		}
	}
	return out
}

func TestALineOfTheToolkitAboutAWrongGoroutineIsAFault(t *testing.T) {
	var s stderr
	for _, half := range []string{"2026/01/02 *** Error in Fyne call th", "read, this should have been called in fyne.Do ***\nall is well\n"} {
		s.keep([]byte(half))
	}
	if bad := s.faults(); len(bad) != 1 {
		t.Errorf("found %q, want the one line", bad)
	}
}

// scan types a code as a reader does: 5 ms a character, then Return.
func (r *running) scan(code, end string) {
	r.t.Helper()
	xdotool(r.t, "type", "--delay", "5", "--args", "1", code, "key", end)
}

func (r *running) keys(names ...string) {
	r.t.Helper()
	xdotool(r.t, append([]string{"key", "--delay", "80"}, names...)...)
}

func TestInARealWindowACodeIsReadWhateverWasTouchedLast(t *testing.T) {
	r := start(t, "-demo", "-minute", "60")
	r.focus()
	for _, c := range []struct {
		name  string
		touch func()
		end   string
	}{
		{"nothing", func() {}, "Return"},
		{"a piece, dropped again", func() { r.tap("piece", "R41-052", 0); r.tap("act", "drop", 0) }, "Return"},
		{"a place", func() { r.tap("place", "tarp", 0) }, "Return"},
		{"a screen key", func() { r.tap("screen", "glance", 0); r.tap("screen", "tarp", 0) }, "Return"},
		{"Find, open", func() { r.tap("act", "find", 0); r.tap("act", "s", 0) }, "Return"},
		{"Tab", func() { r.keys("Tab", "Tab") }, "Return"},
		{"another screen, and Tab at the end", func() { r.tap("screen", "more", 0) }, "Tab"},
	} {
		c.touch()
		r.scan("R41-001", c.end)
		r.wait("the piece to be picked by its code after "+c.name, func() bool {
			p, _ := r.find("piece", "R41-001")
			return p.State == "picked" && r.says("typed") == ""
		})
		r.scan("v1", c.end)
		r.wait("the entry after "+c.name, func() bool { return strings.Contains(r.says("last"), "Battery spreader, Tarp to V1") })
		r.tap("act", "undo", 0)
		r.wait("the undo", func() bool { _, ok := r.find("piece", "R41-001"); return ok })
	}
	r.scan("4006381333931", "Return")
	r.wait("words about a code that nobody knows", func() bool { return strings.Contains(r.says("reply"), "4006381333931") })
}

func TestInARealWindowAPersonTypesLettersIntoFindAndHandsOutByKeys(t *testing.T) {
	r := start(t, "-demo", "-minute", "60", "-screen", "glance")
	r.focus()
	xdotool(t, "type", "--delay", "120", "batt")
	r.wait("Find", func() bool { return r.says("typed") == "batt" })
	r.keys("Escape")
	r.wait("Find to close", func() bool { return r.says("typed") == "" })
	r.tap("piece", "R41-001", 0)
	r.keys("ctrl+z")
	r.keys("Escape")
	r.wait("the piece to be dropped", func() bool { p, _ := r.find("piece", "R41-001"); return p.ID != "" && p.State != "picked" })
}

// focus gives the window the keys, as a window manager would.
func (r *running) focus() {
	r.t.Helper()
	var last error
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(100 * time.Millisecond) {
		if last = quiet("xdotool", "search", "--name", "^Tarpside$", "windowfocus", "--sync"); last == nil {
			return
		}
	}
	r.t.Fatalf("the window takes no keys: %v", last)
}

// quiet runs a program and keeps what it writes for the error.
func quiet(name string, args ...string) error {
	if out, err := exec.Command(name, args...).CombinedOutput(); err != nil {
		return fmt.Errorf("%w: %s", err, out)
	}
	return nil
}
