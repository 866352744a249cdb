package archive

import (
	"archive/zip"
	"compress/flate"
	"errors"
	"io"
	"os"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/album"
)

// The names in a bundle.
const (
	bundleText   = "journal.json"
	bundlePhotos = "photos/"
)

// Bundle writes an archive and the originals of photographs as one ZIP file: the text as
// journal.json, each original as photos/ab/abcd….jpg by the sum of its bytes. It is complete
// only when Bundle returns nil. An original that cannot be read, or is damaged, is left out
// and comes back in missing: the text is worth keeping all the same.
func Bundle(out io.Writer, s journal.Store, created string, now time.Time, a *album.Album) (n Count, photos int, missing []album.Original, err error) {
	z := zip.NewWriter(out)
	w, err := z.CreateHeader(&zip.FileHeader{Name: bundleText, Method: zip.Deflate, Modified: now.UTC()})
	if err != nil {
		return n, 0, nil, err
	}
	if n, err = Write(w, s, created, now); err != nil {
		return n, 0, nil, err
	}
	bad, err := a.Damaged()
	if err != nil {
		return n, 0, nil, classed(journal.IO, err)
	}
	damaged := map[string]bool{}
	for _, o := range bad {
		damaged[o.Sum] = true
	}
	all, err := a.All()
	if err != nil {
		return n, 0, nil, classed(journal.IO, err)
	}
	for _, o := range all {
		if damaged[o.Sum] {
			missing = append(missing, o)
			continue
		}
		// Pictures are compressed already.
		w, err := z.CreateHeader(&zip.FileHeader{Name: bundlePhotos + o.Name(), Method: zip.Store, Modified: now.UTC()})
		if err != nil {
			return n, photos, missing, err
		}
		if err := pour(w, o.Path); err != nil {
			return n, photos, missing, err
		}
		photos++
	}
	return n, photos, missing, z.Close()
}

func pour(w io.Writer, path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	_, err = io.Copy(w, f)
	return err
}

// IsBundle reports whether a file begins as a ZIP file does.
func IsBundle(f io.ReaderAt) bool {
	head := make([]byte, 4)
	_, err := f.ReadAt(head, 0)
	return err == nil && string(head) == "PK\x03\x04"
}

// Unbundle makes a journal at path of a bundle, and lays its originals into the album.
// Each is proved by its name. When it returns an error there is no journal at path; originals
// laid down before stay, since they hurt nobody.
func Unbundle(in io.ReaderAt, size int64, path string, a *album.Album) (h Header, n Count, photos int, err error) {
	z, text, err := openBundle(in, size)
	if err != nil {
		return h, n, 0, err
	}
	for _, f := range z.File {
		name, ok := strings.CutPrefix(f.Name, bundlePhotos)
		if !ok || f.FileInfo().IsDir() {
			continue
		}
		if err := layPart(f, name, a); err != nil {
			return h, n, photos, err
		}
		photos++
	}
	r, err := text.Open()
	if err != nil {
		return h, n, photos, classed(journal.Corrupt, err)
	}
	defer r.Close()
	h, n, err = Restore(packed{r}, path)
	return h, n, photos, err
}

func layPart(f *zip.File, name string, a *album.Album) error {
	r, err := f.Open()
	if err != nil {
		return classed(journal.Corrupt, err)
	}
	defer r.Close()
	_, err = a.Lay(packed{r}, name)
	if errors.Is(err, album.ErrSum) || errors.Is(err, album.ErrChanged) {
		return failing(journal.Corrupt, "the photograph %s is not what it was: %w", name, err)
	}
	return classed(journal.IO, err)
}

// BundleOutline says what a bundle holds, having read and proved its text; of the
// originals it says how many there are.
func BundleOutline(in io.ReaderAt, size int64) (o journal.Outline, photos int, err error) {
	z, text, err := openBundle(in, size)
	if err != nil {
		return o, 0, err
	}
	for _, f := range z.File {
		if strings.HasPrefix(f.Name, bundlePhotos) && !f.FileInfo().IsDir() {
			photos++
		}
	}
	r, err := text.Open()
	if err != nil {
		return o, photos, classed(journal.Corrupt, err)
	}
	defer r.Close()
	o, err = Outline(packed{r})
	return o, photos, err
}

// openBundle finds the text in a bundle.
func openBundle(in io.ReaderAt, size int64) (*zip.Reader, *zip.File, error) {
	z, err := zip.NewReader(in, size)
	if err != nil {
		return nil, nil, failing(journal.Corrupt, "it is cut short or damaged: %w", err)
	}
	var text *zip.File
	stray := ""
	for _, f := range z.File {
		switch {
		case f.Name == bundleText && text == nil:
			text = f
		case !strings.HasPrefix(f.Name, bundlePhotos):
			stray = f.Name
		}
	}
	switch {
	case text == nil:
		return nil, nil, failing(journal.Foreign, "not an archive of a journal")
	case stray != "": // a photograph by a damaged name would be lost unseen
		return nil, nil, failing(journal.Corrupt, "%q does not belong in it", stray)
	}
	return z, text, nil
}

// packed calls damage what the unpacking meets: the file itself could be read.
type packed struct{ io.Reader }

func (p packed) Read(b []byte) (int, error) {
	n, err := p.Reader.Read(b)
	var bad flate.CorruptInputError
	if errors.Is(err, zip.ErrChecksum) || errors.Is(err, zip.ErrFormat) || errors.Is(err, io.ErrUnexpectedEOF) || errors.As(err, &bad) {
		err = failing(journal.Corrupt, "%w", err)
	}
	return n, err
}
