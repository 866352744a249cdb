package screen

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// items are the rows of the list of nights that are in view, as they are laid out.
func items(s *Screen) (out []*nightItem) {
	for _, o := range test.LaidOutObjects(s.win.Canvas().Content()) {
		if i, ok := o.(*nightItem); ok && i.Visible() {
			out = append(out, i)
		}
	}
	return out
}

// Ensure that the list of nights begins with a whole row whatever night is open, with that
// night in view.
func TestListBeginsWhole(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	list := s.side.list
	gap := list.Theme().Size(theme.SizeNamePadding)
	moved := false
	for row := range s.desk.NightCount() - 12 { // the last rows cannot begin the list
		require.NoError(t, s.desk.Open(s.desk.NightRow(row).Trip))
		off, top, begins := list.GetScrollOffset(), float32(0), false
		moved = moved || off > 0
		for i := range s.desk.NightCount() {
			begins = begins || off > top-0.6 && off < top+0.6
			if i == row {
				assert.GreaterOrEqual(t, top, off-0.6, row)
				assert.LessOrEqual(t, top+list.rowHeight(i), off+list.Size().Height+0.6, row)
			}
			top += list.rowHeight(i) + gap
		}
		assert.True(t, begins, "row %d: the list begins at %v, within a row", row, off)
	}
	assert.True(t, moved)
}

// Ensure that the ground of the open night leaves out the heading of its month.
func TestSelectionLeavesTheMonth(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	row := -1
	for i := range s.desk.NightCount() {
		if i > 0 && s.side.list.heads(i) {
			row = i
			break
		}
	}
	require.Positive(t, row)
	require.NoError(t, s.desk.Open(s.desk.NightRow(row).Trip))
	assert.Equal(t, color.Transparent, flat{s}.Color("selection", 0), "the toolkit's ground takes in the heading")
	for _, i := range items(s) {
		if i.row != row {
			continue
		}
		require.NotEmpty(t, i.head.Text)
		assert.GreaterOrEqual(t, i.fill.Position().Y, i.head.Position().Y+i.head.Size().Height-1)
		_, _, _, a := i.fill.FillColor.RGBA()
		assert.NotZero(t, a, "it is marked all the same")
		return
	}
	t.Fatal("the open night is not in view")
}

// Ensure that an empty journal offers its next step as a button, which does it, and that
// the buttons go once there is a night.
func TestEmptyJournalHasButtons(t *testing.T) {
	s := newScreen(t, false, 1280, 800)
	require.True(t, s.start.all.Visible())
	assert.False(t, s.start.night.Visible(), "a night needs its beat")
	test.Tap(s.start.beat)
	require.True(t, s.modal.open())
	press(s, fyne.KeyEscape)
	drop(t, s, homeBeat)
	press(s, fyne.KeyReturn)
	require.True(t, s.start.night.Visible())
	test.Tap(s.start.night)
	require.NotNil(t, s.desk.Card())
	s.desk.Card().Set("rods.0.person", "Anna")
	s.desk.Card().Set("evening", "2026-08-01")
	require.NoError(t, s.desk.Card().Commit())
	assert.False(t, s.start.all.Visible())
}

// Ensure that the foot of the window speaks of the open card and of nothing said before.
func TestFootWithACard(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	s.tell("Stopped at 23:10.")
	s.runID("add.note")
	assert.Empty(t, s.foot.told.Text)
	assert.Equal(t, words.CardHint(), s.foot.hint.Text)
	s.desk.CloseCard()
	assert.Equal(t, words.FooterHint(true), s.foot.hint.Text)
}

// Ensure that what has the keyboard has a line around it: choices, ticks and buttons.
func TestFocusHasALine(t *testing.T) {
	s := startFish(t)
	pool, again := row(t, s, "pool").in.(*chooser), row(t, s, "species").in.(*chooser)
	s.focus(pool)
	assert.True(t, pool.ring.On())
	s.focus(again)
	assert.True(t, again.ring.On())
	assert.False(t, pool.ring.On())
	s.desk.CloseCard()
	s.runID("file.page")
	b := inDialog[*sheetButton](t, s)
	s.focus(b)
	assert.True(t, b.ring.On())
}

// Ensure that a tip does not stay under a menu that opens.
func TestNoTipUnderAMenu(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	s.tools.buttons[0].b.MouseIn(&desktop.MouseEvent{})
	s.strip.Say("beside a mark", draw.R(10, 10, 20, 20))
	require.NotEmpty(t, s.tips.Text())
	require.NotEmpty(t, s.strip.Said())
	s.runID("add.any")
	assert.Empty(t, s.tips.Text())
	assert.Empty(t, s.strip.Said())
}
