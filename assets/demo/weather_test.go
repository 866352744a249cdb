package demo_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/sky"
)

// Ensure that the moments at which trees were noted grey lie within 40 minutes of
// those reckoned, so that a beat's own threshold comes out of them.
func TestTreesGrey(t *testing.T) {
	noted := map[string]int{}
	for _, n := range nights(t, written(t, demo.Seed)) {
		for _, g := range n.Grey.Logged {
			assert.InDelta(t, 0, g.Sub(n.Grey.At).Minutes(), 40, "%s: trees grey noted and reckoned", n.Log.Trip.Evening)
			noted[n.Beat.Name]++
		}
	}
	assert.Greater(t, noted["Home Beat"], 10)
	assert.Greater(t, noted["Kirk Beat"], 4)
}

// Ensure that nobody sees a moon that was not up, and that a moon seen clear had a
// sky to be seen in.
func TestMoonSeen(t *testing.T) {
	var all []*timeline.Night
	for seed := range uint64(4) {
		all = append(all, nights(t, written(t, seed))...)
	}
	seen := map[journal.MoonSeen]int{}
	for _, n := range all {
		if n.Log.Trip.Evening == demo.Show {
			continue // written by hand
		}
		for _, e := range n.Log.Entries {
			s, ok := e.(journal.Sky)
			moon, known := s.Moon.Get()
			if !ok || !known {
				continue
			}
			seen[moon]++
			at := n.Beat.Place()
			place, err := sky.NewPlace(at.Lat, at.Lon)
			require.NoError(t, err)
			p := sky.At(n.Log.At(s).Mid(), place)
			assert.Greater(t, float64(p.Moon.Alt), 8.0, "%s: a moon below the hills was seen", n.Log.Trip.Evening)
			switch cloud := s.Cloud.Or(0); moon {
			case journal.MoonClear:
				assert.LessOrEqual(t, cloud, 4)
			case journal.MoonVeiled:
				assert.Less(t, cloud, 8)
			case journal.MoonBehind:
				assert.Equal(t, 8, cloud)
			}
		}
	}
	for _, m := range journal.MoonSeens {
		assert.Positive(t, seen[m], m)
	}
}
