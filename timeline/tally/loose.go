package tally

import "time"

// Loose is a stretch whose ends are uncertain, each by itself. If the spreads of
// the ends overlap, so that nothing says which comes first, both ends are taken at
// their middle; if even the middles are out of order it holds nothing.
type Loose struct{ From, To Moment }

// Middle returns the stretch between the middles of the ends.
func (l Loose) Middle() Stretch { return Stretch{l.From.Mid(), l.To.Mid()} }

// Length returns the expected length: that of Middle.
func (l Loose) Length() time.Duration { return l.Middle().Length() }

// Within returns the expected time of l in the stretch s, exact to a nanosecond
// or two: the integral over s of the probability that l has begun and not ended.
// Over parts that share nothing and cover l the times add up to Length.
func (l Loose) Within(s Stretch) time.Duration {
	if s.Empty() || l.Middle().Empty() {
		return 0
	}
	if l.From.Hi.After(l.To.Lo) {
		return l.Middle().Intersect(s).Length()
	}
	return time.Duration(l.From.passed(s) - l.To.passed(s))
}

// At returns the probability that l has begun by t and not ended, 0 to 1: what Within
// integrates.
func (l Loose) At(t time.Time) float64 {
	middle := l.Middle()
	switch {
	case middle.Empty():
		return 0
	case l.From.Hi.After(l.To.Lo):
		if middle.Contains(t) {
			return 1
		}
		return 0
	}
	return l.From.By(t) - l.To.By(t)
}

// WithinSet returns the expected time of l in the set.
func (l Loose) WithinSet(s Set) time.Duration {
	var sum time.Duration
	for _, x := range s {
		sum += l.Within(x)
	}
	return sum
}

// passed integrates over s, in nanoseconds, the probability that the moment has
// come: a half square over its spread, then 1.
func (m Moment) passed(s Stretch) float64 {
	after := Stretch{later(s.From, m.Hi), s.To}.Length()
	total := float64(after)
	if spread := float64(m.Hi.Sub(m.Lo)); spread > 0 {
		in := Stretch{m.Lo, m.Hi}.Intersect(s)
		if !in.Empty() {
			a, b := float64(in.From.Sub(m.Lo)), float64(in.To.Sub(m.Lo))
			total += (b - a) * (b + a) / (2 * spread)
		}
	}
	return total
}
