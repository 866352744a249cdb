package tally

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mathext"
)

// FewClusters is the number of clusters below which resampled intervals come out too
// narrow themselves; whoever shows one says so.
const FewClusters = 8

// Resample draws n of n clusters with replacement, again and again, from the seed, and
// returns what stat makes of each draw, in order. times[i] says how often cluster i was
// drawn. Values that are no numbers are left out, so the list may be shorter than draws.
func Resample(n, draws int, seed uint64, stat func(times []int) float64) []float64 {
	r := source(seed)
	times := make([]int, n)
	out := make([]float64, 0, draws)
	for range draws {
		clear(times)
		for range n {
			times[r.IntN(n)]++
		}
		if v := stat(times); !math.IsNaN(v) {
			out = append(out, v)
		}
	}
	slices.Sort(out)
	return out
}

// Percentiles returns the middle part of sorted values, by the percentile rule; without
// any, an interval of everything.
func Percentiles(sorted []float64, level float64) Interval {
	if len(sorted) == 0 {
		return Interval{math.Inf(-1), math.Inf(1)}
	}
	at := func(q float64) float64 {
		x := q * float64(len(sorted)-1)
		i := min(int(x), len(sorted)-1)
		j := min(i+1, len(sorted)-1)
		if sorted[i] == sorted[j] { // infinities too
			return sorted[i]
		}
		return sorted[i] + (sorted[j]-sorted[i])*(x-float64(i))
	}
	tail := (1 - level) / 2
	return Interval{at(tail), at(1 - tail)}
}

// ResampledRate returns the interval of a rate when clusters, not things, are resampled.
func ResampledRate(x, t []float64, level float64, draws int, seed uint64) Interval {
	return Percentiles(Resample(len(x), draws, seed, func(times []int) float64 {
		var sumX, sumT float64
		for i, n := range times {
			sumX += float64(n) * x[i]
			sumT += float64(n) * t[i]
		}
		return sumX / sumT
	}), level)
}

// JackknifeError returns the standard error of the rate over clusters, leaving each out
// in turn (Quenouille 1956, Tukey 1958); not a number below two clusters.
func JackknifeError(x, t []float64) float64 {
	var sumX, sumT float64
	for i := range x {
		sumX, sumT = sumX+x[i], sumT+t[i]
	}
	n := float64(len(x))
	var mean float64
	left := make([]float64, len(x))
	for i := range x {
		left[i] = (sumX - x[i]) / (sumT - t[i])
		mean += left[i] / n
	}
	var sum float64
	for _, v := range left {
		sum += (v - mean) * (v - mean)
	}
	if n < 2 {
		return math.NaN()
	}
	return math.Sqrt((n - 1) / n * sum)
}

// chiSquaredTail is the probability that chi squared with so many degrees of freedom
// is v or more.
func chiSquaredTail(v float64, free int) float64 {
	if v <= 0 {
		return 1
	}
	return mathext.GammaIncRegComp(float64(free)/2, v/2)
}
