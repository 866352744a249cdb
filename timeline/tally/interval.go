package tally

import (
	"encoding/json"
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Level is the usual level of an interval: nineteen times in twenty.
const Level = 0.95

// Interval is a range from Lo to Hi; Hi may be infinite.
type Interval struct{ Lo, Hi float64 }

// Contains reports whether v lies in the interval, its ends included.
func (i Interval) Contains(v float64) bool { return v >= i.Lo && v <= i.Hi }

// Over divides both ends by t > 0: an interval of a count becomes one of a rate.
func (i Interval) Over(t float64) Interval { return Interval{i.Lo / t, i.Hi / t} }

// MarshalJSON writes [lo, hi], null for an end that is infinite or unknown.
func (i Interval) MarshalJSON() ([]byte, error) {
	return json.Marshal([2]*float64{finite(i.Lo), finite(i.Hi)})
}

// UnmarshalJSON reads what MarshalJSON wrote; an end that was not known counts as infinite.
func (i *Interval) UnmarshalJSON(b []byte) error {
	ends := [2]*float64{}
	if err := json.Unmarshal(b, &ends); err != nil {
		return err
	}
	*i = Interval{math.Inf(-1), math.Inf(1)}
	if ends[0] != nil {
		i.Lo = *ends[0]
	}
	if ends[1] != nil {
		i.Hi = *ends[1]
	}
	return nil
}

// finite returns nil for what JSON has no number for.
func finite(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

// Garwood returns the exact two-sided interval of the mean of a Poisson count x
// (Garwood 1936): each tail holds (1-level)/2. For x = 0 it begins at 0 and ends where
// a two-sided interval ends, 3.689 at 95 %, not at the one-sided 2.996. A count may be an
// expected value: between whole numbers the gamma quantiles go on smoothly. It is good to
// 1e-9 of either end. A negative or absurd x is taken as 0.
func Garwood(x, level float64) Interval {
	if !(x > 0) {
		x = 0
	}
	tail := (1 - level) / 2
	out := Interval{0, mathext.GammaIncRegCompInv(x+1, tail)}
	if x > 0 {
		out.Lo = mathext.GammaIncRegInv(x, tail)
	}
	return out
}

// ClopperPearson returns the exact two-sided interval of a share of which x of n were
// seen (Clopper & Pearson 1934). Both may be expected values. Without any it is 0 to 1.
func ClopperPearson(x, n, level float64) Interval {
	out := Interval{0, 1}
	if !(n > 0) {
		return out
	}
	x = math.Min(math.Max(x, 0), n)
	tail := (1 - level) / 2
	if x > 0 {
		out.Lo = betaQuantile(x, n-x+1, tail)
	}
	if x < n {
		out.Hi = 1 - betaQuantile(n-x, x+1, tail) // the upper tail, by symmetry
	}
	return out
}

// betaQuantile returns where the distribution function of Beta(a, b) is y, by
// bisection on the logarithm: slower than a Newton search, and it never loses its way
// where a or b are below 1, as they may be for expected counts.
func betaQuantile(a, b, y float64) float64 {
	if b == 1 {
		return math.Pow(y, 1/a)
	}
	lo, hi := -745.0, 0.0 // of log x
	for range 200 {
		mid := (lo + hi) / 2
		if mid == lo || mid == hi {
			break
		}
		if mathext.RegIncBeta(a, b, math.Exp(mid)) < y {
			lo = mid
		} else {
			hi = mid
		}
	}
	return math.Exp((lo + hi) / 2)
}
