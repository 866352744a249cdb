package screen

import (
	"testing"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// gapNight is a night of the demo on which two flies and the water's temperature are missing.
const gapNight = "2026-07-09"

// Ensure that the line of gaps says what is missing, that a click opens the card at its
// field, and that there is no line where nothing is.
func TestGapLine(t *testing.T) {
	still(t)
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	assert.False(t, visible(s, s.gaps))
	open(t, s, gapNight)
	require.True(t, visible(s, s.gaps))
	sc, size := s.gaps.Scene()
	var said []string
	for i := range sc.List.Len() {
		if op := sc.List.Op(i); op.Kind == draw.TextOp {
			said = append(said, op.Text.S)
		}
	}
	assert.Equal(t, []string{"Missing", "flies of 2 fish", "water temperature", "list"}, said)
	for _, h := range sc.Hits {
		require.GreaterOrEqual(t, h.Box.Min.X, 0.0)
		require.LessOrEqual(t, h.Box.Max.X, size.W)
	}
	s.gaps.OnPick(own.Pick{At: sc.Hits[1].Box.Center(), Hit: sc.Hits[1], Found: true, Size: size})
	require.NotNil(t, s.desk.Card())
	assert.Equal(t, journal.KindWater, s.desk.Card().Ref().Kind)
	assert.Equal(t, "temp", s.card.focused())
	write(s, "14")
	press(s, fyne.KeyReturn)
	require.Nil(t, s.desk.Card())
	assert.Len(t, s.desk.Gaps(), 2)
	s.desk.SetReadOnly(true)
	s.night.Refresh()
	assert.False(t, visible(s, s.gaps))
}

// Ensure that the list of gaps is gone through by keys: Enter fills, N says not known.
func TestGapListByKeys(t *testing.T) {
	still(t)
	s := newScreen(t, true, 1280, 800)
	open(t, s, gapNight)
	first := s.desk.Gaps()[0]
	write(s, "q")
	require.True(t, s.modal.open())
	write(s, "n")
	require.Len(t, s.desk.Gaps(), 2)
	assert.NotEqual(t, first, s.desk.Gaps()[0])
	press(s, fyne.KeyDown)
	press(s, fyne.KeyUp)
	press(s, fyne.KeyReturn)
	require.False(t, s.modal.open())
	require.NotNil(t, s.desk.Card())
	assert.Equal(t, "fly", s.card.focused())
	s.desk.CloseCard()
	write(s, "q")
	write(s, "nn")
	require.Empty(t, s.desk.Gaps())
	press(s, fyne.KeyEscape)
	assert.False(t, visible(s, s.gaps))
	require.NoError(t, s.desk.Undo())
	assert.True(t, visible(s, s.gaps), "undo opens the gap again")
}

// Ensure that a field that is folded away is shown when a gap asks for it.
func TestGapInFold(t *testing.T) {
	still(t)
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	s.runID("add.fish")
	s.card.goTo("lice")
	assert.Equal(t, "lice", s.card.focused())
}

// Ensure that every sort of gap has words of its own, for one and for several.
func TestEveryGapHasWords(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range state.GapKinds {
		for _, n := range []int{1, 3} {
			s := words.Gap(string(k), n)
			require.NotEmpty(t, s, k)
			if n == 1 {
				require.False(t, seen[s], s)
			}
			seen[s] = true
		}
	}
}
