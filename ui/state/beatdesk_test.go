package state

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// shelf is a keeper in memory.
type shelf struct {
	data []byte
	err  error
}

func (s *shelf) Load() ([]byte, error) { return s.data, nil }
func (s *shelf) Save(data []byte) error {
	if s.err == nil {
		s.data = append([]byte(nil), data...)
	}
	return s.err
}

func pt(x, y float64) geo.Point { return geo.Point{X: units.Metres(x), Y: units.Metres(y)} }

// clicks clicks each place in turn and closes.
func clicks(t *testing.T, b *BeatDesk, ps ...geo.Point) {
	t.Helper()
	for _, p := range ps {
		require.NoError(t, b.Click(p, 2))
	}
	require.NoError(t, b.Close())
	require.Nil(t, b.Refused(), "%v", b.Refused())
}

// drawThree draws a straight river running east with three pools, by hand.
func drawThree(t *testing.T, b *BeatDesk) {
	t.Helper()
	b.New()
	b.Set("name", "Home Beat")
	b.Set("river", "Larrick Water")
	b.Set("place", "54.984, -4.428")
	b.Take(DrawRiver)
	clicks(t, b, pt(-20, 0), pt(150, 0), pt(420, 0))
	require.Equal(t, DrawPool, b.Tool(), "pools come next")
	for i, name := range []string{"Alder Pool", "Long Flat", "Kirk Pool"} {
		x := float64(i) * 130
		clicks(t, b, pt(x, -8), pt(x+80, -8), pt(x+80, 8), pt(x, 8))
		b.Set("name", name)
	}
}

// Ensure that an empty journal comes to a beat of three pools, stored as one change, on
// which a night's card opens; and that undo takes the beat back and loses nothing of the drawing.
func TestBeatFromNothing(t *testing.T) {
	d := emptyDesk(t)
	b := d.Beats()
	require.NoError(t, b.SetKeeper(&shelf{}))
	assert.Equal(t, words.NoBeatOnTable(), b.Prompt())
	b.New()
	assert.Equal(t, words.PlaceFirst(), b.Prompt())
	require.NoError(t, b.Click(pt(0, 0), 1))
	drawThree(t, b)

	s, ok := b.Drawn()
	require.True(t, ok)
	assert.Empty(t, b.Findings())
	assert.Equal(t, "Europe/London", s.Beat.Zone, "found from the place")
	var names []string
	for i, p := range s.Beat.InOrder() {
		names = append(names, p.Name)
		assert.Equal(t, i+1, p.Order)
	}
	assert.Equal(t, []string{"Alder Pool", "Long Flat", "Kirk Pool"}, names)

	assert.False(t, d.HasBeat())
	require.NoError(t, b.Store())
	assert.True(t, d.HasBeat())
	assert.False(t, b.Changed())
	c, err := d.NewNightCard()
	require.NoError(t, err)
	f, _ := c.Field("beat")
	assert.Equal(t, "Larrick Water, Home Beat", f.Shown())
	c.Set("rods.0.person", "Anna")
	require.NoError(t, c.Commit())
	assert.Len(t, d.Night().Beat.Pools, 3)

	require.NoError(t, d.Undo())
	require.NoError(t, b.Undo(), "the beat itself")
	assert.False(t, d.HasBeat())
	require.Len(t, b.now().Beat.Pools, 3, "the drawing is still there")
	assert.True(t, b.Changed())
	assert.False(t, b.Stands())
	require.NoError(t, b.Redo())
	assert.True(t, d.HasBeat())
	assert.False(t, b.Changed())
}

// Ensure that every step can be taken back to the empty table, and done again to the same.
func TestBeatUndoThroughout(t *testing.T) {
	d := emptyDesk(t)
	b := d.Beats()
	drawThree(t, b)
	b.Select(b.now().Beat.Pools[0].ID)
	require.NoError(t, b.MoveInOrder(+1))
	require.NoError(t, b.MoveInOrder(-1))
	b.Set("canopy", "partly")
	b.Set("skyline", "90 12, 180 20")
	require.NoError(t, b.JoinNext())
	end := b.now().Beat
	steps := 0
	for b.CanUndo() {
		require.NoError(t, b.Undo())
		steps++
	}
	assert.True(t, b.top.blank(), "%+v", b.now().Beat)
	assert.Equal(t, 15, steps, "name, river and place are one step each, as each pool and its name")
	for range steps {
		require.NoError(t, b.Redo())
	}
	assert.True(t, sameSketch(end, b.now().Beat))
	assert.False(t, b.CanRedo())
}

// Ensure that while a line is drawn undo takes back its corners one by one.
func TestBeatUndoCorners(t *testing.T) {
	b := emptyDesk(t).Beats()
	b.New()
	b.Set("place", "54.984, -4.428")
	b.Take(DrawPool)
	for _, p := range []geo.Point{pt(0, 0), pt(10, 0), pt(10, 10)} {
		require.NoError(t, b.Click(p, 0.5))
	}
	require.NoError(t, b.Undo())
	corners, _, _ := b.Pending()
	assert.Equal(t, geo.Path{pt(0, 0), pt(10, 0)}, corners)
	require.NoError(t, b.Close())
	require.NotNil(t, b.Refused())
	assert.Contains(t, b.Refused().Error(), "1 more corner at least")
	corners, _, _ = b.Pending()
	assert.Len(t, corners, 2, "what was drawn stays")
	require.NoError(t, b.Click(pt(12, 12), 0.5))
	require.NoError(t, b.Click(pt(12, 12.05), 0.5))
	require.Len(t, b.now().Beat.Pools, 1, "a second click on the last corner closes")
	assert.Len(t, b.now().Strands(b.Order()[0])[0].Points, 3, "and is no corner of its own")
	for _, p := range []geo.Point{pt(40, 0), pt(40, 0.05), pt(50, 0), pt(50, 10), pt(40.2, 0.1)} {
		require.NoError(t, b.Click(p, 0.5))
	}
	assert.Len(t, b.now().Beat.Pools, 2, "a click on the first corner closes")
}

// Ensure that an unfinished drawing, whatever is wrong with it, lies there the next time.
func TestBeatKept(t *testing.T) {
	d := emptyDesk(t)
	keep := &shelf{}
	b := d.Beats()
	require.NoError(t, b.SetKeeper(keep))
	b.New()
	assert.Empty(t, keep.data, "an empty drawing is nothing to keep")
	b.Set("place", "54.984, -4.428")
	b.Take(DrawPool)
	clicks(t, b, pt(0, 0), pt(40, 20), pt(40, 0), pt(0, 21)) // crosses itself
	require.NotEmpty(t, b.Findings())
	err := b.Store()
	what, _ := words.Explain(err)
	assert.Contains(t, what, "crosses itself")
	assert.False(t, d.HasBeat())
	id, _, _ := b.Selected()
	assert.Equal(t, b.now().Beat.Pools[0].ID, id, "what is wrong is picked out")
	require.NotNil(t, b.Refused())
	assert.InDelta(t, 20, float64(b.Refused().At.X), 1, "and told at its place")

	again := New(d.Journal(), d.now).Beats()
	require.NoError(t, again.SetKeeper(keep))
	require.Len(t, again.Rows(), 1)
	row := again.Rows()[0]
	assert.True(t, row.Draft && row.New && row.Open)
	assert.True(t, sameSketch(b.now().Beat, again.now().Beat))
	b.Discard()
	assert.Empty(t, keep.data)
	assert.Empty(t, b.Rows())

	b.New()
	keep.err = errors.New("the disk is full")
	b.Set("name", "Kirk Beat")
	assert.ErrorContains(t, b.KeepFault(), "full")
	assert.Equal(t, "Kirk Beat", b.now().Beat.Name, "and nothing is lost of it meanwhile")
}

// Ensure that drawings of another version are left alone.
func TestBeatKeptByLater(t *testing.T) {
	keep := &shelf{data: []byte(`{"gloamline_drafts":9,"drafts":[]}`)}
	b := emptyDesk(t).Beats()
	assert.ErrorContains(t, b.SetKeeper(keep), "version 9")
	b.New()
	b.Set("name", "Home Beat")
	assert.Contains(t, string(keep.data), `"gloamline_drafts":9`)
	keep.data = []byte(`{"gloamline`)
	assert.Error(t, emptyDesk(t).Beats().SetKeeper(keep))
}

// Ensure that corners can be taken hold of, made and deleted, and that a drag is one step.
func TestBeatBend(t *testing.T) {
	b := emptyDesk(t).Beats()
	drawThree(t, b)
	id := b.now().Beat.InOrder()[0].ID
	b.Take(Choose)
	b.Select(id)
	g, ok := b.GraspAt(pt(0.4, -7.8), 1)
	require.True(t, ok && g.Corner)
	require.True(t, b.Hold(g, pt(0.4, -7.8)))
	b.Drag(pt(-3.3, -6.2), 1)
	b.Drag(pt(-5.2, -4.9), 1)
	p := b.now().Strands(id)[0].Points[0]
	assert.InDelta(t, -5, float64(p.X), 1e-6, "on the grid")
	assert.InDelta(t, -5, float64(p.Y), 1e-6)
	require.NoError(t, b.Release())
	require.NoError(t, b.Undo())
	assert.InDelta(t, 0, float64(b.now().Strands(id)[0].Points[0].X), 1e-6, "one step back, all the way")

	g, ok = b.GraspAt(pt(40.3, -8.1), 1)
	require.True(t, ok && g.Edge, "the middle of an edge")
	require.True(t, b.Hold(g, pt(40.3, -8.1)))
	b.Drag(pt(40, -12), 1)
	require.NoError(t, b.Release())
	assert.Len(t, b.now().Strands(id)[0].Points, 5)
	require.NoError(t, b.Delete())
	assert.Len(t, b.now().Strands(id)[0].Points, 4)

	b.Select(id)
	g, ok = b.GraspAt(pt(40, 0), 1)
	require.True(t, ok && g.ID == id && !g.Corner)
	require.True(t, b.Hold(g, pt(40, 0)))
	b.Drag(pt(42.2, 1.1), 1)
	assert.True(t, b.LetGo(), "put back")
	assert.InDelta(t, 0, float64(b.now().Strands(id)[0].Points[0].X), 1e-6)
	_, ok = b.GraspAt(pt(40, 200), 1)
	assert.False(t, ok)
}

// Ensure that a beat can be drawn by keys alone.
func TestBeatByKeys(t *testing.T) {
	d := emptyDesk(t)
	b := d.Beats()
	require.True(t, d.EnterRoom(BeatRoom))
	press := func(keys ...Key) {
		for _, k := range keys {
			c := d.CommandFor(k)
			require.NotNil(t, c, "%s", k)
			require.True(t, c.Enabled(), "%s", c.ID)
			require.NoError(t, c.Run())
		}
	}
	times := func(n int, k Key) {
		for range n {
			press(k)
		}
	}
	press(key("N"))
	b.Set("place", "54.984, -4.428")
	d.SetPart(OnPlan)
	press(key("G"), key("G"), key("P"), key("Space"), key("Space")) // a grid of 5 m
	require.Equal(t, units.Metres(5), b.Grid())
	times(8, key("Right"))
	press(key("Space"))
	times(3, key("Up"))
	press(key("Space"), key("Return"))
	require.Len(t, b.now().Beat.Pools, 1)
	press(key("Escape"), key("Tab"), key("Tab"))
	_, v, ok := b.Selected()
	require.True(t, ok)
	assert.Equal(t, 1, v.Index)
	before := b.now().Strands(v.Of)[0].Points[1]
	press(key("Left"), key("Left"))
	after := b.now().Strands(v.Of)[0].Points[1]
	assert.InDelta(t, -10, float64(after.X-before.X), 1e-6)
	press(ctrl("Z"))
	assert.Equal(t, before, b.now().Strands(v.Of)[0].Points[1], "strokes in a row are one step")
	press(key("I"))
	assert.Len(t, b.now().Strands(v.Of)[0].Points, 4)
	press(key("Delete"))
	assert.Len(t, b.now().Strands(v.Of)[0].Points, 3)
}

// Ensure that marks, ends and measures do what their tools say.
func TestBeatTools(t *testing.T) {
	b := emptyDesk(t).Beats()
	drawThree(t, b)
	for _, tool := range []Tool{MarkEntry, MarkHazard, MarkLie, MarkThing} {
		b.Take(tool)
		require.NoError(t, b.Click(pt(30, 12), 0.1))
		f, ok := featureOf(b.now().Beat, b.sel)
		require.True(t, ok)
		assert.Equal(t, geo.Role(tool), f.Role)
		b.Set("role", "hazard")
		f, _ = featureOf(b.now().Beat, b.sel)
		assert.Equal(t, geo.RoleHazard, f.Role)
	}
	b.Take(MarkEnds)
	b.Select(geo.ID{})
	require.NoError(t, b.Click(pt(900, 900), 1))
	require.NotNil(t, b.Refused(), "no pool there")
	require.NoError(t, b.Click(pt(2, 0), 0.5))
	require.NoError(t, b.Click(pt(78, 0), 0.5))
	p, _ := b.now().Beat.Pool(b.Order()[0])
	assert.False(t, p.Head.IsZero() || p.Tail.IsZero())
	b.Take(DrawTrees)
	clicks(t, b, pt(0, 20), pt(50, 20), pt(50, 40))
	b.Set("canopy", "closed")
	f, _ := featureOf(b.now().Beat, b.sel)
	assert.Equal(t, geo.Closed, f.Canopy)
	b.Take(Measure)
	require.NoError(t, b.Click(pt(0, 60), 0.1))
	require.NoError(t, b.Click(pt(30, 100), 0.1))
	assert.Equal(t, "50 m so far. Enter ends it.", b.Prompt())
	b.Take(DrawRiver)
	require.NoError(t, b.Click(pt(0, 200), 0.1))
	require.NoError(t, b.Click(pt(30, 210), 0.1))
	require.NoError(t, b.Close())
	require.NotNil(t, b.Refused())
	assert.Contains(t, b.Refused().What, "Banks are drawn already")
	for _, tool := range append(Tools, PlaceTracing) {
		b.Take(tool)
		assert.NotEmpty(t, b.Prompt(), tool)
		assert.NotEmpty(t, words.ToolName(string(tool)), tool)
	}
}

// Ensure that the second line of a river by single banks is the other one, and that the pool
// tool comes when both are drawn.
func TestBeatBankByBank(t *testing.T) {
	b := emptyDesk(t).Beats()
	b.New()
	b.Set("place", "54.984, -4.428")
	b.Take(DrawBank)
	assert.Contains(t, b.Prompt(), "left")
	clicks(t, b, pt(0, 10), pt(100, 12))
	assert.Contains(t, b.Prompt(), "right")
	clicks(t, b, pt(0, -10), pt(100, -12))
	assert.Equal(t, DrawPool, b.Tool())
	sides := map[geo.Bank]int{}
	for _, f := range b.now().Beat.Banks() {
		sides[f.Bank]++
	}
	assert.Equal(t, map[geo.Bank]int{geo.TrueLeft: 1, geo.TrueRight: 1}, sides)
}
