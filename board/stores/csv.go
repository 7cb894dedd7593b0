package stores

import (
	"bufio"
	"bytes"
	"io"
	"strings"
	"unicode/utf8"
)

// encoding/csv is not used here for three reasons: it turns CRLF inside a cell
// into LF, so that a note would not come back as it was; it stops at the first
// thing that is wrong, where every one is to be named; and it skips empty
// lines, so that its records are not the rows that a spreadsheet shows.

// A record is one row of a table; the first is the header.
type record struct {
	row     int
	cells   []string
	faults  []cellFault
	decimal bool         // split by semicolons, so by a program that writes decimal commas
	dates   map[int]bool // cells that a spreadsheet holds to be dates
}

// blank is a row with nothing in it: spreadsheets leave them behind.
func (r record) blank() bool {
	for _, c := range r.cells {
		if c != "" {
			return false
		}
	}
	return len(r.faults) == 0
}

type cellFault struct {
	cell int // 0 is the first
	fault
}

// A fault is what is wrong in a cell and what would be right. The zero value
// is no fault.
type fault struct{ wrong, right string }

var byteOrderMark = []byte("\xef\xbb\xbf")

// separator is what splits the cells: a comma, or where the first line has
// none a semicolon or a tab, as spreadsheets write them where the comma is the
// decimal sign. A line "sep=;" before the header says it outright.
func separator(data []byte) (sep byte, told bool) {
	line, _, _ := bytes.Cut(data, []byte("\n"))
	line = bytes.TrimSuffix(line, []byte("\r"))
	if after, ok := bytes.CutPrefix(line, []byte("sep=")); ok && len(after) == 1 && bytes.ContainsAny(after, ",;\t") {
		return after[0], true
	}
	sep = ','
	quoted := false
	for _, c := range data {
		switch {
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == ',':
			return ',', false
		case c == '\n':
			return sep, false
		case sep == ',' && (c == ';' || c == '\t'):
			sep = c
		}
	}
	return sep, false
}

// parse splits a table into records. It goes on after a fault as well as it
// can; open is true when a quote that is never closed swallowed the rest.
func parse(data []byte) (records []record, open bool) {
	p := parser{data: bytes.TrimPrefix(data, byteOrderMark)}
	told := false
	first := 1
	if p.sep, told = separator(p.data); told {
		_, p.data, _ = bytes.Cut(p.data, []byte("\n"))
		first = 2
	}
	for p.at < len(p.data) {
		r := record{row: len(records) + first, decimal: p.sep == ';'}
		for more := true; more; {
			var cell string
			p.wrong = fault{}
			cell, more = p.cell()
			if !utf8.ValidString(cell) {
				p.wrong = fault{"bytes that are not UTF-8", "the file saved as CSV UTF-8"}
			}
			if p.wrong != (fault{}) {
				r.faults = append(r.faults, cellFault{len(r.cells), p.wrong})
			}
			r.cells = append(r.cells, awake(cell))
		}
		records = append(records, r)
	}
	return records, p.open
}

type parser struct {
	data  []byte
	sep   byte
	at    int
	wrong fault // of the cell being read
	open  bool
}

// cell reads one cell and what ends it; more says that a separator did.
func (p *parser) cell() (cell string, more bool) {
	var b []byte
	quoted := p.at < len(p.data) && p.data[p.at] == '"'
	if quoted {
		p.at++
		b = p.quoted()
	}
	for ; p.at < len(p.data); p.at++ {
		c := p.data[p.at]
		switch {
		case c == p.sep:
			p.at++
			return string(b), true
		case c == '\n':
			p.at++
			return string(b), false
		case c == '\r' && p.at+1 < len(p.data) && p.data[p.at+1] == '\n':
			continue
		case c == '\r':
			p.wrong = fault{"a carriage return alone", "line ends CRLF or LF"}
		case quoted:
			p.wrong = fault{"text after the closing quote", "a comma or the end of the line; inside quotes a quote is written twice"}
		case c == '"':
			p.wrong = fault{"a quote inside a cell that is not quoted", "the whole cell in quotes, and each quote in it written twice"}
		}
		b = append(b, c)
	}
	return string(b), false
}

// quoted reads up to and over the closing quote.
func (p *parser) quoted() []byte {
	var b []byte
	for p.at < len(p.data) {
		c := p.data[p.at]
		p.at++
		if c != '"' {
			b = append(b, c)
			continue
		}
		if p.at == len(p.data) || p.data[p.at] != '"' {
			return b
		}
		b = append(b, '"')
		p.at++
	}
	p.open = true
	p.wrong = fault{"a quote is opened and never closed", "a closing quote; inside quotes a quote is written twice"}
	return b
}

// writeRecords writes rows with CRLF, quoting only what needs it.
func writeRecords(w io.Writer, rows [][]string) error {
	b := bufio.NewWriter(w)
	for _, cells := range rows {
		for i, c := range cells {
			if i > 0 {
				b.WriteByte(',')
			}
			if c = Inert(c); strings.ContainsAny(c, ",\"\r\n") {
				c = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
			}
			b.WriteString(c)
		}
		b.WriteString("\r\n")
	}
	return b.Flush()
}
