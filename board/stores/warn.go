package stores

import (
	"fmt"
	"strings"

	"tarpside/model"
)

// Warnings are what a department may be used with but should mend: owner
// marks that do not tell two rigs apart, and a diamond as a mark, which means
// dangerous goods to everybody on the road. Rows are those of the table as it
// is written.
func Warnings(d *model.Department) []Problem {
	var out []Problem
	warn := func(i int, column, wrong, right string) {
		out = append(out, Problem{file(model.TableRigs), i + 2, column, wrong, right})
	}
	words, paint := map[string]string{}, map[string]string{}
	for i, r := range d.Rigs {
		w, shape, color := plain(r.MarkWords), plain(r.MarkShape), plain(r.MarkColor)
		if other, ok := words[w]; ok && w != "" {
			warn(i, "mark_words", fmt.Sprintf("%s and %s have the same mark in words: %s", other, r.ID, r.MarkWords), "words of its own")
		} else {
			words[w] = r.ID
		}
		both := color + " " + shape
		if other, ok := paint[both]; ok && color != "" && shape != "" {
			warn(i, "mark_shape", fmt.Sprintf("%s and %s have the same mark: %s", other, r.ID, both), "a shape or a colour of its own")
		} else {
			paint[both] = r.ID
		}
		if strings.Contains(w+" "+shape+" "+color, "diamond") {
			warn(i, "mark_shape", "a diamond is a hazard placard", "another shape, such as a circle, square, triangle or bars")
		}
	}
	return out
}

// plain is how a mark reads to an eye: case and blanks do not count.
func plain(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }
