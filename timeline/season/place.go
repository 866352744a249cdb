package season

import (
	"math"
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// newCutter makes ready to cut one rod's night.
func newCutter(n *timeline.Night, r *timeline.RodNight, d *Digest, out *RodDigest, knife *knife) *cutter {
	c := &cutter{night: n, rod: r, grey: math.Log10(float64(d.Grey.Lux)), since: math.Inf(1), out: out, knife: knife, find: knife.cells()}
	c.open = c.column(&n.Open)
	for _, e := range d.Edges {
		c.edges = append(c.edges, c.darker(e))
	}
	for _, s := range r.Rigs {
		c.rigs.add(c.sec(s.From.Lo), c.sec(s.From.Hi))
	}
	for _, s := range r.Ways {
		c.ways.add(c.sec(s.From.Lo), c.sec(s.From.Hi))
	}
	c.marks = slices.Concat(c.rigs.lo, c.rigs.hi, c.ways.lo, c.ways.hi)
	if !n.Grey.At.IsZero() {
		c.since = c.sec(n.Grey.At)
		for h := range SinceMost + 1 {
			c.marks = append(c.marks, c.since+float64(h)*3600)
		}
	}
	offset := func(t time.Time) float64 {
		_, s := t.In(n.Zone).Zone()
		return float64(s)
	}
	c.hours = [2]float64{offset(n.Start), offset(n.End)}
	c.turn = math.Inf(1)
	if c.hours[0] != c.hours[1] {
		if _, end := n.Start.In(n.Zone).ZoneBounds(); !end.IsZero() {
			c.turn = c.sec(end)
			c.marks = append(c.marks, c.turn)
		}
	}
	slices.Sort(c.marks)
	c.passes()
	return c
}

// light returns the curve of a pool and when the moon stands over it.
func (c *cutter) light(pool journal.ID) (*column, []timeline.Interval) {
	if p, ok := c.night.PoolNight(pool); ok {
		return c.column(&p.Curve), p.MoonOver
	}
	return c.open, c.night.Sky.MoonUp
}

// hours cuts the rod's runs into cells.
func (c *cutter) spend(on []stretches) {
	clock, dark := &c.knife.clock, &c.knife.dark
	for i, s := range on {
		lo, hi := s.span()
		curve, moon := c.light(c.rod.Runs[i].Run.Pool)
		w := c.weigherOf(s)
		c.each(curve, moon, w.corners, c.sec(lo), c.sec(hi), func(a, b float64, p piece) {
			c.share(w.at, a, b, func(rig, way int, v float64) {
				v /= 3600
				c.out.Cells[c.cell(i, rig, way, p)].Hours += v
				clock.add(p.clock, v)
				dark.add(p.dark, v)
				c.out.Hours += v
			})
		})
	}
	c.out.Clock, c.out.Dark = clock.bins(), dark.bins()
}

// moment stands for an instant, seconds.
const moment = 0.01

// place shares a fish out over the cells of its run: evenly over its spread as far as
// that lies within the run, by the probability that the run was on. A fly known rules out
// rigs that do not carry it.
func (c *cutter) place(f *Fish, on []stretches) {
	if f.Run < 0 {
		return
	}
	s := on[f.Run]
	from, to := s.span()
	if !from.Before(to) {
		return
	}
	curve, moon := c.light(c.rod.Runs[f.Run].Run.Pool)
	w := c.weigherOf(s)
	lo, hi := c.sec(f.At.Lo), c.sec(f.At.Hi)
	a, b := math.Max(lo, c.sec(from)), math.Min(hi, c.sec(to))
	if b-a < 1e-3 { // exact, or just outside: the nearest moment of the run, and what begins there
		a = math.Min(math.Max((lo+hi)/2, c.sec(from)), c.sec(to)-moment)
		b = a + moment
	}
	if !c.spread(f, curve, moon, w, a, b) {
		c.spread(f, curve, moon, weigher{at: func(float64) float64 { return 1 }}, a, b)
	}
}

// spread shares the fish out between a and b and reports whether anything was there.
func (c *cutter) spread(f *Fish, curve *column, moon []timeline.Interval, w weigher, a, b float64) bool {
	all := c.knife.shares[:0]
	fits, total := 0.0, 0.0
	c.each(curve, moon, w.corners, a, b, func(a, b float64, p piece) {
		c.share(w.at, a, b, func(rig, way int, v float64) {
			all = append(all, share{rig, way, p, v})
			total += v
			if c.carries(rig, f.Fly.Fly) {
				fits += v
			}
		})
	})
	c.knife.shares = all
	if !(total > 0) {
		return false
	}
	only := f.HasFly && fits > 0
	if only {
		total = fits
	}
	parts, clock, dark := c.knife.parts[:0], &c.knife.clock, &c.knife.dark
	for _, s := range all {
		if only && !c.carries(s.rig, f.Fly.Fly) {
			continue
		}
		v := s.v / total
		cell := c.cell(f.Run, s.rig, s.way, s.p)
		i := slices.IndexFunc(parts, func(p Part) bool { return p.Cell == cell })
		if i < 0 {
			i = len(parts)
			parts = append(parts, Part{Cell: cell})
		}
		parts[i].Share += v
		clock.add(s.p.clock, v)
		dark.add(s.p.dark, v)
	}
	slices.SortFunc(parts, func(a, b Part) int { return int(a.Cell - b.Cell) })
	f.In, c.knife.parts = slices.Clone(parts), parts
	f.Clock, f.Dark = clock.bins(), dark.bins()
	return true
}

// carries reports whether a rig has the fly on it.
func (c *cutter) carries(rig int, fly journal.ID) bool {
	return rig >= 0 && !fly.IsZero() && slices.ContainsFunc(c.rod.Rigs[rig].Flies, func(f timeline.FlyOn) bool { return f.Fly == fly })
}
