package state

import (
	"errors"
	"os"
	"path/filepath"
	"sync/atomic"
	"time"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/archive"
	"gloamline/journal/backup"
	"gloamline/journal/store"
)

// Keep is what can be done with the journal as a whole: its backups, archives, another
// copy of it, a check. What reads whole files takes time: those functions touch neither the
// desk nor the open journal and may run on any goroutine; they read a copy, Frozen.
type Keep struct {
	d      *Desk
	store  *store.Store
	folder backup.Folder
}

// NewKeep looks after the journal that lies in a file.
func NewKeep(d *Desk, s *store.Store) *Keep { return &Keep{d, s, backup.Of(s.Path())} }

// Path is the journal's file.
func (k *Keep) Path() string { return k.store.Path() }

// Backup is one copy that was taken at a start.
type Backup = backup.Copy

// Backups lists them, newest first. Nothing in them is read.
func (k *Keep) Backups() ([]Backup, error) { return k.folder.List() }

// HasPhotos reports whether originals of photographs are kept beside the journal.
func (k *Keep) HasPhotos() bool {
	all, err := album.Beside(k.Path()).All()
	return err == nil && len(all) > 0
}

// Frozen is the journal as it stands at one moment. It is taken on the goroutine of the desk
// and read on any, one at a time.
type Frozen struct {
	snapshot *store.Snapshot
	dir      string
	open     *store.Store
}

// Freeze takes one. Whoever takes one opens it soon: until then a change that needs a larger
// file waits.
func (k *Keep) Freeze() (*Frozen, error) {
	n, err := k.store.Snapshot()
	if err != nil {
		return nil, err
	}
	return &Frozen{snapshot: n}, nil
}

// Open lays the journal into a folder of its own and opens it for reading. After an error
// nothing is left of it.
func (f *Frozen) Open() (journal.Store, error) {
	s, err := f.read()
	if err != nil {
		f.Close()
		return nil, err
	}
	return s, nil
}

func (f *Frozen) read() (*store.Store, error) {
	if f.open != nil {
		return f.open, nil
	}
	defer f.snapshot.Close()
	dir, err := os.MkdirTemp("", "gloamline-*")
	if err != nil {
		return nil, &journal.Error{Op: "look at journal", Kind: ioKind(err), Err: err}
	}
	f.dir = dir
	path := filepath.Join(dir, store.FileName)
	if err := f.snapshot.Save(path); err != nil {
		return nil, err
	}
	f.open, err = store.Open(path, store.Options{ReadOnly: true})
	return f.open, err
}

// Close ends reading and takes the folder away. It may be called twice.
func (f *Frozen) Close() {
	f.snapshot.Close()
	if f.open != nil {
		_ = f.open.Close()
		f.open = nil
	}
	if f.dir != "" {
		_ = os.RemoveAll(f.dir)
		f.dir = ""
	}
}

// Reading is the journal as it stands at one moment, read whole by one piece of work. It is taken and closed on
// any goroutine but read on one. A change that needs a larger file waits for its end, and so does closing the
// journal: it is for the time while a dialog is open.
type Reading struct {
	store *store.Store
	stop  atomic.Bool
}

// ErrStopped is why a reading came to no end.
var ErrStopped = errors.New("reading was stopped")

// Read begins one, on the goroutine of the desk.
func (k *Keep) Read() (*Reading, error) {
	n, err := k.store.Snapshot()
	if err != nil {
		return nil, err
	}
	r := &Reading{}
	r.store = n.Reader(r.halt)
	return r, nil
}

// Stop ends the reading soon, from any goroutine; it then fails with ErrStopped.
func (r *Reading) Stop() { r.stop.Store(true) }

func (r *Reading) halt() error {
	if r.stop.Load() {
		return ErrStopped
	}
	return nil
}

// Close gives the journal back; what reads to its end does so by itself.
func (r *Reading) Close() { _ = r.store.Close() }

// Seen is what a copy of the journal holds, and how it differs from the journal.
type Seen struct {
	Path    string
	Archive bool            // of text, which is no journal yet
	Outline journal.Outline // proved, every value
	Photos  int             // that come with an archive
	// Differs has the copy as the first and the journal as the second.
	Differs journal.Difference
}

// See reads a backup, a journal or an archive, proves it, and holds it against the journal,
// which was frozen and opened. One goroutine at a time may use ours.
func See(path string, ours journal.Store) (Seen, error) {
	v := Seen{Path: path}
	form, err := archive.FormOf(path)
	if err != nil {
		return v, err
	}
	read := path
	if v.Archive = form != archive.NoArchive; v.Archive {
		if v.Outline, v.Photos, err = archive.OutlineOf(path); err != nil {
			return v, err
		}
		dir, err := os.MkdirTemp("", "gloamline-*")
		if err != nil {
			return v, &journal.Error{Op: "look at archive", Kind: journal.IO, Err: err}
		}
		defer os.RemoveAll(dir)
		read = filepath.Join(dir, store.FileName)
		if err := archive.RestoreFile(path, read); err != nil {
			return v, err
		}
	} else if v.Outline, err = store.OutlineOf(path); err != nil {
		return v, err
	}
	theirs, err := store.Open(read, store.Options{ReadOnly: true})
	if err != nil {
		return v, err
	}
	defer theirs.Close()
	v.Differs, err = journal.Differ(theirs, ours)
	return v, err
}

// SeeOne is See for one file.
func SeeOne(path string, f *Frozen) (Seen, error) {
	ours, err := f.Open()
	if err != nil {
		return Seen{Path: path}, err
	}
	defer f.Close()
	return See(path, ours)
}

// Extract makes a journal of a backup, another journal or an archive in a new file, with its photographs.
func (k *Keep) Extract(from, to string) error { return Extract(k.Path(), from, to) }

// Extract is Keep.Extract where no journal is open: of is the journal whose backups these are.
func Extract(of, from, to string) error {
	form, err := archive.FormOf(from)
	switch {
	case err != nil:
		return err
	case form != archive.NoArchive:
		return archive.RestoreFile(from, to)
	}
	return backup.Of(of).Extract(from, to)
}

// PutBack puts a backup, another journal or an archive in the place of the journal at path,
// which must not be open, and returns the name under which what lay there is kept.
func PutBack(path, from string, now time.Time) (kept string, err error) {
	form, err := archive.FormOf(from)
	if err != nil {
		return "", err
	}
	if form != archive.NoArchive {
		dir, err := os.MkdirTemp(filepath.Dir(path), ".restore-*")
		if err != nil {
			return "", &journal.Error{Op: "restore journal", Kind: ioKind(err), Err: err}
		}
		defer os.RemoveAll(dir)
		made := filepath.Join(dir, store.FileName)
		if err := archive.RestoreFile(from, made); err != nil {
			return "", err
		}
		from = made
	}
	if kept, err = backup.Of(path).Restore(from, now); err == nil {
		_, _ = album.Beside(from).LinkTo(album.Beside(path))
	}
	return kept, err
}

func ioKind(err error) journal.Fail {
	if errors.Is(err, os.ErrPermission) {
		return journal.ReadOnly
	}
	return journal.IO
}

// Archived is what was written into an archive.
type Archived struct {
	Changes, Records uint64
	Photos           int
	Missing          []string // originals that are damaged and were left out
}

// WriteArchive writes all of the journal into a new file: JSON, or JSON and photographs where
// the name ends in .zip. It closes what was frozen.
func (k *Keep) WriteArchive(f *Frozen, to string, now time.Time) (a Archived, err error) {
	defer f.Close()
	s, err := f.read()
	if err != nil {
		return a, err
	}
	return writeArchive(s, to, album.Beside(k.Path()), now)
}

// Checked is what a check found.
type Checked struct {
	Changes uint64
	Photos  int // read
	Faults  []journal.Fault
	Damaged []string // originals
}

// Sound reports whether nothing is wrong.
func (c Checked) Sound() bool { return len(c.Faults)+len(c.Damaged) == 0 }

// Check reads the whole journal and the originals of its photographs, on any goroutine, and names what is wrong.
// Nothing may be written meanwhile.
func (r *Reading) Check() (c Checked, err error) {
	defer r.Close()
	j, err := journal.Open(r.store, nil)
	if err == nil {
		c.Faults, err = j.Check()
	} else if !errors.Is(err, ErrStopped) { // a history that cannot be read: the store says what is wrong
		c.Faults, err = r.store.Check()
	}
	if err != nil {
		return c, err
	}
	if c.Changes, err = r.store.Last(); err != nil {
		return c, err
	}
	read, bad, err := album.Beside(r.store.Path()).Check(r.halt)
	for _, o := range bad {
		c.Damaged = append(c.Damaged, o.Path)
	}
	c.Photos = read
	return c, err
}
