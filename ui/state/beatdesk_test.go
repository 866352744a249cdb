package state

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
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
	corners, _, _ = b.Pending()
	assert.Len(t, corners, 3, "the second of a double click is none of its own")
	require.NoError(t, b.Click(pt(0.2, 0.1), 0.5))
	assert.Len(t, b.now().Beat.Pools, 1, "a click on the first corner closes")
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

// fished is a stored beat with a night on it that was fished in its first pool.
func fished(t *testing.T) (*Desk, *BeatDesk) {
	d := emptyDesk(t)
	b := d.Beats()
	drawThree(t, b)
	require.NoError(t, b.Store())
	c, err := d.NewNightCard()
	require.NoError(t, err)
	c.Set("rods.0.person", "Anna")
	require.NoError(t, c.Commit())
	run, err := d.AddCard(journal.KindRun)
	require.NoError(t, err)
	for _, f := range [][2]string{{"when", "23:00"}, {"until", "23:40"}, {"pool", "Alder Pool"}} {
		run.Set(f[0], f[1])
	}
	require.NoError(t, run.Commit())
	return d, b
}

// Ensure that a changed beat asks whether it was drawn wrong or has changed, that old nights
// keep what was true then, that what a split pool became is recorded, and that each answer is one change.
func TestBeatChangedFrom(t *testing.T) {
	d, b := fished(t)
	alder := b.now().Beat.InOrder()[0]
	b.Select(alder.ID)
	b.Take(SplitPool)
	require.NoError(t, b.Click(pt(40, -20), 1))
	require.NoError(t, b.Click(pt(40, 20), 1))
	require.Nil(t, b.Refused())
	require.Len(t, b.now().Beat.Pools, 4)
	assert.ErrorIs(t, b.Store(), ErrAsk)
	q, err := b.Question()
	require.NoError(t, err)
	assert.Equal(t, 1, q.Nights)
	assert.Equal(t, []string{"Alder Pool"}, q.Lost)
	assert.False(t, q.Elsewhere)

	assert.ErrorContains(t, b.ChangeFrom("never"), "never")
	seq := lastSeq(t, d)
	require.NoError(t, b.ChangeFrom("10 July 2026"))
	assert.Equal(t, seq+1, lastSeq(t, d))
	r, err := journal.One[journal.Beat](d.Journal(), b.now().Beat.ID)
	require.NoError(t, err)
	require.Len(t, r.Revisions, 2)
	assert.Len(t, r.On(journal.Date{Year: 2026, Month: 7, Day: 9}).Pools, 3)
	assert.Len(t, r.On(journal.Date{Year: 2026, Month: 7, Day: 10}).Pools, 4)
	assert.Len(t, r.Successors[alder.ID], 2)
	assert.Len(t, d.Night().Beat.Pools, 3, "the night keeps what was true then")
	assert.Equal(t, "Alder Pool", d.Night().Beat.InOrder()[0].Name)

	b.Select(b.now().Beat.InOrder()[0].ID)
	b.Set("name", "Alder Head")
	assert.ErrorContains(t, b.ChangeFrom("1 July 2026"), "Choose a later evening")
	require.NoError(t, b.Undo(), "the name")
	require.NoError(t, b.Undo(), "and the stored change")
	assert.Len(t, b.now().Beat.Pools, 3)
	assert.False(t, b.Changed())
}

// Ensure that a correction changes what all nights see, as one change.
func TestBeatCorrect(t *testing.T) {
	d, b := fished(t)
	b.Select(b.now().Beat.InOrder()[0].ID)
	b.Set("name", "Alder Stream")
	assert.Equal(t, "Alder Pool", d.Night().Beat.InOrder()[0].Name)
	require.NoError(t, b.Correct())
	assert.Equal(t, "Alder Stream", d.Night().Beat.InOrder()[0].Name)
	assert.False(t, b.Changed())
	require.NoError(t, d.Undo())
	assert.Equal(t, "Alder Pool", d.Night().Beat.InOrder()[0].Name)
	assert.Equal(t, "Alder Pool", b.now().Beat.InOrder()[0].Name, "the table goes along")

	require.NoError(t, b.Delete())
	err := b.Correct()
	assert.Equal(t, journal.Conflict, journal.KindOf(err), "a pool that was fished in cannot never have been: %v", err)
	assert.True(t, b.Changed())
	require.NoError(t, b.ChangeFrom("10 July 2026"))
}

func lastSeq(t *testing.T, d *Desk) uint64 {
	t.Helper()
	cs, err := d.Journal().Changes(0, 1000)
	require.NoError(t, err)
	return uint64(len(cs))
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

// Ensure that the skyline of a pool is drawn on the strip, by keys, typed and taken over, each
// a step of its own.
func TestBeatSkyline(t *testing.T) {
	d := emptyDesk(t)
	b := d.Beats()
	drawThree(t, b)
	ids := b.Order()
	b.Select(ids[0])
	b.GraspSky(geo.SkyPoint{Bearing: 90.2, Altitude: 11.9}, 4, 3)
	b.DragSky(geo.SkyPoint{Bearing: 95.1, Altitude: 14.2})
	require.NoError(t, b.ReleaseSky())
	p, _ := b.SkyPool()
	assert.Equal(t, geo.Skyline{{Bearing: 95, Altitude: 14}}, p.Skyline, "to the half degree")
	b.GraspSky(geo.SkyPoint{Bearing: 200, Altitude: 5}, 4, 3)
	require.NoError(t, b.ReleaseSky())
	b.GraspSky(geo.SkyPoint{Bearing: 94, Altitude: 13}, 4, 3)
	require.NoError(t, b.ReleaseSky())
	p, _ = b.SkyPool()
	assert.Equal(t, geo.Skyline{{Bearing: 95, Altitude: 14}, {Bearing: 200, Altitude: 5}}, p.Skyline, "a click on a point moves nothing")
	b.NextSky(+1)
	require.NoError(t, b.NudgeSky(0, 0.5))
	require.NoError(t, b.NudgeSky(0, 0.5))
	require.NoError(t, b.Undo())
	p, _ = b.SkyPool()
	assert.Equal(t, units.Degrees(5), p.Skyline[1].Altitude)

	b.Set("skyline", "90 12, 120 115")
	f := fieldOf(b, "skyline")
	assert.Equal(t, "90 12, 120 115", f.Value, "what cannot be read stays")
	assert.Contains(t, f.Error, "115")
	b.Set("skyline", "90 12, 120 15")
	assert.Empty(t, fieldOf(b, "skyline").Error)
	b.Select(ids[1])
	b.Set("skyline as", ids[0].String())
	p, _ = b.SkyPool()
	assert.Equal(t, geo.Skyline{{Bearing: 90, Altitude: 12}, {Bearing: 120, Altitude: 15}}, p.Skyline)
	require.NoError(t, b.ReadSky(reader("bearing,altitude\n100,8\n200,12\n"), -2))
	p, _ = b.SkyPool()
	assert.Equal(t, units.Degrees(98), p.Skyline[0].Bearing)
	what, do := words.Explain(b.ReadSky(reader("90,95\n"), 0))
	assert.Contains(t, what, "Line 1 of the list")
	assert.NotEmpty(t, do)

	assert.Equal(t, journal.Date{Year: 2026, Month: 7, Day: 4}, b.Evening(), "in the morning, last night")
	b.StepEvening(+2)
	assert.Equal(t, journal.Date{Year: 2026, Month: 7, Day: 6}, b.Evening())
	b.StepEvening(0)
	assert.Equal(t, journal.Date{Year: 2026, Month: 7, Day: 4}, b.Evening())
}

func fieldOf(b *BeatDesk, id string) Field {
	for _, f := range b.Fields() {
		if f.ID == id {
			return f
		}
	}
	return Field{}
}

// Ensure that a place is read in any notation, that its zone follows until one is chosen, and
// that what cannot be read is told at the field and changes nothing.
func TestBeatPlace(t *testing.T) {
	b := emptyDesk(t).Beats()
	b.New()
	for text, zone := range map[string]string{"NX 12345 67890": "Europe/London", "geo:60.5,6.5": "Europe/Oslo", "53°47'S 67°42'W": "America/Argentina/Ushuaia"} {
		b.Set("place", text)
		assert.Empty(t, fieldOf(b, "place").Error, text)
		assert.Equal(t, zone, b.now().Beat.Zone, text)
	}
	at := b.now().Beat.At
	b.Set("place", "55.1")
	assert.NotEmpty(t, fieldOf(b, "place").Error)
	assert.Equal(t, "55.1", fieldOf(b, "place").Value)
	assert.Equal(t, at, b.now().Beat.At)
	b.Set("zone", "Nowhere/Land")
	assert.Contains(t, fieldOf(b, "zone").Error, "Nowhere/Land")
	b.Set("zone", "Europe/Dublin")
	b.Set("place", "55.1, -4.6")
	assert.Equal(t, "Europe/Dublin", b.now().Beat.Zone, "chosen by hand")
	b.Set("place", "54.99, -7.36")
	var near []string
	for _, c := range fieldOf(b, "zone").Choices {
		near = append(near, c.Value)
	}
	assert.Equal(t, []string{"Europe/London", "Europe/Dublin"}, near, "beside a border both are offered")
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

// Ensure that a drawing that was changed stays when its beat changes elsewhere, and that storing
// it says so.
func TestBeatChangedElsewhere(t *testing.T) {
	d, b := fished(t)
	b.Select(b.now().Beat.InOrder()[0].ID)
	b.Set("name", "Mine")
	r, err := journal.One[journal.Beat](d.Journal(), b.now().Beat.ID)
	require.NoError(t, err)
	r.Revisions[0].Shape.Name = "Other"
	_, err = d.Journal().Amend(r)
	require.NoError(t, err)
	assert.Equal(t, "Mine", b.now().Beat.InOrder()[0].Name)
	q, err := b.Question()
	require.NoError(t, err)
	assert.True(t, q.Elsewhere)
}
