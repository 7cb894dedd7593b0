package paper_test

import (
	"fmt"
	"io"
	"strconv"
	"testing"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"tarpside/board/paper"
)

func rows2000(i int) string { return fmt.Sprintf("Hydraulic spreader number %d", i) }

// 2,000 rows as a slot sheet.
func BenchmarkPaper2000Rows(b *testing.B) {
	pic := of(big(2000, rows2000))
	p := find(b, paper.All(pic, options(0)), "slots_R1.pdf")
	b.ResetTimer()
	for range b.N {
		if err := p.Write(io.Discard); err != nil {
			b.Fatal(err)
		}
	}
}

// The same rows by the library alone: cells, a box and a rule a row.
func BenchmarkBareLibrary2000Rows(b *testing.B) {
	for range b.N {
		f := fpdf.New("P", "pt", "Letter", "")
		f.AddUTF8FontFromBytes("go", "", goregular.TTF)
		f.AddUTF8FontFromBytes("go", "B", gobold.TTF)
		f.AddPage()
		f.SetFont("go", "", 12.5)
		for i := range 2000 {
			x, y := f.GetXY()
			f.Rect(x, y+3, 22, 22, "D")
			f.SetX(x + 30)
			f.CellFormat(40, 28, strconv.Itoa(1), "", 0, "R", false, 0, "")
			f.CellFormat(280, 28, rows2000(i), "", 0, "L", false, 0, "")
			f.CellFormat(80, 28, fmt.Sprintf("R1-%04d", i), "", 0, "L", false, 0, "")
			f.CellFormat(60, 28, "", "", 1, "L", false, 0, "")
			f.Line(x, f.GetY(), x+540, f.GetY())
		}
		if err := f.Output(io.Discard); err != nil {
			b.Fatal(err)
		}
	}
}
