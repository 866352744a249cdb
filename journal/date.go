package journal

import (
	"fmt"
	"time"
)

// Date is a day of the civil calendar without a zone. A night's date is that
// of its evening; the legal date of a fish is the local date of its instant.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// DateOf returns the local date of t in loc.
func DateOf(t time.Time, loc *time.Location) Date {
	y, m, d := t.In(loc).Date()
	return Date{y, m, d}
}

// EveningOf returns the date of the night that t belongs to: times before
// local noon belong to the evening before.
func EveningOf(t time.Time, loc *time.Location) Date {
	l := t.In(loc)
	d := DateOf(t, loc)
	if l.Hour() < 12 {
		return d.Add(-1)
	}
	return d
}

// Add returns the date n days later.
func (d Date) Add(n int) Date {
	y, m, day := time.Date(d.Year, d.Month, d.Day+n, 0, 0, 0, 0, time.UTC).Date()
	return Date{y, m, day}
}

// Before reports whether d comes before e.
func (d Date) Before(e Date) bool { return d.compare(e) < 0 }

func (d Date) compare(e Date) int {
	switch {
	case d.Year != e.Year:
		return d.Year - e.Year
	case d.Month != e.Month:
		return int(d.Month - e.Month)
	}
	return d.Day - e.Day
}

// IsZero reports whether the date is unset.
func (d Date) IsZero() bool { return d == Date{} }

// real reports whether the calendar has the day, within the years 1 to 9999.
func (d Date) real() bool { return d.Year >= 1 && d.Year <= 9999 && d.Add(0) == d }

// Weekday returns the day of the week.
func (d Date) Weekday() time.Weekday {
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC).Weekday()
}

// Night returns the instants of local noon on d and on the next day. In the
// night that clocks change the span is 23 or 25 hours (or a half more or less
// where a zone shifts by half an hour).
func (d Date) Night(loc *time.Location) (start, end time.Time) {
	start = time.Date(d.Year, d.Month, d.Day, 12, 0, 0, 0, loc).UTC()
	end = time.Date(d.Year, d.Month, d.Day+1, 12, 0, 0, 0, loc).UTC()
	return start, end
}

// String returns the date as 2026-07-04 (ISO 8601).
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day) }

// ParseDate reads a date as 2026-07-04.
func ParseDate(s string) (Date, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return Date{}, &Error{Op: "read date", Kind: Invalid, Field: "date", Err: fmt.Errorf("%q is not a date like 2026-07-04", s)}
	}
	y, m, day := t.Date()
	if d := (Date{y, m, day}); d.real() {
		return d, nil
	}
	return Date{}, &Error{Op: "read date", Kind: Invalid, Field: "date", Err: fmt.Errorf("%q lies before the year 1", s)}
}

// MarshalText writes the date as 2026-07-04, or nothing when unset.
func (d Date) MarshalText() ([]byte, error) {
	if d.IsZero() {
		return nil, nil
	}
	if !d.real() {
		return nil, invalid("date", "%s is not a day of the calendar", d)
	}
	return []byte(d.String()), nil
}

// UnmarshalText reads what MarshalText writes.
func (d *Date) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		*d = Date{}
		return nil
	}
	v, err := ParseDate(string(b))
	if err != nil {
		return err
	}
	*d = v
	return nil
}
