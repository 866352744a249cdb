package backup

import (
	"cmp"
	"fmt"
	"slices"
	"time"
)

// How many days, weeks and months keep a copy.
const (
	Days   = 7
	Weeks  = 4
	Months = 12
)

// Kept says of copies taken at the given instants, in any order, which stay at now.
// Its zone says where days begin.
func Kept(now time.Time, at []time.Time) []bool {
	out := make([]bool, len(at))
	var past []int // newest first
	for i, t := range at {
		if t.After(now) {
			out[i] = true
			continue
		}
		past = append(past, i)
	}
	slices.SortStableFunc(past, func(a, b int) int { return cmp.Or(at[b].Compare(at[a]), cmp.Compare(a, b)) })
	for _, rule := range []struct {
		n    int
		span func(time.Time) string
	}{
		{Days, func(t time.Time) string { return t.Format(time.DateOnly) }},
		{Weeks, func(t time.Time) string { y, w := t.ISOWeek(); return fmt.Sprint(y, w) }},
		{Months, func(t time.Time) string { return t.Format("2006-01") }},
	} {
		last, n := "", 0
		for _, i := range past {
			span := rule.span(at[i].In(now.Location()))
			if span == last {
				continue
			}
			if n++; n > rule.n {
				break
			}
			last, out[i] = span, true
		}
	}
	return out
}
