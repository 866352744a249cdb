package main

import (
	"bufio"
	"encoding/csv"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"math"
	"strconv"
	"strings"
	"time"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/timeline/light"
	"gloamline/timeline/sky"
)

const lightPage = `Example:
  gloam light --lat 55.05 --lon -4.62 --zone Europe/London --night 2026-06-12 --cloud 6

Prints a CSV table from local noon of the evening's date to local noon of the next day,
both included: utc, local, sun_alt, sun_az, moon_alt, moon_az (degrees, without
refraction), moon_fraction, and lux with its 68 % band lux_low to lux_high.

  --lat, --lon   degrees, positive north and east
  --zone         IANA zone of the place, such as Europe/London
  --night        the evening's date, YYYY-MM-DD
  --cloud        eighths of the sky under cloud, 0 to 8; without it the light is that
                 of a clear sky, with a wide band
  --kind         thin, average or dark cloud (average)
  --beat FILE    a beat as GeoJSON: its place, and its zone unless --zone is given
  --pool NAME    one of its pools: its own place, skyline and trees count
  --step         between rows (1m)

A figure of light is good to a factor, not to a digit: the band says which.
`

var lightCommand = command{
	name: "light",
	help: "light on the water over one night, minute by minute",
	page: lightPage,
	run:  runLight,
}

// lightFlags are the values as typed; "" was not given.
type lightFlags struct {
	lat, lon, zone, night, cloud, kind, beat, pool, step string
}

func (f *lightFlags) register(set *flag.FlagSet) {
	for name, to := range map[string]*string{
		"lat": &f.lat, "lon": &f.lon, "zone": &f.zone, "night": &f.night, "cloud": &f.cloud, "kind": &f.kind,
		"beat": &f.beat, "pool": &f.pool, "step": &f.step,
	} {
		set.StringVar(to, name, "", "")
	}
}

// lightOrder is what gloam light was asked for.
type lightOrder struct {
	place sky.Place
	shade light.Shade
	zone  *time.Location
	cloud light.Cloud
	step  time.Duration
	// from local noon of the evening's date to local noon of the next day: 23 to 25
	// hours where clocks change in the night.
	from, to time.Time
}

// order reads the flags; its error is one sentence without its full stop. Remarks on
// the beat go to remarks.
func (f *lightFlags) order(remarks io.Writer) (o lightOrder, err error) {
	zone := f.zone
	switch {
	case f.beat != "":
		var beat geo.Beat
		if beat, err = readBeat(f.beat, remarks); err != nil {
			return o, err
		}
		if zone == "" {
			zone = beat.Zone
		}
		err = f.onBeat(&o, beat)
	case f.pool != "":
		err = errors.New("--pool needs --beat, the file in which the pool is drawn")
	default:
		o.place, err = f.place()
	}
	if err != nil {
		return o, err
	}
	if o.zone, err = readZone(zone); err != nil {
		return o, err
	}
	if o.cloud, err = readCloud(f.cloud, f.kind); err != nil {
		return o, err
	}
	if o.step, err = readStep(f.step); err != nil {
		return o, err
	}
	o.from, o.to, err = readNight(f.night, o.zone)
	return o, err
}

// onBeat sets place and shade from a pool, or the open ground of a beat. What the
// beat knows wins over --lat and --lon.
func (f *lightFlags) onBeat(o *lightOrder, beat geo.Beat) error {
	var pool geo.Pool // none: open ground
	if f.pool != "" {
		var err error
		if pool, err = findPool(beat, f.pool); err != nil {
			return err
		}
		if o.shade, err = shadeOf(pool); err != nil {
			return fmt.Errorf("the pool %s: %w", pool.Name, err)
		}
	}
	at := beat.PlaceOf(pool)
	if at.IsZero() {
		var err error
		if o.place, err = f.place(); err != nil {
			return fmt.Errorf("the beat has no place of its own: %w", err)
		}
		return nil
	}
	var err error
	o.place, err = sky.NewPlace(at.Lat, at.Lon)
	return err
}

func (f *lightFlags) place() (sky.Place, error) {
	if f.lat == "" || f.lon == "" {
		return sky.Place{}, errors.New("gloam light needs a place: --lat and --lon, or --beat")
	}
	lat, err := readDegrees("--lat", f.lat)
	if err != nil {
		return sky.Place{}, err
	}
	lon, err := readDegrees("--lon", f.lon)
	if err != nil {
		return sky.Place{}, err
	}
	return sky.NewPlace(lat, lon)
}

func readDegrees(name, text string) (units.Degrees, error) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, fmt.Errorf("%s must be a number of degrees, not %q", name, text)
	}
	return units.Degrees(v), nil
}

func readZone(name string) (*time.Location, error) {
	if name == "" {
		return nil, errors.New("gloam light needs the zone of the place, as in --zone Europe/London")
	}
	// Local is the zone of the machine, not of a place.
	zone, err := time.LoadLocation(name)
	if err != nil || name == "Local" {
		return nil, fmt.Errorf("there is no zone %q; an IANA name such as Europe/London is meant", name)
	}
	return zone, nil
}

func readNight(text string, zone *time.Location) (from, to time.Time, err error) {
	if text == "" {
		return from, to, errors.New("gloam light needs the evening's date, as in --night 2026-06-12")
	}
	day, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return from, to, fmt.Errorf("--night must be a date of the calendar such as 2026-06-12, not %q", text)
	}
	if err := checkYear(day); err != nil {
		return from, to, fmt.Errorf("--night %w", err)
	}
	y, m, d := day.Date()
	return time.Date(y, m, d, 12, 0, 0, 0, zone), time.Date(y, m, d+1, 12, 0, 0, 0, zone), nil
}

func readCloud(eighths, kind string) (light.Cloud, error) {
	if eighths == "" {
		if kind != "" {
			return light.Cloud{}, errors.New("--kind says nothing without --cloud, the eighths of the sky covered")
		}
		return light.Cloud{}, nil
	}
	n, err := strconv.Atoi(eighths)
	if err != nil {
		return light.Cloud{}, fmt.Errorf("--cloud is a whole number of eighths, 0 to 8, not %q", eighths)
	}
	k := light.Average
	if kind != "" {
		if k, err = light.ParseCloudKind(kind); err != nil {
			return light.Cloud{}, fmt.Errorf("--kind: %w", err)
		}
	}
	return light.NewCloud(n, k)
}

func readStep(text string) (time.Duration, error) {
	if text == "" {
		return time.Minute, nil
	}
	step, err := time.ParseDuration(text)
	if err != nil || step < time.Second || step > 12*time.Hour {
		return 0, fmt.Errorf("--step must lie between 1s and 12h, as in 1m or 30s, not %q", text)
	}
	return step, nil
}

// write prints the table and reports whether the moon may be eclipsed.
func (o lightOrder) write(w io.Writer) (eclipse bool, err error) {
	buffered := bufio.NewWriter(w)
	out := csv.NewWriter(buffered)
	out.Write([]string{"utc", "local", "sun_alt", "sun_az", "moon_alt", "moon_az", "moon_fraction", "lux", "lux_low", "lux_high"})
	weather := light.NewWeather([]light.SkyNote{{At: o.from, Cloud: o.cloud}})
	print := func(from, to time.Time) {
		grid := sky.NewSpan(from, to).Grid(o.place, o.step)
		open := light.NewOpenSky(grid, weather)
		trace := open.Under(o.shade)
		eclipse = eclipse || open.NearEclipse
		for i := range grid.Len() {
			at := grid.Time(i)
			out.Write([]string{
				at.Format(time.RFC3339), at.In(o.zone).Format(time.RFC3339),
				fixed(grid.SunAlt[i], 4), azimuth(grid.SunAz[i], 4), fixed(grid.MoonAlt[i], 4), azimuth(grid.MoonAz[i], 4),
				fixed(sky.Fraction(grid.PhaseAngle[i]), 4),
				figures(trace.Lux[i]), figures(trace.Low[i]), figures(trace.High[i]),
			})
		}
	}
	print(o.from, o.to)
	if o.to.Sub(o.from)%o.step != 0 { // the last noon belongs to the table whatever the step
		print(o.to, o.to)
	}
	out.Flush()
	return eclipse, errors.Join(out.Error(), buffered.Flush())
}

// figures prints six significant figures without an exponent: more than the band
// allows, for programs that compare.
func figures(lux float64) string {
	if lux <= 0 {
		return "0"
	}
	digits := 5 - int(math.Floor(math.Log10(lux)))
	return strconv.FormatFloat(lux, 'f', max(0, digits), 64)
}

func runLight(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	if len(args) == 0 {
		return show(stdout, lightPage)
	}
	flags := flag.NewFlagSet("light", flag.ContinueOnError)
	var typed lightFlags
	typed.register(flags)
	if code, ok := parse(flags, args, lightPage, stdout, stderr); !ok {
		return code
	}
	if flags.NArg() > 0 {
		return fail(stderr, wrong, "gloam light takes no %q; every value has a name, as in --night 2026-06-12", flags.Arg(0))
	}
	var remarks strings.Builder
	order, err := typed.order(&remarks)
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrPermission) {
		return fail(stderr, broken, "%v", err)
	}
	if err != nil {
		return fail(stderr, wrong, "%v", err)
	}
	eclipse, err := order.write(stdout)
	if err != nil {
		return fail(stderr, broken, "cannot write the table: %v", err)
	}
	io.WriteString(stderr, remarks.String())
	if !order.cloud.Noted {
		fmt.Fprintln(stderr, "Cloud was not given: this is the light of a clear sky, with a wide band.")
	}
	if eclipse {
		fmt.Fprintln(stderr, "The moon may be eclipsed this night; that is not in the figures.")
	}
	return done
}
