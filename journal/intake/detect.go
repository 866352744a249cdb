package intake

import (
	"math"
	"slices"
	"time"

	"gloamline/geo"
)

// Visit is a run as a track shows it. Times are those of the device.
type Visit struct {
	Pool     geo.ID
	Nth      int // of this pool in this track, from 1
	From, To time.Time
	Enter    geo.Place // where the device was then; as good as the device, 5 to 20 m
	Leave    geo.Place
	// Confidence ranks visits from 0 to 1 by how far down the pool they go, how near the
	// water, and how many positions there are. It is no probability; below Doubtful it is
	// better to ask.
	Confidence float64
	Stood      bool // the device stayed in one part of the pool
}

// Doubtful is the confidence below which a visit should be looked at: all that stood in
// one place lie below it.
const Doubtful = 0.5

// Visits finds the runs in a track, whose fixes stand in order of time. A person who goes
// down along a pool is taken to fish it; so is one who stands at its water for long. Who
// waits at the head before the first cast, or sits at the tail after the last, looks the
// same as who fishes: such a run comes out too long.
//
// The track is laid on steps of ten seconds, and the most probable course through the
// states walking, resting elsewhere, and each length of each pool is found (Viterbi, IEEE
// Transactions on Information Theory 13, 1967).
func Visits(l *geo.Layout, fixes []Fix, s Detector) []Visit {
	if len(l.Pools) == 0 || len(fixes) == 0 {
		return nil
	}
	nth := map[geo.ID]int{}
	var out []Visit
	for _, g := range grids(l, fixes, s) {
		m := newModel(l, g, s)
		for _, v := range m.visits(m.decode()) {
			nth[v.Pool]++
			v.Nth = nth[v.Pool]
			out = append(out, v)
		}
	}
	return out
}

// span is a stay at a pool, by its first and last cell.
type span struct{ pool, lo, hi int }

// spans joins the stays of a course that belong together: leaving the water for a moment
// ends no run, unless one comes back further up.
func (m *model) spans(path []int) []span {
	var out []span
	for k := 0; k < len(path); {
		p, j := m.pool[path[k]], k
		for j+1 < len(path) && m.pool[path[j+1]] == p {
			j++
		}
		if p >= 0 {
			n := len(out)
			bridged := n > 0 && out[n-1].pool == p && time.Duration(k-out[n-1].hi)*gridStep <= m.s.Bridge+2*m.g.step &&
				float64(path[out[n-1].hi]-path[k]) < 0.4*float64(m.bins[p])
			if bridged {
				out[n-1].hi = j
			} else {
				out = append(out, span{p, k, j})
			}
		}
		k = j + 1
	}
	return out
}

func (m *model) visits(path []int) []Visit {
	var out []Visit
	for _, sp := range m.spans(path) {
		sp = m.seen(sp)
		v := Visit{Pool: m.l.Pools[sp.pool].Pool.ID, From: m.g.time(sp.lo).Add(m.s.Settle), To: m.g.time(sp.hi).Add(-m.s.ReelIn)}
		down, aside := m.downstream(sp), m.aside(sp)
		v.Stood = down < m.s.Advance
		if v.To.Sub(v.From) < m.s.Least || v.Stood && (aside > m.s.StayOut || v.To.Sub(v.From) < m.s.StayMin) {
			continue
		}
		v.Enter, v.Leave = m.near(sp.lo, 1), m.near(sp.hi, -1)
		v.Confidence = min(1, down/0.75)
		if v.Stood {
			v.Confidence = 0.45
		}
		v.Confidence *= (1 - min(0.5, aside/40)) * m.known(sp)
		out = append(out, v)
	}
	return out
}

// seen trims a span to the moments that have a position.
func (m *model) seen(sp span) span {
	for sp.lo < sp.hi && !m.g.cells[sp.lo].have {
		sp.lo++
	}
	for sp.hi > sp.lo && !m.g.cells[sp.hi].have {
		sp.hi--
	}
	return sp
}

// near is the place at a cell, or at the next one that has any.
func (m *model) near(k, step int) geo.Place {
	for ; k >= 0 && k < len(m.g.cells); k += step {
		if m.g.cells[k].have {
			return m.l.Place(m.g.cells[k].at)
		}
	}
	return geo.Place{}
}

// known goes from 1 for a span without a silence to 0.5 for one that hardly has a position.
func (m *model) known(sp span) float64 {
	longest, last := 0, sp.lo
	for k := sp.lo; k <= sp.hi; k++ {
		if m.g.cells[k].have || k == sp.hi {
			longest, last = max(longest, k-last), k
		}
	}
	return 1 - 0.5*float64(longest)/float64(sp.hi-sp.lo+1)
}

// downstream is how far along the pool a straight line through the positions of a span
// goes from its beginning to its end, as a share of the pool's length.
func (m *model) downstream(sp span) float64 {
	var n, sx, sy, sxx, sxy float64
	for k := sp.lo; k <= sp.hi; k++ {
		if !m.g.cells[k].have {
			continue
		}
		x, y := float64(k-sp.lo), m.along[sp.pool][k]
		n, sx, sy, sxx, sxy = n+1, sx+x, sy+y, sxx+x*x, sxy+x*y
	}
	d, length := n*sxx-sx*sx, float64(m.l.Pools[sp.pool].Length())
	if d == 0 || length == 0 {
		return 0
	}
	return (n*sxy - sx*sy) / d * float64(sp.hi-sp.lo) / length
}

// aside is how far from the water the positions of a span lie, in the middle of them.
func (m *model) aside(sp span) float64 {
	var out []float64
	for k := sp.lo; k <= sp.hi; k++ {
		if m.g.cells[k].have {
			out = append(out, m.out[sp.pool][k])
		}
	}
	if len(out) == 0 {
		return math.Inf(1)
	}
	slices.Sort(out)
	return out[len(out)/2]
}
