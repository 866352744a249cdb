package geo

import (
	"math"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"gloamline/journal/units"
)

var square = Path{{0, 0}, {30, 0}, {30, 10}, {0, 10}, {0, 0}}

func TestPathLengthAndAlong(t *testing.T) {
	assert.Equal(t, units.Metres(80), square.Length())
	at, dx, dy := square.Along(35)
	assert.Equal(t, Point{30, 5}, at)
	assert.InDelta(t, 0, dx, 1e-12)
	assert.InDelta(t, 1, dy, 1e-12)
	at, _, _ = square.Along(1000)
	assert.Equal(t, Point{0, 0}, at)
	at, dx, _ = square.Along(-5)
	assert.Equal(t, Point{0, 0}, at)
	assert.InDelta(t, 1, dx, 1e-12)
	assert.Equal(t, Path{{20, 0}, {30, 0}, {30, 5}}, square.Part(20, 35))
	assert.Equal(t, Path{{0, 0}, {15, 0}, {30, 0}}, Path{{0, 0}, {7, 0}, {30, 0}}.Even(3))
	assert.Equal(t, Path{{3, 3}, {3, 3}}, Path{{3, 3}}.Even(2))
}

func TestPathFoot(t *testing.T) {
	f := Path{{0, 0}, {10, 0}, {10, 10}}.Foot(Point{4, 3})
	assert.Equal(t, Foot{Point{4, 0}, 4, 3, true}, f)
	f = Path{{0, 0}, {10, 0}, {10, 10}}.Foot(Point{12, 6})
	assert.Equal(t, Foot{Point{10, 6}, 16, 2, false}, f)
	assert.True(t, math.IsInf(float64(Path{}.Foot(Point{}).Distance), 1))
}

func TestAreaOfIsland(t *testing.T) {
	a := Area{square, {{10, 4}, {10, 6}, {14, 6}, {14, 4}, {10, 4}}}
	assert.InDelta(t, 292, a.SquareMetres(), 1e-9)
	assert.Equal(t, Point{15, 5}, a.Centroid())
	assert.True(t, a.Holds(Point{5, 5}))
	assert.False(t, a.Holds(Point{12, 5}), "an island is not water")
	assert.False(t, a.Holds(Point{31, 5}))
	assert.InDelta(t, 1, float64(a.Edge(Point{11, 5}).Distance), 1e-12)
	assert.Equal(t, Point{}, Area{}.Centroid())
}

// Ensure that area, centroid and the even-odd rule agree with orb/planar v0.14.0 on
// star-shaped outlines anywhere.
func TestAreaAgainstOrb(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cx, cy := rapid.Float64Range(-5000, 5000).Draw(t, "x"), rapid.Float64Range(-5000, 5000).Draw(t, "y")
		n := rapid.IntRange(3, 24).Draw(t, "n")
		var ring orb.Ring
		var path Path
		for i := range n {
			r, a := rapid.Float64Range(5, 80).Draw(t, "r"), 2*math.Pi*float64(i)/float64(n)
			p := orb.Point{cx + r*math.Cos(a), cy + r*math.Sin(a)}
			ring, path = append(ring, p), append(path, Point{units.Metres(p[0]), units.Metres(p[1])})
		}
		ring, path = append(ring, ring[0]), append(path, path[0])
		c, m2 := planar.CentroidArea(orb.Polygon{ring})
		area := Area{path}
		if math.Abs(area.SquareMetres()-m2) > 1e-6*m2 {
			t.Fatalf("area %v, want %v", area.SquareMetres(), m2)
		}
		if got := area.Centroid(); math.Hypot(float64(got.X)-c[0], float64(got.Y)-c[1]) > 1e-4 {
			t.Fatalf("centroid %v, want %v", got, c)
		}
		q := orb.Point{cx + rapid.Float64Range(-90, 90).Draw(t, "qx"), cy + rapid.Float64Range(-90, 90).Draw(t, "qy")}
		p := Point{units.Metres(q[0]), units.Metres(q[1])}
		if area.Edge(p).Distance > 1e-9 && area.Holds(p) != planar.PolygonContains(orb.Polygon{ring}, q) {
			t.Fatalf("%v inside: %v", q, area.Holds(p))
		}
	})
}
