package timeline

import (
	"cmp"
	"slices"
	"time"

	"gloamline/journal"
)

// What a series holds, as journal.SeriesKinds names it.
const (
	levelSeries  = "level"
	warmthSeries = "temperature"
)

// Gauge is what one gauge recorded of the level, or the water's temperature, in a night. It is the river at the
// gauge, in the unit and from the datum of its file, never the river at a pool.
type Gauge struct {
	Station, Unit, Datum string
	Points               []GaugePoint // in order of time; gaps are left out
}

// GaugePoint is one reading.
type GaugePoint struct {
	At    time.Time
	Value float64
}

// gaugesOf cuts the series of one kind to the night: by station, the one with more readings
// first where two have one name. A series that has fewer than least readings then is left
// out: of a level a single one shows no course.
func gaugesOf(all []journal.Series, what string, least int, from, to time.Time) []Gauge {
	var out []Gauge
	for _, s := range all {
		if s.What != what {
			continue
		}
		g := Gauge{Station: s.Station, Unit: s.Unit, Datum: s.Datum}
		for _, p := range s.Points {
			if v, ok := p.Value.Get(); ok && !p.At.Before(from) && !p.At.After(to) {
				g.Points = append(g.Points, GaugePoint{p.At, v})
			}
		}
		if len(g.Points) >= least {
			out = append(out, g)
		}
	}
	slices.SortStableFunc(out, func(a, b Gauge) int {
		return cmp.Or(cmp.Compare(a.Station, b.Station), cmp.Compare(len(b.Points), len(a.Points)))
	})
	return out
}
