package intake_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/intake"
)

func (w *world) head(word string, when journal.When) journal.Head {
	return journal.Head{ID: id(word), Trip: id("trip"), Rod: id("rod of anna"), When: when}
}

// Ensure that a written run and one of the track stand side by side, that nothing is stored
// before somebody says which stands, and what each of the two ways does.
func TestRunsOverlap(t *testing.T) {
	fresh := func() (*world, *intake.Batch, string) {
		w := newWorld(t, "anna")
		r := w.walk.Runs[1]
		w.put(journal.Run{Head: w.head("typed", journal.About(r.From.Add(8*time.Minute), 0)), Pool: r.Pool, Until: journal.Of(journal.About(r.To, 0))})
		w.put(journal.Contact{Head: w.head("fish", journal.Within(id("typed"))), Touch: journal.Pull})
		b := w.propose(w.order(), w.track(""))
		return w, b, of[journal.Run](b)[1].Key
	}
	w, b, key := fresh()
	p, _ := b.Find(key)
	require.Len(t, p.Conflicts, 1)
	assert.Equal(t, intake.RunOverlap, p.Conflicts[0].Kind)
	assert.Equal(t, id("typed"), p.Conflicts[0].Written.Ref().ID)
	assert.False(t, p.Ticked)
	for i, q := range of[journal.Run](b) {
		assert.Equal(t, i == 1, len(q.Conflicts) > 0)
	}
	_, err := b.Commit(w.j, all(b))
	var unsettled *intake.UnsettledError
	require.True(t, errors.As(err, &unsettled))
	assert.Equal(t, []string{key}, unsettled.Keys)
	assert.Len(t, entries[journal.Run](w.night()), 1)

	c := all(b)
	c[key] = intake.Choice{Do: intake.Accept, Way: intake.TakeBoth}
	_, err = b.Commit(w.j, c)
	require.True(t, errors.As(err, &unsettled), "two runs of one rod cannot both stand")

	c[key] = intake.Choice{Do: intake.Accept, Way: intake.KeepWritten}
	w.commit(b, c)
	runs := entries[journal.Run](w.night())
	assert.Len(t, runs, len(w.walk.Runs))
	assert.Contains(t, runs, journal.Run{Head: w.head("typed", journal.About(w.walk.Runs[1].From.Add(8*time.Minute), 0)), Pool: w.walk.Runs[1].Pool, Until: journal.Of(journal.About(w.walk.Runs[1].To, 0))})
	b = w.propose(w.order(), w.track(""))
	p, _ = b.Find(key)
	assert.Equal(t, journal.Rejected, p.Past)

	w, b, key = fresh()
	c = b.Ticks()
	c[key] = intake.Choice{Do: intake.Accept, Way: intake.TakeProposed}
	w.commit(b, c)
	e, ok := w.night().Find(id("typed"))
	require.True(t, ok, "the run keeps its identity, and the fish that hangs on it")
	r := e.(journal.Run)
	assert.Less(t, w.night().At(r).Mid().Sub(w.walk.Runs[1].From).Abs(), 3*time.Minute)
	assert.Equal(t, "track", r.From.How)
	fish, _ := w.night().Find(id("fish"))
	assert.Equal(t, journal.WithinTime, fish.Base().When.Kind)
	_, err = w.j.Remove(r.Ref())
	require.NoError(t, err)
	p, _ = w.propose(w.order(), w.track("")).Find(key)
	assert.Equal(t, journal.Deleted, p.Past)
}

// Ensure that a written run at another pool gives way when the track is believed, and that
// one without an end conflicts only where it begins or is the same.
func TestOtherPool(t *testing.T) {
	w := newWorld(t, "anna")
	r := w.walk.Runs[1]
	other := w.walk.Runs[0].Pool
	require.NotEqual(t, other, r.Pool)
	w.put(journal.Run{Head: w.head("typed", journal.Exact(r.From.Add(10*time.Minute))), Pool: other, Until: journal.Of(journal.Exact(r.To))})
	b := w.propose(w.order(), w.track(""))
	p := of[journal.Run](b)[1]
	w.commit(b, intake.Choices{p.Key: {Do: intake.Accept, Way: intake.TakeProposed}})
	runs := entries[journal.Run](w.night())
	require.Len(t, runs, 1)
	assert.Equal(t, r.Pool, runs[0].Pool)

	w = newWorld(t, "anna")
	w.put(journal.Run{Head: w.head("open", journal.Exact(w.walk.Runs[0].From.Add(-20*time.Minute))), Pool: w.beat.Pools[1].ID})
	b = w.propose(w.order(), w.track(""))
	require.NotEqual(t, w.beat.Pools[1].ID, w.walk.Runs[0].Pool)
	for _, p := range of[journal.Run](b) {
		assert.Empty(t, p.Conflicts, "the next run ends the one before")
	}
	w.commit(b, b.Ticks())
	w.put(journal.Run{Head: w.head("typed", journal.Exact(w.walk.Runs[0].From.Add(-6*time.Minute))), Pool: w.walk.Runs[0].Pool})
	b = w.propose(w.order(), w.track("another file"))
	assert.Len(t, of[journal.Run](b)[0].Conflicts, 2, "the one imported and the one typed")
}

// Ensure that two devices of one rod do not give every run twice.
func TestTwoTracks(t *testing.T) {
	w := newWorld(t, "anna")
	b := w.propose(w.order(), w.track("watch"), w.track("phone"))
	n := len(w.walk.Runs)
	require.Len(t, of[journal.Run](b), 2*n)
	w.commit(b, b.Ticks())
	assert.Len(t, entries[journal.Run](w.night()), n)

	w = newWorld(t, "anna")
	b = w.propose(w.order(), w.track("watch"), w.track("phone"))
	c := intake.Choices{}
	for _, p := range of[journal.Run](b) {
		if p.Source == 1 {
			require.Len(t, p.Conflicts, 1)
			assert.Equal(t, intake.TwoTracks, p.Conflicts[0].Kind)
			c[p.Key] = intake.Choice{Do: intake.Accept, Way: intake.TakeProposed}
			if len(c) == 1 {
				c[p.Conflicts[0].Rival] = intake.Choice{Do: intake.Accept}
				_, err := b.Commit(w.j, c)
				require.Error(t, err, "both of two rivals")
				c[p.Conflicts[0].Rival] = intake.Choice{Do: intake.Reject}
			}
		}
	}
	w.commit(b, c)
	assert.Len(t, entries[journal.Run](w.night()), n)
}

// Ensure that a picture taken when a fish is written goes with that fish, that the fish it
// could be is a conflict, and what each way does.
func TestSameFish(t *testing.T) {
	at := time.Date(2026, 7, 4, 23, 30, 0, 0, time.UTC)
	for way, want := range map[intake.Way]int{intake.KeepWritten: 1, intake.TakeProposed: 1, intake.TakeBoth: 2} {
		w := newWorld(t, "anna")
		w.put(journal.Contact{Head: w.head("fish", journal.About(at.Add(5*time.Minute), 0)), Touch: journal.Landed})
		o := w.order()
		o.Clocks = map[string]time.Duration{"": 0} // the camera's clock was looked at and is right
		b := w.propose(o, w.track(""), w.photo("2026:07:05 00:30:00", ""))
		pic, fish := of[journal.Photo](b)[0], of[journal.Contact](b)[0]
		assert.Equal(t, journal.Of(id("fish")), pic.Record.(journal.Photo).Of)
		assert.Empty(t, pic.Conflicts)
		require.Len(t, fish.Conflicts, 1)
		assert.Equal(t, intake.SameFish, fish.Conflicts[0].Kind)
		w.commit(b, intake.Choices{pic.Key: {Do: intake.Accept}, fish.Key: {Do: intake.Accept, Way: way}})
		l := w.night()
		got := entries[journal.Contact](l)
		require.Len(t, got, want, way)
		photo := entries[journal.Photo](l)[0]
		shown, ok := l.Find(photo.Of.Or(journal.ID{}))
		require.True(t, ok, way)
		switch way {
		case intake.TakeProposed:
			assert.Equal(t, journal.Exact(at), got[0].When)
			assert.True(t, got[0].Spot.Known())
			assert.Equal(t, id("fish"), got[0].ID)
		case intake.TakeBoth:
			assert.Equal(t, fish.Record.Ref(), shown.Ref())
		}
		p, _ := w.propose(o, w.photo("2026:07:05 00:30:00", "")).Find(pic.Key)
		assert.Equal(t, journal.Accepted, p.Past)
	}
}

// Ensure that the same picture kept otherwise before is seen.
func TestSamePhoto(t *testing.T) {
	w := newWorld(t, "anna")
	f := w.photo("2026:07:05 00:30:00", "")
	w.put(journal.Photo{Head: w.head("pic", journal.Exact(time.Date(2026, 7, 4, 23, 0, 0, 0, time.UTC))), SHA256: f.SHA256, Name: "x"})
	b := w.propose(w.order(), f)
	p := of[journal.Photo](b)[0]
	require.Len(t, p.Conflicts, 1)
	assert.Equal(t, intake.SamePhoto, p.Conflicts[0].Kind)
	w.commit(b, intake.Choices{p.Key: {Do: intake.Accept, Way: intake.KeepWritten}})
	assert.Len(t, entries[journal.Photo](w.night()), 1)
}

// Ensure that readings the journal has are not stored again, that later ones are added, and
// that other values for the same moments are a conflict with both ways.
func TestReadings(t *testing.T) {
	w := newWorld(t, "anna")
	b := w.propose(w.order(), w.river(0))
	w.commit(b, b.Ticks())
	same := readBytes("again.csv", append(append([]byte{}, w.riverBytes(0)...), '\n'), intake.ReadOptions{})
	b = w.propose(w.order(), same)
	assert.Contains(t, kinds(b.Sources[0].Remarks), intake.NothingNew)
	assert.Empty(t, b.Proposals)

	more := append(w.riverBytes(0), "2026-07-05T09:00:00Z,http://example.org/id/measures/000000-level-stage-i-15_min-m,0.512\n"...)
	b = w.propose(w.order(), readBytes("more.csv", more, intake.ReadOptions{}))
	require.Len(t, of[journal.Series](b), 1)
	assert.Len(t, of[journal.Series](b)[0].Record.(journal.Series).Points, 1)
	stored := w.gauges()[0]
	w.commit(b, b.Ticks())
	grown := w.gauges()
	require.Len(t, grown, 1, "one gauge, one series")
	assert.Equal(t, stored.ID, grown[0].ID)
	assert.Equal(t, stored.Points, grown[0].Points[:len(stored.Points)])
	assert.Len(t, grown[0].Points, len(stored.Points)+1)
	assert.Equal(t, 0.512, grown[0].Points[len(stored.Points)].Value.Or(0))
	_, err := w.j.Undo()
	require.NoError(t, err)
	assert.Equal(t, []journal.Series{stored}, w.gauges(), "taken back as one with the rest")

	b = w.propose(w.order(), w.river(0.01))
	p := of[journal.Series](b)[0]
	require.Len(t, p.Conflicts, 1)
	assert.Equal(t, intake.OtherReadings, p.Conflicts[0].Kind)
	first := p.Conflicts[0].Written.(journal.Series).Points[0].Value.Or(0)
	assert.InDelta(t, first+0.01, p.Conflicts[0].Readings[0].Value.Or(0), 1e-9)
	w.commit(b, intake.Choices{p.Key: {Do: intake.Accept, Way: intake.TakeProposed}})
	all := w.gauges()
	require.Len(t, all, 1)
	assert.InDelta(t, first+0.01, all[0].Points[0].Value.Or(0), 1e-9)
}

// gauges lists the series of the journal.
func (w *world) gauges() []journal.Series {
	all, err := journal.All[journal.Series](w.j)
	require.NoError(w.t, err)
	return all
}

// Ensure that readings of one gauge come into one series, also in another unit, earlier than
// those the journal has, or in two files at once; and that another datum is another series.
func TestReadingsJoin(t *testing.T) {
	w := newWorld(t, "anna")
	head := "time;%s\n"
	table := func(unit, datum string, rows ...string) *intake.File {
		return readBytes("Kirk.csv", []byte(fmt.Sprintf(head, unit)+strings.Join(rows, "\n")+"\n"), intake.ReadOptions{})
	}
	late := table("level (m)", "", "2026-07-04 22:00;0.61", "2026-07-04 22:15;0.60")
	require.Nil(t, late.Fault)
	b := w.propose(w.order(), late)
	w.commit(b, b.Ticks())
	early := table("level (ft)", "", "2026-07-04 21:30;2.1", "2026-07-04 22:00;2.0013")
	require.Equal(t, "ft", early.Gauge.Series[0].Unit)
	b = w.propose(w.order(), early)
	p := of[journal.Series](b)[0]
	require.Len(t, p.Conflicts, 1, "0.61 and 0.609996 m are not one")
	w.commit(b, intake.Choices{p.Key: {Do: intake.Accept, Way: intake.KeepWritten}})
	got := w.gauges()
	require.Len(t, got, 1)
	assert.Equal(t, "m", got[0].Unit)
	require.Len(t, got[0].Points, 3)
	assert.InDelta(t, 0.64008, got[0].Points[0].Value.Or(0), 1e-6, "2.1 ft of 0.3048 m")
	assert.Equal(t, 0.61, got[0].Points[1].Value.Or(0))

	one, two := table("level (m)", "", "2026-07-04 23:00;0.55"), table("level (m)", "", "2026-07-04 23:15;0.54")
	b = w.propose(w.order(), one, two)
	w.commit(b, b.Ticks())
	got = w.gauges()
	require.Len(t, got, 1)
	assert.Len(t, got[0].Points, 5)

	other := table("level (m)", "", "2026-07-04 23:30;12.5")
	other.Gauge.Series[0].Datum = "mAOD"
	b = w.propose(w.order(), other)
	w.commit(b, b.Ticks())
	assert.Len(t, w.gauges(), 2)
}
