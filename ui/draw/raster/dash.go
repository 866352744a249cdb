package raster

import (
	"math"

	"gloamline/ui/draw"
)

// dasher cuts a row of points into dashes. All lengths are pixels.
type dasher struct {
	pattern []float64
	total   float64
	phase   float64
	pts     []draw.Point
}

// manyDashes in one line are more than a picture can show; it is drawn unbroken.
const manyDashes = 20000

// begin takes the pattern. One finer than a quarter of a pixel is drawn unbroken.
func (d *dasher) begin(s draw.Stroke, scale float64) {
	d.pattern, d.total = d.pattern[:0], 0
	for _, v := range s.Dash {
		d.pattern = append(d.pattern, v*scale)
		d.total += v * scale
	}
	if d.total < 0.25 {
		d.pattern = d.pattern[:0]
		return
	}
	d.phase = math.Mod(s.Phase*scale, d.total)
	if d.phase < 0 {
		d.phase += d.total
	}
}

func (d *dasher) solid() bool { return len(d.pattern) == 0 }

// run calls emit with the points of each dash in turn; a dash of length 0 comes as
// two points a hair apart, so that it has a direction. Parts outside box, which
// cannot be seen, count for the phase but are not emitted. The slice is used again.
func (d *dasher) run(p draw.Piece, box draw.Rect, emit func([]draw.Point)) {
	n := len(p.Points)
	if n == 0 {
		return
	}
	segs := n - 1
	if p.Closed {
		segs = n
	}
	seen := 0.0
	for i := range segs {
		a, b := p.Points[i], p.Points[(i+1)%n]
		if t0, t1, ok := visible(a, b, box); ok {
			seen += (t1 - t0) * dist(a, b)
		}
	}
	if seen > manyDashes*d.total { // they would merge, and take for ever
		d.pts = append(d.pts[:0], p.Points...)
		if p.Closed {
			d.pts = append(d.pts, p.Points[0])
		}
		emit(d.pts)
		return
	}
	at := d.phase
	index, left := d.seek(at)
	d.pts = d.pts[:0]
	flush := func() {
		if len(d.pts) > 1 {
			emit(d.pts)
		}
		d.pts = d.pts[:0]
	}
	for i := range segs {
		a, b := p.Points[i], p.Points[(i+1)%n]
		length := dist(a, b)
		if length == 0 {
			continue
		}
		t0, t1, seen := visible(a, b, box)
		if !seen {
			t0, t1 = 1, 1
		}
		if t0 > 0 {
			flush()
			at = math.Mod(at+t0*length, d.total)
			index, left = d.seek(at)
		}
		pos, stop := t0*length, t1*length
		on := index%2 == 0
		if on && pos < stop && len(d.pts) == 0 {
			d.pts = append(d.pts, a.Lerp(b, pos/length))
		}
		for pos < stop {
			step := min(left, stop-pos)
			pos += step
			left -= step
			at += step
			here := a.Lerp(b, pos/length)
			if on && (step > 0 || left <= 0) {
				if step == 0 {
					here = here.Add(b.Sub(a).Mul(2e-3 / length))
				}
				d.pts = append(d.pts, here)
			}
			if left <= 0 {
				if on {
					flush()
				}
				index = (index + 1) % len(d.pattern)
				left = d.pattern[index]
				on = index%2 == 0
				if on {
					d.pts = append(d.pts[:0], here)
				}
			}
		}
		if t1 < 1 {
			flush()
			at = math.Mod(at+(1-t1)*length, d.total)
			index, left = d.seek(at)
		}
	}
	flush()
}

// seek finds the entry of the pattern at a phase and what is left of it.
func (d *dasher) seek(at float64) (index int, left float64) {
	at = math.Mod(at, d.total)
	for i, v := range d.pattern {
		if at < v || at == 0 && v == 0 {
			return i, v - at
		}
		at -= v
	}
	return 0, d.pattern[0]
}

// visible is the part of the line from a to b within box, as parameters 0 to 1.
func visible(a, b draw.Point, box draw.Rect) (t0, t1 float64, ok bool) {
	t0, t1 = 0, 1
	cut := func(from, to, lo, hi float64) bool {
		d := to - from
		if d == 0 {
			return from >= lo && from <= hi
		}
		u, v := (lo-from)/d, (hi-from)/d
		if u > v {
			u, v = v, u
		}
		t0, t1 = max(t0, u), min(t1, v)
		return t0 < t1
	}
	ok = cut(a.X, b.X, box.Min.X, box.Max.X) && cut(a.Y, b.Y, box.Min.Y, box.Max.Y)
	return t0, t1, ok
}
