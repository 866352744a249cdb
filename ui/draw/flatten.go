package draw

import "math"

// Piece is a row of straight lines out of a flattened path.
type Piece struct {
	Points []Point
	Closed bool // the last point is joined to the first
}

// Flatten turns the curves into straight lines that stay within tol dp of them
// (0.05 dp is beyond what an eye can tell; tol must be above 0).
func (p Path) Flatten(tol float64) []Piece {
	var f Flattener
	f.Flatten(p, 1, Point{}, tol)
	return f.Pieces()
}

// Flattener flattens paths into storage that it uses again.
type Flattener struct {
	points []Point
	ends   []int
	closed []bool
	pieces []Piece
}

// Flatten replaces what the Flattener holds by the pieces of p scaled by k and
// moved by d, within tol in the units after scaling. A piece of one point stays.
func (f *Flattener) Flatten(p Path, k float64, d Point, tol float64) {
	f.points, f.ends, f.closed = f.points[:0], f.ends[:0], f.closed[:0]
	open := false
	end := func(closed bool) {
		if open {
			f.ends = append(f.ends, len(f.points))
			f.closed = append(f.closed, closed)
		}
		open = false
	}
	at := 0
	for _, v := range p.verbs {
		switch v {
		case MoveTo:
			end(false)
			f.points = append(f.points, p.points[at].Mul(k).Add(d))
			open = true
		case LineTo:
			f.points = append(f.points, p.points[at].Mul(k).Add(d))
		case QuadTo:
			f.quad(p.points[at].Mul(k).Add(d), p.points[at+1].Mul(k).Add(d), tol)
		case CubicTo:
			f.cubic(p.points[at].Mul(k).Add(d), p.points[at+1].Mul(k).Add(d), p.points[at+2].Mul(k).Add(d), tol)
		case Close:
			end(true)
		}
		at += v.Points()
	}
	end(false)
}

// Pieces is the result; it is valid until the next Flatten.
func (f *Flattener) Pieces() []Piece {
	f.pieces = f.pieces[:0]
	from := 0
	for i, to := range f.ends {
		f.pieces = append(f.pieces, Piece{f.points[from:to:to], f.closed[i]})
		from = to
	}
	return f.pieces
}

// The number of lines follows from the bound of the second derivative: n lines
// leave a chord error of at most |B”|/(8 n^2) (Wang's formula, as given in
// Goldman, Pyramid Algorithms, 2003, section 5.6.3; from memory).
func (f *Flattener) quad(c, e Point, tol float64) {
	s := f.points[len(f.points)-1]
	n := steps(s.Sub(c).Sub(c.Sub(e)), 2, tol)
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		f.points = append(f.points, s.Mul(u*u).Add(c.Mul(2*u*t)).Add(e.Mul(t*t)))
	}
	f.points = append(f.points, e)
}

func (f *Flattener) cubic(a, b, e Point, tol float64) {
	s := f.points[len(f.points)-1]
	d1, d2 := s.Sub(a).Sub(a.Sub(b)), a.Sub(b).Sub(b.Sub(e))
	d := Point{max(math.Abs(d1.X), math.Abs(d2.X)), max(math.Abs(d1.Y), math.Abs(d2.Y))}
	n := steps(d, 6, tol)
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		f.points = append(f.points, s.Mul(u*u*u).Add(a.Mul(3*u*u*t)).Add(b.Mul(3*u*t*t)).Add(e.Mul(t*t*t)))
	}
	f.points = append(f.points, e)
}

// steps is how many lines a curve needs whose second differences are d; at most
// 1000, which for the largest coordinate is coarse but finite.
func steps(d Point, factor, tol float64) int {
	n := math.Ceil(math.Sqrt(factor * math.Hypot(d.X, d.Y) / (8 * tol)))
	return int(min(max(n, 1), 1000))
}
