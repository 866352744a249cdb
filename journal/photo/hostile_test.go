package photo_test

import (
	"bytes"
	"encoding/binary"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/photo"
)

// entry is one tag as a test writes it.
type entry struct {
	id, typ uint16
	count   uint32
	data    []byte // beyond four bytes it is put after the directories
}

func text(id uint16, s string) entry { return entry{id, 2, uint32(len(s) + 1), []byte(s + "\x00")} }

func rationals(id uint16, n ...uint32) entry {
	var b []byte
	for _, x := range n {
		b = binary.BigEndian.AppendUint32(b, x)
	}
	return entry{id, 5, uint32(len(n) / 2), b}
}

func long(id uint16, v uint32) entry {
	return entry{id, 4, 1, binary.BigEndian.AppendUint32(nil, v)}
}

// block writes an EXIF block with a main, a picture and a satellite directory. Nothing
// about it is checked, so that it can be wrong.
func block(main, exif, gps []entry) []byte {
	main = append(main, long(0x8769, 0), long(0x8825, 0))
	size := func(d []entry) int { return 2 + 12*len(d) + 4 }
	at := []int{8, 8 + size(main), 8 + size(main) + size(exif)}
	for i, pos := range at[1:] {
		main[len(main)-2+i].data = binary.BigEndian.AppendUint32(nil, uint32(pos))
	}
	b := []byte("MM\x00\x2a\x00\x00\x00\x08")
	end := at[2] + size(gps)
	var rest []byte
	for _, d := range [][]entry{main, exif, gps} {
		b = binary.BigEndian.AppendUint16(b, uint16(len(d)))
		for _, e := range d {
			b = binary.BigEndian.AppendUint16(b, e.id)
			b = binary.BigEndian.AppendUint16(b, e.typ)
			b = binary.BigEndian.AppendUint32(b, e.count)
			if len(e.data) > 4 {
				b = binary.BigEndian.AppendUint32(b, uint32(end+len(rest)))
				rest = append(rest, e.data...)
			} else {
				b = append(b, append(e.data, 0, 0, 0, 0)[:4]...)
			}
		}
		b = append(b, 0, 0, 0, 0)
	}
	return append(b, rest...)
}

// picture puts a block into base.jpg.
func picture(t testing.TB, exif []byte) []byte {
	base := load(t, "base.jpg")
	b := []byte{0xff, 0xd8, 0xff, 0xe1}
	b = binary.BigEndian.AppendUint16(b, uint16(len(exif)+8))
	b = append(append(b, "Exif\x00\x00"...), exif...)
	return append(b, base[2:]...)
}

func told(p *photo.Photo) string { return strings.Join(p.Warnings, "\n") }

// Ensure that degrees as text are read, with the letter beside or within.
func TestDegreesAsText(t *testing.T) {
	p := read(t, picture(t, block(nil, nil, []entry{text(1, "N"), text(2, "55, 7.5, 0"), text(3, ""), text(4, `4°39'15.5"W`)})))
	assert.True(t, p.Fix.HasPlace)
	assert.InDelta(t, 55.125, float64(p.Fix.Lat), 1e-12)
	assert.InDelta(t, -(4 + 39/60.0 + 15.5/3600), float64(p.Fix.Lon), 1e-12)
}

// Ensure that what cannot be a position is none, and why.
func TestNoPlace(t *testing.T) {
	lat, lon := rationals(2, 55, 1, 0, 1, 0, 1), rationals(4, 4, 1, 30, 1, 0, 1)
	for want, gps := range map[string][]entry{
		"GPSLatitude does not say whether N or S": {lat, text(3, "W"), lon},
		"GPSLatitude is 55/0, which is no number": {text(1, "N"), rationals(2, 55, 0, 0, 1, 0, 1), text(3, "W"), lon},
		"GPSLatitude has 75 minutes or seconds":   {text(1, "N"), rationals(2, 55, 1, 75, 1, 0, 1), text(3, "W"), lon},
		"outside the globe":                       {text(1, "N"), rationals(2, 95, 1, 0, 1, 0, 1), text(3, "W"), lon},
		`GPSLatitude is "north", which is no`:     {text(1, "N"), text(2, "north"), text(3, "W"), lon},
		"half a position":                         {text(1, "N"), lat},
		"the position is 0,0":                     {text(1, "N"), rationals(2, 0, 1, 0, 1, 0, 1), text(3, "W"), rationals(4, 0, 1, 0, 1, 0, 1)},
	} {
		p := read(t, picture(t, block(nil, nil, gps)))
		assert.False(t, p.Fix.HasPlace, want)
		assert.Contains(t, told(p), want)
	}
	p := read(t, picture(t, block(nil, nil, []entry{text(1, "N"), rationals(2, 55125, 1000, 0, 0, 0, 0), text(3, "W"), lon})))
	assert.InDelta(t, 55.125, float64(p.Fix.Lat), 1e-12, "0/0 minutes")
}

// Ensure that a time of day without a date, and a date without one, stay so.
func TestHalfTimes(t *testing.T) {
	for s, want := range map[string][2]bool{
		"2025:07:15 00:37:12": {true, true}, "0000:00:00 12:30:05": {false, true}, "    :  :   12:30:05": {false, true},
		"2025:07:15": {true, false}, "2025:07:15   :  :  ": {true, false}, "2025-07-15T00:37:12": {true, true},
		"0000:00:00 00:00:00": {false, false}, "    :  :     :  :  ": {false, false}, "": {false, false}, "2025:13:15 00:00:00": {false, false}, "night": {false, false},
	} {
		p := read(t, picture(t, block(nil, []entry{text(0x9003, s)}, nil)))
		assert.Equal(t, want, [2]bool{p.Taken.HasDate, p.Taken.HasClock}, "%q", s)
		if want != [2]bool{true, true} {
			assert.NotEmpty(t, p.Warnings, "%q", s)
		}
	}
	p := read(t, picture(t, block(nil, []entry{text(0x9003, "2025:07:15 00:37:12"), text(0x9011, "+25:00")}, nil)))
	assert.False(t, p.Taken.Zoned)
	assert.Contains(t, told(p), `OffsetTimeOriginal is "+25:00"`)
}

// Ensure that directories that point at each other are read once.
func TestLoop(t *testing.T) {
	b := block(nil, []entry{text(0x9003, "2025:07:15 00:37:12")}, nil)
	binary.BigEndian.PutUint32(b[8+2+12+8:], 8) // the satellite directory is the main one again
	p := read(t, picture(t, b))
	assert.Contains(t, told(p), "a loop, not followed")
	assert.True(t, p.Taken.Known())
}

// Ensure that counts and places that cannot be are passed over, not followed.
func TestHugeCounts(t *testing.T) {
	p := read(t, picture(t, block([]entry{{0x10f, 2, 0xffffffff, []byte{0, 0, 0, 8}}, {0x110, 2, 64, []byte{0xff, 0xff, 0xff, 0xff}}, {0x112, 99, 1, nil}}, []entry{text(0x9003, "2025:07:15 00:37:12")}, nil)))
	assert.Contains(t, told(p), "Make has 4294967295 values of type 2")
	assert.Contains(t, told(p), "Model lies outside the EXIF")
	assert.Contains(t, told(p), "Orientation has 1 values of type 99")
	assert.Equal(t, 1, p.Orientation)
	assert.True(t, p.Taken.Known())
}

// Ensure that makers' notes and XMP are left alone, however wild.
func TestMakersNotes(t *testing.T) {
	p := read(t, picture(t, block(nil, []entry{{0x927c, 7, 0xffffff, []byte{0, 0, 0, 1}}, text(0x9003, "2025:07:15 00:37:12")}, nil)))
	assert.Empty(t, p.Warnings)
}

// Ensure that a file cut off anywhere gives a warning or an error and what stood before.
func TestCutOff(t *testing.T) {
	for _, name := range []string{"full.jpg", "full.heic"} {
		b := load(t, name)
		for n := range b {
			p, err := photo.Read(bytes.NewReader(b[:n]), int64(n))
			require.NotNil(t, p)
			if err == nil && !p.Taken.Known() {
				require.NotEmpty(t, p.Warnings, "%s %d", name, n)
			}
		}
	}
}

// Ensure that boxes of a HEIC that claim to be larger than the file, or to run backwards,
// end the walk.
func TestWildBoxes(t *testing.T) {
	head := []byte("\x00\x00\x00\x10ftypheic\x00\x00\x00\x00")
	for _, box := range []string{"\x00\x00\x00\x01free\xff\xff\xff\xff\xff\xff\xff\xf0", "\xff\xff\xff\xffmeta", "\x00\x00\x00\x02free"} {
		b := append(bytes.Clone(head), box...)
		_, err := photo.Read(bytes.NewReader(b), int64(len(b)))
		require.ErrorContains(t, err, "the HEIC file is damaged at byte 16")
	}
}

// Ensure that no bytes bring the reader down and that its answers keep their word.
func FuzzRead(f *testing.F) {
	for _, name := range []string{"base.jpg", "full.jpg", "full.heic", "zero.jpg", "south.jpg", "night_offset_plus1.jpg"} {
		f.Add(load(f, name))
	}
	f.Add(picture(f, block([]entry{text(0x110, "x")}, nil, []entry{text(1, "N"), text(2, "55, 7.5, 0"), text(3, "W"), text(4, "4")})))
	f.Fuzz(func(t *testing.T, b []byte) {
		p, err := photo.Read(bytes.NewReader(b), int64(len(b)))
		require.NotNil(t, p)
		require.Len(t, p.SHA256, 64)
		if err == nil {
			require.GreaterOrEqual(t, p.Orientation, 1)
			require.LessOrEqual(t, p.Orientation, 8)
			if p.Fix.HasPlace {
				require.LessOrEqual(t, math.Abs(float64(p.Fix.Lat)), 90.0)
			}
			require.LessOrEqual(t, len(p.Warnings), 50)
		}
	})
}
