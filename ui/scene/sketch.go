package scene

import (
	"math"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// SketchView is what the sketch shows.
type SketchView struct {
	Cursor   time.Time // zero: the whole night at once, in the colours of day
	Selected journal.Ref
	Pool     journal.ID // the pool picked out, if any
	Zoom     float64    // 1 fits the beat; 0 means 1
	Pan      draw.Point // dp, of the middle
	Paper    bool       // on a page, whose title says what the caption would
	Prefs    words.Prefs
	Ghosts   Ghosts // what is not written
}

// Sketch draws the beat with the river running to the right, true left above:
// banks, trees, pools in their own light at the cursor, entries and hazards,
// and every contact at its place. At the cursor the colours die with the light.
func Sketch(n *timeline.Night, size draw.Size, look Look, v SketchView) Scene {
	g := newSketch(n, size, look, v)
	s := g.list
	s.Group(words.SketchTitle(n))
	s.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	g.rim()
	if v.Zoom != 1 { // after the rim, whose caption may have taken a second line
		g.labels.room = g.labels.room.Intersect(g.view)
	}
	s.PushClip(draw.Rectangle(g.view))
	if len(g.water()) == 0 {
		t := draw.Text{S: words.NoSketch(), At: draw.Bounds(size).Center(), Anchor: draw.Middle, Font: titleFont, Color: look.Soft}
		t.S = draw.Fit(t.Font, t.S, size.W-20)
		s.Text(t)
	}
	g.river()
	g.trees()
	g.pools()
	g.chevrons()
	g.runs()
	g.spots()
	marks := g.settleContacts()
	g.names()
	g.contacts(marks)
	g.photos()
	g.ends()
	s.PopClip()
	s.EndGroup()
	return Scene{List: s, Hits: g.hits}
}

// Measures of the sketch in dp: room for the caption above, labels, and the
// scale below.
const (
	sketchHead = 34.0
	sketchFoot = 30.0
	labelRoom  = 24.0
)

type sketch struct {
	n      *timeline.Night
	look   Look
	v      SketchView
	list   *draw.List
	hits   []Hit
	labels labels
	lay    *geo.Layout
	shapes []poolDrawn
	view   draw.Rect // where the map shows
	// The plane of the layout is turned, scaled and moved onto the picture.
	sin, cos float64
	scale    float64 // dp a metre
	origin   draw.Point
	ground   float64                   // decades of the reference light over the threshold
	marked   map[journal.ID]bool       // contacts that have a mark
	lines    map[journal.ID]draw.Point // where the line of a run begins
	counted  bool                      // names of pools carry fish and hours, which go last
}

func newSketch(n *timeline.Night, size draw.Size, look Look, v SketchView) *sketch {
	if v.Zoom <= 0 {
		v.Zoom = 1
	}
	g := &sketch{n: n, look: look, v: v, list: draw.NewList(size), lay: n.Beat.Layout(), ground: 3,
		marked: map[journal.ID]bool{}, lines: map[journal.ID]draw.Point{}}
	if !v.Cursor.IsZero() {
		g.ground = math.Log10(float64(n.Open.At(v.Cursor).Lux) / float64(n.Grey.Threshold.Lux))
	}
	head := sketchHead
	if v.Paper {
		head = 12
	}
	g.labels.room = draw.R(6, head-6, size.W-12, size.H-head-sketchFoot+10)
	g.view = draw.Bounds(size)
	if v.Zoom != 1 { // the river could run under the words: it ends where they begin
		g.view = draw.Rect{Min: draw.Pt(0, head-2), Max: draw.Pt(size.W, math.Max(head, size.H-sketchFoot+4))}
	}
	air := math.Max(6, math.Min(labelRoom, size.H*0.06))
	g.fit(draw.Rect{Min: draw.Pt(18, head+air), Max: draw.Pt(size.W-18, size.H-sketchFoot-air)})
	for _, p := range g.lay.Pools {
		pts := g.all(p.Area[0])
		poly := draw.Polygon(pts)
		g.shapes = append(g.shapes, poolDrawn{p, pts, smooth(pts, true), poly, poly.Bounds()})
	}
	return g
}

// poolDrawn is a pool on the picture.
type poolDrawn struct {
	geo.PoolShape
	pts  []draw.Point
	path draw.Path // as drawn
	poly draw.Path // straight from corner to corner, for asking what lies in it
	box  draw.Rect
}

// SketchPlace returns the position under a point of the sketch.
func SketchPlace(n *timeline.Night, size draw.Size, v SketchView, p draw.Point) geo.Place {
	g := newSketch(n, size, Dusk, v)
	return g.lay.Place(g.plane(p))
}

func (g *sketch) all(pts geo.Path) []draw.Point {
	out := make([]draw.Point, len(pts))
	for i, p := range pts {
		out[i] = g.at(p)
	}
	return out
}
