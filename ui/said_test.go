package ui

import (
	"cmp"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"tarpside/model/modeltest"
	"tarpside/ui/words"
)

// sayings holds sentences of model and board against the language of the
// window: what is left of the English of each.
type sayings struct {
	t     *testing.T
	cells []string
	seen  map[string]bool
}

// quotedWords are somebody's own, word for word.
var quotedWords = regexp.MustCompile(`"[^"]*"`)

func (s *sayings) hold(where, text string) {
	s.t.Helper()
	if text == "" || s.seen[text] {
		return
	}
	s.seen[text] = true
	if left := english(quotedWords.ReplaceAllString(words.Said(text), ""), s.cells); len(left) > 0 {
		s.t.Errorf("%s: of %q stays %q: %q", where, text, left, words.Said(text))
	}
}

func TestEveryReplyOfTheDemoAndTheWildScenesIsSaidInAnotherLanguage(t *testing.T) {
	speakPseudo(t)
	tables, cells := foreign(t)
	s := sayings{t, cells, map[string]bool{}}
	for _, c := range demoAt(t, 0, ScreenTarp, glass1280, glassLook(glass1280, 1)).shell.now().d.Checks {
		s.cells = append(s.cells, tokens(c.ID+" "+c.Answer+" "+c.Override+" CR7")...) // a rig that is in no table
	}
	scenes := map[string]fs.FS{"demo": tables}
	folders, err := filepath.Glob("../testdata/scenes/*")
	if err != nil || len(folders) < 6 {
		t.Fatal(len(folders), err)
	}
	for _, dir := range folders {
		scene, err := os.ReadFile(filepath.Join(dir, "scene.csv"))
		if err != nil {
			t.Fatal(err)
		}
		wild := fstest.MapFS{"scene.csv": {Data: scene}}
		for name, f := range tables {
			if name != "scene.csv" {
				wild[name] = f
			}
		}
		scenes[filepath.Base(dir)] = wild
	}
	for name, tables := range scenes {
		for _, e := range tablesAt(t, tables, 100000, ScreenTarp, glass1280, glassLook(glass1280, 1)).shell.now().pic.Entries {
			s.hold(name, e.Reply.Text)
		}
	}
	if len(s.seen) < 500 {
		t.Errorf("only %d replies were held", len(s.seen))
	}
}

func TestEveryReplyToARandomActIsSaidInAnotherLanguage(t *testing.T) {
	speakPseudo(t)
	s := sayings{t, nil, map[string]bool{}}
	for seed := range uint64(300) {
		r := modeltest.Rand(seed)
		d := modeltest.Department(r)
		for i := range d.Items {
			d.Items[i].Name = cyrillic(d.Items[i].Name)
		}
		s.cells = []string{"MED9", "R0", "R1", "R2", "yes", "no"}
		for _, c := range d.Checks {
			s.cells = append(s.cells, tokens(c.ID+" "+c.Answer)...)
		}
		l := modeltest.New("A", d)
		l.Open("S")
		for range 60 {
			e := l.Do(modeltest.Entry(r, l, "A", "B"))
			for _, it := range l.State.Dept.Items { // lines that a patch brought in
				s.cells = append(s.cells, tokens(it.Name)...)
			}
			for _, said := range []string{e.Item, e.Rig, e.Reading, e.From, e.To} { // words that the act brought in
				_, named, _ := strings.Cut(said, ":")
				s.cells = append(s.cells, tokens(cmp.Or(named, said))...)
			}
			s.hold("random", e.Reply.Text)
		}
	}
	if len(s.seen) < 1000 {
		t.Errorf("only %d replies were held", len(s.seen))
	}
}
