package gpx

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that what a file holds comes back from what is written of it.
func TestWriteAndReadBack(t *testing.T) {
	f := File{
		Head:      Head{Creator: "Gloamline <1>", Name: "Night of 14 July", At: utc("2025-07-15T08:00:00Z")},
		Waypoints: []Point{{LatDeg: 55.1234567, LonDeg: -4.6, Name: "Gate & stile", Note: "ä", HasHeight: true, HeightM: -0.5, HDOP: 1.25, At: utc("2025-07-14T21:00:00Z")}},
		Lines: []Line{
			{Track, "Home Beat", [][]Point{{{LatDeg: 55, LonDeg: -4, At: utc("2025-07-14T21:00:01Z")}}, {{LatDeg: 55.1, LonDeg: -4.1}}}},
			{Route, "Down", [][]Point{{{LatDeg: 55.2, LonDeg: -4.2, Name: "One"}}}},
		},
	}
	var out bytes.Buffer
	require.NoError(t, Write(&out, f))
	text := out.String()
	got := read(t, text)
	for i := range got.Waypoints {
		got.Waypoints[i].Line = 0
	}
	for _, l := range got.Lines {
		for _, s := range l.Segments {
			for i := range s {
				s[i].Line = 0
			}
		}
	}
	assert.Equal(t, f.Waypoints, got.Waypoints)
	assert.Equal(t, []Line{f.Lines[1], f.Lines[0]}, got.Lines, "the schema has routes before tracks")
	assert.Equal(t, []string{f.Creator, f.Name}, []string{got.Creator, got.Name})
	assert.Equal(t, f.At, got.At)

	// The order of the schema: gpxType metadata, wpt, rte, trk; wptType ele, time, name, desc, hdop.
	var before int
	for _, tag := range []string{"<metadata>", "<wpt ", "<ele>", "<time>2025-07-14T21:00:00Z", "<name>Gate", "<desc>", "<hdop>", "<rte>", "<trk>"} {
		i := strings.Index(text, tag)
		require.Greater(t, i, before, tag)
		before = i
	}
	assert.Error(t, Write(&out, File{Waypoints: []Point{{LatDeg: 91}}}))
}

// Ensure that longitude 180 is written as the schema's longitudeType allows: below 180.
func TestWriteMeridian(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, Write(&out, File{Waypoints: []Point{{LatDeg: 1, LonDeg: 180}, {LatDeg: 1, LonDeg: 179.99999999}}}))
	assert.Equal(t, 2, strings.Count(out.String(), `lon="-180.0000000"`))
}
