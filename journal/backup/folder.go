package backup

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/store"
)

// Folder is where the copies of one journal lie.
type Folder struct {
	journal string
	path    string
}

// Of returns the folder of the journal at path. It need not exist.
func Of(path string) Folder { return Folder{path, path + ".backups"} }

// Path is the folder itself.
func (f Folder) Path() string { return f.path }

// Photos is where the originals of photographs that belong to the copies lie, each once
// for all of them.
func (f Folder) Photos() *album.Album { return album.In(filepath.Join(f.path, "photos")) }

// Copy is one copy in it.
type Copy struct {
	Path  string
	At    time.Time // when it was taken, UTC, to the second
	Bytes int64
}

const (
	stamp  = "2006-01-02T150405Z"
	ending = ".gloam"
)

// List returns the copies, newest first; none if there is no folder.
func (f Folder) List() ([]Copy, error) {
	files, err := os.ReadDir(f.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil
	case err != nil:
		return nil, failing(err)
	}
	var out []Copy
	for _, file := range files {
		name, ok := strings.CutSuffix(file.Name(), ending)
		at, err := time.Parse(stamp, name)
		info, infoErr := file.Info()
		if !ok || err != nil || infoErr != nil || !info.Mode().IsRegular() {
			continue // not ours
		}
		out = append(out, Copy{filepath.Join(f.path, file.Name()), at, info.Size()})
	}
	slices.SortFunc(out, func(a, b Copy) int { return b.At.Compare(a.At) })
	return out, nil
}

// Outcome is what Take did.
type Outcome struct {
	Copy    Copy
	Same    bool   // nothing had changed since this copy, so no other was taken
	Removed []Copy // not worth keeping any more
	Photos  int    // originals of photographs that the copies lacked and have now
	// PhotoFault is why not all originals are with the copies; the copy itself is made.
	PhotoFault error
}

// Take copies a snapshot into the folder, proves the copy and removes those not
// worth keeping. It closes the snapshot. It may run beside the journal's own
// goroutine. If the copy is not sound the error is of kind Corrupt, Copy says where it
// lies, and nothing was removed but what is there twice. Originals of photographs are laid
// beside the copies, whether or not another copy was needed.
func (f Folder) Take(n *store.Snapshot, now time.Time) (Outcome, error) {
	out, err := f.take(n, now)
	n.Close()
	out.Photos, out.PhotoFault = album.Beside(f.journal).LinkTo(f.Photos())
	return out, err
}

func (f Folder) take(n *store.Snapshot, now time.Time) (Outcome, error) {
	defer n.Close()
	have, err := f.List()
	if err != nil {
		return Outcome{}, err
	}
	twin := false // the newest copy holds the same, if it can be read
	if len(have) > 0 {
		tip, err := store.TipOf(have[0].Path)
		twin = err == nil && tip == n.Tip()
	}
	if twin && sound(have[0]) == nil {
		n.Close()
		removed, err := f.prune(now)
		return Outcome{Copy: have[0], Same: true, Removed: removed}, err
	}
	if err := os.MkdirAll(f.path, 0o700); err != nil {
		return Outcome{}, failing(err)
	}
	f.sweep()
	c := f.at(now, have)
	if err := n.Save(c.Path); err != nil {
		return Outcome{}, err
	}
	if info, err := os.Stat(c.Path); err == nil {
		c.Bytes = info.Size()
	}
	if err := sound(c); err != nil {
		if twin { // the journal has a fault, and so has the copy before: one is enough
			os.Remove(c.Path)
			c = have[0]
		}
		return Outcome{Copy: c}, err
	}
	removed, err := f.prune(now)
	return Outcome{Copy: c, Removed: removed}, err
}

// sound reads the whole of a copy.
func sound(c Copy) error {
	_, err := store.OutlineOf(c.Path)
	return err
}

// sweep removes what a copy left that was cut short. Only who holds the journal takes
// copies, so none is being written now.
func (f Folder) sweep() {
	parts, _ := filepath.Glob(filepath.Join(f.path, ".*"+ending+".part-*"))
	for _, p := range parts {
		os.Remove(p)
	}
}

// at names a copy taken now; if one of this second is there already, a later one.
func (f Folder) at(now time.Time, have []Copy) Copy {
	at := now.UTC().Truncate(time.Second)
	for slices.ContainsFunc(have, func(c Copy) bool { return c.At.Equal(at) }) {
		at = at.Add(time.Second)
	}
	return Copy{Path: filepath.Join(f.path, at.Format(stamp)+ending), At: at}
}

// prune removes the copies not worth keeping.
func (f Folder) prune(now time.Time) ([]Copy, error) {
	have, err := f.List()
	if err != nil {
		return nil, err
	}
	at := make([]time.Time, len(have))
	for i, c := range have {
		at[i] = c.At
	}
	var removed []Copy
	for i, keep := range Kept(now, at) {
		if keep {
			continue
		}
		if err := os.Remove(have[i].Path); err != nil {
			return removed, failing(err)
		}
		removed = append(removed, have[i])
	}
	return removed, nil
}

// Restore puts a copy, or any other sound journal, in the place of the journal, which
// must not be open. What lay there is kept beside it under the name that comes back.
// Originals of photographs that are missing beside the journal come back too, as far as they can be had.
func (f Folder) Restore(from string, now time.Time) (kept string, err error) {
	if kept, err = store.Replace(f.journal, from, strings.TrimSuffix(f.journal, ending)+".before-"+now.UTC().Format(stamp)+ending); err == nil {
		_, _ = f.Photos().LinkTo(album.Beside(f.journal))
	}
	return kept, err
}

// Extract makes a journal of a copy, or of any other sound journal, in a new file, with the
// originals of photographs as far as they can be had.
func (f Folder) Extract(from, to string) error {
	err := store.Restore(from, to)
	if err == nil {
		_, _ = f.Photos().LinkTo(album.Beside(to))
		_, _ = album.Beside(from).LinkTo(album.Beside(to)) // of a copy laid elsewhere by hand
	}
	return err
}

func failing(err error) error {
	k := journal.IO
	if errors.Is(err, fs.ErrPermission) {
		k = journal.ReadOnly
	}
	return &journal.Error{Op: "back up journal", Kind: k, Err: err}
}
