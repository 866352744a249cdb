package intake_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/gauge"
	"gloamline/journal/intake"
)

// invented is where the file of a reader's own tests lies.
func invented(t testing.TB, name string) string {
	t.Helper()
	for _, dir := range []string{"../gauge/testdata/invented", "../gauge/testdata/real", "../photo/testdata", "../../geo/gpx/testdata"} {
		if path := filepath.Join(dir, name); exists(path) {
			return path
		}
	}
	t.Fatalf("no reader has the file %s", name)
	return ""
}

func exists(path string) bool { _, err := os.Stat(path); return err == nil }

func readBytes(name string, b []byte, o intake.ReadOptions) *intake.File {
	return intake.Read(name, bytes.NewReader(b), int64(len(b)), o)
}

func read(t testing.TB, path string, o intake.ReadOptions) *intake.File {
	t.Helper()
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	return readBytes(path, b, o)
}

// Ensure that every file of MANIFEST.tsv, told by its bytes under a name that says
// nothing, gives the figures of its row. The row of ea_archive_full.csv allows .655 or
// .656 for 21:15, two values in one cell: the first counts, being what the gauge sent first,
// and a warning names both. The values themselves, peaks included, are checked row by row
// in journal/gauge (TestManifest), journal/photo (TestOffset, TestNoZone) and geo/gpx
// (TestNightTrack).
func TestManifest(t *testing.T) {
	want := map[string]string{
		"ea_flood_readings.csv":         "gauge 5+0 m/m 0.642..0.661 2025-07-14T21:00:00Z 2025-07-14T22:00:00Z",
		"ea_archive_full.csv":           "gauge 4+1 m/m 0.642..0.661 2025-07-14T21:00:00Z 2025-07-14T22:00:00Z",
		"ea_hydrology.csv":              "gauge 4+1 m/m 0.642..0.658 2025-07-14T21:00:00Z 2025-07-14T22:00:00Z",
		"ea_hydrology.json":             "gauge 2+1 m/m 0.642..0.661 2025-07-14T21:00:00Z 2025-07-14T21:30:00Z",
		"sepa_kiwis.csv":                "gauge 4+1 m/ 0.642..0.658 2025-07-14T21:00:00Z 2025-07-14T22:00:00Z",
		"sepa_kiwis.json":               "gauge 4+1 m/ 0.642..0.658 2025-07-14T21:00:00Z 2025-07-14T22:00:00Z",
		"sepa_old_site.csv":             "gauge 4+1 m/m 0.642..0.658 2025-07-14T21:00:00Z 2025-07-14T22:00:00Z",
		"opw_month.csv":                 "gauge 5+0 m/m 0.642..0.661 2025-07-14T21:00:00Z 2025-07-14T22:15:00Z",
		"opw_hydrodata.csv":             "gauge 4+1 m/m 40.642..40.658 2025-07-14T21:00:00Z 2025-07-14T22:00:00Z",
		"epa_ie_hydronet.csv":           "gauge 4+1 m/m 0.642..0.658 2025-07-14T21:00:00Z 2025-07-14T22:00:00Z",
		"usgs_iv_dst.rdb":               "gauge 4+1 m/ft 0.954024..0.999744 2025-11-02T04:45:00Z 2025-11-02T07:30:00Z",
		"nve_hydapi.json":               "gauge 4+1 m/m 1.642..1.658 2025-07-14T18:00:00Z 2025-07-14T22:00:00Z",
		"eccc_datamart_hourly_old.csv":  "gauge 4+1 m/m 1.642..1.655 2025-07-14T22:00:00Z 2025-07-14T22:20:00Z",
		"eccc_datamart_hourly_new.csv":  "gauge 5+0 m/m 1.642..1.655 2025-07-14T22:00:00Z 2025-07-14T22:20:00Z",
		"plain_comma_decimal.csv":       "gauge 5+0 m/cm 0.642..0.661 2025-07-14T21:00:00Z 2025-07-14T22:00:00Z",
		"night_offset_plus1.jpg":        "photo taken 2025-07-14T23:37:12Z local 2025-07-15T00:37:12 +01:00 fix 2025-07-14T23:36:55Z 52.1, -4.2",
		"night_no_zone.jpg":             "photo local 2025-07-15T00:37:12",
		"night_track.gpx":               "gpx 32 points, 32 timed, 0 waypoints 2025-07-14T22:30:00Z 2025-07-15T01:00:00Z, 31 kept",
		"ea_flood_readings_690140.json": "gauge 34+0 m/m 0.754..1.219 2015-12-10T07:45:00Z 2015-12-10T16:00:00Z",
	}
	oslo := zone(t, "Europe/Oslo") // of the plain table, whose head is Norwegian
	manifest, err := os.ReadFile("testdata/MANIFEST.tsv")
	require.NoError(t, err)
	rows := 0
	for i, line := range strings.Split(strings.TrimSpace(string(manifest)), "\n") {
		if i == 0 {
			continue
		}
		name := strings.TrimPrefix(strings.SplitN(line, "\t", 2)[0], "invented/")
		b, err := os.ReadFile(invented(t, name))
		require.NoError(t, err)
		o := intake.ReadOptions{}
		if name == "plain_comma_decimal.csv" {
			o.Zone = oslo
		}
		assert.Equal(t, want[name], figures(readBytes("file", b, o)), name)
		rows++
	}
	assert.Equal(t, 18, rows)
	real := read(t, invented(t, "ea_flood_readings_690140.json"), intake.ReadOptions{})
	assert.Equal(t, want["ea_flood_readings_690140.json"], figures(real))
}

// figures puts a summary on one line.
func figures(f *intake.File) string {
	s := intake.Summarise(f)
	switch {
	case s.Error != "":
		return s.Error
	case s.GaugeSummary != nil:
		x := s.Series[0]
		return fmt.Sprintf("%s %d+%d %s/%s %v..%v %s %s", s.Kind, s.Readings, s.Missing, s.Unit, s.SourceUnit, *x.Least, *x.Most, s.First, s.Last)
	case s.TrackSummary != nil:
		return fmt.Sprintf("%s %d points, %d timed, %d waypoints %s %s, %d kept", s.Kind, s.Points, s.Timed, s.Waypoints, s.First, s.Last, len(f.Fixes))
	}
	out := string(s.Kind)
	if s.Taken != nil {
		out += " taken " + *s.Taken
	}
	out += " local " + *s.Local
	if s.Offset != nil {
		out += " " + *s.Offset
	}
	if s.FixAt != nil {
		out += fmt.Sprintf(" fix %s %v, %v", *s.FixAt, *s.Lat, *s.Lon)
	}
	return out
}

// Ensure that a file without readings, or one that needs its columns chosen, still
// tells what it holds.
func TestSummaryOfFaults(t *testing.T) {
	f := readBytes("t.csv", []byte("Time,Rain,River\n14/07/2025 21:00,0.2,2.11\n"), intake.ReadOptions{})
	s := intake.Summarise(f)
	assert.Equal(t, gauge.ErrChoose.Error(), s.Error)
	assert.Equal(t, "Choose the columns.", s.Do)
	require.Len(t, s.Columns, 3)
	assert.Equal(t, intake.ColumnSummary{Column: 3, Name: "River", Kind: "number", Samples: []string{"2.11"}}, s.Columns[2])
	f = readBytes("t.csv", []byte("Time,Rain,River\n14/07/2025 21:00,0.2,2.11\n"), intake.ReadOptions{Columns: &gauge.Choice{When: 0, Clock: gauge.NoColumn, Level: 2, Flag: gauge.NoColumn, Unit: "ft"}})
	assert.Equal(t, 1, intake.Summarise(f).Readings)
	assert.NotNil(t, intake.Summarise(readBytes("x", nil, intake.ReadOptions{})).Warnings)
}
