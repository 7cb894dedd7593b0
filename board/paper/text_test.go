package paper_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode"

	"github.com/google/uuid"
	"pgregory.net/rapid"

	"tarpside/board/paper"
	"tarpside/model"
	"tarpside/model/judge"
)

// logged is a state with acts judged on top of it.
func logged(s *model.State, n int, act func(i int) model.Act) *model.State {
	for i := range n {
		e := model.Entry{ID: uuid.UUID{15: byte(i), 14: byte(i >> 8)}, Stamp: model.Stamp{Wall: int64(i + 1), Device: "A"}, Device: "A", Format: model.Format, Seen: s.Seen(), Act: act(i)}
		s = judge.Judge(s, &e)
	}
	return s
}

func TestAListOfFortyPagesHasEveryRowAndItsTitlesOnEveryPage(t *testing.T) {
	pic := of(big(820, func(i int) string { return fmt.Sprintf("Piece number %d", i) }))
	all := pages(t, printed(t, find(t, paper.All(pic, options(0)), "slots_R1.pdf")))
	if len(all) < 40 {
		t.Fatalf("%d pages", len(all))
	}
	whole := strings.Join(all, "\n")
	for i := range 820 {
		if n := strings.Count(whole, fmt.Sprintf("R1-%04d", i)); n != 1 {
			t.Errorf("row %d stands %d times", i, n)
		}
	}
	for i, page := range all {
		if !lineOf(page, "qty piece id lift") || !strings.Contains(page, fmt.Sprintf("Page %d of %d ", i+1, len(all))) {
			t.Errorf("page %d: %s", i+1, page)
		}
	}
}

func TestLongNamesAreBrokenAndStayOnThePaper(t *testing.T) {
	for what, name := range map[string]string{"words": strings.Repeat("very long hydraulic spreader hose ", 12), "one word": strings.Repeat("Spreader", 30),
		"wide": strings.Repeat("W", 120), "far too long": strings.Repeat("and another thing ", 400)} {
		d := big(30, func(int) string { return name })
		d.Rigs[0].Name = name
		pic := of(d)
		pic.State = logged(pic.State, 30, func(i int) model.Act {
			return model.Act{Verb: model.PullOff, Item: fmt.Sprintf("R1-%04d", i), Quantity: 1, From: "home", To: "tarp"}
		})
		for _, p := range paper.All(pic, options(0)) {
			doc := printed(t, p)
			inside(t, what+", "+p.File, doc, paper.Letter)
			if p.File == "slots_R1.pdf" || p.File == "open_R1.pdf" {
				whole := strings.Join(strings.Fields(strings.Join(pages(t, doc), "")), "")
				for i := range 30 {
					if !strings.Contains(whole, fmt.Sprintf("R1-%04d", i)) {
						t.Errorf("%s: %s has no row %d", what, p.File, i)
					}
				}
			}
			if what == "far too long" && p.File == "slots_R1.pdf" && strings.Count(strings.Join(pages(t, doc), ""), "…") < 30 {
				t.Errorf("%s does not say that a name is cut", p.File)
			}
		}
	}
}

func TestLatinGreekAndCyrillicAreReadBackAsTheyAre(t *testing.T) {
	for _, name := range []string{"Çağrı kolu ölçüm", "Łom przecinak żółty", "Écarteur à câble", "Škrabka ďalšia", "Spreizgerät groß", "Κόφτης σωλήνων", "Домкрат гидравлический", "Ключ їжак ґанок", "Halligan – 30″ · ½ in"} {
		shown, note := paper.Draw(name)
		if shown != name || note != "" {
			t.Errorf("%q is shown as %q, %s", name, shown, note)
		}
		if got := text(t, of(big(1, func(int) string { return name })), options(0), "slots_R1.pdf"); !strings.Contains(flat(got), name) {
			t.Errorf("%q is not read back: %s", name, got)
		}
	}
}

func TestALetterWithoutAShapeIsABoxAndTheFootSaysWhich(t *testing.T) {
	for _, c := range []struct{ name, shown, says string }{
		{"漢字 bar", "□□ bar", "Han U+5B57, Han U+6F22"},
		{"شوكة", "□□□□", "Arabic U+0634"},
		{"כלי", "□□□", "Hebrew"},
		{"검사 1", "□□ 1", "Hangul"},
		{"कटर", "□□□", "Devanagari"},
		{"saw 🪚", "saw □", "sign U+1FA9A"},
		{"bế tắc", "bê tăc", "plainer form"},
		{"Cafe\u0301", "Café", ""},
		{"a\u200bb\tc", "ab c", ""},
		{"c\x00d", "c□d", "sign U+0000"},
		{"x\xff", "x\uFFFD", ""},
		{"ậ Ａ ﬃ", "a A ffi", "plainer form"},
	} {
		shown, note := paper.Draw(c.name)
		if shown != c.shown || !strings.Contains(note, c.says) || c.says == "" && note != "" {
			t.Errorf("%q is shown as %q, %q", c.name, shown, note)
		}
	}
	got := flat(text(t, of(big(1, func(int) string { return "漢字 bar" })), options(0), "slots_R1.pdf"))
	if !strings.Contains(got, "□□ bar") || !strings.Contains(got, "no shape for (it has Latin, Greek, Cyrillic): Han U+5B57, Han U+6F22") {
		t.Error(got)
	}
}

func TestNoLetterIsDroppedInSilence(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.String().Draw(t, "name")
		shown, note := paper.Draw(name)
		for _, r := range shown {
			if !paper.Drawn(r) {
				t.Fatalf("%q cannot draw %U", shown, r)
			}
		}
		letters := func(s string) (n int) {
			for _, r := range s {
				if unicode.IsLetter(r) || unicode.IsNumber(r) || unicode.IsSymbol(r) || r == '□' {
					n++
				}
			}
			return n
		}
		if note == "" && letters(shown) < letters(strings.ToValidUTF8(name, "")) {
			t.Fatalf("%q is shown as %q, and the foot says nothing", name, shown)
		}
	})
}

func TestAnyDepartmentCanBePrinted(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		word := rapid.OneOf(rapid.StringN(0, 60, -1), rapid.StringMatching(`[A-Z0-9-]{1,12}`))
		d := &model.Department{Rigs: []model.Rig{{ID: "R1", Name: word.Draw(rt, "rig")}}}
		for i := range rapid.IntRange(0, 6).Draw(rt, "slots") {
			d.Slots = append(d.Slots, model.Slot{ID: fmt.Sprintf("%d%s", i, word.Draw(rt, "slot")), Rig: "R1", Compartment: word.Draw(rt, "door"), Lap: i % 3, Description: word.Draw(rt, "words")})
		}
		for i := range rapid.IntRange(0, 20).Draw(rt, "items") {
			it := model.Item{ID: fmt.Sprintf("%d%s", i, word.Draw(rt, "id")), Name: word.Draw(rt, "name"), Rig: "R1", Kind: model.Counted, Quantity: rapid.IntRange(1, 999).Draw(rt, "n"), LeastUsable: model.Blank}
			if len(d.Slots) > 0 {
				it.Slot = d.Slots[i%len(d.Slots)].ID
			}
			d.Items = append(d.Items, it)
		}
		for _, p := range paper.All(of(d), options(0)) {
			if err := p.Write(discard{}); err != nil {
				rt.Fatalf("%s: %v", p.File, err)
			}
		}
	})
}

type discard struct{}

func (discard) Write(b []byte) (int, error) { return len(b), nil }
