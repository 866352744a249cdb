package export_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"io"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline"
	"gloamline/ui/export"
)

const secret = "under the bent larch"

// shown is the demo's night of two rods, with a note on a fish, and a track.
var shown = sync.OnceValues(func() (*timeline.Night, []journal.Track) {
	j, err := journal.Open(memory.New(journal.NewID()), time.Now)
	if err == nil {
		err = demo.Write(j, demo.Seed)
	}
	if err != nil {
		panic(err)
	}
	trips, _ := j.Trips()
	for _, t := range trips {
		log, err := j.Night(t.ID)
		if err != nil || len(t.Rods) < 2 {
			continue
		}
		for _, e := range log.Entries {
			if k, ok := e.(journal.Contact); ok && k.Touch == journal.Landed {
				k.Note = secret
				k.Spot = journal.Of(geo.Place{Lat: 55.1234567, Lon: -4.7654321})
				_, err := j.Do("amend", journal.Batch{Put: []journal.Record{k, journal.Note{
					Head: journal.Head{ID: journal.NewID(), Trip: t.ID, When: k.When, Note: secret + " (private)"}, Private: true}}})
				if err != nil {
					panic(err)
				}
				n, err := timeline.Load(j, t.ID)
				if err != nil {
					panic(err)
				}
				at := n.Start.Add(10 * time.Hour)
				return n, []journal.Track{{ID: journal.NewID(), Trip: journal.Of(t.ID), Fixes: []journal.TrackFix{
					{At: at, Place: geo.Place{Lat: 55.1, Lon: -4.7}}, {At: at.Add(time.Minute), Place: geo.Place{Lat: 55.1001, Lon: -4.7001}}}}}
			}
		}
	}
	panic("the demo has no night of two rods with a fish")
})

var everything = export.Show{Places: export.ExactPlaces, People: true, PoolNames: true, Notes: true}

// files are all formats of a night under one Show, by name; GPX only where it may be.
func files(t *testing.T, show export.Show) map[string]string {
	n, tracks := shown()
	out := map[string]string{}
	var b bytes.Buffer
	require.NoError(t, export.CSV(&b, n, show))
	out["csv"] = b.String()
	b.Reset()
	require.NoError(t, export.GeoJSON(&b, n, tracks, show))
	out["geojson"] = b.String()
	b.Reset()
	_, err := export.GPX(&b, n, tracks, show)
	if show.Places == export.NoPlaces {
		require.Error(t, err)
		require.Empty(t, b.String())
		return out
	}
	require.NoError(t, err)
	out["gpx"] = b.String()
	return out
}

// Ensure that what is not to be shown is in no file, and that each of it is found in one
// when it is: coordinates, names of people and pools, notes. A private note is in none.
func TestNothingHiddenLeaves(t *testing.T) {
	n, _ := shown()
	secrets := map[string]string{"place": "55.1234567", "longitude": "4.7654321", "person": n.Rods[0].Name, "note": secret}
	for _, k := range n.Contacts {
		if k.HasPool && k.Pool.Name != "" {
			secrets["pool"] = k.Pool.Name
		}
	}
	require.NotEmpty(t, secrets["pool"])
	shownIn := map[string]bool{}
	for _, text := range files(t, everything) {
		for what, s := range secrets {
			shownIn[what] = shownIn[what] || strings.Contains(text, s)
		}
		assert.NotContains(t, text, "(private)")
	}
	for what := range secrets {
		assert.True(t, shownIn[what], "%s is not found even where it is shown", what)
	}
	for name, text := range files(t, export.Show{}) {
		for what, s := range secrets {
			assert.NotContains(t, text, s, "%s in %s", what, name)
		}
		assert.NotContains(t, text, "light_lx\":", name)
	}
	for name, text := range files(t, export.Show{Places: export.PoolPlaces}) {
		assert.NotContains(t, text, secrets["place"], name)
	}
}

// Ensure that where places are hidden every time is a multiple of five minutes.
func TestTimesAreRounded(t *testing.T) {
	rows := table(t, files(t, export.Show{})["csv"])
	exact := table(t, files(t, everything)["csv"])
	odd := 0
	for _, name := range []string{"from_utc", "to_utc", "until_utc"} {
		i := slices.Index(rows[0], name)
		for _, r := range rows[1:] {
			if r[i] != "" {
				at, err := time.Parse(time.RFC3339, r[i])
				require.NoError(t, err)
				assert.Zero(t, at.Unix()%300, r[i])
			}
		}
		for _, r := range exact[1:] {
			if at, err := time.Parse(time.RFC3339, r[i]); err == nil && at.Unix()%300 != 0 {
				odd++
			}
		}
	}
	assert.Positive(t, odd, "no time of the night needed rounding")
}

func table(t *testing.T, text string) [][]string {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	return rows
}

// Ensure that the table has CR LF, one head, rows of one length in the order of time, and
// every fish with the number and the figures that the night has.
func TestCSV(t *testing.T) {
	n, _ := shown()
	text := files(t, everything)["csv"]
	assert.Equal(t, strings.Count(text, "\n"), strings.Count(text, "\r\n"))
	rows := table(t, text)
	require.Equal(t, export.Columns, rows[0])
	cell := func(r []string, name string) string { return r[slices.Index(export.Columns, name)] }
	fish := 0
	for _, r := range rows[1:] {
		if cell(r, "kind") != "contact" {
			continue
		}
		k := n.Contacts[fish]
		fish++
		assert.Equal(t, strconv.Itoa(k.N), cell(r, "fish_no"))
		assert.Equal(t, string(k.Touch), cell(r, "touch"))
		if w, ok := k.Weight.Get(); ok {
			g, err := strconv.ParseFloat(cell(r, "weight_g"), 64)
			require.NoError(t, err)
			assert.InDelta(t, float64(w.G), g, 0.51)
		}
	}
	assert.Len(t, n.Contacts, fish)
}

// Ensure that GeoJSON is what RFC 7946 asks: types, longitude first, closed rings,
// anticlockwise outside, a geometry that may be null but is there, no crs.
func TestGeoJSON(t *testing.T) {
	for _, show := range []export.Show{{}, {Places: export.PoolPlaces}, everything} {
		var c struct {
			Type     string
			CRS      any
			BBox     []float64
			Features []struct {
				Type       string
				Geometry   json.RawMessage
				Properties map[string]any
			}
		}
		require.NoError(t, json.Unmarshal([]byte(files(t, show)["geojson"]), &c))
		assert.Equal(t, "FeatureCollection", c.Type)
		assert.Nil(t, c.CRS)
		if show.Places == export.NoPlaces {
			assert.Nil(t, c.BBox, "a box gives the water away")
		} else {
			require.Len(t, c.BBox, 4)
			assert.Less(t, c.BBox[1], c.BBox[3])
		}
		west, south, east, north := 180.0, 90.0, -180.0, -90.0
		within := func(p []float64) {
			require.Len(t, p, 2)
			require.True(t, p[0] >= -180 && p[0] <= 180 && p[1] >= -90 && p[1] <= 90, "%v", p)
			west, south, east, north = min(west, p[0]), min(south, p[1]), max(east, p[0]), max(north, p[1])
		}
		types := map[string]int{}
		for _, f := range c.Features {
			assert.Equal(t, "Feature", f.Type)
			require.NotEmpty(t, f.Geometry, "the member is missing")
			require.NotNil(t, f.Properties)
			if string(f.Geometry) == "null" {
				types["null"]++
				continue
			}
			require.NotEqual(t, export.NoPlaces, show.Places, "a place in a file without any")
			var g struct {
				Type        string
				Coordinates json.RawMessage
			}
			require.NoError(t, json.Unmarshal(f.Geometry, &g))
			types[g.Type]++
			switch g.Type {
			case "Point":
				var p []float64
				require.NoError(t, json.Unmarshal(g.Coordinates, &p))
				within(p)
				assert.Negative(t, p[0], "longitude first: the demo lies west")
				assert.Greater(t, p[1], 50.0)
			case "LineString":
				var l [][]float64
				require.NoError(t, json.Unmarshal(g.Coordinates, &l))
				assert.GreaterOrEqual(t, len(l), 2)
				for _, p := range l {
					within(p)
				}
			case "Polygon":
				var rings [][][]float64
				require.NoError(t, json.Unmarshal(g.Coordinates, &rings))
				for i, r := range rings {
					require.GreaterOrEqual(t, len(r), 4)
					for _, p := range r {
						within(p)
					}
					assert.Equal(t, r[0], r[len(r)-1])
					assert.Equal(t, i == 0, anticlockwise(r))
				}
			default:
				t.Errorf("geometry %q", g.Type)
			}
		}
		if show.Places != export.NoPlaces {
			assert.Equal(t, []float64{west, south, east, north}, c.BBox)
		}
		if show.Places == export.ExactPlaces {
			assert.Positive(t, types["Polygon"])
			assert.Positive(t, types["LineString"], "the track")
			assert.Positive(t, types["Point"])
		}
	}
}

// anticlockwise by the ring's lowest corner: the turn there is the turn of the ring.
func anticlockwise(r [][]float64) bool {
	n, low := len(r)-1, 0
	for i := range n {
		if r[i][1] < r[low][1] || r[i][1] == r[low][1] && r[i][0] > r[low][0] {
			low = i
		}
	}
	a, b, c := r[(low+n-1)%n], r[low], r[(low+1)%n]
	return (b[0]-a[0])*(c[1]-b[1])-(b[1]-a[1])*(c[0]-b[0]) > 0
}

// The order of elements in GPX 1.1, from the schema at topografix.com.
var gpxOrder = map[string][]string{
	"gpx":      {"metadata", "wpt", "rte", "trk", "extensions"},
	"metadata": {"name", "desc", "author", "copyright", "link", "time", "keywords", "bounds", "extensions"},
	"wpt":      {"ele", "time", "magvar", "geoidheight", "name", "cmt", "desc", "src", "link", "sym", "type", "fix", "sat", "hdop", "vdop", "pdop", "ageofdgpsdata", "dgpsid", "extensions"},
	"trk":      {"name", "cmt", "desc", "src", "link", "number", "type", "extensions", "trkseg"},
	"trkseg":   {"trkpt", "extensions"},
}

// Ensure that GPX keeps to the schema of 1.1: namespace, version and creator, elements
// in their order, positions in their bounds, times in UTC.
func TestGPX(t *testing.T) {
	gpxOrder["trkpt"] = gpxOrder["wpt"]
	for _, show := range []export.Show{{Places: export.PoolPlaces}, everything} {
		text := files(t, show)["gpx"]
		d := xml.NewDecoder(strings.NewReader(text))
		var path []string
		last := []int{0}
		count := map[string]int{}
		for {
			tok, err := d.Token()
			if err == io.EOF {
				break
			}
			require.NoError(t, err)
			switch e := tok.(type) {
			case xml.StartElement:
				require.Equal(t, "http://www.topografix.com/GPX/1/1", e.Name.Space)
				name := e.Name.Local
				count[name]++
				attr := map[string]string{}
				for _, a := range e.Attr {
					attr[a.Name.Local] = a.Value
				}
				if len(path) > 0 {
					at := slices.Index(gpxOrder[path[len(path)-1]], name)
					require.GreaterOrEqual(t, at, last[len(last)-1], "%s in %v", name, path)
					last[len(last)-1] = at
				} else {
					require.Equal(t, "gpx", name)
					require.Equal(t, "1.1", attr["version"])
					require.NotEmpty(t, attr["creator"])
				}
				if name == "wpt" || name == "trkpt" {
					lat, err1 := strconv.ParseFloat(attr["lat"], 64)
					lon, err2 := strconv.ParseFloat(attr["lon"], 64)
					require.NoError(t, err1)
					require.NoError(t, err2)
					require.True(t, lat >= -90 && lat <= 90 && lon >= -180 && lon < 180)
				}
				path, last = append(path, name), append(last, 0)
			case xml.CharData:
				if len(path) > 0 && path[len(path)-1] == "time" {
					at, err := time.Parse(time.RFC3339, string(e))
					require.NoError(t, err)
					require.Equal(t, time.UTC, at.Location())
				}
			case xml.EndElement:
				path, last = path[:len(path)-1], last[:len(last)-1]
			}
		}
		assert.Positive(t, count["wpt"])
		assert.Equal(t, show.Places == export.ExactPlaces, count["trkpt"] == 2)
	}
}

// Ensure that a year's returns have a row for each month, nil months too.
func TestReturnsCSV(t *testing.T) {
	r := timeline.Returns{Year: 2026, Rivers: []timeline.RiverReturn{{River: geo.River{Name: "Larrick Water, lower"}}}}
	r.Rivers[0].Months[6] = timeline.MonthReturn{Days: 1, RodDays: 2, Nights: 1, Lines: []timeline.ReturnLine{
		{Species: journal.SeaTrout, Kept: timeline.Landings{Number: 1, Weighed: 737.4, WeighedN: 1}}, {Species: journal.SeaTrout, Class: "herling", Unknown: timeline.Landings{Number: 2}}}}
	var b bytes.Buffer
	require.NoError(t, export.ReturnsCSV(&b, r))
	rows := table(t, b.String())
	require.Len(t, rows, 1+13)
	assert.Equal(t, []string{"2026", "Larrick Water, lower", "7", "sea trout", "", "1", "1", "737", "1"}, rows[7][:9])
	assert.Equal(t, []string{"2026", "Larrick Water, lower", "12", "", "", "0"}, rows[13][:6])
}
