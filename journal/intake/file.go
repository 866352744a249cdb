package intake

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/geo/gpx"
	"gloamline/journal/gauge"
	"gloamline/journal/photo"
	"gloamline/journal/units"
)

// MaxFixes is how many timed positions of one file are kept: twenty-three days at one a
// second, 80 MB of memory. A larger file is refused; its head is known all the same.
const MaxFixes = 2_000_000

// Fix is one timed position by the clock of the device, in UTC.
type Fix struct {
	At    time.Time
	Place geo.Place
}

// File is what one file said, before anybody asks what it means for a night. Fault is nil
// or tells why it cannot be used; the other members then hold what was found before.
type File struct {
	Name   string // without folders
	Path   string // as given
	Size   int64  // bytes
	SHA256 string // of the bytes, 64 hexadecimal digits
	Kind   Kind
	Fault  *Fault

	Track gpx.Head     // of a TrackFile
	Fixes []Fix        // of its tracks, in order of time, no two alike; routes are none
	Photo *photo.Photo // of a PhotoFile, else nil
	Thumb []byte       // JPEG without any data of its own; nil for a HEIC
	Gauge *gauge.File  // of a GaugeFile, else nil

	zone      *time.Location // of gauge readings that name none
	zoneAsked bool           // and it was given, not assumed

}

// ReadOptions are what a file may leave open.
type ReadOptions struct {
	Now     time.Time      // to tell clocks that are ahead; zero: not told
	Zone    *time.Location // of gauge readings without one; nil: UTC
	Columns *gauge.Choice  // of a plain table; nil: guessed
	Thumb   bool           // make the small copy of a photo
	Count   bool           // count positions, keep none: memory does not grow with the file
}

// Read reads one file of any kind, told by its bytes. It never fails as a whole: see
// Fault. name may have folders in front.
func Read(name string, r io.ReaderAt, size int64, o ReadOptions) *File {
	f := &File{Name: filepath.Base(name), Path: name, Size: size, zone: o.Zone, zoneAsked: o.Zone != nil}
	head := make([]byte, min(headSize, size))
	n, err := r.ReadAt(head, 0)
	if n < len(head) && err != nil {
		f.Fault = &Fault{What: fmt.Sprintf("byte %d of the file cannot be read", n), Do: "Check that it is all there, and try again.", Err: err}
		return f
	}
	if f.Kind, f.Fault = Sniff(head); f.Fault != nil {
		return f
	}
	switch f.Kind {
	case PhotoFile:
		err = f.readPhoto(r, size, o)
	case TrackFile:
		err = f.hashing(io.NewSectionReader(r, 0, size), func(r io.Reader) error { return f.readTrack(r, o) })
	case GaugeFile:
		err = f.hashing(io.NewSectionReader(r, 0, size), func(r io.Reader) (err error) {
			f.Gauge, err = gauge.Read(r, gauge.Options{Zone: o.Zone, Columns: o.Columns})
			return err
		})
	}
	if err != nil {
		f.Fault = faultOf(f.Kind, err)
	}
	return f
}

// hashing has the whole file pass through the checksum, whatever f reads of it.
func (f *File) hashing(r *io.SectionReader, read func(io.Reader) error) error {
	sum := sha256.New()
	tee := io.TeeReader(r, sum)
	err := read(tee)
	if _, rest := io.Copy(io.Discard, tee); rest != nil && err == nil {
		err = rest
	}
	if n, _ := r.Seek(0, io.SeekCurrent); n < f.Size && err == nil {
		err = &Fault{What: fmt.Sprintf("the file ends at byte %d of %d: somebody is still writing it, or cut it short", n, f.Size), Do: "Wait until it is all there, and read it again."}
	}
	f.SHA256 = hex.EncodeToString(sum.Sum(nil))
	return err
}

func (f *File) readTrack(r io.Reader, o ReadOptions) error {
	var err error
	f.Track, err = gpx.Scan(r, gpx.Options{Now: o.Now}, func(at gpx.Part, p gpx.Point) error {
		if o.Count || at.Kind != gpx.Track || p.At.IsZero() {
			return nil
		}
		if len(f.Fixes) == MaxFixes {
			f.Fixes = nil
			return &Fault{Line: p.Line, What: fmt.Sprintf("more than %d positions in one file", MaxFixes), Do: "Cut it into smaller ones, by day for instance."}
		}
		f.Fixes = append(f.Fixes, Fix{p.At, geo.Place{Lat: units.Degrees(p.LatDeg), Lon: units.Degrees(p.LonDeg)}})
		return nil
	})
	f.Fixes = inOrder(f.Fixes)
	return err
}

// inOrder sorts by time and drops positions that stand twice. Of several places at one
// moment all are kept, in the order of the file.
func inOrder(in []Fix) []Fix {
	byTime := func(a, b Fix) int { return a.At.Compare(b.At) }
	if !slices.IsSortedFunc(in, byTime) {
		slices.SortStableFunc(in, byTime)
	}
	out, from := in[:0], 0
	for _, x := range in {
		if from < len(out) && !out[from].At.Equal(x.At) {
			from = len(out)
		}
		if !slices.ContainsFunc(out[from:], func(y Fix) bool { return x.Place == y.Place }) {
			out = append(out, x)
		}
	}
	return out
}

func (f *File) readPhoto(r io.ReaderAt, size int64, o ReadOptions) error {
	p, err := photo.Read(r, size)
	f.SHA256, f.Photo = p.SHA256, p
	if err != nil || !o.Thumb || p.Format != photo.JPEG {
		return err
	}
	thumb, err := photo.Thumbnail(io.NewSectionReader(r, 0, size), p.Orientation, photo.CommonSmall())
	if err != nil { // what it says of itself still counts
		p.Warnings = append(p.Warnings, "no small copy can be made: "+err.Error())
		return nil
	}
	f.Thumb = bytes.Clone(thumb)
	return nil
}

// Warnings are the reader's remarks, one line each.
func (f *File) Warnings() []string {
	out := []string{}
	switch {
	case f.Photo != nil:
		out = append(out, f.Photo.Warnings...)
	case f.Gauge != nil:
		for _, w := range f.Gauge.Warnings {
			out = append(out, w.String())
		}
	default:
		for _, w := range f.Track.Warnings {
			out = append(out, w.String())
		}
	}
	return out
}
