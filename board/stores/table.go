package stores

import (
	"slices"
	"strings"

	"tarpside/model"
)

// A table is one file of the inventory. Its first column is its key, unless
// keyless, where key gives a row only a name for people.
type table[T any] struct {
	name     string
	required bool
	keyless  bool
	key      func(*T) string
	rows     func(*model.Department) *[]T
	extra    func(*T) *map[string]string
	columns  []column[T]
}

// anyTable is what all tables can do.
type anyTable interface {
	id() string
	mandatory() bool
	header() []string
	numbers() []bool // which columns hold numbers
	read(*load, []record)
	records(*model.Department) [][]string
	diff(old, new *model.Department, into *model.InventoryPatch) []Change
}

func (t table[T]) id() string      { return t.name }
func (t table[T]) mandatory() bool { return t.required }

func (t table[T]) header() []string {
	names := make([]string, len(t.columns))
	for i, c := range t.columns {
		names[i] = c.name
	}
	return names
}

func (t table[T]) numbers() []bool {
	out := make([]bool, len(t.columns))
	for i, c := range t.columns {
		out[i] = c.number
	}
	return out
}

// extras are the names of the columns that only the department knows, sorted.
func (t table[T]) extras(rows []T) []string {
	var names []string
	for i := range rows {
		for name, cell := range *t.extra(&rows[i]) {
			if cell != "" && !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	slices.Sort(names)
	return names
}

// records are the rows as they are written, header first.
func (t table[T]) records(d *model.Department) [][]string {
	rows := *t.rows(d)
	extras := t.extras(rows)
	out := [][]string{append(t.header(), extras...)}
	for i := range rows {
		cells := make([]string, 0, len(out[0]))
		for _, c := range t.columns {
			cells = append(cells, c.get(&rows[i]))
		}
		for _, name := range extras {
			cells = append(cells, (*t.extra(&rows[i]))[name])
		}
		out = append(out, cells)
	}
	return out
}

// read fills the department's rows and notes for each where it stood and
// which of its cells are not to be relied on.
func (t table[T]) read(l *load, records []record) {
	s := l.sheets[t.name]
	columns, names := l.header(t, s, records[0])
	for _, r := range records[1:] {
		if r.blank() {
			continue
		}
		ln := line{row: r.row, bad: map[string]bool{}}
		for _, f := range r.faults {
			ln.bad[names(f.cell)] = true
			l.fault(t.name, r.row, names(f.cell), f.wrong, f.right)
		}
		if i, ok := columns[t.columns[0].name]; ok && i < len(r.cells) && !t.keyless {
			l.declare(s, t.columns[0].name, r.cells[i], r.row)
		}
		if len(r.cells) != len(records[0].cells) {
			if len(r.faults) == 0 {
				l.fault(t.name, r.row, "", count(len(r.cells), "cell"), count(len(records[0].cells), "cell")+", as in the header")
			}
			continue
		}
		var row T
		t.fill(l, &row, r, columns, ln)
		t.more(l, &row, r, records[0], columns)
		*t.rows(l.d) = append(*t.rows(l.d), row)
		s.lines = append(s.lines, ln)
	}
}

// fill sets the known columns of a row, in the order of their definition.
func (t table[T]) fill(l *load, row *T, r record, columns map[string]int, ln line) {
	for _, c := range t.columns {
		i, ok := columns[c.name]
		if !ok {
			ln.bad[c.name] = true
			continue
		}
		f := c.set(row, r.cells[i])
		if r.dates[i] {
			f = fault{"a spreadsheet has made the date " + r.cells[i] + " of what was typed", "the cell formatted as text, and typed again"}
		}
		if before, after, ok := strings.Cut(strings.TrimSpace(r.cells[i]), "."); ok && c.number && r.decimal && f.wrong == "" && thousands(before, after) {
			f = twoWays(r.cells[i], before+after, before+","+after)
		}
		if f.wrong != "" && !ln.bad[c.name] {
			ln.bad[c.name] = true
			l.fault(t.name, r.row, c.name, f.wrong, f.right)
		}
	}
}

// more keeps the cells of the columns that are not ours. A blank cell is the
// same as none.
func (t table[T]) more(l *load, row *T, r, head record, columns map[string]int) {
	for i, cell := range r.cells {
		name := strings.TrimSpace(head.cells[i])
		switch {
		case cell == "":
			continue
		case name == "":
			l.fault(t.name, r.row, "", say(cell)+" stands in a column without a name", "a name for the column in row 1")
			continue
		case columns[name] != i || slices.ContainsFunc(t.columns, func(c column[T]) bool { return c.name == name }):
			continue
		}
		at := t.extra(row)
		if *at == nil {
			*at = map[string]string{}
		}
		(*at)[name] = cell
	}
}
