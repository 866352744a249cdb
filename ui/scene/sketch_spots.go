package scene

import (
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// spots draws entries as small gates, hazards as a barred diamond, marks as a cross.
func (g *sketch) spots() {
	for _, f := range g.n.Beat.Features {
		points, _, _ := g.lay.Shape(f.Shape)
		for _, at := range points {
			p := g.at(at)
			if !g.view.Contains(p) {
				continue
			}
			switch f.Role {
			case geo.RoleEntry:
				drawEntry(g.list, g.look, p)
			case geo.RoleHazard:
				drawHazard(g.list, g.look, p)
			default:
				drawLandmark(g.list, g.look, p)
			}
			box := draw.R(p.X-7, p.Y-7, 14, 14)
			g.labels.block(box)
			g.hits = append(g.hits, Hit{Ref: journal.Ref{Kind: SpotKind, Trip: g.n.Log.Trip.Beat, ID: f.ID}, Box: box, Tip: words.SpotTip(f)})
		}
	}
}

var signStroke = draw.Stroke{Width: 1.6, Cap: draw.RoundCap, Join: draw.RoundJoin}

// drawSign draws a line of a sign on a seam of the panel's colour, since the water
// beneath may be as pale as the sign.
func drawSign(s draw.Surface, look Look, p draw.Path) {
	s.Stroke(p, draw.Stroke{Width: 4.2, Cap: draw.RoundCap, Join: draw.RoundJoin}, draw.Fade(look.Panel, 0.8))
	s.Stroke(p, signStroke, look.Soft)
}

// drawEntry is the sign of a way into the water: a small gate.
func drawEntry(s draw.Surface, look Look, p draw.Point) {
	drawSign(s, look, draw.Polyline([]draw.Point{{X: p.X - 4, Y: p.Y + 4}, {X: p.X - 4, Y: p.Y - 4}, {X: p.X + 4, Y: p.Y - 4}, {X: p.X + 4, Y: p.Y + 4}}))
}

// drawLandmark is the sign of anything else worth knowing by night: a cross.
func drawLandmark(s draw.Surface, look Look, p draw.Point) {
	cross := draw.Line(draw.Pt(p.X-3.5, p.Y), draw.Pt(p.X+3.5, p.Y))
	cross.Append(draw.Line(draw.Pt(p.X, p.Y-3.5), draw.Pt(p.X, p.Y+3.5)))
	drawSign(s, look, cross)
}

// drawHazard is the sign of a hazard: a diamond with a stroke and a dot.
func drawHazard(s draw.Surface, look Look, p draw.Point) {
	d := draw.Polygon([]draw.Point{{X: p.X, Y: p.Y - 6}, {X: p.X + 6, Y: p.Y}, {X: p.X, Y: p.Y + 6}, {X: p.X - 6, Y: p.Y}})
	s.Fill(d, draw.NonZero, draw.Solid(look.Panel))
	s.Stroke(d, signStroke, look.Ink)
	s.Stroke(draw.Line(draw.Pt(p.X, p.Y-2.6), draw.Pt(p.X, p.Y+0.6)), signStroke, look.Ink)
	s.Fill(draw.Circle(draw.Pt(p.X, p.Y+3), 0.9), draw.NonZero, draw.Solid(look.Ink))
}
