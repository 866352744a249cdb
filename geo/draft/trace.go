package draft

import (
	"math"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Pixel is a point of an image, X to the right, Y down, from its upper left corner.
type Pixel struct{ X, Y float64 }

// Tracing lays an image under the sketch: scaled, turned and moved, never bent, so that
// two of its points lie where they belong. In complex numbers w = a z + b, with z = x - iy.
type Tracing struct{ a, b complex128 }

// Trace returns the tracing that puts two pixels on two points of the plane.
func Trace(p1, p2 Pixel, q1, q2 geo.Point) (Tracing, error) {
	z1, z2 := complex(p1.X, -p1.Y), complex(p2.X, -p2.Y)
	w1, w2 := complex(float64(q1.X), float64(q1.Y)), complex(float64(q2.X), float64(q2.Y))
	if !(abs(z2-z1) >= 1 && abs(z2-z1) < 1e6) {
		return Tracing{}, refuse(geo.ID{}, q1, "the two points of the image are one", "Choose two that lie far apart, a bridge and a gate for instance.")
	}
	if !(abs(w2-w1) >= 0.1 && abs(w2-w1) < 2*float64(reach)) {
		return Tracing{}, refuse(geo.ID{}, q1, "the two points of the sketch are one, or too far apart", "Choose two that lie far apart on the beat.")
	}
	a := (w2 - w1) / (z2 - z1)
	return Tracing{a, w1 - a*z1}, nil
}

func abs(z complex128) float64 { return math.Hypot(real(z), imag(z)) }

// Plane returns where a pixel lies on the plane.
func (t Tracing) Plane(p Pixel) geo.Point {
	w := t.a*complex(p.X, -p.Y) + t.b
	return geo.Point{X: units.Metres(real(w)), Y: units.Metres(imag(w))}
}

// Pixel returns where a point of the plane lies on the image.
func (t Tracing) Pixel(q geo.Point) Pixel {
	z := (complex(float64(q.X), float64(q.Y)) - t.b) / t.a
	return Pixel{real(z), -imag(z)}
}

// Scale returns how many metres a pixel covers.
func (t Tracing) Scale() units.Metres { return units.Metres(abs(t.a)) }

// Turn returns the bearing on the plane, clockwise from its Y axis, of what is up on the image.
func (t Tracing) Turn() units.Degrees {
	up := t.a * complex(0, 1)
	return units.DegreesFrom(math.Atan2(real(up), imag(up))).Bearing()
}
