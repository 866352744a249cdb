package sky

import (
	"math"
	"sort"
)

// Curve is a smooth function of seconds since the start of a span, such as an
// altitude. A search looks at it up to one step outside its window.
type Curve func(sec float64) float64

// Knot is a point of a curve.
type Knot struct{ Sec, Value float64 }

// Trail is a curve cut at its extrema: between two neighbouring knots it only
// rises or only falls, as far as samples can tell, so that every crossing of a
// level lies between knots on either side of it.
type Trail struct {
	curve Curve
	knots []Knot
	peaks []bool // parallel to knots: an extremum inside the window
}

// Crossing is where a curve passes a level.
type Crossing struct {
	Sec  float64 // within 0.01 s of the root
	Up   bool    // from below the level to the level or above
	Rate float64 // of the curve, per second
}

// NewTrail samples the curve over from..to at no more than step seconds and
// refines every local extremum, so that two crossings closer together than a step are
// found when the curve turns between them.
func NewTrail(curve Curve, from, to, step float64) *Trail {
	n := max(1, int(math.Ceil((to-from)/step)))
	dt := (to - from) / float64(n)
	t := &Trail{curve: curve, knots: make([]Knot, 0, n+16), peaks: make([]bool, 0, n+16)}
	if !(dt > 0) {
		t.add(from, curve(from), false)
		return t
	}
	at := func(i int) float64 { return from + float64(i)*dt }
	before, here := curve(at(-1)), curve(at(0))
	for i := 0; i <= n; i++ {
		after := curve(at(i + 1))
		var top *Knot
		if k, found := refine(curve, at(i-1), at(i), at(i+1), before, here, after); found && k.Sec > from && k.Sec < to {
			top = &k
		}
		if top != nil && top.Sec < at(i) {
			t.add(top.Sec, top.Value, true)
		}
		if top == nil || top.Sec != at(i) {
			t.add(at(i), here, false)
		}
		if top != nil && top.Sec >= at(i) {
			t.add(top.Sec, top.Value, true)
		}
		before, here = here, after
	}
	if !sort.IsSorted(t) { // two extrema between the same two samples, refined apart
		sort.Sort(t)
	}
	return t
}

// Len, Less and Swap order the knots by time.
func (t *Trail) Len() int           { return len(t.knots) }
func (t *Trail) Less(i, j int) bool { return t.knots[i].Sec < t.knots[j].Sec }
func (t *Trail) Swap(i, j int) {
	t.knots[i], t.knots[j] = t.knots[j], t.knots[i]
	t.peaks[i], t.peaks[j] = t.peaks[j], t.peaks[i]
}

func (t *Trail) add(sec, value float64, peak bool) {
	t.knots = append(t.knots, Knot{sec, value})
	t.peaks = append(t.peaks, peak)
}

// Lowest and Highest return the extremes of the curve over the window.
func (t *Trail) Lowest() Knot { return t.extreme(func(a, b float64) bool { return a < b }) }

// Highest returns the greatest value of the curve over the window.
func (t *Trail) Highest() Knot { return t.extreme(func(a, b float64) bool { return a > b }) }

func (t *Trail) extreme(better func(a, b float64) bool) Knot {
	best := t.knots[0]
	for _, k := range t.knots[1:] {
		if better(k.Value, best.Value) {
			best = k
		}
	}
	return best
}

// Crossings returns every passage of the level strictly inside the window, in
// order. A curve that touches the level from above without passing it has none.
func (t *Trail) Crossings(level float64) []Crossing {
	var out []Crossing
	first, last := t.knots[0].Sec, t.knots[len(t.knots)-1].Sec
	for i := 1; i < len(t.knots); i++ {
		a, b := t.knots[i-1], t.knots[i]
		up := b.Value >= level
		if (a.Value >= level) == up {
			continue
		}
		sec := root(t.curve, level, a, b)
		if sec <= first || sec >= last {
			continue
		}
		const h = 15 // seconds: far above rounding, far below the bend of a curve
		rate := (t.curve(sec+h) - t.curve(sec-h)) / (2 * h)
		out = append(out, Crossing{Sec: sec, Up: up, Rate: rate})
	}
	return out
}

// Margin returns how close the curve comes to the level without passing it there:
// the least distance from the level of any extremum, the ends of the window
// counting as extrema when the curve never passes the level.
func (t *Trail) Margin(level float64) float64 {
	best := math.Inf(1)
	for i, k := range t.knots {
		if t.peaks[i] {
			best = min(best, math.Abs(k.Value-level))
		}
	}
	if low, high := t.Lowest().Value, t.Highest().Value; low >= level || high < level {
		best = min(best, math.Abs(low-level), math.Abs(high-level))
	}
	return best
}

// refine finds the extremum bracketed by three samples, if the middle one is an
// extremum, by golden section with parabolic steps (Brent 1973, ch. 5).
func refine(curve Curve, a, x, b, fa, fx, fb float64) (Knot, bool) {
	sign := 1.0
	switch {
	case fx < fa && fx <= fb:
	case fx > fa && fx >= fb:
		sign = -1
	default:
		return Knot{}, false
	}
	const golden, tol = 0.3819660112501051, 0.05
	fx *= sign
	w, v, fw, fv := x, x, fx, fx
	var step, before float64
	for range 60 {
		mid := (a + b) / 2
		if math.Abs(x-mid) <= 2*tol-(b-a)/2 {
			break
		}
		useGolden := true
		if math.Abs(before) > tol {
			r := (x - w) * (fx - fv)
			q := (x - v) * (fx - fw)
			p := (x-v)*q - (x-w)*r
			q = 2 * (q - r)
			if q > 0 {
				p = -p
			}
			q = math.Abs(q)
			if math.Abs(p) < math.Abs(q*before/2) && p > q*(a-x) && p < q*(b-x) {
				before, step = step, p/q
				useGolden = false
				if u := x + step; u-a < 2*tol || b-u < 2*tol {
					step = math.Copysign(tol, mid-x)
				}
			}
		}
		if useGolden {
			if before = a - x; x < mid {
				before = b - x
			}
			step = golden * before
		}
		u := x + step
		if math.Abs(step) < tol {
			u = x + math.Copysign(tol, step)
		}
		fu := sign * curve(u)
		if fu <= fx {
			if u < x {
				b = x
			} else {
				a = x
			}
			v, fv, w, fw, x, fx = w, fw, x, fx, u, fu
			continue
		}
		if u < x {
			a = u
		} else {
			b = u
		}
		switch {
		case fu <= fw || w == x:
			v, fv, w, fw = w, fw, u, fu
		case fu <= fv || v == x || v == w:
			v, fv = u, fu
		}
	}
	return Knot{x, sign * fx}, true
}

// root finds where the curve passes the level between two knots on either side of
// it, to 0.01 s, by secants that never leave the bracket (Illinois rule) with a
// bisection every fourth step, so that it always ends.
func root(curve Curve, level float64, a, b Knot) float64 {
	x0, x1, f0, f1 := a.Sec, b.Sec, a.Value-level, b.Value-level
	const tol = 0.01
	kept := 0 // which end stayed at the last secant: -1 left, 1 right
	for i := 1; x1-x0 > tol && i < 200; i++ {
		x := x1 - f1*(x1-x0)/(f1-f0)
		if i%4 == 0 || !(x > x0 && x < x1) {
			x, kept = (x0+x1)/2, 0
		}
		f := curve(x) - level
		if math.Abs(f) < 1e-11 {
			return x
		}
		if (f >= 0) == (f1 >= 0) {
			x1, f1 = x, f
			if kept == -1 {
				f0 /= 2
			}
			kept = -1
		} else {
			x0, f0 = x, f
			if kept == 1 {
				f1 /= 2
			}
			kept = 1
		}
	}
	return (x0 + x1) / 2
}
