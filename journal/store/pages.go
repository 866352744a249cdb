package store

import (
	"bytes"
	"io"
	"os"
)

// walker looks at every page that a file's newest header leads to, reading the
// file itself and not bbolt's mapping of it, so that it can survive any damage.
// It proves what bbolt takes for granted: pages and elements lie within their
// bounds, no page is reached twice or also free, keys are in order.
type walker struct {
	f        io.ReaderAt
	pageSize uint64
	pages    uint64
	seen     []bool // by page
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
	w := &walker{f: f, pageSize: p, pages: h.pages, seen: make([]bool, h.pages)}
	w.seen[0], w.seen[1] = true, true
	if err := w.freelist(h.freelist); err != nil {
		return err
	}
	return w.tree(h.root, nil, nil, 0)
}

// page reads a page with its overflow and marks it as seen.
func (w *walker) page(id uint64) (b []byte, flags, count uint16, err error) {
	if id < 2 || id >= w.pages {
		return nil, 0, 0, damaged("page %d lies outside the file", id)
	}
	b = make([]byte, w.pageSize)
	if _, err := w.f.ReadAt(b, int64(id*w.pageSize)); err != nil {
		return nil, 0, 0, err
	}
	flags, count = native.Uint16(b[8:]), native.Uint16(b[10:])
	over := uint64(native.Uint32(b[12:]))
	if native.Uint64(b) != id {
		return nil, 0, 0, damaged("page %d says it is page %d", id, native.Uint64(b))
	}
	if over >= w.pages-id {
		return nil, 0, 0, damaged("page %d runs out of the file", id)
	}
	for i := id; i <= id+over; i++ {
		if w.seen[i] {
			return nil, 0, 0, damaged("page %d is used twice", i)
		}
		w.seen[i] = true
	}
	if over > 0 {
		rest := make([]byte, (over+1)*w.pageSize)
		if _, err := w.f.ReadAt(rest, int64(id*w.pageSize)); err != nil {
			return nil, 0, 0, err
		}
		b = rest
	}
	return b, flags, count, nil
}

// freelist marks the free pages.
func (w *walker) freelist(id uint64) error {
	if id == noFreelist {
		return nil
	}
	b, flags, count, err := w.page(id)
	if err != nil {
		return err
	}
	if flags != freelistPage {
		return damaged("page %d is not the list of free pages", id)
	}
	ids, n := b[pageHeader:], uint64(count)
	if count == 0xFFFF { // more than fit in count: the number itself comes first
		n, ids = native.Uint64(ids), ids[8:]
	}
	if n > uint64(len(ids))/8 {
		return damaged("the list of free pages is longer than its page")
	}
	for i := range n {
		free := native.Uint64(ids[8*i:])
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
	if depth > maxDepth {
		return damaged("page %d lies too deep", id)
	}
	b, flags, count, err := w.page(id)
	if err != nil {
		return err
	}
	return w.elements(b, id, flags, count, lo, hi, depth)
}

// elements walks the elements of a page in b.
func (w *walker) elements(b []byte, id uint64, flags, count uint16, lo, hi []byte, depth int) error {
	if flags != branchPage && flags != leafPage {
		return damaged("page %d is of no known sort", id)
	}
	if flags == branchPage && count == 0 {
		return damaged("page %d leads nowhere", id)
	}
	if pageHeader+int(count)*elementSize > len(b) {
		return damaged("page %d holds more elements than fit", id)
	}
	keys := make([][]byte, count)
	for i := range keys {
		at := pageHeader + i*elementSize
		e := b[at:]
		pos, ksize, vsize := uint64(native.Uint32(e)), uint64(native.Uint32(e[4:])), uint64(0)
		if flags == leafPage {
			pos, ksize, vsize = uint64(native.Uint32(e[4:])), uint64(native.Uint32(e[8:])), uint64(native.Uint32(e[12:]))
		}
		if pos < uint64(int(count)-i)*elementSize || pos+ksize+vsize > uint64(len(b)-at) {
			return damaged("page %d: element %d lies outside its page", id, i)
		}
		key := e[pos : pos+ksize]
		switch {
		case len(key) == 0 && (flags == leafPage || i > 0):
			return damaged("page %d: element %d has no key", id, i)
		case i == 0 && bytes.Compare(key, lo) < 0,
			i > 0 && bytes.Compare(key, keys[i-1]) <= 0,
			hi != nil && bytes.Compare(key, hi) >= 0:
			return damaged("page %d: element %d is out of order", id, i)
		}
		keys[i] = key
		if flags == leafPage && native.Uint32(e)&1 != 0 {
			if err := w.bucket(e[pos+ksize:pos+ksize+vsize], id, depth); err != nil {
				return err
			}
		}
	}
	if flags == leafPage {
		return nil
	}
	for i, key := range keys {
		end := hi
		if i+1 < len(keys) {
			end = keys[i+1]
		}
		child := native.Uint64(b[pageHeader+i*elementSize+8:])
		if err := w.tree(child, key, end, depth+1); err != nil {
			return err
		}
	}
	return nil
}

// bucket walks a bucket within a value: its first page's number and sequence,
// then, if the number is 0, that page itself.
func (w *walker) bucket(v []byte, id uint64, depth int) error {
	if len(v) < 16 {
		return damaged("page %d: a bucket is too short", id)
	}
	if root := native.Uint64(v); root != 0 {
		return w.tree(root, nil, nil, depth+1)
	}
	page := v[16:]
	if len(page) < pageHeader {
		return damaged("page %d: a bucket is too short", id)
	}
	flags, count := native.Uint16(page[8:]), native.Uint16(page[10:])
	if flags != leafPage {
		return damaged("page %d: a bucket within holds no leaf", id)
	}
	return w.elements(page, id, flags, count, nil, nil, depth+1)
}
