package gpx

import (
	"bufio"
	"bytes"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

var declared = regexp.MustCompile(`^\s*<\?xml[^>]*\sencoding\s*=\s*["']([A-Za-z0-9._:\-]+)["']`)

// sniffed is how far a file is looked into to tell what it is.
const sniffed = 1024

// decoded returns the file as UTF-8 without a byte order mark, or says what it is if it is
// something else.
func decoded(r io.Reader) (*text, error) {
	b := bufio.NewReaderSize(r, 64<<10)
	head, err := b.Peek(sniffed)
	if err != nil && err != io.EOF {
		return nil, readError(0, err)
	}
	if e := foreign(head); e != nil {
		return nil, e
	}
	switch {
	case bytes.HasPrefix(head, []byte{0xEF, 0xBB, 0xBF}):
		b.Discard(3)
		return &text{in: b}, nil
	case bytes.HasPrefix(head, []byte{0xFE, 0xFF}), bytes.HasPrefix(head, []byte{0xFF, 0xFE}):
		d := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewDecoder()
		return &text{in: bufio.NewReaderSize(d.Reader(b), 64<<10)}, nil
	}
	m := declared.FindSubmatch(head)
	if m == nil {
		return &text{in: b}, nil
	}
	var e encoding.Encoding
	switch name := strings.ToLower(string(m[1])); name {
	case "utf-8", "utf8", "us-ascii", "ascii":
		return &text{in: b}, nil
	case "iso-8859-1", "iso8859-1", "iso_8859-1", "latin1", "latin-1", "windows-1252", "cp1252":
		e = charmap.Windows1252 // the wider of the two, which agree but for control codes
	case "iso-8859-15", "iso8859-15", "latin9", "latin-9":
		e = charmap.ISO8859_15
	default:
		return nil, &Error{1, "the file is written in the encoding " + string(m[1]) + ", which is not read here", "Save it as UTF-8 and read it again."}
	}
	return &text{in: bufio.NewReaderSize(e.NewDecoder().Reader(b), 64<<10)}, nil
}

// foreign tells files of other kinds by their first bytes.
func foreign(head []byte) error {
	do := "Export the track as GPX from the device or its program, and read that."
	trim := bytes.TrimLeft(bytes.TrimPrefix(head, []byte{0xEF, 0xBB, 0xBF}), " \t\r\n")
	switch {
	case len(trim) == 0:
		return &Error{0, "the file is empty", do}
	case len(head) > 12 && string(head[8:12]) == ".FIT":
		return &Error{0, "this is a FIT file, not GPX", do}
	case bytes.HasPrefix(head, []byte("PK\x03\x04")):
		return &Error{0, "this is a zip archive, not GPX", "Unpack it and read the GPX file inside."}
	case bytes.HasPrefix(head, []byte{0x1F, 0x8B}):
		return &Error{0, "this is packed with gzip, not GPX", "Unpack it and read the GPX file inside."}
	case bytes.HasPrefix(head, []byte{0xFE, 0xFF}), bytes.HasPrefix(head, []byte{0xFF, 0xFE}):
		return nil
	case bytes.IndexByte(head, 0) >= 0:
		return &Error{0, "this is no text, so it cannot be GPX", do}
	case trim[0] != '<':
		return &Error{0, "this is text but not XML, so it cannot be GPX", do}
	}
	return nil
}

// text hands on UTF-8 byte by byte. Bytes that are none are read as Windows-1252; how
// much may come between two tokens and in all is limited.
type text struct {
	in      *bufio.Reader
	out     [utf8.UTFMax]byte
	have    []byte
	read    int64
	token   int64 // bytes since the last token
	max     int64
	odd     int
	stopped error
}

const tokenMax = 1 << 20

func (t *text) ReadByte() (byte, error) {
	if len(t.have) > 0 {
		c := t.have[0]
		t.have = t.have[1:]
		return c, nil
	}
	c, err := t.in.ReadByte()
	if err != nil {
		if err != io.EOF {
			t.stopped = readError(0, err)
		}
		return 0, err
	}
	t.read++
	if t.token++; t.token > tokenMax {
		t.stopped = &Error{0, "one tag or text is longer than 1 MiB, which no track needs", "Check where the file comes from."}
		return 0, t.stopped
	}
	if t.max > 0 && t.read > t.max {
		t.stopped = &Error{0, "the file is longer than is read here", "Cut it into smaller ones, by day for instance."}
		return 0, t.stopped
	}
	if c < utf8.RuneSelf {
		return c, nil
	}
	return t.wide(c)
}

// wide reads the rest of a letter of several bytes.
func (t *text) wide(c byte) (byte, error) {
	t.out[0] = c
	rest, _ := t.in.Peek(utf8.UTFMax - 1)
	n := copy(t.out[1:], rest)
	if _, size := utf8.DecodeRune(t.out[:n+1]); size > 1 {
		t.in.Discard(size - 1)
		t.read += int64(size - 1)
		t.have = t.out[1:size]
		return c, nil
	}
	t.odd++
	size := utf8.EncodeRune(t.out[:], charmap.Windows1252.DecodeByte(c))
	t.have = t.out[1:size]
	return t.out[0], nil
}

// Read is there because a reader must have it; the decoder asks byte by byte.
func (t *text) Read(p []byte) (int, error) {
	if len(p) == 0 {
		return 0, nil
	}
	c, err := t.ReadByte()
	if err != nil {
		return 0, err
	}
	p[0] = c
	return 1, nil
}

func readError(line int, err error) error {
	return &Error{line, "the file cannot be read: " + err.Error(), "Check that it is all there, and try again."}
}
