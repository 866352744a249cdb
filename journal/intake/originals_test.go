package intake_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/intake"
)

// Ensure that a copy lies under its hash beside the journal, once, and that the original
// is left alone; and that a file that changed since is refused and leaves nothing behind.
func TestKeep(t *testing.T) {
	dir := t.TempDir()
	book, original := filepath.Join(dir, "journal.gloam"), filepath.Join(dir, "Fish.JPG")
	b, err := os.ReadFile(invented(t, "night_no_zone.jpg"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(original, b, 0o400))
	sum := readBytes("x", b, intake.ReadOptions{}).SHA256
	p := journal.Photo{SHA256: sum, Name: "Fish.JPG", Copied: true}
	require.NoError(t, intake.Keep(book, p, original))
	require.NoError(t, intake.Keep(book, p, original))
	path := filepath.Join(dir, "journal.photos", sum[:2], sum+".jpg")
	assert.Equal(t, path, intake.OriginalPath(book, p))
	got, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, b, got)
	names, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	assert.Len(t, names, 1)

	p.SHA256 = readBytes("x", append(b, 1), intake.ReadOptions{}).SHA256
	require.ErrorContains(t, intake.Keep(book, p, original), "has changed")
	left, err := filepath.Glob(filepath.Join(dir, "journal.photos", "*", "copy-*"))
	require.NoError(t, err)
	assert.Empty(t, left)
	require.Error(t, intake.Keep(book, p, filepath.Join(dir, "nosuch")))
	require.Error(t, intake.Keep(book, journal.Photo{SHA256: "x"}, original))
}

// Ensure that a plan tells which originals are to be copied.
func TestKept(t *testing.T) {
	w := newWorld(t, "anna")
	o := w.order()
	o.Copied = true
	b := w.propose(o, w.photo("2026:07:05 00:30:00", ""))
	plan, err := b.Plan(b.Ticks())
	require.NoError(t, err)
	kept := b.Kept(plan)
	require.Contains(t, kept, "fish.jpg")
	assert.True(t, kept["fish.jpg"].Copied)
	assert.Empty(t, kept["fish.jpg"].Link)
}
