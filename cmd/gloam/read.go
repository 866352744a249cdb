package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strconv"
	"strings"
	"time"

	"gloamline/journal/gauge"
	"gloamline/journal/intake"
	"gloamline/journal/units"
)

const readPage = `Example:
  gloam read night.gpx fish.jpg river.csv

gloam read prints what the readers make of each file, one JSON object a line, in the order
given. What a file is shows from its bytes: a GPX track, a JPEG or HEIC photo, or the
readings of a river gauge; its name does not matter. Nothing is stored and no file changed.

  --zone NAME       the zone of gauge readings that name none, as Europe/London; else UTC
  --columns LIST    the columns of a plain table, counted from 1, and the unit of its level:
                    when=1,level=3,unit=ft; also clock=, flag= and month-first

Members: file, kind (gpx, photo, gauge), bytes, sha256, warnings.
  gpx    points (of tracks and routes, usable), timed (with a time, waypoints too), waypoints,
         first, last (UTC), tracks of a device: creator, version
  photo  format, taken (UTC, if the file tells its zone), local (the camera's clock), offset,
         fix_at, lat, lon, device, orientation, width, height
  gauge  layout, readings (usable ones) and missing of the first series of levels, first,
         last, unit (of the values as read), source_unit (of the file), station, series (all)
A file that cannot be used has error with place and cause, and a sentence goes to standard
error; the others are still read, and the command ends with 1.
`

var readCommand = command{
	name: "read",
	help: "what a reader makes of a track, a photo or a gauge's file, as JSON",
	page: readPage,
	run:  runRead,
}

func runRead(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("read", flag.ContinueOnError)
	zone := flags.String("zone", "", "")
	columns := flags.String("columns", "", "")
	if code, ok := parse(flags, args, readPage, stdout, stderr); !ok {
		return code
	}
	o := intake.ReadOptions{Now: time.Now(), Count: true}
	if *zone != "" {
		loc, err := time.LoadLocation(*zone)
		if err != nil || *zone == "Local" {
			return fail(stderr, wrong, "--zone %q is no time zone such as Europe/London", *zone)
		}
		o.Zone = loc
	}
	if *columns != "" {
		c, err := parseColumns(*columns)
		if err != nil {
			return fail(stderr, wrong, "--columns %v", err)
		}
		o.Columns = &c
	}
	if flags.NArg() == 0 {
		return fail(stderr, wrong, "gloam read needs a file: gloam read night.gpx")
	}
	code := done
	out := json.NewEncoder(stdout)
	out.SetEscapeHTML(false)
	for _, name := range flags.Args() {
		f := readFile(name, o)
		if f.Fault != nil {
			code = broken
			fmt.Fprintf(stderr, "gloam: %s: %s. %s\n", name, f.Fault, f.Fault.Do)
		}
		s := intake.Summarise(f)
		s.File = name
		if err := out.Encode(s); err != nil {
			return fail(stderr, broken, "cannot write: %v", err)
		}
	}
	return code
}

// readFile opens and reads one file; a file that is not there has its fault too.
func readFile(name string, o intake.ReadOptions) *intake.File {
	f, err := os.Open(name)
	if err == nil {
		defer f.Close()
		var at fs.FileInfo
		if at, err = f.Stat(); err == nil {
			if at.Mode().IsRegular() {
				return intake.Read(name, f, at.Size(), o)
			}
			err = errors.New("this is a folder or a device, not a file")
		}
	}
	if path := (*fs.PathError)(nil); errors.As(err, &path) {
		err = path.Err
	}
	return intake.Unreadable(name, err)
}

// parseColumns reads when=1,clock=2,level=3,flag=4,unit=ft,month-first.
func parseColumns(s string) (gauge.Choice, error) {
	c := gauge.Choice{When: gauge.NoColumn, Clock: gauge.NoColumn, Level: gauge.NoColumn, Flag: gauge.NoColumn}
	for _, part := range strings.Split(s, ",") {
		name, value, _ := strings.Cut(part, "=")
		switch name {
		case "unit":
			if c.Unit = units.LengthUnit(value); !c.Unit.Known() {
				return c, fmt.Errorf("has no unit %q; there are %s", value, "mm, cm, m, in and ft")
			}
			continue
		case "month-first":
			c.MonthFirst = true
			continue
		}
		at := map[string]*int{"when": &c.When, "clock": &c.Clock, "level": &c.Level, "flag": &c.Flag}[name]
		n, err := strconv.Atoi(value)
		if at == nil || err != nil || n < 1 {
			return c, fmt.Errorf("cannot use %q: it wants a list such as when=1,level=3,unit=ft", part)
		}
		*at = n - 1
	}
	if c.When == gauge.NoColumn || c.Level == gauge.NoColumn {
		return c, fmt.Errorf("wants at least when= and level=")
	}
	return c, nil
}
