package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that nights are read some at a time until none is left, that a change has only its own
// night read again, and that what is known is then what a new reading finds.
func TestReadTraits(t *testing.T) {
	d, _ := guestOnDemo(t)
	all := d.NightCount()
	require.Greater(t, all, 20)
	left, of := d.ReadTraits(0)
	assert.Equal(t, []int{all, all}, []int{left, of})
	left, of = d.ReadTraits(7)
	assert.Equal(t, []int{all - 7, all}, []int{left, of})
	for left > 0 {
		left, _ = d.ReadTraits(7)
	}
	same := func() {
		t.Helper()
		assert.Equal(t, New(d.j, time.Now).Together().Traits(), d.Together().Traits())
	}
	same()
	require.Len(t, d.Together().Traits(), all)

	unread := func() int { left, _ := d.ReadTraits(0); return left }
	n := d.Night()
	run := n.Rods[0].Runs[0]
	_, err := d.j.Log(journal.Contact{Head: journal.Head{ID: journal.NewID(), Trip: n.Log.Trip.ID, Rod: run.Run.Rod, When: journal.Exact(run.From.Mid())}, Touch: journal.Landed})
	require.NoError(t, err)
	assert.Equal(t, 1, unread())
	same()
	_, err = d.j.Undo()
	require.NoError(t, err)
	assert.Equal(t, 1, unread())
	same()
	beats, err := journal.All[journal.Beat](d.j)
	require.NoError(t, err)
	b := beats[0]
	b.Revisions[0].Shape.Name += " (old)"
	_, err = d.j.Do("amend beat", journal.Batch{Put: []journal.Record{b}})
	require.NoError(t, err)
	assert.Equal(t, all, unread(), "each night has its beat's name")
	same()
}

// Ensure that nights prepared are those that are then laid, and that nothing is left to prepare.
func TestPrepare(t *testing.T) {
	d, _ := guestOnDemo(t)
	r := d.Together()
	steps := 1
	for r.Prepare(2) {
		steps++
	}
	chosen := len(r.chosen())
	require.Greater(t, chosen, 4)
	assert.Equal(t, (chosen+1)/2, steps)
	assert.Len(t, r.nights, chosen)
	held := r.nights[r.chosen()[0]]
	assert.Len(t, r.Sides().Light.Nights, chosen)
	assert.Same(t, held, r.nights[r.chosen()[0]])
	assert.False(t, r.Prepare(1))
}
