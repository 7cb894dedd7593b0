package ui

import "tarpside/ui/look"

// What the alert of Glance opens besides a screen of the rail.
const (
	alertEntries = "entries" // the newest of the log: when anything came in last
	alertRelease = "release" // of the rig that left
)

// newAlertLine is the worst that is open. What is drawn is a line; what is
// touched reaches past it, over what is only for reading, to the height of a
// hand in a glove.
func newAlertLine(touched func()) *touchReading[alertView] {
	return newTouchReading(2*look.Target, look.Floor, paintAlert, touched)
}

// openAlert leads to what the alert is about.
func (g *glanceScreen) openAlert() {
	sh, v := g.sh, g.view.Alert
	switch v.Opens {
	case "":
		sh.open(newRunning(sh, g.gauges.view.first()))
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
