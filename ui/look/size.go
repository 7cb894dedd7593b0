package look

import (
	"math"

	"fyne.io/fyne/v2"
)

const mmPerInch = 25.4

// MM turns millimetres of the glass into pixels, never less than asked:
// a 20 mm target is 118 px at 149 px an inch.
func MM(mm float32) float32 {
	return float32(math.Ceil(float64(mm * Current().opt.PerInch / mmPerInch)))
}

// U turns a design size (pixels at 149 an inch) into pixels of this glass.
func U(px float32) float32 {
	return float32(math.Round(float64(px * Current().unit)))
}

// Sizes of the design, in design pixels: pass them through [U].
const (
	Gap         float32 = 8   // between targets
	Floor       float32 = 88  // no target is less than this in either direction
	Target      float32 = 118 // pieces, places, handful keys: 20 mm
	TileW       float32 = 142
	TileH       float32 = 118
	InsetPanel  float32 = 16
	InsetTile   float32 = 9
	RadiusTile  float32 = 6
	RadiusPanel float32 = 8
	RadiusKey   float32 = 10
	RadiusStrut float32 = 16 // struts only: they are tubes
	Slop        float32 = 12 // how far a finger may wander and still be tapping
	Rail        float32 = 96
	Header      float32 = 88
	Foot        float32 = 56
)

// Role is what a text is for; it fixes size and weight.
type Role int

// The scale of type. Nothing is smaller than 16.
const (
	Small     Role = iota // 16: owner letters, state words, rail
	SmallBold             // 16 bold
	Body                  // 18: sentences, second lines
	BodyBold              // 18 bold
	Lead                  // 20: a sentence that is read first
	TileName              // 20 bold
	Sentence              // 22
	Group                 // 22 bold
	Open                  // 24: names in the open list
	OpenLarge             // 30: the same where all of it has room so
	Name                  // 24 bold: names in lists, look-words, questions
	Title                 // 26 bold
	Screen                // 30 bold: screen name, main key
	Place                 // 36 bold: place names, next piece, clock
	Hand                  // 48 bold: handful keys, counts
	Figure                // 64 bold: a figure that decides
)

var scale = [...]struct {
	px   float32
	bold bool
}{
	Small: {16, false}, SmallBold: {16, true}, Body: {18, false}, BodyBold: {18, true},
	Lead: {20, false}, TileName: {20, true}, Sentence: {22, false}, Group: {22, true},
	Open: {24, false}, OpenLarge: {30, false}, Name: {24, true}, Title: {26, true}, Screen: {30, true},
	Place: {36, true}, Hand: {48, true}, Figure: {64, true},
}

// Base is the size of a role on this glass at text scale 1.0, in pixels. A
// text that has no room for its scaled size may go down to this, never below.
func (r Role) Base() float32 { return scale[r].px * Current().unit }

// Size is the size of a role with the text scale of the tablet, in pixels.
func (r Role) Size() float32 { return r.Base() * Current().opt.Text }

// Bold says whether the role is set in bold.
func (r Role) Bold() bool { return scale[r].bold }

// Style is the role's text style for the toolkit.
func (r Role) Style() fyne.TextStyle { return fyne.TextStyle{Bold: r.Bold()} }

// TileSize is the size a piece tile asks for: a hand size, and more where the
// text is scaled up. It grows half as much as the text: names then take more
// of the tile, and a panel still shows more than one row.
func TileSize() fyne.Size {
	t := 1 + (Current().opt.Text-1)/2
	return fyne.NewSize(U(TileW*t), U(TileH*t))
}
