package screen

import (
	"image/gif"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
)

func inGuest(t *testing.T, kept recall) (*Screen, *guestRoom) {
	t.Helper()
	s := newScreenWith(t, true, 1280, 800, kept)
	open(t, s, "2026-07-04")
	s.runID("view.room-guest")
	r, ok := s.rooms.here().(*guestRoom)
	require.True(t, ok)
	return s, r
}

// wordsOn is every text on a board.
func wordsOn(b *own.Board) string {
	sc, _ := b.Scene()
	var out []string
	for i := range sc.List.Len() {
		if o := sc.List.Op(i); o.Kind == draw.TextOp {
			out = append(out, o.Text.S)
		}
	}
	return strings.Join(out, "\n")
}

// Ensure that keys and ticks choose what a guest sees, that it is seen at once, and that
// the recipient is remembered on the machine.
func TestGuestChooses(t *testing.T) {
	kept := recall{}
	s, r := inGuest(t, kept)
	assert.True(t, r.board.Focused())
	assert.Contains(t, wordsOn(r.board), "Pool 1")
	assert.NotContains(t, wordsOn(r.board), "Alder Pool")
	write(s, "w") // Anna
	write(s, "1")
	assert.Contains(t, wordsOn(r.board), "Alder Pool")
	assert.True(t, r.pick.ticks[0].Checked)
	test.Tap(r.pick.ticks[4])
	assert.Contains(t, wordsOn(r.board), "Anna and Colm")
	got, found, err := journal.RecipientOf(s.desk.Journal(), r.desk.Who())
	require.NoError(t, err)
	require.True(t, found)
	assert.Equal(t, []journal.Shows{journal.ShowPools, journal.ShowPeople}, got.Shows)
	assert.Equal(t, r.desk.Who().String(), kept["guest"])
	before := post
	post = func(func()) {} // the test reads, not the clock
	t.Cleanup(func() { post = before })
	r.pick.what.SetSelectedIndex(1)
	assert.Contains(t, wordsOn(r.board), "Reading the beat's nights")
	for r.desk.Read(10) {
	}
	assert.Contains(t, wordsOn(r.board), "All our nights on")
	r.pick.who.SetSelectedIndex(0)
	assert.True(t, r.desk.Who().IsZero())
	assert.False(t, r.pick.ticks[0].Checked)
}

// Ensure that the whole screen is what is shown and nothing else, takes the keys, and that
// Escape leaves to where one was.
func TestGuestFull(t *testing.T) {
	s, r := inGuest(t, recall{})
	press(s, fyne.KeyReturn)
	require.NotNil(t, r.full)
	assert.True(t, s.win.FullScreen())
	assert.True(t, s.modal.open())
	b := r.full.board
	assert.True(t, b.Focused())
	assert.Equal(t, s.win.Canvas().Size(), b.Size())
	press(s, fyne.KeyRight)
	assert.Equal(t, 1, r.desk.View().Fish)
	assert.Contains(t, wordsOn(b), "1. 22:50, landed, sea trout.")
	sc, _ := b.Scene()
	for _, h := range sc.Hits { // the last in order lies on top
		if h.Ref.Kind == scene.GuestActKind && scene.GuestNumber(h.Ref) == scene.GuestNext {
			b.OnPick(own.Pick{At: h.Box.Center(), Hit: h, Found: true})
			break
		}
	}
	assert.Equal(t, 2, r.desk.View().Fish)
	write(s, "l")
	assert.Equal(t, state.Looks[1], s.desk.Look())
	s.runID("night.new")
	assert.Nil(t, s.desk.Card(), "commands below sleep")
	press(s, fyne.KeyHome)
	assert.Contains(t, wordsOn(b), "Escape leaves")
	press(s, fyne.KeyEscape)
	assert.Nil(t, r.full)
	assert.False(t, s.win.FullScreen())
	assert.False(t, s.modal.open())
	assert.True(t, r.board.Focused())
	assert.Equal(t, state.GuestRoom, s.desk.Room())
}

// Ensure that it is played by a clock of the window, which stops at the end and when one
// goes elsewhere.
func TestGuestClock(t *testing.T) {
	acts := make(chan func(), 64)
	before := post
	post = func(f func()) { acts <- f }
	t.Cleanup(func() { post = before })
	s, r := inGuest(t, recall{})
	write(s, " ")
	require.NotNil(t, r.clock)
	end := time.After(time.Minute)
	for r.desk.View().Cursor < 3 {
		select {
		case f := <-acts:
			f()
		case <-end:
			t.Fatal("nothing is played")
		}
	}
	r.desk.Advance(time.Hour)
	assert.Nil(t, r.clock, "at the end")
	write(s, " ")
	require.NotNil(t, r.clock)
	s.runID("view.room-night")
	assert.False(t, r.desk.Playing())
	for r.clock != nil {
		select {
		case f := <-acts:
			f()
		case <-end:
			t.Fatal("the clock of a room that was left does not stop")
		}
	}
}

// Ensure that a screen is measured with a card by keys and by mouse, is kept in pixels, and
// that the fly then stands at its size.
func TestGuestMeasures(t *testing.T) {
	kept := recall{}
	s, r := inGuest(t, kept)
	assert.Zero(t, r.perInch())
	write(s, "c")
	require.NotNil(t, r.full)
	first := r.full.card
	assert.InDelta(t, 96*scene.CardInches, first, 1e-9)
	press(s, fyne.KeyUp)
	press(s, fyne.KeyLeft)
	assert.InDelta(t, first+9, r.full.card, 1e-9)
	b := r.full.board
	middle := float64(b.Size().Width) / 2
	at := own.Pick{At: draw.Pt(middle+r.full.card/2, 400), Size: size(b)}
	b.OnPick(at)
	b.OnDrag(own.Drag{From: at, At: draw.Pt(middle+170, 400)})
	assert.InDelta(t, 340, r.full.card, 1e-6)
	press(s, fyne.KeyEscape)
	assert.Nil(t, r.full, "it was here to measure alone")
	assert.Zero(t, r.perInch(), "not kept")
	write(s, "c")
	r.full.resize(337)
	press(s, fyne.KeyReturn)
	assert.InDelta(t, 100, r.perInch(), 0.01)
	assert.Equal(t, "337.0", kept["card"])
	press(s, fyne.KeyRight)
	assert.Contains(t, wordsOn(r.board), "at true size on this")
	for _, bad := range []string{"", "x", "-3", "NaN", "1e9"} {
		assert.Zero(t, readCard(bad), bad)
	}
}

// Ensure that what is saved is what is seen, in the format of its name.
func TestGuestSaves(t *testing.T) {
	_, r := inGuest(t, recall{})
	dir := t.TempDir()
	acts := make(chan func(), 4)
	before := post
	post = func(f func()) { acts <- f }
	t.Cleanup(func() { post = before })
	r.save()
	require.True(t, r.s.modal.open())
	for _, name := range []string{"a.html", "a.gif", "a.txt"} {
		done := false
		h := r.desk.Handout()
		r.s.savePages(r.leaf(h), h.Pages(scene.Paper, r.s.prefs()), filepath.Join(dir, name), func(err error) {
			done = true
			assert.Equal(t, name == "a.txt", err != nil, "%s: %v", name, err)
		})
		(<-acts)()
		assert.True(t, done)
	}
	html, err := os.ReadFile(filepath.Join(dir, "a.html"))
	require.NoError(t, err)
	assert.Contains(t, string(html), "Saturday 4 July 2026")
	assert.NotContains(t, string(html), "Alder Pool")
	f, err := os.Open(filepath.Join(dir, "a.gif"))
	require.NoError(t, err)
	defer f.Close()
	g, err := gif.DecodeAll(f)
	require.NoError(t, err)
	assert.Greater(t, len(g.Image), 10)
}
