package parts

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/ui/look"
)

var update = flag.Bool("update", false, "write the masters anew from the stories")

// masterFile is the master of a story.
func masterFile(s Story) string {
	name := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' {
			return r
		}
		return '-'
	}, strings.ToLower(s.Name))
	return filepath.Join("testdata", strings.ReplaceAll(name, "--", "-")+".txt")
}

// A master is what a story draws, in words. To renew them after a change that
// is meant: go test ./ui/parts -run Master -update, then read the difference.
func TestEveryStoryDrawsWhatItsMasterSays(t *testing.T) {
	app := test.NewTempApp(t)
	th := look.New(look.Options{})
	app.Settings().SetTheme(th)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
	}
	for _, s := range Stories() {
		obj := s.Build()
		look.Draw(obj, s.Size, th)
		got, file := Sketch(obj, s.Size), masterFile(s)
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Errorf("%s has no master: %v", s.Name, err)
			continue
		}
		if line, a, b := firstDifference(got, string(want)); line > 0 {
			t.Errorf("%s, %s line %d:\n drawn  %s\n master %s", s.Name, file, line, a, b)
		}
	}
}

func TestEveryMasterHasItsStory(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txt")
	if err != nil {
		t.Fatal(err)
	}
	of := map[string]bool{}
	for _, s := range Stories() {
		of[masterFile(s)] = true
	}
	for _, f := range files {
		if !of[f] {
			t.Errorf("%s is the master of no story: delete it", f)
		}
	}
	if len(of) != len(Stories()) {
		t.Error("two stories share a master: give one another name")
	}
}

// firstDifference is the first line that differs, from 1, with both readings.
func firstDifference(a, b string) (int, string, string) {
	if a == b {
		return 0, "", ""
	}
	la, lb := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(la), len(lb)) {
		if la[i] != lb[i] {
			return i + 1, la[i], lb[i]
		}
	}
	return min(len(la), len(lb)) + 1, "the end of one", "the other goes on"
}

func TestEveryTextOfEveryStoryStandsOutFromItsGround(t *testing.T) {
	app := test.NewTempApp(t)
	seen := 0
	for _, opt := range []look.Options{{}, {Day: true}, {Locked: true}, {Day: true, Locked: true}} {
		th := look.New(opt)
		app.Settings().SetTheme(th)
		for _, s := range Stories() {
			obj := s.Build()
			look.Draw(obj, s.Size, th)
			for _, faint := range Faint(obj, s.Size) {
				t.Errorf("%+v, %s: %s", opt, s.Name, faint)
			}
			seen += len(InkedIn(obj, s.Size))
		}
	}
	if seen < 1000 {
		t.Errorf("only %d texts and icons were seen: the walk is broken", seen)
	}
}

func TestTheGroundOfATextIsWhatWasPaintedLastUnderIt(t *testing.T) {
	app := test.NewTempApp(t)
	th := look.New(look.Options{})
	app.Settings().SetTheme(th)
	g := &page{}
	g.at(0, 0, 200, 100, NewKey(KeyView{ID: "a", Title: "Filled", Tone: Filled}, nil))
	g.at(0, 100, 200, 100, NewKey(KeyView{ID: "b", Title: "Covered"}, nil))
	g.at(0, 100, 200, 100, NewDrawn(Part{}, 0, 0, func(p *Pen, size fyne.Size) {
		p.Fill(0, 0, size.Width, size.Height, look.Soft)
		p.Write("dim", Ink{Color: look.Dim}, 10, 10, 100, 0)
	}))
	obj, size := g.done(), fyne.NewSize(200, 200)
	look.Draw(obj, size, th)
	var got []string
	for _, k := range InkedIn(obj, size) {
		got = append(got, k.Text+" "+string(k.Ink)+" on "+string(k.Ground))
	}
	if want := "Filled on-fill on fill; dim dim on soft"; strings.Join(got, "; ") != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
