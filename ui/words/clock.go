package words

import (
	"fmt"
	"time"

	"gloamline/journal"
)

// Clock prints the local time to the minute, 23:15. Where the clock of that night
// shows the time twice its offset follows: 01:30 UTC+1.
func Clock(t time.Time, zone *time.Location) string {
	l := t.In(zone)
	s := l.Format("15:04")
	if repeats(l) {
		s += " " + offset(l)
	}
	return s
}

// repeats reports whether the clock shows the same reading at another moment, as
// when summer time ends.
func repeats(l time.Time) bool {
	_, here := l.Zone()
	for _, far := range []time.Duration{-3 * time.Hour, 3 * time.Hour} {
		_, there := l.Add(far).Zone()
		again := l.Add(time.Duration(here-there) * time.Second)
		if _, o := again.Zone(); there != here && o == there {
			return true
		}
	}
	return false
}

// offset prints UTC, UTC+1 or UTC+12:45.
func offset(l time.Time) string {
	_, sec := l.Zone()
	if sec == 0 {
		return "UTC"
	}
	sign := "+"
	if sec < 0 {
		sign, sec = "-", -sec
	}
	if m := sec / 60 % 60; m != 0 {
		return fmt.Sprintf("UTC%s%d:%02d", sign, sec/3600, m)
	}
	return fmt.Sprintf("UTC%s%d", sign, sec/3600)
}

// ClockSpan prints 22:35–23:10, or one time when both print alike.
func ClockSpan(from, to time.Time, zone *time.Location) string {
	a, b := Clock(from, zone), Clock(to, zone)
	if a == b && to.Sub(from) < time.Hour {
		return a
	}
	return a + "–" + b
}

// Moment prints a moment as it is known: 22:52, about 23:00, 23:20–23:40, during the
// run, after 23:52; untimed where only the night is known.
func Moment(w journal.When, s journal.Spread, zone *time.Location) string {
	switch w.Kind {
	case journal.AboutTime:
		return about + Clock(s.Mid(), zone)
	case journal.WithinTime:
		return "during the run"
	case journal.BeforeTime:
		return "before " + Clock(s.Hi, zone)
	case journal.AfterTime:
		return "after " + Clock(s.Lo, zone)
	}
	if s.Hi.Sub(s.Lo) >= wholeNight {
		return "untimed"
	}
	return ClockSpan(s.Lo, s.Hi, zone)
}

// wholeNight is a span that says of a moment only which night it was: noon to noon, an
// hour less where clocks go forward.
const wholeNight = 23 * time.Hour

// End prints an end whose spread is known: 23:10, or about 23:10 when it is spread.
func End(s journal.Spread, zone *time.Location) string {
	if Clock(s.Lo, zone) == Clock(s.Hi, zone) {
		return Clock(s.Lo, zone)
	}
	return about + Clock(s.Mid(), zone)
}

const about = "about "

// WallWarning says in a sentence what is in doubt about a typed time.
func WallWarning(w journal.Warning) string {
	switch w {
	case journal.WallTwice:
		return "The clock showed this time twice that night; the earlier one was taken."
	case journal.WallSkipped:
		return "The clock skipped this time that night; it was taken to be an hour later."
	}
	return ""
}

// Duration prints 35 min, 2 h, 1 h 5 min; under half a minute "no time".
func Duration(d time.Duration) string {
	m := int(d.Round(time.Minute) / time.Minute)
	switch {
	case m <= 0:
		return "no time"
	case m < 60:
		return fmt.Sprintf("%d min", m)
	case m%60 == 0:
		return fmt.Sprintf("%d h", m/60)
	}
	return fmt.Sprintf("%d h %d min", m/60, m%60)
}

// Hours prints hours with one decimal: 10.2 h.
func Hours(d time.Duration) string { return fmt.Sprintf("%.1f h", d.Hours()) }
