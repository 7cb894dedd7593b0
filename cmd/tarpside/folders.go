package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"tarpside/board"
	"tarpside/board/stick"
	"tarpside/model"
	"tarpside/ui"
)

// folders lists a folder for the screen that loads tables, "" for the home
// folder. What is hidden is left out. A workbook is a folder of sheets.
func folders(dir string) (ui.Folder, error) {
	if dir == "" {
		home, err := os.UserHomeDir()
		if err != nil {
			home = string(filepath.Separator)
		}
		dir = home
	}
	if board.IsWorkbook(dir) {
		return ui.Folder{Path: dir, Up: filepath.Dir(dir), Workbook: true}, nil
	}
	list, err := os.ReadDir(dir)
	if err != nil {
		return ui.Folder{}, err
	}
	f := ui.Folder{Path: dir}
	if up := filepath.Dir(dir); up != dir {
		f.Up = up
	}
	for _, e := range list {
		name, isTable := strings.CutSuffix(e.Name(), ".csv")
		switch {
		case strings.HasPrefix(e.Name(), "."):
		case e.IsDir() || board.IsWorkbook(e.Name()):
			f.Inside = append(f.Inside, filepath.Join(dir, e.Name()))
		case strings.EqualFold(filepath.Ext(e.Name()), stick.Ext):
			f.Sticks = append(f.Sticks, filepath.Join(dir, e.Name()))
		case isTable && slices.Contains(model.Tables, name):
			f.Tables++
		}
	}
	return f, nil
}

// loadFrom loads the tables of a folder, or with dry says what would change.
func (w *window) loadFrom(dir, by string, dry bool) ([]string, error) {
	changes, err := w.board.LoadStoresFrom(dir, by, dry)
	words := make([]string, len(changes))
	for i, c := range changes {
		words[i] = c.String()
	}
	return words, err
}
