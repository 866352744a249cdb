package gauge

import (
	"slices"
	"time"

	"gloamline/journal/units"
)

// Peak is the top of a rise. Where and how high is that of the highest reading there, so
// that smoothing does not shave it.
type Peak struct {
	At       time.Time
	Level    units.Metres
	Base     units.Metres // level before the rise
	HasBase  bool         // false: the readings begin within the rise, and no base is set
	NearGap  bool         // a silence stands beside it: the true top may lie in it
	LastOnly bool         // the readings end before the fall is as deep as a peak asks for

	i int // in the smoothed series
}

// findPeaks walks along the smoothed series: a peak is a top before which the level rose,
// and after which it fell, by the least prominence. At the two ends, where readings begin
// or stop, what can be seen counts: a rise that began before them is not known to be too
// small, nor a fall that goes on after them.
func (c *Curve) findPeaks() []Peak {
	least := max(float64(c.set.Prominence), c.set.RangeShare*c.spread())
	const sign = 0.01 // metres; less than this at an end may be a ripple
	var found []int
	h := c.smooth
	top, low := 0, 0 // of the present rise; lowest since the last peak
	rising := true
	begun := false // the rise is as large as asked for, or began before the readings
	for i := range h {
		if rising && !begun && h[i] <= h[low] {
			low = i
		}
		switch {
		case rising && h[i] > h[top]:
			top = i
			begun = begun || h[top]-h[low] >= least
		case rising && h[top]-h[i] >= least:
			if begun || h[top]-slices.Min(h[:top+1]) >= sign {
				found = append(found, top)
			}
			rising, low = false, i
		case !rising && h[i] < h[low]:
			low = i
		case !rising && h[i]-h[low] >= least:
			rising, top, begun = true, i, true
		}
	}
	open := -1
	if n := len(h); rising && begun && n > 0 && h[top]-h[n-1] >= sign {
		open = top
		found = append(found, top)
	}
	var out []Peak
	for _, i := range found {
		p := c.peak(i)
		p.LastOnly = i == open
		for len(out) > 0 && c.one(out[len(out)-1], p) {
			if out[len(out)-1].Level >= p.Level {
				p = out[len(out)-1]
			}
			out = out[:len(out)-1]
		}
		out = append(out, p)
	}
	for i := range out {
		out[i].setBase(c, least)
	}
	return out
}

// peak takes the highest reading beside the smoothed top.
func (c *Curve) peak(i int) Peak {
	best := i
	last := i
	for last+1 < len(c.smooth) && c.smooth[last+1] == c.smooth[i] {
		last++
	}
	for k := max(0, i-2); k <= min(len(c.pts)-1, last+2); k++ {
		if c.pts[k].Level > c.pts[best].Level {
			best = k
		}
	}
	p := Peak{At: c.pts[best].At, Level: c.pts[best].Level, i: i}
	p.NearGap = best > 0 && p.At.Sub(c.pts[best-1].At) > c.set.Gap || best+1 < len(c.pts) && c.pts[best+1].At.Sub(p.At) > c.set.Gap
	return p
}

// one reports whether two tops, a before b, are one peak.
func (c *Curve) one(a, b Peak) bool {
	if b.At.Sub(a.At) < c.set.Apart {
		return true
	}
	dip := slices.Min(c.smooth[a.i : b.i+1])
	base := c.lowest(a)
	if c.set.Base != nil {
		base = float64(*c.set.Base)
	}
	rise := max(float64(a.Level), float64(b.Level)) - base
	return min(float64(a.Level), float64(b.Level))-dip < c.set.Dip*rise
}

// lowest is the lowest smoothed level in the stretch before a peak.
func (c *Curve) lowest(p Peak) float64 {
	from := max(0, c.last(p.At.Add(-c.set.Lookback)))
	return slices.Min(c.smooth[from : p.i+1])
}

func (p *Peak) setBase(c *Curve, least float64) {
	if c.set.Base != nil {
		p.Base, p.HasBase = *c.set.Base, true
		return
	}
	low := c.lowest(*p)
	p.Base = units.Metres(low)
	p.HasBase = float64(p.Level)-low >= least
}

// spread is the range from the 5th to the 95th percentile of the last year of readings.
func (c *Curve) spread() float64 {
	if len(c.pts) == 0 {
		return 0
	}
	from := max(0, c.last(c.pts[len(c.pts)-1].At.AddDate(-1, 0, 0)))
	h := slices.Sorted(slices.Values(c.smooth[from:]))
	n := len(h) - 1
	return h[n*95/100] - h[n*5/100]
}
