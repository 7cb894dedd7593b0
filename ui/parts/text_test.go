package parts

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// byLetter measures ten pixels a letter, twelve in bold.
func byLetter(s string, bold bool) float32 {
	w := float32(10)
	if bold {
		w = 12
	}
	return w * float32(utf8.RuneCountInString(s))
}

func letters(s string) string { return strings.Join(strings.Fields(Plain(s)), "") }

func TestWrappingLosesNoLetterAndKeepsToTheWidth(t *testing.T) {
	word := rapid.StringMatching(`[A-Za-z0-9,.]{1,9}(-[a-z]{1,9})?`)
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(word, 0, 12).Draw(t, "words")
		for i := range words {
			switch rapid.IntRange(0, 5).Draw(t, "how") {
			case 0:
				words[i] = B(words[i])
			case 1:
				words[i] = words[i][:1] + string(softHyphen) + words[i][1:]
			case 2:
				words[i] = B(words[i]) + ","
			}
		}
		text := strings.Join(words, " ")
		first := float32(rapid.IntRange(20, 200).Draw(t, "first"))
		rest := float32(rapid.IntRange(20, 200).Draw(t, "rest"))
		width := func(n int) float32 {
			if n == 0 {
				return first
			}
			return rest
		}
		lines, _ := wrap(pieces(text, false), width, byLetter)
		var got strings.Builder
		for i, ln := range lines {
			var w float32
			for _, r := range ln {
				w += byLetter(r.text, r.bold)
			}
			if w > width(i) && utf8.RuneCountInString(ln.String()) > 1 {
				t.Fatalf("line %d %q is %v wide, has %v", i, ln, w, width(i))
			}
			got.WriteString(ln.String())
		}
		// A hyphen drawn at a soft hyphen is no letter of the text.
		if a, b := strings.ReplaceAll(letters(got.String()), "-", ""), strings.ReplaceAll(letters(text), "-", ""); a != b {
			t.Fatalf("%q became %q", b, a)
		}
	})
}

func TestWrapping(t *testing.T) {
	for _, c := range []struct {
		name, text string
		width      float32
		want       string
	}{
		{"breaks between words", "Battery spreader", 110, "Battery|spreader"},
		{"breaks after a hyphen", "Forcible-entry bar", 110, "Forcible-|entry bar"},
		{"draws a soft hyphen only where it breaks", "Recipro\u00adcating saw 1", 125, "Recipro-|cating saw 1"},
		{"and not where it does not", "Recipro\u00adcating", 130, "Reciprocating"},
		{"keeps a comma with its bold word", "by the " + B("crate") + ", right", 135, "by the|crate, right"},
		{"keeps sizes together", "Crib 4x4-20 b", 80, "Crib|4x4-20 b"},
		{"breaks a word that fits no line", "extinguisher", 50, "extin|guish|er"},
		{"keeps a line feed", "one\ntwo", 200, "one|two"},
		{"of nothing gives nothing", "", 50, ""},
	} {
		lines, _ := wrap(pieces(c.text, false), func(int) float32 { return c.width }, byLetter)
		var got []string
		for _, ln := range lines {
			got = append(got, ln.String())
		}
		if s := strings.Join(got, "|"); s != c.want {
			t.Errorf("%s: got %q, want %q", c.name, s, c.want)
		}
	}
}

func TestACutEndsInAnEllipsisAndKeepsToTheWidth(t *testing.T) {
	width := func(int) float32 { return 60 }
	lines, _ := wrap(pieces("one two three four", false), width, byLetter)
	got := cutTo(lines, 2, width, byLetter)
	if len(got) != 2 || got[0].String() != "one" || got[1].String() != "two"+ellipsis {
		t.Errorf("got %v", got)
	}
}

func TestANumberOrAUnitIsNotLeftAloneUnderItsWord(t *testing.T) {
	width := func(int) float32 { return 150 }
	for name, want := range map[string]string{
		"Tool battery 1": "Tool/battery 1", "Dry-chem 20 lb": "Dry-chem/20 lb", "Edge cover bag": "Edge cover/bag",
		"Telescopic 12": "Telescopic/12", "Tool\nA": "Tool/A", // one word over it stays there
	} {
		lines, _ := wrap(pieces(name, true), width, byLetter)
		together(lines, width, byLetter)
		var got []string
		for _, l := range lines {
			got = append(got, l.String())
		}
		if strings.Join(got, "/") != want {
			t.Errorf("%q is set as %q, want %q", name, got, want)
		}
	}
}

func TestTheBarShowsEveryTermAndNeverLeavesItsWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		counts := rapid.SliceOfN(rapid.OneOf(rapid.Just(0), rapid.IntRange(1, 3), rapid.IntRange(1, 5000)), 10, 10).Draw(t, "counts")
		width := float32(rapid.IntRange(200, 2000).Draw(t, "width"))
		got := segments(counts, width, 3, 6)
		var total float32
		shown := 0
		for i, w := range got {
			if (w > 0) != (counts[i] > 0) {
				t.Fatalf("%d pieces have %v px", counts[i], w)
			}
			if w > 0 && w < 5.99 {
				t.Fatalf("%d pieces have %v px, want 6", counts[i], w)
			}
			for j := range got {
				if counts[i] > counts[j] && got[i] < got[j]-0.01 {
					t.Fatalf("%d pieces have %v px, %d have %v", counts[i], got[i], counts[j], got[j])
				}
			}
			total += w
			if w > 0 {
				shown++
			}
		}
		if shown > 0 && abs(total+3*float32(shown-1)-width) > 0.5 {
			t.Fatalf("the bar is %v px, want %v", total+3*float32(shown-1), width)
		}
	})
}

func TestTheFootNeverDropsATermWithoutCountingIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var v FootView
		sum := 0
		for i := range v.Counts {
			v.Counts[i] = rapid.IntRange(0, 400).Draw(t, "count")
			sum += v.Counts[i]
		}
		kept, rest := keep(v.terms(), v.Counts[:], rapid.IntRange(1, 10).Draw(t, "most"))
		home, open := false, false
		for _, i := range kept {
			rest += v.Counts[i]
			home = home || FootTerm(i) == FootHome
			open = open || FootTerm(i) == FootUnexplained
		}
		if rest != sum {
			t.Fatalf("kept and elsewhere make %d, want %d", rest, sum)
		}
		if !home || !open {
			t.Fatal("home and unexplained must always show")
		}
	})
}

func TestTheFootIsListedAsOneProof(t *testing.T) {
	v := FootView{CameOff: 314, OffWord: "came off", Words: FootWords, Says: "Adds up"}
	v.Counts = [FootTerms]int{FootTarp: 121, FootOut: 180, FootUsed: 13}
	want := "314 came off = 0 home again + 121 on tarp + 180 out + 13 used + 0 unexplained. Adds up"
	if got := NewFoot(v).Part(); got.Text != want || got.ID != "proof" || got.Kind != KindText {
		t.Errorf("got %+v", got)
	}
}

func TestATextTakesTheLongestFormThatFits(t *testing.T) {
	var p Pen
	text := "It is " + Or("very large", "large", "") + " now"
	for width, want := range map[float32]string{400: "It is very large now", 120: "It is large now", 60: "It is  now"} {
		l := p.Fit(text, Ink{Lines: 1}, width, 0)
		if l.whole != want {
			t.Errorf("in %v: %q, want %q", width, l.whole, want)
		}
	}
	if got := Plain(B("a") + text); got != "aIt is very large now" {
		t.Errorf("to be read it is %q", got)
	}
}
