package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// wetLock is the id of the rail's last key, and of the strip that says the
// lock is on.
const wetLock = "wet-lock"

// lock is the wet lock: while it is on, drops and sleeves touch nothing. The
// screen stays readable and goes on; a hold, or two taps in two places, ends it.
type lock struct {
	shield *parts.Shield
	under  *parts.Drawn // hides the header's keys behind the strip
	strip  *parts.Strip
	on     bool
}

func newLock(sh *Shell) *lock {
	under := parts.NewDrawn(parts.Part{}, look.Floor, look.Header, func(p *parts.Pen, size fyne.Size) {
		p.Fill(0, 0, size.Width, size.Height, look.Ground)
	})
	return &lock{shield: parts.NewShield(true, nil), under: under, strip: parts.NewStrip(parts.StripView{}, func(string) { sh.Lock(false) })}
}

// show brings the strip up to date. It lies over the header's keys and says
// what the header says; the clock stays free. It returns whether the lock went
// on or off.
func (l *lock) show(h head, on bool) (turned bool) {
	turned, l.on = l.on != on, on
	if on {
		l.strip.Set(parts.StripView{ID: wetLock, Tone: parts.StripWetLock, Title: words.L("Wet lock is on: nothing can be touched"),
			Second: join(h.title, join(h.big, h.bigWords), h.sentence),
			Keys:   [2]parts.StripKey{{ID: "unlock", Title: words.L("Hold to unlock"), Filled: true, Hold: true, Sure: words.L("Unlock")}}})
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

// Look is how the window is drawn now.
func (sh *Shell) Look() look.Options { return sh.opts.Look }

// Lock turns the wet lock on or off.
func (sh *Shell) Lock(on bool) {
	sh.opts.Look.Locked = on
	sh.relook()
}
