package journal_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

func TestTripsLatestFirst(t *testing.T) {
	j, _ := world(t)
	for word, days := range map[string]int{"before": -1, "after": 1, "same": 0} {
		tr := trip()
		tr.ID, tr.Evening = id(word), evening.Add(days)
		put(t, j, tr)
	}
	ts, err := j.Trips()
	require.NoError(t, err)
	require.Len(t, ts, 4)
	assert.Equal(t, id("after"), ts[0].ID)
	assert.ElementsMatch(t, []journal.ID{id("same"), id("trip")}, []journal.ID{ts[1].ID, ts[2].ID})
	assert.Equal(t, id("before"), ts[3].ID)
}

func TestOneAndAll(t *testing.T) {
	j, _ := world(t)
	p, err := journal.One[journal.Person](j, id("anna"))
	require.NoError(t, err)
	assert.Equal(t, person("anna"), p)
	_, err = journal.One[journal.Fly](j, id("anna"))
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
	flies, err := journal.All[journal.Fly](j)
	require.NoError(t, err)
	assert.ElementsMatch(t, []journal.Fly{fly("dark fly"), fly("pale fly")}, flies)
	rules, err := journal.All[journal.HouseRule](j)
	require.NoError(t, err)
	assert.Empty(t, rules)
}

// Ensure that one record that cannot be read does not hide the others.
func TestAllBesideUnreadable(t *testing.T) {
	j, s := world(t)
	e, err := journal.Seal(fly("strange fly"))
	require.NoError(t, err)
	e.Version, e.Body = 9, json.RawMessage(`{"mood":"good"}`)
	require.NoError(t, s.Commit(&journal.Change{ID: journal.NewID(), Edits: []journal.Edit{{After: &e}}}))
	flies, err := journal.All[journal.Fly](j)
	assert.Equal(t, journal.Newer, journal.KindOf(err))
	assert.Len(t, flies, 2)
}

func TestNight(t *testing.T) {
	j, _ := world(t)
	put(t, j, note("b", at(23, 0)), note("a", at(22, 0)))
	l, err := j.Night(id("trip"))
	require.NoError(t, err)
	assert.Equal(t, trip(), l.Trip)
	assert.Equal(t, []journal.ID{id("a"), id("b")}, words(l.Sorted()))
	_, err = j.Night(id("no trip"))
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
}
