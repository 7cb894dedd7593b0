package paper_test

import (
	"bytes"
	"fmt"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tarpside/board"
	"tarpside/board/paper"
	"tarpside/model"
)

// evening is minute 0 of the demo scene.
var evening = time.Date(2026, 11, 14, 18, 50, 0, 0, time.FixedZone("EST", -5*3600))

func options(minute int) paper.Options {
	return paper.Options{Sheet: paper.Letter, Printed: evening.Add(time.Duration(minute) * time.Minute)}
}

// demo is the demo scene at a minute; below 0 there is no scene yet.
func demo(tb testing.TB, minute int) *board.Picture {
	tb.Helper()
	o := board.Options{Now: func() time.Time { return evening.Add(4 * time.Hour) }, Random: rand.New(rand.NewSource(1)), Device: "A"}
	b, err := board.OpenDemo(filepath.Join(tb.TempDir(), "demo.db"), evening, minute, o)
	if err != nil {
		tb.Fatal(err)
	}
	if err := b.Close(); err != nil {
		tb.Fatal(err)
	}
	return b.Picture()
}

// of is a picture of a department before its first entry.
func of(d *model.Department) *board.Picture {
	return &board.Picture{State: model.NewState(d.Index())}
}

func printed(tb testing.TB, p paper.Paper) []byte {
	tb.Helper()
	var b bytes.Buffer
	if err := p.Write(&b); err != nil {
		tb.Fatal(err)
	}
	return b.Bytes()
}

// find is the paper with a file name.
func find(tb testing.TB, papers []paper.Paper, file string) paper.Paper {
	tb.Helper()
	for _, p := range papers {
		if p.File == file {
			return p
		}
	}
	tb.Fatalf("there is no paper %s", file)
	return paper.Paper{}
}

// poppler runs a program of poppler-utils on a PDF and returns what it prints.
func poppler(tb testing.TB, doc []byte, program string, args ...string) string {
	tb.Helper()
	name := filepath.Join(tb.TempDir(), "paper.pdf")
	if err := os.WriteFile(name, doc, 0o644); err != nil {
		tb.Fatal(err)
	}
	cmd := exec.Command(program, append(args, name, "-")...)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.Output()
	if err != nil {
		tb.Fatalf("%s (of the package poppler-utils): %v %s", program, err, errs.String())
	}
	if errs.Len() > 0 {
		tb.Errorf("%s finds fault with the PDF: %s", program, errs.String())
	}
	return string(out)
}

// pages are the words of a PDF as another program reads them, page by page.
// Lines keep their columns.
func pages(tb testing.TB, doc []byte) []string {
	tb.Helper()
	return strings.Split(strings.TrimSuffix(poppler(tb, doc, "pdftotext", "-layout"), "\f"), "\f")
}

func text(tb testing.TB, pic *board.Picture, o paper.Options, file string) string {
	tb.Helper()
	return strings.Join(pages(tb, printed(tb, find(tb, paper.All(pic, o), file))), "\n")
}

// flat is text with single spaces.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

// big is a department with one rig and many pieces.
func big(items int, name func(i int) string) *model.Department {
	d := &model.Department{Rigs: []model.Rig{{ID: "R1", Name: "Rescue 1"}}}
	for i := range items {
		slot := fmt.Sprintf("R1-%02d", i/40)
		if i%40 == 0 {
			d.Slots = append(d.Slots, model.Slot{ID: slot, Rig: "R1", Compartment: fmt.Sprintf("L%d", i/40), Side: "left", Lap: i / 40, Description: "shelf"})
		}
		d.Items = append(d.Items, model.Item{ID: fmt.Sprintf("R1-%04d", i), Name: name(i), Rig: "R1", Slot: slot, Kind: model.Piece, Quantity: 1, Order: i, LeastUsable: model.Blank})
	}
	return d
}
