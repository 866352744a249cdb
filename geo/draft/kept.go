package draft

import (
	"maps"
	"sort"

	"gloamline/geo"
)

// Kept is a draft as it is laid by between two sessions, sound or not. Its JSON form is for
// the same program to read again, and may change between versions.
type Kept struct {
	Beat geo.Beat `json:"beat"`
	// Went is what pools that were split or joined became, step by step.
	Went map[geo.ID][]geo.ID `json:"went,omitempty"`
}

// Keep returns the draft without its plane, which follows from the place of the beat.
func (d Draft) Keep() Kept { return Kept{d.Beat, maps.Clone(d.went)} }

// Resume goes on with a draft that was kept.
func Resume(k Kept) Draft {
	d := New(k.Beat)
	d.went = maps.Clone(k.Went)
	return d
}

// Downstream numbers the pools as they lie along the river, where the bank lines say which way
// it runs. Pools that are not drawn come last, in the order they had.
func (d Draft) Downstream() (Draft, error) {
	l := d.Beat.LayoutOn(d.Plane)
	guide := l.Centre
	if len(guide) < 2 && len(l.Banks) > 0 {
		guide = l.Banks[0].Path
	}
	if len(guide) < 2 {
		return d, refuse(d.Beat.ID, geo.Point{}, "no bank line says which way the river runs", "Draw the banks first, from the top down, or put the pools in order one by one.")
	}
	at := map[geo.ID]float64{}
	for _, s := range l.Pools {
		at[s.Pool.ID] = float64(guide.Foot(s.Area.Centroid()).Chainage)
	}
	order := d.Beat.InOrder()
	sort.SliceStable(order, func(i, j int) bool {
		a, b := order[i], order[j]
		x, okA := at[a.ID]
		y, okB := at[b.ID]
		if okA != okB {
			return okA
		}
		return okA && x < y
	})
	return d.numbered(order), nil
}
