package draft

import (
	"github.com/paulmach/orb"

	"gloamline/geo"
	"gloamline/journal/units"
)

const (
	same   units.Metres = 0.02 // corners this near are one
	gapMax units.Metres = 60   // further apart, two pools are no neighbours
)

// Join makes one pool of two that are neighbours: along the edge they share, else over the
// water between the tail of the upper and the head of the lower one, edge to edge. It takes the
// upper one's place in the order, its skyline, trees and bank.
func (d Draft) Join(a, b geo.ID, into Part) (Draft, error) {
	upper, ok1 := d.Beat.Pool(a)
	lower, ok2 := d.Beat.Pool(b)
	if !ok1 || !ok2 || a == b || !upper.Drawn() || !lower.Drawn() || d.taken(into.ID) {
		return d, gone(a)
	}
	for _, p := range d.Beat.InOrder() {
		if p.ID == b {
			upper, lower = lower, upper
		}
		if p.ID == a || p.ID == b {
			break
		}
	}
	ring, ok := d.shared(upper.Outline[0], lower.Outline[0])
	if !ok {
		var err error
		if ring, err = d.bridged(upper, lower); err != nil {
			return d, err
		}
	}
	out := upper
	out.ID, out.Name, out.Tail, out.Extra = into.ID, into.Name, lower.Tail, geo.Extra{}
	out.Outline = append(append(orb.Polygon{ring}, upper.Outline[1:]...), lower.Outline[1:]...)
	if at, crossed := d.Plane.Path(ring).Crossing(); crossed {
		return d, refuse(a, at, "%s and %s cannot be joined: the outline would cross itself", "Bring their edges together first, corner on corner.", upper.Name, lower.Name)
	}
	return d.replace([]geo.Pool{out}, upper.ID, lower.ID), nil
}

// shared joins two rings along the longest run of edges that both have.
func (d Draft) shared(one, two orb.Ring) (orb.Ring, bool) {
	p, q := d.turned(one), d.turned(two)
	n, m := len(p), len(q)
	near := func(i, j int) bool {
		return d.Plane.At(geo.PlaceOf(p[(i+n)%n])).Distance(d.Plane.At(geo.PlaceOf(q[((j%m)+m)%m]))) <= same
	}
	bestLen, bestI, bestJ := 0, 0, 0
	for i := range n {
		for j := range m {
			k := 0
			for k < min(n, m)-1 && near(i+k, j-k) {
				k++
			}
			if k > bestLen {
				bestLen, bestI, bestJ = k, i, j
			}
		}
	}
	if bestLen < 2 {
		return nil, false
	}
	// p runs i .. i+k-1 along what is shared, q the same backwards from j.
	var out orb.Ring
	for s := bestLen - 1; s <= n; s++ {
		out = append(out, p[(bestI+s)%n])
	}
	for s := 1; s < m-bestLen+1; s++ {
		out = append(out, q[(bestJ+s)%m])
	}
	return append(out, out[0]), true
}

// turned returns a ring without its closing point, anticlockwise on the plane.
func (d Draft) turned(r orb.Ring) []orb.Point {
	path, sum := d.Plane.Path(r), 0.0
	for i := 1; i < len(path); i++ {
		a, b, o := path[i-1], path[i], path[0]
		sum += float64(a.X-o.X)*float64(b.Y-o.Y) - float64(b.X-o.X)*float64(a.Y-o.Y)
	}
	out := append([]orb.Point(nil), r[:len(r)-1]...)
	if sum < 0 {
		for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
		}
	}
	return out
}

// bridged joins two pools over the water between them by their left and right edges.
func (d Draft) bridged(upper, lower geo.Pool) (orb.Ring, error) {
	var u, l *geo.PoolShape
	layout := d.Beat.LayoutOn(d.Plane)
	for i := range layout.Pools {
		switch layout.Pools[i].Pool.ID {
		case upper.ID:
			u = &layout.Pools[i]
		case lower.ID:
			l = &layout.Pools[i]
		}
	}
	end, start := u.Axis[len(u.Axis)-1], l.Axis[0]
	if gap := end.Distance(start); gap > gapMax {
		return nil, refuse(upper.ID, end, "%s ends %.0f m above %s, too far to be one water", "Join pools that lie next to each other.", upper.Name, float64(gap), lower.Name)
	}
	path := append(geo.Path{}, u.Left[:corner(u.Left, end, start, 1, true)+1]...)
	path = append(path, l.Left[corner(l.Left, start, end, -1, false):]...)
	path = append(path, l.Right[corner(l.Right, start, end, 1, false):].Reversed()...)
	path = append(path, u.Right[:corner(u.Right, end, start, -1, true)+1].Reversed()...)
	path = Thin(path, 0.1)
	out := make(orb.Ring, 0, len(path)+1)
	for _, p := range path {
		out = append(out, d.Plane.Place(p).LonLat())
	}
	out = tidy(out)
	if out[0] != out[len(out)-1] {
		out = append(out, out[0])
	}
	return out, nil
}

// corner returns where an edge leaves its pool to go from a to b: the point of its last third, or
// its first, that lies furthest that way and to the side, left for 1.
func corner(edge geo.Path, a, b geo.Point, side float64, last bool) int {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	if l := float64(a.Distance(b)); l > 0 {
		dx, dy = dx/l, dy/l
	}
	x, y := dx-side*dy, dy+side*dx
	from, to := 0, len(edge)/3+1
	if last {
		from, to = 2*len(edge)/3, len(edge)
	}
	best := from
	for i := from; i < min(to, len(edge)); i++ {
		if float64(edge[i].X-edge[best].X)*x+float64(edge[i].Y-edge[best].Y)*y > 0 {
			best = i
		}
	}
	return best
}
