package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func env(m map[string]string) func(string) string { return func(k string) string { return m[k] } }

// Ensure that files go where the XDG specification and the person say, and that the
// folder is made for nobody else to read.
func TestPlace(t *testing.T) {
	home, data := t.TempDir(), t.TempDir()

	dir, err := place("data", env(map[string]string{"HOME": home}))
	require.NoError(t, err)
	assert.Equal(t, filepath.Join(home, ".local", "share", "gloamline"), dir)
	info, err := os.Stat(dir)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o700), info.Mode().Perm())

	dir, err = place("data", env(map[string]string{"HOME": home, "XDG_DATA_HOME": data}))
	require.NoError(t, err)
	assert.Equal(t, filepath.Join(data, "gloamline"), dir)

	dir, err = place("state", env(map[string]string{"HOME": home, "XDG_STATE_HOME": "not/absolute"}))
	require.NoError(t, err)
	assert.Equal(t, filepath.Join(home, ".local", "state", "gloamline"), dir)
}

// Ensure that nothing is guessed when nothing says where files live.
func TestPlaceWithoutHome(t *testing.T) {
	_, err := place("data", env(nil))
	assert.ErrorIs(t, err, errNoHome)
}

// Ensure that a home that cannot be written to is an error, not a panic.
func TestPlaceUnwritable(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	_, err := place("data", env(map[string]string{"HOME": file}))
	assert.Error(t, err)
}
