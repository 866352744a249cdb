package main

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
)

// Ensure that a night of the demo leaves in each format, without coordinates unless they
// are asked for, and that GPX without any is refused in two lines.
func TestExportNight(t *testing.T) {
	path, dir := write(t, withDemo(t)), t.TempDir()
	before := bytesOf(t, path)
	night := demo.Show.String()
	for name, head := range map[string]string{"a.csv": "night,kind,", "a.geojson": "{\n \"type\": \"FeatureCollection\""} {
		out := filepath.Join(dir, name)
		r := run("", "export", "night", "--journal", path, "--night", night, "-o", out)
		require.Equal(t, ran{done, out + "\n", ""}, r)
		assert.True(t, strings.HasPrefix(bytesOf(t, out), head), name)
	}
	gpx := filepath.Join(dir, "a.gpx")
	explained(t, run("", "export", "night", "--journal", path, "--night", night, "-o", gpx), "GPX", "coordinates")
	assert.NoFileExists(t, gpx)
	r := run("", "export", "night", "--journal", path, "--night", night, "--places", "pool", "-o", gpx)
	require.Equal(t, done, r.code, r.err)
	assert.Contains(t, bytesOf(t, gpx), "<wpt ")
	explained(t, run("", "export", "night", "--journal", path, "--night", night, "-o", filepath.Join(dir, "a.csv")), "already a file a.csv")
	assert.True(t, before == bytesOf(t, path))
}

// Ensure that a year's returns are printed with what is missing and who decides, that a
// table is written, and that one person's are fewer than all.
func TestExportReturns(t *testing.T) {
	path := write(t, withDemo(t))
	all := run("", "export", "returns", "--journal", path, "--year", "2026")
	require.Equal(t, done, all.code, all.err)
	assert.Contains(t, all.out, "Catch return 2026, Larrick Water")
	assert.Contains(t, all.out, "the authority")
	assert.Contains(t, all.out, "rod-days")
	out := filepath.Join(t.TempDir(), "returns.csv")
	require.Equal(t, ran{done, out + "\n", ""}, run("", "export", "returns", "--journal", path, "--year", "2026", "-o", out))
	assert.True(t, strings.HasPrefix(bytesOf(t, out), "year,river,month,"))
	one := run("", "export", "returns", "--journal", path, "--year", "2026", "--person", "Anna")
	require.Equal(t, done, one.code, one.err)
	assert.NotEqual(t, all.out, one.out)
	assert.Contains(t, run("", "export", "returns", "--journal", path, "--year", "1999").out, "no fishing in 1999")
}

// Ensure that wrong words on the command line are refused.
func TestExportRefuses(t *testing.T) {
	refused(t, run("", "export"), "night")
	refused(t, run("", "export", "fish"), "returns")
	refused(t, run("", "export", "night"), "--journal")
	refused(t, run("", "export", "night", "--journal", "a", "--places", "all"), `"all"`)
	refused(t, run("", "export", "night", "--journal", kept("v1.gloam"), "-o", "a.txt"), `"a.txt"`)
	refused(t, run("", "export", "night", "--journal", "a", "--night", "July"), `"July"`)
	refused(t, run("", "export", "returns", "--journal", kept("v1.gloam"), "--person", "Nobody at all"), "nobody")
	for name, why := range unopened {
		explained(t, run("", "export", "returns", "--journal", kept(name)), name, why)
	}
}
