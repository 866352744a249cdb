package scene

import (
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// photoSign is the room the sign of a photo takes.
var photoSign = draw.Size{W: 11, H: 9}

// drawPhotoSign is a small picture in its frame, a hill under a disc: at the number of a
// fish, on the line of a run, or where a photo was taken.
func drawPhotoSign(s draw.Surface, look Look, c draw.Point, strength float64) {
	ink := draw.Fade(look.Ink, strength)
	frame := draw.R(c.X-photoSign.W/2, c.Y-photoSign.H/2, photoSign.W, photoSign.H)
	s.Fill(draw.RoundRect(frame.Inset(-1.5), 2), draw.NonZero, draw.Solid(draw.Fade(look.Panel, 0.92)))
	s.Stroke(draw.Rectangle(frame.Inset(0.6)), draw.Stroke{Width: 1.2}, ink)
	hill := draw.Polygon([]draw.Point{{X: frame.Min.X + 1.6, Y: frame.Max.Y - 1.6}, {X: c.X - 0.4, Y: c.Y - 0.6}, {X: frame.Max.X - 1.6, Y: frame.Max.Y - 1.6}})
	s.Fill(hill, draw.NonZero, draw.Solid(ink))
	s.Fill(draw.Circle(draw.Pt(frame.Max.X-3, frame.Min.Y+2.8), 1.1), draw.NonZero, draw.Solid(ink))
}

// photos draws the photos that do not stand at a fish: where their place was noted, else at
// the head of the run they show, where that has a line. A photo of nothing, with no place,
// is in the log alone.
func (g *sketch) photos() {
	for _, e := range g.n.Log.Sorted() {
		p, ok := e.(journal.Photo)
		if !ok {
			continue
		}
		of := p.Of.Or(journal.ID{})
		if _, isFish := g.marked[of]; isFish {
			continue
		}
		at, ok := g.lines[of]
		if spot, has := p.Spot.Get(); has {
			at, ok = g.at(g.lay.At(spot)), true
		}
		if !ok || !g.view.Contains(at) {
			continue
		}
		k := 1.0
		if !g.v.Cursor.IsZero() && g.n.Log.At(p).Mid().After(g.v.Cursor) {
			k = 0.5
		}
		ghost := g.v.Ghosts[p.Ref()]
		if ghost != NoGhost {
			k = min(k, ghostStrength)
		}
		box := draw.R(at.X-photoSign.W/2, at.Y-photoSign.H/2, photoSign.W, photoSign.H)
		for _, d := range around { // never on a fish, a name or another photo
			if b := box.Move(d); g.labels.free(b) {
				box = b
				break
			}
		}
		g.labels.block(box)
		c := box.Center()
		if c.Dist(at) > aside {
			g.list.Stroke(draw.Line(at, c), draw.Stroke{Width: 1}, draw.Fade(g.look.Ink, 0.6*k))
		}
		if p.Ref() == g.v.Selected {
			g.list.Stroke(draw.RoundRect(box.Inset(-4), 4), ringStroke, g.look.Accent)
		}
		drawPhotoSign(g.list, g.look, c, k)
		if ghost != NoGhost {
			ghost.ring(g.list, box.Inset(-3), draw.Fade(g.look.Ink, 0.8))
		}
		g.hits = append(g.hits, Hit{Ref: p.Ref(), Box: box.Inset(-3), Tip: words.PhotoTip(g.n, p)})
	}
}
