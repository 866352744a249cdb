package tally

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var origin = time.Date(2026, 7, 4, 21, 0, 0, 0, time.UTC)

// at is m minutes after the origin.
func at(m int) time.Time { return origin.Add(time.Duration(m) * time.Minute) }

func span(a, b int) Stretch { return Stretch{at(a), at(b)} }

func genStretch() *rapid.Generator[Stretch] {
	return rapid.Custom(func(t *rapid.T) Stretch {
		a := rapid.IntRange(0, 500).Draw(t, "from")
		return span(a, a+rapid.IntRange(-5, 120).Draw(t, "length"))
	})
}

func genSet() *rapid.Generator[Set] {
	return rapid.Custom(func(t *rapid.T) Set {
		return Union(rapid.SliceOfN(genStretch(), 0, 8).Draw(t, "stretches")...)
	})
}

func genCuts() *rapid.Generator[[]time.Time] {
	return rapid.Custom(func(t *rapid.T) []time.Time {
		var out []time.Time
		m := rapid.SliceOfN(rapid.IntRange(-20, 700), 0, 6).Draw(t, "cuts")
		slices.Sort(m)
		for _, x := range m {
			out = append(out, at(x))
		}
		return out
	})
}

// Ensure that a union holds what its stretches hold, worked by hand.
func TestUnion(t *testing.T) {
	got := Union(span(60, 90), span(0, 30), span(20, 40), span(40, 50), span(70, 65))
	require.Equal(t, Set{span(0, 50), span(60, 90)}, got)
	require.Equal(t, 80*time.Minute, got.Length())
	require.True(t, got.Contains(at(0)))
	require.False(t, got.Contains(at(50)), "the end is left out")
	require.Equal(t, Set{span(10, 50), span(60, 61)}, got.Intersect(Union(span(10, 61))))
	require.Equal(t, Set{span(0, 10), span(61, 90)}, got.Minus(Union(span(10, 61))))
	require.Empty(t, Union())
}

// Ensure that a union is in normal form and that making it again changes nothing.
func TestUnionIsIdempotent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := genSet().Draw(t, "s")
		for i, x := range s {
			if x.Empty() || i > 0 && !s[i-1].To.Before(x.From) {
				t.Fatalf("not in normal form: %v", s)
			}
		}
		if again := Union(s...); !slices.Equal(again, s) {
			t.Fatalf("%v became %v", s, again)
		}
		if twice := s.Union(s); !slices.Equal(twice, s) {
			t.Fatalf("%v with itself became %v", s, twice)
		}
	})
}

// Ensure that each minute lies in the results as the minutes of the parts say.
func TestSetsMinuteByMinute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := genSet().Draw(t, "a"), genSet().Draw(t, "b")
		both, any, only := a.Intersect(b), a.Union(b), a.Minus(b)
		for m := -10; m < 640; m++ {
			inA, inB := a.Contains(at(m)), b.Contains(at(m))
			if both.Contains(at(m)) != (inA && inB) || any.Contains(at(m)) != (inA || inB) || only.Contains(at(m)) != (inA && !inB) {
				t.Fatalf("minute %d: a %v, b %v", m, inA, inB)
			}
		}
		if only.Length()+both.Length() != a.Length() {
			t.Fatalf("what b takes and leaves of a is not a")
		}
	})
}

// Ensure that cutting never changes a sum and that each part keeps to its side.
func TestCutKeepsSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, cuts := genSet().Draw(t, "s"), genCuts().Draw(t, "cuts")
		parts := s.Cut(cuts...)
		if len(parts) != len(cuts)+1 {
			t.Fatalf("%d cuts gave %d parts", len(cuts), len(parts))
		}
		var sum time.Duration
		var all Set
		for i, p := range parts {
			sum += p.Length()
			all = append(all, p...)
			for _, x := range p {
				if i > 0 && x.From.Before(cuts[i-1]) || i < len(cuts) && x.To.After(cuts[i]) {
					t.Fatalf("part %d reaches over its boundary: %v", i, x)
				}
			}
		}
		if sum != s.Length() || !slices.Equal(Union(all...), s) {
			t.Fatalf("%v cut at %v came to %v", s, cuts, parts)
		}
	})
}
