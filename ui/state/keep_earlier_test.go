package state

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/store"
)

// Ensure that the journal of the first format, whose beats are of version 1, opens and is read without a byte of
// it changing; that a note on a beat makes that record version 2 and no other; that the version before stays in the
// history and comes back by undo; and that a backup, an archive and a merge of it hold the same.
func TestEarlierJournal(t *testing.T) {
	b, err := os.ReadFile(filepath.Join("..", "..", "testdata", "journals", "v1.gloam"))
	require.NoError(t, err)
	dir := t.TempDir()
	path, old := filepath.Join(dir, "mine.gloam"), filepath.Join(dir, "old.gloam")
	require.NoError(t, os.WriteFile(path, b, 0o600))
	require.NoError(t, os.WriteFile(old, b, 0o600))

	now := func() time.Time { return keepNow }
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	defer func() { s.Close() }()
	j, err := journal.Open(s, now)
	require.NoError(t, err)
	d := New(j, now)
	k := NewKeep(d, s)
	beats, err := d.NoticedBeats()
	require.NoError(t, err)
	require.NotEmpty(t, beats)
	ref := journal.Ref{Kind: journal.KindBeat, ID: beats[0].ID}
	was, err := s.Get(ref)
	require.NoError(t, err)
	require.Equal(t, 1, was.Version)
	r, err := k.Read()
	require.NoError(t, err)
	_, err = r.ReadFished()
	require.NoError(t, err)
	same, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, b, same, "reading changes nothing")

	before := map[journal.Ref]journal.Envelope{}
	for _, kind := range journal.RecordKinds {
		list, err := s.List(kind)
		require.NoError(t, err)
		for _, e := range list {
			before[e.Ref()] = e
		}
	}
	note := journal.Notice{Words: "hooks without barbs", Checked: journal.Date{Year: 2026, Month: 10, Day: 1}}
	require.NoError(t, d.SetNotices(ref.ID, []journal.Notice{note}))
	is, err := s.Get(ref)
	require.NoError(t, err)
	assert.Equal(t, 2, is.Version)
	for r, e := range before {
		now, err := s.Get(r)
		require.NoError(t, err)
		assert.Equal(t, r != ref, now.Equal(e), "%v", r)
	}
	last, err := s.Last()
	require.NoError(t, err)
	cs, err := s.Changes(last-1, 1)
	require.NoError(t, err)
	require.True(t, cs[0].Edits[0].Before.Equal(was), "the version before stays as it was")

	for _, to := range []string{"copy.gloam", "text.json"} {
		to = filepath.Join(dir, to)
		if filepath.Ext(to) == ".json" {
			_, err = k.WriteArchive(frozen(t, k), to, keepNow)
			require.NoError(t, err)
			back := filepath.Join(dir, "back.gloam")
			require.NoError(t, k.Extract(to, back))
			to = back
		} else {
			require.NoError(t, s.Backup(to))
		}
		seen, err := SeeOne(to, frozen(t, k))
		require.NoError(t, err)
		assert.True(t, seen.Differs.Same(), to)
	}
	m, err := LookAt(old, frozen(t, k))
	require.NoError(t, err)
	assert.True(t, m.Empty(), "the earlier copy has nothing that this one lacks")

	require.NoError(t, d.Undo())
	back, err := journal.One[journal.Beat](j, ref.ID)
	require.NoError(t, err)
	assert.Empty(t, back.Notices)
	faults, err := j.Check()
	require.NoError(t, err)
	assert.Empty(t, faults)
}
