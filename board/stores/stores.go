// Package stores moves the inventory of a department in and out as tables:
// a folder of RFC 4180 CSV files in UTF-8, or one XLSX workbook with the same
// sheets; columns are found by their names in any order. A column that is not
// ours is kept in the row and written out again behind ours.
//
// One bad row stops the load, and every bad row is named: an inventory that
// came in by half would be trusted as a whole.
package stores

import (
	"fmt"
	"io/fs"
	"strings"

	"tarpside/model"
)

// A Problem is one thing that stops a load: where it is, what is wrong and
// what would be right. Row is the row that a spreadsheet shows, the header
// being 1; it is 0 and Column empty where the whole file or row is meant.
type Problem struct {
	File         string
	Row          int
	Column       string
	Wrong, Right string
}

// String is the problem in one line of words.
func (p Problem) String() string {
	where := p.File
	if p.Row > 0 {
		where += fmt.Sprintf(", row %d", p.Row)
	}
	if p.Column != "" {
		where += ", column " + p.Column
	}
	return where + ": " + p.Wrong + "; right would be: " + p.Right
}

// Problems are all that was found, by file and row.
type Problems []Problem

// Error names every problem, one a line.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

// Err is the problems as an error, nil if there are none.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}

// Read reads the tables of a department from a folder and indexes it. The
// tables of rigs, slots, items and checks must be there; another that is not
// is an empty one. It returns every problem found, and no department if there
// is any.
func Read(fsys fs.FS) (*model.Department, Problems) {
	return read(files(func(file string) ([]byte, error) { return fs.ReadFile(fsys, file) }))
}

// Check finds what Read would find in the department's tables once they are
// written, with the rows that they would have.
func Check(d *model.Department) Problems {
	_, problems := read(files(func(file string) ([]byte, error) {
		var b strings.Builder
		err := WriteTo(&b, strings.TrimSuffix(file, ".csv"), d)
		return []byte(b.String()), err
	}))
	return problems
}
