package pen

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// wall is what a person read off a clock.
type wall struct {
	hour, min, sec int
	half           half
	pick           pick
	zone           string // for pickZone, in capitals
}

// half says whether the half of the day is known.
type half uint8

const (
	givenHalf half = iota
	eitherHalf
)

// pick says which of two showings of a time is meant.
type pick uint8

const (
	pickNone pick = iota
	pickFirst
	pickSecond
	pickZone
)

// String prints the reading on a clock of 24 hours.
func (w wall) String() string {
	if w.sec != 0 {
		return fmt.Sprintf("%02d:%02d:%02d", w.hour, w.min, w.sec)
	}
	return fmt.Sprintf("%02d:%02d", w.hour, w.min)
}

var (
	wallShape  = regexp.MustCompile(`^(?:(first|second|earlier|later) +)?(\d{1,2})(?:([:.h]) ?(\d{2})(?:[:.](\d{2}))?)? ?(am|pm|a\.m\.|p\.m\.)?(?: +([a-z]{2,6}))?$`)
	wallDigits = regexp.MustCompile(`^(?:(first|second|earlier|later) +)?(\d{1,2})(\d{2}) ?(am|pm|a\.m\.|p\.m\.)?(?: +([a-z]{2,6}))?$`)
)

// parseWall reads one clock time, in lower case.
func parseWall(text string) (wall, error) {
	if w, ok := spoken(text); ok {
		return w, nil
	}
	which, hour, min, sec, ap, tail := "", "", "", "", "", ""
	switch plain := digitsAt(text); {
	case plain && len(text) == 4:
		hour, min = text[:2], text[2:]
	case plain && len(text) == 5:
		hour, min = text[:2], text[3:]
	case text == "midnight":
		return wall{}, nil
	case text == "":
		return wall{}, wrongf("say when it was, such as 23:12 or about 23:12")
	case wallDigits.MatchString(text):
		m := wallDigits.FindStringSubmatch(text)
		which, hour, min, ap, tail = m[1], m[2], m[3], m[4], m[5]
	case wallShape.MatchString(text):
		m := wallShape.FindStringSubmatch(text)
		which, hour, min, sec, ap, tail = m[1], m[2], m[4], m[5], m[6], m[7]
		if min == "" && ap == "" {
			return wall{}, wrongf("“%s” is no full time: write %s:00 or %s00", text, hour, hour)
		}
	default:
		return wall{}, wrongf("“%s” is not a time: write it such as 23:12, about 23:12 or 23:05-23:20", text)
	}
	w := wall{hour: number(hour), min: number(min), sec: number(sec)}
	if w.hour == 24 && w.min == 0 && w.sec == 0 {
		w.hour = 0
	}
	if w.hour > 23 || w.min > 59 || w.sec > 59 {
		return wall{}, wrongf("“%s” is not a time of day", text)
	}
	switch {
	case ap != "" && (w.hour < 1 || w.hour > 12):
		return wall{}, wrongf("“%s” mixes the clocks of 12 and 24 hours", text)
	case strings.HasPrefix(ap, "p"):
		w.hour = w.hour%12 + 12
	case strings.HasPrefix(ap, "a"):
		w.hour %= 12
	case which == "" && tail == "" && (len(hour) == 1 && w.hour >= 6 || w.hour >= 10 && w.hour <= 12):
		w.half = eitherHalf
	}
	switch {
	case which == "first" || which == "earlier":
		w.pick = pickFirst
	case which != "":
		w.pick = pickSecond
	case tail == "first" || tail == "second":
		w.pick = map[string]pick{"first": pickFirst, "second": pickSecond}[tail]
	case tail != "":
		w.pick, w.zone = pickZone, strings.ToUpper(tail)
	}
	return w, nil
}

// digitsAt knows 2241, 22:41 and 22.41 without a pattern: most times are so written.
func digitsAt(s string) bool {
	if len(s) != 4 && (len(s) != 5 || s[2] != ':' && s[2] != '.') {
		return false
	}
	for i := 0; i < len(s); i++ {
		if (i != 2 || len(s) == 4) && !digit(s[i]) {
			return false
		}
	}
	return true
}

// number reads digits that a pattern has checked; nothing is 0.
func number(s string) int {
	n, _ := strconv.Atoi(s)
	return n
}

// clockText is the local time of an instant, with seconds if it has any.
func clockText(t time.Time, zone *time.Location) string {
	l := t.In(zone)
	return wall{hour: l.Hour(), min: l.Minute(), sec: l.Second()}.String()
}

// zoneName is the abbreviation of the zone, empty where it is only a number.
func zoneName(t time.Time) string {
	name, _ := t.Zone()
	if strings.ContainsAny(name, "+-0123456789") {
		return ""
	}
	return name
}

// wrong is a fault that is said at a field in one sentence.
type wrong struct{ s string }

// Error implements error.
func (w wrong) Error() string { return w.s }

func wrongf(format string, a ...any) error { return wrong{fmt.Sprintf(format, a...)} }
