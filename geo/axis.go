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

// farEnds returns the middles of the two ends of a ring. Its two points farthest apart
// are corners of the ends; the line midway between the two ways round from one to the
// other gives the direction of either end, and whatever lies within 4 % of the length
// of the outermost point in that direction belongs to the end.
func farEnds(ring []Point) (a, b int) {
	far := units.Metres(-1)
	for i := range ring {
		for j := i + 1; j < len(ring); j++ {
			if d := ring[i].Distance(ring[j]); d > far {
				far, a, b = d, i, j
			}
		}
	}
	if far <= 0 {
		return 0, len(ring) / 2
	}
	mid := midway(walk(ring, a, b, 1), walk(ring, a, b, -1))
	return endOf(ring, mid[7], mid[0], far), endOf(ring, mid[len(mid)-8], mid[len(mid)-1], far)
}

// endOf returns the middle of the end of a ring near to, seen from a point inside.
func endOf(ring []Point, from, to Point, length units.Metres) int {
	d := from.Distance(to)
	if d == 0 {
		return nearestIndex(ring, to)
	}
	ux, uy := float64((to.X-from.X)/d), float64((to.Y-from.Y)/d)
	reach := func(p Point) float64 {
		if p.Distance(to) > length/3 { // the other end of a bend
			return math.Inf(-1)
		}
		return float64(p.X-from.X)*ux + float64(p.Y-from.Y)*uy
	}
	outermost := math.Inf(-1)
	for _, p := range ring {
		outermost = max(outermost, reach(p))
	}
	var end []Point
	for _, p := range ring {
		if reach(p) >= outermost-0.04*float64(length) {
			end = append(end, p)
		}
	}
	return nearestIndex(ring, mean(end))
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

func mean(points []Point) Point {
	var m Point
	for _, p := range points {
		m.X += p.X / units.Metres(len(points))
		m.Y += p.Y / units.Metres(len(points))
	}
	return m
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
