package journal_test

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
)

// Ensure that a night runs from noon to noon of the clock on the wall, however
// many hours that takes. Dates of the changes: IANA time zone
// database 2025b as zdump (glibc 2.36) lists them.
func TestDateNight(t *testing.T) {
	for _, c := range []struct {
		zone, evening string
		hours         float64
	}{
		{"Europe/London", "2026-07-04", 24},
		{"Europe/London", "2026-03-28", 23},
		{"Europe/London", "2026-10-24", 25},
		{"Europe/Oslo", "2026-03-28", 23},
		{"Australia/Lord_Howe", "2026-04-04", 24.5},
		{"Australia/Lord_Howe", "2026-10-03", 23.5},
		{"America/Argentina/Ushuaia", "2026-01-31", 24},
		{"Pacific/Auckland", "2026-04-04", 25},
		{"Pacific/Auckland", "2026-09-26", 23},
		{"Atlantic/Stanley", "2010-09-04", 23},
		{"America/St_Johns", "2026-03-07", 23},
	} {
		t.Run(c.zone+" "+c.evening, func(t *testing.T) {
			d, err := journal.ParseDate(c.evening)
			require.NoError(t, err)
			loc := zone(t, c.zone)
			start, end := d.Night(loc)
			assert.Equal(t, c.hours, end.Sub(start).Hours())
			assert.Equal(t, time.UTC, start.Location())
			assert.Equal(t, c.evening+" 12:00", start.In(loc).Format("2006-01-02 15:04"))
			assert.Equal(t, d.Add(1).String()+" 12:00", end.In(loc).Format("2006-01-02 15:04"))
		})
	}
}

var zones = []string{"Europe/London", "Europe/Oslo", "Atlantic/Reykjavik", "Australia/Lord_Howe", "Australia/Sydney",
	"Pacific/Auckland", "Pacific/Chatham", "America/Argentina/Ushuaia", "America/Santiago", "America/St_Johns", "Asia/Kolkata", "UTC"}

func someZone(t *rapid.T) *time.Location {
	loc, err := time.LoadLocation(rapid.SampledFrom(zones).Draw(t, "zone"))
	require.NoError(t, err)
	return loc
}

// Ensure that every instant lies in the night it is said to belong to, and in
// no other.
func TestEveningOf(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		loc := someZone(t)
		at := time.Unix(rapid.Int64Range(0, 3e9).Draw(t, "unix"), 0)
		d := journal.EveningOf(at, loc)
		start, end := d.Night(loc)
		assert.False(t, at.Before(start), "%s before %s", at, start)
		assert.True(t, at.Before(end), "%s not before %s", at, end)
	})
	london := zone(t, "Europe/London")
	for clock, want := range map[string]string{
		"2026-07-04 12:00": "2026-07-04", "2026-07-04 23:59": "2026-07-04", "2026-07-05 00:10": "2026-07-04",
		"2026-07-05 11:59": "2026-07-04", "2026-01-01 01:00": "2025-12-31", "2024-03-01 02:00": "2024-02-29",
	} {
		at, err := time.ParseInLocation("2006-01-02 15:04", clock, london)
		require.NoError(t, err)
		assert.Equal(t, want, journal.EveningOf(at, london).String(), clock)
	}
}

// Ensure that the legal date of a fish after midnight is that of the new day.
func TestDateOf(t *testing.T) {
	london := zone(t, "Europe/London")
	at := time.Date(2026, time.July, 14, 23, 30, 0, 0, time.UTC) // 0:30 British Summer Time
	assert.Equal(t, "2026-07-15", journal.DateOf(at, london).String())
	assert.Equal(t, "2026-07-14", journal.EveningOf(at, london).String())
}

func TestParseDate(t *testing.T) {
	d, err := journal.ParseDate("2026-07-04")
	require.NoError(t, err)
	assert.Equal(t, journal.Date{Year: 2026, Month: time.July, Day: 4}, d)
	for _, bad := range []string{"", "2026-7-4", "04/07/2026", "2026-02-29", "2026-13-01", "2026-07-04T00:00:00Z", " 2026-07-04", "0000-01-01", "20260704"} {
		_, err := journal.ParseDate(bad)
		assert.Equal(t, journal.Invalid, journal.KindOf(err), bad)
		assert.Error(t, err, bad)
	}
}

func TestDateJSON(t *testing.T) {
	type dated struct {
		A journal.Date `json:"a"`
		B journal.Date `json:"b,omitzero"`
	}
	b, err := json.Marshal(dated{A: evening})
	require.NoError(t, err)
	assert.Equal(t, `{"a":"2026-07-04"}`, string(b))
	var back dated
	require.NoError(t, json.Unmarshal(b, &back))
	assert.Equal(t, dated{A: evening}, back)

	b, err = json.Marshal(dated{})
	require.NoError(t, err)
	assert.Equal(t, `{"a":""}`, string(b))
	require.NoError(t, json.Unmarshal(b, &back))
	assert.True(t, back.A.IsZero())

	_, err = json.Marshal(dated{A: journal.Date{Year: 2026, Month: 2, Day: 30}})
	assert.Error(t, err, "a day that no calendar has")
	assert.Error(t, json.Unmarshal([]byte(`{"a":"2026-02-30"}`), &back))
}

// Ensure that days count as the calendar counts them.
func TestDateAdd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := journal.DateOf(time.Unix(rapid.Int64Range(-3e9, 4e9).Draw(t, "unix"), 0), time.UTC)
		n := rapid.IntRange(-1000, 1000).Draw(t, "days")
		e := d.Add(n)
		assert.Equal(t, d, e.Add(-n))
		assert.Equal(t, n > 0, d.Before(e))
		assert.Equal(t, time.Weekday(((int(d.Weekday())+n)%7+7)%7), e.Weekday())
	})
	assert.Equal(t, time.Saturday, evening.Weekday()) // date, GNU coreutils 9.1
}
