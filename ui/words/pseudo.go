package words

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// accents are the letters of the pseudo-language: all of them in the Latin
// letters that every font of ours has.
var accents = map[rune]rune{}

func init() {
	from := []rune("aceginorsuyzACEGINORSUYZ")
	for i, r := range []rune("áćéğíñóŕšúýžÁĆÉĞÍÑÓŔŠÚÝŽ") {
		accents[from[i]] = r
	}
}

// pseudo makes a text of the table 40 % longer, and puts accents on it. The
// verbs of a format stay.
func pseudo(text string) string {
	var b strings.Builder
	owed := 0 // tenths of a letter
	for len(text) > 0 {
		if n := verb(text); n > 0 {
			b.WriteString(text[:n])
			text = text[n:]
			continue
		}
		r, n := utf8.DecodeRuneInString(text)
		text = text[n:]
		out := r
		if a, ok := accents[r]; ok {
			out = a
		}
		b.WriteRune(out)
		if !unicode.IsLetter(r) {
			continue
		}
		next, _ := utf8.DecodeRuneInString(text)
		for owed += 4; owed >= 10 || owed > 0 && !unicode.IsLetter(next); owed -= 10 {
			b.WriteRune(unicode.ToLower(out))
		}
	}
	return b.String()
}

// verb is the length of the verb that a format begins with, or nought.
func verb(s string) int {
	if !strings.HasPrefix(s, "%") {
		return 0
	}
	for i := 1; i < len(s); i++ {
		if c := s[i]; c == '%' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' {
			return i + 1
		}
	}
	return 0
}
