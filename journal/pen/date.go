package pen

import (
	"strings"
	"time"

	"gloamline/journal"
)

// dateShapes are the ways in which a date is read, day before month.
var dateShapes = []string{"2006-01-02", "2 January 2006", "2 Jan 2006", "2/1/2006", "2.1.2006", "January 2 2006", "Jan 2 2006"}

// yearless are those without a year: the latest such evening up to today is meant.
var yearless = []string{"2 January", "2 Jan", "2/1", "2.1."}

// ParseDate reads the date of an evening; today is that of this evening.
func ParseDate(text string, today journal.Date) (journal.Date, error) {
	s := strings.Join(strings.Fields(strings.ReplaceAll(strings.TrimSpace(text), ",", " ")), " ")
	switch strings.ToLower(s) {
	case "":
		return journal.Date{}, nil
	case "today", "tonight":
		return today, nil
	case "yesterday", "last night":
		return today.Add(-1), nil
	}
	var said time.Weekday = -1
	if first, rest, ok := strings.Cut(s, " "); ok {
		for d := time.Sunday; d <= time.Saturday; d++ {
			if len(first) >= 3 && strings.HasPrefix(strings.ToLower(d.String()), strings.ToLower(first)) {
				said, s = d, rest
			}
		}
	}
	for _, shape := range dateShapes {
		if t, err := time.Parse(shape, s); err == nil {
			y, m, day := t.Date()
			return weekdayOf(journal.Date{Year: y, Month: m, Day: day}, said)
		}
	}
	for _, shape := range yearless {
		// A leap year, so that 29 February can be read at all.
		if t, err := time.Parse(shape+" 2006", s+" 2004"); err == nil {
			d := journal.Date{Year: today.Year, Month: t.Month(), Day: t.Day()}
			for range 8 { // the next 29 February may be eight years back
				if d.Add(0) == d && !today.Before(d) {
					break
				}
				d.Year--
			}
			return weekdayOf(d, said)
		}
	}
	return journal.Date{}, wrongf("“%s” is not a date: write it such as 4 July 2026, 2026-07-04 or last night", text)
}

// weekdayOf refuses a date whose day of the week was said wrongly.
func weekdayOf(d journal.Date, said time.Weekday) (journal.Date, error) {
	if said >= 0 && d.Weekday() != said {
		return journal.Date{}, wrongf("%d %s %d is a %s, not a %s", d.Day, d.Month, d.Year, d.Weekday(), said)
	}
	return d, nil
}
