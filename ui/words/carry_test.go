package words

import (
	"errors"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
)

// Ensure that moving is said in times of the night and in pools, and a refusal in two
// sentences: what is so, and where the thing is now.
func TestCarryWords(t *testing.T) {
	zone := time.FixedZone("", 3600)
	at := func(h, m int) time.Time { return time.Date(2026, 7, 4, h, m, 0, 0, zone) }
	one := func(t time.Time) journal.Spread { return journal.Spread{Lo: t, Hi: t} }

	assert.Equal(t, "23:41, was 23:10", Carried(one(at(23, 41)), one(at(23, 10)), zone, "", nil))
	assert.Equal(t, "23:10", Carried(one(at(23, 10)), one(at(23, 10)), zone, "", nil))
	assert.Equal(t, "about 23:41, was about 23:10", Carried(
		journal.Spread{Lo: at(23, 31), Hi: at(23, 51)}, journal.Spread{Lo: at(23, 0), Hi: at(23, 20)}, zone, "", nil))
	no := StaysWhereItWas("Anna fishes Long Flat then.")
	assert.Equal(t, "23:41, was 23:10. Anna fishes Long Flat then.", Carried(one(at(23, 41)), one(at(23, 10)), zone, "", no))
	what, do := Explain(no)
	assert.Equal(t, "Anna fishes Long Flat then.", what)
	assert.Equal(t, "It is back where it was.", do)

	assert.Equal(t, "in Long Flat", CarriedTo("Long Flat", nil))
	assert.Equal(t, "in unnamed pool", CarriedTo("", nil))
	assert.Equal(t, "There is no pool here.", CarriedTo("Long Flat", NotOnWater()))
	assert.Equal(t, "23:41, was 23:10; now in Long Flat", Carried(one(at(23, 41)), one(at(23, 10)), zone, NowIn("Long Flat"), nil))
	assert.Equal(t, "Moving to 23:41 …", Nudged(one(at(23, 41)), zone, "", nil))

	n := &timeline.Night{Zone: zone}
	run := timeline.RunSpan{Pool: geo.Pool{Name: "Alder Pool"}, From: one(at(22, 35)), To: one(at(23, 12))}
	told := RodElsewhere(n, timeline.RodNight{Name: "Anna"}, run, geo.Pool{Name: "Gate Pool"}, one(at(23, 0)))
	assert.Equal(t, "Anna was not in Gate Pool at 23:00, but in Alder Pool 22:35–23:12.", told.What)
	assert.True(t, errors.As(error(told), &Told{}))
}

// Ensure that the speed of playing is said with the keys that change it.
func TestPlayWords(t *testing.T) {
	assert.Equal(t, "Playing, 10 minutes a second. U is faster, D slower, Space stops.", PlayingAt(10))
	assert.Contains(t, PlayingAt(1), "a minute a second")
	assert.Equal(t, "On the sketch", KeySection("Go", true, false))
	assert.Equal(t, "Go", KeySection("Go", false, false))
	assert.Equal(t, "full stop", KeyName("."))
}
