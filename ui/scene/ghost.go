package scene

import (
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Ghost says that something in a night is not written yet. What is written is drawn whole,
// a ghost hollow with a broken edge, filled faintly where it would be stored.
type Ghost uint8

// The ghosts.
const (
	NoGhost  Ghost = iota // written
	Proposed              // would not be stored as things stand
	Accepted              // would be stored
)

// Ghosts are the entries that are not written.
type Ghosts map[journal.Ref]Ghost

var ghostEdge = draw.Stroke{Width: 1.2, Dash: []float64{4, 2.5}}

// ghostStrength is how strong the marks of fish and photos are that are not written.
const ghostStrength = 0.6

func (g Ghost) fill(s draw.Surface, p draw.Path, c draw.Color) {
	if g == Accepted {
		s.Fill(p, draw.NonZero, draw.Solid(draw.Fade(c, 0.3)))
	}
}

// ring is the broken edge around a mark.
func (g Ghost) ring(s draw.Surface, box draw.Rect, c draw.Color) {
	p := draw.RoundRect(box, 4)
	g.fill(s, p, c)
	s.Stroke(p, ghostEdge, c)
}

// drawGhostBracket is the mark of a proposed run on the strip.
func drawGhostBracket(s draw.Surface, g Ghost, x0, x1, y float64, c draw.Color) {
	g.ring(s, draw.R(x0, y-4, max(x1-x0, 4), 8), c) // under the names, whose feet reach 5 dp above the line
}

// drawGhostRun is the mark of a proposed run along its bank: a hollow band with a hollow
// arrow.
func drawGhostRun(s draw.Surface, look Look, g Ghost, line []draw.Point, in, out bool, c draw.Color) {
	var left, right []draw.Point
	for i, p := range line {
		d := line[min(i+1, len(line)-1)].Sub(line[max(i-1, 0)])
		if l := d.Dist(draw.Point{}); l > 0 {
			d = d.Mul(1 / l)
		}
		side := draw.Pt(-d.Y, d.X).Mul(2.6)
		left, right = append(left, p.Add(side)), append(right, p.Sub(side))
	}
	band := append([]draw.Point{}, left...)
	for i := len(right) - 1; i >= 0; i-- {
		band = append(band, right[i])
	}
	g.fill(s, draw.Polygon(band), c)
	s.Stroke(draw.Polyline(left), ghostEdge, c)
	s.Stroke(draw.Polyline(right), ghostEdge, c)
	end, back := line[len(line)-1], line[max(0, len(line)-3)]
	d := end.Sub(back)
	if l := d.Dist(draw.Point{}); l > 0 {
		d = d.Mul(1 / l)
	}
	side := draw.Pt(-d.Y, d.X)
	arrow := draw.Polygon([]draw.Point{end.Add(d.Mul(8)), end.Add(side.Mul(5)), end.Sub(side.Mul(5))})
	s.Fill(arrow, draw.NonZero, draw.Solid(look.Panel))
	g.fill(s, arrow, c)
	s.Stroke(arrow, draw.Stroke{Width: 1.2}, c)
	if in {
		s.Fill(draw.Circle(line[0], 3.4), draw.NonZero, draw.Solid(look.Panel))
		s.Stroke(draw.Circle(line[0], 3.4), draw.Stroke{Width: 1.2}, c)
	}
	if out {
		tip := end.Add(d.Mul(9))
		s.Stroke(draw.Line(tip.Add(side.Mul(4)), tip.Sub(side.Mul(4))), draw.Stroke{Width: 1.2}, c)
	}
}

// numberOf is a contact's number, a question mark while it is not written.
func numberOf(n *timeline.Night, c timeline.Contact, ghosts Ghosts) string {
	if ghosts[c.Ref()] != NoGhost {
		return words.NoNumberYet()
	}
	return words.ContactNumber(n, c)
}
