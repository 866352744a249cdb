package intake_test

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal/intake"
	"gloamline/journal/intaketest"
)

// Ensure that no bytes bring Read down, whatever they are taken for; that every file has
// its checksum or a fault with what to do; and that positions come in order, none twice.
func FuzzRead(f *testing.F) {
	for _, pattern := range []string{"../gauge/testdata/invented/*", "../photo/testdata/*.*", "../../geo/gpx/testdata/*.gpx"} {
		names, err := filepath.Glob(pattern)
		require.NoError(f, err)
		for _, n := range names {
			b, err := os.ReadFile(n)
			require.NoError(f, err)
			f.Add(b[:min(len(b), 4096)])
		}
	}
	for _, s := range []string{"", " ", "PK\x03\x04", "<html>", "\xff\xfe<\x00g\x00", "0000ftypheic", "{\"items\":[]}", "\x0e\x10\x64\x08abcd.FIT"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		if len(b) > 1<<16 {
			return
		}
		got := readBytes("x", b, intake.ReadOptions{Thumb: true})
		if got.Fault != nil {
			require.NotEmpty(t, got.Fault.Error())
			require.NotContains(t, got.Fault.Error(), "\n")
			require.NotEmpty(t, got.Fault.Do)
		} else {
			require.Len(t, got.SHA256, 64)
		}
		for i := 1; i < len(got.Fixes); i++ {
			require.False(t, got.Fixes[i].At.Before(got.Fixes[i-1].At))
			require.NotEqual(t, got.Fixes[i], got.Fixes[i-1])
		}
		s := intake.Summarise(got)
		require.NotNil(t, s.Warnings)
		for _, x := range []*float64{lat(s), lon(s)} {
			require.False(t, x != nil && math.IsNaN(*x))
		}
	})
}

func lat(s intake.Summary) *float64 {
	if s.PhotoSummary == nil {
		return nil
	}
	return s.Lat
}

func lon(s intake.Summary) *float64 {
	if s.PhotoSummary == nil {
		return nil
	}
	return s.Lon
}

// An import of eight hours at one fix a second, from the bytes of the file to the proposal.
func BenchmarkImport(b *testing.B) {
	w := newWorld(b, "anna")
	gpx := w.walk.GPX()
	b.SetBytes(int64(len(gpx)))
	b.ReportAllocs()
	for b.Loop() {
		batch, err := intake.Propose(w.j, []*intake.File{readBytes("night.gpx", gpx, intake.ReadOptions{Now: now})}, w.order())
		if err != nil || len(batch.New()) < len(w.walk.Runs) {
			b.Fatal(err)
		}
	}
}

// long is a track of about so many bytes, never all in memory: the walk of a night said
// over and over, a night later each time.
type long struct {
	nights int
	chunk  []byte
	at     int
	night  int
	body   string
}

func newLong(bytes int) *long {
	n := intaketest.Walk(1, intaketest.Common())
	body := string(n.GPX())
	body = body[strings.Index(body, "<trkpt"):strings.Index(body, "</trkseg>")]
	return &long{nights: bytes/len(body) + 1, body: body, chunk: []byte("<gpx version=\"1.1\"><trk><trkseg>")}
}

func (l *long) Read(p []byte) (int, error) {
	for l.at == len(l.chunk) {
		switch {
		case l.night < l.nights:
			day := time.Date(2026, 7, 4+2*l.night, 0, 0, 0, 0, time.UTC)
			l.chunk = []byte(strings.NewReplacer("2026-07-04", day.Format("2006-01-02"), "2026-07-05", day.AddDate(0, 0, 1).Format("2006-01-02")).Replace(l.body))
		case l.night == l.nights:
			l.chunk = []byte("</trkseg></trk></gpx>")
		default:
			return 0, io.EOF
		}
		l.night, l.at = l.night+1, 0
	}
	n := copy(p, l.chunk[l.at:])
	l.at += n
	return n, nil
}

// 100 MB of a track: counted (as gloam read does), and kept (as an import does). The heap
// that lives at the end is reported; it must not grow with a counted file.
func BenchmarkRead100MB(b *testing.B) {
	path := filepath.Join(b.TempDir(), "long.gpx")
	out, err := os.Create(path)
	require.NoError(b, err)
	size, err := io.Copy(out, newLong(100<<20))
	require.NoError(b, err)
	require.NoError(b, out.Close())
	for _, count := range []bool{true, false} {
		b.Run(fmt.Sprintf("count=%v", count), func(b *testing.B) {
			b.SetBytes(size)
			b.ReportAllocs()
			most := uint64(0)
			for b.Loop() {
				in, err := os.Open(path)
				require.NoError(b, err)
				var before, after runtime.MemStats
				runtime.GC()
				runtime.ReadMemStats(&before)
				f := intake.Read("long.gpx", in, size, intake.ReadOptions{Count: count})
				runtime.GC()
				runtime.ReadMemStats(&after)
				require.Nil(b, f.Fault)
				require.Greater(b, f.Track.Points, 900_000)
				require.NoError(b, in.Close())
				most = max(most, after.HeapAlloc-min(before.HeapAlloc, after.HeapAlloc))
				runtime.KeepAlive(f)
			}
			b.ReportMetric(float64(most)/(1<<20), "MB-kept")
		})
	}
}

// Ensure that a counted file of 10 MB leaves nothing behind that grows with it.
func TestCountKeepsNothing(t *testing.T) {
	b, err := io.ReadAll(newLong(10 << 20))
	require.NoError(t, err)
	f := intake.Read("x", bytes.NewReader(b), int64(len(b)), intake.ReadOptions{Count: true})
	require.Nil(t, f.Fault)
	require.Empty(t, f.Fixes)
	require.Greater(t, f.Track.Points, 90_000)
	f = intake.Read("x", bytes.NewReader(b), int64(len(b)), intake.ReadOptions{})
	require.Greater(t, len(f.Fixes), 90_000)
}
