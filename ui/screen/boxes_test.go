package screen

import (
	"testing"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
)

// boxesOf enters the room of flies.
func boxesOf(t *testing.T, s *Screen) *boxRoom {
	t.Helper()
	s.desk.Boxes().Count(1 << 20) // else a clock would, beside the test
	s.runID("view.room-boxes")
	r, ok := s.rooms.here().(*boxRoom)
	require.True(t, ok)
	return r
}

// pickOf is a place on the board where a hit lies.
func pickOf(t *testing.T, b *own.Board, ref journal.Ref) own.Pick {
	t.Helper()
	sc, size := b.Scene()
	box, ok := sc.Box(ref)
	require.True(t, ok)
	hit, found := sc.At(box.Center())
	return own.Pick{At: box.Center(), Hit: hit, Found: found, Size: size}
}

// Ensure that a fly is drawn out by its top with the pointer: shown at once, stored when
// let go, taken back by one undo.
func TestFlyIsDrawnOut(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	r := boxesOf(t, s)
	c, err := s.desk.FlyCard(journal.ID{})
	require.NoError(t, err)
	c.Set("length", "1 in")
	require.NoError(t, c.Commit())
	f, ok := r.desk.Fly()
	require.True(t, ok)
	length := func() string {
		f, err := journal.One[journal.Fly](s.desk.Journal(), f.ID)
		require.NoError(t, err)
		l, _ := f.Dresses[0].Length.Get()
		return l.String()
	}
	from := pickOf(t, r.board, journal.Ref{Kind: scene.LengthKind, ID: f.ID})
	r.board.OnPick(from)
	inch := draw.Pt(0, -scene.BoxPerInch())
	r.board.OnDrag(own.Drag{From: from, At: from.At.Add(inch.Mul(0.5))})
	_, l, on := r.desk.Dragged()
	require.True(t, on)
	assert.Equal(t, "1½ in", l.String())
	assert.Equal(t, "1 in", length(), "not stored yet")
	assert.Contains(t, r.board.OnHover(from).Text, "1½ in")
	r.board.OnDrag(own.Drag{From: from, At: from.At.Add(inch)})
	r.board.OnDrag(own.Drag{From: from, At: from.At.Add(inch), End: true})
	assert.Equal(t, "2 in", length())
	s.runID("edit.undo")
	assert.Equal(t, "1 in", length())
	assert.Equal(t, state.BoxRoom, s.desk.Room(), "a fly belongs to no night")

	r.board.OnPick(from)
	r.board.OnDrag(own.Drag{From: from, At: from.At.Add(draw.Pt(1, -2))})
	r.board.OnDrag(own.Drag{From: from, At: from.At.Add(draw.Pt(1, -2)), End: true})
	assert.Equal(t, "1 in", length(), "a click moves nothing")
}

// Ensure that keys do all of it: through the flies, longer, another like it, a card.
func TestFliesByKeys(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	r := boxesOf(t, s)
	press(s, fyne.KeyRight)
	require.Equal(t, journal.KindBox, r.desk.Picked().Kind)
	press(s, fyne.KeyRight)
	f, ok := r.desk.Fly()
	require.True(t, ok)
	write(s, "d")
	like, ok := r.desk.Fly()
	require.True(t, ok)
	require.NotEqual(t, f.ID, like.ID)
	before, _ := like.Dresses[0].Length.Get()
	write(s, ">")
	like, _ = r.desk.Fly()
	after, _ := like.Dresses[0].Length.Get()
	assert.InDelta(t, 0.125, after.Number(units.Inch)-before.Number(units.Inch), 1e-9)
	press(s, fyne.KeyReturn)
	require.NotNil(t, s.desk.Card())
	assert.True(t, s.card.all.Visible())
	press(s, fyne.KeyEscape)
	assert.Nil(t, s.desk.Card())
	assert.True(t, r.board.Focused(), "keys go on with the flies")
	write(s, "t")
	like, _ = r.desk.Fly()
	assert.False(t, like.Retired.IsZero())
	write(s, "o")
	assert.Equal(t, "length", r.desk.Order())
	assert.Equal(t, "By length", r.order.Selected)
	press(s, fyne.KeyEscape)
	assert.Zero(t, r.desk.Picked())
}

// Ensure that a journal that may only be read shows its flies and changes none.
func TestFliesReadOnly(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	s.desk.SetReadOnly(true)
	r := boxesOf(t, s)
	press(s, fyne.KeyRight)
	press(s, fyne.KeyRight)
	f, ok := r.desk.Fly()
	require.True(t, ok)
	for _, b := range r.buttons {
		assert.True(t, b.b.Disabled(), b.c.ID)
	}
	from := pickOf(t, r.board, journal.Ref{Kind: scene.LengthKind, ID: f.ID})
	r.board.OnPick(from)
	r.board.OnDrag(own.Drag{From: from, At: from.At.Add(draw.Pt(0, -40))})
	_, _, on := r.desk.Dragged()
	assert.False(t, on)
}
