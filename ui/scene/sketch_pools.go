package scene

import (
	"math"
	"slices"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// moonState is what the moon does for a pool.
type moonState int

const (
	noMoon   moonState = iota // no moon up, the sun up, or no cursor
	moonOn                    // the moon stands over the pool's skyline
	inShadow                  // the moon is up and the hill keeps it from the pool
)

// poolLight is the light on a pool at the cursor, in decades over the threshold, and
// whether the moon reaches it.
func (g *sketch) poolLight(id journal.ID) (decades float64, moon moonState) {
	t := g.v.Cursor
	if t.IsZero() {
		return 3, noMoon
	}
	p, ok := g.n.PoolNight(id)
	if !ok {
		return g.ground, noMoon
	}
	decades = math.Log10(float64(p.Curve.At(t).Lux) / float64(g.n.Grey.Threshold.Lux))
	if g.n.Sky.SunUpAt(t) || !g.n.Sky.MoonUpAt(t) {
		return decades, noMoon
	}
	if slices.ContainsFunc(p.MoonOver, func(i timeline.Interval) bool { return i.Contains(t) }) {
		return decades, moonOn
	}
	return decades, inShadow
}

// poolColor shows a pool in its own light: moonlit pale, hill shadow dark.
func (g *sketch) poolColor(decades float64, moon moonState) draw.Color {
	day := g.look.Nature(g.look.Water, decades)
	k := math.Max(0, math.Min(1, (0.8-decades)/0.8)) // near the threshold tone takes over from hue
	if g.v.Cursor.IsZero() || k == 0 {
		return day
	}
	return g.look.drain(draw.Mix(day, g.look.pool(decades, moon), k), decades)
}

func (g *sketch) pools() {
	for _, p := range g.shapes {
		d, moon := g.poolLight(p.Pool.ID)
		c := g.poolColor(d, moon)
		g.list.Fill(p.path, draw.NonZero, draw.Solid(c))
		edge, w := draw.Mix(c, g.look.Ink, 0.38), 1.2
		switch moon {
		case moonOn:
			edge, w = draw.Mix(c, g.look.Ink, 0.7), 1.6
		case inShadow:
			drawShade(g.list, g.look, p.path, g.view, c)
		}
		g.list.Stroke(p.path, draw.Stroke{Width: w, Join: draw.RoundJoin}, edge)
		if p.Pool.ID == g.v.Pool { // on a dark seam, so that it stands out from pale water
			g.list.Stroke(p.path, draw.Stroke{Width: 5, Join: draw.RoundJoin}, g.look.Panel)
			g.list.Stroke(p.path, draw.Stroke{Width: 2.6, Join: draw.RoundJoin}, g.look.Accent)
		}
		if box := p.path.Bounds().Intersect(g.view); !box.Empty() {
			g.hits = append(g.hits, Hit{Ref: poolRef(g.n, p.Pool.ID), Box: box.Inset(-2), Area: p.path, Tip: words.PoolTip(g.n, p.Pool, g.v.Cursor, g.v.Prefs)})
		}
	}
}

// drawShade rules a pool in the hill's shadow with slanted lines, against the slant of
// the trees: its tone alone would not tell it apart everywhere.
func drawShade(s draw.Surface, look Look, path draw.Path, view draw.Rect, c draw.Color) {
	b := path.Bounds().Intersect(view)
	if b.Empty() {
		return
	}
	var lines draw.Path
	for x := math.Floor((b.Min.X-b.H())/7) * 7; x < b.Max.X; x += 7 { // still when the view moves by a pixel
		lines.Move(x, b.Min.Y)
		lines.Line(x+b.H(), b.Max.Y)
	}
	s.PushClip(path)
	s.Stroke(lines, draw.Stroke{Width: 1}, draw.Mix(c, look.Ink, 0.3))
	s.PopClip()
}

// drawMoonSign is the sign at a pool's name: a full disc where the moon reaches it, an
// empty ring where the hill keeps it away.
func drawMoonSign(s draw.Surface, look Look, m moonState, c draw.Point) {
	switch m {
	case moonOn:
		s.Fill(draw.Circle(c, 4), draw.NonZero, draw.Solid(look.Moon))
	case inShadow:
		s.Stroke(draw.Circle(c, 3.4), draw.Stroke{Width: 1.2}, look.Soft)
	}
}

// poolRef is how a pool is told from records in hits: kind "pool" lives on the
// beat and has no record of its own.
func poolRef(n *timeline.Night, id journal.ID) journal.Ref {
	return journal.Ref{Kind: PoolKind, Trip: n.Log.Trip.Beat, ID: id}
}

// PoolKind marks a hit on a pool of the beat.
const PoolKind journal.Kind = "pool"

// SpotKind marks a hit on an entry place, a hazard or a mark of the beat.
const SpotKind journal.Kind = "spot"
