package scene

import "gloamline/ui/draw"

// The strokes and small marks that strip and legend share.
var (
	momentStroke    = draw.Stroke{Width: 1.2, Dash: []float64{1.5, 3}}
	thresholdStroke = draw.Stroke{Width: 1.2, Dash: []float64{5, 4}}
	levelStroke     = draw.Stroke{Width: 1.6, Join: draw.RoundJoin}
	cursorStroke    = draw.Stroke{Width: 1.5}
	ringStroke      = draw.Stroke{Width: 1.8}
)

// rodStroke tells the rods apart by dash, not hue.
func rodStroke(rod int) draw.Stroke {
	st := draw.Stroke{Width: 2.4, Join: draw.RoundJoin}
	switch rod % 3 {
	case 1:
		st.Dash = []float64{7, 3.5}
	case 2:
		st.Dash, st.Cap = []float64{0.1, 4.5}, draw.RoundCap
	}
	return st
}

// flyStroke is the line of a fly's length until the next change: whole for the
// point, dashed for a dropper, dotted where the length is not known.
func flyStroke(position int, measured bool) draw.Stroke {
	switch {
	case !measured:
		return draw.Stroke{Width: 1.5, Dash: []float64{2, 3}}
	case position > 0:
		return draw.Stroke{Width: 1.1, Dash: []float64{5, 3}}
	}
	return draw.Stroke{Width: 1.5}
}

// bracketPath is the mark of a run from x0 to x1.
func bracketPath(x0, x1, y float64) draw.Path {
	var p draw.Path
	p.Move(x0, y-4)
	p.Line(x0, y+4)
	p.Move(x0, y)
	p.Line(x1, y)
	p.Move(x1, y-4)
	p.Line(x1, y+4)
	return p
}

// drawGreyNoted is the mark of a logged moment of trees going grey.
func drawGreyNoted(s draw.Surface, look Look, p draw.Point, strength float64) {
	s.Fill(draw.Polygon([]draw.Point{{X: p.X, Y: p.Y - 5}, {X: p.X + 4, Y: p.Y}, {X: p.X, Y: p.Y + 5}, {X: p.X - 4, Y: p.Y}}), draw.NonZero, draw.Solid(draw.Fade(look.Ink, strength)))
}

// cloudR is the radius of the disc of cloud.
const cloudR = 6.0

// drawCloud is a disc filled as far as the cloud covered the sky.
func drawCloud(s draw.Surface, look Look, c draw.Point, eighths int, strength float64) {
	s.Stroke(draw.Circle(c, cloudR), draw.Stroke{Width: 1.3}, draw.Fade(look.Ink, strength))
	if eighths > 0 {
		s.Fill(wedge(c, cloudR, float64(eighths)/8), draw.NonZero, draw.Solid(draw.Fade(look.Ink, strength)))
	}
}

// wedge is a share of a disc, clockwise from the top.
func wedge(c draw.Point, r, share float64) draw.Path {
	if share >= 1 {
		return draw.Circle(c, r)
	}
	p := draw.Arc(c, r, -90, -90+360*share)
	p.Line(c.X, c.Y)
	p.Close()
	return p
}

// drawLevelPoint is the mark of a level that the party read.
func drawLevelPoint(s draw.Surface, look Look, c draw.Point, strength float64) {
	s.Fill(draw.Circle(c, 3.2), draw.NonZero, draw.Solid(look.Panel))
	s.Stroke(draw.Circle(c, 3.2), draw.Stroke{Width: 1.5}, draw.Fade(look.Ink, strength))
}
