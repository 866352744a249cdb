package store

import (
	"bytes"
	"io"
	"os"
)

// walker looks at every page that a file's newest header leads to, reading the
// file itself and not bbolt's mapping of it, so that it can survive any damage.
// It proves what bbolt takes for granted: pages and elements lie within their
// bounds, no page is reached twice or also free, keys are in order. Values are
// not read, apart from those that hold buckets.
type walker struct {
	f        io.ReaderAt
	pageSize uint64
	pages    uint64
	seen     []bool   // by page
	bufs     [][]byte // one page each, by depth
}

// page is a page, of which only the beginning has been read.
type page struct {
	id    uint64
	flags uint16
	count int
	size  uint64 // with its overflow
	at    int64  // where it lies in the file
	b     []byte // its beginning
}

const maxDepth = 64 // far deeper than bbolt can grow within 2^64 pages of 2 keys

// walkFile is walkPages for a file as it is now.
func walkFile(f *os.File) error {
	info, err := f.Stat()
	if err != nil {
		return err
	}
	return walkPages(f, info.Size())
}

// walkPages returns nil if the structure of the file is sound. Pages that are
// neither used nor free only waste room and are left to Check.
func walkPages(f io.ReaderAt, size int64) error {
	a, b, _ := headers(f, size)
	h, ok := newest(a, b)
	if !ok {
		return damaged("both header pages are damaged")
	}
	p := uint64(h.pageSize)
	switch {
	case h.pages < 4 || h.pages > uint64(size)/p:
		return damaged("cut off: the file has %d pages of the %d it needs", uint64(size)/p, h.pages)
	case h.root < 2 || h.root >= h.pages:
		return damaged("the first page of the records lies outside the file")
	}
	w := newWalker(f, p, h.pages)
	w.seen[0], w.seen[1] = true, true
	if err := w.freelist(h.freelist); err != nil {
		return err
	}
	return w.tree(h.root, nil, nil, 0)
}

func newWalker(f io.ReaderAt, pageSize, pages uint64) *walker {
	return &walker{f: f, pageSize: pageSize, pages: pages, seen: make([]bool, pages), bufs: make([][]byte, maxDepth+1)}
}

// page reads the beginning of a page and marks it, with its overflow, as seen.
func (w *walker) page(id uint64, depth int) (page, error) {
	if depth > maxDepth {
		return page{}, damaged("page %d lies too deep", id)
	}
	if id < 2 || id >= w.pages {
		return page{}, damaged("page %d lies outside the file", id)
	}
	if w.bufs[depth] == nil {
		w.bufs[depth] = make([]byte, w.pageSize)
	}
	p := page{id: id, at: int64(id * w.pageSize), b: w.bufs[depth]}
	if _, err := w.f.ReadAt(p.b, p.at); err != nil {
		return page{}, err
	}
	p.flags, p.count = native.Uint16(p.b[8:]), int(native.Uint16(p.b[10:]))
	over := uint64(native.Uint32(p.b[12:]))
	if native.Uint64(p.b) != id {
		return page{}, damaged("page %d says it is page %d", id, native.Uint64(p.b))
	}
	if over >= w.pages-id {
		return page{}, damaged("page %d runs out of the file", id)
	}
	p.size = (over + 1) * w.pageSize
	for i := id; i <= id+over; i++ {
		if w.seen[i] {
			return page{}, damaged("page %d is used twice", i)
		}
		w.seen[i] = true
	}
	return p, nil
}

// bytes returns a part of a page, which must lie within it.
func (w *walker) bytes(p page, from, n uint64) ([]byte, error) {
	if from+n <= uint64(len(p.b)) {
		return p.b[from : from+n], nil
	}
	b := make([]byte, n)
	_, err := w.f.ReadAt(b, p.at+int64(from))
	return b, err
}

// freelist marks the free pages.
func (w *walker) freelist(id uint64) error {
	if id == noFreelist {
		return nil
	}
	p, err := w.page(id, 0)
	if err != nil {
		return err
	}
	if p.flags != freelistPage {
		return damaged("page %d is not the list of free pages", id)
	}
	from, n := uint64(pageHeader), uint64(p.count)
	if n == 0xFFFF { // more than fit in count: the number itself comes first
		n, from = native.Uint64(p.b[from:]), from+8
	}
	if n > (p.size-from)/8 {
		return damaged("the list of free pages is longer than its page")
	}
	ids, err := w.bytes(p, from, 8*n)
	if err != nil {
		return err
	}
	for ; len(ids) > 0; ids = ids[8:] {
		free := native.Uint64(ids)
		if free < 2 || free >= w.pages {
			return damaged("free page %d lies outside the file", free)
		}
		if w.seen[free] {
			return damaged("page %d is free twice or in use", free)
		}
		w.seen[free] = true
	}
	return nil
}

// tree walks a branch or leaf page whose keys must lie in [lo, hi).
func (w *walker) tree(id uint64, lo, hi []byte, depth int) error {
	p, err := w.page(id, depth)
	if err != nil {
		return err
	}
	return w.elements(p, lo, hi, depth)
}

// element is one entry of a page: a key with a child or a value.
type element struct {
	key         []byte
	child       uint64 // of a branch
	bucket      bool   // of a leaf: the value is a bucket
	value, size uint64 // of a leaf: where the value lies in the page
}

// elements walks the elements of a page.
func (w *walker) elements(p page, lo, hi []byte, depth int) error {
	switch {
	case p.flags != branchPage && p.flags != leafPage:
		return damaged("page %d is of no known sort", p.id)
	case p.flags == branchPage && p.count == 0:
		return damaged("page %d leads nowhere", p.id)
	case uint64(pageHeader+p.count*elementSize) > p.size:
		return damaged("page %d holds more elements than fit", p.id)
	}
	table, err := w.bytes(p, pageHeader, uint64(p.count)*elementSize)
	if err != nil {
		return err
	}
	// A child or bucket is walked once the next key is known: it ends there.
	var last element
	for i := range p.count {
		e, err := w.element(p, table, i)
		switch {
		case err != nil:
			return err
		case len(e.key) == 0 && (p.flags == leafPage || i > 0):
			return damaged("page %d: element %d has no key", p.id, i)
		case i == 0 && bytes.Compare(e.key, lo) < 0,
			i > 0 && bytes.Compare(e.key, last.key) <= 0,
			hi != nil && bytes.Compare(e.key, hi) >= 0:
			return damaged("page %d: element %d is out of order", p.id, i)
		}
		if i > 0 {
			if err := w.below(p, last, e.key, depth); err != nil {
				return err
			}
		}
		last = e
	}
	if p.count == 0 {
		return nil
	}
	return w.below(p, last, hi, depth)
}

// element reads element i of a page.
func (w *walker) element(p page, table []byte, i int) (element, error) {
	at := uint64(pageHeader + i*elementSize)
	b := table[i*elementSize:]
	var e element
	var pos, ksize uint64
	if p.flags == branchPage {
		pos, ksize = uint64(native.Uint32(b)), uint64(native.Uint32(b[4:]))
		e.child = native.Uint64(b[8:])
	} else {
		e.bucket = native.Uint32(b)&1 != 0
		pos, ksize, e.size = uint64(native.Uint32(b[4:])), uint64(native.Uint32(b[8:])), uint64(native.Uint32(b[12:]))
	}
	if pos < uint64(p.count-i)*elementSize || at+pos+ksize+e.size > p.size {
		return e, damaged("page %d: element %d lies outside its page", p.id, i)
	}
	e.value = at + pos + ksize
	var err error
	e.key, err = w.bytes(p, at+pos, ksize)
	return e, err
}

// below walks what an element leads to.
func (w *walker) below(p page, e element, hi []byte, depth int) error {
	if p.flags == branchPage {
		return w.tree(e.child, e.key, hi, depth+1)
	}
	if !e.bucket {
		return nil
	}
	v, err := w.bytes(p, e.value, e.size)
	if err != nil {
		return err
	}
	return w.bucket(p.id, v, depth)
}

// bucket walks a bucket within a value: its first page's number and sequence,
// then, if the number is 0, that page itself.
func (w *walker) bucket(id uint64, v []byte, depth int) error {
	if len(v) < 16 {
		return damaged("page %d: a bucket is too short", id)
	}
	if root := native.Uint64(v); root != 0 {
		return w.tree(root, nil, nil, depth+1)
	}
	b := v[16:]
	if len(b) < pageHeader {
		return damaged("page %d: a bucket is too short", id)
	}
	p := page{id: id, flags: native.Uint16(b[8:]), count: int(native.Uint16(b[10:])), size: uint64(len(b)), b: b}
	if p.flags != leafPage {
		return damaged("page %d: a bucket within holds no leaf", id)
	}
	if depth >= maxDepth {
		return damaged("page %d lies too deep", id)
	}
	return w.elements(p, nil, nil, depth+1)
}
