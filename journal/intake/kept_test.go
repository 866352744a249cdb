package intake_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/journal/photo"
)

// Ensure that a plan tells which originals are to be copied, and that one that is linked says
// where it lies instead.
func TestOriginals(t *testing.T) {
	w := newWorld(t, "anna")
	f := w.photo("2026:07:05 00:30:00", "")
	o := w.order()
	b := w.propose(o, f)
	plan, err := b.Plan(b.Ticks())
	require.NoError(t, err)
	assert.Empty(t, b.Originals(plan))
	assert.Equal(t, "fish.jpg", of[journal.Photo](b)[0].Record.(journal.Photo).Link)

	o.Copied = true
	b = w.propose(o, f)
	plan, err = b.Plan(b.Ticks())
	require.NoError(t, err)
	assert.Equal(t, []intake.Original{{Path: "fish.jpg", SHA256: f.SHA256, Format: photo.JPEG}}, b.Originals(plan))
	assert.Empty(t, of[journal.Photo](b)[0].Record.(journal.Photo).Link)
	plan, err = b.Plan(nil)
	require.NoError(t, err)
	assert.Empty(t, b.Originals(plan))
}
