package album_test

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/album"
	"gloamline/journal/journaltest"
	"gloamline/journal/photo"
)

// lay writes a file into a new folder and returns its path.
func lay(t *testing.T, name string, data []byte) string {
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, data, 0o600))
	return path
}

// within lists all files of a folder, without those that are no files.
func within(t *testing.T, dir string) (out []string) {
	_ = filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			out = append(out, p)
		}
		return nil
	})
	return out
}

// Ensure that an original is kept to the last byte under its sum, once, and that the file
// it came from stays as it was.
func TestKeep(t *testing.T) {
	data := journaltest.Picture(60, 40, "2026:07:04 23:14:30", 1)
	path := lay(t, "fish.JPG", data)
	before, err := os.Stat(path)
	require.NoError(t, err)
	shot, err := album.Look(path)
	require.NoError(t, err)
	assert.Equal(t, "fish.JPG", shot.Name)
	a := album.Beside(filepath.Join(t.TempDir(), "journal.gloam"))
	assert.Equal(t, "journal.photos", filepath.Base(a.Dir()))
	_, ok := a.Find(shot.SHA256)
	assert.False(t, ok)
	for range 2 {
		require.NoError(t, a.Keep(path, shot.SHA256, shot.Format))
		kept, ok := a.Find(shot.SHA256)
		require.True(t, ok)
		got, err := os.ReadFile(kept)
		require.NoError(t, err)
		assert.Equal(t, data, got)
		assert.Equal(t, filepath.Join(a.Dir(), shot.SHA256[:2], shot.SHA256+".jpg"), kept)
		assert.Len(t, within(t, a.Dir()), 1)
	}
	after, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, before.ModTime(), after.ModTime())
	assert.Equal(t, before.Size(), after.Size())
}

// Ensure that a file that was changed since it was read is not kept under the old sum, and
// that nothing of it stays in the folder.
func TestKeepRefusesWhatChanged(t *testing.T) {
	path := lay(t, "a.jpg", journaltest.Picture(60, 40, "", 1))
	shot, err := album.Look(path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, journaltest.Picture(60, 40, "", 2), 0o600))
	a := album.Beside(filepath.Join(t.TempDir(), "journal.gloam"))
	assert.ErrorIs(t, a.Keep(path, shot.SHA256, shot.Format), album.ErrChanged)
	assert.Empty(t, within(t, a.Dir()))
	require.NoError(t, os.Remove(path))
	assert.ErrorIs(t, a.Keep(path, shot.SHA256, shot.Format), fs.ErrNotExist)
	assert.Empty(t, within(t, a.Dir()))
}

// Ensure that a kept original that was damaged is laid down anew.
func TestKeepMends(t *testing.T) {
	data := journaltest.Picture(60, 40, "", 1)
	path := lay(t, "a.jpg", data)
	shot, err := album.Look(path)
	require.NoError(t, err)
	a := album.Beside(filepath.Join(t.TempDir(), "journal.gloam"))
	require.NoError(t, a.Keep(path, shot.SHA256, shot.Format))
	kept, _ := a.Find(shot.SHA256)
	require.NoError(t, os.WriteFile(kept, []byte("half"), 0o600))
	require.NoError(t, a.Keep(path, shot.SHA256, shot.Format))
	got, err := os.ReadFile(kept)
	require.NoError(t, err)
	assert.Equal(t, data, got)
}

// Ensure that what is no fingerprint never becomes a path.
func TestKeepTakesSumsOnly(t *testing.T) {
	path := lay(t, "a.jpg", journaltest.Picture(60, 40, "", 1))
	a := album.Beside(filepath.Join(t.TempDir(), "journal.gloam"))
	for _, sum := range []string{"", "../../evil", strings.Repeat("g", 64), strings.Repeat("A", 64), strings.Repeat("a", 63)} {
		assert.ErrorIs(t, a.Keep(path, sum, photo.JPEG), album.ErrSum, sum)
		_, ok := a.Find(sum)
		assert.False(t, ok, sum)
	}
	assert.Empty(t, within(t, a.Dir()))
}

// Ensure that a backup takes the originals it lacks, each once, and leaves what is not
// ours alone.
func TestCopyTo(t *testing.T) {
	dir := t.TempDir()
	a, b := album.Beside(filepath.Join(dir, "journal.gloam")), album.Beside(filepath.Join(dir, "copy.gloam"))
	n, err := a.CopyTo(b)
	require.NoError(t, err, "no photos yet")
	assert.Zero(t, n)
	for shade := range uint8(3) {
		path := lay(t, "a.jpg", journaltest.Picture(60, 40, "", shade))
		shot, err := album.Look(path)
		require.NoError(t, err)
		require.NoError(t, a.Keep(path, shot.SHA256, shot.Format))
	}
	require.NoError(t, os.WriteFile(filepath.Join(a.Dir(), "notes.txt"), []byte("mine"), 0o600))
	n, err = a.CopyTo(b)
	require.NoError(t, err)
	assert.Equal(t, 3, n)
	assert.Len(t, within(t, b.Dir()), 3)
	n, err = a.CopyTo(b)
	require.NoError(t, err)
	assert.Zero(t, n, "they are there")
}

// Ensure that looking says when by the camera's clock, makes a small copy that holds
// nothing but pixels, and refuses folders and other files.
func TestLook(t *testing.T) {
	s, err := album.Look(filepath.Join("..", "photo", "testdata", "full.jpg"))
	require.NoError(t, err)
	assert.True(t, s.Taken.Known())
	assert.True(t, s.Fresh())
	require.NotEmpty(t, s.Thumb)
	assert.False(t, bytes.Contains(s.Thumb, []byte("Exif")))
	s, err = album.Look(lay(t, "a.jpg", journaltest.Picture(60, 40, "2026:07:04 23:14:30", 1)))
	require.NoError(t, err)
	assert.Equal(t, time.Date(2026, 7, 4, 23, 14, 30, 0, time.UTC), s.Taken.Wall)
	s, err = album.Look(filepath.Join("..", "photo", "testdata", "full.heic"))
	require.NoError(t, err)
	assert.Empty(t, s.Thumb)
	assert.Error(t, s.NoThumb)
	_, err = album.Look(lay(t, "a.txt", []byte("words")))
	assert.ErrorIs(t, err, photo.ErrFormat)
	_, err = album.Look(t.TempDir())
	assert.ErrorIs(t, err, fs.ErrInvalid)
}
