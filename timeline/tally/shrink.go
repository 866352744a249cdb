package tally

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// leastGroups is how many groups it takes before their scatter says anything.
const leastGroups = 4

// Prior is how the rates of groups scatter: a gamma distribution with shape A and rate
// B, so with mean A/B. Where they scatter no more than chance makes them, the fit runs to
// infinity: then Pooled is set, A and B are infinite, and all groups share Mean.
type Prior struct {
	A, B   float64
	Mean   float64
	Pooled bool
	Few    bool // fewer than four groups with exposure: pooled for want of anything better
}

// FitPrior fits the prior by maximum likelihood: counts are negative binomial given
// their exposures (gamma-Poisson, empirical Bayes; as for the pumps of Gaver &
// O'Muircheartaigh 1987). Groups without exposure are passed over.
func FitPrior(x, t []float64) Prior {
	var f priorFit
	for i := range x {
		if t[i] > 0 {
			f.x, f.t = append(f.x, x[i]), append(f.t, t[i])
			f.sumX, f.sumT = f.sumX+x[i], f.sumT+t[i]
		}
	}
	pooled := Prior{A: math.Inf(1), B: math.Inf(1), Pooled: true, Few: len(f.x) < leastGroups}
	if f.sumT > 0 {
		pooled.Mean = f.sumX / f.sumT
	}
	if pooled.Few || f.sumX == 0 {
		return pooled
	}
	// The profile may have a hump before it rises for ever, so a coarse look first.
	const lo, hi, steps = -7.0, 14.0, 84 // of log A
	best, at := math.Inf(-1), 0
	for i := range steps + 1 {
		if l := f.profile(lo + (hi-lo)*float64(i)/steps); l > best {
			best, at = l, i
		}
	}
	// A likelihood that pooling reaches too, to a part in a million, is no reason for more.
	if at == steps || best <= f.poisson()+1e-6 {
		return pooled
	}
	step := (hi - lo) / steps
	logA := golden(f.profile, lo+step*float64(at-1), lo+step*float64(at+1))
	a := math.Exp(logA)
	mean := f.mean(a)
	return Prior{A: a, B: a / mean, Mean: mean}
}

// Shrunk returns the rate of a group drawn toward the others: the mean of the gamma
// distribution that remains once its own count is in, (A+x)/(B+t). A new group without
// exposure gets the mean.
func (p Prior) Shrunk(x, t float64) float64 {
	if p.Pooled {
		return p.Mean
	}
	return (p.A + x) / (p.B + t)
}

// Interval returns the middle part of what remains possible for a group; where the
// groups are pooled it is the single value, and the interval of the sum is to be shown.
func (p Prior) Interval(x, t, level float64) Interval {
	if p.Pooled {
		return Interval{p.Mean, p.Mean}
	}
	tail := (1 - level) / 2
	return Interval{mathext.GammaIncRegInv(p.A+x, tail), mathext.GammaIncRegCompInv(p.A+x, tail)}.Over(p.B + t)
}

type priorFit struct {
	x, t       []float64
	sumX, sumT float64

	rise []float64 // at i, rising(a, i), while one shape is looked at
}

// longRise is up to which count rising is summed up.
const longRise = 1000

// rises makes ready for a shape: the counts share their sums.
func (f *priorFit) rises(a float64) {
	if f.rise == nil {
		most := 0.0
		for _, x := range f.x {
			if x == math.Trunc(x) && x < longRise {
				most = math.Max(most, x)
			}
		}
		f.rise = make([]float64, int(most)+1)
	}
	l := 0.0
	for i := 2; i < len(f.rise); i++ {
		l += math.Log1p(float64(i-1) / a)
		f.rise[i] = l
	}
}

func (f *priorFit) rising(a, x float64) float64 {
	if x == math.Trunc(x) && x < longRise {
		return f.rise[int(x)]
	}
	return rising(a, x)
}

// poisson is the log likelihood of one common rate, less what does not depend on rates.
func (f *priorFit) poisson() float64 {
	m, l := f.sumX/f.sumT, 0.0
	for i, x := range f.x {
		l -= m * f.t[i]
		if x > 0 {
			l += x * math.Log(m*f.t[i])
		}
	}
	return l
}

// profile is the greatest log likelihood for a shape.
func (f *priorFit) profile(logA float64) float64 {
	a := math.Exp(logA)
	m, l := f.mean(a), 0.0
	f.rises(a)
	for i, x := range f.x {
		mu := m * f.t[i]
		l += f.rising(a, x) - (a+x)*math.Log1p(mu/a)
		if x > 0 {
			l += x * math.Log(mu)
		}
	}
	return l
}

// rising is log Gamma(a+x) - log Gamma(a) - x log a, without cancelling for a large a.
func rising(a, x float64) float64 {
	if x == math.Trunc(x) && x < longRise {
		l := 0.0
		for i := 1.0; i < x; i++ {
			l += math.Log1p(i / a)
		}
		return l
	}
	up, _ := math.Lgamma(a + x)
	down, _ := math.Lgamma(a)
	return up - down - x*math.Log(a)
}

// mean is the best mean for a shape: where sum (x - m t) / (a + m t) is 0.
func (f *priorFit) mean(a float64) float64 {
	lo, hi := math.Inf(1), 0.0
	for i, x := range f.x {
		lo, hi = math.Min(lo, x/f.t[i]), math.Max(hi, x/f.t[i])
	}
	// Newton's steps, which the bracket keeps in: the sum only falls.
	m := min(max(f.sumX/f.sumT, lo), hi)
	for range 100 {
		s, slope := 0.0, 0.0
		for i, x := range f.x {
			d := 1 / (a + m*f.t[i])
			s += (x - m*f.t[i]) * d
			slope -= (a + x) * f.t[i] * d * d
		}
		if s > 0 {
			lo = m
		} else {
			hi = m
		}
		next := m - s/slope
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if math.Abs(next-m) <= 1e-15*m || next == lo || next == hi {
			return next
		}
		m = next
	}
	return m
}

// golden returns where f is greatest between a and b, by golden section.
func golden(f func(float64) float64, a, b float64) float64 {
	const g = 0.6180339887498949
	c, d := b-g*(b-a), a+g*(b-a)
	fc, fd := f(c), f(d)
	for b-a > 1e-9 {
		if fc >= fd {
			b, d, fd = d, c, fc
			c = b - g*(b-a)
			fc = f(c)
		} else {
			a, c, fc = c, d, fd
			d = a + g*(b-a)
			fd = f(d)
		}
	}
	return (a + b) / 2
}
