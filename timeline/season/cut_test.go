package season

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// page writes up one night of one rod on an invented beat of two pools, one under trees.
type page struct {
	t    testing.TB
	trip journal.Trip
	beat geo.Beat
	loc  *time.Location
	es   []journal.Entry
}

func newPage(t testing.TB, d journal.Date) *page {
	loc, err := time.LoadLocation("Europe/London")
	require.NoError(t, err)
	p := &page{t: t, loc: loc, beat: geo.Beat{ID: journal.ID{8}, Name: "Home Beat", Zone: "Europe/London", At: geo.Place{Lat: 55, Lon: -4.5}}}
	p.beat.Pools = []geo.Pool{{ID: journal.ID{7, 1}, Name: "Mill Neck", Order: 1, Canopy: geo.Open}, {ID: journal.ID{7, 2}, Name: "Cauldron", Order: 2, Canopy: geo.Closed}}
	p.trip = journal.Trip{ID: journal.ID{6}, Evening: d, Zone: "Europe/London", Beat: p.beat.ID, Rods: []journal.Rod{{ID: journal.ID{5}, Person: journal.ID{4}}}}
	return p
}

// at is a time of the night by the clock, hours from 12 to 36.
func (p *page) at(hour, minute int) time.Time {
	d := p.trip.Evening
	return time.Date(d.Year, d.Month, d.Day, hour, minute, 0, 0, p.loc).UTC()
}

func (p *page) head(w journal.When) journal.Head {
	return journal.Head{ID: journal.NewID(), Trip: p.trip.ID, Rod: journal.ID{5}, When: w}
}

func (p *page) run(pool int, from, to journal.When) journal.ID {
	r := journal.Run{Head: p.head(from), Pool: p.beat.Pools[pool].ID, Until: journal.Of(to)}
	p.es = append(p.es, r)
	return r.ID
}

func (p *page) rig(w journal.When, fly byte) {
	p.es = append(p.es, journal.Rig{Head: p.head(w), Setup: journal.Setup{Flies: []journal.Mounted{{Fly: journal.Of(journal.ID{3, fly})}}}})
}

func (p *page) contact(w journal.When, more ...func(*journal.Contact)) {
	k := journal.Contact{Head: p.head(w), Touch: journal.Landed}
	for _, f := range more {
		f(&k)
	}
	p.es = append(p.es, k)
}

func (p *page) digest() (*Digest, *timeline.Night) {
	flies := map[journal.ID]journal.Fly{}
	for i, in := range []float64{0.5, 2} {
		id := journal.ID{3, byte(i + 1)}
		flies[id] = journal.Fly{ID: id, Dresses: []journal.Dress{{Length: journal.Of(units.LengthOf(in, units.Inch))}}}
	}
	n, err := timeline.Build(journal.NewLog(p.trip, p.es), timeline.Setting{Beat: p.beat, Flies: flies, Grey: timeline.DefaultThreshold(), Figures: true})
	require.NoError(p.t, err)
	return DigestOf(n, nil), n
}

var july = journal.Date{Year: 2026, Month: time.July, Day: 4}

func hours(d *Digest, which func(Cell) bool) float64 {
	sum := 0.0
	for _, c := range d.Rods[0].Cells {
		if which(c) {
			sum += c.Hours
		}
	}
	return sum
}

// Ensure that a change of fly with an uncertain moment shares the time out by hand: between
// 23:00 and 23:20, so 10 minutes to each fly around it.
func TestCutAtAnUncertainChange(t *testing.T) {
	p := newPage(t, july)
	p.rig(journal.Exact(p.at(22, 0)), 1)
	p.run(0, journal.Exact(p.at(22, 0)), journal.Exact(p.at(24, 0)))
	p.rig(journal.Between(p.at(23, 0), p.at(23, 20)), 2)
	d, _ := p.digest()
	assert.InDelta(t, 70./60, hours(d, func(c Cell) bool { return c.Rig == 0 }), 1e-6)
	assert.InDelta(t, 50./60, hours(d, func(c Cell) bool { return c.Rig == 1 }), 1e-6)
	assert.InDelta(t, 2, d.Rods[0].Hours, 1e-9)

	// Where a run's uncertain end meets the change, the product counts: the run ends between
	// 23:00 and 23:20 too, so the second fly had the integral of (1-u)u over 20 minutes: 20/6.
	p = newPage(t, july)
	p.rig(journal.Exact(p.at(22, 0)), 1)
	p.run(0, journal.Exact(p.at(22, 0)), journal.Between(p.at(23, 0), p.at(23, 20)))
	p.rig(journal.Between(p.at(23, 0), p.at(23, 20)), 2)
	d, _ = p.digest()
	assert.InDelta(t, 20./6/60, hours(d, func(c Cell) bool { return c.Rig == 1 }), 1e-6)
	assert.InDelta(t, 70./60, d.Rods[0].Hours, 1e-6)
}

// Ensure that the light of the pool, not that of the open sky, cuts a run: under trees
// that leave a tenth, it is a band darker.
func TestCutByTheLightOnThePool(t *testing.T) {
	p := newPage(t, july)
	p.run(0, journal.Exact(p.at(22, 30)), journal.Exact(p.at(23, 30)))
	p.run(1, journal.Exact(p.at(23, 30)), journal.Exact(p.at(24, 30)))
	d, n := p.digest()
	for run := range 2 {
		for b := range Band(Bands) {
			from, to := b.Factors()
			want := 0.0
			span := n.Rods[0].Runs[run]
			for at := span.From.Mid(); at.Before(span.To.Mid()); at = at.Add(time.Second) {
				x := float64(n.Light(at, span.Run.Pool).Lux) / 0.3
				if x < from && x >= to {
					want += 1. / 3600
				}
			}
			got := hours(d, func(c Cell) bool { return int(c.Run) == run && c.Band == b })
			assert.InDelta(t, want, got, 2./3600, "run %d band %d", run, b)
		}
	}
	grey := n.Grey.At
	for _, c := range d.Rods[0].Cells {
		assert.Equal(t, c.Night, c.Since >= 0, "day and night part where the open sky passes the threshold")
	}
	night := hours(d, func(c Cell) bool { return c.Night })
	assert.InDelta(t, p.at(24, 30).Sub(grey).Hours(), night, 2./3600)
}

// Ensure that a fish is shared out over its spread, kept inside its run, and given to the
// rig that carries its fly; and that one outside every run is not placed.
func TestPlace(t *testing.T) {
	p := newPage(t, july)
	p.rig(journal.Exact(p.at(22, 0)), 1)
	run := p.run(0, journal.Exact(p.at(22, 0)), journal.Exact(p.at(24, 0)))
	p.rig(journal.Exact(p.at(23, 0)), 2)
	fly := func(i byte) func(*journal.Contact) {
		return func(k *journal.Contact) { k.Fly = journal.Of(journal.ID{3, i}) }
	}
	p.contact(journal.Within(run), fly(2))
	p.contact(journal.Exact(p.at(22, 30)))
	p.contact(journal.About(p.at(23, 55), 10*time.Minute))
	p.contact(journal.Exact(p.at(25, 0)))
	d, _ := p.digest()
	r := d.Rods[0]
	for _, f := range r.Fish {
		share := map[int16]float64{}
		for _, x := range f.In {
			share[r.Cells[x.Cell].Rig] += x.Share
		}
		switch {
		case f.At.Lo.Equal(p.at(22, 0)):
			assert.InDelta(t, 1, share[1], 1e-9, "within the run, to the second fly")
			assert.InDelta(t, .25, clockShare(f, 44), 1e-6, "evenly from 23:00 to 24:00")
		case f.At.Lo.Equal(p.at(22, 30)):
			assert.InDelta(t, 1, share[0], 1e-9)
			assert.InDelta(t, 1, clockShare(f, 42), 1e-9)
		case f.At.Lo.Equal(p.at(23, 45)):
			assert.InDelta(t, 1, clockShare(f, 47), 1e-6, "only its part inside the run")
		default:
			assert.Equal(t, -1, f.Run)
			assert.Empty(t, f.In)
		}
	}
	assert.Equal(t, 1, Filter{}.gaps(d).FishNoRun)
}

func clockShare(f Fish, quarter int16) float64 {
	for _, b := range f.Clock {
		if b.I == quarter {
			return b.V
		}
	}
	return 0
}

// Ensure that the clock's quarters are those of the wall, also before 1970 and in the night
// in which the clocks go back.
func TestQuarters(t *testing.T) {
	p := newPage(t, journal.Date{Year: 1931, Month: time.July, Day: 4})
	p.run(0, journal.Exact(p.at(23, 0)), journal.Exact(p.at(23, 15)))
	d, _ := p.digest()
	require.Len(t, d.Rods[0].Clock, 1)
	assert.Equal(t, int16(44), d.Rods[0].Clock[0].I)

	p = newPage(t, journal.Date{Year: 2026, Month: time.October, Day: 24})
	one := time.Date(2026, 10, 25, 0, 0, 0, 0, time.UTC) // 1:00 summer time; an hour later it is 1:00 again
	p.run(0, journal.Exact(one), journal.Exact(one.Add(2*time.Hour)))
	d, _ = p.digest()
	require.Len(t, d.Rods[0].Clock, 4)
	for i, b := range d.Rods[0].Clock {
		assert.Equal(t, int16(52+i), b.I)
		assert.InDelta(t, .5, b.V, 1e-9, "each quarter of that hour came twice")
	}
}

// Ensure that a break is not counted, and that a run's uncertain end then counts at its
// middle, so that hours add up to those of the night.
func TestCutByABreak(t *testing.T) {
	p := newPage(t, july)
	p.run(0, journal.Exact(p.at(22, 0)), journal.Between(p.at(23, 0), p.at(23, 20)))
	p.es = append(p.es, journal.Break{Head: p.head(journal.Exact(p.at(22, 20))), Until: journal.Of(journal.Exact(p.at(22, 40)))})
	d, n := p.digest()
	assert.InDelta(t, 50./60, d.Rods[0].Hours, 1e-9)
	assert.InDelta(t, n.Totals.InWater.Hours(), d.Rods[0].Hours, 1e-9)
	assert.Zero(t, math.Round(1e6*clockHours(d, 41)-1e6*5./60), "22:15 to 22:20")
}

func clockHours(d *Digest, quarter int16) float64 {
	sum := 0.0
	for _, b := range d.Rods[0].Clock {
		if b.I == quarter {
			sum += b.V
		}
	}
	return sum
}
