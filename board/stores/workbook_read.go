package stores

import (
	"bytes"
	"fmt"
	"io/fs"
	"strconv"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"

	"tarpside/model"
)

// What a workbook may hold. More is no inventory, and might not fit in memory.
const (
	mostBytes   = 256 << 20 // unpacked
	mostRows    = 200_000
	mostColumns = 500
)

// ReadWorkbook reads the tables of a department from an XLSX workbook, called
// name in problems, and indexes it; sheets are found by the tables' names,
// and others are left alone. Otherwise it does what Read does.
func ReadWorkbook(name string, data []byte) (*model.Department, Problems) {
	book, err := openBook(name, data)
	if err != nil {
		return nil, Problems{{File: name, Wrong: "this is no XLSX workbook that can be read: " + err.Error(),
			Right: "a file saved as Excel workbook (.xlsx), without a password"}}
	}
	defer book.file.Close()
	return read(book)
}

// A book is a workbook as a source of tables.
type book struct {
	name   string
	file   *excelize.File
	sheets map[string]string // by their names in small letters
	from04 bool              // dates count from 1904
	dates  map[int]bool      // styles that show dates
}

func openBook(name string, data []byte) (b *book, err error) {
	defer tame(&err)
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{RawCellValue: true,
		UnzipSizeLimit: mostBytes, UnzipXMLSizeLimit: mostBytes})
	if err != nil {
		return nil, err
	}
	b = &book{name: name, file: f, sheets: map[string]string{}, dates: map[int]bool{}}
	for _, s := range f.GetSheetList() {
		b.sheets[strings.ToLower(strings.TrimSpace(s))] = s
	}
	if p, err := f.GetWorkbookProps(); err == nil && p.Date1904 != nil {
		b.from04 = *p.Date1904
	}
	return b, nil
}

// tame turns a panic of the library into an error: files come from anywhere,
// and a damaged one must not take the board down.
func tame(err *error) {
	if p := recover(); p != nil {
		*err = fmt.Errorf("it is damaged (%v)", p)
	}
}

func (b *book) where(table string) string { return b.name + ", sheet " + table }

func (b *book) records(table string) (records []record, open bool, err error) {
	defer tame(&err)
	sheet, ok := b.sheets[table]
	if !ok {
		return nil, false, fs.ErrNotExist
	}
	rows, err := b.file.Rows(sheet)
	if err != nil {
		return nil, false, err
	}
	defer rows.Close()
	for rows.Next() {
		cells, err := rows.Columns()
		if err != nil {
			return nil, false, err
		}
		if len(records) == mostRows || len(cells) > mostColumns {
			return nil, false, fmt.Errorf("it has more than %d rows or %d columns", mostRows, mostColumns)
		}
		records = append(records, record{row: len(records) + 1, cells: cells})
	}
	if err := rows.Error(); err != nil {
		return nil, false, err
	}
	if len(records) == 0 {
		return nil, false, nil
	}
	width := trimmed(records[0].cells)
	for i := range records {
		r := &records[i]
		r.cells = fit(r.cells, width)
		if err := b.read(sheet, r); err != nil {
			return nil, false, err
		}
	}
	return records, false, nil
}

// trimmed is how many cells there are up to the last that is not blank.
func trimmed(cells []string) int {
	n := len(cells)
	for n > 0 && cells[n-1] == "" {
		n--
	}
	return n
}

// fit makes a row as wide as the header: blank cells at its end are not kept
// in the file.
func fit(cells []string, width int) []string {
	cells = cells[:trimmed(cells)]
	for len(cells) < width {
		cells = append(cells, "")
	}
	return cells
}

// read turns the raw cells of a row into what they stand for.
func (b *book) read(sheet string, r *record) error {
	for c, raw := range r.cells {
		if raw != "" && strings.Trim(raw, "0123456789.eE+-") != "" && raw[0] != '#' {
			continue // words: what it is written as
		}
		at, err := excelize.CoordinatesToCellName(c+1, r.row)
		if err != nil {
			return err
		}
		if raw == "" {
			if formula, err := b.file.GetCellFormula(sheet, at); err == nil && formula != "" {
				r.faults = append(r.faults, cellFault{c, fault{"a formula without its value", "the value itself"}})
			}
			continue
		}
		kind, err := b.file.GetCellType(sheet, at)
		if err != nil {
			return err
		}
		switch kind {
		case excelize.CellTypeError:
			r.faults = append(r.faults, cellFault{c, fault{"an error of the spreadsheet, " + raw, "the value itself"}})
		case excelize.CellTypeBool:
			r.cells[c] = map[string]string{"1": "yes", "0": "no"}[raw]
		case excelize.CellTypeUnset, excelize.CellTypeNumber:
			if err := b.number(sheet, at, c, r); err != nil {
				return err
			}
		}
	}
	return nil
}

// number reads a cell that holds a number, which may stand for a date.
func (b *book) number(sheet, at string, c int, r *record) error {
	n, err := strconv.ParseFloat(r.cells[c], 64)
	if err != nil {
		return nil // no number after all: it is judged as it stands
	}
	style, err := b.file.GetCellStyle(sheet, at)
	if err != nil {
		return err
	}
	if !b.isDate(style) {
		r.cells[c] = shown(n)
		return nil
	}
	t, err := excelize.ExcelDateToTime(n, b.from04)
	if err != nil {
		return nil
	}
	if r.dates == nil {
		r.dates = map[int]bool{}
	}
	r.dates[c] = true
	switch t = t.Round(time.Minute); {
	case n < 1:
		r.cells[c] = t.Format("15:04")
	case n == float64(int64(n)):
		r.cells[c] = t.Format("2006-01-02")
	default:
		r.cells[c] = t.Format("2006-01-02 15:04")
	}
	return nil
}

// isDate tells whether a style shows its number as a date or a time of day.
func (b *book) isDate(style int) bool {
	is, known := b.dates[style]
	if known {
		return is
	}
	if s, err := b.file.GetStyle(style); err == nil {
		code := ""
		if s.CustomNumFmt != nil {
			code = *s.CustomNumFmt
		}
		is = dateFormat(s.NumFmt, code)
	}
	b.dates[style] = is
	return is
}

// dateFormat tells whether a number format is one of dates or times.
// Source: ECMA-376 part 1, 18.8.30 and 18.8.31, numFmts (from memory).
func dateFormat(id int, code string) bool {
	if id >= 14 && id <= 22 || id >= 27 && id <= 36 || id >= 45 && id <= 47 || id >= 50 && id <= 58 {
		return true
	}
	quoted, bracket := false, false
	for i := 0; i < len(code); i++ {
		switch c := code[i]; {
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == '\\' || c == '_' || c == '*':
			i++
		case c == '[':
			bracket = true
		case c == ']':
			bracket = false
		case !bracket && strings.IndexByte("dmyhsDMYHS", c) >= 0:
			return true
		}
	}
	return false
}
