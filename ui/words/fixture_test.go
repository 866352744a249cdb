package words

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// The night of these tests is invented: Larrick Water, its Home Beat, Anna and Colm.

func id(n int) journal.ID { return journal.ID{9, byte(n >> 8), byte(n)} }

var (
	anna      = journal.Rod{ID: id(11), Person: id(21)}
	colm      = journal.Rod{ID: id(12), Person: id(22)}
	poolNames = []string{"Alder Pool", "Long Flat", "Cauldron", "Sand Bend"}
)

func pool(name string) journal.ID { return id(100 + slices.Index(poolNames, name)) }

func beat(lat, lon float64, zone string, hill units.Degrees) geo.Beat {
	b := geo.Beat{ID: id(99), Name: "Home Beat", River: geo.River{Name: "Larrick Water"}, Zone: zone, At: geo.Place{Lat: units.Degrees(lat), Lon: units.Degrees(lon)}}
	for i, name := range poolNames {
		p := geo.Pool{ID: id(100 + i), Name: name, Order: i + 1}
		p.Skyline = geo.Skyline{{Bearing: 0, Altitude: hill}}
		if name == "Cauldron" {
			p.Skyline, p.Canopy = geo.Skyline{{Bearing: 0, Altitude: 60}}, geo.Closed
		}
		b.Pools = append(b.Pools, p)
	}
	return b
}

type scribe struct {
	t    testing.TB
	trip journal.Trip
	zone *time.Location
	es   []journal.Entry
	next int
}

func writeUp(t testing.TB, evening, zone string, rods ...journal.Rod) *scribe {
	d, err := journal.ParseDate(evening)
	require.NoError(t, err)
	loc, err := time.LoadLocation(zone)
	require.NoError(t, err)
	return &scribe{t: t, zone: loc, next: 200, trip: journal.Trip{ID: id(10), Evening: d, Zone: zone, Beat: id(99), Rods: rods}}
}

func (s *scribe) at(clock string) time.Time {
	c, err := time.Parse("15:04", clock)
	require.NoError(s.t, err)
	r, err := journal.ResolveWall(s.trip.Evening, s.zone, c.Hour(), c.Minute(), time.Time{}, time.Time{})
	require.NoError(s.t, err)
	return r.At
}

func (s *scribe) exact(clock string) journal.When { return journal.Exact(s.at(clock)) }

func (s *scribe) head(rod journal.Rod, w journal.When) journal.Head {
	s.next++
	return journal.Head{ID: id(s.next), Trip: s.trip.ID, Rod: rod.ID, When: w}
}

func (s *scribe) add(e journal.Entry) journal.ID {
	require.NoError(s.t, journal.Check(e))
	s.es = append(s.es, e)
	return e.Base().ID
}

func (s *scribe) build(b geo.Beat) *timeline.Night {
	inches := func(x float64) journal.Field[units.Length] { return journal.Of(units.LengthOf(x, units.Inch)) }
	fly := func(n int, d journal.Dress) journal.Fly { return journal.Fly{ID: id(n), Dresses: []journal.Dress{d}} }
	set := timeline.Setting{Beat: b, People: map[journal.ID]journal.Person{id(21): {ID: id(21), Name: "Anna"}, id(22): {ID: id(22), Name: "Colm"}},
		Flies: map[journal.ID]journal.Fly{
			id(31): fly(31, journal.Dress{Length: inches(0.75), Silhouette: journal.Of(journal.Slim), Tone: journal.Of(journal.DarkTone), HotSpot: journal.Of("Orange")}),
			id(32): fly(32, journal.Dress{Length: inches(0.5), Silhouette: journal.Of(journal.Full), Tone: journal.Of(journal.LightTone)}),
			id(33): fly(33, journal.Dress{Length: inches(1.5), Silhouette: journal.Of(journal.Slim), Tone: journal.Of(journal.DarkTone), Hook: journal.Of("treble"), Built: journal.Of("tube"), Barbless: journal.Of(true)}),
			id(35): fly(35, journal.Dress{Length: inches(1), Silhouette: journal.Of(journal.Slim), Tone: journal.Of(journal.LightTone)}),
			id(34): fly(34, journal.Dress{Length: inches(1), Silhouette: journal.Of(journal.Slim), Tone: journal.Of(journal.DarkTone)}),
		}}
	n, err := timeline.Build(journal.NewLog(s.trip, s.es), set)
	require.NoError(s.t, err)
	return n
}

func (s *scribe) rig(rod journal.Rod, at string, flies ...int) journal.ID {
	r := journal.Rig{Head: s.head(rod, s.exact(at))}
	for i, f := range flies {
		r.Flies = append(r.Flies, journal.Mounted{Position: i, Fly: journal.Of(id(f))})
	}
	return s.add(r)
}

func (s *scribe) run(rod journal.Rod, name, from, to string) journal.ID {
	return s.add(journal.Run{Head: s.head(rod, s.exact(from)), Until: journal.Of(s.exact(to)), Pool: pool(name)})
}

func pounds(lb, oz float64) journal.Field[units.Weight] {
	return journal.Of(units.WeightOf(lb+oz/16, units.Pound))
}

// fullNight holds every kind of entry.
func fullNight(t testing.TB) *scribe {
	s := writeUp(t, "2026-07-04", "Europe/London", anna, colm)
	everyone := journal.Rod{}
	s.add(journal.Plan{Head: s.head(everyone, s.exact("20:00")), Pool: journal.Of(pool("Long Flat")), Order: journal.Of(1), Earliest: journal.Of(units.Lux(0.3))})
	s.add(journal.Water{Head: s.head(everyone, s.exact("21:30")), Level: journal.Of(units.LengthOf(0.46, units.Metre)), Trend: journal.Of(journal.FallingFlood),
		Clarity: journal.Of(journal.ClearWater), Temp: journal.Of(units.TemperatureOf(14.2, units.DegreeCelsius))})
	s.add(journal.Weather{Head: s.head(everyone, s.exact("21:40")), Wind: journal.Of(3), From: journal.Of(units.Degrees(265)), Mist: journal.Of(true), Rain: journal.Of(false),
		Air: journal.Of(units.TemperatureOf(11, units.DegreeCelsius))})
	s.add(journal.Sky{Head: s.head(everyone, s.exact("22:00")), Cloud: journal.Of(2)})
	s.add(journal.Sky{Head: s.head(everyone, s.exact("23:15")), TreesGrey: true})
	s.add(journal.Sky{Head: s.head(everyone, s.exact("1:30")), Cloud: journal.Of(6), CloudKind: journal.Of(journal.ThinCloud), Moon: journal.Of(journal.MoonVeiled)})
	s.add(journal.Ready{Head: s.head(everyone, s.exact("22:30")), Pool: pool("Alder Pool")})
	first := s.run(anna, "Alder Pool", "22:35", "23:10")
	s.rig(anna, "22:35", 31, 32)
	s.add(journal.Contact{Head: s.head(anna, s.exact("22:52")), Touch: journal.Landed, Position: journal.Of(1), Weight: pounds(1, 10),
		Length: journal.Of(units.LengthOf(40, units.Centimetre)), Class: journal.Of("herling"), Sex: journal.Of("hen"), Lice: journal.Of(true), HookPlace: journal.Of("scissors"),
		AirTime: journal.Of(20), Fate: journal.Of(journal.Returned), Tag: journal.Of("123"), Part: journal.Of("neck")})
	lost := journal.Contact{Head: s.head(anna, journal.About(s.at("23:00"), 0)), Touch: journal.Lost, Position: journal.Of(0)}
	s.add(lost)
	s.run(anna, "Long Flat", "23:30", "1:05")
	s.rig(anna, "23:30", 33)
	s.add(journal.Way{Head: s.head(anna, s.exact("23:35")), Speed: journal.Of(journal.FigureOfEight), Depth: journal.Of(journal.MidWater)})
	s.add(journal.Contact{Head: s.head(anna, s.exact("23:52")), Touch: journal.Landed, Weight: pounds(2, 4), Estimated: true, Fate: journal.Of(journal.Kept)})
	s.rig(anna, "0:36", 34)
	s.add(journal.Contact{Head: s.head(anna, s.exact("0:42")), Touch: journal.Landed, Weight: pounds(3, 2)})
	s.add(journal.Contact{Head: s.head(anna, journal.Within(first)), Touch: journal.Follow})
	s.run(colm, "Alder Pool", "23:50", "0:20")
	s.add(journal.Contact{Head: s.head(colm, s.exact("0:10")), Touch: journal.Pull, Species: journal.Of(journal.BrownTrout)})
	s.add(journal.Break{Head: s.head(colm, s.exact("0:20")), Until: journal.Of(s.exact("0:50"))})
	s.add(journal.Note{Head: journal.Head{ID: id(190), Trip: s.trip.ID, When: s.exact("0:25"), Note: "owls about"}})
	s.add(journal.Photo{Head: s.head(anna, s.exact("0:45")), Name: "fish.jpg", SHA256: "0123456789012345678901234567890123456789012345678901234567890123"})
	s.add(journal.End{Head: s.head(everyone, s.exact("1:30")), Why: journal.Of("tired")})
	return s
}

func larrick() geo.Beat { return beat(54.99, -4.45, "Europe/London", 8) }
