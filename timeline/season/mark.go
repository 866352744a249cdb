package season

import (
	"slices"

	"gloamline/journal"
)

// mark is a fish as the questions ask of it: places in lists instead of words, 40 bytes
// where a Fish has 600, since a filter asks of every fish a dozen times.
type mark struct {
	clock    float64 // the middle of its quarters of an hour, if clocked
	rig      int16   // into Rigs, that of its likeliest cell; -1: none
	rank     int8    // of the touch
	class    class   // of the chain
	length   int8    // LengthClass of its fly, -1 if unknown
	hook     int8    // in journal.Hooks, -1 if unknown
	place    int8    // in journal.HookPlaces
	part     int8    // in journal.Parts
	band     int8    // of its likeliest cell, -1 if it was not placed
	speed    int8    // in journal.Speeds, of its likeliest cell
	position int8    // of its fly
	flies    int8    // on the leader
	lice     Answer
	hasFly   bool
	hasPool  bool
	placed   bool // in a run, so that there are hours beside it
	wide     bool // its time is not known well
	clocked  bool
}

func markOf(r *RodDigest, f *Fish) mark {
	m := mark{
		rank: rank(f.Touch), class: classOf(f.Touch), length: int8(LengthClass(f.Fly.LengthMM)),
		hook: int8(indexOf(journal.Hooks, f.Fly.Hook)), place: int8(indexOf(journal.HookPlaces, f.Hooked)),
		part: int8(indexOf(journal.Parts, f.Part)), band: int8(bandOfFish(r, f)), speed: int8(speedOfFish(r, f)),
		rig: int16(rigOf(r, f)), position: int8(f.Fly.Position), flies: int8(f.FliesUp), lice: f.Lice,
		hasFly: f.HasFly, hasPool: f.HasPool, placed: len(f.In) > 0, wide: f.At.Hi.Sub(f.At.Lo) >= wide,
		clocked: len(f.Clock) > 0,
	}
	for _, x := range f.Clock {
		m.clock += (float64(x.I) + 0.5) * x.V
	}
	return m
}

// bandOfFish and speedOfFish are of its likeliest cell.
func bandOfFish(r *RodDigest, f *Fish) int {
	if i := f.likeliest(); i >= 0 {
		return int(r.Cells[f.In[i].Cell].Band)
	}
	return -1
}

func speedOfFish(r *RodDigest, f *Fish) int {
	if i := f.likeliest(); i >= 0 {
		if w := r.Cells[f.In[i].Cell].Way; w >= 0 {
			return indexOf(journal.Speeds, r.Ways[w].Speed)
		}
	}
	return -1
}

// rigOf returns the rig a fish came to, -1 if none is known: that of its likeliest cell
// with one.
func rigOf(r *RodDigest, f *Fish) int {
	best, most := -1, 0.0
	for _, p := range f.In {
		if k := int(r.Cells[p.Cell].Rig); k >= 0 && p.Share > most {
			best, most = k, p.Share
		}
	}
	return best
}

// class is a link of Chain.
type class int8

const (
	shows class = iota
	touches
	lost
	landed
)

func classOf(t journal.Touch) class {
	switch t {
	case journal.Landed:
		return landed
	case journal.Lost:
		return lost
	case journal.Pluck, journal.Pull:
		return touches
	}
	return shows
}

func (c *Chain) put(k class, v float64) {
	switch k {
	case landed:
		c.Landed += v
	case lost:
		c.Lost += v
	case touches:
		c.Touches += v
	default:
		c.Shows += v
	}
}

func (c *Chain) add(t journal.Touch, v float64) { c.put(classOf(t), v) }

// ranks of touches that measures and questions ask for.
var (
	rankPluck  = rank(journal.Pluck)
	rankLost   = rank(journal.Lost)
	rankLanded = rank(journal.Landed)
)

// rank is the place of a touch among all, weakest first.
func rank(t journal.Touch) int8 { return int8(slices.Index(journal.Touches, t)) }
