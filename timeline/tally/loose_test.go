package tally

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Ensure that the expected time in a part is the integral worked by hand: a start
// uniform on 0..20 min has passed, on average, half the time between 0 and 20.
func TestLooseWithin(t *testing.T) {
	l := Loose{Moment{at(0), at(20)}, Moment{at(60), at(60)}}
	require.Equal(t, 50*time.Minute, l.Length())
	require.Equal(t, 10*time.Minute, l.Within(span(0, 20)))
	require.Equal(t, 150*time.Second, l.Within(span(0, 10)), "10 min x 10/40")
	require.Equal(t, 40*time.Minute, l.Within(span(20, 90)))
	require.Equal(t, 42*time.Minute+30*time.Second, l.WithinSet(Union(span(0, 10), span(20, 200))))
}

// Ensure that ends in no certain order are taken at their middle, and that a
// stretch that ends before it begins holds nothing.
func TestLooseWithoutOrder(t *testing.T) {
	l := Loose{Moment{at(0), at(30)}, Moment{at(10), at(60)}}
	require.Equal(t, 20*time.Minute, l.Within(span(-100, 100)))
	require.Equal(t, 5*time.Minute, l.Within(span(0, 20)))
	back := Loose{Moment{at(50), at(60)}, Moment{at(10), at(20)}}
	require.Zero(t, back.Length())
	require.Zero(t, back.Within(span(-100, 100)))
}

// Ensure that the parts of an uncertain stretch add up to its expected length
// wherever it is cut, each part within it and none negative.
func TestLoosePartsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Loose{genMoment().Draw(t, "from"), genMoment().Draw(t, "to")}
		cuts := genCuts().Draw(t, "cuts")
		var sum time.Duration
		for _, part := range Union(span(-100, 1000)).Cut(cuts...) {
			in := l.WithinSet(part)
			if in < -time.Nanosecond || in > part.Length()+time.Nanosecond {
				t.Fatalf("%v of %v", in, part)
			}
			sum += in
		}
		if d := sum - l.Length(); d.Abs() > 20*time.Nanosecond {
			t.Fatalf("%v cut at %v came to %v", l, cuts, sum)
		}
	})
}

// Ensure that At is what Within integrates.
func TestLooseAt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Loose{genMoment().Draw(t, "from"), genMoment().Draw(t, "to")}
		sum := 0.0
		for m := -100; m < 1000; m++ {
			p := l.At(at(m).Add(30 * time.Second)) // the middle of a minute: exact for a ramp
			if p < 0 || p > 1 {
				t.Fatalf("%v at minute %d", p, m)
			}
			sum += p
		}
		if d := sum - l.Length().Minutes(); d > 1.001 || d < -1.001 {
			t.Fatalf("%v came to %v", l, sum)
		}
	})
	require.Equal(t, 0.25, Moment{at(0), at(20)}.By(at(5)))
	require.Equal(t, 1.0, Moment{at(5), at(5)}.By(at(5)), "an exact moment has come when it is there")
}
