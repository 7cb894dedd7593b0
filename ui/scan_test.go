package ui

import (
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"pgregory.net/rapid"
)

// feed types characters with the gaps given and returns what the scanner gave
// back as typed on the way.
func feed(s *Scanner, at time.Time, text []rune, gap func(i int) time.Duration) (typed string, end time.Time) {
	for i, r := range text {
		at = at.Add(gap(i))
		_, before := s.Key(fyne.KeyName("A"), at) // the key of a character comes before it
		typed += before + s.Rune(r, at)
	}
	return typed, at
}

var codeRunes = rapid.RuneFrom([]rune("ABCXYZabcxyz0123456789-: "))

func TestAFastBurstThatEndsWithReturnOrTabIsOneCodeAndNothingOfItIsTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s Scanner
		code := rapid.SliceOfN(codeRunes, scanLeast, 40).Draw(t, "code")
		before := rapid.SliceOfN(codeRunes, 0, 5).Draw(t, "typed before")
		at := time.Unix(1000, 0)
		got, at := feed(&s, at, before, func(int) time.Duration {
			return scanGap + time.Duration(rapid.IntRange(1, 500).Draw(t, "slow"))*time.Millisecond
		})
		at = at.Add(scanGap)
		more, at := feed(&s, at, code, func(i int) time.Duration {
			if i == 0 {
				return time.Duration(rapid.IntRange(1, 2000).Draw(t, "pause")) * time.Millisecond
			}
			return time.Duration(rapid.IntRange(0, int(scanGap/time.Millisecond)).Draw(t, "fast")) * time.Millisecond
		})
		end := rapid.SampledFrom([]fyne.KeyName{fyne.KeyReturn, fyne.KeyEnter, fyne.KeyTab}).Draw(t, "end")
		found, rest := s.Key(end, at.Add(time.Duration(rapid.IntRange(0, int(scanGap/time.Millisecond)).Draw(t, "last"))*time.Millisecond))
		if found != string(code) || got+more+rest != string(before) {
			t.Fatalf("code %q, typed %q; want %q and %q", found, got+more+rest, string(code), string(before))
		}
	})
}

func TestWhatAPersonTypesIsNeverACodeAndEveryLetterArrivesInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s Scanner
		text := rapid.SliceOfN(codeRunes, 1, 30).Draw(t, "text")
		typed, at := feed(&s, time.Unix(1000, 0), text, func(int) time.Duration {
			return scanGap + time.Duration(rapid.IntRange(1, 800).Draw(t, "gap"))*time.Millisecond
		})
		code, rest := s.Key(fyne.KeyReturn, at.Add(time.Duration(rapid.IntRange(0, 900).Draw(t, "to Return"))*time.Millisecond))
		if code != "" || typed+rest != string(text) {
			t.Fatalf("code %q, typed %q; want none and %q", code, typed+rest, string(text))
		}
	})
}

func TestNoCharacterIsLostOrDoubledWhateverTheTiming(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s Scanner
		at, in, out := time.Unix(1000, 0), "", ""
		for range rapid.IntRange(0, 60).Draw(t, "steps") {
			at = at.Add(time.Duration(rapid.IntRange(0, 90).Draw(t, "gap")) * time.Millisecond)
			switch rapid.IntRange(0, 5).Draw(t, "what") {
			case 0:
				code, typed := s.Key(rapid.SampledFrom([]fyne.KeyName{fyne.KeyReturn, fyne.KeyTab, fyne.KeyEscape, fyne.KeyLeft, "LeftShift", "Q"}).Draw(t, "key"), at)
				if code != "" && len([]rune(code)) < scanLeast {
					t.Fatalf("a code of %q", code)
				}
				out += typed + code
			case 1:
				out += s.Quiet(at)
			default:
				r := codeRunes.Draw(t, "rune")
				in += string(r)
				out += s.Rune(r, at)
			}
		}
		if out += s.Quiet(at.Add(time.Hour)); out != in {
			t.Fatalf("%q went in, %q came out", in, out)
		}
	})
}

func TestABurstThatNothingEndsIsTyping(t *testing.T) {
	for _, c := range []struct {
		name  string
		chars string
		end   fyne.KeyName
		after time.Duration
		code  string
		typed string
	}{
		{"too short", "V", fyne.KeyReturn, 0, "", "V"},
		{"Escape", "V1", fyne.KeyEscape, 0, "", "V1"},
		{"an arrow", "V1", fyne.KeyDown, 0, "", "V1"},
		{"Return too late", "V1", fyne.KeyReturn, scanGap + 1, "", "V1"},
		{"Return just in time", "V1", fyne.KeyReturn, scanGap, "V1", ""},
		{"nothing held", "", fyne.KeyReturn, 0, "", ""},
	} {
		var s Scanner
		at := time.Unix(1000, 0)
		for _, r := range c.chars {
			s.Rune(r, at)
		}
		code, typed := s.Key(c.end, at.Add(c.after))
		if code != c.code || typed != c.typed {
			t.Errorf("%s: code %q, typed %q; want %q, %q", c.name, code, typed, c.code, c.typed)
		}
	}
}
