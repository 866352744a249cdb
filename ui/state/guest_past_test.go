package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/scene"
)

// readPast reads on until nothing is left, and says in how many steps.
func readPast(g *GuestDesk, nights int) (steps int) {
	for g.Handout(); g.Read(nights); steps++ {
	}
	return steps
}

// Ensure that a pool's nights read a few at a time come to the page that they come to at
// once, for every pool; that nothing is shown of half of them; that a change begins anew, and
// only nights touched are read again.
func TestGuestPoolInSteps(t *testing.T) {
	d, g := guestOnDemo(t)
	want := map[journal.ID]scene.Handout{}
	for _, p := range g.Pools() {
		g.SetPool(p.Value)
		want[p.Value] = g.Handout()
		_, of := g.Reading()
		require.Zero(t, of, "all at once")
	}
	require.True(t, d.NightCount() > 20)

	clear(g.nights)
	clear(g.past.apart)
	g.InSteps()
	told := 0
	d.OnChange(func(w What) {
		if w.Has(RoomView) {
			told++
		}
	})
	for _, p := range g.Pools() {
		g.SetPool(p.Value)
		told = 0
		if g.Handout() == nil {
			done, of := g.Reading()
			assert.Zero(t, done)
			assert.Positive(t, of)
			assert.Equal(t, []bool{false, false}, []bool{d.Command("guest.next").Enabled(), d.Command("guest.play").Enabled()}, "nothing of half of them")
			require.True(t, g.Read(1))
			require.Nil(t, g.Handout())
			done, _ = g.Reading()
			assert.Equal(t, 1, done)
			assert.Positive(t, readPast(g, 3))
			assert.Equal(t, 1, told, "once, when all are read")
		}
		assert.Equal(t, want[p.Value], g.Handout(), p.Name)
		_, of := g.Reading()
		assert.Zero(t, of)
	}

	// Another recipient's rights need no night read again; nor does another note but its own.
	require.NoError(t, g.Toggle(journal.ShowPlaces))
	require.NotNil(t, g.Handout())
	past := g.Handout().(scene.ClientPast)
	n := d.Night()
	_, err := d.j.Log(journal.Note{Head: journal.Head{ID: journal.NewID(), Trip: n.Log.Trip.ID, When: journal.Exact(n.From), Note: "a"}})
	require.NoError(t, err)
	require.NotNil(t, g.Handout(), "one night is read at once")
	assert.Equal(t, past, g.Handout())

	// A change in the midst of reading begins anew and is not lost.
	clear(g.nights)
	g.again()
	require.Nil(t, g.Handout())
	require.True(t, g.Read(5))
	var run *timeline.RunSpan
	for i := range d.Night().Rods {
		for k := range d.Night().Rods[i].Runs {
			if r := &d.Night().Rods[i].Runs[k]; r.Run.Pool == g.Pool() {
				run = r
			}
		}
	}
	if run == nil {
		t.Skip("the last pool was not fished on the demo's night")
	}
	c := journal.Contact{Head: journal.Head{ID: journal.NewID(), Trip: n.Log.Trip.ID, Rod: run.Run.Rod, When: journal.Exact(run.From.Mid())}, Touch: journal.Landed, Pool: journal.Of(g.Pool())}
	_, err = d.j.Log(c)
	require.NoError(t, err)
	require.Nil(t, g.Handout())
	done, _ := g.Reading()
	assert.Zero(t, done, "anew")
	readPast(g, 4)
	assert.Len(t, g.Handout().(scene.ClientPast).Fish, len(past.Fish)+1)
}

// Ensure that thousands of nights are not held: no more than pastHeld.
func TestGuestPoolHolds(t *testing.T) {
	_, g := guestOnDemo(t)
	g.SetPool(g.Pools()[0].Value)
	for i := range pastHeld {
		g.nights[journal.ID{1, byte(i)}] = &timeline.Night{}
	}
	require.NotNil(t, g.Handout())
	assert.Len(t, g.nights, pastHeld)
}
