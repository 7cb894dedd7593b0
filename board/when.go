package board

import (
	"fmt"
	"regexp"
	"time"
)

// rfc3339 is the grammar of RFC 3339 section 5.6: the T and the Z may be
// small, the fraction has any number of digits.
var rfc3339 = regexp.MustCompile(`^(\d{4}-\d\d-\d\d)[Tt]([01]\d|2[0-3]):([0-5]\d):([0-5]\d|60)(\.\d+)?([Zz]|[+-]([01]\d|2[0-3]):[0-5]\d)$`)

// ParseTime reads a date and time as RFC 3339 says, "2026-11-25T18:50:00-05:00".
// Second 60 is taken where a leap second may be, at the end of a month in
// UTC, and is second 59 of that minute. Digits past the nanosecond are cut.
// The error says what was wrong and how it is written.
func ParseTime(text string) (time.Time, error) {
	bad := func(why string) (time.Time, error) {
		return time.Time{}, fmt.Errorf("%q %s; a date and time is written 2026-11-25T18:50:00-05:00, or with Z for UTC", text, why)
	}
	m := rfc3339.FindStringSubmatch(text)
	if m == nil {
		return bad("is no date and time")
	}
	date, hour, minute, second, fraction, zone := m[1], m[2], m[3], m[4], m[5], m[6]
	leap := second == "60"
	if leap {
		second = "59"
	}
	if zone == "z" {
		zone = "Z"
	}
	if len(fraction) > 10 {
		fraction = fraction[:10]
	}
	t, err := time.Parse(time.RFC3339Nano, date+"T"+hour+":"+minute+":"+second+fraction+zone)
	if err != nil {
		return bad("is no day of the calendar")
	}
	if u := t.UTC(); leap && (u.Hour() != 23 || u.Minute() != 59 || u.AddDate(0, 0, 1).Day() != 1) {
		return bad("has a second 60 where there is no leap second")
	}
	return t, nil
}
