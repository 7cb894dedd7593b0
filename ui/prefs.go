package ui

import (
	"strconv"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

// What a tablet remembers, by the names of its settings. They are kept in the
// department's file under the tablet's own name: a copy of the file on another
// tablet does not take over the look of this one.
const (
	settingBy   = "by"   // who has this tablet
	settingLook = "look" // day or night
	settingText = "text" // scale of the type: 1, 1.3, 1.6
	settingCard = "card" // pixels of the glass along the long side of a bank card
)

// settingActing is the acting officer of the tour; all tablets of the file
// share it.
const settingActing = "acting-officer"

// pref reads a setting of this tablet, "" if it was never made or cannot be read.
func (sh *Shell) pref(name string) string {
	v, err := sh.opts.Board.Setting(name + "@" + sh.pic.Device)
	if err != nil {
		return ""
	}
	return v
}

// setPref keeps a setting of this tablet. A setting that could not be kept
// still holds until the window closes; the strip says so.
func (sh *Shell) setPref(name, value string) {
	sh.keep(name+"@"+sh.pic.Device, value)
}

func (sh *Shell) keep(key, value string) {
	if err := sh.opts.Board.SetSetting(key, value); err != nil {
		sh.said = &said{trouble: inWords(err)}
	}
}

// settings reads what this tablet remembers, over the look it was opened with.
func (sh *Shell) settings() {
	sh.by = sh.pref(settingBy)
	sh.acting, _ = sh.opts.Board.Setting(settingActing) // a name that cannot be read is none
	if sh.opts.LookGiven {
		return
	}
	o := &sh.opts.Look
	if v := sh.pref(settingLook); v != "" {
		o.Day = v == "day"
	}
	if f, err := strconv.ParseFloat(sh.pref(settingText), 32); err == nil {
		o.Text = float32(f)
	}
	if f, err := strconv.ParseFloat(sh.pref(settingCard), 32); err == nil {
		o.PerInch = look.PerInchOfCard(float32(f))
	}
}

// setDay takes the look for sun or for the dark.
func (sh *Shell) setDay(day bool) {
	sh.opts.Look.Day = day
	sh.setPref(settingLook, map[bool]string{true: "day", false: "night"}[day])
	sh.relook()
}

// setText takes a scale of the type.
func (sh *Shell) setText(scale float32) {
	sh.opts.Look.Text = scale
	sh.setPref(settingText, number(scale))
	sh.relook()
}

// setCard takes the size of a bank card on this glass, in pixels along its
// long side: every target follows.
func (sh *Shell) setCard(px float32) {
	sh.opts.Look.PerInch = look.PerInchOfCard(px)
	sh.setPref(settingCard, number(px))
	sh.relook()
}

func number(f float32) string { return strconv.FormatFloat(float64(f), 'f', -1, 32) }

// mostCard is the largest size of a bank card, in pixels along its long side,
// for which the screens still have room: they are drawn for 1024 x 768 design
// pixels or more.
func mostCard(window fyne.Size) float32 {
	unit := min(window.Width/1024, window.Height/768)
	return unit * look.PerInch * cardLong / 25.4
}

// A bank card in millimetres (ISO/IEC 7810, ID-1).
const cardLong, cardShort = 85.60, 53.98
