package photo

import (
	"bytes"
	"encoding/binary"
	"io"
)

var exifMark = []byte("Exif\x00\x00")

// jpegBlock walks the segments before the picture data and returns the EXIF block, nil
// if there is none. The size of the picture is noted on the way.
func jpegBlock(r io.ReaderAt, size int64, p *Photo) (block []byte) {
	at := int64(2)
	for range 1000 { // real files have a dozen segments
		var head [4]byte
		if readAt(r, head[:], at) != nil {
			p.warn("the file ends at byte %d, before its picture", size)
			return block
		}
		if head[0] != 0xff {
			p.warn("no segment at byte %d: the file is damaged there", at)
			return block
		}
		marker := head[1]
		switch {
		case marker == 0xff: // filler
			at++
			continue
		case marker == 0xda || marker == 0xd9: // picture data, end
			return block
		case marker == 0x01 || marker >= 0xd0 && marker <= 0xd7: // without a length
			at += 2
			continue
		}
		n := int64(binary.BigEndian.Uint16(head[2:]))
		if n < 2 {
			p.warn("a segment of impossible length at byte %d", at)
			return block
		}
		body := at + 4
		switch {
		case marker == 0xe1 && block == nil && n-2 > int64(len(exifMark)):
			b := make([]byte, min(n-2, max(0, size-body)))
			if readAt(r, b, body) == nil && bytes.HasPrefix(b, exifMark) {
				if int64(len(b)) < n-2 {
					p.warn("the file ends within its EXIF")
				}
				block = b[len(exifMark):]
			}
		case isFrame(marker) && n >= 7:
			var b [5]byte
			if readAt(r, b[:], body) == nil {
				p.Height, p.Width = int(binary.BigEndian.Uint16(b[1:])), int(binary.BigEndian.Uint16(b[3:]))
			}
		}
		at += 2 + n
	}
	p.warn("more than 1000 segments before the picture")
	return block
}

// isFrame tells the markers that give the size: SOF0 to SOF15 but for the three that
// are tables.
func isFrame(m byte) bool { return m >= 0xc0 && m <= 0xcf && m != 0xc4 && m != 0xc8 && m != 0xcc }
