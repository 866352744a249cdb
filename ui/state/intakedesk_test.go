package state

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/intake"
	"gloamline/journal/intaketest"
	"gloamline/journal/memory"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// intakeKit is a desk on the night of a walk, fished by Anna and Colm, with a run of
// hers already written.
type intakeKit struct {
	t     *testing.T
	d     *Desk
	j     *journal.Journal
	walk  intaketest.Night
	trip  journal.Trip
	typed journal.Run
	dir   string
}

func newIntakeKit(t *testing.T) *intakeKit {
	k := &intakeKit{t: t, walk: intaketest.Walk(8, intaketest.Common()), dir: t.TempDir()}
	now := func() time.Time { return time.Date(2026, 7, 5, 8, 30, 0, 0, time.UTC) }
	j, err := journal.Open(memory.New(journal.NewID()), now)
	require.NoError(t, err)
	anna, colm := journal.Person{ID: journal.NewID(), Name: "Anna"}, journal.Person{ID: journal.NewID(), Name: "Colm"}
	k.trip = journal.Trip{ID: journal.NewID(), Evening: evening, Zone: "Europe/London", Beat: k.walk.Beat.ID,
		Rods: []journal.Rod{{ID: journal.NewID(), Person: anna.ID}, {ID: journal.NewID(), Person: colm.ID}}}
	r := k.walk.Runs[0]
	k.typed = journal.Run{Head: journal.Head{ID: journal.NewID(), Trip: k.trip.ID, Rod: k.trip.Rods[0].ID, When: journal.About(r.From.Add(9*time.Minute), 0)}, Pool: r.Pool, Until: journal.Of(journal.About(r.To, 0))}
	_, err = j.Do("set up", journal.Batch{Put: []journal.Record{journal.Beat{ID: k.walk.Beat.ID, Revisions: []journal.BeatRevision{{Shape: k.walk.Beat}}}, anna, colm, k.trip, k.typed}})
	require.NoError(t, err)
	k.j, k.d = j, New(j, now)
	k.d.SetAlbum(album.Beside(filepath.Join(k.dir, "journal.gloam")))
	return k
}

func (k *intakeKit) file(name string, b []byte) *intake.File {
	path := filepath.Join(k.dir, name)
	require.NoError(k.t, os.WriteFile(path, b, 0o600))
	return intake.Read(path, bytes.NewReader(b), int64(len(b)), intake.ReadOptions{Thumb: true})
}

func (k *intakeKit) photo() *intake.File {
	b, err := os.ReadFile("../../journal/photo/testdata/night_no_zone.jpg")
	require.NoError(k.t, err)
	return k.file("fish.jpg", bytes.Replace(b, []byte("2025:07:15 00:37:12"), []byte("2026:07:05 00:30:00"), 1))
}

func (k *intakeKit) row(of journal.Kind, nth int) IntakeRow {
	k.t.Helper()
	for _, r := range k.d.Intake().Rows() {
		if r.Record.Ref().Kind == of {
			if nth == 0 {
				return r
			}
			nth--
		}
	}
	k.t.Fatalf("no proposal of a %s", of)
	return IntakeRow{}
}

// Ensure that a night is made of files from first to last: read, asked whose, listed, settled,
// edited, looked at, stored as one change, taken back, stored again, and quiet after.
func TestIntakeWalk(t *testing.T) {
	k := newIntakeKit(t)
	room := k.d.Intake()
	told := What(0)
	k.d.OnChange(func(w What) { told |= w })
	assert.Empty(t, room.Rows())
	room.Add(k.file("night.gpx", k.walk.GPX()), k.photo(), k.file("bad.gpx", []byte("<gpx>")))
	assert.True(t, told.Has(RoomView))
	assert.Equal(t, k.trip.ID, room.Trip(), "the only night that holds a moment of them")
	qs, lines := room.Questions()
	require.NotEmpty(t, qs)
	assert.Equal(t, intake.WhoseTrack, qs[0].Kind)
	assert.Contains(t, lines[0][0], "night.gpx")
	assert.Equal(t, words.IntakeAsked(), room.Scene().Empty, "an answer is awaited: that nothing is proposed would not be true")
	assert.Len(t, room.Sources(), 3)
	assert.NotEmpty(t, room.Sources()[2].Remarks)

	room.GiveTo(k.trip.Rods[0].ID)
	room.KnowMoment("", intake.Moment{Shown: time.Date(2026, 7, 5, 0, 30, 0, 0, time.UTC), True: time.Date(2026, 7, 5, 0, 29, 0, 0, time.UTC)})
	room.SetCopied(true)
	n := len(k.walk.Runs)
	first := k.row(journal.KindRun, 0)
	require.Len(t, first.Conflicts, 1)
	assert.Equal(t, k.typed.Ref(), first.Conflicts[0].Written)
	assert.Equal(t, intake.Leave, first.Do)

	// Accepted without a way it holds all up, in words.
	room.Tick(first.Key, true)
	assert.True(t, k.row(journal.KindRun, 0).Unsettled)
	night, ghosts := room.Laid()
	require.NotNil(t, night)
	assert.Len(t, night.Log.Runs(journal.ID{}), n+1, "what is written and what contradicts it, both")
	assert.Equal(t, scene.Accepted, ghosts[first.Record.Ref()])
	assert.Equal(t, scene.NoGhost, ghosts[k.typed.Ref()])
	_, err := room.Commit()
	require.ErrorContains(t, err, "contradicts what is written")
	room.Settle(first.Key, intake.TakeProposed)
	assert.False(t, k.row(journal.KindRun, 0).Unsettled)

	// An edit: the second run with a note; another is not to come again.
	second := k.row(journal.KindRun, 1)
	r := second.Record.(journal.Run)
	r.Note = "in the rain"
	require.NoError(t, room.Edit(second.Key, r))
	assert.True(t, k.row(journal.KindRun, 1).Edited)
	require.Error(t, room.Edit(second.Key, k.typed), "another record")
	r.Pool = journal.ID{}
	require.Error(t, room.Edit(second.Key, r), "a run without a pool")
	room.Reject(k.row(journal.KindRun, 2).Key)
	room.Tick(k.row(journal.KindContact, 0).Key, true)

	night, ghosts = room.Laid()
	require.NotNil(t, night)
	assert.Len(t, night.Log.Runs(journal.ID{}), n, "but for the one rejected")
	assert.Equal(t, scene.Accepted, ghosts[second.Record.Ref()])
	ghost, _ := night.Log.Find(second.Record.Ref().ID)
	assert.Equal(t, "in the rain", ghost.Base().Note, "as edited")
	before, err := k.j.Night(k.trip.ID)
	require.NoError(t, err)
	assert.Len(t, before.Entries, 1, "nothing is stored")

	c, err := room.Commit()
	require.NoError(t, err)
	assert.Equal(t, "import", c.Did)
	log, err := k.j.Night(k.trip.ID)
	require.NoError(t, err)
	assert.Len(t, log.Runs(journal.ID{}), n-1)
	e, ok := log.Find(second.Record.Ref().ID)
	require.True(t, ok)
	assert.Equal(t, "in the rain", e.Base().Note)
	originals, err := filepath.Glob(filepath.Join(k.dir, "journal.photos", "*", "*.jpg"))
	require.NoError(t, err)
	assert.Len(t, originals, 1)
	for _, row := range room.Rows() {
		assert.NotEmpty(t, row.Past, row.Says)
		assert.Equal(t, intake.Leave, row.Do)
	}

	_, err = k.j.Undo()
	require.NoError(t, err)
	log, err = k.j.Night(k.trip.ID)
	require.NoError(t, err)
	assert.Equal(t, before.Entries, log.Entries)
	assert.Empty(t, k.row(journal.KindRun, 1).Past, "as before the import")
	_, err = k.j.Redo()
	require.NoError(t, err)
	c, err = room.Commit()
	require.NoError(t, err)
	assert.Zero(t, c, "nothing is left to store")

	_, err = k.j.Remove(second.Record.Ref())
	require.NoError(t, err)
	for _, row := range room.Rows() {
		if row.Key == second.Key {
			assert.Equal(t, journal.Deleted, row.Past)
		}
	}
	room.Clear()
	assert.Empty(t, room.Files())
	assert.Empty(t, room.Rows())
}

// Ensure that a fish stays in the run it fell in, and keeps its number, when a proposed run is
// laid over it; the fish proposed has none.
func TestLaidKeepsWhatIsWritten(t *testing.T) {
	k := newIntakeKit(t)
	fish := journal.Contact{Head: journal.Head{ID: journal.NewID(), Trip: k.trip.ID, Rod: k.trip.Rods[0].ID, When: journal.Exact(k.walk.Runs[0].From.Add(12 * time.Minute))}, Touch: journal.Pull}
	other := k.walk.Beat.InOrder()[0].ID
	if other == k.typed.Pool {
		other = k.walk.Beat.InOrder()[1].ID
	}
	k.typed.Pool = other
	_, err := k.j.Do("write", journal.Batch{Put: []journal.Record{k.typed, fish}})
	require.NoError(t, err)
	room := k.d.Intake()
	room.GiveTo(k.trip.Rods[0].ID)
	early := journal.Contact{}
	room.Add(k.file("night.gpx", k.walk.GPX()), k.photo())
	n, ghosts := room.Laid()
	require.NotNil(t, n)
	for _, c := range n.Contacts {
		if ghosts[c.Ref()] != scene.NoGhost {
			early = c.Contact
			assert.Zero(t, c.N)
			continue
		}
		assert.Equal(t, 1, c.N)
		assert.Equal(t, other, c.Pool.ID, "not the pool of the ghost")
		assert.Equal(t, k.typed.ID, n.Rods[0].Runs[c.Run].Run.ID)
	}
	assert.NotZero(t, early.ID)
	for _, r := range n.Rods[0].Runs {
		if ghosts[r.Run.Ref()] != scene.NoGhost && r.Run.Pool == k.walk.Runs[0].Pool {
			assert.Equal(t, 1, r.Nth, "the first of them")
			break
		}
	}
}

// Ensure that all can be ticked or left at once, but for what contradicts something, and that
// a file read again takes the place of the first.
func TestIntakeTicks(t *testing.T) {
	k := newIntakeKit(t)
	room := k.d.Intake()
	room.GiveTo(k.trip.Rods[0].ID)
	room.Add(k.file("night.gpx", k.walk.GPX()))
	count := func() (n int) {
		for _, r := range room.Rows() {
			if r.Do == intake.Accept {
				n++
			}
		}
		return n
	}
	all := len(room.Rows())
	room.TickAll(false)
	assert.Zero(t, count())
	room.TickAll(true)
	assert.Equal(t, all-1, count())
	room.Add(k.file("night.gpx", k.walk.GPX()))
	assert.Len(t, room.Files(), 1)
	room.Drop(room.Files()[0])
	assert.Empty(t, room.Rows())
}
