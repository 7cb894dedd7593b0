package code_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/code"
)

// hexdocs.pm/base32_crockford, metacpan Encode::Base32::Crockford and
// libraries.io/pypi/base32-crockford give these.
func TestBase32AndItsCheckSymbolAreThePublishedOnes(t *testing.T) {
	for _, c := range []struct {
		n     uint64
		text  string
		check byte
	}{{1234, "16J", 'D'}, {42, "1A", '5'}, {1_000_000_000, "XSNJG0", 0}, {0, "0", '0'}, {36, "14", 'U'}, {32, "10", '*'}, {33, "11", '~'}, {34, "12", '$'}, {35, "13", '='}} {
		if got := code.Base32(c.n); got != c.text {
			t.Errorf("%d is %s, want %s", c.n, got, c.text)
		}
		if n, err := code.Number(strings.ToLower(c.text)); err != nil || n != c.n {
			t.Errorf("%s is %d, %v", c.text, n, err)
		}
		if got := code.Check(c.n); c.check != 0 && got != c.check {
			t.Errorf("%d has the check %c, want %c", c.n, got, c.check)
		}
	}
	for text, want := range map[string]uint64{"l6j": 1234, "I-6-J": 1234, "1o": 32} {
		if n, err := code.Number(text); err != nil || n != want {
			t.Errorf("%s is %d, %v", text, n, err)
		}
	}
	for _, text := range []string{"", "-", "U", "1*", "é", "ZZZZZZZZZZZZZZ"} {
		if n, err := code.Number(text); err == nil {
			t.Errorf("%q was read as %d", text, n)
		}
	}
}

// RosettaCode, Damm algorithm: 5724 and 112946 are valid, 5727 and 112949 are
// not. The R package Damm: 12345 takes a 9.
func TestDammIsThePublishedOne(t *testing.T) {
	for number, want := range map[string]byte{"572": '4', "5724": '0', "112946": '0', "12345": '9'} {
		if got, err := code.Damm(number); err != nil || got != want {
			t.Errorf("%s: %c, %v", number, got, err)
		}
	}
	for _, wrong := range []string{"5727", "112949"} {
		if got, err := code.Damm(wrong); err != nil || got == '0' {
			t.Errorf("%s: %c, %v", wrong, got, err)
		}
	}
	if _, err := code.Damm("57a"); err == nil {
		t.Error("a letter was taken")
	}
}

func TestDammFindsOneWrongDigitAndTwoNeighboursSwapped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.StringMatching(`[0-9]{2,12}`).Draw(t, "number")
		d, err := code.Damm(n)
		if err != nil {
			t.Fatal(err)
		}
		whole := n + string(d)
		for i := range whole {
			for c := byte('0'); c <= '9'; c++ {
				b := []byte(whole)
				b[i] = c
				if got, _ := code.Damm(string(b)); (got == '0') != (c == whole[i]) {
					t.Fatalf("%s for %s", b, whole)
				}
			}
			if i > 0 && whole[i] != whole[i-1] {
				b := []byte(whole)
				b[i], b[i-1] = b[i-1], b[i]
				if got, _ := code.Damm(string(b)); got == '0' {
					t.Fatalf("%s for %s", b, whole)
				}
			}
		}
	})
}

func department(items, slots []string) *model.Department {
	d := &model.Department{}
	for _, id := range items {
		d.Items = append(d.Items, model.Item{ID: id})
	}
	for _, id := range slots {
		d.Slots = append(d.Slots, model.Slot{ID: id})
	}
	return d.Index()
}

func TestALabelIsFoundAgainAndAMistakeInItIsNot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		id := rapid.OneOf(rapid.StringMatching(`[0-9A-Z][0-9A-Z-]{0,16}`), rapid.StringN(1, 20, -1)).Draw(t, "id")
		what := rapid.SampledFrom([]byte{code.Piece, code.Slot}).Draw(t, "what")
		d := department([]string{id, "ZZ-1"}, []string{id, "ZZ-2"})
		label := code.Label(what, id)
		if len(label) > 16 {
			t.Fatalf("%q is too long for a label", label)
		}
		w, got, err := code.Find(d, " "+strings.ToLower(label))
		if err != nil || w != what || got != id {
			t.Fatalf("%q: %c %q, %v", label, w, got, err)
		}
		body := strings.TrimSuffix(label, label[len(label)-2:])
		for i := range body {
			for _, c := range []byte("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ") {
				if body[i] == '-' || body[i] == '+' || body[i] == c {
					continue
				}
				if _, got, err := code.Find(d, label[:i]+string(c)+label[i+1:]); err == nil {
					t.Fatalf("%q with %c at %d was taken for %q", label, c, i, got)
				}
			}
			if i > 0 && label[i] != label[i-1] && !strings.ContainsAny(label[i-1:i+1], "-+") {
				b := []byte(label)
				b[i], b[i-1] = b[i-1], b[i]
				if _, got, err := code.Find(d, string(b)); err == nil {
					t.Fatalf("%q was taken for %q", b, got)
				}
			}
		}
	})
}

func TestALabelIsTheIdWithACheck(t *testing.T) {
	for _, c := range []struct {
		what     byte
		id, want string
	}{
		{code.Piece, "16J", "16J.D"}, {code.Slot, "1-A", "1-A:5"}, // the published checks of 1234 and 42
		{code.Piece, "R41-055", "R41-055.Q"}, {code.Slot, "R41-L1-T", "R41-L1-T:1"}, // worked out apart; labels stick for years
		{code.Piece, "haligan 2", "+QX0S0PYC.*"},
	} {
		if got := code.Label(c.what, c.id); got != c.want {
			t.Errorf("%s: %s, want %s", c.id, got, c.want)
		}
	}
}

func TestALabelThatIsNoneSaysWhy(t *testing.T) {
	d := department([]string{"R41-055", "A", "AB"}, nil)
	for label, says := range map[string]string{
		"": "no label of ours", "R41-055": "no label of ours", ".5": "no label of ours",
		"R41-056.Q": "read or typed wrong", "Ré.5": "read or typed wrong", code.Label(code.Piece, "R41-099"): "nothing in the inventory",
		code.Label(code.Slot, "R41-055"): "nothing in the inventory",
	} {
		if _, id, err := code.Find(d, label); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %q, %v", label, id, err)
		}
	}
}

func FuzzFind(f *testing.F) {
	for _, s := range []string{"R41-055.Q", "+QX0S0PYC.*", "..", "+:0", "é.é"} {
		f.Add(s)
	}
	d := department([]string{"R41-055"}, []string{"R41-L1-T"})
	f.Fuzz(func(t *testing.T, s string) {
		if what, id, err := code.Find(d, s); err == nil && code.Label(what, id) != strings.ToUpper(strings.TrimSpace(s)) {
			t.Errorf("%q was taken for %q", s, id)
		}
	})
}
