package stores

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"

	"tarpside/model"
)

// cellLimit is the most UTF-16 units that a cell of an XLSX file holds.
const cellLimit = 32767

// WriteWorkbook writes all tables as one XLSX workbook, a sheet a table.
// Numbers are numbers there; all else is text in cells of the text format, so
// that nothing is computed and no id becomes a date, also when it is edited.
// The error names a cell that a workbook cannot hold; CSV holds them all.
func WriteWorkbook(w io.Writer, d *model.Department) error {
	f := excelize.NewFile()
	defer f.Close()
	look, err := newLook(f)
	if err != nil {
		return err
	}
	for i, t := range tables {
		if i == 0 {
			err = f.SetSheetName(f.GetSheetName(0), t.id())
		} else {
			_, err = f.NewSheet(t.id())
		}
		if err == nil {
			err = writeSheet(f, look, t, d)
		}
		if err != nil {
			return err
		}
	}
	return f.Write(w)
}

// A sheetLook is the styles of a workbook.
type sheetLook struct{ head, text, number int }

func newLook(f *excelize.File) (l sheetLook, err error) {
	const asText, general = 49, 0 // built-in number formats "@" and "General"
	for _, s := range []struct {
		to    *int
		style excelize.Style
	}{
		{&l.head, excelize.Style{NumFmt: asText, Font: &excelize.Font{Bold: true}}},
		{&l.text, excelize.Style{NumFmt: asText}},
		{&l.number, excelize.Style{NumFmt: general}},
	} {
		if *s.to, err = f.NewStyle(&s.style); err != nil {
			return l, err
		}
	}
	return l, nil
}

func writeSheet(f *excelize.File, look sheetLook, t anyTable, d *model.Department) error {
	w, err := f.NewStreamWriter(t.id())
	if err != nil {
		return err
	}
	rows, numbers := t.records(d), t.numbers()
	for c, width := range widths(rows) {
		if err := w.SetColWidth(c+1, c+1, width); err != nil {
			return err
		}
		// A row that is typed below the last one is text too.
		style := look.text
		if c < len(numbers) && numbers[c] {
			style = look.number
		}
		if err := w.SetColStyle(c+1, c+1, style); err != nil {
			return err
		}
	}
	if err := w.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	for r, row := range rows {
		cells := make([]any, len(row))
		for c, cell := range row {
			if !holds(cell) {
				return fmt.Errorf("a workbook cannot hold what stands in sheet %s, row %d, column %s: %s. Nothing was written; "+
					"save the tables as CSV, or change it first", t.id(), r+1, rows[0][c], say(cell))
			}
			switch n, ok := asNumber(cell); {
			case r == 0:
				cells[c] = excelize.Cell{StyleID: look.head, Value: cell}
			case c < len(numbers) && numbers[c] && ok:
				cells[c] = excelize.Cell{StyleID: look.number, Value: n}
			case cell != "":
				cells[c] = excelize.Cell{StyleID: look.text, Value: cell}
			}
		}
		at, err := excelize.CoordinatesToCellName(1, r+1)
		if err != nil {
			return err
		}
		if err := w.SetRow(at, cells); err != nil {
			return err
		}
	}
	return w.Flush()
}

// asNumber is a cell's number, where it reads back as the same cell.
func asNumber(cell string) (float64, bool) {
	n, err := strconv.ParseFloat(cell, 64)
	return n, err == nil && shown(n) == cell
}

// shown is a number as a spreadsheet shows it: to 15 figures.
func shown(n float64) string {
	short, err := strconv.ParseFloat(strconv.FormatFloat(n, 'g', 15, 64), 64)
	if err != nil {
		return ""
	}
	return figure(short)
}

// holds tells whether an XLSX cell holds the text: it is XML 1.0.
// Source: XML 1.0, section 2.2, Char (from memory).
func holds(cell string) bool {
	return len(utf16.Encode([]rune(cell))) <= cellLimit && !strings.ContainsFunc(cell, func(r rune) bool {
		return r < ' ' && r != '\t' && r != '\n' && r != '\r' || r == 0xfffe || r == 0xffff
	})
}

// widths are wide enough for most cells of each column, in letters.
func widths(rows [][]string) []float64 {
	out := make([]float64, len(rows[0]))
	for c := range out {
		var lengths []int
		for _, row := range rows {
			lengths = append(lengths, len([]rune(row[c])))
		}
		slices.Sort(lengths)
		most := max(len(rows[0][c]), lengths[len(lengths)*19/20])
		out[c] = float64(min(max(most, 6), 60) + 2)
	}
	return out
}
