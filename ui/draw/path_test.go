package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func verbsOf(p Path) string {
	s := ""
	p.Each(func(v Verb, _ []Point) { s += string("MLQCZ"[v]) })
	return s
}

// Ensure that a path is always well formed: it begins with a Move, and a piece after
// a Close starts where that one started.
func TestPathIsWellFormed(t *testing.T) {
	var p Path
	p.Close()
	p.Line(1, 2)
	p.Line(3, 4)
	p.Close()
	p.Close()
	p.Quad(5, 5, 6, 6)
	assert.Equal(t, "MLZMQ", verbsOf(p))
	assert.Equal(t, Pt(1, 2), p.points[2])

	var q Path
	q.Cubic(1, 1, 2, 2, 3, 3)
	assert.Equal(t, "MC", verbsOf(q))
}

// Ensure that flattened curves stay within the tolerance: points of the true circle
// are no further than that (plus the 0.03 % of its Bézier form) from the lines.
func TestFlattenTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.5, 2000).Draw(t, "radius")
		tol := rapid.SampledFrom([]float64{0.01, 0.1, 0.5}).Draw(t, "tol")
		pieces := Circle(Pt(10, -20), r).Flatten(tol)
		require.Len(t, pieces, 1)
		assert.True(t, pieces[0].Closed)
		pts := pieces[0].Points
		for i, a := range pts {
			b := pts[(i+1)%len(pts)]
			mid := a.Lerp(b, 0.5).Dist(Pt(10, -20))
			assert.InDelta(t, r, mid, tol+r*0.0004)
		}
	})
}

func TestFlattenKeepsPieces(t *testing.T) {
	var p Path
	p.Append(Polyline([]Point{{0, 0}, {1, 0}, {1, 1}}))
	p.Append(Polygon([]Point{{5, 5}, {6, 5}, {6, 6}}))
	p.Move(9, 9)
	pieces := p.Flatten(0.1)
	require.Len(t, pieces, 3)
	assert.Equal(t, Piece{Points: []Point{{0, 0}, {1, 0}, {1, 1}}}, pieces[0])
	assert.Equal(t, Piece{Points: []Point{{5, 5}, {6, 5}, {6, 6}}, Closed: true}, pieces[1])
	assert.Equal(t, Piece{Points: []Point{{9, 9}}}, pieces[2])
}

// Ensure that an arc begins and ends where its angles say, clockwise from the right
// with y downwards, and stays on its circle.
func TestArc(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.Float64Range(-720, 720).Draw(t, "from")
		to := from + rapid.Float64Range(-360, 360).Draw(t, "sweep")
		pts := Arc(Pt(3, 4), 50, from, to).Flatten(0.01)[0].Points
		at := func(a float64) Point {
			return Pt(3+50*math.Cos(a*math.Pi/180), 4+50*math.Sin(a*math.Pi/180))
		}
		assert.Less(t, pts[0].Dist(at(from)), 1e-6)
		assert.Less(t, pts[len(pts)-1].Dist(at(to)), 1e-6)
		for _, p := range pts {
			assert.InDelta(t, 50, p.Dist(Pt(3, 4)), 0.02)
		}
	})
	assert.False(t, Arc(Pt(0, 0), 1, math.NaN(), 3).ok())
	assert.False(t, Arc(Pt(0, 0), 1, math.Inf(1), 3).ok())
}

func TestRoundRect(t *testing.T) {
	r := R(10, 20, 30, 10)
	assert.Equal(t, r, RoundRect(r, 3).Bounds())
	assert.Equal(t, r, RoundRect(r, 99).Bounds(), "the radius is held to half the height")
	assert.Equal(t, verbsOf(Rectangle(r)), verbsOf(RoundRect(r, 0)))
	assert.Equal(t, verbsOf(Rectangle(r)), verbsOf(RoundRect(r, math.NaN())))
}

func TestRect(t *testing.T) {
	r := R(0, 0, 10, 10)
	assert.Equal(t, R(5, 5, 5, 5), r.Intersect(R(5, 5, 10, 10)))
	assert.True(t, r.Intersect(R(10, 0, 5, 5)).Empty())
	assert.False(t, r.Overlaps(R(10, 0, 5, 5)), "touching is not overlapping")
	assert.Equal(t, R(0, 0, 20, 20), r.Union(R(15, 15, 5, 5)))
	assert.Equal(t, r, r.Union(Rect{}))
	assert.True(t, r.Contains(Pt(0, 0)))
	assert.False(t, r.Contains(Pt(10, 5)))
	assert.Equal(t, Pt(5, 5), r.Center())
}
