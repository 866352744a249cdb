package screen

import (
	"runtime"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// Ensure that playing says how fast it goes, that it has come to the end, and rings the
// fish that the cursor passes.
func TestPlaySays(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	newQueue(t) // the test is its clock
	s.focus(s.strip)
	n := s.desk.Night()
	s.desk.SetCursor(n.Contacts[0].At.Mid().Add(-time.Minute))
	write(s, " ")
	require.True(t, s.desk.Playing())
	assert.Equal(t, words.PlayingAt(10), s.foot.lastTold)
	write(s, "u")
	assert.Equal(t, words.PlayingAt(20), s.foot.lastTold)
	assert.False(t, s.pulsing)
	s.desk.Advance(100 * time.Millisecond)
	assert.True(t, s.pulsing, "no fish came up")
	s.desk.Advance(24 * time.Hour)
	assert.Equal(t, words.PlayedOut(), s.foot.lastTold)
	assert.False(t, s.pulsing)
}

// Ensure that while the night is played little of a board is painted, and a board that
// looks the same is left alone.
func TestPlayPaintsLittle(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	s.desk.SetCursor(s.desk.Night().From.Add(2 * time.Hour))
	for _, b := range []*own.Board{s.sketch, s.strip, s.log} {
		b.Repaint()
		require.Equal(t, 1.0, b.Painted())
	}
	s.desk.SetCursor(s.desk.Cursor().Add(10 * time.Second))
	s.strip.Repaint()
	assert.Less(t, s.strip.Painted(), 0.08)
	assert.Positive(t, s.strip.Painted())
}

// Ensure that while the night is played the sketch is drawn anew every few steps and when
// something is passed, and stands where the cursor does once playing has stopped.
func TestPlaySketchSteps(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	newQueue(t)
	first := s.desk.Night().Contacts[0].At.Mid()
	s.desk.SetCursor(first.Add(-3 * time.Minute))
	drawn := func(at time.Time) bool { // by the light that is said of a pool
		sc, size := s.sketch.Scene()
		v := s.sketchView()
		v.Cursor = at
		return sc.List.String() == scene.Sketch(s.desk.Night(), size, s.look(), v).List.String()
	}
	write(s, " ")
	renewed := 0
	for s.desk.Cursor().Before(first.Add(-30 * time.Second)) {
		s.desk.Advance(time.Second / 60)
		if drawn(s.desk.Cursor()) {
			renewed++
		}
	}
	assert.InDelta(t, 4, renewed, 1)
	for range 60 {
		if !s.desk.Cursor().Before(first) {
			break
		}
		s.desk.Advance(time.Second / 300)
	}
	assert.True(t, drawn(s.desk.Cursor()), "a fish came up and the sketch does not show it")
	s.desk.Advance(time.Second / 60)
	write(s, " ")
	require.False(t, s.desk.Playing())
	assert.True(t, drawn(s.desk.Cursor()), "it stands still elsewhere")
}

// Ensure that the log follows the cursor and stays where it is while nothing is passed.
func TestLogFollowsCursor(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	assert.Positive(t, s.log.Offset(), "a night opens at its end, the log at its beginning")
	seen := func(r journal.Ref) bool {
		sc, size := s.log.Scene()
		box, ok := sc.Box(r)
		return ok && box.Min.Y >= s.log.Offset() && box.Max.Y <= s.log.Offset()+size.H
	}
	s.desk.Select(journal.Ref{})
	s.desk.SetCursor(s.desk.Night().From)
	assert.Zero(t, s.log.Offset())
	for _, e := range s.desk.Night().Log.Sorted() {
		s.desk.SetCursor(s.desk.Night().Log.At(e).Mid().Add(time.Second))
		last := s.desk.LastPassed()
		assert.True(t, seen(last.Ref()), "%v at %v", last.Ref().Kind, s.desk.Cursor())
	}
	s.log.ScrollBy(-1000)
	s.desk.SetCursor(s.desk.Cursor().Add(time.Second))
	assert.Zero(t, s.log.Offset(), "it was scrolled away though nothing was passed")
}

// Ensure that keys go round the parts of the window and that the part decides what an
// arrow means.
func TestParts(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	s.focus(s.strip)
	var seen []fyne.Focusable
	for range 4 {
		press(s, fyne.KeyF6)
		seen = append(seen, s.win.Canvas().Focused())
	}
	assert.Equal(t, []fyne.Focusable{s.side.list, s.sketch, s.log, s.strip}, seen)
	press(s, fyne.KeyF8)
	press(s, fyne.KeyF9)
	press(s, fyne.KeyF6)
	assert.Equal(t, fyne.Focusable(s.sketch), s.win.Canvas().Focused(), "hidden parts are passed over")
	assert.False(t, s.log.Visible() && s.night.Layout.(*night).log.Visible())
	assert.Equal(t, state.OnSketch, s.desk.Part())

	was := s.desk.Cursor()
	s.desk.Select(journal.Ref{})
	press(s, fyne.KeyRight)
	assert.False(t, s.desk.Pool().IsZero())
	assert.Equal(t, was, s.desk.Cursor())
	pool, _ := s.desk.Night().Beat.Pool(s.desk.Pool())
	assert.Contains(t, s.sketch.Said(), pool.Name, "what a key picked out is not told")
	press(s, fyne.KeyDown)
	assert.NotContains(t, s.sketch.Said(), pool.Name+":")
	s.focus(s.strip)
	press(s, fyne.KeyRight)
	assert.NotEqual(t, was, s.desk.Cursor())
}

// Ensure that what was hidden, shown and dragged is so the next time, and that odd
// memories are left alone.
func TestSharesAreRemembered(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	l := s.night.Layout.(*night)
	wide, high := s.log.Size().Width, s.sketch.Size().Height
	l.across.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(-60, 0)})
	l.across.DragEnd()
	l.down.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(0, 40)})
	l.down.DragEnd()
	assert.InDelta(t, wide+60, s.log.Size().Width, 1)
	assert.InDelta(t, high+40, s.sketch.Size().Height, 1)
	press(s, fyne.KeyF9)
	press(s, fyne.KeyF2)
	assert.False(t, s.side.all.Visible())
	assert.True(t, l.legend.Visible())

	var again shares
	again.read(s.recall("shares"))
	assert.InDelta(t, s.shares.log, again.log, 0.5)
	assert.InDelta(t, s.shares.upper, again.upper, 0.001)
	assert.True(t, again.noSide && again.legend && !again.noLog)
	for _, odd := range []string{"", "nonsense", "9999 0 0 0 0 0", "200 -1 0 0 0 0", "NaN NaN NaN 0 0 0"} {
		kept := shares{side: sideWidth}
		kept.read(odd)
		assert.Equal(t, shares{side: sideWidth}, kept, odd)
	}
	l.across.DoubleTapped(nil)
	l.down.DoubleTapped(nil)
	assert.Zero(t, s.shares.log+s.shares.upper, "a double click on an edge puts it back")
}

// Ensure that the menu of a place begins a card with its time and the rod of its lane.
func TestMenuOnEmptyLane(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	n := s.desk.Night()
	run := n.Rods[1].Runs[0]
	sc, _ := s.strip.Scene()
	box, ok := sc.Box(run.Run.Ref())
	require.True(t, ok)
	at := fyne.NewPos(float32(box.Min.X)-60, float32(box.Min.Y)+15)
	s.strip.TappedSecondary(&fyne.PointEvent{Position: at, AbsolutePosition: at})
	require.NotEmpty(t, s.win.Canvas().Overlays().List(), "no menu opened")
	assert.Equal(t, run.Run.Rod, s.desk.Rod())
	assert.True(t, s.desk.Cursor().Before(run.From.Mid()))
	press(s, fyne.KeyEscape)
	assert.Empty(t, s.win.Canvas().Overlays().List())
	s.focus(s.strip)
	s.runID("add.fish")
	f, _ := s.desk.Card().Field("rod")
	assert.Equal(t, run.Run.Rod.String(), f.Value)
}

// Ensure that Enter on a pool opens what can be done there, by keys alone up to the card
// with that pool on it.
func TestEnterOnPool(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	s.desk.Select(journal.Ref{})
	s.focus(s.sketch)
	press(s, fyne.KeyRight)
	pool := s.desk.Pool()
	require.False(t, pool.IsZero())
	press(s, fyne.KeyReturn)
	require.NotEmpty(t, s.win.Canvas().Overlays().List(), "no menu opened")
	menu := s.win.Canvas().Focused()
	for range 5 { // down to Run …
		menu.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	}
	menu.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	require.NotNil(t, s.desk.Card())
	assert.Equal(t, journal.KindRun, s.desk.Card().Ref().Kind)
	f, _ := s.desk.Card().Field("pool")
	assert.Equal(t, pool.String(), f.Value)
}

// BenchmarkPlayFrame is one frame of playing without the cost of the window system: the
// cursor goes on, and what changed in the three boards is painted. What the heap gains by a
// frame is told too; an hour of play is
//
//	go test -tags ci -run '^$' -bench PlayFrame -benchtime 216000x ./ui/screen
func BenchmarkPlayFrame(b *testing.B) {
	s := newScreen(b, true, 1440, 900)
	open(b, s, "2026-07-04")
	s.desk.SetCursor(s.desk.Night().From)
	still := func() { // time passes by the loop alone
		s.desk.Play(true)
		s.play.Stop()
		s.play = startClock(time.Hour, func(time.Duration) {})
	}
	still()
	share := 0.0
	heap := func() float64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return float64(m.HeapAlloc)
	}
	frames, early := 0, 0.0
	for b.Loop() {
		if frames++; frames == 600 { // buffers have their size by then
			early = heap()
		}
		s.desk.Advance(time.Second / 60)
		if !s.desk.Playing() {
			still()
		}
		for _, board := range []*own.Board{s.sketch, s.strip, s.log} {
			board.Repaint()
			share += board.Painted() / 3
		}
	}
	b.ReportMetric(share/float64(b.N), "painted/frame")
	if early > 0 {
		b.ReportMetric(early/1e6, "heap-MB")
		b.ReportMetric((heap()-early)/float64(frames), "heap-B-gained/frame")
	}
}

// BenchmarkPanFrame is one step of moving the strip under the pointer: all of it is
// painted anew.
func BenchmarkPanFrame(b *testing.B) {
	s := newScreen(b, true, 1440, 900)
	open(b, s, "2026-07-04")
	s.desk.ZoomStrip(0.5, time.Time{})
	for i := 0; b.Loop(); i++ {
		s.desk.PanStrip(time.Duration(1-i/50%2*2) * 20 * time.Second)
		s.strip.Repaint()
		s.sketch.Repaint()
	}
}

// BenchmarkCarryFrame is one step of moving a fish in time: the night is built anew, with
// its light, and everything drawn.
func BenchmarkCarryFrame(b *testing.B) {
	s := newScreen(b, true, 1440, 900)
	open(b, s, "2026-07-04")
	require.True(b, s.desk.Lift(s.desk.Night().Contacts[2].Contact.Ref(), state.Whole))
	for i := 0; b.Loop(); i++ {
		s.desk.Carry(time.Duration(1+i%40) * time.Minute)
		for _, board := range []*own.Board{s.sketch, s.strip, s.log} {
			board.Repaint()
		}
	}
}
