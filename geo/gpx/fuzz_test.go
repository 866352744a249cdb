package gpx

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// Ensure that no bytes end the program, that each refusal is an *Error in two lines, that
// counts agree, and that what was read can be written and read again as it was.
func FuzzRead(f *testing.F) {
	night, err := os.ReadFile("testdata/night_track.gpx")
	require.NoError(f, err)
	f.Add(night)
	f.Add([]byte(track(at("2025-07-14T22:31:00") + at("1901-12-13T20:45:52Z") + `<trkpt lat="0" lon="0"><ele>x</ele></trkpt>`)))
	f.Add([]byte("<!DOCTYPE gpx [<!ENTITY a \"b\">]>" + track("")))
	f.Add([]byte("<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?><gpx version=\"1.0\"><rte><name>\xD6</name><rtept lat=\"1\" lon=\"180\"/></rte><wpt lat=\"2\" lon=\"2\"><desc>&lt;</desc></wpt></gpx>"))
	f.Add([]byte("\xFF\xFE<\x00g\x00p\x00x\x00/\x00>\x00"))
	f.Fuzz(func(t *testing.T, b []byte) {
		if len(b) > 1<<16 {
			return
		}
		got, err := Read(bytes.NewReader(b), Options{Now: now})
		if err != nil {
			var e *Error
			require.ErrorAs(t, err, &e)
			require.NotEmpty(t, e.Do)
			require.NotContains(t, e.Do, "\n")
			return
		}
		n := 0
		for _, l := range got.Lines {
			for _, s := range l.Segments {
				n += len(s)
			}
		}
		require.Equal(t, got.Points, n)
		require.Equal(t, got.Head.Waypoints, len(got.Waypoints))
		var out bytes.Buffer
		require.NoError(t, Write(&out, got))
		again, err := Read(&out, Options{Now: now})
		require.NoError(t, err)
		require.LessOrEqual(t, again.Points, got.Points) // what rounds to 0, 0 is left out
		require.LessOrEqual(t, len(again.Waypoints), len(got.Waypoints))
	})
}

// longNight is a track of one fix a second for eight hours.
func longNight() []byte {
	var b bytes.Buffer
	b.WriteString(`<?xml version="1.0"?><gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>`)
	from := time.Date(2025, 7, 14, 21, 0, 0, 0, time.UTC)
	for i := range 8 * 3600 {
		fmt.Fprintf(&b, "<trkpt lat=\"%.6f\" lon=\"%.6f\"><ele>41.0</ele><time>%s</time></trkpt>\n", 55+float64(i)*1e-6, -4-float64(i%60)*1e-6, from.Add(time.Duration(i)*time.Second).Format(time.RFC3339))
	}
	b.WriteString("</trkseg></trk></gpx>")
	return b.Bytes()
}

// One fix a second for eight hours, 28,800 points.
func BenchmarkRead(b *testing.B) {
	night := longNight()
	b.SetBytes(int64(len(night)))
	b.ReportAllocs()
	for b.Loop() {
		f, err := Read(bytes.NewReader(night), Options{Now: now})
		if err != nil || f.Points != 28800 {
			b.Fatal(f.Points, err)
		}
	}
}

// 100 MB in a stream.
func BenchmarkScan100MB(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		n := 0
		head, err := Scan(endless(100<<20), Options{}, func(Part, Point) error { n++; return nil })
		if err != nil || head.Points != n || n < 500_000 {
			b.Fatal(n, err)
		}
	}
}

// endless is a file of about so many bytes that is never all in memory.
func endless(size int) io.Reader {
	chunk := strings.Repeat(at("2025-07-14T22:30:00Z")+"\n", 1000)
	parts := []io.Reader{strings.NewReader("<gpx version=\"1.1\"><trk><trkseg>")}
	for n := 0; n < size; n += len(chunk) {
		parts = append(parts, strings.NewReader(chunk))
	}
	return io.MultiReader(append(parts, strings.NewReader("</trkseg></trk></gpx>"))...)
}
