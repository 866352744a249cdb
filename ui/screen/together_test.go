package screen

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
)

// inTogether enters the room on the demo.
func inTogether(t *testing.T, r Remember) (*Screen, *togetherRoom) {
	s := newScreenWith(t, true, 1280, 800, r)
	open(t, s, "2026-07-04")
	s.runID("view.room-together")
	require.Equal(t, state.TogetherRoom, s.desk.Room())
	room, ok := s.rooms.here().(*togetherRoom)
	require.True(t, ok)
	return s, room
}

// boxOn is where a board shows a record.
func boxOn(t *testing.T, b *own.Board, ref journal.Ref) draw.Point {
	sc, _ := b.Scene()
	box, ok := sc.Box(ref)
	require.True(t, ok, "%v is not shown", ref)
	return box.Center().Sub(draw.Pt(0, b.Offset()))
}

func mouse(p draw.Point) *desktop.MouseEvent {
	return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(float32(p.X), float32(p.Y))}, Button: desktop.MouseButtonPrimary}
}

// Ensure that the room shows what is chosen and that its buttons, keys and choosers all
// change it.
func TestTogetherRoom(t *testing.T) {
	s, r := inTogether(t, recall{})
	assert.Equal(t, "24 nights, 2026", r.title.Text())
	assert.True(t, r.board.Focused())
	write(s, "s3")
	assert.Equal(t, scene.StripsPicture, r.t.Picture())
	assert.Equal(t, timeline.GreyAxis, r.t.Axis())
	for _, b := range r.tools.buttons {
		if b.c.ID == "together.picture-pools" {
			test.Tap(b.b)
		}
	}
	assert.Equal(t, scene.PoolsPicture, r.t.Picture())
	for _, c := range r.choose.list {
		if c.name == "month" {
			require.Contains(t, c.in.Options, "Jul")
			c.in.SetSelected("Jul")
		}
	}
	assert.Equal(t, "9 nights, July 2026", r.title.Text())
	assert.Contains(t, r.how.Text(), "July 2026")
	s.focus(r.board)
	press(s, fyne.KeyF6)
	assert.True(t, r.picks.Focused())
	press(s, fyne.KeyDown)
	press(s, fyne.KeyDown)
	marked := r.t.Marked()
	write(s, " ")
	assert.Equal(t, "8 nights, July 2026", r.title.Text())
	for _, row := range r.t.Rows() {
		if row.Trip == marked {
			assert.False(t, row.In)
		}
	}
	assert.Contains(t, r.how.Text(), "by hand")
	for _, look := range []string{"paper", "lamp", "dusk"} {
		s.desk.SetLook(look)
		sc, _ := r.board.Scene()
		require.NotNil(t, sc.List)
	}
}

// Ensure that pointing at a fish joins it to itself and that going away lets go; that a
// click picks it out, and a double click opens its night there.
func TestTogetherByMouse(t *testing.T) {
	s, r := inTogether(t, recall{})
	fish := journal.Ref{}
	for _, l := range r.t.Sides().Light.Nights {
		if len(l.Fish) > 0 {
			fish = l.Fish[0].Contact.Ref()
		}
	}
	at := mouse(boxOn(t, r.board, fish))
	before, _ := r.board.Scene()
	r.board.MouseMoved(at)
	assert.Equal(t, fish, r.t.Over())
	after, _ := r.board.Scene()
	assert.NotEqual(t, before.List.Len(), after.List.Len(), "a line is drawn")
	r.board.MouseOut()
	assert.Zero(t, r.t.Over())
	at = mouse(boxOn(t, r.board, fish))
	r.board.MouseDown(at)
	r.board.MouseUp(at)
	assert.Equal(t, fish, r.t.Fish())
	assert.Equal(t, fish.Trip, r.t.Stands())
	r.board.DoubleTapped(&fyne.PointEvent{Position: fyne.NewPos(float32(boxOn(t, r.board, fish).X), float32(boxOn(t, r.board, fish).Y))})
	assert.Equal(t, state.NightRoom, s.desk.Room())
	assert.Equal(t, fish.Trip, s.desk.Trip())
	assert.Equal(t, fish, s.desk.Selected())
}

// Ensure that a click on a tick takes a night out, and one beside it has it stand out.
func TestTogetherPicks(t *testing.T) {
	_, r := inTogether(t, recall{})
	rows := r.t.Rows()
	tick := mouse(boxOn(t, r.picks, journal.Ref{Kind: scene.TickKind, ID: rows[2].Trip}))
	r.picks.MouseDown(tick)
	assert.Len(t, r.t.Sides().Light.Nights, 23)
	p := boxOn(t, r.picks, journal.Ref{Kind: journal.KindTrip, ID: rows[3].Trip})
	r.picks.MouseDown(mouse(p))
	assert.Equal(t, rows[3].Trip, r.t.Stands())
}

// Ensure that the room is as it was left when the window is opened again.
func TestTogetherComesBack(t *testing.T) {
	kept := recall{}
	s, r := inTogether(t, kept)
	write(s, "p4m")
	want := r.t.Encode()
	assert.Equal(t, want, kept["together"])
	_, again := inTogether(t, kept)
	assert.Equal(t, want, again.t.Encode())
}

// Ensure that the key to the marks is shown and taken away by its key.
func TestTogetherLegend(t *testing.T) {
	s, r := inTogether(t, recall{})
	tall := r.board.Size().Height
	press(s, fyne.KeyF2)
	assert.Less(t, r.board.Size().Height, tall)
	press(s, fyne.KeyF2)
	assert.Equal(t, tall, r.board.Size().Height)
}

// Ensure that picture and figures are saved where asked, and that a name that is taken is
// said in the dialog.
func TestTogetherSaves(t *testing.T) {
	kept := recall{"folder": t.TempDir()}
	s, _ := inTogether(t, kept)
	done := make(chan struct{}, 8)
	before := post
	post = func(f func()) { f(); done <- struct{}{} }
	t.Cleanup(func() { post = before })
	save := func(id string) {
		t.Helper()
		s.runID(id)
		require.True(t, s.modal.open())
		press(s, fyne.KeyReturn)
		<-done
	}
	save("together.picture")
	assert.False(t, s.modal.open())
	save("together.table")
	assert.False(t, s.modal.open())
	files, err := os.ReadDir(kept["folder"])
	require.NoError(t, err)
	var names []string
	for _, f := range files {
		names = append(names, f.Name())
	}
	assert.ElementsMatch(t, []string{"24-nights-2026.pdf", "24-nights-2026-steps.csv", "24-nights-2026-nights.csv", "24-nights-2026-fish.csv", "24-nights-2026-pools.csv", "24-nights-2026-runs.csv", "24-nights-2026-rigs.csv"}, names)
	text, err := os.ReadFile(filepath.Join(kept["folder"], "24-nights-2026-nights.csv"))
	require.NoError(t, err)
	assert.Equal(t, 24, strings.Count(string(text), "\n")-2)
	save("together.table")
	assert.True(t, s.modal.open(), "nothing is written over")
}

// BenchmarkTogetherHover is what pointing at another fish costs, with a season laid.
func BenchmarkTogetherHover(b *testing.B) {
	s := newScreen(b, true, 1280, 800)
	s.runID("view.room-together")
	r := s.rooms.here().(*togetherRoom)
	var fish []journal.Ref
	for _, l := range r.t.Sides().Light.Nights {
		for _, f := range l.Fish {
			fish = append(fish, f.Contact.Ref())
		}
	}
	i := 0
	for b.Loop() {
		i++
		r.t.Hover(fish[i%len(fish)])
		r.board.RenewIfOther()
		r.board.Repaint()
	}
}

// Ensure that where many nights are to be read the room is entered once they are, with a word
// until then; and not at all by somebody who has gone elsewhere meanwhile.
func TestTogetherReadsFirst(t *testing.T) {
	before, most := post, traitsAtOnce
	t.Cleanup(func() { post, traitsAtOnce = before, most })
	traitsAtOnce = 5
	s := newScreenWith(t, true, 1280, 800, recall{})
	open(t, s, "2026-07-04")
	acts := make(chan func(), 10)
	post = func(f func()) { acts <- f }
	s.runID("view.room-together")
	assert.Equal(t, state.NightRoom, s.desk.Room())
	s.runID("view.room-together") // impatience reads nothing twice
	for said := false; s.desk.Room() == state.NightRoom; said = true {
		if said {
			assert.Contains(t, s.foot.lastTold, "Reading nights: ")
		}
		(<-acts)()
	}
	assert.Equal(t, state.TogetherRoom, s.desk.Room())
	assert.Nil(t, s.rooms.reads)
	assert.Empty(t, s.foot.lastTold)

	s = newScreenWith(t, true, 1280, 800, recall{})
	open(t, s, "2026-07-04")
	s.runID("view.room-together")
	s.runID("view.room-season")
	for s.rooms.reads != nil {
		(<-acts)()
	}
	assert.Equal(t, state.SeasonRoom, s.desk.Room())
	assert.Empty(t, s.foot.lastTold)
}
