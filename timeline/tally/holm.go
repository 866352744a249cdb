package tally

import "slices"

// Holm corrects a list of p-values for having looked at all of them (Holm 1979): the
// chance that any of those below a limit is a false alarm is at most that limit, however
// they hang together. The results stand in the order of the list. Whoever shows one says
// len(p) too: how many were looked at.
func Holm(p []float64) []float64 {
	order := make([]int, len(p))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case p[a] < p[b]:
			return -1
		case p[a] > p[b]:
			return 1
		}
		return 0
	})
	out := make([]float64, len(p))
	most := 0.0
	for rank, i := range order {
		most = max(most, min(1, p[i]*float64(len(p)-rank)))
		out[i] = most
	}
	return out
}
