package backup_test

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal/backup"
)

func day(s string) time.Time {
	t, err := time.Parse("2006-01-02 15:04", s)
	if err != nil {
		panic(err)
	}
	return t
}

// kept returns the instants that stay, newest first.
func kept(now time.Time, at []time.Time) []time.Time {
	var out []time.Time
	for i, k := range backup.Kept(now, at) {
		if k {
			out = append(out, at[i])
		}
	}
	slices.SortFunc(out, func(a, b time.Time) int { return b.Compare(a) })
	return out
}

// Ensure that of a season of starts, twice a day, just the ones stay that the rule
// names; the dates were counted by hand on a calendar of 2026.
func TestKeptByHand(t *testing.T) {
	var at []time.Time
	for d := day("2026-05-01 09:00"); !d.After(day("2026-07-08 09:00")); d = d.AddDate(0, 0, 1) {
		at = append(at, d, d.Add(12*time.Hour))
	}
	now := day("2026-07-08 22:00") // a Wednesday
	want := []time.Time{
		day("2026-07-08 21:00"), day("2026-07-07 21:00"), day("2026-07-06 21:00"), day("2026-07-05 21:00"),
		day("2026-07-04 21:00"), day("2026-07-03 21:00"), day("2026-07-02 21:00"), // seven days; Sunday 5 July ends a week
		day("2026-06-30 21:00"),                          // the month of June
		day("2026-06-28 21:00"), day("2026-06-21 21:00"), // the weeks before
		day("2026-05-31 21:00"), // the month of May
	}
	require.Equal(t, want, kept(now, at))
}

// Ensure that days begin where now lies: 23:30 and 00:30 by the clock are two days,
// though they are one in UTC.
func TestKeptZone(t *testing.T) {
	summer := time.FixedZone("summer", 3600)
	at := []time.Time{day("2026-07-04 22:30"), day("2026-07-04 23:30")}
	require.Len(t, kept(day("2026-07-05 12:00").In(summer), at), 2)
	require.Len(t, kept(day("2026-07-05 12:00"), at), 1)
}

func draws(t *rapid.T) (time.Time, []time.Time) {
	now := day("2026-07-08 22:00")
	minutes := rapid.SliceOf(rapid.IntRange(-60*24*30, 60*24*800)).Draw(t, "minutes ago")
	var at []time.Time
	for _, m := range minutes {
		at = append(at, now.Add(-time.Duration(m)*time.Minute))
	}
	return now, at
}

// Ensure what the rule promises: the newest stays, those of the future stay, at most 23
// of the past do, each day, week and month that stays is led by its newest, whatever is
// removed has a newer one of its day that stays or 7 days that do, and so on for weeks and
// months; and keeping again removes nothing more.
func TestKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		now, at := draws(t)
		stay := kept(now, at)
		var past []time.Time
		for _, a := range at {
			if a.After(now) {
				require.Contains(t, stay, a)
			} else {
				past = append(past, a)
			}
		}
		var old []time.Time
		for _, s := range stay {
			if !s.After(now) {
				old = append(old, s)
			}
		}
		require.LessOrEqual(t, len(old), backup.Days+backup.Weeks+backup.Months)
		if len(past) > 0 {
			require.Contains(t, stay, slices.MaxFunc(past, time.Time.Compare))
		}
		spans := map[string]func(time.Time) string{
			"2006-01-02": func(t time.Time) string { return t.Format("2006-01-02") },
			"2006-01":    func(t time.Time) string { return t.Format("2006-01") },
			"week":       func(t time.Time) string { return t.AddDate(0, 0, -(int(t.Weekday())+6)%7).Format("2006-01-02") },
		}
		for name, n := range map[string]int{"2006-01-02": backup.Days, "2006-01": backup.Months, "week": backup.Weeks} {
			newest := map[string]time.Time{}
			for _, p := range past {
				if s := spans[name](p); p.After(newest[s]) {
					newest[s] = p
				}
			}
			all := make([]string, 0, len(newest))
			for s := range newest {
				all = append(all, s)
			}
			slices.Sort(all)
			slices.Reverse(all)
			for _, s := range all[:min(n, len(all))] {
				require.Contains(t, stay, newest[s], "%s %s", name, s)
			}
		}
		require.Equal(t, stay, kept(now, stay))
	})
}

// Ensure that years of starts, each followed by a removal, leave as much as one removal
// at the end would: what is removed early is never missed later.
func TestKeptAsTimeGoesOn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		now := day("2024-01-01 12:00")
		var all, have []time.Time
		for range rapid.IntRange(1, 300).Draw(t, "starts") {
			now = now.Add(time.Duration(rapid.IntRange(1, 60*24*5).Draw(t, "minutes later")) * time.Minute)
			all = append(all, now)
			have = kept(now, append(have, now))
		}
		require.Equal(t, kept(now, all), have)
	})
}
