package gauge

import (
	"math"
	"time"

	"gloamline/journal/units"
)

// Class is what the river does at the gauge, by the trade's words.
type Class string

// The classes.
const (
	Rising       Class = "rising"
	AtPeak       Class = "peak"
	FallingFlood Class = "falling flood"
	FiningDown   Class = "fining down"
	Normal       Class = "normal"
	NoClass      Class = ""
)

// Why tells why there is no class.
type Why string

// The reasons.
const (
	NoReading   Why = "no reading near enough"
	NoSlope     Why = "too few readings for a slope"
	DailyWaves  Why = "the gauge is set as regulated or fed by melt"
	BaseUnknown Why = "the readings begin within the rise"
)

// State is the river at the gauge at one moment. What is not known is NaN for a number.
type State struct {
	At        time.Time // moment asked about, at the gauge
	Lagged    bool      // the lag was taken off
	Level     units.Metres
	Slope     float64 // metres an hour over the last hour
	Slope3    float64 // over the last three hours
	Peak      *Peak   // the last peak, or the next if it is no further than Settings.Near
	SincePeak time.Duration
	Drop      units.Metres // from the peak
	Left      float64      // share of the rise left: 1 at the peak, 0 at the level before
	Class     Class
	Why       Why // of NoClass
}

// At tells the state at the gauge for a moment at the beat; the two are the same unless
// the settings hold a lag. Later readings are known too: the peak is the true one.
func (c *Curve) At(t time.Time) State {
	nan := math.NaN()
	s := State{At: t, Level: units.Metres(nan), Slope: nan, Slope3: nan, Drop: units.Metres(nan), Left: nan}
	if c.set.Lag != nil {
		t = t.Add(-*c.set.Lag)
		s.At, s.Lagged = t, true
	}
	if h, ok := c.Level(t); ok {
		s.Level = h
	}
	if r, ok := c.Slope(t, time.Hour); ok {
		s.Slope = r
	}
	if r, ok := c.Slope(t, 3*time.Hour); ok {
		s.Slope3 = r
	}
	s.Peak = c.peakFor(t)
	if s.Peak != nil {
		s.SincePeak = t.Sub(s.Peak.At)
		s.Drop = s.Peak.Level - s.Level
		if s.Peak.HasBase && s.Peak.Level > s.Peak.Base {
			s.Left = float64((s.Level - s.Peak.Base) / (s.Peak.Level - s.Peak.Base))
		}
	}
	s.Class, s.Why = c.class(t, &s)
	return s
}

// peakFor is the last peak at or before t, or one that follows at once.
func (c *Curve) peakFor(t time.Time) *Peak {
	var last *Peak
	for i := range c.peaks {
		p := &c.peaks[i]
		if p.At.After(t.Add(c.set.Near)) {
			break
		}
		last = p
	}
	return last
}

// class follows the settings. Three cases that the rule in common use leaves open are
// decided here: near the top the last hour still rises or barely falls, so nearness and
// height decide, not the slope; a share above Settings.Top well after the peak counts as
// falling flood when it falls; and a level that stays up long after is fining down.
func (c *Curve) class(t time.Time, s *State) (Class, Why) {
	if c.set.Regulated {
		return NoClass, DailyWaves
	}
	i := c.last(t)
	if i < 0 || t.Sub(c.pts[i].At) > c.set.Stale {
		return NoClass, NoReading
	}
	if math.IsNaN(s.Slope) {
		return NoClass, NoSlope
	}
	r, after := s.Slope, s.Peak != nil && s.SincePeak >= 0
	h := float64(s.Level)
	if math.IsNaN(h) { // the moment lies just after a reading, before a silence
		h = float64(c.pts[i].Level)
	}
	left := s.Left
	if s.Peak != nil && s.Peak.HasBase && math.IsNaN(left) {
		left = (h - float64(s.Peak.Base)) / float64(s.Peak.Level-s.Peak.Base)
	}
	near := s.Peak != nil && s.SincePeak.Abs() <= c.set.Near
	switch {
	case near && (left > c.set.Top || math.IsNaN(left)):
		return AtPeak, ""
	case r > c.set.Steady:
		return Rising, ""
	case !after:
		return Normal, ""
	case math.IsNaN(left):
		return NoClass, BaseUnknown
	case left < c.set.Fining:
		return Normal, ""
	case r < -c.set.Steady && left >= c.set.Flood:
		return FallingFlood, ""
	}
	return FiningDown, ""
}
