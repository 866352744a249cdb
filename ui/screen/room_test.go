package screen

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
)

// bare is a room with nothing in it but a board.
type bare struct {
	b    *own.Board
	side *canvas.Text
	seen []state.What
}

func (r *bare) main() fyne.CanvasObject { return r.b }
func (r *bare) list() fyne.CanvasObject { return r.side }
func (r *bare) changed(w state.What)    { r.seen = append(r.seen, w) }
func (r *bare) parts() []fyne.Focusable { return []fyne.Focusable{r.b} }
func (r *bare) hint() string            { return "bare" }
func (r *bare) hush()                   {}
func (r *bare) tell()                   {}

// withRoom has the window know a room of its own for the length of a test.
func withRoom(t *testing.T) *bare {
	r := &bare{side: canvas.NewText("rows", dusk.Ink)}
	before := roomMakers
	roomMakers = map[state.Room]func(*Screen) room{state.IntakeRoom: func(s *Screen) room {
		r.b = s.board(state.Anywhere, func(size draw.Size) scene.Scene { return s.empty(size, "bare") })
		return r
	}}
	t.Cleanup(func() { roomMakers = before })
	return r
}

// Ensure that a room takes the place of the night with its own list, keys and menus, and
// gives them back; and that a card goes along.
func TestRoomTakesTheNightsPlace(t *testing.T) {
	r := withRoom(t)
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	menu := func(label string) bool {
		for _, m := range s.menus.main.Items {
			if m.Label == label {
				return true
			}
		}
		return false
	}
	require.True(t, menu("Add"))
	s.runID("view.room-intake")
	require.Equal(t, state.IntakeRoom, s.desk.Room())
	assert.False(t, s.night.Visible())
	assert.True(t, r.b.Visible())
	assert.False(t, s.side.nights.Visible())
	assert.True(t, r.side.Visible())
	assert.True(t, r.b.Focused())
	assert.Equal(t, "bare", s.foot.hint.Text)
	assert.False(t, menu("Add"), "the night's menus sleep")
	require.NotEmpty(t, r.seen)
	assert.True(t, r.seen[0].Has(state.Look|state.CardOpen), "told of everything on entering")
	write(s, "f")
	assert.Nil(t, s.desk.Card(), "the night's keys sleep")

	c, err := s.desk.NewNightCard()
	require.NoError(t, err)
	s.desk.OpenCard(c)
	assert.True(t, s.card.all.Visible())
	assert.Less(t, r.b.Size().Width, s.rooms.stack.Size().Width-cardWidth+1)
	s.desk.CloseCard()
	assert.False(t, s.card.all.Visible())
	assert.Equal(t, s.rooms.stack.Size().Width, r.b.Size().Width)

	n := len(r.seen)
	s.runID("view.room-night")
	assert.True(t, s.night.Visible())
	assert.False(t, r.side.Visible())
	assert.True(t, s.strip.Focused())
	assert.True(t, menu("Add"))
	write(s, "f")
	require.NotNil(t, s.desk.Card())
	assert.True(t, s.card.all.Visible())
	assert.Len(t, r.seen, n, "not told of what it does not show")
	assert.NotEmpty(t, s.card.rows)
}

// Ensure that a card on which something was typed is not left, and that this is said.
func TestRoomWaitsForTheCard(t *testing.T) {
	withRoom(t)
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	write(s, "n")
	write(s, "mist")
	s.desk.Card().Set("note", "mist")
	s.runID("view.room-intake")
	assert.Equal(t, state.NightRoom, s.desk.Room())
	assert.Contains(t, s.foot.told.Text, "not stored")
}

// Ensure that a window without other rooms offers none.
func TestNoWaysWithoutRooms(t *testing.T) {
	before := roomMakers
	roomMakers = nil
	t.Cleanup(func() { roomMakers = before })
	s := newScreen(t, true, 1280, 800)
	assert.Empty(t, s.rooms.ways)
	assert.True(t, s.missing(s.desk.Command("view.room-night")))
}

// Ensure that what was just done is told in the footer whole, and that the hint beside it gives way
// to it instead of lying under it.
func TestFooterGivesWay(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	hint := s.foot.hint.Text
	require.NotEmpty(t, hint)
	s.tell("Saved.")
	assert.Equal(t, hint, s.foot.hint.Text)
	long := strings.Repeat("a long way to a file ", 9)
	s.tell(long)
	assert.Equal(t, long, s.foot.told.Text)
	assert.Empty(t, s.foot.hint.Text)
	s.tell("")
	assert.Equal(t, hint, s.foot.hint.Text)
}
