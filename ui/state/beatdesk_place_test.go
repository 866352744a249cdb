package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Ensure that a place is read in any notation, that its zone follows until one is chosen, and
// that what cannot be read is told at the field and changes nothing.
func TestBeatPlace(t *testing.T) {
	b := emptyDesk(t).Beats()
	b.New()
	for text, zone := range map[string]string{"NX 12345 67890": "Europe/London", "geo:60.5,6.5": "Europe/Oslo", "53°47'S 67°42'W": "America/Argentina/Ushuaia"} {
		b.Set("place", text)
		assert.Empty(t, fieldOf(b, "place").Error, text)
		assert.Equal(t, zone, b.now().Beat.Zone, text)
	}
	at := b.now().Beat.At
	b.Set("place", "55.1")
	assert.NotEmpty(t, fieldOf(b, "place").Error)
	assert.Equal(t, "55.1", fieldOf(b, "place").Value)
	assert.Equal(t, at, b.now().Beat.At)
	b.Set("zone", "Nowhere/Land")
	assert.Contains(t, fieldOf(b, "zone").Error, "Nowhere/Land")
	b.Set("zone", "Europe/Dublin")
	b.Set("place", "55.1, -4.6")
	assert.Equal(t, "Europe/Dublin", b.now().Beat.Zone, "chosen by hand")
	b.Set("place", "54.99, -7.36")
	var near []string
	for _, c := range fieldOf(b, "zone").Choices {
		near = append(near, c.Value)
	}
	assert.Equal(t, []string{"Europe/London", "Europe/Dublin"}, near, "beside a border both are offered")
}

// Ensure that what is typed stands as it was typed, letter by letter, and is put in its usual form
// only when something else is done.
func TestBeatTypedAsTyped(t *testing.T) {
	b := emptyDesk(t).Beats()
	drawThree(t, b)
	b.Select(b.Order()[0])
	for i, name := 1, "The  Alder "; i <= len(name); i++ {
		b.Set("name", name[:i])
		assert.Equal(t, name[:i], fieldOf(b, "name").Value)
	}
	assert.Equal(t, "The Alder", b.now().Beat.InOrder()[0].Name)
	assert.NoError(t, b.MoveInOrder(+1))
	assert.Equal(t, "The Alder", fieldOf(b, "name").Value)
	b.New()
	for i, place := 1, "54.984, -4.428"; i <= len(place); i++ {
		b.Set("place", place[:i])
		assert.Equal(t, place[:i], fieldOf(b, "place").Value)
	}
	assert.Empty(t, fieldOf(b, "place").Error)
	assert.Equal(t, "Europe/London", b.now().Beat.Zone)
}
