package store

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// The table of the program as it may be some day.
func later(order *[]int, fail error) table {
	step := func(to int) migration {
		return migration{to, "a test", func(tx *bolt.Tx) error {
			*order = append(*order, to)
			if err := tx.Bucket(bucketMeta).Put([]byte{byte(to)}, []byte("done")); err != nil {
				return err
			}
			if to == 3 {
				return fail
			}
			return nil
		}}
	}
	return table{step(2), step(3)}
}

// Ensure that a journal of an earlier format is brought up to the present one,
// step by step and once, after a copy has been laid beside it.
func TestMigrate(t *testing.T) {
	path := fixture(t, "v1.gloam")
	was := tell(t, reopenAndClose(t, path))
	var order []int
	steps := later(&order, nil)
	s, err := open(path, Options{}, steps)
	require.NoError(t, err)
	require.Equal(t, []int{2, 3}, order)
	require.Equal(t, was, tell(t, s))
	require.NoError(t, s.db.View(func(tx *bolt.Tx) error {
		require.Equal(t, "3", string(tx.Bucket(bucketMeta).Get(keyFormat)))
		require.Equal(t, "done", string(tx.Bucket(bucketMeta).Get([]byte{3})))
		return nil
	}))
	require.NoError(t, s.Close())

	// The copy is the journal as it was, and this program can read it.
	copied := path + ".before-v3"
	require.Equal(t, was, tell(t, reopenAndClose(t, copied)))

	// A second opening does nothing more; this program refuses the new format.
	s, err = open(path, Options{}, steps)
	require.NoError(t, err)
	require.NoError(t, s.Close())
	require.Equal(t, []int{2, 3}, order)
	_, err = Open(path, Options{})
	kind(t, journal.Newer, err)
	files, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	require.Len(t, files, 2)
}

// reopenAndClose returns a store that can be told from while the test's copy of
// the file is left closed afterwards.
func reopenAndClose(t testing.TB, path string) *Store {
	s, err := Open(path, Options{ReadOnly: true})
	require.NoError(t, err)
	t.Cleanup(func() { s.Close() })
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, s.Close())
	twin := filepath.Join(t.TempDir(), "twin")
	require.NoError(t, os.WriteFile(twin, b, 0o600))
	return reopen(t, twin)
}

// Ensure that a step that fails leaves the journal as it was, and that a copy
// laid beside it earlier is kept.
func TestMigrateFails(t *testing.T) {
	path := fixture(t, "v1.gloam")
	require.NoError(t, os.WriteFile(path+".before-v3", []byte("an earlier copy"), 0o600))
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	was := tell(t, reopenAndClose(t, path))
	var order []int
	bang := errors.New("bang")
	_, err = open(path, Options{}, later(&order, bang))
	kind(t, journal.Internal, err)
	require.ErrorIs(t, err, bang)
	require.Equal(t, was, tell(t, reopenAndClose(t, path)))
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, trimmedBytes(t, before), trimmedBytes(t, after))

	kept, err := os.ReadFile(path + ".before-v3")
	require.NoError(t, err)
	require.Equal(t, "an earlier copy", string(kept))
	require.Equal(t, was, tell(t, reopenAndClose(t, path+".before-v3-2")))
}

// Ensure that a journal of an earlier format cannot be opened for reading only,
// is not touched, and the error says what to do.
func TestMigrateReadOnly(t *testing.T) {
	path := fixture(t, "v1.gloam")
	var order []int
	_, err := open(path, Options{ReadOnly: true}, later(&order, nil))
	kind(t, journal.ReadOnly, err)
	require.Contains(t, err.Error(), "open it for writing once")
	require.Empty(t, order)
	alone(t, path)
}

// Ensure that the table of this program has no gaps.
func TestTable(t *testing.T) {
	for i, m := range present {
		require.Equal(t, firstFormat+1+i, m.to)
		require.NotEmpty(t, m.name)
		require.NotNil(t, m.up)
	}
}
