package tally

import "math"

// BandFit is a Poisson fit with one rate for each band and a level of its own for each
// stratum. Gain is the deviance it takes away from a fit with levels alone: how much the
// bands tell about when things happen. Two ways to cut the same things into equally many
// bands can be compared by it.
type BandFit struct {
	Gain  float64
	Rates []float64 // relative to the first band with exposure and counts; 0 if none
}

// FitBands fits by maximum likelihood. With a level for each stratum that is the
// conditional likelihood of where within its stratum each thing fell, so a rich and a poor
// stratum tell alike. It is concave in the logarithms of the rates and climbed by Newton's
// steps, halved while they would go down, until they gain less than 1e-10. A band without
// counts has rate 0.
func FitBands(strata []Stratum) BandFit { return FitBandsTimes(strata, nil) }

// FitBandsTimes is FitBands with stratum i counted times[i] times, for resampling; nil
// counts each once.
func FitBandsTimes(strata []Stratum, times []int) BandFit {
	if len(strata) == 0 {
		return BandFit{}
	}
	f := bandClimb{k: len(strata[0].X)}
	f.gather(strata, times)
	rates, last := f.climb()
	flat := make([]float64, f.k)
	for b := range flat {
		flat[b] = 1
	}
	out := BandFit{Gain: math.Max(0, 2*(last-f.loglik(flat))), Rates: rates}
	for b := range rates {
		if rates[b] > 0 {
			for c := len(rates) - 1; c >= b; c-- {
				rates[c] /= rates[b]
			}
			break
		}
	}
	return out
}

// bandClimb holds what the likelihood is made of.
type bandClimb struct {
	k     int
	count []float64 // by band
	n     []float64 // things by stratum that has some
	t     [][]float64
}

func (f *bandClimb) gather(strata []Stratum, times []int) {
	f.count = make([]float64, f.k)
	for i, s := range strata {
		w := 1.0
		if times != nil {
			w = float64(times[i])
		}
		if w == 0 {
			continue
		}
		n := 0.0
		for b, t := range s.T {
			if t > 0 {
				n += w * s.X[b]
				f.count[b] += w * s.X[b]
			}
		}
		if n > 0 {
			f.n, f.t = append(f.n, n), append(f.t, s.T)
		}
	}
}

func (f *bandClimb) loglik(rate []float64) float64 {
	l := 0.0
	for b, c := range f.count {
		if c > 0 {
			l += c * math.Log(rate[b])
		}
	}
	for i, n := range f.n {
		s := 0.0
		for b, t := range f.t[i] {
			s += rate[b] * t
		}
		l -= n * math.Log(s)
	}
	return l
}

// climb returns the best rates and their log likelihood.
func (f *bandClimb) climb() ([]float64, float64) {
	rate := make([]float64, f.k)
	var free []int // bands whose rate moves: those with counts but the first
	first := -1
	for b, c := range f.count {
		if c > 0 {
			rate[b] = 1
			if first < 0 {
				first = b
			} else {
				free = append(free, b)
			}
		}
	}
	last := f.loglik(rate)
	m := len(free)
	if m == 0 {
		return rate, last
	}
	slope, curve, step := make([]float64, m), make([]float64, m*m), make([]float64, m)
	next, p := make([]float64, f.k), make([]float64, m)
	for range 100 {
		f.slopes(rate, free, p, slope, curve)
		solve(curve, slope, step)
		gain, ok := 0.0, false
		for half := 1.0; half > 1e-6; half /= 2 {
			copy(next, rate)
			for i, b := range free {
				next[b] *= math.Exp(half * math.Max(-5, math.Min(5, step[i])))
			}
			if now := f.loglik(next); now >= last {
				gain, ok, last = now-last, true, now
				copy(rate, next)
				break
			}
		}
		if !ok || gain < 1e-10 {
			break
		}
	}
	return rate, last
}

// slopes fills the gradient and the information (less the second derivatives) by the
// logarithms of the free rates.
func (f *bandClimb) slopes(rate []float64, free []int, p, slope, curve []float64) {
	m := len(free)
	clear(curve)
	for i, b := range free {
		slope[i] = f.count[b]
	}
	for s, n := range f.n {
		t := f.t[s]
		sum := 0.0
		for b := range t {
			sum += rate[b] * t[b]
		}
		for i, b := range free {
			p[i] = rate[b] * t[b] / sum
			slope[i] -= n * p[i]
		}
		for i := range m {
			for j := range i + 1 {
				v := -p[i] * p[j]
				if i == j {
					v += p[i]
				}
				curve[i*m+j] += n * v
			}
		}
	}
	for i := range m {
		curve[i*m+i] += 1e-9 // a band never beside another tells nothing: it stays where it is
		for j := range i {
			curve[j*m+i] = curve[i*m+j]
		}
	}
}

// solve finds x with a x = b for a symmetric positive a, by Cholesky's factors in place.
func solve(a, b, x []float64) {
	m := len(b)
	for i := range m {
		for j := range i + 1 {
			s := a[i*m+j]
			for k := range j {
				s -= a[i*m+k] * a[j*m+k]
			}
			if i == j {
				a[i*m+i] = math.Sqrt(math.Max(s, 1e-12))
			} else {
				a[i*m+j] = s / a[j*m+j]
			}
		}
	}
	for i := range m {
		s := b[i]
		for k := range i {
			s -= a[i*m+k] * x[k]
		}
		x[i] = s / a[i*m+i]
	}
	for i := m - 1; i >= 0; i-- {
		s := x[i]
		for k := i + 1; k < m; k++ {
			s -= a[k*m+i] * x[k]
		}
		x[i] = s / a[i*m+i]
	}
}

// EvenEdges cuts a fine histogram of exposure into bands of as equal exposure as its
// bins allow: band[i] is the band of bin i, 0 to bands-1, never falling. Fewer bands come
// out where single bins hold too much.
func EvenEdges(exposure []float64, bands int) []int {
	total := 0.0
	for _, t := range exposure {
		total += t
	}
	out := make([]int, len(exposure))
	sum := 0.0
	for i, t := range exposure {
		middle := sum + t/2
		if total > 0 {
			out[i] = min(bands-1, int(middle/total*float64(bands)))
		}
		sum += t
	}
	return out
}
