package screen

import (
	"bytes"
	"log/slog"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that what each field of an open card holds is told, and what of it is selected:
// text, a choice and a tick.
func TestTellsWhatFieldsHold(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	before := post
	post = func(f func()) { f() }
	t.Cleanup(func() { post = before })
	s.runID("add.sky")
	c := s.desk.Card()
	require.NotNil(t, c)
	for _, p := range [][2]string{{"when", "22:07"}, {"cloud_kind", "thin"}, {"trees_grey", "yes"}} {
		c.Set(p[0], p[1])
	}
	s.card.focusFirst()
	var told bytes.Buffer
	s.opt.Log = slog.New(slog.NewTextHandler(&told, &slog.HandlerOptions{Level: slog.LevelDebug}))
	s.TellRegions()
	assert.Contains(t, told.String(), `msg=holds field=when text=22:07 selected=22:07`)
	assert.Contains(t, told.String(), `msg=holds field=cloud_kind text=thin selected=""`)
	assert.Contains(t, told.String(), `msg=holds field=trees_grey text=yes selected=""`)
}
