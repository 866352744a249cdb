package demo_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/units"
)

var zeroWeight units.Weight

// Ensure that the lengths of the flies print as the fractions that are spoken on a
// bank, and that every fly lies in one box and has been fished.
func TestFlies(t *testing.T) {
	j := written(t, demo.Seed)
	flies, err := journal.All[journal.Fly](j)
	require.NoError(t, err)
	boxes, err := journal.All[journal.Box](j)
	require.NoError(t, err)
	used := map[journal.ID]bool{}
	for _, n := range nights(t, j) {
		for _, e := range n.Log.Entries {
			if r, ok := e.(journal.Rig); ok {
				for _, f := range r.Flies {
					used[f.Fly.Or(journal.ID{})] = true
				}
			}
		}
	}
	printed := map[string]bool{}
	for _, f := range flies {
		d := f.On(demo.Show)
		l, ok := d.Length.Get()
		require.True(t, ok)
		printed[l.String()] = true
		in := 0
		for _, b := range boxes {
			if slices.Contains(b.Flies, f.ID) {
				in++
			}
		}
		assert.Equal(t, 1, in, "%s lies in one box", l)
		assert.True(t, used[f.ID], "%s %v %v was never fished", l, d.Silhouette, d.Tone)
		assert.Empty(t, f.Label, "flies are described, not named")
	}
	assert.Equal(t, map[string]bool{"½ in": true, "¾ in": true, "1 in": true, "1½ in": true, "2 in": true, "3 in": true}, printed)
}

// Ensure that the house rules say that they are common practice and no finding, and
// that guests are marked as such.
func TestRulesAndPeople(t *testing.T) {
	j := written(t, demo.Seed)
	rules, err := journal.All[journal.HouseRule](j)
	require.NoError(t, err)
	require.NotEmpty(t, rules)
	for _, r := range rules {
		assert.True(t, r.Practice, r.Words)
	}
	people, err := journal.All[journal.Person](j)
	require.NoError(t, err)
	client := map[journal.ID]bool{}
	for _, p := range people {
		client[p.ID] = p.Client
	}
	for _, n := range nights(t, j) {
		for _, r := range n.Log.Trip.Rods {
			assert.Equal(t, client[r.Person], r.Client)
		}
		if g, ok := n.Log.Trip.Guide.Get(); ok {
			assert.False(t, client[g])
		}
	}
}
