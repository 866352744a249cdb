package photo

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"gloamline/journal/units"
)

// Format is the kind of file.
type Format string

// The formats.
const (
	JPEG Format = "JPEG"
	HEIC Format = "HEIC"
)

// Photo is what one file says.
type Photo struct {
	Format        Format
	SHA256        string // of the whole file, 64 hexadecimal digits
	Size          int64  // bytes
	Width, Height int    // as stored, before turning; 0 if not known
	Taken         Taken
	Fix           Fix
	Orientation   int // 1 to 8 as EXIF counts; 1 if not said
	Make, Model   string
	Warnings      []string
}

// Taken is the moment by the camera's own clock.
type Taken struct {
	Wall     time.Time // the clock's reading, labelled UTC; the zone is not known from it
	HasDate  bool      // false: Wall holds a time of day alone
	HasClock bool      // false: Wall holds a date alone, or nothing
	Offset   time.Duration
	Zoned    bool // Offset, east of UTC, is noted in the file
	Tag      string
}

// Known reports whether both date and time of day are known.
func (t Taken) Known() bool { return t.HasDate && t.HasClock }

// Instant is the moment in UTC, where the file notes the offset.
func (t Taken) Instant() (time.Time, bool) {
	return t.Wall.Add(-t.Offset), t.Known() && t.Zoned
}

// Fix is what the satellite receiver noted.
type Fix struct {
	At               time.Time // UTC, of the fix
	HasDate          bool      // false: At holds a time of day alone
	HasClock         bool
	Lat, Lon         units.Degrees // WGS84, north and east positive
	HasPlace         bool
	Bearing          units.Degrees // in which the camera looked
	HasBearing       bool
	MagneticNorth    bool // the bearing counts from magnetic north
	BearingReference bool // the file says from which north
}

// Instant is the moment of the fix, where date and time of day are both noted.
func (f Fix) Instant() (time.Time, bool) { return f.At, f.HasDate && f.HasClock }

// Device names the camera, to tell clocks apart; "" if not said.
func (p *Photo) Device() string {
	if strings.HasPrefix(strings.ToLower(p.Model), strings.ToLower(p.Make)) {
		return p.Model
	}
	return strings.TrimSpace(p.Make + " " + p.Model)
}

func (p *Photo) warn(format string, args ...any) {
	if len(p.Warnings) < 50 {
		p.Warnings = append(p.Warnings, fmt.Sprintf(format, args...))
	}
}

// ErrFormat is returned for a file that is neither JPEG nor HEIC.
var ErrFormat = errors.New("this is neither a JPEG nor a HEIC picture")

// Read reads a file of the given size. The whole of it passes through the checksum; little
// is kept. With an error the Photo holds what was found, checksum included if the file
// could be read to its end.
func Read(r io.ReaderAt, size int64) (*Photo, error) {
	p := &Photo{Size: size, Orientation: 1}
	sum := sha256.New()
	n, err := io.Copy(sum, io.NewSectionReader(r, 0, size))
	if err == nil && n < size {
		err = io.ErrUnexpectedEOF
	}
	if err != nil {
		return p, fmt.Errorf("byte %d of the file cannot be read: %w", n, err)
	}
	p.SHA256 = hex.EncodeToString(sum.Sum(nil))

	head := make([]byte, min(12, size))
	if err := readAt(r, head, 0); err != nil {
		return p, err
	}
	var block []byte
	switch {
	case bytes.HasPrefix(head, []byte{0xff, 0xd8, 0xff}):
		p.Format = JPEG
		block = jpegBlock(r, size, p)
	case len(head) == 12 && string(head[4:8]) == "ftyp":
		p.Format = HEIC
		block, err = heicBlock(r, size, p)
	default:
		err = ErrFormat
	}
	if err != nil {
		return p, err
	}
	if block == nil {
		p.warn("the picture says nothing of when and where it was taken: no EXIF")
		return p, nil
	}
	p.read(parseTIFF(block, p))
	return p, nil
}

// readAt fills b from the offset.
func readAt(r io.ReaderAt, b []byte, at int64) error {
	n, err := r.ReadAt(b, at)
	if n == len(b) {
		return nil
	}
	if err == nil || err == io.EOF {
		err = io.ErrUnexpectedEOF
	}
	return err
}
