package photo

import (
	"encoding/binary"
	"fmt"
	"math"
	"strings"
)

// directory is one of the tables of tags.
type directory uint8

const (
	mainDir directory = iota
	exifDir
	gpsDir
)

// Limits of an EXIF block: real directories hold some dozens of tags, and no value that
// is used here is longer than a line of text.
const (
	maxTags  = 1000
	maxValue = 4096
)

type tag struct {
	dir directory
	id  uint16
}

// Types of values, by the TIFF numbers.
const (
	typeByte = 1 + iota
	typeText
	typeShort
	typeLong
	typeRational
	_
	typeUndefined
	_
	_
	typeSignedRational
)

var typeSize = map[uint16]uint64{typeByte: 1, typeText: 1, typeShort: 2, typeLong: 4, typeRational: 8, 6: 1, typeUndefined: 1, 8: 2, 9: 4, typeSignedRational: 8, 11: 4, 12: 8}

// value is a tag's bytes as they stand in the block.
type value struct {
	typ   uint16
	count int
	data  []byte
	order binary.ByteOrder
}

// tiff is an EXIF block being read.
type tiff struct {
	block []byte
	order binary.ByteOrder
	tags  map[tag]value
	seen  map[uint32]bool // directories, by offset
	photo *Photo
}

// parseTIFF reads the tags in use from a block. Each directory is read once, whoever
// points to it; the thumbnail's and the makers' are never entered.
func parseTIFF(block []byte, p *Photo) *tiff {
	t := &tiff{block: block, tags: map[tag]value{}, seen: map[uint32]bool{}, photo: p}
	if len(block) < 8 {
		p.warn("the EXIF is cut off after %d bytes", len(block))
		return t
	}
	switch string(block[:2]) {
	case "II":
		t.order = binary.LittleEndian
	case "MM":
		t.order = binary.BigEndian
	default:
		p.warn("the EXIF does not say in which order its bytes stand")
		return t
	}
	if t.order.Uint16(block[2:]) != 42 {
		p.warn("the EXIF lacks its mark; read all the same")
	}
	t.directory(t.order.Uint32(block[4:]), mainDir)
	return t
}

func (t *tiff) directory(at uint32, dir directory) {
	if t.seen[at] {
		t.photo.warn("the EXIF points back to a directory read before: a loop, not followed")
		return
	}
	t.seen[at] = true
	if uint64(at)+2 > uint64(len(t.block)) {
		t.photo.warn("a directory of the EXIF lies outside it")
		return
	}
	n := int(t.order.Uint16(t.block[at:]))
	if n > maxTags {
		t.photo.warn("a directory of the EXIF claims %d tags: only %d are read", n, maxTags)
		n = maxTags
	}
	for i := range n {
		pos := uint64(at) + 2 + uint64(i)*12
		if pos+12 > uint64(len(t.block)) {
			t.photo.warn("the EXIF is cut off at tag %d of %d", i+1, n)
			return
		}
		t.entry(t.block[pos:pos+12], dir)
	}
}

func (t *tiff) entry(e []byte, dir directory) {
	id := t.order.Uint16(e)
	switch {
	case dir == mainDir && id == 0x8769:
		t.directory(t.order.Uint32(e[8:]), exifDir)
		return
	case dir == mainDir && id == 0x8825:
		t.directory(t.order.Uint32(e[8:]), gpsDir)
		return
	}
	name, used := tagNames[tag{dir, id}]
	if !used {
		return
	}
	if _, twice := t.tags[tag{dir, id}]; twice {
		t.photo.warn("%s stands twice: the first is kept", name)
		return
	}
	typ, count := t.order.Uint16(e[2:]), uint64(t.order.Uint32(e[4:]))
	size := typeSize[typ] * count
	if size == 0 || size > maxValue {
		t.photo.warn("%s has %d values of type %d, which cannot be: passed over", name, count, typ)
		return
	}
	data := e[8:12]
	if size > 4 {
		at := uint64(t.order.Uint32(e[8:]))
		if at+size > uint64(len(t.block)) {
			t.photo.warn("%s lies outside the EXIF: passed over", name)
			return
		}
		data = t.block[at:]
	}
	t.tags[tag{dir, id}] = value{typ, int(count), data[:size], t.order}
}

// text is a value as text, without what follows its end and blanks around it.
func (v value) text() string {
	if v.typ != typeText && v.typ != typeUndefined && v.typ != typeByte {
		return ""
	}
	s, _, _ := strings.Cut(string(v.data), "\x00")
	s = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0xfffd {
			return -1
		}
		return r
	}, s)
	return strings.TrimSpace(s)
}

// number is the i-th number of a value; an error if it is none, as 0/0.
func (v value) number(i int) (float64, error) {
	if i >= v.count {
		return 0, fmt.Errorf("has only %d of the numbers asked for", v.count)
	}
	switch v.typ {
	case typeByte:
		return float64(v.data[i]), nil
	case typeShort:
		return float64(v.order.Uint16(v.data[2*i:])), nil
	case typeLong:
		return float64(v.order.Uint32(v.data[4*i:])), nil
	case typeRational, typeSignedRational:
		a, b := v.order.Uint32(v.data[8*i:]), v.order.Uint32(v.data[8*i+4:])
		x, y := float64(a), float64(b)
		if v.typ == typeSignedRational {
			x, y = float64(int32(a)), float64(int32(b))
		}
		if y == 0 || math.IsInf(x/y, 0) {
			return 0, fmt.Errorf("is %v/%v, which is no number", x, y)
		}
		return x / y, nil
	}
	return 0, fmt.Errorf("is of type %d, which is no number", v.typ)
}
