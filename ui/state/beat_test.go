package state

import (
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/ui/words"
)

func emptyDesk(t *testing.T) *Desk {
	now := func() time.Time { return time.Date(2026, 7, 5, 8, 30, 0, 0, time.UTC) }
	j, err := journal.Open(memory.New(journal.NewID()), now)
	require.NoError(t, err)
	return New(j, now)
}

func homeBeat(t *testing.T) string {
	data, err := os.ReadFile("../../geo/sketch/testdata/home.geojson")
	require.NoError(t, err)
	return string(data)
}

// Ensure that an empty journal is no dead end: what it lacks is said, a beat can be
// read in, and then a night written up.
func TestEmptyJournalTakesBeat(t *testing.T) {
	d := emptyDesk(t)
	_, err := d.NewNightCard()
	what, do := words.Explain(err)
	assert.Equal(t, "A night needs a beat, and this journal has none yet.", what)
	assert.Equal(t, "Draw one under Beats, at the left; or read one in: File, Read a beat in …", do)
	assert.Equal(t, "File", d.Command("file.beat").Menu)
	assert.Equal(t, "Read a beat in …", d.Command("file.beat").Title())
	assert.False(t, d.Command("file.beat").Enabled(), "until a window carries it out")

	assert.False(t, d.HasBeat())
	told, err := d.ReadBeat(strings.NewReader(homeBeat(t)))
	require.NoError(t, err)
	assert.Regexp(t, `^Larrick Water, Home Beat read in with \d+ pools\.`, told)
	assert.True(t, d.HasBeat())
	c, err := d.NewNightCard()
	require.NoError(t, err)
	c.Set("rods.0.person", "Anna")
	require.NoError(t, c.Commit())
	assert.Equal(t, "Home Beat", d.Night().Beat.Name)

	require.NoError(t, d.Undo())
	require.NoError(t, d.Undo())
	_, err = d.NewNightCard()
	assert.Equal(t, journal.NotFound, journal.KindOf(err), "undo takes the beat back")
	_, err = d.ReadBeat(strings.NewReader(homeBeat(t)))
	assert.NoError(t, err, "and it can be read in anew")
}

// Ensure that reading the same beat again changes nothing and says so, and that a
// changed sketch of it is refused.
func TestReadBeatAgain(t *testing.T) {
	d := emptyDesk(t)
	_, err := d.ReadBeat(strings.NewReader(homeBeat(t)))
	require.NoError(t, err)
	before, err := d.j.Changes(0, 10)
	require.NoError(t, err)
	told, err := d.ReadBeat(strings.NewReader(homeBeat(t)))
	require.NoError(t, err)
	assert.Equal(t, "Larrick Water, Home Beat stands in this journal already, just as in the file. Nothing was changed.", told)

	_, err = d.ReadBeat(strings.NewReader(strings.Replace(homeBeat(t), "-4.4310207", "-4.4310107", 1)))
	assert.Equal(t, journal.Conflict, journal.KindOf(err))
	what, _ := words.Explain(err)
	assert.Equal(t, "Larrick Water, Home Beat stands in this journal already, and the file shows it otherwise.", what)
	after, err := d.j.Changes(0, 10)
	require.NoError(t, err)
	assert.Equal(t, before, after)
}

// Ensure that a file that cannot serve is refused with its reason, and that what was
// put right is told.
func TestReadBeatSpeaks(t *testing.T) {
	pool := func(member, ring string) string {
		return `{"type":"FeatureCollection",` + member + `"features":[{"type":"Feature","properties":{"role":"pool","name":"Alder Pool","order":1},"geometry":{"type":"Polygon","coordinates":[` + ring + `]}}]}`
	}
	const closed = `[[-4.5,55.1],[-4.499,55.1],[-4.499,55.1003],[-4.5,55.1003],[-4.5,55.1]]`
	const open = `[[-4.5,55.1],[-4.499,55.1],[-4.499,55.1003],[-4.5,55.1003]]`
	for _, c := range []struct{ name, file, why string }{
		{"empty", "", "No beat was read in: the file is empty."},
		{"text", "hello", "No beat was read in: the file is not JSON"},
		{"nothing drawn", `{"type":"FeatureCollection","name":"Home Beat","features":[]}`, "No beat was read in: the beat has no place"},
		{"crossed", pool(`"zone":"Europe/London",`, `[[-4.5,55.1],[-4.499,55.1003],[-4.499,55.1],[-4.5,55.1009],[-4.5,55.1]]`), "No beat was read in: the outline of Alder Pool crosses itself"},
	} {
		d := emptyDesk(t)
		_, err := d.ReadBeat(strings.NewReader(c.file))
		require.Error(t, err, c.name)
		what, do := words.Explain(err)
		assert.True(t, strings.HasPrefix(what, c.why), "%s: %s", c.name, what)
		assert.Contains(t, do, "Nothing was changed.", c.name)
		_, undo := d.j.CanUndo()
		assert.False(t, undo, c.name)
	}
	told, err := emptyDesk(t).ReadBeat(strings.NewReader(pool("", open)))
	require.NoError(t, err)
	for _, part := range []string{"A beat without a name read in with 1 pool.", "The outline of Alder Pool was open and has been closed.", "The file names no time zone; from where the beat lies Europe/London was taken.", "The file gives the beat no name."} {
		assert.Contains(t, told, part)
	}
}
