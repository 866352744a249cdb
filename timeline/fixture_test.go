package timeline

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// The nights of these tests are invented: Larrick Water, its Home Beat with seven
// pools, Anna and Colm.

var poolNames = []string{"Mill Neck", "Alder Pool", "Long Flat", "Cauldron", "Sand Bend", "Gate Pool", "Lower Tail"}

// beatAt returns a beat of seven small pools at a place, each with its own trees
// and a level skyline of 0, 4, 8, ... degrees.
func beatAt(lat, lon float64, zone string) geo.Beat {
	b := geo.Beat{ID: id(900), Name: "Home Beat", River: geo.River{Name: "Larrick Water"}, Zone: zone}
	for i, name := range poolNames {
		const h = 0.0002
		x, y := lon+float64(i-3)*0.0005, lat
		p := geo.Pool{ID: id(800 + i), Name: name, Order: i + 1, Bank: geo.TrueRight,
			Canopy:  []geo.Canopy{geo.Open, geo.Partly, geo.Closed}[i%3],
			Outline: orb.Polygon{{{x - h, y - h}, {x + h, y - h}, {x + h, y + h}, {x - h, y + h}, {x - h, y - h}}},
		}
		if i > 0 {
			for az := 0; az < 360; az += 45 {
				p.Skyline = append(p.Skyline, geo.SkyPoint{Bearing: units.Degrees(az), Altitude: units.Degrees(4 * i)})
			}
		}
		b.Pools = append(b.Pools, p)
	}
	return b
}

func larrick() geo.Beat { return beatAt(54.99, -4.45, "Europe/London") }

func id(n int) journal.ID {
	var out journal.ID
	out[0], out[14], out[15] = 7, byte(n>>8), byte(n)
	return out
}

func pool(name string) journal.ID { return id(800 + slices.Index(poolNames, name)) }

// scribe writes up a night in few words.
type scribe struct {
	t    testing.TB
	trip journal.Trip
	loc  *time.Location
	es   []journal.Entry
	next int
}

func writeUp(t testing.TB, evening, zone string, rods ...journal.Rod) *scribe {
	d, err := journal.ParseDate(evening)
	require.NoError(t, err)
	loc, err := time.LoadLocation(zone)
	require.NoError(t, err)
	return &scribe{t: t, loc: loc, next: 1, trip: journal.Trip{ID: id(1000), Evening: d, Zone: zone, Beat: id(900), Rods: rods}}
}

var (
	anna = journal.Rod{ID: id(1001), Person: id(1101)}
	colm = journal.Rod{ID: id(1002), Person: id(1102), Client: true}
)

// at reads a clock of the night: 23:15, 0:31.
func (s *scribe) at(clock string) time.Time {
	c, err := time.Parse("15:04", clock)
	require.NoError(s.t, err)
	r, err := journal.ResolveWall(s.trip.Evening, s.loc, c.Hour(), c.Minute(), time.Time{}, time.Time{})
	require.NoError(s.t, err)
	return r.At
}

// when reads 23:15, ~23:00 (about), 23:20-23:40 (between).
func (s *scribe) when(text string) journal.When {
	if rest, ok := strings.CutPrefix(text, "~"); ok {
		return journal.About(s.at(rest), 0)
	}
	if a, b, ok := strings.Cut(text, "-"); ok {
		return journal.Between(s.at(a), s.at(b))
	}
	return journal.Exact(s.at(text))
}

func (s *scribe) head(rod journal.Rod, when journal.When) journal.Head {
	s.next++
	return journal.Head{ID: id(s.next), Trip: s.trip.ID, Rod: rod.ID, When: when}
}

func (s *scribe) add(e journal.Entry) journal.ID {
	require.NoError(s.t, journal.Check(e))
	s.es = append(s.es, e)
	return e.Base().ID
}

func (s *scribe) run(rod journal.Rod, name, from, to string) journal.ID {
	r := journal.Run{Head: s.head(rod, s.when(from)), Pool: pool(name)}
	if to != "" {
		r.Until = journal.Of(s.when(to))
	}
	return s.add(r)
}

func (s *scribe) rig(rod journal.Rod, at string, flies ...int) journal.ID {
	r := journal.Rig{Head: s.head(rod, s.when(at))}
	for i, f := range flies {
		m := journal.Mounted{Position: i}
		if f > 0 {
			m.Fly = journal.Of(id(f))
		}
		r.Flies = append(r.Flies, m)
	}
	return s.add(r)
}

func (s *scribe) contact(rod journal.Rod, when journal.When, touch journal.Touch, more ...func(*journal.Contact)) journal.ID {
	k := journal.Contact{Head: s.head(rod, when), Touch: touch}
	for _, f := range more {
		f(&k)
	}
	return s.add(k)
}

func (s *scribe) sky(at string, eighths int, more ...func(*journal.Sky)) journal.ID {
	e := journal.Sky{Head: s.head(journal.Rod{}, s.when(at))}
	if eighths >= 0 {
		e.Cloud = journal.Of(eighths)
	}
	for _, f := range more {
		f(&e)
	}
	return s.add(e)
}

func (s *scribe) log() *journal.Log { return journal.NewLog(s.trip, slices.Clone(s.es)) }

// Flies 701 to 703: an inch and a half slim dark, half an inch full pale, three
// quarters slim dark with an orange spot.
func setting(b geo.Beat) Setting {
	fly := func(n int, inches float64, sil journal.Silhouette, tone journal.Tone, spot string) journal.Fly {
		d := journal.Dress{Length: journal.Of(units.LengthOf(inches, units.Inch)), Silhouette: journal.Of(sil), Tone: journal.Of(tone)}
		if spot != "" {
			d.HotSpot = journal.Of(spot)
		}
		return journal.Fly{ID: id(n), Dresses: []journal.Dress{d}}
	}
	set := Setting{Beat: b, Flies: map[journal.ID]journal.Fly{}, People: map[journal.ID]journal.Person{
		anna.Person: {ID: anna.Person, Name: "Anna"}, colm.Person: {ID: colm.Person, Name: "Colm"},
	}, Grey: DefaultThreshold()}
	for _, f := range []journal.Fly{
		fly(701, 1.5, journal.Slim, journal.DarkTone, ""), fly(702, 0.5, journal.Full, journal.LightTone, ""),
		fly(703, 0.75, journal.Slim, journal.DarkTone, "orange"),
	} {
		set.Flies[f.ID] = f
	}
	return set
}

func build(t testing.TB, log *journal.Log, set Setting) *Night {
	n, err := Build(log, set)
	require.NoError(t, err)
	return n
}

// twoRods is the night of most tests: two rods, four pools, five contacts.
func twoRods(t testing.TB) *scribe {
	s := writeUp(t, "2026-07-04", "Europe/London", anna, colm)
	s.trip.Rods[0].Start, s.trip.Rods[0].Stop = journal.Of(s.when("21:30")), journal.Of(s.when("2:00"))
	s.sky("22:00", 2)
	s.sky("23:15", -1, func(e *journal.Sky) { e.TreesGrey = true })
	s.sky("1:30", 6, func(e *journal.Sky) { e.CloudKind = journal.Of(journal.DarkCloud) })
	s.run(anna, "Alder Pool", "22:35", "23:10")
	s.rig(anna, "22:35", 703, 702)
	s.contact(anna, s.when("22:52"), journal.Landed, onDropper, func(k *journal.Contact) { k.Fate = journal.Of(journal.Returned) })
	s.contact(anna, s.when("~23:00"), journal.Lost, func(k *journal.Contact) { k.Fly = journal.Of(id(703)) })
	flat := s.run(anna, "Long Flat", "23:30", "1:05")
	s.rig(anna, "23:30", 701)
	s.contact(anna, s.when("23:52"), journal.Landed, func(k *journal.Contact) { k.Fate = journal.Of(journal.Kept) })
	s.run(colm, "Sand Bend", "23:25", "0:50-1:00")
	s.rig(colm, "23:25", 701, 702)
	s.contact(colm, s.when("0:10"), journal.Pull)
	s.run(colm, "Alder Pool", "1:10", "1:50")
	s.contact(anna, journal.Within(flat), journal.Follow)
	s.add(journal.Break{Head: s.head(anna, s.when("0:15")), Until: journal.Of(s.when("0:30"))})
	s.add(journal.End{Head: s.head(anna, s.when("1:05")), Why: journal.Of("tired")})
	return s
}

func onDropper(k *journal.Contact) { k.Position = journal.Of(1) }

// nights reads testdata/nights.csv: by night, the values of each thing.
func nights(t testing.TB) map[string]map[string][]string {
	f, err := os.Open("testdata/nights.csv")
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	out := map[string]map[string][]string{}
	for _, row := range rows[1:] {
		m := out[row[0]]
		if m == nil {
			m = map[string][]string{"evening": {row[1]}, "zone": {row[2]}, "lat": {row[3]}, "lon": {row[4]}}
			out[row[0]] = m
		}
		m[row[5]] = append(m[row[5]], row[6])
	}
	require.Len(t, out, 10)
	return out
}
