package stores

import (
	"encoding/csv"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The numbered rules are those of RFC 4180, section 2; its own examples are
// used where it has one.
func TestTablesAreReadAsRFC4180Says(t *testing.T) {
	for _, c := range []struct {
		rule, in string
		want     [][]string
	}{
		{"2.1 each record on a line, CRLF", "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", [][]string{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}},
		{"2.2 the last may have no line break", "aaa,bbb,ccc\r\nzzz,yyy,xxx", [][]string{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}},
		{"2.4 blanks are part of a field", " a, b ,c\r\n", [][]string{{" a", " b ", "c"}}},
		{"2.4 a last field may be empty", "a,\r\n,", [][]string{{"a", ""}, {"", ""}}},
		{"2.5 fields may be quoted", "\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", [][]string{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}},
		{"2.6 line breaks and commas in quotes", "\"aaa\",\"b \r\nbb\",\"c,cc\"\r\nzzz,yyy,xxx", [][]string{{"aaa", "b \r\nbb", "c,cc"}, {"zzz", "yyy", "xxx"}}},
		{"2.7 a quote is written twice", "\"aaa\",\"b\"\"bb\",\"ccc\"", [][]string{{"aaa", `b"bb`, "ccc"}}},
		{"2.7 nothing but quotes", "\"\"\"\",\"\"", [][]string{{`"`, ""}}},
		{"not in the RFC: LF alone ends a line", "a,b\nc,d\n", [][]string{{"a", "b"}, {"c", "d"}}},
		{"not in the RFC: a byte order mark", "\xef\xbb\xbf\"a\",b\n", [][]string{{"a", "b"}}},
		{"an empty line is a row", "a\n\nb\n", [][]string{{"a"}, {""}, {"b"}}},
		{"nothing", "", nil},
	} {
		records, open := parse([]byte(c.in))
		var got [][]string
		for i, r := range records {
			got = append(got, r.cells)
			if r.row != i+1 || len(r.faults) > 0 {
				t.Errorf("%s: row %d has faults %v", c.rule, r.row, r.faults)
			}
		}
		if open || !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %q, want %q", c.rule, got, c.want)
		}
	}
}

func TestEveryFaultOfATableIsFoundInItsCell(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"a,b\"c\r\nd,\"e\" f\r\n", "1.1 a quote inside a cell that is not quoted|2.1 text after the closing quote"},
		{"a,b\r\nc,\"d\r\ne,f\r\n", "2.1 a quote is opened and never closed"},
		{"a\rb,c\r\n", "1.0 a carriage return alone"},
		{"a,\xff\r\n\xc3,b", "1.1 bytes that are not UTF-8|2.0 bytes that are not UTF-8"},
	} {
		records, open := parse([]byte(c.in))
		var got []string
		for _, r := range records {
			for _, f := range r.faults {
				got = append(got, fmt.Sprintf("%d.%d %s", r.row, f.cell, f.wrong))
			}
		}
		if strings.Join(got, "|") != c.want {
			t.Errorf("%q: %q", c.in, got)
		}
		if open != strings.Contains(c.want, "never closed") {
			t.Errorf("%q: open is %v", c.in, open)
		}
	}
}

// The standard library is the judge: what we write, it reads, but for CRLF in
// a cell, which it turns into LF.
func TestWhatIsWrittenIsReadByOthersAndByUs(t *testing.T) {
	cell := rapid.StringOfN(rapid.SampledFrom([]rune("ab=- ,;\"\n\r'é雪")), 0, 6, -1)
	rapid.Check(t, func(t *rapid.T) {
		width := rapid.IntRange(2, 4).Draw(t, "width")
		rows := rapid.SliceOfN(rapid.SliceOfN(cell, width, width), 1, 5).Draw(t, "rows")
		out := Text(rows)
		records, open := parse([]byte(out))
		if open || len(records) != len(rows) {
			t.Fatalf("%d records of %d rows", len(records), len(rows))
		}
		theirs, err := csv.NewReader(strings.NewReader(out)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range records {
			if len(r.faults) > 0 || !reflect.DeepEqual(r.cells, rows[i]) {
				t.Fatalf("row %d: %q, want %q", i, r.cells, rows[i])
			}
			for j, c := range rows[i] {
				if want := strings.ReplaceAll(Inert(c), "\r\n", "\n"); theirs[i][j] != want {
					t.Fatalf("row %d: they read %q, want %q", i, theirs[i][j], want)
				}
			}
		}
	})
}
