package store

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a backup tells everything the journal told when it was made, and
// nothing of what came later, and that an earlier one is replaced.
func TestBackup(t *testing.T) {
	s := written(t, 5, 2, 10)
	path := filepath.Join(t.TempDir(), "backup.gloam")
	was := tell(t, s)
	require.NoError(t, s.Backup(path))
	require.NoError(t, s.Commit(personChange(t, s, "Anna")))
	is := tell(t, s)
	require.NotEqual(t, was, is)
	b := reopen(t, path)
	sound(t, b)
	require.Equal(t, was, tell(t, b))
	require.NoError(t, b.Close())
	alone(t, path)

	require.NoError(t, s.Backup(path))
	require.Equal(t, is, tell(t, reopen(t, path)))
	alone(t, path)
}

// Ensure that a backup is refused where it would harm: over the journal itself,
// over what is no journal, over a damaged one, and in a folder that is not there.
func TestBackupRefuses(t *testing.T) {
	s := written(t, 5, 1, 3)
	kind(t, journal.Conflict, s.Backup(s.Path()))
	link := filepath.Join(t.TempDir(), "link.gloam")
	require.NoError(t, os.Symlink(s.Path(), link))
	kind(t, journal.Conflict, s.Backup(link))
	hard := s.Path() + ".hard"
	require.NoError(t, os.Link(s.Path(), hard))
	kind(t, journal.Conflict, s.Backup(hard))

	for name, want := range map[string]journal.Fail{"text.gloam": journal.Foreign, "empty.gloam": journal.Foreign, "half.gloam": journal.Corrupt} {
		path := fixture(t, name)
		before, err := os.ReadFile(path)
		require.NoError(t, err)
		kind(t, want, s.Backup(path))
		after, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, before, after)
		alone(t, path)
	}
	kind(t, journal.Foreign, s.Backup(t.TempDir()))
	kind(t, journal.NotFound, s.Backup(filepath.Join(t.TempDir(), "none", "backup.gloam")))
	sound(t, s)
}

// Ensure that a journal opened for reading only can be backed up.
func TestBackupReadOnly(t *testing.T) {
	s := written(t, 5, 1, 3)
	was := tell(t, s)
	require.NoError(t, s.Close())
	r, err := Open(s.Path(), Options{ReadOnly: true})
	require.NoError(t, err)
	defer r.Close()
	path := filepath.Join(t.TempDir(), "backup.gloam")
	require.NoError(t, r.Backup(path))
	require.Equal(t, was, tell(t, reopen(t, path)))
}
