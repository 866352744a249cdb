package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that drawings lie beside the journal, that each text takes the place of the one before
// whole, and that nothing is left when there is nothing to keep.
func TestDrafts(t *testing.T) {
	dir := t.TempDir()
	d := draftsOf(filepath.Join(dir, "journal.gloam"))
	data, err := d.Load()
	require.NoError(t, err)
	assert.Empty(t, data)
	for _, text := range []string{"a long text that is cut", "short"} {
		require.NoError(t, d.Save([]byte(text)))
		data, err = d.Load()
		require.NoError(t, err)
		assert.Equal(t, text, string(data))
	}
	found, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.Len(t, found, 1, "no scrap is left")
	assert.Equal(t, "journal.gloam.drawings", found[0].Name())
	require.NoError(t, d.Save(nil))
	require.NoError(t, d.Save(nil), "twice does no harm")
	data, err = d.Load()
	require.NoError(t, err)
	assert.Empty(t, data)
	assert.Error(t, draftsOf(filepath.Join(dir, "gone", "journal.gloam")).Save([]byte("x")))
}
