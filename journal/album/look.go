package album

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"gloamline/journal/photo"
)

// Shot is what a file holds that may become a photo of a journal.
type Shot struct {
	Path     string // absolute
	Name     string // of the file, without folder
	SHA256   string // of the whole file, 64 hexadecimal digits
	Format   photo.Format
	Taken    photo.Taken
	Device   string
	Thumb    []byte // JPEG without position; nil if none could be made
	NoThumb  error  // why there is none
	Warnings []string

	size    int64
	changed time.Time
}

// Look reads a file. It may be called from any goroutine. The error is one of the file
// system, or of package photo where the file is no picture that can be taken in.
func Look(path string) (Shot, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return Shot{}, err
	}
	f, info, err := open(path)
	if err != nil {
		return Shot{}, err
	}
	defer f.Close()
	p, err := photo.Read(f, info.Size())
	if err != nil {
		return Shot{}, err
	}
	s := Shot{
		Path: path, Name: filepath.Base(path), SHA256: p.SHA256, Format: p.Format, Taken: p.Taken, Device: p.Device(),
		Warnings: p.Warnings, size: info.Size(), changed: info.ModTime(),
	}
	if p.Format != photo.JPEG {
		s.NoThumb = fmt.Errorf("no small picture is made of a %s", p.Format)
		return s, nil
	}
	s.Thumb, s.NoThumb = photo.Thumbnail(f, p.Orientation, photo.CommonSmall())
	return s, nil
}

// Fresh reports whether the file still looks as it did when it was read: same size, same
// time of change.
func (s Shot) Fresh() bool {
	i, err := os.Stat(s.Path)
	return err == nil && i.Size() == s.size && i.ModTime().Equal(s.changed)
}

// open opens a plain file for reading.
func open(path string) (*os.File, fs.FileInfo, error) {
	info, err := os.Stat(path)
	if err == nil && !info.Mode().IsRegular() { // a folder, or a pipe that would never end
		err = &fs.PathError{Op: "read", Path: path, Err: fs.ErrInvalid}
	}
	if err != nil {
		return nil, nil, err
	}
	f, err := os.Open(path)
	return f, info, err
}
