package scene

import (
	"math"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
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
}

// Sketch draws the beat with the river running to the right, true left above:
// banks, trees, pools in their own light at the cursor, entries and hazards,
// and every contact at its place. At the cursor the colours die with the light.
func Sketch(n *timeline.Night, size draw.Size, look Look, v SketchView) Scene {
	g := newSketch(n, size, look, v)
	s := g.list
	s.Group(words.SketchTitle(n))
	s.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	s.PushClip(draw.Rectangle(draw.Bounds(size)))
	if len(g.lay.Pools) == 0 && len(g.lay.Banks) == 0 {
		t := draw.Text{S: words.NoSketch(), At: draw.Bounds(size).Center(), Anchor: draw.Middle, Font: titleFont, Color: look.Soft}
		t.S = draw.Fit(t.Font, t.S, size.W-20)
		s.Text(t)
	}
	g.river()
	g.trees()
	g.pools()
	g.chevrons()
	g.spots()
	g.names()
	g.contacts()
	s.PopClip()
	g.rim()
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
	scale  float64 // dp a metre
	origin draw.Point
	ground float64 // decades of the reference light over the threshold
}

func newSketch(n *timeline.Night, size draw.Size, look Look, v SketchView) *sketch {
	if v.Zoom <= 0 {
		v.Zoom = 1
	}
	g := &sketch{n: n, look: look, v: v, list: draw.NewList(size), lay: n.Beat.Layout(), ground: 3}
	if !v.Cursor.IsZero() {
		g.ground = math.Log10(float64(n.Open.At(v.Cursor).Lux) / float64(n.Grey.Threshold.Lux))
	}
	head := sketchHead
	if v.Paper {
		head = 12
	}
	g.labels.room = draw.R(6, head-6, size.W-12, size.H-head-sketchFoot+10)
	x0, y0, x1, y1 := g.extent()
	air := math.Max(6, math.Min(labelRoom, size.H*0.06))
	room := draw.Rect{Min: draw.Pt(18, head+air), Max: draw.Pt(size.W-18, size.H-sketchFoot-air)}
	if !(x1 > x0) || !(y1 > y0) || room.Empty() {
		x0, x1, y0, y1 = -50, 50, -20, 20
	}
	fit := math.Min(room.W()/(x1-x0), room.H()/(y1-y0))
	g.scale = fit * v.Zoom
	c := room.Center()
	g.origin = draw.Pt(c.X+v.Pan.X-(x0+x1)/2*g.scale, c.Y+v.Pan.Y+(y0+y1)/2*g.scale)
	return g
}

// extent is the box around the water in metres: pools and banks, not the trees.
func (g *sketch) extent() (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	grow := func(pts geo.Path) {
		for _, p := range pts {
			x, y := float64(p.X), float64(p.Y)
			x0, x1, y0, y1 = math.Min(x0, x), math.Max(x1, x), math.Min(y0, y), math.Max(y1, y)
		}
	}
	for _, p := range g.lay.Pools {
		for _, ring := range p.Area {
			grow(ring)
		}
	}
	for _, b := range g.lay.Banks {
		grow(b.Path)
	}
	return x0, y0, x1, y1
}

// SketchPlace returns the position under a point of the sketch.
func SketchPlace(n *timeline.Night, size draw.Size, v SketchView, p draw.Point) geo.Place {
	g := newSketch(n, size, Dusk, v)
	return g.lay.Place(geo.Point{X: units.Metres((p.X - g.origin.X) / g.scale), Y: units.Metres((g.origin.Y - p.Y) / g.scale)})
}

func (g *sketch) at(p geo.Point) draw.Point {
	return draw.Pt(g.origin.X+float64(p.X)*g.scale, g.origin.Y-float64(p.Y)*g.scale)
}

func (g *sketch) all(pts geo.Path) []draw.Point {
	out := make([]draw.Point, len(pts))
	for i, p := range pts {
		out[i] = g.at(p)
	}
	return out
}

// smooth is a curve through the points (Catmull-Rom, as cubic Béziers).
func smooth(pts []draw.Point, closed bool) draw.Path {
	n := len(pts)
	if closed && n > 1 && pts[0] == pts[n-1] {
		n--
	}
	var p draw.Path
	if n < 3 {
		return draw.Polyline(pts)
	}
	if closed && n < 8 { // so few corners are meant as corners
		return draw.Polygon(pts)
	}
	get := func(i int) draw.Point {
		if closed {
			return pts[((i%n)+n)%n]
		}
		return pts[max(0, min(n-1, i))]
	}
	p.Move(pts[0].X, pts[0].Y)
	last := n - 1
	if closed {
		last = n
	}
	for i := range last {
		a, b, c, d := get(i-1), get(i), get(i+1), get(i+2)
		p.Cubic(b.X+(c.X-a.X)/6, b.Y+(c.Y-a.Y)/6, c.X-(d.X-b.X)/6, c.Y-(d.Y-b.Y)/6, c.X, c.Y)
	}
	if closed {
		p.Close()
	}
	return p
}

// river fills the water between the two bank lines and draws the banks.
func (g *sketch) river() {
	var left, right []draw.Point
	for _, b := range g.lay.Banks {
		switch b.Bank {
		case geo.TrueLeft:
			left = append(left, g.all(b.Path)...)
		case geo.TrueRight:
			right = append(right, g.all(b.Path)...)
		}
	}
	if len(left) > 1 && len(right) > 1 {
		water := smooth(left, false)
		back := make([]draw.Point, len(right))
		for i := range right {
			back[i] = right[len(right)-1-i]
		}
		water.Line(back[0].X, back[0].Y)
		smooth(back, false).Each(func(verb draw.Verb, pts []draw.Point) {
			if verb == draw.CubicTo {
				water.Cubic(pts[0].X, pts[0].Y, pts[1].X, pts[1].Y, pts[2].X, pts[2].Y)
			}
		})
		water.Close()
		g.list.Fill(water, draw.NonZero, draw.Solid(draw.Mix(g.look.Panel, g.look.Nature(g.look.Water, g.ground), 0.42)))
	}
	for _, b := range [][]draw.Point{left, right} {
		if len(b) > 1 {
			g.list.Stroke(smooth(b, false), draw.Stroke{Width: 1.5, Join: draw.RoundJoin}, draw.Mix(g.look.Panel, g.look.Soft, 0.62))
		}
	}
}

// trees are short slanted strokes over their ground, closer for a closed canopy.
func (g *sketch) trees() {
	leaf := draw.Fade(g.look.Nature(g.look.Leaf, g.ground), 0.8)
	for _, t := range g.n.Beat.Trees() {
		_, _, areas := g.lay.Shape(t.Shape)
		for _, a := range areas {
			if len(a) > 0 {
				g.hatch(draw.Polygon(g.all(a[0])), hatchStep(t.Canopy), leaf)
			}
		}
	}
}

// hatchStep is the distance of the strokes in dp.
func hatchStep(c geo.Canopy) float64 {
	switch c {
	case geo.Open:
		return 12
	case geo.Closed:
		return 6
	}
	return 8.5
}

// hatch scatters strokes over an outline, the same every time.
func (g *sketch) hatch(path draw.Path, step float64, c draw.Color) {
	b := path.Bounds()
	if math.Max(b.W(), b.H()) > 4000 { // far zoomed in: keep to what can be seen
		b = b.Intersect(draw.Bounds(g.list.Size()))
	}
	var strokes draw.Path
	row := 0
	for y := b.Min.Y; y < b.Max.Y; y += step * 0.8 {
		row++
		col := 0
		for x := b.Min.X + float64(row%2)*step*0.5; x < b.Max.X; x += step {
			col++
			j := math.Mod(float64(row)*0.754877666+float64(col)*0.569840291, 1) // a low-discrepancy jitter
			p := draw.Pt(x+step*0.4*j, y+step*0.3*math.Mod(j*7, 1))
			if inside(path, p) {
				strokes.Move(p.X-1.7, p.Y+3.4)
				strokes.Line(p.X+1.7, p.Y-3.4)
			}
		}
	}
	g.list.Stroke(strokes, draw.Stroke{Width: 1.25, Cap: draw.RoundCap}, c)
}

// poolLight is the light on a pool at the cursor, in decades over the threshold.
func (g *sketch) poolLight(id journal.ID) (decades float64, moon bool) {
	if g.v.Cursor.IsZero() {
		return 3, false
	}
	for _, p := range g.n.Pools {
		if p.Pool.ID == id {
			return math.Log10(float64(p.Curve.At(g.v.Cursor).Lux) / float64(g.n.Grey.Threshold.Lux)), p.Curve.MoonShare(g.v.Cursor) > 0.5
		}
	}
	return g.ground, false
}

// poolColor shows a pool in its own light: moonlit pale, hill shadow dark.
func (g *sketch) poolColor(id journal.ID) draw.Color {
	d, moon := g.poolLight(id)
	c := g.look.Nature(g.look.Water, d)
	if g.v.Cursor.IsZero() || d > 0.4 {
		return c
	}
	// Below the threshold the tone alone tells pools apart, over three decades.
	t := math.Max(0, math.Min(1, (d+3)/3))
	pale := draw.Mix(g.look.Deep, g.look.Soft, 0.16+0.5*t)
	if moon {
		pale = draw.Mix(g.look.Deep, g.look.Moon, 0.34+0.5*t)
	}
	return g.look.drain(pale, d)
}

func (g *sketch) pools() {
	for _, p := range g.lay.Pools {
		path := smooth(g.all(p.Area[0]), true)
		c := g.poolColor(p.Pool.ID)
		g.list.Fill(path, draw.NonZero, draw.Solid(c))
		edge, w := draw.Mix(c, g.look.Ink, 0.38), 1.2
		if p.Pool.ID == g.v.Pool {
			edge, w = g.look.Accent, 2.4
		}
		g.list.Stroke(path, draw.Stroke{Width: w, Join: draw.RoundJoin}, edge)
		g.hits = append(g.hits, Hit{Ref: poolRef(g.n, p.Pool.ID), Box: path.Bounds().Inset(-2), Area: path, Tip: words.PoolTip(g.n, p.Pool, g.v.Cursor, g.v.Prefs)})
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

// chevrons point downstream between the pools and in the body of long ones.
func (g *sketch) chevrons() {
	for _, line := range g.middle() {
		total := 0.0
		for i := 1; i < len(line); i++ {
			total += line[i].Dist(line[i-1])
		}
		step := math.Max(60, total/12)
		next, run := step*0.35, 0.0
		for i := 1; i < len(line); i++ {
			d := line[i].Dist(line[i-1])
			for next <= run+d && d > 0 {
				g.chevron(line[i-1].Lerp(line[i], (next-run)/d), line[i].Sub(line[i-1]).Mul(1/d))
				next += step
			}
			run += d
		}
	}
}

func (g *sketch) chevron(p, dir draw.Point) {
	left, back := draw.Pt(-dir.Y, dir.X).Mul(5), p.Sub(dir.Mul(3))
	g.list.Stroke(draw.Polyline([]draw.Point{back.Add(left), p.Add(dir.Mul(4)), back.Sub(left)}),
		draw.Stroke{Width: 1.4, Cap: draw.RoundCap, Join: draw.RoundJoin}, draw.Fade(g.look.Ink, 0.45))
}

// middle is the line midway between the banks, or through each pool without them.
func (g *sketch) middle() [][]draw.Point {
	if len(g.lay.Centre) > 1 {
		return [][]draw.Point{g.all(g.lay.Centre)}
	}
	var out [][]draw.Point
	for _, p := range g.lay.Pools {
		out = append(out, g.all(p.Axis))
	}
	return out
}

// spots draws entries as small gates, hazards as a barred diamond, marks as a cross.
func (g *sketch) spots() {
	for _, f := range g.n.Beat.Features {
		points, _, _ := g.lay.Shape(f.Shape)
		for _, at := range points {
			p := g.at(at)
			switch f.Role {
			case geo.RoleEntry:
				drawEntry(g.list, g.look, p)
			case geo.RoleHazard:
				drawHazard(g.list, g.look, p)
			default:
				g.list.Stroke(draw.Line(draw.Pt(p.X-3.5, p.Y), draw.Pt(p.X+3.5, p.Y)), signStroke, g.look.Soft)
				g.list.Stroke(draw.Line(draw.Pt(p.X, p.Y-3.5), draw.Pt(p.X, p.Y+3.5)), signStroke, g.look.Soft)
			}
			box := draw.R(p.X-7, p.Y-7, 14, 14)
			g.labels.block(box)
			g.hits = append(g.hits, Hit{Ref: journal.Ref{Kind: SpotKind, Trip: g.n.Log.Trip.Beat, ID: f.ID}, Box: box, Tip: words.SpotTip(f)})
		}
	}
}

var signStroke = draw.Stroke{Width: 1.6, Cap: draw.RoundCap, Join: draw.RoundJoin}

// drawEntry is the sign of a way into the water: a small gate.
func drawEntry(s draw.Surface, look Look, p draw.Point) {
	s.Stroke(draw.Polyline([]draw.Point{{X: p.X - 4, Y: p.Y + 4}, {X: p.X - 4, Y: p.Y - 4}, {X: p.X + 4, Y: p.Y - 4}, {X: p.X + 4, Y: p.Y + 4}}), signStroke, look.Soft)
}

// drawHazard is the sign of a hazard: a diamond with a stroke and a dot.
func drawHazard(s draw.Surface, look Look, p draw.Point) {
	d := draw.Polygon([]draw.Point{{X: p.X, Y: p.Y - 6}, {X: p.X + 6, Y: p.Y}, {X: p.X, Y: p.Y + 6}, {X: p.X - 6, Y: p.Y}})
	s.Fill(d, draw.NonZero, draw.Solid(look.Panel))
	s.Stroke(d, signStroke, look.Ink)
	s.Stroke(draw.Line(draw.Pt(p.X, p.Y-2.6), draw.Pt(p.X, p.Y+0.6)), signStroke, look.Ink)
	s.Fill(draw.Circle(draw.Pt(p.X, p.Y+3), 0.9), draw.NonZero, draw.Solid(look.Ink))
}
