package journal_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that looking through a journal finds what earlier or looser programs
// left, and nothing in a sound one.
func TestJournalCheck(t *testing.T) {
	j, s := world(t)
	put(t, j, run("run", "anna", at(23, 0)))
	faults, err := j.Check()
	require.NoError(t, err)
	assert.Empty(t, faults)

	odd := run("odd", "anna", at(2, 0))
	odd.Pool = id("no pool")
	past(t, s, odd)
	past(t, s, journal.Person{ID: id("nameless")})
	lost := trip()
	lost.ID, lost.Beat = id("lost trip"), id("no beat")
	past(t, s, lost)
	faults, err = j.Check()
	require.NoError(t, err)
	var got []string
	for _, f := range faults {
		got = append(got, f.Where+": "+journal.FieldErrors(f.Err)[0].Field)
		assert.NotZero(t, f.Ref)
	}
	assert.ElementsMatch(t, []string{"night of 2026-07-04: pool", "record: name", "trip: beat"}, got)
}
