package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tarpside/ui/parts"
)

// The tests of this file start the real program in a real window and touch it
// through the X server, as a finger on a panel would reach it.

var program string // the built window

func TestMain(m *testing.M) { os.Exit(testMain(m)) }

func testMain(m *testing.M) int {
	dir, err := os.MkdirTemp("", "tarpside-test-")
	if err != nil {
		fmt.Println(err)
		return 1
	}
	defer os.RemoveAll(dir)
	program = filepath.Join(dir, "tarpside")
	build := exec.Command("go", "build", "-o", program, ".")
	build.Stdout, build.Stderr = os.Stdout, os.Stderr
	if err := build.Run(); err != nil {
		fmt.Println("the window does not build:", err)
		return 1
	}
	if os.Getenv("DISPLAY") == "" {
		stop, err := display()
		if err != nil {
			fmt.Println("these tests need a display: install xvfb, or run go run ./cmd/dev test.", err)
			return 1
		}
		defer stop()
	}
	return m.Run()
}

// display starts a display without a screen.
func display() (stop func(), err error) {
	r, w, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	x := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1920x1200x24", "-nolisten", "tcp")
	x.ExtraFiles = []*os.File{w}
	if err := x.Start(); err != nil {
		return nil, err
	}
	w.Close()
	line, err := bufio.NewReader(r).ReadString('\n')
	if err != nil {
		return nil, err
	}
	os.Setenv("DISPLAY", ":"+strings.TrimSpace(line))
	return func() { x.Process.Kill(); x.Wait() }, nil
}

// running is a window on the display.
type running struct {
	t     testing.TB
	parts string
	cmd   *exec.Cmd
	err   stderr
}

func start(t testing.TB, args ...string) *running {
	t.Helper()
	r := &running{t: t, parts: filepath.Join(t.TempDir(), "parts.json")}
	r.cmd = exec.Command(program, append([]string{"-parts", r.parts}, args...)...)
	r.cmd.Env = append(os.Environ(), "FYNE_SCALE=1", "LANG=en_US.UTF-8", "LIBGL_ALWAYS_SOFTWARE=1", "XDG_DATA_HOME="+t.TempDir())
	r.cmd.Stderr = &r.err
	if err := r.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(r.end)
	r.wait("the window to come up", func() bool { return len(r.read()) > 0 })
	return r
}

// end kills the window, as a battery that is pulled would.
func (r *running) end() {
	if r.cmd.ProcessState != nil {
		return // it has ended before
	}
	r.cmd.Process.Kill()
	r.cmd.Wait()
	if bad := r.err.faults(); len(bad) > 0 {
		r.t.Errorf("the window wrote to its error stream: %q", bad)
	}
}

func (r *running) read() []parts.Part {
	var list []parts.Part
	data, err := os.ReadFile(r.parts)
	if err != nil || json.Unmarshal(data, &list) != nil {
		return nil
	}
	return list
}

// wait waits until the parts file shows what is wanted.
func (r *running) wait(what string, done func() bool) {
	r.t.Helper()
	for end := time.Now().Add(60 * time.Second); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		if done() {
			return
		}
	}
	r.t.Fatalf("waited a minute for %s; on screen: %v", what, r.read())
}

func (r *running) find(kind, id string) (parts.Part, bool) {
	for _, p := range r.read() {
		if p.Kind == kind && p.ID == id {
			return p, true
		}
	}
	return parts.Part{}, false
}

// tap touches the middle of a part with a finger that wanders by some pixels
// before it lifts.
func (r *running) tap(kind, id string, wander int) {
	r.t.Helper()
	var p parts.Part
	r.wait(kind+" "+id, func() (ok bool) { p, ok = r.find(kind, id); return })
	x, y := p.X+p.W/2, p.Y+p.H/2
	xdotool(r.t, "mousemove", fmt.Sprint(x), fmt.Sprint(y), "mousedown", "1", "sleep", "0.05",
		"mousemove", fmt.Sprint(x+wander), fmt.Sprint(y), "sleep", "0.05", "mouseup", "1")
}

func xdotool(t testing.TB, args ...string) {
	t.Helper()
	if out, err := exec.Command("xdotool", args...).CombinedOutput(); err != nil {
		t.Fatalf("xdotool: %v %s (go run ./cmd/dev test installs it)", err, out)
	}
}

func (r *running) says(id string) string {
	p, _ := r.find(parts.KindText, id)
	return p.Text
}

func TestInARealWindowAWanderingFingerHandsAPieceOut(t *testing.T) {
	r := start(t, "-demo", "-minute", "60")
	for _, wander := range []int{0, 4, 11} {
		r.tap("piece", "R41-001", wander)
		r.wait("the piece to be picked", func() bool { p, _ := r.find("piece", "R41-001"); return p.State == "picked" })
		r.tap("place", "at:V1", wander)
		r.wait("the entry", func() bool { return strings.Contains(r.says("last"), "Battery spreader, Tarp to V1") })
		if got := r.says("proof"); !strings.HasPrefix(got, "314 came off = 0 home again + 120 on tarp + 181 out") {
			t.Errorf("the foot says %q", got)
		}
		r.tap("act", "undo", wander)
		r.wait("the undo", func() bool { _, ok := r.find("piece", "R41-001"); return ok })
	}
}

func TestInARealWindowALongDragScrollsAndDoesNotTouch(t *testing.T) {
	r := start(t, "-demo", "-minute", "60", "-screen", "more", "-size", "1024x768")
	r.tap("act", "who", 0)
	r.wait("the members", func() bool { _, ok := r.find("act", "back"); return ok })
	proof, where := r.says("proof"), func() int { p, _ := r.find("member", "M04"); return p.Y }
	from := where()
	r.drag(400, 600, -200)
	r.wait("the list to be where the finger left it", func() bool { return where() != from })
	if _, ok := r.find("act", "back"); !ok || r.says("proof") != proof {
		t.Errorf("a drag over a list touched what it began on: %v", r.read())
	}
}

func TestEveryScreenComesUpAtEverySizeByDayAndByNight(t *testing.T) {
	for _, screen := range []string{"tarp", "glance", "loadup", "leaving"} {
		for k, size := range []string{"1024x768", "1280x800", "1920x1200"} {
			look := []string{"day", "night"}[k%2]
			r := start(t, "-demo", "-minute", "125", "-screen", screen, "-size", size, "-look", look)
			r.wait(screen+" to be on", func() bool {
				p, _ := r.find("screen", screen)
				return p.State == "here"
			})
			if got := r.says("proof"); !strings.Contains(got, "333 came off") {
				t.Errorf("%s at %s: the foot says %q", screen, size, got)
			}
		}
	}
}

func TestAnEmptyDepartmentOffersTheDemo(t *testing.T) {
	r := start(t)
	r.tap("act", "demo", 0)
	r.wait("the demo", func() bool { return strings.Contains(r.says("proof"), "314 came off") })
	if got := r.says("header"); !strings.Contains(got, "Practice") {
		t.Errorf("the header does not say Practice: %q", got)
	}
}

func TestAFileThatIsNoDepartmentIsRefusedInWords(t *testing.T) {
	path := filepath.Join(t.TempDir(), "letter.db")
	if err := os.WriteFile(path, []byte(strings.Repeat("a letter, no department\n", 200)), 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(program, "-db", path)
	words, err := cmd.CombinedOutput()
	if err == nil || cmd.ProcessState.ExitCode() != 1 || !strings.Contains(string(words), "letter.db") {
		t.Errorf("%v, %q; want exit 1 and words that name the file", err, words)
	}
}

func TestFlagsThatMakeNoSenseAreRefusedInWords(t *testing.T) {
	for _, args := range [][]string{{"-look", "dusk"}, {"-size", "wide"}, {"-size", "12x9"}, {"-minute", "soon"}, {"-screen", "sky"}} {
		var words strings.Builder
		if code := run(args, &words); code != 2 || words.Len() == 0 {
			t.Errorf("%v: exit %d, %q; want 2 and words", args, code, words.String())
		}
	}
}
