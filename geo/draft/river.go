package draft

import (
	"math"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/simplify"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Thin takes away the points of a line that lie within a tolerance of the rest (Douglas
// and Peucker, Cartographica 10(2), 1973, 112-122). Both ends stay.
func Thin(p geo.Path, within units.Metres) geo.Path {
	if len(p) < 3 || !(within > 0) {
		return p
	}
	line := make(orb.LineString, len(p)) // metres here, for the one call
	for i, q := range p {
		line[i] = orb.Point{float64(q.X), float64(q.Y)}
	}
	line = simplify.DouglasPeucker(float64(within)).LineString(line)
	out := make(geo.Path, len(line))
	for i, q := range line {
		out[i] = geo.Point{X: units.Metres(q[0]), Y: units.Metres(q[1])}
	}
	return out
}

// Walk makes a line of the places of a track, thinned. Points too far from the beat are refused.
func (d Draft) Walk(places []geo.Place, within units.Metres) (geo.Path, error) {
	out := make(geo.Path, 0, len(places))
	for _, p := range places {
		if p.Check() != nil {
			return nil, refuse(d.Beat.ID, geo.Point{}, "the track has a point that is not on the earth", "Choose another track.")
		}
		out = append(out, d.Plane.At(p))
	}
	if err := d.sound(d.Beat.ID, out...); err != nil {
		return nil, err
	}
	if out.Length() < 1 {
		return nil, refuse(d.Beat.ID, geo.Point{}, "the track goes nowhere", "Choose one that was walked along the bank.")
	}
	return Thin(out, within), nil
}

// Banks draws both banks of a river from one line, downstream, and a width. The line is the
// middle of the river when along is "", else the bank that was walked.
func (d Draft) Banks(line geo.Path, width units.Metres, along geo.Bank, left, right geo.ID) (Draft, error) {
	if !(width >= 0.5 && width <= 500) {
		return d, refuse(d.Beat.ID, geo.Point{}, "a river is half a metre to 500 m wide, not %.1f m", "Give its width in metres.", float64(width))
	}
	if _, err := d.line(d.Beat.ID, line); err != nil {
		return d, err
	}
	var l, r geo.Path
	switch along {
	case geo.TrueLeft:
		l, r = line, Offset(line, -width)
	case geo.TrueRight:
		l, r = Offset(line, width), line
	default:
		l, r = Offset(line, width/2), Offset(line, -width/2)
	}
	d1, err := d.AddBank(left, geo.TrueLeft, l)
	if err != nil {
		return d, tooTight(d, line, err)
	}
	d2, err := d1.AddBank(right, geo.TrueRight, r)
	if err != nil {
		return d, tooTight(d, line, err)
	}
	return d2, nil
}

func tooTight(d Draft, line geo.Path, err error) error {
	if e, ok := err.(*Error); ok && len(line) > 0 && e.At == (geo.Point{}) {
		e.At = line[0]
	}
	return err
}

// Offset returns the line at a distance to the left of another, or to the right of it when
// negative. In a bend tighter than that the points that would come nearer are left out, so
// that no loops are left.
func Offset(line geo.Path, off units.Metres) geo.Path {
	var p geo.Path
	for i, q := range line {
		if i == 0 || q.Distance(p[len(p)-1]) > 0.01 {
			p = append(p, q)
		}
	}
	var out geo.Path
	for i := range p {
		nx, ny, stretch := normal(p, i)
		q := geo.Point{X: p[i].X + off*units.Metres(nx*stretch), Y: p[i].Y + off*units.Metres(ny*stretch)}
		if float64(p.Foot(q).Distance) >= 0.98*math.Abs(float64(off)) {
			out = append(out, q)
		}
	}
	return out
}

// normal is the unit vector to the left at a corner, halfway between its two edges, and by how
// much it must be stretched to keep the distance from both, at most 2.
func normal(p geo.Path, i int) (x, y, stretch float64) {
	dir := func(a, b geo.Point) (float64, float64) {
		l := float64(a.Distance(b))
		if l == 0 {
			return 0, 0
		}
		return float64(b.X-a.X) / l, float64(b.Y-a.Y) / l
	}
	var x1, y1, x2, y2 float64
	if i > 0 {
		x1, y1 = dir(p[i-1], p[i])
	}
	if i < len(p)-1 {
		x2, y2 = dir(p[i], p[i+1])
	}
	if i == 0 {
		x1, y1 = x2, y2
	}
	if i == len(p)-1 {
		x2, y2 = x1, y1
	}
	sx, sy := x1+x2, y1+y2
	l := math.Hypot(sx, sy)
	if l < 1e-9 { // straight back
		return -y1, x1, 1
	}
	sx, sy = sx/l, sy/l
	return -sy, sx, min(2, 1/max(0.5, sx*x1+sy*y1))
}
