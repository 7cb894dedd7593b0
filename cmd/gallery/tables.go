package main

import (
	"io/fs"

	"tarpside/assets"
	"tarpside/board"
	"tarpside/board/paper"
	"tarpside/ui"
)

func nothing() error { return nil }

// folder is the one that the pictures show tables in.
var folder = ui.Folder{Path: "Quillan stick", Inside: []string{"Quillan stick/photos", "Quillan stick/tables"}, Tables: 10,
	Sticks: []string{"Quillan stick/t-4k2m-20261125-1930.tarpside"}}

// printed stands for a paper that a viewer shows.
func printed(p paper.Paper, opened func(error)) (string, error) {
	opened(nil)
	return "papers/" + p.File, nil
}

// loadDemo stands for tables in that folder.
func loadDemo(b *board.Board, dry bool) ([]string, error) {
	demo, err := fs.Sub(assets.Demo, "demo")
	if err != nil {
		return nil, err
	}
	changes, err := b.LoadStores(demo, "", dry)
	out := make([]string, len(changes))
	for i, c := range changes {
		out[i] = c.String()
	}
	return out, err
}
