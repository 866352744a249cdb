package geo

import "github.com/paulmach/orb"

// Shape is what a feature looks like, in degrees: points, lines, areas, or several
// of them. Most features have exactly one.
type Shape struct {
	Points orb.MultiPoint      `json:"points,omitempty"`
	Lines  orb.MultiLineString `json:"lines,omitempty"`
	Areas  orb.MultiPolygon    `json:"areas,omitempty"`
}

// PointShape, LineShape and AreaShape return a shape of one part.
func PointShape(p orb.Point) Shape     { return Shape{Points: orb.MultiPoint{p}} }
func LineShape(l orb.LineString) Shape { return Shape{Lines: orb.MultiLineString{l}} }
func AreaShape(a orb.Polygon) Shape    { return Shape{Areas: orb.MultiPolygon{a}} }

// IsZero reports whether nothing is drawn.
func (s Shape) IsZero() bool { return len(s.Points)+len(s.Lines)+len(s.Areas) == 0 }

// each calls f with every position of the shape.
func (s Shape) each(f func(orb.Point)) {
	for _, p := range s.Points {
		f(p)
	}
	for _, l := range s.Lines {
		for _, p := range l {
			f(p)
		}
	}
	for _, a := range s.Areas {
		eachOf(a, f)
	}
}

func eachOf(a orb.Polygon, f func(orb.Point)) {
	for _, r := range a {
		for _, p := range r {
			f(p)
		}
	}
}
