package ui

import (
	"bytes"
	"encoding/csv"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"unicode"

	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"tarpside/assets"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// speakPseudo shows everything in the pseudo-language until the test ends.
func speakPseudo(t *testing.T) {
	t.Helper()
	if err := words.Use(words.Pseudo); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := words.Use(""); err != nil {
			t.Error(err)
		}
	})
}

func TestNoTextIsCutInALanguageFortyPercentLonger(t *testing.T) {
	speakPseudo(t)
	demo, err := fs.Sub(assets.Demo, "demo")
	if err != nil {
		t.Fatal(err)
	}
	walkOver(t, demo, []float32{1}, func(w *window, where string) {
		for _, cut := range parts.Cuts(w.shell.Root()) {
			t.Errorf("%s: %q is cut", where, cut)
		}
	})
}

// told are the columns of the tables that a department fills in as it likes.
var told = map[string][]string{
	"agencies.csv": {"name", "kind"}, "checks.csv": {"question", "if_it_fails"}, "items.csv": {"name", "short_name", "other_names", "unit", "mark", "family"},
	"members.csv": {"name", "role"}, "places.csv": {"meaning"}, "pull_lists.csv": {"list", "note"}, "rigs.csv": {"name", "mark_words"},
	"slots.csv": {"description", "compartment"}, "stock.csv": {"name"}, "scene.csv": {"note"},
}

// named are the columns of ids: they are no words of any language, and are
// known by the whole cell.
var named = map[string][]string{
	"agencies.csv": {"agency"}, "items.csv": {"item"}, "members.csv": {"member"}, "places.csv": {"place"}, "rigs.csv": {"rig"},
	"slots.csv": {"slot"}, "checks.csv": {"check"},
}

// cyrillic writes a text in letters of another alphabet.
func cyrillic(text string) string {
	small := []rune("абцдефгхийклмнопярстувшьыз")
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z':
			return small[r-'a']
		case r >= 'A' && r <= 'Z':
			return unicode.ToUpper(small[r-'A'])
		}
		return r
	}, text)
}

// foreign are the demo's tables with all that the department writes in letters
// of another alphabet: what is still in ours on the screen is the program's.
// The cells that stay are listed, the longest first.
func foreign(t *testing.T) (tables fstest.MapFS, cells []string) {
	t.Helper()
	tables = fstest.MapFS{}
	demo, err := fs.Sub(assets.Demo, "demo")
	if err != nil {
		t.Fatal(err)
	}
	names, err := fs.Glob(demo, "*.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		data, err := fs.ReadFile(demo, name)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for c, column := range rows[0] {
			for _, row := range rows[1:] {
				switch {
				case slices.Contains(told[name], column):
					row[c] = cyrillic(row[c])
				case slices.Contains(named[name], column) && row[c] != "":
					cells = append(cells, row[c])
				}
			}
		}
		var out bytes.Buffer
		if err := csv.NewWriter(&out).WriteAll(rows); err != nil {
			t.Fatal(err)
		}
		tables[name] = &fstest.MapFile{Data: out.Bytes()}
	}
	slices.SortFunc(cells, func(a, b string) int { return len(b) - len(a) })
	return tables, slices.Compact(cells)
}

// english are the words of a text that have a letter on which the
// pseudo-language puts an accent, and none of another alphabet.
func english(text string, cells []string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		if len(w) == 1 { // a key of the keyboard
			continue
		}
		if !strings.ContainsAny(w, "aeoiuscngryzAEOIUSCNGRYZ") || strings.ContainsFunc(w, func(r rune) bool { return r > unicode.MaxASCII }) {
			continue
		}
		if !slices.ContainsFunc(cells, func(c string) bool { return strings.EqualFold(c, w) }) {
			out = append(out, w)
		}
	}
	return out
}

func TestNoEnglishIsLeftOnTheScreenInAnotherLanguage(t *testing.T) {
	speakPseudo(t)
	tables, cells := foreign(t)
	cells = append(cells, "str") // typed into Find
	seen := map[string]bool{}
	walkOver(t, tables, []float32{1}, func(w *window, where string) {
		var replies []string
		for _, e := range w.shell.pic.Entries {
			replies = append(replies, e.Reply.Text)
		}
		for _, o := range test.LaidOutObjects(w.shell.Root()) {
			c, ok := o.(*canvas.Text)
			if !ok || !c.Visible() || seen[c.Text] {
				continue
			}
			seen[c.Text] = true
			if slices.ContainsFunc(replies, func(r string) bool { return strings.Contains(r, c.Text) }) {
				continue // the judge's own sentence
			}
			if left := english(c.Text, cells); len(left) > 0 {
				t.Errorf("%s: %q has the English %q", where, c.Text, left)
			}
		}
	})
}
