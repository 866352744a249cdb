package state

import (
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/ui/scene"
)

// demoOnce is the demo, made once for the tests that store nothing in it.
var demoOnce = sync.OnceValues(func() (*journal.Journal, error) {
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	if err == nil {
		err = demo.Write(j, demo.Seed)
	}
	return j, err
})

func demoJournal(t *testing.T) *journal.Journal {
	t.Helper()
	j, err := demoOnce()
	require.NoError(t, err)
	return j
}

// nightStep is 1: all nights. With -short, as the race detector is run, it leaves most
// out: it looks for goroutines, of which there is none here, and is ten times slower.
func nightStep() int {
	if testing.Short() {
		return 5
	}
	return 1
}

// Ensure that every entry of two written seasons opens on a card without a fault,
// and that typing each field anew as it stands changes nothing.
func TestEveryEntryOfTheDemo(t *testing.T) {
	k := newKit(t)
	j := demoJournal(t)
	last := func() uint64 {
		cs, err := j.Changes(0, 100000)
		require.NoError(t, err)
		return cs[len(cs)-1].Seq
	}
	d := New(j, k.d.now)
	require.Greater(t, d.NightCount(), 10)
	before, seen := last(), map[journal.Kind]int{}
	for i := 0; i < d.NightCount(); i += nightStep() {
		row := d.NightRow(i)
		require.NoError(t, row.Err)
		require.NotEmpty(t, row.Beat)
		require.NoError(t, d.Open(row.Trip))
		require.Equal(t, row.Brief.Totals, d.Night().Totals, "list and night count alike")
		refs := []journal.Ref{d.Night().Log.Trip.Ref()}
		for _, e := range d.Night().Log.Entries {
			refs = append(refs, e.Ref())
		}
		for _, r := range refs {
			seen[r.Kind]++
			c, err := d.AmendCard(r)
			require.NoError(t, err)
			for _, f := range c.Fields() {
				require.Empty(t, f.Error, "%s %s", r.Kind, f.ID)
				c.Set(f.ID, f.Value+" x")
				c.Set(f.ID, f.Value)
			}
			require.False(t, c.Dirty(), "%s", r.Kind)
			require.NoError(t, c.Commit())
		}
	}
	assert.Equal(t, before, last(), "nothing was stored")
	for _, kind := range []journal.Kind{journal.KindRun, journal.KindRig, journal.KindContact, journal.KindSky, journal.KindWater, journal.KindTrip} {
		assert.NotZero(t, seen[kind], kind)
	}
}

// Ensure that a moment typed anew as it is printed is the same moment, on every
// entry of two seasons.
func TestDemoTimesReadBack(t *testing.T) {
	k := newKit(t)
	d := New(demoJournal(t), k.d.now)
	for i := 0; i < d.NightCount(); i += nightStep() {
		require.NoError(t, d.Open(d.NightRow(i).Trip))
		n := d.Night()
		c := Clock{Evening: n.Log.Trip.Evening, Zone: n.Zone, Things: Things(n)}
		for _, e := range n.Log.Entries {
			w := e.Base().When
			r, err := c.Parse(c.Print(w))
			require.NoError(t, err, c.Print(w))
			require.Equal(t, w.Kind, r.When.Kind, c.Print(w))
			require.Equal(t, n.Log.Spread(w), n.Log.Spread(r.When), c.Print(w))
		}
	}
}

// Ensure that looks and pools go by the names that the pictures use.
func TestNamesOfScenes(t *testing.T) {
	assert.Equal(t, scene.PoolKind, PoolKind)
	var names []string
	for _, l := range scene.Looks {
		names = append(names, l.Name)
	}
	assert.Equal(t, names, Looks)
	assert.True(t, slices.Contains(Looks, DefaultLook))
}
