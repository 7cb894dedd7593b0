package ui

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"unicode"

	"fyne.io/fyne/v2"
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
	seen := map[string]bool{}
	each := func(w *window, where string) {
		for _, cut := range parts.Cuts(w.shell.Root()) {
			if !seen[cut] {
				t.Errorf("%s: %q is cut", where, cut)
			}
			seen[cut] = true
		}
	}
	walkOver(t, demo, []float32{1}, each)
	rove(t, demo, 60, glass1280, each)
	rove(t, demo, 125, glass1024, each)
	rove(t, demo, 177, glass1024, each)
}

// pages are the screens that open over another one, beside those that a touch
// opens.
var pages = []func(w *window) screen{
	func(w *window) screen { return newWelcome(w.shell) },
	func(w *window) screen {
		w.shell.opts.Folders = func(string) (Folder, error) { return Folder{Path: "/", Tables: 2, Inside: []string{"/1"}}, nil }
		return newLoading(w.shell)
	},
	func(w *window) screen { return newLastEntries(w.shell) },
	func(w *window) screen { return newAccount(w.shell, "R41") },
	func(w *window) screen { return newTermLines(w.shell, "R41", int(parts.FootOut)) },
	func(w *window) screen { return newEntries(w.shell, "R41-105") },
	func(w *window) screen { return newRelease(w.shell, "R41") },
	func(w *window) screen { return newRigTabs(w.shell.tarp()) },
	func(w *window) screen { return newPullList(w.shell.tarp()) },
	func(w *window) screen { return newHolder(w.shell) },
	func(w *window) screen { return newActing(w.shell) },
	func(w *window) screen { return newCard(w.shell) },
	func(w *window) screen { return newLimits(w.shell) },
	func(w *window) screen { return newLimitLines(w.shell, "battery") },
	func(w *window) screen { return newCompartments(w.shell, "R41") },
	func(w *window) screen { return newLinePage(w.shell, "R41-001") },
	func(w *window) screen { return newStoresFind(w.shell) },
	func(w *window) screen { return newRunning(w.shell, "R41-105") },
	func(w *window) screen { return newOtherRig(w.shell) },
	func(w *window) screen { return newWhatWasIt(w.shell.tarp(), "4006381333931") },
	func(w *window) screen { return newAloud(w.shell, "", (*now).aloudGlance) },
}

// rove touches each part of every screen once, and opens every page.
func rove(t *testing.T, tables fs.FS, minute int, size fyne.Size, each func(w *window, where string)) {
	w := tablesAt(t, tables, minute, ScreenTarp, size, glassLook(size, 1))
	at := fmt.Sprintf(", minute %d, %gx%g, text 1.0", minute, size.Width, size.Height)
	for i, page := range pages {
		w.shell.Go(ScreenMore)
		w.shell.open(page(w))
		each(w, fmt.Sprintf("page %d%s", i, at))
	}
	for _, screen := range Screens {
		w.shell.Go(screen)
		kinds := map[string]int{}
		for _, p := range parts.Targets(w.shell.Root(), size) {
			if kinds[p.Kind]++; p.Kind == parts.KindScreen || p.Kind == parts.KindDigit || p.Kind != parts.KindAct && kinds[p.Kind] > 3 {
				continue
			}
			w.shell.Go(screen)
			w.shell.said, w.shell.tarp().picks, w.shell.tarp().find.on = nil, nil, false
			w.shell.refresh()
			if _, here := w.find(p.Kind, p.ID); here {
				w.tap(p.Kind, p.ID)
				each(w, fmt.Sprintf("%s, after %s %q%s", screen, p.Kind, p.ID, at))
			}
		}
	}
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
	"agencies.csv": {"agency"}, "items.csv": {"item"}, "members.csv": {"member", "rig"}, "places.csv": {"place"}, "rigs.csv": {"rig"},
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

// tokens are the words and the figures of a text.
func tokens(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// english are the words of a text that have a letter on which the
// pseudo-language puts an accent, and none of another alphabet.
func english(text string, cells []string) []string {
	var out []string
	for _, w := range tokens(text) {
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
	each := func(w *window, where string) {
		finished := w.finished()
		for _, o := range test.LaidOutObjects(w.shell.Root()) {
			c, ok := o.(*canvas.Text)
			if !ok || !c.Visible() || seen[c.Text] {
				continue
			}
			seen[c.Text] = true
			if slices.ContainsFunc(finished, func(r string) bool { return strings.Contains(strings.ToLower(r), strings.ToLower(c.Text)) }) {
				continue
			}
			if left := english(c.Text, cells); len(left) > 0 && !slices.ContainsFunc(finished, func(r string) bool { return hasAll(r, left) }) {
				t.Errorf("%s: %q has the English %q", where, c.Text, left)
			}
		}
	}
	walkOver(t, tables, []float32{1}, each)
	rove(t, tables, 125, glass1024, each)
}

// finished are the words that rightly stay in another language: the checks as
// the department wrote them.
func (w *window) finished() []string {
	var out []string
	for _, c := range w.shell.now().d.Checks {
		out = append(out, c.Answer, c.Passes, c.Override)
	}
	return out
}

// hasAll tells whether a sentence has every one of some words.
func hasAll(sentence string, list []string) bool {
	have := tokens(strings.ToLower(sentence))
	return !slices.ContainsFunc(list, func(w string) bool { return !slices.Contains(have, strings.ToLower(w)) })
}
