package ui

import (
	"tarpside/ui/parts"
)

// wetLock is the id of the rail's last key, and of the strip that says the
// lock is on.
const wetLock = "wet-lock"

// lock is the wet lock: while it is on, drops and sleeves touch nothing. The
// screen stays readable and goes on; a hold, or two taps in two places, ends it.
type lock struct {
	shield *parts.Shield
	strip  *parts.Strip
	on     bool
}

func newLock(sh *Shell) *lock {
	return &lock{shield: parts.NewShield(true, nil), strip: parts.NewStrip(parts.StripView{}, func(string) { sh.Lock(false) })}
}

// show brings the strip up to date. It lies over the header's keys and says
// what the header says; the clock stays free. It returns whether the lock went
// on or off.
func (l *lock) show(h head, on bool) (turned bool) {
	turned, l.on = l.on != on, on
	if on {
		l.strip.Set(parts.StripView{ID: wetLock, Tone: parts.StripWetLock, Title: "Wet lock is on: nothing can be touched",
			Second: join(h.title, join(h.big, h.bigWords), h.sentence),
			Keys:   [2]parts.StripKey{{ID: "unlock", Title: "Hold to unlock", Hold: true, Sure: "Unlock"}}})
	}
	return turned
}

// touchRail goes to a screen, or turns the wet lock on.
func (sh *Shell) touchRail(id string) {
	if id == wetLock {
		sh.Lock(true)
		return
	}
	sh.Go(id)
}

// Lock turns the wet lock on or off.
func (sh *Shell) Lock(on bool) {
	sh.opts.Look.Locked = on
	sh.relook()
}
