package draft

import (
	"slices"

	"github.com/paulmach/orb"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Strand is one line, ring or set of points of a pool or feature on the plane.
type Strand struct {
	Points geo.Path // of a ring without the point that closes it
	Kind   StrandKind
}

// StrandKind says how the points of a strand hang together.
type StrandKind string

// The kinds of strand.
const (
	Loose StrandKind = "points"
	Open  StrandKind = "line"
	Ring  StrandKind = "ring"
)

// least is how many points a strand must keep.
var least = map[StrandKind]int{Loose: 1, Open: 2, Ring: 3}

// Vertex names a corner: of which pool or feature, in which of its strands (as Strands counts
// them), and which point of it, from 0.
type Vertex struct {
	Of     geo.ID
	Strand int
	Index  int
}

// Strands returns what is drawn of a pool or feature: points first, then lines, then rings.
func (d Draft) Strands(id geo.ID) []Strand {
	var out []Strand
	d.visit(id, func(k StrandKind, line []orb.Point) []orb.Point {
		out = append(out, Strand{d.Plane.Path(line), k})
		return line
	})
	return out
}

// visit calls f with each strand of a pool or feature and puts what it returns in its
// place, in a copy. Rings come without the closing point.
func (d Draft) visit(id geo.ID, f func(StrandKind, []orb.Point) []orb.Point) (Draft, bool) {
	ring := func(a orb.Polygon) orb.Polygon {
		a = slices.Clone(a)
		for i, r := range a {
			if n := len(r); n > 1 && r[0] == r[n-1] {
				r = r[:n-1]
			}
			next := f(Ring, slices.Clip(r))
			a[i] = append(slices.Clip(orb.Ring(next)), next[0])
		}
		return a
	}
	if i := slices.IndexFunc(d.Beat.Pools, func(p geo.Pool) bool { return p.ID == id }); i >= 0 {
		d.Beat.Pools = slices.Clone(d.Beat.Pools)
		d.Beat.Pools[i].Outline = ring(d.Beat.Pools[i].Outline)
		return d, true
	}
	i := slices.IndexFunc(d.Beat.Features, func(x geo.Feature) bool { return x.ID == id })
	if i < 0 {
		return d, false
	}
	d.Beat.Features = slices.Clone(d.Beat.Features)
	s := d.Beat.Features[i].Shape
	if len(s.Points) > 0 {
		s.Points = f(Loose, slices.Clip(s.Points))
	}
	s.Lines = slices.Clone(s.Lines)
	for j, l := range s.Lines {
		s.Lines[j] = f(Open, slices.Clip(l))
	}
	s.Areas = slices.Clone(s.Areas)
	for j, a := range s.Areas {
		s.Areas[j] = ring(a)
	}
	d.Beat.Features[i].Shape = s
	return d, true
}

// edit changes one strand.
func (d Draft) edit(v Vertex, f func(StrandKind, []orb.Point) ([]orb.Point, error)) (Draft, error) {
	n, found := -1, false
	var err error
	next, _ := d.visit(v.Of, func(k StrandKind, line []orb.Point) []orb.Point {
		if n++; n != v.Strand {
			return line
		}
		found = true
		var out []orb.Point
		if out, err = f(k, line); err != nil {
			return line
		}
		return out
	})
	if !found {
		return d, gone(v.Of)
	}
	if err != nil {
		return d, err
	}
	return next, nil
}

func gone(of geo.ID) error {
	return refuse(of, geo.Point{}, "what was to be changed is not on the sketch any more", "Choose it again.")
}

// Move puts a corner somewhere else.
func (d Draft) Move(v Vertex, to geo.Point) (Draft, error) {
	if err := d.sound(v.Of, to); err != nil {
		return d, err
	}
	return d.edit(v, func(_ StrandKind, line []orb.Point) ([]orb.Point, error) {
		if v.Index < 0 || v.Index >= len(line) {
			return nil, gone(v.Of)
		}
		line = slices.Clone(line)
		line[v.Index] = d.Plane.Place(to).LonLat()
		return line, nil
	})
}

// Insert puts a new corner before the one of that index; the index after the last one appends.
func (d Draft) Insert(v Vertex, at geo.Point) (Draft, error) {
	if err := d.sound(v.Of, at); err != nil {
		return d, err
	}
	return d.edit(v, func(_ StrandKind, line []orb.Point) ([]orb.Point, error) {
		if v.Index < 0 || v.Index > len(line) {
			return nil, gone(v.Of)
		}
		return slices.Insert(slices.Clone(line), v.Index, d.Plane.Place(at).LonLat()), nil
	})
}

// Delete takes a corner away, as long as enough are left.
func (d Draft) Delete(v Vertex) (Draft, error) {
	return d.edit(v, func(k StrandKind, line []orb.Point) ([]orb.Point, error) {
		switch {
		case v.Index < 0 || v.Index >= len(line):
			return nil, gone(v.Of)
		case len(line) <= least[k]:
			return nil, refuse(v.Of, d.Plane.At(geo.PlaceOf(line[v.Index])), "a %s needs its last %d points", "Remove the whole of it instead.", k, least[k])
		}
		return slices.Delete(slices.Clone(line), v.Index, v.Index+1), nil
	})
}

// Shift moves the whole of a pool or feature, a pool with its marked head and tail.
func (d Draft) Shift(id geo.ID, dx, dy units.Metres) (Draft, error) {
	var err error
	shift := func(p orb.Point) orb.Point {
		q := d.Plane.At(geo.PlaceOf(p))
		q.X, q.Y = q.X+dx, q.Y+dy
		if e := d.sound(id, q); e != nil {
			err = e
		}
		return d.Plane.Place(q).LonLat()
	}
	next, ok := d.visit(id, func(_ StrandKind, line []orb.Point) []orb.Point {
		out := make([]orb.Point, len(line))
		for i, p := range line {
			out[i] = shift(p)
		}
		return out
	})
	if !ok {
		return d, gone(id)
	}
	for i := range next.Beat.Pools {
		if p := &next.Beat.Pools[i]; p.ID == id {
			for _, mark := range []*geo.Place{&p.Head, &p.Tail} {
				if !mark.IsZero() {
					*mark = geo.PlaceOf(shift(mark.LonLat()))
				}
			}
		}
	}
	if err != nil {
		return d, err
	}
	return next, nil
}
