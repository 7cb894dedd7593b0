package model_test

import (
	"testing"

	"github.com/google/uuid"
	"pgregory.net/rapid"

	"tarpside/model"
)

// Source: Kulkarni, Demirbas, Madappa, Avva, Leone, "Logical Physical Clocks",
// OPODIS 2014 (the rules from memory; the trace is self-made).
func TestAHybridClockFollowsItsRules(t *testing.T) {
	s := model.Stamp{Wall: 10, Device: "A"}
	for i, step := range []struct {
		heard *model.Stamp
		now   int64
		wall  int64
		count int
	}{
		{nil, 10, 10, 1},
		{nil, 9, 10, 2},
		{nil, 12, 12, 0},
		{&model.Stamp{Wall: 20, Count: 3}, 12, 20, 4},
		{&model.Stamp{Wall: 20, Count: 7}, 13, 20, 8},
		{nil, 21, 21, 0},
		{&model.Stamp{Wall: 15, Count: 9}, 19, 21, 1}, // an old one only counts on
		{&model.Stamp{Wall: 22, Count: 9}, 30, 30, 0}, // the wall is ahead of both
	} {
		if step.heard == nil {
			s = s.Tick(step.now)
		} else {
			s = s.Receive(*step.heard, step.now)
		}
		if want := (model.Stamp{Wall: step.wall, Count: step.count, Device: "A"}); s != want {
			t.Fatalf("step %d: %+v, want %+v", i, s, want)
		}
	}
}

func TestAStampIsLaterThanAllThatItsClockHasHeard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := model.Stamp{Device: rapid.SampledFrom([]string{"A", "C"}).Draw(t, "device")}
		for range rapid.IntRange(1, 30).Draw(t, "steps") {
			before, now := s, rapid.Int64Range(0, 20).Draw(t, "now")
			if rapid.Bool().Draw(t, "tick") {
				s = s.Tick(now)
			} else {
				m := model.Stamp{Wall: rapid.Int64Range(0, 20).Draw(t, "wall"), Count: rapid.IntRange(0, 5).Draw(t, "count"), Device: "B"}
				s = s.Receive(m, now)
				if s.Compare(m) <= 0 {
					t.Fatalf("%+v after hearing %+v", s, m)
				}
			}
			if s.Compare(before) <= 0 || s.Wall < now || s.Device != before.Device {
				t.Fatalf("%+v after %+v at %d", s, before, now)
			}
		}
	})
}

// Source: RFC 9562, appendix A.6.
func TestAnIdIsTheUUIDOfItsMoment(t *testing.T) {
	random := [10]byte{0x0C, 0xC3, 0x18, 0xC4, 0xDC, 0x0C, 0x0C, 0x07, 0x39, 0x8F}
	want := uuid.MustParse("017F22E2-79B0-7CC3-98C4-DC0C0C07398F")
	for _, high := range []byte{0, 0xff} { // the bits of version and variant are not the caller's
		random[0], random[2] = random[0]&0x0f|high&0xf0, random[2]&0x3f|high&0xc0
		if got := model.NewID(1645557742000, random); got != want || got.Version() != 7 || got.Variant() != uuid.RFC4122 {
			t.Errorf("%v, version %d", got, got.Version())
		}
	}
}

// entries are the n-th of their device, with what it had seen and its clock.
func entry(device string, n int, wall int64, seen model.Vector) model.Entry {
	v := seen.Clone()
	v[device] = n - 1
	e := model.Entry{Stamp: model.Stamp{Wall: wall, Device: device}, Seen: v}
	e.ID[0], e.ID[1] = device[0], byte(n)
	return e
}

func TestAnEntryIsFoldedAfterAllThatItsWriterHadSeen(t *testing.T) {
	for name, c := range map[string]struct {
		entries []model.Entry
		want    string
	}{
		"by the clock": {[]model.Entry{entry("A", 1, 5, nil), entry("B", 1, 3, nil), entry("A", 2, 4, nil)}, "B1 A1 A2"},
		"a clock that was ahead": {[]model.Entry{entry("A", 1, 900, nil), entry("B", 1, 3, nil), entry("B", 2, 7, model.Vector{"A": 1}), entry("C", 1, 8, nil)},
			"B1 C1 A1 B2"},
		"what is not here cannot be waited for": {[]model.Entry{entry("A", 7, 9, nil), entry("B", 4, 3, model.Vector{"A": 6, "C": 2})}, "B4 A7"},
		"vectors that contradict each other":    {[]model.Entry{entry("A", 1, 2, model.Vector{"B": 1}), entry("B", 1, 1, model.Vector{"A": 1})}, "B1 A1"},
	} {
		for _, order := range [][]int{{0, 1, 2, 3}, {3, 2, 1, 0}, {1, 3, 0, 2}} {
			var in []model.Entry
			for _, i := range order {
				if i < len(c.entries) {
					in = append(in, c.entries[i], c.entries[i])
				}
			}
			got := ""
			for _, e := range model.Sorted(in) {
				got += " " + e.Stamp.Device + string(rune('0'+e.N()))
			}
			if got != " "+c.want {
				t.Errorf("%s: %s, want %s", name, got, c.want)
			}
		}
	}
}
