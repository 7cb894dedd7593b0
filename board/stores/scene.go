package stores

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tarpside/model"
)

// A SceneRow is one row of a scene file: an act, when it was made, on which
// device, and what its writer had seen.
type SceneRow struct {
	Seq, Row int
	Tap      string // rows with the same one are one tap
	Minute   int
	Clock    string // time of day, for people only
	Device   string
	Seen     int // the last row the device had received; model.Blank: the row before
	Act      model.Act
}

// sceneColumns are those that decide something; seen and the rest may be missing.
var sceneColumns = []string{"seq", "minute", "device", "verb", "by", "item", "rig", "quantity", "from", "to", "holder", "reading"}

// truthVerb is what really happened and nobody logged: never read.
const truthVerb = "truth"

var sceneVerbs = func() map[string]bool {
	m := map[string]bool{truthVerb: true}
	for v := range model.Table {
		m[string(v)] = true
	}
	for _, v := range []model.Verb{model.Open, model.Arrive, model.Note, model.Relieve, model.ClearUp, model.Close,
		model.Count, model.Settle, model.CheckIt, model.Tag, model.Override, model.Vouch, model.Look,
		model.Release, model.Accept, model.Leave, model.Repair} {
		m[string(v)] = true
	}
	return m
}()

// ReadScene reads a scene file in the order of its seq. It returns every
// problem found, and no rows if there is any.
func ReadScene(file string, data []byte) ([]SceneRow, Problems) {
	r, records := openSheet(file, data, sceneColumns)
	if len(r.problems) > 0 {
		return nil, r.problems
	}
	var rows []SceneRow
	seen := map[int]int{}
	for _, rec := range records[1:] {
		if rec.blank() {
			continue
		}
		row, ok := r.row(rec, len(records[0].cells))
		if first, twice := seen[row.Seq]; ok && twice {
			r.bad(rec.row, "seq", fmt.Sprintf("%d stands in row %d too", row.Seq, first), "a number of its own")
		}
		seen[row.Seq] = rec.row
		if ok && row.Act.Verb != truthVerb {
			rows = append(rows, row)
		}
	}
	if len(r.problems) > 0 {
		return nil, r.problems
	}
	slices.SortStableFunc(rows, func(a, b SceneRow) int { return a.Seq - b.Seq })
	return rows, nil
}

// openSheet reads a file of one table with a header that has these columns.
func openSheet(file string, data []byte, columns []string) (*sceneReader, []record) {
	r := &sceneReader{file: file, at: map[string]int{}}
	records, open := parse(data)
	if len(records) == 0 {
		r.bad(1, "", "nothing in it", "a header row with "+strings.Join(columns, ", "))
		return r, nil
	}
	if open {
		r.bad(len(records), "", "a quote that is never closed", `a closing "`)
	}
	r.header(records[0], columns)
	return r, records
}

type sceneReader struct {
	file     string
	at       map[string]int // column name to cell
	problems Problems
}

func (r *sceneReader) bad(row int, column, wrong, right string) {
	r.problems = append(r.problems, Problem{File: r.file, Row: row, Column: column, Wrong: wrong, Right: right})
}

func (r *sceneReader) header(rec record, wanted []string) {
	for i, name := range rec.cells {
		name = strings.TrimSpace(name)
		if _, twice := r.at[name]; twice && name != "" {
			r.bad(rec.row, name, "the column stands twice", "each column once")
		}
		r.at[name] = i
	}
	for _, c := range wanted {
		if _, ok := r.at[c]; !ok {
			r.bad(rec.row, c, "the column is missing", "a column called "+c)
		}
	}
}

// cells finds the cells of a record by their columns, trimmed, and names what
// is wrong with the record.
func (r *sceneReader) cells(rec record, width int) func(name string) string {
	for _, f := range rec.faults {
		r.bad(rec.row, fmt.Sprintf("number %d", f.cell+1), f.wrong, f.right)
	}
	if len(rec.cells) != width {
		r.bad(rec.row, "", fmt.Sprintf("%d cells", len(rec.cells)), fmt.Sprintf("%d, as in the header", width))
	}
	return func(name string) string {
		if i, ok := r.at[name]; ok && i < len(rec.cells) {
			return strings.TrimSpace(rec.cells[i])
		}
		return ""
	}
}

func (r *sceneReader) row(rec record, width int) (SceneRow, bool) {
	before := len(r.problems)
	cell := r.cells(rec, width)
	number := func(name string, blank int, may bool) int {
		text := cell(name)
		if text == "" && may {
			return blank
		}
		n, err := strconv.Atoi(text)
		if err != nil || n < -1e9 || n > 1e9 {
			r.bad(rec.row, name, strconv.Quote(text)+" is not a whole number", "digits only")
		}
		return n
	}
	verb := cell("verb")
	if !sceneVerbs[verb] {
		r.bad(rec.row, "verb", strconv.Quote(verb)+" is no verb", "a word such as pull, hand, return, stow")
	}
	row := SceneRow{
		Seq: number("seq", 0, false), Row: rec.row, Tap: cell("act"), Minute: number("minute", 0, false),
		Clock: cell("clock"), Device: cell("device"), Seen: number("seen", model.Blank, true),
		Act: model.Act{Verb: model.Verb(verb), By: cell("by"), Item: cell("item"), Rig: cell("rig"),
			Quantity: number("quantity", model.Blank, true), From: cell("from"), To: cell("to"),
			Holder: cell("holder"), Reading: cell("reading"), Note: cell("note")},
	}
	if row.Device == "" {
		row.Device = "A"
	}
	return row, len(r.problems) == before
}
