package main

import (
	"strings"
	"unicode/utf8"
)

// width is how many letters a line for people has at most.
const width = 100

// A field is a column of a list for people.
type field struct {
	title string
	right bool // figures stand under each other
}

// grid sets rows under their titles. If they are wider than a page, the
// widest column of words is broken into lines.
func grid(fields []field, rows [][]string) []string {
	size := make([]int, len(fields))
	for i, f := range fields {
		size[i] = utf8.RuneCountInString(f.title)
		for _, row := range rows {
			size[i] = max(size[i], utf8.RuneCountInString(row[i]))
		}
	}
	total, widest := 2*(len(fields)-1), -1
	for i, f := range fields {
		total += size[i]
		if !f.right && (widest < 0 || size[i] > size[widest]) {
			widest = i
		}
	}
	if total > width && widest >= 0 {
		size[widest] = max(12, size[widest]-(total-width))
	}
	titles, rules := make([]string, len(fields)), make([]string, len(fields))
	for i, f := range fields {
		titles[i], rules[i] = f.title, strings.Repeat("-", size[i])
	}
	out := append(line(fields, size, titles), line(fields, size, rules)...)
	for _, row := range rows {
		out = append(out, line(fields, size, row)...)
	}
	return out
}

// line sets one row; cells that are too long go on below.
func line(fields []field, size []int, row []string) (out []string) {
	cells, deep := make([][]string, len(row)), 1
	for i, text := range row {
		cells[i] = wrap(text, size[i])
		deep = max(deep, len(cells[i]))
	}
	for k := range deep {
		var b strings.Builder
		for i, f := range fields {
			text := ""
			if k < len(cells[i]) {
				text = cells[i][k]
			}
			pad := strings.Repeat(" ", max(0, size[i]-utf8.RuneCountInString(text)))
			if i > 0 {
				b.WriteString("  ")
			}
			if f.right {
				text = pad + text
			} else {
				text += pad
			}
			b.WriteString(text)
		}
		out = append(out, strings.TrimRight(b.String(), " "))
	}
	return out
}

// wrap breaks text between words into lines of so many letters at most; a
// word that is longer is broken itself.
func wrap(text string, most int) (out []string) {
	now, n := "", 0
	for _, word := range strings.Fields(text) {
		letters := []rune(word)
		if n > 0 && n+1+len(letters) > most {
			out, now, n = append(out, now), "", 0
		}
		for n == 0 && len(letters) > most {
			out, letters = append(out, string(letters[:most])), letters[most:]
		}
		if n > 0 {
			now, n = now+" ", n+1
		}
		now, n = now+string(letters), n+len(letters)
	}
	if n > 0 || len(out) == 0 {
		out = append(out, now)
	}
	return out
}

// hang is text that starts after a head; its further lines stand under its
// first.
func hang(head, text string) (out []string) {
	in := utf8.RuneCountInString(head)
	for i, l := range wrap(text, width-in) {
		if i > 0 {
			head = strings.Repeat(" ", in)
		}
		out = append(out, head+l)
	}
	return out
}
