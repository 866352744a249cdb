package geo

import (
	"math"
	"slices"
	"strconv"

	"gloamline/journal/units"
)

// How far a pool may lie from the rest of its beat: from the bank lines where they
// are drawn, else from the nearest other pool. Our own choice; a pool further
// off belongs to another beat or was drawn in the wrong place.
const (
	farFromBank  units.Metres = 500
	farFromPools units.Metres = 10_000
)

// together finds pools that lie apart from the rest of the beat.
func (c *checking) together(b Beat) {
	at := b.middle()
	if at.IsZero() {
		return
	}
	l := b.LayoutOn(NewPlane(at))
	for i, s := range l.Pools {
		d, limit := units.Metres(math.Inf(1)), farFromBank
		for _, e := range l.Banks {
			d = min(d, e.Path.Foot(s.Area.Centroid()).Distance)
		}
		if len(l.Banks) == 0 {
			if len(l.Pools) < 2 {
				return
			}
			d, limit = l.nextPool(i), farFromPools
		}
		if d > limit {
			what := s.Pool.Name
			if what == "" {
				what = "a pool without a name"
			}
			c.add(Fault{Kind: OutsideBeat, ID: s.Pool.ID, What: what, At: s.Pool.Place(), Value: strconv.FormatFloat(math.Round(float64(d)), 'f', 0, 64)})
		}
	}
}

// middle is the median of the drawn pools and so is not drawn off by one that strays.
func (b Beat) middle() Place {
	var lat, lon []float64
	for _, p := range b.Pools {
		if at := p.Place(); !at.IsZero() {
			lat, lon = append(lat, float64(at.Lat)), append(lon, float64(at.Lon))
		}
	}
	if len(lat) == 0 {
		return b.Place()
	}
	return Place{Lat: units.Degrees(median(lat)), Lon: units.Degrees(median(lon))}
}

// nextPool is the distance from a pool's middle to that of the nearest other.
func (l *Layout) nextPool(i int) units.Metres {
	d, at := units.Metres(math.Inf(1)), l.Pools[i].Area.Centroid()
	for j, s := range l.Pools {
		if j != i {
			d = min(d, s.Area.Centroid().Distance(at))
		}
	}
	return d
}

func median(v []float64) float64 {
	slices.Sort(v)
	return v[len(v)/2]
}

// direction compares the numbers and marks of the pools with the flow that the banks
// tell.
func (c *checking) direction(b Beat) {
	l := b.LayoutOn(NewPlane(b.Place()))
	if !l.flow.sure || len(l.flow.guide) < 2 {
		return
	}
	down, up := 0, 0
	before := units.Metres(math.NaN())
	for _, s := range l.Pools {
		if s.Pool.Order == 0 {
			continue
		}
		at := l.flow.guide.Foot(s.Area.Centroid()).Chainage
		if at > before {
			down++
		} else if at < before {
			up++
		}
		before = at
	}
	if l.flow.banks && up > down {
		c.add(Fault{Kind: OrderUpstream, ID: b.ID, What: b.Name})
	}
	for _, s := range l.Pools {
		if s.Pool.Head.IsZero() || s.Pool.Tail.IsZero() {
			continue
		}
		if l.flow.guide.Foot(l.At(s.Pool.Head)).Chainage > l.flow.guide.Foot(l.At(s.Pool.Tail)).Chainage {
			c.add(Fault{Kind: HeadBelowTail, ID: s.Pool.ID, What: s.Pool.Name, At: s.Pool.Head})
		}
	}
}
