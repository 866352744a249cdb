package timeline

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/timeline/tally"
)

// Widths of the bins of an axis.
const (
	BinMinutes = 15.0 // of the axes of time
	BinDecades = 0.5  // of log10 of lux
)

// Bin is one step of an axis: the rod-hours with a fly in the water that lie in it,
// and the contacts, as expected numbers where their time is uncertain.
type Bin struct {
	Part                         Part
	Lo, Hi                       float64
	Water                        time.Duration
	Landed, Lost, Touches, Shows float64
	Nights                       int // with a fly in the water here
}

// Contacts is the expected number of all contacts in the bin.
func (b Bin) Contacts() float64 { return b.Landed + b.Lost + b.Touches + b.Shows }

// Fish is the expected number of fish hooked, landed or not.
func (b Bin) Fish() float64 { return b.Landed + b.Lost }

type binKey struct {
	part Part
	step int
}

type bins map[binKey]*Bin

func (a Axis) width() float64 {
	if a == LightAxis {
		return BinDecades
	}
	return BinMinutes
}

func (b bins) at(axis Axis, k binKey) *Bin {
	bin, ok := b[k]
	if !ok {
		w := axis.width()
		bin = &Bin{Part: k.part, Lo: float64(k.step) * w, Hi: float64(k.step+1) * w}
		b[k] = bin
	}
	return bin
}

// split divides a stretch of time among the bins of the ruler's axis and gives each
// share to f. The shares add up to the stretch to the nanosecond.
func (r *ruler) split(s tally.Stretch, f func(binKey, time.Duration)) {
	w := r.axis.width()
	for _, p := range r.pieces {
		in := p.Intersect(s)
		if in.Empty() {
			continue
		}
		looks := r.looks(in)
		for i := 1; i < len(looks); i++ {
			from, to := looks[i-1], looks[i]
			a, b := r.value(p, from)/w, r.value(p, to)/w
			step := int(math.Floor(a))
			for from.Before(to) {
				// the next edge on the way from a to b, if there is one
				edge, next := float64(step+1), step+1
				if b < a {
					edge, next = float64(step), step-1
				}
				if a == b || (b > a && b < edge) || (b < a && b >= edge) {
					f(binKey{p.part, step}, to.Sub(from))
					break
				}
				cut := looks[i-1].Add(time.Duration(float64(to.Sub(looks[i-1])) * (edge - a) / (b - a)))
				if cut.Before(from) {
					cut = from
				}
				if cut.After(to) {
					cut = to
				}
				if cut.After(from) {
					f(binKey{p.part, step}, cut.Sub(from))
				}
				from, step = cut, next
			}
		}
	}
}

// tell counts a contact where it may have been, each bin its share.
func (b bins) tell(r *ruler, k *Contact) {
	add := func(key binKey, share float64) {
		bin := b.at(r.axis, key)
		switch k.Touch {
		case journal.Landed:
			bin.Landed += share
		case journal.Lost:
			bin.Lost += share
		case journal.Pluck, journal.Pull:
			bin.Touches += share
		default:
			bin.Shows += share
		}
	}
	if k.At.Exact() {
		if s, ok := r.at(k.At.Lo); ok {
			add(binKey{s.Part, int(math.Floor(s.V / r.axis.width()))}, 1)
		}
		return
	}
	whole := float64(k.At.Hi.Sub(k.At.Lo))
	r.split(tally.Stretch{From: k.At.Lo, To: k.At.Hi}, func(key binKey, d time.Duration) { add(key, float64(d)/whole) })
}

// sorted lists the bins in the order of the axis.
func (b bins) sorted() []Bin {
	keys := slices.SortedFunc(maps.Keys(b), func(x, y binKey) int {
		return cmp.Or(cmp.Compare(x.part, y.part), cmp.Compare(x.step, y.step))
	})
	out := make([]Bin, len(keys))
	for i, k := range keys {
		out[i] = *b[k]
	}
	return out
}

// fishedRun is the time of one run with a fly in the water.
type fishedRun struct {
	run   int // index into the rod's runs
	water tally.Set
}

// fished shares the time a rod had a fly in the water among its runs; where the
// middles of two runs overlap the later has it. Together they are the rod's Water.
func (r *RodNight) fished() []fishedRun {
	out := make([]fishedRun, len(r.Runs))
	left := tally.Set(r.Water)
	for i := len(r.Runs) - 1; i >= 0; i-- {
		mine := left.Intersect(tally.Union(tally.Stretch{From: r.Runs[i].From.Mid(), To: r.Runs[i].To.Mid()}))
		left = left.Minus(mine)
		out[i] = fishedRun{i, mine}
	}
	return out
}
