package draft

import (
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"gloamline/geo"
)

// AddPoint draws a way in, a hazard, a landmark or a lie.
func (d Draft) AddPoint(id geo.ID, role geo.Role, name string, at geo.Point) (Draft, error) {
	if err := d.sound(id, at); err != nil {
		return d, err
	}
	return d.add(geo.Feature{ID: id, Role: role, Name: name, Shape: geo.PointShape(d.Plane.Place(at).LonLat())})
}

// AddBank draws a bank line, downstream.
func (d Draft) AddBank(id geo.ID, side geo.Bank, line geo.Path) (Draft, error) {
	l, err := d.line(id, line)
	if err != nil {
		return d, err
	}
	return d.add(geo.Feature{ID: id, Role: geo.RoleBank, Bank: side, Shape: geo.LineShape(l)})
}

// AddArea draws an area, of trees for instance.
func (d Draft) AddArea(id geo.ID, role geo.Role, name string, corners geo.Path) (Draft, error) {
	a, err := d.ring(id, corners)
	if err != nil {
		return d, err
	}
	return d.add(geo.Feature{ID: id, Role: role, Name: name, Shape: geo.AreaShape(a)})
}

func (d Draft) line(of geo.ID, p geo.Path) (orb.LineString, error) {
	if err := d.sound(of, p...); err != nil {
		return nil, err
	}
	if len(p) < 2 || p.Length() < 0.1 {
		return nil, refuse(of, geo.Point{}, "a line needs two points that lie apart", "Go on to draw along it.")
	}
	out := make(orb.LineString, len(p))
	for i, q := range p {
		out[i] = d.Plane.Place(q).LonLat()
	}
	return out, nil
}

func (d Draft) add(f geo.Feature) (Draft, error) {
	if d.taken(f.ID) {
		return d, gone(f.ID)
	}
	f.Name = strings.TrimSpace(f.Name)
	d.Beat.Features = append(slices.Clip(d.Beat.Features), f)
	return d, nil
}

func (d Draft) feature(id geo.ID, f func(*geo.Feature)) (Draft, error) {
	i := slices.IndexFunc(d.Beat.Features, func(x geo.Feature) bool { return x.ID == id })
	if i < 0 {
		return d, gone(id)
	}
	d.Beat.Features = slices.Clone(d.Beat.Features)
	f(&d.Beat.Features[i])
	return d, nil
}

// Turn makes a point another sort of thing: a hazard a lie, for instance.
func (d Draft) Turn(id geo.ID, role geo.Role) (Draft, error) {
	if !role.Known() || role == geo.RolePool {
		return d, refuse(id, geo.Point{}, "%q is nothing that can be marked", "Choose a way in, a hazard, a lie or a mark.", role)
	}
	return d.feature(id, func(f *geo.Feature) { f.Role = role })
}

// Remove takes a pool or feature away and numbers the pools again. Whether nights refer to a pool is the journal's
// to say.
func (d Draft) Remove(id geo.ID) (Draft, error) {
	n := len(d.Beat.Pools) + len(d.Beat.Features)
	d.Beat.Pools = slices.DeleteFunc(slices.Clone(d.Beat.Pools), func(p geo.Pool) bool { return p.ID == id })
	d.Beat.Features = slices.DeleteFunc(slices.Clone(d.Beat.Features), func(f geo.Feature) bool { return f.ID == id })
	if len(d.Beat.Pools)+len(d.Beat.Features) == n {
		return d, gone(id)
	}
	return d.numbered(d.Beat.InOrder()), nil
}
