package geo

import (
	"math"

	"github.com/paulmach/orb"

	"gloamline/journal/units"
)

// WGS84 ellipsoid: National Geospatial-Intelligence Agency, NGA.STND.0036 (2014):
// semi-major axis and flattening of the defining parameters.
const (
	semiMajorM = 6378137.0
	flattening = 1 / 298.257223563
	ecc2       = flattening * (2 - flattening) // first eccentricity squared
)

// Plane is a flat map around an origin, in metres: X to the right, Y up. Unturned, X
// is east and Y north. It is the equirectangular projection with the two radii of
// curvature of the ellipsoid at the origin (see the package comment for its accuracy).
type Plane struct {
	origin   Place
	xPer     float64 // metres per degree of longitude at the origin
	yPer     float64 // metres per degree of latitude at the origin
	cos, sin float64 // of the turn
}

// NewPlane returns the plane around an origin, north up.
func NewPlane(origin Place) Plane {
	x, y := degreeLengths(origin.Lat)
	return Plane{origin: origin, xPer: float64(x), yPer: float64(y), cos: 1}
}

// degreeLengths returns the length of one degree of longitude and of latitude.
// Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395 (1987),
// p. 25, equations 4-21 and 4-19, from the radii of curvature 4-20 and 4-18.
func degreeLengths(lat units.Degrees) (lon, latLen units.Metres) {
	sin, cos := math.Sincos(lat.Radians())
	w := 1 - ecc2*sin*sin
	n := semiMajorM / math.Sqrt(w)
	m := semiMajorM * (1 - ecc2) / (w * math.Sqrt(w))
	return units.Metres(n * cos * math.Pi / 180), units.Metres(m * math.Pi / 180)
}

// Turned returns the plane turned so that the direction of the given bearing runs
// to the right (+X).
func (pl Plane) Turned(bearing units.Degrees) Plane {
	pl.sin, pl.cos = math.Sincos(bearing.Radians() - math.Pi/2)
	return pl
}

// Origin returns the place at 0, 0.
func (pl Plane) Origin() Place { return pl.origin }

// North returns the unit vector of true north on the plane.
func (pl Plane) North() (x, y float64) { return -pl.sin, pl.cos }

// At returns where a place lies.
func (pl Plane) At(p Place) Point { return pl.point(p.LonLat()) }

func (pl Plane) point(p orb.Point) Point {
	e := turn(p[0]-float64(pl.origin.Lon)) * pl.xPer
	n := (p[1] - float64(pl.origin.Lat)) * pl.yPer
	return Point{units.Metres(e*pl.cos - n*pl.sin), units.Metres(e*pl.sin + n*pl.cos)}
}

// Place returns the place at a point of the plane.
func (pl Plane) Place(p Point) Place {
	x, y := float64(p.X), float64(p.Y)
	e, n := x*pl.cos+y*pl.sin, y*pl.cos-x*pl.sin
	return Place{
		Lat: pl.origin.Lat + units.Degrees(n/pl.yPer),
		Lon: units.Degrees(turn(float64(pl.origin.Lon) + e/pl.xPer)),
	}
}

// Bearing returns the direction from one point to another, clockwise from true north.
func (pl Plane) Bearing(from, to Point) units.Degrees {
	x, y := float64(to.X-from.X), float64(to.Y-from.Y)
	e, n := x*pl.cos+y*pl.sin, y*pl.cos-x*pl.sin
	return units.DegreesFrom(math.Atan2(e, n)).Bearing()
}

// Path returns a line or ring on the plane.
func (pl Plane) Path(line []orb.Point) Path {
	out := make(Path, len(line))
	for i, p := range line {
		out[i] = pl.point(p)
	}
	return out
}

// Area returns a polygon on the plane.
func (pl Plane) Area(a orb.Polygon) Area {
	out := make(Area, len(a))
	for i, r := range a {
		out[i] = pl.Path(r)
	}
	return out
}
