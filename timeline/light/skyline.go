package light

import (
	"fmt"
	"math"
	"slices"

	"gloamline/journal/units"
)

// SkylinePoint is the height of the skyline in one direction, in degrees: bearing
// from true north through east, altitude above the level, up to 90. A negative
// altitude, as down a valley, counts as level: the model of the sky ends there.
type SkylinePoint struct {
	Bearing, Altitude units.Degrees
}

// Skyline is what hills and banks leave of the sky: its altitude goes linearly
// between points and round through north. Without points it is level.
type Skyline struct {
	bearing, altitude []float64 // ascending, closed: one point repeated beyond each end
	view              float64
}

// NewSkyline takes points in any order. Two points at one bearing make a cliff: the
// altitude jumps there from the first to the second as given.
func NewSkyline(points []SkylinePoint) (Skyline, error) {
	list := make([]SkylinePoint, 0, len(points)+2)
	for i, p := range points {
		if alt := float64(p.Altitude); !(alt >= -90 && alt <= 90) {
			return Skyline{}, fmt.Errorf("skyline point %d: altitude must lie between -90 and 90 degrees, not %v", i+1, alt)
		}
		b := float64(p.Bearing)
		if math.IsNaN(b) || math.IsInf(b, 0) {
			return Skyline{}, fmt.Errorf("skyline point %d: bearing must be a number of degrees, not %v", i+1, b)
		}
		list = append(list, SkylinePoint{units.Degrees(wrap(b)), max(0, p.Altitude)})
	}
	s := Skyline{view: 1}
	if len(list) == 0 {
		return s, nil
	}
	slices.SortStableFunc(list, func(a, b SkylinePoint) int {
		switch {
		case a.Bearing < b.Bearing:
			return -1
		case a.Bearing > b.Bearing:
			return 1
		}
		return 0
	})
	first, last := list[0], list[len(list)-1]
	first.Bearing += 360
	last.Bearing -= 360
	list = append(slices.Insert(list, 0, last), first)
	for _, p := range list {
		s.bearing = append(s.bearing, float64(p.Bearing))
		s.altitude = append(s.altitude, float64(p.Altitude))
	}
	s.view = s.mean(list)
	return s, nil
}

// mean returns the mean over all bearings of cos^2 of the altitude, exact for
// straight pieces. The list spans more than one turn; only 0 to 360 counts.
func (s Skyline) mean(list []SkylinePoint) float64 {
	rad := func(d units.Degrees) float64 { return float64(d) * math.Pi / 180 }
	sum := 0.0
	for i := 1; i < len(list); i++ {
		a, b := list[i-1], list[i]
		if i == 1 { // the piece through north appears once, at the far end
			continue
		}
		width := rad(b.Bearing - a.Bearing)
		low, high := rad(a.Altitude), rad(b.Altitude)
		mean := math.Cos(low) * math.Cos(low)
		if d := high - low; math.Abs(d) > 1e-6 {
			mean = 0.5 + (math.Sin(2*high)-math.Sin(2*low))/(4*d)
		}
		sum += width * mean
	}
	return max(0, min(1, sum/(2*math.Pi)))
}

// View is the sky view factor, 0 to 1: the share of the light of an even sky that
// reaches level ground, the mean of cos^2 of the skyline's altitude.
func (s Skyline) View() float64 {
	if len(s.bearing) == 0 {
		return 1
	}
	return s.view
}

// Altitude returns the skyline's altitude at a bearing, both in degrees.
func (s Skyline) Altitude(bearing units.Degrees) units.Degrees {
	alt, _ := s.at(wrap(float64(bearing)), 0)
	return units.Degrees(alt)
}

// at returns the altitude at a bearing of 0 up to 360 and the piece it lies on;
// hint is the piece of the last call, since bodies move little between two.
func (s *Skyline) at(bearing float64, hint int) (float64, int) {
	n := len(s.bearing)
	if n == 0 {
		return 0, 0
	}
	i := hint
	if i < 1 || i >= n || bearing < s.bearing[i-1] || bearing >= s.bearing[i] {
		i = 1
		for i < n-1 && bearing >= s.bearing[i] {
			i++
		}
	}
	width := s.bearing[i] - s.bearing[i-1]
	if width <= 0 {
		return s.altitude[i], i
	}
	return s.altitude[i-1] + (s.altitude[i]-s.altitude[i-1])*(bearing-s.bearing[i-1])/width, i
}

// wrap reduces a bearing to 0 up to 360.
func wrap(deg float64) float64 {
	deg = math.Mod(deg, 360)
	if deg < 0 {
		deg += 360
	}
	if deg >= 360 { // a tiny negative number rounds up to a full turn
		deg = 0
	}
	return deg
}
