package state

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/journaltest"
)

// picture lays a made-up picture down and returns its path.
func (k *kit) picture(name, taken string, shade uint8) string {
	path := filepath.Join(k.t.TempDir(), name)
	require.NoError(k.t, os.WriteFile(path, journaltest.Picture(80, 60, taken, shade), 0o600))
	return path
}

// album gives the desk a place for originals.
func (k *kit) album() *album.Album {
	a := album.Beside(filepath.Join(k.t.TempDir(), "journal.gloam"))
	k.d.SetAlbum(a)
	return a
}

func value(t *testing.T, c *Card, id string) string {
	f, ok := c.Field(id)
	require.True(t, ok, id)
	return f.Value
}

// Ensure that a picture proposes when it was taken by the camera's clock, in the beat's
// zone, and the contact nearest to that, and is copied to the last byte before the entry
// is stored.
func TestPhotoCard(t *testing.T) {
	k := newKit(t)
	k.night(false)
	a := k.album()
	k.d.Select(journal.Ref{})
	fish := k.add(journal.KindContact, "when", "23:12", "pool", "Alder Pool")
	k.d.Select(journal.Ref{})
	k.d.SetCursor(k.at("22:00"))
	path := k.picture("fish.jpg", "2026:07:04 23:14:30", 1)
	c, err := k.d.AddCard(journal.KindPhoto)
	require.NoError(t, err)
	assert.Equal(t, "22:00", value(t, c, "when"), "the cursor until a picture is chosen")
	assert.ErrorIs(t, c.Commit(), ErrUnfinished)
	f, _ := c.Field("file")
	assert.NotEmpty(t, f.Error, "the picture is what is missing")
	c.Set("file", path)
	assert.Equal(t, "23:14", value(t, c, "when"))
	assert.Equal(t, fish.Base().ID.String(), value(t, c, "of"))
	f, _ = c.Field("file")
	assert.NotEmpty(t, f.Picture)
	require.NoError(t, c.Commit())
	got := k.photo(c.Ref())
	assert.Equal(t, journal.Exact(k.at("23:14")), got.When)
	assert.Equal(t, "photo", got.From.How)
	assert.Equal(t, "fish.jpg", got.Name)
	assert.Equal(t, journal.Of(fish.Base().ID), got.Of)
	assert.True(t, got.Copied)
	assert.Empty(t, got.Link, "the copy is the original")
	assert.NotEmpty(t, got.Thumb)
	assert.False(t, got.Spot.Known(), "no place is taken from a picture")
	kept, ok := a.Find(got.SHA256)
	require.True(t, ok)
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	have, err := os.ReadFile(kept)
	require.NoError(t, err)
	assert.Equal(t, want, have)

	// Undo takes the entry away and leaves the copy: redo needs it.
	require.NoError(t, k.d.Undo())
	_, err = k.j.Get(c.Ref())
	assert.Error(t, err)
	require.NoError(t, k.d.Redo())
	assert.Equal(t, got, k.photo(c.Ref()))
	_, ok = a.Find(got.SHA256)
	assert.True(t, ok)
}

func (k *kit) photo(r journal.Ref) journal.Photo {
	e, err := k.j.Get(r)
	require.NoError(k.t, err)
	return e.(journal.Photo)
}

// Ensure that a link copies nothing, that a link can later become a copy, and that what
// was typed over the camera's clock counts as typed.
func TestPhotoLinked(t *testing.T) {
	k := newKit(t)
	k.night(false)
	a := k.album()
	path := k.picture("trees.jpg", "2026:07:04 22:50:00", 2)
	c, err := k.d.AddCard(journal.KindPhoto)
	require.NoError(t, err)
	c.Set("file", `"`+path+`"`) // as a file manager copies a name
	c.Set("copied", "link")
	c.Set("when", "22:40")
	c.Set("of", "")
	require.NoError(t, c.Commit())
	got := k.photo(c.Ref())
	assert.Equal(t, path, got.Link)
	assert.False(t, got.Copied)
	assert.Empty(t, got.From.How)
	assert.Equal(t, journal.Exact(k.at("22:40")), got.When)
	_, ok := a.Find(got.SHA256)
	assert.False(t, ok)

	k.write(k.amend(c.Ref()), nil, "copied", "copy")
	got = k.photo(c.Ref())
	assert.True(t, got.Copied)
	_, ok = a.Find(got.SHA256)
	assert.True(t, ok)
	f, _ := k.amend(c.Ref()).Field("copied")
	assert.Len(t, f.Choices, 1, "a copy does not become a link to nowhere")
	assert.Contains(t, f.Read+k.amend(c.Ref()).original(&got), got.SHA256)
}

// Ensure that a picture that is not of this night, or that says nothing of when, leaves
// the cursor's time and says why; and that the fish it is added to gives its own.
func TestPhotoWithoutTime(t *testing.T) {
	k := newKit(t)
	k.night(false)
	k.album()
	k.d.SetCursor(k.at("23:00"))
	for _, tt := range []struct{ taken, says string }{
		{"2026:07:09 23:14:30", "not in this night"}, {"", "does not say when"},
	} {
		c, err := k.d.AddCard(journal.KindPhoto)
		require.NoError(t, err)
		c.Set("file", k.picture("a.jpg", tt.taken, 3))
		f, _ := c.Field("when")
		assert.Equal(t, "23:00", f.Value)
		assert.Contains(t, f.Read, tt.says)
	}
	fish := k.add(journal.KindContact, "when", "23:42", "pool", "Alder Pool")
	k.d.Select(fish.Ref())
	k.d.SetCursor(k.at("21:00"))
	c, err := k.d.AddCard(journal.KindPhoto)
	require.NoError(t, err)
	c.Set("file", k.picture("a.jpg", "", 4))
	assert.Equal(t, fish.Base().ID.String(), value(t, c, "of"))
	assert.Equal(t, "23:42", value(t, c, "when"))
}

// Ensure that after midnight the camera's date is the next one and the night the same.
func TestPhotoAfterMidnight(t *testing.T) {
	k := newKit(t)
	k.night(false)
	c, err := k.d.AddCard(journal.KindPhoto)
	require.NoError(t, err)
	c.Set("file", k.picture("a.jpg", "2026:07:05 00:37:12", 5))
	assert.Equal(t, "00:37", value(t, c, "when"))
	assert.Equal(t, "link", value(t, c, "copied"), "without a folder for copies")
	require.NoError(t, c.Commit())
	assert.Equal(t, journal.Exact(k.at("00:37")), k.photo(c.Ref()).When)
}

// Ensure that what is no picture is refused at its field, that the same picture twice is
// asked about once, and that a copy that cannot be made stores nothing.
func TestPhotoRefused(t *testing.T) {
	k := newKit(t)
	k.night(false)
	text := filepath.Join(t.TempDir(), "a.txt")
	require.NoError(t, os.WriteFile(text, []byte("words"), 0o600))
	c, err := k.d.AddCard(journal.KindPhoto)
	require.NoError(t, err)
	for _, bad := range []string{text, text + ".not", t.TempDir()} {
		c.Set("file", bad)
		f, _ := c.Field("file")
		assert.NotEmpty(t, f.Error, bad)
		assert.ErrorIs(t, c.Commit(), ErrUnfinished)
	}
	path := k.picture("a.jpg", "", 6)
	k.add(journal.KindPhoto, "file", path)
	c, err = k.d.AddCard(journal.KindPhoto)
	require.NoError(t, err)
	c.Set("file", path)
	assert.ErrorIs(t, c.Commit(), ErrUnfinished, "it is there already")
	require.NoError(t, c.Commit())

	// A file where the folder should be: nothing can be copied.
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "journal.photos"), nil, 0o600))
	k.d.SetAlbum(album.Beside(filepath.Join(dir, "journal.gloam")))
	c, err = k.d.AddCard(journal.KindPhoto)
	require.NoError(t, err)
	c.Set("file", k.picture("b.jpg", "", 7))
	before := len(k.d.Night().Log.Entries)
	assert.ErrorIs(t, c.Commit(), ErrUnfinished)
	f, _ := c.Field("copied")
	assert.True(t, strings.HasPrefix(f.Error, "The copy could not be made"), f.Error)
	assert.Len(t, k.d.Night().Log.Entries, before)
}
