package screen

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/state"
	"gloamline/ui/words"
)

// Ensure that an empty journal asks for a beat until it has one, and for a night then.
func TestFirstStepFollowsBeat(t *testing.T) {
	s := newScreen(t, false, 1280, 800)
	says := func() string {
		var lines []string
		sc, _ := s.sketch.Scene()
		for _, b := range sc.List.TextBoxes() {
			lines = append(lines, b.Text.S)
		}
		return strings.Join(lines, " ")
	}
	assert.Equal(t, words.EmptyJournal(false, false), says())
	_, err := s.readBeat(homeBeat)
	require.NoError(t, err)
	assert.Equal(t, words.EmptyJournal(true, false), says())
	s.desk.SetReadOnly(true)
	s.changed(state.Everything)
	assert.NotContains(t, says(), "Ctrl+N", "nothing can be begun")
	assert.True(t, s.side.add.Disabled())
}

// Ensure that Return stores the open card, as its button says, while the sketch has the
// keyboard after a click.
func TestReturnStoresFromSketch(t *testing.T) {
	s := startFish(t)
	s.focus(row(t, s, "rod").in)
	write(s, "a")
	s.focus(row(t, s, "pool").in)
	write(s, "u")
	before := len(s.desk.Night().Contacts)
	s.focus(s.sketch)
	press(s, fyne.KeyReturn)
	require.Nil(t, s.desk.Card(), "%s", s.card.problem.Text())
	assert.Len(t, s.desk.Night().Contacts, before+1)
}
