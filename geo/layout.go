package geo

import (
	"slices"

	"github.com/paulmach/orb"

	"gloamline/journal/units"
)

// Layout is a beat on a plane, ready to be drawn and asked where things are: banks,
// middle of the river, pools with their axes. It is computed once from a Beat and
// not changed by later edits of it.
type Layout struct {
	Plane
	Pools  []PoolShape // drawn pools, from the top down
	Banks  []Edge      // bank lines, downstream
	Centre Path        // middle of the river, downstream; nil without both banks
	// FlowKnown reports whether banks or the order of pools say which way the
	// water runs; else a line counts as drawn downstream.
	FlowKnown bool
	trees     []treeShape
	flow      flow
}

// Edge is a line along the water, downstream, with the bank it belongs to.
type Edge struct {
	Feature ID // or the pool whose edge it is
	Bank    Bank
	Path    Path
}

// PoolShape is a pool on the plane.
type PoolShape struct {
	Pool  Pool
	Area  Area
	Axis  Path // down the middle from head to tail
	Left  Path // edge of the outline on the true left, from head to tail
	Right Path
	lo    Point // corners of the box around the outline
	hi    Point
}

// Layout lays the beat out with the river running from left to right: the line from
// its top to its end goes along +X. Where the flow is not known north is up.
func (b Beat) Layout() *Layout {
	north := b.LayoutOn(NewPlane(b.Place()))
	line := north.flow.guide
	if len(line) < 2 && len(north.Pools) > 0 {
		line = north.Pools[0].Axis
	}
	if len(line) < 2 || line[0] == line[len(line)-1] {
		return north
	}
	return b.LayoutOn(north.Plane.Turned(north.Bearing(line[0], line[len(line)-1])))
}

// LayoutOn lays the beat out on a plane of one's own.
func (b Beat) LayoutOn(pl Plane) *Layout {
	l := &Layout{Plane: pl}
	var middles, water Path
	for _, p := range b.InOrder() {
		if p.Drawn() {
			s := PoolShape{Pool: p, Area: pl.Area(p.Outline)}
			s.lo, s.hi = corners(s.Area[0])
			l.Pools = append(l.Pools, s)
			middles = append(middles, s.Area.Centroid())
			water = append(water, s.Area[0].Even(stations/2)...)
		}
	}
	var sides [2]Path
	for _, f := range b.Banks() {
		for _, line := range f.Shape.Lines {
			path := pl.Path(line)
			if len(path) < 2 {
				continue
			}
			l.Banks = append(l.Banks, Edge{f.ID, f.Bank, path})
			if i := slices.Index([]Bank{TrueLeft, TrueRight}, f.Bank); i >= 0 && path.Length() > sides[i].Length() {
				sides[i] = path
			}
		}
	}
	l.flow = findFlow(sides[0], sides[1], water, middles)
	l.Centre, l.FlowKnown = l.flow.centre, l.flow.sure
	l.turnBanks()
	for i := range l.Pools {
		l.Pools[i].findAxis(pl, l.flow)
	}
	for _, f := range b.Trees() {
		l.trees = append(l.trees, newTreeShape(pl, f.Shape))
	}
	return l
}

// turnBanks makes every bank line run downstream.
func (l *Layout) turnBanks() {
	guide := l.flow.guide
	if len(guide) < 2 {
		return
	}
	for i, e := range l.Banks {
		if guide.Foot(e.Path[0]).Chainage > guide.Foot(e.Path[len(e.Path)-1]).Chainage {
			l.Banks[i].Path = e.Path.Reversed()
		}
	}
}

func (s *PoolShape) findAxis(pl Plane, f flow) {
	var head, tail *Point
	if !s.Pool.Head.IsZero() && !s.Pool.Tail.IsZero() {
		h, t := pl.At(s.Pool.Head), pl.At(s.Pool.Tail)
		head, tail = &h, &t
	}
	s.Axis, s.Left, s.Right = axisOf(s.Area[0], s.Area, f.guide, f.centre, head, tail)
}

func corners(p Path) (lo, hi Point) {
	lo, hi = p[0], p[0]
	for _, q := range p {
		lo = Point{min(lo.X, q.X), min(lo.Y, q.Y)}
		hi = Point{max(hi.X, q.X), max(hi.Y, q.Y)}
	}
	return lo, hi
}

// Shape returns a feature's parts on the plane: points, lines and areas.
func (l *Layout) Shape(s Shape) (points Path, lines []Path, areas []Area) {
	points = l.Path(s.Points)
	for _, line := range s.Lines {
		lines = append(lines, l.Path(line))
	}
	for _, a := range s.Areas {
		areas = append(areas, l.Area(a))
	}
	return points, lines, areas
}

// Extent returns the corners of the box around everything drawn on the beat.
func (l *Layout) Extent(b Beat) (lo, hi Point) {
	var all Path
	add := func(p orb.Point) { all = append(all, l.point(p)) }
	for _, p := range b.Pools {
		eachOf(p.Outline, add)
	}
	for _, f := range b.Features {
		f.Shape.each(add)
	}
	if len(all) == 0 {
		return Point{}, Point{}
	}
	return corners(all)
}

// Length returns the length of the pool along its axis.
func (s PoolShape) Length() units.Metres { return s.Axis.Length() }

// PartAt returns the third of the pool at a distance from its head.
func (s PoolShape) PartAt(chainage units.Metres) Part {
	switch l := s.Length(); {
	case chainage < l/3:
		return Neck
	case chainage <= 2*l/3:
		return Body
	}
	return Tail
}

// Across returns the ends of the line across the water at a distance from the head,
// true left and true right, where it meets the outline; not ok where it does not.
func (s PoolShape) Across(chainage units.Metres) (left, right Point, ok bool) {
	at, dx, dy := s.Axis.Along(chainage)
	reach := s.lo.Distance(s.hi)
	end := func(sign units.Metres) (Point, bool) {
		far := Point{at.X - sign*units.Metres(dy)*reach, at.Y + sign*units.Metres(dx)*reach}
		best, found := far, false
		for i := 1; i < len(s.Area[0]); i++ {
			if p, hit := meet(at, far, s.Area[0][i-1], s.Area[0][i]); hit && (!found || at.Distance(p) < at.Distance(best)) {
				best, found = p, true
			}
		}
		return best, found
	}
	left, okL := end(1)
	right, okR := end(-1)
	return left, right, okL && okR
}

// meet returns where two segments meet; parallel ones do not.
func meet(a, b, c, d Point) (Point, bool) {
	ab := cross(a, b, c)
	ad := cross(a, b, d)
	if ab == ad {
		return Point{}, false
	}
	t := ab / (ab - ad)
	if t < 0 || t > 1 {
		return Point{}, false
	}
	p := c.lerp(d, t)
	if _, u := nearestOn(a, b, p); u < 0 || p.Distance(a.lerp(b, u)) > 1e-6*max(1, a.Distance(b)) {
		return Point{}, false
	}
	return p, true
}
