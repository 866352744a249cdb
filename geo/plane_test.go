package geo

import (
	"math"
	"testing"

	"github.com/paulmach/orb"
	orbgeo "github.com/paulmach/orb/geo"
	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"gloamline/journal/units"
)

// Lengths of a degree on WGS84. Equator and poles: 111 320 m, 110 574 m and 111 694 m,
// as commonly published. At 53 degrees north: radii of curvature 6391797.44772 m along
// the parallel and 6376233.57268 m along the meridian, worked out by N. de Hilster in a
// public navigation forum (23 March 2008).
func TestDegreeLengths(t *testing.T) {
	lon, lat := degreeLengths(0)
	assert.InDelta(t, 111320, float64(lon), 1)
	assert.InDelta(t, 110574, float64(lat), 0.5)
	lon, lat = degreeLengths(90)
	assert.InDelta(t, 0, float64(lon), 1e-6)
	assert.InDelta(t, 111694, float64(lat), 0.5)
	lon, lat = degreeLengths(53)
	assert.InDelta(t, 6391797.44772*math.Cos(53*math.Pi/180)*math.Pi/180, float64(lon), 1e-4)
	assert.InDelta(t, 6376233.57268*math.Pi/180, float64(lat), 1e-4)
}

// Series in use for the same lengths on WGS84 (coefficients as published for a
// public degree-length calculator of a United States mapping agency). It is known to
// be a little low, by 0.6 parts in a million.
func TestDegreeLengthsAgainstSeries(t *testing.T) {
	for lat := -85.0; lat <= 85; lat += 5 {
		p := lat * math.Pi / 180
		m := 111132.92 - 559.82*math.Cos(2*p) + 1.175*math.Cos(4*p) - 0.0023*math.Cos(6*p)
		n := 111412.84*math.Cos(p) - 93.5*math.Cos(3*p) + 0.118*math.Cos(5*p)
		gotN, gotM := degreeLengths(units.Degrees(lat))
		assert.InDelta(t, m, float64(gotM), 0.07, lat)
		assert.InDelta(t, n, float64(gotN), 0.07, lat)
	}
}

// The published worked example of Vincenty's formulae, Flinders Peak to Buninyong
// (Geocentric Datum of Australia Technical Manual, chapter 4): 54972.271 m, azimuth
// 306 degrees 52' 05.37" and back 127 degrees 10' 25.07", on GRS80, which differs from
// WGS84 by 0.1 mm. It is 27 km from the origin to either end, far beyond a beat.
func TestPlaneAgainstVincenty(t *testing.T) {
	a := Place{Lat: -37.9510334166667, Lon: 144.424867888889}
	b := Place{Lat: -37.6528211388889, Lon: 143.926495527778}
	pl := NewPlane(Place{Lat: (a.Lat + b.Lat) / 2, Lon: (a.Lon + b.Lon) / 2})
	assert.InDelta(t, 54972.271, float64(pl.At(a).Distance(pl.At(b))), 0.5)
	azimuth := (306 + 52.0/60 + 5.37/3600 + 127 + 10.0/60 + 25.07/3600 + 180) / 2 // at the middle of the way
	assert.InDelta(t, azimuth, float64(pl.Bearing(pl.At(a), pl.At(b))), 0.01)
}

// Ensure the promised accuracy within 2 km and 5 km of the origin, against the
// distance on a sphere by orb v0.14.0 corrected by the ellipsoid's own radii: a plane
// put at the middle of each pair, where it is exact to second order.
func TestPlaneAccuracy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := Place{Lat: units.Degrees(rapid.Float64Range(-70, 70).Draw(t, "lat")), Lon: units.Degrees(rapid.Float64Range(-180, 180).Draw(t, "lon"))}
		for _, c := range []struct{ reach, allowed float64 }{{2000, 0.001}, {5000, 0.003}} {
			pl := NewPlane(o).Turned(units.Degrees(rapid.Float64Range(0, 360).Draw(t, "turn")))
			draw := func(name string) Place {
				r, a := rapid.Float64Range(0, c.reach).Draw(t, name+" distance"), rapid.Float64Range(0, 2*math.Pi).Draw(t, name+" direction")
				return pl.Place(Point{units.Metres(r * math.Cos(a)), units.Metres(r * math.Sin(a))})
			}
			p, q := draw("p"), draw("q")
			mid := NewPlane(Place{Lat: (p.Lat + q.Lat) / 2, Lon: p.Lon})
			want, got := float64(mid.At(p).Distance(mid.At(q))), float64(pl.At(p).Distance(pl.At(q)))
			if math.Abs(got-want) > c.allowed*want+1e-6 {
				t.Fatalf("%v to %v within %v m of %v: %v m, want %v m", p, q, c.reach, o, got, want)
			}
			if back := pl.Place(pl.At(p)); math.Abs(float64(back.Lat-p.Lat)) > 1e-11 || math.Abs(turn(float64(back.Lon-p.Lon))) > 1e-10 {
				t.Fatalf("%v came back as %v", p, back)
			}
		}
	})
}

// Ensure that a sphere of the same place gives the same distance to its own 0.5 %:
// orb v0.14.0 takes the equatorial radius everywhere.
func TestPlaneAgainstSphere(t *testing.T) {
	pl := NewPlane(larrick)
	for _, q := range []orb.Point{{-4.42, 54.984}, {-4.428, 54.99}, {-4.4, 54.97}, {-4.4281, 54.9839}} {
		want := orbgeo.DistanceHaversine(larrick.LonLat(), q)
		assert.InEpsilon(t, want, float64(pl.At(larrick).Distance(pl.point(q))), 0.005)
		bearing := units.Degrees(orbgeo.Bearing(larrick.LonLat(), q)).Bearing()
		assert.InDelta(t, float64(bearing), float64(pl.Bearing(pl.At(larrick), pl.point(q))), 0.2)
	}
}

// Ensure that the bearing given to Turned runs to the right and north points where
// the north vector says.
func TestPlaneTurned(t *testing.T) {
	for _, bearing := range []units.Degrees{0, 37, 90, 135, 180, 270, 359} {
		pl := NewPlane(larrick).Turned(bearing)
		flat := NewPlane(larrick)
		sin, cos := math.Sincos(bearing.Radians())
		ahead := pl.At(flat.Place(Point{units.Metres(100 * sin), units.Metres(100 * cos)}))
		assert.InDelta(t, 100, float64(ahead.X), 1e-6, float64(bearing))
		assert.InDelta(t, 0, float64(ahead.Y), 1e-6, float64(bearing))
		north := pl.At(flat.Place(Point{0, 100}))
		x, y := pl.North()
		assert.InDelta(t, 100*x, float64(north.X), 1e-6)
		assert.InDelta(t, 100*y, float64(north.Y), 1e-6)
		assert.InDelta(t, float64(bearing), float64(pl.Bearing(Point{}, Point{X: 5})), 1e-9)
	}
}

// Ensure that a beat on the 180th meridian stays in one piece.
func TestPlaneAcrossMeridian(t *testing.T) {
	pl := NewPlane(Place{Lat: 65, Lon: 179.999})
	p := pl.At(Place{Lat: 65, Lon: -179.999})
	lon, _ := degreeLengths(65)
	assert.InDelta(t, 0.002*float64(lon), float64(p.X), 1e-6)
	assert.InDelta(t, -179.999, float64(pl.Place(p).Lon), 1e-9)
	b := Beat{Features: []Feature{{Shape: Shape{Points: orb.MultiPoint{{179.9, 65}, {-179.9, 65.1}}}}}}
	at := b.Place()
	assert.InDelta(t, 180, math.Abs(float64(at.Lon)), 1e-9)
	assert.InDelta(t, 65.05, float64(at.Lat), 1e-9)
}
