package scene_test

import (
	"testing"
	"time"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// fixed is an identity that never changes, so that goldens do not.
func fixed(n byte) journal.ID { return journal.ID{n, 0xfe} }

// fixture is a small journal made in code: two pools on a straight river, two
// people, two flies.
type fixture struct {
	t    *testing.T
	trip journal.Trip
	puts []journal.Record
	next byte
}

func newFixture(t *testing.T, lat, lon float64, evening journal.Date, drawn bool) *fixture {
	ring := func(x0, x1 float64) orb.Polygon {
		return orb.Polygon{{{lon + x0, lat}, {lon + x1, lat}, {lon + x1, lat + 0.0002}, {lon + x0, lat + 0.0002}, {lon + x0, lat}}}
	}
	shape := geo.Beat{ID: fixed(1), Name: "Home Beat", River: geo.River{Name: "Larrick Water"}, Zone: "Europe/London", At: geo.Place{Lat: units.Degrees(lat), Lon: units.Degrees(lon)}}
	shape.Pools = []geo.Pool{{ID: fixed(2), Name: "Alder Pool", Order: 1, Canopy: geo.Partly, Bank: geo.TrueLeft}, {ID: fixed(3), Name: "Long Flat", Order: 2, Canopy: geo.Open}}
	if drawn {
		shape.Pools[0].Outline, shape.Pools[1].Outline = ring(0, 0.001), ring(0.0014, 0.003)
		shape.Pools[0].Skyline = geo.Skyline{{Bearing: 0, Altitude: 5}, {Bearing: 140, Altitude: 16}, {Bearing: 220, Altitude: 5}}
		shape.Features = []geo.Feature{
			{ID: fixed(4), Role: geo.RoleHazard, Name: "deep edge", Shape: geo.PointShape(orb.Point{lon + 0.0007, lat + 0.0001})},
			{ID: fixed(5), Role: geo.RoleEntry, Name: "stile", Bank: geo.TrueRight, Shape: geo.PointShape(orb.Point{lon + 0.0001, lat})},
		}
	}
	dress := func(in float64, s journal.Silhouette, tone journal.Tone) []journal.Dress {
		return []journal.Dress{{Length: journal.Of(units.LengthOf(in, units.Inch)), Silhouette: journal.Of(s), Tone: journal.Of(tone)}}
	}
	f := &fixture{t: t, next: 50, trip: journal.Trip{ID: fixed(10), Evening: evening, Zone: "Europe/London", Beat: fixed(1)}}
	f.puts = []journal.Record{
		journal.Beat{ID: fixed(1), Revisions: []journal.BeatRevision{{Shape: shape}}},
		journal.Person{ID: fixed(11), Name: "Anna"}, journal.Person{ID: fixed(12), Name: "Colm"},
		journal.Fly{ID: fixed(13), Dresses: dress(0.75, journal.Slim, journal.DarkTone)},
		journal.Fly{ID: fixed(14), Dresses: dress(2, journal.Full, journal.LightTone)},
	}
	return f
}

func (f *fixture) rods(n byte) *fixture {
	for i := range n {
		f.trip.Rods = append(f.trip.Rods, journal.Rod{ID: fixed(20 + i), Person: fixed(11 + i)})
	}
	return f
}

func (f *fixture) clock(h, min int) time.Time {
	loc, err := f.trip.Location()
	require.NoError(f.t, err)
	r, err := journal.ResolveWall(f.trip.Evening, loc, h, min, time.Time{}, time.Time{})
	require.NoError(f.t, err)
	return r.At
}

func (f *fixture) head(rod byte, w journal.When) journal.Head {
	f.next++
	h := journal.Head{ID: fixed(f.next), Trip: f.trip.ID, When: w}
	if rod > 0 {
		h.Rod = fixed(19 + rod)
	}
	return h
}

func (f *fixture) exact(h, min int) journal.When { return journal.Exact(f.clock(h, min)) }

func (f *fixture) add(e journal.Entry) *fixture { f.puts = append(f.puts, e); return f }

func (f *fixture) run(rod, pool byte, h0, m0, h1, m1 int) journal.ID {
	r := journal.Run{Head: f.head(rod, f.exact(h0, m0)), Until: journal.Of(f.exact(h1, m1)), Pool: fixed(pool)}
	f.add(r)
	return r.ID
}

func (f *fixture) rig(rod byte, h, m int, flies ...byte) {
	r := journal.Rig{Head: f.head(rod, f.exact(h, m))}
	for i, id := range flies {
		mounted := journal.Mounted{Position: i}
		if id > 0 {
			mounted.Fly = journal.Of(fixed(id))
		}
		r.Flies = append(r.Flies, mounted)
	}
	f.add(r)
}

func (f *fixture) night() *timeline.Night {
	j, err := journal.Open(memory.New(fixed(99)), func() time.Time { return time.Unix(0, 0) })
	require.NoError(f.t, err)
	_, err = j.Do("set up", journal.Batch{Put: append([]journal.Record{f.trip}, f.puts...)})
	require.NoError(f.t, err)
	n, err := timeline.Load(j, f.trip.ID)
	require.NoError(f.t, err)
	return n
}
