package screen

import (
	"image/color"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
)

// Ensure that the tools keep clear of the header while its paragraph of care grows by a line at a time, and
// that the note that grows with it shows its days in the list, whatever it asks.
func TestHeaderGrowsWithCare(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	beat := s.desk.Night().Log.Trip.Beat
	clear := func() float32 {
		s.header.all.Resize(s.header.all.Size())
		return s.tools.all.Position().Y - s.header.all.Position().Y - s.header.all.HeightFor(s.header.all.Size().Width)
	}
	least := clear()
	require.GreaterOrEqual(t, least, float32(0))
	heights := map[float32]bool{}
	for n := range 12 {
		note := journal.Notice{Words: "hooks without barbs " + strings.Repeat("and no weights on the line ", n), Checked: journal.Date{Year: 2026, Month: 1, Day: 3}}
		require.NoError(t, s.desk.SetNotices(beat, []journal.Notice{note}))
		assert.InDelta(t, least, clear(), 1, "%d", n)
		heights[s.header.all.HeightFor(s.header.all.Size().Width)] = true

		v := &noticesSheet{s: s, beats: []state.NoticedBeat{{ID: beat, Notices: []journal.Notice{note}}}}
		row := v.line(1)
		assert.Contains(t, row, "checked 3 January 2026")
		assert.LessOrEqual(t, draw.Measure(draw.Font{Size: 13.5, Weight: draw.Bold}, row).Width, float64(noticesWidth-16))
	}
	assert.Greater(t, len(heights), 2, "the header never grew")
}

// Ensure that the window of a journal that does not open has the look that was used last.
func TestFaultHasTheLook(t *testing.T) {
	for name, want := range map[string]scene.Look{"": scene.Dusk, "paper": scene.Paper, "lamp": scene.Lamp} {
		a := test.NewTempApp(t)
		w := ShowFault(a, Fault{Err: &journal.Error{Kind: journal.Corrupt}, Path: "mine.gloam", Look: name})
		assert.Equal(t, want.Back, color.NRGBAModel.Convert(a.Settings().Theme().Color(theme.ColorNameBackground, 0)), name)
		w.Close()
	}
}
