package main

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/scene"
)

// Ensure that a night of the demo leaves in each format, that the least is shown unless
// more is asked for, and that no file is written over.
func TestExportClient(t *testing.T) {
	dir := t.TempDir()
	for ext, head := range map[string]string{".html": "<!doctype html>", ".pdf": "%PDF-", ".png": "\x89PNG", ".svg": "<?xml"} {
		path := filepath.Join(dir, "night"+ext)
		assert.Equal(t, ran{done, path + "\n", ""}, run("", "export", "client", "--demo", "--for", "anna", "--to", path))
		assert.True(t, strings.HasPrefix(bytesOf(t, path), head), ext)
		assert.Equal(t, broken, run("", "export", "client", "--demo", "--to", path).code, "it stands already")
	}
	least := bytesOf(t, filepath.Join(dir, "night.html"))
	assert.Contains(t, least, "Anna and another rod")
	open := filepath.Join(dir, "open.html")
	require.Equal(t, done, run("", "export", "client", "--demo", "--hide", "", "--to", open).code)
	for _, secret := range []string{"Larrick", "Home Beat", "Alder Pool", "Colm", "1 lb 10 oz"} {
		assert.NotContains(t, least, secret)
		assert.Contains(t, bytesOf(t, open), secret)
	}
}

// Ensure that each word shows what it names and nothing else, and hides it likewise.
func TestReadShown(t *testing.T) {
	for _, n := range shownNames {
		var want scene.Shown
		n.set(&want)
		list := n.name
		if n.name == "coordinates" {
			list, want.Places = "places, coordinates", true
		}
		got, err := readShown(list, "", false)
		require.NoError(t, err)
		assert.Equal(t, want, got, n.name)
		less, err := readShown("", n.name, true)
		require.NoError(t, err)
		both := less
		n.set(&both)
		assert.NotEqual(t, both, less, "%s is hidden", n.name)
	}
	none, err := readShown("", "all", true)
	require.NoError(t, err)
	assert.Equal(t, scene.Shown{}, none)
	noPlaces, err := readShown("", "places", true)
	require.NoError(t, err)
	assert.False(t, noPlaces.Coordinates, "coordinates go with places")
}

// Ensure that what makes no sense is refused in words.
func TestExportClientRefuses(t *testing.T) {
	to := filepath.Join(t.TempDir(), "n.html")
	for _, c := range []struct{ args, word string }{
		{"--to " + to, "journal"}, {"--demo", "--to"}, {"--demo --to n.gif", ".html"}, {"--demo --show fish --to " + to, "fish"},
		{"--demo --show pools --hide notes --to " + to, "exclude"}, {"--demo --show coordinates --to " + to, "places"},
		{"--demo --for Nobody --to " + to, "Nobody"}, {"--demo --look green --to " + to, "green"},
		{"--demo --night tomorrow --to " + to, "tomorrow"}, {"--demo --which -1 --to " + to, "-1"}, {"--demo --to " + to + " more", "more"},
	} {
		refused(t, run("", append([]string{"export", "client"}, strings.Fields(c.args)...)...), c.word)
	}
	refused(t, run("", "export"), "client")
	refused(t, run("", "export", "everything"), "everything")
}
