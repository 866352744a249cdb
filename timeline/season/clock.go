package season

import (
	"math"

	"gloamline/timeline/tally"
)

// ClockOrLight says whether the clock or the light tells more about when fish come.
//
// The hours of all nights are cut into equally many bands of about equal hours, once by
// the local clock and once by how dark it was on the pool, and a rate for each band is fitted
// by maximum likelihood with a level of its own for every night, so that a great night does
// not decide. Gain is by how much that beats the levels alone; Difference is light less
// clock, with the interval that comes of resampling nights.
type ClockOrLight struct {
	Bands  int     `json:"bands"`
	Nights int     `json:"nights"`
	Fish   float64 `json:"fish"` // with a place in the bands
	Hours  float64 `json:"hours"`
	Clock  Axis    `json:"clock"`
	Light  Axis    `json:"light"`

	Difference float64         `json:"difference"` // deviance; above 0 light tells more
	Interval   *tally.Interval `json:"interval,omitempty"`
	FewNights  bool            `json:"few_nights"` // the interval is too narrow itself
	Verdict    Verdict         `json:"verdict"`
	Winner     string          `json:"winner,omitempty"` // "light" or "clock" if the verdict is a difference
}

// Axis is one way of cutting.
type Axis struct {
	Gain float64     `json:"gain"`
	Test *tally.Test `json:"test,omitempty"` // of the bands, inside each night
	Rows []AxisRow   `json:"rows"`
}

// AxisRow is one band. From and To are quarters of an hour after noon by the clock, or
// tenths of a decade darker than trees grey.
type AxisRow struct {
	From  int     `json:"from"`
	To    int     `json:"to"` // left out
	Hours float64 `json:"hours"`
	Fish  float64 `json:"fish"`
	// Nights are those with at least five minutes in the band.
	Nights int     `json:"nights"`
	Rate   float64 `json:"relative_rate"` // to the first band, each night having its own level
}

const (
	axisBands  = 5
	axisDraws  = 400
	axisNights = tally.FewClusters
)

// axis gathers one way of cutting.
type axis struct {
	offset int // of bin 0
	hours  []float64
	strata []tally.Stratum
	band   []int
}

func newAxis(offset, n int) *axis { return &axis{offset: offset, hours: make([]float64, n)} }

func (x *axis) cut() { x.band = tally.EvenEdges(x.hours, axisBands) }

func (x *axis) night(d *Digest, v View, bins func(*RodDigest) []Bin, of func(*Fish) []Bin) tally.Stratum {
	least := v.Measure.least()
	s := tally.Stratum{X: make([]float64, axisBands), T: make([]float64, axisBands)}
	for _, r := range v.Filter.rods(d) {
		for _, b := range bins(r) {
			s.T[x.band[int(b.I)+x.offset]] += b.V
		}
		for j := range r.Fish {
			if f := &r.Fish[j]; f.rank >= least {
				for _, b := range of(f) {
					s.X[x.band[int(b.I)+x.offset]] += b.V
				}
			}
		}
	}
	return s
}

func (x *axis) rows(fit tally.BandFit) []AxisRow {
	out := make([]AxisRow, axisBands)
	first := make([]bool, axisBands)
	for i, b := range x.band {
		if x.hours[i] > 0 {
			if !first[b] {
				out[b].From, first[b] = i-x.offset, true
			}
			out[b].To = i - x.offset + 1
		}
	}
	for _, s := range x.strata {
		for b := range out {
			out[b].Hours += s.T[b]
			out[b].Fish += s.X[b]
			out[b].Nights += int(one(s.T[b] >= nightCounts))
		}
	}
	for b := range out {
		if b < len(fit.Rates) {
			out[b].Rate = fit.Rates[b]
		}
	}
	return out
}

// clockOrLight compares the two. The interval and the tests only come when deep.
func clockOrLight(nights []*Digest, v View, deep bool) ClockOrLight {
	clock, dark := newAxis(0, 96), newAxis(farBin, 2*farBin+1)
	for _, d := range nights {
		for _, r := range v.Filter.rods(d) {
			for _, b := range r.Clock {
				clock.hours[b.I] += b.V
			}
			for _, b := range r.Dark {
				dark.hours[int(b.I)+farBin] += b.V
			}
		}
	}
	clock.cut()
	dark.cut()
	out := ClockOrLight{Bands: axisBands, Verdict: Open}
	for _, d := range nights {
		c := clock.night(d, v, func(r *RodDigest) []Bin { return r.Clock }, func(f *Fish) []Bin { return f.Clock })
		l := dark.night(d, v, func(r *RodDigest) []Bin { return r.Dark }, func(f *Fish) []Bin { return f.Dark })
		sum := 0.0
		for b := range c.T {
			sum += c.T[b]
			out.Fish += c.X[b]
		}
		if sum > 0 {
			out.Hours += sum
			clock.strata, dark.strata = append(clock.strata, c), append(dark.strata, l)
		}
	}
	out.Nights = len(clock.strata)
	out.FewNights = out.Nights < axisNights
	fc, fl := tally.FitBands(clock.strata), tally.FitBands(dark.strata)
	out.Clock, out.Light = Axis{Gain: fc.Gain, Rows: clock.rows(fc)}, Axis{Gain: fl.Gain, Rows: dark.rows(fl)}
	out.Difference = fl.Gain - fc.Gain
	if out.Fish < MinFish-1e-9 || out.FewNights || out.Hours < 2*MinHours {
		out.Verdict = NotEnough
		return out
	}
	if !deep {
		return out
	}
	draws := axisDraws
	if out.Nights > 500 {
		draws /= 2
	}
	i := tally.Percentiles(tally.Resample(out.Nights, draws, seed("clock or light"), func(times []int) float64 {
		return tally.FitBandsTimes(dark.strata, times).Gain - tally.FitBandsTimes(clock.strata, times).Gain
	}), tally.Level)
	out.Interval = &i
	tc := tally.Within(clock.strata, testDraws, seed("by the clock"))
	tl := tally.Within(dark.strata, testDraws, seed("by light"))
	out.Clock.Test, out.Light.Test = &tc, &tl
	// Two axes are looked at: each p counts twice (Bonferroni).
	c, l := 2*tc.P <= alpha, 2*tl.P <= alpha
	switch {
	case i.Lo > 0 && l:
		out.Verdict, out.Winner = Differs, "light"
	case i.Hi < 0 && c:
		out.Verdict, out.Winner = Differs, "clock"
	case c || l:
		out.Verdict = Inseparable
	default:
		out.Verdict = NoneSeen
	}
	if math.IsNaN(out.Difference) {
		out.Verdict = NotEnough
	}
	return out
}
