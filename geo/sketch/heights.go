package sketch

import (
	"encoding/json"

	"github.com/paulmach/orb"

	"gloamline/geo"
)

// heights gives positions back what followed their longitude and latitude. Where
// several share a place they are used in turn, and the last one from then on.
type heights struct {
	at map[orb.Point][][]float64
}

func newHeights(kept [][]float64) *heights {
	h := &heights{at: map[orb.Point][][]float64{}}
	for _, p := range kept {
		if len(p) >= 2 {
			key := orb.Point{rounded(p[0]), rounded(p[1])}
			h.at[key] = append(h.at[key], p[2:])
		}
	}
	return h
}

func (h *heights) of(p orb.Point) []float64 {
	key := orb.Point{rounded(p[0]), rounded(p[1])}
	queue := h.at[key]
	if len(queue) == 0 {
		return nil
	}
	if len(queue) > 1 {
		h.at[key] = queue[1:]
	}
	for _, x := range queue[0] {
		if !finite(x) {
			return nil
		}
	}
	return queue[0]
}

// positions are those of a shape as written.
type positions [][]float64

// bbox returns west, south, east, north, with the least and greatest height between
// and after them when every position has one (section 5); nil without positions. Over
// the 180th meridian west is greater than east (section 5.2).
func (all positions) bbox() json.RawMessage {
	if len(all) == 0 {
		return nil
	}
	var s geo.Shape
	high := true
	lo, hi := 0.0, 0.0
	far := false // the 180th meridian is written as -180
	for i, p := range all {
		s.Points = append(s.Points, orb.Point{p[0], p[1]})
		far = far || p[0] == -180
		if high = high && len(p) > 2; high {
			if i == 0 {
				lo, hi = p[2], p[2]
			}
			lo, hi = min(lo, p[2]), max(hi, p[2])
		}
	}
	box := geo.Beat{Features: []geo.Feature{{Shape: s}}}.Bound()
	west, east := rounded(box.Min[0]), rounded(box.Max[0])
	if east > 180 || east == 180 && west > -180 && far {
		east = rounded(east - 360)
	}
	values := []float64{west, rounded(box.Min[1]), east, rounded(box.Max[1])}
	if high {
		values = []float64{west, rounded(box.Min[1]), lo, east, rounded(box.Max[1]), hi}
	}
	return json.RawMessage("[" + join(values, number) + "]")
}
