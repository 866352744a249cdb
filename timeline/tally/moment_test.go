package tally

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func genMoment() *rapid.Generator[Moment] {
	return rapid.Custom(func(t *rapid.T) Moment {
		a := rapid.IntRange(0, 500).Draw(t, "lo")
		return Moment{at(a), at(a + rapid.IntRange(0, 60).Draw(t, "spread"))}
	})
}

// Ensure that a moment is shared out by the time its spread spends in each part.
func TestShare(t *testing.T) {
	m := Moment{at(0), at(20)}
	require.InDelta(t, 0.25, m.Share(span(-30, 5)), 1e-12)
	require.InDelta(t, 0.75, m.Share(span(5, 90)), 1e-12)
	require.InDelta(t, 0.5, m.ShareOf(Union(span(-5, 5), span(15, 30))), 1e-12)
	require.True(t, m.Mid().Equal(at(10)))

	exact := Moment{at(5), at(5)}
	require.Equal(t, 1.0, exact.Share(span(5, 6)), "a boundary belongs to what begins there")
	require.Equal(t, 0.0, exact.Share(span(0, 5)))
}

// Ensure that expected counts over any division of the time add up to the number
// of moments, and that no part holds a negative count.
func TestExpectAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ms := rapid.SliceOfN(genMoment(), 0, 12).Draw(t, "moments")
		cuts := genCuts().Draw(t, "cuts")
		sum := 0.0
		for _, n := range Expect(ms, Union(span(-100, 1000)).Cut(cuts...)) {
			if n < 0 {
				t.Fatalf("a negative count: %v", n)
			}
			sum += n
		}
		if math.Abs(sum-float64(len(ms))) > 1e-9 {
			t.Fatalf("%d moments came to %v", len(ms), sum)
		}
	})
}
