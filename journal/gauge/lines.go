package gauge

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"encoding/binary"
	"unicode/utf16"
)

// plainText takes a byte order mark off and turns UTF-16, which spreadsheets write,
// into UTF-8.
func plainText(r *bufio.Reader) (*bufio.Reader, error) {
	head, err := r.Peek(3)
	if err != nil && err != io.EOF {
		return nil, err
	}
	switch {
	case bytes.HasPrefix(head, []byte("\xef\xbb\xbf")):
		_, _ = r.Discard(3)
	case bytes.HasPrefix(head, []byte("\xff\xfe")):
		_, _ = r.Discard(2)
		return bufio.NewReaderSize(&wide{r: r, order: binary.LittleEndian}, MaxLine), nil
	case bytes.HasPrefix(head, []byte("\xfe\xff")):
		_, _ = r.Discard(2)
		return bufio.NewReaderSize(&wide{r: r, order: binary.BigEndian}, MaxLine), nil
	}
	return r, nil
}

// wide reads UTF-16 as UTF-8.
type wide struct {
	r     *bufio.Reader
	order binary.ByteOrder
	high  rune // first half of a pair
	out   []byte
}

func (w *wide) Read(p []byte) (int, error) {
	for len(w.out) < len(p) {
		var two [2]byte
		if _, err := io.ReadFull(w.r, two[:]); err != nil {
			if len(w.out) > 0 {
				break
			}
			return 0, io.EOF // half a character at the end is no character
		}
		u := rune(w.order.Uint16(two[:]))
		switch {
		case w.high != 0:
			u, w.high = utf16.DecodeRune(w.high, u), 0
		case u >= 0xd800 && u < 0xdc00:
			w.high = u
			continue
		}
		w.out = utf8.AppendRune(w.out, u)
	}
	n := copy(p, w.out)
	w.out = append(w.out[:0], w.out[n:]...)
	return n, nil
}

// lines hands out the lines of a text that may end in CR, LF or both, mixed.
type lines struct {
	s      *bufio.Scanner
	n      int // of the last line handed out, from 1
	latin1 int // first line that was not UTF-8; 0 if all were
}

func newLines(r io.Reader) *lines {
	s := bufio.NewScanner(r)
	s.Buffer(make([]byte, 0, MaxLine), MaxLine)
	s.Split(splitLine)
	return &lines{s: s}
}

func splitLine(data []byte, atEOF bool) (int, []byte, error) {
	i := bytes.IndexAny(data, "\r\n")
	switch {
	case i < 0 && atEOF && len(data) > 0:
		return len(data), data, nil
	case i < 0:
		return 0, nil, nil
	case data[i] == '\n':
		return i + 1, data[:i], nil
	case i+1 < len(data) && data[i+1] == '\n':
		return i + 2, data[:i], nil
	case i+1 == len(data) && !atEOF:
		return 0, nil, nil // the line feed may be in the next block
	}
	return i + 1, data[:i], nil
}

// next returns a line as UTF-8. Bytes that are no UTF-8 count as ISO-8859-1.
func (l *lines) next() (string, bool) {
	if !l.s.Scan() {
		return "", false
	}
	l.n++
	b := l.s.Bytes()
	if utf8.Valid(b) {
		return string(b), true
	}
	if l.latin1 == 0 {
		l.latin1 = l.n
	}
	var s strings.Builder
	for _, c := range b {
		s.WriteRune(rune(c))
	}
	return s.String(), true
}

func (l *lines) err() error {
	err := l.s.Err()
	if errors.Is(err, bufio.ErrTooLong) {
		return fmt.Errorf("line %d is longer than %d bytes: this is no table of readings", l.n+1, MaxLine)
	}
	return err
}

// fields splits a line at div, outside quotes; doubled quotes stand for one. Blanks
// around a field are dropped. The slice is reused.
func fields(line string, div byte, into []string) []string {
	into = into[:0]
	if strings.IndexByte(line, '"') < 0 {
		for {
			i := strings.IndexByte(line, div)
			if i < 0 {
				return append(into, strings.TrimSpace(line))
			}
			into = append(into, strings.TrimSpace(line[:i]))
			line = line[i+1:]
		}
	}
	start, quoted := 0, false
	for i := 0; i <= len(line); i++ {
		if i < len(line) && line[i] == '"' {
			quoted = !quoted
		}
		if i == len(line) || line[i] == div && !quoted {
			f := strings.TrimSpace(line[start:i])
			if len(f) > 1 && f[0] == '"' && f[len(f)-1] == '"' {
				f = strings.TrimSpace(strings.ReplaceAll(f[1:len(f)-1], `""`, `"`))
			}
			into = append(into, f)
			start = i + 1
		}
	}
	return into
}
