package geo

import (
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"gloamline/journal/units"
)

// Place is a position on WGS84 in degrees: latitude north, longitude east. The zero
// Place means none; it lies in the sea off Africa.
type Place struct {
	Lat units.Degrees `json:"lat"`
	Lon units.Degrees `json:"lon"`
}

// PlaceOf returns the place of a point that holds longitude and latitude.
func PlaceOf(p orb.Point) Place { return Place{Lat: units.Degrees(p[1]), Lon: units.Degrees(p[0])} }

// LonLat returns the place as a point of longitude and latitude in degrees.
func (p Place) LonLat() orb.Point { return orb.Point{float64(p.Lon), float64(p.Lat)} }

// IsZero reports whether there is no place.
func (p Place) IsZero() bool { return p == Place{} }

// Check returns nil for a latitude in [-90, 90] and a longitude in [-180, 180].
func (p Place) Check() error {
	lat, lon := float64(p.Lat), float64(p.Lon)
	if !(math.Abs(lat) <= 90 && math.Abs(lon) <= 180) { // NaN fails too
		return fmt.Errorf("a place lies between 90 degrees south and north and 180 west and east, not at latitude %v, longitude %v", lat, lon)
	}
	return nil
}

// String returns latitude and longitude with 5 decimals, about 1 m: 54.98321, -4.42705.
func (p Place) String() string { return fmt.Sprintf("%.5f, %.5f", float64(p.Lat), float64(p.Lon)) }

// Place returns where the beat is: At if set, else the middle of the extent of what
// is drawn, else none.
func (b Beat) Place() Place {
	if !b.At.IsZero() {
		return b.At
	}
	bound := b.Bound()
	if bound.IsEmpty() {
		return Place{}
	}
	return centre(bound)
}

// PlaceOf returns the pool's own place for its light: the centroid of its outline,
// or the beat's place when it is not drawn.
func (b Beat) PlaceOf(p Pool) Place {
	if at := p.Place(); !at.IsZero() {
		return at
	}
	return b.Place()
}

// Place returns the centroid of the pool's outline, or none when it is not drawn.
func (p Pool) Place() Place {
	if !p.Drawn() {
		return Place{}
	}
	plane := NewPlane(PlaceOf(p.Outline[0][0]))
	return plane.Place(plane.Area(p.Outline).Centroid())
}
