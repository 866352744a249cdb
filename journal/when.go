package journal

import (
	"cmp"
	"encoding/json"
	"slices"
	"time"
)

// WhenKind says how well a moment is known.
type WhenKind string

const (
	ExactTime   WhenKind = "exact"   // Lo equals Hi
	AboutTime   WhenKind = "about"   // Lo..Hi around a remembered time
	BetweenTime WhenKind = "between" // Lo..Hi, or from one entry to another
	WithinTime  WhenKind = "within"  // during a run
	BeforeTime  WhenKind = "before"  // before an entry
	AfterTime   WhenKind = "after"   // after an entry
)

// WhenKinds lists every kind.
var WhenKinds = []WhenKind{ExactTime, AboutTime, BetweenTime, WithinTime, BeforeTime, AfterTime}

// AboutSlack is how far a remembered time may be off when nobody said more:
// common practice, without a source.
const AboutSlack = 10 * time.Minute

// When is a moment with its uncertainty. In a stored record Lo and Hi are always
// filled: an anchored moment without bounds is given those it has when it is
// written, so that nothing is lost should its anchor be missing one day.
type When struct {
	Kind    WhenKind  `json:"kind"`
	Lo      time.Time `json:"lo,omitzero"`
	Hi      time.Time `json:"hi,omitzero"`
	Anchors []ID      `json:"anchors,omitempty"`
}

// Exact returns the moment t.
func Exact(t time.Time) When { return When{Kind: ExactTime, Lo: t.UTC(), Hi: t.UTC()} }

// About returns a moment remembered as t, give or take slack (AboutSlack if 0).
func About(t time.Time, slack time.Duration) When {
	if slack <= 0 {
		slack = AboutSlack
	}
	return When{Kind: AboutTime, Lo: t.Add(-slack).UTC(), Hi: t.Add(slack).UTC()}
}

// Between returns a moment known to lie from lo to hi.
func Between(lo, hi time.Time) When { return When{Kind: BetweenTime, Lo: lo.UTC(), Hi: hi.UTC()} }

// Within returns a moment during the run with that id.
func Within(run ID) When { return When{Kind: WithinTime, Anchors: []ID{run}} }

// Before returns a moment before the entry with that id.
func Before(entry ID) When { return When{Kind: BeforeTime, Anchors: []ID{entry}} }

// After returns a moment after the entry with that id.
func After(entry ID) When { return When{Kind: AfterTime, Anchors: []ID{entry}} }

// IsZero reports whether nothing is known.
func (w When) IsZero() bool { return w.Kind == "" }

// Shift moves the whole by d and lets go of the anchors: whoever drags a
// moment says where it is.
func (w When) Shift(s Spread, d time.Duration) When {
	lo, hi := s.Lo.Add(d), s.Hi.Add(d)
	switch {
	case lo.Equal(hi):
		return Exact(lo)
	case w.Kind == AboutTime:
		return When{Kind: AboutTime, Lo: lo.UTC(), Hi: hi.UTC()}
	}
	return Between(lo, hi)
}

// same reports whether two moments say the same.
func (w When) same(v When) bool {
	return w.Kind == v.Kind && w.Lo.Equal(v.Lo) && w.Hi.Equal(v.Hi) && slices.Equal(w.Anchors, v.Anchors)
}

// MarshalJSON writes the bounds in UTC, whatever zone they were made in.
func (w When) MarshalJSON() ([]byte, error) {
	type plain When
	w.Lo, w.Hi = w.Lo.UTC(), w.Hi.UTC()
	return json.Marshal(plain(w))
}

// Freeze returns the moment as plain bounds without anchors.
func (w When) Freeze(s Spread) When {
	if len(w.Anchors) == 0 {
		return w
	}
	if s.Lo.Equal(s.Hi) {
		return Exact(s.Lo)
	}
	return Between(s.Lo, s.Hi)
}

// Spread is a moment as a uniform spread on [Lo, Hi]: what every count and
// drawing uses, so that uncertainty means one thing everywhere.
type Spread struct{ Lo, Hi time.Time }

// Mid returns the middle, the expected moment.
func (s Spread) Mid() time.Time { return s.Lo.Add(s.Hi.Sub(s.Lo) / 2) }

// Exact reports whether the spread is a single instant.
func (s Spread) Exact() bool { return s.Lo.Equal(s.Hi) }

// Share returns the probability that the moment lies in [lo, hi).
func (s Spread) Share(lo, hi time.Time) float64 {
	if s.Exact() {
		if !s.Lo.Before(lo) && s.Lo.Before(hi) {
			return 1
		}
		return 0
	}
	a, b := s.Lo, s.Hi
	if lo.After(a) {
		a = lo
	}
	if hi.Before(b) {
		b = hi
	}
	if !b.After(a) {
		return 0
	}
	return float64(b.Sub(a)) / float64(s.Hi.Sub(s.Lo))
}

// compare orders spreads by their middle, the narrower first.
func (s Spread) compare(t Spread) int {
	return cmp.Or(s.Mid().Compare(t.Mid()), cmp.Compare(s.Hi.Sub(s.Lo), t.Hi.Sub(t.Lo)))
}

// from returns the spread of an end, which cannot lie before the beginning.
func (s Spread) from(begin Spread) Spread {
	if s.Hi.Before(begin.Lo) {
		return Spread{begin.Lo, begin.Lo}
	}
	return s
}

func (s Spread) clip(lo, hi time.Time) Spread {
	c := func(t time.Time) time.Time {
		if t.Before(lo) {
			return lo
		}
		if t.After(hi) {
			return hi
		}
		return t
	}
	s = Spread{c(s.Lo), c(s.Hi)}
	if s.Hi.Before(s.Lo) {
		s.Hi = s.Lo
	}
	return s
}
