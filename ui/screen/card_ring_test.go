package screen

import (
	"testing"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that Tab goes round within the card of every kind of entry and of a night, past
// every field and button once, and back again, and never leaves it.
func TestTabStaysInCard(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	var ids []string
	for _, c := range s.commands() {
		if c.Menu == "Add" && !c.Window || c.ID == "night.new" || c.ID == "night.amend" {
			ids = append(ids, c.ID)
		}
	}
	require.Greater(t, len(ids), 14)
	for _, id := range ids {
		s.runID(id)
		require.NotNil(t, s.desk.Card(), id)
		first := s.win.Canvas().Focused()
		require.NotNil(t, first, id)
		seen := map[fyne.Focusable]bool{}
		at := first
		for range s.card.ring() {
			seen[at] = true
			press(s, fyne.KeyTab)
			at = s.win.Canvas().Focused()
		}
		assert.True(t, first == at, "%s: round once", id)
		assert.Len(t, seen, len(s.card.ring()), id)
		for _, r := range s.card.rows {
			assert.True(t, seen[r.in], "%s: %s is reached", id, r.id)
		}
		assert.True(t, seen[s.card.commit] && seen[s.card.closing], id)
		s.card.walk(-1)
		assert.True(t, fyne.Focusable(s.card.closing) == s.win.Canvas().Focused(), "%s: and back", id)
		press(s, fyne.KeyReturn)
		require.Nil(t, s.desk.Card(), "%s: Return on the cross closes", id)
	}
}

// Ensure that Escape on any stop of the ring asks once when something was typed.
func TestEscapeFromAnyStop(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	s.runID("add.note")
	s.focus(row(t, s, "note").in)
	write(s, "x")
	s.focus(s.card.commit)
	press(s, fyne.KeyEscape)
	require.NotNil(t, s.desk.Card())
	press(s, fyne.KeyEscape)
	assert.Nil(t, s.desk.Card())
	assert.Equal(t, journal.Ref{}.ID, s.desk.Selected().ID)
}
