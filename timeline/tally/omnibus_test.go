package tally

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

var (
	fewX = []float64{4, 7, 1, 0}
	fewT = []float64{6.5, 9.25, 5, 3.25}
)

// Ensure that four groups are tested exactly, ordered by the likelihood ratio.
func TestOmnibus(t *testing.T) {
	// M1: computed in Python by listing all outcomes.
	got := Omnibus(fewX, fewT, 0, 1)
	assert.True(t, got.Exact)
	assert.InDelta(t, .191740, got.P, 1e-6)
	assert.InDelta(t, 5.63061, got.Statistic, 1e-5)

	assert.InDelta(t, .191740, Omnibus([]float64{0, 9, 4, 7, 1}, []float64{3.25, 0, 6.5, 9.25, 5}, 0, 1).P, 1e-6,
		"a group without exposure does not count, nor does the order")
	assert.Equal(t, 1.0, Omnibus([]float64{5}, []float64{2}, 0, 1).P)
	assert.Equal(t, 1.0, Omnibus([]float64{0, 0}, []float64{2, 3}, 0, 1).P)
	assert.Equal(t, 1.0, Omnibus(nil, nil, 0, 1).P)
}

// Ensure that two groups give the same as a listing of the binomial by likelihood ratio.
func TestOmnibusOfTwo(t *testing.T) {
	const x, n, share = 9, 12, 12.5 / 23.5
	dev := func(k float64) float64 {
		return Deviance([]float64{k, n - k}, []float64{12.5, 11})
	}
	p, c := 0.0, 1.0
	for k := range n + 1 {
		if dev(float64(k)) >= dev(x)-1e-9 {
			p += c * math.Pow(share, float64(k)) * math.Pow(1-share, float64(n-k))
		}
		c = c * float64(n-k) / float64(k+1)
	}
	assert.InDelta(t, p, Omnibus([]float64{9, 3}, []float64{12.5, 11}, 0, 1).P, 1e-12)
}

// Ensure that drawing comes to the exact answer, and to the same one each time.
func TestOmnibusDrawn(t *testing.T) {
	one := []Stratum{{fewX, fewT}}
	far := 0
	for seed := range uint64(20) {
		got := Within(one, 4000, seed)
		assert.Equal(t, got, Within(one, 4000, seed))
		if math.Abs(got.P-.191740) > .06 { // 60 as far out: one standard error is .022
			far++
		}
	}
	assert.LessOrEqual(t, far, 1)
	many := Omnibus([]float64{40, 60, 55, 45, 50, 52}, []float64{8, 8, 8, 8, 8, 8}, 2000, 3)
	assert.False(t, many.Exact)
	chi := chiSquaredTail(many.Statistic, 5) // 302 things: the limit is near
	assert.InDelta(t, chi, many.P, .1)
}

// Ensure that groups which are alike are called different as often as promised and not
// more, even though strata are rich and poor and hold their groups unevenly.
func TestWithinHoldsItsPromise(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	const worlds = 400
	within, pooled := 0, 0
	for w := range worlds {
		var strata []Stratum
		x, ts := make([]float64, 3), make([]float64, 3)
		for i := range 20 {
			s := Stratum{make([]float64, 3), make([]float64, 3)}
			level := 0.2
			if i%4 == 0 {
				level = 3 // a rich stratum spends its time in the first group
			}
			for g := range s.T {
				s.T[g] = 0.2 + r.Float64()
				if i%4 == 0 && g == 0 {
					s.T[g] += 2
				}
				s.X[g] = float64(poisson(r, level*s.T[g]))
				x[g] += s.X[g]
				ts[g] += s.T[g]
			}
			strata = append(strata, s)
		}
		if Within(strata, 400, uint64(w)).P <= .05 {
			within++
		}
		if Omnibus(x, ts, 400, uint64(w)).P <= .05 {
			pooled++
		}
	}
	assert.LessOrEqual(t, within, worlds*5/100+14, "three standard errors above 5 %")
	assert.Greater(t, within, 4, "nor does it never speak")
	assert.Greater(t, pooled, worlds/4, "what the strata are for: without them the rich ones deceive")
}

// Ensure that the statistic is twice sum x log(x/mu), mu summed over the strata: by hand,
// 3 and 5 seen of 8; expected 4/3 of 4 and 4/2 of 4, so 10/3 and 14/3.
func TestWithinStatistic(t *testing.T) {
	s := []Stratum{{[]float64{1, 3}, []float64{1, 2}}, {[]float64{2, 2}, []float64{5, 5}}}
	want := 2 * (3*math.Log(3/(10./3)) + 5*math.Log(5/(14./3)))
	assert.InDelta(t, want, Within(s, 10, 1).Statistic, 1e-9)
	assert.InDelta(t, Deviance(fewX, fewT), Within([]Stratum{{fewX, fewT}}, 10, 1).Statistic, 1e-9)
}

// Ensure that a difference within strata is found.
func TestWithinFinds(t *testing.T) {
	var strata []Stratum
	for i := range 12 {
		strata = append(strata, Stratum{[]float64{float64(1 + i%3), 0}, []float64{1, 1}})
	}
	assert.Less(t, Within(strata, 2000, 1).P, .001)
	assert.Equal(t, 1.0, Within(nil, 100, 1).P)
	alone := Within([]Stratum{{[]float64{5, 0}, []float64{2, 0}}}, 100, 1)
	assert.Equal(t, 1.0, alone.P, "a stratum of one group compares nothing")
}

func poisson(r *rand.Rand, mean float64) int {
	k, p, limit := 0, r.Float64(), math.Exp(-mean)
	for p > limit {
		p *= r.Float64()
		k++
	}
	return k
}
