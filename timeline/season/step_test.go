package season

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
)

// Ensure that steps come to what one pass does, that Read then makes nothing, and that a
// change between two steps is followed.
func TestBookInSteps(t *testing.T) {
	j := demoJournal(t)
	whole, err := NewBook(j).Read(nil)
	require.NoError(t, err)
	b := NewBook(j)
	left, of, err := b.Step(10)
	require.NoError(t, err)
	assert.Equal(t, [2]int{2 * demo.Nights, 2 * demo.Nights}, [2]int{left, of}, "a first step looks for logged moments")
	for want := 2*demo.Nights - 10; want > 0; want -= 10 {
		left, of, err := b.Step(10)
		require.NoError(t, err)
		assert.Equal(t, want, left)
		assert.Equal(t, 2*demo.Nights, of)
	}
	last := whole.Digests[len(whole.Digests)-1].Trip // made by the first step
	log, err := j.Night(last)
	require.NoError(t, err)
	_, err = j.Do("remove", journal.Batch{Remove: []journal.Ref{log.Entries[0].Ref()}})
	require.NoError(t, err)
	left, _, err = b.Step(8)
	require.NoError(t, err)
	assert.Equal(t, 1, left)
	_, err = j.Undo()
	require.NoError(t, err)
	left, _, err = b.Step(10)
	require.NoError(t, err)
	assert.Zero(t, left)
	read, err := b.Read(func(int, int) { t.Error("a night was left") })
	require.NoError(t, err)
	require.Len(t, read.Digests, len(whole.Digests))
	for i, d := range whole.Digests {
		assert.Equal(t, d.Trip, read.Digests[i].Trip)
		assert.Equal(t, d.Totals, read.Digests[i].Totals)
	}
}
