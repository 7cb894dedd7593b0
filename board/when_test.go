package board

import (
	"strings"
	"testing"
	"time"
)

func TestTimesAreReadAsRFC3339Says(t *testing.T) {
	for _, c := range []struct {
		text string
		unix int64
		nano int
	}{
		// The examples of RFC 3339 section 5.8. The seconds are by the
		// calendar: 1990-12-31 is day 7669 from 1970-01-01.
		{"1985-04-12T23:20:50.52Z", 482196050, 520_000_000},
		{"1996-12-19T16:39:57-08:00", 851042397, 0},
		{"1996-12-20T00:39:57Z", 851042397, 0},
		{"1990-12-31T23:59:60Z", 662687999, 0},
		{"1990-12-31T15:59:60-08:00", 662687999, 0},
		{"1937-01-01T12:00:27.87+00:20", -1041337173, 870_000_000},
		// Section 5.6: T and Z may be small, a fraction has any length.
		{"1996-12-20t00:39:57z", 851042397, 0},
		{"1996-12-20T00:39:57.1234567899999999Z", 851042397, 123_456_789},
		{"1996-12-20T00:39:57-00:00", 851042397, 0}, // section 4.3: the local offset is not known
		{"2000-02-29T00:00:00Z", 951782400, 0},
		{"1970-01-01T00:00:00+23:59", -86340, 0},
		{"2016-12-31T23:59:60.25Z", 1483228799, 250_000_000},
		{"1972-07-01T05:29:60+05:30", 78796799, 0},
	} {
		got, err := ParseTime(c.text)
		if err != nil || got.Unix() != c.unix || got.Nanosecond() != c.nano {
			t.Errorf("%s: %d.%09d, %v; want %d.%09d", c.text, got.Unix(), got.Nanosecond(), err, c.unix, c.nano)
		}
	}
}

func TestWhatIsNoTimeIsRefusedInWords(t *testing.T) {
	for _, text := range []string{
		"", "now", "18:50", "1985-04-12", "1985-04-12T23:20:50", // no offset
		"1985-04-31T00:00:00Z", "2100-02-29T00:00:00Z", "1990-12-31T24:00:00Z", // not in the calendar, not on the clock
		"1985-13-01T00:00:00Z", "1985-00-10T00:00:00Z", "1985-04-00T00:00:00Z", "1985-04-12T23:60:00Z", "1985-04-12T23:20:61Z",
		"1985-04-12 23:20:50Z", "1985-04-12T23:20:50 Z", " 1985-04-12T23:20:50Z", "1985-04-12T23:20:50Z\n",
		"85-04-12T23:20:50Z", "1985-4-12T23:20:50Z", "1985-04-12T3:20:50Z", "1985-04-12T23:20Z",
		"1985-04-12T23:20:50,52Z", "1985-04-12T23:20:50.Z", "1985-04-12T23:20:50+0800", "1985-04-12T23:20:50+8:00",
		"1985-04-12T23:20:50+24:00", "1985-04-12T23:20:50+08:60", "1985-04-12T23:20:50−08:00",
		"1990-12-30T23:59:60Z", "1990-12-31T23:58:60Z", "1990-12-31T23:59:60-08:00", "2026-11-25T18:50:60Z", // no leap second there
	} {
		got, err := ParseTime(text)
		if err == nil {
			t.Errorf("%q was read as %s", text, got.Format(time.RFC3339Nano))
		} else if !strings.Contains(err.Error(), "2026-11-25T18:50:00-05:00") {
			t.Errorf("%q: the error does not show how it is written: %v", text, err)
		}
	}
}

func FuzzATimeThatIsReadIsTheTimeThatIsWritten(f *testing.F) {
	for _, s := range []string{"1985-04-12T23:20:50.52Z", "1937-01-01T12:00:27.87+00:20", "1990-12-31T23:59:60Z", "0000-01-01T00:00:00Z"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := ParseTime(text)
		if err != nil {
			return
		}
		again, err := ParseTime(got.Format(time.RFC3339Nano))
		if err != nil || !again.Equal(got) {
			t.Fatalf("%q: %s, then %s, %v", text, got.Format(time.RFC3339Nano), again.Format(time.RFC3339Nano), err)
		}
	})
}
