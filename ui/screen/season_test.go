package screen

import (
	"os"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/scene"
	"gloamline/ui/state"
)

// inSeason enters the room on the demo and waits until its nights are read and its tests
// worked out. Whatever comes from beside the window is run here, by the test.
func inSeason(t *testing.T, kept recall) (*Screen, *seasonRoom, func(until func() bool)) {
	t.Helper()
	acts := make(chan func(), 64)
	before := post
	post = func(f func()) { acts <- f }
	t.Cleanup(func() { post = before })
	pump := func(until func() bool) {
		t.Helper()
		end := time.After(time.Minute)
		for !until() {
			select {
			case f := <-acts:
				f()
			case <-end:
				t.Fatal("what was to come from beside the window has not")
			}
		}
	}
	s := newScreenWith(t, true, 1280, 800, kept)
	s.runID("view.room-season")
	r, ok := s.rooms.here().(*seasonRoom)
	require.True(t, ok)
	assert.False(t, r.desk.Ready(), "entering waits for no night")
	pump(func() bool { f := r.desk.Sheet(); return f != nil && f.Settled && r.work == nil && r.clock == nil })
	return s, r, pump
}

// Ensure that entering shows at once how far the nights are read, then the figures, then
// the tests; and that keys do all of it.
func TestSeasonByKeys(t *testing.T) {
	s, r, pump := inSeason(t, recall{})
	assert.True(t, r.board.Focused())
	assert.Contains(t, r.title.Text(), "48 nights")
	press(s, fyne.KeyDown)
	press(s, fyne.KeyDown)
	assert.Equal(t, 2, r.desk.Picked())
	tall := func() float64 { sc, _ := r.board.Scene(); return sc.List.Size().H }
	closed := tall()
	press(s, fyne.KeyReturn)
	open := tall()
	assert.Greater(t, open, closed)
	write(s, "s")
	assert.Greater(t, tall(), open)
	press(s, fyne.KeyReturn)
	assert.Equal(t, closed, tall())
	write(s, "y")
	assert.Contains(t, r.title.Text(), "24 nights")
	assert.Contains(t, r.made.Text(), "2026")
	pump(func() bool { return r.desk.Sheet().Settled })
	assert.Equal(t, "2026", r.choose.list[0].in.Selected)
	write(s, "0")
	pump(func() bool { return r.desk.Sheet().Settled })
	assert.Contains(t, r.made.Text(), "All nights")
	press(s, fyne.KeyEnd)
	sc, size := r.board.Scene()
	box, ok := sc.Box(scene.SeasonCard(26))
	require.True(t, ok)
	assert.LessOrEqual(t, box.Max.Y-r.board.Offset(), size.H+1, "the card picked out is in view")
	press(s, fyne.KeyF6)
	assert.True(t, r.index.Focused())
}

// Ensure that the choosers change what counts, each its own part of it.
func TestSeasonChoosers(t *testing.T) {
	_, r, pump := inSeason(t, recall{})
	all := r.desk.Sheet().Hours
	for _, c := range r.choose.list {
		if c.name == "count" {
			continue
		}
		any := c.in.Selected
		require.Greater(t, len(c.in.Options), 1, c.name)
		c.in.SetSelected(c.in.Options[1])
		assert.Less(t, r.desk.Sheet().Hours, all, c.name)
		c.in.SetSelected(any)
		assert.Equal(t, all, r.desk.Sheet().Hours, c.name)
	}
	pump(func() bool { return r.desk.Sheet().Settled && r.work == nil })
}

// Ensure that a click picks a card out, one on the fold shows its tests, and a double
// click opens it.
func TestSeasonByMouse(t *testing.T) {
	_, r, _ := inSeason(t, recall{})
	at := pickOf(t, r.index, scene.SeasonCard(14))
	r.index.OnPick(at)
	assert.Equal(t, 14, r.desk.Picked())
	r.index.OnOpen(at)
	assert.True(t, r.desk.Open(14))
	r.board.OnPick(pickOf(t, r.board, scene.SeasonFold(14)))
	assert.True(t, r.desk.Full(14))
	for _, look := range []string{"paper", "lamp", "dusk"} {
		r.s.desk.SetLook(look)
		sc, _ := r.board.Scene()
		require.NotNil(t, sc.List)
	}
}

// Ensure that the tables of a card are saved where asked, headed by what they count, and
// that the room is as it was left when the window is opened again.
func TestSeasonSavesAndComesBack(t *testing.T) {
	kept := recall{"folder": t.TempDir()}
	s, r, pump := inSeason(t, kept)
	r.desk.Pick(5)
	write(s, "e")
	require.True(t, s.modal.open())
	press(s, fyne.KeyReturn)
	pump(func() bool { return !s.modal.open() })
	text, err := os.ReadFile(kept["folder"] + "/season-2025-2026-length_light.csv")
	require.NoError(t, err)
	assert.Contains(t, string(text), "All nights; counted: fish hooked")
	assert.Greater(t, strings.Count(string(text), "\n"), 20)
	write(s, "k")
	want := r.desk.Encode()
	assert.Equal(t, want, kept["season"])
	pump(func() bool { return r.desk.Sheet().Settled && r.work == nil })
	_, again, _ := inSeason(t, kept)
	assert.Equal(t, want, again.desk.Encode())
}

// Ensure that a journal without nights says what will stand here.
func TestSeasonOfNoNight(t *testing.T) {
	acts := make(chan func(), 64)
	before := post
	post = func(f func()) { acts <- f }
	t.Cleanup(func() { post = before })
	s := newScreen(t, false, 1280, 800)
	s.runID("view.room-season")
	r := s.rooms.here().(*seasonRoom)
	for r.clock != nil {
		(<-acts)()
	}
	assert.True(t, r.desk.Ready())
	assert.Equal(t, state.SeasonRoom, s.desk.Room())
	sc, _ := r.board.Scene()
	assert.Contains(t, sc.List.String(), "No nights yet")
	_, ok := sc.Box(journal.Ref{})
	assert.False(t, ok)
}
