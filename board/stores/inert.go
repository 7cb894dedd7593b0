package stores

import "strings"

// A spreadsheet computes a cell of a CSV file that begins with one of these:
// signs, their wide forms, and what some drop before looking for them.
// Source: OWASP, "CSV Injection" (from memory).
const waking = "=+-@\t\r\uff1d\uff0b\uff0d\uff20"

// Inert is a cell as it is written to a CSV file: with an apostrophe before it
// where a spreadsheet would compute it. A cell that begins with apostrophes
// and then so gets one more, so that awake takes off what was put there.
func Inert(cell string) string {
	if wakes(cell) {
		return "'" + cell
	}
	return cell
}

// awake is what was written as the cell.
func awake(cell string) string {
	if strings.HasPrefix(cell, "'") && wakes(cell) {
		return cell[1:]
	}
	return cell
}

func wakes(cell string) bool {
	rest := strings.TrimLeft(cell, "'")
	for _, r := range rest {
		return strings.ContainsRune(waking, r)
	}
	return false
}
