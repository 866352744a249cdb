package tally

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Ensure that one stratum gives the plain deviance of several rates, and its rates.
func TestFitBandsOfOneStratum(t *testing.T) {
	f := FitBands([]Stratum{{fewX, fewT}})
	assert.InDelta(t, Deviance(fewX, fewT), f.Gain, 1e-6)
	for b := range f.Rates {
		assert.InDelta(t, (fewX[b]/fewT[b])/(fewX[0]/fewT[0]), f.Rates[b], 1e-9)
	}
	assert.Zero(t, FitBands(nil).Gain)
	assert.Zero(t, FitBands([]Stratum{{[]float64{0, 0}, []float64{1, 1}}}).Gain)
}

// Ensure that two strata and two bands are fitted as by hand: the ratio r of the rates
// solves sum n r t2 / (t1 + r t2) = x2, found here by bisection.
func TestFitBandsOfTwo(t *testing.T) {
	s := []Stratum{{[]float64{3, 9}, []float64{2, 1}}, {[]float64{4, 2}, []float64{1, 3}}}
	lo, hi := 1e-3, 1e3
	loglik := func(r float64) float64 {
		return 11*math.Log(r) - 12*math.Log(2+r) - 6*math.Log(1+3*r)
	}
	for range 200 {
		m := math.Sqrt(lo * hi)
		if 12*m/(2+m)+6*3*m/(1+3*m) < 11 {
			lo = m
		} else {
			hi = m
		}
	}
	f := FitBands(s)
	assert.InEpsilon(t, lo, f.Rates[1], 1e-3)
	assert.InDelta(t, 2*(loglik(lo)-loglik(1)), f.Gain, 1e-5)
	assert.InDelta(t, 2*f.Gain, FitBandsTimes(s, []int{2, 2}).Gain, 1e-5, "all twice is twice the deviance")
	assert.InDelta(t, FitBands(s[:1]).Gain, FitBandsTimes(s, []int{1, 0}).Gain, 1e-9)
}

// Ensure that rich and poor strata do not pass for a difference of bands: where the
// bands are alike, the gain is that of chance, one for each band but one.
func TestFitBandsOfNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	sum := 0.0
	const worlds = 300
	for range worlds {
		var strata []Stratum
		for i := range 25 {
			s := Stratum{make([]float64, 4), make([]float64, 4)}
			level := 0.5 + 3*float64(i%2)
			for b := range s.T {
				s.T[b] = r.Float64() * float64(1+3*(i%2)*b)
				s.X[b] = float64(poisson(r, level*s.T[b]))
			}
			strata = append(strata, s)
		}
		sum += FitBands(strata).Gain
	}
	assert.InDelta(t, 3, sum/worlds, 4*math.Sqrt(6./worlds), "chi squared with three degrees of freedom")
}

// Ensure that bands hold about even shares, in order.
func TestEvenEdges(t *testing.T) {
	assert.Equal(t, []int{0, 0, 1, 1, 2, 2}, EvenEdges([]float64{1, 1, 1, 1, 1, 1}, 3))
	assert.Equal(t, []int{0, 0, 1, 1, 2}, EvenEdges([]float64{0, 1, 0, 1, 0.5}, 3))
	assert.Equal(t, []int{0, 0}, EvenEdges([]float64{0, 0}, 3))
}

// slowFit is the plain way to the same fit, a thousand steps of minorising and maximising
// (Hunter 2004), each of which raises the likelihood.
func slowFit(strata []Stratum) (rates []float64, gain float64) {
	var f bandClimb
	f.k = len(strata[0].X)
	f.gather(strata, nil)
	rates = make([]float64, f.k)
	flat := make([]float64, f.k)
	for b := range rates {
		flat[b] = 1
		if f.count[b] > 0 {
			rates[b] = 1
		}
	}
	for range 5000 {
		need := make([]float64, f.k)
		for i, n := range f.n {
			s := 0.0
			for b, t := range f.t[i] {
				s += rates[b] * t
			}
			for b, t := range f.t[i] {
				need[b] += n * t / s
			}
		}
		for b := range rates {
			if f.count[b] > 0 {
				rates[b] = f.count[b] / need[b]
			}
		}
	}
	return rates, 2 * (f.loglik(rates) - f.loglik(flat))
}

// Ensure that the climb reaches the same top as the slow and sure way.
func TestFitBandsAgainstTheSlowWay(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 200 {
		var strata []Stratum
		for range 2 + r.IntN(30) {
			s := Stratum{make([]float64, 5), make([]float64, 5)}
			for b := range s.T {
				if r.IntN(3) > 0 {
					s.T[b] = r.Float64()
					s.X[b] = float64(poisson(r, 1.5*s.T[b]*float64(1+b)))
				}
			}
			strata = append(strata, s)
		}
		_, slow := slowFit(strata)
		assert.InDelta(t, slow, FitBands(strata).Gain, 1e-3)
		assert.GreaterOrEqual(t, FitBands(strata).Gain, slow-1e-6)
	}
}

func BenchmarkFitBands(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	var strata []Stratum
	for range 26 {
		s := Stratum{make([]float64, 5), make([]float64, 5)}
		for k := range s.T {
			s.T[k] = r.Float64()
			s.X[k] = float64(poisson(r, s.T[k]))
		}
		strata = append(strata, s)
	}
	for b.Loop() {
		FitBands(strata)
	}
}
