package gpx

import (
	"errors"
	"io"
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var now = time.Date(2026, 7, 1, 12, 0, 0, 0, time.UTC)

func read(t *testing.T, s string) File {
	t.Helper()
	f, err := Read(strings.NewReader(s), Options{Now: now})
	require.NoError(t, err)
	return f
}

// track wraps track points into a file.
func track(points string) string {
	return `<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>` + points + `</trkseg></trk></gpx>`
}

func at(stamp string) string {
	return `<trkpt lat="55" lon="-4"><time>` + stamp + `</time></trkpt>`
}

func kinds(h Head) map[WarningKind]int {
	out := map[WarningKind]int{}
	for _, w := range h.Warnings {
		out[w.Kind] = w.Count
	}
	return out
}

func utc(s string) time.Time {
	t, err := time.Parse(time.RFC3339, s)
	if err != nil {
		panic(err)
	}
	return t
}

// Ensure that the invented night gives what testdata/README.md says of it.
func TestNightTrack(t *testing.T) {
	r, err := os.Open("testdata/night_track.gpx")
	require.NoError(t, err)
	defer r.Close()
	f, err := Read(r, Options{Now: now})
	require.NoError(t, err)
	assert.Equal(t, 32, f.Points)
	assert.Equal(t, 32, f.Timed)
	assert.Equal(t, utc("2025-07-14T22:30:00Z"), f.First)
	assert.Equal(t, utc("2025-07-15T01:00:00Z"), f.Last)
	assert.Equal(t, map[WarningKind]int{Duplicate: 1}, kinds(f.Head))
	fixes := f.Fixes()
	require.Len(t, fixes, 31)
	for i, p := range fixes {
		lat := 52.1
		switch m := p.At.Sub(f.First).Minutes(); {
		case p.At.Equal(utc("2025-07-14T23:45:00Z")):
			assert.InDelta(t, 52.0985+0.05, p.LatDeg, 1e-3, "the spike is left in")
			continue
		case m > 45 && m < 60:
			continue
		case m >= 60:
			lat = 52.0985
		}
		assert.InDelta(t, lat, p.LatDeg, 2e-4, "point %d", i)
	}
}

// Ensure that each part of 1.1 arrives, and that what others add is passed over.
func TestParts(t *testing.T) {
	f := read(t, `<?xml version="1.0"?>
<gpx version="1.1" creator="Watch &amp; Co" xmlns="http://www.topografix.com/GPX/1/1" xmlns:a="urn:a">
<metadata><name>Night</name><author><name>Anna</name></author><time>2025-07-14T20:00:00Z</time></metadata>
<wpt lat="55.1" lon="-4.6"><ele>12.5</ele><time>2025-07-14T21:00:00+01:00</time><name>Gate</name><desc>by the <!-- c --> ash</desc><extensions><a:time>1999-01-01T00:00:00Z</a:time><a:b><time>x</time></a:b></extensions></wpt>
<rte><name>Down</name><rtept lat="55.2" lon="-4.5"><name>One</name></rtept></rte>
<trk><name>Walk</name><trkseg/><trkseg><trkpt lat="55.3" lon="-4.4"><hdop>1.5</hdop><a:time>1999-01-01T00:00:00Z</a:time></trkpt></trkseg></trk>
</gpx>`)
	assert.Equal(t, "Night", f.Name)
	assert.Equal(t, "Watch & Co", f.Creator)
	assert.Equal(t, utc("2025-07-14T20:00:00Z"), f.At)
	require.Len(t, f.Waypoints, 1)
	assert.Equal(t, Point{LatDeg: 55.1, LonDeg: -4.6, At: utc("2025-07-14T20:00:00Z"), HeightM: 12.5, HasHeight: true, Name: "Gate", Note: "by the  ash", Line: 4}, f.Waypoints[0])
	require.Len(t, f.Lines, 2)
	assert.Equal(t, Line{Route, "Down", [][]Point{{{LatDeg: 55.2, LonDeg: -4.5, Name: "One", Line: 5}}}}, f.Lines[0])
	assert.Equal(t, Line{Track, "Walk", [][]Point{nil, {{LatDeg: 55.3, LonDeg: -4.4, HDOP: 1.5, Line: 6}}}}, f.Lines[1])
	assert.Equal(t, []string{"urn:a"}, f.Extensions)
	assert.Equal(t, map[WarningKind]int{SomeUntimed: 2}, kinds(f.Head))
}

// Ensure that version 1.0, no namespace, a prefix and every encoding read alike.
func TestDress(t *testing.T) {
	body := `><trk><name>Öre</name><trkseg><trkpt lat="55" lon="-4"><ele>3</ele><time>2025-07-14T22:30:00Z</time><speed>1</speed></trkpt></trkseg></trk></gpx>`
	plain := `<gpx version="1.1" creator="x"` + body
	latin := strings.ReplaceAll(plain, "Ö", "\xD6")
	prefixed := `<g:gpx version="1.1" creator="x" xmlns:g="http://www.topografix.com/GPX/1/1"><g:trk><g:name>Öre</g:name><g:trkseg><g:trkpt lat="55" lon="-4"><g:ele>3</g:ele><g:time>2025-07-14T22:30:00Z</g:time></g:trkpt></g:trkseg></g:trk></g:gpx>`
	var wide strings.Builder
	wide.WriteString("\xFF\xFE")
	for _, r := range plain {
		wide.WriteByte(byte(r))
		wide.WriteByte(byte(r >> 8))
	}
	for name, s := range map[string]string{
		"1.0":       `<?xml version="1.0" encoding="UTF-8"?><gpx version="1.0" creator="x" xmlns="http://www.topografix.com/GPX/1/0"` + body,
		"plain":     plain,
		"blanks":    "\n\n  " + plain + "\n\n",
		"prefix":    prefixed,
		"mark":      "\xEF\xBB\xBF<?xml version='1.0' encoding='UTF-8'?>" + plain,
		"latin 1":   `<?xml version="1.0" encoding="ISO-8859-1"?>` + latin,
		"1252":      `<?xml version='1.0' encoding='windows-1252' ?>` + latin,
		"latin 9":   `<?xml version="1.0" encoding="ISO-8859-15"?>` + latin,
		"mislabel":  `<?xml version="1.0" encoding="UTF-8"?>` + latin,
		"utf-16 le": wide.String(),
	} {
		f, err := Read(strings.NewReader(s), Options{Now: now})
		require.NoError(t, err, name)
		require.Len(t, f.Lines, 1, name)
		assert.Equal(t, "Öre", f.Lines[0].Name, name)
		p := f.Lines[0].Segments[0][0]
		assert.Equal(t, 3.0, p.HeightM, name)
		assert.Equal(t, utc("2025-07-14T22:30:00Z"), p.At, name)
		want := map[WarningKind]int{}
		if name == "mislabel" {
			want[NotText] = 1
		}
		assert.Equal(t, want, kinds(f.Head), name)
	}
}

// Ensure that what looks wrong is counted, with the line of the first, and not put right.
func TestWarnings(t *testing.T) {
	for name, c := range map[string]struct {
		points string
		want   map[WarningKind]int
	}{
		"none":          {"", map[WarningKind]int{NoPoints: 1}},
		"untimed":       {`<trkpt lat="55" lon="-4"/><trkpt lat="55" lon="-4"/>`, map[WarningKind]int{NoTimes: 2}},
		"order":         {at("2025-07-14T22:31:00Z") + at("2025-07-14T22:30:00Z"), map[WarningKind]int{OutOfOrder: 1}},
		"same time":     {at("2025-07-14T22:31:00Z") + `<trkpt lat="55.1" lon="-4"><time>2025-07-14T22:31:00Z</time></trkpt>`, map[WarningKind]int{SameTime: 1}},
		"no zone":       {at("2025-07-14T22:31:00") + at("2025-07-14 22:32:00"), map[WarningKind]int{Zoneless: 2}},
		"bad time":      {at("yesterday") + at("2025-07-14T22:31:00Z"), map[WarningKind]int{BadTime: 1, SomeUntimed: 1}},
		"1901":          {at("1901-12-13T20:45:52Z"), map[WarningKind]int{ClockUnset: 1}},
		"1998":          {at("1998-11-20T22:30:00Z"), map[WarningKind]int{OldClock: 1}},
		"1999":          {at("1999-12-01T22:30:00Z"), map[WarningKind]int{OldClock: 1}},
		"2098":          {at("2098-07-14T22:30:00Z"), map[WarningKind]int{FutureClock: 1}},
		"off the earth": {at("2025-07-14T22:31:00Z") + `<trkpt lat="91" lon="0"/><trkpt lat="x" lon="0"/><trkpt lon="1"/><trkpt lat="NaN" lon="0"/>`, map[WarningKind]int{BadPosition: 4}},
		"zero":          {at("2025-07-14T22:31:00Z") + `<trkpt lat="0.0" lon="0"/>`, map[WarningKind]int{ZeroPosition: 1}},
		"comma":         {`<trkpt lat="55,5" lon="-4,5"><time>2025-07-14T22:31:00Z</time></trkpt>`, map[WarningKind]int{DecimalComma: 1}},
	} {
		f := read(t, track("\n"+c.points))
		assert.Equal(t, c.want, kinds(f.Head), name)
		for _, w := range f.Warnings {
			assert.NotEqual(t, string(w.Kind), w.String(), "a sentence for %s", w.Kind)
		}
	}
	f := read(t, track(at("2006-11-28T22:30:00Z")+"\n"+at("1999-12-01T22:30:00Z")))
	require.Len(t, f.Warnings, 2)
	assert.Equal(t, Warning{OldClock, 2, 1, "2019-07-17"}, f.Warnings[0], "1024 weeks after 1 December 1999")
}

// Ensure that times with offsets and fractions become the instant they mean.
func TestTimes(t *testing.T) {
	for s, want := range map[string]string{
		"2025-07-14T23:30:00+01:00":     "2025-07-14T22:30:00Z",
		"2025-07-14T23:30:00+0100":      "2025-07-14T22:30:00Z",
		"2025-07-14T23:30:00 +01:00":    "2025-07-14T22:30:00Z",
		"2025-07-14t22:30:00z":          "2025-07-14T22:30:00Z",
		"2025-07-14T22:30:00.250Z":      "2025-07-14T22:30:00.25Z",
		"2025-07-14T17:00:00-05:30":     "2025-07-14T22:30:00Z",
		"2025-07-14T22:30Z":             "2025-07-14T22:30:00Z",
		" 2025-07-14T22:30:00.000000Z ": "2025-07-14T22:30:00Z",
	} {
		got, zoneless, ok := parseTime(s)
		require.True(t, ok, s)
		assert.False(t, zoneless, s)
		assert.Equal(t, want, got.Format(time.RFC3339Nano), s)
	}
	for _, s := range []string{"", "2025-07-14", "2025-13-01T00:00:00Z", "2025-07-14T25:00:00Z", "14.07.2025 22:30", "22:30"} {
		_, _, ok := parseTime(s)
		assert.False(t, ok, s)
	}
}

// Ensure that a file that is refused is refused in two lines, at the place of the cause.
func TestRefused(t *testing.T) {
	deep := strings.Repeat("<a>", 70)
	for name, c := range map[string]struct {
		file string
		line int
		say  string
	}{
		"empty":    {"", 0, "empty"},
		"blank":    {" \n ", 0, "empty"},
		"fit":      {"\x0e\x10\x00\x00\x00\x00\x00\x00.FIT\x00\x00\x00", 0, "FIT"},
		"zip":      {"PK\x03\x04....", 0, "zip"},
		"gzip":     {"\x1f\x8b\x08....", 0, "gzip"},
		"json":     {`{"type":"FeatureCollection"}`, 0, "not XML"},
		"binary":   {"<\x00\x01", 0, "no text"},
		"kml":      {`<kml xmlns="http://www.opengis.net/kml/2.2"/>`, 1, `"kml"`},
		"html":     {"<html><body>not found</body></html>", 1, `"html"`},
		"entity":   {"<?xml version=\"1.0\"?>\n<!DOCTYPE gpx [<!ENTITY a \"b\">]>\n" + track(""), 2, "document type"},
		"external": {"<!DOCTYPE gpx SYSTEM \"file:///etc/passwd\">" + track(""), 1, "document type"},
		"unknown":  {track("\n<name>&a;</name>"), 2, "not well formed"},
		"crossed":  {track("<a>\n</b>"), 2, "not well formed"},
		"deep":     {track("\n" + deep), 2, "64 deep"},
		"cut":      {"<gpx version=\"1.1\">\n<trk>", 2, "breaks off"},
		"charset":  {`<?xml version="1.0" encoding="EBCDIC"?><gpx/>`, 1, "EBCDIC"},
		"long":     {track("\n<name>" + strings.Repeat("x", tokenMax+9) + "</name>"), 2, "1 MiB"},
	} {
		_, err := Read(strings.NewReader(c.file), Options{Now: now})
		var e *Error
		require.ErrorAs(t, err, &e, name)
		assert.Equal(t, c.line, e.Line, "%s: %v", name, err)
		assert.Contains(t, e.What, c.say, name)
		assert.Len(t, strings.Split(err.Error(), "\n"), 2, name)
	}
}

// Ensure that a file cut short gives what stood before the cut, and says so.
func TestCutShort(t *testing.T) {
	whole := track(at("2025-07-14T22:30:00Z") + at("2025-07-14T22:31:00Z"))
	for _, cut := range []int{len(whole) - 3, strings.LastIndex(whole, "<time>") + 9} {
		f := read(t, whole[:cut])
		assert.Equal(t, 1, kinds(f.Head)[CutShort])
		assert.NotEmpty(t, f.Lines[0].Segments[0])
	}
}

// Ensure that the limits hold, and that Scan needs no more than a point at a time.
func TestLimits(t *testing.T) {
	s := track(strings.Repeat(at("2025-07-14T22:30:00Z"), 5))
	_, err := Read(strings.NewReader(s), Options{MaxPoints: 4})
	assert.ErrorContains(t, err, "more than 4 points")
	_, err = Read(strings.NewReader(s), Options{MaxBytes: 200})
	assert.ErrorContains(t, err, "longer")
	n := 0
	head, err := Scan(strings.NewReader(s), Options{}, func(p Part, _ Point) error {
		assert.Equal(t, Part{Track, 0, 0}, p)
		n++
		return nil
	})
	require.NoError(t, err)
	assert.Equal(t, 5, n)
	assert.Equal(t, 5, head.Points)
	stop := errors.New("stop")
	_, err = Scan(strings.NewReader(s), Options{}, func(Part, Point) error { return stop })
	assert.Same(t, stop, err)
	_, err = Read(io.MultiReader(strings.NewReader("<gpx>"), broken{}), Options{})
	assert.ErrorContains(t, err, "pulled out")
}

type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, errors.New("pulled out") }

// Ensure that fixes come by time and once, whatever the order in the file.
func TestFixes(t *testing.T) {
	other := `<trkpt lat="56" lon="-4"><time>2025-07-14T22:30:00Z</time></trkpt>`
	f := read(t, track(at("2025-07-14T22:31:00Z")+at("2025-07-14T22:30:00Z")+other+at("2025-07-14T22:30:00Z")+`<trkpt lat="1" lon="1"/>`))
	var lats []float64
	for _, p := range f.Fixes() {
		lats = append(lats, math.Round(p.LatDeg))
	}
	assert.Equal(t, []float64{55, 56, 55}, lats)
	assert.Len(t, f.Lines[0].Segments[0], 5, "the file itself is as it was")
}
