package intake

import (
	"math"
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal/units"
)

// gridStep is the time between cells: finer than anybody gets anywhere on foot in the
// dark, coarse enough to be quick.
const gridStep = 10 * time.Second

// cell is where the device was at one moment, made robust: the median of the positions
// about it, so that reflections of up to half the window leave it alone.
type cell struct {
	at     geo.Point
	have   bool    // any position fell into the window
	weight float64 // share of an independent position
	speed  float64 // metres a second; NaN if not known
}

// grid is a stretch of a track without long silences.
type grid struct {
	from   time.Time
	cells  []cell
	step   time.Duration // between positions, in the middle of them
	window time.Duration // over which a position is the median
}

func (g *grid) time(i int) time.Time { return g.from.Add(time.Duration(i) * gridStep) }

// grids lays the fixes, in order of time, on cells; a silence longer than apart parts two grids.
func grids(l *geo.Layout, fixes []Fix, s Detector) []*grid {
	var out []*grid
	for len(fixes) > 0 {
		n := 1
		for n < len(fixes) && fixes[n].At.Sub(fixes[n-1].At) <= s.Apart {
			n++
		}
		out = append(out, newGrid(l, fixes[:n], s))
		fixes = fixes[n:]
	}
	return out
}

func newGrid(l *geo.Layout, fixes []Fix, s Detector) *grid {
	n := int(fixes[len(fixes)-1].At.Sub(fixes[0].At)/gridStep) + 1
	g := &grid{from: fixes[0].At, cells: make([]cell, n), step: spacing(fixes), window: s.Window}
	if g.step <= s.Window { // where positions are scarce, three of them, so that one may be wild
		g.window = max(s.Window, 3*g.step)
	}
	pts := make([]geo.Point, len(fixes))
	for i, f := range fixes {
		pts[i] = l.At(f.Place)
	}
	lo, hi := 0, 0
	last := -1
	var xs, ys []float64
	for i := range g.cells {
		from, to := g.time(i).Add(-g.window/2), g.time(i).Add(g.window/2)
		for lo < len(fixes) && fixes[lo].At.Before(from) {
			lo++
		}
		for hi = max(hi, lo); hi < len(fixes) && !fixes[hi].At.After(to); hi++ {
		}
		if hi == lo {
			continue
		}
		xs, ys = xs[:0], ys[:0]
		for _, p := range pts[lo:hi] {
			xs, ys = append(xs, float64(p.X)), append(ys, float64(p.Y))
		}
		c := &g.cells[i]
		c.at, c.have = geo.Point{X: units.Metres(median(xs)), Y: units.Metres(median(ys))}, true
		c.weight = 1
		if last >= 0 {
			c.weight = min(1, float64(time.Duration(i-last)*gridStep)/float64(s.Memory))
		}
		last = i
	}
	g.speeds()
	return g
}

// spacing is the time between two fixes, in the middle of all.
func spacing(fixes []Fix) time.Duration {
	var d []time.Duration
	for i := 1; i < len(fixes); i++ {
		d = append(d, fixes[i].At.Sub(fixes[i-1].At))
	}
	if len(d) == 0 {
		return 0
	}
	slices.Sort(d)
	return d[len(d)/2]
}

// speeds takes the way from half a window before to half a window after.
func (g *grid) speeds() {
	half := int(g.window / 2 / gridStep)
	for i := range g.cells {
		a, b := i-half, i+half
		g.cells[i].speed = math.NaN()
		if a < 0 || b >= len(g.cells) || !g.cells[a].have || !g.cells[b].have {
			continue
		}
		g.cells[i].speed = float64(g.cells[a].at.Distance(g.cells[b].at)) / (time.Duration(b-a) * gridStep).Seconds()
	}
}

// median sorts its argument.
func median(v []float64) float64 {
	slices.Sort(v)
	n := len(v)
	if n%2 == 1 {
		return v[n/2]
	}
	return (v[n/2-1] + v[n/2]) / 2
}
