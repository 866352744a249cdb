package tally

import (
	"math"
	"math/rand/v2"
)

// Test is the result of one test over several groups at once.
type Test struct {
	P         float64 `json:"p"`         // 1 if there was nothing to test
	Statistic float64 `json:"statistic"` // the deviance; what it means says the function
	Exact     bool    `json:"exact"`     // every outcome was looked at, none drawn
	Draws     int     `json:"draws"`     // outcomes drawn otherwise
}

// exactUpTo is how many outcomes are looked at one by one; beyond, they are drawn.
const exactUpTo = 200_000

// Deviance returns 2 sum x log(x/mu) of counts against what the exposures let expect if
// all rates were alike: the likelihood-ratio statistic of several rates (G squared). Groups
// without exposure are passed over.
func Deviance(x, t []float64) float64 {
	var sumX, sumT float64
	for i := range x {
		if t[i] > 0 {
			sumX, sumT = sumX+x[i], sumT+t[i]
		}
	}
	d := 0.0
	for i := range x {
		if t[i] > 0 && x[i] > 0 {
			d += x[i] * math.Log(x[i]/(sumX*t[i]/sumT))
		}
	}
	return 2 * math.Max(0, d)
}

// Omnibus asks once whether the rates of several groups differ at all, before any pair
// is looked at: given their sum, counts of equal rates are multinomial with the shares of
// the exposure. Outcomes are ordered by their likelihood ratio. With few it is exact,
// else draws are made from the seed; with expected counts the sum is rounded.
func Omnibus(x, t []float64, draws int, seed uint64) Test {
	var counts, times []float64
	var sumX, sumT float64
	for i := range x {
		if t[i] > 0 {
			counts, times = append(counts, x[i]), append(times, t[i])
			sumX, sumT = sumX+x[i], sumT+t[i]
		}
	}
	n, k := int(math.Round(sumX)), len(counts)
	seen := Deviance(counts, times)
	out := Test{P: 1, Statistic: seen, Exact: true}
	if n == 0 || k < 2 {
		return out
	}
	if outcomes(n, k) > exactUpTo {
		one := Stratum{X: counts, T: times}
		out = Within([]Stratum{one}, draws, seed)
		out.Statistic = seen
		return out
	}
	share := make([]float64, k)
	for i := range share {
		share[i] = times[i] / sumT
	}
	out.P = multinomialTail(n, share, seen/2)
	return out
}

// outcomes returns in how many ways n fall into k groups, capped.
func outcomes(n, k int) float64 {
	c := 1.0
	for i := 1; i < k && c < 1e12; i++ {
		c = c * float64(n+i) / float64(i)
	}
	return c
}

// multinomialTail is the probability of all outcomes whose half deviance is at least
// half. A part of 1e-9 is forgiven, so that outcomes that are alike on paper count alike.
func multinomialTail(n int, share []float64, half float64) float64 {
	logFact := make([]float64, n+1)
	for i := 2; i <= n; i++ {
		logFact[i] = logFact[i-1] + math.Log(float64(i))
	}
	limit := half*(1-1e-9) - 1e-9
	p := 0.0
	var walk func(group, left int, logP, dev float64)
	add := func(group, c int, logP, dev float64) (float64, float64) {
		logP += float64(c)*math.Log(share[group]) - logFact[c]
		if c > 0 {
			dev += float64(c) * math.Log(float64(c)/(float64(n)*share[group]))
		}
		return logP, dev
	}
	walk = func(group, left int, logP, dev float64) {
		if group == len(share)-1 {
			if logP, dev = add(group, left, logP, dev); dev >= limit {
				p += math.Exp(logP)
			}
			return
		}
		for c := 0; c <= left; c++ {
			l, d := add(group, c, logP, dev)
			walk(group+1, left-c, l, d)
		}
	}
	walk(0, n, logFact[n], 0)
	return math.Min(1, p)
}

// source returns random numbers that are the same for the same seed.
func source(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 0x5851f42d4c957f2d)) }
