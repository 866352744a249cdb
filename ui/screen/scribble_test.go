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
)

// still keeps what would come from another goroutine from coming: the test shows the
// ghost itself.
func still(t *testing.T) {
	was := post
	post = func(func()) {}
	t.Cleanup(func() { post = was })
}

// Ensure that the line is reached by its key, that typing reads, that the night is shown
// as it would be, and that Return stores and leaves the line for the next one.
func TestScribbleLineByKeys(t *testing.T) {
	still(t)
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	landed := s.desk.Night().Totals.Landed
	write(s, ";")
	require.True(t, s.pen.in.focused)
	require.Empty(t, s.pen.in.Text, "the key itself is not written")
	write(s, "A 0105 landed 1lb10 dropper")
	assert.Equal(t, "A 0105 landed 1lb10 dropper", s.pen.m.Text())
	assert.Greater(t, s.pen.board.Size().Height, float32(60))
	s.pen.showGhost()
	assert.Equal(t, landed+1, s.desk.Night().Totals.Landed)
	assert.True(t, s.desk.Ghosted())

	press(s, fyne.KeyEscape)
	assert.False(t, s.desk.Ghosted())
	assert.Equal(t, landed, s.desk.Night().Totals.Landed)
	assert.Equal(t, "A 0105 landed 1lb10 dropper", s.pen.in.Text, "the text stays")
	assert.True(t, s.strip.Focused())
	write(s, ";")
	press(s, fyne.KeyReturn)
	assert.Equal(t, landed+1, s.desk.Night().Totals.Landed)
	assert.False(t, s.desk.Ghosted())
	assert.Empty(t, s.pen.in.Text)
	assert.True(t, s.pen.in.focused, "ready for the next line")
	k, ok := s.desk.SelectedEntry().(journal.Contact)
	require.True(t, ok)
	assert.Equal(t, 1, k.Position.Or(-1))
}

// Ensure that what has two meanings is chosen by keys alone, or by a click.
func TestScribbleChoice(t *testing.T) {
	still(t)
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	write(s, ";")
	write(s, "2320 colour gone")
	press(s, fyne.KeyReturn)
	assert.Equal(t, "2320 colour gone", s.pen.in.Text, "not stored")
	assert.Zero(t, s.pen.way, "but led to the choice")
	press(s, fyne.KeyTab)
	assert.Equal(t, 1, s.pen.way)
	press(s, fyne.KeyUp)
	press(s, fyne.KeyUp)
	assert.Equal(t, 2, s.pen.way, "round")
	press(s, fyne.KeyTab)
	press(s, fyne.KeyReturn)
	require.IsType(t, journal.Sky{}, s.pen.m.Made()[0])

	box, ok := s.pen.boxOf(0, 1)
	require.True(t, ok, "the other one can still be taken")
	sc, size := s.pen.board.Scene()
	hit, found := sc.At(box.Center())
	require.True(t, found)
	s.pen.board.OnPick(own.Pick{At: box.Center(), Hit: hit, Found: true, Size: size})
	require.IsType(t, journal.Water{}, s.pen.m.Made()[0])
	assert.True(t, s.pen.in.focused)
	press(s, fyne.KeyReturn)
	require.IsType(t, journal.Water{}, s.desk.SelectedEntry())
}

// Ensure that the line is not offered where nothing can be written, nor under a card,
// and that it stands under the strip while in use where the log is hidden.
func TestScribbleWhere(t *testing.T) {
	still(t)
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	assert.True(t, s.pen.all.Visible())
	bottom := func() float32 {
		return s.app.Driver().AbsolutePositionForObject(s.pen.all).Y + s.pen.all.Size().Height
	}
	logX := s.app.Driver().AbsolutePositionForObject(s.log).X
	assert.InDelta(t, logX, s.app.Driver().AbsolutePositionForObject(s.pen.all).X, 1)
	low := bottom()

	s.runID("view.log")
	assert.False(t, visible(s, s.pen.all))
	write(s, ";")
	require.True(t, s.pen.in.focused)
	assert.True(t, visible(s, s.pen.all))
	assert.Less(t, s.app.Driver().AbsolutePositionForObject(s.pen.all).X, logX-100)
	assert.InDelta(t, low, bottom(), 2)
	press(s, fyne.KeyEscape)
	assert.False(t, visible(s, s.pen.all))
	s.runID("view.log")

	s.runID("add.fish")
	require.NotNil(t, s.desk.Card())
	assert.False(t, visible(s, s.pen.all))
	s.desk.CloseCard()
	assert.True(t, visible(s, s.pen.all))
	s.desk.SetReadOnly(true)
	s.night.Refresh()
	assert.False(t, visible(s, s.pen.all))
	write(s, ";")
	assert.False(t, s.pen.in.focused)
	assert.False(t, s.desk.Command("add.page").Enabled())
}

// visible reports whether an object and the panel around it are shown.
func visible(s *Screen, o fyne.CanvasObject) bool {
	for _, p := range s.night.Objects {
		if c, ok := p.(*fyne.Container); ok && len(c.Objects) > 0 && c.Objects[0] == o {
			return p.Visible() && o.Visible()
		}
	}
	return false
}

// Ensure that the log does not jump while a line is typed: the room for the reading only
// grows, until the line is stored.
func TestScribbleStandsStill(t *testing.T) {
	still(t)
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	write(s, ";")
	last := float32(0)
	for _, r := range "A 0105 landed 1lb10 dropper, colour gone 2320" {
		write(s, string(r))
		h := s.pen.all.Size().Height
		require.GreaterOrEqual(t, h, last)
		last = h
	}
	require.Less(t, last, float32(420))
	for range 44 {
		press(s, fyne.KeyBackspace)
		require.Equal(t, last, s.pen.all.Size().Height)
	}
	press(s, fyne.KeyBackspace)
	require.Less(t, s.pen.all.Size().Height, float32(40), "an empty line needs none")
}

// Ensure that a page is read as it is written, each line by itself, that choices and ticks
// are made by keys and by clicks, and that it is stored as one change.
func TestScribblePageByKeys(t *testing.T) {
	still(t)
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	before := len(s.desk.Night().Log.Entries)
	write(s, ":")
	require.True(t, s.modal.open())
	p := s.notes
	require.True(t, s.win.Canvas().Focused() == fyne.Focusable(p.in))
	p.in.SetText("A:\n0158 landed 1lb10\n2320 colour gone\nowl again\n0159 pull")
	assert.True(t, p.store.Disabled(), "a question is open")
	assert.Contains(t, p.sum.Text, "1 question open")
	press(s, fyne.KeyTab)
	require.True(t, p.board.Focused())
	p.line = 0
	press(s, fyne.KeyDown)
	press(s, fyne.KeyDown)
	assert.Equal(t, 2, p.line)
	write(s, "2")
	assert.False(t, p.store.Disabled())
	require.Len(t, p.m.Made(), 4)
	require.IsType(t, journal.Water{}, p.m.Made()[1])
	press(s, fyne.KeyDown)
	write(s, " ")
	require.Len(t, p.m.Made(), 3)

	sc, size := p.board.Scene()
	for _, h := range sc.Hits {
		if h.Ref == tickRef(4) {
			p.board.OnPick(own.Pick{At: h.Box.Center(), Hit: h, Found: true, Size: size})
		}
	}
	require.Len(t, p.m.Made(), 2)
	press(s, fyne.KeyEscape)
	require.False(t, s.modal.open())
	require.Len(t, s.desk.Night().Log.Entries, before)
	write(s, ":")
	assert.Contains(t, s.notes.in.Text, "owl again", "what stood on the page is there again")
	s.notes.doStore()
	require.False(t, s.modal.open())
	require.Len(t, s.desk.Night().Log.Entries, before+2)
	require.NoError(t, s.desk.Undo())
	require.Len(t, s.desk.Night().Log.Entries, before)
}

// Ensure that a reading keeps its texts apart and within its width, in all looks, for
// lines of every sort.
func TestReadingIsLegible(t *testing.T) {
	still(t)
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	m := s.desk.NewScribble()
	m.Set("A 0105 zorble landed 1lb10 orange point, lost dropper 0110\nlanded 2lb in the tail of the cauldron (a quiet take, I think, under the far bank by the stone)\nA alder 2240-2300\n" +
		"wheelbarrowwheelbarrowwheelbarrowwheelbarrowwheelbarrowwheelbarrow\nFri 3 July\nA landed 2241\nSat 4 July\nA:\npoint 4in full pale green spot 0110")
	for _, look := range state.Looks {
		s.desk.SetLook(look)
		for _, w := range []float64{268, 346, 640} {
			r := s.newReading(w)
			for i, l := range m.Lines() {
				r.at, r.way = 0, i
				r.line(l, readingPad)
			}
			sc := r.scene(0)
			var boxes []draw.TextBox
			for i := range sc.List.Len() {
				if op := sc.List.Op(i); op.Kind == draw.TextOp {
					boxes = append(boxes, draw.BoxOf(op.Text))
				}
			}
			require.Greater(t, len(boxes), 30)
			for i, b := range boxes {
				require.GreaterOrEqual(t, b.Text.Font.Size, 12.0)
				require.LessOrEqual(t, b.Box.Max.X, w, "%q at %v", b.Text.S, w)
				require.GreaterOrEqual(t, draw.Contrast(b.Text.Color, s.look().Panel), 4.5, "%s %q", look, b.Text.S)
				for _, o := range boxes[i+1:] {
					require.False(t, b.Overlaps(o), "%q and %q at %v", b.Text.S, o.Text.S, w)
				}
			}
		}
	}
}
