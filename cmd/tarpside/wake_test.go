package main

import (
	"bytes"
	"syscall"
	"testing"
	"time"

	"tarpside/ui/parts"
)

// A tablet that slept is woken by a touch. The toolkit is told to forget after
// four seconds instead of a minute, so that a short sleep is a long one.
func TestTheGlassFollowsAgainAfterTheMachineSlept(t *testing.T) {
	g := newGlass(t)
	t.Setenv("DISPLAY", g.name)
	t.Setenv("FYNE_CACHE", "4s")
	r := start(t, "-demo")
	follows := func(screen string) {
		t.Helper()
		p, _ := r.find(parts.KindText, "header")
		before := g.rows(p)
		r.touch(parts.KindScreen, screen)
		r.wait(screen+" on the glass", func() bool { return !bytes.Equal(g.rows(p), before) })
	}
	follows("glance")
	if err := r.cmd.Process.Signal(syscall.SIGSTOP); err != nil {
		t.Fatal(err)
	}
	r.touch(parts.KindScreen, "loadup")
	time.Sleep(12 * time.Second) // the toolkit sweeps only 10 s after it did
	if err := r.cmd.Process.Signal(syscall.SIGCONT); err != nil {
		t.Fatal(err)
	}
	r.wait("the screen that was touched in its sleep", func() bool {
		p, ok := r.find(parts.KindScreen, "loadup")
		return ok && p.State == "here"
	})
	for _, screen := range []string{"leaving", "tarp", "glance", "loadup"} {
		follows(screen)
	}
}

// The time of the beats is made up: a sleep is known by the clock on the wall.
func TestOnlyAfterASleepEverythingIsDrawnAnew(t *testing.T) {
	drawn := 0
	at := time.Date(2026, 3, 14, 18, 50, 0, 0, time.UTC)
	k := newWaker(at, func() { drawn++ })
	beats := func(n int) {
		for range n {
			at = at.Add(beatEvery)
			k.beat(at)
		}
	}
	beats(100)
	if drawn != 0 {
		t.Errorf("drawn anew %d times though it never slept", drawn)
	}
	at = at.Add(time.Hour)
	beats(100)
	if drawn != redraws {
		t.Errorf("drawn anew %d times after a sleep, want %d", drawn, redraws)
	}
}
