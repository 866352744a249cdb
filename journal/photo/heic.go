package photo

import (
	"encoding/binary"
	"fmt"
	"io"
)

// Limits of a HEIC file's tables; real ones are some kilobytes long.
const (
	maxMeta = 4 << 20
	maxExif = 1 << 20
)

// heicBlock finds the EXIF block: box meta names an item of type Exif (iinf) and where
// its bytes lie (iloc). ISO/IEC 14496-12:2022, 8.11; 23008-12:2022, annex A.2.1.
func heicBlock(r io.ReaderAt, size int64, p *Photo) ([]byte, error) {
	at := int64(0)
	for range 1000 {
		kind, head, n, err := boxAt(r, at, size)
		if err != nil {
			return nil, fmt.Errorf("the HEIC file is damaged at byte %d: %w", at, err)
		}
		if kind == "meta" {
			if n > maxMeta {
				return nil, fmt.Errorf("the table of contents is %d bytes long, which cannot be", n)
			}
			b := make([]byte, n-head)
			if err := readAt(r, b, at+head); err != nil {
				return nil, fmt.Errorf("the file ends within its table of contents: %w", err)
			}
			return exifItem(r, size, b, p)
		}
		if at += n; at >= size {
			p.warn("the HEIC file has no table of contents")
			return nil, nil
		}
	}
	return nil, fmt.Errorf("more than 1000 boxes: this is no picture")
}

// boxAt reads the head of a box: its kind, the length of the head and of the whole.
func boxAt(r io.ReaderAt, at, size int64) (kind string, head, n int64, err error) {
	var b [16]byte
	if err := readAt(r, b[:8], at); err != nil {
		return "", 0, 0, err
	}
	head, n = 8, int64(binary.BigEndian.Uint32(b[:]))
	switch n {
	case 0:
		n = size - at
	case 1:
		if err := readAt(r, b[8:], at+8); err != nil {
			return "", 0, 0, err
		}
		head, n = 16, int64(binary.BigEndian.Uint64(b[8:]))
	}
	if n < head || n > size-at {
		return "", 0, 0, fmt.Errorf("a box of %d bytes, where %d are left", n, size-at)
	}
	return string(b[4:8]), head, n, nil
}

// bits reads big-endian numbers from a table; past its end it reads zeros and says so.
type bits struct {
	b   []byte
	bad bool
}

func (b *bits) uint(n int) (v uint64) {
	if n > len(b.b) {
		b.bad, b.b = true, nil
		return 0
	}
	for _, x := range b.b[:n] {
		v = v<<8 | uint64(x)
	}
	b.b = b.b[n:]
	return v
}

// box takes the next box of a table.
func (b *bits) box() (kind string, body []byte, ok bool) {
	if len(b.b) < 8 {
		return "", nil, false
	}
	n := binary.BigEndian.Uint32(b.b)
	kind = string(b.b[4:8])
	if n == 0 {
		n = uint32(len(b.b))
	}
	if n < 8 || uint64(n) > uint64(len(b.b)) {
		b.bad = true
		return "", nil, false
	}
	body, b.b = b.b[8:n], b.b[n:]
	return kind, body, true
}

type extent struct{ offset, length uint64 }

func exifItem(r io.ReaderAt, size int64, meta []byte, p *Photo) ([]byte, error) {
	t := &bits{b: meta}
	t.uint(4) // version and flags
	var item uint64
	var found bool
	var iloc, idat []byte
	for {
		kind, body, ok := t.box()
		if !ok {
			break
		}
		switch kind {
		case "iinf":
			item, found = exifID(body)
		case "iloc":
			iloc = body
		case "idat":
			idat = body
		}
	}
	if t.bad {
		p.warn("the table of contents is damaged")
	}
	if !found {
		return nil, nil
	}
	where, inside, ok := locate(iloc, item)
	if !ok || where.length < 4 || where.length > maxExif {
		p.warn("where the EXIF lies cannot be read from the table of contents")
		return nil, nil
	}
	var b []byte
	if inside {
		if where.offset+where.length > uint64(len(idat)) || where.offset > uint64(len(idat)) {
			p.warn("the EXIF lies outside the file")
			return nil, nil
		}
		b = idat[where.offset : where.offset+where.length]
	} else {
		if where.offset > uint64(size) || where.length > uint64(size)-where.offset {
			p.warn("the EXIF lies outside the file")
			return nil, nil
		}
		b = make([]byte, where.length)
		if err := readAt(r, b, int64(where.offset)); err != nil {
			return nil, err
		}
	}
	skip := uint64(binary.BigEndian.Uint32(b)) // from here to the block, commonly over "Exif"
	if skip > uint64(len(b)-4) {
		p.warn("the EXIF begins outside itself")
		return nil, nil
	}
	return b[4+skip:], nil
}

// exifID looks for the item of type Exif.
func exifID(iinf []byte) (id uint64, ok bool) {
	t := &bits{b: iinf}
	if t.uint(4)>>24 == 0 {
		t.uint(2)
	} else {
		t.uint(4)
	}
	for {
		kind, body, more := t.box()
		if !more {
			return 0, false
		}
		e := &bits{b: body}
		version := e.uint(4) >> 24
		if kind != "infe" || version < 2 {
			continue
		}
		if version == 2 {
			id = e.uint(2)
		} else {
			id = e.uint(4)
		}
		e.uint(2)
		if e.uint(4) == 0x45786966 && !e.bad { // Exif
			return id, true
		}
	}
}

// locate reads the place of an item: in the file, or inside box idat. An item in more
// than one piece is not followed.
func locate(iloc []byte, item uint64) (where extent, inside, ok bool) {
	t := &bits{b: iloc}
	version := t.uint(4) >> 24
	sizes := t.uint(2)
	offsetSize, lengthSize, baseSize, indexSize := int(sizes>>12), int(sizes>>8&15), int(sizes>>4&15), int(sizes&15)
	idSize := 2
	if version == 2 {
		idSize = 4
	}
	for n := t.uint(idSize); n > 0 && !t.bad; n-- {
		id, method := t.uint(idSize), uint64(0)
		if version > 0 {
			method = t.uint(2) & 15
		}
		reference := t.uint(2)
		base := t.uint(baseSize)
		pieces := t.uint(2)
		var e extent
		for range pieces {
			if version > 0 {
				t.uint(indexSize)
			}
			e = extent{base + t.uint(offsetSize), t.uint(lengthSize)}
			if t.bad {
				return extent{}, false, false
			}
		}
		if id == item {
			return e, method == 1, pieces == 1 && reference == 0 && method < 2
		}
	}
	return extent{}, false, false
}
