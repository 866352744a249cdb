package scene

import (
	"math"

	"gloamline/geo"
	"gloamline/ui/draw"
)

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
func (g *sketch) river() { g.riverOver(1) }

// riverOver does so, the water hiding only so much of what lies under it.
func (g *sketch) riverOver(cover float64) {
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
		g.list.Fill(water, draw.NonZero, draw.Solid(draw.Fade(draw.Mix(g.look.Panel, g.look.Nature(g.look.Water, g.ground), 0.42), cover)))
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
	arrow := draw.Polyline([]draw.Point{back.Add(left), p.Add(dir.Mul(4)), back.Sub(left)})
	g.list.Stroke(arrow, draw.Stroke{Width: 3.4, Cap: draw.RoundCap, Join: draw.RoundJoin}, draw.Fade(g.look.Panel, 0.4))
	g.list.Stroke(arrow, draw.Stroke{Width: 1.4, Cap: draw.RoundCap, Join: draw.RoundJoin}, draw.Fade(g.look.Ink, 0.6))
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
