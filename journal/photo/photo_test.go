package photo_test

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/photo"
)

func load(t testing.TB, name string) []byte {
	t.Helper()
	b, err := os.ReadFile("testdata/" + name)
	require.NoError(t, err)
	return b
}

func read(t testing.TB, b []byte) *photo.Photo {
	t.Helper()
	p, err := photo.Read(bytes.NewReader(b), int64(len(b)))
	require.NoError(t, err)
	return p
}

// Ensure that what exiftool 12.57 (-n) prints of a JPEG and of a HEIC with the same tags
// comes out: 2025:07:15 00:37:12, parts 05, +01:00; 55.123456, -4.654321; 2025:07:14
// 23:36:55; direction 123.4 M; orientation 6.
func TestFull(t *testing.T) {
	for name, format := range map[string]photo.Format{"full.jpg": photo.JPEG, "full.heic": photo.HEIC} {
		p := read(t, load(t, name))
		assert.Equal(t, format, p.Format)
		assert.Equal(t, time.Date(2025, 7, 15, 0, 37, 12, 50e6, time.UTC), p.Taken.Wall, name)
		assert.Equal(t, "DateTimeOriginal", p.Taken.Tag)
		at, ok := p.Taken.Instant()
		assert.True(t, ok)
		assert.Equal(t, time.Date(2025, 7, 14, 23, 37, 12, 50e6, time.UTC), at)
		at, ok = p.Fix.Instant()
		assert.True(t, ok)
		assert.Equal(t, time.Date(2025, 7, 14, 23, 36, 55, 0, time.UTC), at)
		assert.InDelta(t, 55.123456, float64(p.Fix.Lat), 1e-6)
		assert.InDelta(t, -4.654321, float64(p.Fix.Lon), 1e-6)
		assert.True(t, p.Fix.HasPlace)
		assert.InDelta(t, 123.4, float64(p.Fix.Bearing), 1e-9)
		assert.True(t, p.Fix.HasBearing && p.Fix.MagneticNorth)
		assert.Equal(t, 6, p.Orientation)
		assert.Equal(t, "Larrick Eye 2", p.Device())
		assert.Empty(t, p.Warnings)
	}
	p := read(t, load(t, "full.jpg"))
	assert.Equal(t, [2]int{48, 32}, [2]int{p.Width, p.Height})
	assert.EqualValues(t, 4003, p.Size)
	// sha256sum, GNU coreutils
	assert.Equal(t, "521cf4ce0cd4cd0a8cc80a77f98d82d5479d1db1a9e4aceb50e9eaaa03327800", p.SHA256)
}

// Ensure that a clock with an offset is an instant, and the date of the night is not
// guessed from it: 00:37:12 +01:00 on the 15th is 23:37:12Z on the 14th; the fix is 17 s
// earlier, at 52.1, -4.2 (exiftool 12.57).
func TestOffset(t *testing.T) {
	p := read(t, load(t, "night_offset_plus1.jpg"))
	at, ok := p.Taken.Instant()
	require.True(t, ok)
	assert.Equal(t, "2025-07-14T23:37:12Z", at.Format(time.RFC3339))
	fix, ok := p.Fix.Instant()
	require.True(t, ok)
	assert.Equal(t, 17*time.Second, at.Sub(fix))
	assert.InDelta(t, 52.1, float64(p.Fix.Lat), 1e-9)
	assert.InDelta(t, -4.2, float64(p.Fix.Lon), 1e-9)
}

// Ensure that without an offset no zone is assumed.
func TestNoZone(t *testing.T) {
	p := read(t, load(t, "night_no_zone.jpg"))
	assert.Equal(t, time.Date(2025, 7, 15, 0, 37, 12, 0, time.UTC), p.Taken.Wall)
	assert.True(t, p.Taken.Known())
	_, ok := p.Taken.Instant()
	assert.False(t, ok)
	assert.False(t, p.Fix.HasPlace || p.Fix.HasDate || p.Fix.HasClock)
}

// Ensure that 0,0 is no position and a clock in 1998 is doubted, not refused.
func TestZeroPlace(t *testing.T) {
	p := read(t, load(t, "zero.jpg"))
	assert.False(t, p.Fix.HasPlace)
	assert.Equal(t, 1998, p.Taken.Wall.Year())
	told := strings.Join(p.Warnings, "\n")
	assert.Contains(t, told, "the position is 0,0")
	assert.Contains(t, told, "the camera's clock says 1998")
}

// Ensure that south is negative (exiftool 12.57: -41.5, 172.25), that a fix without a date
// stays without, and that the time of storing stands in with a warning.
func TestSouth(t *testing.T) {
	p := read(t, load(t, "south.jpg"))
	assert.InDelta(t, -41.5, float64(p.Fix.Lat), 1e-9)
	assert.InDelta(t, 172.25, float64(p.Fix.Lon), 1e-9)
	_, ok := p.Fix.Instant()
	assert.False(t, ok)
	assert.True(t, p.Fix.HasClock)
	assert.Equal(t, 10, p.Fix.At.Hour())
	assert.Equal(t, "DateTimeDigitized", p.Taken.Tag)
	assert.Contains(t, strings.Join(p.Warnings, "\n"), "the time it was stored stands in")
}

// Ensure that a picture without EXIF is read and says so, and other files are refused.
func TestBare(t *testing.T) {
	p := read(t, load(t, "base.jpg"))
	assert.Contains(t, p.Warnings[0], "no EXIF")
	assert.Equal(t, 48, p.Width)
	for _, b := range [][]byte{nil, []byte("x"), []byte("GIF89a-and-more-bytes"), []byte("\xff\xd8")} {
		got, err := photo.Read(bytes.NewReader(b), int64(len(b)))
		require.ErrorIs(t, err, photo.ErrFormat)
		assert.Len(t, got.SHA256, 64)
	}
	b := load(t, "base.jpg")
	_, err := photo.Read(bytes.NewReader(b), int64(len(b))+1)
	require.ErrorContains(t, err, "byte 455 of the file cannot be read")
}
