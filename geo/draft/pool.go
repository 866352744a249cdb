package draft

import (
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"gloamline/geo"
)

// ring returns an outline in degrees; it needs three corners that enclose something.
func (d Draft) ring(of geo.ID, corners geo.Path) (orb.Polygon, error) {
	if err := d.sound(of, corners...); err != nil {
		return nil, err
	}
	if n := len(corners); n > 1 && corners[0] == corners[n-1] {
		corners = corners[:n-1]
	}
	if len(corners) < 3 || (geo.Area{closed(corners)}).SquareMetres() < 0.01 {
		at := geo.Point{}
		if len(corners) > 0 {
			at = corners[0]
		}
		return nil, refuse(of, at, "an outline needs three corners that enclose something", "Go on to draw round it.")
	}
	out := make(orb.Ring, 0, len(corners)+1)
	for _, c := range corners {
		out = append(out, d.Plane.Place(c).LonLat())
	}
	return orb.Polygon{append(out, out[0])}, nil
}

func closed(p geo.Path) geo.Path { return append(slices.Clip(p), p[0]) }

// AddPool draws a pool, last in fishing order.
func (d Draft) AddPool(id geo.ID, name string, corners geo.Path) (Draft, error) {
	if d.taken(id) {
		return d, gone(id)
	}
	outline, err := d.ring(id, corners)
	if err != nil {
		return d, err
	}
	d.Beat.Pools = append(slices.Clip(d.Beat.Pools), geo.Pool{ID: id, Name: strings.TrimSpace(name), Outline: outline, Order: d.lastOrder() + 1})
	return d, nil
}

func (d Draft) lastOrder() int {
	n := 0
	for _, p := range d.Beat.Pools {
		n = max(n, p.Order)
	}
	return n
}

// pool changes one pool in a copy.
func (d Draft) pool(id geo.ID, f func(*geo.Pool)) (Draft, error) {
	i := slices.IndexFunc(d.Beat.Pools, func(p geo.Pool) bool { return p.ID == id })
	if i < 0 {
		return d, gone(id)
	}
	d.Beat.Pools = slices.Clone(d.Beat.Pools)
	f(&d.Beat.Pools[i])
	return d, nil
}

// Rename names a pool or a feature.
func (d Draft) Rename(id geo.ID, name string) (Draft, error) {
	name = strings.Join(strings.Fields(name), " ")
	next, err := d.feature(id, func(f *geo.Feature) { f.Name = name })
	if err == nil {
		return next, nil
	}
	if name == "" {
		return d, refuse(id, geo.Point{}, "a pool needs a name, to be found in the log by it", "Type a name.")
	}
	return d.pool(id, func(p *geo.Pool) { p.Name = name })
}

// Reorder makes a pool the one of that number in fishing order, from 1 at the top; all pools
// are then numbered without gaps.
func (d Draft) Reorder(id geo.ID, to int) (Draft, error) {
	order := d.Beat.InOrder()
	i := slices.IndexFunc(order, func(p geo.Pool) bool { return p.ID == id })
	if i < 0 {
		return d, gone(id)
	}
	if to < 1 || to > len(order) {
		return d, refuse(id, geo.Point{}, "the beat has pools number 1 to %d", "Choose one of these numbers.", len(order))
	}
	p := order[i]
	order = slices.Insert(slices.Delete(order, i, i+1), to-1, p)
	return d.numbered(order), nil
}

func (d Draft) numbered(order []geo.Pool) Draft {
	number := map[geo.ID]int{}
	for i, p := range order {
		number[p.ID] = i + 1
	}
	d.Beat.Pools = slices.Clone(d.Beat.Pools)
	for i := range d.Beat.Pools {
		d.Beat.Pools[i].Order = number[d.Beat.Pools[i].ID]
	}
	return d
}

// MarkEnds marks head and tail of a pool; the neck, the body and the tail are the thirds between.
func (d Draft) MarkEnds(id geo.ID, head, tail geo.Point) (Draft, error) {
	if err := d.sound(id, head, tail); err != nil {
		return d, err
	}
	if head.Distance(tail) < 1 {
		return d, refuse(id, head, "head and tail are marked at one place", "Mark the head where the water enters, the tail at the lower end.")
	}
	return d.pool(id, func(p *geo.Pool) { p.Head, p.Tail = d.Plane.Place(head), d.Plane.Place(tail) })
}

// Shade says how far trees close over a pool or what a feature of trees is like; "" is not known.
func (d Draft) Shade(id geo.ID, c geo.Canopy) (Draft, error) {
	if c != "" && !c.Known() {
		return d, refuse(id, geo.Point{}, "%q is no way trees stand over water", "Choose open, partly or closed.", c)
	}
	if next, err := d.feature(id, func(f *geo.Feature) { f.Canopy = c }); err == nil {
		return next, nil
	}
	return d.pool(id, func(p *geo.Pool) { p.Canopy = c })
}

// Side says from which bank a pool is usually fished, or which bank a feature is or is on.
func (d Draft) Side(id geo.ID, b geo.Bank) (Draft, error) {
	if b != "" && !b.Known() {
		return d, refuse(id, geo.Point{}, "%q is no bank", "Choose the true left or the true right, looking downstream.", b)
	}
	if next, err := d.feature(id, func(f *geo.Feature) { f.Bank = b }); err == nil {
		return next, nil
	}
	return d.pool(id, func(p *geo.Pool) { p.Bank = b })
}

// Horizon gives a pool its skyline.
func (d Draft) Horizon(id geo.ID, s geo.Skyline) (Draft, error) {
	if err := s.Check(); err != nil {
		return d, refuse(id, geo.Point{}, "%v", "Correct that point.", err)
	}
	return d.pool(id, func(p *geo.Pool) { p.Skyline = slices.Clone(s) })
}
