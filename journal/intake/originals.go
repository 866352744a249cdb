package intake

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"gloamline/journal"
)

// Originals is the folder of the copied originals of a journal: beside it, by its name.
func Originals(journalPath string) string {
	return strings.TrimSuffix(journalPath, filepath.Ext(journalPath)) + ".photos"
}

// OriginalPath is where the copy of a photo lies: named by its hash, so that it is the
// same file in every copy of the journal and is there once.
func OriginalPath(journalPath string, p journal.Photo) string {
	return filepath.Join(Originals(journalPath), p.SHA256[:2], p.SHA256+strings.ToLower(filepath.Ext(p.Name)))
}

// errChanged says that a file is no longer what was read.
var errChanged = errors.New("the file has changed since it was read: read it again")

// Keep copies the original of a photo beside the journal, before the photo is stored: then
// no record names a copy that is not there. A copy that is there already stays as it is.
// The original is only read; one that is no longer what was read is refused.
func Keep(journalPath string, p journal.Photo, original string) (err error) {
	if len(p.SHA256) != 2*sha256.Size {
		return fmt.Errorf("%q is no SHA-256", p.SHA256)
	}
	to := OriginalPath(journalPath, p)
	if _, err := os.Stat(to); err == nil {
		return nil
	} else if !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	from, err := os.Open(original)
	if err != nil {
		return err
	}
	defer from.Close()
	if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
		return err
	}
	temp, err := os.CreateTemp(filepath.Dir(to), "copy-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, temp.Close(), os.Remove(temp.Name()))
		}
	}()
	sum := sha256.New()
	if _, err := io.Copy(io.MultiWriter(temp, sum), from); err != nil {
		return err
	}
	if hex.EncodeToString(sum.Sum(nil)) != p.SHA256 {
		return errChanged
	}
	if err := temp.Sync(); err != nil {
		return err
	}
	if err := temp.Close(); err != nil {
		return err
	}
	return os.Rename(temp.Name(), to)
}

// Kept lists the photos that a plan stores as copies, with the files they are copied from.
func (b *Batch) Kept(plan journal.Batch) map[string]journal.Photo {
	out := map[string]journal.Photo{}
	for _, r := range plan.Put {
		p, ok := r.(journal.Photo)
		if !ok || !p.Copied {
			continue
		}
		for _, s := range b.Sources {
			if s.File.SHA256 == p.SHA256 {
				out[s.File.Path] = p
				break
			}
		}
	}
	return out
}
