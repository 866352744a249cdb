package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that a night of the demo is drawn in each format under the name asked for.
func TestSheetDraws(t *testing.T) {
	dir := t.TempDir()
	for ext, head := range map[string]string{".pdf": "%PDF-", ".png": "\x89PNG", ".svg": "<?xml"} {
		path := filepath.Join(dir, "night"+ext)
		r := run("", "sheet", "--demo", "-o", path)
		require.Equal(t, done, r.code, r.err)
		assert.Equal(t, path+"\n", r.out, "one page, on one line")
		b, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, head, string(b[:len(head)]))
	}
	svg, err := os.ReadFile(filepath.Join(dir, "night.svg"))
	require.NoError(t, err)
	assert.Contains(t, string(svg), "Saturday 4 July 2026")
	dusk := filepath.Join(dir, "dusk.svg")
	require.Equal(t, done, run("", "sheet", "--demo", "--look", "dusk", "--night", "2026-07-04", "-o", dusk).code)
	b, err := os.ReadFile(dusk)
	require.NoError(t, err)
	assert.NotEqual(t, svg, b)
}

// Ensure that wrong words on the command line give one sentence and write nothing.
func TestSheetRefuses(t *testing.T) {
	out := filepath.Join(t.TempDir(), "night.pdf")
	refused(t, run("", "sheet"), "--journal", "--demo")
	refused(t, run("", "sheet", "--demo"), "-o")
	refused(t, run("", "sheet", "--demo", "--journal", "x", "-o", out), "exclude")
	refused(t, run("", "sheet", "--demo", "-o", out, "more"), "more")
	refused(t, run("", "sheet", "--demo", "-o", out, "--look", "neon"), "neon", "dusk")
	refused(t, run("", "sheet", "--demo", "-o", out, "--night", "4 July"), "4 July")
	refused(t, run("", "sheet", "--demo", "-o", out, "--night", "2026-01-01"), "2026-01-01", "latest")
	refused(t, run("", "sheet", "--demo", "-o", filepath.Join(t.TempDir(), "night.doc")), ".pdf")
	assert.NoFileExists(t, out)
}

// Ensure that a file that stands is not written over, and that a journal which cannot
// be opened is explained.
func TestSheetHarmsNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "night.pdf")
	require.NoError(t, os.WriteFile(path, []byte("mine"), 0o600))
	r := run("", "sheet", "--demo", "-o", path)
	assert.Equal(t, broken, r.code)
	assert.Contains(t, r.err, "there already")
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "mine", string(b))

	other := filepath.Join(t.TempDir(), "other.pdf")
	for _, name := range []string{"half.gloam", "text.gloam", "newer.gloam", "nosuch.gloam"} {
		r := run("", "sheet", "--journal", filepath.Join("..", "..", "testdata", "journals", name), "-o", other)
		assert.Equal(t, broken, r.code, name)
		assert.Contains(t, r.err, name)
		assert.Empty(t, r.out)
	}
	assert.NoFileExists(t, other)
}
