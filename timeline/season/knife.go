package season

import (
	"math"

	"gloamline/timeline"
)

// knife is memory for cutting one night after another.
type knife struct {
	columns []*column
	used    int
	find    map[Cell]int32
	clock   histogram
	dark    histogram
	corner  []float64
	shares  []share
	parts   []Part
}

// share is how much of a fish falls to a piece of time, a rig and a way.
type share struct {
	rig, way int
	p        piece
	v        float64
}

// wipe makes ready for the next night.
func (k *knife) wipe() { k.used = 0 }

// cells returns a map for the cells of the next rod.
func (k *knife) cells() map[Cell]int32 {
	if k.find == nil {
		k.find = map[Cell]int32{}
	}
	clear(k.find)
	return k.find
}

// column is a curve in decades darker than the threshold, each step worked out when it is
// first asked for: a night asks for few of most pools, and for those often.
type column struct {
	of          *timeline.Curve
	lux         []float64
	start, step float64 // seconds since the night began
	grey        float64
	dark        []float64 // not a number: not worked out yet
}

// column returns the column of a curve of the night.
func (c *cutter) column(curve *timeline.Curve) *column {
	k := c.knife
	for _, x := range k.columns[:k.used] {
		if x.of == curve {
			return x
		}
	}
	if k.used == len(k.columns) {
		k.columns = append(k.columns, new(column))
	}
	x := k.columns[k.used]
	k.used++
	dark := x.dark[:0]
	if cap(dark) < len(curve.Lux) {
		dark = make([]float64, 0, len(curve.Lux))
	}
	dark = dark[:len(curve.Lux)]
	for i := range dark {
		dark[i] = math.NaN()
	}
	*x = column{of: curve, lux: curve.Lux, start: c.sec(curve.Start), step: curve.Step.Seconds(), grey: c.grey, dark: dark}
	return x
}

// darker is how many decades darker than the threshold step i is.
func (x *column) darker(i int) float64 {
	v := x.dark[i]
	if v != v {
		v = darker(x.grey, x.lux[i])
		x.dark[i] = v
	}
	return v
}

// at is how many decades darker the curve is t seconds after the night began.
func (x *column) at(t float64) float64 {
	p := (t - x.start) / x.step
	n := len(x.lux)
	i := min(max(int(math.Floor(p)), 0), n-1)
	a, b := x.darker(i), x.darker(min(i+1, n-1))
	return a + (b-a)*min(max(p-float64(i), 0), 1)
}

// histogram adds up bins: of quarters of an hour, or of tenths of a decade.
type histogram struct {
	v  [farBin + 96]float64 // by bin, from -farBin on
	on [farBin + 96]bool
	n  int
}

func (h *histogram) add(bin int16, v float64) {
	i := int(bin) + farBin
	if !h.on[i] {
		h.on[i] = true
		h.n++
	}
	h.v[i] += v
}

// bins returns the bins that something was added to, and empties them.
func (h *histogram) bins() []Bin {
	out := make([]Bin, 0, h.n)
	for i, on := range h.on {
		if on {
			out = append(out, Bin{int16(i - farBin), h.v[i]})
		}
	}
	*h = histogram{}
	return out
}
