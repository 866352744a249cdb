package position

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal/units"
)

func dms(d, m, s float64) float64 { return (d + m/60 + s/3600) * math.Pi / 180 }

// Ensure that the worked examples of the guide come out: Ordnance Survey, A guide to
// coordinate systems in Great Britain, annexes C1 and C2 (the same point both ways).
func TestGuideExamples(t *testing.T) {
	lat, lon := dms(52, 39, 27.2531), dms(1, 43, 4.5177)
	e, n := gridFromAiry(lat, lon)
	assert.InDelta(t, 651409.903, e, 0.002)
	assert.InDelta(t, 313177.270, n, 0.002)
	la, lo := airyFromGrid(651409.903, 313177.270)
	assert.InDelta(t, lat, la, dms(0, 0, 0.0001))
	assert.InDelta(t, lon, lo, dms(0, 0, 0.0001))
}

// Ensure that the seven parameters are right to the 5 m the guide promises, against points
// whose exact shift is published: its example of the exact transformation (52 39 28.8282 N,
// 1 42 57.8663 E), and point TP01 of the test data for the exact transformation, Scilly.
// Both figures are from memory of those publications.
func TestHelmertWithinFiveMetres(t *testing.T) {
	for _, c := range []struct{ lat, lon, e, n float64 }{
		{52 + 39.0/60 + 28.8282/3600, 1 + 42.0/60 + 57.8663/3600, 651409.903, 313177.270},
		{49.92226393730, -6.29977752014, 91492.146, 11318.804},
	} {
		at := geo.Place{Lat: units.Degrees(c.lat), Lon: units.Degrees(c.lon)}
		pl := geo.NewPlane(at)
		off := pl.At(fromGrid(c.e, c.n)).Distance(geo.Point{})
		assert.Less(t, float64(off), 5.5, "%v", c)
		assert.Greater(t, float64(off), 0.1, "it is not the exact shift")
		e, n := toGrid(at)
		assert.Less(t, math.Hypot(e-c.e, n-c.n), 5.5)
	}
}

// Ensure that a reference stands for the middle of its square, with how wide that is.
func TestGridReference(t *testing.T) {
	for s, c := range map[string]struct {
		e, n, accuracy float64
	}{
		"TG 51409 13177": {651409.5, 313177.5, 5},
		"tg5140913177":   {651409.5, 313177.5, 5},
		"TG 514 131":     {651450, 313150, 71},
		"TG 5140 1317":   {651405, 313175, 7},
		"NX 123 678":     {212350, 567850, 71},
		"SV 91492 11318": {91492.5, 11318.5, 5},
		"HU 396 753":     {439650, 1175350, 71},
	} {
		r, err := Parse(s)
		require.NoError(t, err, s)
		want := fromGrid(c.e, c.n)
		assert.Equal(t, want, r.Place, s)
		assert.Equal(t, c.accuracy, float64(r.AccuracyM), s)
	}
}

// Ensure that a printed reference is the square the place lies in.
func TestGridPrintAndParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := fromGrid(rapid.Float64Range(100000, 650000).Draw(t, "e"), rapid.Float64Range(10000, 1200000).Draw(t, "n"))
		s := Print(p, Grid)
		if s == "" {
			t.Skip("too far out to sea")
		}
		r, err := Parse(s)
		require.NoError(t, err, s)
		require.Less(t, float64(geo.NewPlane(p).At(r.Place).Distance(geo.Point{})), 0.8, s)
	})
	assert.Empty(t, Print(geo.Place{Lat: 10, Lon: 10}, Grid))
}
