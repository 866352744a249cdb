package words

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that local time carries its offset where the clock shows it twice, and only
// there: the last Sunday of October in Britain, the first of April on the Chatham
// Islands and at Lord Howe, whose clocks go back by half an hour (IANA tz database).
func TestClock(t *testing.T) {
	for _, c := range []struct{ zone, utc, want string }{
		{"Europe/London", "2026-07-04T22:15:00Z", "23:15"},
		{"Europe/London", "2026-07-04T23:31:59Z", "00:31"},
		{"Europe/London", "2026-10-24T23:59:00Z", "00:59"},
		{"Europe/London", "2026-10-25T00:00:00Z", "01:00 UTC+1"},
		{"Europe/London", "2026-10-25T00:59:00Z", "01:59 UTC+1"},
		{"Europe/London", "2026-10-25T01:00:00Z", "01:00 UTC"},
		{"Europe/London", "2026-10-25T01:59:00Z", "01:59 UTC"},
		{"Europe/London", "2026-10-25T02:00:00Z", "02:00"},
		{"Europe/London", "2026-03-29T00:59:00Z", "00:59"},
		{"Europe/London", "2026-03-29T01:00:00Z", "02:00"},
		{"Pacific/Chatham", "2026-04-04T14:00:00Z", "02:45 UTC+12:45"},
		{"Pacific/Chatham", "2026-04-04T13:59:00Z", "03:44 UTC+13:45"},
		{"Pacific/Chatham", "2026-02-20T06:47:00Z", "20:32"},
		{"Australia/Lord_Howe", "2026-04-04T15:00:00Z", "01:30 UTC+10:30"},
		{"Australia/Lord_Howe", "2026-04-04T14:50:00Z", "01:50 UTC+11"},
		{"Australia/Lord_Howe", "2026-04-04T15:30:00Z", "02:00"},
		{"America/St_Johns", "2026-11-01T04:00:00Z", "01:30 UTC-2:30"},
	} {
		zone, err := time.LoadLocation(c.zone)
		require.NoError(t, err)
		at, err := time.Parse(time.RFC3339, c.utc)
		require.NoError(t, err)
		require.Equal(t, c.want, Clock(at, zone), "%s %s", c.zone, c.utc)
	}
}

// Ensure that a moment is said as well as it is known.
func TestMoment(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna)
	run := s.run(anna, "Alder Pool", "22:35", "23:10")
	fish := s.add(journal.Contact{Head: s.head(anna, s.exact("22:52")), Touch: journal.Pull})
	n := s.build(larrick())
	for _, c := range []struct {
		w    journal.When
		want string
	}{
		{s.exact("22:52"), "22:52"},
		{journal.About(s.at("23:00"), 0), "about 23:00"},
		{journal.Between(s.at("23:20"), s.at("23:40")), "23:20–23:40"},
		{journal.Between(s.at("23:20"), s.at("23:20").Add(20*time.Second)), "23:20"},
		{journal.Between(s.trip.Evening.Night(s.zone)), "untimed"},
		{journal.Within(run), "during the run"},
		{journal.After(fish), "after 22:52"},
		{journal.Before(fish), "before 22:52"},
	} {
		require.Equal(t, c.want, MomentShort(n, c.w))
	}
	require.Equal(t, "about 23:10", End(journal.Spread{Lo: s.at("23:00"), Hi: s.at("23:20")}, s.zone))
}

// Ensure that lengths of time are round.
func TestDuration(t *testing.T) {
	for want, d := range map[string]time.Duration{
		"no time": 20 * time.Second, "35 min": 35 * time.Minute, "1 h": 59*time.Minute + 40*time.Second, "2 h": 2 * time.Hour, "1 h 5 min": 65 * time.Minute,
	} {
		require.Equal(t, want, Duration(d))
	}
	require.Equal(t, "10.2 h", Hours(10*time.Hour+13*time.Minute))
}

// Ensure that dates are said in full and short. 4 July 2026 is a Saturday.
func TestDate(t *testing.T) {
	d := journal.Date{Year: 2026, Month: 7, Day: 4}
	require.Equal(t, "Saturday 4 July 2026", Date(d))
	require.Equal(t, "Sat 4 July 2026", NightDate(d))
	require.Equal(t, "Sat 4", DayOfMonth(d))
	require.Equal(t, "July 2026", Month(d))
}
