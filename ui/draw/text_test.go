package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAnchors(t *testing.T) {
	f := Font{Regular, 20}
	m := Measure(f, "Sand Bend")
	at := func(a Anchor, v Align) Point {
		return Text{S: "Sand Bend", At: Pt(100, 50), Font: f, Anchor: a, Align: v}.Origin()
	}
	assert.Equal(t, Pt(100, 50), at(Start, Baseline))
	assert.Equal(t, Pt(100-m.Width/2, 50+m.CapHeight/2), at(Middle, Centre))
	assert.Equal(t, Pt(100-m.Width, 50+m.CapHeight), at(End, Top))
	assert.Equal(t, Pt(100, 50-m.Descent), at(Start, Bottom))
}

// Ensure that a box holds the ink where the text stands, turned about its point.
func TestBoxOf(t *testing.T) {
	f := Font{Regular, 20}
	flat := BoxOf(Text{S: "HH", At: Pt(100, 50), Font: f})
	assert.InDelta(t, 50, flat.Box.Max.Y, 0.1)
	assert.InDelta(t, 50-Measure(f, "HH").CapHeight, flat.Box.Min.Y, 0.2)

	down := BoxOf(Text{S: "HH", At: Pt(100, 50), Font: f, Angle: 90})
	assert.InDelta(t, 100, down.Box.Min.X, 0.1, "turned clockwise, the foot is on the left")
	assert.InDelta(t, flat.Box.W(), down.Box.H(), 1e-9)
	assert.InDelta(t, flat.Box.H(), down.Box.W(), 1e-9)
	assert.Greater(t, down.Box.Min.Y, 50.0)
}

// Ensure that slanted texts side by side do not count as overlapping though their
// upright boxes do.
func TestTextBoxOverlaps(t *testing.T) {
	box := func(x, y, angle float64) TextBox {
		return BoxOf(Text{S: "Kirk Stream", At: Pt(x, y), Font: Font{Regular, 12}, Angle: angle})
	}
	a, b := box(0, 0, 45), box(20, 0, 45)
	assert.True(t, a.Box.Overlaps(b.Box))
	assert.False(t, a.Overlaps(b))
	assert.True(t, box(0, 0, 0).Overlaps(box(30, 5, 0)))
	assert.True(t, box(0, 0, 0).Overlaps(box(30, -20, 60)))
	assert.False(t, box(0, 0, 0).Overlaps(box(0, 14, 0)))
}

// Ensure that the outline stands where the box says.
func TestTextOutline(t *testing.T) {
	for _, angle := range []float64{0, 30, 90, -120} {
		x := Text{S: "Gate Pool ½", At: Pt(40, 60), Font: Font{Bold, 17}, Anchor: Middle, Angle: angle}
		var pts []Point
		for _, p := range x.Outline().Flatten(0.01) {
			pts = append(pts, p.Points...)
		}
		ink, box := around(pts), BoxOf(x).Box
		assert.InDelta(t, 0, math.Max(box.Min.X-ink.Min.X, ink.Max.X-box.Max.X), box.W()*0.3)
		assert.True(t, ink.Min.X >= box.Min.X-0.1 && ink.Max.X <= box.Max.X+0.1)
		assert.True(t, ink.Min.Y >= box.Min.Y-0.1 && ink.Max.Y <= box.Max.Y+0.1)
	}
}
