package demo_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/geo"
	"gloamline/journal"
)

// Ensure that every fish whose place was noted lies in the pool it is said of, and
// that it came while its rod fished there.
func TestPlacesOfFish(t *testing.T) {
	spots := 0
	for _, n := range nights(t, written(t, demo.Seed)) {
		lay := n.Beat.Layout()
		holds := func(pool journal.ID, at journal.Place) bool {
			for _, p := range lay.Pools {
				if p.Pool.ID == pool {
					return p.Area.Holds(lay.At(at))
				}
			}
			return false
		}
		for _, c := range n.Contacts {
			require.True(t, c.HasPool, "%s: a fish in no pool", n.Log.Trip.Evening)
			require.GreaterOrEqual(t, c.Run, 0, "%s: a fish while nobody fished", n.Log.Trip.Evening)
			assert.Equal(t, n.Rods[c.Rod].Runs[c.Run].Run.Pool, c.Pool.ID)
			if s, ok := c.Spot.Get(); ok {
				spots++
				assert.True(t, holds(c.Pool.ID, s), "%s: a fish on dry land at %s", n.Log.Trip.Evening, s)
			}
		}
		for _, r := range n.Log.Runs(journal.ID{}) {
			pool, ok := n.Beat.Pool(r.Pool)
			require.True(t, ok)
			for _, f := range []journal.Field[journal.Place]{r.Enter, r.Leave} {
				if at, ok := f.Get(); ok {
					assert.True(t, holds(r.Pool, at), "%s: into %s from dry land", n.Log.Trip.Evening, pool.Name)
					assert.Equal(t, pool.Bank, side(lay, r.Pool, at), "%s: in by the wrong bank", pool.Name)
					assert.Equal(t, f == r.Enter, chainage(lay, r.Pool, at) < 0.2, "%s: in at the head, out at the tail", pool.Name)
					assert.Equal(t, f == r.Leave, chainage(lay, r.Pool, at) > 0.8 && chainage(lay, r.Pool, at) < 0.99, pool.Name)
				}
			}
		}
	}
	assert.Greater(t, spots, 20)
}

// side is the bank nearer to a place.
func side(lay *geo.Layout, pool journal.ID, at journal.Place) journal.Bank {
	for _, p := range lay.Pools {
		if p.Pool.ID != pool {
			continue
		}
		if p.Left.Foot(lay.At(at)).Distance < p.Right.Foot(lay.At(at)).Distance {
			return geo.TrueLeft
		}
		return geo.TrueRight
	}
	return ""
}

// chainage is how far down a pool a place lies, 0 to 1.
func chainage(lay *geo.Layout, pool journal.ID, at journal.Place) float64 {
	for _, p := range lay.Pools {
		if p.Pool.ID == pool {
			return float64(p.Axis.Foot(lay.At(at)).Chainage / p.Length())
		}
	}
	return -1
}

// Ensure that fish are such as a night fisher believes: 6 oz to 10 lb, herling small
// and from July on, lengths that go with weights, one kept a night, and no claim about
// the fate of a fish that was not landed.
func TestFishAreFair(t *testing.T) {
	var herling, weighed, measured int
	all := nights(t, written(t, demo.Seed))
	for seed := range uint64(4) {
		all = append(all, nights(t, written(t, seed))...)
	}
	for _, n := range all {
		kept := 0
		for _, c := range n.Contacts {
			pounds := float64(c.Weight.Or(zeroWeight).G) / 453.59237
			if c.Weight.Known() {
				weighed++
				assert.True(t, pounds > 0.37 && pounds < 10, "%.2f lb", pounds)
			}
			if l, ok := c.Length.Get(); ok {
				measured++
				assert.True(t, l.M > 0.2 && l.M < 0.8, l.String())
			}
			if c.Class.Or("") == "herling" {
				herling++
				assert.Less(t, pounds, 1.3)
				if n.Log.Trip.Evening != demo.Show {
					assert.False(t, n.Log.Trip.Evening.Before(journal.Date{Year: n.Log.Trip.Evening.Year, Month: time.July, Day: 12}))
				}
			}
			if c.Fate.Or("") == journal.Kept {
				kept++
			}
			if c.Touch != journal.Landed {
				assert.False(t, c.Weight.Known() || c.Length.Known() || c.Class.Known())
			}
		}
		assert.LessOrEqual(t, kept, 1, n.Log.Trip.Evening)
	}
	assert.Greater(t, herling, 3)
	assert.Greater(t, weighed, 20)
	assert.Greater(t, measured, 5)
}
