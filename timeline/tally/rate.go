package tally

import (
	"encoding/json"
	"math"
)

// Rate is a count over an exposure. Without exposure the rate is not a number and
// nothing is known: Interval is 0 to infinity.
type Rate struct {
	Count    float64  `json:"count"`
	Exposure float64  `json:"exposure"`
	Value    float64  `json:"value"` // Count / Exposure
	Interval Interval `json:"interval"`
}

// RateOf returns the rate with its Garwood interval. For a blank the upper end says how
// much may be missed all the same.
func RateOf(count, exposure, level float64) Rate {
	r := Rate{Count: count, Exposure: exposure, Value: math.NaN(), Interval: Interval{0, math.Inf(1)}}
	if exposure > 0 {
		r.Value = count / exposure
		r.Interval = Garwood(count, level).Over(exposure)
	}
	return r
}

// Ratio compares two rates. Value is the first divided by the second: infinite if only
// the second is 0, not a number if both are.
type Ratio struct {
	Value    float64
	Interval Interval
	P        float64
}

// MarshalJSON writes null for a ratio that is infinite or unknown.
func (r Ratio) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Value    *float64 `json:"value"`
		Interval Interval `json:"interval"`
		P        float64  `json:"p"`
	}{finite(r.Value), r.Interval, r.P})
}

// UnmarshalJSON reads what MarshalJSON wrote; null comes back as not a number.
func (r *Ratio) UnmarshalJSON(b []byte) error {
	var v struct {
		Value    *float64 `json:"value"`
		Interval Interval `json:"interval"`
		P        float64  `json:"p"`
	}
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	*r = Ratio{math.NaN(), v.Interval, v.P}
	if v.Value != nil {
		r.Value = *v.Value
	}
	return nil
}

// TwoRates compares count x1 in exposure t1 with x2 in t2 by the exact conditional test:
// given n = x1+x2, x1 is binomial with share t1/(t1+t2) if the rates are alike (Przyborowski &
// Wilenski 1940). P is twice the smaller tail, at most 1; the interval of the ratio comes
// from that of Clopper and Pearson, so it leaves 1 out exactly when P < 1-level. (Other
// programs add up the outcomes that are less likely than the one seen; their P may say one
// thing and their interval the other.) Both exposures must be above 0.
func TwoRates(x1, t1, x2, t2, level float64) Ratio {
	if !(t1 > 0) || !(t2 > 0) {
		return Ratio{Value: math.NaN(), Interval: Interval{0, math.Inf(1)}, P: 1}
	}
	n := x1 + x2
	share := ClopperPearson(x1, n, level)
	odds := func(p float64) float64 {
		if p >= 1 {
			return math.Inf(1)
		}
		return p / (1 - p) * t2 / t1
	}
	return Ratio{
		Value:    (x1 / t1) / (x2 / t2),
		Interval: Interval{odds(share.Lo), odds(share.Hi)},
		P:        smallerTailTwice(x1, n, t1/(t1+t2)),
	}
}
