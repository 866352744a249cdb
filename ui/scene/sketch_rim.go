package scene

import (
	"math"

	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// names labels the pools outside the river with leader lines.
func (g *sketch) names() {
	font := draw.Font{Weight: draw.Medium, Size: 13}
	for _, p := range g.lay.Pools {
		pts := g.all(p.Area[0])
		b := draw.Polygon(pts).Bounds()
		c, _ := g.along(p.Pool.ID, 0.5)
		color := g.look.Ink
		if p.Pool.ID == g.v.Pool {
			color = g.look.Accent
		}
		t := draw.Text{S: words.PoolName(p.Pool.Name), Font: font, Color: color, Anchor: draw.Middle, Halo: draw.Halo{Width: 3, Color: draw.Fade(g.look.Panel, 0.9)}}
		var spots []draw.Point
		for _, dy := range []float64{20, 32, 46, 62, 80} {
			for _, dx := range []float64{0, -26, 26, -52, 52} {
				spots = append(spots, draw.Pt(c.X+dx, b.Min.Y-dy+6), draw.Pt(c.X+dx, b.Max.Y+dy+4))
			}
		}
		placed, i := g.labels.place(t, spots)
		if i < 0 { // no room beside it: in the water, where every pool has some
			t.At = draw.Pt(c.X, b.Max.Y-6)
			g.labels.block(labelBox(t))
			g.list.Text(t)
			continue
		}
		above := placed.At.Y < c.Y
		from, to := draw.Pt(placed.At.X, placed.At.Y+4), draw.Pt(c.X, b.Min.Y+1)
		if !above {
			from, to = draw.Pt(placed.At.X, placed.At.Y-13), draw.Pt(c.X, b.Max.Y-1)
		}
		g.list.Stroke(draw.Line(from, edgeOf(pts, to, c)), draw.Stroke{Width: 1}, draw.Fade(g.look.Soft, 0.75))
		g.list.Text(placed)
	}
}

// edgeOf is where the line from far to centre first meets the outline.
func edgeOf(ring []draw.Point, far, centre draw.Point) draw.Point {
	path := draw.Polygon(ring)
	for i := range 40 {
		q := far.Lerp(centre, float64(i)/40)
		if inside(path, q) {
			return q
		}
	}
	return centre
}

// rim writes the caption, the moon's bearing, north, the scale and the banks
// around the sketch.
func (g *sketch) rim() {
	size := g.list.Size()
	if g.v.Zoom > 1 { // the river may run under the words: they stand on a plate then
		plate := draw.Solid(draw.Fade(g.look.Panel, 0.9))
		g.list.Fill(draw.Rectangle(draw.R(0, 0, size.W, sketchHead-4)), draw.NonZero, plate)
		g.list.Fill(draw.Rectangle(draw.R(0, size.H-sketchFoot+2, size.W, sketchFoot-2)), draw.NonZero, plate)
	}
	if !g.v.Paper {
		g.caption()
	}
	g.foot()
}

// caption says what the sketch shows at the cursor, and where the moon stands.
func (g *sketch) caption() {
	right := g.list.Size().W - 16
	if !g.v.Cursor.IsZero() {
		right = g.moon(right)
	}
	caption := words.SketchCaption(g.n, g.v.Cursor, g.v.Prefs)
	g.list.Text(draw.Text{S: draw.Fit(draw.Font{Size: 12.5}, caption, right-32), At: draw.Pt(16, 22), Font: draw.Font{Size: 12.5}, Color: g.look.Soft})
}

// foot has the scale, north, and how the sketch lies.
func (g *sketch) foot() {
	size := g.list.Size()
	y := size.H - 14
	metres := niceLength(110 / g.scale)
	w := metres * g.scale
	g.list.Stroke(draw.Polyline([]draw.Point{{X: 16, Y: y - 8}, {X: 16, Y: y - 4}, {X: 16 + w, Y: y - 4}, {X: 16 + w, Y: y - 8}}), draw.Stroke{Width: 1.5}, g.look.Soft)
	g.list.Text(draw.Text{S: words.Metres(units.Metres(metres)), At: draw.Pt(16+w+8, y), Font: textFont, Color: g.look.Soft})
	lx := 16 + w + 8 + draw.Measure(textFont, words.Metres(units.Metres(metres))).Width
	g.north(draw.Pt(lx+24, y-5))
	t := draw.Text{S: words.BanksCaption(), At: draw.Pt(size.W-16, y), Font: textFont, Color: g.look.Soft, Anchor: draw.End}
	if draw.Measure(t.Font, t.S).Width < size.W-lx-80 {
		g.list.Text(t)
	}
}

// north is a small needle with its letter.
func (g *sketch) north(c draw.Point) {
	x, y := g.lay.North()
	d := draw.Pt(x, -y)
	s := draw.Pt(-d.Y, d.X)
	g.list.Fill(draw.Polygon([]draw.Point{c.Add(d.Mul(9)), c.Add(s.Mul(3.2)).Sub(d.Mul(5)), c.Sub(d.Mul(2)), c.Sub(s.Mul(3.2)).Sub(d.Mul(5))}), draw.NonZero, draw.Solid(g.look.Soft))
	g.list.Text(draw.Text{S: words.NorthLetter(), At: draw.Pt(c.X+14, c.Y+5), Font: textFont, Color: g.look.Soft})
}

// moon writes where the moon stands and puts its disc on the rim at its
// bearing; it returns how far right the caption may reach.
func (g *sketch) moon(right float64) float64 {
	size := g.list.Size()
	m := g.n.MoonAt(g.v.Cursor)
	text := words.MoonWhere(g.n, g.v.Cursor)
	t := draw.Text{S: text, At: draw.Pt(right, 22), Font: textFont, Color: g.look.Moon, Anchor: draw.End}
	g.list.Text(t)
	w := draw.Measure(t.Font, t.S).Width
	drawMoon(g.list, g.look, draw.Pt(right-w-16, 18), 7.5, g.n.Sky.MoonFraction, g.n.Sky.MoonWaxing == (g.n.Beat.Place().Lat >= 0), 1)
	if m.Alt > -0.6 {
		x, y := g.direction(m.Az)
		p := rimPoint(draw.R(10, sketchHead, size.W-20, size.H-sketchHead-sketchFoot), draw.Pt(x, -y))
		g.list.Fill(draw.Circle(p, 4.5), draw.NonZero, draw.Solid(g.look.Moon))
		g.list.Stroke(draw.Line(p, p.Sub(draw.Pt(x, -y).Mul(16))), draw.Stroke{Width: 1.2, Dash: []float64{2, 2}}, draw.Fade(g.look.Moon, 0.8))
	}
	return right - w - 30
}

// direction is the unit vector of a bearing on the plane, y upwards.
func (g *sketch) direction(bearing units.Degrees) (x, y float64) {
	nx, ny := g.lay.North()
	sin, cos := math.Sincos(bearing.Radians())
	return nx*cos + ny*sin, ny*cos - nx*sin
}

// rimPoint is where the ray from the middle of r in a direction leaves it.
func rimPoint(r draw.Rect, d draw.Point) draw.Point {
	c := r.Center()
	t := math.Inf(1)
	if d.X != 0 {
		t = math.Min(t, r.W()/2/math.Abs(d.X))
	}
	if d.Y != 0 {
		t = math.Min(t, r.H()/2/math.Abs(d.Y))
	}
	if math.IsInf(t, 1) {
		return c
	}
	return c.Add(d.Mul(t))
}

// niceLength is the round length in metres at most m.
func niceLength(m float64) float64 {
	if !(m > 0) || math.IsInf(m, 0) {
		return 1
	}
	p := math.Pow(10, math.Floor(math.Log10(m)))
	for _, k := range []float64{5, 2, 1} {
		if k*p <= m {
			return k * p
		}
	}
	return p
}
