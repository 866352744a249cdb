package archive

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"

	"gloamline/journal"
	"gloamline/journal/album"
)

// Form is what an archive is by how its file begins.
type Form string

// The forms.
const (
	NoArchive Form = ""     // such as a journal, which is no text
	Text      Form = "text" // JSON
	Bundled   Form = "zip"  // JSON and originals
)

// FormOf looks at how the file at path begins.
func FormOf(path string) (Form, error) {
	f, err := os.Open(path)
	if err != nil {
		return NoArchive, reading(err)
	}
	defer f.Close()
	if IsBundle(f) {
		return Bundled, nil
	}
	head := make([]byte, 512)
	n, err := io.ReadFull(f, head)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) && err != io.EOF {
		return NoArchive, reading(err)
	}
	if bytes.HasPrefix(bytes.TrimSpace(head[:n]), []byte("{")) {
		return Text, nil
	}
	return NoArchive, nil
}

// OutlineOf says what the archive at path holds, having read and proved it, and how many
// originals of photographs come with it.
func OutlineOf(path string) (o journal.Outline, photos int, err error) {
	err = with(path, func(f *os.File, size int64) (err error) {
		if IsBundle(f) {
			o, photos, err = BundleOutline(f, size)
			return err
		}
		o, err = Outline(f)
		return err
	})
	return o, photos, err
}

// RestoreFile makes a journal at to of the archive at path, with the originals that come
// with it. A file that exists is never touched.
func RestoreFile(path, to string) error {
	return with(path, func(f *os.File, size int64) (err error) {
		if _, statErr := os.Lstat(to); statErr == nil {
			return failing(journal.Conflict, "there is already a file of that name")
		}
		if IsBundle(f) {
			_, _, _, err = Unbundle(f, size, to, album.Beside(to))
			return err
		}
		_, _, err = Restore(f, to)
		return err
	})
}

func with(path string, do func(*os.File, int64) error) error {
	f, err := os.Open(path)
	if err != nil {
		return reading(err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return reading(err)
	}
	return do(f, info.Size())
}

// reading classes an error met in opening a file to read.
func reading(err error) error {
	k := journal.IO
	if errors.Is(err, fs.ErrNotExist) {
		k = journal.NotFound
	}
	return &journal.Error{Op: "read archive", Kind: k, Err: err}
}
