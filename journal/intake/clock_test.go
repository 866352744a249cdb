package intake_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/journal/photo"
)

func taken(wall string) photo.Taken {
	t, err := time.Parse("2006-01-02 15:04:05", wall)
	if err != nil {
		panic(err)
	}
	return photo.Taken{Wall: t, HasDate: true, HasClock: true}
}

func fix(at string) photo.Fix {
	t, err := time.Parse("2006-01-02 15:04:05", at)
	if err != nil {
		panic(err)
	}
	return photo.Fix{At: t, HasDate: true, HasClock: true}
}

func rfc(t time.Time) string { return t.Format(time.RFC3339) }

// Ensure that one known moment gives what to add to a clock.
func TestMoment(t *testing.T) {
	shown := time.Date(2026, 7, 4, 22, 0, 12, 0, time.UTC)
	assert.Equal(t, -92*time.Second, intake.Moment{Shown: shown, True: shown.Add(-92 * time.Second)}.Offset())
}

// Ensure that the files of the readers come out: night_offset_plus1.jpg at 23:37:12Z with a
// clock 17 s ahead of its fix (its row in MANIFEST.tsv), and night_no_zone.jpg only with a
// zone from elsewhere.
func TestReadClockOfFiles(t *testing.T) {
	london, oslo := zone(t, "Europe/London"), zone(t, "Europe/Oslo")
	p := read(t, invented(t, "night_offset_plus1.jpg"), intake.ReadOptions{}).Photo
	r := intake.ReadClock(p, oslo, nil)
	assert.Equal(t, "2025-07-14T23:37:12Z", rfc(r.At))
	assert.Equal(t, intake.ByTag, r.By)
	assert.True(t, r.HasFast)
	assert.Equal(t, 17*time.Second, r.Fast)

	p = read(t, invented(t, "night_no_zone.jpg"), intake.ReadOptions{}).Photo
	assert.Equal(t, intake.Reading{}, intake.ReadClock(p, nil, nil))
	r = intake.ReadClock(p, london, nil)
	assert.Equal(t, "2025-07-14T23:37:12Z", rfc(r.At))
	assert.Equal(t, intake.ByNight, r.By)
	r = intake.ReadClock(p, london, oslo)
	assert.Equal(t, "2025-07-14T22:37:12Z", rfc(r.At))
	assert.Equal(t, intake.ByAnswer, r.By)
}

// Ensure that a clock against the satellites tells the zone, also where the date of the fix
// is wrong by a day: 2:01:32 ahead means two hours east and a clock 92 s fast; 21:23 by the
// clock and 01:22 UTC of the next day, four hours west. Both are cases met in real pictures.
func TestSatelliteZone(t *testing.T) {
	p := &photo.Photo{Taken: taken("2025-07-15 00:01:32"), Fix: fix("2025-07-15 22:00:00")}
	r := intake.ReadClock(p, nil, nil)
	assert.Equal(t, intake.BySatellite, r.By)
	assert.Equal(t, 2*time.Hour, r.East)
	assert.Equal(t, "2025-07-14T22:01:32Z", rfc(r.At))
	assert.Equal(t, 92*time.Second, r.Fast)

	p = &photo.Photo{Taken: taken("2025-07-14 21:23:00"), Fix: fix("2025-07-15 01:22:00")}
	assert.Equal(t, -4*time.Hour, intake.ReadClock(p, nil, nil).East)

	p = &photo.Photo{Taken: taken("2025-07-15 12:00:00"), Fix: fix("2025-07-14 23:00:00")} // +13, in New Zealand's summer half
	assert.Equal(t, 13*time.Hour, intake.ReadClock(p, zone(t, "Pacific/Tongatapu"), nil).East)
	assert.Equal(t, -11*time.Hour, intake.ReadClock(p, nil, nil).East)
}

// Ensure that a fix of half an hour ago does not make a zone half an hour off.
func TestOldFix(t *testing.T) {
	p := &photo.Photo{Taken: taken("2025-07-15 00:30:00"), Fix: fix("2025-07-14 23:00:00")}
	r := intake.ReadClock(p, zone(t, "Europe/London"), nil)
	assert.Equal(t, intake.ByNight, r.By)
	assert.True(t, r.OldFix)
	assert.Equal(t, "2025-07-14T23:30:00Z", rfc(r.At))
	assert.False(t, r.HasFast, "half an hour is no fault of a clock")
}

// Ensure that hours shown twice or never are taken with a doubt. British clocks went back on
// 26 October 2025 and on 30 March 2025 forward, at 01:00Z (IANA 2025b).
func TestClockChanges(t *testing.T) {
	london := zone(t, "Europe/London")
	r := intake.ReadClock(&photo.Photo{Taken: taken("2025-10-26 01:30:00")}, london, nil)
	assert.Equal(t, "2025-10-26T00:30:00Z", rfc(r.At))
	assert.Equal(t, journal.WallTwice, r.Doubt)
	r = intake.ReadClock(&photo.Photo{Taken: taken("2025-03-30 01:30:00")}, london, nil)
	assert.Equal(t, "2025-03-30T01:30:00Z", rfc(r.At))
	assert.Equal(t, journal.WallSkipped, r.Doubt)
	r = intake.ReadClock(&photo.Photo{Taken: taken("2025-03-30 03:30:00")}, london, nil)
	assert.Equal(t, "2025-03-30T02:30:00Z", rfc(r.At))
	assert.Empty(t, r.Doubt)
}

// Ensure that a picture without date or time of day has no instant.
func TestHalfAClock(t *testing.T) {
	p := &photo.Photo{Taken: taken("2025-07-15 00:30:00")}
	p.Taken.HasDate = false
	require.Equal(t, intake.Reading{}, intake.ReadClock(p, time.UTC, time.UTC))
}
