package intake

import (
	"math"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/gauge"
	"gloamline/journal/units"
)

// How much of a gauge's file goes into the journal: enough for the rise before the night
// and its peak, and a day after it.
const (
	readingsBefore = 14 * 24 * time.Hour
	readingsAfter  = 24 * time.Hour
)

// gauge proposes the levels and the temperatures of the water about the night, one series a gauge. Readings that the journal
// has already are left out; those it has otherwise are a conflict.
func (m *maker) gauge(i int) {
	f := m.Sources[i].File
	levels := 0
	for _, s := range f.Gauge.Series {
		if (s.What == gauge.Level || s.What == gauge.Warmth) && len(s.Points) > 0 {
			levels++
			m.readings(i, s)
		}
	}
	if levels == 0 {
		m.remark(i, Remark{Kind: NoLevels})
		return
	}
	if f.Gauge.ZoneOpen {
		m.askGauge(i)
	}
}

func (m *maker) readings(i int, s gauge.Series) {
	start, end := m.Log.Night()
	lo, hi := start.Add(-readingsBefore), end.Add(readingsAfter)
	name := station(s)
	if name == "" { // so that two unnamed gauges are not taken for one
		name = strings.TrimSuffix(m.Sources[i].File.Name, filepath.Ext(m.Sources[i].File.Name))
	}
	unit, scale := fileUnit(s.Unit)
	if s.What == gauge.Warmth {
		unit = string(units.DegreeCelsius)
	}
	key := keyOf(m.Sources[i].File, string(s.What)+"/"+name+"/"+m.Log.Trip.Evening.String())
	out := journal.Series{ID: m.id(key), Source: m.Sources[i].Record.ID, Station: name, What: string(s.What), Unit: unit, Datum: s.Datum}
	inside := 0
	all := readings(s, scale)
	for _, r := range all {
		if r.At.Before(lo) || r.At.After(hi) {
			continue
		}
		if r.Value.Known() && m.inNight(r.At) {
			inside++
		}
		out.Points = append(out.Points, r)
	}
	if inside == 0 {
		m.remark(i, Remark{Kind: OtherNight, At: s.Points[0].At})
		return
	}
	if len(out.Points) < len(all) {
		m.remark(i, Remark{Kind: ReadingsCut, Count: len(out.Points), Of: len(all)})
	}
	p := Proposal{Key: key, Source: i, At: start, Confidence: 1, Ticked: true}
	if s.What == gauge.Level {
		p.River = m.river(m.Joined(out))
	}
	_, decided := m.past[key]
	if fresh, conflicts := m.fresh(out); !decided {
		if len(fresh.Points) == 0 && len(conflicts) == 0 {
			m.remark(i, Remark{Kind: NothingNew, Count: len(out.Points)})
			return
		}
		out, p.Conflicts = fresh, conflicts
	}
	p.Record = out
	m.add(p)
}

// fileUnit is the unit in which values are kept, the file's where the journal knows it,
// and what one of it is in metres.
func fileUnit(unit string) (string, float64) {
	switch u := units.LengthUnit(unit); u {
	case units.Millimetre, units.Centimetre, units.Inch, units.Foot:
		return unit, float64(units.LengthOf(1, u).M)
	}
	return "m", 1
}

// readings are points and missing ones together, in order of time, in the unit of the file
// and to its micrometre, which takes the error of converting there and back away.
func readings(s gauge.Series, scale float64) []journal.Reading {
	out := make([]journal.Reading, 0, len(s.Points)+len(s.Missing))
	k := 0
	for _, p := range s.Points {
		for ; k < len(s.Missing) && s.Missing[k].At.Before(p.At); k++ {
			out = append(out, journal.Reading{At: s.Missing[k].At, Flag: s.Missing[k].Flag})
		}
		v := math.Round(float64(p.Level)/scale*1e6) / 1e6
		if s.What == gauge.Warmth {
			v = p.Celsius
		}
		out = append(out, journal.Reading{At: p.At, Value: journal.Of(v), Flag: p.Flag})
	}
	for ; k < len(s.Missing); k++ {
		out = append(out, journal.Reading{At: s.Missing[k].At, Flag: s.Missing[k].Flag})
	}
	return out
}

// sameGauge reports whether two series are of one gauge, over one datum, so that readings of
// one can stand among those of the other.
func sameGauge(a, b journal.Series) bool {
	return a.What == b.What && a.Station == b.Station && a.Datum == b.Datum
}

// inUnit gives a series the unit of another, its values to the micrometre.
func inUnit(s journal.Series, unit string) journal.Series {
	if s.Unit == unit {
		return s
	}
	_, from := fileUnit(s.Unit)
	_, to := fileUnit(unit)
	s.Unit, s.Points = unit, slices.Clone(s.Points)
	for i, p := range s.Points {
		if v, ok := p.Value.Get(); ok {
			s.Points[i].Value = journal.Of(math.Round(v*from/to*1e6) / 1e6)
		}
	}
	return s
}

// fresh are the readings that the journal does not have yet, in the unit in which it keeps
// that gauge, and the series that say otherwise.
func (m *maker) fresh(s journal.Series) (journal.Series, []Conflict) {
	out := s
	var conflicts []Conflict
	for _, old := range m.series {
		if !sameGauge(old, s) {
			continue
		}
		out = inUnit(out, old.Unit)
		have := map[int64]journal.Reading{}
		for _, r := range old.Points {
			have[r.At.Unix()] = r
		}
		var rest, other []journal.Reading
		for _, r := range out.Points {
			was, ok := have[r.At.Unix()]
			switch {
			case !ok:
				rest = append(rest, r)
			case r.Value.Known() && !alike(r.Value, was.Value):
				other = append(other, r)
			}
		}
		if len(other) > 0 {
			conflicts = append(conflicts, Conflict{Kind: OtherReadings, Written: old, Readings: other, Ways: []Way{KeepWritten, TakeProposed}})
		}
		out.Points = rest
	}
	return out, conflicts
}

// alike reports whether two values are one but for what converting a unit leaves.
func alike(a, b journal.Field[float64]) bool {
	v, ok := a.Get()
	w, was := b.Get()
	return ok == was && math.Abs(v-w) < 2e-6
}

// Joined is what accepting readings makes of the journal's series of that gauge: theirs among
// those it has, by their moments. Without one it is a series of its own.
func (b *Batch) Joined(s journal.Series) journal.Series {
	i := slices.IndexFunc(b.series, func(old journal.Series) bool { return sameGauge(old, s) })
	if i < 0 {
		return s
	}
	return joined(b.series[i], s)
}

// joined puts readings among those of a series. Where both have one, the series' stands.
func joined(old, s journal.Series) journal.Series {
	have := map[int64]bool{}
	for _, r := range old.Points {
		have[r.At.Unix()] = true
	}
	old.Points = slices.Clone(old.Points)
	for _, r := range inUnit(s, old.Unit).Points {
		if !have[r.At.Unix()] {
			old.Points = append(old.Points, r)
		}
	}
	slices.SortStableFunc(old.Points, func(a, b journal.Reading) int { return a.At.Compare(b.At) })
	return old
}

// river is how the river stood at the gauge at the beginning and at the end of the fishing,
// with the settings for that gauge.
func (m *maker) river(s journal.Series) []gauge.State {
	c := m.Curve(s)
	from, to := m.fishing()
	return []gauge.State{c.At(from), c.At(to)}
}

// Curve is the course of a gauge's levels, with the settings given for that gauge.
func (b *Batch) Curve(s journal.Series) *gauge.Curve {
	set, ok := b.order.Gauges[s.Station]
	if !ok {
		set = gauge.Common()
	}
	return CurveOf(s, set)
}

// CurveOf is the course of levels as the journal keeps them.
func CurveOf(s journal.Series, set gauge.Settings) *gauge.Curve {
	_, scale := fileUnit(s.Unit)
	var pts []gauge.Point
	for _, r := range s.Points {
		if v, ok := r.Value.Get(); ok {
			pts = append(pts, gauge.Point{At: r.At, Level: units.Metres(v * scale), Flag: r.Flag})
		}
	}
	return gauge.NewCurve(pts, set)
}

// fishing is from the first run to the last, written or proposed; else from ten in the
// evening to two.
func (m *maker) fishing() (from, to time.Time) {
	more := func(a, b time.Time) {
		if from.IsZero() || a.Before(from) {
			from = a
		}
		if b.After(to) {
			to = b
		}
	}
	for _, r := range m.Log.Runs(journal.ID{}) {
		a, b := m.Log.RunSpan(r)
		more(a.Mid(), b.Mid())
	}
	for _, p := range m.Proposals {
		if p.Visit != nil {
			more(p.Visit.From, p.Visit.To)
		}
	}
	if from.IsZero() {
		start, _ := m.Log.Night()
		return start.Add(10 * time.Hour), start.Add(14 * time.Hour)
	}
	return from, to
}

// askGauge shows what the zone would do to the highest reading about the night.
func (m *maker) askGauge(i int) {
	f := m.Sources[i].File
	q := Question{Kind: GaugeZone, Sources: []int{i}}
	var top gauge.Point
	for _, s := range f.Gauge.Series {
		for _, p := range s.Points {
			if s.What == gauge.Level && (top.At.IsZero() || p.Level > top.Level) {
				top = p
			}
		}
	}
	used := time.UTC
	if f.zone != nil {
		used = f.zone
	}
	_, sec := top.At.In(used).Zone()
	wall := top.At.Add(time.Duration(sec) * time.Second)
	q.Peaks = []PeakAt{{"UTC", wall.UTC()}, {m.Log.Trip.Zone, inZone(wall.UTC(), m.zone, ByAnswer).At}}
	m.remark(i, Remark{Kind: ZoneAssumed, Zone: used.String()})
	if !f.zoneAsked {
		m.Questions = append(m.Questions, q)
	}
}
