package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

// What the alert of Glance opens besides a screen of the rail.
const (
	alertEntries = "entries" // the newest of the log: when anything came in last
	alertRelease = "release" // of the rig that left
)

// alertLine is the worst that is open. What is drawn is a line; what is
// touched reaches past it, over what is only for reading, to the height of a
// hand in a glove.
type alertLine struct {
	*parts.Touch
	view alertView
}

func newAlertLine(touched func()) *alertLine {
	a := &alertLine{}
	a.Touch = parts.NewTouch(parts.Part{}, 2*look.Target, look.Floor, func(p *parts.Pen, size fyne.Size) { paintAlert(&a.view, p, size) }, touched)
	return a
}

// set shows another alert.
func (a *alertLine) set(v alertView) {
	part := parts.Part{Kind: parts.KindAct, ID: "alert", Text: v.words()}
	if a.view == v && a.Part() == part {
		return
	}
	a.view = v
	a.SetPart(part)
	a.Refresh()
}

// openAlert leads to what the alert is about.
func (g *glanceScreen) openAlert() {
	sh, v := g.sh, g.view.Alert
	switch v.Opens {
	case "":
		sh.open(newRunning(sh, g.gauges.first()))
	case alertEntries:
		sh.open(newLastEntries(sh))
	case alertRelease:
		sh.open(newRelease(sh, v.Rig))
	default:
		if v.Rig != "" {
			sh.rig = v.Rig
		}
		sh.Go(v.Opens)
	}
}
