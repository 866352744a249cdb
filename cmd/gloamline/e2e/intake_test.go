//go:build e2e

package e2e

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/intaketest"
	"gloamline/journal/store"
)

// walked is a journal with the beat and the night of a walk, fished by two, with one run of
// the first written, and the files that were kept of it.
type walked struct {
	path, files string
	walk        intaketest.Night
	typed       journal.Run
}

func newWalked(t *testing.T) walked {
	t.Helper()
	w := walked{path: filepath.Join(t.TempDir(), "walk.gloam"), files: t.TempDir(), walk: intaketest.Walk(8, intaketest.Common())}
	s, err := store.Create(w.path, store.Options{})
	require.NoError(t, err)
	j, err := journal.Open(s, func() time.Time { return time.Date(2026, 7, 5, 8, 0, 0, 0, time.UTC) })
	require.NoError(t, err)
	anna, colm := journal.Person{ID: journal.NewID(), Name: "Anna"}, journal.Person{ID: journal.NewID(), Name: "Colm"}
	trip := journal.Trip{ID: journal.NewID(), Evening: journal.Date{Year: 2026, Month: 7, Day: 4}, Zone: "Europe/London", Beat: w.walk.Beat.ID,
		Rods: []journal.Rod{{ID: journal.NewID(), Person: anna.ID}, {ID: journal.NewID(), Person: colm.ID}}}
	r := w.walk.Runs[0]
	w.typed = journal.Run{Head: journal.Head{ID: journal.NewID(), Trip: trip.ID, Rod: trip.Rods[0].ID, When: journal.About(r.From.Add(9*time.Minute), 0)}, Pool: r.Pool, Until: journal.Of(journal.About(r.To, 0))}
	_, err = j.Do("set up", journal.Batch{Put: []journal.Record{journal.Beat{ID: w.walk.Beat.ID, Revisions: []journal.BeatRevision{{Shape: w.walk.Beat}}}, anna, colm, trip, w.typed}})
	require.NoError(t, err)
	require.NoError(t, s.Close())

	photo, err := os.ReadFile(filepath.Join("..", "..", "..", "journal", "photo", "testdata", "night_no_zone.jpg"))
	require.NoError(t, err)
	var river bytes.Buffer
	river.WriteString("dateTime,measure,value\n")
	for at := time.Date(2026, 7, 4, 0, 0, 0, 0, time.UTC); at.Day() < 6; at = at.Add(15 * time.Minute) {
		level := 1.1 - 0.02*at.Sub(time.Date(2026, 7, 4, 12, 0, 0, 0, time.UTC)).Abs().Hours()
		fmt.Fprintf(&river, "%s,http://example.org/id/measures/000000-level-stage-i-15_min-m,%.3f\n", at.Format(time.RFC3339), level)
	}
	for name, b := range map[string][]byte{
		"night.gpx": w.walk.GPX(), "river.csv": river.Bytes(), "broken.gpx": []byte(`<gpx version="1.1"><trk><trkseg><trkpt lat="55`),
		"fish.jpg": bytes.Replace(photo, []byte("2025:07:15 00:37:12"), []byte("2026:07:05 00:30:00"), 1),
	} {
		require.NoError(t, os.WriteFile(filepath.Join(w.files, name), b, 0o600))
	}
	return w
}

// stored is what the journal holds of the night, by kind.
func (w walked) stored(p *program) (log *journal.Log, series []journal.Series, decisions []journal.Decision) {
	p.d.t.Helper()
	j := p.storedNow(w.path)
	trips, err := j.Trips()
	require.NoError(p.d.t, err)
	require.Len(p.d.t, trips, 1)
	log, err = j.Night(trips[0].ID)
	require.NoError(p.d.t, err)
	series, err = journal.All[journal.Series](j)
	require.NoError(p.d.t, err)
	decisions, err = journal.All[journal.Decision](j)
	require.NoError(p.d.t, err)
	return log, series, decisions
}

var pickedLine = regexp.MustCompile(`msg=proposals rows=(\d+) accepted=(\d+) rejected=(\d+) waiting=(\d+) picked="([^"]*)"`)

// standing is how the proposals stand by the log, and which is picked out.
func (p *program) standing() (counts, picked string) {
	all := pickedLine.FindAllStringSubmatch(p.output(), -1)
	if len(all) == 0 {
		return "", ""
	}
	m := all[len(all)-1]
	return fmt.Sprintf("%s rows, %s accepted, %s rejected, %s waiting", m[1], m[2], m[3], m[4]), m[5]
}

// down picks out the next proposal until one is met that looks so.
func (p *program) down(like string) {
	p.d.t.Helper()
	re := regexp.MustCompile(like)
	for range 30 {
		if _, picked := p.standing(); re.MatchString(picked) {
			return
		}
		p.key("msg=proposals", "Down")
	}
	p.d.t.Fatalf("no proposal like %q", like)
}

// Ensure that a night is made of a track, a photo and a gauge in the real window: files are
// chosen, a broken one holds nothing up, the track is given to a rod, proposals are settled,
// changed and rejected, and stored as one change; that undo takes all of it back and redo
// does it again; and that the same files once more change nothing.
func TestFilesBecomeANight(t *testing.T) {
	w := newWalked(t)
	d := newDesktop(t, 1440, 900)
	p := d.launch("-v", "-journal", w.path, "-night", "2026-07-04", "-look", "dusk")
	p.says("shown", 1)
	p.key("msg=room name=intake", "ctrl+6")
	p.key("dialog open", "f")
	p.press("ctrl+a")
	p.write(w.files + "/")
	p.key(`msg="files read" n=4`, "Return")
	p.find("files file broken.gpx")
	d.still(p)
	d.shot("i1-read")

	p.press("F6", "F6", "F6")
	p.key("msg=proposals", "a") // whose track: Anna's
	p.click(p.find("proposals run 22:"), "1")
	n := len(w.walk.Runs)

	// The first run is written already: what is written takes the times of the track.
	p.down("^22:.* run, .*")
	p.key("waiting=1", "space")
	d.shot("i2-conflict")
	p.key("waiting=0", "t")

	// The next is changed, on its card.
	p.key("msg=proposals", "Down")
	p.down(" run, ")
	_, second := p.standing()
	p.key("card open", "Return")
	p.tabTo("note")
	p.write("in the rain")
	p.key("card closed", "Return")
	d.shot("i3-changed")

	// The one after is rejected, by the mouse.
	p.key("msg=proposals", "Down")
	p.down(" run, ")
	_, third := p.standing()
	require.NotEqual(t, second, third)
	p.click(p.settled("proposals reject"), "1")
	p.says("rejected=1", 1)
	counts, _ := p.standing()
	d.still(p)
	d.shot("i4-ready")
	p.key("files stored", "ctrl+s")

	log, series, decisions := w.stored(p)
	runs := log.Runs(journal.ID{})
	assert.Len(t, runs, n-1, counts)
	require.Len(t, series, 1)
	assert.NotEmpty(t, series[0].Points)
	kept, ok := log.Find(w.typed.ID)
	require.True(t, ok)
	assert.Equal(t, "track", kept.Base().From.How, "the written run has the times of the track")
	notes, photos, rejected := 0, 0, 0
	for _, e := range log.Entries {
		if e.Base().Note == "in the rain" {
			notes++
		}
		if _, is := e.(journal.Photo); is {
			photos++
		}
	}
	for _, x := range decisions {
		if x.Verdict == journal.Rejected {
			rejected++
		}
	}
	assert.Equal(t, []int{1, 1, 1}, []int{notes, photos, rejected}, "changed, photo, rejected")
	truth := map[geo.ID]bool{}
	for _, r := range w.walk.Runs {
		truth[r.Pool] = true
	}
	for _, r := range runs {
		assert.True(t, truth[r.Pool])
	}

	// One undo takes all of it back, redo does it again.
	p.key("msg=room name=night", "ctrl+z")
	before, series, decisions := w.stored(p)
	assert.Equal(t, []int{1, 0, 0}, []int{len(before.Entries), len(series), len(decisions)})
	was, _ := before.Find(w.typed.ID)
	assert.Equal(t, w.typed, was)
	p.press("ctrl+shift+z")
	p.d.until("the import to stand again", func() bool { l, _, _ := w.stored(p); return len(l.Entries) == len(log.Entries) })
	_, _, decided := w.stored(p)

	// The same files once more.
	p.key("msg=room name=intake", "ctrl+6")
	p.key("dialog open", "f")
	p.press("ctrl+a")
	p.write(w.files + "/")
	p.key(`msg="files read" n=4`, "Return")
	p.press("ctrl+s") // nothing is accepted or rejected
	d.still(p)
	d.shot("i5-again")
	after, _, again := w.stored(p)
	assert.Equal(t, log.Entries, after.Entries)
	assert.Equal(t, decided, again)
	counts, _ = p.standing()
	assert.Regexp(t, " 0 accepted, 0 rejected, 0 waiting$", counts)
	p.key("look=paper", "ctrl+l")
	d.still(p)
	d.shot("i6-paper")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()
}
