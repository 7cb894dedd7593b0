package assets

import "embed"

// Icons is the icon set, one SVG each in the folder icons: a 24 grid, one
// stroke of 2 with round ends, coloured when it is drawn.
//
//go:embed icons/*.svg
var Icons embed.FS
