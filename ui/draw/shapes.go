package draw

import "math"

// Line is the straight line between two points.
func Line(a, b Point) Path { return Polyline([]Point{a, b}) }

// Polyline joins the points by straight lines and stays open.
func Polyline(pts []Point) Path {
	var p Path
	p.verbs = make([]Verb, 0, len(pts)+1)
	p.points = make([]Point, 0, len(pts))
	for i, pt := range pts {
		v := LineTo
		if i == 0 {
			v = MoveTo
		}
		p.verbs = append(p.verbs, v)
		p.points = append(p.points, pt)
	}
	return p
}

// Polygon joins the points by straight lines and closes them.
func Polygon(pts []Point) Path {
	p := Polyline(pts)
	p.Close()
	return p
}

// Rectangle is the outline of r, clockwise on the screen.
func Rectangle(r Rect) Path {
	return Polygon([]Point{r.Min, {r.Max.X, r.Min.Y}, r.Max, {r.Min.X, r.Max.Y}})
}

// kappa places the control points of a quarter circle so that the curve is within
// 0.03 % of the radius: 4/3 tan(pi/8).
const kappa = 0.5522847498307936

// RoundRect is the outline of r with its corners rounded by a radius in dp, at
// most half of the shorter side.
func RoundRect(r Rect, radius float64) Path {
	radius = math.Min(radius, math.Min(math.Abs(r.W()), math.Abs(r.H()))/2)
	if !(radius > 0) {
		return Rectangle(r)
	}
	k := radius * (1 - kappa)
	x0, y0, x1, y1 := r.Min.X, r.Min.Y, r.Max.X, r.Max.Y
	var p Path
	p.Move(x0+radius, y0)
	p.Line(x1-radius, y0)
	p.Cubic(x1-k, y0, x1, y0+k, x1, y0+radius)
	p.Line(x1, y1-radius)
	p.Cubic(x1, y1-k, x1-k, y1, x1-radius, y1)
	p.Line(x0+radius, y1)
	p.Cubic(x0+k, y1, x0, y1-k, x0, y1-radius)
	p.Line(x0, y0+radius)
	p.Cubic(x0, y0+k, x0+k, y0, x0+radius, y0)
	p.Close()
	return p
}

// Circle is the circle of that radius in dp around a centre.
func Circle(c Point, radius float64) Path { return Ellipse(c, radius, radius) }

// Ellipse is the upright ellipse with the two radii in dp around a centre.
func Ellipse(c Point, rx, ry float64) Path {
	kx, ky := rx*kappa, ry*kappa
	var p Path
	p.Move(c.X+rx, c.Y)
	p.Cubic(c.X+rx, c.Y+ky, c.X+kx, c.Y+ry, c.X, c.Y+ry)
	p.Cubic(c.X-kx, c.Y+ry, c.X-rx, c.Y+ky, c.X-rx, c.Y)
	p.Cubic(c.X-rx, c.Y-ky, c.X-kx, c.Y-ry, c.X, c.Y-ry)
	p.Cubic(c.X+kx, c.Y-ry, c.X+rx, c.Y-ky, c.X+rx, c.Y)
	p.Close()
	return p
}

// Arc is the open part of a circle from one angle to another, in degrees clockwise
// from the right; it turns clockwise if to is above from, at most one full turn.
func Arc(c Point, radius, from, to float64) Path {
	sweep := math.Max(-360, math.Min(360, to-from))
	var p Path
	if math.IsNaN(sweep) || math.IsInf(from, 0) {
		p.Move(math.NaN(), math.NaN())
		return p
	}
	n := int(math.Ceil(math.Abs(sweep) / 90))
	start := Point{radius, 0}.Rotate(from)
	p.Move(c.X+start.X, c.Y+start.Y)
	if n == 0 {
		return p
	}
	step := sweep / float64(n)
	k := 4.0 / 3 * math.Tan(step*math.Pi/180/4)
	for i := range n {
		a0, a1 := from+step*float64(i), from+step*float64(i+1)
		a := Point{radius, radius * k}.Rotate(a0)
		b := Point{radius, -radius * k}.Rotate(a1)
		e := Point{radius, 0}.Rotate(a1)
		p.Cubic(c.X+a.X, c.Y+a.Y, c.X+b.X, c.Y+b.Y, c.X+e.X, c.Y+e.Y)
	}
	return p
}
