package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
)

// Ensure that keys reach everything on the sketch: every pool, every spot and every
// contact with a pool, each once, and the same way back.
func TestSketchOrderReachesAll(t *testing.T) {
	d := demoDesk(t)
	n := d.Night()
	order := d.SketchOrder()
	seen := map[journal.Ref]bool{}
	for _, r := range order {
		assert.False(t, seen[r], "%v twice", r)
		seen[r] = true
	}
	for _, p := range n.Beat.Pools {
		assert.True(t, seen[journal.Ref{Kind: PoolKind, Trip: n.Log.Trip.Beat, ID: p.ID}], p.Name)
	}
	for _, f := range n.Beat.Features {
		points, _, _ := n.Beat.Layout().Shape(f.Shape)
		assert.Equal(t, len(points) > 0, seen[journal.Ref{Kind: SpotKind, Trip: n.Log.Trip.Beat, ID: f.ID}], f.Name)
	}
	for _, c := range n.Contacts {
		assert.Equal(t, c.HasPool, seen[c.Contact.Ref()], "contact %d", c.N)
	}

	d.Select(journal.Ref{})
	d.SelectPool(order[0].ID)
	for i, want := range order {
		assert.Equal(t, want, d.Picked(), "%d", i)
		assert.Equal(t, i+1 < len(order), d.NextOnSketch(+1))
	}
	for i := len(order) - 1; i >= 0; i-- {
		assert.Equal(t, order[i], d.Picked(), "%d back", i)
		assert.Equal(t, i > 0, d.NextOnSketch(-1))
	}
}

// Ensure that left and right go from pool to pool, from whatever lies in one, and that
// what was selected before is let go: Delete must not mean what nobody looks at.
func TestNextPool(t *testing.T) {
	d := demoDesk(t)
	n := d.Night()
	c := n.Contacts[len(n.Contacts)-1]
	require.True(t, c.HasPool)
	d.Select(c.Contact.Ref())
	pools := n.Beat.InOrder()
	at := 0
	for i, p := range pools {
		if p.ID == c.Pool.ID {
			at = i
		}
	}
	require.Positive(t, at)
	require.True(t, d.NextPool(-1))
	assert.Equal(t, pools[at-1].ID, d.Pool())
	assert.Zero(t, d.Selected())
	for d.NextPool(+1) {
		at++
	}
	assert.Equal(t, pools[len(pools)-1].ID, d.Pool())
}

// Ensure that the part with the keyboard decides what an arrow and a zoom mean.
func TestPartDecides(t *testing.T) {
	d := demoDesk(t)
	for p, want := range map[Part]string{Anywhere: "go.next-minute", OnStrip: "go.next-minute", OnLog: "go.next-minute", OnSketch: "go.pool-down"} {
		d.SetPart(p)
		assert.Equal(t, want, d.CommandFor(key("Right")).ID)
	}
	d.SetPart(OnSketch)
	require.NoError(t, d.Command("view.closer").Run())
	assert.Equal(t, 2.0, d.Sketch().Zoom)
	assert.True(t, d.Fitted())
	require.NoError(t, d.Command("view.later").Run())
	assert.Equal(t, -float64(sketchStep), d.Sketch().Pan.X)
	require.NoError(t, d.Command("view.wider").Run())
	assert.Equal(t, wholeBeat, d.Sketch())
	d.SetPart(OnStrip)
	require.NoError(t, d.Command("view.closer").Run())
	assert.False(t, d.Fitted())
}

// Ensure that the next entry is for the rod whose lane was pointed at, until something
// is selected.
func TestPointedRod(t *testing.T) {
	k := newKit(t)
	k = newKit(t)
	k.night(true)
	k.d.SelectRod(k.rod(1).ID)
	assert.Equal(t, k.rod(1).ID, k.d.Rod())
	k.d.Select(journal.Ref{})
	assert.Zero(t, k.d.Rod())
}

// demoDesk is a desk on the demo with its night of two rods open.
func demoDesk(t *testing.T) *Desk {
	t.Helper()
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, demo.Seed))
	d := New(j, func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	for i := range d.NightCount() {
		if r := d.NightRow(i); r.Evening.String() == "2026-07-04" {
			require.NoError(t, d.Open(r.Trip))
			return d
		}
	}
	t.Fatal("the demo has no night of 4 July")
	return nil
}
