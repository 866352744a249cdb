package album_test

import (
	"bytes"
	"image/jpeg"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/album"
	"gloamline/journal/journaltest"
)

// Ensure that a larger copy is made of a kept original, and of one that lies elsewhere as
// long as it is the same; that it is no larger than it may be; and that it says nothing of
// the camera.
func TestLarger(t *testing.T) {
	path := lay(t, "fish.jpg", journaltest.Picture(3000, 2000, "2026:07:04 23:14:30", 1))
	shot, err := album.Look(path)
	require.NoError(t, err)
	a := album.Beside(filepath.Join(t.TempDir(), "journal.gloam"))
	size := func(b []byte) [2]int {
		c, err := jpeg.DecodeConfig(bytes.NewReader(b))
		require.NoError(t, err)
		return [2]int{c.Width, c.Height}
	}
	_, err = a.Larger(shot.SHA256, "")
	assert.ErrorIs(t, err, album.ErrNoOriginal)
	_, err = a.Larger("none", path)
	assert.ErrorIs(t, err, album.ErrNoOriginal)
	linked, err := a.Larger(shot.SHA256, path)
	require.NoError(t, err)
	assert.Equal(t, [2]int{1440, 960}, size(linked))
	assert.NotContains(t, string(linked), "2026")
	assert.NotContains(t, string(linked), "Exif")
	require.NoError(t, a.Keep(path, shot.SHA256, shot.Format))

	require.NoError(t, os.WriteFile(path, journaltest.Picture(30, 20, "", 2), 0o600))
	kept, err := a.Larger(shot.SHA256, path)
	require.NoError(t, err, "the copy in the folder comes first")
	assert.Equal(t, linked, kept)
	_, err = album.In(t.TempDir()).Larger(shot.SHA256, path)
	assert.ErrorIs(t, err, album.ErrChanged)
	var none *album.Album
	_, err = none.Larger(shot.SHA256, path)
	assert.ErrorIs(t, err, album.ErrChanged, "without a folder the link counts alone")
}
