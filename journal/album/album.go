package album

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"gloamline/journal/photo"
)

// Album is the folder of originals of one journal. It need not be there yet.
type Album struct{ dir string }

// Beside is the album of a journal's file.
func Beside(journal string) *Album {
	return &Album{strings.TrimSuffix(journal, filepath.Ext(journal)) + ".photos"}
}

// In is the album in a folder of its own.
func In(dir string) *Album { return &Album{dir} }

// Dir is where the folder lies.
func (a *Album) Dir() string { return a.dir }

// endings are those of the formats that are kept.
var endings = map[photo.Format]string{photo.JPEG: ".jpg", photo.HEIC: ".heic"}

// ErrChanged is returned by Keep when the file is another one than it was.
var ErrChanged = errors.New("the file was changed after it was read")

// ErrSum is returned for what is no SHA-256 in 64 small hexadecimal digits.
var ErrSum = errors.New("that is no fingerprint of a file")

// Find is the path of a kept original; false if none of that sum is there.
func (a *Album) Find(sum string) (string, bool) {
	if !isSum(sum) {
		return "", false
	}
	for _, e := range endings {
		path := a.path(sum, e)
		if i, err := os.Stat(path); err == nil && i.Mode().IsRegular() {
			return path, true
		}
	}
	return "", false
}

// Keep copies the file at path, of the sum and format that Look found, into the folder.
// One that is there already is left alone. After an error the folder is as it was, but
// for empty folders.
func (a *Album) Keep(path, sum string, format photo.Format) error {
	if !isSum(sum) || endings[format] == "" {
		return ErrSum
	}
	if have, ok := a.Find(sum); ok && sumOf(have) == sum {
		return nil
	}
	return a.copy(path, sum, endings[format])
}

// copy lays a file down under its sum, in one step: no reader ever meets half of it.
func (a *Album) copy(path, sum, ending string) error {
	from, _, err := open(path)
	if err != nil {
		return err
	}
	defer from.Close()
	return a.lay(from, filepath.Base(path), sum, ending)
}

// lay writes what a reader gives, called name where it is not of that sum.
func (a *Album) lay(from io.Reader, name, sum, ending string) (err error) {
	to := a.path(sum, ending)
	if err := os.MkdirAll(filepath.Dir(to), 0o700); err != nil {
		return err
	}
	part, err := os.CreateTemp(filepath.Dir(to), ".part-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = part.Close()
			_ = os.Remove(part.Name())
		}
	}()
	h := sha256.New()
	if _, err = io.Copy(io.MultiWriter(part, h), from); err != nil {
		return err
	}
	if hex.EncodeToString(h.Sum(nil)) != sum {
		return fmt.Errorf("%s: %w", name, ErrChanged)
	}
	if err = part.Sync(); err != nil {
		return err
	}
	if err = part.Close(); err != nil {
		return err
	}
	return os.Rename(part.Name(), to)
}

func (a *Album) path(sum, ending string) string { return filepath.Join(a.dir, sum[:2], sum+ending) }

// isSum reports whether a text is a SHA-256 as photo.Read gives it. Anything else never
// becomes part of a path.
func isSum(s string) bool {
	b, err := hex.DecodeString(s)
	return err == nil && len(b) == sha256.Size && strings.ToLower(s) == s
}

// sumOf is the sum of a file, empty if it cannot be read.
func sumOf(path string) string {
	f, err := os.Open(path)
	if err != nil {
		return ""
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return ""
	}
	return hex.EncodeToString(h.Sum(nil))
}
