package timeline_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// river is a journal with one beat, one fly, one person and some nights.
type river struct {
	t    *testing.T
	j    *journal.Journal
	beat journal.Beat
	rod  journal.Rod
	loc  *time.Location
}

func newRiver(t *testing.T) *river {
	clock := time.Date(2026, 7, 1, 12, 0, 0, 0, time.UTC)
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { clock = clock.Add(time.Second); return clock })
	require.NoError(t, err)
	loc, err := time.LoadLocation("Europe/London")
	require.NoError(t, err)
	r := &river{t: t, j: j, loc: loc, beat: journal.Beat{ID: journal.NewID()}}
	shape := geo.Beat{ID: r.beat.ID, Name: "Home Beat", Zone: "Europe/London", At: geo.Place{Lat: 54.99, Lon: -4.45},
		Pools: []geo.Pool{{ID: journal.NewID(), Name: "Long Flat", Order: 1}}}
	r.beat.Revisions = []journal.BeatRevision{{Shape: shape}}
	person := journal.Person{ID: journal.NewID(), Name: "Anna"}
	r.rod = journal.Rod{ID: journal.NewID(), Person: person.ID}
	r.do(r.beat, person)
	return r
}

func (r *river) do(rs ...journal.Record) {
	_, err := r.j.Do("test", journal.Batch{Put: rs})
	require.NoError(r.t, err)
}

// night logs trees grey on a July evening at a time of the clock.
func (r *river) night(day, hour, min int) journal.Trip {
	trip := journal.Trip{ID: journal.NewID(), Evening: journal.Date{Year: 2026, Month: 7, Day: day}, Zone: "Europe/London",
		Beat: r.beat.ID, Rods: []journal.Rod{r.rod}}
	at := time.Date(2026, 7, day, hour, min, 0, 0, r.loc)
	sky := func(at time.Time, f func(*journal.Sky)) journal.Sky {
		s := journal.Sky{Head: journal.Head{ID: journal.NewID(), Trip: trip.ID, When: journal.Exact(at)}}
		f(&s)
		return s
	}
	r.do(trip,
		sky(at.Add(-time.Hour), func(s *journal.Sky) { s.Cloud = journal.Of(0) }),
		sky(at, func(s *journal.Sky) { s.TreesGrey = true }))
	return trip
}

func (r *river) load(l *timeline.Loader, trip journal.ID) *timeline.Night {
	n, err := l.Load(trip)
	require.NoError(r.t, err)
	return n
}

// Ensure that the threshold is the default until five moments are logged on the
// beat, then the beat's own, and that a figure settled by hand stands over both.
func TestThreshold(t *testing.T) {
	r := newRiver(t)
	l := timeline.NewLoader(r.j)
	var last journal.Trip
	for i := range 4 {
		last = r.night(14+i, 23, 22)
	}
	n := r.load(l, last.ID)
	require.Equal(t, timeline.Threshold{Lux: 0.3, Logs: 4}, n.Grey.Threshold)
	require.Len(t, n.Grey.Logged, 1)

	last = r.night(18, 23, 22)
	n = r.load(l, last.ID)
	got := n.Grey.Threshold
	require.True(t, got.Own)
	require.Equal(t, 5, got.Logs)
	// Logged about ten minutes after 0.3 lx each time: the fit lies between there and
	// the default, four parts of which stay in it.
	logged := n.Open.At(n.Grey.Logged[0]).Lux
	require.Less(t, logged, units.Lux(0.25))
	require.Greater(t, got.Lux, logged)
	require.Less(t, got.Lux, units.Lux(0.3))

	other := r.beat
	other.ID = journal.NewID()
	there := other.Revisions[0].Shape
	there.ID = other.ID
	other.Revisions = []journal.BeatRevision{{Shape: there}}
	r.do(other)
	home := r.beat
	r.beat = other
	elsewhere := r.night(19, 23, 0)
	require.Equal(t, timeline.Threshold{Lux: 0.3, Logs: 1}, r.load(l, elsewhere.ID).Grey.Threshold, "another beat has logs of its own")
	r.beat = home

	again, err := timeline.Load(r.j, last.ID)
	require.NoError(t, err)
	require.Equal(t, got, again.Grey.Threshold, "a loader that remembers agrees with one that does not")

	r.beat.Grey = journal.Of(units.Lux(0.5))
	r.do(r.beat)
	require.Equal(t, timeline.Threshold{Lux: 0.5, Logs: 5, Own: true, Hand: true}, r.load(l, last.ID).Grey.Threshold)
}

// Ensure that a loader forgets what a change touches: a moved entry, a removed
// night, an undone change.
func TestLoaderFollowsChanges(t *testing.T) {
	r := newRiver(t)
	l := timeline.NewLoader(r.j)
	var trips []journal.Trip
	for i := range 5 {
		trips = append(trips, r.night(14+i, 23, 22))
	}
	fresh := func() timeline.Threshold {
		n, err := timeline.Load(r.j, trips[0].ID)
		require.NoError(t, err)
		return n.Grey.Threshold
	}
	before := r.load(l, trips[0].ID).Grey.Threshold

	for _, trip := range trips[1:4] {
		log, err := r.j.Night(trip.ID)
		require.NoError(t, err)
		for _, e := range log.Entries {
			if s := e.(journal.Sky); s.TreesGrey {
				s.When = journal.Exact(s.When.Lo.Add(-20 * time.Minute))
				r.do(s)
			}
		}
	}
	moved := r.load(l, trips[0].ID).Grey.Threshold
	require.Equal(t, fresh(), moved)
	require.Greater(t, moved.Lux, before.Lux)

	shape := r.beat.Revisions[0].Shape
	shape.At.Lat = 53
	r.beat.Revisions = []journal.BeatRevision{{Shape: shape}}
	r.do(r.beat)
	south := r.load(l, trips[0].ID).Grey.Threshold
	require.NotEqual(t, moved, south)
	require.Equal(t, fresh(), south)

	_, err := r.j.Remove(trips[4].Ref())
	require.NoError(t, err)
	removed := r.load(l, trips[0].ID).Grey.Threshold
	require.Equal(t, 4, removed.Logs)
	require.False(t, removed.Own)
	require.Equal(t, fresh(), removed)

	for range 5 {
		_, err = r.j.Undo()
		require.NoError(t, err)
	}
	require.Equal(t, before, r.load(l, trips[0].ID).Grey.Threshold)
}

// Ensure that a night moved to another beat takes the light of that beat along.
func TestLoaderFollowsTripToAnotherBeat(t *testing.T) {
	r := newRiver(t)
	l := timeline.NewLoader(r.j)
	var trips []journal.Trip
	for i := range 5 {
		trips = append(trips, r.night(14+i, 23, 22))
	}
	south := journal.Beat{ID: journal.NewID()}
	shape := r.beat.Revisions[0].Shape
	shape.ID, shape.At.Lat = south.ID, 53
	south.Revisions = []journal.BeatRevision{{Shape: shape}}
	r.do(south)
	r.load(l, trips[0].ID)
	for i := range trips {
		trips[i].Beat = south.ID
		r.do(trips[i])
	}
	n, err := timeline.Load(r.j, trips[0].ID)
	require.NoError(t, err)
	require.True(t, n.Grey.Threshold.Own)
	require.Equal(t, n.Grey.Threshold, r.load(l, trips[0].ID).Grey.Threshold)
}

// Ensure that a night is set in its beat, flies and people as they were that
// evening, and that what is missing is told.
func TestLoad(t *testing.T) {
	r := newRiver(t)
	later := r.beat.Revisions[0].Shape
	later.Name = "Home Beat, joined"
	r.beat.Revisions = append(r.beat.Revisions, journal.BeatRevision{From: journal.Date{Year: 2026, Month: 7, Day: 16}, Shape: later})
	r.do(r.beat)
	old, young := r.night(15, 23, 10), r.night(16, 23, 10)
	l := timeline.NewLoader(r.j)
	require.Equal(t, "Home Beat", r.load(l, old.ID).Beat.Name)
	require.Equal(t, "Home Beat, joined", r.load(l, young.ID).Beat.Name)
	require.Equal(t, "Anna", r.load(l, old.ID).Rods[0].Name)

	_, err := timeline.Load(r.j, journal.NewID())
	require.Equal(t, journal.NotFound, journal.KindOf(err))
}
