package gauge

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"time"

	"gloamline/journal/units"
)

// Layout names what a file was recognised as.
type Layout string

// The layouts.
const (
	EnglishFlood       Layout = "English flood readings CSV"
	EnglishFloodJSON   Layout = "English flood readings JSON"
	EnglishArchive     Layout = "English daily archive CSV"
	EnglishHydrology   Layout = "English hydrology CSV"
	EnglishHydroJSON   Layout = "English hydrology JSON"
	HashTable          Layout = "time series CSV with # lines" // Scottish, Irish archive
	HashTableJSON      Layout = "time series JSON"
	ScottishOld        Layout = "older Scottish station CSV"
	IrishMonth         Layout = "Irish month CSV"
	IrishExport        Layout = "Irish export CSV"
	USTabbed           Layout = "US tab-separated"
	NorwegianJSON      Layout = "Norwegian JSON"
	Canadian           Layout = "Canadian hourly CSV"
	Plain              Layout = "plain table"
	unrecognisedLayout Layout = ""
)

// What a series measures.
type What string

// The quantities kept.
const (
	Level  What = "level"
	Flow   What = "flow"
	Warmth What = "temperature" // of the water; that of the air is passed over
)

// Limits of one file; beyond them Read stops with an error that names the line.
const (
	MaxLine     = 64 << 10  // bytes in a line
	MaxReadings = 2_000_000 // about 57 years of quarter hours
	MaxSeries   = 200
)

// Options are what the file itself may leave open.
type Options struct {
	Zone    *time.Location // of times without one, where the layout does not say; nil: UTC
	Columns *Choice        // columns of a plain table; nil: guess
}

// File is what was read.
type File struct {
	Layout   Layout
	Series   []Series
	Warnings []Warning
	Columns  []Column // of a plain table, as offered
	Choice   Choice   // of a plain table: what was taken, or the best guess
	ZoneOpen bool     // times without a zone, in a layout not known for one: read in Options.Zone, else UTC
}

// Series is one quantity at one gauge, in order of time, no instant twice.
type Series struct {
	What      What
	StationID string
	Station   string // name
	Unit      string // as in the file, "" if it gave none
	Datum     string // what the level is measured from, as far as the file says
	Daily     bool   // one value a day, set at noon
	Points    []Point
	Missing   []Missing
}

// Point is one usable reading: Level for a level, FlowM3s for a flow, Celsius for a temperature.
type Point struct {
	At      time.Time // UTC
	Level   units.Metres
	FlowM3s float64 // cubic metres a second
	Celsius float64
	Quality Quality
	Flag    string // quality as in the file
	Line    int
}

// Missing is a moment for which the file says that there is no value.
type Missing struct {
	At   time.Time
	Flag string // the word or code in the file
	Line int
}

// Warning is a thing assumed, passed over or odd. Line counts from 1; 0 is the whole file.
type Warning struct {
	Line int
	Text string
}

func (w Warning) String() string {
	if w.Line == 0 {
		return w.Text
	}
	return fmt.Sprintf("line %d: %s", w.Line, w.Text)
}

// ErrChoose is returned, with a File that offers Columns, when a plain table does not
// show by itself which column is when and which how high.
var ErrChoose = errors.New("this table needs to be told which column is the time and which the level")

// ErrNoReadings is returned when nothing in the file looks like readings of a river.
var ErrNoReadings = errors.New("no readings of a river's level found in this file")

// Read reads a whole file. The File is never nil; with an error it holds what was read
// until then.
func Read(r io.Reader, o Options) (*File, error) {
	c := newCollector(o)
	br := bufio.NewReaderSize(r, MaxLine)
	text, err := plainText(br)
	if err != nil {
		return c.file, err
	}
	if first := firstByte(text); first == '{' || first == '[' {
		err = readJSON(text, c)
	} else {
		err = readTable(text, c)
	}
	c.finish()
	if err == nil && len(c.file.Series) == 0 {
		err = ErrNoReadings
	}
	return c.file, err
}

// firstByte looks at the first byte that is no blank, without taking it.
func firstByte(r *bufio.Reader) byte {
	head, _ := r.Peek(512)
	head = bytes.TrimLeft(head, " \t\r\n")
	if len(head) == 0 {
		return 0
	}
	return head[0]
}
