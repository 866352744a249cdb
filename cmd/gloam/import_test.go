package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/intaketest"
	"gloamline/journal/store"
)

// imports is a journal with the night of a walk, and the files of that night.
type imports struct {
	journal, track, photo, river string
	walk                         intaketest.Night
	trip                         journal.Trip
}

func newImports(t *testing.T, people ...string) imports {
	t.Helper()
	dir := t.TempDir()
	x := imports{track: filepath.Join(dir, "night.gpx"), photo: filepath.Join(dir, "fish.jpg"), river: filepath.Join(dir, "river.csv"), walk: intaketest.Walk(8, intaketest.Common())}
	x.trip = journal.Trip{ID: journal.NewID(), Evening: journal.Date{Year: 2026, Month: 7, Day: 4}, Zone: "Europe/London", Beat: x.walk.Beat.ID}
	x.journal = write(t, func(j *journal.Journal) {
		put := []journal.Record{journal.Beat{ID: x.walk.Beat.ID, Revisions: []journal.BeatRevision{{Shape: x.walk.Beat}}}}
		for _, name := range people {
			p := journal.Person{ID: journal.NewID(), Name: name, Initials: name[:1]}
			put = append(put, p)
			x.trip.Rods = append(x.trip.Rods, journal.Rod{ID: journal.NewID(), Person: p.ID})
		}
		_, err := j.Do("begin", journal.Batch{Put: append(put, x.trip)})
		require.NoError(t, err)
	})
	require.NoError(t, os.WriteFile(x.track, x.walk.GPX(), 0o600))
	pic, err := os.ReadFile(outside("journal", "photo", "testdata", "night_no_zone.jpg"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(x.photo, bytes.Replace(pic, []byte("2025:07:15 00:37:12"), []byte("2026:07:05 00:30:00"), 1), 0o600))
	var river bytes.Buffer
	river.WriteString("dateTime,measure,value\n")
	for h := -90.0; h < 24; h += 0.25 {
		level := 0.5
		if h > 0 {
			level += 0.6 * math.Exp(-h/8)
		} else if h > -6 {
			level += 0.1 * (h + 6)
		}
		at := time.Date(2026, 7, 4, 12, 0, 0, 0, time.UTC).Add(time.Duration(h * float64(time.Hour)))
		fmt.Fprintf(&river, "%s,http://example.org/id/measures/000000-level-stage-i-15_min-m,%.3f\n", at.Format(time.RFC3339), level)
	}
	require.NoError(t, os.WriteFile(x.river, river.Bytes(), 0o600))
	return x
}

// night reads the journal's night.
func (x imports) night(t *testing.T) *journal.Log {
	t.Helper()
	j, err := openJournal(x.journal)
	require.NoError(t, err)
	defer j.Close()
	l, err := j.Night(x.trip.ID)
	require.NoError(t, err)
	return l
}

func runsOf(l *journal.Log) int { return len(l.Runs(journal.ID{})) }

// Ensure that the proposal is printed in plain words and nothing is stored, byte for byte;
// that --accept stores it as one change; and that the same files then propose nothing.
func TestImport(t *testing.T) {
	x := newImports(t, "Anna")
	before := bytesOf(t, x.journal)
	r := run("", "import", "--journal", x.journal, x.track, x.photo, x.river)
	require.Equal(t, done, r.code, r.err)
	assert.Equal(t, before, bytesOf(t, x.journal))
	t.Log(r.out)
	for _, want := range []string{
		"Night of Saturday 4 July 2026, Home Beat\n",
		"night.gpx: track of “invented”, ", "fish.jpg: photo, 00:30\n",
		"its clock names no zone; read as Europe/London",
		"? Which zone was the clock set to for fish.jpg?",
		" run, ", "at the gauge at ", " since the peak, ", "% of the rise left",
		"fish landed", "Nothing was stored. --accept stores",
	} {
		assert.Contains(t, r.out, want)
	}
	assert.Equal(t, len(x.walk.Runs), strings.Count(r.out, " run, "))

	r = run("", "import", "--journal", x.journal, "--accept", "--copy", x.track, x.photo, x.river)
	require.Equal(t, done, r.code, r.err)
	assert.Contains(t, r.out, "Stored as one change of ")
	assert.Equal(t, len(x.walk.Runs), runsOf(x.night(t)))
	kept, err := filepath.Glob(strings.TrimSuffix(x.journal, ".gloam") + ".photos/*/*.jpg")
	require.NoError(t, err)
	require.Len(t, kept, 1)
	assert.Equal(t, bytesOf(t, x.photo), bytesOf(t, kept[0]))
	sound := run("", "check", x.journal)
	assert.Equal(t, done, sound.code, sound.out)

	after := bytesOf(t, x.journal)
	r = run("", "import", "--journal", x.journal, "--accept", x.track, x.photo, x.river)
	require.Equal(t, done, r.code, r.err)
	assert.Contains(t, r.out, "There was nothing to store.")
	assert.Equal(t, after, bytesOf(t, x.journal))
}

// Ensure that numbers choose: some alone, one rejected for good, and one that takes the
// place of what is written, which is refused without --take.
func TestImportSome(t *testing.T) {
	x := newImports(t, "Anna")
	s, err := store.Open(x.journal, store.Options{})
	require.NoError(t, err)
	j, err := journal.Open(s, time.Now)
	require.NoError(t, err)
	w := x.walk.Runs[0]
	_, err = j.Log(journal.Run{Head: journal.Head{ID: journal.NewID(), Trip: x.trip.ID, Rod: x.trip.Rods[0].ID, When: journal.About(w.From.Add(9*time.Minute), 0)}, Pool: w.Pool, Until: journal.Of(journal.About(w.To, 0))})
	require.NoError(t, err)
	require.NoError(t, j.Close())

	number := func(kind string, nth int) string {
		t.Helper()
		r := run("", "import", "--json", "--journal", x.journal, x.track)
		require.Equal(t, done, r.code, r.err)
		var got struct {
			Proposals []struct {
				Number int
				Kind   string
			}
		}
		require.NoError(t, json.Unmarshal([]byte(r.out), &got))
		for _, p := range got.Proposals {
			if p.Kind == kind {
				if nth == 0 {
					return strconv.Itoa(p.Number)
				}
				nth--
			}
		}
		t.Fatal("no such proposal")
		return ""
	}
	first, second, third := number("run", 0), number("run", 1), number("run", 2)
	r := run("", "import", "--journal", x.journal, "--accept", "--only", first, x.track)
	explained(t, r, "contradicts what is written")
	assert.Equal(t, 1, runsOf(x.night(t)))
	r = run("", "import", "--journal", x.journal, "--accept", "--only", second, "--take", first, "--reject", third, x.track)
	require.Equal(t, done, r.code, r.err)
	l := x.night(t)
	require.Equal(t, 2, runsOf(l))
	assert.Less(t, l.At(l.Runs(journal.ID{})[0]).Mid().Sub(w.From).Abs(), 3*time.Minute)
	r = run("", "import", "--journal", x.journal, x.track)
	assert.Contains(t, r.out, "Decided before and left alone: 2 accepted, 1 rejected.")
}

// Ensure that with two rods somebody must be named, by name or initials, and that the
// offset of a device is used.
func TestImportWhose(t *testing.T) {
	x := newImports(t, "Anna", "Colm")
	r := run("", "import", "--journal", x.journal, x.track)
	assert.Equal(t, done, r.code)
	assert.Contains(t, r.out, "? Whose track is night.gpx?")
	refused(t, run("", "import", "--journal", x.journal, "--rod", "Isla", x.track), `"Isla"`, "Anna, Colm")
	r = run("", "import", "--journal", x.journal, "--rod", "c", "--clock", "invented=-30m", "--accept", x.track)
	require.Equal(t, done, r.code, r.err)
	assert.Contains(t, r.out, "clock put right by −30 min")
	for _, run := range x.night(t).Runs(journal.ID{}) {
		assert.Equal(t, x.trip.Rods[1].ID, run.Rod)
	}
}

// Ensure that a bad file gets its sentence and ends with 1, and the others count.
func TestImportBadFile(t *testing.T) {
	x := newImports(t, "Anna")
	bad := filepath.Join(t.TempDir(), "bad.gpx")
	require.NoError(t, os.WriteFile(bad, []byte("<gpx>\n<trk></gpx>"), 0o600))
	r := run("", "import", "--journal", x.journal, "--accept", bad, x.track)
	assert.Equal(t, broken, r.code)
	assert.Contains(t, r.err, bad+": line 2: ")
	assert.Equal(t, len(x.walk.Runs), runsOf(x.night(t)))
}

// Ensure that wrong words, other nights and journals that do not open are refused.
func TestImportRefuses(t *testing.T) {
	x := newImports(t, "Anna")
	refused(t, run("", "import", x.track), "--journal")
	refused(t, run("", "import", "--journal", x.journal), "needs a file")
	refused(t, run("", "import", "--journal", x.journal, "--only", "1", x.track), "--accept")
	refused(t, run("", "import", "--journal", x.journal, "--accept", "--only", "x", x.track), "only")
	refused(t, run("", "import", "--journal", x.journal, "--accept", "--only", "99", x.track), "proposal 99")
	refused(t, run("", "import", "--journal", x.journal, "--clock", "watch", x.track), "clock")
	refused(t, run("", "import", "--journal", x.journal, "--zone", "Nowhere", x.track), "Nowhere")
	refused(t, run("", "import", "--journal", x.journal, "--trip", "yesterday", x.track), "yesterday")
	refused(t, run("", "import", "--journal", x.journal, "--trip", "2026-07-05", x.track), "2026-07-05")
	other := outside("geo", "gpx", "testdata", "night_track.gpx")
	refused(t, run("", "import", "--journal", x.journal, other), "no night of the journal")
	explained(t, run("", "import", "--journal", kept("half.gloam"), x.track), "cut short")
}
