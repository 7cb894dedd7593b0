package model_test

import (
	"math"
	"testing"

	"tarpside/model"
	"tarpside/model/modeltest"
)

func TestAPlaceIsReadAsItIsPrinted(t *testing.T) {
	for text, want := range map[string]string{
		"home": "home", " tarp ": "tarp", "at:V1": "at:V1", "at: V1 ": "at:V1", "at:road: north": "at:road: north", "with:road crew": "with:road crew",
		"riding:R1": "riding:R1", "kit:BOX": "kit:BOX", "unexplained": "unexplained", "at:Ä": "at:Ä",
		"": "", "shelf": "", "at": "", "at:": "", "at: ": "", "tarp:2": "", "home:": "", "Home": "", "at:V\x001": "", "at:V\u00851": "",
		"at:\xff": "", "home\x1fS": "", "used\x1fS": "", "tarp\x1f": "", "tarp\x1fa\x1fb": "", "kit:BOX\x1fS": "",
	} {
		p, err := model.ParsePlace(text)
		if got := p.String(); (err != nil) != (want == "") || got != want {
			t.Errorf("%q: %q, %v", text, got, err)
		}
	}
}

func FuzzAPlaceThatIsReadIsPrintedTheSame(f *testing.F) {
	for _, s := range []string{"home", "at:V1", "tarp\x1fs1", "with:a b:c", "kit:", "at:\xc3", "\x1f", "riding: \u00a0x"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, err := model.ParsePlace(text)
		if err != nil {
			if p != (model.Place{}) {
				t.Errorf("%q: %v and %+v", text, err, p)
			}
			return
		}
		printed, err := p.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		var q model.Place
		if err := q.UnmarshalText(printed); err != nil || q != p {
			t.Errorf("%q is %+v, printed %q, read again %+v, %v", text, p, printed, q, err)
		}
		if r, err := model.ParsePlace(p.String()); err != nil || r.Kind != p.Kind || r.Name != p.Name {
			t.Errorf("%q prints as %q, which reads as %+v, %v", text, p, r, err)
		}
	})
}

func FuzzAReadingIsAPlainAnswerWithinItsRangeOrAnError(f *testing.F) {
	for _, s := range []string{"battery=80", "oxygen=1e3", "clean=blood;dry=yes", "unused", "as_is;flow=.", "battery=nan", "=", ";;", "SEAL=Yes", "flow=9..9"} {
		f.Add(s, true)
		f.Add(s, false)
	}
	d := modeltest.Yard()
	f.Fuzz(func(t *testing.T, reading string, stow bool) {
		answers, err := model.ParseReading(d, reading, stow)
		if err != nil && answers != nil {
			t.Errorf("%q: %v and %v", reading, err, answers)
		}
		met := map[string]bool{}
		for _, a := range answers {
			c := d.Check(a.Check)
			switch {
			case a.Check == model.FlowKey:
				c = &model.Check{Number: true, Max: 100}
			case c == nil || c.ID != a.Check:
				t.Fatalf("%q answers %q, which is no check", reading, a.Check)
			}
			if math.IsNaN(a.Number) || c.Number && (a.Number < c.Min || a.Number > c.Max) || !c.Number && a.Number != 0 || a.Word == "" || met[a.Check] {
				t.Errorf("%q is read as %+v", reading, a)
			}
			met[a.Check] = true
		}
	})
}
