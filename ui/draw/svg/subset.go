package svg

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"errors"
	"fmt"

	"golang.org/x/image/font/sfnt"
)

// tables that a browser needs to show glyphs; those for kerning and the like are
// left out.
var tables = []string{"OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post"}

var errFont = errors.New("font file is not as expected")

// subset packs a TrueType file as WOFF 1.0 (W3C Recommendation of 13 December 2012)
// with the outlines of the runes given, and of glyph 0, alone. Glyph numbers stay
// as they are, so that cmap and hmtx need no change: the gaps compress to nothing.
// It serves our own files: no composite glyphs.
func subset(ttf []byte, runes []rune) ([]byte, error) {
	src, err := split(ttf)
	if err != nil {
		return nil, err
	}
	keep, err := glyphsOf(ttf, runes)
	if err != nil {
		return nil, err
	}
	if src["glyf"], src["loca"], err = cut(src, keep); err != nil {
		return nil, err
	}
	src["head"] = bytes.Clone(src["head"])
	binary.BigEndian.PutUint16(src["head"][50:], 1) // loca in 32 bits
	return pack(src)
}

// split takes the file apart into its tables.
func split(ttf []byte) (map[string][]byte, error) {
	if len(ttf) < 12 {
		return nil, errFont
	}
	out := map[string][]byte{}
	n := int(binary.BigEndian.Uint16(ttf[4:]))
	if len(ttf) < 12+16*n {
		return nil, errFont
	}
	for i := range n {
		e := ttf[12+16*i:]
		from, size := int(binary.BigEndian.Uint32(e[8:])), int(binary.BigEndian.Uint32(e[12:]))
		if from > len(ttf) || size > len(ttf)-from {
			return nil, errFont
		}
		out[string(e[:4])] = ttf[from : from+size]
	}
	for _, name := range tables {
		if _, ok := out[name]; !ok {
			return nil, fmt.Errorf("%w: no table %s", errFont, name)
		}
	}
	if len(out["head"]) < 54 || len(out["maxp"]) < 6 {
		return nil, errFont
	}
	return out, nil
}

func glyphsOf(ttf []byte, runes []rune) (map[int]bool, error) {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		return nil, err
	}
	var b sfnt.Buffer
	keep := map[int]bool{0: true}
	for _, r := range runes {
		gid, err := f.GlyphIndex(&b, r)
		if err != nil {
			return nil, err
		}
		keep[int(gid)] = true
	}
	return keep, nil
}

// cut makes new glyf and loca tables.
func cut(src map[string][]byte, keep map[int]bool) (glyf, loca []byte, err error) {
	n := int(binary.BigEndian.Uint16(src["maxp"][4:]))
	long := binary.BigEndian.Uint16(src["head"][50:]) == 1
	at := func(i int) int {
		switch old := src["loca"]; {
		case long && len(old) >= 4*i+4:
			return int(binary.BigEndian.Uint32(old[4*i:]))
		case !long && len(old) >= 2*i+2:
			return 2 * int(binary.BigEndian.Uint16(old[2*i:]))
		}
		return -1
	}
	for i := range n {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		if !keep[i] {
			continue
		}
		from, to := at(i), at(i+1)
		if from < 0 || to < from || to > len(src["glyf"]) {
			return nil, nil, errFont
		}
		glyf = append(glyf, src["glyf"][from:to]...)
		for len(glyf)%4 != 0 {
			glyf = append(glyf, 0)
		}
	}
	return glyf, binary.BigEndian.AppendUint32(loca, uint32(len(glyf))), nil
}

// pack writes the tables as WOFF.
func pack(src map[string][]byte) ([]byte, error) {
	n := len(tables)
	head := bytes.Clone(src["head"])
	binary.BigEndian.PutUint32(head[8:], 0)
	src["head"] = head

	// The sum over the whole font, as if it were written out plainly.
	dir := header(n)
	offset := 12 + 16*n
	for _, name := range tables {
		t := src[name]
		dir = append(dir, name...)
		dir = binary.BigEndian.AppendUint32(dir, sum(t))
		dir = binary.BigEndian.AppendUint32(dir, uint32(offset))
		dir = binary.BigEndian.AppendUint32(dir, uint32(len(t)))
		offset += (len(t) + 3) &^ 3
	}
	total := sum(dir)
	for _, name := range tables {
		total += sum(src[name])
	}
	headSum := sum(head)
	binary.BigEndian.PutUint32(head[8:], 0xB1B0AFBA-total)

	out := make([]byte, 44, 44+20*n)
	var data []byte
	for _, name := range tables {
		t := src[name]
		packed, err := squeeze(t)
		if err != nil {
			return nil, err
		}
		check := sum(t)
		if name == "head" {
			check = headSum
		}
		out = append(out, name...)
		out = binary.BigEndian.AppendUint32(out, uint32(44+20*n+len(data)))
		out = binary.BigEndian.AppendUint32(out, uint32(len(packed)))
		out = binary.BigEndian.AppendUint32(out, uint32(len(t)))
		out = binary.BigEndian.AppendUint32(out, check)
		data = append(data, packed...)
		for len(data)%4 != 0 {
			data = append(data, 0)
		}
	}
	copy(out, "wOFF")
	binary.BigEndian.PutUint32(out[4:], 0x00010000)
	binary.BigEndian.PutUint32(out[8:], uint32(len(out)+len(data)))
	binary.BigEndian.PutUint16(out[12:], uint16(n))
	binary.BigEndian.PutUint32(out[16:], uint32(offset))
	binary.BigEndian.PutUint16(out[20:], 1)
	return append(out, data...), nil
}

// header is the first 12 bytes of a TrueType file with n tables.
func header(n int) []byte {
	power, log := 1, 0
	for power*2 <= n {
		power, log = power*2, log+1
	}
	b := binary.BigEndian.AppendUint32(nil, 0x00010000)
	for _, v := range []int{n, power * 16, log, (n - power) * 16} {
		b = binary.BigEndian.AppendUint16(b, uint16(v))
	}
	return b
}

func sum(t []byte) uint32 {
	var s uint32
	for i := 0; i < len(t); i += 4 {
		var w [4]byte
		copy(w[:], t[i:])
		s += binary.BigEndian.Uint32(w[:])
	}
	return s
}

// squeeze compresses a table, unless that makes it no smaller.
func squeeze(t []byte) ([]byte, error) {
	var b bytes.Buffer
	z, err := zlib.NewWriterLevel(&b, zlib.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := z.Write(t); err != nil {
		return nil, err
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	if b.Len() >= len(t) {
		return t, nil
	}
	return b.Bytes(), nil
}
