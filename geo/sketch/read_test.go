package sketch

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
)

func read(t testing.TB, text string) (geo.Beat, []Warning) {
	t.Helper()
	b, w, err := Read(strings.NewReader(text))
	require.NoError(t, err)
	return b, w
}

func kinds(w []Warning) []WarningKind {
	var out []WarningKind
	for _, x := range w {
		out = append(out, x.Kind)
	}
	return out
}

// Ensure that a whole invented beat is read as drawn, without a warning or a fault.
func TestReadBeat(t *testing.T) {
	f, err := os.Open("testdata/home.geojson")
	require.NoError(t, err)
	defer f.Close()
	b, warnings, err := Read(f)
	require.NoError(t, err)
	assert.Empty(t, warnings)
	assert.Empty(t, geo.Check(b))
	assert.Equal(t, "Home Beat", b.Name)
	assert.Equal(t, "Larrick Water", b.River.Name)
	assert.Equal(t, "Europe/London", b.Zone)
	assert.Equal(t, "738eb1778485a275993269cd4f123846", b.ID.String())
	assert.Len(t, b.Pools, 7)
	assert.Len(t, b.Banks(), 2)
	assert.Len(t, b.Trees(), 7)
	assert.Len(t, b.Entries(), 6)
	assert.Len(t, b.Hazards(), 3)
	assert.Len(t, b.Marks(), 2)
	p := b.Pools[0]
	assert.Equal(t, "Mill Neck", p.Name)
	assert.Equal(t, 1, p.Order)
	assert.Equal(t, geo.TrueLeft, p.Bank)
	assert.Equal(t, geo.Partly, p.Canopy)
	assert.Equal(t, geo.SkyPoint{Bearing: 150, Altitude: 19.5}, p.Skyline[5])
	assert.True(t, b.Extra.IsZero())
	for _, f := range b.Features {
		assert.True(t, f.Extra.IsZero(), f.Name)
	}
	assert.Equal(t, b, again(t, b))

	l := b.Layout()
	assert.True(t, l.FlowKnown)
	for i, s := range l.Pools {
		assert.Equal(t, i+1, s.Pool.Order)
		spot, ok := l.SnapPoint(s.Axis.Even(3)[1], 0)
		require.True(t, ok, s.Pool.Name)
		assert.Equal(t, s.Pool.ID, spot.Pool)
		assert.InDelta(t, float64(s.Length())/2, float64(spot.Chainage), 1)
	}
}

// The examples of RFC 7946, section 1.5 and appendix A, as the standard gives them.
func TestReadStandardExamples(t *testing.T) {
	type counts struct{ pools, points, lines, areas int }
	for name, want := range map[string]counts{
		"rfc7946_1.5": {1, 1, 1, 0}, "rfc7946_a1_point": {0, 1, 0, 0}, "rfc7946_a2_line": {0, 0, 1, 0},
		"rfc7946_a3_polygon": {1, 0, 0, 0}, "rfc7946_a3_holes": {1, 0, 0, 0}, "rfc7946_a4_points": {0, 2, 0, 0},
		"rfc7946_a5_lines": {0, 0, 2, 0}, "rfc7946_a6_polygons": {0, 0, 0, 2}, "rfc7946_a7_collection": {0, 1, 1, 0},
	} {
		f, err := os.Open(filepath.Join("testdata", name+".geojson"))
		require.NoError(t, err)
		b, _, err := Read(f)
		f.Close()
		require.NoError(t, err, name)
		got := counts{pools: len(b.Pools)}
		for _, f := range b.Features {
			got.points += len(f.Shape.Points)
			got.lines += len(f.Shape.Lines)
			got.areas += len(f.Shape.Areas)
		}
		assert.Equal(t, want, got, name)
		assert.Equal(t, b, again(t, b), name)
		if name == "rfc7946_a3_holes" {
			require.Len(t, b.Pools[0].Outline, 2)
			assert.Equal(t, orb.CCW, b.Pools[0].Outline[0].Orientation())
			assert.Equal(t, orb.CW, b.Pools[0].Outline[1].Orientation())
		}
		if name == "rfc7946_1.5" {
			assert.JSONEq(t, `{"this":"that"}`, string(b.Pools[0].Extra.Properties["prop1"]))
		}
	}
}

// Ensure that what other programs add survives: members of collection, feature,
// properties and geometry, foreign ids, boxes and heights.
func TestForeignMembersSurvive(t *testing.T) {
	const in = `{"type":"FeatureCollection","name":"Kirk Beat","id":77,"maker":{"v":1.50,"list":[1,null]},"bbox":[0,0,1,1],
	"features":[
	 {"type":"Feature","id":12,"bbox":[1,2,3,4],"colour":"<b>&","properties":{"role":"pool","name":"Yew Pool","id":"way/9","depth":[1,2]},
	  "geometry":{"type":"Polygon","bbox":[9,9,9,9],"accuracy":3,"coordinates":[[[-4.1,55,12.5],[-4.09,55,13],[-4.09,55.01,14,99],[-4.1,55,12.5]]]}},
	 {"type":"Feature","id":"a b","properties":{"role":"jetty","zone":"Europe/London"},"geometry":{"type":"LineString","coordinates":[[-4.1,55],[-4.09,55.005,3],[-4.1,55]]}},
	 {"type":"Feature","properties":null,"geometry":null,"x":true}]}`
	b, warnings := read(t, in)
	assert.Equal(t, []WarningKind{UnknownRole, NoRole}, kinds(warnings))
	assert.Equal(t, "Europe/London", b.Zone, "a zone given with a feature is the beat's")
	var buf bytes.Buffer
	require.NoError(t, Write(&buf, b))
	require.NoError(t, strict(buf.Bytes()), buf.String())
	var out map[string]any
	require.NoError(t, json.Unmarshal(buf.Bytes(), &out))
	assert.Equal(t, 77.0, out["id"])
	assert.Contains(t, buf.String(), `"maker":{"v":1.50,"list":[1,null]}`, "numbers as they were written")
	assert.Contains(t, buf.String(), `"colour":"<b>&"`)
	features := out["features"].([]any)
	pool := features[0].(map[string]any)
	assert.Equal(t, 12.0, pool["id"])
	assert.Equal(t, []any{-4.1, 55.0, 12.5, -4.09, 55.01, 14.0}, pool["bbox"], "a box is made right, with heights")
	assert.Equal(t, "way/9", pool["properties"].(map[string]any)["id"])
	assert.Equal(t, []any{1.0, 2.0}, pool["properties"].(map[string]any)["depth"])
	geometry := pool["geometry"].(map[string]any)
	assert.Equal(t, 3.0, geometry["accuracy"])
	assert.Equal(t, pool["bbox"], geometry["bbox"])
	assert.Equal(t, []any{-4.09, 55.01, 14.0, 99.0}, geometry["coordinates"].([]any)[0].([]any)[2])
	line := features[1].(map[string]any)
	assert.Equal(t, "jetty", line["properties"].(map[string]any)["role"])
	assert.Equal(t, []any{[]any{-4.1, 55.0}, []any{-4.09, 55.005, 3.0}, []any{-4.1, 55.0}}, line["geometry"].(map[string]any)["coordinates"])
	assert.Equal(t, true, features[2].(map[string]any)["x"])
	back, _, err := Read(&buf)
	require.NoError(t, err)
	assert.Equal(t, b, back)
}

// Ensure that a corner that is moved loses its height and the others keep theirs.
func TestHeightsAfterEditing(t *testing.T) {
	b, _ := read(t, `{"type":"Feature","properties":{"role":"bank","bank":"left"},"geometry":{"type":"LineString","coordinates":[[-4,55,1],[-4.1,55,2],[-4.2,55,3]]}}`)
	b.Features[0].Shape.Lines[0][1] = orb.Point{-4.15, 55}
	var buf bytes.Buffer
	require.NoError(t, Write(&buf, b))
	assert.Contains(t, buf.String(), `"coordinates":[[-4,55,1],[-4.15,55],[-4.2,55,3]]`)
}

func poolText(geometry string) string {
	return `{"type":"Feature","properties":{"role":"pool","name":"Mill Neck"},"geometry":` + geometry + `}`
}

// Ensure that each forgivable slip is forgiven, and said.
func TestReadForgives(t *testing.T) {
	const ring = `[[-4.1,55],[-4.09,55],[-4.09,55.01],[-4.1,55]]`
	for name, c := range map[string]struct {
		text  string
		warns []WarningKind
		says  string
	}{
		"mark":             {"\ufeff" + poolText(`{"type":"Polygon","coordinates":[`+ring+`]}`), nil, ""},
		"clockwise":        {poolText(`{"type":"Polygon","coordinates":[[[-4.1,55],[-4.09,55.01],[-4.09,55],[-4.1,55]]]}`), nil, ""},
		"open ring":        {poolText(`{"type":"Polygon","coordinates":[[[-4.1,55],[-4.09,55],[-4.09,55.01]]]}`), []WarningKind{RingClosed}, "the outline of Mill Neck was open and has been closed"},
		"closing line":     {poolText(`{"type":"LineString","coordinates":` + ring + `}`), []WarningKind{LineAsOutline}, "Mill Neck was drawn as a line that comes round and was taken as an outline"},
		"clockwise line":   {poolText(`{"type":"LineString","coordinates":[[-4.1,55],[-4.09,55.01],[-4.09,55],[-4.1,55]]}`), []WarningKind{LineAsOutline}, ""},
		"one of many":      {poolText(`{"type":"MultiPolygon","coordinates":[[` + ring + `]]}`), nil, ""},
		"collection of it": {poolText(`{"type":"GeometryCollection","geometries":[{"type":"Polygon","coordinates":[` + ring + `]}]}`), nil, ""},
		"old crs":          {`{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:OGC:1.3:CRS84"}},"features":[` + poolText(`{"type":"Polygon","coordinates":[`+ring+`]}`) + `]}`, nil, ""},
		"bare polygon":     {`{"type":"Polygon","coordinates":[` + ring + `]}`, []WarningKind{GeometryAlone, NoRole}, "feature 1 has no role and was taken as a pool"},
		"short island":     {poolText(`{"type":"Polygon","coordinates":[` + ring + `,[[-4.095,55.002],[-4.095,55.003]]]}`), []WarningKind{RingLeftOut}, "an outline of Mill Neck with fewer than three corners was left out"},
		"quoted order":     {`{"type":"Feature","properties":{"role":"POOL","name":"Mill Neck","order":"3","bank":"True Left"},"geometry":{"type":"Polygon","coordinates":[` + ring + `]}}`, nil, ""},
		"9 decimals":       {poolText(`{"type":"Polygon","coordinates":[[[-4.100000001,55],[-4.09,55],[-4.09,55.01],[-4.1,55]]]}`), nil, ""},
		"bad bytes":        {strings.Replace(poolText(`{"type":"Polygon","coordinates":[`+ring+`]}`), `"role"`, "\"x\":\"\xff\",\"role\"", 1), []WarningKind{NotText}, "the file holds bytes that are no text; they were replaced by a mark"},
		"stray members":    {`{"type":"FeatureCollection","properties":{},"features":[` + poolText(`{"type":"Polygon","coordinates":[`+ring+`]}`) + `]}`, []WarningKind{MemberLeftOut}, `the file has a member "properties" that does not belong there; it was left out`},
		"bad skyline":      {`{"type":"Feature","properties":{"role":"pool","name":"Mill Neck","skyline":[1,2],"bank":"near"},"geometry":{"type":"Polygon","coordinates":[` + ring + `]}}`, []WarningKind{BadProperty, BadProperty}, "Mill Neck has a bank that cannot be used; it was kept unread"},
	} {
		b, warnings := read(t, c.text)
		assert.Equal(t, c.warns, kinds(warnings), name)
		if c.says != "" && assert.NotEmpty(t, warnings, name) {
			var all []string
			for _, w := range warnings {
				all = append(all, w.String())
			}
			assert.Contains(t, all, c.says, name)
		}
		if assert.Len(t, b.Pools, 1, name) {
			p := b.Pools[0]
			assert.Equal(t, orb.Polygon{{{-4.1, 55}, {-4.09, 55}, {-4.09, 55.01}, {-4.1, 55}}}, canonical(p.Outline), name)
			assert.False(t, p.ID.IsZero())
			assert.Equal(t, b, again(t, b), name)
		}
	}
}

// canonical starts a ring at its westernmost, southernmost corner.
func canonical(a orb.Polygon) orb.Polygon {
	r := a[0][:len(a[0])-1]
	best := 0
	for i, p := range r {
		if p[0] < r[best][0] || p[0] == r[best][0] && p[1] < r[best][1] {
			best = i
		}
	}
	out := append(append(orb.Ring{}, r[best:]...), r[:best]...)
	return orb.Polygon{append(out, out[0])}
}

func TestReadOddities(t *testing.T) {
	for name, c := range map[string]struct {
		text  string
		warns []WarningKind
	}{
		"no features":      {`{"type":"FeatureCollection","features":[]}`, []WarningKind{NoFeatures}},
		"null features":    {`{"type":"FeatureCollection","features":null}`, []WarningKind{NoFeatures}},
		"null geometry":    {poolText("null"), nil},
		"empty geometry":   {poolText(`{"type":"Polygon","coordinates":[]}`), nil},
		"pool as a point":  {poolText(`{"type":"Point","coordinates":[-4,55]}`), []WarningKind{NotOneArea}},
		"open pool line":   {poolText(`{"type":"LineString","coordinates":[[-4,55],[-4.1,55],[-4.1,55.1]]}`), []WarningKind{NotOneArea}},
		"two areas":        {poolText(`{"type":"MultiPolygon","coordinates":[[[[0,50],[1,50],[1,51],[0,50]]],[[[2,50],[3,50],[3,51],[2,50]]]]}`), []WarningKind{NotOneArea}},
		"line of one":      {poolText(`{"type":"LineString","coordinates":[[-4,55]]}`), []WarningKind{LineLeftOut}},
		"swapped":          {`{"type":"Feature","properties":{"role":"mark"},"geometry":{"type":"Point","coordinates":[55,-4]}}`, []WarningKind{MaybeSwapped}},
		"tropics":          {`{"type":"Feature","properties":{"role":"mark"},"geometry":{"type":"Point","coordinates":[102,0.5]}}`, nil},
		"not a feature":    {`{"type":"FeatureCollection","features":[5,{"type":"Feature","properties":{"role":"mark"},"geometry":null}]}`, []WarningKind{FeatureSkipped}},
		"geometry inside":  {`{"type":"FeatureCollection","features":[{"type":"Point","coordinates":[-4,55]}]}`, []WarningKind{GeometryAlone, NoRole}},
		"odd properties":   {`{"type":"Feature","properties":[],"geometry":null}`, []WarningKind{BadProperty, NoRole}},
		"nested member":    {`{"type":"Feature","properties":{"role":"mark"},"geometry":{"type":"GeometryCollection","geometries":[null,{"type":"Point","coordinates":[-4,55],"x":1}]}}`, []WarningKind{MemberLeftOut}},
		"two zones":        {`{"type":"FeatureCollection","zone":"Europe/London","features":[{"type":"Feature","properties":{"role":"mark","zone":"Europe/Dublin"},"geometry":null}]}`, []WarningKind{TwoZones}},
		"order nought":     {`{"type":"Feature","properties":{"role":"pool","order":0},"geometry":null}`, []WarningKind{BadProperty}},
		"order of a third": {`{"type":"Feature","properties":{"role":"pool","order":1.5},"geometry":null}`, []WarningKind{BadProperty}},
	} {
		b, warnings := read(t, c.text)
		assert.Equal(t, c.warns, kinds(warnings), name)
		for _, w := range warnings {
			assert.NotContains(t, w.String(), ": "+string(w.Kind), "a sentence of its own")
		}
		assert.Equal(t, b, again(t, b), name)
		if name == "two zones" {
			assert.Equal(t, "Europe/London", b.Zone)
			assert.Equal(t, `"Europe/Dublin"`, string(b.Features[0].Extra.Properties["zone"]), "left aside, not lost")
		}
	}
}

// Ensure that two features of one ID become two, and the first keeps it.
func TestSameID(t *testing.T) {
	const f = `{"type":"Feature","properties":{"role":"mark","id":"738eb1778485a275993269cd4f123846"},"geometry":null}`
	b, warnings := read(t, `{"type":"FeatureCollection","features":[`+f+`,`+f+`]}`)
	assert.Equal(t, []WarningKind{SameID}, kinds(warnings))
	assert.Equal(t, 1, warnings[0].Feature)
	assert.Equal(t, "738eb1778485a275993269cd4f123846", b.Features[0].ID.String())
	assert.NotEqual(t, b.Features[0].ID, b.Features[1].ID)
	assert.False(t, b.Features[1].ID.IsZero())
}

// Ensure that what would be misread is refused with the reason and what was found.
func TestReadRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		kind Kind
		why  string
	}{
		"empty":     {" \n", NotJSON, "the file is empty"},
		"not JSON":  {"{\n\"type\":\n}", NotJSON, "the file is not JSON: it cannot be read on from line 3"},
		"two texts": {"{} {}", NotJSON, "the file is not JSON: it cannot be read on from line 1"},
		"UTF-16":    {"\xff\xfe{\x00", NotJSON, "the file is UTF-16 text; save it again as UTF-8"},
		"a list":    {"[]", NotGeoJSON, "the file is JSON but not GeoJSON: it has no type"},
		"topology":  {`{"type":"Topology"}`, NotGeoJSON, "the file is TopoJSON, another format; save it as GeoJSON"},
		"a thing":   {`{"type":"Thing"}`, NotGeoJSON, "the file is JSON but not GeoJSON: its type is “Thing”"},
		"British grid": {poolText(`{"type":"Point","coordinates":[246123.5,560987]}`), OtherGrid,
			"Mill Neck has the coordinate 246123.5, 560987: it looks like a national grid in metres, such as the British one (EPSG:27700); save the file again as longitude and latitude (EPSG:4326)"},
		"past the meridian": {poolText(`{"type":"Point","coordinates":[200,55]}`), OtherGrid,
			"Mill Neck has the coordinate 200, 55: it is not longitude and latitude on WGS84 but another grid; save the file again as EPSG:4326"},
		"web metres": {poolText(`{"type":"Point","coordinates":[-492900,7356000]}`), OtherGrid,
			"Mill Neck has the coordinate -492900, 7356000: it is not longitude and latitude on WGS84 but another grid; save the file again as EPSG:4326"},
		"swapped": {poolText(`{"type":"Point","coordinates":[-45,170.5]}`), OtherGrid,
			"Mill Neck has the coordinate -45, 170.5: latitude and longitude may be swapped; GeoJSON has longitude first"},
		"crs member": {`{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::27700"}},"features":[]}`, OtherGrid,
			"the file is in the coordinate system “urn:ogc:def:crs:EPSG::27700”, the British national grid, in metres; save it again as longitude and latitude on WGS84 (EPSG:4326)"},
		"old crs member": {`{"type":"FeatureCollection","crs":{"type":"EPSG","properties":{"code":32630}},"features":[]}`, OtherGrid,
			"the file is in the coordinate system “EPSG:32630”, a UTM zone, in metres; save it again as longitude and latitude on WGS84 (EPSG:4326)"},
		"crs link": {`{"type":"FeatureCollection","crs":{"type":"link","properties":{"href":"x"}},"features":[]}`, OtherGrid,
			"the file has a crs member that names no coordinate system; GeoJSON uses longitude and latitude on WGS84 and has no crs member"},
		"null number": {poolText(`{"type":"Point","coordinates":[null,55]}`), NotGeoJSON, "Mill Neck has coordinates that are not lists of numbers as its type needs"},
		"one number":  {poolText(`{"type":"Point","coordinates":[4]}`), NotGeoJSON, "Mill Neck has a position of fewer than two numbers"},
		"too large":   {poolText(`{"type":"Point","coordinates":[1e999,5]}`), NotGeoJSON, "Mill Neck has coordinates that are not lists of numbers as its type needs"},
		"curve":       {poolText(`{"type":"Curve","coordinates":[]}`), NotGeoJSON, "Mill Neck has a geometry of the type “Curve”"},
	} {
		_, _, err := Read(strings.NewReader(c.text))
		var e *Error
		if assert.ErrorAs(t, err, &e, name) {
			assert.Equal(t, c.kind, e.Kind, name)
			assert.Equal(t, c.why, e.Error(), name)
		}
	}
	_, _, err := Read(strings.NewReader(strings.Repeat(" ", MaxBytes+1)))
	assert.ErrorContains(t, err, "larger than 16 MB")
	_, _, err = Read(strings.NewReader(`{"type":"MultiPoint","coordinates":[[1,2]` + strings.Repeat(",[1,2]", MaxPositions) + "]}"))
	assert.ErrorContains(t, err, "more than 50000 positions")
	deep := strings.Repeat(`{"type":"GeometryCollection","geometries":[`, 40) + strings.Repeat("]}", 40)
	_, _, err = Read(strings.NewReader(deep))
	assert.ErrorContains(t, err, "too deep")
}

func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile("testdata/home.geojson")
	require.NoError(b, err)
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, _, err := Read(bytes.NewReader(data)); err != nil {
			b.Fatal(err)
		}
	}
}
