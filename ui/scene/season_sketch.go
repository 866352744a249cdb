package scene

import (
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// poolSketch is the least and the usual size of a beat's sketch in a card, in dp.
const (
	poolSketchLeast = 300.0
	poolSketchTall  = 250.0
)

// poolSketches draws each beat fished with its pools shaded by their rates drawn toward
// the others, ruled where thin; under a title of its own, since there may be several.
func (c *cards) poolSketches() {
	in := c.inner()
	if in.W() < poolSketchLeast || len(c.v.Beats) == 0 {
		return
	}
	pools := map[journal.ID]season.Pool{}
	most := 0.0
	for _, p := range c.s.Pools {
		pools[p.ID] = p
		if p.Shrunk != nil {
			most = max(most, *p.Shrunk)
		}
	}
	drawn := false
	for _, b := range c.v.Beats {
		if b.Beat.Place().IsZero() {
			continue
		}
		drawn = c.poolSketch(b, pools, most) || drawn
	}
	if drawn {
		c.note(words.PoolSketchKey())
	}
}

// poolSketch draws one beat; a beat without a drawn pool has no sketch.
func (c *cards) poolSketch(b SeasonBeat, pools map[journal.ID]season.Pool, most float64) bool {
	beat := b.Beat
	beat.Pools = append(beat.Pools[:0:0], beat.Pools...)
	for i, p := range beat.Pools {
		if of, ok := pools[p.ID]; ok {
			beat.Pools[i].Name = words.PoolOnSketch(of)
		}
	}
	night := &timeline.Night{Beat: beat, Log: &journal.Log{Trip: journal.Trip{Beat: b.ID}}}
	g := newSketch(night, draw.Size{W: c.inner().W(), H: poolSketchTall}, c.look, SketchView{Paper: true, Prefs: c.v.Prefs})
	if len(g.shapes) == 0 {
		return false
	}
	c.need(8 + seasonLine + poolSketchTall)
	c.y += 8
	c.say(boldFont, c.look.Ink, words.PoolSketchTitle(b.Beat.Name), c.inner().Min.X)
	g.rim()
	g.list.PushClip(draw.Rectangle(g.view))
	g.river()
	g.trees()
	for _, p := range g.shapes {
		of, ok := pools[p.Pool.ID]
		ground := c.look.Panel
		if ok && of.Shrunk != nil && most > 0 {
			ground = draw.Mix(c.look.Panel, c.look.Ink, 0.1+0.6**of.Shrunk/most)
		}
		g.list.Fill(p.path, draw.NonZero, draw.Solid(ground))
		if ok && of.Thin {
			drawShade(g.list, c.look, p.path, g.view, ground)
		}
		g.list.Stroke(p.path, draw.Stroke{Width: 1.3, Join: draw.RoundJoin}, c.look.Ink)
		if ok {
			g.hits = append(g.hits, Hit{Ref: poolRef(night, p.Pool.ID), Box: p.path.Bounds().Inset(-2), Area: p.path, Tip: words.Commas(of.Name, words.PoolShade(of))})
		}
	}
	g.chevrons()
	g.names()
	g.list.PopClip()
	at := draw.Pt(c.inner().Min.X, c.y)
	draw.Place(c.list, g.list, 1, at)
	for _, h := range g.hits {
		if h.Ref.Kind != PoolKind {
			continue
		}
		h.Box, h.Area = h.Box.Move(at), h.Area.Transformed(1, at)
		c.tips = append(c.tips, h)
	}
	c.y += poolSketchTall
	return true
}
