package intake

import (
	"math"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// A stored track is one JSON record and stands in its change once more, so it is
// thinned: 4000 positions take about 0.35 MB.
const (
	thinFrom = 3.0 // metres
	thinMost = 4000
)

// Thin leaves positions out of a track, in order of time, so that none left out lies
// further than the returned distance from where those kept put it at its moment, along
// a straight line at an even pace. The distance is 3 m, and more only where more than
// 4000 positions would stay. Wild positions stay as they are: nothing is smoothed. Places
// are rounded to six decimals, 0.1 m.
func Thin(fixes []Fix) ([]journal.TrackFix, units.Metres) {
	if len(fixes) == 0 {
		return nil, 0
	}
	pl := geo.NewPlane(fixes[0].Place)
	t := thinner{pts: make([]geo.Point, len(fixes)), sec: make([]float64, len(fixes))}
	for i, f := range fixes {
		t.pts[i], t.sec[i] = pl.At(f.Place), f.At.Sub(fixes[0].At).Seconds()
	}
	within := thinFrom
	keep := t.keep(within)
	for len(keep) > thinMost {
		within *= 1.25
		keep = t.keep(within)
	}
	out := make([]journal.TrackFix, len(keep))
	for k, i := range keep {
		p := fixes[i].Place
		out[k] = journal.TrackFix{At: fixes[i].At.UTC().Round(time.Millisecond), Place: geo.Place{Lat: sixth(p.Lat), Lon: sixth(p.Lon)}}
	}
	return out, units.Metres(within)
}

func sixth(d units.Degrees) units.Degrees { return units.Degrees(math.Round(float64(d)*1e6) / 1e6) }

type thinner struct {
	pts []geo.Point
	sec []float64
}

// keep lists what stays, both ends among it: of each stretch the position that lies
// furthest off, if it lies too far, parts it in two (Douglas & Peucker, The Canadian
// Cartographer 10, 1973, with the distance taken at the same moment).
func (t *thinner) keep(within float64) []int {
	last := len(t.pts) - 1
	stay := make([]bool, len(t.pts))
	stay[0], stay[last] = true, true
	for todo := [][2]int{{0, last}}; len(todo) > 0; {
		a, b := todo[len(todo)-1][0], todo[len(todo)-1][1]
		todo = todo[:len(todo)-1]
		far, at := within, -1
		for i := a + 1; i < b; i++ {
			if d := t.off(a, b, i); d > far {
				far, at = d, i
			}
		}
		if at >= 0 {
			stay[at] = true
			todo = append(todo, [2]int{a, at}, [2]int{at, b})
		}
	}
	var out []int
	for i, s := range stay {
		if s {
			out = append(out, i)
		}
	}
	return out
}

// off is how far i lies from the straight way between a and b at its moment.
func (t *thinner) off(a, b, i int) float64 {
	f := 0.0
	if d := t.sec[b] - t.sec[a]; d > 0 {
		f = (t.sec[i] - t.sec[a]) / d
	}
	p, q := t.pts[a], t.pts[b]
	return math.Hypot(float64(t.pts[i].X-p.X)-f*float64(q.X-p.X), float64(t.pts[i].Y-p.Y)-f*float64(q.Y-p.Y))
}
