package geo

import (
	"cmp"
	"encoding/json"
	"fmt"
	"slices"

	"gloamline/journal/units"
)

// SkyPoint is the height of the skyline in one direction: Bearing clockwise from
// true north, Altitude above the level horizon, both in degrees. JSON: [135, 12.5].
type SkyPoint struct {
	Bearing  units.Degrees
	Altitude units.Degrees
}

// MarshalJSON writes [bearing, altitude].
func (p SkyPoint) MarshalJSON() ([]byte, error) {
	return json.Marshal([2]units.Degrees{p.Bearing, p.Altitude})
}

// UnmarshalJSON reads [bearing, altitude].
func (p *SkyPoint) UnmarshalJSON(b []byte) error {
	var v []units.Degrees
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	if len(v) != 2 {
		return fmt.Errorf("a skyline point is a bearing and an altitude, not %d numbers", len(v))
	}
	p.Bearing, p.Altitude = v[0], v[1]
	return nil
}

// Skyline is what hills, banks and houses leave of the sky, seen from the water. It
// goes straight from each point to the next around the horizon. Two points at one
// bearing make a cliff. None at all is a level horizon.
type Skyline []SkyPoint

// Limits of a skyline point, in degrees: from a horizon below eye level, as over the
// sea from a height, to the zenith.
const (
	lowestSky  units.Degrees = -5
	highestSky units.Degrees = 90
)

// Check returns nil when every bearing lies in [0, 360], every altitude in [-5, 90],
// and no bearing stands more than twice.
func (s Skyline) Check() error {
	seen := map[units.Degrees]int{}
	for i, p := range s {
		switch {
		case !(p.Bearing >= 0 && p.Bearing <= 360):
			return fmt.Errorf("skyline point %d has the bearing %v; bearings go from 0 to 360 degrees", i+1, float64(p.Bearing))
		case !(p.Altitude >= lowestSky && p.Altitude <= highestSky):
			return fmt.Errorf("skyline point %d has the altitude %v; altitudes go from -5 to 90 degrees", i+1, float64(p.Altitude))
		}
		if seen[p.Bearing]++; seen[p.Bearing] > 2 {
			return fmt.Errorf("the skyline has more than two points at the bearing %v", float64(p.Bearing))
		}
	}
	return nil
}

// Sorted returns the points by bearing in [0, 360), those at one bearing as kept.
func (s Skyline) Sorted() Skyline {
	out := make(Skyline, len(s))
	for i, p := range s {
		out[i] = SkyPoint{p.Bearing.Bearing(), p.Altitude}
	}
	slices.SortStableFunc(out, func(a, b SkyPoint) int { return cmp.Compare(a.Bearing, b.Bearing) })
	return out
}

// Altitude returns the height of the skyline at a bearing, straight between the
// points either side and around through north. At a cliff it is the higher one.
func (s Skyline) Altitude(bearing units.Degrees) units.Degrees {
	if len(s) == 0 {
		return 0
	}
	t, b := s.Sorted(), bearing.Bearing()
	i, _ := slices.BinarySearchFunc(t, b, func(p SkyPoint, b units.Degrees) int { return cmp.Compare(p.Bearing, b) })
	if i < len(t) && t[i].Bearing == b {
		top := t[i].Altitude
		for _, p := range t[i:] {
			if p.Bearing == b {
				top = max(top, p.Altitude)
			}
		}
		return top
	}
	before, after := t[(i+len(t)-1)%len(t)], t[i%len(t)]
	span := float64((after.Bearing - before.Bearing).Bearing())
	if span == 0 {
		return before.Altitude // a single point: the same all round
	}
	part := float64((b - before.Bearing).Bearing()) / span
	return before.Altitude + units.Degrees(part)*(after.Altitude-before.Altitude)
}
