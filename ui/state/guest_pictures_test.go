package state

import (
	"bytes"
	"image/jpeg"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/photo"
)

// Ensure that photos are shown small until larger copies of their originals were made, and
// larger from then on; that each is asked for once, none where photos are hidden; and that
// one without an original stays small.
func TestGuestLargerPictures(t *testing.T) {
	d, g := guestOnDemo(t)
	dir := t.TempDir()
	a := album.Beside(filepath.Join(dir, "j.gloam"))
	d.SetAlbum(a)
	all, err := demo.Originals()
	require.NoError(t, err)
	path := filepath.Join(dir, all[1].Name) // the first one's original is not there
	require.NoError(t, os.WriteFile(path, all[1].JPEG, 0o600))
	require.NoError(t, a.Keep(path, all[1].SHA256, photo.JPEG))

	g.Handout()
	assert.Nil(t, g.Enlarge(), "photos are hidden")
	require.NoError(t, g.Toggle(journal.ShowPhoto))
	wide := func() (out []int) {
		for _, p := range g.Handout().Photos() {
			c, err := jpeg.DecodeConfig(bytes.NewReader(p.JPEG))
			require.NoError(t, err)
			out = append(out, c.Width)
		}
		return out
	}
	assert.Equal(t, []int{512, 512}, wide())
	work := g.Enlarge()
	require.NotNil(t, work)
	assert.Nil(t, g.Enlarge(), "it is under way")
	g.Enlarged(work())
	assert.Equal(t, []int{512, 1280}, wide())
	assert.Nil(t, g.Enlarge())
	require.NoError(t, g.Toggle(journal.ShowPools))
	assert.Equal(t, []int{512, 1280}, wide())
	assert.Nil(t, g.Enlarge())
}
