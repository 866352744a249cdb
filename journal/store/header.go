package store

import (
	"encoding/binary"
	"hash/fnv"
	"io"
	"os"

	"gloamline/journal"
)

// The layout of bbolt's pages, file version 2, in the byte order of the
// machine. A page begins with id u64, flags u16, count u16, overflow u32.
const (
	pageHeader  = 16
	elementSize = 16 // of a branch or leaf element
	headerSize  = 64 // of the header within pages 0 and 1

	branchPage   = 0x01
	leafPage     = 0x02
	metaPage     = 0x04
	freelistPage = 0x10

	boltMagic   = 0xED0CDAED
	boltVersion = 2

	noFreelist = ^uint64(0)

	minPageSize = 1 << 10
	maxPageSize = 1 << 24
)

var native = binary.NativeEndian

// header is what bbolt keeps in pages 0 and 1, in turn.
type header struct {
	magic, version, pageSize uint32
	root, freelist, pages    uint64 // pages counts those in use, from 0
	tx                       uint64
	sum                      bool // the sum agrees
}

// readHeader reads the header of a page in b.
func readHeader(b []byte) header {
	b = b[pageHeader : pageHeader+headerSize]
	h := fnv.New64a()
	h.Write(b[:56])
	return header{
		magic:    native.Uint32(b),
		version:  native.Uint32(b[4:]),
		pageSize: native.Uint32(b[8:]),
		root:     native.Uint64(b[16:]),
		freelist: native.Uint64(b[32:]),
		pages:    native.Uint64(b[40:]),
		tx:       native.Uint64(b[48:]),
		sum:      native.Uint64(b[56:]) == h.Sum64(),
	}
}

func (h header) whole() bool {
	p := h.pageSize
	return h.magic == boltMagic && h.sum && p >= minPageSize && p <= maxPageSize && p&(p-1) == 0
}

// headers finds the two headers of a file. The second lies one page on, so its
// place is searched when the first is damaged. found says whether anything in
// the file looks like a header at all.
func headers(f io.ReaderAt, size int64) (first, second header, found bool) {
	at := func(off int64) (header, bool) {
		b := make([]byte, pageHeader+headerSize)
		if _, err := f.ReadAt(b, off); err != nil {
			return header{}, false
		}
		h := readHeader(b)
		return h, h.magic == boltMagic
	}
	first, found = at(0)
	if first.whole() {
		second, _ = at(int64(first.pageSize))
		return first, second, true
	}
	for p := int64(minPageSize); p <= maxPageSize && p < size; p *= 2 {
		if h, ok := at(p); ok {
			second, found = h, true
			if h.whole() && int64(h.pageSize) == p {
				break
			}
		}
	}
	return first, second, found
}

// newest returns the header that counts: the later whole one.
func newest(a, b header) (header, bool) {
	switch {
	case a.whole() && b.whole():
		if b.tx > a.tx {
			return b, true
		}
		return a, true
	case a.whole():
		return a, true
	}
	return b, b.whole()
}

// precheck says what is to be said about a file before bbolt touches it.
func precheck(op, path string) error {
	info, err := os.Stat(path)
	if err != nil {
		return readError(op, err)
	}
	switch {
	case info.IsDir():
		return failing(op, journal.Foreign, "a folder, not a journal")
	case !info.Mode().IsRegular():
		return failing(op, journal.Foreign, "not a plain file")
	case info.Size() == 0:
		return failing(op, journal.Foreign, "an empty file")
	}
	f, err := os.Open(path)
	if err != nil {
		return readError(op, err)
	}
	defer f.Close()
	a, b, found := headers(f, info.Size())
	if !found {
		return failing(op, journal.Foreign, "not a journal")
	}
	h, ok := newest(a, b)
	switch {
	case !ok:
		return classify(op, damaged("both header pages are damaged"))
	case h.version > boltVersion:
		return failing(op, journal.Newer, "a file of bbolt's version %d, this program knows %d", h.version, boltVersion)
	case h.version != boltVersion:
		return classify(op, damaged("a file of bbolt's version %d", h.version))
	case info.Size() < int64(h.pageSize)*2:
		return classify(op, damaged("cut off after %d bytes", info.Size()))
	}
	return nil
}

// readError classes an error met in reading: a file that may not even be read
// is not one that is "read-only".
func readError(op string, err error) error {
	if k := kindOf(err); k != journal.ReadOnly {
		return classify(op, err)
	}
	return &journal.Error{Op: op, Kind: journal.IO, Err: err}
}
