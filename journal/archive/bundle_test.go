package archive_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/archive"
	"gloamline/journal/journaltest"
	"gloamline/journal/store"
)

// pictured is a bundle of a journal with photographs, and what it was made of.
func pictured(t *testing.T) (bundle []byte, s journal.Store, a *album.Album) {
	a = album.In(filepath.Join(t.TempDir(), "photos"))
	for shade := range uint8(2) {
		path := filepath.Join(t.TempDir(), "a.jpg")
		require.NoError(t, os.WriteFile(path, journaltest.Picture(30, 20, "", shade), 0o600))
		shot, err := album.Look(path)
		require.NoError(t, err)
		require.NoError(t, a.Keep(path, shot.SHA256, shot.Format))
	}
	s = lived(t, 3, 12)
	var b bytes.Buffer
	_, photos, missing, err := archive.Bundle(&b, s, "2026-07-04T20:00:00Z", clock(), a)
	require.NoError(t, err)
	require.Empty(t, missing)
	require.Equal(t, 2, photos)
	return b.Bytes(), s, a
}

func put(t *testing.T, b []byte) string {
	path := filepath.Join(t.TempDir(), "a.zip")
	require.NoError(t, os.WriteFile(path, b, 0o600))
	return path
}

// whole says whether a journal and its originals are those that were put into a bundle.
func whole(t *testing.T, path string, want journal.Store) bool {
	back, err := store.Open(path, store.Options{ReadOnly: true})
	require.NoError(t, err)
	defer back.Close()
	wantC, wantR := everything(t, want)
	gotC, gotR := everything(t, back)
	all, err := album.Beside(path).All()
	require.NoError(t, err)
	bad, err := album.Beside(path).Damaged()
	require.NoError(t, err)
	return fmt.Sprint(wantC, wantR) == fmt.Sprint(gotC, gotR) && len(all) == 2 && len(bad) == 0
}

// Ensure that a journal with its photographs comes back from one file, to the last byte.
func TestBundleRoundTrip(t *testing.T) {
	b, s, _ := pictured(t)
	from := put(t, b)
	form, err := archive.FormOf(from)
	require.NoError(t, err)
	require.Equal(t, archive.Bundled, form)
	o, photos, err := archive.OutlineOf(from)
	require.NoError(t, err)
	require.Equal(t, 2, photos)
	want, err := journal.OutlineOf(s)
	require.NoError(t, err)
	require.Equal(t, want, o)
	to := filepath.Join(t.TempDir(), "again.gloam")
	require.NoError(t, archive.RestoreFile(from, to))
	require.True(t, whole(t, to, s))
	require.Equal(t, journal.Conflict, journal.KindOf(archive.RestoreFile(from, to)), "never over another file")
}

// Ensure that a bundle cut short or altered anywhere gives either an error, and then no
// journal, or all that was in it: nothing half.
func TestBundleDamage(t *testing.T) {
	b, s, _ := pictured(t)
	refused := 0
	try := func(b []byte, what string, at int, must bool) {
		to := filepath.Join(t.TempDir(), "again.gloam")
		err := archive.RestoreFile(put(t, b), to)
		if err == nil {
			require.False(t, must, "%s at %d", what, at)
			require.True(t, whole(t, to, s), "%s at %d", what, at)
			return
		}
		refused++
		require.Contains(t, []journal.Fail{journal.Corrupt, journal.Foreign, journal.Newer}, journal.KindOf(err), "%s at %d: %v", what, at, err)
		require.NoFileExists(t, to)
	}
	step := len(b)/40 + 1
	for at := 0; at < len(b)-1; at += step {
		try(b[:at], "cut", at, true)
		c := bytes.Clone(b)
		c[at] ^= 0x41
		try(c, "letter", at, false)
	}
	for at := len(b) - 420; at < len(b); at += 3 { // the list of what is in it
		c := bytes.Clone(b)
		c[at] ^= 0x01
		try(c, "letter", at, false)
	}
	require.Greater(t, refused, 60)
}

// Ensure that an original that is damaged beside the journal is left out and named.
func TestBundleLeavesDamagedOut(t *testing.T) {
	_, s, a := pictured(t)
	all, err := a.All()
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(all[0].Path, []byte("half"), 0o600))
	var b bytes.Buffer
	_, photos, missing, err := archive.Bundle(&b, s, "", clock(), a)
	require.NoError(t, err)
	require.Equal(t, 1, photos)
	require.Len(t, missing, 1)
	require.Equal(t, all[0].Sum, missing[0].Sum)
}
