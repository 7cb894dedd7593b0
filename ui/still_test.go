package ui

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"tarpside/ui/parts"
)

// countingApp is the test application with a canvas that keeps what asks to
// be painted: an object that is refreshed, or a line, a text or a picture that
// moved. With nothing of either the toolkit does not paint at all.
type countingApp struct {
	fyne.App
	canvas *countingCanvas
}

type countingDriver struct {
	fyne.Driver
	canvas *countingCanvas
}

type countingCanvas struct {
	fyne.Canvas
	asked []fyne.CanvasObject
	dirty int
}

func (a countingApp) Driver() fyne.Driver { return countingDriver{a.App.Driver(), a.canvas} }

func (d countingDriver) CanvasForObject(o fyne.CanvasObject) fyne.Canvas {
	d.canvas.Canvas = d.Driver.CanvasForObject(o)
	return d.canvas
}

func (c *countingCanvas) Refresh(o fyne.CanvasObject) {
	c.asked = append(c.asked, o)
	c.Canvas.Refresh(o)
}

// SetDirty is called by what moved.
func (c *countingCanvas) SetDirty() { c.dirty++ }

// countPaint counts what asks to be painted from here to the end of the test.
func countPaint(t *testing.T) *countingCanvas {
	c := &countingCanvas{}
	was := fyne.CurrentApp()
	fyne.SetCurrentApp(countingApp{was, c})
	t.Cleanup(func() { fyne.SetCurrentApp(was) })
	return c
}

// during is what asked to be painted while f ran, in words.
func (c *countingCanvas) during(f func()) []string {
	c.asked, c.dirty = nil, 0
	f()
	var out []string
	for _, o := range c.asked {
		out = append(out, nameOf(o))
	}
	if c.dirty > 0 {
		out = append(out, fmt.Sprintf("%d things moved", c.dirty))
	}
	return out
}

func nameOf(o fyne.CanvasObject) string {
	switch v := o.(type) {
	case interface{ Part() parts.Part }:
		return fmt.Sprintf("%T %s", o, v.Part().ID)
	case *canvas.Text:
		return "text " + v.Text
	}
	return fmt.Sprintf("%T", o)
}

// opened are the screens that open over others.
var opened = []struct {
	name string
	make func(w *window, sh *Shell) screen
}{
	{"the last entries", func(_ *window, sh *Shell) screen { return newLastEntries(sh) }},
	{"a correction", func(w *window, sh *Shell) screen {
		for _, e := range slices.Backward(w.board.Picture().Entries) {
			if sh.now().correctable(&e) {
				return newMending(sh, e)
			}
		}
		return newLastEntries(sh)
	}},
	{"the pull list", func(_ *window, sh *Shell) screen { return newPullList(sh.tarp()) }},
	{"rig tabs", func(_ *window, sh *Shell) screen { return newRigTabs(sh.tarp()) }},
	{"an account", func(_ *window, sh *Shell) screen { return newAccount(sh, "") }},
	{"a term of an account", func(_ *window, sh *Shell) screen { return newTermLines(sh, "R41", 1) }},
	{"the entries of a line", func(_ *window, sh *Shell) screen { return newEntries(sh, "R41-005") }},
	{"a release", func(_ *window, sh *Shell) screen { return newRelease(sh, "R41") }},
	{"read aloud", func(_ *window, sh *Shell) screen { return newAloud(sh, "Glance", (*now).aloudGlance) }},
	{"limits", func(_ *window, sh *Shell) screen { return newLimits(sh) }},
	{"limit lines", func(_ *window, sh *Shell) screen { return newLimitLines(sh, "battery") }},
	{"a limit", func(_ *window, sh *Shell) screen { return newLimitPad(sh, "R41-001", "battery") }},
	{"who has the tablet", func(_ *window, sh *Shell) screen { return newHolder(sh) }},
	{"the acting officer", func(_ *window, sh *Shell) screen { return newActing(sh) }},
	{"a bank card", func(_ *window, sh *Shell) screen { return newCard(sh) }},
	{"compartments", func(_ *window, sh *Shell) screen { return newCompartments(sh, "R41") }},
	{"slots", func(_ *window, sh *Shell) screen { return newSlots(sh, "R41", "L1") }},
	{"find in the stores", func(_ *window, sh *Shell) screen { return newStoresFind(sh) }},
	{"a line of the inventory", func(_ *window, sh *Shell) screen { return newLinePage(sh, "R41-001") }},
}

func TestNothingIsPaintedOnAScreenOnWhichNothingChanged(t *testing.T) {
	for _, minute := range []int{0, 60, 125, 177} {
		w := demoAt(t, minute, ScreenTarp, glass1280, glassLook(glass1280, 1))
		c := countPaint(t)
		still := func(where string) {
			t.Helper()
			for _, later := range []time.Duration{0, time.Second} {
				w.now = sceneStart.Add(time.Duration(minute) * time.Minute)
				w.shell.Refresh()
				w.now = w.now.Add(later)
				if got := c.during(w.shell.Refresh); len(got) > 0 {
					t.Errorf("%s, %v after minute %d: %d things were painted: %q", where, later, minute, len(got), got[:min(len(got), 12)])
				}
			}
		}
		for _, screen := range Screens {
			w.shell.Go(screen)
			still(screen)
		}
		for _, o := range opened {
			w.shell.Go(ScreenTarp)
			w.shell.open(o.make(w, w.shell))
			still(o.name)
		}
		for _, m := range moments {
			w.shell.Go(m.screen)
			if m.do(w) {
				still(m.screen + ", " + m.name)
			}
			w.shell.over, w.shell.said = nil, nil
			w.shell.tarp().picks, w.shell.tarp().find.on = nil, false
		}
	}
}

func TestAMinuteThatGoesByPaintsTheClockAlone(t *testing.T) {
	w := demoAt(t, 60, ScreenTarp, glass1280, glassLook(glass1280, 1))
	c := countPaint(t)
	for _, screen := range Screens {
		w.shell.Go(screen)
		w.now = w.now.Add(time.Minute)
		got := c.during(w.shell.Refresh)
		want := []string{"text " + w.now.Format("15:04"), "*parts.Drawn header"}
		if screen == ScreenTarp { // its sentence tells the minute of the scene
			want = append([]string{"text Sawpit Bridge Road at Kettle Run, minute 61"}, want...)
		}
		if screen == ScreenGlance { // it tells how old everything on it is
			got = slices.DeleteFunc(got, func(s string) bool { return !slices.Contains(want, s) })
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: a minute painted %q, want %q", screen, got, want)
		}
	}
}
