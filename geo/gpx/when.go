package gpx

import (
	"strings"
	"time"
)

// GPX 1.0 was published in 2002; the satellites' weeks are counted modulo 1024, and the
// count went round on 1999-08-22 and 2019-04-07 (IS-GPS-200, 20.3.3.3.1.1).
var (
	oldest   = time.Date(2002, 1, 1, 0, 0, 0, 0, time.UTC)
	rollOver = 1024 * 7 * 24 * time.Hour
)

// unset are the days at which clocks start that nobody set: the least 32-bit time,
// and the epochs of file systems, Unix, GPS and FIT.
var unset = []string{"1900-01-01", "1901-01-01", "1901-12-13", "1904-01-01", "1970-01-01", "1980-01-01", "1980-01-06", "1989-12-31", "2000-01-01"}

// parseTime reads an xsd:dateTime, as a schema asks for, and a few near misses: a
// blank for the T, small letters, an offset without colon. Without a zone it is UTC.
func parseTime(s string) (at time.Time, zoneless, ok bool) {
	if t, err := time.Parse(time.RFC3339Nano, s); err == nil {
		return t.UTC(), false, sensible(t)
	}
	s = strings.ToUpper(strings.TrimSpace(s))
	if len(s) > 40 {
		return time.Time{}, false, false
	}
	if len(s) > 10 && s[10] == ' ' {
		s = s[:10] + "T" + s[11:]
	}
	s = strings.ReplaceAll(s, " ", "")
	for _, layout := range []string{time.RFC3339Nano, "2006-01-02T15:04:05.999999999Z0700", "2006-01-02T15:04Z07:00"} {
		if t, err := time.Parse(layout, s); err == nil {
			return t.UTC(), false, sensible(t)
		}
	}
	for _, layout := range []string{"2006-01-02T15:04:05.999999999", "2006-01-02T15:04"} {
		if t, err := time.Parse(layout, s); err == nil {
			return t.UTC(), true, sensible(t)
		}
	}
	return time.Time{}, false, false
}

// sensible keeps out years that other parts of a program cannot write down again.
func sensible(t time.Time) bool { return t.Year() >= 1 && t.Year() <= 9998 && !t.IsZero() }

// clock looks for a time that cannot be right. now may be zero: then nothing is in the
// future.
func clock(t, now time.Time) (WarningKind, string) {
	const day = "2006-01-02"
	switch {
	case t.Year() < 1980:
		return ClockUnset, t.Format(day)
	case t.Before(oldest.AddDate(0, 0, -1)):
		for _, u := range unset {
			if t.Format(day) == u {
				return ClockUnset, u
			}
		}
		return OldClock, t.Add(rollOver).Format(day)
	case !now.IsZero() && t.After(now.Add(48*time.Hour)):
		return FutureClock, t.Format(day)
	}
	return "", ""
}
