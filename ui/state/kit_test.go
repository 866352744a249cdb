package state

import (
	"testing"
	"time"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/units"
)

// kit is a journal in memory with an invented beat, three flies and one person.
type kit struct {
	t    *testing.T
	d    *Desk
	j    *journal.Journal
	beat journal.Beat
	anna journal.Person
	// three flies as described
	slim, pale, long journal.Fly
	now              time.Time
}

var evening = journal.Date{Year: 2026, Month: time.July, Day: 4}

// square is a pool of about 60 by 30 m.
func square(name string, order int, lon float64, bank geo.Bank) geo.Pool {
	lat := 55.1
	return geo.Pool{ID: geo.NewID(), Name: name, Order: order, Bank: bank, Outline: orb.Polygon{orb.Ring{
		{lon, lat}, {lon + 0.001, lat}, {lon + 0.001, lat + 0.0003}, {lon, lat + 0.0003}, {lon, lat},
	}}}
}

func fly(unit units.LengthUnit, length float64, s journal.Silhouette, t journal.Tone) journal.Fly {
	return journal.Fly{ID: journal.NewID(), Dresses: []journal.Dress{{
		Length: journal.Of(units.LengthOf(length, unit)), Silhouette: journal.Of(s), Tone: journal.Of(t),
	}}}
}

func newKit(t *testing.T) *kit {
	k := &kit{t: t, now: time.Date(2026, 7, 5, 8, 30, 0, 0, time.UTC)} // the morning after
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return k.now })
	require.NoError(t, err)
	shape := geo.Beat{ID: geo.NewID(), Name: "Home Beat", River: geo.River{Name: "Larrick Water"}, Zone: "Europe/London", Pools: []geo.Pool{
		square("Alder Pool", 1, -4.500, geo.TrueRight), square("Long Flat", 2, -4.496, ""), square("The Cauldron", 3, -4.492, geo.TrueLeft),
	}}
	k.beat = journal.Beat{ID: shape.ID, Revisions: []journal.BeatRevision{{Shape: shape}}}
	k.anna = journal.Person{ID: journal.NewID(), Name: "Anna"}
	k.slim, k.pale, k.long = fly(units.Inch, 0.75, journal.Slim, journal.DarkTone), fly(units.Inch, 0.5, journal.Full, journal.LightTone), fly(units.Inch, 1.5, journal.Slim, journal.DarkTone)
	_, err = j.Do("set up", journal.Batch{Put: []journal.Record{k.beat, k.anna, k.slim, k.pale, k.long}})
	require.NoError(t, err)
	k.j, k.d = j, New(j, func() time.Time { return k.now })
	return k
}

func (k *kit) pool(name string) geo.Pool {
	for _, p := range k.beat.Revisions[0].Shape.Pools {
		if p.Name == name {
			return p
		}
	}
	k.t.Fatalf("no pool %s", name)
	return geo.Pool{}
}

// at is a local time of the night.
func (k *kit) at(clock string) time.Time { return instantOf(k.t, evening, "Europe/London", clock) }

func instantOf(t *testing.T, evening journal.Date, zone, clock string) time.Time {
	loc, err := time.LoadLocation(zone)
	require.NoError(t, err)
	c, err := time.Parse("15:04", clock)
	require.NoError(t, err)
	r, err := journal.ResolveWall(evening, loc, c.Hour(), c.Minute(), time.Time{}, time.Time{})
	require.NoError(t, err)
	return r.At
}

// night starts a night of Anna alone, or with Colm as her client.
func (k *kit) night(colm bool) {
	c, err := k.d.NewNightCard()
	require.NoError(k.t, err)
	c.Set("evening", "2026-07-04")
	c.Set("rods.0.person", "Anna")
	if colm {
		c.Set("rods.1.person", "Colm")
		c.Set("rods.1.client", Yes)
	}
	require.NoError(k.t, c.Commit())
}

// write fills in a card and commits it; it returns what was stored.
func (k *kit) write(c *Card, err error, pairs ...string) journal.Entry {
	k.t.Helper()
	require.NoError(k.t, err)
	for i := 0; i < len(pairs); i += 2 {
		c.Set(pairs[i], pairs[i+1])
	}
	k.nowhere(c)
	if err := c.Commit(); err != nil {
		for _, f := range c.Fields() {
			if f.Error != "" {
				k.t.Errorf("%s: %s", f.ID, f.Error)
			}
		}
		k.t.Fatalf("%s: %v %s", c.Title(), err, c.Problem())
	}
	r, err := k.j.Get(c.Ref())
	require.NoError(k.t, err)
	return r.(journal.Entry)
}

// nowhere says of a fish in no run that its pool is not known, as the card asks.
func (k *kit) nowhere(c *Card) {
	if f, ok := c.Field("pool"); ok && c.New() && c.Ref().Kind == journal.KindContact && f.Value == "" {
		c.Set("pool", "unknown")
	}
}

func (k *kit) add(kind journal.Kind, pairs ...string) journal.Entry {
	k.t.Helper()
	c, err := k.d.AddCard(kind)
	return k.write(c, err, pairs...)
}

func (k *kit) fish(t journal.Touch, pairs ...string) journal.Contact {
	k.t.Helper()
	c, err := k.d.FishCard(t)
	return k.write(c, err, pairs...).(journal.Contact)
}

func (k *kit) rod(i int) journal.Rod { return k.d.Night().Rods[i].Rod }

// field returns a field that must be shown.
func field1(t *testing.T, c *Card, id string) Field {
	t.Helper()
	f, ok := c.Field(id)
	require.True(t, ok, "no field %s", id)
	return f
}
