package tally

import (
	"slices"
	"time"
)

// Stretch is the time from From up to To, To left out. One that ends where or
// before it begins holds nothing.
type Stretch struct{ From, To time.Time }

// Empty reports whether the stretch holds nothing.
func (s Stretch) Empty() bool { return !s.From.Before(s.To) }

// Length returns how long it lasts, 0 if it is empty.
func (s Stretch) Length() time.Duration {
	if s.Empty() {
		return 0
	}
	return s.To.Sub(s.From)
}

// Contains reports whether t lies in the stretch.
func (s Stretch) Contains(t time.Time) bool { return !t.Before(s.From) && t.Before(s.To) }

// Intersect returns the time both hold.
func (s Stretch) Intersect(o Stretch) Stretch {
	return Stretch{later(s.From, o.From), earlier(s.To, o.To)}
}

// Set is any amount of time in its normal form: stretches in order that neither
// overlap, nor touch, nor are empty. Make one with Union.
type Set []Stretch

// Union returns the time that any of the stretches holds, however they overlap.
func Union(stretches ...Stretch) Set {
	s := make(Set, 0, len(stretches))
	for _, x := range stretches {
		if !x.Empty() {
			s = append(s, x)
		}
	}
	slices.SortFunc(s, func(a, b Stretch) int { return a.From.Compare(b.From) })
	out := s[:0]
	for _, x := range s {
		if n := len(out); n > 0 && !x.From.After(out[n-1].To) {
			out[n-1].To = later(out[n-1].To, x.To)
			continue
		}
		out = append(out, x)
	}
	return out
}

// Union returns the time that s or o holds.
func (s Set) Union(o Set) Set { return Union(slices.Concat(s, o)...) }

// Intersect returns the time that s and o both hold.
func (s Set) Intersect(o Set) Set {
	var out Set
	for i, j := 0, 0; i < len(s) && j < len(o); {
		if x := s[i].Intersect(o[j]); !x.Empty() {
			out = append(out, x)
		}
		if s[i].To.Before(o[j].To) {
			i++
		} else {
			j++
		}
	}
	return out
}

// Minus returns the time that s holds and o does not.
func (s Set) Minus(o Set) Set {
	var out Set
	for _, x := range s {
		for _, cut := range o {
			if !cut.To.After(x.From) {
				continue
			}
			if !cut.From.Before(x.To) {
				break
			}
			if before := (Stretch{x.From, cut.From}); !before.Empty() {
				out = append(out, before)
			}
			x.From = cut.To
		}
		if !x.Empty() {
			out = append(out, x)
		}
	}
	return out
}

// Cut divides the time at the boundaries, which must be in order: part i lies
// from at[i-1] up to at[i], the first before at[0], the last from the last
// boundary on. The lengths of the len(at)+1 parts add up to that of s.
func (s Set) Cut(at ...time.Time) []Set {
	parts := make([]Set, len(at)+1)
	for _, x := range s {
		for i, t := range at {
			if head := x.Intersect(Stretch{x.From, t}); !head.Empty() {
				parts[i] = append(parts[i], head)
				x.From = head.To
			}
		}
		if !x.Empty() {
			parts[len(at)] = append(parts[len(at)], x)
		}
	}
	return parts
}

// Length returns how much time the set holds.
func (s Set) Length() time.Duration {
	var sum time.Duration
	for _, x := range s {
		sum += x.Length()
	}
	return sum
}

// Contains reports whether t lies in the set.
func (s Set) Contains(t time.Time) bool {
	return slices.ContainsFunc(s, func(x Stretch) bool { return x.Contains(t) })
}

func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

func later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}
