package state

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/journaltest"
	"gloamline/journal/store"
	"gloamline/timeline"
)

var keepNow = time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC)

// livedFile is a journal in a file after some random acts, open.
func livedFile(t *testing.T, seed uint64, acts int) (*Keep, *store.Store, *journal.Journal) {
	t.Helper()
	now := func() time.Time { return keepNow }
	s, err := store.Create(filepath.Join(t.TempDir(), "mine.gloam"), store.Options{Now: now})
	require.NoError(t, err)
	t.Cleanup(func() { s.Close() })
	j, err := journal.Open(s, now)
	require.NoError(t, err)
	journaltest.New(seed).Life(j).Acts(acts)
	return NewKeep(New(j, now), s), s, j
}

func frozen(t *testing.T, k *Keep) *Frozen {
	t.Helper()
	f, err := k.Freeze()
	require.NoError(t, err)
	return f
}

// same reports whether two files hold the same.
func sameFiles(t *testing.T, a, b string) bool {
	t.Helper()
	x, err := store.Open(a, store.Options{ReadOnly: true})
	require.NoError(t, err)
	defer x.Close()
	y, err := store.Open(b, store.Options{ReadOnly: true})
	require.NoError(t, err)
	defer y.Close()
	d, err := journal.Differ(x, y)
	require.NoError(t, err)
	return d.Same()
}

// Ensure that whatever a journal holds, its backup, its text and its text with photographs
// each make the same journal again, in a new file and in the journal's place; that what was
// written since is told before and kept after.
func TestEveryCopyComesBack(t *testing.T) {
	for seed := range uint64(5) {
		k, s, j := livedFile(t, seed, 6+3*int(seed))
		dir := t.TempDir()
		copies := []string{filepath.Join(dir, "copy.gloam"), filepath.Join(dir, "copy.json"), filepath.Join(dir, "copy.zip")}
		require.NoError(t, s.Backup(copies[0]))
		for _, c := range copies[1:] {
			a, err := k.WriteArchive(frozen(t, k), c, keepNow)
			require.NoError(t, err)
			require.Positive(t, a.Changes)
			_, err = k.WriteArchive(frozen(t, k), c, keepNow)
			require.Error(t, err, "never over another file")
		}
		_, err := j.Log(journal.Person{ID: journal.NewID(), Name: "Isla"})
		require.NoError(t, err)
		for _, c := range copies {
			v, err := SeeOne(c, frozen(t, k))
			require.NoError(t, err, c)
			require.Equal(t, journal.Part{Records: 1}, v.Differs.Second, c)
			require.True(t, v.Differs.First.Empty(), c)
			require.NoError(t, k.Extract(c, c+"-again.gloam"))
			require.True(t, sameFiles(t, copies[0], c+"-again.gloam"), c)
		}
		require.NoError(t, s.Close())
		today, err := os.ReadFile(s.Path())
		require.NoError(t, err)
		for _, c := range copies {
			require.NoError(t, os.WriteFile(s.Path(), today, 0o600))
			kept, err := PutBack(s.Path(), c, keepNow)
			require.NoError(t, err, c)
			require.True(t, sameFiles(t, copies[0], s.Path()), c)
			was, err := os.ReadFile(kept)
			require.NoError(t, err)
			require.True(t, bytes.Equal(today, was), "today's journal is kept, whole")
		}
		left, err := filepath.Glob(filepath.Join(filepath.Dir(s.Path()), ".restore-*"))
		require.NoError(t, err)
		require.Empty(t, left)
	}
}

// Ensure that a damaged, a foreign and a later file is refused for what it is by all that
// read copies, and that the journal stays as it was.
func TestKeepRefuses(t *testing.T) {
	k, s, j := livedFile(t, 1, 8)
	dir := t.TempDir()
	whole := filepath.Join(dir, "whole.json")
	_, err := k.WriteArchive(frozen(t, k), whole, keepNow)
	require.NoError(t, err)
	text, err := os.ReadFile(whole)
	require.NoError(t, err)
	last, err := s.Last()
	require.NoError(t, err)
	for name, c := range map[string]struct {
		data []byte
		want journal.Fail
	}{
		"cut.json":     {text[:len(text)/2], journal.Corrupt},
		"later.json":   {bytes.Replace(text, []byte(`archive":1`), []byte(`archive":2`), 1), journal.Newer},
		"other.json":   {[]byte(`{"type":"FeatureCollection"}`), journal.Foreign},
		"diary.gloam":  {[]byte("Dear diary,\n"), journal.Foreign},
		"broken.zip":   {append([]byte("PK\x03\x04"), make([]byte, 400)...), journal.Corrupt},
		"missing.json": {nil, journal.NotFound},
	} {
		path := filepath.Join(dir, name)
		if c.data != nil {
			require.NoError(t, os.WriteFile(path, c.data, 0o600))
		}
		_, err := SeeOne(path, frozen(t, k))
		assert.Equal(t, c.want, journal.KindOf(err), "%s: %v", name, err)
		err = k.Extract(path, filepath.Join(dir, name+"-made.gloam"))
		assert.Equal(t, c.want, journal.KindOf(err), "%s: %v", name, err)
		assert.NoFileExists(t, filepath.Join(dir, name+"-made.gloam"))
		_, err = PutBack(s.Path(), path, keepNow)
		assert.Error(t, err, name)
	}
	_, err = LookAt(filepath.Join(dir, "diary.gloam"), frozen(t, k))
	assert.Equal(t, journal.Foreign, journal.KindOf(err))
	now, err := s.Last()
	require.NoError(t, err)
	assert.Equal(t, last, now)
	faults, err := j.Check()
	require.NoError(t, err)
	assert.Empty(t, faults)
}

// Ensure that the check tells of what is sound and of a photograph that is not.
func TestKeepCheck(t *testing.T) {
	k, s, _ := livedFile(t, 2, 8)
	check := func() Checked {
		t.Helper()
		r, err := k.Read()
		require.NoError(t, err)
		c, err := r.Check()
		require.NoError(t, err)
		return c
	}
	c := check()
	assert.True(t, c.Sound())
	assert.Positive(t, c.Changes)
	sum := "ab" + string(bytes.Repeat([]byte("0"), 62))
	bad := filepath.Join(filepath.Dir(k.Path()), "mine.photos", "ab", sum+".jpg")
	require.NoError(t, os.MkdirAll(filepath.Dir(bad), 0o700))
	require.NoError(t, os.WriteFile(bad, []byte("no picture"), 0o600))
	c = check()
	assert.False(t, c.Sound())
	assert.Equal(t, []string{bad}, c.Damaged)
	assert.Equal(t, 1, c.Photos)
	require.NoError(t, s.Close(), "nothing that was read holds the file")
}

// Ensure that what is read whole is the journal as it stood when that began, though something is
// written meanwhile, that it can be stopped, and that either way the journal is given back.
func TestReading(t *testing.T) {
	k, s, j := livedFile(t, 4, 20)
	want, err := timeline.ReadFished(j)
	require.NoError(t, err)
	r, err := k.Read()
	require.NoError(t, err)
	var got *timeline.Fished
	done := make(chan error)
	go func() { var err error; got, err = r.ReadFished(); done <- err }()
	_, err = j.Log(journal.Person{ID: journal.NewID(), Name: "Isla"}) // which may wait for the reader
	require.NoError(t, err)
	require.NoError(t, <-done)
	assert.Equal(t, want, got)

	for name, work := range map[string]func(*Reading) error{
		"check":   func(r *Reading) error { _, err := r.Check(); return err },
		"returns": func(r *Reading) error { _, err := r.ReadFished(); return err },
	} {
		r, err := k.Read()
		require.NoError(t, err)
		r.Stop()
		assert.ErrorIs(t, work(r), ErrStopped, name)
	}
	require.NoError(t, s.Close(), "nothing that was read holds the file")
}
