package main

import (
	"bufio"
	"cmp"
	"crypto/rand"
	"encoding/binary"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"tarpside/board"
)

// A glass is a display of which the picture can be read: the X server keeps
// it in a file in the format of XWD (XWDFile.h of the X Window System: a
// header of big-endian words, the colours, the rows).
type glass struct {
	tb     testing.TB
	name   string // of the display
	file   *os.File
	from   int64 // of the pixels in the file
	stride int64 // bytes a row
}

func newGlass(tb testing.TB) *glass {
	tb.Helper()
	dir := tb.TempDir()
	r, w, err := os.Pipe()
	if err != nil {
		tb.Fatal(err)
	}
	x := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1920x1200x24", "-nolisten", "tcp", "-fbdir", dir)
	x.ExtraFiles = []*os.File{w}
	if err := x.Start(); err != nil {
		tb.Fatal("the X server does not start: ", err)
	}
	tb.Cleanup(func() { x.Process.Kill(); x.Wait() })
	w.Close()
	line, err := bufio.NewReader(r).ReadString('\n')
	if err != nil {
		tb.Fatal(err)
	}
	g := &glass{tb: tb, name: ":" + strings.TrimSpace(line)}
	if g.file, err = os.Open(filepath.Join(dir, "Xvfb_screen0")); err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(func() { g.file.Close() })
	head := make([]byte, 100)
	if _, err := io.ReadFull(g.file, head); err != nil {
		tb.Fatal(err)
	}
	word := func(k int) int64 { return int64(binary.BigEndian.Uint32(head[4*k:])) }
	const headerSize, bytesPerLine, colours, colourSize = 0, 12, 19, 12
	g.from, g.stride = word(headerSize)+word(colours)*colourSize, word(bytesPerLine)
	return g
}

// row is a piece of a row of the glass, four bytes a pixel.
func (g *glass) row(x, y, n int) []byte {
	b := make([]byte, 4*n)
	if _, err := g.file.ReadAt(b, g.from+int64(y)*g.stride+int64(4*x)); err != nil {
		g.tb.Fatal(err)
	}
	return b
}

// colours counts the colours of a row through the middle of a window of 1280
// by 800: none while the glass is black there, one for an empty window.
func (g *glass) colours() int {
	seen := map[[3]byte]bool{}
	for row := g.row(8, 400, 1264); len(row) > 0; row = row[4:] {
		seen[[3]byte(row)] = true
	}
	if seen[[3]byte{}] {
		return 0
	}
	return len(seen)
}

// startUp is what it took for a window to be drawn.
type startUp struct {
	ms, cpu float64 // milliseconds by the clock, and of the processor's time
	kib     float64 // in memory once it has rested
}

// up starts a program and waits for its window to be drawn, with so many
// colours at least on the row through its middle.
func (g *glass) up(colours int, args ...string) (s startUp) {
	g.tb.Helper()
	cmd := exec.Command(args[0], args[1:]...)
	cmd.Env = append(os.Environ(), "DISPLAY="+g.name, "FYNE_SCALE=1", "LANG=en_US.UTF-8", "LIBGL_ALWAYS_SOFTWARE=1")
	begun := time.Now()
	if err := cmd.Start(); err != nil {
		g.tb.Fatal(err)
	}
	for g.colours() < colours {
		if time.Since(begun) > time.Minute {
			g.tb.Fatalf("%v: nothing is drawn within a minute", args)
		}
		time.Sleep(time.Millisecond)
	}
	s.ms, s.cpu = float64(time.Since(begun).Microseconds())/1000, cpu(g.tb, cmd.Process.Pid)
	time.Sleep(2 * time.Second)
	s.kib = memory(g.tb, cmd.Process.Pid)
	cmd.Process.Kill()
	cmd.Wait()
	for g.colours() > 0 {
		time.Sleep(time.Millisecond)
	}
	return s
}

// cpu is the processor's time that a process has used, in milliseconds
// (proc_pid_stat(5): fields 14 and 15, in ticks of a hundredth of a second).
func cpu(tb testing.TB, pid int) float64 {
	tb.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if err != nil {
		tb.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(text), ") ") // past the name, which may hold anything
	f := strings.Fields(rest)
	user, err1 := strconv.ParseFloat(f[11], 64)
	system, err2 := strconv.ParseFloat(f[12], 64)
	if err1 != nil || err2 != nil {
		tb.Fatalf("the times of a process are %q and %q", f[11], f[12])
	}
	return (user + system) * 10
}

// memory is what of a process is in memory, in KiB.
func memory(tb testing.TB, pid int) float64 {
	tb.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		tb.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(text), "VmRSS:")
	kib, err := strconv.ParseFloat(strings.Fields(rest)[0], 64)
	if err != nil {
		tb.Fatal(err)
	}
	return kib
}

// BenchmarkTheWindowUp starts the board on the demo department and a bare
// window in turns, and gives how many times longer it takes to be drawn, and
// how many times the memory.
func BenchmarkTheWindowUp(b *testing.B) {
	g := newGlass(b)
	bare := filepath.Join(b.TempDir(), "bare")
	if out, err := exec.Command("go", "build", "-o", bare, "./testdata/bare").CombinedOutput(); err != nil {
		b.Fatalf("the bare window does not build: %v %s", err, out)
	}
	db := demoFile(b, 60)
	var ups [2][]startUp
	for b.Loop() {
		for range 7 { // the middle one counts
			for k, args := range [][]string{{bare}, {program, "-db", db}} {
				ups[k] = append(ups[k], g.up([]int{1, 6}[k], args...))
			}
		}
	}
	for _, m := range []struct {
		name, unit string
		of         func(s startUp) float64
	}{
		{"start", "ms", func(s startUp) float64 { return s.ms }},
		{"start-cpu", "ms", func(s startUp) float64 { return s.cpu }},
		{"memory", "MiB", func(s startUp) float64 { return s.kib / 1024 }},
	} {
		var mid [2]float64
		for k := range ups {
			slices.SortFunc(ups[k], func(a, b startUp) int { return cmp.Compare(m.of(a), m.of(b)) })
			mid[k] = m.of(ups[k][len(ups[k])/2])
		}
		b.ReportMetric(mid[1], m.name+"-"+m.unit)
		b.ReportMetric(mid[1]/mid[0], m.name+"-ratio")
	}
}

// demoFile is a department file with the demo scene up to a minute, begun an
// hour before now.
func demoFile(tb testing.TB, minute int) string {
	tb.Helper()
	path := filepath.Join(tb.TempDir(), "department.db")
	b, err := board.OpenDemo(path, time.Now().Add(-time.Duration(max(minute, 0))*time.Minute), minute, board.Options{Now: time.Now, Random: rand.Reader})
	if err != nil {
		tb.Fatal(err)
	}
	if err := b.Close(); err != nil {
		tb.Fatal(err)
	}
	return path
}
