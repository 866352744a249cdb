package main

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/scene"
)

// Ensure that a night of the demo leaves in each format, that the least is shown unless
// more is asked for, and that no file is written over.
func TestExportClient(t *testing.T) {
	dir := t.TempDir()
	for ext, head := range map[string]string{".html": "<!doctype html>", ".pdf": "%PDF-", ".png": "\x89PNG", ".svg": "<?xml", ".gif": "GIF89a"} {
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
		{"--to " + to, "journal"}, {"--demo", "--to"}, {"--demo --to n.txt", ".html"}, {"--demo --show fish --to " + to, "fish"},
		{"--demo --show pools --hide notes --to " + to, "exclude"}, {"--demo --show coordinates --to " + to, "places"},
		{"--demo --for Nobody --to " + to, "Nobody"}, {"--demo --look green --to " + to, "green"},
		{"--demo --night tomorrow --to " + to, "tomorrow"}, {"--demo --which -1 --to " + to, "-1"}, {"--demo --to " + to + " more", "more"},
	} {
		refused(t, run("", append([]string{"export", "client"}, strings.Fields(c.args)...)...), c.word)
	}
	refused(t, run("", "export"), "client")
	refused(t, run("", "export", "everything"), "everything")
}

// Ensure that without --show and --hide what the journal remembers of the recipient counts,
// and that either takes its place.
func TestExportClientRemembers(t *testing.T) {
	path := write(t, func(j *journal.Journal) {
		withDemo(t)(j)
		people, err := journal.All[journal.Person](j)
		require.NoError(t, err)
		i := slices.IndexFunc(people, func(p journal.Person) bool { return p.Name == "Anna" })
		require.GreaterOrEqual(t, i, 0)
		_, err = j.Do("amend recipient", journal.Batch{Put: []journal.Record{
			journal.Recipient{ID: journal.NewID(), Person: people[i].ID, Shows: []journal.Shows{journal.ShowPools, journal.ShowPeople}}}})
		require.NoError(t, err)
	})
	dir := t.TempDir()
	page := func(name string, args ...string) string {
		to := filepath.Join(dir, name+".html")
		r := run("", append([]string{"export", "client", "--journal", path, "--night", "2026-07-04", "--to", to}, args...)...)
		require.Equal(t, done, r.code, r.err)
		return bytesOf(t, to)
	}
	remembered, anybody, asked := page("a", "--for", "Anna"), page("b"), page("c", "--for", "Anna", "--show", "weights")
	for _, secret := range []string{"Alder Pool", "Colm"} {
		assert.Contains(t, remembered, secret)
		assert.NotContains(t, anybody, secret)
		assert.NotContains(t, asked, secret)
	}
	assert.Contains(t, asked, "1 lb 10 oz")
	assert.NotContains(t, remembered, "1 lb 10 oz")
}

// Ensure that all nights on a pool leave in each format, with nights and hours, and that
// the pool is called only if it may be.
func TestExportPool(t *testing.T) {
	dir := t.TempDir()
	for ext, head := range map[string]string{".html": "<!doctype html>", ".pdf": "%PDF-"} {
		to := filepath.Join(dir, "pool"+ext)
		r := run("", "export", "client", "--demo", "--pool", "alder pool", "--to", to)
		require.Equal(t, done, r.code, r.err)
		assert.True(t, strings.HasPrefix(bytesOf(t, to), head), ext)
	}
	least := bytesOf(t, filepath.Join(dir, "pool.html"))
	assert.Regexp(t, `One pool: \d+ nights, [\d.]+ rod-hours, \d+ landed`, least)
	open := filepath.Join(dir, "open.html")
	require.Equal(t, done, run("", "export", "client", "--demo", "--pool", "Alder Pool", "--hide", "", "--to", open).code)
	for _, secret := range []string{"Larrick", "Alder Pool", "1 lb 10 oz"} {
		assert.NotContains(t, least, secret)
		assert.Contains(t, bytesOf(t, open), secret)
	}
	refused(t, run("", "export", "client", "--demo", "--pool", "Nowhere", "--to", open), "Nowhere")
	refused(t, run("", "export", "client", "--demo", "--pool", "Alder Pool", "--night", "2026-07-04", "--to", open), "--night")
}
