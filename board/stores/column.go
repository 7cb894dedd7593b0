package stores

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// most bounds every number of the tables, so that no sum of them overflows.
const most = 1_000_000

// A column is one definition for reading, writing and comparing.
type column[T any] struct {
	name   string
	get    func(*T) string
	set    func(*T, string) fault
	number bool // a number to a spreadsheet, where it is not blank
}

// text takes any text, as it stands.
func text[T any](name string, at func(*T) *string) column[T] {
	return column[T]{name,
		func(x *T) string { return *at(x) },
		func(x *T, s string) fault { *at(x) = s; return fault{} }, false,
	}
}

// filled takes any text but a blank.
func filled[T any](name string, at func(*T) *string) column[T] {
	c := text(name, at)
	c.set = func(x *T, s string) fault {
		*at(x) = s
		if strings.TrimSpace(s) == "" {
			return fault{"blank", "a " + name}
		}
		return fault{}
	}
	return c
}

// key takes an id. What a finger cannot tell from another id, and what the
// journal and the readings use between ids, is refused.
func key[T any](name string, at func(*T) *string) column[T] {
	c := text(name, at)
	c.set = func(x *T, s string) fault {
		*at(x) = s
		switch {
		case strings.TrimSpace(s) == "":
			return fault{"blank", "an id of its own"}
		case strings.TrimSpace(s) != s:
			return fault{say(s) + " has a blank before or after it", say(strings.TrimSpace(s))}
		case strings.ContainsAny(s, `";`):
			return fault{say(s) + " has a quote or a semicolon in it", "an id without them"}
		case strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsGraphic(r) }):
			return fault{say(s) + " has a character in it that cannot be seen", "an id of letters, digits and signs"}
		}
		return fault{}
	}
	return c
}

// whole takes a whole number from least to most; a blank is the number blank.
func whole[T any](name string, least, blank int, at func(*T) *int) column[T] {
	return column[T]{name,
		func(x *T) string { return strconv.Itoa(*at(x)) },
		func(x *T, s string) (f fault) {
			*at(x) = blank
			if s = strings.TrimSpace(s); s != "" {
				*at(x), f = parseWhole(s, least)
			}
			return f
		}, true,
	}
}

// number takes a number from 0 to most; a blank is 0.
func number[T any](name string, at func(*T) *float64) column[T] {
	return column[T]{name,
		func(x *T) string { return figure(*at(x)) },
		func(x *T, s string) (f fault) {
			*at(x) = 0
			if s = strings.TrimSpace(s); s != "" {
				*at(x), f = parseNumber(s)
			}
			return f
		}, true,
	}
}

// flag takes yes or no; a blank is no.
func flag[T any](name string, at func(*T) *bool) column[T] {
	return column[T]{name,
		func(x *T) string {
			if *at(x) {
				return "yes"
			}
			return "no"
		},
		func(x *T, s string) fault {
			switch strings.ToLower(strings.TrimSpace(s)) {
			case "yes":
				*at(x) = true
			case "no", "":
				*at(x) = false
			default:
				return fault{say(s) + " is neither yes nor no", "yes or no"}
			}
			return fault{}
		}, false,
	}
}

func parseWhole(s string, least int) (int, fault) {
	right := fmt.Sprintf("a whole number from %d to %d", least, most)
	f, bad := parseNumber(s)
	switch {
	case bad.wrong != "":
		return 0, fault{bad.wrong, right}
	case strings.Contains(s, "."):
		return 0, fault{say(s) + " is not a whole number", right}
	case f < float64(least):
		return 0, fault{say(s) + " is too small", right}
	}
	return int(f), fault{}
}

// parseNumber takes digits with at most one point or decimal comma: no sign,
// no exponent, no separator of thousands, nothing that strconv would take for
// infinite. "1,500" is refused: it is one and a half here and fifteen hundred
// elsewhere.
func parseNumber(s string) (float64, fault) {
	right := fmt.Sprintf("a number from 0 to %d", most)
	digits, negative := strings.CutPrefix(s, "-")
	if before, after, ok := strings.Cut(digits, ","); ok && !strings.Contains(digits, ".") {
		if thousands(before, after) {
			return 0, twoWays(s, before+after, before+","+strings.TrimRight(after, "0")+"0")
		}
		digits = before + "." + after
	}
	if strings.Trim(digits, "0123456789.") != "" {
		return 0, fault{say(s) + " is not a number", right}
	}
	f, err := strconv.ParseFloat(digits, 64)
	switch {
	case f > most:
		return 0, fault{say(s) + " is too large", right}
	case err != nil:
		return 0, fault{say(s) + " is not a number", right}
	case negative:
		return 0, fault{say(s) + " is below zero", right}
	}
	return f, fault{}
}

// thousands tells whether what stands before and after a comma or point may
// be a number of thousands as well as a fraction.
func thousands(before, after string) bool {
	return len(after) == 3 && len(before) >= 1 && len(before) <= 3 && before[0] != '0'
}

func twoWays(s, whole, fraction string) fault {
	return fault{say(s) + " can be read in two ways", whole + " or " + fraction}
}

// figure writes a number so that it reads back the same.
func figure(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }

// say quotes a cell for a message, its first part if it is long.
func say(s string) string {
	const long = 60
	if utf8.RuneCountInString(s) > long {
		s = string([]rune(s)[:long]) + "..."
	}
	return strconv.Quote(s)
}
