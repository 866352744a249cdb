package journaltest

import (
	"math/rand/v2"
	"slices"
	"time"

	"github.com/paulmach/orb"

	"gloamline/geo"
	"gloamline/journal"
)

// World makes records that fit together. The lists hold what new records may
// refer to; a test that removes such a record takes it out of its list.
type World struct {
	Rand   *rand.Rand
	Beats  []journal.Beat
	People []journal.ID
	Flies  []journal.ID
	Files  []journal.ID // sources
	Trips  []journal.Trip
	day    int // evenings handed out so far
}

// New returns the world of a seed.
func New(seed uint64) *World { return &World{Rand: rand.New(rand.NewPCG(seed, 0))} }

// Base makes what a night needs before it can be written up: two beats, three
// people and six flies.
func (w *World) Base() []journal.Record {
	var out []journal.Record
	add := func(k journal.Kind, n int) {
		for range n {
			out = append(out, w.Record(k))
		}
	}
	add(journal.KindBeat, 2)
	add(journal.KindPerson, 3)
	add(journal.KindFly, 6)
	return out
}

// ID makes an identity.
func (w *World) ID() journal.ID {
	var id journal.ID
	for id.IsZero() {
		for i := range id {
			id[i] = byte(w.Rand.Uint32())
		}
	}
	return id
}

// Record makes a record of a kind that stands by itself. A box, a series, a
// track or a trip refers to what is in the lists.
func (w *World) Record(k journal.Kind) journal.Record { return w.record(k, w.ID()) }

// Vary makes another record of the same identity, to amend r with. A varied
// trip keeps its evening, beat and rods, and a varied beat its pools, so that
// what was written about them still holds. r must stand by itself.
func (w *World) Vary(r journal.Record) journal.Record {
	switch r := r.(type) {
	case journal.Trip:
		r.Note = w.text()
		r.Hours = field(w, w.span(r))
		r.Rods = slices.Clone(r.Rods)
		for i := range r.Rods {
			r.Rods[i].Client = w.yes()
		}
		return r
	case journal.Beat:
		last := r.Revisions[len(r.Revisions)-1]
		shape := last.Shape
		shape.At = w.place()
		from := last.From.Add(1 + w.Rand.IntN(30))
		if last.From.IsZero() {
			from = firstEvening
		}
		r.Revisions = append(r.Revisions[:len(r.Revisions):len(r.Revisions)], journal.BeatRevision{From: from, Shape: shape})
		r.Grey = field(w, w.lux(0.001, 100))
		return r
	}
	return w.record(r.Ref().Kind, r.Ref().ID)
}

func (w *World) record(k journal.Kind, id journal.ID) journal.Record {
	switch k {
	case journal.KindTrip:
		return w.trip(id)
	case journal.KindBeat:
		return w.beat(id)
	case journal.KindFly:
		w.Flies = remember(w.Flies, id)
		return w.fly(id)
	case journal.KindBox:
		return journal.Box{ID: id, Name: w.text(), Use: pick(w, journal.Uses), Flies: w.some(w.Flies)}
	case journal.KindRule:
		return w.rule(id)
	case journal.KindPerson:
		w.People = remember(w.People, id)
		p := journal.Person{ID: id, Name: pick(w, []string{"Anna", "Colm", "Isla", "Ewan"}), Client: w.yes()}
		if w.yes() {
			p.Initials, p.Left = p.Name[:1], w.evening()
		}
		return p
	case journal.KindSource:
		w.Files = remember(w.Files, id)
		return journal.Source{ID: id, SHA256: w.sha256(), Name: w.text(), Format: "gpx", Device: w.text(),
			Offset: time.Duration(w.Rand.Int64N(int64(time.Hour))), Zone: zone, Read: w.instant()}
	case journal.KindSeries:
		return w.series(id)
	case journal.KindTrack:
		return w.track(id)
	case journal.KindRecipient:
		var shows []journal.Shows
		for _, s := range journal.AllShows {
			if w.yes() && (s != journal.ShowCoordinates || slices.Contains(shows, journal.ShowPlaces)) {
				shows = append(shows, s)
			}
		}
		r := journal.Recipient{ID: id, Shows: shows}
		if w.yes() && len(w.People) > 0 {
			r.Person = pick(w, w.People)
		}
		return r
	case journal.KindDecision:
		return journal.Decision{ID: id, Key: w.sha256() + "#" + w.text(), Verdict: pick(w, journal.Verdicts),
			Entry: journal.Ref{Kind: pick(w, journal.EntryKinds), Trip: w.ID(), ID: w.ID()}}
	}
	panic("journaltest: " + string(k) + " does not stand by itself")
}

func remember(list []journal.ID, id journal.ID) []journal.ID {
	for _, known := range list {
		if known == id {
			return list
		}
	}
	return append(list, id)
}

const zone = "Europe/London"

var firstEvening = journal.Date{Year: 2000, Month: time.June, Day: 1}

// evening is a date in the summer months of the years from 2000 on.
func (w *World) evening() journal.Date {
	return journal.Date{Year: 2000 + w.Rand.IntN(25), Month: time.June, Day: 1}.Add(w.Rand.IntN(120))
}

func (w *World) beat(id journal.ID) journal.Beat {
	shape := geo.Beat{ID: id, Name: pick(w, []string{"Home Beat", "Kirk Beat"}), Zone: zone, At: w.place(),
		River: geo.River{ID: w.ID(), Name: "Larrick Water"}}
	for i := range 3 + w.Rand.IntN(4) {
		at := w.place().LonLat()
		ring := orb.Ring{at, {at[0] + 1e-3, at[1]}, {at[0] + 1e-3, at[1] + 1e-3}, at}
		shape.Pools = append(shape.Pools, geo.Pool{ID: w.ID(), Name: w.text(), Order: i + 1, Outline: orb.Polygon{ring},
			Canopy: pick(w, []geo.Canopy{"", geo.Open, geo.Partly, geo.Closed}), Bank: pick(w, banks),
			Skyline: geo.Skyline{{Bearing: 90, Altitude: 12.5}, {Bearing: 270, Altitude: 3}}})
	}
	b := journal.Beat{ID: id, Revisions: []journal.BeatRevision{{Shape: shape}}, Grey: field(w, w.lux(0.001, 100))}
	if w.yes() {
		b.Successors = map[journal.ID][]journal.ID{w.ID(): {w.ID(), w.ID()}}
		b.Notices = []journal.Notice{{Words: "hooks without barbs", Said: "the owner", Checked: firstEvening, Due: firstEvening.Add(100)}}
	}
	w.Beats = append(w.Beats, b)
	return b
}

func (w *World) trip(id journal.ID) journal.Trip {
	beat := pick(w, w.Beats)
	t := journal.Trip{ID: id, Evening: firstEvening.Add(w.day), Zone: zone, Beat: beat.ID, Guide: field(w, pick(w, w.People)), Note: w.text()}
	w.day++
	for i, p := range w.Rand.Perm(len(w.People)) {
		if i == 2 {
			break
		}
		start, stop := w.night(t).at(8*time.Hour), w.night(t).at(22*time.Hour)
		t.Rods = append(t.Rods, journal.Rod{ID: w.ID(), Person: w.People[p], Client: w.yes(),
			Start: field(w, journal.Exact(start)), Stop: field(w, journal.About(stop, 0))})
	}
	t.Hours = field(w, w.span(t))
	w.Trips = append(w.Trips, t)
	return t
}

func (w *World) span(t journal.Trip) journal.Span {
	n := w.night(t)
	return journal.Span{Start: journal.About(n.at(8*time.Hour), 0), Stop: journal.Exact(n.at(23 * time.Hour))}
}
