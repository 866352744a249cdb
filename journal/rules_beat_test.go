package journal_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
)

// Ensure that a pool that was fished cannot never have been: it may go from a
// later evening on, or be split or joined, and the night keeps it.
func TestLostPools(t *testing.T) {
	only := func(pools ...string) journal.Beat {
		b := homeBeat()
		b.Revisions[0].Shape.Pools = nil
		for _, p := range pools {
			b.Revisions[0].Shape.Pools = append(b.Revisions[0].Shape.Pools, pool(p))
		}
		return b
	}
	j, _ := world(t)
	r := run("run", "anna", at(23, 0))
	put(t, j, r)

	_, err := j.Amend(only("long pool"))
	refused(t, err, journal.Conflict, "revisions", "home beat")
	assert.ErrorContains(t, err, "2026-07-04")
	assert.ErrorContains(t, err, "alder pool")

	_, err = j.Amend(only("alder pool", "another"))
	assert.NoError(t, err, "nobody fished the long pool")

	since := only("alder pool")
	since.Revisions = append(since.Revisions, journal.BeatRevision{From: evening, Shape: only("long pool").Revisions[0].Shape})
	_, err = j.Amend(since)
	refused(t, err, journal.Conflict, "revisions", "home beat")
	since.Revisions[1].From = evening.Add(1)
	_, err = j.Amend(since)
	assert.NoError(t, err, "gone from the next evening on")
	since.Revisions[1].From = evening
	_, err = j.Amend(since)
	refused(t, err, journal.Conflict, "revisions", "home beat")

	split := only("upper alder", "lower alder")
	split.Successors = map[journal.ID][]journal.ID{id("alder pool"): {id("upper alder"), id("lower alder")}}
	_, err = j.Amend(split)
	require.NoError(t, err, "split")
	put(t, j, contact("fish", "anna", at(23, 10)))
	split.Successors = nil
	_, err = j.Amend(split)
	refused(t, err, journal.Conflict, "revisions", "home beat")
}

// Ensure that a corrected sketch that keeps its pools is free to change in all else.
func TestBeatEditKeepsPools(t *testing.T) {
	j, _ := world(t)
	put(t, j, run("run", "anna", at(23, 0)))
	b := homeBeat()
	b.Revisions[0].Shape.Name = "Home Water"
	b.Revisions[0].Shape.Pools[0].Canopy = geo.Closed
	b.Revisions[0].Shape.Pools[0], b.Revisions[0].Shape.Pools[1] = b.Revisions[0].Shape.Pools[1], b.Revisions[0].Shape.Pools[0]
	put(t, j, b)
}
