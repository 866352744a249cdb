package draft

import (
	"fmt"
	"slices"

	"github.com/paulmach/orb"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Part is one of the two a pool is split into.
type Part struct {
	ID   geo.ID
	Name string
}

// Split cuts a pool in two along the line from a to b, which must cross its outline twice. The
// upper part, by the flow, takes its number, the lower one the next; both keep skyline,
// trees and bank, the upper one a marked head, the lower one a marked tail.
func (d Draft) Split(id geo.ID, a, b geo.Point, upper, lower Part) (Draft, error) {
	p, ok := d.Beat.Pool(id)
	if !ok || !p.Drawn() || d.taken(upper.ID) || d.taken(lower.ID) || upper.ID == lower.ID {
		return d, gone(id)
	}
	if err := d.sound(id, a, b); err != nil {
		return d, err
	}
	area := d.Plane.Area(p.Outline)
	if at, crossed := area[0].Crossing(); crossed {
		return d, refuse(id, at, "the outline of %s crosses itself, so no line can part it", "Put the outline right first.", p.Name)
	}
	hits := cuts(area[0], a, b)
	if len(hits) != 2 {
		return d, refuse(id, a, "the line crosses the outline of %s %s", "Draw it from bank to bank, straight across the pool.", p.Name, often(len(hits)))
	}
	outer := p.Outline[0][:len(p.Outline[0])-1]
	one, two := d.halves(outer, hits)
	parts := [2]geo.Pool{p, p}
	parts[0].Outline, parts[1].Outline = orb.Polygon{one}, orb.Polygon{two}
	for i, island := range area[1:] {
		if len(cuts(island, a, b)) > 0 {
			return d, refuse(id, island[0], "the line runs through an island of %s", "Draw it above or below the island.", p.Name)
		}
		to := 1
		if (geo.Area{d.Plane.Path(one)}).Holds(island[0]) {
			to = 0
		}
		parts[to].Outline = append(parts[to].Outline, p.Outline[i+1])
	}
	if d.downstream(p, parts[0]) > d.downstream(p, parts[1]) {
		parts[0], parts[1] = parts[1], parts[0]
	}
	parts[0].ID, parts[0].Name, parts[0].Tail, parts[0].Extra = upper.ID, upper.Name, geo.Place{}, geo.Extra{}
	parts[1].ID, parts[1].Name, parts[1].Head, parts[1].Extra = lower.ID, lower.Name, geo.Place{}, geo.Extra{}
	return d.replace(parts[:], id), nil
}

// often says a count that is not two.
func often(n int) string {
	switch n {
	case 0:
		return "nowhere"
	case 1:
		return "once, not twice"
	}
	return fmt.Sprintf("%d times, not twice", n)
}

// downstream is how far down a pool the middle of a part of it lies.
func (d Draft) downstream(whole, part geo.Pool) units.Metres {
	for _, s := range d.Beat.LayoutOn(d.Plane).Pools {
		if s.Pool.ID == whole.ID {
			return s.Axis.Foot(d.Plane.Area(part.Outline).Centroid()).Chainage
		}
	}
	return 0
}

// replace puts pools in the place of others, numbers all again and records what became
// of the old ones.
func (d Draft) replace(next []geo.Pool, old ...geo.ID) Draft {
	var into []geo.ID
	for _, p := range next {
		into = append(into, p.ID)
	}
	is := func(p geo.Pool) bool { return slices.Contains(old, p.ID) }
	order := d.Beat.InOrder()
	order = slices.Insert(order, slices.IndexFunc(order, is), next...)
	order = slices.DeleteFunc(order, is)
	pools := slices.Clone(d.Beat.Pools)
	pools = slices.Insert(pools, slices.IndexFunc(pools, is), next...)
	d.Beat.Pools = slices.DeleteFunc(pools, is)
	d = d.numbered(order)
	for _, id := range old {
		d = d.succeed(id, into...)
	}
	return d
}

type cut struct {
	edge int // from this corner to the next
	at   geo.Point
}

// cuts returns where the segment a-b crosses a closed ring. A corner on the line belongs
// to one edge only: sides are told apart by left or not left.
func cuts(ring geo.Path, a, b geo.Point) []cut {
	side := func(p geo.Point) float64 {
		return float64(b.X-a.X)*float64(p.Y-a.Y) - float64(b.Y-a.Y)*float64(p.X-a.X)
	}
	var out []cut
	for i := 1; i < len(ring); i++ {
		p, q := ring[i-1], ring[i]
		sp, sq := side(p), side(q)
		if (sp > 0) == (sq > 0) {
			continue
		}
		t := units.Metres(sp / (sp - sq))
		at := geo.Point{X: p.X + t*(q.X-p.X), Y: p.Y + t*(q.Y-p.Y)}
		dot := float64(at.X-a.X)*float64(b.X-a.X) + float64(at.Y-a.Y)*float64(b.Y-a.Y)
		l := float64(a.Distance(b))
		if dot >= 0 && dot <= l*l {
			out = append(out, cut{i - 1, at})
		}
	}
	return out
}

// halves walks the ring from cut to cut.
func (d Draft) halves(outer []orb.Point, hits []cut) (one, two orb.Ring) {
	c1, c2 := d.Plane.Place(hits[0].at).LonLat(), d.Plane.Place(hits[1].at).LonLat()
	one = append(append(orb.Ring{c1}, outer[hits[0].edge+1:hits[1].edge+1]...), c2, c1)
	two = append(orb.Ring{c2}, outer[hits[1].edge+1:]...)
	two = append(append(two, outer[:hits[0].edge+1]...), c1, c2)
	return tidy(one), tidy(two)
}

// tidy drops a corner that repeats the one before it.
func tidy(r orb.Ring) orb.Ring { return slices.Compact(r) }
