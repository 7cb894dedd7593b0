package stores

import (
	"bytes"

	"tarpside/model/tarpsheet"
)

// sheetColumns are those of a tarp sheet typed in; rig and from may be missing.
var sheetColumns = []string{"time", "quantity", "piece", "to", "who"}

// ReadSheet reads a tarp sheet that was typed in as CSV. It returns every
// problem of the file, and no lines if there is any; what the cells mean is
// for [tarpsheet.Read].
func ReadSheet(file string, data []byte) ([]tarpsheet.Line, Problems) {
	if bytes.HasPrefix(data, []byte("PK\x03\x04")) { // a zip: columns that are missing would say nothing
		r := sceneReader{file: file}
		r.bad(1, "", "this is a workbook", "the sheet saved as CSV")
		return nil, r.problems
	}
	r, records := openSheet(file, data, sheetColumns)
	if len(r.problems) > 0 {
		return nil, r.problems
	}
	var lines []tarpsheet.Line
	for _, rec := range records[1:] {
		if rec.blank() {
			continue
		}
		cell := r.cells(rec, len(records[0].cells))
		lines = append(lines, tarpsheet.Line{Row: rec.row, Time: cell("time"), Quantity: cell("quantity"), Piece: cell("piece"),
			Rig: cell("rig"), From: cell("from"), To: cell("to"), Who: cell("who")})
	}
	if len(r.problems) > 0 {
		return nil, r.problems
	}
	return lines, nil
}
