package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"tarpside/board"
	"tarpside/board/paper"
)

// papers prints all papers of the file into a folder.
func (c *call) papers() error {
	if c.dir == "" {
		return misuse("which folder? Say it with -out, such as -out papers")
	}
	sheet, err := sheetOf(c.sheet)
	if err != nil {
		return err
	}
	b, err := c.look()
	if err != nil {
		return err
	}
	defer b.Close()
	p := b.Picture()
	rig := ""
	if c.rig != "" {
		if rig, err = knownRig(p, c.rig); err != nil {
			return err
		}
	}
	names, err := savePapers(p, c.dir, paper.Options{Sheet: sheet, Printed: c.Now(), Rig: rig, Party: b.Party(p.Scene)})
	if err != nil {
		return err
	}
	c.lines(hang("", fmt.Sprintf("%d papers are in %s, for %s: %s.", len(names), c.dir, sheetWords[sheet], strings.Join(names, ", ")))...)
	return nil
}

var sheetWords = map[paper.Sheet]string{paper.Letter: "letter paper", paper.A4: "A4 paper"}

func sheetOf(name string) (paper.Sheet, error) {
	for _, s := range []paper.Sheet{paper.Letter, paper.A4} {
		if strings.EqualFold(name, s.Name) {
			return s, nil
		}
	}
	return paper.Sheet{}, misuse(fmt.Sprintf("there is no paper %q; it is: letter or a4", name))
}

// savePapers writes the papers of a picture and returns their names. Each is
// made whole before its file is touched.
func savePapers(p *board.Picture, dir string, o paper.Options) (names []string, err error) {
	err = os.MkdirAll(dir, 0o755)
	for _, made := range paper.All(p, o) {
		if err != nil {
			break
		}
		var file bytes.Buffer
		if err = made.Write(&file); err == nil {
			err = os.WriteFile(filepath.Join(dir, made.File), file.Bytes(), 0o644)
		}
		names = append(names, made.File)
	}
	if err != nil {
		return nil, errors.Join(fmt.Errorf("the papers could not be written to %s. The log is as it was; choose another folder", dir), err)
	}
	return names, nil
}
