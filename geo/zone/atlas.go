package zone

import (
	"fmt"
	"math"
)

// atlas is the map of zones, its borders still encoded.
type atlas struct {
	release string
	areas   []area
}

// area is one of the areas of a zone: an outline and its holes, as they are encoded,
// with the box around the outline in degrees.
type area struct {
	zone                     string
	rings                    [][]byte
	west, east, south, north float64
	size                     float64 // square degrees
}

// newAtlas reads the whole map once, so that no damage comes to light later.
func newAtlas(data []byte) (atlas, error) {
	var a atlas
	for f, err := range fields(data) {
		if err != nil {
			return atlas{}, err
		}
		switch f.number {
		case fieldMethod:
			if f.value != methodPolyline {
				return atlas{}, fmt.Errorf("its borders are written in a way not known here (%d)", f.value)
			}
		case fieldRelease:
			a.release = string(f.bytes)
		case fieldZone:
			areas, err := zoneAreas(f.bytes)
			if err != nil {
				return atlas{}, err
			}
			a.areas = append(a.areas, areas...)
		}
	}
	return a, nil
}

func zoneAreas(zone []byte) ([]area, error) {
	var out []area
	name := ""
	for f, err := range fields(zone) {
		if err != nil {
			return nil, err
		}
		switch f.number {
		case fieldName:
			name = string(f.bytes)
		case fieldArea:
			a, err := newArea(f.bytes)
			if err != nil {
				return nil, err
			}
			out = append(out, a)
		}
	}
	for i := range out {
		out[i].zone = name
	}
	return out, nil
}

func newArea(polygon []byte) (area, error) {
	var a area
	for f, err := range fields(polygon) {
		if err != nil {
			return area{}, err
		}
		switch f.number {
		case fieldPoints:
			if err := a.outline(f.bytes); err != nil {
				return area{}, err
			}
		case fieldHole:
			hole, err := newArea(f.bytes)
			if err != nil {
				return area{}, err
			}
			a.rings = append(a.rings, hole.rings...)
		}
	}
	return a, nil
}

func (a *area) outline(line []byte) error {
	a.rings = append([][]byte{line}, a.rings...)
	a.west, a.south, a.east, a.north = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	var twice, fx, fy, px, py float64
	err := points(line, func(n int, x, y float64) {
		a.west, a.east, a.south, a.north = min(a.west, x), max(a.east, x), min(a.south, y), max(a.north, y)
		if n == 0 {
			fx, fy = x, y
		} else {
			twice += (px-fx)*(y-fy) - (x-fx)*(py-fy)
		}
		px, py = x, y
	})
	a.size = math.Abs(twice) / 2
	return err
}

// near reports whether the position lies in the box or within Near of it.
func (a *area) near(lat, lon float64) bool {
	dLat := Near / kmPerDegree * 1.01
	dLon := dLat / math.Max(0.01, math.Cos(lat*math.Pi/180))
	return lat >= a.south-dLat && lat <= a.north+dLat && lon >= a.west-dLon && lon <= a.east+dLon
}

// look tells whether the position lies in the area, and how far its border is.
func (a *area) look(lat, lon float64) (in bool, km float64) {
	r := probe{lat: lat, lon: lon, cos: math.Cos(lat * math.Pi / 180), km: math.Inf(1)}
	for _, line := range a.rings {
		r.ring(line)
	}
	return r.in, r.km
}
