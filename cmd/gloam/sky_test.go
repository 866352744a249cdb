package main

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const lightData = "../../testdata/light/"

// record is one row of a CSV table by column name.
type record map[string]string

func (r record) num(t *testing.T, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	require.NoError(t, err, "%s of %v", column, r)
	return v
}

func records(t *testing.T, text string) []record {
	t.Helper()
	reader := csv.NewReader(strings.NewReader(text))
	reader.Comment = '#'
	all, err := reader.ReadAll()
	require.NoError(t, err)
	var out []record
	for _, fields := range all[1:] {
		r := record{}
		for i, name := range all[0] {
			r[name] = fields[i]
		}
		out = append(out, r)
	}
	require.NotEmpty(t, out)
	return out
}

func checkTable(t *testing.T, name string) []record {
	t.Helper()
	text, err := os.ReadFile(lightData + name)
	require.NoError(t, err)
	return records(t, string(text))
}

// Ensure that the command prints every row of positions_public.csv (npm
// astronomy-engine 2.1.19) within the tolerances of both programs.
func TestSkyPositions(t *testing.T) {
	r := run("", "sky", "positions", lightData+"positions_public.csv")
	require.Equal(t, done, r.code, r.err)
	assert.True(t, strings.HasPrefix(r.out, "id,sun_alt,sun_az,moon_alt,moon_az,moon_fraction,moon_km\n"))
	want, got := checkTable(t, "positions_public.csv"), records(t, r.out)
	require.Len(t, got, len(want))
	for i, w := range want {
		g := got[i]
		require.Equal(t, w["id"], g["id"])
		for body, tol := range map[string]float64{"sun": 0.002, "moon": 0.007} {
			alt := w.num(t, body+"_alt_deg")
			assert.InDelta(t, alt, g.num(t, body+"_alt"), tol, g["id"])
			gap := math.Remainder(w.num(t, body+"_az_deg")-g.num(t, body+"_az"), 360)
			assert.LessOrEqual(t, math.Abs(gap)*math.Cos(alt*math.Pi/180), tol, g["id"])
		}
		assert.InDelta(t, w.num(t, "moon_fraction"), g.num(t, "moon_fraction"), 0.0005, g["id"])
		assert.InDelta(t, w.num(t, "moon_geo_dist_km"), g.num(t, "moon_km"), 60, g["id"])
	}
}

// Ensure that the command prints the same events as events_public.csv (npm
// astronomy-engine 2.1.19), in order of time, and the same lines never crossed. The table
// has the sun's true limb too, and only risings and settings for civil days.
func TestSkyEvents(t *testing.T) {
	r := run("", "sky", "events", lightData+"events_public.csv")
	require.Equal(t, done, r.code, r.err)
	assert.True(t, strings.HasPrefix(r.out, "window_id,event,utc,state\n"))
	type want struct {
		utc, state string
		rate       float64
	}
	table := map[string][]want{} // by window and event
	civilDay := map[string]bool{}
	var order []string
	for _, w := range checkTable(t, "events_public.csv") {
		id := w["window_id"]
		if len(order) == 0 || order[len(order)-1] != id {
			order = append(order, id)
		}
		civilDay[id] = w["window"] == "civil_day"
		e := want{utc: w["utc"], state: w["state"]}
		if e.utc != "" {
			e.rate = w.num(t, "rate_deg_per_min")
		}
		key := id + " " + w["event"]
		table[key] = append(table[key], e)
	}
	used := 0
	var windows []string
	last := ""
	for _, g := range records(t, r.out) {
		id := g["window_id"]
		if len(windows) == 0 || windows[len(windows)-1] != id {
			windows, last = append(windows, id), ""
		}
		if g["utc"] != "" {
			assert.Less(t, last, g["utc"], "in order of time")
			assert.Regexp(t, `^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$`, g["utc"])
			last = g["utc"]
		}
		rest := table[id+" "+g["event"]]
		if len(rest) == 0 {
			assert.True(t, civilDay[id] && !strings.Contains(g["event"], "moon") && !strings.Contains(g["event"], "sun"),
				"%v is not in the table", g)
			continue
		}
		w := rest[0]
		table[id+" "+g["event"]] = rest[1:]
		used++
		assert.Equal(t, w.state, g["state"], "%v", g)
		if w.utc == "" {
			assert.Empty(t, g["utc"])
			continue
		}
		a, err := time.Parse(time.RFC3339, w.utc)
		require.NoError(t, err)
		b, err := time.Parse(time.RFC3339, g["utc"])
		require.NoError(t, err)
		assert.InDelta(t, 0, b.Sub(a).Seconds(), max(3, 60*0.006/math.Abs(w.rate)), "%v", g)
	}
	assert.Equal(t, order, windows, "windows in order of the file, each once")
	assert.Greater(t, used, 160)
	for key, rest := range table {
		if !strings.HasSuffix(key, "_true_limb") && !strings.HasSuffix(key, "no_sunlimb") {
			assert.Empty(t, rest, "%s was not printed", key)
		}
	}
}

// Ensure that the example of the page prints what the page says.
func TestSkyExample(t *testing.T) {
	var table, want strings.Builder
	to := &table
	for line := range strings.Lines(skyPage) {
		if strings.HasPrefix(line, "  prints") {
			to = &want
		}
		if cut, ok := strings.CutPrefix(line, "    "); ok {
			to.WriteString(cut)
		}
	}
	assert.Equal(t, ran{done, want.String(), ""}, run(table.String(), "sky", "positions", "-"))
}

// Ensure that columns may stand in any order among others, that comments, blank
// lines, quotes and a byte order mark do no harm, and that standard input is read.
func TestSkyTableForms(t *testing.T) {
	plain := run("id,utc,lat,lon\n\"a,b\",2026-06-12T22:30:00Z,55.05,-4.62\n", "sky", "positions", "-")
	require.Equal(t, done, plain.code, plain.err)
	assert.Contains(t, plain.out, "\n\"a,b\",")
	for _, table := range []string{
		"\ufeff# where\n\nlon,note,LAT,utc, id\n# more\n-4.62,x,55.05,2026-06-12T23:30:00+01:00,\"a,b\"\n\n",
		"id,utc,lat,lon\r\n\"a,b\",2026-06-12 22:30,55.05,355.38\r\n",
	} {
		assert.Equal(t, plain.out, run(table, "sky", "positions", "-").out, "%q", table)
	}
	none := run("id,utc,lat,lon\n", "sky", "positions", "-")
	assert.Equal(t, done, none.code)
	assert.Equal(t, 1, strings.Count(none.out, "\n"))
}

// Ensure that wrong rows are refused in one sentence with the line of the file, and
// that not even the right rows before them are printed.
func TestSkyPositionsRefuses(t *testing.T) {
	good := "# a comment\nid,utc,lat,lon\na,2026-06-12T22:30:00Z,55,-4\n"
	for row, words := range map[string][]string{
		"b,2026-06-12T22:30:00Z,91,0":     {"line 4", "latitude", "91"},
		"b,2026-06-12T22:30:00Z,NaN,0":    {"line 4", "latitude"},
		"b,2026-06-12T22:30:00Z,55,Inf":   {"line 4", "longitude"},
		"b,2026-06-12T22:30:00Z,north,0":  {"line 4", "lat", `"north"`},
		"b,2026-06-31T22:30:00Z,55,0":     {"line 4", "utc", "2026-06-31"},
		"b,1492-06-12T22:30:00Z,55,0":     {"line 4", "1492"},
		"b,2026-06-12T22:30:00Z,55":       {"line 4", "lon"},
		"b,,55,0":                         {"line 4", "utc is empty"},
		",2026-06-12T22:30:00Z,55,0":      {"line 4", "id is empty"},
		"b,2026-06-12T22:30:00Z,55,\"0":   {"line 4", "quotation"},
		"\nb,2016-12-31T23:59:60Z,55,0\n": {"line 5", "23:59:60"},
	} {
		refused(t, run(good+row, "sky", "positions", "-"), append(words, "standard input")...)
	}
	refused(t, run("", "sky", "positions", "-"), "line 1", "empty")
	refused(t, run("id,utc,lat\n", "sky", "positions", "-"), "line 1", "column lon")
	refused(t, run("id,utc,lat,lon,lat\n", "sky", "positions", "-"), "line 1", "lat", "twice")
}

// Ensure that wrong windows are refused in the same way, that a window met again is
// one window, and that the column may be called id.
func TestSkyEventsRefuses(t *testing.T) {
	head := "window_id,lat,lon,start_utc,end_utc\n"
	one := "w,55,-4,2026-06-12T11:00:00Z,2026-06-13T11:00:00Z\n"
	refused(t, run(head+"w,55,-4,2026-06-12T11:00:00Z,2026-06-12T11:00:00Z\n", "sky", "events", "-"), "line 2", "not after its start")
	refused(t, run(head+"w,55,-4,2026-06-12T11:00:00Z,2029-06-12T11:00:00Z\n", "sky", "events", "-"), "line 2", "400 days")
	refused(t, run(head+"w,-95,-4,2026-06-12T11:00:00Z,2026-06-13T11:00:00Z\n", "sky", "events", "-"), "line 2", "latitude")
	refused(t, run(head+one+"w,56,-4,2026-06-12T11:00:00Z,2026-06-13T11:00:00Z\n", "sky", "events", "-"), "line 3", "another place")
	refused(t, run("lat,lon,start_utc,end_utc\n", "sky", "events", "-"), "column window_id")

	single := run(head+one, "sky", "events", "-")
	require.Equal(t, done, single.code, single.err)
	assert.Equal(t, single, run(head+one+one, "sky", "events", "-"))
	assert.Equal(t, single, run(strings.Replace(head, "window_id", "id", 1)+one, "sky", "events", "-"))
}

// Ensure that the words after sky are checked, and that a file that is not there ends
// with 1 and its name.
func TestSkyArguments(t *testing.T) {
	refused(t, run("", "sky", "stars", "-"), `"stars"`)
	refused(t, run("", "sky", "positions"), "needs one table")
	refused(t, run("", "sky", "events", "a", "b"), "needs one table")
	assert.Equal(t, ran{done, skyPage, ""}, run("", "sky"))
	assert.Equal(t, ran{done, skyPage, ""}, run("", "sky", "events", "--help"))
	missing := filepath.Join(t.TempDir(), "missing.csv")
	r := run("", "sky", "positions", missing)
	assert.Equal(t, broken, r.code)
	assert.Contains(t, r.err, "missing.csv")
	assert.Empty(t, r.out)
}

// Ensure that rounding never prints an azimuth of 360.
func TestAzimuth(t *testing.T) {
	assert.Equal(t, "0.0000", azimuth(359.99999, 4))
	assert.Equal(t, "359.9999", azimuth(359.9999, 4))
	assert.Equal(t, "36.0000", azimuth(36, 4))
}
