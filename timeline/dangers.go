package timeline

import (
	"cmp"
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
)

// What a night noted of water that asks for care. Nothing here is a forecast, and nothing
// noted means nothing known.

// Warmest is the warmest water of a night, noted or recorded by a gauge, and when; station is the gauge's
// name, empty where it was noted. What was noted comes first of the two when they are alike.
func (n *Night) Warmest() (t units.Temperature, at time.Time, station string, ok bool) {
	for _, w := range n.Waters {
		if v, known := w.Entry.Temp.Get(); known && (!ok || v.C > t.C) {
			t, at, ok = v, w.At.Mid(), true
		}
	}
	for _, g := range n.Warmths {
		for _, p := range g.Points {
			if !ok || p.Value > float64(t.C) {
				t, at, station, ok = units.TemperatureOf(p.Value, units.DegreeCelsius), p.At, cmp.Or(g.Station, "without a name"), true
			}
		}
	}
	return t, at, station, ok
}

// Spate is the first moment at which the water was noted as rising or coloured.
func (n *Night) Spate() (trend journal.Trend, coloured bool, at time.Time, ok bool) {
	for _, w := range n.Waters {
		trend, coloured = w.Entry.Trend.Or(""), w.Entry.Clarity.Or("") == journal.ColouredWater
		if trend == journal.Rising || coloured {
			if trend != journal.Rising {
				trend = ""
			}
			return trend, coloured, w.At.Mid(), true
		}
	}
	return "", false, time.Time{}, false
}
