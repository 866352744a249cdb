package geo

import (
	"encoding/json"
	"errors"
	"math"
	"slices"

	"gloamline/journal/units"
)

// Canopy is how closed the trees are over a place.
type Canopy string

// The canopies. The texts are stored and must not change.
const (
	Open   Canopy = "open"
	Partly Canopy = "partly"
	Closed Canopy = "closed"
)

// Canopies lists every canopy.
var Canopies = []Canopy{Open, Partly, Closed}

// Horizon is the height of hill or trees in one direction.
type Horizon struct {
	Bearing  units.Degrees // clockwise from true north
	Altitude units.Degrees // above the level
}

// MarshalJSON writes [bearing, altitude].
func (h Horizon) MarshalJSON() ([]byte, error) {
	return json.Marshal([2]float64{float64(h.Bearing), float64(h.Altitude)})
}

// UnmarshalJSON reads [bearing, altitude].
func (h *Horizon) UnmarshalJSON(b []byte) error {
	var v []float64
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	if len(v) != 2 {
		return errors.New("a skyline is a list of pairs: bearing, altitude")
	}
	h.Bearing, h.Altitude = units.Degrees(v[0]), units.Degrees(v[1])
	return nil
}

// Skyline is the horizon around a pool, linear between its points.
type Skyline []Horizon

// Altitude returns the height of the skyline at a bearing; 0 without points.
func (s Skyline) Altitude(bearing units.Degrees) units.Degrees {
	if len(s) == 0 {
		return 0
	}
	pts := slices.Clone(s)
	slices.SortFunc(pts, func(a, b Horizon) int {
		if a.Bearing < b.Bearing {
			return -1
		}
		return 1
	})
	x := math.Mod(float64(bearing), 360)
	if x < 0 {
		x += 360
	}
	for i := range pts {
		a, b := pts[i], pts[(i+1)%len(pts)]
		lo, hi := float64(a.Bearing), float64(b.Bearing)
		if i == len(pts)-1 {
			hi += 360
		}
		at := x
		if at < lo {
			at += 360
		}
		if at >= lo && at <= hi && hi > lo {
			return a.Altitude + (b.Altitude-a.Altitude)*units.Degrees((at-lo)/(hi-lo))
		}
	}
	return pts[0].Altitude
}

// Check reports what is wrong with a skyline.
func (s Skyline) Check() error {
	for _, h := range s {
		if !(h.Bearing >= 0 && h.Bearing <= 360) {
			return errors.New("a bearing lies between 0 and 360 degrees")
		}
		if !(h.Altitude >= -5 && h.Altitude <= 90) {
			return errors.New("a skyline stands between -5 and 90 degrees high")
		}
	}
	return nil
}
