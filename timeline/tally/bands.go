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
// stratum tell alike. The steps are those of Dempster, Laird and Rubin's algorithm as for
// paired comparisons (minorise and maximise, Hunter 2004); each raises the likelihood, and
// they end when it rises by less than 1e-7.
func FitBands(strata []Stratum) BandFit { return fitBands(strata, nil) }

// FitBandsTimes is FitBands with stratum i counted times[i] times, for resampling.
func FitBandsTimes(strata []Stratum, times []int) BandFit { return fitBands(strata, times) }

func fitBands(strata []Stratum, times []int) BandFit {
	if len(strata) == 0 {
		return BandFit{}
	}
	k := len(strata[0].X)
	rate, count, need := make([]float64, k), make([]float64, k), make([]float64, k)
	type row struct {
		n float64 // things, weighted
		t []float64
	}
	rows := make([]row, 0, len(strata))
	weight := func(i int) float64 {
		if times == nil {
			return 1
		}
		return float64(times[i])
	}
	for i, s := range strata {
		w := weight(i)
		n := 0.0
		if w == 0 {
			continue
		}
		for b, t := range s.T {
			if t > 0 {
				n += w * s.X[b]
				count[b] += w * s.X[b]
			}
		}
		if n > 0 {
			rows = append(rows, row{n, s.T})
		}
	}
	for b := range rate {
		if count[b] > 0 {
			rate[b] = 1
		}
	}
	loglik := func(rate []float64) float64 {
		l := 0.0
		for b, c := range count {
			if c > 0 {
				l += c * math.Log(rate[b])
			}
		}
		for _, r := range rows {
			s := 0.0
			for b, t := range r.t {
				s += rate[b] * t
			}
			l -= r.n * math.Log(s)
		}
		return l
	}
	flat := make([]float64, k)
	for b := range flat {
		flat[b] = 1
	}
	base := loglik(flat)
	last := loglik(rate)
	for range 500 {
		clear(need)
		for _, r := range rows {
			s := 0.0
			for b, t := range r.t {
				s += rate[b] * t
			}
			for b, t := range r.t {
				need[b] += r.n * t / s
			}
		}
		for b := range rate {
			if count[b] > 0 {
				rate[b] = count[b] / need[b]
			}
		}
		now := loglik(rate)
		if now-last < 1e-7 {
			last = max(now, last)
			break
		}
		last = now
	}
	out := BandFit{Gain: math.Max(0, 2*(last-base)), Rates: rate}
	for b := range rate {
		if rate[b] > 0 {
			for c := len(rate) - 1; c >= b; c-- {
				rate[c] /= rate[b]
			}
			break
		}
	}
	return out
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
