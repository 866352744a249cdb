package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func journalFile(name string) string { return filepath.Join("..", "..", "testdata", "journals", name) }

// Ensure that a sound journal is called sound and left as it was.
func TestCheckSound(t *testing.T) {
	before, err := os.ReadFile(journalFile("v1.gloam"))
	require.NoError(t, err)
	r := run("", "check", journalFile("v1.gloam"))
	assert.Equal(t, done, r.code, r.err)
	assert.Contains(t, r.out, "is sound")
	after, err := os.ReadFile(journalFile("v1.gloam"))
	require.NoError(t, err)
	assert.Equal(t, before, after)
}

// Ensure that a fault is named, or why the journal does not open, with exit 1.
func TestCheckFaults(t *testing.T) {
	r := run("", "check", journalFile("flipped.gloam"))
	assert.Equal(t, broken, r.code)
	assert.NotEmpty(t, r.out+r.err)
	assert.NotContains(t, r.out, "is sound")
	for _, name := range []string{"half.gloam", "text.gloam", "empty.gloam", "newer.gloam", "nosuch.gloam"} {
		r := run("", "check", journalFile(name))
		assert.Equal(t, broken, r.code, name)
		assert.Empty(t, r.out, name)
		assert.Contains(t, r.err, name)
	}
}

func TestCheckRefuses(t *testing.T) {
	refused(t, run("", "check"), "one journal")
	refused(t, run("", "check", "a", "b"), "one journal")
	refused(t, run("", "check", "--fast", "a"), "--fast")
	for _, name := range []string{"sheet", "check"} {
		r := run("", "help", name)
		assert.Equal(t, done, r.code)
		assert.True(t, strings.HasPrefix(r.out, "Example:\n"), name)
	}
}
