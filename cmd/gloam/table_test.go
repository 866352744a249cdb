package main

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// Ensure that no table, however broken, makes the commands panic, and that every
// outcome is one of two: rows and no complaint, or one complaint and no rows.
func FuzzTables(f *testing.F) {
	f.Add("id,utc,lat,lon\na,2026-06-12T22:30:00Z,55,-4\n")
	f.Add("window_id,lat,lon,start_utc,end_utc\nw,55,-4,2026-06-12T11:00:00Z,2026-06-13T11:00:00Z\n")
	f.Add("# only a comment")
	f.Add("id,utc,lat,lon\na,2016-12-31T23:59:60Z,1e999,\"")
	f.Add("\ufeffid;utc;lat;lon\n")
	f.Fuzz(func(t *testing.T, table string) {
		for _, kind := range []string{"positions", "events"} {
			r := run(table, "sky", kind, "-")
			switch r.code {
			case done:
				assert.Empty(t, r.err)
				assert.True(t, strings.HasSuffix(r.out, "\n"))
				assert.NotContains(t, r.out, "NaN")
			default:
				assert.Empty(t, r.out)
				assert.True(t, strings.HasPrefix(r.err, "gloam: standard input"), "%q", r.err)
			}
		}
	})
}

// Ensure that instants are read in every form and in UTC when no zone is given.
func TestParseInstant(t *testing.T) {
	want := time.Date(2026, 6, 12, 22, 30, 0, 0, time.UTC)
	for _, text := range []string{
		"2026-06-12T22:30:00Z", "2026-06-12T23:30:00+01:00", "2026-06-12 22:30:00Z", "2026-06-12T22:30:00",
		"2026-06-12 22:30", "2026-06-12T22:30Z", "2026-06-12T22:30:00.000Z",
	} {
		got, err := parseInstant(text)
		assert.NoError(t, err, text)
		assert.True(t, want.Equal(got), text)
	}
	for _, text := range []string{"2026-06-12", "22:30", "2026-06-12T25:00:00Z", "12.06.2026 22:30", "2026-6-12T22:30:00Z"} {
		_, err := parseInstant(text)
		assert.Error(t, err, text)
	}
}
