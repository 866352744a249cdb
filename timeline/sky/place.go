package sky

import (
	"fmt"
	"math"

	"gloamline/journal/units"
)

// Place is a position on the WGS84 ellipsoid, height 0. Lat is the geodetic
// latitude, -90 to 90, north positive. Lon is positive east and may be any finite
// number.
type Place struct {
	Lat, Lon units.Degrees
}

// NewPlace returns the place, or an error that says which number is wrong.
func NewPlace(lat, lon units.Degrees) (Place, error) {
	p := Place{Lat: lat, Lon: lon}
	return p, p.Check()
}

// Check reports a latitude outside -90 to 90 or a number that is no position.
// Positions of an unchecked, wrong place are meaningless but never panic.
func (p Place) Check() error {
	lat, lon := float64(p.Lat), float64(p.Lon)
	if math.IsNaN(lat) || lat < -90 || lat > 90 {
		return fmt.Errorf("latitude must lie between -90 and 90 degrees, not %v", lat)
	}
	if math.IsNaN(lon) || math.IsInf(lon, 0) {
		return fmt.Errorf("longitude must be a number of degrees, not %v", lon)
	}
	return nil
}

// The WGS84 ellipsoid.
const (
	earthRadiusKM = 6378.137
	flattening    = 1 / 298.257223563
)

// site is a place made ready for turning geocentric vectors into horizontal ones.
type site struct {
	sinLat, cosLat float64
	axis, height   float64 // distance from the Earth's axis and above the equator, Earth radii
	lon            float64 // radians, reduced to one turn
}

func (p Place) site() site {
	sinLat, cosLat := math.Sincos(radians(float64(p.Lat)))
	// Prime-vertical radius of curvature and its polar counterpart, Earth radii.
	const polar = (1 - flattening) * (1 - flattening)
	c := 1 / math.Sqrt(cosLat*cosLat+polar*sinLat*sinLat)
	return site{
		sinLat: sinLat, cosLat: cosLat,
		axis: c * cosLat, height: polar * c * sinLat,
		lon: radians(math.Mod(float64(p.Lon), 360)),
	}
}

// horizontal returns altitude and azimuth in degrees and the distance in Earth
// radii of the geocentric vector v, with sin and cos of local sidereal time.
func (s site) horizontal(v vector, sin, cos float64) (alt, az, dist float64) {
	toward := v[0]*cos + v[1]*sin - s.axis // toward the local meridian on the equator
	east := v[1]*cos - v[0]*sin
	pole := v[2] - s.height
	up := toward*s.cosLat + pole*s.sinLat
	north := pole*s.cosLat - toward*s.sinLat
	flat2 := north*north + east*east
	az = degrees(math.Atan2(east, north))
	if az < 0 {
		az += 360
	}
	if az >= 360 { // a hair west of north rounds up to a full turn
		az = 0
	}
	return degrees(math.Atan2(up, math.Sqrt(flat2))), az, math.Sqrt(flat2 + up*up)
}

// altitude is the altitude and distance of horizontal alone, for searches.
func (s site) altitude(v vector, sin, cos float64) (alt, dist float64) {
	toward := v[0]*cos + v[1]*sin - s.axis
	east := v[1]*cos - v[0]*sin
	pole := v[2] - s.height
	up := toward*s.cosLat + pole*s.sinLat
	dist = math.Sqrt(toward*toward + east*east + pole*pole)
	return degrees(math.Asin(max(-1, min(1, up/dist)))), dist
}

func radians(d float64) float64 { return d * (math.Pi / 180) }
func degrees(r float64) float64 { return r * (180 / math.Pi) }
