package demo_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline"
)

func written(t testing.TB, seed uint64) *journal.Journal {
	t.Helper()
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Unix(0, 0) })
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, seed))
	return j
}

// dump lists every record by its place, as it lies in the store.
func dump(t *testing.T, j *journal.Journal) map[journal.Ref]journal.Envelope {
	out := map[journal.Ref]journal.Envelope{}
	cs, err := j.Changes(0, 1000)
	require.NoError(t, err)
	for _, c := range cs {
		for _, e := range c.Edits {
			out[e.Ref()] = *e.After
		}
	}
	return out
}

// Ensure that the same seed gives the same journal, identities included, and
// another seed another one.
func TestSameSeed(t *testing.T) {
	a, b, c := dump(t, written(t, demo.Seed)), dump(t, written(t, demo.Seed)), dump(t, written(t, 7))
	assert.Equal(t, a, b)
	assert.NotEqual(t, a, c)
}

// Ensure that the demo shows what the program is for: two seasons of 24 nights on
// both beats, blank ones, one rod and two, clients with a guide, times of each
// uncertain kind, floods that fall, a lure on the surface, fish kept and returned.
func TestWhatTheDemoHolds(t *testing.T) {
	j := written(t, demo.Seed)
	faults, err := j.Check()
	require.NoError(t, err)
	require.Empty(t, faults)
	trips, err := j.Trips()
	require.NoError(t, err)
	perYear, seen := map[int]int{}, map[string]int{}
	for _, trip := range trips {
		perYear[trip.Evening.Year]++
		seen["beat "+trip.Beat.String()]++
		seen[map[bool]string{true: "one rod", false: "two rods"}[len(trip.Rods) == 1]]++
		if trip.Guide.Known() {
			require.True(t, trip.Rods[0].Client)
			seen["guided"]++
		}
		n, err := timeline.Load(j, trip.ID)
		require.NoError(t, err, trip.Evening)
		if n.Totals.Landed == 0 {
			seen["blank"]++
		}
		for _, g := range n.Grey.Logged {
			assert.InDelta(t, 0, g.Sub(n.Grey.At).Minutes(), 40, "%s: trees grey noted and reckoned", trip.Evening)
			seen["trees grey noted"]++
		}
		for _, e := range n.Log.Entries {
			seen["time "+string(e.Base().When.Kind)]++
			switch e := e.(type) {
			case journal.Rig:
				if e.Surface {
					seen["surface"]++
				}
			case journal.Water:
				seen["trend "+string(e.Trend.Or(""))]++
			case journal.Contact:
				seen["fate "+string(e.Fate.Or(""))]++
				seen["touch "+string(e.Touch)]++
			}
		}
	}
	assert.Equal(t, map[int]int{2025: demo.Nights, 2026: demo.Nights}, perYear)
	for _, want := range []string{"one rod", "two rods", "guided", "blank", "trees grey noted", "time exact", "time about", "time within",
		"surface", "trend falling flood", "fate kept", "fate returned", "touch lost", "touch follow", "touch pull"} {
		assert.Positive(t, seen[want], want)
	}
	beats, err := journal.All[journal.Beat](j)
	require.NoError(t, err)
	require.Len(t, beats, 2)
	pools := 0
	for _, b := range beats {
		assert.Positive(t, seen["beat "+b.ID.String()])
		shape := b.On(demo.Show)
		pools += len(shape.Pools)
		for _, f := range geo.Check(shape) {
			assert.False(t, f.Serious(), f.Error())
		}
	}
	assert.Equal(t, 7+4, pools)
}

// Ensure that writing the demo into its own journal again changes nothing.
func TestWriteTwice(t *testing.T) {
	j := written(t, demo.Seed)
	before := dump(t, j)
	_ = demo.Write(j, demo.Seed) // the same records again change nothing
	assert.Equal(t, before, dump(t, j))
}

// BenchmarkWrite makes the whole demo in memory.
func BenchmarkWrite(b *testing.B) {
	for b.Loop() {
		written(b, demo.Seed)
	}
}
