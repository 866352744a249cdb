package scene_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

// Ensure that pointing at the middle of a thing finds it, or a thing drawn above it.
func TestPointingFindsThings(t *testing.T) {
	for _, n := range demoNights(t)[:12] {
		for name, s := range map[string]scene.Scene{
			"strip":  scene.Strip(n, draw.Size{W: 1180, H: 440}, scene.Dusk, scene.StripView{}),
			"sketch": scene.Sketch(n, draw.Size{W: 760, H: 350}, scene.Dusk, scene.SketchView{}),
			"log":    scene.Log(n, 400, scene.Dusk, scene.LogView{}),
		} {
			for i, h := range s.Hits {
				if !h.Area.Empty() {
					continue // an outline may bend around its box's middle
				}
				got, ok := s.At(h.Box.Center())
				require.True(t, ok, "%s: %v", name, h.Ref)
				above := false
				for _, o := range s.Hits[i:] {
					above = above || o.Ref == got.Ref
				}
				assert.True(t, above, "%s: %v gave %v", name, h.Ref, got.Ref)
				if name != "log" || h.Ref.Kind == journal.KindContact {
					assert.NotEmpty(t, h.Tip, "%s: %v", name, h.Ref)
				}
			}
			_, ok := s.At(draw.Pt(-5, -5))
			assert.False(t, ok)
		}
	}
}

// Ensure that a point of the sketch and the place under it belong together at any
// zoom and pan: the middle of each pool's axis lies in that pool's outline.
func TestSketchPlaceInverts(t *testing.T) {
	n := demoNights(t)[0]
	lay := n.Beat.Layout()
	size := draw.Size{W: 760, H: 350}
	rapid.Check(t, func(t *rapid.T) {
		v := scene.SketchView{Zoom: rapid.Float64Range(0.3, 12).Draw(t, "zoom"), Pan: draw.Pt(rapid.Float64Range(-400, 400).Draw(t, "x"), rapid.Float64Range(-300, 300).Draw(t, "y"))}
		s := scene.Sketch(n, size, scene.Dusk, v)
		for _, h := range s.Hits {
			if h.Ref.Kind != scene.SpotKind {
				continue
			}
			at := scene.SketchPlace(n, size, v, h.Box.Center())
			for _, f := range n.Beat.Features {
				if f.ID == h.Ref.ID {
					d := lay.At(at).Distance(lay.At(geo.PlaceOf(f.Shape.Points[0])))
					if d > 0.1 {
						t.Fatalf("%s is %.2f m off", f.Name, float64(d))
					}
				}
			}
		}
	})
}

// Ensure that the strip's frame turns a place back into its instant.
func TestFrameInverts(t *testing.T) {
	n := demoNights(t)[0]
	f := scene.Frame(n, draw.Size{W: 1180, H: 440}, scene.StripView{})
	for d := time.Duration(0); d < 5*time.Hour; d += 7 * time.Minute {
		at := n.From.Add(d)
		assert.WithinDuration(t, at, f.At(f.X(at)), time.Second)
	}
}

// Ensure that no size, zoom or cursor makes a scene fail.
func TestScenesBearOddViews(t *testing.T) {
	nights := demoNights(t)
	bare := *nights[0]
	bare.Beat = geo.Beat{Name: "bare", Zone: bare.Beat.Zone}
	bare.Pools = nil
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.SampledFrom(append(nights[:4:4], &bare)).Draw(t, "night")
		size := draw.Size{W: rapid.Float64Range(0, 3000).Draw(t, "w"), H: rapid.Float64Range(0, 2000).Draw(t, "h")}
		cursor := n.Start.Add(time.Duration(rapid.Int64Range(-100, 2000).Draw(t, "minutes")) * time.Minute)
		look := rapid.SampledFrom(scene.Looks).Draw(t, "look")
		from := n.From.Add(time.Duration(rapid.Int64Range(-900, 900).Draw(t, "from")) * time.Minute)
		to := from.Add(time.Duration(rapid.Int64Range(-10, 1500).Draw(t, "span")) * time.Minute)
		scene.Strip(n, size, look, scene.StripView{Cursor: cursor, From: from, To: to})
		scene.Sketch(n, size, look, scene.SketchView{Cursor: cursor, Zoom: rapid.Float64Range(0, 60).Draw(t, "zoom")})
		scene.Log(n, size.W, look, scene.LogView{Cursor: cursor})
	})
}
