package timeline

import (
	"math"
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline/light"
	"gloamline/timeline/sky"
)

// Traits are what nights are chosen and ordered by. They are read from the log with a
// little of the sky, about a tenth of what a Night costs, so that a whole journal can
// be looked through.
type Traits struct {
	Trip     journal.ID
	Evening  journal.Date
	Beat     journal.ID
	BeatName string
	People   []journal.ID // the rods' and the guide's
	Clients  int          // rods that were clients
	Fished   bool         // some run is logged
	Totals   Totals

	Trend journal.Trend          // first noted; "" unknown
	Level journal.Field[float64] // first noted, metres on the staff of the beat
	Temp  journal.Field[float64] // first noted, °C of the river
	Start journal.Field[float64] // log10 lux of the open sky when fishing began
	Lit   float64                // part of the moon's disc that is lit, 0 to 1
}

// MoonSize is how much of the moon's disc is lit.
type MoonSize uint8

const (
	ThinMoon MoonSize = iota // under a quarter
	HalfMoon
	FullMoon // over three quarters
)

// MoonSizes lists them.
var MoonSizes = []MoonSize{ThinMoon, HalfMoon, FullMoon}

// String is the name in files and on a command line; it never changes.
func (m MoonSize) String() string { return [...]string{"thin", "half", "full"}[min(m, FullMoon)] }

// Moon returns the size of the moon that night, whether it was up or not.
func (t Traits) Moon() MoonSize {
	switch {
	case t.Lit < 0.25:
		return ThinMoon
	case t.Lit > 0.75:
		return FullMoon
	}
	return HalfMoon
}

// Has reports whether a person was there, fishing or guiding.
func (t Traits) Has(person journal.ID) bool { return slices.Contains(t.People, person) }

// Traits reads those of one night. The error is as that of Load.
func (l *Loader) Traits(trip journal.ID) (Traits, error) {
	log, err := l.j.Night(trip)
	if err != nil {
		return Traits{}, err
	}
	brief, err := Summary(log)
	if err != nil {
		return Traits{}, err
	}
	beat, err := journal.One[journal.Beat](l.j, log.Trip.Beat)
	if err != nil {
		return Traits{}, err
	}
	return traits(log, brief, beat.On(log.Trip.Evening))
}

// TraitsOf returns the traits of many nights, read side by side. A night that cannot be read is
// left out.
func (l *Loader) TraitsOf(trips []journal.Trip) ([]Traits, error) {
	beats := map[journal.ID]journal.Beat{}
	all, err := journal.All[journal.Beat](l.j)
	if err != nil {
		return nil, err
	}
	for _, b := range all {
		beats[b.ID] = b
	}
	found, faults, err := abreast(trips, l.j.Sealed, func(t journal.Trip, night journal.Sealed) (Traits, error) {
		log, err := night.Open()
		if err != nil {
			return Traits{}, err
		}
		brief, err := Summary(log)
		if err != nil {
			return Traits{}, err
		}
		b, ok := beats[t.Beat]
		if !ok {
			return Traits{}, &journal.Error{Op: "read night", Kind: journal.NotFound, ID: t.Beat}
		}
		return traits(log, brief, b.On(t.Evening))
	})
	if err != nil {
		return nil, err
	}
	out := make([]Traits, 0, len(found))
	for i, x := range found {
		if faults[i] == nil {
			out = append(out, x)
		}
	}
	return out, nil
}

func traits(log *journal.Log, brief Brief, beat geo.Beat) (Traits, error) {
	trip := log.Trip
	t := Traits{
		Trip: trip.ID, Evening: trip.Evening, Beat: trip.Beat, BeatName: beat.Name,
		Fished: brief.Totals.Runs > 0, Totals: brief.Totals,
	}
	for _, r := range trip.Rods {
		t.People = append(t.People, r.Person)
		if r.Client {
			t.Clients++
		}
	}
	if g, ok := trip.Guide.Get(); ok {
		t.People = append(t.People, g)
	}
	entries := inOrder(log)
	for _, w := range pick[journal.Water](entries) {
		if x, ok := w.Entry.Trend.Get(); ok && t.Trend == "" {
			t.Trend = x
		}
		if x, ok := w.Entry.Level.Get(); ok && !t.Level.Known() {
			t.Level = journal.Of(float64(x.M))
		}
		if x, ok := w.Entry.Temp.Get(); ok && !t.Temp.Known() {
			t.Temp = journal.Of(float64(x.C))
		}
	}
	zone, err := trip.Location()
	if err != nil {
		return t, err
	}
	place, err := placeOf(beat)
	if err != nil {
		return t, err
	}
	from, to := trip.Evening.Night(zone)
	mid := from.Add(to.Sub(from) / 2)
	span := sky.NewSpan(from, to)
	t.Lit = span.At(mid, place).Fraction()
	if runs := pick[journal.Run](entries); len(runs) > 0 {
		at := runs[0].At.Mid()
		minute := sky.NewSpan(at.Add(-Step), at.Add(Step)).Grid(place, Step)
		trace := light.NewOpenSky(minute, weather(pick[journal.Sky](entries))).Reference()
		t.Start = journal.Of(logLux(float64(trace.At(at).Lux)))
	}
	return t, nil
}

// The measure of likeness. A difference of one unit in any trait counts one; at most
// two; where a trait is not known on either night it counts one, so that ignorance is
// neither likeness nor unlikeness. All units are our own choice.
const (
	unitLevel = 0.1 // metres, on the same beat: staffs of two beats have two zeros
	unitTemp  = 2.0 // °C
	unitStart = 0.5 // decades of light when fishing began
	unitDays  = 30.0
	mostUnits = 2.0
)

// Unlike returns how unlike two nights are, 0 to 10: the sum over trend of the river,
// its level, its temperature, the light when fishing began, and the time of the year.
func (t Traits) Unlike(o Traits) float64 {
	sum := 1.0
	if t.Trend != "" && o.Trend != "" {
		sum = 0
		if t.Trend != o.Trend {
			sum = mostUnits
		}
	}
	level := func(a Traits) journal.Field[float64] {
		if t.Beat != o.Beat {
			return journal.Field[float64]{}
		}
		return a.Level
	}
	sum += apart(level(t), level(o), unitLevel)
	sum += apart(t.Temp, o.Temp, unitTemp)
	sum += apart(t.Start, o.Start, unitStart)
	return sum + math.Min(mostUnits, daysApart(t.Evening, o.Evening)/unitDays)
}

func apart(a, b journal.Field[float64], unit float64) float64 {
	x, okX := a.Get()
	y, okY := b.Get()
	if !okX || !okY {
		return 1
	}
	return math.Min(mostUnits, math.Abs(x-y)/unit)
}

// daysApart is the distance of two dates round the year, whichever year they are of.
func daysApart(a, b journal.Date) float64 {
	day := func(d journal.Date) float64 {
		return float64(time.Date(2001, d.Month, d.Day, 0, 0, 0, 0, time.UTC).YearDay())
	}
	d := math.Abs(day(a) - day(b))
	return math.Min(d, 365-d)
}

// LikeThis returns the count nights that were fished and are most like one of them,
// that one first, then the likest.
func LikeThis(all []Traits, trip journal.ID, count int) []Traits {
	i := slices.IndexFunc(all, func(t Traits) bool { return t.Trip == trip })
	if i < 0 || count <= 0 {
		return nil
	}
	own := all[i]
	rest := slices.DeleteFunc(slices.Clone(all), func(t Traits) bool { return t.Trip == trip || !t.Fished })
	slices.SortStableFunc(rest, func(a, b Traits) int {
		switch x, y := own.Unlike(a), own.Unlike(b); {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	return append([]Traits{own}, rest[:min(len(rest), count-1)]...)
}
