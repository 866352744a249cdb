package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// fished is a stored beat with a night on it that was fished in its first pool.
func fished(t *testing.T) (*Desk, *BeatDesk) {
	d := emptyDesk(t)
	b := d.Beats()
	drawThree(t, b)
	require.NoError(t, b.Store())
	c, err := d.NewNightCard()
	require.NoError(t, err)
	c.Set("rods.0.person", "Anna")
	require.NoError(t, c.Commit())
	run, err := d.AddCard(journal.KindRun)
	require.NoError(t, err)
	for _, f := range [][2]string{{"when", "23:00"}, {"until", "23:40"}, {"pool", "Alder Pool"}} {
		run.Set(f[0], f[1])
	}
	require.NoError(t, run.Commit())
	return d, b
}

// Ensure that a changed beat asks whether it was drawn wrong or has changed, that old nights
// keep what was true then, that what a split pool became is recorded, and that each answer is one change.
func TestBeatChangedFrom(t *testing.T) {
	d, b := fished(t)
	alder := b.now().Beat.InOrder()[0]
	b.Select(alder.ID)
	b.Take(SplitPool)
	require.NoError(t, b.Click(pt(40, -20), 1))
	require.NoError(t, b.Click(pt(40, 20), 1))
	require.Nil(t, b.Refused())
	require.Len(t, b.now().Beat.Pools, 4)
	assert.ErrorIs(t, b.Store(), ErrAsk)
	q, err := b.Question()
	require.NoError(t, err)
	assert.Equal(t, 1, q.Nights)
	assert.Equal(t, []string{"Alder Pool"}, q.Lost)
	assert.False(t, q.Elsewhere)

	assert.ErrorContains(t, b.ChangeFrom("never"), "never")
	seq := lastSeq(t, d)
	require.NoError(t, b.ChangeFrom("10 July 2026"))
	assert.Equal(t, seq+1, lastSeq(t, d))
	r, err := journal.One[journal.Beat](d.Journal(), b.now().Beat.ID)
	require.NoError(t, err)
	require.Len(t, r.Revisions, 2)
	assert.Len(t, r.On(journal.Date{Year: 2026, Month: 7, Day: 9}).Pools, 3)
	assert.Len(t, r.On(journal.Date{Year: 2026, Month: 7, Day: 10}).Pools, 4)
	assert.Len(t, r.Successors[alder.ID], 2)
	assert.Len(t, d.Night().Beat.Pools, 3, "the night keeps what was true then")
	assert.Equal(t, "Alder Pool", d.Night().Beat.InOrder()[0].Name)

	b.Select(b.now().Beat.InOrder()[0].ID)
	b.Set("name", "Alder Head")
	assert.ErrorContains(t, b.ChangeFrom("1 July 2026"), "Choose a later evening")
	require.NoError(t, b.Undo(), "the name")
	require.NoError(t, b.Undo(), "and the stored change")
	assert.Len(t, b.now().Beat.Pools, 3)
	assert.False(t, b.Changed())
}

// Ensure that a correction changes what all nights see, as one change.
func TestBeatCorrect(t *testing.T) {
	d, b := fished(t)
	b.Select(b.now().Beat.InOrder()[0].ID)
	b.Set("name", "Alder Stream")
	assert.Equal(t, "Alder Pool", d.Night().Beat.InOrder()[0].Name)
	require.NoError(t, b.Correct())
	assert.Equal(t, "Alder Stream", d.Night().Beat.InOrder()[0].Name)
	assert.False(t, b.Changed())
	require.NoError(t, d.Undo())
	assert.Equal(t, "Alder Pool", d.Night().Beat.InOrder()[0].Name)
	assert.Equal(t, "Alder Pool", b.now().Beat.InOrder()[0].Name, "the table goes along")

	require.NoError(t, b.Delete())
	err := b.Correct()
	assert.Equal(t, journal.Conflict, journal.KindOf(err), "a pool that was fished in cannot never have been: %v", err)
	assert.True(t, b.Changed())
	require.NoError(t, b.ChangeFrom("10 July 2026"))
}

func lastSeq(t *testing.T, d *Desk) uint64 {
	t.Helper()
	cs, err := d.Journal().Changes(0, 1000)
	require.NoError(t, err)
	return uint64(len(cs))
}

// Ensure that a drawing that was changed stays when its beat changes elsewhere, and that storing
// it says so.
func TestBeatChangedElsewhere(t *testing.T) {
	d, b := fished(t)
	b.Select(b.now().Beat.InOrder()[0].ID)
	b.Set("name", "Mine")
	r, err := journal.One[journal.Beat](d.Journal(), b.now().Beat.ID)
	require.NoError(t, err)
	r.Revisions[0].Shape.Name = "Other"
	_, err = d.Journal().Amend(r)
	require.NoError(t, err)
	assert.Equal(t, "Mine", b.now().Beat.InOrder()[0].Name)
	q, err := b.Question()
	require.NoError(t, err)
	assert.True(t, q.Elsewhere)
}
