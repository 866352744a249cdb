package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// What is said of nights side by side.

// AxisName names an axis on its button.
func AxisName(a timeline.Axis) string {
	return [...]string{"clock", "sunset", "trees grey", "moon", "light"}[a]
}

// AxisTitle heads a picture along an axis.
func AxisTitle(a timeline.Axis) string {
	return [...]string{
		"By the clock", "By the time from sunset", "By the time from trees grey",
		"By the time from the moon coming over the pool’s hill", "By the light at the pool",
	}[a]
}

// AxisTip says what an axis lays on top of each other.
func AxisTip(a timeline.Axis) string {
	return [...]string{
		"Lays the nights on the clock.", "Lays sunset on sunset.", "Lays the moment at which the trees go grey on itself.",
		"Lays the moment at which the moon comes over the hill, pool by pool, on itself.", "Lays the same light on the same light: falling, moonlit, and dawn.",
	}[a]
}

// PartName names a part of the light.
func PartName(p timeline.Part) string {
	return [...]string{"", "light falling", "moonlit", "dawn"}[p]
}

// AxisZero names what lies at zero of an axis; empty where nothing does.
func AxisZero(a timeline.Axis) string {
	return [...]string{"", "sunset", "trees grey", "moon over the hill", ""}[a]
}

// AxisTick labels a place on an axis of time: 23:00; −1 h, +30 min; 0 at its zero.
func AxisTick(a timeline.Axis, minutes float64) string {
	m := int(math.Round(minutes))
	if a == timeline.ClockAxis {
		m = ((m+12*60)%(24*60) + 24*60) % (24 * 60)
		return fmt.Sprintf("%02d:%02d", m/60, m%60)
	}
	sign := "+"
	if m < 0 {
		sign, m = "−", -m
	}
	switch {
	case m == 0:
		return "0"
	case m%60 == 0:
		return fmt.Sprintf("%s%d h", sign, m/60)
	case m < 60:
		return fmt.Sprintf("%s%d min", sign, m)
	}
	return fmt.Sprintf("%s%d:%02d", sign, m/60, m%60)
}

// LuxTick labels a decade of light; with its unit where it is the first.
func LuxTick(power int, unit bool) string {
	s := strconv.FormatFloat(math.Pow(10, float64(power)), 'f', max(0, -power), 64)
	if power >= 3 {
		s = strings.TrimSuffix(s, "000") + ",000"
	}
	if unit {
		s += " lx"
	}
	return s
}

// HoursTick labels the scale of hours: 2 h, 30 min.
func HoursTick(d time.Duration) string {
	if d == 0 {
		return "0 h"
	}
	return Duration(d)
}

// HoursScale says what the height of the shading is.
func HoursScale(a timeline.Axis) string {
	if a == timeline.LightAxis {
		return "shaded: rod-hours with a fly in the water, in each half decade of light"
	}
	return "shaded: rod-hours with a fly in the water, in each quarter of an hour"
}

// BinSpan says where a bin lies: 22:15 to 22:30; light falling, 0.1 to 0.32 lx.
func BinSpan(a timeline.Axis, b timeline.Bin) string {
	if a == timeline.LightAxis {
		return PartName(b.Part) + ", " + units.LuxRange(units.Lux(math.Pow(10, b.Lo)), units.Lux(math.Pow(10, b.Hi)))
	}
	return AxisTick(a, b.Lo) + " to " + AxisTick(a, b.Hi)
}

// BinTip says what lies in a bin, hours beside fish: 22:15 to 22:30: 3.4 rod-hours on 5
// nights; 2 landed, 1 lost. Numbers of uncertain fish have a decimal.
func BinTip(a timeline.Axis, b timeline.Bin) string {
	what := commas(expected(b.Landed, "landed", "landed"), expected(b.Lost, "lost", "lost"),
		expected(b.Touches, "touch", "touches"), expected(b.Shows, "follow or boil", "follows and boils"))
	if what == "" {
		what = "no fish"
	}
	hours := "nobody had a fly in the water"
	if b.Water > 0 {
		hours = RodHours(b.Water) + " on " + number(b.Nights, "night", "nights")
	}
	return BinSpan(a, b) + ": " + hours + "; " + what
}

func expected(v float64, one, many string) string {
	switch {
	case v < 0.005:
		return ""
	case math.Abs(v-math.Round(v)) < 0.005:
		return number(int(math.Round(v)), one, many)
	}
	return strconv.FormatFloat(v, 'f', 1, 64) + " " + many
}

// RodHours prints 27.2 rod-hours.
func RodHours(d time.Duration) string { return fmt.Sprintf("%.1f rod-hours", d.Hours()) }

// LaidTip says one night of several: c, Sat 4 July 2026, Home Beat: 7.9 rod-hours; 4
// landed.
func LaidTip(mark string, n *timeline.Night) string {
	return commas(mark, NightDate(n.Log.Trip.Evening), n.Beat.Name) + ": " + RodHours(n.Totals.InWater) + "; " + Tally(n.Totals)
}

// LaidFishTip says a fish of one night of several.
func LaidFishTip(mark string, f timeline.LaidFish, n *timeline.Night, p Prefs) string {
	return commas(mark, NightDate(n.Log.Trip.Evening)) + ": " + ContactTip(n, *f.Contact, p)
}

// LaidNumber is the number of a fish among those of several nights: its night's letter
// and its number of that night.
func LaidNumber(mark string, n *timeline.Night, c timeline.Contact) string {
	return mark + ContactNumber(n, c)
}

// ShortNight is a night in a narrow column: Sat 4 Jul; among nights of several years 4
// Jul 2026.
func ShortNight(d journal.Date, years bool) string {
	if years {
		return fmt.Sprintf("%d %.3s %d", d.Day, d.Month, d.Year)
	}
	return fmt.Sprintf("%.3s %d %.3s", d.Weekday(), d.Day, d.Month)
}

// ShortDate is a night in the list from which nights are picked: Sat 4 Jul 2026.
func ShortDate(d journal.Date) string {
	return fmt.Sprintf("%.3s %d %.3s %d", d.Weekday(), d.Day, d.Month, d.Year)
}

// HoursAndFish is a night's hours and fish in a narrow column: 6.2 h · 4.
func HoursAndFish(t timeline.Totals) string {
	return fmt.Sprintf("%s · %d", Hours(t.InWater), t.Landed)
}

// HoursAndFishHead heads that column.
func HoursAndFishHead() string { return "hours · landed" }

// JoinedTitle heads the same fish on two axes.
func JoinedTitle() string { return "The same fish by the clock and by the light" }

// StripsTitle heads one strip a night.
func StripsTitle() string { return "Night under night" }

// PoolsTitle heads the nights on one sketch.
func PoolsTitle() string { return "Pool by pool" }

// HoursScaleBoth says what the shading is under the two axes.
func HoursScaleBoth(a timeline.Axis) string {
	return "Shaded: rod-hours with a fly in the water, in each quarter of an hour above, in each half decade of light below."
}

// PoolsCaption says what stands at the pools' names.
func PoolsCaption(n *timeline.Night) string {
	return "At each pool: fish hooked, landed or not, and the rod-hours in which they came."
}

// PoolCount puts a pool's fish and hours at its name: Long Flat: 6 in 21.3 h.
func PoolCount(name string, s timeline.PoolSum) string {
	return fmt.Sprintf("%s: %d in %s", PoolName(name), s.Landed+s.Lost, Hours(s.Water))
}

// OnOtherBeats says what is on none of the pools drawn.
func OnOtherBeats(t timeline.Totals) string {
	return "On other beats: " + Tally(t) + " in " + RodHours(t.InWater) + ". Pick out one of their nights to see them."
}

// WithoutPool says how many fish have no place on the sketch.
func WithoutPool(n int) string {
	return number(n, "fish or touch has no pool and is not drawn.", "fish and touches have no pool and are not drawn.")
}

// Commas joins what is not empty by commas.
func Commas(parts ...string) string { return commas(parts...) }
