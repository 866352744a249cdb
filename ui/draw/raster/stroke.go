package raster

import (
	"math"

	"gloamline/ui/draw"
)

// stroker turns lines into shapes and adds them to cells. All lengths are pixels.
// Everything it adds winds the same way (negative area with y downwards), so that
// shapes that overlap add up and never cancel.
type stroker struct {
	to          *cells
	half        float64
	cap         draw.Cap
	join        draw.Join
	pts         []draw.Point
	dir         []draw.Point // of the segment from pts[i] to the next
	length      []float64
	left, right []draw.Point
	shape       []draw.Point
	dash        dasher
}

// gentle is the cosine below which a bend needs a join of its own: about 18 degrees,
// where a mitre is within 1.3 % of the half width of a round join.
const gentle = 0.95

// widestDashed is the half width in pixels above which a line is drawn unbroken: no
// picture has such dashes, and their ends would take long.
const widestDashed = 500

func (s *stroker) begin(to *cells, st draw.Stroke, scale float64) {
	s.to, s.half, s.cap, s.join = to, st.Width*scale/2, st.Cap, st.Join
	s.dash.begin(st, scale)
}

// piece adds the line along a row of points, dashed or not.
func (s *stroker) piece(p draw.Piece) {
	if s.dash.solid() || s.half > widestDashed {
		s.unbroken(p.Points, p.Closed)
		return
	}
	reach := s.half*draw.MiterLimit + 1
	box := draw.R(s.to.dx-reach, s.to.dy-reach, float64(s.to.w)+2*reach, float64(s.to.h)+2*reach)
	s.dash.run(p, box, func(pts []draw.Point) { s.unbroken(pts, false) })
}

// unbroken adds one line without gaps.
func (s *stroker) unbroken(pts []draw.Point, closed bool) {
	s.take(pts, closed)
	n := len(s.pts)
	if len(s.dir) == 0 {
		if n == 1 {
			s.dot(s.pts[0])
		}
		return
	}
	if !closed {
		for from := 0; from < n-1; {
			to := from + 1
			for to < n-1 && s.smooth(to-1, to) {
				to++
			}
			s.ribbon(from, to)
			if to < n-1 {
				s.corner(s.pts[to], s.dir[to-1], s.dir[to])
			}
			from = to
		}
		s.end(s.pts[0], s.dir[0].Mul(-1))
		s.end(s.pts[n-1], s.dir[n-2])
		return
	}
	start := -1
	for i := range n {
		if !s.smooth((i+n-1)%n, i) {
			start = i
			break
		}
	}
	if start < 0 {
		s.loop()
		return
	}
	for from := start; from < start+n; {
		to := from + 1
		for to < start+n && s.smooth((to-1)%n, to%n) {
			to++
		}
		s.ribbon(from, to)
		s.corner(s.pts[to%n], s.dir[(to-1)%n], s.dir[to%n])
		from = to
	}
}

// take keeps the points that differ, with the segments between them.
func (s *stroker) take(pts []draw.Point, closed bool) {
	s.pts, s.dir, s.length = s.pts[:0], s.dir[:0], s.length[:0]
	for _, p := range pts {
		if n := len(s.pts); n == 0 || dist(s.pts[n-1], p) > 1e-3 {
			s.pts = append(s.pts, p)
		}
	}
	n := len(s.pts)
	for closed && n > 1 && dist(s.pts[n-1], s.pts[0]) <= 1e-3 {
		n--
		s.pts = s.pts[:n]
	}
	last := n - 1
	if closed && n > 1 {
		last = n
	}
	for i := range max(last, 0) {
		d := s.pts[(i+1)%n].Sub(s.pts[i])
		l := math.Sqrt(dot(d, d))
		s.dir = append(s.dir, d.Mul(1/l))
		s.length = append(s.length, l)
	}
}

// smooth reports whether segment b goes on from segment a with so small a bend that
// both can share a mitred end without folding over.
func (s *stroker) smooth(a, b int) bool {
	cos := dot(s.dir[a], s.dir[b])
	limit := gentle
	if s.join == draw.BevelJoin {
		limit = 0.995
	}
	if cos < limit {
		return false
	}
	tan := math.Sqrt(max(0, (1-cos)/(1+cos)))
	return s.half*tan <= 0.5*min(s.length[a], s.length[b])
}

// ribbon adds the segments from point number from to point number to, counted round
// the points, which bend smoothly in between.
func (s *stroker) ribbon(from, to int) {
	n, m := len(s.pts), len(s.dir)
	s.left, s.right = s.left[:0], s.right[:0]
	s.side(s.pts[from%n], normal(s.dir[from%m]).Mul(s.half))
	for i := from + 1; i < to; i++ {
		s.side(s.pts[i%n], s.mitre((i-1)%m, i%m))
	}
	s.side(s.pts[to%n], normal(s.dir[(to-1)%m]).Mul(s.half))
	for i := len(s.right) - 1; i >= 0; i-- {
		s.left = append(s.left, s.right[i])
	}
	s.to.polygon(s.left)
}

// loop adds a closed line without corners.
func (s *stroker) loop() {
	n := len(s.pts)
	s.left, s.right = s.left[:0], s.right[:0]
	for i := range n {
		s.side(s.pts[i], s.mitre((i+n-1)%n, i))
	}
	s.to.polygon(s.left)
	for i, j := 0, n-1; i < j; i, j = i+1, j-1 {
		s.right[i], s.right[j] = s.right[j], s.right[i]
	}
	s.to.polygon(s.right)
}

func (s *stroker) side(p, off draw.Point) {
	s.left = append(s.left, p.Add(off))
	s.right = append(s.right, p.Sub(off))
}

func (s *stroker) mitre(a, b int) draw.Point {
	return normal(s.dir[a]).Add(normal(s.dir[b])).Mul(s.half / (1 + dot(s.dir[a], s.dir[b])))
}

// corner fills the gap on the outer side of a bend at p.
func (s *stroker) corner(p, a, b draw.Point) {
	cos, turn := dot(a, b), 1.0
	if a.X*b.Y-a.Y*b.X < 0 {
		turn = -1
	}
	na, nb := normal(a).Mul(-turn*s.half), normal(b).Mul(-turn*s.half)
	s.shape = append(s.shape[:0], p, p.Add(na))
	switch {
	case s.join == draw.RoundJoin:
		s.fan(p, na, turn*math.Acos(max(-1, min(1, cos))))
	case s.join == draw.MiterJoin && 2 <= draw.MiterLimit*draw.MiterLimit*(1+cos):
		s.shape = append(s.shape, p.Add(na.Add(nb).Mul(1/(1+cos))))
	}
	s.shape = append(s.shape, p.Add(nb))
	s.convex()
}

// end adds the cap at p, where the line comes to an end going along d.
func (s *stroker) end(p, d draw.Point) {
	n := normal(d).Mul(s.half)
	switch s.cap {
	case draw.RoundCap:
		s.shape = append(s.shape[:0], p.Sub(n))
		s.fan(p, n.Mul(-1), math.Pi)
		s.shape = append(s.shape, p.Add(n))
		s.convex()
	case draw.SquareCap:
		e := d.Mul(s.half)
		s.shape = append(s.shape[:0], p.Sub(n), p.Sub(n).Add(e), p.Add(n).Add(e), p.Add(n))
		s.convex()
	}
}

// dot adds what the caps make of a line without length.
func (s *stroker) dot(p draw.Point) {
	if s.cap != draw.ButtCap {
		s.end(p, draw.Pt(1, 0))
		s.end(p, draw.Pt(-1, 0))
	}
}

// fan appends the points strictly between the ends of an arc around p that begins at
// p+r and turns by the angle.
func (s *stroker) fan(p, r draw.Point, angle float64) {
	step := 2 * math.Acos(max(0, 1-0.03/max(s.half, 0.03)))
	n := int(min(math.Ceil(math.Abs(angle)/step), 200))
	sin, cos := math.Sincos(angle / float64(n))
	for i := 1; i < n; i++ {
		r = draw.Pt(r.X*cos-r.Y*sin, r.X*sin+r.Y*cos)
		s.shape = append(s.shape, p.Add(r))
	}
}

// convex adds shape, turned round if it winds the other way.
func (s *stroker) convex() {
	area := 0.0
	o := s.shape[0]
	for i := 1; i+1 < len(s.shape); i++ {
		u, v := s.shape[i].Sub(o), s.shape[i+1].Sub(o)
		area += u.X*v.Y - u.Y*v.X
	}
	if area > 0 {
		for i, j := 0, len(s.shape)-1; i < j; i, j = i+1, j-1 {
			s.shape[i], s.shape[j] = s.shape[j], s.shape[i]
		}
	}
	s.to.polygon(s.shape)
}

// dist is the distance of two points. Coordinates in pixels are far from where squares
// of them overflow, which spares the care that math.Hypot takes.
func dist(a, b draw.Point) float64 {
	d := b.Sub(a)
	return math.Sqrt(dot(d, d))
}

func dot(a, b draw.Point) float64    { return a.X*b.X + a.Y*b.Y }
func normal(d draw.Point) draw.Point { return draw.Pt(-d.Y, d.X) }
