package stores

import "bytes"

// Rows are the cells of a table that has no fault.
func Rows(data []byte) [][]string {
	var out [][]string
	records, _ := parse(data)
	for _, r := range records {
		out = append(out, r.cells)
	}
	return out
}

// Text is what writeRecords makes of rows.
func Text(rows [][]string) string {
	var b bytes.Buffer
	if err := writeRecords(&b, rows); err != nil {
		panic(err)
	}
	return b.String()
}
