package intake_test

import (
	"errors"
	"os"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo/gpx"
	"gloamline/journal/gauge"
	"gloamline/journal/intake"
)

func zone(t testing.TB, name string) *time.Location {
	loc, err := time.LoadLocation(name)
	require.NoError(t, err)
	return loc
}

func utf16le(s string) string {
	var b strings.Builder
	for _, u := range utf16.Encode([]rune(s)) {
		b.WriteByte(byte(u))
		b.WriteByte(byte(u >> 8))
	}
	return b.String()
}

// Ensure that the kind shows from the bytes, in any dress.
func TestSniff(t *testing.T) {
	for head, want := range map[string]intake.Kind{
		"<?xml version=\"1.0\"?><gpx/>":              intake.TrackFile,
		"\xef\xbb\xbf  \r\n<gpx>":                    intake.TrackFile,
		utf16le("\ufeff<gpx/>"):                      intake.TrackFile,
		utf16le("<gpx/>"):                            intake.TrackFile,
		"\x00<\x00g":                                 intake.TrackFile,
		"\xff\xd8\xff\xe1":                           intake.PhotoFile,
		"\x00\x00\x00\x18ftypheic\x00\x00":           intake.PhotoFile,
		"\x00\x00\x00\x18ftypmif1":                   intake.PhotoFile,
		"dateTime,value\n":                           intake.GaugeFile,
		utf16le("\ufeffTid;Vannstand\n"):             intake.GaugeFile,
		"{\"items\":[]}":                             intake.GaugeFile,
		"Vattenst\xe5nd;cm\n2025-07-14 21:00;64,2\n": intake.GaugeFile,
	} {
		k, fault := intake.Sniff([]byte(head))
		assert.Nil(t, fault, "%q", head)
		assert.Equal(t, want, k, "%q", head)
	}
}

// Ensure that what is not read is named, with what to do.
func TestSniffRefuses(t *testing.T) {
	for head, want := range map[string]string{
		"":                                "the file is empty",
		" \r\n\t":                         "nothing but blanks",
		"\x0e\x10\x64\x08abcd.FIT":        "a FIT recording",
		"PK\x03\x04rest":                  "an archive",
		"\x1f\x8b\x08":                    "compressed",
		"%PDF-1.7":                        "a PDF",
		"\x89PNG\r\n":                     "a PNG",
		"RIFF\x01\x02\x03\x04WEBP":        "a WebP",
		"\x00\x00\x00\x18ftypqt  ":        "a film",
		"\x00\x00\x00\x18ftypavif":        "a film or a picture",
		"\xd0\xcf\x11\xe0":                "a spreadsheet's",
		"  <!DOCTYPE HTML><title>":        "a web page",
		"<html lang=en>":                  "a web page",
		"\x7fELF\x02\x01\x01\x00\x00\x00": "no track, no photo",
	} {
		k, fault := intake.Sniff([]byte(head))
		require.NotNil(t, fault, "%q", head)
		assert.Equal(t, intake.NoKind, k)
		assert.Contains(t, fault.Error(), want)
		assert.True(t, strings.HasSuffix(fault.Do, "."), fault.Do)
	}
}

// Ensure that the fault of a bad file has its place, its cause and what to do, and
// keeps what the reader said.
func TestFaults(t *testing.T) {
	f := readBytes("x", []byte("<gpx>\n<trk>\n<trkseg></trk>"), intake.ReadOptions{})
	require.NotNil(t, f.Fault)
	assert.Equal(t, 3, f.Fault.Line)
	assert.True(t, strings.HasPrefix(f.Fault.Error(), "line 3: the XML is not well formed"), f.Fault.Error())
	var said *gpx.Error
	assert.True(t, errors.As(f.Fault, &said))
	assert.Len(t, f.SHA256, 64)

	f = readBytes("x", []byte("{\"items\":[\n{\"dateTime\":"), intake.ReadOptions{})
	assert.Contains(t, f.Fault.Error(), "line 2: this JSON cannot be read further")
	f = readBytes("x", []byte("Dear Anna,\nthe river is up.\n"), intake.ReadOptions{})
	assert.ErrorIs(t, f.Fault, gauge.ErrNoReadings)
	f = readBytes("x", []byte("\x00\x00\x00\x10ftypheic\x00\x00\x00\x00\xff\xff\xff\xffmeta"), intake.ReadOptions{})
	assert.Contains(t, f.Fault.Error(), "damaged at byte 16")

	b, err := os.ReadFile(invented(t, "night_track.gpx"))
	require.NoError(t, err)
	b = append(b, strings.Repeat(" ", 4096)...)
	f = intake.Read("x", strings.NewReader(string(b)), int64(len(b)+9), intake.ReadOptions{})
	require.NotNil(t, f.Fault)
	assert.Contains(t, f.Fault.Error(), "ends at byte 7341 of 7350")
	f = intake.Unreadable("x", os.ErrPermission)
	assert.Contains(t, f.Fault.Error(), "permission denied")
}

// Ensure that the checksum is that of the whole file, even where the reader stops early.
func TestChecksum(t *testing.T) {
	// sha256sum, GNU coreutils
	assert.Equal(t, "a1a219a12bf44894aa4ca5f3d3b467b7e4fddc35e6a1c6ebad8e9f7ce7783dea", read(t, invented(t, "night_track.gpx"), intake.ReadOptions{}).SHA256)
	whole := readBytes("x", []byte("<gpx><trk></gpx>"+strings.Repeat(" ", 1<<20)+"1"), intake.ReadOptions{})
	other := readBytes("x", []byte("<gpx><trk></gpx>"+strings.Repeat(" ", 1<<20)+"2"), intake.ReadOptions{})
	assert.NotNil(t, whole.Fault)
	assert.NotEqual(t, whole.SHA256, other.SHA256)
}
