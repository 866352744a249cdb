package season

import (
	"math"
	"slices"
	"time"

	"gloamline/timeline"
	"gloamline/timeline/tally"
)

// cutter cuts one rod's time. Instants are seconds since the night began.
//
// A run's hours are the integral of the probability that it was on; a rig's and a way's
// share of it that of their being on. All are piecewise linear, so the time is cut at each
// of their corners and at each edge of light, clock and moon, and Simpson's rule, exact for
// the cubic that three of them make, takes each piece.
type cutter struct {
	night  *timeline.Night
	rod    *timeline.RodNight
	edges  []float64 // of the open sky, in decades darker than the threshold, rising
	grey   float64   // log10 lux of the threshold
	marks  []float64 // corners that hold for the whole night, in order
	rigs   holder
	ways   holder
	hours  [2]float64 // local offset to UTC at both noons, seconds
	turn   float64    // when it changes
	since  float64    // when the trees went grey; infinite if never
	out    *RodDigest
	find   map[Cell]int32
	passed []float64 // when the open sky passes an edge
	open   *column   // of the open sky
	knife  *knife
}

// stretches is when and how likely a run was on.
type stretches struct {
	loose tally.Loose
	exact tally.Set // if not empty, these instead: the run was cut by a break
}

func (s stretches) span() (lo, hi time.Time) {
	if len(s.exact) > 0 {
		return s.exact[0].From, s.exact[len(s.exact)-1].To
	}
	if s.loose.From.Hi.After(s.loose.To.Lo) {
		m := s.loose.Middle()
		return m.From, m.To
	}
	return s.loose.From.Lo, s.loose.To.Hi
}

// waters returns for each run of a rod when it was on, so that the expected hours add
// up to the rod's time with a fly in the water: a run that a break or another run cuts into
// is taken between the middles of its ends.
func waters(r *timeline.RodNight) []stretches {
	out := make([]stretches, len(r.Runs))
	var before tally.Set
	for i, run := range r.Runs {
		l := tally.Loose{From: tally.Moment(run.From), To: tally.Moment(run.To)}
		middle := tally.Union(l.Middle())
		here := middle.Intersect(r.Water).Minus(before)
		before = before.Union(middle)
		out[i] = stretches{loose: l}
		if here.Length() != middle.Length() {
			out[i] = stretches{exact: here}
		}
	}
	return out
}

// weigher is a probability over time with its corners.
type weigher struct {
	at      func(float64) float64
	corners []float64
}

func (c *cutter) sec(t time.Time) float64 { return t.Sub(c.night.Start).Seconds() }

// weigherOf returns the probability that a run is on.
func (c *cutter) weigherOf(s stretches) weigher {
	if len(s.exact) > 0 || s.loose.Middle().Empty() {
		var w weigher
		for _, x := range s.exact {
			w.corners = append(w.corners, c.sec(x.From), c.sec(x.To))
		}
		ends := slices.Clone(w.corners)
		w.at = func(t float64) float64 {
			for i := 0; i+1 < len(ends); i += 2 {
				if t > ends[i] && t < ends[i+1] {
					return 1
				}
			}
			return 0
		}
		return w
	}
	l := s.loose
	a, b, d, e := c.sec(l.From.Lo), c.sec(l.From.Hi), c.sec(l.To.Lo), c.sec(l.To.Hi)
	if b > d { // in no certain order: as tally.Loose does
		m := l.Middle()
		a, d = c.sec(m.From), c.sec(m.To)
		b, e = a, d
	}
	return weigher{
		corners: []float64{a, b, d, e},
		at:      func(t float64) float64 { return ramp(t, a, b) - ramp(t, d, e) },
	}
}

// ramp is the probability that a moment between a and b has come by t; tally.Moment.By
// in seconds. At an exact moment it is half: pieces end there, and none lies across it.
func ramp(t, a, b float64) float64 {
	switch {
	case t > b:
		return 1
	case t < a:
		return 0
	case a == b:
		return 0.5
	}
	return (t - a) / (b - a)
}

// holder is a row of things each of which holds until the next begins, at uncertain
// moments. Thing i is on once it has begun and the next has not; a later one cannot have
// begun before an earlier one, so its spread is moved on where it would. The first is on from
// the beginning of its spread.
type holder struct{ lo, hi []float64 }

func (h *holder) add(lo, hi float64) {
	if n := len(h.lo); n == 0 {
		hi = lo
	} else {
		lo, hi = math.Max(lo, h.lo[n-1]), math.Max(hi, h.hi[n-1])
	}
	h.lo, h.hi = append(h.lo, lo), append(h.hi, hi)
}

// begun is the probability that thing i has begun by t.
func (h *holder) begun(i int, t float64) float64 {
	if i >= len(h.lo) {
		return 0
	}
	return ramp(t, h.lo[i], h.hi[i])
}

// on is the probability that thing i is on at t; -1 stands for none yet.
func (h *holder) on(i int, t float64) float64 {
	if i < 0 {
		return 1 - h.begun(0, t)
	}
	return h.begun(i, t) - h.begun(i+1, t)
}

// between returns which things may be on between a and b: from first to last.
func (h *holder) between(a, b float64) (first, last int) {
	first, last = -1, -1
	for i := range h.lo {
		if h.lo[i] < b {
			last = i
		}
		if h.hi[i] <= a {
			first = i
		}
	}
	return first, max(first, last)
}

// each calls f for every piece of time between lo and hi within which light, clock and
// moon of a curve stay in their bins and nothing has a corner.
func (c *cutter) each(curve *column, moon []timeline.Interval, extra []float64, lo, hi float64, f func(a, b float64, p piece)) {
	if !(lo < hi) {
		return
	}
	start, step := curve.start, curve.step
	n := len(curve.lux)
	cuts := c.knife.corner[:0]
	for _, m := range c.marks {
		if m > lo && m < hi {
			cuts = append(cuts, m)
		}
	}
	for _, m := range extra {
		if m > lo && m < hi {
			cuts = append(cuts, m)
		}
	}
	for _, m := range moon {
		for _, t := range [2]float64{c.sec(m.From), c.sec(m.To)} {
			if t > lo && t < hi {
				cuts = append(cuts, t)
			}
		}
	}
	first, last := int(math.Floor((lo-start)/step)), int(math.Ceil((hi-start)/step))
	y := func(i int) float64 { return curve.darker(min(max(i, 0), n-1)) }
	for i := first; i < last; i++ {
		t0 := start + float64(i)*step
		if t0 > lo && t0 < hi {
			cuts = append(cuts, t0)
		}
		y0, y1 := y(i), y(i+1)
		if y0 == y1 {
			continue
		}
		cross := func(edge float64) {
			if t := t0 + step*(edge-y0)/(y1-y0); t > lo && t < hi {
				cuts = append(cuts, t)
			}
		}
		a, b := math.Min(y0, y1), math.Max(y0, y1)
		for k := math.Ceil(a * decadeBins); k <= math.Floor(b*decadeBins); k++ {
			cross(k / decadeBins)
		}
	}
	cuts = c.crossings(cuts, lo, hi)
	cuts = append(cuts, hi)
	slices.Sort(cuts)
	a := lo
	for _, b := range cuts {
		if b-a < 1e-9 {
			continue
		}
		m := (a + b) / 2
		f(a, b, c.pieceAt(m, curve.at(m), c.open.at(m), moon))
		a = b
	}
	c.knife.corner = cuts[:0]
}

// crossings adds where the open sky passes an edge between lo and hi.
func (c *cutter) crossings(cuts []float64, lo, hi float64) []float64 {
	for _, t := range c.passed {
		if t > lo && t < hi {
			cuts = append(cuts, t)
		}
	}
	return cuts
}

// passes finds where the open sky passes each edge, over the whole of its curve.
func (c *cutter) passes() {
	o := c.open
	if len(o.lux) == 0 {
		return
	}
	y0 := o.darker(0)
	for i := 1; i < len(o.lux); i++ {
		y1 := o.darker(i)
		for _, e := range c.edges {
			if (y0 < e) != (y1 < e) {
				c.passed = append(c.passed, o.start+o.step*(float64(i-1)+(e-y0)/(y1-y0)))
			}
		}
		y0 = y1
	}
}

// piece is where a short stretch of time lies.
type piece struct {
	sky   int16
	band  Band
	night bool
	dark  int16
	clock int16
	since int8
	moon  bool
}

func (c *cutter) pieceAt(t, darker, open float64, moon []timeline.Interval) piece {
	p := piece{dark: darkBin(darker), band: bandOf(darker), night: open >= 0, since: NeverGrey, clock: c.quarter(t)}
	for _, e := range c.edges {
		if open >= e {
			p.sky++
		}
	}
	if !math.IsInf(c.since, 1) {
		p.since = -1
		if t >= c.since {
			p.since = int8(min(SinceMost, math.Floor((t-c.since)/3600)))
		}
	}
	for _, m := range moon {
		if t >= c.sec(m.From) && t < c.sec(m.To) {
			p.moon = true
		}
	}
	return p
}

// quarter is the quarter of an hour of the local clock, 0 at noon.
func (c *cutter) quarter(t float64) int16 {
	off := c.hours[0]
	if t >= c.turn {
		off = c.hours[1]
	}
	wall := math.Mod(float64(c.night.Start.Unix())+off+t-43200, 86400)
	if wall < 0 { // before 1970
		wall += 86400
	}
	return int16(math.Floor(wall / 900))
}

func (c *cutter) darker(lux float64) float64 { return darker(c.grey, lux) }

// darker is how many decades darker than a threshold, given by its logarithm, light is.
func darker(grey, lux float64) float64 { return grey - math.Log10(math.Max(lux, 1e-9)) }

// cell returns the index of a cell, made if it is new.
func (c *cutter) cell(run, rig, way int, p piece) int32 {
	key := Cell{Run: int16(run), Rig: int16(rig), Way: int16(way), Sky: p.sky, Band: p.band, Night: p.night, Since: p.since, Moon: p.moon}
	i, ok := c.find[key]
	if !ok {
		i = int32(len(c.out.Cells))
		c.find[key] = i
		c.out.Cells = append(c.out.Cells, key)
	}
	return i
}

// share calls f with how much of the weight of a piece falls to each rig and way, by
// Simpson's rule; the unit is that of the weight times seconds.
func (c *cutter) share(w func(float64) float64, a, b float64, f func(rig, way int, v float64)) {
	rig0, rig1 := c.rigs.between(a, b)
	way0, way1 := c.ways.between(a, b)
	// The ends are looked at from inside, where a step has its value on this side.
	const inside = 1e-6
	t := [3]float64{a + (b-a)*inside, (a + b) / 2, b - (b-a)*inside}
	k := [3]float64{(b - a) / 6, (b - a) * 4 / 6, (b - a) / 6}
	var on [3]float64
	for j := range t {
		on[j] = w(t[j]) * k[j]
	}
	if rig0 == rig1 && way0 == way1 {
		f(rig0, way0, on[0]+on[1]+on[2])
		return
	}
	for i := rig0; i <= rig1; i++ {
		for l := way0; l <= way1; l++ {
			v := 0.0
			for j := range t {
				if on[j] != 0 {
					v += on[j] * c.rigs.on(i, t[j]) * c.ways.on(l, t[j])
				}
			}
			if v > 0 {
				f(i, l, v)
			}
		}
	}
}
