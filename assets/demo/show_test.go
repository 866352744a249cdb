package demo_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// Ensure that the night the demo opens on is the same whatever the seed: only its
// identities follow from it.
func TestShow(t *testing.T) {
	show := func(seed uint64) *timeline.Night {
		for _, n := range nights(t, written(t, seed)) {
			if n.Log.Trip.Evening == demo.Show {
				return n
			}
		}
		t.Fatalf("seed %d has no night of %s", seed, demo.Show)
		return nil
	}
	n := show(demo.Seed)
	assert.Equal(t, "Home Beat", n.Beat.Name)
	require.Len(t, n.Rods, 2)
	assert.Equal(t, 4, n.Totals.Landed)
	assert.Equal(t, 1, n.Totals.Kept)
	assert.Equal(t, 1, n.Totals.Lost)
	other := show(7)
	assert.Equal(t, n.Totals, other.Totals)
	require.Equal(t, len(n.Log.Entries), len(other.Log.Entries))
	told := func(n *timeline.Night) (out []string) {
		for _, e := range n.Log.Entries {
			out = append(out, e.Base().When.Lo.String()+" "+strings.Join(words.EntryLines(n, e, words.Prefs{}), "; "))
		}
		return out
	}
	assert.ElementsMatch(t, told(n), told(other))
}
