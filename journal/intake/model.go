package intake

import (
	"math"

	"gloamline/geo"
)

// The states: walking, resting elsewhere, then the lengths of each pool from its head.
const (
	walking = iota
	resting
	firstPool
)

// model says how likely a course through the states makes a track.
type model struct {
	l     *geo.Layout
	g     *grid
	s     Detector
	first []int       // state of each pool's head
	bins  []int       // lengths of each pool
	pool  []int       // of each state; -1: none
	along [][]float64 // by pool and cell: metres from the head
	out   [][]float64 // by pool and cell: metres from the water, 0 on it
}

func newModel(l *geo.Layout, g *grid, s Detector) *model {
	m := &model{l: l, g: g, s: s, pool: []int{-1, -1}}
	for i := range l.Pools {
		p := &l.Pools[i]
		n := min(max(2, int(math.Round(float64(p.Length())/s.BinM))), 200)
		m.first, m.bins = append(m.first, len(m.pool)), append(m.bins, n)
		for range n {
			m.pool = append(m.pool, i)
		}
		along, out := make([]float64, len(g.cells)), make([]float64, len(g.cells))
		for k, c := range g.cells {
			if !c.have {
				continue
			}
			along[k] = float64(p.Axis.Foot(c.at).Chainage)
			if !p.Area.Holds(c.at) {
				out[k] = float64(p.Area.Edge(c.at).Distance)
			}
		}
		m.along, m.out = append(m.along, along), append(m.out, out)
	}
	return m
}

func sq(v float64) float64 { return v * v }

// emit fills in the log likelihood of what a cell shows, for each state.
func (m *model) emit(k int, e []float64) {
	c, s := m.g.cells[k], m.s
	stand, walk := 0.0, 0.0
	if !math.IsNaN(c.speed) {
		stand = s.SpeedWeight * max(-s.Cap, -sq(c.speed/s.StandMS)/2-math.Log(s.StandMS))
		walk = s.SpeedWeight * max(-s.Cap, -sq((min(c.speed, 2*s.WalkMS)-s.WalkMS)/s.WalkSpread)/2-math.Log(s.WalkSpread))
	}
	for i := range e {
		e[i] = stand
	}
	e[walking] = walk
	if !c.have {
		return
	}
	e[walking] -= c.weight * s.Walking
	e[resting] -= c.weight * s.Elsewhere
	for i := range m.first {
		aside := sq(m.out[i][k] / s.OutM)
		bin := float64(m.l.Pools[i].Length()) / float64(m.bins[i])
		for b := range m.bins[i] {
			q := aside
			if off := math.Abs(m.along[i][k]-(float64(b)+0.5)*bin) - bin/2; off > 0 {
				q += sq(off / s.AlongM)
			}
			e[m.first[i]+b] -= c.weight * min(s.Cap, q/2)
		}
	}
}

// move is a step from one state to another with its log chance.
type move struct {
	from, to int
	log      float64
}

// moves lists all steps but that from a pool to resting, which is as rare from everywhere.
func (m *model) moves() []move {
	s := m.s
	out := []move{
		{walking, walking, math.Log(1 - s.WalkStop - s.WalkRest)}, {walking, resting, math.Log(s.WalkRest)},
		{resting, resting, math.Log(1 - s.RestStop)}, {resting, walking, math.Log(s.RestStop)},
	}
	for i, first := range m.first {
		n := m.bins[i]
		for b := range n {
			leave, enter := s.LeaveMid, 0.5/float64(n)
			if b >= n-2 {
				leave = s.LeaveTail
			}
			if b < 2 {
				enter = 0.5
			}
			at := first + b
			out = append(out, move{at, at, 0}, move{at, walking, math.Log(leave)},
				move{walking, at, math.Log(s.WalkStop * enter)}, move{resting, at, math.Log(s.Stray * enter)})
			for to, chance := range map[int]float64{b - 1: s.Back, b + 1: s.Down, b + 2: s.Skip} {
				if to >= 0 && to < n {
					out = append(out, move{at, first + to, math.Log(chance)})
				}
			}
		}
	}
	return out
}

// decode returns the most probable course, a state for each cell.
func (m *model) decode() []int {
	n, cells := len(m.pool), len(m.g.cells)
	moves, stray := m.moves(), math.Log(m.s.Stray)
	score, next, e := make([]float64, n), make([]float64, n), make([]float64, n)
	from := make([]uint16, n*cells)
	for i := range score {
		score[i] = math.Log(1e-3)
	}
	score[walking], score[resting] = math.Log(0.4), math.Log(0.4)
	for k := range cells {
		m.emit(k, e)
		if k > 0 {
			back := from[k*n : (k+1)*n]
			for i := range next {
				next[i] = math.Inf(-1)
			}
			best := firstPool
			for i := firstPool; i < n; i++ {
				if score[i] > score[best] {
					best = i
				}
			}
			next[resting], back[resting] = score[best]+stray, uint16(best)
			for _, v := range moves {
				if to := score[v.from] + v.log; to > next[v.to] {
					next[v.to], back[v.to] = to, uint16(v.from)
				}
			}
			score, next = next, score
		}
		for i := range score {
			score[i] += e[i]
		}
	}
	path := make([]int, cells)
	at := 0
	for i := range score {
		if score[i] > score[at] {
			at = i
		}
	}
	for k := cells - 1; k >= 0; k-- {
		path[k], at = at, int(from[k*n+at])
	}
	return path
}
