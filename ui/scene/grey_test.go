package scene_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

// colours calls f with every colour that a picture is painted with.
func colours(l *draw.List, f func(op draw.Op, c draw.Color)) {
	for i := range l.Len() {
		o := l.Op(i)
		switch o.Kind {
		case draw.FillOp:
			if len(o.Paint.Stops) == 0 {
				f(o, o.Paint.Color)
			}
			for _, s := range o.Paint.Stops {
				f(o, s.Color)
			}
		case draw.StrokeOp:
			f(o, o.Color)
		case draw.TextOp:
			f(o, o.Text.Color)
		}
	}
}

// Ensure that once the reference is below the threshold at the cursor, what the
// sketch shows of the landscape is truly grey: red, green and blue are equal.
func TestSketchIsGreyWhenTheTreesAre(t *testing.T) {
	looked := 0
	for _, n := range demoNights(t) {
		if n.Grey.At.IsZero() {
			continue
		}
		cursor := n.Grey.At.Add(2 * time.Minute)
		l := scene.Sketch(n, draw.Size{W: 760, H: 350}, scene.Paper, scene.SketchView{Cursor: cursor}).List
		for i := range l.Len() {
			o := l.Op(i)
			if o.Kind != draw.FillOp || o.Box.W() < 40 { // water and pools are the large fills
				continue
			}
			c := o.Paint.Color
			assert.True(t, c.R == c.G && c.G == c.B, "%s: %s", n.Log.Trip.Evening, draw.HexString(c))
			looked++
		}
		// and it had colour while there was light
		day := scene.Sketch(n, draw.Size{W: 760, H: 350}, scene.Paper, scene.SketchView{Cursor: n.Sky.Sunset[0].Add(-20 * time.Minute)}).List
		hued := false
		colours(day, func(o draw.Op, c draw.Color) {
			hued = hued || o.Kind == draw.FillOp && o.Box.W() > 40 && c.R != c.B
		})
		assert.True(t, hued, n.Log.Trip.Evening)
	}
	require.Greater(t, looked, 200)
}

// Ensure that the sky of the strip is grey from the threshold down and warm above.
func TestSkyIsGreyFromTheThreshold(t *testing.T) {
	for _, look := range []scene.Look{scene.Dusk, scene.Paper} {
		for d := 0.0; d > -5; d -= 0.25 {
			c := look.Sky(d)
			assert.True(t, c.R == c.G && c.G == c.B, "%s %g: %s", look.Name, d, draw.HexString(c))
		}
		c := look.Sky(2.5)
		assert.Greater(t, c.R, c.B, look.Name)
	}
}

// Ensure that the lamp look lets through little but red: of each colour the green
// and blue parts stay well below the red one, so that eyes stay used to the dark.
func TestLampIsRed(t *testing.T) {
	n := demoNights(t)[5]
	mid := n.From.Add(n.To.Sub(n.From) / 2)
	for name, l := range pictures(n, scene.Lamp, mid) {
		colours(l, func(_ draw.Op, c draw.Color) {
			if c.R > 40 || c.G > 40 || c.B > 40 {
				assert.Greater(t, float64(c.R)*0.72, float64(c.G), "%s: %s", name, draw.HexString(c))
				assert.Greater(t, float64(c.R)*0.72, float64(c.B), "%s: %s", name, draw.HexString(c))
			}
		})
	}
}
