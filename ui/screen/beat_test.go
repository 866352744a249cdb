package screen

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
)

// beatTable is the room of an empty journal with a beat that has its place.
func beatTable(t *testing.T) (*Screen, *beatRoom) {
	s := newScreen(t, false, 1280, 800)
	s.runID("view.room-beat")
	require.Equal(t, state.BeatRoom, s.desk.Room())
	r := s.rooms.here().(*beatRoom)
	r.desk.Set("name", "Home Beat")
	r.desk.Set("place", "54.984, -4.428")
	return s, r
}

// onPlan is where a point of the plan lies on its board.
func (r *beatRoom) onPlan(x, y float64) fyne.Position {
	q := scene.FrameOfPlan(r.planView(), size(r.plan)).At(geo.Point{X: units.Metres(x), Y: units.Metres(y)})
	return fyne.NewPos(float32(q.X), float32(q.Y))
}

func clickBoard(b *own.Board, at fyne.Position) {
	e := &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary}
	b.MouseDown(e)
	b.MouseUp(e)
}

func dragBoard(b *own.Board, from, to fyne.Position) {
	b.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: from}, Button: desktop.MouseButtonPrimary})
	for i := 1; i <= 4; i++ {
		f := float32(i) / 4
		b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(from.X+(to.X-from.X)*f, from.Y+(to.Y-from.Y)*f)}})
	}
	b.DragEnd()
	b.MouseUp(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: to}, Button: desktop.MouseButtonPrimary})
}

// Ensure that clicks draw, a double click closes, a corner can be dragged and the ground too, and
// that the wheel keeps what lies under the pointer there.
func TestBeatByPointer(t *testing.T) {
	s, r := beatTable(t)
	s.runID("draw.tool-pool")
	for _, p := range [][2]float64{{0, 0}, {60, 0}, {60, 20}, {0, 20}} {
		clickBoard(r.plan, r.onPlan(p[0], p[1]))
	}
	clickBoard(r.plan, r.onPlan(0, 20))
	r.plan.DoubleTapped(&fyne.PointEvent{Position: r.onPlan(0, 20)})
	d, _ := r.desk.Drawn()
	require.Len(t, d.Beat.Pools, 1)
	id := d.Beat.Pools[0].ID
	require.Len(t, d.Strands(id)[0].Points, 4, "the second click of the double click is no corner")

	press(s, fyne.KeyEscape)
	require.Equal(t, state.Choose, r.desk.Tool())
	dragBoard(r.plan, r.onPlan(60, 20), r.onPlan(70, 30))
	d, _ = r.desk.Drawn()
	q := d.Strands(id)[0].Points[2]
	assert.InDelta(t, 70, float64(q.X), 1.01)
	assert.InDelta(t, 30, float64(q.Y), 1.01)

	before := r.desk.View().Centre
	dragBoard(r.plan, r.onPlan(-60, -40), r.onPlan(-40, -40))
	assert.InDelta(t, float64(before.X)-20, float64(r.desk.View().Centre.X), 1, "the ground goes along")
	at := r.onPlan(30, 10)
	r.plan.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.NewDelta(0, 100)})
	now := r.onPlan(30, 10)
	assert.InDelta(t, at.X, now.X, 0.01)
	assert.InDelta(t, at.Y, now.Y, 0.01)
	clickBoard(r.plan, r.onPlan(-150, -90))
	sel, _, _ := r.desk.Selected()
	assert.True(t, sel.IsZero(), "a click on the ground lets go")
}

// Ensure that Tab stays on the plan and goes from corner to corner, that keys mean what the table
// says there and on the strip of the skyline, and that a letter typed into a field draws nothing.
func TestBeatByKeyboard(t *testing.T) {
	s, r := beatTable(t)
	s.focus(r.plan)
	for _, k := range "p" {
		s.typedRune(k)
	}
	require.Equal(t, state.DrawPool, r.desk.Tool())
	for _, way := range []fyne.KeyName{"", fyne.KeyRight, fyne.KeyUp} {
		for range 30 {
			if way != "" {
				press(s, way)
			}
		}
		r.plan.TypedRune(' ')
		if way == "" {
			r.plan.TypedRune(' ')
		}
	}
	press(s, fyne.KeyReturn)
	d, _ := r.desk.Drawn()
	require.Len(t, d.Beat.Pools, 1)
	press(s, fyne.KeyEscape)
	press(s, fyne.KeyTab)
	press(s, fyne.KeyTab)
	_, v, corner := r.desk.Selected()
	require.True(t, corner)
	assert.Equal(t, 1, v.Index)
	assert.Equal(t, fyne.Focusable(r.plan), s.win.Canvas().Focused())

	press(s, fyne.KeyF6)
	require.Equal(t, fyne.Focusable(r.sky), s.win.Canvas().Focused())
	r.sky.TypedRune('i')
	press(s, fyne.KeyUp)
	p, _ := r.desk.SkyPool()
	require.Len(t, p.Skyline, 1)
	assert.Equal(t, units.Degrees(10.5), p.Skyline[0].Altitude)
	press(s, fyne.KeyF6)
	in := s.win.Canvas().Focused()
	require.NotEqual(t, fyne.Focusable(r.sky), in)
	in.TypedRune('x')
	assert.Equal(t, state.Choose, r.desk.Tool())
	d, _ = r.desk.Drawn()
	assert.Equal(t, "x", d.Beat.Pools[0].Name, "the name was selected, and is replaced")
}

// Ensure that the skyline is drawn on its strip by the pointer.
func TestBeatSkyByPointer(t *testing.T) {
	s, r := beatTable(t)
	s.runID("draw.tool-pool")
	for _, p := range [][2]float64{{0, 0}, {60, 0}, {60, 20}} {
		clickBoard(r.plan, r.onPlan(p[0], p[1]))
	}
	require.NoError(t, r.desk.Close())
	at := func(b, a units.Degrees) fyne.Position {
		q := scene.FrameOfSkyline(r.skyView(), size(r.sky)).At(geo.SkyPoint{Bearing: b, Altitude: a})
		return fyne.NewPos(float32(q.X), float32(q.Y))
	}
	clickBoard(r.sky, at(90, 12))
	dragBoard(r.sky, at(200, 8), at(220, 15))
	p, _ := r.desk.SkyPool()
	require.Len(t, p.Skyline, 2)
	assert.InDelta(t, 220, float64(p.Skyline[1].Bearing), 1)
	assert.InDelta(t, 15, float64(p.Skyline[1].Altitude), 1)
	clickBoard(r.sky, at(90, 12))
	p, _ = r.desk.SkyPool()
	assert.Len(t, p.Skyline, 2, "a click on a point adds none")
	s.runID("draw.undo")
	p, _ = r.desk.SkyPool()
	assert.Len(t, p.Skyline, 1)
	r.sky.TappedSecondary(&fyne.PointEvent{Position: at(90, 12)})
	p, _ = r.desk.SkyPool()
	assert.Empty(t, p.Skyline, "the other button takes a point away")
}

// Ensure that storing a beat that stands asks, and that the panel tells what is wanting.
func TestBeatStoreAsks(t *testing.T) {
	s, r := beatTable(t)
	assert.NotEmpty(t, r.panel.faults.Objects, "no pool yet")
	s.runID("beat.store")
	require.True(t, s.modal.open(), "it says why not")
	press(s, fyne.KeyEscape)
	s.runID("draw.tool-pool")
	for _, p := range [][2]float64{{0, 0}, {60, 0}, {60, 20}} {
		clickBoard(r.plan, r.onPlan(p[0], p[1]))
	}
	require.NoError(t, r.desk.Close())
	assert.Empty(t, r.panel.faults.Objects)
	s.runID("beat.store")
	require.False(t, s.modal.open())
	require.True(t, s.desk.HasBeat())
	assert.True(t, r.panel.store.Disabled())
	r.desk.Set("name", "Deep Pool")
	assert.False(t, r.panel.store.Disabled())
	s.runID("beat.store")
	require.True(t, s.modal.open())
	press(s, fyne.KeyEscape)
	assert.True(t, r.desk.Changed())
}

// Ensure that the demo's beat can be looked at in every look without a text out of place.
func TestBeatRoomDraws(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	s.runID("view.room-beat")
	r := s.rooms.here().(*beatRoom)
	d, ok := r.desk.Drawn()
	require.True(t, ok, "the beat of the open night lies on the table")
	require.NotEmpty(t, d.Beat.Pools)
	for range state.Looks {
		s.runID("view.look")
		for _, b := range []*own.Board{r.plan, r.sky, r.rows} {
			sc, size := b.Scene()
			require.NotNil(t, sc.List)
			assert.Greater(t, size.W, 100.0)
			assert.Equal(t, s.look().Name, scene.LookNamed(s.desk.Look()).Name)
		}
	}
	r.tell()
	assert.NotEqual(t, draw.Size{}, size(r.plan))
}
