package draft

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Ensure that banks stand half a width off the middle of a bend, left ones to the left.
func TestBanks(t *testing.T) {
	var line geo.Path
	for i := range 61 {
		x := float64(i) * 10
		line = append(line, geo.Point{X: units.Metres(x), Y: units.Metres(40 * math.Sin(x/60))})
	}
	d, err := begun(t).Banks(line, 16, "", id(90), id(91))
	require.NoError(t, err)
	for i, bank := range []geo.ID{id(90), id(91)} {
		for _, p := range d.Strands(bank)[0].Points {
			f := line.Foot(p)
			assert.InDelta(t, 8, float64(f.Distance), 0.2)
			assert.Equal(t, i == 0, f.Left)
		}
	}
	d, err = begun(t).Banks(line, 16, geo.TrueRight, id(90), id(91))
	require.NoError(t, err)
	assert.InDelta(t, 16, float64(line.Foot(d.Strands(id(90))[0].Points[30]).Distance), 0.3)
	_, err = begun(t).Banks(line, 0, "", id(90), id(91))
	assert.ErrorContains(t, err, "wide")
}

// Ensure that a thinned walk stays within its tolerance of the whole and keeps both ends.
func TestWalk(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := begun(t)
		var places []geo.Place
		var whole geo.Path
		n := rapid.IntRange(2, 300).Draw(t, "n")
		for i := range n {
			p := geo.Point{X: units.Metres(i * 2), Y: units.Metres(rapid.Float64Range(-4, 4).Draw(t, "y"))}
			whole, places = append(whole, p), append(places, d.Plane.Place(p))
		}
		thin, err := d.Walk(places, 3)
		require.NoError(t, err)
		require.Less(t, float64(thin[0].Distance(whole[0]))+float64(thin[len(thin)-1].Distance(whole[n-1])), 1e-5)
		for _, p := range whole {
			require.LessOrEqual(t, float64(thin.Foot(p).Distance), 3.00001)
		}
	})
}

// Ensure that the two chosen pixels lie on their points, lengths keep one scale, and the way
// back is the way back.
func TestTrace(t *testing.T) {
	tr, err := Trace(Pixel{100, 200}, Pixel{300, 200}, geo.Point{X: 0, Y: 0}, geo.Point{X: 0, Y: -100})
	require.NoError(t, err)
	assert.InDelta(t, 0.5, float64(tr.Scale()), 1e-12)
	assert.InDelta(t, 90, float64(tr.Turn()), 1e-9, "right on the image is south, so up is east")
	at := tr.Plane(Pixel{100, 100})
	assert.InDelta(t, 50, float64(at.X), 1e-9)
	assert.InDelta(t, 0, float64(at.Y), 1e-9)
	_, err = Trace(Pixel{1, 1}, Pixel{1, 1}, geo.Point{}, geo.Point{X: 9})
	assert.Error(t, err)
	rapid.Check(t, func(t *rapid.T) {
		n := func(s string) float64 { return rapid.Float64Range(-2000, 2000).Draw(t, s) }
		p1, p2 := Pixel{n("a"), n("b")}, Pixel{n("c"), n("d")}
		q1, q2 := geo.Point{X: units.Metres(n("e")), Y: units.Metres(n("f"))}, geo.Point{X: units.Metres(n("g")), Y: units.Metres(n("h"))}
		tr, err := Trace(p1, p2, q1, q2)
		if err != nil {
			t.Skip()
		}
		require.InDelta(t, 0, float64(tr.Plane(p1).Distance(q1)), 1e-6)
		require.InDelta(t, 0, float64(tr.Plane(p2).Distance(q2)), 1e-6)
		back := tr.Pixel(tr.Plane(Pixel{7, 9}))
		require.InDelta(t, 7, back.X, 1e-4)
		require.InDelta(t, 9, back.Y, 1e-4)
	})
}
