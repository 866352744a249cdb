package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that the night is played at the speed that is set, from a second of real time
// to the minutes of the night, and that the speeds end somewhere.
func TestRate(t *testing.T) {
	k, _ := written(t)
	k.d.SetCursor(k.at("22:40"))
	k.d.Play(true)
	require.True(t, k.d.Playing())
	k.d.Advance(time.Second)
	assert.Equal(t, k.at("22:50"), k.d.Cursor())
	require.True(t, k.d.ChangeRate(+1))
	k.d.Advance(time.Second)
	assert.Equal(t, k.at("23:10"), k.d.Cursor())
	n := 0
	for k.d.ChangeRate(-1) {
		n++
	}
	assert.Equal(t, 4, n)
	assert.Equal(t, 1, k.d.Rate())
	assert.False(t, k.d.Command("play.slower").Enabled())
	assert.True(t, k.d.Command("play.faster").Enabled())
}

// Ensure that playing ends at the end of the window, is known to have, and starts from
// the beginning the next time.
func TestPlayEnds(t *testing.T) {
	k, _ := written(t)
	from, to := k.d.StripWindow()
	k.d.SetCursor(from)
	assert.False(t, k.d.PlayedOut())
	k.d.Play(true)
	k.d.Advance(24 * time.Hour)
	assert.False(t, k.d.Playing())
	assert.Equal(t, to, k.d.Cursor())
	assert.True(t, k.d.PlayedOut())
	k.d.Play(true)
	assert.Equal(t, from, k.d.Cursor())
}

// Ensure that a fish is said to surface when the cursor passes it while playing, less
// and less, in order, and not otherwise.
func TestSurfaced(t *testing.T) {
	k, _ := written(t)
	first := k.d.Night().Contacts[0]
	k.d.SetCursor(first.At.Mid())
	assert.Empty(t, k.d.Surfaced(), "nobody plays")
	k.d.SetCursor(first.At.Mid().Add(-time.Minute))
	k.d.Play(true)
	assert.Empty(t, k.d.Surfaced(), "before its moment")
	last := 2.0
	for range 8 {
		k.d.Advance(100 * time.Millisecond)
		up := k.d.Surfaced()
		require.NotEmpty(t, up)
		assert.Equal(t, first.Contact.Ref(), up[0].Ref)
		assert.Less(t, up[0].Fresh, last)
		assert.Positive(t, up[0].Fresh)
		last = up[0].Fresh
	}
	k.d.Advance(300 * time.Millisecond)
	for _, u := range k.d.Surfaced() {
		assert.NotEqual(t, first.Contact.Ref(), u.Ref, "it stays marked")
	}
}

// Ensure that the key to the moon goes through the moments at which it comes over a
// hill, in order, and round.
func TestToMoon(t *testing.T) {
	k, _ := written(t)
	at := k.d.moons()
	if len(at) == 0 {
		assert.False(t, k.d.ToMoon())
		assert.False(t, k.d.Command("go.moon").Enabled())
		return
	}
	k.d.SetCursor(k.d.Night().From)
	for _, want := range append(at, at[0]) {
		require.True(t, k.d.ToMoon())
		assert.Equal(t, want, k.d.Cursor())
	}
}

// Ensure that fish are stepped through by number, both ways, from the selected one or
// from the cursor.
func TestNextFish(t *testing.T) {
	k, _ := written(t)
	n := k.d.Night()
	k.d.Select(journal.Ref{})
	k.d.SetCursor(n.Contacts[0].At.Mid().Add(-time.Minute))
	for _, c := range n.Contacts {
		require.True(t, k.d.NextFish(+1))
		assert.Equal(t, c.Contact.Ref(), k.d.Selected())
	}
	assert.False(t, k.d.NextFish(+1))
	require.True(t, k.d.NextFish(-1))
	assert.Equal(t, n.Contacts[len(n.Contacts)-2].Contact.Ref(), k.d.Selected())
	k.d.Select(journal.Ref{})
	k.d.SetCursor(n.End)
	require.True(t, k.d.NextFish(-1))
	assert.Equal(t, n.Contacts[len(n.Contacts)-1].Contact.Ref(), k.d.Selected())
}
