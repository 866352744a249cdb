package tally

import (
	"math"
	"math/rand/v2"
)

// Stratum holds the counts and exposures of the same groups under circumstances that
// they share, so that only its own groups are compared with each other.
type Stratum struct{ X, T []float64 }

// enough is the number of draws as far out as what was seen after which drawing stops:
// a p that is large need not be known well (Besag & Clifford 1991).
const enough = 60

// Within asks whether the rates of the groups differ within the strata, whatever the
// level of each stratum is. Given the number in each stratum, counts of equal rates fall on
// its groups by its exposures. What is seen is compared with draws from the seed by
// sum x log(x/mu) over the groups, mu being the expectation summed over the strata; twice
// that is the Statistic. Numbers of strata are rounded to whole ones.
func Within(strata []Stratum, draws int, seed uint64) Test {
	if len(strata) == 0 {
		return Test{P: 1}
	}
	k := len(strata[0].X)
	seen, mu := make([]float64, k), make([]float64, k)
	type bag struct {
		n   int
		cum []float64
	}
	var bags []bag
	free := 0
	for _, s := range strata {
		var sumX, sumT float64
		open := 0
		for i, t := range s.T {
			if t > 0 {
				sumX, sumT = sumX+s.X[i], sumT+t
				open++
			}
		}
		n := int(math.Round(sumX))
		if n == 0 {
			continue
		}
		b := bag{n: n, cum: make([]float64, k)}
		sum := 0.0
		for i, t := range s.T {
			if t > 0 {
				seen[i] += s.X[i]
				mu[i] += float64(n) * t / sumT
				sum += t / sumT
			}
			b.cum[i] = sum
		}
		bags = append(bags, b)
		if open > 1 {
			free += n
		}
	}
	half := halfDeviance(seen, mu)
	out := Test{P: 1, Statistic: 2 * half}
	if free == 0 {
		out.Exact = true
		return out
	}
	r := source(seed)
	limit := half*(1-1e-9) - 1e-9
	x := make([]float64, k)
	far := 0
	for out.Draws < draws && far < enough {
		clear(x)
		for _, b := range bags {
			for range b.n {
				x[pickOne(b.cum, r)]++
			}
		}
		out.Draws++
		if halfDeviance(x, mu) >= limit {
			far++
		}
	}
	if far >= enough {
		out.P = float64(far) / float64(out.Draws)
	} else {
		out.P = float64(far+1) / float64(out.Draws+1)
	}
	return out
}

// halfDeviance is sum x log(x/mu); a group with no expectation holds nothing.
func halfDeviance(x, mu []float64) float64 {
	d := 0.0
	for i, v := range x {
		if v > 0 && mu[i] > 0 {
			d += v * math.Log(v/mu[i])
		}
	}
	return d
}

// pickOne draws a group by its share, from the running sum of the shares.
func pickOne(cum []float64, r *rand.Rand) int {
	u := r.Float64() * cum[len(cum)-1]
	for i, c := range cum {
		if u < c {
			return i
		}
	}
	for i := len(cum) - 1; i > 0; i-- { // u met the very end
		if cum[i] > cum[i-1] {
			return i
		}
	}
	return 0
}
