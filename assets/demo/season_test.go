package demo_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
)

// Ensure that the demo shows what the program is for: two seasons of 24 nights on
// both beats, blank ones, one rod and two, guests with a guide, every kind of entry
// but photos, times of each uncertain kind, floods that fall, a lure on the surface,
// fish kept and returned, nights that hardly get dark.
func TestWhatTheDemoHolds(t *testing.T) {
	j := written(t, demo.Seed)
	faults, err := j.Check()
	require.NoError(t, err)
	require.Empty(t, faults)
	perYear, seen, evenings := map[int]int{}, map[string]int{}, map[journal.Date]bool{}
	for _, n := range nights(t, j) {
		trip := n.Log.Trip
		perYear[trip.Evening.Year]++
		assert.False(t, evenings[trip.Evening], "two nights of %s", trip.Evening)
		evenings[trip.Evening] = true
		seen["beat "+n.Beat.Name]++
		seen[map[bool]string{true: "one rod", false: "two rods"}[len(trip.Rods) == 1]]++
		if trip.Guide.Known() {
			require.True(t, trip.Rods[0].Client)
			seen["guided"]++
		}
		if len(n.Contacts) == 0 {
			seen["blank"]++
		}
		if d := trip.Evening; d.Month == time.June && d.Day >= 14 && d.Day <= 28 {
			seen["midsummer"]++
		}
		for _, e := range n.Log.Entries {
			seen["kind "+string(e.Ref().Kind)]++
			seen["time "+string(e.Base().When.Kind)]++
			switch e := e.(type) {
			case journal.Run:
				if e.Enter.Known() && e.Leave.Known() {
					seen["in and out"]++
				}
			case journal.Rig:
				if e.Surface {
					seen["surface"]++
				}
			case journal.Water:
				seen["trend "+string(e.Trend.Or(""))]++
			case journal.Contact:
				seen["fate "+string(e.Fate.Or(""))]++
				seen["touch "+string(e.Touch)]++
				if e.Spot.Known() {
					seen["spot"]++
				}
			case journal.Note:
				seen["note"]++
			}
		}
	}
	assert.Equal(t, map[int]int{2025: demo.Nights, 2026: demo.Nights}, perYear)
	want := []string{
		"one rod", "two rods", "guided", "blank", "midsummer", "surface", "in and out", "spot", "beat Home Beat", "beat Kirk Beat",
		"time exact", "time about", "time within", "time between", "time after", "fate kept", "fate returned",
		"trend rising", "trend falling flood", "trend fining down", "trend normal",
	}
	for _, touch := range journal.Touches {
		want = append(want, "touch "+string(touch))
	}
	for _, k := range journal.EntryKinds {
		want = append(want, "kind "+string(k))
	}
	for _, w := range want {
		assert.Positive(t, seen[w], w)
	}
	assert.GreaterOrEqual(t, seen["blank"], 4, "night fishing has blank nights")
	assert.GreaterOrEqual(t, seen["guided"], 6)
	t.Log(seen)
}

// Ensure that the two beats are drawn without a serious fault and that every pool of
// theirs is fished.
func TestBeats(t *testing.T) {
	j := written(t, demo.Seed)
	fished := map[journal.ID]bool{}
	for _, n := range nights(t, j) {
		for _, r := range n.Log.Runs(journal.ID{}) {
			fished[r.Pool] = true
		}
	}
	beats, err := journal.All[journal.Beat](j)
	require.NoError(t, err)
	pools := map[string]int{}
	for _, b := range beats {
		shape := b.On(demo.Show)
		pools[shape.Name] = len(shape.Pools)
		for _, f := range geo.Check(shape) {
			assert.False(t, f.Serious(), "%s: %s", shape.Name, f.Error())
		}
		for _, p := range shape.Pools {
			assert.True(t, fished[p.ID], p.Name)
			assert.True(t, p.Bank.Known() && p.Canopy.Known() && len(p.Skyline) > 3, "%s: bank, trees, hills", p.Name)
		}
	}
	assert.Equal(t, map[string]int{"Home Beat": 7, "Kirk Beat": 4}, pools)
}

// Ensure that nights begin before the trees are grey and end before the light is back,
// and that nobody fishes two pools at once or one who is not there.
func TestHours(t *testing.T) {
	for _, n := range nights(t, written(t, demo.Seed)) {
		require.True(t, !n.Grey.At.IsZero(), "%s: it gets dark on 55 N", n.Log.Trip.Evening)
		for _, rod := range n.Rods {
			require.NotEmpty(t, rod.Runs, n.Log.Trip.Evening)
			first := rod.Runs[0].From.Mid()
			assert.InDelta(t, -20, first.Sub(n.Grey.At).Minutes(), 60, "%s: the first cast", n.Log.Trip.Evening)
			start, ok := rod.Rod.Start.Get()
			require.True(t, ok)
			assert.False(t, first.Before(n.Log.Spread(start).Lo), n.Log.Trip.Evening)
		}
	}
}

// Ensure that a night built from the demo is built again alike, whichever night was
// built before it.
func TestNightsDoNotDependOnOrder(t *testing.T) {
	j := written(t, demo.Seed)
	all := nights(t, j)
	for i := 0; i < len(all); i += 11 {
		n, err := timeline.Load(j, all[i].Log.Trip.ID)
		require.NoError(t, err)
		assert.Equal(t, all[i].Totals, n.Totals)
		assert.Equal(t, all[i].Grey, n.Grey)
	}
}
