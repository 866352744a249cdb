package journal_test

import (
	"crypto/sha256"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/units"
)

// The world of these tests: Larrick Water, an invented river in south-west
// Scotland, fished on 4 July 2026 by Anna and Colm.

// id returns the same identity for the same word.
func id(word string) journal.ID {
	sum := sha256.Sum256([]byte(word))
	return journal.ID(sum[:16])
}

var evening = journal.Date{Year: 2026, Month: time.July, Day: 4}

func zone(t testing.TB, name string) *time.Location {
	loc, err := time.LoadLocation(name)
	require.NoError(t, err)
	return loc
}

// clock returns the instant of the night of 4 July 2026 (British Summer Time,
// UTC+1) at which the clock shows hh:mm.
func clock(hour, min int) time.Time {
	day := 4
	if hour < 12 {
		day = 5
	}
	return time.Date(2026, time.July, day, hour-1, min, 0, 0, time.UTC)
}

func at(hour, min int) journal.When { return journal.Exact(clock(hour, min)) }

func pool(name string) geo.Pool {
	return geo.Pool{ID: id(name), Name: name, Order: 1}
}

func homeBeat() journal.Beat {
	return journal.Beat{ID: id("home beat"), Revisions: []journal.BeatRevision{{Shape: geo.Beat{
		ID: id("home beat"), Name: "Home Beat", Zone: "Europe/London",
		Pools: []geo.Pool{pool("alder pool"), pool("long pool")},
	}}}}
}

func person(name string) journal.Person { return journal.Person{ID: id(name), Name: name} }

func fly(word string) journal.Fly {
	return journal.Fly{ID: id(word), Dresses: []journal.Dress{{
		Length: journal.Of(units.LengthOf(1.5, units.Inch)), Silhouette: journal.Of(journal.Full), Tone: journal.Of(journal.DarkTone),
	}}}
}

func rod(name string) journal.Rod {
	return journal.Rod{ID: id("rod of " + name), Person: id(name)}
}

func trip() journal.Trip {
	return journal.Trip{ID: id("trip"), Evening: evening, Zone: "Europe/London", Beat: id("home beat"),
		Rods: []journal.Rod{rod("anna"), rod("colm")}}
}

func head(word, who string, w journal.When) journal.Head {
	h := journal.Head{ID: id(word), Trip: id("trip"), When: w}
	if who != "" {
		h.Rod = id("rod of " + who)
	}
	return h
}

func run(word, who string, w journal.When) journal.Run {
	return journal.Run{Head: head(word, who, w), Pool: id("alder pool")}
}

func until(r journal.Run, w journal.When) journal.Run {
	r.Until = journal.Of(w)
	return r
}

func contact(word, who string, w journal.When) journal.Contact {
	return journal.Contact{Head: head(word, who, w), Touch: journal.Pull}
}

func note(word string, w journal.When) journal.Note {
	n := journal.Note{Head: head(word, "", w)}
	n.Note = word
	return n
}

// now counts one second with every look.
func ticking() func() time.Time {
	t := time.Date(2026, time.July, 5, 9, 0, 0, 0, time.UTC)
	return func() time.Time { t = t.Add(time.Second); return t }
}

// world returns a journal with the beat, people, flies and an empty night.
func world(t testing.TB) (*journal.Journal, *memory.Store) {
	s := memory.New(id("copy"))
	j, err := journal.Open(s, ticking())
	require.NoError(t, err)
	_, err = j.Do("begin", journal.Batch{Put: []journal.Record{
		homeBeat(), person("anna"), person("colm"), fly("dark fly"), fly("pale fly"), trip(),
	}})
	require.NoError(t, err)
	return j, s
}

func put(t testing.TB, j *journal.Journal, rs ...journal.Record) journal.Change {
	t.Helper()
	c, err := j.Do("write", journal.Batch{Put: rs})
	require.NoError(t, err)
	return c
}

func get[T journal.Record](t testing.TB, j *journal.Journal, r journal.Record) T {
	t.Helper()
	got, err := j.Get(r.Ref())
	require.NoError(t, err)
	return got.(T)
}

// refused asserts that err holds a fault of that kind at that field of that
// record.
func refused(t testing.TB, err error, kind journal.Fail, field, record string) {
	t.Helper()
	require.Error(t, err)
	for _, e := range journal.FieldErrors(err) {
		if e.Kind == kind && e.Field == field && e.ID == id(record) {
			return
		}
	}
	require.Failf(t, "another error", "wanted %s at %q of %q, got: %v", kind, field, record, err)
}

func readFile(t testing.TB, name string) []byte {
	b, err := os.ReadFile(name)
	require.NoError(t, err)
	return b
}
