package words

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/lang"
	"pgregory.net/rapid"
)

// speak chooses a language for one test.
func speak(t testing.TB, language string) {
	t.Helper()
	was := speaks.Load()
	if err := Use(language); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { speaks.Store(was) })
}

func TestTheToolkitTakesTheTable(t *testing.T) {
	if err := load("base.en.json", ""); err != nil {
		t.Error(err)
	}
}

func TestATextInEnglishIsItsKey(t *testing.T) {
	speak(t, "")
	if got := L("Back home"); got != "Back home" {
		t.Errorf("got %q", got)
	}
	if got := F("%d of %d in", 3, 9); got != "3 of 9 in" {
		t.Errorf("got %q", got)
	}
	for n, want := range []string{"0 lines", "1 line", "2 lines"} {
		for range 2 { // the second time from what was kept
			if got := N("%d line", "%d lines", n); got != want {
				t.Errorf("%d: got %q, want %q", n, got, want)
			}
		}
	}
	if got := N("line", "lines", 1); got != "line" {
		t.Errorf("got %q", got)
	}
	if got := N("%s line", "%s lines", 4, "four"); got != "four lines" {
		t.Errorf("got %q", got)
	}
	if got := L(""); got != "" {
		t.Errorf("nothing became %q", got)
	}
}

func TestEveryTextOfTheTableIsFoundInEnglish(t *testing.T) {
	speak(t, "")
	table, err := English()
	if err != nil {
		t.Fatal(err)
	}
	for key, e := range table {
		if e.One == "" {
			if got := L(key); got != e.Other {
				t.Errorf("%q became %q", key, got)
			}
			continue
		}
		if one, other := lang.N(key, 1), lang.N(key, 2); one != e.One || other != e.Other {
			t.Errorf("%q became %q for one and %q for two", key, one, other)
		}
	}
}

func TestAnUnknownLanguageIsRefusedAndNothingChanges(t *testing.T) {
	speak(t, Pseudo)
	if err := Use("xx"); err == nil {
		t.Error("xx was taken")
	}
	if got := L("Back home"); got == "Back home" {
		t.Error("the language changed")
	}
}

func TestThePseudoLanguageIsFortyPercentLongerAndKeepsTheVerbs(t *testing.T) {
	table, err := English()
	if err != nil {
		t.Fatal(err)
	}
	check := func(t interface{ Errorf(string, ...any) }, s string) {
		got := pseudo(s)
		if a, b := letters(got), letters(s); 10*a < 14*b || 10*a > 14*b+10*(1+strings.Count(s, " ")) {
			t.Errorf("%q has %d letters, %q has %d", s, b, got, a)
		}
		if strings.ContainsAny(verbsOf.ReplaceAllString(got, ""), "aeiouAEIOU") {
			t.Errorf("%q became %q", s, got)
		}
	}
	for key := range table {
		check(t, key)
	}
	if t.Failed() {
		return
	}
	rapid.Check(t, func(t *rapid.T) { check(t, rapid.StringMatching(`([A-Za-z]{1,9}[ ,.]|%[dsg] ){0,8}`).Draw(t, "text")) })
}

// letters counts what is no part of a verb.
func letters(s string) int {
	n := 0
	for _, r := range verbsOf.ReplaceAllString(s, "") {
		if r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' || r > 127 {
			n++
		}
	}
	return n
}

func BenchmarkText(b *testing.B) {
	b.Run("kept", func(b *testing.B) {
		for b.Loop() {
			L("Back home")
		}
	})
	b.Run("of the toolkit", func(b *testing.B) {
		for b.Loop() {
			lang.L("Back home")
		}
	})
	b.Run("number", func(b *testing.B) {
		for b.Loop() {
			N("%d line", "%d lines", 12)
		}
	})
}
