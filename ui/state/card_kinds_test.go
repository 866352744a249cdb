package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that every kind of entry is added by a card, amended, taken out and brought back
// by undo, each as one change, and that a time after midnight lies in the same night
// however it is written.
func TestEveryKindThereAndBack(t *testing.T) {
	must := map[journal.Kind][]string{
		journal.KindRun: {"rod", "Anna", "until", "0:40", "pool", "Alder Pool"}, journal.KindRig: {"rod", "Anna", "flies.0", "1 in slim dark"},
		journal.KindWay: {"rod", "Anna", "speed", "slow strip"}, journal.KindContact: {"rod", "Colm", "pool", "Long Flat"},
		journal.KindSky: {"cloud", "4"}, journal.KindWeather: {"wind", "2"}, journal.KindWater: {"level", "0.46"},
		journal.KindReady: {"pool", "Alder Pool"}, journal.KindBreak: {"until", "0:30"}, journal.KindEnd: {"why", "cold"},
		journal.KindPlan: {"pool", "Long Flat"}, journal.KindNote: {"note", "an otter"},
		journal.KindPhoto: {"file", "", "of", ""},
	}
	for _, kind := range CardKinds {
		for _, text := range []string{"010", "0:10", "0.10", "00:10"} {
			k := newKit(t)
			k.night(true)
			require.NotEmpty(t, must[kind], "a kind nobody tried: %s", kind)
			count := func() int {
				all, err := k.j.Changes(0, 1000)
				require.NoError(t, err)
				return len(all)
			}
			stands := func(r journal.Ref) bool { _, err := k.j.Get(r); return err == nil }
			before := count()
			if kind == journal.KindPhoto {
				k.album()
				must[kind][1] = k.picture("fish.jpg", "2026:07:04 23:14:30", 1)
			}
			e := k.add(kind, append([]string{"when", text}, must[kind]...)...)
			assert.Equal(t, before+1, count(), "%s is one change", kind)
			assert.Equal(t, journal.Exact(k.at("00:10")), e.Base().When, "%s %s", kind, text)
			assert.Equal(t, "2026-07-04", k.d.Night().Log.Trip.Evening.String())

			k.write(k.amend(e.Ref()), nil, "when", "about 23:30", "note", "seen twice")
			got, err := k.j.Get(e.Ref())
			require.NoError(t, err)
			assert.Equal(t, journal.About(k.at("23:30"), 0), got.(journal.Entry).Base().When, kind)
			require.NoError(t, k.d.Undo())
			got, err = k.j.Get(e.Ref())
			require.NoError(t, err)
			assert.Equal(t, e, got, "%s as it was", kind)
			require.NoError(t, k.d.Redo())

			require.NoError(t, k.amend(e.Ref()).Remove())
			assert.False(t, stands(e.Ref()), kind)
			require.NoError(t, k.d.Undo())
			assert.True(t, stands(e.Ref()), kind)
			assert.Equal(t, e.Ref(), k.d.Selected(), "what came back is selected")
			require.NoError(t, k.d.Command("edit.remove").Run())
			assert.False(t, stands(e.Ref()), "%s by its key", kind)
			if kind != journal.KindContact {
				break // one way of writing it is enough for the others
			}
		}
	}
}

// Ensure that a photo that stands is amended, removed and brought back.
func TestPhotoThereAndBack(t *testing.T) {
	k := newKit(t)
	k.night(false)
	p := journal.Photo{Head: journal.Head{ID: journal.NewID(), Trip: k.d.Trip(), When: journal.Exact(k.at("23:30"))},
		SHA256: "0000000000000000000000000000000000000000000000000000000000000000", Name: "fish.jpg"}
	_, err := k.j.Log(p)
	require.NoError(t, err)
	got := k.write(k.amend(p.Ref()), nil, "when", "0:10", "note", "the tail").(journal.Photo)
	assert.Equal(t, "the tail", got.Note)
	assert.Equal(t, p.SHA256, got.SHA256)
	require.NoError(t, k.amend(p.Ref()).Remove())
	require.NoError(t, k.d.Undo())
	_, err = k.j.Get(p.Ref())
	assert.NoError(t, err)
}

// Ensure that a night, its people and its rods are added, amended, removed and brought
// back as one change each.
func TestNightThereAndBack(t *testing.T) {
	k := newKit(t)
	k.night(true)
	trip := journal.Ref{Kind: journal.KindTrip, ID: k.d.Trip()}
	c := k.amend(trip)
	c.Set("rods.2.person", "Morag")
	c.Set("rods.0.start", "21:30")
	require.NoError(t, c.Commit())
	assert.Len(t, k.d.Night().Rods, 3)
	require.NoError(t, k.d.Undo())
	assert.Len(t, k.d.Night().Rods, 2)
	assert.Len(t, all[journal.Person](t, k.j), 2, "Morag too")
	require.NoError(t, k.d.Redo())
	assert.Len(t, k.d.Night().Rods, 3)
	require.NoError(t, k.d.Command("night.remove").Run())
	assert.Nil(t, k.d.Night())
	require.NoError(t, k.d.Undo())
	require.NotNil(t, k.d.Night())
	assert.Len(t, k.d.Night().Rods, 3)
}
