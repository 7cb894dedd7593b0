package look

import (
	"image/color"

	"fyne.io/fyne/v2"
)

// The colours, by what they are used for. Ask [Color] for one of these
// while drawing, never before: the palette can be switched at any moment.
const (
	Ground      fyne.ThemeColorName = "ground"       // page, rail, holes
	Surface     fyne.ThemeColorName = "surface"      // panels, pieces on the tarp, the foot
	Raised      fyne.ThemeColorName = "raised"       // keys, pieces still on the rig, what is home
	Line        fyne.ThemeColorName = "line"         // rules, quiet panel borders
	Edge        fyne.ThemeColorName = "edge"         // border of a tile that can be touched
	Strong      fyne.ThemeColorName = "strong"       // walls of a compartment, top rule of the foot
	KeyEdge     fyne.ThemeColorName = "key-edge"     // border of a key: Strong, gone under the wet lock
	Text        fyne.ThemeColorName = "text"         // all main text
	Dim         fyne.ThemeColorName = "dim"          // second lines only, never a state
	Accent      fyne.ThemeColorName = "accent"       // where I am, live edge, "home" in the balance
	Fill        fyne.ThemeColorName = "fill"         // ground of the one key most likely next
	OnFill      fyne.ThemeColorName = "on-fill"      // text on Fill
	Soft        fyne.ThemeColorName = "soft"         // ground of what is picked and of live targets
	Alarm       fyne.ThemeColorName = "alarm"        // refused, blocked, unexplained, running out
	AlarmGround fyne.ThemeColorName = "alarm-ground" // panel behind an alarm
	MarkGround  fyne.ThemeColorName = "mark-ground"  // ground of an owner mark
	Balance1    fyne.ThemeColorName = "balance-1"    // segments of the balance after home
	Balance2    fyne.ThemeColorName = "balance-2"
	Balance3    fyne.ThemeColorName = "balance-3"
	Balance4    fyne.ThemeColorName = "balance-4"
	MarkWhite   fyne.ThemeColorName = "mark-white" // paint of the owner marks
	MarkYellow  fyne.ThemeColorName = "mark-yellow"
	MarkBlue    fyne.ThemeColorName = "mark-blue"
	MarkOrange  fyne.ThemeColorName = "mark-orange"
	MarkRed     fyne.ThemeColorName = "mark-red"
	MarkGreen   fyne.ThemeColorName = "mark-green"
	Clear       fyne.ThemeColorName = "clear" // nothing drawn
)

type palette map[fyne.ThemeColorName]color.NRGBA

var night = palette{
	Ground: rgb(0x0C0D0B), Surface: rgb(0x161814), Raised: rgb(0x20231D), Line: rgb(0x3C4138),
	Edge: rgb(0x5B6154), Strong: rgb(0x6F7567), KeyEdge: rgb(0x6F7567), Text: rgb(0xDEDACB), Dim: rgb(0xAFAD9C),
	Accent: rgb(0x7CCBA8), Fill: rgb(0x215743), OnFill: rgb(0xF0EDE0), Soft: rgb(0x173027),
	Alarm: rgb(0xF7A793), AlarmGround: rgb(0x351810), MarkGround: rgb(0x000000),
	Balance1: rgb(0xD5D1C1), Balance2: rgb(0x9C9A8A), Balance3: rgb(0x7F7F72), Balance4: rgb(0x66675D),
	MarkWhite: rgb(0xE6E2D4), MarkYellow: rgb(0xE5C84C), MarkBlue: rgb(0x86B6F2), MarkOrange: rgb(0xE8934A),
	MarkRed: rgb(0xF2988A), MarkGreen: rgb(0x86CC8F), Clear: {},
}

var day = palette{
	Ground: rgb(0xEFEFE8), Surface: rgb(0xFFFFFF), Raised: rgb(0xF6F6F1), Line: rgb(0x73776B),
	Edge: rgb(0x4A4E45), Strong: rgb(0x2A2D27), KeyEdge: rgb(0x2A2D27), Text: rgb(0x070806), Dim: rgb(0x2E312B),
	Accent: rgb(0x004F43), Fill: rgb(0x004F43), OnFill: rgb(0xFFFFFF), Soft: rgb(0xCFE6DC),
	Alarm: rgb(0x8C160B), AlarmGround: rgb(0xF7DDD6), MarkGround: rgb(0x121410),
	Balance1: rgb(0x22251F), Balance2: rgb(0x565A4F), Balance3: rgb(0x777B6F), Balance4: rgb(0x90938A),
	MarkWhite: rgb(0xFFFFFF), MarkYellow: rgb(0xF4CE2B), MarkBlue: rgb(0x8FC1FF), MarkOrange: rgb(0xFF9A45),
	MarkRed: rgb(0xFFA394), MarkGreen: rgb(0x8EDB98), Clear: {},
}

func rgb(v uint32) color.NRGBA {
	return color.NRGBA{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 0xff}
}
