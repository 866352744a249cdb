package geo

import (
	"math"

	"gloamline/journal/units"
)

// The parts of a pool, by thirds of its length.
type Part string

const (
	Neck Part = "neck" // the upper third, where the water enters
	Body Part = "body"
	Tail Part = "tail"
)

// ringSteps is into how many points an outline is taken apart to find its ends.
const ringSteps = 192

// axisOf returns the line down the middle of a pool, head to tail, and the two
// edges of its outline from head to tail, left first. guide runs downstream and may
// be nil; centre is the middle of the river and may be nil; head and tail are marked
// ends and may be nil.
func axisOf(outline Path, area Area, guide, centre Path, head, tail *Point) (axis, left, right Path) {
	ring := outline.Even(ringSteps + 1)[:ringSteps]
	if head == nil || tail == nil {
		if axis = alongCentre(outline, area, centre); axis != nil {
			head, tail = &axis[0], &axis[len(axis)-1]
		}
	}
	var h, t int
	if head != nil && tail != nil {
		h, t = nearestIndex(ring, *head), nearestIndex(ring, *tail)
	} else {
		h, t = farEnds(ring)
		if len(guide) > 1 && guide.Foot(ring[h]).Chainage > guide.Foot(ring[t]).Chainage {
			h, t = t, h
		}
	}
	if h == t {
		t = (h + ringSteps/2) % ringSteps
	}
	one, two := walk(ring, h, t, 1), walk(ring, h, t, -1)
	if axis == nil {
		axis = midway(one, two)
	}
	if onLeft(axis, one) {
		return axis, one, two
	}
	return axis, two, one
}

// alongCentre returns the part of the river's middle that lies in the pool, or nil
// when it does not run through it.
func alongCentre(outline Path, area Area, centre Path) Path {
	if len(centre) < 2 {
		return nil
	}
	lo, hi := units.Metres(math.Inf(1)), units.Metres(0)
	for _, p := range outline {
		s := centre.Foot(p).Chainage
		lo, hi = min(lo, s), max(hi, s)
	}
	axis := centre.Part(lo, hi)
	if len(axis) < 2 {
		return nil
	}
	in, steps := 0, axis.Even(21)
	for _, p := range steps {
		if area[:1].Holds(p) {
			in++
		}
	}
	if in*3 < len(steps)*2 {
		return nil
	}
	return axis
}

// farEnds returns the two points of an evenly spaced ring that part it into its two
// long sides: those for which the sides, walked together from one point to the other,
// stay closest to each other. So a bend that comes back on itself is still followed
// round. A round pool has no ends of its own; then any two will do.
func farEnds(ring []Point) (a, b int) {
	n, best := len(ring), math.Inf(1)
	for i := range n / 2 {
		for j := i + n/2 - n/12; j <= i+n/2+n/12; j++ {
			if w := apart(ring, i, j, best); w < best {
				best, a, b = w, i, j%n
			}
		}
	}
	return a, b
}

// apart is the sum of squared distances across, at steps along both ways round from i
// to j, as far as it stays below a limit.
func apart(ring []Point, i, j int, limit float64) float64 {
	const steps = 24
	n, sum := len(ring), 0.0
	for k := 1; k < steps && sum < limit; k++ {
		p := ring[(i+k*(j-i)/steps)%n]
		q := ring[(i+n-k*(n-(j-i))/steps)%n]
		sum += p.squared(q)
	}
	return sum
}

// midway returns the line between two lines that run the same way.
func midway(one, two Path) Path {
	a, b := one.Even(33), two.Even(33)
	out := make(Path, len(a))
	for i := range a {
		out[i] = a[i].lerp(b[i], 0.5)
	}
	return out
}

func nearestIndex(ring []Point, p Point) int {
	best := 0
	for i := range ring {
		if ring[i].Distance(p) < ring[best].Distance(p) {
			best = i
		}
	}
	return best
}

// walk returns the ring from index a to index b, forwards or backwards.
func walk(ring []Point, a, b, step int) Path {
	out := Path{ring[a]}
	for i := a; i != b; {
		i = (i + step + len(ring)) % len(ring)
		out = append(out, ring[i])
	}
	return out
}

func onLeft(axis, edge Path) bool {
	n := 0
	for _, p := range edge.Even(9)[1:8] {
		if axis.Foot(p).Left {
			n++
		}
	}
	return n > 3
}
