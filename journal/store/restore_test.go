package store

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a restored copy tells all that the original does, that looking at it
// first says what it holds, and that the original stays as it is.
func TestRestore(t *testing.T) {
	s := written(t, 1, 4, 30)
	want := tell(t, s)
	outline, err := journal.OutlineOf(s)
	require.NoError(t, err)
	require.Equal(t, 4, outline.Nights)
	require.NoError(t, s.Close())
	before, err := os.ReadFile(s.Path())
	require.NoError(t, err)

	got, err := OutlineOf(s.Path())
	require.NoError(t, err)
	require.Equal(t, outline, got)
	to := filepath.Join(t.TempDir(), "again.gloam")
	require.NoError(t, Restore(s.Path(), to))
	require.Equal(t, want, tell(t, reopen(t, to)))
	alone(t, to)
	after, err := os.ReadFile(s.Path())
	require.NoError(t, err)
	require.Equal(t, before, after)
}

// Ensure that a file that exists is never restored over, whatever it is.
func TestRestoreNeverOver(t *testing.T) {
	s := written(t, 1, 1, 3)
	require.NoError(t, s.Close())
	for _, to := range []string{s.Path(), fixture(t, "empty.gloam")} {
		before, err := os.ReadFile(to)
		require.NoError(t, err)
		kind(t, journal.Conflict, Restore(s.Path(), to))
		after, err := os.ReadFile(to)
		require.NoError(t, err)
		require.Equal(t, before, after)
	}
}

// Ensure that nothing is restored from a file that is not whole, nor called whole.
func TestRestoreRefuses(t *testing.T) {
	to := filepath.Join(t.TempDir(), "again.gloam")
	for _, d := range damagedFiles {
		_, err := OutlineOf(fixture(t, d.name))
		kind(t, d.want, err)
		kind(t, d.want, Restore(fixture(t, d.name), to))
	}
	_, err := OutlineOf(fixture(t, "flipped.gloam"))
	kind(t, journal.Corrupt, err)
	kind(t, journal.Corrupt, Restore(fixture(t, "flipped.gloam"), to))
	_, err = os.Stat(to)
	require.True(t, os.IsNotExist(err))
	left, err := os.ReadDir(filepath.Dir(to))
	require.NoError(t, err)
	require.Empty(t, left)
}
