package raster

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"gloamline/ui/draw"
)

func lengths(p draw.Piece, s draw.Stroke, box draw.Rect) (sum float64, n int) {
	var d dasher
	d.begin(s, 1)
	d.run(p, box, func(pts []draw.Point) {
		n++
		for i := 1; i < len(pts); i++ {
			sum += pts[i-1].Dist(pts[i])
		}
	})
	return sum, n
}

var wide = draw.R(-1e6, -1e6, 2e6, 2e6)

// Ensure that dashes add up: over a line of many whole patterns the inked part is the
// "on" share, bends or no bends, whatever the phase.
func TestDashesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		on, off := rapid.Float64Range(0.5, 9).Draw(t, "on"), rapid.Float64Range(0.5, 9).Draw(t, "off")
		repeats := rapid.IntRange(1, 40).Draw(t, "repeats")
		length := (on + off) * float64(repeats)
		bend := rapid.Float64Range(0.1, 0.9).Draw(t, "bend")
		phase := rapid.Float64Range(-50, 50).Draw(t, "phase")
		pts := []draw.Point{{}, {X: bend * length}, {X: bend * length, Y: (1 - bend) * length}}
		sum, n := lengths(draw.Piece{Points: pts}, draw.Stroke{Dash: []float64{on, off}, Phase: phase}, wide)
		assert.InDelta(t, on*float64(repeats), sum, 1e-6*length+1e-6)
		assert.InDelta(t, repeats, n, 1)
	})
}

// Ensure that the dashes seen in a window do not depend on it: what lies outside still
// counts for the phase.
func TestDashesDoNotDependOnTheWindow(t *testing.T) {
	p := draw.Piece{Points: []draw.Point{{X: -5e5}, {X: 5e5}}}
	s := draw.Stroke{Dash: []float64{7, 4}}
	var d dasher
	d.begin(s, 1)
	var starts []float64
	d.run(p, draw.R(-40, -5, 80, 10), func(pts []draw.Point) { starts = append(starts, pts[0].X) })
	assert.InDelta(t, 8, len(starts), 1)
	for _, x := range starts[1:] {
		assert.InDelta(t, 0, math.Remainder(x+5e5, 11), 1e-6)
	}
}

func TestClosedDashes(t *testing.T) {
	square := draw.Piece{Points: []draw.Point{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}, Closed: true}
	sum, n := lengths(square, draw.Stroke{Dash: []float64{3, 2}}, wide)
	assert.InDelta(t, 24, sum, 1e-9)
	assert.Equal(t, 8, n)
}

// Ensure that dashes of no length are there, for dotted lines, the first one too.
func TestDots(t *testing.T) {
	_, n := lengths(draw.Piece{Points: []draw.Point{{}, {X: 20}}}, draw.Stroke{Dash: []float64{0, 5}}, wide)
	assert.InDelta(t, 4, n, 1)
	at := inked(30, 10, 1, draw.Line(draw.Pt(5, 5), draw.Pt(25, 5)), draw.Stroke{Width: 4, Dash: []float64{0, 5}, Cap: draw.RoundCap})
	assert.Greater(t, at(4, 4), 0.9)
	assert.Greater(t, at(9, 4), 0.9)
	assert.Less(t, at(7, 4), 0.2)
}

// Ensure that a pattern finer than the pixels is drawn unbroken rather than for ever.
func TestFinePatternIsSolid(t *testing.T) {
	var d dasher
	d.begin(draw.Stroke{Dash: []float64{1, 1}}, 0.01)
	assert.True(t, d.solid())
	d.begin(draw.Stroke{Dash: []float64{1, 1}}, 1)
	assert.False(t, d.solid())
}

// Ensure that a very wide line, whose neighbourhood is all of the world, ends too.
func TestWideDashedLineEnds(t *testing.T) {
	_, n := lengths(draw.Piece{Points: []draw.Point{{X: -1e9}, {X: 1e9}}}, draw.Stroke{Dash: []float64{1, 1}}, draw.R(-1e9, -1e9, 2e9, 2e9))
	assert.Equal(t, 1, n)
}
