package main

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"

	"gloamline/journal/units"
	"gloamline/timeline/sky"
)

// rows reads a CSV table with a header: columns in any order, further columns and
// lines that begin with # passed over.
type rows struct {
	reader *csv.Reader
	column map[string]int
	fields []string
	line   int
}

// rowError is a wrong row; its sentence names the line of the file.
type rowError struct {
	line int
	why  string
}

func (e *rowError) Error() string { return fmt.Sprintf("line %d: %s", e.line, e.why) }

// openTable opens a file, or standard input for "-".
func openTable(name string, stdin io.Reader) (io.ReadCloser, error) {
	if name == "-" {
		return io.NopCloser(stdin), nil
	}
	return os.Open(name)
}

// newRows reads the header. Each need is a list of names for one column, of which
// the first that the header has counts.
func newRows(r io.Reader, needs ...[]string) (*rows, error) {
	text := bufio.NewReader(r)
	if mark, _ := text.Peek(3); string(mark) == "\ufeff" { // some spreadsheets begin a file so
		text.Discard(3)
	}
	t := &rows{reader: csv.NewReader(text), column: map[string]int{}}
	t.reader.Comment = '#'
	t.reader.FieldsPerRecord = -1
	t.reader.TrimLeadingSpace = true
	t.reader.ReuseRecord = true
	header, err := t.reader.Read()
	if errors.Is(err, io.EOF) {
		return nil, &rowError{1, "the table is empty; it needs a first line with the names of its columns"}
	}
	if err != nil {
		return nil, t.broken(err)
	}
	t.line, _ = t.reader.FieldPos(0)
	names := make([]string, len(header))
	for i, h := range header {
		names[i] = strings.ToLower(strings.TrimSpace(h))
	}
	for _, need := range needs {
		at := -1
		for _, name := range need {
			if at = slices.Index(names, name); at >= 0 {
				if slices.Contains(names[at+1:], name) {
					return nil, t.wrong("the column %s stands twice in the header", name)
				}
				break
			}
		}
		if at < 0 {
			return nil, t.wrong("the header has no column %s", need[0])
		}
		t.column[need[0]] = at
	}
	return t, nil
}

// next moves to the next row; it returns io.EOF after the last.
func (t *rows) next() error {
	fields, err := t.reader.Read()
	if errors.Is(err, io.EOF) {
		return io.EOF
	}
	if err != nil {
		return t.broken(err)
	}
	t.fields = fields
	t.line, _ = t.reader.FieldPos(0)
	return nil
}

func (t *rows) wrong(format string, args ...any) error {
	return &rowError{t.line, fmt.Sprintf(format, args...)}
}

// broken turns an error of the CSV reader into a sentence.
func (t *rows) broken(err error) error {
	var p *csv.ParseError
	if errors.As(err, &p) {
		return &rowError{p.StartLine, "the quotation marks do not match"}
	}
	return err
}

func (t *rows) text(column string) (string, error) {
	i := t.column[column]
	if i >= len(t.fields) {
		return "", t.wrong("the row ends before the column %s", column)
	}
	v := strings.TrimSpace(t.fields[i])
	if v == "" {
		return "", t.wrong("%s is empty", column)
	}
	return v, nil
}

func (t *rows) degrees(column string) (units.Degrees, error) {
	text, err := t.text(column)
	if err != nil {
		return 0, err
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, t.wrong("%s must be a number of degrees, not %q", column, text)
	}
	return units.Degrees(v), nil
}

func (t *rows) place() (sky.Place, error) {
	lat, err := t.degrees("lat")
	if err != nil {
		return sky.Place{}, err
	}
	lon, err := t.degrees("lon")
	if err != nil {
		return sky.Place{}, err
	}
	p, err := sky.NewPlace(lat, lon)
	if err != nil {
		return p, t.wrong("%s", err)
	}
	return p, nil
}

func (t *rows) instant(column string) (time.Time, error) {
	text, err := t.text(column)
	if err != nil {
		return time.Time{}, err
	}
	at, err := parseInstant(text)
	if err != nil {
		return at, t.wrong("%s %s", column, err)
	}
	return at, nil
}

// parseInstant reads RFC 3339, with a blank for the T or without zone or seconds too;
// without a zone it is UTC.
func parseInstant(text string) (time.Time, error) {
	s := strings.Replace(text, " ", "T", 1)
	for _, layout := range []string{time.RFC3339Nano, "2006-01-02T15:04:05", "2006-01-02T15:04Z07:00", "2006-01-02T15:04"} {
		if at, err := time.Parse(layout, s); err == nil {
			return at.UTC(), checkYear(at.UTC())
		}
	}
	return time.Time{}, fmt.Errorf("must be an instant such as 2026-06-12T22:30:00Z, not %q", text)
}

// checkYear refuses what the series of sun and moon are not made for.
func checkYear(t time.Time) error {
	if y := t.Year(); y < 1900 || y > 2100 {
		return fmt.Errorf("lies in the year %d; sun and moon are good from 1900 to 2100", y)
	}
	return nil
}

// azimuth prints an azimuth so that rounding never makes it 360.
func azimuth(v units.Degrees, digits int) string {
	s := strconv.FormatFloat(float64(v), 'f', digits, 64)
	if strings.HasPrefix(s, "360") {
		return strconv.FormatFloat(0, 'f', digits, 64)
	}
	return s
}

func fixed[T ~float64](v T, digits int) string {
	return strconv.FormatFloat(float64(v), 'f', digits, 64)
}
