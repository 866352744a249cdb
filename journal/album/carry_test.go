package album_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/album"
	"gloamline/journal/journaltest"
)

// kept is an album with three originals, and their names in it.
func kept(t *testing.T) (*album.Album, []string) {
	a := album.Beside(filepath.Join(t.TempDir(), "journal.gloam"))
	for shade := range uint8(3) {
		path := lay(t, "a.jpg", journaltest.Picture(60, 40, "", shade))
		shot, err := album.Look(path)
		require.NoError(t, err)
		require.NoError(t, a.Keep(path, shot.SHA256, shot.Format))
	}
	all, err := a.All()
	require.NoError(t, err)
	require.Len(t, all, 3)
	var names []string
	for _, o := range all {
		names = append(names, o.Name())
		assert.Equal(t, filepath.Join(a.Dir(), filepath.FromSlash(o.Name())), o.Path)
		assert.Positive(t, o.Bytes)
	}
	return a, names
}

// Ensure that originals have a second name that takes no room and outlives the first, and
// that linking again adds none.
func TestLinkTo(t *testing.T) {
	a, names := kept(t)
	b := album.In(filepath.Join(filepath.Dir(a.Dir()), "second"))
	for i, want := range []int{3, 0} {
		n, err := a.LinkTo(b)
		require.NoError(t, err, i)
		assert.Equal(t, want, n)
	}
	one, err := os.Stat(filepath.Join(a.Dir(), names[0]))
	require.NoError(t, err)
	two, err := os.Stat(filepath.Join(b.Dir(), names[0]))
	require.NoError(t, err)
	assert.True(t, os.SameFile(one, two))
	require.NoError(t, os.RemoveAll(a.Dir()))
	bad, err := b.Damaged()
	require.NoError(t, err)
	assert.Empty(t, bad)
	all, err := b.All()
	require.NoError(t, err)
	assert.Len(t, all, 3)
}

// Ensure that an original whose bytes are not those of its name is found, whatever else
// lies in the folder.
func TestDamaged(t *testing.T) {
	a, names := kept(t)
	require.NoError(t, os.WriteFile(filepath.Join(a.Dir(), "notes.txt"), []byte("mine"), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(a.Dir(), names[1]), []byte("half"), 0o600))
	bad, err := a.Damaged()
	require.NoError(t, err)
	require.Len(t, bad, 1)
	assert.Equal(t, names[1], bad[0].Name())
}

// Ensure that what is laid down by name is proved by it, and that no name leads out of the
// folder.
func TestLay(t *testing.T) {
	a, names := kept(t)
	data, err := os.ReadFile(filepath.Join(a.Dir(), names[0]))
	require.NoError(t, err)
	b := album.In(filepath.Join(t.TempDir(), "b"))
	for _, want := range []bool{true, false} {
		added, err := b.Lay(bytes.NewReader(data), names[0])
		require.NoError(t, err)
		assert.Equal(t, want, added)
	}
	_, err = b.Lay(bytes.NewReader(data), names[1])
	assert.ErrorIs(t, err, album.ErrChanged)
	for _, name := range []string{"", "../" + names[0], names[0][3:], "zz" + names[0][2:], names[0] + ".exe", "ab/../" + names[0]} {
		_, err = b.Lay(bytes.NewReader(data), name)
		assert.ErrorIs(t, err, album.ErrSum, name)
	}
	assert.Len(t, within(t, b.Dir()), 1)
}
