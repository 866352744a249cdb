package scene

import (
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// spots draws entries as small gates, hazards as a barred diamond, lies as a
// lens with a dot, marks as a cross.
func (g *sketch) spots() {
	for _, f := range g.n.Beat.Features {
		points, _, _ := g.lay.Shape(f.Shape)
		for _, at := range points {
			p := g.at(at)
			if !g.view.Contains(p) {
				continue
			}
			drawSpot(g.list, g.look, f.Role, p)
			box := draw.R(p.X-7, p.Y-7, 14, 14)
			g.labels.block(box)
			g.hits = append(g.hits, Hit{Ref: journal.Ref{Kind: SpotKind, Trip: g.n.Log.Trip.Beat, ID: f.ID}, Box: box, Tip: words.SpotTip(f)})
		}
	}
}

// drawSpot is the sign of a spot by what it is.
func drawSpot(s draw.Surface, look Look, role geo.Role, p draw.Point) {
	switch role {
	case geo.RoleEntry:
		drawEntry(s, look, p)
	case geo.RoleHazard:
		drawHazard(s, look, p)
	case geo.RoleLie:
		drawLie(s, look, p)
	default:
		drawLandmark(s, look, p)
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

// drawLie is the sign of a place where fish are known to lie: a lens with a dot.
func drawLie(s draw.Surface, look Look, p draw.Point) {
	drawSign(s, look, draw.Ellipse(p, 6, 3.4))
	s.Fill(draw.Circle(p, 1.3), draw.NonZero, draw.Solid(look.Soft))
}

// drawHazard is the sign of a hazard: a diamond with a stroke and a dot.
func drawHazard(s draw.Surface, look Look, p draw.Point) {
	d := draw.Polygon([]draw.Point{{X: p.X, Y: p.Y - 6}, {X: p.X + 6, Y: p.Y}, {X: p.X, Y: p.Y + 6}, {X: p.X - 6, Y: p.Y}})
	s.Fill(d, draw.NonZero, draw.Solid(look.Panel))
	s.Stroke(d, signStroke, look.Ink)
	s.Stroke(draw.Line(draw.Pt(p.X, p.Y-2.6), draw.Pt(p.X, p.Y+0.6)), signStroke, look.Ink)
	s.Fill(draw.Circle(draw.Pt(p.X, p.Y+3), 0.9), draw.NonZero, draw.Solid(look.Ink))
}
