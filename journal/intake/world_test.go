package intake_test

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"math"
	"os"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/journal/intaketest"
	"gloamline/journal/memory"
)

// The world of these tests: a walk over an invented beat on 4 July 2026, Anna and Colm
// fishing, Anna with the watch.

func id(word string) journal.ID {
	sum := sha256.Sum256([]byte(word))
	return journal.ID(sum[:16])
}

var now = time.Date(2026, 7, 5, 9, 0, 0, 0, time.UTC)

type world struct {
	t    testing.TB
	j    *journal.Journal
	walk intaketest.Night
	beat geo.Beat
}

// walked is walked once; nobody alters it.
var walked = sync.OnceValue(func() intaketest.Night { return intaketest.Walk(8, intaketest.Common()) })

// newWorld has a night with the given people as its rods.
func newWorld(t testing.TB, rods ...string) *world {
	w := &world{t: t, walk: walked()}
	j, err := journal.Open(memory.New(id("copy")), func() time.Time { return now })
	require.NoError(t, err)
	w.j, w.beat = j, w.walk.Beat
	trip := journal.Trip{ID: id("trip"), Evening: journal.Date{Year: 2026, Month: 7, Day: 4}, Zone: "Europe/London", Beat: w.beat.ID}
	put := []journal.Record{journal.Beat{ID: w.beat.ID, Revisions: []journal.BeatRevision{{Shape: w.beat}}}}
	for _, r := range rods {
		put = append(put, journal.Person{ID: id(r), Name: r})
		trip.Rods = append(trip.Rods, journal.Rod{ID: id("rod of " + r), Person: id(r)})
	}
	w.put(append(put, trip)...)
	return w
}

func (w *world) put(rs ...journal.Record) {
	w.t.Helper()
	_, err := w.j.Do("write", journal.Batch{Put: rs})
	require.NoError(w.t, err)
}

// track is the watch's file; note makes its bytes another file's.
func (w *world) track(note string) *intake.File {
	return readBytes("night.gpx", append(w.walk.GPX(), "<!-- "+note+" -->"...), intake.ReadOptions{Now: now})
}

// photo is a picture taken at a moment of the camera's clock, 2026:07:05 00:10:00.
func (w *world) photo(clock, note string) *intake.File {
	b, err := os.ReadFile(invented(w.t, "night_no_zone.jpg"))
	require.NoError(w.t, err)
	require.Equal(w.t, 1, bytes.Count(b, []byte("2025:07:15 00:37:12")))
	b = bytes.Replace(b, []byte("2025:07:15 00:37:12"), []byte(clock), 1)
	return readBytes("fish.jpg", append(b, note...), intake.ReadOptions{Thumb: true})
}

// river is a gauge's file: a rise of 0.6 m that ended at noon of 4 July, in steps of 15
// minutes from 1 July; shift is added to the levels.
func (w *world) river(shift float64) *intake.File {
	return readBytes("river.csv", w.riverBytes(shift), intake.ReadOptions{})
}

func (w *world) riverBytes(shift float64) []byte {
	var b bytes.Buffer
	b.WriteString("dateTime,measure,value\n")
	for at := time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC); at.Before(now); at = at.Add(15 * time.Minute) {
		h := at.Sub(time.Date(2026, 7, 4, 12, 0, 0, 0, time.UTC)).Hours()
		level := 0.5
		switch {
		case h > 0:
			level += 0.6 * math.Exp(-h/8)
		case h > -6:
			level += 0.6 * (h + 6) / 6
		}
		fmt.Fprintf(&b, "%s,http://example.org/id/measures/000000-level-stage-i-15_min-m,%.3f\n", at.Format(time.RFC3339), level+shift)
	}
	return b.Bytes()
}

func (w *world) order() intake.Order {
	return intake.Order{Trip: id("trip"), Now: now}
}

func (w *world) propose(o intake.Order, files ...*intake.File) *intake.Batch {
	w.t.Helper()
	b, err := intake.Propose(w.j, files, o)
	require.NoError(w.t, err)
	return b
}

func (w *world) commit(b *intake.Batch, c intake.Choices) journal.Change {
	w.t.Helper()
	got, err := b.Commit(w.j, c)
	require.NoError(w.t, err)
	return got
}

func (w *world) night() *journal.Log {
	w.t.Helper()
	l, err := w.j.Night(id("trip"))
	require.NoError(w.t, err)
	return l
}

func of[T journal.Record](b *intake.Batch) (out []intake.Proposal) {
	for _, p := range b.Proposals {
		if _, ok := p.Record.(T); ok {
			out = append(out, p)
		}
	}
	return out
}

func entries[T journal.Entry](l *journal.Log) (out []T) {
	for _, e := range l.Sorted() {
		if v, ok := e.(T); ok {
			out = append(out, v)
		}
	}
	return out
}

func all(b *intake.Batch) intake.Choices {
	out := intake.Choices{}
	for _, p := range b.Proposals {
		out[p.Key] = intake.Choice{Do: intake.Accept}
	}
	return out
}

func kinds(rs []intake.Remark) (out []intake.RemarkKind) {
	for _, r := range rs {
		out = append(out, r.Kind)
	}
	return out
}
