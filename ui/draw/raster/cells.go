package raster

import (
	"math"
	"math/bits"

	"gloamline/ui/draw"
)

const (
	blockBits = 3 // pixels are marked as touched in blocks of 8
	block     = 1 << blockBits
	nothing   = 1.0 / 512 // coverage below this is rounding
)

// cells gathers the signed area of edges and hands out the coverage of pixels. Each
// cell holds the change of coverage against its left neighbour. All cells and marks
// are nought between two shapes: sweeping clears what was touched.
type cells struct {
	w, h, stride, words int
	delta               []float32
	marks               []uint64
	top, bottom         int // rows touched: top <= y < bottom
	dx, dy              float64
	covers              [block]uint8
}

// sink takes coverage from 0 to 255, row by row from the left.
type sink interface {
	even(y, x0, x1 int, cover uint8)  // the same for x0 <= x < x1
	varied(y, x0 int, covers []uint8) // one for each pixel from x0
}

// begin prepares for a shape within w x h pixels whose corner is at x, y.
func (c *cells) begin(x, y, w, h int) {
	c.w, c.h, c.stride = w, h, w+2
	c.words = (c.stride>>blockBits + 64) / 64
	if n := c.stride*h + block; n > len(c.delta) {
		c.delta = make([]float32, n)
	}
	if n := c.words * h; n > len(c.marks) {
		c.marks = make([]uint64, n)
	}
	c.top, c.bottom = h, 0
	c.dx, c.dy = float64(x), float64(y)
}

// polygon adds a closed row of points.
func (c *cells) polygon(pts []draw.Point) {
	if len(pts) < 2 {
		return
	}
	last := pts[len(pts)-1]
	for _, p := range pts {
		c.line(last, p)
		last = p
	}
}

// line adds an edge. What lies left of the grid still counts, as an edge along its
// left side; what lies right of it or above or below does not.
func (c *cells) line(p, q draw.Point) {
	x0, y0, x1, y1 := p.X-c.dx, p.Y-c.dy, q.X-c.dx, q.Y-c.dy
	dir := float32(1)
	if y0 > y1 {
		x0, y0, x1, y1 = x1, y1, x0, y0
		dir = -1
	}
	h, w := float64(c.h), float64(c.w)
	if y0 == y1 || y1 <= 0 || y0 >= h || (x0 >= w && x1 >= w) {
		return
	}
	slope := (x1 - x0) / (y1 - y0)
	if y0 < 0 {
		x0, y0 = x0-y0*slope, 0
	}
	if y1 > h {
		x1, y1 = x0+(h-y0)*slope, h
	}
	if x0 >= 0 && x1 >= 0 && x0 <= w && x1 <= w {
		c.inside(x0, y0, x1, y1, dir)
		return
	}
	// Cut at the sides; the edge runs from one to the other at most once.
	a := clamp((0-x0)/(x1-x0), x0, x1)
	b := clamp((w-x0)/(x1-x0), x0, x1)
	if a > b {
		a, b = b, a
	}
	ya, yb := y0+(y1-y0)*a, y0+(y1-y0)*b
	xa, xb := x0+(x1-x0)*a, x0+(x1-x0)*b
	c.aside(x0, xa, y0, ya, dir)
	c.inside(min(max(xa, 0), w), ya, min(max(xb, 0), w), yb, dir)
	c.aside(xb, x1, yb, y1, dir)
}

// clamp holds a parameter in 0 to 1; an upright edge has none and lies on one side.
func clamp(t, x0, x1 float64) float64 {
	if x0 == x1 {
		return 0
	}
	return min(max(t, 0), 1)
}

// aside adds a part that lies on one side of the grid.
func (c *cells) aside(xa, xb, y0, y1 float64, dir float32) {
	if xa+xb < 0 {
		c.inside(0, y0, 0, y1, dir)
	}
}

// inside adds an edge within the grid, y0 <= y1. In each row it spreads the height
// it crosses over the pixels it crosses: what lies right of the edge is covered.
func (c *cells) inside(x0, y0, x1, y1 float64, dir float32) {
	if !(y1 > y0) {
		return
	}
	first, last := int(y0), int(math.Ceil(y1))
	last = min(last, c.h)
	if first < c.top {
		c.top = first
	}
	if last > c.bottom {
		c.bottom = last
	}
	slope := float32((x1 - x0) / (y1 - y0))
	x, lo, hi := float32(x0), float32(x0), float32(x1)
	if lo > hi {
		lo, hi = hi, lo
	}
	if first == last-1 {
		c.row(first, x, float32(x1), float32(y1-y0)*dir)
		return
	}
	for y := first; y < last; y++ {
		dy := float32(1)
		if y == first {
			dy = float32(float64(y+1) - y0)
		} else if y == last-1 {
			dy = float32(y1 - float64(y))
		}
		next := x + slope*dy
		if next < lo {
			next = lo
		} else if next > hi {
			next = hi
		}
		c.row(y, x, next, dy*dir)
		x = next
	}
}

// row adds an edge that crosses the height d (signed) of one row from x to next.
func (c *cells) row(y int, x, next, d float32) {
	if x > next {
		x, next = next, x
	}
	i, j := int(x), int(next)
	a := c.delta[y*c.stride : y*c.stride+c.stride]
	if i == j || float32(j) == next && j == i+1 {
		m := d * (0.5*(x+next) - float32(i))
		a[i] += d - m
		a[i+1] += m
		j = i + 1
	} else {
		if float32(j) == next {
			j--
		}
		s := 1 / (next - x)
		f := 1 - (x - float32(i))
		g := next - float32(j)
		left, right := 0.5*s*f*f, 0.5*s*g*g
		a[i] += d * left
		if j == i+1 {
			a[j] += d * (1 - left - right)
		} else {
			a1 := s * (f + 0.5)
			a[i+1] += d * (a1 - left)
			for k := i + 2; k < j; k++ {
				a[k] += d * s
			}
			a2 := a1 + float32(j-i-2)*s
			a[j] += d * (1 - a2 - right)
		}
		j++
		a[j] += d * right
	}
	m := c.marks[y*c.words : y*c.words+c.words]
	for b := i >> blockBits; b <= j>>blockBits; b++ {
		m[b>>6] |= 1 << (b & 63)
	}
}

// sweep hands the coverage to s and clears the grid.
func (c *cells) sweep(rule draw.Rule, s sink) {
	covers := &c.covers
	for y := c.top; y < c.bottom; y++ {
		row := c.delta[y*c.stride : y*c.stride+c.stride]
		marks := c.marks[y*c.words : y*c.words+c.words]
		acc, x := float32(0), 0
		for wi := range marks {
			for m := marks[wi]; m != 0; m &= m - 1 {
				at := (wi<<6 + bits.TrailingZeros64(m)) << blockBits
				if at > x {
					if cov := coverage(acc, rule); cov > 0 {
						s.even(y, x, min(at, c.w), cov)
					} else {
						acc = 0
					}
				}
				end := min(at+block, c.stride)
				some := uint8(0)
				for k, v := range row[at:end] {
					acc += v
					covers[k] = coverage(acc, rule)
					some |= covers[k]
				}
				clear(row[at:end])
				if vis := min(end, c.w); some > 0 && vis > at {
					s.varied(y, at, covers[:vis-at])
				}
				x = end
			}
			marks[wi] = 0
		}
		if x < c.w {
			if cov := coverage(acc, rule); cov > 0 {
				s.even(y, x, c.w, cov)
			}
		}
	}
	c.top, c.bottom = c.h, 0
}

func coverage(acc float32, rule draw.Rule) uint8 {
	if acc < 0 {
		acc = -acc
	}
	if rule == draw.EvenOdd {
		acc -= 2 * float32(math.Floor(float64(acc/2)))
		if acc > 1 {
			acc = 2 - acc
		}
	}
	if acc >= 1 {
		return 255
	}
	if acc < nothing {
		return 0
	}
	return uint8(acc*255 + 0.5)
}
