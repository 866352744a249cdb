package intake_test

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/gauge"
	"gloamline/journal/intake"
	"gloamline/timeline"
)

// Ensure that a track, two pictures and a gauge's file make a night in one change, that one
// undo takes all of it back, and that the same files then propose the same again.
func TestWholeNight(t *testing.T) {
	w := newWorld(t, "anna")
	files := []*intake.File{w.photo("2026:07:05 00:30:00", "a"), w.track(""), w.river(0), w.photo("2026:07:04 12:30:00", "b")}
	b := w.propose(w.order(), files...)
	runs := of[journal.Run](b)
	require.Len(t, runs, len(w.walk.Runs))
	for i, p := range runs {
		r := p.Record.(journal.Run)
		assert.Equal(t, w.walk.Runs[i].Pool, r.Pool)
		assert.Equal(t, journal.AboutTime, r.When.Kind)
		assert.Equal(t, "track", r.From.How)
		assert.True(t, p.Ticked)
	}
	require.Len(t, of[journal.Photo](b), 2)
	require.Len(t, of[journal.Series](b), 1)
	require.Len(t, of[journal.Track](b), 1)
	assert.Len(t, of[journal.Contact](b), 2, "a fish for each picture, offered")
	pic := of[journal.Photo](b)[1].Record.(journal.Photo)
	assert.Equal(t, time.Date(2026, 7, 4, 23, 30, 0, 0, time.UTC), b.Log.Spread(pic.When).Mid())
	assert.True(t, pic.Spot.Known(), "the track says where")
	assert.NotEmpty(t, pic.Thumb)
	assert.Equal(t, "fish.jpg", pic.Link)
	require.Len(t, b.Questions, 1)
	assert.Equal(t, intake.WhichZone, b.Questions[0].Kind)
	assert.Len(t, b.Questions[0].Sources, 2, "asked once for the batch")

	before := w.night()
	c := w.commit(b, b.Ticks())
	assert.Equal(t, "import", c.Did)
	l := w.night()
	assert.Len(t, entries[journal.Run](l), len(w.walk.Runs))
	assert.Len(t, entries[journal.Photo](l), 2)
	assert.Empty(t, entries[journal.Contact](l), "a fish is accepted by hand")
	faults, err := w.j.Check()
	require.NoError(t, err)
	assert.Empty(t, faults)

	_, err = w.j.Undo()
	require.NoError(t, err)
	assert.Equal(t, before.Entries, w.night().Entries)
	for _, k := range []journal.Kind{journal.KindSource, journal.KindTrack, journal.KindSeries, journal.KindDecision} {
		assert.Empty(t, live(t, w.j, k), k)
	}
	again := w.propose(w.order(), files...)
	assert.Equal(t, len(b.Proposals), len(again.New()))
}

func live(t *testing.T, j *journal.Journal, k journal.Kind) (n []journal.Record) {
	add := func(rs []journal.Record, err error) { require.NoError(t, err); n = rs }
	switch k {
	case journal.KindSource:
		add(records[journal.Source](j))
	case journal.KindTrack:
		add(records[journal.Track](j))
	case journal.KindSeries:
		add(records[journal.Series](j))
	case journal.KindDecision:
		add(records[journal.Decision](j))
	}
	return n
}

func records[T journal.Record](j *journal.Journal) ([]journal.Record, error) {
	rs, err := journal.All[T](j)
	var out []journal.Record
	for _, r := range rs {
		out = append(out, r)
	}
	return out, err
}

// Ensure that importing twice changes nothing.
func TestTwice(t *testing.T) {
	w := newWorld(t, "anna")
	files := []*intake.File{w.track(""), w.photo("2026:07:05 00:30:00", ""), w.river(0)}
	b := w.propose(w.order(), files...)
	w.commit(b, all(b))
	l := w.night()
	b = w.propose(w.order(), files...)
	assert.Empty(t, b.New())
	assert.Empty(t, b.Ticks())
	for _, s := range b.Sources {
		assert.True(t, s.Known)
	}
	assert.Zero(t, w.commit(b, b.Ticks()))
	assert.Zero(t, w.commit(b, all(b)), "even if all are asked for again")
	assert.Equal(t, l.Entries, w.night().Entries)
	b = w.propose(w.order(), files[0], files[0])
	assert.Contains(t, kinds(b.Sources[1].Remarks), intake.Twice)
}

// Ensure that what was rejected, or removed later, does not come back, whether the entry or
// its whole night was removed; what nobody chose for does; and that what was decided can be
// asked for by its key.
func TestDoesNotComeBack(t *testing.T) {
	w := newWorld(t, "anna")
	f := w.track("")
	b := w.propose(w.order(), f)
	runs := of[journal.Run](b)
	w.commit(b, intake.Choices{
		runs[0].Key: {Do: intake.Reject},
		runs[1].Key: {Do: intake.Accept},
		runs[2].Key: {Do: intake.Accept},
	})
	_, err := w.j.Remove(runs[1].Record.Ref())
	require.NoError(t, err)
	b = w.propose(w.order(), f)
	past := map[string]journal.Verdict{}
	for _, p := range b.Decided() {
		past[p.Key] = p.Past
	}
	assert.Equal(t, map[string]journal.Verdict{runs[0].Key: journal.Rejected, runs[1].Key: journal.Deleted, runs[2].Key: journal.Accepted}, past)
	assert.NotContains(t, b.Ticks(), runs[0].Key)
	assert.NotContains(t, b.Ticks(), runs[1].Key)
	assert.Contains(t, b.Ticks(), runs[3].Key)
	w.commit(b, b.Ticks())
	assert.Len(t, entries[journal.Run](w.night()), len(w.walk.Runs)-2)

	b = w.propose(w.order(), f)
	assert.Empty(t, b.Ticks())
	w.commit(b, intake.Choices{runs[0].Key: {Do: intake.Accept}})
	assert.Len(t, entries[journal.Run](w.night()), len(w.walk.Runs)-1)
	b = w.propose(w.order(), f)
	p, ok := b.Find(runs[0].Key)
	require.True(t, ok)
	assert.Equal(t, journal.Accepted, p.Past)
}

// Ensure that a run is known again though a later detector gives it other ends, or an
// offset of the watch was found since.
func TestKnownAgain(t *testing.T) {
	w := newWorld(t, "anna")
	f := w.track("")
	b := w.propose(w.order(), f)
	w.commit(b, b.Ticks())
	o := w.order()
	d := intake.Usual()
	d.Settle, d.ReelIn = 2*time.Minute, 4*time.Minute
	o.Detector = &d
	o.Clocks = map[string]time.Duration{"invented": 90 * time.Second}
	b = w.propose(o, f)
	assert.Empty(t, b.New())
	assert.Equal(t, 90*time.Second, b.Sources[0].Record.Offset)
}

// Ensure that identities stay the same from one look to the next, so that edits hold, but
// that one removed is not used again.
func TestIdentities(t *testing.T) {
	w := newWorld(t, "anna")
	f := w.track("")
	o := w.order()
	o.IDs = map[string]journal.ID{}
	a, b := w.propose(o, f), w.propose(o, f)
	for i := range a.Proposals {
		assert.Equal(t, a.Proposals[i].Record.Ref(), b.Proposals[i].Record.Ref())
	}
	edited := of[journal.Run](a)[0].Record.(journal.Run)
	edited.Note = "the first cast was later"
	w.commit(b, intake.Choices{of[journal.Run](b)[0].Key: {Do: intake.Accept, Record: edited}})
	assert.Equal(t, "the first cast was later", entries[journal.Run](w.night())[0].Note)
	_, err := w.j.Remove(edited.Ref())
	require.NoError(t, err)
	assert.NotEqual(t, edited.ID, of[journal.Run](w.propose(o, f))[0].Record.Ref().ID)
}

// Ensure that an offset moves all that the device says, and is stored with the file; that the
// next file of the device offers it, and takes it only when told.
func TestOffset(t *testing.T) {
	w := newWorld(t, "anna")
	o := w.order()
	o.Clocks = map[string]time.Duration{"invented": -time.Hour}
	b := w.propose(o, w.track(""))
	runs := of[journal.Run](b)
	require.NotEmpty(t, runs)
	off := runs[0].Record.(journal.Run).When.Lo.Add(intake.RunSlack).Sub(w.walk.Runs[0].From)
	assert.Less(t, (off + time.Hour).Abs(), 3*time.Minute)
	w.commit(b, b.Ticks())
	sources, err := journal.All[journal.Source](w.j)
	require.NoError(t, err)
	require.Len(t, sources, 1)
	assert.Equal(t, -time.Hour, sources[0].Offset)
	assert.Equal(t, "invented", sources[0].Device)

	b = w.propose(w.order(), w.track("another file"))
	assert.Equal(t, intake.Hint{Offset: -time.Hour, From: intake.FromBefore}, b.Sources[0].Hint)
	assert.Zero(t, b.Sources[0].Record.Offset)
}

// Ensure that with two rods a track waits to be given to one, and then is that one's.
func TestTwoRods(t *testing.T) {
	w := newWorld(t, "anna", "colm")
	b := w.propose(w.order(), w.track(""))
	require.Len(t, b.Questions, 1)
	assert.Equal(t, intake.Question{Kind: intake.WhoseTrack, Sources: []int{0}}, b.Questions[0])
	assert.Empty(t, b.Proposals)
	o := w.order()
	o.Rod = id("rod of colm")
	b = w.propose(o, w.track(""))
	assert.Empty(t, b.Questions)
	for _, p := range of[journal.Run](b) {
		assert.Equal(t, id("rod of colm"), p.Record.(journal.Run).Rod)
	}
	w.commit(b, b.Ticks())
	tracks, err := journal.All[journal.Track](w.j)
	require.NoError(t, err)
	require.Len(t, tracks, 1)
	assert.Equal(t, journal.Of(id("rod of colm")), tracks[0].Rod)

	w = newWorld(t)
	b = w.propose(w.order(), w.track(""))
	assert.Equal(t, intake.NoRods, b.Questions[0].Kind)
}

// Ensure that bad files, files of other nights and files without times have their remark
// and leave the others alone.
func TestRemarks(t *testing.T) {
	w := newWorld(t, "anna")
	b := w.propose(w.order(),
		readBytes("x.gpx", []byte("<gpx>"), intake.ReadOptions{}),
		read(t, invented(t, "night_track.gpx"), intake.ReadOptions{}),
		readBytes("y.gpx", []byte(`<gpx><trk><trkseg><trkpt lat="55" lon="-4"/></trkseg></trk></gpx>`), intake.ReadOptions{}),
		read(t, invented(t, "night_offset_plus1.jpg"), intake.ReadOptions{}),
		read(t, invented(t, "ea_flood_readings_690140.json"), intake.ReadOptions{}),
		read(t, invented(t, "usgs_dv_02177000.rdb"), intake.ReadOptions{}),
		w.track(""))
	var got []intake.RemarkKind
	for _, s := range b.Sources[:6] {
		require.Len(t, s.Remarks, 1, s.File.Name)
		got = append(got, s.Remarks[0].Kind)
	}
	assert.Equal(t, []intake.RemarkKind{intake.BadFile, intake.OtherNight, intake.NoMoment, intake.OtherNight, intake.OtherNight, intake.NoLevels}, got)
	assert.Equal(t, "2025-07-14T23:37:12Z", rfc(b.Sources[3].Remarks[0].At))
	assert.NotEmpty(t, of[journal.Run](b))
	assert.Equal(t, intake.TrackThinned, b.Sources[6].Remarks[0].Kind)
}

// Ensure that the river at the gauge is said for the hours fished: a fall since the peak at
// noon, of which at 22 h, ten hours on, exp(-10/8) = 0.287 of the rise is left.
func TestRiver(t *testing.T) {
	w := newWorld(t, "anna")
	b := w.propose(w.order(), w.river(0))
	p := of[journal.Series](b)[0]
	s := p.Record.(journal.Series)
	assert.Equal(t, "000000", s.Station)
	assert.Equal(t, "m", s.Unit)
	require.Len(t, p.River, 2)
	at := p.River[0]
	assert.Equal(t, "2026-07-04T21:00:00Z", rfc(at.At), "ten in the evening, since no run is known")
	assert.Equal(t, 9*time.Hour, at.SincePeak)
	assert.InDelta(t, 0.3247, at.Left, 0.002) // exp(-9/8)
	assert.Equal(t, gauge.FallingFlood, at.Class)
	assert.InDelta(t, -0.6/8*0.3247, at.Slope, 0.002) // of the exponential, for the hour before a little more

	lag := 2 * time.Hour
	set := gauge.Common()
	set.Lag = &lag
	o := w.order()
	o.Gauges = map[string]gauge.Settings{"000000": set}
	at = of[journal.Series](w.propose(o, w.river(0), w.track("")))[0].River[0]
	assert.True(t, at.Lagged)
	assert.Less(t, at.At.Sub(w.walk.Runs[0].From.Add(-lag)).Abs(), 3*time.Minute)
}

// Ensure that what a gauge recorded of the water's temperature is proposed beside its level, goes into the journal as it
// is, and raises what the night says of warm water; that the same file again brings nothing new.
func TestWaterTemperature(t *testing.T) {
	w := newWorld(t, "anna")
	rdb := "# us\nagency_cd\tsite_no\tdatetime\ttz_cd\t112_00010\t112_00010_cd\t111_00065\t111_00065_cd\n5s\t15s\t20d\t6s\t14n\t10s\t14n\t10s\n" +
		"USGS\t00000000\t2026-07-04 17:00\tUTC\t19.2\tP\t3.13\tP\nUSGS\t00000000\t2026-07-04 22:00\tUTC\t18.4\tP\t3.14\tP\n"
	file := func() *intake.File { return readBytes("river.rdb", []byte(rdb), intake.ReadOptions{}) }
	b := w.propose(w.order(), file())
	ps := of[journal.Series](b)
	require.Len(t, ps, 2)
	w.commit(b, all(b))
	series, err := journal.All[journal.Series](w.j)
	require.NoError(t, err)
	require.Len(t, series, 2)
	warm := series[slices.IndexFunc(series, func(s journal.Series) bool { return s.What == "temperature" })]
	assert.Equal(t, "C", warm.Unit)
	assert.Equal(t, []journal.Field[float64]{journal.Of(19.2), journal.Of(18.4)}, []journal.Field[float64]{warm.Points[0].Value, warm.Points[1].Value})
	n, err := timeline.Load(w.j, id("trip"))
	require.NoError(t, err)
	v, at, station, ok := n.Warmest()
	require.True(t, ok)
	assert.Equal(t, 19.2, float64(v.C))
	assert.Equal(t, "2026-07-04T17:00:00Z", rfc(at))
	assert.Equal(t, "00000000", station)
	again := w.propose(w.order(), file())
	assert.Empty(t, w.commit(again, all(again)).Edits, "twice changes nothing")
}
