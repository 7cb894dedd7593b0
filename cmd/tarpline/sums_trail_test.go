package main

import (
	"errors"
	"strings"
	"testing"
)

// asked runs a sum of the table.
func asked(name string, args ...string) (string, error) {
	for _, s := range trailSums {
		if s.name == name {
			var out strings.Builder
			err := s.run(args, &out)
			return out.String(), err
		}
	}
	return "", errors.New("no sum is called " + name)
}

// The rows of the table of worked sums that these sums answer.
func TestTheSumsOfTheTrailAreTheWorkedOnes(t *testing.T) {
	punch := []string{"radio E42:0.15:0.9:1", "tarp:0.2:0.9:2", "V1 glass pile:0.45:0.8:4", "other slots:0.1:0.8:3", "Medic 9:0.05:0.5:1", "bank path:0.05:0.4:6"}
	for _, c := range []struct{ ask, want string }{
		{"trail package=53.4 bearers=6 path=rough", "40.6 lb each on level ground, 54 lb where it is rough"},
		{"trail package=53.4 bearers=8 path=rough", "30.4 lb each on level ground, 40.5 lb where it is rough"},
		{"trail package=81.7 patient=190 path=rough", "45.3 lb each on level ground, 60.2 lb where it is rough"},
		{"trail package=81.7 bearers=8 path=rough", "34 lb each on level ground, 45.2 lb where it is rough"},
		{"trail package=53.4", "the patient's weight was not given: 190 lb"},
		{"trail package=1 path=good", "12 bearers and 3 more: leader, medic, scout = 15"},
		{"trail package=1 path=rough", "= 21"},
		{"trail package=1 path=good night=yes", "= 27"},
		{"water people=9 hours=5 rate=0.75", "34 qt, 74.8 lb (do not exceed 1.5 qt/h each)"},
		{"water people=9 hours=5", "heat not known"},
		{"water people=1 hours=1 rate=3", "the rate was held at 1.5"},
		{"walk km=2.4 climb=240", "time in: 40 to 55 min"},
		{"walk km=2.4 climb=240 night=yes", "time in: 50 to 70 min"},
		{"walk km=2.414016 path=good", "time out: 90 min to 3 h"},
		{"walk km=1.6", "15 to 31 on the way out"},
		{"match short=R41:crib:4 extra=P71:crib:4", "likely swap: 4 crib of R41 may be on P71"},
		{"match short=R41:crib:4 extra=P71:crib:4 extra=E42:crib:4", "fits as well: 0 to 4 crib of R41 may be on E42"},
		{"match short=R41:crib:4:4x4 extra=P71:crib:4:6x6 extra=E42:crib:1:4x4:read", "likely swap: 1 crib of R41 may be on E42"},
		{"match short=R41:crib:4 extra=R41:crib:4", "nothing fits"},
		{"clearup singles=30 kits=6 two=4 tens=4 people=4 open=punch", "about 15 to 25 min + 1 open search: punch"},
		{"restock mean=8 sd=7 lead=2 have=60 need=16 pack=100", "issue 16 of 16, back-order 0, left 44"},
		{"restock mean=8 sd=7 lead=2 have=60 need=16 pack=100", "order nothing; reorder point 32.33; full set 100"},
		{"restock mean=8 sd=7 lead=2 have=40 need=50 pack=10", "back-order 10, left 0"},
		{"restock mean=0.05 lead=3 have=1 need=1 pack=2", "few data, a hint only"},
		{"sets strut:1:4 foot:1:5 strap:1:6 pin:2:7", "3 usable sets; the next one wants 1 pin"},
	} {
		w := strings.Fields(c.ask)
		got, err := asked(w[0], w[1:]...)
		if flat := strings.Join(strings.Fields(got), " "); err != nil || !strings.Contains(flat, c.want) || !strings.Contains(flat, "formula:") || !strings.Contains(flat, "source:") {
			t.Errorf("%s: %v\n%s\nwant %s", c.ask, err, got, c.want)
		}
	}
	got, err := asked("search", punch...)
	if want := "look: 1. radio E42, 2. tarp, 3. V1 glass pile, 4. other slots, 5. Medic 9, 6. bank path"; err != nil || !strings.Contains(strings.Join(strings.Fields(got), " "), want) {
		t.Errorf("%v\n%s", err, got)
	}
	got, err = asked("search", append(punch[1:3:3], "bank:0.05:0.4:6:unsafe", "not=tarp")...)
	if want := "look: 1. V1 glass pile, 2. tarp (again), bank (not safe: not searched)"; err != nil || !strings.Contains(got, want) {
		t.Errorf("%v\n%s", err, got)
	}
}

func TestASumThatIsAskedWronglySaysSo(t *testing.T) {
	for _, c := range []struct{ ask, want string }{
		{"trail", "package= is missing"},
		{"trail package=x", "must be a number from 0"},
		{"trail package=NaN", "must be a number"},
		{"trail package=1 bearers=0", "must be a number from 1"},
		{"trail package=1 bearers=2.5", "must be a whole number"},
		{"trail package=1 path=steeep", "must be one of good, rough, steep"},
		{"trail package=1 package=2", "stands there twice"},
		{"trail package=1 wheel=yes", "there is no wheel="},
		{"trail package=1 six", `"six" is not understood`},
		{"trail package=", "something must stand behind package="},
		{"water hours=5", "people= is missing"},
		{"water people=9", "hours= is missing"},
		{"walk climb=3", "km= is missing"},
		{"search", "no place to look"},
		{"search tarp", "must be NAME:CHANCE:SIGHT:MINUTES"},
		{"search a:1:1:1 a:1:1:1", "a stands there twice"},
		{"search a:2:1:1", "the chance"},
		{"search a:1:1:1 not=b", "none of the places"},
		{"match short=A:b:1", "extra= is missing"},
		{"match short=A:b extra=A:b:1", "must be RIG:FAMILY:N"},
		{"match short=A:b:1:c:d extra=A:b:1", "must be RIG:FAMILY:N"},
		{"match short=A:b:1:read extra=C:b:1", "a word too many"},
		{"match short=A:b:1.5 extra=C:b:1", "whole number"},
		{"clearup people=0", "must be a number from 1"},
		{"clearup ten", "not understood"},
		{"restock lead=2", "mean= is missing"},
		{"restock mean=-1 lead=2", "must be a number from 0"},
		{"sets", "nothing that a set takes"},
		{"sets pin:2", "must be NAME:NEED:HAVE"},
		{"sets pin:0:4", "must be a number from 1"},
	} {
		w := strings.Fields(c.ask)
		got, err := asked(w[0], w[1:]...)
		var wrong misuse
		if !errors.As(err, &wrong) || !strings.Contains(string(wrong), c.want) || !strings.Contains(string(wrong), "try: tarpline sums help ") || got != "" {
			t.Errorf("%s: %v\n%s\nwant %s", c.ask, err, got, c.want)
		}
	}
}

func TestTheExamplesOfTheSumsWork(t *testing.T) {
	for _, s := range trailSums {
		w := strings.Fields(s.example)
		if got, err := asked(s.name, w[3:]...); err != nil || got == "" || w[2] != s.name || s.short == "" || s.words == "" {
			t.Errorf("%s: %v", s.example, err)
		}
	}
}
