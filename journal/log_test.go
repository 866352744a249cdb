package journal_test

import (
	"cmp"
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

func kinds(es []journal.Entry) (out []journal.Kind) {
	for _, e := range es {
		out = append(out, e.Ref().Kind)
	}
	return out
}

func words(es []journal.Entry) (out []journal.ID) {
	for _, e := range es {
		out = append(out, e.Base().ID)
	}
	return out
}

// Ensure that a night is told in its order: by the middle of each moment, at
// one moment by kind, then by identity.
func TestSorted(t *testing.T) {
	same := at(23, 0)
	sky := journal.Sky{Head: head("sky", "", same), TreesGrey: true}
	rig := journal.Rig{Head: head("rig", "anna", same)}
	end := journal.End{Head: head("end", "", same)}
	l := logOf(end, sky, contact("fish", "anna", same), rig, run("run", "anna", same))
	assert.Equal(t, []journal.Kind{journal.KindRun, journal.KindRig, journal.KindContact, journal.KindSky, journal.KindEnd}, kinds(l.Sorted()))

	wide := note("wide", journal.Between(clock(22, 0), clock(1, 0))) // middle 23:30
	l = logOf(wide, note("late", at(23, 31)), note("early", at(23, 29)))
	assert.Equal(t, []journal.ID{id("early"), id("wide"), id("late")}, words(l.Sorted()))

	var many []journal.Entry
	for i := range 100 {
		many = append(many, note(fmt.Sprint(i), at(20+i%3, 0)))
	}
	var ids []journal.ID
	for _, e := range logOf(many...).Sorted()[34:67] {
		require.Equal(t, clock(21, 0), e.Base().When.Lo)
		ids = append(ids, e.Base().ID)
	}
	assert.True(t, slices.IsSortedFunc(ids, func(a, b journal.ID) int { return cmp.Compare(a.String(), b.String()) }))
}

func TestRuns(t *testing.T) {
	l := logOf(run("second", "anna", at(23, 0)), note("n", at(22, 0)), run("first", "anna", at(22, 0)), run("colm's", "colm", at(22, 30)))
	var got []journal.ID
	for _, r := range l.Runs(id("rod of anna")) {
		got = append(got, r.ID)
	}
	assert.Equal(t, []journal.ID{id("first"), id("second")}, got)
	assert.Len(t, l.Runs(journal.ID{}), 3)
}

func TestLogFind(t *testing.T) {
	l := logOf(note("n", at(22, 0)))
	e, ok := l.Find(id("n"))
	assert.True(t, ok)
	assert.Equal(t, id("n"), e.Base().ID)
	_, ok = l.Find(id("other"))
	assert.False(t, ok)
}

// Ensure that the log is not disturbed by what is done to the slice it was made from.
func TestLogKeepsItsEntries(t *testing.T) {
	es := []journal.Entry{note("a", at(22, 0)), note("b", at(23, 0))}
	l := journal.NewLog(trip(), es)
	es[0] = note("c", at(1, 0))
	_, ok := l.Find(id("a"))
	assert.True(t, ok)
	assert.Len(t, l.Sorted(), 2)
}

func TestLogNight(t *testing.T) {
	start, end := logOf().Night()
	assert.Equal(t, time.Date(2026, time.July, 4, 11, 0, 0, 0, time.UTC), start)
	assert.Equal(t, time.Date(2026, time.July, 5, 11, 0, 0, 0, time.UTC), end)
	nowhere := trip()
	nowhere.Zone = "Nowhere/At_All"
	start, _ = journal.NewLog(nowhere, nil).Night()
	assert.Equal(t, time.Date(2026, time.July, 4, 12, 0, 0, 0, time.UTC), start, "UTC where the zone is not known")
}
