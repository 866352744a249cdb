package screen

import (
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	own "gloamline/ui/widget"
)

const legendPad = 10.0

// newLegend is the key to the marks.
func (s *Screen) newLegend() *own.Board {
	b := own.NewBoard(func(size draw.Size) scene.Scene {
		legend := scene.Legend(size.W-2*legendPad, s.look())
		size.H = max(size.H, legend.Size().H+legendPad)
		l := draw.NewList(size)
		l.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(s.look().Panel))
		draw.Place(l, legend, 1, draw.Pt(legendPad, legendPad/2))
		return scene.Scene{List: l}
	}, s.look)
	b.Tall = true
	b.OnKey = s.typedKey
	b.OnRune = s.typedRune
	return b
}

// legendHeight is the height the legend asks for at a width, with its frame.
func (s *Screen) legendHeight(width float32) float32 {
	return float32(scene.Legend(float64(width)-2*legendPad-6, s.look()).Size().H + legendPad + 6)
}
