package journal_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

func fromTrack(r journal.Run, key string) journal.Run {
	r.From = journal.Origin{How: "track", Source: id("watch"), Key: key}
	return r
}

func accepted(word string, of journal.Ref) journal.Decision {
	return journal.Decision{ID: id(word), Key: word, Verdict: journal.Accepted, Entry: of}
}

func verdict(t *testing.T, j *journal.Journal, word string) journal.Verdict {
	t.Helper()
	return get[journal.Decision](t, j, journal.Decision{ID: id(word)}).Verdict
}

// Ensure that a proposal counts as deleted once what it became is removed, in the same
// change, and as accepted again once that is undone; others are left alone.
func TestRemovedProposal(t *testing.T) {
	j, _ := world(t)
	one := until(fromTrack(run("one", "anna", at(22, 0)), "k1"), at(22, 30))
	two := until(fromTrack(run("two", "anna", at(23, 0)), "k2"), at(23, 30))
	put(t, j, one, two, accepted("k1", one.Ref()), accepted("k2", two.Ref()),
		journal.Decision{ID: id("k3"), Key: "k3", Verdict: journal.Rejected, Entry: one.Ref()})
	c, err := j.Remove(one.Ref())
	require.NoError(t, err)
	assert.Len(t, c.Edits, 2)
	assert.Equal(t, journal.Deleted, verdict(t, j, "k1"))
	assert.Equal(t, journal.Accepted, verdict(t, j, "k2"))
	assert.Equal(t, journal.Rejected, verdict(t, j, "k3"))
	_, err = j.Undo()
	require.NoError(t, err)
	assert.Equal(t, journal.Accepted, verdict(t, j, "k1"))
	_, err = j.Redo()
	require.NoError(t, err)
	assert.Equal(t, journal.Deleted, verdict(t, j, "k1"))
}

// Ensure that so does what goes with its night, and a track or a series by itself.
func TestRemovedWithItsNight(t *testing.T) {
	j, _ := world(t)
	one := until(fromTrack(run("one", "anna", at(22, 0)), "k1"), at(22, 30))
	track, series := journal.Track{ID: id("track")}, journal.Series{ID: id("series"), What: "level", Unit: "m"}
	put(t, j, one, track, series, accepted("k1", one.Ref()), accepted("k2", track.Ref()), accepted("k3", series.Ref()))
	_, err := j.Remove(journal.Ref{Kind: journal.KindTrip, ID: id("trip")})
	require.NoError(t, err)
	assert.Equal(t, journal.Deleted, verdict(t, j, "k1"))
	for word, r := range map[string]journal.Ref{"k2": track.Ref(), "k3": series.Ref()} {
		_, err = j.Remove(r)
		require.NoError(t, err)
		assert.Equal(t, journal.Deleted, verdict(t, j, word))
	}
}

// Ensure that what the act itself says of a decision holds.
func TestRemovedWithItsDecision(t *testing.T) {
	j, _ := world(t)
	one := fromTrack(run("one", "anna", at(22, 0)), "k1")
	put(t, j, one, accepted("k1", one.Ref()))
	d := accepted("k1", one.Ref())
	d.Verdict = journal.Rejected
	_, err := j.Do("import", journal.Batch{Put: []journal.Record{d}, Remove: []journal.Ref{one.Ref()}})
	require.NoError(t, err)
	assert.Equal(t, journal.Rejected, verdict(t, j, "k1"))
}
