package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func outside(parts ...string) string {
	return filepath.Join(append([]string{"..", ".."}, parts...)...)
}

func lines(t *testing.T, out string) (all []map[string]any) {
	t.Helper()
	for line := range strings.Lines(out) {
		var m map[string]any
		require.NoError(t, json.Unmarshal([]byte(line), &m), line)
		all = append(all, m)
	}
	return all
}

// Ensure that a batch gives a line a file, in order, and goes on past a bad one, which
// has its sentence on standard error too.
func TestReadBatch(t *testing.T) {
	bad := filepath.Join(t.TempDir(), "bad.gpx")
	require.NoError(t, os.WriteFile(bad, []byte("<gpx>\n<trk></gpx>"), 0o600))
	track := outside("geo", "gpx", "testdata", "night_track.gpx")
	photo := outside("journal", "photo", "testdata", "night_no_zone.jpg")
	gauge := outside("journal", "gauge", "testdata", "invented", "usgs_iv_dst.rdb")
	r := run("", "read", track, bad, photo, "nosuch", gauge)
	assert.Equal(t, broken, r.code)
	got := lines(t, r.out)
	require.Len(t, got, 5)
	assert.Equal(t, map[string]any{"file": track, "kind": "gpx", "bytes": 3245., "sha256": "a1a219a12bf44894aa4ca5f3d3b467b7e4fddc35e6a1c6ebad8e9f7ce7783dea",
		"first": "2025-07-14T22:30:00Z", "last": "2025-07-15T01:00:00Z", "points": 32., "timed": 32., "waypoints": 0., "version": "1.1", "creator": "invented",
		"warnings": []any{"line 24: 1 point repeats the one before it"}}, got[0])
	assert.Contains(t, got[1]["error"], "line 2: ")
	assert.Equal(t, "2025-07-15T00:37:12", got[2]["local"])
	assert.Nil(t, got[2]["taken"])
	assert.Contains(t, got[2], "taken")
	assert.Contains(t, got[3]["error"], "cannot be opened")
	assert.Equal(t, []any{4., 1., "m", "ft"}, []any{got[4]["readings"], got[4]["missing"], got[4]["unit"], got[4]["source_unit"]})
	assert.Equal(t, 2, strings.Count(r.err, "\n"), r.err)
	assert.Contains(t, r.err, "gloam: "+bad+": line 2: ")
}

// Ensure that the zone and the columns asked for are used.
func TestReadAsked(t *testing.T) {
	plain := outside("journal", "gauge", "testdata", "invented", "plain_comma_decimal.csv")
	r := run("", "read", "--zone", "Europe/Oslo", plain)
	assert.Equal(t, done, r.code, r.err)
	assert.Equal(t, "2025-07-14T21:00:00Z", lines(t, r.out)[0]["first"])

	table := filepath.Join(t.TempDir(), "table.txt")
	require.NoError(t, os.WriteFile(table, []byte("Time,Rain,River\n14/07/2025 21:00,0.2,2.11\n"), 0o600))
	r = run("", "read", table)
	assert.Equal(t, broken, r.code)
	assert.Len(t, lines(t, r.out)[0]["columns"], 3)
	r = run("", "read", "--columns", "when=1,level=3,unit=ft", table)
	assert.Equal(t, done, r.code, r.err)
	got := lines(t, r.out)[0]
	assert.Equal(t, []any{1., "m", "ft"}, []any{got["readings"], got["unit"], got["source_unit"]})
	assert.InDelta(t, 0.643128, got["series"].([]any)[0].(map[string]any)["least"], 1e-9) // 2.11 x 0.3048
}

// Ensure that wrong words on the command line are refused.
func TestReadRefuses(t *testing.T) {
	refused(t, run("", "read"), "needs a file")
	refused(t, run("", "read", "--zone", "Nowhere/Land", "x"), "Nowhere/Land")
	refused(t, run("", "read", "--columns", "when=1", "x"), "level=")
	refused(t, run("", "read", "--columns", "when=0,level=2", "x"), "when=0")
	refused(t, run("", "read", "--columns", "when=1,level=2,unit=ell", "x"), "ell")
}
