package screen

import (
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	own "gloamline/ui/widget"
)

// drag presses the button at a place of a board, moves in two steps and, unless held,
// lets go.
func drag(b *own.Board, from, to draw.Point, held bool) {
	pos := func(p draw.Point) fyne.Position { return fyne.NewPos(float32(p.X), float32(p.Y)) }
	b.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: pos(from)}, Button: desktop.MouseButtonPrimary})
	for _, share := range []float64{0.5, 1} {
		at := from.Add(to.Sub(from).Mul(share))
		b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: pos(at)}})
	}
	if !held {
		b.DragEnd()
	}
}

// Ensure that a fish dragged along the strip is stored at the minute it is let go at,
// and that Escape on the way leaves it where it was.
func TestDragFishInTime(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	newQueue(t)
	c := s.desk.Night().Contacts[0]
	when := func() journal.Spread {
		e, ok := s.desk.Night().Log.Find(c.Contact.ID)
		require.True(t, ok)
		return s.desk.Night().Log.At(e)
	}
	was := when()
	sc, board := s.strip.Scene()
	box, ok := sc.Box(c.Ref())
	require.True(t, ok)
	f := scene.Frame(s.desk.Night(), board, s.stripView())
	from := box.Center()
	to := draw.Pt(from.X+f.X(was.Mid().Add(23*time.Minute))-f.X(was.Mid()), from.Y)

	drag(s.strip, from, to, true)
	assert.NotEqual(t, was, when(), "the night shown does not follow")
	press(s, fyne.KeyEscape)
	assert.Equal(t, was, when())
	s.strip.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(600, 300)}})
	s.strip.DragEnd()
	assert.Equal(t, was, when(), "taken hold of again after Escape")

	drag(s.strip, from, to, false)
	assert.InDelta(t, 23, when().Mid().Sub(was.Mid()).Minutes(), 1)
	press(s, fyne.KeyComma) // keys that make characters come as such
	write(s, ",")
	s.settleNow()
	assert.InDelta(t, 22, when().Mid().Sub(was.Mid()).Minutes(), 1)
	require.NoError(t, s.desk.Undo())
	require.NoError(t, s.desk.Undo())
	assert.Equal(t, was, when(), "one drag is not one change")
}

// Ensure that the ends of a run's bracket are taken hold of by themselves, and that a run
// dragged over another of its rod is back where it was, with the reason in the footer.
func TestDragRun(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	run := s.desk.Night().Rods[0].Runs[0]
	bracket := func(at time.Time) draw.Point {
		sc, board := s.strip.Scene()
		box, ok := sc.Box(run.Run.Ref())
		require.True(t, ok)
		return draw.Pt(scene.Frame(s.desk.Night(), board, s.stripView()).X(at), box.Max.Y-8)
	}
	a, b := run.From.Mid(), run.To.Mid()
	at := func(t time.Time, minutes time.Duration) time.Time { return t.Add(minutes * time.Minute) }

	drag(s.strip, bracket(b), bracket(at(b, -10)), false)
	now := s.desk.Night().Rods[0].Runs[0]
	assert.Equal(t, a, now.From.Mid())
	assert.InDelta(t, -10, now.To.Mid().Sub(b).Minutes(), 1)

	mid := a.Add(b.Sub(a) / 3)
	drag(s.strip, bracket(mid), bracket(at(mid, 60)), false)
	again := s.desk.Night().Rods[0].Runs[0]
	assert.Equal(t, now.From, again.From)
	assert.Contains(t, s.foot.lastTold, "one rod is in one pool at a time. It is back where it was.")
	assert.Equal(t, s.foot.lastTold, s.strip.Said(), "the reason does not stand at the place")
}

// Ensure that a fish dragged on the sketch is where it was dropped.
func TestDragFishOnSketch(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	c := s.desk.Night().Contacts[2]
	sc, board := s.sketch.Scene()
	box, ok := sc.Box(c.Ref())
	require.True(t, ok)
	to := box.Center().Add(draw.Pt(9, 6))
	want := scene.SketchPlace(s.desk.Night(), board, s.sketchView(), to)
	drag(s.sketch, box.Center(), to, false)
	e, _ := s.desk.Night().Log.Find(c.Contact.ID)
	got, known := e.(journal.Contact).Spot.Get()
	require.True(t, known)
	assert.InDelta(t, float64(want.Lat), float64(got.Lat), 1e-9)
	assert.InDelta(t, float64(want.Lon), float64(got.Lon), 1e-9)
}

// Ensure that a press that slips a little moves nothing, neither in time nor in place.
func TestSlipMovesNothing(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	did, _ := s.desk.Journal().CanUndo()
	for _, b := range []*own.Board{s.strip, s.sketch} {
		for _, c := range s.desk.Night().Contacts {
			sc, _ := b.Scene()
			box, ok := sc.Box(c.Ref())
			require.True(t, ok)
			drag(b, box.Center(), box.Center().Add(draw.Pt(2, -2)), false)
			assert.Nil(t, s.desk.Lifted())
			r, err := s.desk.Journal().Get(c.Ref())
			require.NoError(t, err)
			assert.Equal(t, c.Contact, r)
		}
	}
	after, _ := s.desk.Journal().CanUndo()
	assert.Equal(t, did, after)
}

// Ensure that what keys moved is stored by itself once no stroke follows, as one change.
func TestNudgeSettles(t *testing.T) {
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	q := newQueue(t)
	s.focus(s.strip)
	c := s.desk.Night().Contacts[0]
	s.desk.Select(c.Ref())
	was := c.At.Mid()
	write(s, "...")
	assert.True(t, s.desk.Nudging())
	assert.Eventually(t, func() bool { q.drain(); return !s.desk.Nudging() }, 1e10, 1e7)
	e, _ := s.desk.Night().Log.Find(c.Contact.ID)
	assert.Equal(t, was.Add(3*time.Minute), s.desk.Night().Log.At(e).Mid())
	assert.Contains(t, s.foot.lastTold, "Fish moved to ")
	require.NoError(t, s.desk.Undo())
	e, _ = s.desk.Night().Log.Find(c.Contact.ID)
	assert.Equal(t, was, s.desk.Night().Log.At(e).Mid())
}
