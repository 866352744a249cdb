package timeline

import (
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
)

// What a night noted of water that asks for care. Nothing here is a forecast, and nothing
// noted means nothing known.

// Warmest is the warmest water noted in a night, and when.
func (n *Night) Warmest() (t units.Temperature, at time.Time, ok bool) {
	for _, w := range n.Waters {
		if v, known := w.Entry.Temp.Get(); known && (!ok || v.C > t.C) {
			t, at, ok = v, w.At.Mid(), true
		}
	}
	return t, at, ok
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
