package main

import (
	"time"

	"fyne.io/fyne/v2"
)

// waker keeps the glass true after a sleep. The toolkit keeps for a minute of
// the clock which canvas an object is drawn on. Where a machine sleeps longer,
// or its clock is put forward, the first frame afterwards makes it forget them
// all: the program goes on, and nothing it shows reaches the glass again. So
// where a beat comes late, everything is drawn anew for some beats, until the
// toolkit has swept and knows its objects again.
type waker struct {
	last   time.Time // of the beat before, by the clock on the wall
	left   int       // beats that still draw
	redraw func()
}

const (
	beatEvery = time.Second
	slept     = 5 * time.Second // the least gap between two beats that is a sleep
	redraws   = 15              // beats: the toolkit sweeps 10 s after the sleep at the latest
)

// beat is called on the main goroutine with the time.
func (k *waker) beat(now time.Time) {
	now = now.Round(0) // a machine that sleeps stops the other clock
	if now.Sub(k.last) > slept {
		k.left = redraws
	}
	k.last = now
	if k.left > 0 {
		k.left--
		k.redraw()
	}
}

// newWaker makes a waker that is awake now.
func newWaker(now time.Time, redraw func()) *waker {
	return &waker{last: now.Round(0), redraw: redraw}
}

// watch beats as long as the program runs.
func (k *waker) watch() {
	for range time.Tick(beatEvery) {
		fyne.Do(func() { k.beat(time.Now()) })
	}
}
