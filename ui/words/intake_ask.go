package words

import (
	"fmt"
	"strings"
	"time"

	"gloamline/journal/gauge"
	"gloamline/journal/units"
)

// ClockLabel is the button for a device's clock: Clock of “Larrick Eye”: +1 min 32 s …
func ClockLabel(device string, offset time.Duration, set bool) string {
	name := "Clock"
	if device != "" {
		name = "Clock of “" + device + "”"
	}
	if !set {
		return name + ": as it is …"
	}
	return name + ": " + Offset(offset) + " …"
}

// ClockTitle, ClockHelp, ClockShownLabel, ClockTrueLabel, ClockOffsetLabel and the rest word the
// window in which a clock is put right.
func ClockTitle(device string) string {
	if device == "" {
		return "Put the clock right"
	}
	return "Put the clock of “" + device + "” right"
}
func ClockHelp(files int) string {
	return "One moment known twice tells by how much it was off: what it showed, and what it truly was. A photo of a watch's face tells it, and so does a fish both written down and photographed. It holds for " + number(files, "file", "files") + " of this device, and is stored with them."
}
func ClockShownLabel() string  { return "It showed" }
func ClockTrueLabel() string   { return "Truly it was" }
func ClockFishLabel() string   { return "Or it shows" }
func ClockNoFish() string      { return "no fish that is written" }
func ClockOffsetLabel() string { return "Added to its clock" }
func ClockSetButton() string   { return "Put right" }
func ClockAsIsButton() string  { return "Leave it as it is" }
func ClockHintButton(d time.Duration) string {
	return "Take " + Offset(d)
}
func ClockTrueHint() string   { return "23:12:40, or with its date" }
func ClockOffsetHint() string { return "said by the two, or typed: +1 min 32 s" }
func ClockFault() Told {
	return Told{"That is no time.", "Write 23:12, 23:12:40 or 2026-07-04 23:12:40."}
}
func OffsetFault() Told {
	return Told{"What is to be added to the clock is not known.", "Say what it truly was, or write +1 min 32 s, -1h or 0."}
}

// ParseOffset reads what Offset prints, and durations such as -1m32s.
func ParseOffset(s string) (time.Duration, bool) {
	t := strings.NewReplacer("−", "-", " ", "", "days", "d", "day", "d", "min", "m").Replace(strings.ToLower(strings.TrimSpace(s)))
	if t == "0" || t == "" {
		return 0, t == "0"
	}
	sign := time.Duration(1)
	if rest, ok := strings.CutPrefix(t, "-"); ok {
		sign, t = -1, rest
	}
	t = strings.TrimPrefix(t, "+")
	days := time.Duration(0)
	if d, rest, ok := strings.Cut(t, "d"); ok {
		var n int
		if _, err := fmt.Sscanf(d, "%d", &n); err != nil || n < 0 || n > 100000 {
			return 0, false
		}
		days, t = time.Duration(n)*24*time.Hour, rest
		if t == "" {
			return sign * days, true
		}
	}
	d, err := time.ParseDuration(t)
	if err != nil || d < 0 {
		return 0, false
	}
	return sign * (days + d), true
}

// ZoneChoice names a zone among those offered; ZoneOfNight and ZoneAssumed what is taken
// without an answer.
func ZoneChoice(name string) string {
	switch {
	case strings.HasPrefix(name, "Etc/GMT-"):
		return "UTC+" + strings.TrimPrefix(name, "Etc/GMT-")
	case strings.HasPrefix(name, "Etc/GMT+"):
		return "UTC−" + strings.TrimPrefix(name, "Etc/GMT+")
	}
	return name
}
func ZoneOfNight(name string) string { return "that of the night, " + name }
func ZoneAssumed() string            { return "not said; read as UTC" }

// ColumnsTitle and its kin word the window in which columns of a table are chosen.
func ColumnsTitle(name string) string { return "Columns of " + name }
func ColumnsHelp() string {
	return "The table does not say which column is which, or not surely. Choose what is the time and what the level."
}
func ColumnWhenLabel() string  { return "Date, or date and time" }
func ColumnClockLabel() string { return "Time of day, if apart" }
func ColumnLevelLabel() string { return "Level" }
func ColumnUnitLabel() string  { return "Unit of the level" }
func ColumnMonthLabel() string { return "The month stands before the day, as in 7/14/2026" }
func ColumnNone() string       { return "none" }
func ColumnRead() string       { return "Read so" }

// ColumnsWanted is why a table is not read.
func ColumnsWanted() Told {
	return Told{"A table needs a time and a level, in two columns.", "Choose a column for each."}
}

// LagText prints a lag as it is typed; LagFault is said of what is none.
func LagText(d time.Duration) string { return strings.TrimSuffix(d.String(), "0s") }
func LagFault() Told {
	return Told{"That is no lag.", "Write hours and minutes as 1h30m, up to seven days; or leave it empty."}
}

// ColumnName names a column: 2 level: 0.61, 0.60, 0.59.
func ColumnName(n int, c gauge.Column) string {
	s := fmt.Sprintf("%d %s", n, c.Name)
	if c.Name == "" {
		s = fmt.Sprintf("column %d", n)
	}
	if len(c.Samples) > 0 {
		s += ": " + strings.Join(c.Samples[:min(3, len(c.Samples))], ", ")
	}
	return s
}

// UnitChoices are the units a level may stand in.
var UnitChoices = []units.LengthUnit{units.Metre, units.Centimetre, units.Millimetre, units.Foot, units.Inch}

// UnitName is a unit as it is chosen; the empty one is that of the head.
func UnitName(u units.LengthUnit) string {
	if u == "" {
		return "as in the head, else metres"
	}
	return string(u)
}

// CourseTitle heads the course of a gauge.
func CourseTitle(station string) string {
	return strings.TrimSpace("River at the gauge "+station) + ", not at the pool"
}

// CourseLevel prints a level beside the curve.
func CourseLevel(v float64, unit string) string { return fmt.Sprintf("%.2f %s", v, unit) }

// CoursePeak names the peak: peak 4 July 13:00, 1.10 m.
func CoursePeak(at time.Time, v float64, unit string, zone *time.Location) string {
	return "peak " + at.In(zone).Format("2 Jan 15:04") + ", " + CourseLevel(v, unit)
}

// CourseTick labels the axis of a course of days.
func CourseTick(t time.Time, zone *time.Location) string {
	if l := t.In(zone); l.Hour() == 0 && l.Minute() == 0 {
		return l.Format("2 Jan")
	}
	return Clock(t, zone)
}

// GaugeSettingsTitle and its kin word the window with what is known of a gauge.
func GaugeSettingsTitle(station string) string { return strings.TrimSpace("Gauge " + station) }
func GaugeSettingsHelp() string {
	return "Only what you know yourself: without a lag the river is told at the gauge's own time. Nothing here says how the river stands at a pool."
}
func GaugeLagLabel() string       { return "Lag to the beat" }
func GaugeLagHint() string        { return "1h30m; empty if not known" }
func GaugeBaseLabel() string      { return "Level before the rise" }
func GaugeBaseHint() string       { return "0.45 m; empty to take the lowest before" }
func GaugeRegulatedLabel() string { return "A dam or melting snow makes it rise and fall each day" }
func GaugeSetButton() string      { return "Use this" }
