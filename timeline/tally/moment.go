package tally

import "time"

// Moment is an instant known to lie, evenly likely, from Lo to Hi; when both are
// the same it is exact.
type Moment struct{ Lo, Hi time.Time }

// Mid returns the middle, the expected instant.
func (m Moment) Mid() time.Time { return m.Lo.Add(m.Hi.Sub(m.Lo) / 2) }

// By returns the probability that the moment has come by t, 0 to 1.
func (m Moment) By(t time.Time) float64 {
	switch {
	case t.Before(m.Lo):
		return 0
	case !t.Before(m.Hi):
		return 1
	}
	return float64(t.Sub(m.Lo)) / float64(m.Hi.Sub(m.Lo))
}

// Share returns the probability that the moment lies in the stretch, 0 to 1. An
// exact moment on a boundary belongs to the stretch that begins there.
func (m Moment) Share(s Stretch) float64 {
	if !m.Lo.Before(m.Hi) {
		if s.Contains(m.Lo) {
			return 1
		}
		return 0
	}
	both := Stretch{m.Lo, m.Hi}.Intersect(s).Length()
	return float64(both) / float64(m.Hi.Sub(m.Lo))
}

// ShareOf returns the probability that the moment lies in the set.
func (m Moment) ShareOf(s Set) float64 {
	sum := 0.0
	for _, x := range s {
		sum += m.Share(x)
	}
	return sum
}

// Expect returns the expected number of the moments in each part. Over parts that
// share nothing and cover every spread the numbers add up to len(moments).
func Expect(moments []Moment, parts []Set) []float64 {
	out := make([]float64, len(parts))
	for i, p := range parts {
		for _, m := range moments {
			out[i] += m.ShareOf(p)
		}
	}
	return out
}
