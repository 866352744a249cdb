package timeline

import (
	"cmp"
	"slices"

	"gloamline/geo"
	"gloamline/journal"
)

// poolSums counts nights pool by pool: by beat, then in fishing order.
func poolSums(nights []*Night) []PoolSum {
	type key struct{ beat, pool geo.ID }
	sums, order, last := map[key]*PoolSum{}, map[key]int{}, map[key]*Night{}
	at := func(n *Night, pool geo.ID) *PoolSum {
		k := key{n.Log.Trip.Beat, pool}
		s, ok := sums[k]
		if !ok {
			s = &PoolSum{Beat: k.beat, Pool: pool}
			sums[k] = s
		}
		if p, ok := n.PoolNight(pool); ok {
			s.Name, order[k] = p.Pool.Name, p.Pool.Order
		}
		if last[k] != n {
			s.Nights++
			last[k] = n
		}
		return s
	}
	for _, n := range nights {
		for i := range n.Rods {
			rod := &n.Rods[i]
			for _, f := range rod.fished() {
				s := at(n, rod.Runs[f.run].Run.Pool)
				s.Water += f.water.Length()
				s.Runs++
			}
		}
		for _, k := range n.Contacts {
			s := at(n, k.Pool.ID)
			switch k.Touch {
			case journal.Landed:
				s.Landed++
			case journal.Lost:
				s.Lost++
			case journal.Pluck, journal.Pull:
				s.Touches++
			default:
				s.Shows++
			}
		}
	}
	out := make([]PoolSum, 0, len(sums))
	for _, s := range sums {
		out = append(out, *s)
	}
	slices.SortFunc(out, func(a, b PoolSum) int {
		return cmp.Or(cmp.Compare(a.Beat.String(), b.Beat.String()),
			cmp.Compare(order[key{a.Beat, a.Pool}], order[key{b.Beat, b.Pool}]), cmp.Compare(a.Pool.String(), b.Pool.String()))
	})
	return out
}
