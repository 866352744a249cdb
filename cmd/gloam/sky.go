package main

import (
	"encoding/csv"
	"errors"
	"io"
	"time"

	"gloamline/timeline/sky"
)

const skyPage = `Example:
  gloam sky positions places.csv

  where places.csv holds
    id,utc,lat,lon
    a,2026-06-12T22:30:00Z,55.05,-4.62
  prints
    id,sun_alt,sun_az,moon_alt,moon_az,moon_fraction,moon_km
    a,-8.391117,334.951219,-12.980874,6.739952,0.0738968,361083.505

gloam sky positions FILE
  reads a CSV table with the columns id, utc, lat, lon and prints altitude and azimuth
  of sun and moon in degrees (without refraction, as seen from the place, azimuth from
  north through east), the lit part of the moon and its distance from the Earth's
  centre in km.

gloam sky events FILE
  reads a CSV table with the columns window_id, lat, lon, start_utc, end_utc and prints
  window_id,event,utc,state: every sunset, sunrise, civil, nautical and astronomical
  dusk and dawn (sun at -6, -12, -18 degrees), moonset and moonrise within each window.
  A line never crossed gives no_sun, no_civil, no_nautical, no_astronomical or no_moon
  with the state always_above or always_below. A window_id met again is the same window.

FILE may be - for standard input. Columns may stand in any order; others are passed
over, and so are lines that begin with #. Latitude is positive north, longitude positive
east, in degrees. Refraction near the horizon varies: nature keeps these times to a
minute or so.
`

var skyCommand = command{
	name: "sky",
	help: "sun and moon for a table of instants, or their risings and settings",
	page: skyPage,
	run:  runSky,
}

// longestWindow bounds one window of the events table.
const longestWindow = 400 * 24 * time.Hour

func runSky(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(args) == 0 {
		return show(stdout, skyPage)
	}
	var work func(io.Reader, io.Writer) error
	switch args[0] {
	case "positions":
		work = skyPositions
	case "events":
		work = skyEvents
	default:
		return fail(stderr, wrong, "gloam sky knows positions and events, not %q", args[0])
	}
	if len(args) == 2 && isHelp(args[1]) {
		return show(stdout, skyPage)
	}
	if len(args) != 2 {
		return fail(stderr, wrong, "gloam sky %s needs one table: a file, or - for standard input", args[0])
	}
	in, err := openTable(args[1], stdin)
	if err != nil {
		return fail(stderr, broken, "cannot open the table: %v", err)
	}
	defer in.Close()
	name := args[1]
	if name == "-" {
		name = "standard input"
	}
	var row *rowError
	switch err := work(in, stdout); {
	case errors.As(err, &row):
		return fail(stderr, wrong, "%s, %v", name, err)
	case err != nil:
		return fail(stderr, broken, "%s: %v", name, err)
	}
	return done
}

func skyPositions(in io.Reader, out io.Writer) error {
	table, err := newRows(in, []string{"id"}, []string{"utc"}, []string{"lat"}, []string{"lon"})
	if err != nil {
		return err
	}
	// All rows are read before the first is printed: a wrong row prints nothing.
	result := [][]string{{"id", "sun_alt", "sun_az", "moon_alt", "moon_az", "moon_fraction", "moon_km"}}
	for {
		if err := table.next(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return err
		}
		id, err := table.text("id")
		if err != nil {
			return err
		}
		at, err := table.instant("utc")
		if err != nil {
			return err
		}
		place, err := table.place()
		if err != nil {
			return err
		}
		p := sky.At(at, place)
		result = append(result, []string{
			id, fixed(p.Sun.Alt, 6), azimuth(p.Sun.Az, 6), fixed(p.Moon.Alt, 6), azimuth(p.Moon.Az, 6),
			fixed(p.Fraction(), 7), fixed(p.MoonKM, 3),
		})
	}
	return csv.NewWriter(out).WriteAll(result)
}

// window is a row of the events table.
type window struct {
	place      sky.Place
	start, end time.Time
}

func skyEvents(in io.Reader, out io.Writer) error {
	table, err := newRows(in, []string{"window_id", "id"}, []string{"lat"}, []string{"lon"}, []string{"start_utc"}, []string{"end_utc"})
	if err != nil {
		return err
	}
	seen := map[string]window{}
	result := [][]string{{"window_id", "event", "utc", "state"}}
	for {
		if err := table.next(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return err
		}
		id, err := table.text("window_id")
		if err != nil {
			return err
		}
		w, err := readWindow(table)
		if err != nil {
			return err
		}
		if known, again := seen[id]; again {
			if known != w {
				return table.wrong("the window %s stood above with another place or time", id)
			}
			continue
		}
		seen[id] = w
		result = append(result, eventRows(id, w)...)
	}
	return csv.NewWriter(out).WriteAll(result)
}

func readWindow(table *rows) (w window, err error) {
	if w.place, err = table.place(); err != nil {
		return w, err
	}
	if w.start, err = table.instant("start_utc"); err != nil {
		return w, err
	}
	if w.end, err = table.instant("end_utc"); err != nil {
		return w, err
	}
	switch length := w.end.Sub(w.start); {
	case length <= 0:
		return w, table.wrong("the window ends at %s, not after its start", w.end.Format(time.RFC3339))
	case length > longestWindow:
		return w, table.wrong("the window is longer than 400 days")
	}
	return w, nil
}

// eventRows lists the events in order of time, then the lines never crossed.
func eventRows(id string, w window) [][]string {
	almanac := sky.NewSpan(w.start, w.end).Almanac(w.place)
	var list [][]string
	for _, e := range almanac.Events() {
		list = append(list, []string{id, e.Kind.String(), e.At.Round(time.Millisecond).Format("2006-01-02T15:04:05.000Z"), ""})
	}
	for _, c := range almanac.Courses {
		if c.State != sky.Crosses {
			list = append(list, []string{id, "no_" + c.Line.String(), "", c.State.String()})
		}
	}
	return list
}
