package geo

import (
	"math"

	"gloamline/journal/units"
)

type treeShape struct {
	points Path
	lines  []Path
	areas  []Area
}

func newTreeShape(pl Plane, s Shape) treeShape {
	l := Layout{Plane: pl}
	p, lines, areas := l.Shape(s)
	return treeShape{p, lines, areas}
}

// distance to the nearest tree; 0 among them.
func (t treeShape) distance(q Point) units.Metres {
	d := units.Metres(math.Inf(1))
	for _, p := range t.points {
		d = min(d, p.Distance(q))
	}
	for _, l := range t.lines {
		d = min(d, l.Foot(q).Distance)
	}
	for _, a := range t.areas {
		if a.Holds(q) {
			return 0
		}
		d = min(d, a.Edge(q).Distance)
	}
	return d
}

// hatchStep is how finely a bank is asked for its trees.
const hatchStep units.Metres = 2

// TreeEdges returns the stretches of bank with trees on them or no further than near
// from them, to be hatched. A bank that is not drawn is taken from the pools' edges.
func (l *Layout) TreeEdges(near units.Metres) []Edge {
	var out []Edge
	for _, e := range l.edges() {
		n := min(max(2, int(math.Ceil(float64(e.Path.Length()/hatchStep)))+1), 100_000)
		var run Path
		for _, p := range e.Path.Even(n) {
			if l.treesWithin(p, near) {
				run = append(run, p)
				continue
			}
			out, run = appendRun(out, e, run), nil
		}
		out = appendRun(out, e, run)
	}
	return out
}

func appendRun(out []Edge, e Edge, run Path) []Edge {
	if len(run) < 2 {
		return out
	}
	return append(out, Edge{e.Feature, e.Bank, run})
}

func (l *Layout) treesWithin(p Point, near units.Metres) bool {
	for _, t := range l.trees {
		if t.distance(p) <= near {
			return true
		}
	}
	return false
}

// edges returns the bank lines, and the pools' edges on a side without any.
func (l *Layout) edges() []Edge {
	out := append([]Edge(nil), l.Banks...)
	has := map[Bank]bool{}
	for _, e := range l.Banks {
		has[e.Bank] = true
	}
	for _, s := range l.Pools {
		if !has[TrueLeft] {
			out = append(out, Edge{s.Pool.ID, TrueLeft, s.Left})
		}
		if !has[TrueRight] {
			out = append(out, Edge{s.Pool.ID, TrueRight, s.Right})
		}
	}
	return out
}
