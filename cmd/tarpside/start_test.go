package main

import (
	"bufio"
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

// lit tells whether a window of 1280 by 800 is drawn: no pixel of a row
// through its middle is the black of an empty display.
func (g *glass) lit() bool {
	for row := g.row(8, 400, 1264); len(row) > 0; row = row[4:] {
		if row[0]|row[1]|row[2] == 0 {
			return false
		}
	}
	return true
}

// up starts a program and waits for its window to be drawn. It gives the time
// that took, and its memory in KiB once it has rested.
func (g *glass) up(args ...string) (took time.Duration, kib float64) {
	g.tb.Helper()
	cmd := exec.Command(args[0], args[1:]...)
	cmd.Env = append(os.Environ(), "DISPLAY="+g.name, "FYNE_SCALE=1", "LANG=en_US.UTF-8", "LIBGL_ALWAYS_SOFTWARE=1")
	begun := time.Now()
	if err := cmd.Start(); err != nil {
		g.tb.Fatal(err)
	}
	for !g.lit() {
		if time.Since(begun) > time.Minute {
			g.tb.Fatalf("%v: nothing is drawn within a minute", args)
		}
		time.Sleep(time.Millisecond)
	}
	took = time.Since(begun)
	time.Sleep(2 * time.Second)
	kib = memory(g.tb, cmd.Process.Pid)
	cmd.Process.Kill()
	cmd.Wait()
	for g.lit() {
		time.Sleep(time.Millisecond)
	}
	return took, kib
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
	var took, kib [2][]float64
	for b.Loop() {
		for k, args := range [][]string{{bare}, {program, "-db", db}} {
			t, m := g.up(args...)
			took[k], kib[k] = append(took[k], t.Seconds()*1000), append(kib[k], m)
		}
	}
	for k := range took {
		slices.Sort(took[k])
		slices.Sort(kib[k])
	}
	mid := func(v []float64) float64 { return v[len(v)/2] }
	b.ReportMetric(mid(took[0]), "bare-ms")
	b.ReportMetric(mid(took[1]), "board-ms")
	b.ReportMetric(mid(took[1])/mid(took[0]), "start-ratio")
	b.ReportMetric(mid(kib[0])/1024, "bare-MiB")
	b.ReportMetric(mid(kib[1])/1024, "board-MiB")
	b.ReportMetric(mid(kib[1])/mid(kib[0]), "memory-ratio")
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
