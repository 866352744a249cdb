package store

import (
	"bytes"
	"encoding/binary"

	"gloamline/journal"
)

// reached is which pages of a damaged file its newest header still leads to.
type reached struct {
	pageSize int
	pages    map[uint64]bool
	keys     map[journal.Ref]bool // records that these pages have a key of
	tops     map[string]bool      // the top buckets that were met
	sound    bool                 // nothing was wrong on the way
	headers  int                  // how many of the two are whole
	tail     bool                 // every change that these pages ever led to was met with its key
	last     uint64               // the highest number of a change that they have a key of
}

// reached reports whether the byte at an offset lies in such a page.
func (r reached) reached(at int) bool {
	return r.pageSize > 0 && r.pages[uint64(at/r.pageSize)]
}

// reach follows the pages as far as they make sense. Where one does not, it goes on
// with the next.
func reach(b []byte) reached {
	r := reached{pages: map[uint64]bool{}, keys: map[journal.Ref]bool{}, tops: map[string]bool{}, tail: true}
	f := bytes.NewReader(b)
	first, second, _ := headers(f, int64(len(b)))
	h, ok := newest(first, second)
	if !ok {
		r.tail = false
		return r
	}
	for _, h := range []header{first, second} {
		if h.whole() {
			r.headers++
		}
	}
	r.pageSize = int(h.pageSize)
	r.sound = first.whole() && second.whole() && walkPages(f, int64(len(b))) == nil
	// A file cut short says it has more pages than are there.
	w := newWalker(f, uint64(h.pageSize), min(h.pages, uint64(len(b))/uint64(h.pageSize)))
	r.tree(w, h.root, nil, 0)
	for _, name := range topBuckets {
		r.sound = r.sound && r.tops[string(name)]
	}
	r.tail = r.tail && r.tops[string(bucketChanges)]
	return r
}

// tree follows one page; path names the buckets above it.
func (r *reached) tree(w *walker, id uint64, path []string, depth int) {
	p, err := page{}, error(nil)
	if id < uint64(len(w.seen)) {
		p, err = w.page(id, depth)
	}
	if err != nil || p.size == 0 {
		r.lose(path)
		return
	}
	for i := id; i < id+p.size/w.pageSize; i++ {
		r.pages[i] = true
	}
	r.elements(w, p, path, depth)
}

func (r *reached) elements(w *walker, p page, path []string, depth int) {
	if p.flags != branchPage && p.flags != leafPage || uint64(pageHeader+p.count*elementSize) > p.size {
		r.lose(path)
		return
	}
	table, err := w.bytes(p, pageHeader, uint64(p.count)*elementSize)
	if err != nil {
		r.lose(path)
		return
	}
	for i := range p.count {
		e, err := w.element(p, table, i)
		if err != nil {
			r.lose(path)
			continue
		}
		switch {
		case p.flags == branchPage:
			r.tree(w, e.child, path, depth+1)
		case e.bucket:
			r.bucket(w, p, e, append(path[:len(path):len(path)], string(e.key)), depth)
		default:
			r.key(path, e.key)
		}
	}
}

// bucket follows a bucket, which has a page of its own or lies in its value.
func (r *reached) bucket(w *walker, p page, e element, path []string, depth int) {
	if len(path) == 1 {
		r.tops[path[0]] = true
	}
	v, err := w.bytes(p, e.value, e.size)
	if err != nil || len(v) < 16+pageHeader && (len(v) < 16 || native.Uint64(v) == 0) || depth >= maxDepth {
		r.lose(path)
		return
	}
	if root := native.Uint64(v); root != 0 {
		r.tree(w, root, path, depth+1)
		return
	}
	in := v[16:]
	r.elements(w, page{id: p.id, flags: native.Uint16(in[8:]), count: int(native.Uint16(in[10:])), size: uint64(len(in)), b: in}, path, depth+1)
}

// lose notes that a part of what lies below path cannot be followed.
func (r *reached) lose(path []string) {
	if len(path) == 0 || path[0] == string(bucketChanges) {
		r.tail = false
	}
}

// key notes that there was a record, whether or not its value can be read.
func (r *reached) key(path []string, key []byte) {
	if len(path) == 1 && path[0] == string(bucketChanges) && len(key) == 8 {
		r.last = max(r.last, binary.BigEndian.Uint64(key))
	}
	if len(path) != 2 {
		return
	}
	switch path[0] {
	case string(bucketRecords):
		if ref, ok := recordRef(journal.Kind(path[1]), key); ok {
			r.keys[ref] = true
		}
	case string(bucketTrips):
		var trip journal.ID
		if copy(trip[:], path[1]) != len(path[1]) || len(path[1]) != len(trip) {
			return
		}
		if ref, ok := entryRef(trip, key); ok {
			r.keys[ref] = true
		}
	}
}
