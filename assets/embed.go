// Package assets holds what is shipped inside the programs.
package assets

import "embed"

// Demo is the demo department, all of it invented, and its scene: the tables
// of the inventory and scene.csv, in the folder demo.
//
//go:embed demo
var Demo embed.FS
