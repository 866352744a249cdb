package gauge

import (
	"time"

	"gloamline/journal/units"
)

// Settings are what is known or chosen for one gauge. The figures of Common are common
// practice: no published standard for anglers was found.
type Settings struct {
	Gap    time.Duration // a longer silence is not bridged, and a slope does not cross it
	Stale  time.Duration // no class when the last reading is older
	Steady float64       // metres an hour; a slope beyond it is rising or falling
	Near   time.Duration // of a peak, for the class Peak
	Top    float64       // share of the rise from which it is still the peak
	Flood  float64       // least share of the rise left in a falling flood
	Fining float64       // least share left while fining down

	Prominence units.Metres  // least rise and fall of a peak
	RangeShare float64       // or this share of the range between the 5th and 95th percentile
	Apart      time.Duration // of two peaks nearer than this the higher counts
	Dip        float64       // so too when the dip between is less than this share of the rise
	Lookback   time.Duration // the rise begins at the lowest level this long before the peak

	Base      *units.Metres  // the level before the rise, where somebody knows it
	Lag       *time.Duration // from gauge to beat, downstream positive; nil: not known, not used
	Regulated bool           // melt or a dam makes it rise and fall daily: no class
}

// Common returns the settings in common use with quarter-hourly readings.
func Common() Settings {
	return Settings{
		Gap: time.Hour, Stale: 2 * time.Hour, Steady: 0.01,
		Near: time.Hour, Top: 0.9, Flood: 0.2, Fining: 0.05,
		Prominence: 0.10, RangeShare: 0.15, Apart: 6 * time.Hour, Dip: 0.3, Lookback: 10 * 24 * time.Hour,
	}
}
