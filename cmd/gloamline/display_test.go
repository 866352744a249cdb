//go:build unix && !darwin

package main

import (
	"net"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that a display is believed in only when something answers there, and that
// the sentence otherwise names what is wrong.
func TestDisplay(t *testing.T) {
	dir := t.TempDir()
	l, err := net.Listen("unix", filepath.Join(dir, "X7"))
	require.NoError(t, err)
	defer l.Close()

	at := func(d string) error { return display(env(map[string]string{"DISPLAY": d}), dir) }
	assert.NoError(t, at(":7"))
	assert.NoError(t, at(":7.0"))
	assert.NoError(t, at("unix:7"))
	assert.ErrorContains(t, at(""), "not set")
	assert.ErrorContains(t, at(":8"), "no X server answers")
	assert.ErrorContains(t, at("nonsense"), "names no display")
	assert.ErrorContains(t, at(":"), "names no display")
	assert.ErrorContains(t, at("127.0.0.1:59000"), "no X server answers")
}

// Ensure that a Wayland session counts for a build that can use it, and is named by
// one that cannot.
func TestDisplayWayland(t *testing.T) {
	err := display(env(map[string]string{"WAYLAND_DISPLAY": "wayland-0"}), t.TempDir())
	if wayland {
		assert.NoError(t, err)
	} else {
		assert.ErrorContains(t, err, "Wayland session")
	}
}
