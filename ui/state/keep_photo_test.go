package state

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/journaltest"
	"gloamline/journal/photo"
	"gloamline/journal/store"
)

// pictured is a copy of a journal of one night, with an album, open.
type pictured struct {
	k *Keep
	s *store.Store
	j *journal.Journal
	a *album.Album
}

func openPictured(t require.TestingT, path string) pictured {
	now := func() time.Time { return keepNow }
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	j, err := journal.Open(s, now)
	require.NoError(t, err)
	return pictured{NewKeep(New(j, now), s), s, j, album.Beside(path)}
}

// takes keeps a picture and enters it in the night.
func (p pictured) takes(t require.TestingT, trip journal.ID, shade uint8, path string) journal.Photo {
	shot, err := album.Look(path)
	require.NoError(t, err)
	require.NoError(t, p.a.Keep(path, shot.SHA256, photo.JPEG))
	pic := journal.Photo{Head: journal.Head{ID: journal.NewID(), Trip: trip, When: journal.Exact(time.Date(2026, 7, 4, 22, int(shade), 0, 0, time.UTC))},
		SHA256: shot.SHA256, Name: shot.Name, Copied: true}
	_, err = p.j.Log(pic)
	require.NoError(t, err)
	return pic
}

// Ensure what joining another copy promises of photographs, whichever each side has: every original of
// either side is here once and sound, also one that was damaged here; every photo that stands has its original; a
// photo both copies had from before is there once, and one that both changed is shown to be settled, and nothing of the other copy changes.
func TestMergePhotos(t *testing.T) {
	dir := t.TempDir()
	var pictures []string
	for shade := range uint8(4) {
		path := filepath.Join(dir, string('a'+rune(shade))+".jpg")
		require.NoError(t, os.WriteFile(path, journaltest.Picture(24, 16, "", shade), 0o600))
		pictures = append(pictures, path)
	}
	// What both copies have from before: a night with a photo.
	first := filepath.Join(dir, "first.gloam")
	s, err := store.Create(first, store.Options{})
	require.NoError(t, err)
	require.NoError(t, s.Close())
	beat, trip := journal.NewID(), journal.NewID()
	begun := openPictured(t, first)
	_, err = begun.j.Do("begin", journal.Batch{Put: []journal.Record{
		journal.Beat{ID: beat, Revisions: []journal.BeatRevision{{Shape: geo.Beat{ID: beat, Name: "Kirk Beat", Zone: "Europe/London"}}}},
		journal.Trip{ID: trip, Evening: journal.Date{Year: 2026, Month: time.July, Day: 4}, Zone: "Europe/London", Beat: beat}}})
	require.NoError(t, err)
	both := begun.takes(t, trip, 0, pictures[0])
	require.NoError(t, begun.s.Close())
	b, err := os.ReadFile(first)
	require.NoError(t, err)

	n := 0
	rapid.Check(t, func(t *rapid.T) {
		n++
		home := filepath.Join(dir, "case", time.Duration(n).String())
		require.NoError(t, os.MkdirAll(filepath.Join(home, "there"), 0o700))
		defer os.RemoveAll(home)
		path, there := filepath.Join(home, "mine.gloam"), filepath.Join(home, "there", "theirs.gloam")
		require.NoError(t, os.WriteFile(path, b, 0o600))
		require.NoError(t, os.WriteFile(there, b, 0o600))
		here, other := openPictured(t, path), openPictured(t, there)
		defer func() { here.s.Close() }()
		for _, a := range []*album.Album{here.a, other.a} {
			_, err := begun.a.CopyTo(a)
			require.NoError(t, err)
		}

		some := rapid.SliceOfDistinct(rapid.Uint8Range(1, 3), rapid.ID[uint8])
		records, sums := 1, map[string]bool{both.SHA256: true}
		alike := map[string]int{}
		for i, side := range []pictured{here, other} {
			for _, shade := range some.Draw(t, []string{"here", "there"}[i]) {
				pic := side.takes(t, trip, shade, pictures[shade])
				sums[pic.SHA256] = true
				alike[pic.SHA256]++
				records++
			}
		}
		twice := 0
		for _, n := range alike {
			if n == 2 {
				twice++
			}
		}
		noted := rapid.SampledFrom([]string{"nobody", "here", "there", "both"}).Draw(t, "who wrote a note on the shared photo")
		for _, side := range []struct {
			p    pictured
			name string
		}{{here, "here"}, {other, "there"}} {
			if noted == side.name || noted == "both" {
				changed := both
				changed.Note = "written " + side.name
				_, err := side.p.j.Amend(changed)
				require.NoError(t, err)
			}
		}
		spoilt := rapid.Bool().Draw(t, "the shared original is damaged here")
		if spoilt {
			at, ok := here.a.Find(both.SHA256)
			require.True(t, ok)
			require.NoError(t, os.WriteFile(at, []byte("no picture"), 0o600))
		}
		require.NoError(t, other.s.Close())
		before, err := os.ReadFile(there)
		require.NoError(t, err)

		f, err := here.k.Freeze()
		require.NoError(t, err)
		m, err := LookAt(there, f)
		require.NoError(t, err)
		assert.Equal(t, noted == "both", len(m.Choices()) == 1, "a photo that both changed is shown")
		assert.Len(t, m.Plan.Alike, twice, "a picture read in on both sides is named")
		require.NoError(t, here.k.Accept(m))

		all, err := here.a.All()
		require.NoError(t, err)
		assert.Len(t, all, len(sums), "each original once")
		bad, err := here.a.Damaged()
		require.NoError(t, err)
		assert.Empty(t, bad)
		log, err := here.j.Night(trip)
		require.NoError(t, err)
		seen := map[journal.ID]bool{}
		for _, e := range log.Entries {
			pic := e.(journal.Photo)
			seen[pic.ID] = true
			_, ok := here.a.Find(pic.SHA256)
			assert.True(t, ok, "a photo without its original")
		}
		assert.Len(t, seen, records)
		after, err := os.ReadFile(there)
		require.NoError(t, err)
		assert.Equal(t, before, after)
		f, err = here.k.Freeze()
		require.NoError(t, err)
		again, err := LookAt(there, f)
		require.NoError(t, err)
		assert.True(t, again.Empty(), "a second merge")
	})
}
