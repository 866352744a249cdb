package demo

import (
	"math"
	"time"

	"gloamline/journal"
)

// day is what one day brings: the river as it stands that evening, and the weather
// of which it is the consequence.
type day struct {
	rain    bool
	cloud   int // eighths
	kind    journal.CloudKind
	wind    int     // Beaufort
	from    float64 // degrees
	level   float64 // metres on the staff
	trend   journal.Trend
	clarity journal.Clarity
	water   float64 // °C
}

// A made-up spate river: rain lifts it within the day, and what was added falls by
// 1/e in fallDays. Rain under smallRain metres of rise only wets the anglers.
const (
	fallDays  = 1.9
	smallRain = 0.06
	lowLevel  = 0.31
)

// first is the day a season's river begins: long enough before the first night that
// old water has gone.
func first(year int) journal.Date { return journal.Date{Year: year, Month: time.April, Day: 25} }

// river makes the days of a season, one following from the other, up to the end of
// September. The days before the night of show are bent so that the river stands
// there as it was noted.
func (m *maker) river(year int) map[journal.Date]day {
	var rises []float64
	var dates []journal.Date
	for d := first(year); d.Month < time.October; d = d.Add(1) {
		dates = append(dates, d)
		rise := 0.0
		if m.r.Float64() < 0.16 {
			rise = min(0.6, 0.3*m.r.ExpFloat64())
		}
		rises = append(rises, rise)
	}
	if year == Show.Year {
		bend(dates, rises)
	}
	out := map[journal.Date]day{}
	excess, warmth, cloud := 0.0, 0.0, 4.0
	for i, d := range dates {
		rise := rises[i]
		excess = excess*math.Exp(-1/fallDays) + rise
		warmth = 0.8*warmth + 0.75*m.r.NormFloat64()
		cloud = 4 + 0.5*(cloud-4) + 2.6*m.r.NormFloat64()
		v := day{rain: rise > 0, level: lowLevel + excess, from: math.Mod(240+60*m.r.NormFloat64()+720, 360)}
		if v.rain {
			cloud = max(cloud, 6)
			warmth -= 0.6
		}
		v.cloud = int(math.Round(min(8, max(0, cloud))))
		v.kind = journal.CloudKinds[min(2, m.r.IntN(2)+v.cloud/8)]
		v.wind = min(5, int(math.Abs(m.r.NormFloat64())*1.6))
		v.trend, v.clarity = state(excess, rise)
		v.water = 12.2 + 4*math.Sin(math.Pi*float64(i+5)/170) + warmth - 1.5*min(excess, 0.6)
		out[d] = v
	}
	return out
}

// state names what the party finds: excess metres over low water, of which rise came
// today.
func state(excess, rise float64) (journal.Trend, journal.Clarity) {
	switch {
	case rise > smallRain && rise > excess/2:
		if excess > 0.2 {
			return journal.Rising, journal.ColouredWater
		}
		return journal.Rising, journal.TeaWater
	case excess > 0.45:
		return journal.FallingFlood, journal.ColouredWater
	case excess > 0.2:
		return journal.FallingFlood, journal.TeaWater
	case excess > 0.05:
		return journal.FiningDown, journal.ClearWater
	}
	return journal.NormalLevel, journal.ClearWater
}

// bend puts a spate three days before the night of show and none after, so high that
// the river has fallen to showLevel by then.
func bend(dates []journal.Date, rises []float64) {
	left := 0.0
	for i, d := range dates {
		left *= math.Exp(-1 / fallDays)
		if d == Show.Add(-3) {
			rises[i] = max(0, (showLevel-lowLevel)*math.Exp(3/fallDays)-left)
		} else if Show.Add(-6).Before(d) && d.Before(Show.Add(1)) {
			rises[i] = 0
		}
		left += rises[i]
	}
}
