package stores

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"tarpside/model"
)

// A load is a department while it is being read.
type load struct {
	d        *model.Department
	from     source
	problems Problems
	sheets   map[string]*sheet
}

// A sheet is what is known about one table while it is read.
type sheet struct {
	table  string
	broken bool           // its keys could not all be read: no reference to it is judged
	keys   map[string]int // each key and the row that has it
	lines  []line         // one for each row of the department's table
}

// A line is where a row of the department came from, and its columns that
// have a problem already and say nothing about other rows.
type line struct {
	row int
	bad map[string]bool
}

// A source is where tables stand: a folder of files or a workbook of sheets.
type source interface {
	// records are the rows of a table, fs.ErrNotExist where it has none; open
	// says that the rest of it was swallowed.
	records(table string) (rows []record, open bool, err error)
	where(table string) string // the table as a person finds it
}

// files are tables as CSV, one a file.
type files func(file string) ([]byte, error)

func (f files) records(table string) ([]record, bool, error) {
	data, err := f(file(table))
	if err != nil {
		return nil, false, err
	}
	rows, open := parse(data)
	return rows, open, nil
}

func (f files) where(table string) string { return file(table) }

func read(from source) (*model.Department, Problems) {
	l := &load{d: &model.Department{}, from: from, sheets: map[string]*sheet{}}
	for _, t := range tables {
		l.sheets[t.id()] = &sheet{table: t.id(), keys: map[string]int{}}
		l.open(t)
	}
	l.d.Index()
	l.crossCheck()
	if len(l.problems) > 0 {
		order := map[string]int{}
		for i, t := range tables {
			order[from.where(t.id())] = i
		}
		slices.SortStableFunc(l.problems, func(a, b Problem) int {
			return cmp.Or(cmp.Compare(order[a.File], order[b.File]), cmp.Compare(a.Row, b.Row))
		})
		return nil, l.problems
	}
	return l.d, nil
}

// open reads one table. One that is not there, cannot be read or has no
// header is left broken.
func (l *load) open(t anyTable) {
	name := t.id()
	s, right := l.sheets[name], "a header row: "+strings.Join(t.header(), ",")
	records, open, err := l.from.records(name)
	switch {
	case errors.Is(err, fs.ErrNotExist) && !t.mandatory():
		return
	case errors.Is(err, fs.ErrNotExist):
		l.fault(name, 0, "", "the table is missing", "one with "+right)
	case err != nil:
		l.fault(name, 0, "", "the table cannot be read: "+err.Error(), "one that can be read")
	default:
		if s.broken = open; len(records) > 0 && !records[0].blank() {
			t.read(l, records)
			return
		}
		l.fault(name, 1, "", "there is no header", right)
	}
	s.broken = true
}

// fault notes a problem of a row as the file numbers them.
func (l *load) fault(table string, row int, column, wrong, right string) {
	l.problems = append(l.problems, Problem{l.from.where(table), row, column, wrong, right})
}

// header finds the columns by name, and gives the name of each cell.
func (l *load) header(t anyTable, s *sheet, head record) (columns map[string]int, name func(int) string) {
	table := t.id()
	name = func(cell int) string {
		if cell < len(head.cells) {
			return strings.TrimSpace(head.cells[cell])
		}
		return ""
	}
	for _, f := range head.faults {
		l.fault(table, head.row, name(f.cell), f.wrong, f.right)
	}
	columns = map[string]int{}
	for i := range head.cells {
		switch _, twice := columns[name(i)]; {
		case !twice:
			columns[name(i)] = i
		case name(i) != "":
			l.fault(table, head.row, name(i), "the column is there twice", "each column once")
		}
	}
	wanted := t.header()
	for i, w := range wanted {
		if _, ok := columns[w]; !ok {
			l.fault(table, head.row, w, "the column is missing", "a column "+w)
			s.broken = s.broken || i == 0
		}
	}
	return columns, name
}

// declare notes a key, of a row that is bad otherwise too, so that one
// mistake is not told again by all that refer to the row.
func (l *load) declare(s *sheet, column, key string, row int) {
	if first, twice := s.keys[key]; twice && strings.TrimSpace(key) != "" {
		l.fault(s.table, row, column, fmt.Sprintf("%s is in row %d already", say(key), first), "an id of its own")
		return
	}
	s.keys[key] = row
}

// file is where a table is kept.
func file(table string) string { return table + ".csv" }

func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
