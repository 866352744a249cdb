package geo

import (
	"errors"
	"math"

	"github.com/paulmach/orb"
)

// Place is a position on WGS84 in degrees, north and east positive.
type Place struct {
	Lat float64 `json:"lat"`
	Lon float64 `json:"lon"`
}

// PlaceOf turns a GeoJSON-ordered point (lon, lat) into a Place.
func PlaceOf(p orb.Point) Place { return Place{Lat: p[1], Lon: p[0]} }

// Point returns the place in GeoJSON order (lon, lat).
func (p Place) Point() orb.Point { return orb.Point{p.Lon, p.Lat} }

// Check reports why a place is none.
func (p Place) Check() error {
	switch {
	case math.IsNaN(p.Lat) || math.IsNaN(p.Lon) || math.IsInf(p.Lat, 0) || math.IsInf(p.Lon, 0):
		return errors.New("a position needs two numbers")
	case p.Lat < -90 || p.Lat > 90:
		return errors.New("a latitude lies between -90 and 90 degrees")
	case p.Lon < -180 || p.Lon > 180:
		return errors.New("a longitude lies between -180 and 180 degrees")
	}
	return nil
}
