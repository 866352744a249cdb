package tally

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"math/big"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Ensure that Garwood's interval is the published one.
func TestGarwood(t *testing.T) {
	for _, c := range []struct {
		id, source string
		x, level   float64
		lo, hi     float64
		digits     float64
	}{
		{"G0", "documentation of pois.exact (3.689); Garwood 1936; scipy 1.10", 0, .95, 0, 3.688879, 1e-6},
		{"G1", "scipy", 1, .95, .025318, 5.571643, 1e-6},
		{"G2", "scipy", 2, .95, .2422, 7.2247, 1e-4},
		{"G3", "scipy", 3, .95, .6187, 8.7673, 1e-4},
		{"G4", "scipy", 4, .95, 1.0899, 10.2416, 1e-4},
		{"G5", "scipy", 5, .95, 1.6235, 11.6683, 1e-4},
		{"G7", "scipy", 7, .95, 2.8144, 14.4227, 1e-4},
		{"G10", "scipy", 10, .95, 4.7954, 18.3904, 1e-4},
		{"G25", "a statistics help page (published)", 25, .90, 17.38, 34.92, .01},
		{"G25", "a statistics help page (published)", 25, .95, 16.18, 36.90, .01},
		{"G25", "a statistics help page (published)", 25, .99, 14.00, 41.00, .01},
	} {
		i := Garwood(c.x, c.level)
		assert.InDelta(t, c.lo, i.Lo, c.digits, "%s (%s)", c.id, c.source)
		assert.InDelta(t, c.hi, i.Hi, c.digits, "%s (%s)", c.id, c.source)
	}
}

// table reads testdata/intervals.csv.
func table(t *testing.T) (rows [][]string) {
	f, err := os.Open("testdata/intervals.csv")
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err = r.ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 79)
	return rows[1:]
}

func number(t *testing.T, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

// Ensure that both intervals agree with another library to eight digits.
func TestIntervalsAgainstScipy(t *testing.T) {
	for _, row := range table(t) {
		x, n, level := number(t, row[1]), number(t, row[2]), number(t, row[3])
		i := Garwood(x, level)
		if row[0] == "binomial" {
			i = ClopperPearson(x, n, level)
		}
		same(t, number(t, row[4]), i.Lo, 1e-8, row)
		same(t, number(t, row[5]), i.Hi, 1e-8, row)
	}
}

func same(t *testing.T, want, got, relative float64, what any) {
	t.Helper()
	if want == 0 {
		assert.Zero(t, got, what)
		return
	}
	assert.InEpsilon(t, want, got, relative, what)
}

// tails sums the probabilities themselves, with 200 bits, and knows no special
// function: the second road to every interval.
type tails struct{}

func wide(v float64) *big.Float { return new(big.Float).SetPrec(200).SetFloat64(v) }

// exp is e^-v for v >= 0, by halving and the series.
func (tails) expMinus(v *big.Float) *big.Float {
	x, halvings := new(big.Float).Copy(v), 0
	for x.Cmp(wide(0.25)) > 0 {
		x.Quo(x, wide(2))
		halvings++
	}
	x.Neg(x)
	sum, term := wide(1), wide(1)
	for k := 1.0; k < 60; k++ {
		term.Mul(term, x)
		term.Quo(term, wide(k))
		sum.Add(sum, term)
	}
	for range halvings {
		sum.Mul(sum, sum)
	}
	return sum
}

// poissonUpTo is P(X <= x) at the mean.
func (s tails) poissonUpTo(x int, mean *big.Float) *big.Float {
	term := s.expMinus(mean)
	sum := new(big.Float).Copy(term)
	for k := 1; k <= x; k++ {
		term = new(big.Float).Quo(new(big.Float).Mul(term, mean), wide(float64(k)))
		sum.Add(sum, term)
	}
	return sum
}

// binomialUpTo is P(X <= x) of n.
func (tails) binomialUpTo(x, n int, p *big.Float) *big.Float {
	q := new(big.Float).Sub(wide(1), p)
	term := wide(1)
	for range n {
		term.Mul(term, q)
	}
	sum := new(big.Float).Copy(term)
	odds := new(big.Float).Quo(p, q)
	for k := 1; k <= x; k++ {
		term.Mul(term, odds)
		term.Mul(term, wide(float64(n-k+1)))
		term.Quo(term, wide(float64(k)))
		sum.Add(sum, term)
	}
	return sum
}

// bisect finds where a falling f passes the level.
func (tails) bisect(f func(*big.Float) *big.Float, lo, hi, level float64) float64 {
	a, b := wide(lo), wide(hi)
	for range 120 {
		m := new(big.Float).Add(a, b)
		m.Quo(m, wide(2))
		if f(m).Cmp(wide(level)) > 0 {
			a = m
		} else {
			b = m
		}
	}
	v, _ := a.Float64()
	return v
}

// Ensure that the intervals are those which the sums of the probabilities give, to
// six digits at least.
func TestIntervalsAgainstTailSums(t *testing.T) {
	var s tails
	for _, level := range []float64{.95, .99} {
		tail := (1 - level) / 2
		for _, x := range []int{0, 1, 2, 5, 10, 25, 80, 200} {
			i := Garwood(float64(x), level)
			top := float64(x)*2 + 20
			hi := s.bisect(func(m *big.Float) *big.Float { return s.poissonUpTo(x, m) }, 0, top, tail)
			same(t, hi, i.Hi, 1e-9, x)
			if x > 0 {
				lo := s.bisect(func(m *big.Float) *big.Float { return s.poissonUpTo(x-1, m) }, 0, top, 1-tail)
				same(t, lo, i.Lo, 1e-9, x)
			}
		}
		for _, c := range [][2]int{{0, 5}, {1, 5}, {5, 5}, {7, 12}, {2, 11}, {30, 31}, {12, 150}} {
			i := ClopperPearson(float64(c[0]), float64(c[1]), level)
			if c[0] < c[1] {
				hi := s.bisect(func(p *big.Float) *big.Float { return s.binomialUpTo(c[0], c[1], p) }, 0, 1-1e-12, tail)
				same(t, hi, i.Hi, 1e-8, c)
			}
			if c[0] > 0 {
				lo := s.bisect(func(p *big.Float) *big.Float { return s.binomialUpTo(c[0]-1, c[1], p) }, 0, 1-1e-12, 1-tail)
				same(t, lo, i.Lo, 1e-8, c)
			}
		}
	}
}

// Ensure that expected counts give intervals between those of whole ones, and that a
// wider level gives a wider interval.
func TestIntervalsOfExpectedCounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(0, 300).Draw(t, "x")
		lo, mid, hi := Garwood(math.Floor(x), Level), Garwood(x, Level), Garwood(math.Floor(x)+1, Level)
		assert.LessOrEqual(t, lo.Lo, mid.Lo+1e-12)
		assert.LessOrEqual(t, mid.Lo, hi.Lo+1e-12)
		assert.LessOrEqual(t, lo.Hi, mid.Hi+1e-12)
		assert.LessOrEqual(t, mid.Hi, hi.Hi+1e-12)
		assert.True(t, mid.Contains(x))

		n := x + rapid.Float64Range(0, 100).Draw(t, "more")
		p := ClopperPearson(x, n, Level)
		assert.True(t, p.Lo >= 0 && p.Hi <= 1 && (n == 0 || p.Contains(x/n)), "%v of %v: %v", x, n, p)
		wider := ClopperPearson(x, n, 0.99)
		assert.True(t, wider.Lo <= p.Lo+1e-12 && wider.Hi >= p.Hi-1e-12)
	})
}

// Ensure that an end without a number is null in JSON, so that no table fails to be
// written.
func TestIntervalJSON(t *testing.T) {
	b, err := json.Marshal([]any{Interval{.5, math.Inf(1)}, TwoRates(5, 6, 0, 6, Level), ShareOf(0, 0, .5, Level)})
	require.NoError(t, err)
	assert.Contains(t, string(b), `[0.5,null]`)
	assert.Contains(t, string(b), `{"value":null,"interval":[0.91`)
	var back struct {
		I Interval
		R Ratio
	}
	require.NoError(t, json.Unmarshal([]byte(`{"I":[0.5,null],"R":{"value":null,"interval":[0.9,3],"p":0.0625}}`), &back))
	assert.Equal(t, Interval{.5, math.Inf(1)}, back.I)
	assert.True(t, math.IsNaN(back.R.Value))
	assert.Equal(t, Interval{.9, 3}, back.R.Interval)
	assert.Equal(t, .0625, back.R.P)
}

// Ensure that nonsense gives the interval that says nothing.
func TestIntervalsOfNothing(t *testing.T) {
	assert.Equal(t, Garwood(0, Level), Garwood(-3, Level))
	assert.Equal(t, Garwood(0, Level), Garwood(math.NaN(), Level))
	assert.Equal(t, Interval{0, 1}, ClopperPearson(0, 0, Level))
}
