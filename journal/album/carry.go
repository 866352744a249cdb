package album

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Original is one kept original.
type Original struct {
	Sum    string
	Ending string // with the dot
	Path   string
	Bytes  int64
}

// Name is what it is called in any album, with slashes: ab/abcd….jpg.
func (o Original) Name() string { return o.Sum[:2] + "/" + o.Sum + o.Ending }

// All lists the originals in order of their sums; none if there is no folder. What is
// not ours is left out.
func (a *Album) All() (out []Original, err error) {
	err = filepath.WalkDir(a.dir, func(path string, d fs.DirEntry, err error) error {
		switch {
		case path == a.dir && errors.Is(err, fs.ErrNotExist): // a journal without photos
			return nil
		case err != nil:
			return err
		}
		o, ok := originalNamed(d.Name())
		if !ok || !d.Type().IsRegular() {
			return nil
		}
		if info, err := d.Info(); err == nil {
			o.Bytes = info.Size()
		}
		o.Path = path
		out = append(out, o)
		return nil
	})
	slices.SortFunc(out, func(a, b Original) int { return strings.Compare(a.Sum, b.Sum) })
	return out, err
}

// originalNamed reads the name of a file: its sum and its ending.
func originalNamed(name string) (Original, bool) {
	ending := filepath.Ext(name)
	o := Original{Sum: strings.TrimSuffix(name, ending), Ending: ending}
	known := false
	for _, e := range endings {
		known = known || e == ending
	}
	return o, known && isSum(o.Sum)
}

// Damaged lists the originals whose bytes are not those of their name, having read all.
func (a *Album) Damaged() ([]Original, error) {
	_, bad, err := a.Check(func() error { return nil })
	return bad, err
}

// Check is Damaged, and tells how many originals were read; halt is asked before each, and ends reading
// with an error.
func (a *Album) Check(halt func() error) (read int, bad []Original, err error) {
	all, err := a.All()
	if err != nil {
		return 0, nil, err
	}
	for _, o := range all {
		if err := halt(); err != nil {
			return read, bad, err
		}
		if sumOf(o.Path) != o.Sum {
			bad = append(bad, o)
		}
		read++
	}
	return read, bad, nil
}

// CopyTo copies the originals that another album lacks and tells how many there were.
func (a *Album) CopyTo(b *Album) (copied int, err error) {
	return a.carry(b, func(o Original) (bool, error) {
		if have, ok := b.Find(o.Sum); ok && sumOf(have) == o.Sum {
			return false, nil
		}
		return true, b.copy(o.Path, o.Sum, o.Ending)
	})
}

// LinkTo gives the originals that another album lacks a second name there, and tells how
// many there were: they then take no room of their own, and stay when the first name is
// removed. Where the disk knows no links, or the other album is on another disk, they are copied. An
// original that is there is not read again.
func (a *Album) LinkTo(b *Album) (added int, err error) {
	return a.carry(b, func(o Original) (bool, error) {
		if _, ok := b.Find(o.Sum); ok {
			return false, nil
		}
		to := b.path(o.Sum, o.Ending)
		if err := os.MkdirAll(filepath.Dir(to), 0o700); err != nil {
			return false, err
		}
		if err := os.Link(o.Path, to); err == nil || errors.Is(err, fs.ErrExist) {
			return err == nil, nil
		}
		return true, b.copy(o.Path, o.Sum, o.Ending)
	})
}

// carry offers every original to do. An original that fails does not keep the others: the
// errors come back together.
func (a *Album) carry(b *Album, do func(Original) (bool, error)) (n int, err error) {
	all, err := a.All()
	for _, o := range all {
		added, e := do(o)
		if e != nil {
			err = errors.Join(err, e)
		} else if added {
			n++
		}
	}
	return n, err
}

// Lay keeps what a reader gives under the name that Original.Name gave it elsewhere, and
// reports whether the album lacked it. Bytes that are not those of the name are refused
// (ErrChanged), as is any other name (ErrSum).
func (a *Album) Lay(from io.Reader, name string) (added bool, err error) {
	o, ok := originalNamed(name[strings.LastIndexByte(name, '/')+1:])
	if !ok || o.Name() != name {
		return false, ErrSum
	}
	if have, ok := a.Find(o.Sum); ok && sumOf(have) == o.Sum {
		return false, nil
	}
	return true, a.lay(from, name, o.Sum, o.Ending)
}
