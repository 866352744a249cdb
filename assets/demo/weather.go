package demo

import (
	"math"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline/sky"
)

// conditions of one night: the made-up day, and sun and moon as they are.
type conditions struct {
	day
	later   int // cloud in the second half of the night, eighths
	mist    bool
	grey    time.Time
	dawn    time.Time // the sun as low again as at grey
	moonAlt func(time.Time) float64
}

// greySun is how deep the sun stands when a clear sky gives 0.3 lx, where the trees
// go grey (package light).
const greySun = -8.15

// sky sets a night of the day under the sky of its date.
func (m *maker) sky(n *night, d day) conditions {
	c := conditions{day: d, later: min(8, max(0, d.cloud+m.r.IntN(5)-2))}
	c.mist = d.wind == 0 && d.cloud < 4 && m.r.IntN(2) == 0
	start, end := n.trip.Evening.Night(n.loc)
	c.grey, c.dawn = start.Add(11*time.Hour), end.Add(-9*time.Hour)
	c.moonAlt = func(time.Time) float64 { return -90 }
	at := n.shape.Place()
	place, err := sky.NewPlace(units.Degrees(at.Lat), units.Degrees(at.Lon))
	if err != nil {
		return c // the beats of the demo have places; see its tests
	}
	span := sky.NewSpan(start, end)
	c.moonAlt = func(t time.Time) float64 { return float64(span.At(t, place).Moon.Alt) }
	dark := false
	for t := start.Add(5 * time.Hour); t.Before(end.Add(-4 * time.Hour)); t = t.Add(time.Minute) {
		low := span.At(t, place).Sun.Alt < greySun
		if low && !dark {
			c.grey = t
		}
		if dark && !low {
			c.dawn = t
			break
		}
		dark = low
	}
	return c
}

// logSky notes what a party sees of river, air and sky.
func (m *maker) logSky(n *night, c conditions, start, stop time.Time) {
	early := start.Add(-10 * time.Minute)
	w := journal.Water{
		Head:  n.headAt(none, journal.Exact(early)),
		Level: journal.Of(units.Length{M: units.Metres(math.Round(c.level*100) / 100), Unit: units.Metre}),
		Trend: journal.Of(c.trend), Clarity: journal.Of(c.clarity),
	}
	if m.r.IntN(6) > 0 {
		w.Temp = temp(math.Round(c.water*10) / 10)
	}
	n.add(w)
	if c.rain || m.r.IntN(3) > 0 {
		a := journal.Weather{Head: n.headAt(none, journal.Exact(early)), Wind: journal.Of(c.wind), Mist: journal.Of(false), Air: temp(math.Round(c.water - 2 + m.r.NormFloat64()))}
		if c.wind > 0 {
			a.From = journal.Of(units.Degrees(math.Mod(math.Round(c.from/45)*45, 360)))
		}
		if c.rain {
			a.Rain = journal.Of(true)
		}
		n.add(a)
	}
	half := start.Add(stop.Sub(start) / 2).Truncate(5 * time.Minute)
	if m.r.IntN(9) > 0 { // now and then nobody looked up
		n.add(m.skyAt(n, c, journal.Exact(early), early, c.cloud))
		if c.later != c.cloud || m.r.IntN(3) == 0 {
			n.add(m.skyAt(n, c, journal.About(half, 15*time.Minute), half, c.later))
		}
	}
	if c.mist {
		n.add(journal.Weather{Head: noted(n.headAt(none, journal.About(half.Add(20*time.Minute), 0)), "Off the water, knee high."), Mist: journal.Of(true), Air: temp(math.Round(c.water - 6 + m.r.NormFloat64()))})
	}
	if m.r.IntN(5) < 3 {
		off := time.Duration(m.r.NormFloat64() * 4 * float64(time.Minute))
		if c.cloud >= 6 {
			off -= 14 * time.Minute
		}
		if at := c.grey.Add(off).Truncate(time.Minute); at.After(start.Add(-15*time.Minute)) && at.Before(stop) {
			n.add(journal.Sky{Head: n.headAt(n.trip.Rods[0].ID, journal.Exact(at)), TreesGrey: true})
		}
	}
}

// skyAt is a look at the sky; the moon is named when it stands clear of low hills.
func (m *maker) skyAt(n *night, c conditions, w journal.When, at time.Time, cloud int) journal.Sky {
	s := journal.Sky{Head: n.headAt(none, w), Cloud: journal.Of(cloud)}
	if cloud > 0 {
		s.CloudKind = journal.Of(c.kind)
	}
	if c.moonAlt(at) > 12 {
		seen := journal.MoonClear
		switch {
		case cloud == 8:
			seen = journal.MoonBehind
		case cloud > 4:
			seen = journal.MoonVeiled
		}
		s.Moon = journal.Of(seen)
	}
	return s
}

// spot is the place on the sketch that share of the way down a pool and side of the
// way from its middle to the edge, positive to the true left.
func (m *maker) spot(b journal.Beat, pool journal.ID, share, side float64) journal.Field[journal.Place] {
	lay := m.layouts[b.ID]
	for _, p := range lay.Pools {
		if p.Pool.ID != pool {
			continue
		}
		along := p.Length() * units.Metres(share)
		edge, right, ok := p.Across(along)
		if !ok {
			break
		}
		if side < 0 {
			edge = right
		}
		mid, k := p.At(along, 0), units.Metres(math.Abs(side))
		at := geo.Point{X: mid.X + (edge.X-mid.X)*k, Y: mid.Y + (edge.Y-mid.Y)*k}
		return journal.Of(lay.Place(at))
	}
	return journal.Field[journal.Place]{}
}
