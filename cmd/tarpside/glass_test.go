package main

import (
	"bytes"
	"fmt"
	"os/exec"
	"slices"
	"testing"
	"time"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/modeltest"
	"tarpside/ui/parts"
)

// rows are the pixels of a part, of every fourth row.
func (g *glass) rows(p parts.Part) []byte {
	var out []byte
	for y := p.Y; y < p.Y+p.H; y += 4 {
		out = append(out, g.row(p.X, y, p.W)...)
	}
	return out
}

// strip is the part that tells of every touch.
func (r *running) strip() parts.Part {
	for _, id := range []string{"last", "reply"} {
		if p, ok := r.find(parts.KindText, id); ok {
			return p
		}
	}
	return parts.Part{}
}

// BenchmarkATouchToTheGlass is the time from a button pressed at the X server
// to the words of the strip on the glass, drawn by the graphics library in
// software: with 2,000 lines and 10,000 entries, a piece and then its place.
func BenchmarkATouchToTheGlass(b *testing.B) {
	g := newGlass(b)
	b.Setenv("DISPLAY", g.name)
	db := demoFile(b, 60)
	night := openFile(b, db)
	if _, err := night.EditStores(model.InventoryPatch{Put: modeltest.MoreRigs(night.Picture().State.Dept, 2000)}, ""); err != nil {
		b.Fatal(err)
	}
	p := night.Picture()
	for acts := range slices.Chunk(modeltest.Trips(p.State.Dept, 10_000-len(p.Entries)), 300) {
		if _, err := night.Log(board.Tap{Acts: acts}); err != nil {
			b.Fatal(err)
		}
	}
	night.Close()
	r := start(b, "-db", db)
	finger := exec.Command("xdotool", "-")
	script, err := finger.StdinPipe()
	if err != nil {
		b.Fatal(err)
	}
	if err := finger.Start(); err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { script.Close(); finger.Wait() })

	var took []time.Duration
	touch := func(p parts.Part, done func() bool) {
		strip := r.strip()
		before := g.rows(strip)
		fmt.Fprintf(script, "mousemove %d %d\n", p.X+p.W/2, p.Y+p.H/2)
		begun := time.Now()
		fmt.Fprint(script, "mousedown 1 mouseup 1\n")
		for bytes.Equal(g.rows(strip), before) {
			if time.Since(begun) > time.Minute {
				b.Fatalf("the strip says the same for a minute: %q", strip.Text)
			}
		}
		took = append(took, time.Since(begun))
		r.wait("the screen to come to rest", done)
	}
	used := cpu(b, r.cmd.Process.Pid)
	for b.Loop() {
		for range 100 {
			touch(r.onTarp(), func() bool { return r.says("picked") != "" })
			place, _ := r.find("place", "at:V1")
			touch(place, func() bool { return r.says("picked") == "" })
		}
	}
	slices.Sort(took)
	ms := func(share float64) float64 {
		return float64(took[int(share*float64(len(took)-1))].Microseconds()) / 1000
	}
	b.ReportMetric(ms(0.5), "p50-ms")
	b.ReportMetric(ms(0.99), "p99-ms")
	b.ReportMetric((cpu(b, r.cmd.Process.Pid)-used)/float64(len(took)), "cpu-ms/touch")
}
