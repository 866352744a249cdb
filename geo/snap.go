package geo

import (
	"math"

	"gloamline/journal/units"
)

// Spot is where a position lies in a pool.
type Spot struct {
	Pool     ID
	Index    int          // of the pool in Layout.Pools
	Inside   bool         // on the water, islands excepted
	Distance units.Metres // to the water's edge; 0 inside
	Chainage units.Metres // along the axis from the head, 0 to the pool's length
	Offset   units.Metres // from the axis, positive to the true left
	Part     Part
}

// Snap returns the pool a place lies in, else the pool whose edge is nearest and
// within the tolerance. Where pools overlap the smaller one holds it.
func (l *Layout) Snap(p Place, within units.Metres) (Spot, bool) {
	if p.Check() != nil {
		return Spot{}, false
	}
	return l.SnapPoint(l.At(p), within)
}

// SnapPoint is Snap for a point of the plane.
func (l *Layout) SnapPoint(q Point, within units.Metres) (Spot, bool) {
	best, inside, nearest := -1, false, units.Metres(math.Inf(1))
	for i := range l.Pools {
		s := &l.Pools[i]
		if away := s.boxDistance(q); away > within || (inside && away > 0) {
			continue
		}
		if s.Area.Holds(q) {
			if !inside || s.Area.SquareMetres() < l.Pools[best].Area.SquareMetres() {
				best, inside, nearest = i, true, 0
			}
			continue
		}
		if inside {
			continue
		}
		if d := s.Area.Edge(q).Distance; d <= within && d < nearest {
			best, nearest = i, d
		}
	}
	if best < 0 {
		return Spot{}, false
	}
	spot := l.Pools[best].spot(q)
	spot.Index, spot.Inside, spot.Distance = best, inside, nearest
	return spot, true
}

// PoolAt returns the pool whose water a point of the plane lies on.
func (l *Layout) PoolAt(q Point) (PoolShape, bool) {
	s, ok := l.SnapPoint(q, 0)
	if !ok || !s.Inside {
		return PoolShape{}, false
	}
	return l.Pools[s.Index], true
}

// boxDistance is a lower bound of the distance to the outline.
func (s *PoolShape) boxDistance(q Point) units.Metres {
	return q.Distance(Point{min(max(q.X, s.lo.X), s.hi.X), min(max(q.Y, s.lo.Y), s.hi.Y)})
}

func (s *PoolShape) spot(q Point) Spot {
	f := s.Axis.Foot(q)
	off := f.Distance
	if !f.Left {
		off = -off
	}
	return Spot{Pool: s.Pool.ID, Chainage: f.Chainage, Offset: off, Part: s.PartAt(f.Chainage)}
}

// At returns the point at a distance from the head and an offset from the axis,
// positive to the true left: the way back from a Spot inside the pool's length.
func (s PoolShape) At(chainage, offset units.Metres) Point {
	at, dx, dy := s.Axis.Along(chainage)
	return Point{at.X - offset*units.Metres(dy), at.Y + offset*units.Metres(dx)}
}
