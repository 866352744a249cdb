package geo

import (
	"cmp"
	"slices"

	"github.com/paulmach/orb"
)

// Pool is a slower, deeper reach. Order counts from 1 at the top of the beat; 0 is
// not ordered. A pool may have no outline yet: then only its name is known.
type Pool struct {
	ID      ID          `json:"id"`
	Name    string      `json:"name,omitempty"`
	Order   int         `json:"order,omitempty"`
	Outline orb.Polygon `json:"outline,omitempty"` // degrees; further rings are islands
	Skyline Skyline     `json:"skyline,omitempty"` // as seen from the middle of the pool
	Canopy  Canopy      `json:"canopy,omitempty"`
	Bank    Bank        `json:"bank,omitempty"` // from which it is usually fished
	Head    Place       `json:"head,omitzero"`  // where the water enters, if marked by hand
	Tail    Place       `json:"tail,omitzero"`  // the shallow lower end, if marked by hand
	Extra   Extra       `json:"extra,omitzero"`
}

// Drawn reports whether the pool has an outline of at least three corners.
func (p Pool) Drawn() bool { return len(p.Outline) > 0 && len(p.Outline[0]) >= 4 }

// InOrder returns the pools from the top of the beat down. Pools without an order
// come last, as kept.
func (b Beat) InOrder() []Pool {
	out := slices.Clone(b.Pools)
	slices.SortStableFunc(out, func(x, y Pool) int {
		if (x.Order == 0) != (y.Order == 0) {
			return cmp.Compare(y.Order, x.Order)
		}
		return cmp.Compare(x.Order, y.Order)
	})
	return out
}
