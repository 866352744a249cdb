package journal_test

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that the inverse of a change swaps before and after, last edit first,
// and leaves tombstones for what it takes away.
func TestInverse(t *testing.T) {
	a1, err := journal.Seal(note("a", at(22, 0)))
	require.NoError(t, err)
	a2, err := journal.Seal(note("a", at(23, 0)))
	require.NoError(t, err)
	b, err := journal.Seal(note("b", at(23, 0)))
	require.NoError(t, err)
	gone := journal.Tombstone(b.Ref())
	c := journal.Change{Edits: []journal.Edit{{Before: &a1, After: &a2}, {After: &b}}}
	inv := c.Inverse()
	assert.Equal(t, []journal.Edit{{Before: &b, After: &gone}, {Before: &a2, After: &a1}}, inv)
	twice := journal.Change{Edits: inv}.Inverse()
	assert.Equal(t, []journal.Edit{{Before: &a1, After: &a2}, {Before: &gone, After: &b}}, twice)
}

func TestTouches(t *testing.T) {
	seal := func(r journal.Record) *journal.Envelope {
		e, err := journal.Seal(r)
		require.NoError(t, err)
		return &e
	}
	of := func(r journal.Record) journal.Change { return journal.Change{Edits: []journal.Edit{{After: seal(r)}}} }
	assert.True(t, of(trip()).Touches(id("trip")))
	assert.True(t, of(note("n", at(23, 0))).Touches(id("trip")))
	assert.False(t, of(note("n", at(23, 0))).Touches(id("other")))
	assert.False(t, of(fly("trip")).Touches(id("trip")), "the fly of that identity is no trip")
}

// Ensure that a change is stored as documented.
func TestChangeJSON(t *testing.T) {
	gone := journal.Tombstone(fly("dark fly").Ref())
	c := journal.Change{ID: id("change"), Copy: id("copy"), Seq: 7, When: clock(23, 0), Did: "remove fly", Edits: []journal.Edit{{After: &gone}}}
	b, err := json.Marshal(c)
	require.NoError(t, err)
	assert.Equal(t, `{"id":"`+id("change").String()+`","copy":"`+id("copy").String()+`","seq":7,"when":"2026-07-04T22:00:00Z","did":"remove fly",`+
		`"edits":[{"after":{"v":1,"kind":"fly","id":"`+id("dark fly").String()+`","gone":true}}]}`, string(b))
	var back journal.Change
	require.NoError(t, json.Unmarshal(b, &back))
	assert.Equal(t, c, back)
	assert.Equal(t, time.UTC, back.When.Location())
}
