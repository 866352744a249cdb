package store

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// Ensure that a journal is begun empty, with an identity, and found again.
func TestCreate(t *testing.T) {
	s := fresh(t)
	require.Equal(t, FileName, filepath.Base(s.Path()))
	require.False(t, s.ReadOnly())
	id := s.Copy()
	require.False(t, id.IsZero())
	sound(t, s)
	require.NoError(t, s.db.View(func(tx *bolt.Tx) error {
		m := tx.Bucket(bucketMeta)
		require.Equal(t, "gloamline journal", string(m.Get([]byte("magic"))))
		require.Equal(t, "1", string(m.Get([]byte("format"))))
		require.Equal(t, id.String(), string(m.Get([]byte("copy"))))
		require.Equal(t, "2026-07-05T09:00:00Z", string(m.Get([]byte("created"))))
		return nil
	}))
	require.NoError(t, s.Close())
	require.Equal(t, id, reopen(t, s.Path()).Copy())
	require.NotEqual(t, id, fresh(t).Copy())
	alone(t, s.Path())
}

// alone asserts that a file's folder holds nothing else.
func alone(t testing.TB, path string) {
	t.Helper()
	files, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	require.Len(t, files, 1)
	require.Equal(t, filepath.Base(path), files[0].Name())
}

// Ensure that Create never touches what is there, whatever it is.
func TestCreateTouchesNothing(t *testing.T) {
	for what, text := range map[string]string{"empty": "", "text": "dear diary"} {
		t.Run(what, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), FileName)
			require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
			_, err := Create(path, Options{})
			kind(t, journal.Conflict, err)
			left, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, text, string(left))
			alone(t, path)
		})
	}
	t.Run("a name taken at the last moment", func(t *testing.T) {
		dir := t.TempDir()
		path, temp := filepath.Join(dir, FileName), filepath.Join(dir, "temp")
		require.NoError(t, os.WriteFile(path, []byte("theirs"), 0o600))
		require.NoError(t, os.WriteFile(temp, []byte("ours"), 0o600))
		kind(t, journal.Conflict, publish(temp, path))
		left, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, "theirs", string(left))
	})
	t.Run("a dangling link", func(t *testing.T) {
		path := filepath.Join(t.TempDir(), FileName)
		require.NoError(t, os.Symlink("nowhere", path))
		_, err := Create(path, Options{})
		kind(t, journal.Conflict, err)
	})
	t.Run("no folder", func(t *testing.T) {
		_, err := Create(filepath.Join(t.TempDir(), "none", FileName), Options{})
		kind(t, journal.NotFound, err)
	})
}

// Ensure that what is missing or no plain file is refused and left alone.
func TestOpenOthers(t *testing.T) {
	dir := t.TempDir()
	for _, readOnly := range []bool{false, true} {
		opts := Options{ReadOnly: readOnly}
		_, err := Open(filepath.Join(dir, "missing.gloam"), opts)
		kind(t, journal.NotFound, err)
		_, err = Open(dir, opts)
		kind(t, journal.Foreign, err)
		_, err = Open(os.DevNull, opts)
		kind(t, journal.Foreign, err)
	}
	files, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.Empty(t, files)
}

// Ensure that a file which becomes empty between the look and the opening is
// not filled by bbolt.
func TestNeverFillsAnEmptyFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), FileName)
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	_, err := attach("open", path, Options{}, false)
	kind(t, journal.Foreign, err)
	_, err = attach("open", path+"x", Options{}, false)
	kind(t, journal.NotFound, err)
	info, err := os.Stat(path)
	require.NoError(t, err)
	require.Zero(t, info.Size())
	alone(t, path)
}

// Ensure that a journal open for writing is locked to all, one open for reading
// only to writers, and that waiting has an end.
func TestLocked(t *testing.T) {
	s := written(t, 1, 1, 3)
	quick := Options{Timeout: 60 * time.Millisecond}
	quickRead := Options{Timeout: 60 * time.Millisecond, ReadOnly: true}
	_, err := Open(s.Path(), quick)
	kind(t, journal.Locked, err)
	_, err = Open(s.Path(), quickRead)
	kind(t, journal.Locked, err)
	require.NoError(t, s.Close())

	a, err := Open(s.Path(), quickRead)
	require.NoError(t, err)
	b, err := Open(s.Path(), quickRead)
	require.NoError(t, err)
	_, err = Open(s.Path(), quick)
	kind(t, journal.Locked, err)
	require.NoError(t, a.Close())
	require.NoError(t, b.Close())
	w, err := Open(s.Path(), quick)
	require.NoError(t, err)
	require.NoError(t, w.Close())
}

// Ensure that waiting for the lock lets the next one in once it is given up.
func TestLockIsWaitedFor(t *testing.T) {
	s := fresh(t)
	go func() {
		time.Sleep(100 * time.Millisecond)
		s.Close()
	}()
	again, err := Open(s.Path(), Options{Timeout: 10 * time.Second})
	require.NoError(t, err)
	require.NoError(t, again.Close())
}

// Ensure that a journal opened for reading only tells everything and stores
// nothing.
func TestReadOnly(t *testing.T) {
	s := written(t, 2, 1, 3)
	last, err := s.Last()
	require.NoError(t, err)
	require.NoError(t, s.Close())
	before, err := os.ReadFile(s.Path())
	require.NoError(t, err)

	r, err := Open(s.Path(), Options{ReadOnly: true})
	require.NoError(t, err)
	require.True(t, r.ReadOnly())
	now, err := r.Last()
	require.NoError(t, err)
	require.Equal(t, last, now)
	sound(t, r)
	e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: "Anna"})
	require.NoError(t, err)
	c := &journal.Change{ID: journal.NewID(), Edits: []journal.Edit{{After: &e}}}
	kind(t, journal.ReadOnly, r.Commit(c))
	require.Zero(t, c.Seq)
	require.NoError(t, r.Close())

	after, err := os.ReadFile(s.Path())
	require.NoError(t, err)
	require.Equal(t, before, after)
}
