package journal_test

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
)

func utc(s string) time.Time {
	t, err := time.Parse("2006-01-02 15:04", s)
	if err != nil {
		panic(err)
	}
	return t
}

// Ensure that clock readings become the right instants. Offsets and changes:
// IANA time zone
// database 2025b as zdump (glibc 2.36) lists them.
func TestResolveWall(t *testing.T) {
	none := time.Time{}
	for name, c := range map[string]struct {
		zone, evening string
		hour, min     int
		after, before time.Time
		want          string // UTC
		readings      int
		warning       journal.Warning
	}{
		"evening":              {"Europe/London", "2026-07-04", 23, 30, none, none, "2026-07-04 22:30", 1, ""},
		"past midnight":        {"Europe/London", "2026-07-04", 0, 10, none, none, "2026-07-04 23:10", 1, ""},
		"last minute":          {"Europe/London", "2026-07-04", 11, 59, none, none, "2026-07-05 10:59", 1, ""},
		"noon opens":           {"Europe/London", "2026-07-04", 12, 0, none, none, "2026-07-04 11:00", 2, ""},
		"noon closes":          {"Europe/London", "2026-07-04", 12, 0, utc("2026-07-05 02:00"), none, "2026-07-05 11:00", 2, ""},
		"twice":                {"Europe/London", "2026-10-24", 1, 30, none, none, "2026-10-25 00:30", 2, journal.WallTwice},
		"twice, then later":    {"Europe/London", "2026-10-24", 1, 30, utc("2026-10-25 00:45"), none, "2026-10-25 01:30", 2, ""},
		"twice, then earlier":  {"Europe/London", "2026-10-24", 1, 30, none, utc("2026-10-25 01:10"), "2026-10-25 00:30", 2, ""},
		"twice, with the next": {"Europe/London", "2026-10-24", 1, 30, none, utc("2026-10-25 00:30"), "2026-10-25 00:30", 2, ""},
		"twice, with the last": {"Europe/London", "2026-10-24", 1, 30, utc("2026-10-25 01:30"), none, "2026-10-25 01:30", 2, ""},
		"twice, no help":       {"Europe/London", "2026-10-24", 1, 30, utc("2026-10-24 22:00"), utc("2026-10-25 04:00"), "2026-10-25 00:30", 2, journal.WallTwice},
		"twice, none fits":     {"Europe/London", "2026-10-24", 1, 30, utc("2026-10-25 03:00"), none, "2026-10-25 00:30", 2, journal.WallTwice},
		"before the fold":      {"Europe/London", "2026-10-24", 0, 59, none, none, "2026-10-24 23:59", 1, ""},
		"after the fold":       {"Europe/London", "2026-10-24", 2, 0, none, none, "2026-10-25 02:00", 1, ""},
		"skipped":              {"Europe/London", "2026-03-28", 1, 30, none, none, "2026-03-29 01:30", 1, journal.WallSkipped},
		"first skipped":        {"Europe/London", "2026-03-28", 1, 0, none, none, "2026-03-29 01:00", 1, journal.WallSkipped},
		"after the gap":        {"Europe/London", "2026-03-28", 2, 0, none, none, "2026-03-29 01:00", 1, ""},
		"Lord Howe twice":      {"Australia/Lord_Howe", "2026-04-04", 1, 45, none, none, "2026-04-04 14:45", 2, journal.WallTwice},
		"Lord Howe once":       {"Australia/Lord_Howe", "2026-04-04", 1, 15, none, none, "2026-04-04 14:15", 1, ""},
		"Lord Howe skipped":    {"Australia/Lord_Howe", "2026-10-03", 2, 15, none, none, "2026-10-03 15:45", 1, journal.WallSkipped},
		"Auckland twice":       {"Pacific/Auckland", "2026-04-04", 2, 30, none, none, "2026-04-04 13:30", 2, journal.WallTwice},
		"Auckland skipped":     {"Pacific/Auckland", "2026-09-26", 2, 30, none, none, "2026-09-26 14:30", 1, journal.WallSkipped},
		"Chatham skipped":      {"Pacific/Chatham", "2026-09-26", 3, 0, none, none, "2026-09-26 14:15", 1, journal.WallSkipped},
		"Santiago, midnight":   {"America/Santiago", "2026-09-05", 0, 30, none, none, "2026-09-06 04:30", 1, journal.WallSkipped},
		"Ushuaia":              {"America/Argentina/Ushuaia", "2026-01-31", 23, 30, none, none, "2026-02-01 02:30", 1, ""},
	} {
		t.Run(name, func(t *testing.T) {
			d, err := journal.ParseDate(c.evening)
			require.NoError(t, err)
			got, err := journal.ResolveWall(d, zone(t, c.zone), c.hour, c.min, c.after, c.before)
			require.NoError(t, err)
			assert.Equal(t, c.want, got.At.Format("2006-01-02 15:04"))
			assert.Equal(t, time.UTC, got.At.Location())
			assert.Equal(t, c.warning, got.Warning)
			assert.Len(t, got.Candidates, c.readings)
		})
	}
	for _, bad := range [][2]int{{24, 0}, {-1, 0}, {12, 60}, {0, -1}} {
		_, err := journal.ResolveWall(evening, time.UTC, bad[0], bad[1], none, none)
		assert.Equal(t, journal.Invalid, journal.KindOf(err))
		assert.Error(t, err)
	}
}

// Ensure, minute by minute, that the candidates are exactly the instants of the
// night whose clock shows the time.
func TestResolveWallBruteForce(t *testing.T) {
	for _, z := range []struct {
		zone     string
		evenings []string
	}{
		{"Europe/London", []string{"2026-07-04", "2026-10-24", "2026-03-28"}},
		{"Australia/Lord_Howe", []string{"2026-04-04", "2026-10-03"}},
		{"America/Santiago", []string{"2026-04-04", "2026-09-05"}},
		{"Pacific/Chatham", []string{"2026-04-04", "2026-09-26"}},
		{"America/St_Johns", []string{"2006-10-28"}},
	} {
		for _, e := range z.evenings {
			loc := zone(t, z.zone)
			d, err := journal.ParseDate(e)
			require.NoError(t, err)
			shows := map[[2]int][]time.Time{}
			start, end := d.Night(loc)
			for at := start; !at.After(end); at = at.Add(time.Minute) {
				l := at.In(loc)
				k := [2]int{l.Hour(), l.Minute()}
				shows[k] = append(shows[k], at)
			}
			for h := range 24 {
				for m := range 60 {
					got, err := journal.ResolveWall(d, loc, h, m, time.Time{}, time.Time{})
					require.NoError(t, err, "%s %s %02d:%02d", z.zone, e, h, m)
					want := shows[[2]int{h, m}]
					if want == nil {
						assert.Equal(t, journal.WallSkipped, got.Warning)
						continue
					}
					require.Equal(t, want, got.Candidates, "%s %s %02d:%02d", z.zone, e, h, m)
					assert.Equal(t, want[0], got.At)
				}
			}
		}
	}
}

// Ensure that a reading taken off the clock at any instant leads back to it.
func TestResolveWallFindsInstant(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		loc := someZone(t)
		at := time.Unix(rapid.Int64Range(0, 34e6).Draw(t, "minute")*60, 0).UTC()
		l := at.In(loc)
		got, err := journal.ResolveWall(journal.EveningOf(at, loc), loc, l.Hour(), l.Minute(), at, at)
		require.NoError(t, err)
		if l.Second() != 0 { // a zone with seconds in its offset, long ago
			return
		}
		assert.True(t, slices.ContainsFunc(got.Candidates, at.Equal))
		assert.True(t, at.Equal(got.At), "neighbours that leave one reading decide: %s, got %s", at, got.At)
	})
}

func FuzzWall(f *testing.F) {
	f.Add(2026, 10, 24, uint8(0), 1, 30, int64(0), int64(0))
	f.Add(2026, 3, 28, uint8(0), 1, 30, int64(0), int64(0))
	f.Add(2026, 4, 4, uint8(3), 1, 45, int64(1775313900), int64(0))
	f.Add(2011, 12, 29, uint8(12), 12, 0, int64(0), int64(0))
	f.Fuzz(func(t *testing.T, year, month, day int, z uint8, hour, min int, after, before int64) {
		d := journal.Date{Year: year, Month: time.Month(month), Day: day}
		if year < 1900 || year > 2100 || d.Add(0) != d {
			return
		}
		all := append(slices.Clone(zones), "Pacific/Apia")
		loc := zone(t, all[int(z)%len(all)])
		bound := func(s int64) time.Time {
			if s == 0 {
				return time.Time{}
			}
			return time.Unix(s%4e9, 0)
		}
		got, err := journal.ResolveWall(d, loc, hour, min, bound(after), bound(before))
		if err != nil {
			assert.Equal(t, journal.Invalid, journal.KindOf(err))
			return
		}
		assert.True(t, slices.IsSortedFunc(got.Candidates, time.Time.Compare))
		assert.Contains(t, got.Candidates, got.At)
		start, end := d.Night(loc)
		assert.False(t, got.At.Before(start) || got.At.After(end))
		if l := got.At.In(loc); got.Warning != journal.WallSkipped {
			assert.Equal(t, [2]int{hour, min}, [2]int{l.Hour(), l.Minute()})
		}
	})
}
