package tally

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Share is so many of so many, set against an expected share.
type Share struct {
	Count    float64  `json:"count"`
	Of       float64  `json:"of"`
	Value    float64  `json:"value"` // Count / Of; 0 if Of is
	Interval Interval `json:"interval"`
	P        float64  `json:"p"` // of a share as far from the expected one
}

// ShareOf returns x of n with its Clopper-Pearson interval and the exact binomial test
// against the share p0: twice the smaller tail, at most 1, in keeping with the interval.
//
// Two things tried side by side, with all else alike, need no exposure: it cancels. Then x
// is how often the first was chosen of n choices, and p0 is 1/2.
func ShareOf(x, n, p0, level float64) Share {
	value := 0.0
	if n > 0 {
		value = x / n
	}
	return Share{
		Count: x, Of: n, Value: value,
		Interval: ClopperPearson(x, n, level),
		P:        smallerTailTwice(x, n, p0),
	}
}

// smallerTailTwice is the two-sided p of x of n if each counts with probability p.
func smallerTailTwice(x, n, p float64) float64 {
	if !(n > 0) {
		return 1
	}
	return math.Min(1, 2*math.Min(atLeast(x, n, p), atLeast(n-x, n, 1-p)))
}

// atLeast is the probability of x or more of n.
func atLeast(x, n, p float64) float64 {
	if x <= 0 {
		return 1
	}
	return mathext.RegIncBeta(x, n-x+1, p)
}
