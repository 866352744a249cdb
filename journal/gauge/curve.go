package gauge

import (
	"math"
	"slices"
	"sort"
	"time"

	"gloamline/journal/units"
)

// Curve is the level at one gauge over a stretch of time, with its peaks found. It is
// derived from readings, never stored, and holds for the gauge alone.
type Curve struct {
	set    Settings
	pts    []Point
	smooth []float64 // running median of five readings
	peaks  []Peak
}

// NewCurve makes a curve of the readings of a level, in any order; of two at one instant
// the first counts.
func NewCurve(pts []Point, set Settings) *Curve {
	c := &Curve{set: set, pts: slices.Clone(pts)}
	slices.SortStableFunc(c.pts, func(a, b Point) int { return a.At.Compare(b.At) })
	c.pts = slices.CompactFunc(c.pts, func(a, b Point) bool { return a.At.Equal(b.At) })
	c.smooth = medians(c.pts)
	c.peaks = c.findPeaks()
	return c
}

// medians is the running median of five readings, fewer at the ends.
func medians(pts []Point) []float64 {
	out := make([]float64, len(pts))
	var five [5]float64
	for i := range pts {
		half := min(2, i, len(pts)-1-i)
		w := five[:0]
		for _, p := range pts[i-half : i+half+1] {
			w = append(w, float64(p.Level))
		}
		slices.Sort(w)
		out[i] = w[len(w)/2]
	}
	return out
}

// Points are the readings in order of time.
func (c *Curve) Points() []Point { return c.pts }

// Peaks are the peaks in order of time.
func (c *Curve) Peaks() []Peak { return c.peaks }

// last is the place of the last reading at or before t, -1 if there is none.
func (c *Curve) last(t time.Time) int {
	return sort.Search(len(c.pts), func(i int) bool { return c.pts[i].At.After(t) }) - 1
}

// Level is the level at t, between two readings by a straight line. Unknown before the
// first, after the last, and within a silence longer than the setting.
func (c *Curve) Level(t time.Time) (units.Metres, bool) {
	i := c.last(t)
	if i < 0 {
		return 0, false
	}
	a := c.pts[i]
	if a.At.Equal(t) {
		return a.Level, true
	}
	if i+1 == len(c.pts) {
		return 0, false
	}
	b := c.pts[i+1]
	span := b.At.Sub(a.At)
	if span > c.set.Gap {
		return 0, false
	}
	f := float64(t.Sub(a.At)) / float64(span)
	return a.Level + units.Metres(f)*(b.Level-a.Level), true
}

// Slope is the least-squares slope in metres an hour of the readings in the stretch of
// time that ends at t, both ends included. It takes three readings over at least half
// the stretch, without a silence among them or before t.
func (c *Curve) Slope(t time.Time, over time.Duration) (float64, bool) {
	hi := c.last(t)
	if hi < 0 || t.Sub(c.pts[hi].At) > c.set.Gap {
		return 0, false
	}
	lo := hi
	for lo > 0 && !c.pts[lo-1].At.Before(t.Add(-over)) && c.pts[lo].At.Sub(c.pts[lo-1].At) <= c.set.Gap {
		lo--
	}
	if hi-lo < 2 || c.pts[hi].At.Sub(c.pts[lo].At) < over/2 {
		return 0, false
	}
	from := c.pts[lo].At
	return lineSlope(c.pts[lo:hi+1], func(p Point) (x, y float64) { return p.At.Sub(from).Hours(), float64(p.Level) }), true
}

// lineSlope is the ordinary least-squares slope of y over x.
func lineSlope(pts []Point, xy func(Point) (x, y float64)) float64 {
	var n, sx, sy, sxx, sxy float64
	for _, p := range pts {
		x, y := xy(p)
		n, sx, sy, sxx, sxy = n+1, sx+x, sy+y, sxx+x*x, sxy+x*y
	}
	if d := n*sxx - sx*sx; d != 0 {
		return (n*sxy - sx*sy) / d
	}
	return math.NaN()
}
