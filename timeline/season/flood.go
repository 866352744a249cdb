package season

import (
	"cmp"
	"slices"
	"time"

	"gloamline/journal"
)

// Floods are the rises that a river's gauge recorded, for hours since the peak.
type Floods struct {
	Station  string
	From, To time.Time // what the gauge recorded
	Peaks    []time.Time
}

// A flood is a rise of the level by floodRise or more; it has peaked when the level has
// fallen by floodFall from its highest. Common practice, without a source. A peak longer ago
// than floodOver has no more to say.
const (
	floodRise = 0.20 // metres
	floodFall = 0.10
	floodOver = 10 * 24 * time.Hour
	floodGap  = 6 * time.Hour // what a gauge may miss
)

// metresPer are the units in which gauges give levels.
var metresPer = map[string]float64{"m": 1, "mAOD": 1, "mASD": 1, "cm": 0.01, "mm": 0.001, "ft": 0.3048}

// floodsOf finds the peaks in the first gauge of level by name whose unit is known; nil if
// there is none.
func floodsOf(series []journal.Series) *Floods {
	series = slices.Clone(series)
	slices.SortStableFunc(series, func(a, b journal.Series) int {
		return cmp.Or(cmp.Compare(a.Station, b.Station), cmp.Compare(len(b.Points), len(a.Points)))
	})
	for _, s := range series {
		k, ok := metresPer[s.Unit]
		if s.What != "level" || !ok {
			continue
		}
		out := &Floods{Station: s.Station}
		var low, high float64
		var at time.Time
		rising, begun := false, false
		for _, p := range s.Points {
			v, ok := p.Value.Get()
			if !ok {
				continue
			}
			v *= k
			if !begun {
				out.From, low, begun = p.At, v, true
			}
			out.To = p.At
			switch {
			case !rising && v < low:
				low = v
			case !rising && v >= low+floodRise:
				rising, high, at = true, v, p.At
			case rising && v > high:
				high, at = v, p.At
			case rising && v <= high-floodFall:
				out.Peaks = append(out.Peaks, at)
				rising, low = false, v
			}
		}
		if begun {
			return out
		}
	}
	return nil
}

// since says how long ago the last peak was at t; none: none within floodOver. known is
// false if the gauge does not reach so far.
func (f *Floods) since(t time.Time) (ago time.Duration, none, known bool) {
	if f == nil || t.IsZero() || t.Before(f.From) || t.After(f.To.Add(floodGap)) {
		return 0, false, false
	}
	for _, p := range slices.Backward(f.Peaks) {
		if !p.After(t) && t.Sub(p) <= floodOver {
			return t.Sub(p), false, true
		}
	}
	return 0, true, t.Sub(f.From) >= floodOver
}

// peakRows are the classes of hours since the peak.
var peakRows = []string{"peak_0_12_h", "peak_12_24_h", "peak_1_2_d", "peak_2_4_d", "peak_4_10_d", "no_peak_10_d"}

// peakRow is the class of a night, -1 if it is not known.
func (f *Floods) peakRow(d *Digest) int {
	ago, none, known := f.since(d.Fished)
	switch {
	case !known:
		return -1
	case none:
		return 5
	}
	for i, h := range [4]float64{12, 24, 48, 96} {
		if ago.Hours() < h {
			return i
		}
	}
	return 4
}
